"""A phone that watches in a real browser: it joins, sees what changes, hears, and changes nothing."""

import pytest

from tests.browser.machine import PATIENCE
from tests.browser.test_planning_page import SHOW, Planner, show
from tests.desk_client import eventually, warm_desk

__all__ = ["show"]  # the fixture
PHONE = {"width": 390, "height": 844}


@pytest.fixture
def both(browser, show):
    """A shared show, and a phone at its door; what the phone asked for, and what it was refused."""
    show.write_text(SHOW + "  - {who: Ash, from: 9.1, pattern: windmill, beats: 8}\n", encoding="utf-8")  # fmt: skip
    with warm_desk(show, "--share-address", "127.0.0.2") as served:
        said = eventually(lambda: served.page.get("share")[1])
        context = browser.new_context(viewport=PHONE, has_touch=True)
        page = context.new_page()
        page.set_default_timeout(PATIENCE)
        page.asked, page.faults = [], []
        page.on("request", lambda request: page.asked.append((request.method, request.url)))
        page.on("pageerror", lambda error: page.faults.append(str(error)))
        page.goto(said["address"])
        page.code = said["code"]
        yield served, page
        context.close()


def joined(page):
    page.get_by_label("Code").fill(page.code.lower().replace("-", " "))
    page.get_by_role("button", name="Join").click()
    page.wait_for_selector(".eight")


def test_it_joins_and_sees_what_changes_meanwhile(both):
    served, page = both
    page.get_by_label("Code").fill("AAAA-AAAA")
    page.get_by_role("button", name="Join").click()
    page.wait_for_function("() => document.querySelector('.door [role=alert]').innerText === 'This is not the code.'")  # fmt: skip
    joined(page)
    served.page.do(1, do="change-titles", values={"title": "Three weaves"})
    page.wait_for_function("() => document.querySelector('h1').innerText === 'Three weaves'")
    page.reload()
    page.wait_for_selector(".eight")  # it is known still
    assert page.faults == []


def test_one_performer_s_own_part_and_what_comes_next(both):
    _, page = both
    joined(page)
    page.get_by_label("For").select_option("Ash")
    page.locator(".count[aria-label^='Bar 3, count 3, ']").tap()
    page.wait_for_function("() => document.querySelector('.now')?.innerText.includes('two-beat-weave')")  # fmt: skip
    assert "then windmill at 9.1, in 22" in page.locator(".now").inner_text()
    page.get_by_label("For").select_option("Birch")
    page.wait_for_function("() => !document.querySelector('.sheet').innerText.includes('windmill')")
    page.locator(".transport .main").tap()
    page.wait_for_function(
        "() => Number(document.querySelector('.transport input[type=range]').value) > 6"
    )
    assert page.faults == []


def test_nothing_on_it_changes_anything(both):
    """Every key and every button of the sheet, the stage and the findings: it asks to look, and for nothing else."""
    served, page = both
    joined(page)
    page.locator(".count[aria-label^='Bar 3, count 3, ']").focus()
    for key in ("Delete", "Backspace", "Control+x", "Control+v", "Control+c", "Enter", "Control+z", "Control+s"):  # fmt: skip
        page.keyboard.press(key)
    page.get_by_role("tab", name="Stage").click()
    page.locator(".plan .body").first.dispatch_event(
        "keydown", {"key": "ArrowRight", "bubbles": True}
    )
    box = page.locator(".plan .body").first.bounding_box()
    page.mouse.move(box["x"] + 5, box["y"] + 5)
    page.mouse.down()
    page.mouse.move(box["x"] + 90, box["y"] + 40, steps=5)
    page.mouse.up()
    page.get_by_role("tab", name="Findings").click()
    for button in page.locator(".findings button").all():
        button.click()
    assert {method for method, url in page.asked if not url.endswith("/api/join")} == {"GET"}
    assert served.page.get("show")[1]["revision"] == 1
    assert page.locator(".place, .refused, textarea").count() == 0
    assert page.faults == []


def test_whoever_plans_sees_who_watches_and_ends_it(browser, both):
    served, page = both
    with Planner(browser, served.address) as planner:
        planner.waits_for("no page watches")
        assert page.code in planner.page.locator(".shared").inner_text()
        joined(page)
        planner.waits_for("1 page watches")
        planner.page.get_by_role("button", name="Stop sharing").click()
        planner.page.get_by_role("button", name="Stop it now").click()
        page.wait_for_function("() => document.body.innerText.includes('it is shared no longer')")
        planner.page.wait_for_function("() => !document.querySelector('.shared')")
        assert planner.faults == []
