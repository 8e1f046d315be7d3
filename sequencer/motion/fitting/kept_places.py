"""Best positions of a sampled dance, kept for every tempo: of all that they depend on, only a tether's pull and a prop's twist have one.

A song that sways, or another song, asks for the same patterns at other tempi; where the hands are best is searched once.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import inf
from typing import Any

import numpy as np

from sequencer.geometry.posture import Posture
from sequencer.kept import kept
from sequencer.motion.fitting.fits import Fit, Margins
from sequencer.motion.fitting.kept_fits import formulas
from sequencer.motion.fitting.sampled_dance import Placing, SampledDance

_ANY_TEMPO = (1.0, 1.0)


def best_place(sampled: SampledDance) -> Placing:
    """The best position with the body upright; see `SampledDance.placed`."""
    (found,) = kept(
        "places of hands",
        _content(sampled),
        lambda: [sampled.placed()],
        record=_record,
        restore=_restored,
    )
    return _at_tempo(found, sampled)


def leaning_places(sampled: SampledDance, fit: Fit) -> list[Placing]:
    """Positions near a fit's with the body leant or turned; see `SampledDance.leaning`."""
    moves = [(side, move.tolist()) for side, move in sampled.moves_of(fit).items()]
    found = kept(
        "places of hands, leaning",
        (*_content(sampled), repr(moves)),
        lambda: sampled.leaning(fit),
        record=_record,
        restore=_restored,
    )
    return [_at_tempo(place, sampled) for place in found]


def _content(sampled: SampledDance) -> Iterator[object]:
    """All that a position depends on: of the tempo, whether tethers pull the wrong way, and whether any choice is burdened by it."""
    shape = {side: sorted(values.items()) for side, values in sorted(sampled.shape.items())}
    yield formulas()
    yield replace(sampled.dance, tempo=_ANY_TEMPO).question
    yield repr(shape)
    yield sampled.pull < 0
    yield sampled.burdened


def _at_tempo(place: Placing, sampled: SampledDance) -> Placing:
    return place._replace(margins=place.margins._replace(pull=sampled.pull))


def _record(places: list[Placing]) -> list[Any]:
    return [
        {
            "moves": [[side, move.tolist()] for side, move in place.moves.items()],
            "posture": list(place.posture.angles),
            "margins": [None if each == inf else each for each in place.margins[:3]],
        }
        for place in places
    ]


def _restored(record: list[Any]) -> list[Placing]:
    out = []
    for each in record:
        turn, lean, side, nod, tilt = (float(angle) for angle in each["posture"])
        body, other, reach = (inf if value is None else float(value) for value in each["margins"])
        out.append(
            Placing(
                moves={name: np.array(move, dtype=np.float64) for name, move in each["moves"]},
                posture=Posture(turn=turn, lean=lean, side=side, nod=nod, tilt=tilt),
                margins=Margins(body, other, reach, inf),
            )
        )
    return out
