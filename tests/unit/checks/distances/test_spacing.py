"""Who is too close, after a change: searched anew where it may have changed only, and the same as from nothing."""

import pytest

from sequencer.checks.distances import spacing
from sequencer.checks.distances.requirements import Requirements
from sequencer.motion.performers.walks import Move
from sequencer.timing.tempo import TempoMap
from tests.nothing_kept import nothing_kept

TEMPO = TempoMap.steady(120, beats=200)
BESIDE = 0.7  # [m] between two bodies: too close all the time, and nearer still by a step of 15 cm


def told(cast, end=96.0, most=0.3):
    """The findings and the conflicts that they are about."""
    found = spacing.spacing(cast, TEMPO, Requirements(performers=most), start=0.0, end=end)
    return found.findings, tuple(each.subject for each in found.mendable)


def step(start, to):
    """There and back again in eight beats."""
    return (
        Move(start=start, end=start + 3, place=to, facing=0),
        Move(start=start + 5, end=start + 8, place=(0, 8), facing=0),
    )


@pytest.fixture
def pairs(monkeypatch):
    """Names of the pairs that are searched by themselves, those together that are searched at once."""
    searched, own = [], spacing.approaches_each

    def each(casts, **named):
        searched.append([tuple(dancer.name for dancer in cast.dancers) for cast in casts])
        return own(casts, **named)

    monkeypatch.setattr(spacing, "approaches_each", each)
    return searched


def test_a_pair_is_searched_again_only_if_one_of_it_moves_otherwise_there(dance, pairs):
    """Three pairs far from each other, one of whom is changed; a show of thousands of conflicts has a hundred trials."""
    cast = [
        dance.dancer(name, (across, 8 + 40 * row))
        for row, names in enumerate(("Ada Bo", "Cy Di", "Eli Flo"))
        for name, across in zip(names.split(), (0, BESIDE), strict=True)
    ]  # fmt: skip
    with nothing_kept():
        first = told(cast)
        assert pairs == [[("Ada", "Bo"), ("Cy", "Di"), ("Eli", "Flo")]], "all at once"
        pairs.clear()
        assert told(cast) == first
        assert pairs == []
        told([dance.dancer("Ada", (0, 8), moves=step(40.0, (0.15, 8))), *cast[1:]])
        assert pairs == [[("Ada", "Bo")]]


@pytest.mark.parametrize("when", [0.5, 14.0, 16.0, 40.0, 74.0, 83.5])
def test_what_is_known_is_what_is_found_from_nothing(dance, when):
    """Two with empty hands; a step nearer anywhere in a span that begins and ends as before: at its edges, and across the edges of slices."""
    away = Move(start=92.0, end=94.0, place=(BESIDE + 4, 8), facing=0)
    bo = dance.dancer("Bo", (BESIDE, 8), sides=(), moves=(away,))
    plain, changed = (
        dance.dancer("Ada", (0, 8), moves=moves, sides=()) for moves in ((), step(when, (0.15, 8)))
    )
    with nothing_kept():
        new = told([changed, bo], 128.0)
    with nothing_kept():
        before, after = told([plain, bo], 128.0), told([changed, bo], 128.0)
    assert after == new
    (_, (old,)), (_, (now,)) = before, after
    assert (old.start, old.end) == (now.start, now.end)
    assert old.start == 0.0
    assert 92.0 < old.end < 94.0, "in the middle of a slice"
    assert now.distance < old.distance - 0.1


def test_another_requirement_and_another_end_are_other_questions(dance):
    cast = [dance.dancer("Ada", (0, 8)), dance.dancer("Bo", (BESIDE, 8))]
    with nothing_kept():
        _, (near,) = told(cast)
        (finding,), (far,) = told(cast, most=0.6)
        assert far.distance == pytest.approx(near.distance, abs=0.01)
        assert "0.60 m is required" in finding.message
        _, (short,) = told(cast, 40.0)
        assert short.end == 40.0


def test_a_conflict_that_begins_within_a_slice_is_known_by_that_slice_too(dance):
    """Bo comes within reach after the slice has begun; a step nearer of Ada's lies between that and the slice's end."""
    come = Move(start=18.0, end=22.0, place=(BESIDE, 8), facing=0)
    away = Move(start=92.0, end=94.0, place=(BESIDE + 4, 8), facing=0)
    bo = dance.dancer("Bo", (BESIDE + 4, 8), sides=(), moves=(come, away))
    plain, changed = (
        dance.dancer("Ada", (0, 8), moves=moves, sides=()) for moves in ((), step(23.0, (0.15, 8)))
    )
    with nothing_kept():
        new = told([changed, bo], 128.0)
    with nothing_kept():
        before, after = told([plain, bo], 128.0), told([changed, bo], 128.0)
    assert after == new
    (_, (old,)), (_, (now,)) = before, after
    assert 18.0 < old.start < 22.0
    assert now.distance < old.distance - 0.1
