"""The planning page in a real browser, on a real server: what a person does by mouse and by keyboard, and what becomes of the file."""

import difflib
import re
from functools import partial

import pytest

from tests.browser.machine import PATIENCE
from tests.browser.shows_on_disk import beside_its_song
from tests.desk_client import eventually, warm_desk

IN_SIGHT = """(line) => {
    const pane = line.closest("pre").getBoundingClientRect(), own = line.getBoundingClientRect();
    return own.top >= pane.top && own.bottom <= pane.bottom;
}"""
WIDE = {"width": 1400, "height": 900}


SHOW = """\
title: Two weaves             # a comment that stays
track: {file: song.wav, corrections: {metre: 4, one: 0:00.5}}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.55}}   # the first
  - {name: Birch, stature: 1.8, prop: {tether: 0.55}}
formations:
  pair: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4]}}}
staging:
  - {formation: pair, from: 1.1}
timeline:
  - {from: 3.1, pattern: two-beat-weave, beats: 16}
"""


@pytest.fixture
def show(tmp_path):
    """A small show of two, in a folder of its own."""
    return beside_its_song(tmp_path, SHOW)


class Planner:
    """A person at the page."""

    def __init__(self, browser, address):
        self.context = browser.new_context(viewport=WIDE)
        self.page = self.context.new_page()
        self.page.set_default_timeout(PATIENCE)
        self.faults = []
        self.page.on("pageerror", lambda error: self.faults.append(str(error)))
        self.page.on("dialog", lambda box: box.accept())
        # The tour, where it comes, moves the sheet down: no place on it is looked at before.
        with self.page.expect_response("**/api/tour"):
            self.page.goto(address)
        self.page.wait_for_selector(".eight")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.context.close()

    def count(self, bar, count):
        """The button of a count of the sheet."""
        return self.page.locator(f".count[aria-label^='Bar {bar}, count {count}, ']")

    def tab(self, name):
        self.page.get_by_role("tab", name=name).click()

    def waits_for(self, words):
        self.page.wait_for_function(
            "words => document.body.innerText.includes(words)", arg=words
        )  # fmt: skip

    def up_to_date(self):
        """Waits until the page shows what was done to the show, which the server may say before."""
        self.looked()
        self.page.locator(".sheet:not(.older)").wait_for()

    def looked(self):
        """Waits until the checks have answered about what the file says now."""
        self.page.wait_for_function(
            "() => !document.querySelector('.verdict').classList.contains('looking')"
        )


def changed_lines(before, after):
    """Lines that went, and lines that came."""
    lines = list(difflib.ndiff(before.splitlines(), after.splitlines()))
    return [line[2:] for line in lines if line[0] == "-"], [
        line[2:] for line in lines if line[0] == "+"
    ]


def test_a_move_is_put_by_mouse_saved_and_taken_back(flat_browser, show):
    before = show.read_bytes()
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.count(1, 5).click()
        planner.page.get_by_role("combobox").fill("wind")
        planner.page.get_by_role("option", name="windmill").first.click()
        planner.page.get_by_role("button", name="Put it here").click()
        planner.page.wait_for_selector(".block.written:has-text('windmill')")
        assert show.read_bytes() == before  # nothing is written before it is saved
        planner.page.get_by_role("button", name="Save").click()
        eventually(lambda: show.read_bytes() != before)
        went, came = changed_lines(before.decode(), show.read_text(encoding="utf-8"))
        assert went == []
        assert len(came) == 1
        assert "windmill" in came[0]
        assert "2.1" in came[0]
        planner.page.get_by_role("button", name="Undo").click()
        planner.page.wait_for_function(
            "() => !document.querySelector('.sheet').innerText.includes('windmill')"
        )
        planner.page.get_by_role("button", name="Save").click()
        eventually(lambda: show.read_bytes() == before)
        assert planner.faults == []


def test_the_whole_of_it_by_keyboard(flat_browser, show):
    """Walk to a count, put a move, stretch it, delete it, take everything back."""
    before = show.read_bytes()
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        keys = planner.page.keyboard
        planner.count(1, 1).focus()
        for key in ("ArrowRight", "ArrowDown", "ArrowUp", "End", "Home", "ArrowRight"):
            keys.press(key)
        planner.page.wait_for_function(
            "() => document.activeElement.getAttribute('aria-label')?.startsWith('Bar 1, count 2,')"
        )
        keys.press("Enter")
        planner.page.wait_for_function(
            "() => document.activeElement.getAttribute('role') === 'combobox'"
        )
        keys.type("static-spin")
        keys.press("Enter")
        planner.page.wait_for_selector(".block.written:has-text('static-spin')")
        planner.page.wait_for_function("() => document.activeElement !== document.body")
        keys.press("Escape")
        planner.page.wait_for_function("() => document.activeElement.classList.contains('count')")
        keys.press("Delete")
        planner.page.wait_for_function(
            "() => ![...document.querySelectorAll('.block.written')].some(each => each.innerText.includes('static-spin'))"
        )
        keys.press("Control+s")
        eventually(lambda: show.read_bytes() == before)
        assert planner.faults == []


def test_never_clear_before_all_is_looked_at(flat_browser, show):
    """While checks are open the verdict says so; what it then says is what the report says."""
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        seen = planner.page.locator(".verdict")
        planner.looked()
        found = served.page.until_checked()
        severities = [each["severity"] for each in found["findings"]]
        said = seen.inner_text()
        assert ("stop" in severities) == ("Do not dance" in said)
        assert ("Clear" in said) == (not {"stop", "warn"} & set(severities))
        assert found["open"] == []


def test_a_spot_is_moved_by_the_arrow_keys(flat_browser, show):
    before = show.read_text(encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Stage")
        spot = planner.page.locator(".plan .body").first
        spot.focus()
        x = float(re.search(r", (-?\d+\.\d+) across", spot.get_attribute("aria-label"))[1])
        for _ in range(3):  # as quick as keys can be
            planner.page.keyboard.press("Shift+ArrowRight")
        eventually(lambda: f"[{x + 1.5:g}, 4]" in served.page.get("show")[1]["text"])
        _, came = changed_lines(before, served.page.get("show")[1]["text"])
        assert len(came) == 1


def test_what_an_editor_changes_is_seen(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        text = show.read_text(encoding="utf-8")
        show.write_text(text.replace("title: Two weaves", "title: Two others"), encoding="utf-8")
        planner.page.wait_for_function(
            "() => document.querySelector('h1').innerText === 'Two others'"
        )
        assert planner.faults == []


def test_a_file_that_cannot_be_read_is_mended_as_text(flat_browser, show):
    good = show.read_text(encoding="utf-8")
    show.write_text(good.replace("cast:", "cast: ["), encoding="utf-8")
    with warm_desk(show) as served:
        context = flat_browser.new_context(viewport=WIDE)
        page = context.new_page()
        page.set_default_timeout(PATIENCE)
        page.goto(served.address)
        page.wait_for_selector(".verdict.stop")
        page.get_by_role("tab", name="Text").click()
        line = int(
            re.search(r"Go to line (\d+)", page.locator(".text .fault").first.inner_text())[1]
        )
        assert abs(line - good.splitlines().index("cast:") - 1) < 15
        page.locator("textarea").fill(good)
        page.get_by_role("button", name="Take this text").click()
        page.wait_for_selector(".eight")
        context.close()


def test_words_of_a_show_stay_words(flat_browser, show):
    """Markup in names and titles is text on the page."""
    text = show.read_text(encoding="utf-8")
    evil = "<img src=x onerror=window.hacked=1><b>Two</b>"
    show.write_text(text.replace("Two weaves", f"'{evil}'"), encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        assert planner.page.locator("h1").inner_text() == evil
        assert planner.page.evaluate("window.hacked") is None


def test_the_song_is_gone_through_before_it_is_played(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.page.locator(".bar", has_text=re.compile("^5$")).click()
        planner.page.wait_for_function(
            "() => document.querySelector('.where').innerText.startsWith('5')"
        )
        assert planner.page.locator(".transport .main").inner_text() == "Play"
        assert (
            planner.page.locator(".time").inner_text().startswith("0:08")
        )  # bar 5 at 120 a minute, from 0.5 s on


def test_what_is_refused_says_why_wherever_it_was_done(flat_browser, show):
    before = show.read_bytes()
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Show")
        planner.page.locator("summary", has_text="Cast").click()
        planner.page.locator("summary", has_text="Ash").click()
        field = planner.page.get_by_label("height", exact=True).first
        field.fill("tall")
        field.press("Tab")
        said = planner.page.locator(".refused")
        said.wait_for()
        assert "stature" in said.inner_text()
        planner.page.wait_for_function(
            "() => document.querySelector('.field input').value !== 'tall'"
        )
        assert served.page.get("show")[1]["saved"]
    assert show.read_bytes() == before


def test_a_performer_is_renamed_everywhere(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Show")
        planner.page.locator("summary", has_text="Cast").click()
        planner.page.locator("summary", has_text="Birch").click()
        planner.page.locator("details[open] .inner[open] input").first.fill("Cedar")
        planner.page.get_by_role("button", name="Rename everywhere").last.click()
        eventually(lambda: "Birch" not in served.page.get("show")[1]["text"])
        assert "Cedar: {at: [3, 4]}" in served.page.get("show")[1]["text"]


def test_text_that_is_being_typed_is_kept_and_a_faulty_one_can_be_taken(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Text")
        typed = show.read_text(encoding="utf-8").replace("two-beat-weave", "no-such-weave")
        planner.page.locator("textarea").fill(typed)
        planner.tab("Findings")
        planner.tab("Text")
        assert planner.page.locator("textarea").input_value() == typed
        planner.page.get_by_role("button", name="Take this text").click()
        refused = planner.page.locator("p.refused").inner_text()
        assert not re.search(r"\[[a-z-]+\]|two\.yaml", refused)
        planner.page.get_by_role("button", name="Do it all the same").click()
        eventually(lambda: served.page.get("show")[1]["text"] == typed)


def test_what_was_refused_is_not_offered_on_a_show_that_was_changed_since(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Text")
        typed = show.read_text(encoding="utf-8").replace("two-beat-weave", "no-such-weave")
        planner.page.locator("textarea").fill(typed)
        planner.page.get_by_role("button", name="Take this text").click()
        again = planner.page.get_by_role("button", name="Do it all the same")
        again.wait_for()
        assert served.page.do(1, do="change-titles", values={"title": "Otherwise"})[0] == 200
        again.wait_for(state="detached")


def test_who_followed_a_move_that_is_deleted_stays_where_they_are(flat_browser, show):
    more = SHOW + "  - {pattern: windmill, beats: 8}\n"
    show.write_text(more, encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.page.locator(".block.written").first.click()
        planner.page.get_by_role("button", name="Delete").click()
        eventually(lambda: "two-beat-weave" not in served.page.get("show")[1]["text"])
        assert "from: 7.1" in served.page.get("show")[1]["text"]


def test_both_texts_are_seen_where_two_changed_one_place(flat_browser, show):
    long = (
        "".join(f"# note {k}\n" for k in range(200)) + SHOW
    )  # the place is far below the first line
    show.write_text(long, encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        served.page.do(1, do="change-titles", values={"title": "Mine"})
        theirs = long.replace("Two weaves", "Theirs").replace("# note 3\n", "# note three\n")
        show.write_text(theirs, encoding="utf-8")
        planner.page.wait_for_selector("dialog.outside")
        row = planner.page.locator("dialog .places tbody tr").inner_text()
        assert all(words in row for words in ("title", "Mine", "Theirs"))
        for pane, words in (("The text here", "title: Mine"), ("The text in the file", "title: Theirs")):  # fmt: skip
            marks = planner.page.get_by_label(pane).locator("mark")
            assert marks.last.inner_text().startswith(words)
            eventually(partial(marks.last.evaluate, IN_SIGHT))  # once it is scrolled there
        planner.page.get_by_role("button", name="Previous difference").click()
        status = planner.page.get_by_role("status").filter(has_text="1 of 2")
        assert "line 4: # note three" in status.inner_text()
        for name in ("Keep this one", "Take this one"):
            box = planner.page.get_by_role("button", name=name).bounding_box()
            assert 0 <= box["x"] <= WIDE["width"] - box["width"]
        assert planner.page.evaluate(
            "document.querySelector('dialog').contains(document.activeElement)"
        )
        planner.page.get_by_role("button", name="Take this one").click()
        eventually(lambda: served.page.get("show")[1]["text"] == theirs)


def test_undo_takes_back_what_the_server_has_not_answered_about_yet(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        held = []
        planner.page.route("**/api/operations", lambda route: held.append(route))  # noqa: PLW0108
        planner.count(1, 5).click()
        planner.page.get_by_role("combobox").fill("wind")
        planner.page.get_by_role("option", name="windmill").first.click()
        with planner.page.expect_request("**/api/operations"):
            planner.page.get_by_role("button", name="Put it here").click()
        planner.page.keyboard.press("Control+z")
        planner.page.keyboard.press("Control+s")
        held.pop().continue_()
        eventually(lambda: served.page.get("show")[1]["redo"])
        assert served.page.get("show")[1]["text"] == SHOW
        planner.page.get_by_role("button", name="Redo").click()
        planner.page.wait_for_selector(".block.written:has-text('windmill')")


def test_an_older_answer_never_replaces_a_newer_one(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.looked()
        held = []

        def late(route):
            if held:
                route.continue_()
            else:
                held.append((route, route.fetch()))

        planner.page.route("**/api/findings", late)
        planner.count(1, 5).click()
        planner.page.get_by_role("combobox").fill("wind")
        planner.page.get_by_role("option", name="windmill").first.click()
        planner.page.get_by_role("button", name="Put it here").click()
        planner.page.wait_for_selector(".block.written:has-text('windmill')")
        planner.looked()
        planner.tab("Findings")
        known = planner.page.locator(".findings")
        planner.page.wait_for_function(
            "() => !document.querySelector('.findings').innerText.includes('Still being looked at')"
        )
        route, answer = held[0]
        route.fulfill(response=answer, json={**answer.json(), "complete": False, "open": ["links"]})
        planner.page.wait_for_timeout(500)
        assert "Still being looked at" not in known.inner_text()
        assert "before the last change" not in known.inner_text()
