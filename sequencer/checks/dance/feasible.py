"""Whether a performer can do what the show asks: slack, reach, own body, tangles, pace, grip.

Values come from `motion.performers.feasibility`, proven over every moment of blocks, links and blends; here they
become findings, one a block and hand at most for each kind. A tether that comes to rest above the hand
(a stall) is slack by nature and only noted.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from math import inf, isfinite, pi

import numpy as np

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome, length_words
from sequencer.findings import Finding, Severity
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.fitting.windows import ways_out
from sequencer.motion.patterns.library import cycle_beats
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import (
    GAP_ERROR,
    PULL_ERROR,
    REACH_ERROR,
    body_gap,
    props_gap,
    pull_left,
    reach_left,
    shape_of,
    stretches,
)
from sequencer.motion.props.peaks import Peak, fastest_wick, hardest_pull, hardest_twist
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import GRAVITY, TautTempo, hand_work, lowest_tempo
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.show.model import Step
from sequencer.staging.dances import dance_of
from sequencer.staging.staged import Staged

_SOURCE = "docs/motion.md, section 6"
_NOT_CHECKED = (
    "Own-body clearance looks at trunk, head and legs, not at arms, hair and clothing.",
    "Slack is looked for in blocks; on links and at rest the hand must steady the prop.",
    "Slack and forces take the floor path's own acceleration as nothing.",
)
# [m/s] a wick slower than this stays for 0.2 s within 10 cm of what it passes, in which a flame of 100 kW/m²
# (from memory) gives the dose of pain, 92 (kW/m²)^(4/3)·s (HSL/2004/04); a faster one is gone before. A design choice.
SLOW_PASS = 1.0
CONTACT = 0.01  # [m] nearer than this a wick can wipe fuel on cloth; a design choice
RIGID = (
    "Whether a hand can turn a rigid prop so without changing its grip was not looked at.",
    "The twist that turns a flat prop about its own axis was not looked at.",
)
LIMIT_ERROR = 1e-3  # of a limit: what is over it by less has met it exactly
_Figure = tuple[
    str, float, Callable[..., Peak] | None, float, str
]  # words, bound, search, limit, unit
_SAME = 1e-6  # [beats]
PACE_ERROR = 0.1  # [beats a minute] of the lowest tempo that keeps a tether taut


@dataclass(frozen=True, slots=True, kw_only=True)
class FeasibilityLimits:
    """What is asked of a performer at most before the show is told; this project's own figures."""

    hand_speed: float = 6.0  # [m/s]
    hand_acceleration: float = 80.0  # [m/s²]
    turns: float = 2.5  # [turns/s]; common practice is 0.8 to 2
    head_speed: float = 20.0  # [m/s] of a wick; two turns a second at 1.15 m are 14.5 m/s
    pull: float = 60.0  # [N] in one hand
    torque: float = 8.0  # [N·m] of one hand, with what is rigid
    own_body_near: float = 0.05  # [m] between a lit wick and the body, noted below it
    drawn_off: float = 0.25  # [m] of hand work, noted above it


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Case:
    """One performer in one show."""

    show: Staged
    dancer: Dancer
    limits: FeasibilityLimits

    def edges(self, side: Side) -> tuple[list[float], tuple[Span, ...]]:
        trajectory = self.dancer.trajectories[side]
        spans = trajectory.spans if isinstance(trajectory, Trajectory) else ()
        return [spans[0].start, *(span.end for span in spans)], spans

    def ways_out(self, span: Span, side: Side) -> tuple[str, ...]:
        """What would let a block fit its performer, each tried; empty where nothing was found."""
        if span.kind != "block" or self.show.read is None:
            return ()
        for block in self.show.blocks_of(self.dancer.name):
            if side in block.hands and abs(block.start - span.start) < _SAME:
                show = self.show.show
                record = show.cast[show.names.index(self.dancer.name)]
                return ways_out(
                    dance_of(
                        block, record, self.show.tempo, self.show.book, torque=show.limits.torque
                    )
                )
        return ()

    def finding(
        self,
        code: str,
        severity: Severity,
        span: Span,
        message: str,
        remedies: Sequence[str],
        *,
        at: float | None = None,
    ) -> Finding:
        beat = span.start if at is None else at
        return Finding(
            code=code,
            severity=severity,
            who=(self.dancer.name,),
            start=self.show.seconds(beat),
            end=self.show.seconds(span.end),
            position=self.show.position(round(beat * 16) / 16),
            message=message,
            remedies=tuple(remedies),
            source=_SOURCE,
        )


def limits_of(show: Staged) -> FeasibilityLimits:
    """What the show asks of its performers at most."""
    own = show.show.limits
    return FeasibilityLimits(
        hand_speed=own.hand_speed,
        hand_acceleration=own.hand_acceleration,
        turns=own.turns,
        head_speed=own.head_speed,
        pull=own.pull,
        torque=own.torque,
        own_body_near=own.own_body,
    )


def feasible(show: Staged, *, limits: FeasibilityLimits | None = None) -> Outcome:
    """Findings on what the performers are asked to do.

    Parameters
    ----------
    show : Staged
    limits : FeasibilityLimits, optional
        The show's own if not given.

    Returns
    -------
    outcome : Outcome
    """
    findings: list[Finding] = []
    for dancer in show.dancers:
        asked = _Case(show=show, dancer=dancer, limits=limits or limits_of(show))
        for side in SIDES:
            if side in dancer.trajectories:
                if dancer.props[side].flexible:
                    findings += _slack(asked, side)
                    findings += _drawn(asked, side)
                findings += _reach(asked, side)
                findings += _own_body(asked, side)
                findings += _pace(asked, side)
        findings += _tangles(asked)
        findings += _long_props(asked)
        findings += _other_cycles(asked)
    rigid = any(not prop.flexible for each in show.dancers for prop in each.props.values())
    return Outcome(
        findings=tuple(_merged(findings)), not_checked=_NOT_CHECKED + (RIGID if rigid else ())
    )


def _other_cycles(asked: _Case) -> list[Finding]:
    """Patterns whose cycle the show leaves open and that take another number of beats than usual, once each."""
    show, told = asked.show, {}
    for block in show.blocks_of(asked.dancer.name):
        if block.link or _step(show, block.path).cycle is not None or block.title in told:
            continue
        usual = max(
            cycle_beats(part.pattern, part.parameters, show.book) for part in block.hands.values()
        )
        if abs(block.cycle - usual) < _SAME:
            continue
        told[block.title] = Finding(
            code="another-cycle",
            severity="note",
            who=(asked.dancer.name,),
            start=show.seconds(block.start),
            end=show.seconds(block.end),
            position=show.position(block.start),
            message=f"{block.title} takes {block.cycle:.4g} beats a cycle at "
            f"{60 * float(show.tempo.rates(np.array(block.start))):.0f} beats a minute, not its usual "
            f"{usual:.4g}, so that it can be danced with this prop",
            remedies=(f"write `cycle: {block.cycle:.4g}` to keep it so, or a cycle of your own",),
            source=_SOURCE,
        )
    return list(told.values())


def _step(show: Staged, path: tuple[str | int, ...]) -> Step:
    """The step of the show file that a block comes from."""
    if path[0] == "phrases":
        return show.show.phrases[str(path[1])][int(path[2])]
    return show.show.timeline[int(path[1])]


def _long_props(asked: _Case) -> list[Finding]:
    """Props longer than whoever holds them is tall: a slip of the unit, more often than a wish."""
    stature = asked.dancer.body.stature
    told: dict[str, Finding] = {}
    for prop in asked.dancer.props.values():
        measure = {"poi": "tether", "hoop": "diameter"}.get(prop.kind, "length")
        size = prop.length + prop.behind
        if prop.kind == "rope dart" or size <= stature:  # a rope is let out as far as one likes
            continue
        told[prop.kind] = Finding(
            code="prop-longer-than-performer",
            severity="warn",
            who=(asked.dancer.name,),
            start=None,
            end=None,
            position=None,
            message=f"{asked.dancer.name}: the {prop.kind}'s {measure} of {size:.2f} m is more than the "
            f"stature of {stature:.2f} m",
            remedies=(f"if it is a slip, mend {measure} or stature under cast",),
            source="common practice",
        )
    return list(told.values())


def _slack(asked: _Case, side: Side) -> list[Finding]:
    edges, spans = asked.edges(side)
    prop = asked.dancer.props[side]
    trajectory = _course(asked, side)
    pulls = pull_left(trajectory, edges, prop=prop, rates=asked.show.tempo.rates)
    told = []
    for span, pull in zip(spans, pulls, strict=True):
        if pull.value > -PULL_ERROR or span.kind != "block":
            continue
        pace = 60 * float(asked.show.tempo.rates(np.array(pull.beat)))
        turning = float(np.linalg.norm(span.at(np.array(pull.beat)).tether_rate))
        # A stall slows down to a stand; a prop that turns slowly all along only is too slow.
        still = turning < min(0.35 * pi, 0.5 * span.law.bounds().turn_rate)
        severity: Severity
        if still and pull.value >= -GRAVITY - PULL_ERROR:
            severity = "note"
            what = "the tether goes slack where the prop nearly stands still, as it does in a stall"
        else:
            severity = "stop"
            what = f"the tether goes slack at {pace:.0f} beats a minute"
        taut = _taut(span, prop.length) if severity == "stop" else None
        remedies: list[str] = []
        if taut is not None and taut.lowest < pace - PACE_ERROR:
            # the pattern itself is taut at this tempo: it is the blend into a neighbour that is not
            severity = "warn"
            what = "the tether goes slack where this block passes into its neighbour"
            remedies.append("mend the join, or put a link between the two blocks")
        elif taut is not None and isfinite(taut.lowest):
            what += f"; it stays taut from {taut.lowest:.1f} on"
            remedies.append(
                f"dance it faster: a cycle of at most {pace / taut.lowest:.2f} times its beats"
            )
        if severity == "stop":
            remedies += [
                "choose a ratio or a pattern that turns faster",
                "take a shorter hand circle",
            ]
        told.append(
            asked.finding(
                "tether-slack", severity, span, f"{span.label}, {side} hand: {what}", remedies,
                at=pull.beat,
            )
        )  # fmt: skip
    return told


def _taut(span: Span, length: float) -> TautTempo | None:
    try:
        return lowest_tempo(
            span.law, length=length, start=span.start - span.origin, end=span.end - span.origin
        )
    except ValueError:  # nothing is proven about the law's third derivative
        return None


def _reach(asked: _Case, side: Side) -> list[Finding]:
    edges, spans = asked.edges(side)
    body = asked.dancer.body
    told = []
    for span, left in zip(
        spans,
        reach_left(
            _course(asked, side), edges, side=side, body=body, carriage=asked.dancer.carriage
        ),
        strict=True,
    ):
        # What lies within the error is met exactly; a link's reach is told by the joins.
        if left.value >= -REACH_ERROR or span.kind == "link":
            continue
        told.append(
            asked.finding(
                "hand-out-of-reach", "stop", span,
                f"{span.label}, {side} hand: the hand would be {length_words(left.value)} out of reach: "
                f"{body.arm_length - left.value:.3f} m from the shoulder, with an arm of "
                f"{body.arm_length:.3f} m",
                asked.ways_out(span, side)
                or ("take a smaller hand_radius", "move the centre nearer with across, ahead or up"),
                at=left.beat,
            )
        )  # fmt: skip
    return told


def _own_body(asked: _Case, side: Side) -> list[Finding]:
    edges, spans = _cut_at_fire(asked, *asked.edges(side))
    body, prop = asked.dancer.body, asked.dancer.props[side]
    told = []
    near: dict[str, Finding] = {}  # the nearest pass of each pattern, told once
    nearest: dict[str, float] = {}
    gaps = body_gap(
        _course(asked, side),
        edges,
        prop=prop,
        body=body,
        carriage=asked.dancer.carriage,
        near=asked.limits.own_body_near,
    )
    for span, gap in zip(spans, gaps, strict=True):
        part = body.capsules[gap.label].name if gap.label >= 0 else "body"
        if gap.value < -GAP_ERROR:
            block = span.kind == "block"
            grave = block or bool(asked.dancer.is_lit(np.array(gap.beat)))
            told.append(
                asked.finding(
                    "self-hit", "stop" if grave else "warn", span,
                    f"{span.label}, {side} hand: the prop goes {length_words(gap.value)} into the {part}",
                    asked.ways_out(span, side)
                    or ("take a shorter tether" if prop.flexible else f"take a smaller {prop.kind}",
                        "choose another pattern")
                    if block else ("give the link more beats", "choose another shift after it"),
                    at=gap.beat,
                )
            )  # fmt: skip
        elif (
            span.kind != "rest"
            and gap.value < min(asked.limits.own_body_near, nearest.get(span.label, 1.0))
            and bool(asked.dancer.is_lit(np.array(gap.beat)))
        ):
            nearest[span.label] = gap.value
            speed = _head_speed(asked, span, prop.length, gap.beat)
            touches = gap.value < CONTACT
            grave = touches or speed < SLOW_PASS
            how = "brushes past," if touches else "passes" if speed >= SLOW_PASS else "lingers"
            near[span.label] = asked.finding(
                "flame-near-body", "warn" if grave else "note", span,
                f"{span.label}, {side} hand: the burning wick {how} {length_words(max(gap.value, 0))} "
                f"from the {part}{f' at {speed:.1f} m/s' if grave else ''}; what is near a flame burns",
                ("move the centre away from the body with ahead or across",)
                if span.kind == "block"
                else ("give the link more beats", "choose another shift after it"),
                at=gap.beat,
            )  # fmt: skip
    return told + list(near.values())


def _head_speed(asked: _Case, span: Span, length: float, beat: float) -> float:
    """Speed of a head in the body frame [m/s]."""
    rate = float(asked.show.tempo.rates(np.array(beat)))
    return float(np.linalg.norm(span.at(np.array(beat)).head_rate(length))) * rate


def _cut_at_fire(
    asked: _Case, edges: Sequence[float], spans: Sequence[Span]
) -> tuple[list[float], list[Span]]:
    """The same spans, cut where the performer is lit or put out: a pass counts by its own moment."""
    fire = {edge for burn in asked.dancer.lit for edge in burn}
    cut = sorted({*edges, *(edge for edge in fire if edges[0] < edge < edges[-1])})
    parts = np.searchsorted(edges, 0.5 * (np.array(cut[:-1]) + cut[1:]), side="right") - 1
    return cut, [spans[int(k)] for k in parts]


def _tangles(asked: _Case) -> list[Finding]:
    if not all(side in asked.dancer.trajectories for side in SIDES):
        return []
    both = [asked.edges(side) for side in SIDES]
    # where rests and links end apart, each hand's edges cut both
    low = max(edges[0] for edges, _ in both)
    high = min(edges[-1] for edges, _ in both)
    edges = sorted({e for own, _ in both for e in own if low <= e <= high})
    if len(edges) < 2:
        return []
    left, right = ((_course(asked, side), asked.dancer.props[side]) for side in SIDES)
    names = [_body_names(*each) for each in (left, right)]
    told = []
    for start, end, gap in zip(edges[:-1], edges[1:], props_gap(left, right, edges), strict=True):
        if gap.value >= -GAP_ERROR:
            continue
        spans = [_span_at(own, (start + end) / 2) for _, own in both]
        label = " / ".join(dict.fromkeys(span.label for span in spans))
        kinds = {span.kind for span in spans}
        grave = kinds == {"block"} or bool(asked.dancer.is_lit(np.array(gap.beat)))
        severity: Severity = "stop" if grave else "warn"
        ways = asked.ways_out(spans[0], SIDES[0]) if kinds == {"block"} else ()
        told.append(
            asked.finding(
                "self-tangle", severity, spans[0],
                f"{label}: {_meeting(names, gap.label)} meet",
                ways or ("change the hands' timing or direction", "shift one hand's pattern"),
                at=gap.beat,
            )
        )  # fmt: skip
    return told


def _body_names(trajectory: Trajectory, prop: Prop) -> list[str]:
    frame = stretches(trajectory, [trajectory.spans[0].start, trajectory.spans[-1].end]).columns(
        "frame_rate"
    )
    return [solid.name for solid in shape_of(prop, frame[0])]


def _meeting(names: Sequence[Sequence[str]], label: int) -> str:
    """Which two bodies meet, from a label of `props_gap`."""
    j, i = divmod(label, len(names[0]))
    left, right = names[0][i], names[1][j]
    if left == right:
        return f"the {left}s" if left != "staff" else "the staffs"
    if left == "head":
        return f"the left head and the right {right}"
    return f"the right {right} and the left {left}"


def _pace(asked: _Case, side: Side) -> list[Finding]:
    """Hand speed, hand acceleration, turns, pull and torque against the limits, proven.

    The bounds that cost nothing settle most blocks; where one is over its limit, the largest value itself
    is searched for, and that counts. A limit that is met exactly is kept.
    """
    told = []
    limits, prop = asked.limits, asked.dancer.props[side]
    for span in asked.edges(side)[1]:
        if span.kind != "block":
            continue
        rate = asked.show.tempo.fastest(span.start, span.end)
        bounds = span.law.bounds()
        start, end = span.start - span.origin, span.end - span.origin
        if isfinite(span.law.period):
            end = min(end, start + span.law.period)
        # Force and torque are the size of λ²·M + W with the tempo λ: convex in λ², so largest at an end.
        paces = {rate, asked.show.tempo.slowest(span.start, span.end)}
        centre = abs(prop.centre_of_mass)
        figures: tuple[_Figure, ...] = (
            ("the hand moves", bounds.hand_speed * rate, None, limits.hand_speed, "m/s"),
            ("the hand is accelerated with", bounds.hand_acceleration * rate**2, None, limits.hand_acceleration, "m/s²"),
            ("the prop turns", bounds.turn_rate * rate / (2 * pi), None, limits.turns, "times a second"),
            ("a wick moves", prop.fastest(bounds) * rate, fastest_wick, limits.head_speed, "m/s"),
            ("the prop pulls with", prop.mass * (bounds.head_acceleration(centre) * rate**2 + GRAVITY), hardest_pull, limits.pull, "N"),
            ("the hand twists with", 0.0 if prop.flexible else inf, hardest_twist, limits.torque, "N·m"),
        )  # fmt: skip
        over = []
        for what, bound, search, most, unit in figures:
            if bound <= most * (1 + LIMIT_ERROR):
                continue
            value = bound
            if search is not None:
                peaks = [
                    search(span.law, prop=prop, beats_per_second=pace, start=start, end=end)
                    for pace in paces
                ]
                value = max(peak.found if peak.known else peak.most for peak in peaks)
            if value > most * (1 + LIMIT_ERROR):
                over.append(f"{what} up to {_beyond(value, most)} {unit} (limit {most:g})")
        if over:
            told.append(
                asked.finding(
                    "too-fast-to-dance", "warn", span,
                    f"{span.label}, {side} hand: {'; '.join(over)}",
                    ("give the cycle more beats", "take a smaller hand_radius"),
                )
            )  # fmt: skip
    return told


def _beyond(value: float, limit: float) -> str:
    """A value over a limit with as many places as it takes to see that it is."""
    for places in (1, 2):
        if round(value, places) > limit:
            return f"{value:.{places}f}"
    return f"{value:.3f}"


def _drawn(asked: _Case, side: Side) -> list[Finding]:
    """Blocks whose flown path must leave the drawing, once for each pattern."""
    told = []
    prop = asked.dancer.props[side]
    seen = set()
    for span in asked.edges(side)[1]:
        if span.kind != "block" or span.label in seen or not isfinite(span.law.period):
            continue
        seen.add(span.label)
        tempo = 60 * asked.show.tempo.fastest(span.start, span.end)
        work = hand_work(span.law, length=prop.length, mass=prop.mass, tempo=tempo)
        if work.largest > asked.limits.drawn_off:
            told.append(
                asked.finding(
                    "flown-not-drawn", "note", span,
                    f"{span.label}, {side} hand: a passive tether needs the hand up to "
                    f"{100 * work.largest:.0f} cm ({100 * work.rms:.0f} cm RMS) from the drawn circle; "
                    "distances to others carry that margin",
                    ("where others are near, a pattern that needs less",),
                )
            )  # fmt: skip
    return told


def _merged(findings: Iterable[Finding]) -> list[Finding]:
    """Findings that differ by the hand alone are told once."""
    kept: dict[tuple[object, ...], Finding] = {}
    for finding in findings:
        text = finding.message.replace(", left hand:", ", {} hand:")
        text = text.replace(", right hand:", ", {} hand:")
        key = (finding.code, finding.severity, finding.who, finding.end, text.split(":")[0])
        other = kept.get(key)
        if other is None or "both hands" in other.message:
            kept.setdefault(key, finding)
        elif other.message != finding.message:
            first = other if (other.start or 0.0) <= (finding.start or 0.0) else finding
            both = first.message.replace(", left hand:", ", both hands:")
            both = both.replace(", right hand:", ", both hands:")
            kept[key] = replace(first, message=both)
    return list(kept.values())


def _course(asked: _Case, side: Side) -> Trajectory:
    trajectory = asked.dancer.trajectories[side]
    if not isinstance(trajectory, Trajectory):
        raise ValueError(f"{asked.dancer.name}: the {side} hand has no course of spans")
    return trajectory


def _span_at(spans: tuple[Span, ...], beat: float) -> Span:
    return next((span for span in spans if span.start <= beat < span.end), spans[-1])


CHECK = Check(
    name="feasible",
    run=feasible,
    codes={
        "another-cycle": ("note",),
        "flame-near-body": ("warn", "note"),
        "flown-not-drawn": ("note",),
        "hand-out-of-reach": ("stop",),
        "prop-longer-than-performer": ("warn",),
        "self-hit": ("stop", "warn"),
        "self-tangle": ("stop", "warn"),
        "tether-slack": ("stop", "warn", "note"),
        "too-fast-to-dance": ("warn",),
    },
    depends_on=("courses",),
    progress="checking tethers and reach",
    share=0.1,
)
