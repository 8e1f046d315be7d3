"""One pattern by itself, as in a show that holds nothing else: for its card, drawings, steps and page.

Whatever the performer leaves open is fitted: where the hands dance and how the body gives way, to body, prop
and tempo (motion/fitting/search.py), and the beats of a cycle to the tempo (motion/fitting/pacing.py).
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from functools import cached_property
from math import inf, isfinite
from typing import Any, get_args

import numpy as np

from sequencer import content_keys, kept
from sequencer.arrays import Floats
from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.geometry.posture import Posture
from sequencer.motion.fitting.fits import Dance, Fit
from sequencer.motion.fitting.pacing import usual_cycle
from sequencer.motion.fitting.sampled_dance import PLACE_OFFSETS
from sequencer.motion.fitting.search import fitted
from sequencer.motion.fitting.windows import SIZE_PARAMETERS, Windows, windows_of
from sequencer.motion.flown.flown_motion import Flying
from sequencer.motion.flown.flyable import WouldFly, would_fly
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.motion.patterns.build_steps import Station, build_steps
from sequencer.motion.patterns.library import Pattern, cycle_beats, find, law_for
from sequencer.motion.patterns.samples import CARD_STATURE
from sequencer.motion.performers.feasibility import body_gap, props_gap, reach_left
from sequencer.motion.props.prop import USUAL_HANDS, Prop, PropKind, Solid
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.outputs.patterns.flown_law import FlownLaw
from sequencer.show.file_records.prop_records import usual_prop

TEMPO = 100.0  # [beats per minute] default
TIMINGS: tuple[Timing, ...] = get_args(Timing)
DIRECTIONS: tuple[Direction, ...] = get_args(Direction)
_SAME_PLACE = 1e-6  # [m]
_NEAR = 0.06  # [m] gaps between the props are measured up to this
LONGEST_CYCLE = 64.0  # [beats] that is accepted


class _Thicker(Prop):
    """A prop thickened by half of `_NEAR` all over."""

    @cached_property
    def solids(self) -> tuple[Solid, ...]:
        """The true shape, thickened."""
        return tuple(solid._replace(radius=solid.radius + _NEAR / 2) for solid in super().solids)

    @cached_property
    def envelope(self) -> tuple[Solid, ...]:
        """The enclosing shape, thickened."""
        return tuple(solid._replace(radius=solid.radius + _NEAR / 2) for solid in super().envelope)


def _thicker(prop: Prop) -> Prop:
    return _Thicker(**{field.name: getattr(prop, field.name) for field in fields(prop)})


@dataclass(frozen=True, kw_only=True, eq=False)
class OnePattern:
    """A pattern, who dances it with what, and the fit found for them.

    Parameters
    ----------
    name : str
    given : mapping
        Parameters that the performer set.
    dance : Dance
    fit : Fit
    usual_beats : float
        Usual beats of one hand cycle, whatever the tempo.
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
        """The body that dances it."""
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
        """Beats per minute."""
        return self.dance.tempo[0]

    @property
    def prop(self) -> Prop:
        """The prop in each hand."""
        return next(iter(self.dance.props.values()))

    @property
    def sides(self) -> tuple[Side, ...]:
        """The hands that dance."""
        return self.dance.sides

    @cached_property
    def laws(self) -> dict[Side, Law]:
        """The law of each hand; beat 0 is the start of both."""
        return self.dance.laws(self.fit.values)

    @cached_property
    def room(self) -> Windows:
        """The range in which each parameter fits, or what would make room."""
        return windows_of(self.dance)

    @property
    def found(self) -> set[str]:
        """Parameters that are fitted to the body where the performer leaves them open."""
        names = {*PLACE_OFFSETS, *SIZE_PARAMETERS} | (
            {"from"} if self.pattern.right.kind.name == "toroid" else set()
        )
        return names - set(self.given)

    @cached_property
    def trajectories(self) -> dict[Side, Trajectory]:
        """The hands' trajectories over one closing, as the checks need them."""
        return {
            side: Trajectory(
                (Span(start=0.0, end=self.end, law=law, origin=0.0, kind="block", label=self.name),)
            )
            for side, law in self.laws.items()
        }

    @cached_property
    def beyond(self) -> dict[Side, float]:
        """How far each hand gets out of reach with the shoulder brought along [m]; 0 within reach; proven."""
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
        """The fit with proven margins, as in the checks; the search itself only samples."""
        edges, carriage = (0.0, self.end), self.carriage(-1.0, self.end + 1.0)
        props, margins = self.dance.props, self.fit.margins
        gaps = [
            body_gap(trajectory, edges, prop=props[s], body=self.body, near=inf, carriage=carriage)[
                0
            ].value
            for s, trajectory in self.trajectories.items()
        ]
        other = margins.other
        if len(props) == len(SIDES):
            # Only overlapping shapes are measured, so both props are thickened until they meet within `_NEAR`.
            left, right = ((self.trajectories[s], _thicker(props[s])) for s in SIDES)
            met = props_gap(left, right, edges)[0].value
            other = _NEAR + met if met < 0 else max(other, _NEAR)
        beyond = max(self.beyond.values())
        reach = -beyond if beyond else max(margins.reach, 0.0)
        proven = margins._replace(body=min(gaps), other=other, reach=reach)
        return replace(self.fit, margins=proven)

    @property
    def end(self) -> float:
        """Beat at which both hands are home, or four cycles later if one never is."""
        home = max(law.period for law in self.laws.values())
        return home if isfinite(home) else 4 * self.cycle

    @property
    def alike(self) -> bool:
        """Whether both hands do the same, each on its side and with its timing."""
        values = [self.fit.values.get(side, {}) for side in self.sides]
        same = self.dance.direction == "same" and all(each == values[0] for each in values)
        return len(self.sides) == 1 or (same and not self.pattern.hybrid)

    @cached_property
    def flown(self) -> dict[Side, FlownPeriod]:
        """The motion that each hand can make; empty for a prop that the hand turns, which flies as drawn."""
        if not self.prop.flexible:
            return {}
        return {
            side: flown_period(law, self.flying(side))
            for side, law in self.laws.items()
            if isfinite(law.period)
        }

    @property
    def flies(self) -> bool:
        """Whether every hand can fly its law, or has a prop that flies as drawn."""
        own = self.flown.values()
        return not self.prop.flexible or (
            len(own) == len(self.laws) and not any(period.broken for period in own)
        )

    @cached_property
    def flown_laws(self) -> dict[Side, Law]:
        """Each hand's law as it is danced: as flown where every hand can fly it, else as drawn."""
        if not (self.flies and self.flown):
            return self.laws
        return {side: FlownLaw(flown=period) for side, period in self.flown.items()}

    def flying(self, side: Side) -> Flying:
        """Who flies one hand's law with what."""
        return Flying(
            prop=self.dance.props[side],
            body=self.body,
            side=side,
            tempo=self.tempo,
            posture=self.posture,
        )

    def would_fly(self, side: Side) -> WouldFly:
        """The nearest tempi and tethers at which one hand's law flies, if it does not as it is; takes up to a minute."""

        def law_of(tether: float) -> Law:
            props = {s: replace(prop, length=tether) for s, prop in self.dance.props.items()}
            return replace(self.dance, props=props).laws(self.fit.values)[side]

        return kept.kept(
            "would fly",
            (content_keys.whole_code(), self.dance.question, self.fit.values, self.flying(side)),
            lambda: would_fly(law_of, self.flying(side)),
            record=list,
            restore=lambda own: WouldFly(*own),
        )

    def flown_head(self, station: Station, side: Side = "right") -> Floats | None:
        """Where the head flies when a hand is at one of its stations, shape (3,) [m, body frame].

        None where it flies as drawn, cannot be flown, or the hand's beats are not those of its stations (a left hand that
        comes later).
        """
        beat = np.array(station.beat)
        there = self.laws[side].at(beat).hand
        if self.flown_laws is self.laws or not np.allclose(there, station.hand, atol=_SAME_PLACE):
            return None
        return self.flown_laws[side].at(beat).head(self.dance.props[side].length)

    def parameters(self, side: Side) -> dict[str, object]:
        """Parameters set for one hand's law, by the performer or by the fit."""
        return {**self.fit.values.get(side, {}), **self.given}

    def values(self, side: Side) -> dict[str, Any]:
        """All parameter values of one hand's law as danced."""
        return self.pattern.values(self.parameters(side), side)

    def lead(self, side: Side) -> Law:
        """A hand's law from the start of the pattern, without the offset that the timing gives it."""
        return law_for(
            self.name, self.parameters(side), side=side, body=self.body, beats=self.cycle,
            tether=self.prop.length, book=self.dance.book,
        )  # fmt: skip

    def carriage(self, before: float, until: float) -> Carriage:
        """The body, in this posture from one beat to another."""
        return Carriage(body=self.body, held=(HeldPosture(before, until, self.posture),))

    def stations(self, side: Side = "right") -> list[Station]:
        """Build steps of a hand as it dances them.

        Raises
        ------
        ValueError
            If the pattern is not a toroid and has no stations.
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
    """A pattern by its name, fitted to the body.

    Parameters
    ----------
    name : str
    parameters : mapping, optional
        Parameters that the performer sets; `beats` is the length of one hand cycle.
    tempo : float
        Beats per minute.
    timing : {"together", "split", "quarter"}
    direction : {"same", "opposite"}
        Direction of the left hand relative to the right.
    prop : Prop or str
        The prop in each hand that usually holds one, or its kind, in the usual size for the body; a staff in both.
    body : Body, optional
        1.70 m tall if not given.
    book : mapping, optional
        Patterns to use instead of the built-in ones.

    Raises
    ------
    ValueError
        If the pattern, a parameter, the timing or the direction is not known, or out of range.
    """
    if timing not in TIMINGS:
        raise ValueError(f"timing must be one of {', '.join(TIMINGS)}, got {timing!r}")
    if direction not in DIRECTIONS:
        raise ValueError(f"direction must be one of {', '.join(DIRECTIONS)}, got {direction!r}")
    pattern, performer = find(name, book), body or Body(stature=CARD_STATURE)
    given = {key: value for key, value in (parameters or {}).items() if key != "beats"}
    kind = prop if isinstance(prop, str) else prop.kind
    sides = SIDES if pattern.hybrid or max(USUAL_HANDS[kind]) == len(SIDES) else SIDES[1:]
    chosen = (
        usual_prop(prop, stature=performer.stature, paired=len(sides) > 1)
        if isinstance(prop, str)
        else prop
    )
    tether = pattern.values(given).get("tether")
    if chosen.flexible and tether:
        chosen = replace(chosen, length=float(tether))
    given_beats = (parameters or {}).get("beats")
    dance = Dance(
        parts=dict.fromkeys(sides, (name, given)),
        timing=timing,
        direction=direction,
        cycle=usual_cycle(name, given, tempo=tempo, props=(chosen,), book=book)
        if given_beats is None
        else _beats(given_beats),
        tempo=(tempo, tempo),
        body=performer,
        props=dict.fromkeys(sides, chosen),
        book=book,
    )
    return OnePattern(
        name=name,
        given=given,
        dance=dance,
        fit=fitted(dance),
        usual_beats=cycle_beats(name, given, book),
    )


def _beats(given_beats: object) -> float:
    try:
        beats = float(str(given_beats))
    except ValueError:
        beats = -1.0
    if not 0 < beats <= LONGEST_CYCLE:  # also catches nan
        raise ValueError(
            f"beats must be a number over 0, at most {LONGEST_CYCLE:g}, got {given_beats!r}"
        )
    return beats
