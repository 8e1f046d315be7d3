"""What does not depend on whose sheet it is is found once, however many sheets there are; and it is the same as found anew."""

from collections import Counter
from dataclasses import replace
from io import BytesIO
from itertools import combinations
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reportlab.pdfgen.canvas import Canvas

from sequencer.outputs.sheets.parts import cues
from sequencer.outputs.sheets.parts import edition as editions
from sequencer.outputs.sheets.parts.cues import burns_of
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans import formation_plans, people_drawing, scene
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import is_crowded, scene_of
from sequencer.outputs.sheets.parts.stage_plans.ground import Circles, is_nearest
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.outputs.sheets.parts.stage_plans.scene import closest_spots, window
from sequencer.safety.safety_plan import safety_plan

POINT = st.tuples(st.floats(0, 200), st.floats(0, 200))


@pytest.fixture
def edition(rounds, tmp_path):
    return Edition(staged=rounds.show(tmp_path), report=rounds.report())


@pytest.fixture
def counted(monkeypatch):
    """How often each function was called."""
    done = Counter()

    def count(module, *names):
        for name in names:
            work = getattr(module, name)

            def counting(*given, work=work, name=name, **known):
                done[name] += 1
                return work(*given, **known)

            monkeypatch.setattr(module, name, counting)

    return done, count


def code_of(shown):
    """What a plan draws."""
    canvas = Canvas(BytesIO(), pagesize=(600, 800))
    drawing = StagePlan(shown, tall=300.0)
    drawing.wrap(500.0, 700.0)
    drawing.drawOn(canvas, 20, 20)
    return list(canvas._code), drawing.places


def test_discs_walks_and_window_are_found_once_for_all_whose_plan_it_is(edition, counted):
    done, count = counted
    count(people_drawing, "start_mark", "way_arrow")
    count(formation_plans, "ways_to", "lit_in")
    count(scene, "_window", "_least_gap")
    placed = StagePlan._placed
    names = edition.staged.show.names

    def counting(drawing):
        done["_placed"] += 1
        return placed(drawing)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(StagePlan, "_placed", counting)
        first, _ = code_of(scene_of(edition, 1, focus=names[0]))
        once = dict(done)
        others = [code_of(scene_of(edition, 1, focus=name))[0] for name in names[1:]]
        assert not is_crowded(scene_of(edition, 1), tall=300.0, wide=500.0)

    assert len(names) > 2
    assert once["_placed"] == once["_window"] == once["_least_gap"] == once["lit_in"] == 1
    assert once["start_mark"] == once["way_arrow"] >= 1
    assert dict(done) == once
    assert all(code != first for code in others)  # each has its own name in bold


@pytest.mark.parametrize("turned", [False, True])
def test_a_plan_is_drawn_the_same_whether_found_anew_or_kept(edition, turned):
    shown = replace(scene_of(edition, 1, focus=edition.staged.show.names[1]), turned=turned)
    anew = code_of(replace(shown, shown=None))
    for other in (scene_of(edition, 1), scene_of(edition, 2), scene_of(edition, 1, close=True)):
        code_of(other)

    assert code_of(shown) == anew == code_of(shown)


def test_a_window_depends_on_all_that_it_shows(edition):
    shown = scene_of(edition, 1)
    kinds = [
        shown,
        replace(shown, crew=False),
        replace(shown, dimensions=True),
        replace(shown, close=True),
        replace(shown, landing=(((-90.0, 0.0), (-80.0, 0.0), (-80.0, 9.0)),)),
        scene_of(edition, 2),
    ]

    assert [window(each) for each in kinds] == [window(replace(e, shown=None)) for e in kinds]


def test_burns_are_sorted_by_performer_once(edition, counted):
    done, count = counted
    count(cues, "by_name")
    found = {name: burns_of(edition.staged, name) for name in edition.staged.show.names}

    burns = safety_plan(edition.staged).burns
    assert found == {who: tuple(b for b in burns if b.who == who) for who in found}
    assert any(found.values())
    assert done["by_name"] == 1
    assert burns_of(edition.staged, "nobody") == ()


def test_names_of_files_and_words_of_the_show_are_gathered_once(edition, counted):
    done, count = counted
    count(editions, "slug", "is_mixed", "uncovered")
    gathered = Edition._words

    def words(self):
        done["words"] += 1
        return gathered(self)

    names = edition.staged.show.names
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Edition, "_words", words)
        for name in names:
            edition.file_part(name)
            edition.in_order(f"{name} waits")
            edition.missing_letters()
            assert edition.number_of(name) == names.index(name) + 1
            assert {"ø", "火"} <= set(edition.own_letters)

    assert done["slug"] == len(names)
    assert done["words"] == 1
    crowd = {*names, *(post.name for post in edition.staged.show.crew)}
    assert done["is_mixed"] < 2 * (len(crowd) + 40)


@settings(max_examples=200, deadline=None)
@given(
    middles=st.lists(POINT, max_size=20, unique=True),
    at=POINT,
    size=st.tuples(st.floats(1, 60), st.floats(1, 12)),
    by=st.sampled_from([0.2, 1.0]),
    radius=st.sampled_from([6.2, 8.5]),
)
def test_a_name_is_nearest_to_its_own_disc_as_among_all_discs(middles, at, size, by, radius):
    own = (*(middles[0] if middles else at), radius)
    box = (at[0], at[1], at[0] + size[0], at[1] + size[1])
    every = [(x, y, radius) for x, y in middles]

    assert Circles(middles, radius).leave(box, own, by=by) is is_nearest(box, own, every, by=by)


def test_another_disc_counts_from_its_rim():
    """Its rim is 20.5 pt from the name, that of the own disc 20 pt: too much alike by 1 pt, though its middle is farther off."""
    box, own = (32.5, 10.0, 42.5, 20.0), (71.0, 15.0, 8.5)

    assert not Circles([(71.0, 15.0), (71.5, 15.0)], 8.5).leave(box, own, by=1.0)
    assert Circles([(71.0, 15.0), (72.5, 15.0)], 8.5).leave(box, own, by=1.0)


def test_of_many_discs_only_those_near_a_name_are_looked_at():
    discs = Circles([(25.0 * k, 25.0 * j) for k in range(40) for j in range(40)], 8.0)
    near = list(discs.near((480.0, 470.0, 520.0, 490.0)))

    assert (500.0, 475.0, 8.0) in near
    assert len(near) <= 20


@settings(max_examples=100, deadline=None)
@given(
    spots=st.lists(st.tuples(st.floats(-9, 9), st.floats(-9, 9), st.just(0.0)), max_size=12),
)
def test_the_closest_spots_are_those_of_all_pairs(spots):
    shown = scene.Scene(staged=None, spots={str(k): spot for k, spot in enumerate(spots)})
    pairs = combinations(spots, 2)
    least = min((hypot(a[0] - b[0], a[1] - b[1]) for a, b in pairs), default=float("inf"))

    assert closest_spots(shown) == least


def test_of_a_large_field_few_pairs_are_looked_at(counted):
    done, count = counted
    count(scene, "hypot")
    spots = {f"{k} {j}": (4.2 * k, 4.2 * j, 0.0) for k in range(20) for j in range(20)}

    assert closest_spots(scene.Scene(staged=None, spots=spots)) == pytest.approx(4.2)
    assert done["hypot"] <= 400 * 20  # of 79,800 pairs
