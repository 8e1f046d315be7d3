"""Moves of places that part two performers: smallest first, each proven, and whom they crowd."""

import math

from numpy.testing import assert_allclose

from sequencer.motion.clearance.approach import approaches
from sequencer.motion.performers.walks import Move
from sequencer.planning.edits.moves import moved, place_mends
from tests.nothing_kept import nothing_kept


def test_each_move_is_proven_and_the_smallest_comes_first(dance):
    ada = dance.dancer("Ada", (-4, 8), moves=(Move(start=8, end=16, place=(4, 8), facing=0),))
    bo = dance.dancer("Bo", (0, 9.2))
    found = approaches([ada, bo], 0, 32, required=0.3)
    span = (float(found.spans.start[0]), float(found.spans.end[-1]))
    mends = place_mends([ada, bo], 0, 1, conflict=span, show=(0, 32), required=0.3)
    assert len(mends) == 3
    (upstage,) = (mend for mend in mends if mend.who == ("Bo",))
    assert_allclose(upstage.by[0], (0.0, 0.25), atol=0.006)
    assert [mend.cost for mend in mends] == sorted(mend.cost for mend in mends)
    cast = {"Ada": ada, "Bo": bo}
    for mend in mends:
        changed = dict(cast)
        for who, by in zip(mend.who, mend.by, strict=True):
            changed[who] = moved(cast[who], by, *span)
        after = approaches(list(changed.values()), 0, 32, required=0.3)
        assert len(after.spans.group) == 0, mend
        assert_allclose(after.distance[0], mend.distance, atol=0.006)


def test_a_mend_is_hardly_longer_than_needed(dance):
    """Ten centimetres less than the vector offered does not do."""
    cast = [dance.dancer("Ada", (0, 8)), dance.dancer("Bo", (1.8, 8))]
    best = place_mends(cast, 0, 1, conflict=(0, 32), show=(0, 32), required=0.3)[0]
    size = math.hypot(*best.by[0])
    k = [each.name for each in cast].index(best.who[0])
    short = [best.by[0][0] * (1 - 0.1 / size), best.by[0][1] * (1 - 0.1 / size)]
    cast[k] = moved(cast[k], tuple(short), 0, 32)

    assert len(approaches(cast, 0, 32, required=0.3).spans.group) > 0


def test_a_mend_says_whom_it_crowds(dance):
    cast = [
        dance.dancer("Ada", (0, 8), sides=()),
        dance.dancer("Bo", (0.7, 8), sides=()),
        dance.dancer("Cy", (1.55, 8), sides=()),
    ]
    mends = place_mends(cast, 0, 1, conflict=(0, 32), show=(0, 32), required=0.3)

    assert mends[0].crowds == ()
    assert ("Cy",) in {mend.crowds for mend in mends}


def test_a_move_looked_up_is_that_of_the_same_question(dance):
    """Reference: the same question with nothing kept."""
    walk = (Move(start=8, end=16, place=(4, 8), facing=0),)
    questions = [
        (0.3, (8.0, 16.0), "Bo"), (0.5, (8.0, 16.0), "Bo"), (0.5, (10.0, 12.0), "Bo"),
        (0.5, (10.0, 12.0), "Cy"),
    ]  # fmt: skip

    def asked(required, conflict, other):
        pair = [dance.dancer("Ada", (-4, 8), moves=walk), dance.dancer(other, (0, 9.2))]
        return place_mends(pair, 0, 1, conflict=conflict, show=(0, 32), required=required)

    anew = []
    for each in questions:
        with nothing_kept():
            anew.append(asked(*each))
    with nothing_kept():
        for _ in range(2):
            assert [asked(*each) for each in questions] == anew
    assert anew[0] != anew[1]
    assert {mend.who for mend in anew[3]} >= {("Cy",)}
