"""Which way somebody walks, and who passes first: seen on the plan, said where ways cross."""

import re
from math import dist

import pytest

from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.walk_marks import crossing_words
from sequencer.outputs.sheets.phone_page import phone_page
from sequencer.outputs.way_marks import start_mark, way_arrow


def straight(a, b, count=33):
    return tuple((a[0] + (b[0] - a[0]) * k / (count - 1), a[1] + (b[1] - a[1]) * k / (count - 1)) for k in range(count))  # fmt: skip


def test_the_start_of_a_way_is_never_under_a_disc():
    way = straight((0.0, 0.0), (100.0, 0.0))
    x, y = start_mark(way, [(0.0, 0.0), (100.0, 0.0)], 12.0)
    assert y == 0.0
    assert 12.0 <= x <= 14.0
    assert start_mark(way, [(50.0, 40.0)], 12.0) == (0.0, 0.0)


def test_an_arrow_points_ahead_and_keeps_clear_of_who_stands_there():
    way = straight((0.0, 0.0), (0.0, 100.0))
    place, ahead = way_arrow(way, [(0.0, 50.0)], 8.0)
    assert ahead == pytest.approx((0.0, 1.0))
    assert dist(place, (0.0, 50.0)) >= 8.0
    assert 25.0 < place[1] < 75.0


def test_who_passes_first_where_ways_cross():
    """Wren is there after a quarter of eight beats, Moss after half of them."""
    ways = {
        "Wren": straight((-1.0, 0.0), (3.0, 0.0)),
        "Moss": straight((0.0, -2.0), (0.0, 2.0)),
        "Dune": straight((5.0, 5.0), (6.0, 6.0)),
    }
    assert crossing_words(ways, 8.0) == ["Wren before Moss by 2 counts"]
    ways["Wren"] = straight((-2.0, 0.0), (2.0, 0.0))
    assert crossing_words(ways, 8.0) == ["Wren and Moss at the same time: agree who goes first"]
    assert crossing_words({"Dune": ways["Dune"]}, 8.0) == []


def test_the_phones_plan_has_an_arrow_for_each_way(rounds, tmp_path):
    show = rounds.show(tmp_path)
    told = phone_page(Edition(staged=show, report=rounds.report()))
    assert told.count("<polyline") == told.count('fill="var(--soft)"/>') > 3


@pytest.mark.parametrize("turned", [True, False])
def test_the_word_audience_is_whole_on_a_wide_stage(rounds, tmp_path, turned):
    text = rounds.ROUND.replace("width: 12 m, depth: 9 m", "width: 24 m, depth: 5 m")
    for old, new in (("7]", "4]"), ("4.5]", "3.5]")):
        text = re.sub(r"(at: \[-?[0-9.]+, )" + re.escape(old), r"\g<1>" + new, text)
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report(), turned=turned)
    told = phone_page(edition)
    tall = float(re.search(r'viewBox="0 0 [0-9]+ ([0-9]+)"', told).group(1))
    y, size = re.search(r'y="([0-9]+)" font-size="([0-9]+)" text-anchor="middle" fill="var\(--soft\)">audience', told).groups()  # fmt: skip
    assert (
        float(y) - 0.8 * float(size) >= 0
    )  # capitals and ascenders: less than that, of any usual type
    assert float(y) + 0.25 * float(size) <= tall
