"""Floor marks: two lengths give each place back, every spot of every formation has one, and the page says them."""

from math import cos, dist, hypot, inf, pi, sin, sqrt

import pytest

from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.parts.stage_plans.baseline import WEAK, baseline, side_words, spread
from sequencer.outputs.sheets.parts.stage_plans.spike_marks import (
    fixed_points,
    mark_at,
    sides,
    spike_marks,
)
from sequencer.outputs.sheets.phone_page import phone_page
from sequencer.outputs.sheets.writing import sheets_of

RECTANGLE = [(-6, 0), (6, 0), (6, 9), (-6, 9)]
ROUND = [(4.5 * sin(2 * pi * k / 64), 4.5 - 4.5 * cos(2 * pi * k / 64)) for k in range(64)]


def met(a, b, from_a, from_b):
    """Where two circles meet, upstage of the line through their middles: any text on analytic geometry."""
    long = dist(a, b)
    along = (from_a**2 - from_b**2 + long**2) / (2 * long)
    aside = sqrt(max(from_a**2 - along**2, 0.0))
    ux, uy = (b[0] - a[0]) / long, (b[1] - a[1]) / long
    return a[0] + along * ux - aside * uy, a[1] + along * uy + aside * ux


@pytest.mark.parametrize(
    ("outline", "a", "b"),
    [
        (RECTANGLE, (-6, 0), (6, 0)),
        (ROUND, (-4.5, 4.5), (4.5, 4.5)),  # the front of a circle is one point: its widest line
        ([(-3, 0), (3, 0), (6, 8), (-6, 8)], (-3, 0), (3, 0)),
    ],
)
def test_the_fixed_points_are_corners_that_can_be_found(outline, a, b):
    one, other = baseline(outline, [])
    assert one.place == pytest.approx(a)
    assert other.place == pytest.approx(b)
    assert (one.letter, other.letter) == ("A", "B")


def test_two_tapes_give_each_place_back(rounds, tmp_path):
    show = rounds.show(tmp_path)
    a, b = (each.place for each in fixed_points(show))
    marks = spike_marks(show)
    spots = {(x, y) for standing in show.standings for x, y, _ in standing.spots.values()}
    assert len(marks) == len(spots) == 12
    assert [mark.number for mark in marks] == list(range(1, 13))
    for mark in marks:
        assert met(a, b, *mark.lengths) == pytest.approx(mark.place, abs=1e-9)
        assert not mark.behind
    for x, y in spots:
        assert mark_at(show, (x, y)).place == (x, y)


ROUND_STAGE = "stage: {shape: round, width: 12 m}"


def on_a_round(rounds, folder):
    old = "stage: {shape: rectangle, width: 12 m, depth: 9 m}"
    text = rounds.ROUND.replace(old, ROUND_STAGE)
    for here, there in (("[-4.5, 2.5]", "[-4.2, 1.8]"), ("[4.5, 2.5]", "[4.2, 1.8]"),
                        ("[-2, 7]", "[-4.2, 10.2]"), ("[2, 7]", "[4.2, 10.2]")):  # fmt: skip
        text = text.replace(here, there)
    return rounds.show(folder, text)


def test_a_mark_on_the_other_side_of_the_line_says_so(rounds, tmp_path):
    """Measured from a line across the round stage: some marks are downstage of it, and both pages say which."""
    show = on_a_round(rounds, tmp_path)
    a, b = fixed_points(show)
    marks = spike_marks(show)
    assert {mark.behind for mark in marks} == {True, False}
    for mark in marks:
        one, other = (
            met(a.place, b.place, *mark.lengths),
            met(b.place, a.place, *mark.lengths[::-1]),
        )
        upstage = sides(show)[1 if mark.behind else 0].startswith("upstage")
        assert (one if upstage else other) == pytest.approx(mark.place, abs=1e-6)
    assert set(sides(show)) == set(side_words(a, b))
    assert sum(mark.behind for mark in marks) < len(marks) / 2
    other = sides(show)[1].replace("of it", "of the line A–B")
    told = phone_page(Edition(staged=show, report=rounds.report())).replace("\u00a0", " ")
    rows = told.split("<li><b>")[1:]
    spots = [(x, y) for s in show.standings for x, y, _ in s.spots.values()]
    assert [other in row for row in rows] == [mark_at(show, spot).behind for spot in spots]


def test_the_phones_plan_shows_both_fixed_points(rounds, tmp_path):
    show = rounds.show(tmp_path)
    told = phone_page(Edition(staged=show, report=rounds.report()))
    assert told.count(">A</text>") == told.count(">B</text>") == len(show.standings)


def off(place, a, b):
    """By how much a mark is off if each tape is a millimetre too long or too short, at worst [mm]: intersected anew."""
    lengths = dist(place, a), dist(place, b)
    side = (b[0] - a[0]) * (place[1] - a[1]) - (b[1] - a[1]) * (place[0] - a[0]) >= 0
    worst = 0.0
    for da, db in ((1, 1), (1, -1), (-1, 1), (-1, -1)):
        one, two = lengths[0] + da / 1000, lengths[1] + db / 1000
        x, y = met(a, b, one, two) if side else met(b, a, two, one)
        worst = max(worst, hypot(x - place[0], y - place[1]) * 1000)
    return worst


@pytest.mark.parametrize("place", [(0, 6), (-4, 2), (5, 8), (2, 3), (0, -4), (-5.5, 0.8)], ids=str)
def test_how_far_a_mark_may_be_off_is_what_two_tapes_give(place):
    a, b = (-6.0, 0.0), (6.0, 0.0)
    assert spread(place, a, b) == pytest.approx(off(place, a, b), rel=0.02)


def test_a_mark_on_the_line_cannot_be_taped_but_at_its_end():
    assert spread((1.0, 0.0), (-6.0, 0.0), (6.0, 0.0)) == inf
    assert spread((9.0, 0.0), (-6.0, 0.0), (6.0, 0.0)) == inf
    assert spread((-6.0, 0.0), (-6.0, 0.0), (6.0, 0.0)) == 1.0


def test_no_baseline_runs_through_the_marks(rounds, tmp_path):
    """A line across the middle of a round stage: its widest line would be the marks' own."""
    middle = [(x, 4.5) for x in (-3.0, -1.0, 1.0, 3.0)]
    a, b = (each.place for each in baseline(ROUND, middle))
    assert max(spread(place, a, b) for place in middle) < WEAK
    assert spread(middle[0], (-4.5, 4.5), (4.5, 4.5)) == inf
    # marks at the very front of a rectangle are taped from the back corners
    front = [(x, 0.3) for x in (-3.0, 0.0, 3.0)]
    one, other = baseline(RECTANGLE, front)
    assert {one.words, other.words} != {
        "the front corner at stage right",
        "the front corner at stage left",
    }
    assert max(spread(place, one.place, other.place) for place in front) < WEAK


def test_a_mark_that_stays_weak_is_measured_otherwise(rounds, pages, tmp_path):
    """Whatever pair is taken, one of these marks lies near its line."""
    text = rounds.ROUND
    for old, new in (("[-4.5, 2.5]", "[-5.9, 0.1]"), ("[4.5, 2.5]", "[5.9, 0.1]"),
                     ("[0, 7]", "[-5.9, 8.9]"), ("[2, 7]", "[5.9, 8.9]"), ("[-1.5, 2.5]", "[0, 0.2]"),
                     ("[-2, 7]", "[0, 8.8]"), ("[1.5, 2.5]", "[-5.8, 4.5]"), ("[3, 4.5]", "[5.8, 4.5]")):  # fmt: skip
        text = text.replace(old, new)
    show = rounds.show(tmp_path, text)
    weak = [mark for mark in spike_marks(show) if mark.weak]
    assert weak
    edition = Edition(staged=show, report=rounds.report())
    assert phone_page(edition).count("cross too flatly here") >= len(weak)
    path = tmp_path / "book.pdf"
    sheet = next(each for each in sheets_of(edition) if each.name == "formation-book")
    path.write_bytes(document_bytes([sheet], edition, "a4", "book"))
    words = " ".join(pages.text_of(path).split())
    assert "At a mark with ~ the two tapes cross too flatly" in words
    for mark in weak:
        assert f"{mark.number}{'*' if mark.behind else ''}~" in words


def test_the_book_gives_the_lengths(rounds, pages, tmp_path_factory):
    """Łucja in the line at (-4.5, 2.5): 1.5 and 2.5 from A, which is 2.92 m; 10.5 and 2.5 from B, 10.79 m."""
    _, paths = rounds.printed(tmp_path_factory)
    path = next(p for p in paths if p.name.endswith("formation-book.pdf"))
    text = " ".join(pages.text_of(path).split()).replace("\u00a0", " ")
    assert (
        "A is the front corner at stage right, B the front corner at stage left; 12.00 m apart"
        in text
    )
    assert "2.92 m, 10.79 m" in text
