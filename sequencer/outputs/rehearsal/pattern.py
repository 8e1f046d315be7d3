"""The rehearsal page of one pattern: one performer dances it on the spot, and you can step through its stations."""

from collections.abc import Mapping, Sequence

from sequencer.geometry.bodies import Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.build_steps import Station
from sequencer.motion.patterns.timing_words import timing_words
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
from sequencer.outputs.rehearsal.danced_words import mirrored_station, mirrored_words
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
from sequencer.outputs.sheets.parts.dance_rows.hand_words import said
from sequencer.outputs.words.law_words import law_words
from sequencer.outputs.words.posture_words import posture_words, widest_gives
from sequencer.outputs.words.setting_words import setting_words
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
    hands = timing_words(one.dance.timing, one.dance.direction)
    lines = [
        one.pattern.summary,
        hands if len(one.sides) > 1 else "",
        *_hands(one),
        *setting_words(one.given, places=True),
        f"for someone {body_words(one)}",
        *values_words(one),
        posture_words(one.posture, gives),
        verdict(one.proven),
        *_flown_lines(one),
        f"one round of the hand in {cycle_words(one)}, home after {number_words(end)}",
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
        "mirrored": [[one.name, *map(mirrored_words, filter(None, lines))]],
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


def _hands(one: OnePattern) -> list[str]:
    """What each hand does; once if both do it alike."""
    told = {side: said(law_words(one.laws[side]), one.prop.kind) for side in one.sides}
    if len(set(told.values())) == 1:
        return [next(iter(told.values()))]
    return [f"{side}: {words}" for side, words in told.items()]


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
    """Beat and words of each station of the right hand, and of its mirror image; quarters of the cycle where there are none."""
    try:
        steps = one.stations()
    except ValueError:  # not built of stations
        quarters = [
            (round(k * one.cycle / 4, 6), f"quarter {k % 4 + 1} of a round of the hand")
            for k in range(round(4 * end / one.cycle))
        ]
        return [[beat, words, words] for beat, words in quarters]
    images = [_of_left(words) for words in _told(list(map(mirrored_station, steps)))]
    told = zip(_told(steps), images, strict=True)
    return [
        [round(step.beat, 6), own, image]
        for step, (own, image) in zip(steps, told, strict=True)
        if step.beat < end - 1e-6
    ]


def _told(steps: Sequence[Station]) -> list[str]:
    return [
        f"step {step.number} · {hand_words(said.hand)} · {said.way}, {said.plane}"
        + (f" · next: {said.then}" if said.then else "")
        for step, said in zip(steps, step_words(steps), strict=True)
    ]


def _of_left(words: str) -> str:
    """A left hand's step: its own side is the left, and the right lies across."""
    return words.replace("out to the right", "across to the right").replace(
        "across to the left", "out to the left"
    )
