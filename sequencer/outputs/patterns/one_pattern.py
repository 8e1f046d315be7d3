"""One pattern by itself, as a show of nothing else would have it: for its card, drawings, steps and page.

Where the hands dance it and how the body gives way are found for body, prop and tempo (motion/fitting/search.py),
and the beats of a cycle for the tempo (motion/fitting/pacing.py), where the performer does not say.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from functools import cached_property
from math import inf, isfinite
from typing import Any, get_args

from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.geometry.posture import Posture
from sequencer.motion.fitting.fits import Dance, Fit
from sequencer.motion.fitting.pacing import usual_cycle
from sequencer.motion.fitting.search import PLACE_OFFSETS, fitted
from sequencer.motion.fitting.windows import SIZE_PARAMETERS, Windows, windows_of
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.motion.patterns.build_steps import Station, build_steps
from sequencer.motion.patterns.library import Pattern, cycle_beats, find, law_for
from sequencer.motion.patterns.samples import CARD_STATURE
from sequencer.motion.performers.feasibility import body_gap, props_gap, reach_left
from sequencer.motion.props.prop import USUAL_HANDS, Prop, PropKind, Solid
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.show.prop_records import usual_prop

TEMPO = 100.0  # [beats a minute] unless said
TIMINGS: tuple[Timing, ...] = get_args(Timing)
DIRECTIONS: tuple[Direction, ...] = get_args(Direction)
_NEAR = 0.06  # [m] from where on the way from one prop to the other is measured
LONGEST_CYCLE = 64.0  # [beats] that is believed


class _Thicker(Prop):
    """A prop that is half of `_NEAR` thicker all over."""

    @cached_property
    def solids(self) -> tuple[Solid, ...]:
        """The true shape, thicker."""
        return tuple(solid._replace(radius=solid.radius + _NEAR / 2) for solid in super().solids)

    @cached_property
    def envelope(self) -> tuple[Solid, ...]:
        """What holds the true shape, thicker."""
        return tuple(solid._replace(radius=solid.radius + _NEAR / 2) for solid in super().envelope)


def _thicker(prop: Prop) -> Prop:
    return _Thicker(**{field.name: getattr(prop, field.name) for field in fields(prop)})


@dataclass(frozen=True, kw_only=True, eq=False)
class OnePattern:
    """A pattern, who dances it with what, and what was found for them.

    Parameters
    ----------
    name : str
    given : mapping
        Parameters that the performer set.
    dance : Dance
    fit : Fit
    usual_beats : float
        Of one hand cycle, whatever the tempo.
    """

    name: str
    given: Mapping[str, object]
    dance: Dance
    fit: Fit
    usual_beats: float

    @property
    def pattern(self) -> Pattern:
        """The pattern itself."""
        return find(self.name, self.dance.book)

    @property
    def body(self) -> Body:
        """Who dances it."""
        return self.dance.body

    @property
    def posture(self) -> Posture:
        """How the body gives way."""
        return self.fit.posture

    @property
    def cycle(self) -> float:
        """Beats of one hand cycle."""
        return self.dance.cycle

    @property
    def tempo(self) -> float:
        """Beats a minute."""
        return self.dance.tempo[0]

    @property
    def prop(self) -> Prop:
        """What is in each hand."""
        return next(iter(self.dance.props.values()))

    @property
    def sides(self) -> tuple[Side, ...]:
        """Hands that dance."""
        return self.dance.sides

    @cached_property
    def laws(self) -> dict[Side, Law]:
        """What each hand does; beat 0 is the start of both."""
        return self.dance.laws(self.fit.values)

    @cached_property
    def room(self) -> Windows:
        """From where to where each parameter fits, or what would make room."""
        return windows_of(self.dance)

    @property
    def found(self) -> set[str]:
        """Parameters that are found for the body where the performer does not say."""
        names = {*PLACE_OFFSETS, *SIZE_PARAMETERS} | (
            {"from"} if self.pattern.right.kind.name == "toroid" else set()
        )
        return names - set(self.given)

    @cached_property
    def trajectories(self) -> dict[Side, Trajectory]:
        """The hands' ways over one closing, as the checks ask for them."""
        return {
            side: Trajectory(
                (Span(start=0.0, end=self.end, law=law, origin=0.0, kind="block", label=self.name),)
            )
            for side, law in self.laws.items()
        }

    @cached_property
    def beyond(self) -> dict[Side, float]:
        """How far each hand gets out of reach, its shoulder given [m]; 0 within it; proven."""
        edges, carriage = (0.0, self.end), self.carriage(-1.0, self.end + 1.0)
        left = {
            side: reach_left(trajectory, edges, side=side, body=self.body, carriage=carriage)[
                0
            ].value
            for side, trajectory in self.trajectories.items()
        }
        return {side: max(-value, 0.0) for side, value in left.items()}

    @cached_property
    def proven(self) -> Fit:
        """The fit with what is proven to be left, as the checks do it, where the search has but looked."""
        edges, carriage = (0.0, self.end), self.carriage(-1.0, self.end + 1.0)
        held, margins = self.dance.props, self.fit.margins
        own = [
            body_gap(trajectory, edges, prop=held[s], body=self.body, near=inf, carriage=carriage)[
                0
            ].value
            for s, trajectory in self.trajectories.items()
        ]
        other = margins.other
        if len(held) == len(SIDES):
            # Only what meets is measured: both props are as thick here as makes them meet within `_NEAR`.
            left, right = ((self.trajectories[s], _thicker(held[s])) for s in SIDES)
            met = props_gap(left, right, edges)[0].value
            other = _NEAR + met if met < 0 else max(other, _NEAR)
        beyond = max(self.beyond.values())
        reach = -beyond if beyond else max(margins.reach, 0.0)
        proven = margins._replace(body=min(own), other=other, reach=reach)
        return replace(self.fit, margins=proven)

    @property
    def end(self) -> float:
        """Beat at which both hands are home, or four cycles later where one never is."""
        home = max(law.period for law in self.laws.values())
        return home if isfinite(home) else 4 * self.cycle

    @property
    def alike(self) -> bool:
        """Whether both hands do the same, each on its own side and in its own time."""
        values = [self.fit.values.get(side, {}) for side in self.sides]
        same = self.dance.direction == "same" and all(each == values[0] for each in values)
        return len(self.sides) == 1 or (same and not self.pattern.hybrid)

    def parameters(self, side: Side) -> dict[str, object]:
        """What is set of one hand's law, by the performer or by what was found."""
        return {**self.fit.values.get(side, {}), **self.given}

    def values(self, side: Side) -> dict[str, Any]:
        """All values of one hand's law as it is danced."""
        return self.pattern.values(self.parameters(side), side)

    def lead(self, side: Side) -> Law:
        """What a hand does, from where the pattern begins: without the start that the timing gives it."""
        return law_for(
            self.name, self.parameters(side), side=side, body=self.body, beats=self.cycle,
            tether=self.prop.length, book=self.dance.book,
        )  # fmt: skip

    def carriage(self, before: float, until: float) -> Carriage:
        """The body, giving way from one beat to another."""
        return Carriage(body=self.body, held=(HeldPosture(before, until, self.posture),))

    def stations(self, side: Side = "right") -> list[Station]:
        """Build steps of a hand as it dances them.

        Raises
        ------
        ValueError
            If the pattern is no toroid and has no stations.
        """
        return build_steps(
            self.name, self.parameters(side), side=side, body=self.body, cycle=self.cycle,
            tether=self.prop.length, book=self.dance.book,
        )  # fmt: skip


def one_pattern(
    name: str,
    parameters: Mapping[str, object] | None = None,
    *,
    tempo: float = TEMPO,
    timing: Timing = "split",
    direction: Direction = "same",
    prop: Prop | PropKind = "poi",
    body: Body | None = None,
    book: Mapping[str, Pattern] | None = None,
) -> OnePattern:
    """A pattern called by its name, with what fits found.

    Parameters
    ----------
    name : str
    parameters : mapping, optional
        What the performer sets; `beats` among them is the length of one hand cycle.
    tempo : float
        [beats a minute]
    timing : {"together", "split", "quarter"}
    direction : {"same", "opposite"}
        Of the left hand against the right.
    prop : Prop or str
        In each hand that usually holds one, or its kind, in the usual size for the body; a staff in both.
    body : Body, optional
        1.70 m tall if not given.
    book : mapping, optional
        Patterns to look in, instead of the built-in ones.

    Raises
    ------
    ValueError
        If the pattern, a parameter, the timing or the direction is not known, or out of range.
    """
    if timing not in TIMINGS:
        raise ValueError(f"timing must be one of {', '.join(TIMINGS)}, got {timing!r}")
    if direction not in DIRECTIONS:
        raise ValueError(f"direction must be one of {', '.join(DIRECTIONS)}, got {direction!r}")
    pattern, own = find(name, book), body or Body(stature=CARD_STATURE)
    given = {key: value for key, value in (parameters or {}).items() if key != "beats"}
    kind = prop if isinstance(prop, str) else prop.kind
    sides = SIDES if pattern.hybrid or max(USUAL_HANDS[kind]) == len(SIDES) else SIDES[1:]
    held = (
        usual_prop(prop, stature=own.stature, paired=len(sides) > 1)
        if isinstance(prop, str)
        else prop
    )
    tether = pattern.values(given).get("tether")
    if held.flexible and tether:
        held = replace(held, length=float(tether))
    said = (parameters or {}).get("beats")
    dance = Dance(
        parts=dict.fromkeys(sides, (name, given)),
        timing=timing,
        direction=direction,
        cycle=usual_cycle(name, given, tempo=tempo, props=(held,), book=book)
        if said is None
        else _beats(said),
        tempo=(tempo, tempo),
        body=own,
        props=dict.fromkeys(sides, held),
        book=book,
    )
    return OnePattern(
        name=name,
        given=given,
        dance=dance,
        fit=fitted(dance),
        usual_beats=cycle_beats(name, given, book),
    )


def _beats(said: object) -> float:
    try:
        beats = float(str(said))
    except ValueError:
        beats = -1.0
    if not 0 < beats <= LONGEST_CYCLE:  # also catches nan
        raise ValueError(f"beats must be a number over 0, at most {LONGEST_CYCLE:g}, got {said!r}")
    return beats
