"""Floor marks: two lengths give each place back, every spot of every formation has one, and the page says them."""

from math import cos, dist, pi, sin, sqrt

import pytest

from sequencer.outputs.sheets.parts.spike_marks import fixed_points, mark_at, spike_marks

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
    one, other = fixed_points(outline)
    assert one.place == pytest.approx(a)
    assert other.place == pytest.approx(b)
    assert (one.letter, other.letter) == ("A", "B")


def test_two_tapes_give_each_place_back(rounds, tmp_path):
    show = rounds.show(tmp_path)
    a, b = (each.place for each in fixed_points(RECTANGLE))
    marks = spike_marks(show)
    spots = {(x, y) for standing in show.standings for x, y, _ in standing.spots.values()}
    assert len(marks) == len(spots) == 12
    assert [mark.number for mark in marks] == list(range(1, 13))
    for mark in marks:
        assert met(a, b, *mark.lengths) == pytest.approx(mark.place, abs=1e-9)
        assert not mark.behind
    for x, y in spots:
        assert mark_at(show, (x, y)).place == (x, y)


def test_a_mark_on_the_audiences_side_says_so(rounds, tmp_path):
    """The round stage is measured from its widest line: what is downstage of it is behind that line."""
    text = rounds.ROUND.replace(
        "stage: {shape: rectangle, width: 12 m, depth: 9 m}", "stage: {shape: round, width: 12 m}"
    )
    marks = spike_marks(rounds.show(tmp_path, text))
    assert {mark.behind for mark in marks} == {True, False}
    for mark in marks:
        assert mark.behind == (mark.place[1] < 6.0 - 0.02)


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
