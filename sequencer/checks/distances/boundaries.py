"""Distance of every performer to what stands still: audience, scenery, ceiling, floor, edge, crew posts."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.fault_kinds import DISTANCE
from sequencer.checks.outcome import BeatClock, Outcome, deviation_words
from sequencer.findings import Clearance, Figure, Finding, Severity
from sequencer.geometry.bodies import SIDES
from sequencer.geometry.certified import TOLERANCE
from sequencer.geometry.prisms import Prism, plane
from sequencer.geometry.regions import Venue
from sequencer.motion.clearance.fixtures import Encounters, Measure, encounters, lowest_wick
from sequencer.motion.clearance.grid import Cells, cells
from sequencer.motion.performers.body_parts import FIRST_POINT, PARTS
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.props.prop import Prop
from sequencer.timing.position import TOUCH
from sequencer.timing.tempo import TempoMap
from sequencer.units import length_words

_TOGETHER = 32.0  # [beats] approaches no farther apart than this share one finding

_LIT_IN_WINGS = "let the burn begin once they are on stage, and end before they go off: nobody is lit in the wings"
LEAST_PROP = 0.20  # [m] from hand to wick: a shorter prop cannot be spun, so none is suggested
ON_STAGE = 0.05  # [m] that a line must lie inside the stage to count: one along the edge does not


@dataclass(frozen=True, slots=True, kw_only=True)
class _ClearanceRule:
    """How close every dancer may come to one thing, and how that is measured."""

    code: str
    thing: str
    prisms: tuple[Prism, ...]
    measure: Measure
    required: float
    requirement: str  # field of Requirements
    only_lit: bool = False
    severity: Severity = "stop"
    part: str = ""  # what the distance is measured from; empty for the nearest part
    mend: Callable[[float], str] | None = (
        None  # given the missing distance [m]; `_Lowest` does it for the floor
    )

    @property
    def in_words(self) -> str:
        """The thing as messages name it."""
        return f"the {self.thing}" if self.thing in {"edge of the stage", "floor"} else self.thing

    def of(self, dancer: Dancer) -> float:
        """Distance that a dancer must keep [m]; from the place, the wider column of a wheelchair is added."""
        wide = dancer.body.girth - dancer.body.half_breadth if self.measure == "place" else 0.0
        return self.required + wide

    def mends(self, distance: float, required: float) -> tuple[str, ...]:
        """Mends of a distance under the requirement."""
        if self.measure == "place" and distance < TOLERANCE:
            # Beyond the edge the distance is 0 however far out: how many metres are missing is not known.
            return (
                f"move the place or the walk onto the stage, {required:.2f} m in from its edge",
            )
        return () if self.mend is None else (self.mend(required - distance),)


def boundaries(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    venue: Venue,
    requirements: Requirements,
    *,
    start: float,
    end: float,
) -> Outcome:
    """Distances and conflicts between every performer and what stands still, between two beats."""
    grid = cells(dancers, start, end)
    total = Outcome(findings=_audience_on_stage(venue), not_checked=_not_checked(venue))
    staying = [dancer for dancer in dancers if not dancer.floor.off]
    for rule in _clearance_rules(dancers, venue, requirements):
        if rule.measure != "place" or len(staying) == len(dancers):
            total += _searched(dancers, grid, tempo, requirements, rule)
            continue
        # The edge of the stage holds for whoever is on it: entrances and exits lead over it.
        if staying:
            total += _searched(staying, cells(staying, start, end), tempo, requirements, rule)
        for dancer in dancers:
            for span in _on_stage(dancer, start, end) if dancer.floor.off else ():
                total += _searched((dancer,), cells((dancer,), *span), tempo, requirements, rule)
    # Where the edge does not hold, nothing else would keep an unlit performer out of the audience.
    for dancer in dancers:
        for span in _within(dancer.floor.off, start, end):
            for rule in _audience_unlit(venue, requirements):
                total += _searched((dancer,), cells((dancer,), *span), tempo, requirements, rule)
    return total + _ceilings(dancers, tempo, venue, requirements)


def _searched(
    dancers: Sequence[Dancer],
    grid: Cells,
    tempo: TempoMap,
    requirements: Requirements,
    rule: _ClearanceRule,
) -> Outcome:
    """One rule, for some dancers on their grid."""
    found = encounters(
        dancers,
        grid,
        rule.prisms,
        measure=rule.measure,
        required=np.array([rule.of(dancer) for dancer in dancers]),
        only_lit=rule.only_lit,
    )
    return _judged(dancers, tempo, requirements, rule, found)


def _on_stage(dancer: Dancer, start: float, end: float) -> list[tuple[float, float]]:
    """Spans in which the edge of the stage is a limit: on stage, and wherever the dancer is lit [beats]."""
    on = [(begin, stop) for begin, stop in dancer.lit]
    at = start
    for begin, stop in dancer.floor.off:
        on.append((at, begin))
        at = stop
    on.append((at, end))
    return _within(on, start, end)


def _within(
    spans: Iterable[tuple[float, float]], start: float, end: float
) -> list[tuple[float, float]]:
    """Spans cut to those between two beats, in order, and joined where they overlap [beats]."""
    found: list[tuple[float, float]] = []
    for begin, stop in sorted((max(a, start), min(b, end)) for a, b in spans):
        if stop - begin <= TOUCH:
            continue
        if found and begin <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], stop))
        else:
            found.append((begin, stop))
    return found


def _audience_on_stage(venue: Venue) -> tuple[Finding, ...]:
    """Audience lines that run over the stage: people would stand among the performers."""
    import shapely

    if venue.stage is None:
        return ()
    inside = venue.stage.polygon.buffer(-ON_STAGE)
    return tuple(
        Finding(
            code="audience-on-stage",
            severity="stop",
            who=(),
            start=None,
            end=None,
            position=None,
            message=f"the audience line {edge.name!r} runs over the stage",
            remedies=("move the line off the stage", "cut the stage's outline there"),
            source="geometry: the audience stands off the stage",
        )
        for edge in venue.audience
        if inside.intersects(shapely.LineString(edge.line))
    )


def audience_distance(dancers: Sequence[Dancer], requirements: Requirements) -> float:
    """Distance that the audience line must keep [m]; a surcharge applies once if two or more are ever lit at once."""
    edges = sorted(
        [(start, 1) for dancer in dancers for start, _ in dancer.lit]
        + [(end, -1) for dancer in dancers for _, end in dancer.lit]
    )
    burning = np.cumsum([step for _, step in edges]) if edges else np.zeros(1)
    more = requirements.audience_more if burning.max() >= 2 else 0.0
    return requirements.audience + more


def ceiling_needed(dancer: Dancer, requirements: Requirements) -> float:
    """Height that arm and prop straight up, the flame and the room above it take [m]."""
    return max(ceilings_required(dancer, requirements).values())


def ceilings_required(dancer: Dancer, requirements: Requirements) -> dict[str, float]:
    """Height that each rule sets for a ceiling over a dancer's fire [m], by the rule's name."""
    return {
        "ceiling_least": requirements.ceiling_least,
        "overhead": dancer.overhead + requirements.overhead,
    }


def _audience_unlit(venue: Venue, requirements: Requirements) -> list[_ClearanceRule]:
    """How close whoever is off the stage may come to the audience, lit or not."""
    return [
        _ClearanceRule(
            code="audience-too-close",
            thing=edge.name,
            prisms=edge.prisms,
            measure="parts",
            required=requirements.audience_unlit,
            requirement="audience_unlit",
            mend=lambda short: (
                f"let them wait and walk {_up(short)} m farther from the audience, or use another side"
            ),
        )
        for edge in venue.audience
    ]


def _clearance_rules(
    dancers: Sequence[Dancer], venue: Venue, requirements: Requirements
) -> list[_ClearanceRule]:
    audience = audience_distance(dancers, requirements)
    rules = [
        _ClearanceRule(
            code="audience-too-close",
            thing=edge.name,
            prisms=edge.prisms,
            measure="envelope",
            required=audience,
            requirement="audience_more" if audience > requirements.audience else "audience",
            only_lit=True,
            part="the reach of arm, prop and flame",
            mend=lambda short: (
                f"move the place, or the audience line, {_up(short)} m farther away, or dance it unlit"
            ),
        )
        for edge in venue.audience
    ]
    if venue.stage is not None:
        rules.append(
            _ClearanceRule(
                code="off-stage",
                thing="edge of the stage",
                prisms=venue.stage.outside(),
                measure="place",
                required=requirements.stage_edge,
                requirement="stage_edge",
                part="the middle of the body",
                mend=lambda short: f"move the place or the walk {_up(short)} m towards the stage",
            )
        )
    for piece in venue.scenery:
        rules.append(
            _ClearanceRule(
                code="scenery-too-close",
                thing=piece.name,
                prisms=piece.prisms,
                measure="parts",
                required=requirements.scenery,
                requirement="scenery",
                mend=lambda short: f"move the place or the scenery {_up(short)} m farther away",
            )
        )
        if piece.combustible:
            rules.append(
                _ClearanceRule(
                    code="scenery-too-close",
                    thing=f"{piece.name} (combustible)",
                    prisms=piece.prisms,
                    measure="flames",
                    required=requirements.combustible,
                    requirement="combustible",
                    mend=lambda short: (
                        f"move the place or the scenery {_up(short)} m farther away, replace it by "
                        "something that does not burn, or dance it unlit"
                    ),
                )
            )
    rules += [
        _ClearanceRule(
            code="ceiling-too-low",
            thing=ceiling.name,
            prisms=ceiling.prisms,
            measure="flames",
            required=requirements.overhead,
            requirement="overhead",
            mend=lambda short: (
                f"keep the flame {_up(short)} m lower: a shorter prop, a lower hand, or "
                "another pattern"
            ),
        )
        for ceiling in venue.ceilings
    ]
    rules.append(
        _ClearanceRule(
            code="hits-floor",
            thing="floor",
            prisms=(plane(top=0.0),),
            measure="wicks",
            required=requirements.floor,
            requirement="floor",
            severity="warn",
        )
    )
    rules += [
        _ClearanceRule(
            code="post-in-reach",
            thing=post.name,
            prisms=post.prisms,
            measure="envelope",
            required=requirements.post + post.radius,
            requirement="post",
            part="the reach of arm, prop and flame",
            mend=lambda short: f"move the post {_up(short)} m farther away",
        )
        for post in venue.posts
    ]
    return rules


def _judged(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    rule: _ClearanceRule,
    found: Encounters,
) -> Outcome:
    count = BeatClock(tempo)
    findings: list[Finding] = []
    rows = []
    for k, dancer in enumerate(dancers):
        if not np.isfinite(found.distance[k]):
            continue
        beat = float(found.at[k])
        part = rule.part or _part(found, k, dancer)
        x, y = dancer.floor.place_at(beat)
        rows.append(
            Clearance(
                between=(dancer.name, rule.thing),
                distance=float(found.distance[k]),
                required=rule.of(dancer),
                at=count.seconds(beat),
                error=0.0 if found.bound[k] else TOLERANCE,
                parts=(part, rule.thing),
                where=(x, y),
                bound=bool(found.bound[k]),
                position=count.position(beat),
            )
        )
        of = found.spans.group == k
        if not of.any():
            continue
        begin, end = found.spans.start[of], found.spans.end[of]
        cuts = np.flatnonzero(begin[1:] - end[:-1] > _TOGETHER) + 1
        findings += [
            _finding(dancer, count, requirements, rule, found, k, begin[some], end[some], part)
            for some in np.split(np.arange(len(begin)), cuts)
        ]
    return Outcome(
        findings=tuple(findings),
        clearances=tuple(rows),
        things=tuple((finding, rule.thing) for finding in findings),
    )


def _finding(
    dancer: Dancer,
    count: BeatClock,
    requirements: Requirements,
    rule: _ClearanceRule,
    found: Encounters,
    k: int,
    begin: Floats,
    end: Floats,
    part: str,
) -> Finding:
    worst = float(found.distance[k])
    often = "" if len(begin) == 1 else f"; {len(begin)} times up to {count.aloud(float(end[-1]))}"
    x, y = dancer.floor.at(float(begin[0])).place
    # Hand work does not widen the envelope or the place: an arm is no longer for it.
    moving = rule.measure in {"parts", "flames"}
    work = deviation_words(float(found.at[k]), dancer) if moving else ""
    thing, remedies = rule.in_words, rule.mends(worst, rule.of(dancer))
    at = float(found.at[k])
    if rule.measure == "place" and any(low < at < high for low, high in dancer.floor.off):
        remedies = (_LIT_IN_WINGS,)
    if rule.measure == "wicks":
        low = _lowest(dancer, float(found.at[k]), int(found.part[k]), worst)
        work, remedies = low.words, low.mends(rule.required)
    gap = f"comes within {worst:.2f} m of" if worst >= 0 else f"reaches {length_words(worst)} into"
    if rule.measure == "place" and worst < TOLERANCE:
        gap = "goes beyond"
    return Finding(
        code=rule.code,
        severity=rule.severity,
        who=(dancer.name,),
        start=count.seconds(float(begin[0])),
        end=count.seconds(float(end[-1])),
        position=count.position(float(begin[0])),
        message=(
            f"{dancer.name}: {part} {gap} {thing}, closest "
            f"{count.at_aloud(float(found.at[k]))}; {rule.of(dancer):.2f} m is required{work}{often}"
        ),
        remedies=remedies,
        source=requirements.source(rule.requirement),
        where=(float(x), float(y)),
        figures=(
            Figure(quantity=DISTANCE, value=worst, limit=rule.of(dancer), unit="m", least=True),
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lowest:
    """A wick at its lowest: as drawn, with hand work, and hanging from a straight arm."""

    prop: Prop
    drawn: float  # [m] over the floor
    lowest: float  # [m] over the floor, with hand work
    off: float  # [m] that the hand may be off its drawn path
    hanging: float  # [m] arm and prop straight down
    room: float  # [m] by which the hand can go up before the arm is straight overhead

    @property
    def words(self) -> str:
        """What hand work took off, and whether the arm's length limited it."""
        taken = self.drawn - self.lowest
        if taken <= TOLERANCE:
            return ""
        limited = ", down to a straight arm" if taken < self.off - TOLERANCE else ""
        return (
            f" (drawn {length_words(self.drawn)} above it; {length_words(taken)} taken off for hand "
            f"work{limited})"
        )

    def mends(self, required: float) -> tuple[str, ...]:
        """Feasible mends that keep it off the floor."""
        by_hand_work = self.drawn >= required - TOLERANCE
        up = required - (self.drawn - self.off)
        out = []
        if by_hand_work:
            out.append(
                "choose a pattern whose hand stays nearer to its drawn path: as drawn it clears the floor"
            )
        elif self.drawn < self.hanging - TOLERANCE:
            out.append("bring the hand within the arm's reach first: it is drawn too low for that")
        if up <= self.room:
            out.append(f"raise the hand by {_up(up)} m (up)")
        # At this length the wick clears the floor wherever the hand is, as drawn or with a straight arm.
        short = required - (self.hanging if by_hand_work else self.drawn)
        left = np.floor(100 * (self.prop.farthest - short) + 1e-6) / 100
        if left >= LEAST_PROP:
            out.append(
                f"use a {'tether' if self.prop.kind == 'poi' else 'rope'} of at most {left:.2f} m"
                if self.prop.flexible
                else f"use a smaller {self.prop.kind}: at most {left:.2f} m from the hand to that wick"
            )
        return tuple(out) or ("choose another pattern",)


def _lowest(dancer: Dancer, beat: float, part: int, lowest: float) -> _Lowest:
    side = PARTS[part].side
    if side is None:
        raise ValueError(f"part {part} is not a wick")
    prop, body = dancer.props[side], dancer.body
    points = dancer.stage_points(np.array(beat))[0]
    radius = prop.wick_radius if PARTS[part].kind == "rear" else prop.cold_radius
    return _Lowest(
        prop=prop,
        drawn=float(points[PARTS[part].start, 2]) - radius,
        lowest=lowest,
        off=float(dancer.deviations(beat)[SIDES.index(side)]),
        hanging=lowest_wick(dancer, side),
        room=body.shoulder_height + body.arm_length - float(points[FIRST_POINT[side] + 1, 2]),
    )


def _ceilings(
    dancers: Sequence[Dancer], tempo: TempoMap, venue: Venue, requirements: Requirements
) -> Outcome:
    """Ceilings too low for arm and prop straight up, whatever the pattern."""
    count = BeatClock(tempo)
    findings: list[tuple[Finding, str]] = []
    for ceiling in venue.ceilings:
        for dancer in dancers:
            needed = ceiling_needed(dancer, requirements)
            if not dancer.lit or ceiling.height >= needed:
                continue
            if ceiling.region is not None and not _goes_under(dancer, ceiling.region.prisms()):
                continue
            beat = dancer.lit[0][0]
            finding = Finding(
                code="ceiling-too-low",
                severity="stop",
                who=(dancer.name,),
                start=count.seconds(beat),
                end=count.seconds(dancer.lit[-1][1]),
                position=count.position(beat),
                message=(
                    f"{dancer.name}: {ceiling.name} at {ceiling.height:.2f} m; arm and prop "
                    f"straight up, the flame and the room above it need {needed:.2f} m"
                ),
                remedies=(
                    f"perform unlit, under a ceiling of {needed:.2f} m or more, or in the open",
                ),
                source=" ".join(
                    requirements.source(name)
                    for name, height in ceilings_required(dancer, requirements).items()
                    if ceiling.height < height
                ),
                where=None,
            )
            findings.append((finding, ceiling.name))
    return Outcome(findings=tuple(each for each, _ in findings), things=tuple(findings))


def _goes_under(dancer: Dancer, prisms: Sequence[Prism]) -> bool:
    """Whether the envelope ever comes over a region while lit."""
    first, last = dancer.lit[0][0], dancer.lit[-1][1]
    found = encounters(
        (dancer,),
        cells((dancer,), first, last),
        prisms,
        measure="envelope",
        required=np.zeros(1),
        only_lit=True,
    )
    return bool(len(found.spans.group))


def _part(found: Encounters, k: int, dancer: Dancer) -> str:
    return dancer.part_name(int(found.part[k])) if found.part[k] >= 0 else "the reach"


def _up(short: float) -> str:
    """The missing distance [m], rounded up to the next 5 cm."""
    return f"{np.ceil(max(short, 0.0) / 0.05 - 1e-6) * 0.05:.2f}"


def _not_checked(venue: Venue) -> tuple[str, ...]:
    out = []
    if venue.stage is None:
        out.append("No stage outline is given: whether anyone leaves the stage was not checked.")
    if not venue.audience:
        out.append("No audience line is given: the distance to the audience was not checked.")
    if not venue.ceilings:
        out.append("No ceiling is given: lines, branches and bunting overhead were not checked.")
    if not venue.scenery:
        out.append("No scenery is given: distances to scenery and drapes were not checked.")
    if not venue.posts:
        out.append("No crew posts are given: whether one lies inside a reach was not checked.")
    return tuple(out)
