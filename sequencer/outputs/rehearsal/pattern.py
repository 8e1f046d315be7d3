"""The rehearsal page of one pattern: one performer dances it on the spot, and you can step through its stations."""

from collections.abc import Mapping

from sequencer.geometry.bodies import Side
from sequencer.motion.laws.law import Law
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.outputs.patterns.fit_words import (
    body_words,
    cycle_words,
    number_words,
    values_words,
    verdict,
)
from sequencer.outputs.patterns.flown_words import (
    NOT_LOOKED_AT,
    flown_lines,
    flown_record,
    flown_words,
)
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.outputs.rehearsal.page_data import (
    FORMAT,
    ROOM_MARGIN,
    STATED_ERROR,
    Document,
    cast_document,
    tempo_document,
)
from sequencer.outputs.rehearsal.page_file import page_from_document
from sequencer.outputs.rehearsal.song_audio import silent
from sequencer.outputs.words.block_words import parameters_text
from sequencer.outputs.words.posture_words import posture_words, widest_gives
from sequencer.outputs.words.station_words import hand_words, step_words
from sequencer.timing.tempo import TempoMap

_LONGEST = 64  # beats shown of a pattern that never comes home


def pattern_page(one: OnePattern) -> str:
    """The HTML of one pattern's page."""
    return page_from_document(pattern_document(one), silent(""))


def pattern_document(one: OnePattern) -> Document:
    """The document of one pattern, from its start until it is back where it began.

    Parameters
    ----------
    one : OnePattern
        The body keeps the posture that was found for it.
    """
    end = one.end if one.end <= _LONGEST else min(4 * one.cycle, _LONGEST)
    dancer = _dancer(one, one.flown_laws, end)
    flown = one.flown_laws is not one.laws
    ways = (dancer, _dancer(one, one.laws, end)) if flown else (dancer,)
    gives = {} if one.posture.upright else widest_gives(dancer, 0.0, end)
    cast, keys, error = cast_document(ways, -ROOM_MARGIN, end + ROOM_MARGIN)
    if flown:
        cast = [cast[0] | {"drawn": cast[1]["tracks"]}]
    count = TempoMap.steady(one.tempo, beats=int(end) + 2)
    hands = f"{one.dance.timing} time, {one.dance.direction} direction"
    lines = [
        one.pattern.summary,
        hands if len(one.sides) > 1 else "",
        parameters_text(one.given),
        f"for someone {body_words(one)}",
        *values_words(one),
        posture_words(one.posture, gives),
        verdict(one.proven),
        *_flown_lines(one),
        f"one hand cycle in {cycle_words(one)}, home after {number_words(end)}",
        one.pattern.notes,
    ]
    return {
        "format": FORMAT,
        "kind": "pattern",
        "title": one.name,
        "version": "",
        "date": "",
        "duration": round(float(count.seconds_from_beats(end)), 6),
        "tempo": tempo_document(count),
        "sections": [],
        "place": {
            "outline": [[-1.6, -1.6], [1.6, -1.6], [1.6, 1.6], [-1.6, 1.6]],
            "holes": [], "audience": [], "scenery": [], "exits": [], "extinguishers": [], "fuel": None, "lines": [],
        },
        "crew": [],
        "cast": cast,
        "keys": keys,
        "blocks": [[0, 0.0, end, 0, 0]],
        "texts": [[one.name, *filter(None, lines)]],
        "standings": [],
        "stations": _stations(one, end),
        "burn": None,
        "findings": [],
        "entries": [],
        "clearances": [],
        "apart": None,
        "not_checked": _not_checked(one),
        "error": {"stated": STATED_ERROR, "measured": round(error, 6)},
    }  # fmt: skip


def _dancer(one: OnePattern, laws: Mapping[Side, Law], end: float) -> Dancer:
    before, after = -2 * ROOM_MARGIN, end + 2 * ROOM_MARGIN
    return Dancer(
        name="you",
        body=one.body,
        props=dict(one.dance.props),
        trajectories={
            side: Trajectory(
                (Span(start=before, end=after, law=law, origin=0.0, kind="block", label=one.name),)
            )
            for side, law in laws.items()
        },
        floor=WalkPath((0.0, 0.0)),
        carriage=one.carriage(before, after),
    )


def _flown_lines(one: OnePattern) -> list[str]:
    """How each hand flies it; once if both fly it alike."""
    if not one.prop.flexible:
        return ["flies as drawn"]
    line = "rope" if one.prop.kind == "rope dart" else "tether"
    told: dict[Side, list[str]] = {}
    for side in one.sides:
        record = flown_record(one, side, search=False)
        told[side] = [] if record is None else flown_lines(record, line)
    if not one.flies:
        shown = [flown_words(one) or "shown as drawn: whether it can be flown is not known"]
    else:
        shown = ["danced as flown; key F: as drawn"]
    lead = told["right"]
    words = [f"as flown, {lead[0]}", *lead[1:]] if lead and one.flies else lead[1:]
    differing = [each for each in told.get("left", []) if each not in lead]
    return [*shown, *words, *(f"left hand: {each}" for each in differing)]


def _not_checked(one: OnePattern) -> list[str]:
    if not one.prop.flexible:
        return []
    return [f"{NOT_LOOKED_AT}, in how it is flown"]


def _stations(one: OnePattern, end: float) -> list[list[object]]:
    """Beat and words of each station of the right hand; quarters of the cycle where there are none."""
    try:
        steps = one.stations()
    except ValueError:  # not built of stations
        return [
            [round(k * one.cycle / 4, 6), f"quarter {k % 4 + 1} of the hand cycle"]
            for k in range(round(4 * end / one.cycle))
        ]
    return [
        [
            round(step.beat, 6),
            f"step {step.number} · {hand_words(said.hand)} · {said.way}, {said.plane}"
            + (f" · next: {said.then}" if said.then else ""),
        ]
        for step, said in zip(steps, step_words(steps), strict=True)
        if step.beat < end - 1e-6
    ]
