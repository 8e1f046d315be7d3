"""Lit props held still: whether the flame, or its heat, reaches the hand that holds them.

A prop at rest hangs from the hand, or is held as `motion.trajectories.rests` says; each of its flames stands
straight up over its wick, as high as at the peak of the burn. The heat at the hand is that of a point source half-way up each
flame, of all props at rest, at the peak. Before the first movement of a burn and after the last one, lit props are kept as
`fire`, `handling`, `waiting` says: on the ground and swinging they do not hang; while they are put out the sheets have them
on the ground. At rest in between they hang.

Not looked at: the flame's hot gas beyond its tip, wind, legs and sleeves, gloves, the other performer's flame.

Sources: point source of NUREG-1805 sheet 05.1; the dose of pain of HSL/2004/04; 4.73 kW/m², intolerable after 15 s,
of 24 CFR 51 subpart C; 100 kW/m² within a flame (from memory); flame height by `staging.wicks.flame_at_rest`.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.fire.each_burn.busy import beat_after
from sequencer.facts.combustion import burnt_heat_release, heat_of_flame
from sequencer.facts.flames import PEAK
from sequencer.facts.fuels import fuel
from sequencer.facts.heat_criteria import heat_criteria, heat_doses, seconds_to
from sequencer.facts.radiation import point_source_flux
from sequencer.findings import Finding
from sequencer.geometry.bodies import Side
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.safety_plan import SafetyPlan
from sequencer.show.file_records.prop_records import PropRecord
from sequencer.show.model import Fire
from sequencer.staging.results import OfPerformer, result_of
from sequencer.staging.staged import Staged
from sequencer.staging.wicks import flame_at_rest
from sequencer.timing.position import moment_words

HANGING = "hanging-lit"
IN_FLAME = 100e3  # [W/m²] within a flame; from memory
_NEAREST = 0.1  # [m] closer than this the point source does not apply
_EXACT = 1e-6  # [s]
_SPARE = 0.1  # [s] by which a mend is inside the limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Still:
    """A span in which one hand holds a lit prop still, hanging."""

    start: float  # [s]
    end: float  # [s]
    when: str  # "first", "between" or "last" of the burn
    sides: tuple[Side, ...]  # hands at rest then


@dataclass(frozen=True, slots=True, kw_only=True)
class AtHand:
    """What a hand has from the flames of a prop that it holds still."""

    side: Side
    flame: float  # [m] at its peak
    gap: float  # [m] from the flame to the hand; 0 or less: it reaches the hand
    glow: float  # [W/m²] radiant heat of all flames

    @property
    def touches(self) -> bool:
        """Whether the flame reaches the hand."""
        return self.gap <= 0.0

    @property
    def flux(self) -> float:
        """Heat at the hand [W/m²]."""
        return max(self.glow, IN_FLAME) if self.touches else self.glow

    @property
    def pain(self) -> float:
        """Time until it hurts [s]."""
        return seconds_to("pain", self.flux)


def hanging_findings(show: Staged, plan: SafetyPlan) -> list[Finding]:
    """Lit props that hang still too near to the hand, or for too long.

    Parameters
    ----------
    show : Staged
    plan : SafetyPlan
        Of that show.
    """
    fire = show.show.fire
    if fire is None:
        return []
    alike: dict[tuple[object, ...], list[_Held]] = {}
    for burn in plan.burns:
        (dancer,) = (each for each in show.dancers if each.name == burn.who)
        (record,) = (each for each in show.show.cast if each.name == burn.who)
        for still in still_spans(show, dancer, burn, fire.handling.waiting or "hanging"):
            beat = float(show.tempo.beats_from_seconds((still.start + still.end) / 2))
            flames = tuple(
                (side, resting_flame_of(record.props[side], fire, burn)) for side in still.sides
            )
            # known by all that it is given: an edit of others, or of the rest of the fire, leaves it known
            hands = result_of(
                show,
                OfPerformer("hands at hanging flames", burn.who, (beat, flames)),
                partial(at_hands, dancer, dict(flames), beat),
            )
            worst = min(hands, key=lambda each: (each.pain, each.gap))
            held = _Held(burn=burn, still=still, worst=worst, prop=record.props[worst.side].held())
            if held.hurts or worst.flux > heat_criteria()["pain-15-s"].flux:
                key = still.start, still.end, still.when, _message(held)
                alike.setdefault(key, []).append(held)
    return [_finding(show, group) for group in alike.values()]


def still_spans(show: Staged, dancer: Dancer, burn: PlannedBurn, waiting: str) -> list[Still]:
    """Spans in which a performer's lit props hang still, by start."""
    rests = {
        side: list(_rests(show, trajectory))
        for side, trajectory in dancer.trajectories.items()
        if isinstance(trajectory, Trajectory)
    }
    free = burn.end_s + burn.queue_s  # then somebody comes, and the props go to the ground
    found: dict[tuple[float, float], list[Side]] = {}
    kinds: dict[tuple[float, float], str] = {}
    for side, spans in rests.items():
        for low, high in spans:
            start, end = max(low, burn.alight_s), min(high, free)
            if end <= start + _EXACT:
                continue
            first, last = low <= burn.alight_s, high >= free
            if (first or last) and waiting != "hanging":
                continue
            found.setdefault((start, end), []).append(side)
            kinds[start, end] = "first" if first else "last" if last else "between"
    return [
        Still(start=span[0], end=span[1], when=kinds[span], sides=tuple(sides))
        for span, sides in sorted(found.items())
    ]


class RestingFlame(NamedTuple):
    """The flame of one wick of a prop at rest."""

    height: float  # [m] at the peak of the burn
    watts: float  # [W] heat release at the peak


def resting_flame_of(prop: PropRecord, fire: Fire, burn: PlannedBurn) -> RestingFlame:
    """The flame of one wick of a prop that is held still, on one burn."""
    height = flame_at_rest(prop, fire)
    seconds = burn.burn.seconds if burn.burn else None
    return RestingFlame(height, peak_heat(prop, fire, height, seconds))


def at_hands(dancer: Dancer, resting: Mapping[Side, RestingFlame], beat: float) -> list[AtHand]:
    """Flame and heat at each hand that holds a lit prop still at a beat; what each of these burns with is given."""
    beats = np.array(beat)
    hands: dict[Side, Floats] = {}
    flames: list[tuple[Floats, float, float, float]] = []  # wick, radius, height, heat at the peak
    own: dict[Side, list[int]] = {}
    for side, flame in resting.items():
        prop, motion = dancer.props[side], dancer.trajectories[side].at(beats)
        hands[side] = motion.hand
        aside = np.cross(motion.plane, motion.tether)
        for spot in prop.heads:
            own.setdefault(side, []).append(len(flames))
            wick = motion.hand + spot.along * motion.tether + spot.across * aside
            flames.append((wick, prop.wick_radius, flame.height, flame.watts))
    found = []
    for side, hand in hands.items():
        gaps = [_gap(hand, *flames[k][:3]) for k in own[side]]
        flux = sum(
            float(point_source_flux(watts, distance=max(_to_middle(hand, wick, r, high), _NEAREST)))
            for wick, r, high, watts in flames
        )
        found.append(AtHand(side=side, flame=resting[side].height, gap=min(gaps), glow=flux))
    return found


def peak_heat(prop: PropRecord, fire: Fire, flame: float, seconds: float | None) -> float:
    """Heat release of one wick at the peak of the burn [W].

    From fuel and burning time; where one of them is not known, from the height of the flame.

    Parameters
    ----------
    prop : PropRecord
    fire : Fire
    flame : float
        At its peak [m].
    seconds : float, optional
        Burning time [s].

    Notes
    -----
    Source: conservation of energy, times `facts.flames.PEAK`; Heskestad 1984.
    """
    heat = fuel(fire.fuel).heat_of_combustion
    if prop.fuel_mass is None or heat is None or seconds is None:
        return float(heat_of_flame(flame, diameter=2 * prop.held().wick_radius))
    mean = burnt_heat_release(prop.fuel_mass, heat_of_combustion=heat.highest, seconds=seconds)
    return PEAK * float(mean)


def _rests(show: Staged, trajectory: Trajectory) -> Iterator[tuple[float, float]]:
    """Spans of rest of one hand [s]; the first and the last go on without end."""
    spans = trajectory.spans
    for k, span in enumerate(spans):
        if span.kind == "rest":
            yield (
                -math.inf if k == 0 else show.seconds(span.start),
                math.inf if k == len(spans) - 1 else show.seconds(span.end),
            )


def _gap(hand: Floats, wick: Floats, radius: float, height: float) -> float:
    """Distance from a hand to a flame that stands up over a wick, half as wide as the wick's radius on each side [m]."""
    up = min(max(float(hand[2] - wick[2]), 0.0), height)
    return float(np.linalg.norm(hand - wick - np.array([0.0, 0.0, up]))) - radius


def _to_middle(hand: Floats, wick: Floats, radius: float, height: float) -> float:
    return float(np.linalg.norm(hand - wick - np.array([0.0, 0.0, radius + height / 2])))


def _message(held: "_Held") -> str:
    """What is wrong, without the names."""
    still, worst, shape = held.still, held.worst, held.prop
    line = f" on a {'rope' if shape.kind == 'rope dart' else 'tether'} of {shape.length:.2f} m"
    hand = f"the {worst.side} hand{line if shape.flexible else ''}"
    pain = math.floor(10 * worst.pain) / 10
    heat = (
        f"reaches {hand}, and in a flame it hurts within {math.ceil(10 * worst.pain) / 10:.1f} s"
        if worst.touches
        else f"ends {math.floor(100 * worst.gap) / 100:.2f} m from {hand}; {worst.flux / 1000:.1f} kW/m² there hurt "
        f"after {pain:.1f} s"
    )
    return (
        f"the lit {shape.kind} still for {still.end - still.start:.1f} s from {moment_words(still.start)} on: the flame, "
        f"{worst.flame:.2f} m at its peak, {heat}"
    )


def _finding(show: Staged, group: Sequence["_Held"]) -> Finding:
    """One finding for all who hold alike props still in the same span."""
    first = group[0]
    burn, still = first.burn, first.still
    names = tuple(dict.fromkeys(held.burn.who for held in group))
    dose, high = heat_doses()["pain"], heat_criteria()["pain-15-s"]
    beat = float(show.tempo.beats_from_seconds(still.start))
    glow = "Point source: US NRC, NUREG-1805 sheet 05.1 [C17; read]"
    model = "100 kW/m² in a flame: from memory" if first.worst.touches else glow
    return Finding(
        code=HANGING,
        severity="stop" if first.hurts else "warn",
        who=names,
        start=still.start,
        end=still.end,
        position=show.position(burn.start if still.when == "first" else round(beat)),
        message=f"{', '.join(names)} {'holds' if len(names) == 1 else 'hold'} {_message(first)}",
        remedies=_remedies(show, first),
        source=f"{dose.source.citation} {model}"
        if first.hurts
        else f"{high.printed}: {high.effect}. {high.source.citation} {model}",
    )


def _remedies(show: Staged, held: "_Held") -> tuple[str, ...]:
    burn, still, worst, shape = held.burn, held.still, held.worst, held.prop
    lay = (
        f"lay the heads on bare ground, {shape.length:.2f} m to the side"
        if shape.flexible
        else f"lay the {shape.kind} on bare ground"
    )
    span = f"from {moment_words(still.start)} to {moment_words(still.end)}"
    if still.when == "between":
        return (f"dance a pendulum {span}: a hand that swings leaves the flame behind",)
    found = [
        f"{lay}, {span}: fire, handling, waiting: on the ground",
        f"keep the props swinging (a pendulum) {span}: fire, handling, waiting: swinging",
    ]
    over = still.end - still.start - worst.pain + _SPARE
    if still.when == "first" and not worst.touches and burn.start_s + over <= still.end:
        found.append(
            f"write from: {beat_after(show, burn.start_s + over)}, {math.ceil(over)} s later"
        )
    if still.when == "last" and still.start < burn.end_s - _EXACT:
        found.append(f"write until: {beat_after(show, still.start)}")
    return tuple(found)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Held:
    """A lit prop held still, and what the worst hand has from it."""

    burn: PlannedBurn
    still: Still
    worst: AtHand
    prop: Prop

    @property
    def hurts(self) -> bool:
        """Whether it hurts before the span is over."""
        return self.still.end - self.still.start >= self.worst.pain
