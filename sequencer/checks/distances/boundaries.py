"""Every performer against what stands still: audience, scenery, ceiling, floor, edge, crew posts."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.outcome import BeatClock, Outcome, deviation_words, length_words
from sequencer.findings import Clearance, Finding, Severity
from sequencer.geometry.bodies import SIDES
from sequencer.geometry.certified import TOLERANCE
from sequencer.geometry.prisms import Prism, plane
from sequencer.geometry.regions import Venue
from sequencer.motion.clearance.fixtures import Encounters, Measure, encounters, lowest_wick
from sequencer.motion.clearance.grid import cells
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.parts import FIRST_POINT, PARTS
from sequencer.motion.props.prop import Prop
from sequencer.timing.tempo import TempoMap

_TOGETHER = 32.0  # [beats] approaches no farther apart than this are told in one finding

LEAST_PROP = 0.20  # [m] from hand to wick: a shorter one is none to spin, and no counsel
ON_STAGE = 0.05  # [m] by which a line must lie within the stage: one along the edge is none


@dataclass(frozen=True, slots=True, kw_only=True)
class _ClearanceRule:
    """One question: how close every dancer comes to one thing."""

    code: str
    thing: str
    prisms: tuple[Prism, ...]
    measure: Measure
    required: float
    rule: str  # field of Requirements
    only_lit: bool = False
    severity: Severity = "stop"
    said: str  # of what the distance is measured from
    mend: Callable[[float], str] | None = None  # from what is missing [m]; the floor has its own

    def of(self, dancer: Dancer) -> float:
        """What a dancer must keep [m]: measured from the place, a wheelchair's column needs as much more."""
        wide = dancer.body.girth - dancer.body.half_breadth if self.measure == "place" else 0.0
        return self.required + wide

    def mends(self, distance: float, required: float) -> tuple[str, ...]:
        """What would mend a distance under the requirement."""
        if self.measure == "place" and distance < TOLERANCE:
            # Beyond the edge the distance is 0 however far: no number of metres is known to do.
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
    """Distances and conflicts of every performer with what stands still, between two beats."""
    grid = cells(dancers, start, end)
    total = Outcome(findings=_audience_on_stage(venue), not_checked=_unseen(venue))
    for ask in _clearance_rules(dancers, venue, requirements):
        found = encounters(
            dancers,
            grid,
            ask.prisms,
            measure=ask.measure,
            required=np.array([ask.of(dancer) for dancer in dancers]),
            only_lit=ask.only_lit,
        )
        total += _told(dancers, tempo, requirements, ask, found)
    return total + _ceilings(dancers, tempo, venue, requirements)


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
    """What the audience line must keep [m]: more, once, where two or more are ever lit at once."""
    edges = sorted(
        [(start, 1) for dancer in dancers for start, _ in dancer.lit]
        + [(end, -1) for dancer in dancers for _, end in dancer.lit]
    )
    burning = np.cumsum([step for _, step in edges]) if edges else np.zeros(1)
    more = requirements.audience_more if burning.max() >= 2 else 0.0
    return requirements.audience + more


def ceiling_needed(dancer: Dancer, requirements: Requirements) -> float:
    """Height for an arm and a prop straight up, the flame, and the room over it [m]."""
    return max(ceilings_asked(dancer, requirements).values())


def ceilings_asked(dancer: Dancer, requirements: Requirements) -> dict[str, float]:
    """Height that each rule asks of a ceiling over a dancer's fire [m], by the rule's name."""
    tops = [
        dancer.body.overhead_grip + prop.farthest + prop.hot_radius
        for prop in dancer.props.values()
    ]
    return {
        "ceiling_least": requirements.ceiling_least,
        "overhead": max(tops, default=0.0) + requirements.overhead,
    }


def _clearance_rules(
    dancers: Sequence[Dancer], venue: Venue, requirements: Requirements
) -> list[_ClearanceRule]:
    audience = audience_distance(dancers, requirements)
    asks = [
        _ClearanceRule(
            code="audience-too-close",
            thing=edge.name,
            prisms=edge.prisms,
            measure="envelope",
            required=audience,
            rule="audience_more" if audience > requirements.audience else "audience",
            only_lit=True,
            said="the reach of arm, prop and flame",
            mend=lambda short: (
                f"move the place, or the audience line, {_up(short)} m farther away, or dance it unlit"
            ),
        )
        for edge in venue.audience
    ]
    if venue.stage is not None:
        asks.append(
            _ClearanceRule(
                code="off-stage",
                thing="edge of the stage",
                prisms=venue.stage.outside(),
                measure="place",
                required=requirements.stage_edge,
                rule="stage_edge",
                said="the middle of the body",
                mend=lambda short: f"move the place or the walk {_up(short)} m towards the stage",
            )
        )
    for piece in venue.scenery:
        asks.append(
            _ClearanceRule(
                code="scenery-too-close",
                thing=piece.name,
                prisms=piece.prisms,
                measure="parts",
                required=requirements.scenery,
                rule="scenery",
                said="",
                mend=lambda short: f"move the place or the scenery {_up(short)} m farther away",
            )
        )
        if piece.combustible:
            asks.append(
                _ClearanceRule(
                    code="scenery-too-close",
                    thing=f"{piece.name} (combustible)",
                    prisms=piece.prisms,
                    measure="flames",
                    required=requirements.combustible,
                    rule="combustible",
                    said="",
                    mend=lambda short: (
                        f"move the place or the scenery {_up(short)} m farther away, use what does "
                        "not burn, or dance it unlit"
                    ),
                )
            )
    asks += [
        _ClearanceRule(
            code="ceiling-too-low",
            thing=ceiling.name,
            prisms=ceiling.prisms,
            measure="flames",
            required=requirements.overhead,
            rule="overhead",
            said="",
            mend=lambda short: (
                f"keep the flame {_up(short)} m lower: a shorter prop, a lower hand, or "
                "another pattern"
            ),
        )
        for ceiling in venue.ceilings
    ]
    asks.append(
        _ClearanceRule(
            code="hits-floor",
            thing="floor",
            prisms=(plane(top=0.0),),
            measure="wicks",
            required=requirements.floor,
            rule="floor",
            severity="warn",
            said="",
        )
    )
    asks += [
        _ClearanceRule(
            code="post-in-reach",
            thing=post.name,
            prisms=post.prisms,
            measure="envelope",
            required=requirements.post + post.radius,
            rule="post",
            said="the reach of arm, prop and flame",
            mend=lambda short: f"move the post {_up(short)} m farther away",
        )
        for post in venue.posts
    ]
    return asks


def _told(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    requirements: Requirements,
    ask: _ClearanceRule,
    found: Encounters,
) -> Outcome:
    count = BeatClock(tempo)
    findings, rows = [], []
    for k, dancer in enumerate(dancers):
        if not np.isfinite(found.distance[k]):
            continue
        beat = float(found.at[k])
        part = ask.said or _part(found, k, dancer)
        x, y = dancer.floor.at(beat).place
        rows.append(
            Clearance(
                between=(dancer.name, ask.thing),
                distance=float(found.distance[k]),
                required=ask.of(dancer),
                at=count.seconds(beat),
                error=0.0 if found.bound[k] else TOLERANCE,
                parts=(part, ask.thing),
                where=(float(x), float(y)),
                bound=bool(found.bound[k]),
                position=count.position(beat),
            )
        )
        of = found.spans.group == k
        begin, end = found.spans.start[of], found.spans.end[of]
        cuts = np.flatnonzero(begin[1:] - end[:-1] > _TOGETHER) + 1
        findings += [
            _finding(dancer, count, requirements, ask, found, k, begin[some], end[some], part)
            for some in np.split(np.arange(len(begin)), cuts)
            if len(some)
        ]
    return Outcome(findings=tuple(findings), clearances=tuple(rows))


def _finding(
    dancer: Dancer,
    count: BeatClock,
    requirements: Requirements,
    ask: _ClearanceRule,
    found: Encounters,
    k: int,
    begin: Floats,
    end: Floats,
    part: str,
) -> Finding:
    worst = float(found.distance[k])
    often = (
        "" if len(begin) == 1 else f"; {len(begin)} times up to {count.position(float(end[-1]))}"
    )
    x, y = dancer.floor.at(float(begin[0])).place
    # The envelope and the place do not grow with the hands' work: an arm is as long as it is.
    moving = ask.measure in {"parts", "flames"}
    work = deviation_words(float(found.at[k]), dancer) if moving else ""
    thing, remedies = ask.thing, ask.mends(worst, ask.of(dancer))
    if ask.measure == "wicks":
        low = _lowest(dancer, float(found.at[k]), int(found.part[k]), worst)
        work, thing, remedies = low.words, "the floor", low.mends(ask.required)
    gap = f"comes within {worst:.2f} m of" if worst >= 0 else f"reaches {length_words(worst)} into"
    if ask.measure == "place" and worst < TOLERANCE:
        gap = "goes beyond"
    return Finding(
        code=ask.code,
        severity=ask.severity,
        who=(dancer.name,),
        start=count.seconds(float(begin[0])),
        end=count.seconds(float(end[-1])),
        position=count.position(float(begin[0])),
        message=(
            f"{dancer.name}: {part} {gap} {thing}, closest at "
            f"{count.position(float(found.at[k]))}; {ask.of(dancer):.2f} m is required{work}{often}"
        ),
        remedies=remedies,
        source=requirements.source(ask.rule),
        where=(float(x), float(y)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lowest:
    """A wick at its lowest: as drawn, as told with hand work, and as low as the arm lets it be."""

    prop: Prop
    drawn: float  # [m] over the floor
    told: float  # [m]
    off: float  # [m] that the hand may be off its drawn path
    hanging: float  # [m] arm and prop straight down
    room: float  # [m] by which the hand can go up before the arm is straight overhead

    @property
    def words(self) -> str:
        """What hand work took off, and whether the arm's length held it."""
        taken = self.drawn - self.told
        if taken <= TOLERANCE:
            return ""
        held = " down to where the arm is straight" if taken < self.off - TOLERANCE else ""
        return f" (drawn {length_words(self.drawn)} over it; hand work: {length_words(taken)} taken off{held})"

    def mends(self, required: float) -> tuple[str, ...]:
        """What would keep it off the floor, and can be done."""
        worked = self.drawn >= required - TOLERANCE
        up = required - (self.drawn - self.off)
        out = []
        if worked:
            out.append(
                "it is drawn clear of the floor and comes down by hand work alone: choose a pattern that needs "
                "less of it (`sequencer patterns NAME` tells how much)"
            )
        elif self.drawn < self.hanging - TOLERANCE:
            out.append("bring the hand within the arm's reach first: it is drawn lower than that")
        if up <= self.room:
            out.append(f"raise the hand by {_up(up)} m (up)")
        # At this length the wick clears the floor wherever the hand is: as drawn, or at the arm's end.
        short = required - (self.hanging if worked else self.drawn)
        left = np.floor(100 * (self.prop.farthest - short) + 1e-6) / 100
        if left >= LEAST_PROP:
            out.append(
                f"take a {'tether' if self.prop.kind == 'poi' else 'rope'} of at most {left:.2f} m"
                if self.prop.flexible
                else f"take a smaller {self.prop.kind}: at most {left:.2f} m from the hand to that wick"
            )
        return tuple(out) or ("choose another pattern",)


def _lowest(dancer: Dancer, beat: float, part: int, told: float) -> _Lowest:
    side = PARTS[part].side
    if side is None:
        raise ValueError(f"part {part} is no wick")
    prop, body = dancer.props[side], dancer.body
    points = dancer.stage_points(np.array(beat))[0]
    radius = prop.wick_radius if PARTS[part].kind == "rear" else prop.cold_radius
    return _Lowest(
        prop=prop,
        drawn=float(points[PARTS[part].start, 2]) - radius,
        told=told,
        off=float(dancer.deviations(beat)[SIDES.index(side)]),
        hanging=lowest_wick(dancer, side),
        room=body.shoulder_height + body.arm_length - float(points[FIRST_POINT[side] + 1, 2]),
    )


def _ceilings(
    dancers: Sequence[Dancer], tempo: TempoMap, venue: Venue, requirements: Requirements
) -> Outcome:
    """Ceilings against arm and prop straight up, whatever the pattern draws."""
    count = BeatClock(tempo)
    findings = []
    for ceiling in venue.ceilings:
        for dancer in dancers:
            needed = ceiling_needed(dancer, requirements)
            if not dancer.lit or ceiling.height >= needed:
                continue
            if ceiling.region is not None and not _goes_under(dancer, ceiling.region.prisms()):
                continue
            beat = dancer.lit[0][0]
            findings.append(
                Finding(
                    code="ceiling-too-low",
                    severity="stop",
                    who=(dancer.name,),
                    start=count.seconds(beat),
                    end=count.seconds(dancer.lit[-1][1]),
                    position=count.position(beat),
                    message=(
                        f"{dancer.name}: {ceiling.name} at {ceiling.height:.2f} m; arm and prop "
                        f"straight up, flame and room over it need {needed:.2f} m"
                    ),
                    remedies=(
                        f"perform unlit, under a ceiling of {needed:.2f} m or more, or in the open",
                    ),
                    source=" ".join(
                        requirements.source(name)
                        for name, asked in ceilings_asked(dancer, requirements).items()
                        if ceiling.height < asked
                    ),
                    where=None,
                )
            )
    return Outcome(findings=tuple(findings))


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
    """What is missing, rounded up to the next 5 cm."""
    return f"{np.ceil(max(short, 0.0) / 0.05 - 1e-6) * 0.05:.2f}"


def _unseen(venue: Venue) -> tuple[str, ...]:
    out = []
    if venue.stage is None:
        out.append("No stage outline is given: whether anyone leaves the stage was not looked at.")
    if not venue.audience:
        out.append("No audience line is given: the distance to the audience was not looked at.")
    if not venue.ceilings:
        out.append(
            "No ceiling is entered: lines, branches and bunting overhead were not looked at."
        )
    if not venue.scenery:
        out.append("No scenery is given: distances to scenery and drapes were not looked at.")
    if not venue.posts:
        out.append("No crew posts are given: whether one lies inside a reach was not looked at.")
    return tuple(out)
