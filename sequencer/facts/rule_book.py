"""The rules in force for a show: the conservative default, the chosen profiles, and the user's own rules.

The stricter of two rules on one subject applies. A looser one applies only with a recorded reference of the
authority, and the rule book then shows what was loosened.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from sequencer.facts.profiles import Profile, Rule, profile

_EXTRA = "several-performers-extra"


@dataclass(frozen=True, slots=True)
class Loosened:
    """A default rule set aside under a recorded reference."""

    rule: Rule  # the rule that applies instead
    instead_of: Rule
    reference: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleBook:
    """Rules in force."""

    profiles: tuple[Profile, ...]  # lowest precedence first: default, chosen, own
    rules: tuple[Rule, ...]
    loosened: tuple[Loosened, ...] = ()

    def all(self, kind: str) -> tuple[Rule, ...]:
        """All rules in force on a subject."""
        return tuple(rule for rule in self.rules if rule.kind.name == kind)

    def strictest(self, kind: str) -> Rule | None:
        """The strictest rule: the largest minimum or the smallest maximum; None if no rule covers the subject.

        Raises
        ------
        ValueError
            If the subject is not numeric.
        """
        found = self.all(kind)
        if not found:
            return None
        if found[0].kind.sort not in {"least", "most"}:
            raise ValueError(f"{kind} has no numbers to compare")
        pick = max if found[0].kind.sort == "least" else min
        # If two ask the same, the later profile is named: the local text is more useful to the reader.
        return pick(reversed(found), key=lambda rule: rule.number)

    def required(self, kind: str) -> Rule | None:
        """The rule that says yes to a subject, the local one first; None if there is none."""
        return next((rule for rule in reversed(self.all(kind)) if rule.value is True), None)

    def needed(self, kind: str, heads: int, audience: int | None = None) -> tuple[int, Rule] | None:
        """Largest number that any count rule requires, and the rule; None if there is none.

        A rule that counts by the audience is skipped if the audience size is not known.
        """
        best: tuple[int, Rule] | None = None
        for rule in self.all(kind):
            by_audience = rule.count.of == "audience"
            if by_audience and audience is None:
                continue
            number = rule.count.for_heads(audience if by_audience and audience else heads)
            if best is None or number >= best[0]:
                best = (number, rule)
        return best

    def audience_distance(self, lit_at_once: int) -> tuple[float, tuple[Rule, ...]]:
        """Minimum distance from the outer edge of prop and flame to the audience [m], and the rules behind it.

        Raises
        ------
        ValueError
            If no rule in force covers it.
        """
        # Each profile's distance with its own extra; a sum across texts would be nobody's rule.
        best: tuple[float, tuple[Rule, ...]] | None = None
        for rule in self.all("audience-distance"):
            extras = [extra for extra in self.all(_EXTRA) if extra.profile == rule.profile]
            total, used = rule.number, [rule]
            for extra in extras if lit_at_once > 1 else ():
                total += extra.number * (1 if extra.per == "once" else lit_at_once - 1)
                used.append(extra)
            if best is None or total >= best[0]:
                best = (total, tuple(used))
        if best is None:
            raise ValueError("no rule in force gives a distance to the audience")
        return best


def rule_book(
    chosen: Profile | Sequence[Profile] | None = None,
    own: Profile | Sequence[Profile] | None = None,
    *,
    permit: str | None = None,
    loosens: Collection[str] = (),
    with_default: bool = True,
) -> RuleBook:
    """Rules in force.

    Parameters
    ----------
    chosen : Profile or sequence of Profile, optional
        Profiles of the authorities for the place: town, state, venue. The strictest applies.
    own : Profile or sequence of Profile, optional
        The user's own rules.
    permit : str, optional
        The authority's reference for this place and date.
    loosens : collection of str, optional
        Subjects on which that permit lets the distances and amounts of the chosen profiles replace the
        default's, never each other's; on all others the strictest applies.
    with_default : bool
        False only to see what a single text requires.
    """
    base = profile("default") if with_default else None
    profiles = [base] if base else []
    profiles += [each for each in (*_listed(chosen), *_listed(own)) if each.name != "default"]
    rules = list(base.rules) if base else []
    loosened: list[Loosened] = []
    for each in profiles[1:] if base else profiles:
        for rule in each.rules:
            # A permit covers the authority's own distances and amounts. Numbers of people are loosened only rule by rule, because in most texts read that part was cut off.
            named = rule.kind.name in loosens and rule.kind.sort in {"least", "most"}
            by_permit = permit if each.authority and named else None
            reference = rule.override.reference if rule.override else by_permit
            if reference and rule.kind.sort in {"least", "most", "count"}:
                alone = None if rule.override or base is None else base.title
                rules, gone = _set_aside(rules, rule, reference, of=alone)
                loosened += gone
        rules += each.rules
    return RuleBook(profiles=tuple(profiles), rules=tuple(rules), loosened=tuple(loosened))


def _listed(given: Profile | Sequence[Profile] | None) -> Sequence[Profile]:
    if given is None:
        return ()
    return (given,) if isinstance(given, Profile) else given


def _set_aside(
    rules: list[Rule], rule: Rule, reference: str, *, of: str | None
) -> tuple[list[Rule], list[Loosened]]:
    """Drop rules on the same subject, of one profile or of all, that are stricter than the one with a reference."""
    kept: list[Rule] = []
    gone: list[Loosened] = []
    for other in rules:
        same = other.kind == rule.kind and other.profile != rule.profile
        same = same and of in {None, other.profile}
        if same and _stricter(other, rule):
            gone.append(Loosened(rule, other, reference))
        else:
            kept.append(other)
    # A distance set aside also sets aside its extra for several performers.
    bare = {each.instead_of.profile for each in gone if rule.kind.name == "audience-distance"}
    extras = [other for other in kept if other.kind.name == _EXTRA and other.profile in bare]
    gone += [Loosened(rule, extra, reference) for extra in extras]
    return [other for other in kept if other not in extras], gone


def _stricter(one: Rule, other: Rule) -> bool:
    """Whether one rule is stricter than another on the same subject, for any number of heads."""
    if one.kind.sort == "least":
        return one.number > other.number
    if one.kind.sort == "most":
        return one.number < other.number
    return any(one.count.for_heads(n) > other.count.for_heads(n) for n in range(1, 41))
