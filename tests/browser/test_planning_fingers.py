"""A tablet: what fingers do on the sheet; and the end of a move of a phrase, which is danced elsewhere too."""

import pytest

from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_first_visit import FULL, counts_on, text_of, written
from tests.browser.test_planning_page import SHOW, Planner
from tests.desk_client import eventually, warm_desk

TABLET = {"width": 1024, "height": 700}
PHRASED = SHOW[: SHOW.index("timeline:")] + (
    "phrases:\n"
    "  wheel:\n"
    "    - {pattern: two-beat-weave, beats: 4}\n"
    "timeline:\n"
    "  - {from: 3.1, phrase: wheel}\n"
    "  - {from: 7.1, phrase: wheel}\n"
)
SCROLLED = "() => document.querySelector('.left').scrollTop + document.scrollingElement.scrollTop"


@pytest.fixture
def show(tmp_path):
    """A small show of two, in a folder of its own."""
    return beside_its_song(tmp_path, FULL)


class Fingers(Planner):
    """A person at the page with one finger."""

    def __init__(self, browser, address, viewport=TABLET):
        super().__init__(browser, address)
        self.context.close()
        self.context = browser.new_context(viewport=dict(viewport), has_touch=True, is_mobile=True)
        self.page = self.context.new_page()
        self.page.on("pageerror", lambda error: self.faults.append(str(error)))
        self.page.goto(address)
        self.page.wait_for_selector(".eight")
        self.looked()  # remarks beside the rows move them
        self.screen = self.context.new_cdp_session(self.page)

    def touch(self, kind, *at):
        points = [{"x": at[0], "y": at[1]}] if at else []
        self.screen.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    def goes(self, here, there, *, rest=0, steps=6):
        """A finger comes down, rests so many milliseconds, and goes somewhere; it stays down."""
        self.touch("touchStart", *here)
        self.page.wait_for_timeout(rest)
        for k in range(1, steps + 1):
            part = k / steps
            self.touch("touchMove", *(a + part * (b - a) for a, b in zip(here, there, strict=True)))
            self.page.wait_for_timeout(20)

    def lifts(self):
        self.touch("touchEnd")


def middle(box):
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def test_a_finger_scrolls_the_sheet_from_a_move(flat_browser, show):
    with warm_desk(show) as served, Fingers(flat_browser, served.address) as person:
        x, y = middle(written(person, 9))
        before = person.page.evaluate(SCROLLED)
        person.goes((x, y), (x, y - 200))
        person.lifts()
        person.page.wait_for_function(f"at => ({SCROLLED})() > at + 60", arg=before)
        assert person.page.locator(".outline").count() == 0
        assert text_of(served) == FULL
        assert person.faults == []


def test_a_finger_that_rests_on_a_move_takes_it_along_and_nothing_scrolls(flat_browser, show):
    with warm_desk(show) as served, Fingers(flat_browser, served.address) as person:
        box = written(person, 3)
        wide = box["width"] / 8
        here = box["x"] + 0.5 * wide, box["y"] + box["height"] / 2
        before = person.page.evaluate(SCROLLED)
        person.touch("touchStart", *here)
        outline = person.page.locator(".outline b").first
        outline.wait_for()  # it says that it is held, before it goes anywhere
        assert outline.inner_text() == "to 3.1"
        for k in range(1, 7):
            person.touch("touchMove", here[0] + 0.5 * k * wide, here[1] - 2 * k)
            person.page.wait_for_timeout(20)
        assert outline.inner_text() == "to 3.4"
        person.lifts()
        eventually(lambda: "{from: 3.4, pattern: two-beat-weave, beats: 8}" in text_of(served))
        assert person.page.evaluate(SCROLLED) == before
        assert person.page.locator(".place").count() == 0  # it is no tap
        assert person.faults == []


@pytest.mark.parametrize(
    ("bar", "end", "counts", "line"),
    [
        (3, False, 2, "{from: 3.3, pattern: two-beat-weave, beats: 8}"),
        (9, True, -1, "{from: 9.1, pattern: extension, beats: 3}"),
    ],
    ids=["whole", "its end"],
)
def test_a_chosen_move_has_grips_that_a_finger_drags_at_once(
    flat_browser, show, bar, end, counts, line
):
    with warm_desk(show) as served, Fingers(flat_browser, served.address) as person:
        assert person.page.locator(".grip").count() == 0
        person.page.touchscreen.tap(*middle(written(person, bar)))
        grip = person.page.locator(".grip.end" if end else ".grip:not(.end)").first
        grip.wait_for()
        person.page.wait_for_timeout(300)  # the chosen count has come into sight
        box = written(person, bar)
        x, y = middle(grip.bounding_box())
        assert grip.bounding_box()["width"] >= 43  # wide enough for a finger
        person.goes((x, y), (x + counts * box["width"] / (4 if end else 8), y))
        person.lifts()
        eventually(lambda: line in text_of(served))
        assert person.faults == []


# --- a move of a phrase ---


@pytest.mark.parametrize("answer", ["Here only", "Everywhere", "Leave it as it was"])
def test_the_end_of_a_move_of_a_phrase_is_dragged_here_or_everywhere(
    flat_browser, tmp_path, answer
):
    show = beside_its_song(tmp_path, PHRASED)
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        counts_on(planner, written(planner, 3), 2, of=4, end=True)
        assert planner.page.locator(".outline b").first.inner_text() == "6 beats"
        planner.page.mouse.up()
        question = planner.page.get_by_role("alertdialog")
        question.wait_for()
        assert "6 beats instead of 4 beats: the phrase is danced 2 times" in question.inner_text()
        assert text_of(served) == PHRASED  # nothing is done before somebody says where
        question.get_by_role("button", name=answer).click()
        question.wait_for(state="detached")
        if answer == "Leave it as it was":
            planner.tab("Show")  # what is done next is done after all that was sent before
            planner.page.get_by_label("title", exact=True).fill("Left as it was")
            planner.page.keyboard.press("Tab")
            eventually(lambda: "Left as it was" in text_of(served))
            lines = text_of(served).splitlines()[1:]
            assert lines == PHRASED.splitlines()[1:]
            assert planner.faults == []
            return
        eventually(lambda: "beats: 6}" in text_of(served))
        now = text_of(served)
        if answer == "Everywhere":
            assert now == PHRASED.replace("beats: 4}", "beats: 6}")
        else:
            assert "  wheel:\n    - {pattern: two-beat-weave, beats: 4}\n" in now
            assert "  - {from: 7.1, phrase: wheel}\n" in now
            assert "  - {from: 3.1, phrase: wheel}\n" not in now
        assert planner.faults == []


def test_a_phrase_that_is_danced_once_needs_no_question(flat_browser, tmp_path):
    once = PHRASED.replace("  - {from: 7.1, phrase: wheel}\n", "")
    show = beside_its_song(tmp_path, once)
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        counts_on(planner, written(planner, 3), -1, of=4, end=True)
        planner.page.mouse.up()
        eventually(lambda: text_of(served) == once.replace("beats: 4}", "beats: 3}"))
        assert planner.page.get_by_role("alertdialog").count() == 0
