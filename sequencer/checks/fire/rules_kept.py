"""The rest of the house rules: permit, roof, flame, age, and what only a person can confirm.

Inputs are plain records. A blank is not zero: it is a finding if a rule needs the figure.
"""

from collections.abc import Sequence

from sequencer.checks.check import Check
from sequencer.checks.fire.records import (
    BLANK,
    CAPPED,
    MISSING,
    PROGRESS,
    Night,
    blank_finding,
    night_finding,
    night_of,
    where_lit,
)
from sequencer.checks.outcome import Outcome
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.safety.rules.house_rules import rules_of
from sequencer.safety.rules.permits import MARKED_DRAFT, NONE_RECORDED, permit_that_holds
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.staging.staged import Staged
from sequencer.units import rounded_up

NOT_CHECKED = "Whether the rules have changed since their texts were read was not checked."


@where_lit
def house_rules(show: Staged) -> Outcome:
    """Permit, roof, flame and ages of a show against its rules.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    return Outcome(findings=tuple(rule_findings(night_of(show), rules_of(show))))


@where_lit
def confirmed(show: Staged) -> Outcome:
    """Limits that a show loosens, and rules that only a person can confirm.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    book = rules_of(show)
    return Outcome(
        findings=(
            *confirm_findings(book),
            *_few_callers(show.show.stop_call.callers, book),
            *_nearer_audience(show),
        ),
        not_checked=(NOT_CHECKED,),
    )


def rule_findings(night: Night, book: RuleBook) -> list[Finding]:
    """Permit, roof, flame and ages against the rules.

    Parameters
    ----------
    night : Night
    book : RuleBook
    """
    return [
        *_permit(night, book),
        *_blanks(night, book),
        *_roof(night, book),
        *_flame(night, book),
        *_ages(night, book),
    ]


def confirm_findings(book: RuleBook) -> list[Finding]:
    """Rules loosened by a recorded reference, and rules that only a person can confirm."""
    return [*_loosened(book), *_by_hand(book)]


def _permit(night: Night, book: RuleBook) -> list[Finding]:
    found = []
    if ban := book.required("fire-ban"):
        found.append(
            night_finding("fire-ban", "stop", "total fire ban: nothing may be lit", ban.citation,
                     ("dance it dark, or bring the commissioner's exemption in writing",))
        )  # fmt: skip
    rule = book.required("permit")
    if rule and night.permit_gaps:
        found.append(
            night_finding(
                "no-permit",
                "warn",
                f"{_gaps_words(night.permit_gaps)}; {MARKED_DRAFT}",
                rule.citation,
                (
                    "write under rules: permit: {number: …, issued_by: …, from: …, until: …, place: …}",
                    *(("write night: with the day of the performance",) if night.no_date else ()),
                ),
            )
        )
    found += [
        night_finding(
            "permit-contradicts",
            "stop",
            f"the permit recorded is not for this show: {words}",
            "this show, rules, permit: a permit holds for its place and days",
            ("ask the authority for one that names this place and night", "correct rules, permit"),
        )
        for words in night.permit_contradictions
    ]
    return found


def _gaps_words(gaps: Sequence[str]) -> str:
    if gaps == (NONE_RECORDED,):
        return NONE_RECORDED
    return f"the permit does not count yet: {'; '.join(gaps)}"


def _blanks(night: Night, book: RuleBook) -> list[Finding]:
    """What the rules measure from and the show does not state: flame, setting, what is overhead, the spin-off zone."""
    found = []
    audience = book.strictest("audience-distance")
    if night.flame is None and audience is not None:
        found.append(
            blank_finding(
                "the height of the flame is not stated, and every distance is taken from its edge",
                "fire, flame, as watched in a real burn",
                audience,
            )
        )
    roof = book.required("indoor-agreed") or book.required("indoor-forbidden")
    if "setting" in night.unstated and roof is not None:
        found.append(
            blank_finding(
                "whether the show is outdoors or indoors is not stated",
                "venue, setting, as outdoors or indoors",
                roof,
            )
        )
    ceiling = book.strictest("ceiling-height")
    if "ceiling" in night.unstated and ceiling is not None:
        found.append(
            blank_finding(
                "the height overhead is not stated",
                "venue, ceiling, as a measured height or as open",
                ceiling,
            )
        )
    zone = book.required("spin-off-zone")
    if "spin_off" in night.unstated and zone is not None:
        found.append(
            blank_finding(
                "the zone for soaking and spinning off is not drawn",
                "venue, spin_off, as the corners of a zone closed to the public",
                zone,
            )
        )
    return found


def _roof(night: Night, book: RuleBook) -> list[Finding]:
    if not night.indoors:
        return []
    contradiction = []
    if night.open_sky:
        contradiction = [
            night_finding(
                "roof-contradicts",
                "stop",
                "the show is indoors under an open sky: no ceiling was checked",
                "this show, venue, setting and ceiling",
                ("give the height under venue, ceiling", "or write setting: outdoors"),
            )
        ]
    return [*contradiction, *_under_roof(night, book)]


def _under_roof(night: Night, book: RuleBook) -> list[Finding]:
    if rule := book.required("indoor-forbidden"):
        return [
            night_finding(
                "indoors-forbidden",
                "stop",
                "these rules allow no fire under a roof",
                rule.citation,
                ("perform outdoors", "dance it dark"),
            )
        ]
    blank = []
    if (rule := book.required("sprinklers")) and night.sprinklers is not True:
        word = "none" if night.sprinklers is False else "not recorded"
        blank.append((f"sprinklers: {word}", rule))
    if (rule := book.required("indoor-agreed")) and not night.permit:
        blank.append(("no authority's reference for fire indoors", rule))
    if not blank:
        return []
    return [
        night_finding(
            "indoors-not-recorded",
            "stop",
            f"no fire indoors until this is recorded: {'; '.join(text for text, _ in blank)}",
            " ".join(dict.fromkeys(rule.citation for _, rule in blank)),
            (
                "agree ceiling, alarm isolation, exits and drapes in writing with authority and venue",
                "then record venue, sprinklers and rules, permit",
            ),
        )
    ]


def _flame(night: Night, book: RuleBook) -> list[Finding]:
    rule = book.strictest("flame-height")
    flame = max((each for each in (night.flame, night.tallest) if each is not None), default=None)
    if rule is None or flame is None or flame <= rule.number:
        return []
    return [
        night_finding(
            "flame-high",
            "stop",
            f"the flame is up to {flame:.2f} m high at its peak; {rule.number:.2f} m is allowed",
            rule.citation,
            ("use smaller wicks, timed and watched", "ask the authority in writing"),
        )
    ]


def _ages(night: Night, book: RuleBook) -> list[Finding]:
    rule = book.strictest("performer-age")
    if rule is None:
        return []
    found = []
    for who, age in night.ages.items():
        if age is not None and age < rule.number:
            found.append(
                night_finding("under-age", "stop",
                         f"{who} may be only {age}; {rule.number:g} required", rule.citation,
                         (f"let {who} dance unlit", "ask the authority in writing"), who=(who,))
            )  # fmt: skip
    blank = [who for who, age in night.ages.items() if age is None]
    if blank:
        found.append(
            blank_finding(
                f"age is not recorded: {', '.join(night.persons.get(who, who) for who in blank)}",
                "cast, birth_year"
                if any(who not in night.persons for who in blank)
                else "tonight, stand_ins, birth_year",
                rule,
            )
        )
    return found


def _loosened(book: RuleBook) -> list[Finding]:
    return [
        night_finding(
            "limit-loosened",
            "note",
            f"{each.rule.kind.what}: {each.rule.printed} instead of {each.instead_of.printed}, "
            f"by reference {each.reference}{_by(each.rule)}",
            each.rule.citation,
            (),
        )
        for each in book.loosened
    ]


def _by_hand(book: RuleBook) -> list[Finding]:
    """One note per profile on the rules that no program can check."""
    found = []
    for profile in book.profiles:
        texts = [rule.printed for rule in profile.rules if rule.kind.by_hand]
        if texts:
            found.append(
                night_finding(
                    "to-confirm",
                    "note",
                    f"Confirm by hand ({profile.title}): {'; '.join(texts)}",
                    f"{profile.title}, {profile.edition}",
                    ("confirm each by hand, under “Confirm by hand” on the safety lead’s sheet",),
                )
            )
    return found


def _by(rule: Rule) -> str:
    if rule.override is None:
        return ""
    return f", entered by {rule.override.by}: {rule.override.reason}"


def _few_callers(callers: Sequence[str], book: RuleBook) -> list[Finding]:
    """A stop call that only some people may give."""
    rule = book.required("stop-word")
    if "all" in callers or rule is None:
        return []
    return [
        night_finding(
            "stop-call-kept", "warn", f"only {', '.join(callers)} may stop the act; someone else may see "
            "the danger first", f"{rule.citation}; anyone of the crew calls it: common practice",
            ("write callers: all",),
        )
    ]  # fmt: skip


def _nearer_audience(show: Staged) -> list[Finding]:
    """A distance to the audience set below the rules: by a permit that loosens it, or else without effect."""
    rules, plan = show.show.rules, safety_plan(show)
    required, used = plan.book.audience_distance(plan.lit_at_once)
    permit = permit_that_holds(show.show)
    if rules.audience is None or rules.audience >= required:
        return []
    cited = " ".join(rule.citation for rule in used)
    if permit is None or "audience-distance" not in permit.loosens:
        return [
            night_finding(
                "limit-capped",
                "warn",
                f"rules, audience: {rules.audience:.2f} m is below what the rules allow; {required:.2f} m applies",
                cited,
                (
                    f"write audience: {rounded_up(required, 2):.2f} m or more",
                    "write loosens: audience-distance under rules, permit, if the authority’s permit allows it",
                ),
            )
        ]
    return [
        night_finding(
            "limit-loosened",
            "note",
            f"audience to prop and flame: {rules.audience:.2f} m instead of {required:.2f} m, by "
            f"permit {permit.number}",
            cited,
            (),
        )
    ]


CHECK = Check(
    name="house-rules",
    run=house_rules,
    codes={
        **BLANK,
        "fire-ban": ("stop",),
        "flame-high": ("stop",),
        "indoors-forbidden": ("stop",),
        "indoors-not-recorded": ("stop",),
        "no-permit": ("warn",),
        "permit-contradicts": ("stop",),
        "roof-contradicts": ("stop",),
        "under-age": ("stop",),
    },
    cautions={**MISSING, "indoors-not-recorded": "missing"},
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
)
CONFIRMED = Check(
    name="to-confirm",
    run=confirmed,
    codes={
        **CAPPED,
        "limit-loosened": ("note",),
        "stop-call-kept": ("warn",),
        "to-confirm": ("note",),
    },
    cautions={"limit-loosened": "override"},
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
)
