"""The planning page for somebody who has never seen it: what they try first does what it seems to, and every press is answered."""

import pytest

from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_page import SHOW, Planner, changed_lines
from tests.browser.test_planning_work import PHONE, visitor
from tests.desk_client import eventually, warm_desk

TIMELINE = """\
timeline:
  - {from: 3.1, pattern: two-beat-weave, beats: 8}
  - {from: 9.1, pattern: extension, beats: 4}
  - {from: 10.1, pattern: two-beat-weave, beats: 8}
"""
FULL = SHOW[: SHOW.index("timeline:")] + TIMELINE
TABS = ("Findings", "Stage", "Dance", "Count", "Who", "Draft", "Show", "Print", "Versions", "Text")
# What is asked for first is answered once the test says so, and may be refused.
HELD = """([held, status]) => { const send = window.fetch; let first = true; window.fetch = async (...what) => {
    if (!first || !String(what[0]).includes(held)) return send(...what);
    first = false;
    await new Promise((done) => (window.release = done));
    return status === 200 ? send(...what) : new Response(JSON.stringify({ error: { message: "superseded" } }), { status }); } }"""
AT_TOP = "each => Math.abs(each.getBoundingClientRect().top) < 30"


@pytest.fixture
def show(tmp_path):
    """A small show of two, in a folder of its own."""
    return beside_its_song(tmp_path, FULL)


def text_of(served):
    return served.page.get("show")[1]["text"]


def written(planner, bar):
    """The box of the move that begins with a bar."""
    own = planner.page.locator(f".eight:has(> .bar:text-is('{bar}')) .block.written.begins").first
    own.scroll_into_view_if_needed()
    return own.bounding_box()


def counts_on(planner, box, counts, *, of=8, end=False):
    """Press on a move of so many counts, or on its end, and go some counts on; the button stays down."""
    mouse, wide = planner.page.mouse, box["width"] / of
    x = box["x"] + box["width"] - 4 if end else box["x"] + 0.5 * wide
    y = box["y"] + box["height"] / 2
    mouse.move(x, y)
    mouse.down()
    mouse.move(x + 0.5 * counts * wide, y, steps=3)
    mouse.move(x + counts * wide, y, steps=3)


def test_a_move_is_dragged_along_the_sheet_and_so_is_its_end(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page, mouse = planner.page, planner.page.mouse
        counts_on(planner, written(planner, 3), 3)
        assert page.locator(".outline b").first.inner_text() == "to 3.4"
        assert page.evaluate("getComputedStyle(document.querySelector('.block.written')).cursor") == "grabbing"  # fmt: skip
        mouse.up()
        eventually(lambda: "{from: 3.4, pattern: two-beat-weave, beats: 8}" in text_of(served))
        assert page.locator(".place").count() == 0  # a drag is no click
        planner.up_to_date()
        counts_on(planner, written(planner, 9), -1, of=4, end=True)
        assert page.locator(".outline b").first.inner_text() == "3 beats"
        mouse.up()
        eventually(lambda: "{from: 9.1, pattern: extension, beats: 3}" in text_of(served))
        planner.up_to_date()
        # Escape leaves it where it was, and a press that goes nowhere is a click.
        before = text_of(served)
        counts_on(planner, written(planner, 9), 2, of=3)
        page.keyboard.press("Escape")
        mouse.up()
        assert page.locator(".outline").count() == 0
        counts_on(planner, written(planner, 9), 0, of=3)
        mouse.up()
        page.locator(".place h3", has_text="extension").wait_for()
        assert text_of(served) == before
        page.get_by_role("button", name="Undo").click()
        page.get_by_role("button", name="Undo").click()
        eventually(lambda: text_of(served) == FULL)
        assert planner.faults == []


def test_where_there_is_no_room_what_follows_can_be_moved_along_at_once(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        counts_on(planner, written(planner, 9), 1, of=4)
        page.mouse.up()
        page.locator(".refused", has_text="while extension from 9.2 on (line").wait_for()
        page.get_by_role("button", name="Move what follows along: 1 move, up to the end").click()
        eventually(lambda: "from: 10.2" in text_of(served))
        assert changed_lines(FULL, text_of(served)) == (
            ["  - {from: 9.1, pattern: extension, beats: 4}", "  - {from: 10.1, pattern: two-beat-weave, beats: 8}"],
            ["  - {from: 9.2, pattern: extension, beats: 4}", "  - {from: 10.2, pattern: two-beat-weave, beats: 8}"],
        )  # fmt: skip
        page.locator(".refused").wait_for(state="detached")
        # By the form too.
        planner.up_to_date()
        planner.count(9, 3).first.click(force=True)
        page.get_by_role("button", name="1 beat longer").click()
        page.get_by_role("button", name="Move what follows along: 1 move, up to the end").click()
        eventually(lambda: "{from: 9.2, pattern: extension, beats: 5}" in text_of(served))
        assert "from: 10.3" in text_of(served)
        assert planner.faults == []


def test_no_panel_is_longer_than_the_window_and_each_is_seen_from_its_top(flat_browser, show):
    show.write_text(FULL + "tonight: {away: [Birch]}\n", encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page, side = planner.page, planner.page.locator("#side")
        for tab in TABS:
            side.evaluate("each => each.scrollTop = 400")  # where the panel before was left
            planner.tab(tab)
            assert side.evaluate("each => each.scrollTop") == 0, tab
            page.wait_for_timeout(150)
            assert page.evaluate("document.scrollingElement.scrollHeight - innerHeight") == 0, tab
        planner.tab("Who")
        page.get_by_text("falls out: 3 moves, from 3.1").wait_for()
        page.get_by_role("button", name="Add, rename or take out performers").click()
        page.locator(".forms summary:focus", has_text="Cast").wait_for()


def test_the_first_click_adds_what_was_typed_last(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        planner.tab("Show")
        page.locator(".forms > details > summary", has_text="Crew").click()
        page.get_by_role("button", name="Add a member of the crew").click()
        new = page.get_by_role("group", name="A new member of the crew")
        new.get_by_label("metres across, right of the middle for the audience").fill("5")
        new.get_by_label("metres upstage of the front edge").fill("6")
        new.get_by_label("duty *").select_option("spotter")
        new.get_by_label("name *").click()
        page.keyboard.type("Oak")
        add = new.get_by_role("button", name="Add the member of the crew")
        add.scroll_into_view_if_needed()
        box = add.bounding_box()
        page.mouse.move(box["x"] + 20, box["y"] + box["height"] / 2)
        page.mouse.down()
        page.wait_for_timeout(100)  # what the field left behind is drawn meanwhile
        page.mouse.up()
        assert eventually(lambda: "name: Oak" in text_of(served))


def test_a_renamed_performer_keeps_their_form_and_fire_begins_with_its_fuel(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        planner.tab("Show")
        forms = page.locator(".forms")
        forms.locator("> details > summary", has_text="Cast").click()
        forms.locator("summary", has_text="Ash").click()
        name = forms.get_by_label("Name", exact=True).first
        name.fill("Rowan")
        name.press("Enter")
        eventually(lambda: "name: Rowan" in text_of(served))
        page.locator(".forms summary", has_text="Rowan").wait_for()
        assert page.evaluate("document.activeElement.value") == "Rowan"
        forms.get_by_role("button", name="Take Rowan out").wait_for()
        forms.locator("> details > summary", has_text="Fire").click()
        forms.get_by_text("Name the fuel first; then say who is lit").wait_for()
        forms.get_by_label("fuel", exact=True).first.wait_for()
        assert planner.faults == []


def test_play_pressed_twice_while_the_song_is_loaded_plays(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        page.evaluate(HELD, ["track.mp3", 200])
        play = page.locator(".transport .main")
        play.click()
        page.wait_for_function("() => document.querySelector('.transport .main').innerText === 'Loading …'")  # fmt: skip
        play.click()
        page.evaluate("release()")
        page.wait_for_function("() => document.querySelector('.transport .main').innerText === 'Stop'")  # fmt: skip
        page.wait_for_timeout(500)
        assert play.inner_text() == "Stop"


def test_moves_are_said_to_join_once_that_is_known_and_the_keyboard_is_at_the_move(
    flat_browser, show
):
    phrase = "phrases:\n  calm: [{pattern: extension, beats: 2}, {link: true, beats: 2}]\n"
    show.write_text(
        FULL.replace("timeline:", phrase + "timeline:").replace("{from: 9.1, pattern: extension, beats: 4}", "{from: 9.1, phrase: calm}"),
        encoding="utf-8",
    )  # fmt: skip
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        planner.count(9, 3).first.click(force=True)
        page.wait_for_function(
            "() => document.activeElement.matches('.steps button')"
        )  # a link has no other move
        page.evaluate(HELD, ["patterns?", 409])
        planner.count(9, 1).first.click(force=True)
        # not the phrase's name, which whatever is typed would change
        page.wait_for_function("() => document.activeElement.matches('.pattern-field input')")
        box = page.get_by_role("combobox", name="Dance another move")
        box.fill("wheel-sp")
        box.click()
        option = page.get_by_role("option", name="wheel-spin")
        option.wait_for()
        assert "nothing stands before it" not in option.inner_text()
        assert "seeing how it joins …" in option.inner_text()
        page.evaluate("release()")
        page.wait_for_function("() => !document.querySelector('[role=option] small').innerText.includes('looking')")  # fmt: skip
        assert "link" in option.inner_text() or "join" in option.inner_text()
        assert option.locator("em").inner_text() != ""  # what it is


def test_on_a_phone_what_is_asked_for_on_the_sheet_comes_into_sight_below_it(flat_browser, show):
    show.write_text(SHOW[: SHOW.index("timeline:")] + "timeline: []\n", encoding="utf-8")
    with (
        warm_desk(show) as served,
        visitor(flat_browser, served.address, viewport=PHONE, has_touch=True) as page,
    ):
        page.get_by_role("button", name="No tour").or_(page.locator(".top")).first.wait_for()
        tabs = page.locator(".tabs")
        page.get_by_role("button", name="Draft a first routine").click()
        page.wait_for_function(f"() => ({AT_TOP})(document.querySelector('.tabs'))")
        page.get_by_role("button", name="Give it up").click()
        page.get_by_role("button", name="Draft what is empty").wait_for()
        page.get_by_role("button", name="Sheet ↑").click()
        page.get_by_role("button", name="Tabs ↓").wait_for()
        assert page.locator(".top").evaluate("each => each.getBoundingClientRect().bottom") > 0
        page.get_by_role("button", name="Tabs ↓").click()
        page.get_by_role("button", name="Sheet ↑").wait_for()
        assert tabs.evaluate(AT_TOP)
        # A spot is a few pixels wide there: it can be taken hold of beside it.
        page.get_by_role("tab", name="Stage").click()
        spot = page.locator(".plan .body").first
        spot.wait_for()
        assert spot.evaluate(
            """each => { each.scrollIntoView({ block: "center" }); const box = each.getBoundingClientRect();
            return document.elementFromPoint(box.left - 5, box.top + box.height / 2).matches(".finger"); }"""
        )
