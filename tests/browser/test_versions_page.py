"""Versions and comparisons on the planning page: kept, compared, stepped through by keyboard, gone back to, deleted."""

import pytest

from tests.browser.test_planning_page import Planner, changed_lines
from tests.browser.test_planning_page import show as show  # noqa: PLC0414  # a fixture
from tests.desk_client import eventually, warm_desk


@pytest.fixture
def planner(browser, show):
    with warm_desk(show) as served, Planner(browser, served.address) as planner:
        planner.served = served
        yield planner
        assert planner.faults == []


def keep(planner, name):
    planner.tab("Versions")
    planner.page.get_by_label("Keep the show as it is now").fill(name)
    planner.page.keyboard.press("Enter")
    planner.page.get_by_role("heading", name=name).wait_for()


def do(planner, **operation):
    revision = planner.served.page.get("show")[1]["revision"]
    status, answer = planner.served.page.do(revision, **operation)
    assert status == 200, answer


def test_a_version_is_kept_and_what_changed_since_is_stepped_through_by_keyboard(planner, show):
    page, before = planner.page, show.read_text(encoding="utf-8")
    keep(planner, "before the rehearsal")
    version = show.with_name("two (before the rehearsal).yaml")
    assert version.read_text(encoding="utf-8") == before
    assert page.get_by_role("button", name="Compare before the rehearsal").is_disabled()

    do(planner, do="stretch-block", at=["timeline", 0], beats=24)
    do(planner, do="put-block", into=["timeline"], block={"who": "Birch", "from": "10.1", "pattern": "windmill", "beats": 8})  # fmt: skip
    do(planner, do="move-spot", formation="pair", who="Ash", at=[-3.5, 4])
    do(planner, do="change-person", group="cast", name="Birch", values={"stature": 1.82})
    planner.waits_for("Since then: 2 changes in what is danced, 1 change in where everybody")
    page.locator(".block.written", has_text="windmill").first.wait_for()
    planner.up_to_date()
    page.get_by_role("button", name="Compare before the rehearsal").click()
    page.locator(".change-list").wait_for()
    listed = page.locator("button.change").all_inner_texts()
    told = [
        "1.1 Ash formation pair: 0.50 m to stage right, at [-3.5, 4] instead of [-3, 4]",
        "3.1 Ash, Birch two-beat-weave: 24 beats instead of 16",
        "10.1 Birch windmill, 8 beats, is new",
        "Birch: stature 1.82 instead of 1.8",
    ]
    assert [each.split(" ", 1)[1] for each in listed] == told

    # the marks in the sheet's rows, each with a name
    marks = page.locator(".row-mark")
    assert marks.count() >= 3
    assert page.locator("#mark-2").get_attribute("aria-label").startswith("changed. Change 1 of 4, 1.1: Ash") is False  # fmt: skip
    names = [marks.nth(k).get_attribute("aria-label") for k in range(marks.count())]
    assert any("windmill, 8 beats, is new" in name and name.startswith("new. Change 3 of 4") for name in names)  # fmt: skip

    # from change to change, wherever the keyboard is
    for k, words in enumerate(told, 1):
        page.keyboard.press("Alt+ArrowDown")
        page.wait_for_function(
            "words => document.querySelector('button.change.on')?.innerText.includes(words)", arg=words
        )  # fmt: skip
        planner.waits_for(f"{k} of 4")
    page.keyboard.press("Alt+ArrowUp")
    page.wait_for_function("() => document.querySelector('.row-mark.on')?.innerText.includes('windmill')")  # fmt: skip
    assert page.locator(".count.on").get_attribute("aria-label").startswith("Bar 9, count 5, Birch")

    # on the stage: where Ash stood, and how far away that is
    page.locator("button.change", has_text="formation pair").click()
    page.get_by_role("button", name="See it on the stage").click()
    page.locator(".plan .moves text", has_text="was here, 0.50 m").wait_for(state="attached")


def test_going_back_is_one_step_that_undo_takes_back(planner, show):
    page, before = planner.page, show.read_text(encoding="utf-8")
    keep(planner, "duo")
    for beats in (20, 24):
        do(planner, do="stretch-block", at=["timeline", 0], beats=beats)
    changed = planner.served.page.get("show")[1]["text"]
    planner.waits_for("Since then: 1 change in what is danced")
    page.get_by_role("button", name="Go back to it duo").click()
    eventually(lambda: planner.served.page.get("show")[1]["text"] == before)
    page.get_by_role("button", name="Undo").click()
    eventually(lambda: planner.served.page.get("show")[1]["text"] == changed)
    went, _ = changed_lines(before, changed)
    assert len(went) == 1

    # a step of the history is compared, and gone back to
    page.get_by_label("What was").select_option(label=next(
        each for each in page.get_by_label("What was").locator("option").all_inner_texts() if each.startswith("after 1:")
    ))  # fmt: skip
    page.get_by_role("button", name="Compare", exact=True).click()
    page.locator("button.change", has_text="two-beat-weave: 24 beats instead of 20").wait_for()
    page.get_by_role("button", name="Back to the versions").click()
    page.get_by_label("What was").select_option("step:1")
    page.get_by_role("button", name="Go back to that step").click()
    eventually(lambda: "beats: 20" in planner.served.page.get("show")[1]["text"])


def test_no_version_is_replaced_or_deleted_unasked(planner, show):
    page = planner.page
    keep(planner, "duo")
    version = show.with_name("two (duo).yaml")
    kept = version.read_bytes()
    do(planner, do="stretch-block", at=["timeline", 0], beats=24)
    page.get_by_label("Keep the show as it is now").fill("Duo")
    page.get_by_role("button", name="Keep it").click()
    planner.waits_for("There is a version “Duo” already")
    assert version.read_bytes() == kept
    page.get_by_role("button", name="Replace it").click()
    eventually(lambda: b"beats: 24" in version.read_bytes())

    page.get_by_role("button", name="Delete duo").click()
    planner.waits_for("Delete “duo” for good?")
    page.get_by_role("button", name="Leave it").click()
    assert version.exists()
    page.get_by_role("button", name="Delete duo").click()
    page.get_by_role("button", name="Delete it").click()
    eventually(lambda: not version.exists())
    planner.waits_for("No version has been kept yet")
    page.get_by_label("Keep the show as it is now").fill("a/b")
    page.get_by_role("button", name="Keep it").click()
    page.locator(".refused", has_text="cannot have '/'").wait_for()


def test_a_comparison_follows_what_is_done_meanwhile(planner):
    page = planner.page
    keep(planner, "duo")
    do(planner, do="stretch-block", at=["timeline", 0], beats=24)
    page.get_by_role("button", name="Compare duo").click()
    page.locator("button.change", has_text="24 beats instead of 16").wait_for()
    do(planner, do="stretch-block", at=["timeline", 0], beats=20)
    page.locator("button.change", has_text="20 beats instead of 16").wait_for()
    do(planner, do="stretch-block", at=["timeline", 0], beats=16)
    planner.waits_for("The same, letter by letter.")
    assert page.locator(".row-mark").count() == 0
