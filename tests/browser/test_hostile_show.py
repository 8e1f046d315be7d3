"""A hostile show opened for planning: 40 performers, 10,000 blocks, markup for names; nothing is run, and it can still be planned."""

import pytest

from tests.browser.test_planning_page import Planner
from tests.desk_client import eventually, warm_desk
from tests.hostile_show import MOVES, NASTY, hostile_show

MOST_NODES = 6_000  # of the page: rows that nobody looks at are not made
LONG = 600  # [s] for a machine that has much else to do


@pytest.fixture(scope="module")
def served(tmp_path_factory):
    path = hostile_show(tmp_path_factory.mktemp("hostile"))
    with warm_desk(path) as own:
        eventually(lambda: own.page.get("view")[0] == 200, LONG)
        yield own


def nodes(planner):
    return planner.page.evaluate("() => document.querySelectorAll('*').length")


def test_it_opens_walks_and_changes_and_runs_nothing(browser, served):
    view = served.page.get("view")[1]
    assert (len(view["cast"]), len(view["blocks"])) == (40, 10_000)
    with Planner(browser, served.address) as planner:
        page, keys = planner.page, planner.page.keyboard
        assert page.locator("h1").inner_text() == NASTY[1] + " show"
        assert nodes(planner) < MOST_NODES
        page.locator(".block.written").first.click()
        page.wait_for_selector(".place form")
        keys.press("Escape")
        page.wait_for_function("() => document.activeElement.classList.contains('count')")
        first = page.evaluate("() => document.activeElement.getAttribute('aria-label')")
        assert any(each in first for each in NASTY)
        keys.press("ArrowRight")
        keys.press("ArrowDown")
        for _ in range(3):
            keys.press("PageDown")
        page.wait_for_function(
            "() => Number(document.activeElement.getAttribute('aria-label').match(/^Bar (\\d+)/)[1]) > 3"
        )
        assert page.locator(".count:focus").count() == 1
        page.locator(".transport input[type=range]").first.fill("200")
        page.wait_for_selector(".head", state="attached")
        assert nodes(planner) < 2 * MOST_NODES
        for name in ("Stage", "Count", "Show", "Findings"):
            planner.tab(name)
            page.wait_for_selector("#panel > *")
        assert page.evaluate("window.hacked") is None
        assert page.locator("main img, main script, main svg[onload]").count() == 0
        assert planner.faults == []


def test_a_block_in_the_midst_of_it_is_deleted_and_comes_back(browser, served):
    with Planner(browser, served.address) as planner:
        page = planner.page
        before = served.page.get("show")[1]["text"]
        page.locator(".block.written").nth(3).click()
        page.wait_for_selector(".place form")
        page.get_by_role("button", name="Delete").click()
        eventually(lambda: served.page.get("show")[1]["revision"] == 2, LONG)
        after = served.page.get("show")[1]["text"]
        assert before.count("\n") - after.count("\n") == 1
        assert any(move in before for move in MOVES)
        served.page.post("undo")
        assert served.page.get("show")[1]["text"] == before
        assert page.evaluate("window.hacked") is None
        assert planner.faults == []
