"""Forms of the planning page: patterns of one's own, what is refused told at its field, quick changes of one record."""

import pytest

from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_work import SHOW, SLOWLY, visitor
from tests.desk_client import eventually, warm_desk

OWN = "patterns:\n  # mine\n  petals: {law: orbit, set: {ratio: -3}}   # four\ntimeline:\n"


TEXT = SHOW.replace("timeline:\n", OWN).replace("pattern: two-beat-weave", "pattern: petals")


@pytest.fixture
def show(tmp_path):
    """A show that dances a pattern of its own."""
    return beside_its_song(tmp_path, TEXT, "small.yaml")


def text_of(served):
    return served.page.get("show")[1]["text"]


def test_a_pattern_of_ones_own_is_changed_added_and_not_deleted_while_danced(browser, show):
    with warm_desk(show) as served, visitor(browser, served.address) as page:
        page.get_by_role("tab", name="Show").click()
        forms = page.locator(".forms")
        forms.locator("summary", has_text="Patterns of your own").click()
        forms.locator("summary", has_text="petals").click()
        petals = forms.locator("details.inner", has_text="Delete petals")
        # What no such move takes is told at its field, in the words of the commands, and set back.
        ratio = petals.get_by_role("textbox", name="ratio")
        ratio.fill("99")
        ratio.press("Enter")
        petals.locator(".why-not", has_text="ratio must be -24 … 24, got 99").wait_for()
        assert ratio.input_value() == "-3"
        ratio.fill("-2")
        ratio.press("Enter")
        changed = TEXT.replace("ratio: -3", "ratio: -2")
        eventually(lambda: text_of(served) == changed)
        petals.locator(".why-not").wait_for(state="detached")
        # Two changes of one record, each before the answer to the one before.
        page.evaluate(SLOWLY)
        more = petals.get_by_role("group", name="fixed").locator(".more select")
        more.select_option("hand_radius")
        more.select_option("plane")
        petals.get_by_role("textbox", name="hand radius").fill("25 cm")
        page.keyboard.press("Tab")
        petals.get_by_role("combobox", name="plane").select_option("wheel")
        changed = changed.replace("ratio: -2", "ratio: -2, hand_radius: 25 cm, plane: wheel")
        eventually(lambda: text_of(served) == changed)
        # It is danced: it says where, and stays.
        petals.get_by_role("button", name="Delete petals").click()
        petals.locator(".why-not", has_text="still named in entry 1 of the timeline").wait_for()
        petals.get_by_role("button", name="3.1").click()
        page.get_by_role("heading", name="petals").wait_for()
        # The form about it is seen from its top, however far down the forms were looked at.
        page.wait_for_function(
            "() => document.querySelector('.place').getBoundingClientRect().top >= document.querySelector('.side').getBoundingClientRect().top"
        )
        # Another one, a motion for each hand: no word of the page is one of programs.
        assert "law" not in forms.inner_text()
        forms.get_by_role("button", name="Add a pattern").click()
        new = forms.get_by_role("group", name="A new pattern")
        new.get_by_label("a motion for each hand").check()
        new.get_by_label("name *").fill("two ways")
        for side in ("left hand", "right hand"):
            hand = new.get_by_role("group", name=side)
            hand.get_by_label("motion *").select_option("orbit")
        new.get_by_label("name *").press("Tab")
        new.get_by_role("button", name="Add the pattern").click()
        forms.locator("summary", has_text="two ways").wait_for()
        assert "  two ways: {left: {law: orbit}, right: {law: orbit}}\n" in text_of(served)
