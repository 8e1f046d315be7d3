"""Whether a performer can dance the show: slack, reach, body clearance, tangles, pace, grip.

Values come from `motion.performers.feasibility`, proven over every moment of blocks, links and blends; here they
become findings: at most one of each kind for a block and hand. A tether that comes to rest above the hand
(a stall) always goes slack and is only noted.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from functools import partial
from math import inf, isfinite, pi

import numpy as np

from sequencer.checks.check import Check
from sequencer.checks.dance.dancer_case import (
    SECTION_FEASIBLE,
    DancerCase,
    FeasibilityLimits,
    limits_of,
    usual_cycle_of,
)
from sequencer.checks.dance.flames_near import flames_near
from sequencer.checks.dance.merged_hands import merged
from sequencer.checks.dance.proven import (
    Hand,
    SpanLeast,
    gap_between_props,
    gap_to_body,
    spare_reach,
    tether_pull,
)
from sequencer.checks.fault_kinds import (
    ANOTHER_CYCLE,
    BEYOND_REACH,
    BODY_GAP,
    HAND_ACCELERATION,
    HAND_SPEED,
    PROP_TURNS,
    PROPS_GAP,
    PULL,
    REACH,
    SLACK,
    TAUT_TEMPO,
    TOO_FAST,
    TWIST,
    WICK_SPEED,
)
from sequencer.checks.outcome import Outcome
from sequencer.findings import Figure, Finding, Severity
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.performers.feasibility import (
    GAP_ERROR,
    PULL_ERROR,
    REACH_ERROR,
    frame_rates,
    shape_of,
)
from sequencer.motion.performers.least_values import Least
from sequencer.motion.props.peaks import Peak, fastest_wick, hardest_pull, hardest_twist, twisting
from sequencer.motion.props.tension import (
    GRAVITY,
    TautTempo,
    hand_work,
    lowest_tempo,
    most_hand_work,
)
from sequencer.motion.trajectories.trajectory import Span
from sequencer.show.model import Step
from sequencer.staging.results import OfPerformer, results_together
from sequencer.staging.staged import Staged, written
from sequencer.units import length_words

BLOCKS_ONLY = "Slack is checked in blocks only; on links and at rest the hand must steady the prop."
NO_WALKING = "Slack and forces leave out the acceleration of walking."
_NOT_CHECKED = (
    "Clearance from the performer's own body covers trunk, head and legs, not arms, hair or clothing.",
    BLOCKS_ONLY,
    NO_WALKING,
)
TELLS_MORE = (
    "`sequencer check SHOW`, as flown, tells at which tempo, or with which tether, it can be flown"
)
SOFT_WAYS = (
    "dance it as it flies, and judge by the flown path whether it reads",
    "choose a pattern or a tempo that reads clean where it must be seen sharply",
)
RIGID = (
    "Whether a hand can turn a rigid prop this way without changing grip was not checked.",
    "The twist that turns a flat prop about its own axis was not checked.",
)
# A prop nearly stops where it turns slower than this, and than this share of its fastest: design choices.
NEARLY_STILL, STILL_SHARE = 0.35 * pi, 0.5  # [rad/beat], [1]
LIMIT_ERROR = 1e-3  # of a limit: a value over it by less counts as meeting it
_Asked = tuple[
    str, str, float, Callable[..., Peak] | None, float, str
]  # quantity, words, bound, search, limit, unit
_UNITS = {"times a second": "1/s"}
_SAME = 1e-6  # [beats]
PACE_ERROR = 0.1  # [beats a minute] of the lowest tempo that keeps a tether taut


def feasible(show: Staged, *, limits: FeasibilityLimits | None = None) -> Outcome:
    """Findings on whether the performers can dance their blocks.

    Parameters
    ----------
    show : Staged
    limits : FeasibilityLimits, optional
        The show's if omitted.

    Returns
    -------
    outcome : Outcome
    """
    limits = limits or limits_of(show)
    findings = _findings(show, limits, fly=True)
    rigid = any(not prop.flexible for each in show.dancers for prop in each.props.values())
    return Outcome(findings=findings, not_checked=_NOT_CHECKED + (RIGID if rigid else ()))


def feasible_as_drawn(show: Staged) -> Outcome:
    """Findings that stop or warn, of the dance as drawn: what goes slack stops, though it may be flown; quick.

    Parameters
    ----------
    show : Staged
    """
    found = _findings(show, limits_of(show), fly=False)
    return Outcome(findings=tuple(each for each in found if each.severity != "note"))


def one_kind_as_drawn(show: Staged, code: str) -> list[Finding] | None:
    """Those findings of `feasible_as_drawn` that are of one code, without a look at the others; None if that takes all the same.

    Parameters
    ----------
    show : Staged
    code : str
    """
    if code not in (SLACK, BEYOND_REACH, TOO_FAST):
        return None
    found: list[Finding] = []
    for case in cases_of(show, fly=False):
        for side in (each for each in SIDES if each in case.dancer.trajectories):
            hand = Hand(case.dancer.name, side)
            if code == SLACK and case.dancer.props[side].flexible:
                found += _slack(case, side, tether_pull(show)[hand])
            elif code == BEYOND_REACH:
                found += _reach(case, side, spare_reach(show)[hand])
            elif code == TOO_FAST:
                found += _pace(case, side)
    return [each for each in merged(found) if each.severity != "note"]


def feasible_beside(
    show: Staged,
    told: Callable[[DancerCase, Sequence[Finding]], Iterable[Finding]],
) -> Outcome:
    """The outcome of `feasible` with some findings in place of others.

    Parameters
    ----------
    show : Staged
    told : callable
        What is told of a performer, in place of what is found as drawn, hand by hand.
    """
    return replace(feasible(show), findings=_findings(show, limits_of(show), fly=True, told=told))


def cases_of(
    show: Staged, limits: FeasibilityLimits | None = None, *, fly: bool = True
) -> list[DancerCase]:
    """Every performer, with the limits of the show if no others are given."""
    own = limits or limits_of(show)
    return [DancerCase(show=show, dancer=each, limits=own, fly=fly) for each in show.dancers]


def _findings(
    show: Staged,
    limits: FeasibilityLimits,
    *,
    fly: bool,
    told: Callable[[DancerCase, Sequence[Finding]], Iterable[Finding]] = lambda _case, own: own,
) -> tuple[Finding, ...]:
    cases = {each.dancer.name: each for each in cases_of(show, limits, fly=fly)}
    what = "feasible" if fly else "feasible as drawn"
    # What fits a performer depends on which parameters the file leaves open.
    keys = {who: OfPerformer(what, who, (limits, written(show.blocks_of(who)))) for who in cases}
    own = results_together(
        show, keys, lambda missing: _of_performers([cases[who] for who in missing])
    )
    return tuple(
        merged(
            finding
            for who, case in cases.items()
            for finding in (*told(case, own[who]), *(_other_cycles(case) if fly else ()))
        )
    )


def _of_performers(cases: Sequence[DancerCase]) -> dict[str, list[Finding]]:
    """All findings that depend on nothing but each performer's dance."""
    show, near = cases[0].show, cases[0].limits.own_body_near
    pulls, reaches = tether_pull(show), spare_reach(show)
    gaps, meetings = gap_to_body(show, near), gap_between_props(show)
    found: dict[str, list[Finding]] = {}
    for case in cases:
        dancer = case.dancer
        findings = found[dancer.name] = []
        for side in SIDES:
            if side in dancer.trajectories:
                hand = Hand(dancer.name, side)
                if dancer.props[side].flexible:
                    findings += _slack(case, side, pulls[hand])
                    findings += _drawn(case, side) if case.fly else []
                findings += _reach(case, side, reaches[hand])
                findings += _own_body(case, side, gaps[hand])
                findings += flames_near(case, side, gaps[hand], partial(_head_rate, case, side))
                findings += _pace(case, side)
        findings += _tangles(case, meetings[dancer.name])
        findings += _long_props(case)
    return found


def _other_cycles(case: DancerCase) -> list[Finding]:
    """Patterns whose cycle the show leaves open and whose cycle is not the usual one, once each."""
    show, found = case.show, {}
    for block in show.blocks_of(case.dancer.name):
        if block.link or _step(show, block.path).cycle is not None or block.title in found:
            continue
        usual = usual_cycle_of(block, show.book)
        if abs(block.cycle - usual) < _SAME:
            continue
        found[block.title] = Finding(
            code=ANOTHER_CYCLE,
            severity="note",
            who=(case.dancer.name,),
            start=show.seconds(block.start),
            end=show.seconds(block.end),
            position=show.position(block.start),
            # By the song's own tempo, as it was chosen (staging/timeline.py): at one beat it is a little faster or slower.
            message=f"{block.title} takes {block.cycle:.4g} beats a cycle, not its usual {usual:.4g}, so that it can be "
            f"danced with this prop at this song's {show.song.tempo:.0f} beats a minute",
            remedies=(f"write `cycle: {block.cycle:.4g}` to fix it, or choose another `cycle`",),
            source=SECTION_FEASIBLE,
        )
    return list(found.values())


def _step(show: Staged, path: tuple[str | int, ...]) -> Step:
    """The step of the show file that a block comes from."""
    if path[0] == "phrases":
        return show.show.phrases[str(path[1])][int(path[2])]
    return show.show.timeline[int(path[1])]


def _long_props(case: DancerCase) -> list[Finding]:
    """Props longer than their performer is tall: more often a wrong unit than a choice."""
    stature = case.dancer.body.stature
    found: dict[str, Finding] = {}
    for prop in case.dancer.props.values():
        measure = {"poi": "tether", "hoop": "diameter"}.get(prop.kind, "length")
        size = prop.length + prop.behind
        if prop.kind == "rope dart" or size <= stature:  # a rope is let out as far as one likes
            continue
        found[prop.kind] = Finding(
            code="prop-longer-than-performer",
            severity="warn",
            who=(case.dancer.name,),
            start=None,
            end=None,
            position=None,
            message=f"{case.dancer.name}: the {prop.kind}'s {measure} of {size:.2f} m is more than the "
            f"stature of {stature:.2f} m",
            remedies=(f"if this is a slip, correct {measure} or stature under cast",),
            source="common practice",
        )
    return list(found.values())


def _slack(case: DancerCase, side: Side, pulls: Sequence[SpanLeast]) -> list[Finding]:
    prop = case.dancer.props[side]
    found = []
    for span, pull in pulls:
        if pull.value > -PULL_ERROR:
            continue
        tempo = 60 * float(case.show.tempo.beats_per_second(np.array(pull.beat)))
        turning = float(np.linalg.norm(span.at(np.array(pull.beat)).tether_rate))
        # A stall slows to a stop; a prop that turns slowly throughout is simply too slow.
        still = turning < min(NEARLY_STILL, STILL_SHARE * span.law.bounds().turn_rate)
        severity: Severity
        if still and pull.value >= -GRAVITY - PULL_ERROR:
            severity = "note"
            what = "the tether goes slack where the prop nearly stops, as it does in a stall"
        else:
            severity = "stop"
            what = f"the tether goes slack at {tempo:.0f} beats a minute"
        taut = _taut(span, prop.length) if severity == "stop" else None
        remedies: list[str] = []
        if taut is not None and taut.lowest < tempo - PACE_ERROR:
            # the pattern itself is taut at this tempo: only the blend into its neighbour is not
            severity = "warn"
            what = "the tether goes slack where this block blends into its neighbour"
            remedies.append("mend the join, or put a link between the two blocks")
        elif taut is not None and isfinite(taut.lowest):
            what += f"; it stays taut from {taut.lowest:.1f} on"
            remedies.append(
                f"dance it faster: shorten the cycle to {tempo / taut.lowest:.2f} of its beats or less"
            )
        lowest = inf if taut is None else taut.lowest
        flown = case.flown(span, side) if severity == "stop" else None
        if flown is not None and flown.flies:
            severity = "note"
            soft = "reads soft: " if flown.soft else ""
            what = (
                f"{soft}as drawn the tether would go slack at {tempo:.0f} beats a minute; flown, the hand goes "
                f"up to {100 * flown.hand_most:.0f} cm off its path to keep it taut"
            )
        if severity == "stop":
            remedies += [
                "choose a pattern or a ratio that turns faster",
                "make the hand circle smaller",
                TELLS_MORE,
            ]
        found.append(
            case.finding(
                "tether-slack", severity, span, f"{span.label}, {side} hand: {what}", remedies,
                at=pull.beat, hands=(side,),
                figures=(_figure(TAUT_TEMPO, tempo, lowest, "beats/min", least=True),) if severity == "stop" else (),
            )
        )  # fmt: skip
    return found


def _taut(span: Span, length: float) -> TautTempo | None:
    try:
        return lowest_tempo(
            span.law, length=length, start=span.start - span.origin, end=span.end - span.origin
        )
    except ValueError:  # nothing is proven about the law's third derivative
        return None


def _reach(case: DancerCase, side: Side, reaches: Sequence[SpanLeast]) -> list[Finding]:
    body = case.dancer.body
    found = []
    for span, left in reaches:
        # Within the error the limit is met; `joins` reports links that are out of reach.
        if left.value >= -REACH_ERROR or span.kind == "link":
            continue
        found.append(
            case.finding(
                "hand-out-of-reach", "stop", span,
                f"{span.label}, {side} hand: {length_words(left.value)} out of reach: "
                f"{body.arm_length - left.value:.3f} m from the shoulder, with an arm of "
                f"{body.arm_length:.3f} m",
                ("use a smaller hand_radius", "bring the centre nearer with across, ahead or up"),
                at=left.beat, hands=(side,),
                figures=(_figure(REACH, body.arm_length - left.value, body.arm_length, "m"),),
            )
        )  # fmt: skip
    return found


def _own_body(case: DancerCase, side: Side, gaps: Sequence[SpanLeast]) -> list[Finding]:
    body, prop = case.dancer.body, case.dancer.props[side]
    found = []
    for span, gap in gaps:
        if gap.value >= -GAP_ERROR:
            continue
        part = body.capsules[gap.label].name if gap.label >= 0 else "body"
        block = span.kind == "block"
        grave = block or bool(case.dancer.is_lit(np.array(gap.beat)))
        found.append(
            case.finding(
                "self-hit", "stop" if grave else "warn", span,
                f"{span.label}, {side} hand: the prop goes {length_words(gap.value)} into the {part}",
                ("use a shorter tether" if prop.flexible else f"use a smaller {prop.kind}",
                 "choose another pattern")
                if block else ("leave more beats here", "change the shift of the block after it"),
                at=gap.beat, hands=(side,), figures=(_figure(BODY_GAP, gap.value, 0.0, "m", least=True),),
            )
        )  # fmt: skip
    return found


def _head_rate(case: DancerCase, side: Side, span: Span, beat: float) -> float:
    """Speed of a head as drawn, in the body frame [m/beat]."""
    length = case.dancer.props[side].length
    return float(np.linalg.norm(span.at(np.array(beat)).head_rate(length)))


def _tangles(case: DancerCase, meetings: Sequence[tuple[float, float, Least]]) -> list[Finding]:
    found = []
    for start, end, gap in meetings:
        if gap.value >= -GAP_ERROR:
            continue
        names = [_body_names(case, side) for side in SIDES]
        spans = [_span_at(case.trajectory(side).spans, (start + end) / 2) for side in SIDES]
        label = " / ".join(dict.fromkeys(span.label for span in spans))
        kinds = {span.kind for span in spans}
        grave = kinds == {"block"} or bool(case.dancer.is_lit(np.array(gap.beat)))
        severity: Severity = "stop" if grave else "warn"
        found.append(
            case.finding(
                "self-tangle", severity, spans[0],
                f"{label}: {_meeting(names, gap.label)} touch",
                ("change the hands' timing or direction", "shift one hand's pattern"),
                at=gap.beat, figures=(_figure(PROPS_GAP, gap.value, 0.0, "m", least=True),),
            )
        )  # fmt: skip
    return found


def _body_names(case: DancerCase, side: Side) -> list[str]:
    trajectory = case.trajectory(side)
    rates = frame_rates(trajectory, (trajectory.spans[0].start, trajectory.spans[-1].end))
    return [solid.name for solid in shape_of(case.dancer.props[side], rates)]


def _meeting(names: Sequence[Sequence[str]], label: int) -> str:
    """Which two bodies touch, from a label of `props_gap`."""
    j, i = divmod(label, len(names[0]))
    left, right = names[0][i], names[1][j]
    if left == right:
        return f"the {left}s" if left != "staff" else "the staffs"
    if left == "head":
        return f"the left head and the right {right}"
    return f"the right {right} and the left {left}"


def _pace(case: DancerCase, side: Side) -> list[Finding]:
    """Hand speed, hand acceleration, turns, pull and torque against the limits, proven.

    The cheap bounds settle most blocks; where one is over its limit, a search for the largest value
    decides. A value that equals its limit keeps it.
    """
    found = []
    limits, prop = case.limits, case.dancer.props[side]
    for span in case.trajectory(side).spans:
        if span.kind != "block":
            continue
        fastest = case.show.tempo.fastest(span.start, span.end)
        bounds = span.law.bounds()
        start, end = span.start - span.origin, span.end - span.origin
        if isfinite(span.law.period):
            end = min(end, start + span.law.period)
        # Force and torque are the size of λ²·M + W with the tempo λ: convex in λ², so largest at an end.
        tempos = {fastest, case.show.tempo.slowest(span.start, span.end)}
        centre = abs(prop.centre_of_mass)
        figures: tuple[_Asked, ...] = (
            (HAND_SPEED, "the hand moves at", bounds.hand_speed * fastest, None, limits.hand_speed, "m/s"),
            (HAND_ACCELERATION, "the hand accelerates at", bounds.hand_acceleration * fastest**2, None, limits.hand_acceleration, "m/s²"),
            (PROP_TURNS, "the prop turns", bounds.turn_rate * fastest / (2 * pi), None, limits.turns, "times a second"),
            (WICK_SPEED, "a wick moves at", prop.fastest(bounds) * fastest, fastest_wick, limits.head_speed, "m/s"),
            (PULL, "the prop pulls with", prop.mass * (bounds.head_acceleration(centre) * fastest**2 + GRAVITY), hardest_pull, limits.pull, "N"),
            (TWIST, "the hand twists with", 0.0 if prop.flexible else twisting(span.law, prop, fastest).coarse, hardest_twist, limits.torque, "N·m"),
        )  # fmt: skip
        over: list[tuple[str, Figure]] = []
        for quantity, what, bound, search, most, unit in figures:
            if bound <= most * (1 + LIMIT_ERROR):
                continue
            value = bound
            if search is not None:
                peaks = [
                    search(span.law, prop=prop, beats_per_second=tempo, start=start, end=end)
                    for tempo in tempos
                ]
                value = max(peak.found if peak.known else peak.most for peak in peaks)
            if value > most * (1 + LIMIT_ERROR):
                words = f"{what} up to {beyond_words(value, most)} {unit} (limit {most:g})"
                over.append((words, _figure(quantity, value, most, _UNITS.get(unit, unit))))
        if over:
            found.append(
                case.finding(
                    "too-fast-to-dance", "warn", span,
                    f"{span.label}, {side} hand: {'; '.join(words for words, _ in over)}",
                    ("give the cycle more beats", "use a smaller hand_radius"),
                    hands=(side,), figures=[figure for _, figure in over],
                )
            )  # fmt: skip
    return found


def _figure(quantity: str, value: float, limit: float, unit: str, *, least: bool = False) -> Figure:
    return Figure(quantity=quantity, value=value, limit=limit, unit=unit, least=least)


def beyond_words(value: float, limit: float) -> str:
    """A value over a limit, with as many decimals as show that it is.

    Parameters
    ----------
    value, limit : float
        In the same unit.
    """
    for places in (1, 2):
        if round(value, places) > limit:
            return f"{value:.{places}f}"
    return f"{value:.3f}"


def _drawn(case: DancerCase, side: Side) -> list[Finding]:
    """Blocks that cannot be flown as drawn and do not read clean, once per pattern."""
    found = []
    prop = case.dancer.props[side]
    seen = set()
    for span in case.trajectory(side).spans:
        if span.kind != "block" or span.label in seen or not isfinite(span.law.period):
            continue
        seen.add(span.label)
        tempo = 60 * case.show.tempo.fastest(span.start, span.end)
        if most_hand_work(span.law, length=prop.length, tempo=tempo) <= case.limits.drawn_off:
            continue
        work = hand_work(span.law, length=prop.length, mass=prop.mass, tempo=tempo)
        if work.largest <= case.limits.drawn_off:
            continue
        flown = case.flown(span, side)
        if flown is None or not flown.flies:
            said = (
                f"to keep the {prop.kind} flying, the hand moves up to {100 * work.largest:.0f} cm, "
                f"typically {100 * work.rms:.0f} cm, off the drawn circle; distances to others allow for it"
            )
            ways = ("where others are near, choose a pattern that needs less", TELLS_MORE)
        elif flown.soft:
            said, ways = soft_words(flown.head_most, flown.head_rms), SOFT_WAYS
        else:
            continue
        found.append(
            case.finding(
                "flown-not-drawn", "note", span, f"{span.label}, {side} hand: {said}", ways
            )
        )
    return found


def soft_words(most: float, rms: float) -> str:
    """That a pattern reads soft, and by how much its head is off the drawing [m]: at most, and as root mean square."""
    return (
        f"reads soft: as flown the head is up to {100 * most:.0f} cm, typically {100 * rms:.0f} cm, "
        "off the drawn path"
    )


def _span_at(spans: tuple[Span, ...], beat: float) -> Span:
    return next((span for span in spans if span.start <= beat < span.end), spans[-1])


CHECK = Check(
    name="feasible",
    run=feasible,
    codes={
        ANOTHER_CYCLE: ("note",),
        "flame-near-body": ("warn", "note"),
        "flown-not-drawn": ("note",),
        "hand-out-of-reach": ("stop",),
        "prop-longer-than-performer": ("warn",),
        "self-hit": ("stop", "warn"),
        "self-tangle": ("stop", "warn"),
        "tether-slack": ("stop", "warn", "note"),
        "too-fast-to-dance": ("warn",),
    },
    depends_on=("trajectories", "bodies", "burns"),
    progress="checking tethers and reach",
    share=0.1,
)
