"""Where the hands are best, known of another tempo: the same as if it were searched anew, to the last bit."""

import json
from dataclasses import replace

import pytest

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.fitting import kept_places
from sequencer.motion.fitting.fits import Dance
from sequencer.motion.fitting.kept_places import best_place
from sequencer.motion.fitting.pacing import TAUT
from sequencer.motion.fitting.sampled_dance import SampledDance
from sequencer.motion.fitting.search import searched
from sequencer.motion.patterns.library import cycle_beats
from sequencer.motion.props.prop import Prop
from tests.nothing_kept import nothing_kept


def dance(name, tempo, *, kind="poi", tether=0.5, mass=0.2, **more):
    prop = Prop(kind=kind, length=tether, mass=mass, wick_radius=0.05)
    return Dance(
        parts={side: (name, {}) for side in SIDES},
        cycle=cycle_beats(name, {}),
        tempo=tempo,
        body=Body(stature=1.7),
        props=dict.fromkeys(SIDES, prop),
        **more,
    )


# The hands are left where they are, are moved, or the trunk turns; the tether pulls the wrong way; a staff is too heavy.
SLOW, FAST, CREEPING, HARDLY = (96.0, 104.0), (116.0, 124.0), (30.0, 40.0), (42.0, 46.0)
CASES = {
    "clear": (dance("two-beat-weave", SLOW), FAST),
    "moved": (dance("pro-bend-4", SLOW), FAST),
    "leaning": (dance("toroid", SLOW, tether=0.66), FAST),
    "slack": (dance("extension", CREEPING), FAST),
    "hardly taut": (dance("pro-bend-4", CREEPING), HARDLY),
    "heavy": (dance("windmill", SLOW, kind="staff", tether=0.7, mass=1.4), (200.0, 240.0)),
}


@pytest.mark.parametrize("case", CASES)
def test_a_fit_is_the_same_whatever_tempo_was_asked_before(case):
    asked, other = CASES[case]
    again = replace(asked, tempo=other)
    with nothing_kept():
        alone = searched(again)
    with nothing_kept():
        searched(asked)
        after = searched(again)
    assert repr(after) == repr(alone)
    assert any(alone.posture.angles) == (case == "leaning")


def test_the_hands_are_placed_once_for_tempi_that_ask_the_same(monkeypatch):
    searches = []
    real = SampledDance.placed
    monkeypatch.setattr(SampledDance, "placed", lambda own: searches.append(own) or real(own))
    with nothing_kept():
        slow = SampledDance(dance("pro-bend-4", SLOW), {})
        fast = SampledDance(dance("pro-bend-4", FAST), {})
        assert best_place(slow).margins.pull == slow.pull != fast.pull
        assert best_place(fast).margins.pull == fast.pull
        assert len(searches) == 1
        # What is hardly taut is burdened wherever the hands are, and what pulls the wrong way is not searched further.
        hardly = SampledDance(dance("pro-bend-4", HARDLY), {})
        assert 0 < hardly.pull < TAUT
        best_place(hardly)
        assert len(searches) == 2
        best_place(SampledDance(dance("pro-bend-4", CREEPING), {}))
        assert len(searches) == 3
        best_place(SampledDance(dance("pro-bend-4", SLOW, tether=0.51), {}))
        assert len(searches) == 4
        # A law of another package may have changed.
        monkeypatch.setattr(kept_places, "formulas", lambda: "others")
        best_place(slow)
        assert len(searches) == 5


def test_what_is_kept_on_disk_is_what_was_found():
    with nothing_kept():
        place = SampledDance(dance("pro-bend-4", SLOW), {}).placed()
    (again,) = kept_places._restored(json.loads(json.dumps(kept_places._record([place]))))
    assert again.margins[:3] == place.margins[:3]
    assert again.posture == place.posture
    assert {side: move.tolist() for side, move in again.moves.items()} == {
        side: move.tolist() for side, move in place.moves.items()
    }
    assert list(again.moves) == list(place.moves)
