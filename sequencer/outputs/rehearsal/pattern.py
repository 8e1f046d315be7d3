"""The rehearsal page of one pattern: danced on the spot by one performer, with steps through its stations."""

from collections.abc import Mapping
from dataclasses import replace
from math import isfinite
from typing import get_args

from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.blocks import Direction, Timing, block_laws
from sequencer.motion.carriage import Carriage, Held
from sequencer.motion.course import Course, Span
from sequencer.motion.dancer import Dancer
from sequencer.motion.floor import FloorPath
from sequencer.motion.kinds import DEFAULT_TETHER
from sequencer.motion.library import Pattern, cycle_beats, find
from sequencer.motion.props import Prop
from sequencer.motion.rows import STATURE
from sequencer.motion.steps import build_steps
from sequencer.outputs.block_words import parameters_text
from sequencer.outputs.posture_words import posture_words, widest_gives
from sequencer.outputs.rehearsal.document import (
    FORMAT,
    MARGIN,
    STATED_ERROR,
    Document,
    cast_document,
    tempo_document,
)
from sequencer.outputs.rehearsal.page import page_from_document
from sequencer.outputs.rehearsal.sound import silent
from sequencer.timing.tempo import TempoMap

TIMINGS: tuple[Timing, ...] = get_args(Timing)
DIRECTIONS: tuple[Direction, ...] = get_args(Direction)
LONGEST = 64  # beats of a pattern that never comes home


def pattern_page(
    name: str,
    parameters: Mapping[str, object],
    *,
    tempo: float = 80.0,
    timing: Timing = "split",
    direction: Direction = "same",
    prop: Prop | None = None,
    book: Mapping[str, Pattern] | None = None,
    posture: Posture = UPRIGHT,
) -> str:
    """The HTML of one pattern's page.

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    document = pattern_document(
        name,
        parameters,
        tempo=tempo,
        timing=timing,
        direction=direction,
        prop=prop,
        book=book,
        posture=posture,
    )
    return page_from_document(document, silent(""))


def pattern_document(
    name: str,
    parameters: Mapping[str, object],
    *,
    tempo: float = 80.0,
    timing: Timing = "split",
    direction: Direction = "same",
    prop: Prop | None = None,
    book: Mapping[str, Pattern] | None = None,
    posture: Posture = UPRIGHT,
) -> Document:
    """The document of one pattern, from its start until it is back where it began.

    Parameters
    ----------
    name : str
    parameters : mapping
    tempo : float
        [beats a minute]
    timing : {"together", "split", "quarter"}
    direction : {"same", "opposite"}
        Of the left hand against the right.
    prop : Prop, optional
        In both hands; a poi if not given.
    book : mapping, optional
        Patterns to look in, instead of the built-in ones.
    posture : Posture, optional
        How the body gives way throughout.

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    if timing not in TIMINGS:
        raise ValueError(f"timing must be one of {', '.join(TIMINGS)}, got {timing!r}")
    if direction not in DIRECTIONS:
        raise ValueError(f"direction must be one of {', '.join(DIRECTIONS)}, got {direction!r}")
    pattern = find(name, book)
    body = Body(stature=STATURE)
    given = {key: value for key, value in parameters.items() if key != "beats"}
    cycle = float(str(parameters.get("beats") or cycle_beats(name, given, book)))
    values = pattern.values(given)
    held = prop or Prop(length=DEFAULT_TETHER, mass=0.2, wick_radius=0.05)
    if held.flexible and values.get("tether"):
        held = replace(held, length=float(values["tether"]))
    laws = block_laws(
        dict.fromkeys(SIDES, (name, given)),
        timing=timing, direction=direction, cycle=cycle, body=body,
        tethers=dict.fromkeys(SIDES, held.length), book=book,
    )  # fmt: skip
    home = max(law.period for law in laws.values())
    end = home if isfinite(home) and home <= LONGEST else min(4 * cycle, LONGEST)
    stations = _stations(name, given, body, cycle, end, book)
    courses: dict[Side, Course] = {
        side: Course(
            (
                Span(
                    start=-2 * MARGIN,
                    end=end + 2 * MARGIN,
                    law=law,
                    origin=0.0,
                    kind="block",
                    label=name,
                ),
            )
        )
        for side, law in laws.items()
    }
    dancer = Dancer(
        name="you",
        body=body,
        props=dict.fromkeys(SIDES, held),
        courses=courses,
        floor=FloorPath((0.0, 0.0)),
        carriage=Carriage(body=body, held=(Held(-2 * MARGIN, end + 2 * MARGIN, posture),)),
    )
    gives = {} if posture.upright else widest_gives(dancer, 0.0, end)
    cast, keys, error = cast_document((dancer,), -MARGIN, end + MARGIN)
    count = TempoMap.steady(tempo, beats=int(end) + 2)
    lines = [
        pattern.summary,
        f"{timing} time, {direction} direction",
        parameters_text(given),
        posture_words(posture, gives),
        f"one hand cycle in {cycle:g} {'beat' if cycle == 1 else 'beats'}, home after {end:g}",
        pattern.notes,
    ]
    return {
        "format": FORMAT,
        "kind": "pattern",
        "title": name,
        "version": "",
        "date": "",
        "duration": round(float(count.seconds_from_beats(end)), 6),
        "tempo": tempo_document(count),
        "sections": [],
        "place": {
            "outline": [[-1.6, -1.6], [1.6, -1.6], [1.6, 1.6], [-1.6, 1.6]],
            "holes": [], "audience": [], "scenery": [], "exits": [], "extinguishers": [], "fuel": None,
        },
        "crew": [],
        "cast": cast,
        "keys": keys,
        "blocks": [[0, 0.0, end, 0, 0]],
        "texts": [[name, *filter(None, lines)]],
        "standings": [],
        "stations": stations,
        "burn": None,
        "findings": [],
        "clearances": [],
        "apart": None,
        "unseen": ["whether this pattern can be flown at this tempo: see its card"],
        "error": {"stated": STATED_ERROR, "measured": round(error, 6)},
    }  # fmt: skip


def _stations(
    name: str,
    given: Mapping[str, object],
    body: Body,
    cycle: float,
    end: float,
    book: Mapping[str, Pattern] | None,
) -> list[list[object]]:
    """Beat and words of each station of the right hand; quarters of the cycle where there are none."""
    try:
        own = cycle_beats(name, given, book)
        steps = build_steps(name, given, body=body, book=book)
    except ValueError:  # not built of stations
        return [
            [round(k * cycle / 4, 6), f"quarter {k % 4 + 1} of the hand cycle"]
            for k in range(round(4 * end / cycle))
        ]
    return [
        [
            round(step.beat * cycle / own, 6),
            f"station {step.number}, {step.half} · {step.performer}",
        ]
        for step in steps
        if step.beat * cycle / own < end - 1e-6
    ]
