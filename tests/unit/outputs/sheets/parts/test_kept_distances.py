"""Distances on the packet against ways worked by hand on the plan (Pythagoras)."""

from dataclasses import replace
from math import ceil, floor, hypot

import pytest

from sequencer.findings import Report
from sequencer.outputs.sheets.page.marking import lines_of
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.kept_distances import distances_block


def said(edition):
    return "\n".join(lines_of(distances_block(edition, 480.0))).replace("\u00a0", " ")


@pytest.fixture(scope="module")
def lantern(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("far"))


def test_each_distance_is_the_least_or_longest_of_the_song(lantern):
    reach = {dancer.name: dancer.reach for dancer in lantern.dancers}
    words = said(Edition(staged=lantern, report=Report(show="s")))

    # Łucja comes down to Y = 2 in the diamond; the audience's line is at Y = -6
    assert f"{floor(100 * (8.0 - reach['Łucja'])) / 100:.2f} m; Łucja" in words
    # 火花 in the diamond, [0, 7], to the extinguisher at [6.5, 5]: 6.801 m, rounded up
    assert hypot(6.5, 2.0) == pytest.approx(6.8007, abs=1e-4)
    assert "6.81 m (at most 9.14 m); 火花" in words
    # the fuel at [-10, 10], to Søren at [-3, 4.5]: 8.902 m, less his reach
    assert "fuel station to its own extinguisher, on foot · none stands ready for it" in words
    assert f"{floor(100 * (hypot(7.0, 5.5) - reach['Søren'])) / 100:.2f} m (at least 6.10 m); Søren" in words  # fmt: skip
    # and to the line's near end at [-9, -6]: 16.031 m
    assert "16.03 m (at least 6.10 m)" in words


def test_the_fuel_s_own_extinguisher_is_told_apart_from_those_of_the_act(rounds, tmp_path):
    """From [-10, 10] to [-6.5, 1]: 9.657 m, rounded up; without it the act has only the one at [6.5, 5]."""
    text = rounds.ROUND.replace("{at: [-6.5, 1]}", "{at: [-6.5, 1], guards: fuel}")
    show = rounds.show(tmp_path, text)
    words = said(Edition(staged=show, report=Report(show="s")))

    assert "fuel station to its own extinguisher, on foot · 9.66 m (at most 9.14 m)" in words
    ways = [hypot(6.5 - x, 5 - y) for each in show.standings for x, y, _ in each.spots.values()]
    assert f"{ceil(100 * max(ways)) / 100:.2f} m (at most 9.14 m)" in words


def test_how_near_a_flame_comes_to_each_exit_and_its_way(rounds, tmp_path):
    """An exit at [0, -9], 3 m behind the audience's line at Y = -6: Łucja comes down to Y = 2 on the centre line."""
    show = rounds.show(tmp_path, rounds.ROUND.replace("lane gate, at: [9, 6]", "gate, at: [0, -9]"))
    reach = {dancer.name: dancer.reach for dancer in show.dancers}
    words = said(Edition(staged=show, report=Report(show="s")))

    assert f"exit gate and the way to it, to prop and flame · {floor(100 * (8.0 - reach['Łucja'])) / 100:.2f} m" in words  # fmt: skip


def test_nobody_lit_has_no_distance_of_flames(lantern):
    dark = replace(lantern, show=lantern.show.model_copy(update={"fire": None}))

    assert distances_block(Edition(staged=dark, report=Report(show="s")), 480.0) == []
