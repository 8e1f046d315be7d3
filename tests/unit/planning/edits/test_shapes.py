"""Mirrored pairs and lines of a formation, and places to 5 cm."""

import math

import pytest

from sequencer.planning.edits.shapes import (
    centre_line,
    has_shape,
    keeps_lines,
    lines,
    marked,
    marked_away,
    partner,
)

PAIRS = {"Ash": (-2.0, 4.0), "Birch": (2.0, 4.0), "Cedar": (0.0, 6.0)}


def test_a_pair_mirrors_about_the_middle_of_the_stage_or_its_own():
    assert centre_line(PAIRS) == 0.0
    assert partner(PAIRS, "Ash") == ("Birch", 0.0)
    assert partner(PAIRS, "Cedar") is None
    aside = {who: (x + 1.5, y) for who, (x, y) in PAIRS.items()}
    assert centre_line(aside) == pytest.approx(1.5)
    assert partner(aside, "Birch")[0] == "Ash"
    assert centre_line({"Ash": (-2.0, 4.0), "Birch": (1.0, 5.0)}) is None


def test_two_centimetres_off_still_mirror_and_more_do_not():
    for off, mirrored in ((0.02, True), (0.03, False)):
        assert (
            centre_line({**PAIRS, "Birch": (2.0 + off, 4.0), "Cedar": (9.0, 6.0)}) == 0.0
        ) is mirrored
        moved = {"Ash": (-2.0, 4.0), "Birch": (2.0, 4.0 + off), "Cedar": (9.0, 6.0)}
        assert (centre_line(moved) is not None) is mirrored


@pytest.mark.parametrize("angle", [0, 30, 90, 135])
def test_three_on_a_line_are_a_line_whichever_way_it_runs(angle):
    """Places by complex numbers."""
    way = complex(math.cos(math.radians(angle)), math.sin(math.radians(angle)))
    spots = {name: k * 1.7 * way + (3 + 2j) for k, name in enumerate("ABC")}
    places = {name: (at.real, at.imag) for name, at in spots.items()} | {"D": (30.0, -7.0)}
    assert lines(places) == [frozenset("ABC")]
    off = spots["B"] + 0.1j * way
    assert not keeps_lines(places, {**places, "B": (off.real, off.imag)})
    along = spots["B"] + 0.3 * way
    assert keeps_lines(places, {**places, "B": (along.real, along.imag)})


def test_what_has_neither_has_no_shape():
    assert not has_shape({"A": (-2.0, 1.0), "B": (1.0, 4.0), "C": (3.0, 0.5)})
    assert has_shape(PAIRS)


def test_places_are_marked_in_five_centimetres():
    assert [marked(value) for value in (0.31, 0.33, -1.02, 0.0)] == [0.3, 0.35, -1.0, 0.0]
    # as far as asked, to the next 5 cm; hardly anything is nothing
    assert marked_away(3.18, 0.1) == 3.3
    assert marked_away(3.18, -0.1) == 3.05
    assert marked_away(3.2, 0.05) == 3.25
    assert marked_away(3.18, 0.02) == 3.18
    assert marked_away(3.18, 0.13) == 3.35
    assert marked_away(3.18, -0.09) == 3.05
