"""Performers who give way on the rehearsal page, one in a wheelchair: their shoulders are those of the checks,
and so are their distances."""

from dataclasses import replace
from math import radians

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.performers.arms import given_shoulder

BODIES = Body(stature=1.7), Body(stature=1.8, seated=True), Body(stature=1.7)
WAYS = (
    Posture(turn=radians(30), lean=radians(-7), tilt=radians(8)),
    Posture(turn=radians(-20), lean=radians(9), nod=radians(-12)),
    Posture(side=radians(4), lean=radians(3), tilt=radians(-12)),
)


def way(k):
    own = [UPRIGHT, *WAYS[k:], *WAYS[:k], UPRIGHT]
    return Carriage(
        body=BODIES[k],
        held=tuple(HeldPosture(2.0 * i, 2.0 * i + 0.7 + 0.2 * k, p) for i, p in enumerate(own)),
    )


@pytest.fixture(scope="module")
def swaying(dance, tmp_path_factory):
    from sequencer.outputs.patterns.one_pattern import one_pattern
    from sequencer.outputs.rehearsal.page_data import cast_document
    from sequencer.outputs.rehearsal.page_file import page_from_document
    from sequencer.outputs.rehearsal.pattern import pattern_document
    from sequencer.outputs.rehearsal.song_audio import silent

    cast = tuple(
        replace(
            dance.dancer(name, (1.7 * k, 3.0 + 0.2 * k), facing=0.9 * k, hand_radius=0.3 + 0.1 * k),
            body=BODIES[k],
            carriage=Carriage(body=BODIES[k]) if k == 2 else way(k),
        )
        for k, name in enumerate(("Ada", "Bo", "Cy"))
    )
    document = pattern_document(one_pattern("extension", tempo=60.0))
    entries, keys, _ = cast_document(cast, -8.0, 16.0)
    assert [("carriage" in entry) for entry in entries] == [True, True, False]
    for entry in entries:
        entry["lit"] = [[0.0, 64.0]]
    document.update(cast=entries, keys=keys, kind="show", duration=12.0)
    path = tmp_path_factory.mktemp("swaying") / "swaying.html"
    path.write_text(page_from_document(document, silent("")), encoding="utf-8")
    return cast, path


@pytest.mark.parametrize("kind", ["browser", "flat_browser"])
def test_distances_are_those_of_the_moved_shoulders(request, swaying, opened, kind):
    """Every pair at 40 instants, some of them in the middle of a passage, within 4 mm of the checks'."""
    from sequencer.motion.clearance.nearest import closest

    cast, path = swaying
    moved = 0.0
    with opened(request.getfixturevalue(kind), path, viewport=opened.SMALL) as there:
        for second in np.linspace(0.1, 9.9, 40):
            beat = np.array([there.page.evaluate("t => rehearsal.tempo.beatAt(t)", second)])
            for first, other, shown in there.page.evaluate("t => rehearsal.apart(t)", second):
                one, two = (next(d for d in cast if d.name == name) for name in (first, other))
                true = closest(one, two, beat).distance[0]
                assert shown == pytest.approx(true, abs=4.1e-3)
                stiff = [replace(d, carriage=Carriage(body=d.body)) for d in (one, two)]
                moved = max(moved, abs(closest(*stiff, beat).distance[0] - true))
        there.drawn()
        assert there.complaints == []
    assert moved > 0.02  # upright shoulders would be seen to be wrong


def test_arms_begin_where_the_shoulders_give_to(browser, swaying, opened):
    """The page's own shoulder, given as far as the hand needs, within 2 mm of Python's; angles within 0.01°."""
    cast, path = swaying
    given = 0.0
    with opened(browser, path, viewport=opened.SMALL) as there:
        for second in np.linspace(0.1, 9.9, 25):
            beat = np.array([there.page.evaluate("t => rehearsal.tempo.beatAt(t)", second)])
            for dancer, own in zip(
                cast, there.page.evaluate("t => rehearsal.bodies(t)", second), strict=True
            ):
                angles = dancer.carriage.angles(beat)[0]
                assert np.allclose(own["angles"], angles, atol=2e-4)
                for side, trajectory in dancer.trajectories.items():
                    hand = trajectory.at(beat).hand
                    true = given_shoulder(dancer.carriage, beat, hand, side)[0]
                    hung = dancer.carriage.shoulder(beat, side)[0]
                    assert np.linalg.norm(own["shoulders"][side] - true) < 2e-3
                    given = max(given, np.linalg.norm(true - hung))
    assert given > 0.01
