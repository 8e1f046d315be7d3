"""The planning page: a phrase named, danced again, renamed and written out; a move cut in two, parted and answered."""

import pytest

from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_page import SHOW, Planner
from tests.browser.test_planning_together import opened
from tests.desk_client import eventually, warm_desk

MOVE = "  - {from: 3.1, pattern: two-beat-weave, beats: 16}\n"
TWO = MOVE + "  - {pattern: extension, until: 9.1}   # and out\n"


@pytest.fixture
def show(tmp_path):
    """A small show of two, in a folder of its own."""
    return beside_its_song(tmp_path, SHOW.replace(MOVE, TWO))


def timeline_of(served):
    """What the file says from its phrases on."""
    text = served.page.get("show")[1]["text"]
    return text[min(text.find(each) % len(text) for each in ("phrases:", "timeline:")) :]


def test_a_phrase_is_named_danced_again_renamed_and_written_out(browser, show):
    with warm_desk(show) as served, Planner(browser, served.address) as planner:
        page = planner.page
        opened(planner, 3, 1)
        page.locator("summary", has_text="Make a phrase of it").click()
        page.get_by_label("Its name").fill("wheel")
        page.get_by_role("combobox", name="Up to").select_option(label="extension, until 9.1")
        page.get_by_role("button", name="Name it").click()
        planner.waits_for("The phrase wheel is danced once")
        named = (
            "phrases:\n  wheel:\n    - {pattern: two-beat-weave, beats: 16}\n"
            "    - {pattern: extension, beats: 8}   # and out\n"
        )
        assert timeline_of(served).startswith(named)
        assert "  - {from: 3.1, phrase: wheel}\n" in timeline_of(served)
        # Danced once more, where nothing is danced yet.
        page.get_by_role("button", name="Close").click()
        planner.count(9, 5).first.click()
        page.get_by_label("A phrase").select_option("wheel")
        page.get_by_role("button", name="Put the phrase here").click()
        planner.waits_for("The phrase wheel is danced 2 times")
        assert "  - {who: all, from: 10.1, phrase: wheel}\n" in timeline_of(served)
        page.get_by_label("Its name").fill("round")
        page.get_by_role("button", name="Rename everywhere").click()
        planner.waits_for("The phrase round is danced 2 times")
        assert timeline_of(served).count("round") == 3
        page.get_by_role("button", name="Write round out here").click()
        eventually(lambda: "{who: all, from: 10.1, pattern: two-beat-weave, beats: 16}" in timeline_of(served))  # fmt: skip
        assert planner.faults == []


def test_a_move_is_cut_where_a_count_is_chosen_and_parted_and_answered(browser, show):
    with warm_desk(show) as served, Planner(browser, served.address) as planner:
        page = planner.page
        opened(planner, 3, 6)
        page.get_by_role("button", name="Cut in two at 4.2").click()
        eventually(lambda: "  - {from: 3.1, pattern: two-beat-weave, beats: 5}\n  - {pattern: two-beat-weave, beats: 11, shift: 1}\n" in timeline_of(served))  # fmt: skip
        planner.waits_for("Lasts 11 beats")
        page.get_by_role("button", name="Part Birch from the others").click()
        eventually(lambda: "  - {who: Ash, from: 4.2, pattern: two-beat-weave, beats: 11, shift: 1}\n  - {who: Birch, from: 4.2, pattern: two-beat-weave, beats: 11, shift: 1}\n" in timeline_of(served))  # fmt: skip
        page.locator("summary", has_text="Call and answer").click()
        page.get_by_role("button", name="Birch answers at 7.1").click()
        page.wait_for_selector(".refused")  # Birch dances something else then
        before = timeline_of(served)
        opened(planner, 7, 1)
        page.get_by_role("button", name="Delete", exact=True).click()
        eventually(lambda: timeline_of(served) != before)
        opened(planner, 5, 1)
        page.locator("summary", has_text="Call and answer").click()
        page.get_by_role("button", name="Birch answers at 7.1").click()
        planner.waits_for("Birch answers.")
        eventually(lambda: "  - {who: Birch, from: 7.1, pattern: two-beat-weave, beats: 11, shift: 1}\n" in timeline_of(served))  # fmt: skip
        assert planner.faults == []
