"""What the planning page loads and asks for when it opens: no more than it shows."""

from pathlib import Path

from tests.browser.test_planning_page import PATIENCE, Planner, show
from tests.desk_client import eventually, warm_desk

__all__ = ["show"]  # the fixture
ASSETS = Path(__file__).parents[2] / "sequencer" / "desk" / "assets"


def fetched(page):
    """Addresses below the page's that it has asked for, in order."""
    names = page.evaluate("() => performance.getEntriesByType('resource').map((each) => each.name)")
    return [name.split("/", 3)[3] for name in names]


def test_what_draws_the_dance_is_loaded_once_somebody_looks(browser, show):
    with warm_desk(show) as served, Planner(browser, served.address) as planner:
        served.page.until_checked(PATIENCE / 1000)
        assert "page.js" in fetched(planner.page)
        assert "dance.js" not in fetched(planner.page)
        for _ in range(2):  # once, though it is looked at twice
            planner.tab("Dance")
            planner.page.wait_for_function("() => !document.querySelector('.dance p')")
            planner.tab("Findings")
        assert fetched(planner.page).count("dance.js") == 1
        assert planner.faults == []


def test_where_the_dance_cannot_be_loaded_it_is_said_and_tried_again(browser, show):
    with warm_desk(show) as served, Planner(browser, served.address) as planner:
        planner.page.route("**/dance.js", lambda route: route.abort())
        planner.tab("Dance")
        planner.waits_for("The program behind this page does not answer.")
        planner.page.unroute("**/dance.js")
        planner.tab("Findings")
        planner.tab("Dance")
        planner.page.wait_for_function("() => !document.querySelector('.dance p')")
        assert planner.faults == []


def test_a_show_that_is_staged_is_asked_for_once(browser, show):
    with warm_desk(show) as served:
        served.page.until_checked(PATIENCE / 1000)
        with Planner(browser, served.address) as planner:
            planner.page.wait_for_selector("svg.loudness")
            planner.page.wait_for_timeout(500)
            asked = fetched(planner.page)
            assert asked.count("api/view") == 1
            assert asked.count("api/song") == 1


def test_checks_that_answer_together_are_asked_about_together(browser, show):
    with warm_desk(show) as served:
        served.page.until_checked(PATIENCE / 1000)
        with Planner(browser, served.address) as planner, served.page.events() as told:
            eventually(lambda: "api/findings" in fetched(planner.page))
            before = fetched(planner.page).count("api/findings")
            revision = served.page.get("show")[1]["revision"]
            status, after = served.page.do(revision, do="change-titles", values={"title": "Other"})
            assert status == 200
            served.page.until_checked(PATIENCE / 1000)
            planner.page.locator(".top h1", has_text="Other").wait_for()
            planner.looked()
            planner.page.wait_for_timeout(500)

            def events():
                return [
                    values
                    for event, values in list(told)
                    if event == "findings" and values["revision"] == after["revision"]
                ]

            eventually(lambda: len(events()) > 20)
            assert 1 <= fetched(planner.page).count("api/findings") - before < len(events()) / 2


def test_the_page_without_the_dance_is_small():
    assert (ASSETS / "page.js").stat().st_size < 250_000
    assert (ASSETS / "watch" / "page.js").stat().st_size < 150_000
