"""Small plans of all formations: names, walks with their beginning and end, and either side."""

import numpy as np
import pytest

from sequencer.motion.performers.walks import Move
from sequencer.outputs.plans.formation_strip import FormationTaken, formation_strip
from sequencer.timing.tempo import TempoMap
from tests.unit.outputs.plans.test_stage_plan import VENUE, words

TEMPO = TempoMap.steady(120, beats=64)


@pytest.fixture
def walkers(dance):
    """Ada walks from (-2, 3) to (1, 5) in beats 8 to 16; Bo stands."""
    away = Move(start=8.0, end=16.0, place=(1.0, 5.0), facing=0.0)
    return [dance.dancer("Ada", (-2.0, 3.0), moves=(away,)), dance.dancer("Bo", (3.0, 3.0))]


TAKEN = (
    FormationTaken(name="line", walk=0.0, start=0.0),
    FormationTaken(name="close", walk=8.0, start=16.0),
)


def test_each_plan_says_when_its_walk_begins_and_ends(walkers):
    """At 120 a minute beat 8 is at 4 s, 3.1, and beat 16 at 8 s, 5.1."""
    said = words(formation_strip(walkers, VENUE, TEMPO, TAKEN, title="Show"))

    assert "1  line\nfrom 0:00 (1.1)" in said
    assert "2  close\nwalk 0:04 (3.1) to 0:08 (5.1)\n8 counts" in said
    assert said.count("Ada") == said.count("Bo") == 2
    with pytest.raises(ValueError, match="at least one"):
        formation_strip(walkers, VENUE, TEMPO, [])


def test_a_walk_is_drawn_from_its_ring_to_its_end_and_who_stands_has_none(walkers):
    second = formation_strip(walkers, VENUE, TEMPO, TAKEN).axes[1]
    ways = [line.get_xydata() for line in second.lines if len(line.get_xydata()) > 30]

    assert len(ways) == 1
    assert np.allclose(ways[0][[0, -1]], [[-2.0, 3.0], [1.0, 5.0]])
    rings = [
        line.get_xydata()
        for line in second.lines
        if line.get_marker() == "o" and len(line.get_xydata()) == 1
    ]
    assert any(np.allclose(ring, [[-2.0, 3.0]]) for ring in rings)


def test_the_performers_see_it_turned_round(walkers):
    """From their side stage left, which is +X, lies on the left, and downstage at the top."""
    axes = formation_strip(walkers, VENUE, TEMPO, TAKEN, turned=True).axes[0]

    assert axes.transData.transform((3, 3))[0] < axes.transData.transform((-2, 3))[0]
    assert axes.transData.transform((0, 0))[1] > axes.transData.transform((0, 5))[1]
    assert "▲" in axes.get_xlabel()


def test_an_arrow_on_each_way_points_ahead_and_no_disc_hides_a_start(dance):
    """Ada walks from (-2, 3) to (1, 5), and Bo to where she stood: her ring is on her way, clear of his disc."""
    moves = [Move(start=8.0, end=16.0, place=p, facing=0.0) for p in ((1.0, 5.0), (-2.0, 3.0))]
    dancers = [
        dance.dancer("Ada", (-2.0, 3.0), moves=(moves[0],)),
        dance.dancer("Bo", (3.0, 3.0), moves=(moves[1],)),
    ]
    axes = formation_strip(dancers, VENUE, TEMPO, TAKEN).axes[1]
    arrows = [each for each in axes.texts if getattr(each, "arrow_patch", None) is not None]
    ahead = [np.subtract(each.xy, each.xyann) for each in arrows]
    assert [[x > 0, y > 0] for x, y in ahead if abs(y) > 1e-9] == [[True, True]]
    assert [x < 0 for x, y in ahead if abs(y) <= 1e-9] == [True]
    rings = [line.get_xydata()[0] for line in axes.lines if line.get_marker() == "o" and len(line.get_xydata()) == 1]  # fmt: skip
    hers = min(rings, key=lambda ring: np.hypot(*(ring - [-2.0, 3.0])))
    assert 0.1 < np.hypot(*(hers - [-2.0, 3.0])) < 1.2
    across, up = hers - [-2.0, 3.0]
    assert abs(2.0 * across - 3.0 * up) < 1e-6
