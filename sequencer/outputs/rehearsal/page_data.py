"""What the rehearsal page knows about a show: one JSON document, with positions as encoded key samples.

Beats, seconds of the track and metres throughout; facings in radians.
"""

from collections.abc import Collection, Sequence
from dataclasses import asdict
from functools import partial
from itertools import chain
from typing import Any

import numpy as np

from sequencer import content_keys, kept
from sequencer.alike_findings import as_one, by_cause
from sequencer.findings import Finding, Report
from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.wheelchair import HALF_BREADTH, SEAT, WHEEL
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.outputs.rehearsal.danced_words import told_blocks
from sequencer.outputs.rehearsal.keys import (
    KeySamples,
    floor_track,
    measured_error,
    packed,
    prop_track,
    recorded,
    restored,
)
from sequencer.safety.site_ground.site_lines import fuel_rings, lane_outline, lane_words
from sequencer.safety.site_ground.ways_out import ways_out
from sequencer.staging.in_flight.flown_show import is_flown
from sequencer.staging.staged import Staged
from sequencer.timing.position import moment_words
from sequencer.timing.tempo import TempoMap
from sequencer.units import BarLengths, aloud

FORMAT = 1
ROOM_MARGIN = 8.0  # [beats] of motion stored before and after the track, for count-in and trails
STATED_ERROR = 2e-3  # [m]
_RING = 48  # sides of a ring on the ground

Document = dict[str, Any]


def show_document(staged: Staged, report: Report, drawn: Staged | None = None) -> Document:
    """The document of a show.

    Parameters
    ----------
    staged : Staged
        As it is danced.
    report : Report
    drawn : Staged, optional
        Of a show as flown: as drawn, for whoever asks for that on the page.

    Raises
    ------
    ValueError
        If a drawn position would be farther than 2 mm from its law.
    """
    show, song, tempo = staged.show, staged.song, staged.tempo
    start = float(np.floor(tempo.beats_from_seconds(0.0))) - ROOM_MARGIN
    end = float(np.ceil(tempo.beats_from_seconds(song.duration))) + ROOM_MARGIN
    cast, keys, error = _both_ways(staged, drawn, start, end)
    order = {dancer.name: index for index, dancer in enumerate(staged.dancers)}
    burn = show.fire.burn if show.fire is not None else None
    for index, dancer in enumerate(staged.dancers):
        cast[index]["lit"] = [
            [_rounded(staged.seconds(span.start)), _rounded(staged.seconds(span.end))]
            for span in staged.lit_of(dancer.name)
        ]
    blocks, texts, mirrored = told_blocks(staged, order)
    return {
        "format": FORMAT,
        "kind": "show",
        "title": f"{show.title}{_which(staged, report)}",
        "version": show.version,
        "date": show.date or "",
        "duration": _rounded(song.duration),
        "tempo": tempo_document(tempo),
        "sections": [
            [name, _rounded(section.start), _rounded(section.end)]
            for section, name in zip(song.sections, song.section_names(), strict=True)
        ],
        "place": place_document(staged),
        "crew": [
            {
                "name": post.name,
                "duty": post.duty,
                "at": list(post.post),
                "watches": list(post.watches),
            }
            for post in show.crew
        ],
        "cast": cast,
        "keys": keys,
        "blocks": blocks,
        "texts": texts,
        "mirrored": mirrored,
        "standings": [
            {
                "name": standing.formation,
                "walk": _rounded(standing.walk),
                "start": _rounded(standing.start),
                "spots": [
                    [order[who], *spot[:2]] for who, spot in standing.spots.items() if who in order
                ],
            }
            for standing in staged.standings
        ],
        "stations": [],
        "burn": None if burn is None else {"seconds": burn.time, "measured": burn.measured},
        "findings": [finding_document(finding) for finding in report.findings],
        "entries": entries_document(report),
        "clearances": [asdict(each) for each in report.clearances if each.distance < each.required],
        "apart": _apart(report, order),
        "not_checked": list(report.not_checked),
        "part": _part(staged),
        "error": {"stated": STATED_ERROR, "measured": round(error, 6)},
    }


def _both_ways(
    staged: Staged, drawn: Staged | None, start: float, end: float
) -> tuple[list[Document], str, float]:
    """The cast as danced and, where given, each as drawn right after it: the page reads key samples in that order."""
    if drawn is None:
        return cast_document(staged.dancers, start, end)
    pairs = zip(staged.dancers, drawn.dancers, strict=True)
    both, keys, error = cast_document(tuple(chain.from_iterable(pairs)), start, end)
    cast = [
        own
        | {"drawn": other["tracks"], "drawnDeviation": other["deviation"]}
        | {"reach": max(own["reach"], other["reach"])}
        for own, other in zip(both[::2], both[1::2], strict=True)
    ]
    return cast, keys, error


def _which(staged: Staged, report: Report) -> str:
    """What the page shows of a show, if it is not the show as drawn."""
    part = f" – {report.part}" if report.part else ""
    tonight = f" – {staged.tonight}" if staged.tonight else ""
    return part + (" – as flown" if any(map(is_flown, staged.dancers)) else "") + tonight


def _part(staged: Staged) -> list[float] | None:
    """The part that the page repeats, in seconds of the track; None for a whole show."""
    if staged.part is None:
        return None
    return [staged.seconds(edge) for edge in (staged.part.start, staged.part.end)]


def _apart(report: Report, cast: Collection[str]) -> float | None:
    """Required distance between two performers [m]; None if there is none."""
    required = [each.required for each in report.clearances if set(each.between) <= set(cast)]
    return max(required, default=None)


def cast_document(
    dancers: tuple[Dancer, ...], start: float, end: float
) -> tuple[list[Document], str, float]:
    """Performers with their tracks between two beats, all key samples, and the largest error [m].

    Raises
    ------
    ValueError
        If a drawn position would be farther than 2 mm from its law.
    """
    cast: list[Document] = []
    tracks: list[KeySamples] = []
    worst = 0.0
    for dancer in dancers:
        motions, error = kept.kept(
            "tracks of a rehearsal page",
            (content_keys.whole_code(), dancer, start, end),
            partial(_motions, dancer, start, end),
            record=_recorded,
            restore=_restored,
        )
        if error > STATED_ERROR:
            raise ValueError(
                f"{dancer.name} moves too fast to be drawn within 2 mm (error {1e3 * error:.1f} mm)"
            )
        worst = max(worst, error)
        tracks += motions.values()
        cast.append(
            {
                "name": dancer.name,
                "body": _body(dancer.body, dancer.carriage.column_top),
                **_carriage(dancer.carriage),
                "props": {
                    side: {
                        "kind": prop.kind,
                        "length": prop.length,
                        "lines": [
                            [round(value, 4) for spot in (line.start, line.end) for value in spot]
                            for line in prop.solids
                            if line.start != line.end
                        ],
                        "heads": [[round(s.along, 4), round(s.across, 4)] for s in prop.heads],
                        "wick": prop.wick_radius,
                        "flame": prop.flame_reach,
                        "room": _room(prop),
                    }
                    for side, prop in dancer.props.items()
                },
                "tracks": {name: _track(track) for name, track in motions.items()},
                "spans": {
                    side: [
                        [_rounded(span.start), _rounded(span.end), span.kind]
                        for span in drawn.spans
                    ]
                    for side, trajectory in dancer.trajectories.items()
                    if isinstance(drawn := getattr(trajectory, "drawn", trajectory), Trajectory)
                },
                "lit": [],
                "reach": _rounded(
                    dancer.reach
                    + float(np.linalg.norm(_give(dancer.body)))
                    + max(map(_most, dancer.deviation.values()), default=0.0)
                ),
                "deviation": {
                    side: [[_rounded(value) for value in each] for each in angles]
                    for side, angles in dancer.deviation.items()
                },
            }
        )
    return cast, packed(tracks), worst


def _motions(dancer: Dancer, start: float, end: float) -> tuple[dict[str, KeySamples], float]:
    """A performer's tracks between two beats, and the largest error of what is drawn from them [m]."""
    motions = {"floor": floor_track(dancer.floor, dancer.reach, start, end)}
    for side in SIDES:
        if side in dancer.props:
            prop = dancer.props[side]
            wide = max(abs(spot.across) for spot in prop.heads)
            motions[side] = prop_track(
                dancer.trajectories[side], prop.farthest, start, end, aside=wide
            )
    return motions, measured_error(dancer, motions, start, end)


def _recorded(result: tuple[dict[str, KeySamples], float]) -> Document:
    motions, error = result
    return {"tracks": {name: recorded(track) for name, track in motions.items()}, "error": error}


def _restored(record: Document) -> tuple[dict[str, KeySamples], float]:
    return {name: restored(each) for name, each in record["tracks"].items()}, record["error"]


def _room(prop: Prop) -> Document:
    """What others keep clear of, along the prop's axis; radii unlit and lit."""
    rear = [prop.wick_radius, prop.hot_radius] if prop.burns_behind else [prop.shaft_radius] * 2
    return {
        "ball": _rounded(prop.ball[0]),
        "behind": prop.behind,
        "shaft": _rounded(prop.shaft_radius),
        "radius": [_rounded(prop.cold_radius), _rounded(prop.burning_radius)],
        "rear": rear,
    }


def _most(spans: Sequence[HandDeviation]) -> float:
    return max((each.size for each in spans), default=0.0)


def tempo_document(tempo: TempoMap) -> Document:
    """Beats and bars of the song, to the microsecond."""
    return {
        "times": [_rounded(float(time)) for time in tempo.times],
        "first": tempo.first,
        "bars": list(tempo.bars),
        "metre": tempo.metre,
    }


def finding_document(finding: Finding) -> Document:
    """A finding as the page tells it: in words, without its place and its figures, which may be without a limit."""
    whole = asdict(finding)
    return {key: whole[key] for key in whole if key not in ("where", "figures", "hands")}


def finding_when(finding: Finding, bars: BarLengths) -> str | None:
    """When a finding is, as it can be counted aloud; before the track nothing is counted."""
    if finding.start is not None and finding.start < 0.0:
        return moment_words(finding.start)
    return None if finding.position is None else aloud(finding.position, bars)


def entries_document(report: Report) -> list[Document]:
    """Findings as a list tells them: those of one cause once, where the first of them stands."""
    place = {id(finding): k for k, finding in enumerate(report.findings)}
    out = []
    for group in by_cause(report.findings):
        one = as_one(group, report.bars)
        out.append(
            {
                "severity": one.severity,
                "start": one.start,
                "position": finding_when(one, report.bars),
                "message": one.message,
                "remedies": list(one.remedies),
                "of": [place[id(finding)] for finding in group],
            }
        )
    return out


def _rounded(value: float) -> float:
    return round(float(value), 6)


def _body(body: Body, top: float) -> Document:
    """Measures for drawing a body, and the column from which distances to others are measured [m]."""
    return {
        "stature": body.stature,
        "chair": _chair(body) if body.seated else None,
        "crown": round(body.height, 4),
        "hips": round(body.hip_height, 4),
        "column": [round(body.girth, 4), round(top, 4)],
        "shoulder": body.shoulder_height,
        "halfShoulder": round(body.half_shoulder, 4),
        "halfBreadth": round(body.half_breadth, 4),
        "arm": round(body.arm_length, 4),
        "limb": round(body.limb_radius, 4),
        "give": [round(value, 4) for value in _give(body)],
    }


def _chair(body: Body) -> Document:
    """Measures for drawing a wheelchair and its user's legs [m]: knee and sole as (ahead, up)."""
    shank = body.legs[1]
    return {
        "seat": SEAT,
        "wheel": WHEEL,
        "half": HALF_BREADTH,
        "knee": [round(value, 4) for value in shank.start[1:]],
        "sole": [round(shank.end[1], 4), round(shank.end[2] - shank.radius, 4)],
    }


def _give(body: Body) -> list[float]:
    """How far a shoulder can move: in, back, forward and up [m]."""
    low, high = body.shoulder_give
    return [-float(low[0]), -float(low[1]), float(high[1]), float(high[2])]


def _carriage(carriage: Carriage) -> Document:
    """Spans of each posture and its five angles [rad]; empty for somebody who stays upright."""
    if carriage.upright:
        return {}
    return {
        "carriage": [
            [_rounded(each.start), _rounded(each.end), *(round(a, 5) for a in each.posture.angles)]
            for each in carriage.held
        ]
    }


def _track(track: KeySamples) -> Document:
    return {
        "start": track.start,
        "intervals": list(track.intervals),
        "steps": list(track.steps),
        "bases": list(track.bases),
    }


def place_document(staged: Staged) -> Document:
    """The ground: stage, audience, scenery, exits, what stands there, and lines marked on it."""
    venue, stage = staged.show.venue, staged.venue.stage
    return {
        "outline": [] if stage is None else _corners(stage.outline),
        "holes": [] if stage is None else [_corners(hole) for hole in stage.holes],
        "audience": [
            {"name": edge.name, "line": [list(p) for p in edge.line]} for edge in venue.audience
        ],
        "scenery": [
            {
                "name": thing.name,
                "outline": [list(p) for p in thing.outline],
                "height": thing.height,
            }
            for thing in venue.scenery
        ],
        "exits": [{"name": exit_.name, "at": list(exit_.at)} for exit_ in venue.exits],
        "extinguishers": [list(thing.at) for thing in venue.extinguishers],
        "fuel": None if venue.fuel_station is None else list(venue.fuel_station),
        "lines": _lines(staged),
    }


def _lines(staged: Staged) -> list[Document]:
    """What is marked on the ground: ways to the exits, fire lane, gate, spin-off zone, rings round the fuel."""
    venue = staged.show.venue
    found: list[tuple[str, Sequence[tuple[float, float]]]] = [
        ("" if out.counted else f"{out.name} does not count", out.way)
        for out in ways_out(staged)
        if out.way
    ]
    if venue.fire_lane is not None:
        corners = lane_outline(venue.fire_lane)
        found.append((lane_words(venue.fire_lane), [*corners, corners[0]]))
    if venue.gate is not None:
        found.append(("gate", [venue.gate]))
    if venue.spin_off is not None:
        found.append(("spin-off zone", [*venue.spin_off, venue.spin_off[0]]))
    if venue.fuel_station is not None:
        x, y = venue.fuel_station
        turns = np.linspace(-np.pi / 2, 1.5 * np.pi, _RING + 1)
        for radius, words in fuel_rings(staged):
            ring = np.stack([x + radius * np.cos(turns), y + radius * np.sin(turns)], axis=1)
            found.append((f"{words} within {radius:.2f} m of the fuel", ring.tolist()))
    return [{"name": name, "points": _corners(points)} for name, points in found]


def _corners(outline: Sequence[tuple[float, float]]) -> list[list[float]]:
    return [[round(x, 3), round(y, 3)] for x, y in outline]
