"""Entrances and exits on the planning page, from the form to the file; what the sheet, the plan and the run cues show of them."""

import pytest

from tests.browser.test_stage_page import planner, text  # noqa: F401
from tests.desk_client import eventually


@pytest.fixture
def plan(planner):  # noqa: F811
    planner.page.get_by_role("tab", name="Stage").click()
    planner.page.get_by_role("group", name="Entrances and exits").wait_for()
    return planner


def put(plan, who, does, at, where):
    form = plan.page.get_by_role("form", name="A new entrance or exit")
    form.get_by_role("combobox", name="Who").select_option(who)
    form.get_by_role("combobox", name="comes on or goes off").select_option(does)
    form.get_by_role("textbox", name="at").fill(at)
    form.get_by_role("combobox", name="to" if does == "goes off" else "from").select_option(where)
    form.get_by_role("button").click()


def test_somebody_comes_on_and_goes_off_and_is_seen_to(plan):
    page = plan.page
    put(plan, "Birch", "comes on", "3.1", "stage left")
    eventually(lambda: "comes_on: 3.1" in text(plan))
    put(plan, "Birch", "goes off", "9.1", "stage right")
    eventually(lambda: "goes_off: 9.1" in text(plan))
    page.get_by_role("button", name="Birch comes on from stage left").wait_for()  # in the sheet
    page.get_by_role("button", name="Birch goes off to stage right").wait_for()
    waiting = page.locator(".plan .spot.waits")
    waiting.wait_for()
    assert waiting.locator(".handle").get_attribute("aria-label").startswith("Birch, in the wings")

    page.get_by_role("tab", name="Who").click()
    page.get_by_role("region", name="Birch").get_by_text(
        "comes on from stage left at 3.1"
    ).wait_for()
    cues = page.locator(".cues tbody tr")
    cues.filter(has_text="Birch comes on from stage left, 8 beats").wait_for()
    assert cues.first.inner_text().split("\t")[2] == "track starts"

    page.get_by_role("tab", name="Stage").click()
    row = page.get_by_role("group", name="Birch goes off at 9.1")  # its fields are told apart
    assert row.get_by_role("combobox", name="to").input_value() == "stage right"
    page.get_by_role("button", name="Delete that Birch goes off at 9.1").click()
    eventually(lambda: "goes_off" not in text(plan))
    assert "comes_on: 3.1" in text(plan)


def test_a_place_in_the_wings_is_moved_by_the_keyboard(plan):
    put(plan, "Birch", "comes on", "3.1", "stage left")
    waiting = plan.page.locator(".plan .spot.waits")
    waiting.wait_for()
    waiting.locator(".handle").focus()
    plan.page.keyboard.press("ArrowUp")
    eventually(lambda: "at: [8, 4.05]" in text(plan))
    assert "side:" not in text(plan)
    assert "Birch: {at: [3, 4]}" in text(plan)  # the spot in the formation stays


def test_what_cannot_be_is_said_and_changes_nothing(plan):
    put(plan, "Birch", "comes on", "3.1", "stage left")
    eventually(lambda: "comes_on: 3.1" in text(plan))
    before = text(plan)
    put(plan, "Birch", "comes on", "9.1", "upstage")
    plan.page.get_by_text("Birch comes on twice without going off between").first.wait_for()
    assert text(plan) == before


def test_a_finding_says_first_whose_it_is_and_who_takes_that_part_tonight(plan):
    put(plan, "Birch", "comes on", "5.1", "stage left")
    eventually(lambda: "comes_on: 5.1" in text(plan))
    plan.looked()
    plan.tab("Findings")
    told = plan.page.locator(".entry.warn", has_text="in the wings, where nobody sees it").locator(
        ".told"
    )
    told.wait_for()
    words = told.inner_text().split()
    assert words[:2] == ["WARN", "3.1"]
    assert told.locator(".whose").inner_text() == "Birch:"
    assert " ".join(words).index("Birch:") < " ".join(words).index("dances two-beat-weave")

    plan.served.page.do(
        plan.served.page.get("show")[1]["revision"],
        do="set-stand-in",
        part="Birch",
        person={"name": "Fern", "stature": "1.62 m"},
    )
    plan.page.locator(".whose", has_text="Birch’s part, tonight Fern:").first.wait_for()
