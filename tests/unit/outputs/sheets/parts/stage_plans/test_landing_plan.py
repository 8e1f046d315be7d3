"""Where heads that come off land, on paper: rounded to the safe side, and drawn whole."""

from dataclasses import replace

import pytest

from sequencer.motion.clearance.flown_area import GROWN
from sequencer.motion.clearance.let_go import LetGo, NearestFlight
from sequencer.outputs.sheets.page.marking import lines_of
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans import landing_plan as part
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import scene_of
from sequencer.outputs.sheets.parts.stage_plans.landing_plan import WIDEST_AREA, landing_block
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.outputs.sheets.parts.stage_plans.scene import window
from sequencer.safety.site_ground.landings import Landing, LandingPlan
from sequencer.staging.moves_danced import move_words


@pytest.fixture(scope="module")
def edition(rounds, tmp_path_factory):
    return Edition(staged=rounds.show(tmp_path_factory.mktemp("landing")), report=rounds.report())


def near(place, name, distance, beyond=0.0):
    flight = NearestFlight(distance=distance, beyond=beyond, beat=20.0, landing=(0.0, 0.0))
    return Landing(place=place, name=name, who="Łucja", flight=flight)


def told(edition, monkeypatch, *nearest):
    flight = LetGo(flight=8.25, beat=20.0, landing=(0.0, 0.0), fastest=8.01, proven=True)
    plan = LandingPlan(farthest=("Łucja", flight), nearest=nearest)
    monkeypatch.setattr(part, "landing_plan", lambda _show: plan)
    return [
        line.replace("\u00a0", " ") for line in lines_of(landing_block(edition, 500.0, drawn=False))
    ]


def test_flights_are_rounded_up_and_what_is_left_before_people_down(edition, monkeypatch):
    """8.25 m must not be printed as "at most 8 m"."""
    lines = told(
        edition, monkeypatch, near("audience", "rows", 2.99), near("post", "Ewa", 0.04), near("exit", "lane", 0.0),
    )  # fmt: skip

    move = move_words(edition.staged, "Łucja", 20.0)
    assert move
    words = f"8.3 m, Łucja at 0:10 in {move}, which could be danced slower; no head moves faster than 8.1 m/s"
    assert any(words in line for line in lines)
    monkeypatch.setattr(part, "move_words", lambda *_: "")
    lines_at_rest = told(edition, monkeypatch)
    assert any("8.3 m, Łucja at 0:10; no head" in line for line in lines_at_rest)
    assert any("2.9 m from rows" in line for line in lines)
    assert any("0.0 m from Ewa" in line for line in lines)
    assert any("over lane" in line for line in lines)


def test_a_landing_among_people_is_told_as_such(edition, monkeypatch):
    lines = told(
        edition,
        monkeypatch,
        near("audience", "rows", 0.0, beyond=1.21),
        near("audience", "side", 0.5),
    )

    assert any("up to 1.3 m beyond rows" in line for line in lines)
    assert not any("side" in line for line in lines)  # the worst one


def test_nothing_is_printed_where_nothing_is_lit(edition, monkeypatch):
    monkeypatch.setattr(part, "landing_plan", lambda _show: None)

    assert landing_block(edition, 500.0, drawn=True) == []


def test_the_area_drawn_is_said_to_be_as_wide_as_it_may_be():
    assert GROWN <= WIDEST_AREA < GROWN + 0.1


def test_the_area_lies_whole_on_the_plan_and_counts_as_a_change(edition):
    scene = scene_of(edition, 0)
    ring = ((-20.0, -3.0), (20.0, -3.0), (0.0, 30.0))
    wide = replace(scene, landing=(ring,))
    low_x, low_y, high_x, high_y = window(wide)

    assert all(low_x <= x <= high_x and low_y <= y <= high_y for x, y in ring)
    assert StagePlan(wide, tall=300).description != StagePlan(scene, tall=300).description
