"""A drag while the show changes: it moves what was taken hold of, or nothing, and says so."""

import pytest

from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_first_visit import FULL, HELD, counts_on, text_of, written
from tests.browser.test_planning_page import Planner
from tests.browser.test_stage_page import SHOW as PLACED
from tests.browser.test_stage_page import drag
from tests.desk_client import eventually, warm_desk

WEAVE = "  - {from: 3.1, pattern: two-beat-weave, beats: 8}\n"
ABOVE = FULL.replace(WEAVE, "  - {from: 1.1, pattern: extension, beats: 4}\n" + WEAVE)
# What was asked for first is done at once, and its answer comes once the test says so.
ANSWERED_LATE = """held => { const send = window.fetch; let first = true; window.fetch = async (...what) => {
    const answer = await send(...what);
    if (first && String(what[0]).includes(held)) { first = false; await new Promise((done) => (window.release = done)); }
    return answer; } }"""
WORDS = "Nothing was moved: the show changed while you were dragging. Try again."


@pytest.fixture
def show(tmp_path):
    """A small show of two, in a folder of its own."""
    return beside_its_song(tmp_path, FULL)


def let_go(planner):
    """The button comes up once the page shows what was changed meanwhile."""
    planner.page.locator(".refused", has_text=WORDS).wait_for()
    assert planner.page.locator(".outline").count() == 0
    planner.page.mouse.up()
    planner.page.wait_for_timeout(300)  # whatever is done now would be done
    assert planner.page.locator(".place").count() == 0  # nor is it a click


@pytest.mark.parametrize("end", [False, True], ids=["a move", "its end"])
def test_a_move_let_go_after_the_file_changed_moves_nothing_else(flat_browser, show, end):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        counts_on(planner, written(planner, 9), 1 if not end else -1, of=4, end=end)
        show.write_text(ABOVE, encoding="utf-8")
        let_go(planner)
        assert text_of(served) == ABOVE
        # What is dragged after that goes where it is let go.
        planner.up_to_date()
        counts_on(planner, written(planner, 9), -1, of=4, end=True)
        planner.page.mouse.up()
        line = "{from: 9.1, pattern: extension, beats: 3}"
        eventually(lambda: line in text_of(served))
        assert text_of(served) == ABOVE.replace("{from: 9.1, pattern: extension, beats: 4}", line)
        assert planner.faults == []


def test_a_move_let_go_before_the_page_hears_of_a_change_is_the_one_that_was_held(
    flat_browser, show
):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        page.evaluate(HELD, ["show", 200])
        counts_on(planner, written(planner, 3), 3)
        show.write_text(ABOVE, encoding="utf-8")
        eventually(lambda: text_of(served) == ABOVE)
        page.mouse.up()
        eventually(lambda: "{from: 3.4, pattern: two-beat-weave, beats: 8}" in text_of(served))
        assert text_of(served) == ABOVE.replace("from: 3.1", "from: 3.4")
        page.evaluate("window.release && window.release()")


def test_undo_while_a_move_is_held_lets_it_go(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        counts_on(planner, written(planner, 9), -1, of=4, end=True)
        planner.page.mouse.up()
        eventually(lambda: "beats: 3}" in text_of(served))
        planner.up_to_date()
        counts_on(planner, written(planner, 3), 3)
        planner.page.keyboard.press("Control+z")
        let_go(planner)
        assert text_of(served) == FULL
        assert planner.faults == []


def test_what_might_be_moved_along_instead_is_offered_until_the_show_changes(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        counts_on(planner, written(planner, 9), 1, of=4)
        planner.page.mouse.up()
        offer = planner.page.get_by_role("button", name="Move what follows along: 1 move")
        offer.wait_for()
        show.write_text(ABOVE, encoding="utf-8")
        offer.wait_for(state="detached")
        assert text_of(served) == ABOVE


# --- on the stage plan ---


def test_on_the_stage_plan_what_is_held_is_moved_or_nothing(flat_browser, show):
    show.write_text(PLACED, encoding="utf-8")
    other = PLACED.replace(
        "    - {at: [-6, 8]", "    - {at: [5, 5], rating: 21A}\n    - {at: [-6, 8]"
    )
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Stage")
        planner.page.locator(".plan").wait_for()
        drag(planner, (-6, 8), (-5, 7))
        show.write_text(other, encoding="utf-8")
        let_go(planner)
        assert text_of(served) == other
        assert planner.faults == []


def test_a_spot_held_while_the_one_before_is_put_down_is_put_down_too(flat_browser, show):
    show.write_text(PLACED, encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        planner.tab("Stage")
        page.locator(".plan").wait_for()
        page.evaluate(HELD, ["operations", 200])
        drag(planner, (-3, 4), (-4, 4))
        page.mouse.up()
        page.wait_for_function("() => !!window.release", timeout=60_000)
        drag(planner, (3, 4), (4, 5))
        page.evaluate("window.release()")
        eventually(lambda: "{Ash: {at: [-4, 4]}" in text_of(served))
        planner.up_to_date()
        page.mouse.up()
        pair = "pair: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [4, 5]}}}"
        eventually(lambda: pair in text_of(served))
        assert page.locator(".refused").count() == 0
        assert planner.faults == []


def test_a_spot_is_held_on_while_the_page_hears_of_the_one_before_from_elsewhere(
    flat_browser, show
):
    """The server tells all pages what was done; that may come before the answer to the page that did it."""
    show.write_text(PLACED, encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        planner.tab("Stage")
        page.locator(".plan").wait_for()
        page.evaluate(ANSWERED_LATE, "operations")
        drag(planner, (-3, 4), (-4, 4))
        page.mouse.up()
        page.wait_for_function("() => !!window.release", timeout=60_000)
        drag(planner, (3, 4), (4, 5))
        page.get_by_role("button", name="Undo").and_(page.locator(":enabled")).wait_for()
        page.wait_for_timeout(200)  # whatever would end the drag has ended it
        assert page.locator(".refused").count() == 0
        assert page.locator(".held.dragged").count() == 1
        page.evaluate("window.release()")
        page.mouse.up()
        pair = "pair: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [4, 5]}}}"
        assert eventually(lambda: pair in text_of(served))
        assert planner.faults == []
