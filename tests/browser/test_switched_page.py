"""The planning page: what a switch of who is there changed is listed, by mouse and by keyboard, until all is looked at anew."""

import pytest

from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_axe import axe, found, page_of
from tests.browser.test_planning_page import SHOW, Planner
from tests.desk_client import eventually, warm_desk

__all__ = ["axe"]  # the fixture
FULL = SHOW.replace(
    "  - {from: 3.1, pattern: two-beat-weave, beats: 16}\n",
    """\
  - {who: Ash, from: 3.1, pattern: two-beat-weave, beats: 16}
  - {who: all, from: 9.1, pattern: two-beat-weave, beats: 8, canon: 2, mirror: [Birch]}
crew:
  - {name: Ivy, post: [-8, 6], duty: spotter, watches: [Ash]}
stop_call: {callers: [Ash]}
""",
)
ALL = "() => /All of it: .* how the props really fly/.test(document.querySelector('.switched').innerText)"
DONE = "() => /Findings: .* as before/.test(document.querySelector('.switched').innerText)"


@pytest.fixture
def show(tmp_path):
    """A small show of two with a canon, in a folder of its own."""
    return beside_its_song(tmp_path, FULL)


def listed(page):
    """What the switch changed, line by line, as it is seen."""
    return page.evaluate(
        """() => [...document.querySelectorAll('.switched :is(p, li, summary, h4)')].map((each) => {
            const seen = each.cloneNode(true);
            for (const unseen of seen.querySelectorAll('.unseen')) unseen.remove();
            return seen.textContent.replaceAll(/\\s+/g, ' ').trim();
        })"""
    )


def test_what_falls_out_who_leads_which_jobs_are_open_and_what_the_checks_say(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        planner.looked()
        planner.tab("Who")
        assert page.locator(".switched").count() == 0  # nothing has been switched
        ash, ivy = (page.get_by_role("region", name=name, exact=True) for name in ("Ash", "Ivy"))
        # By keyboard: the arrows go from one choice to the next, and only Space switches.
        ash.get_by_label("is here").focus()
        page.keyboard.press("ArrowRight")
        page.keyboard.press("ArrowRight")
        page.keyboard.press("ArrowLeft")
        assert ash.get_by_label("is here").is_checked()
        page.keyboard.press("Space")
        planner.waits_for("Ash is away. 2 moves fall out")
        page.wait_for_function(
            "() => document.querySelector('.top [role=status]').innerText.startsWith('Ash is away. 2 moves fall out, 2 canons or mirrors have another lead or side')"
        )
        page.locator(".came li").first.wait_for()
        lines = listed(page)
        for line in (
            "Ash’s part: 2 moves fall out",
            "bar 3 3.1 two-beat-weave",
            "bar 9 9.1 two-beat-weave",
            "9.1 the canon of two-beat-weave: Birch dances it alone, 2 counts after its first count: no canon is left",
            "9.1 the mirror of two-beat-weave: Birch dances the mirror image of nobody: Ash is away",
            "Ash, calls the stop: nobody has it now",
        ):
            assert line in lines
        (told,) = (each for each in lines if each.startswith("All of it: how the moves join"))
        assert told.endswith("Findings: 3 new, 0 as before.")
        assert (
            "New, warn, 9.1: the canon at 9.1 begins with Ash, who is away: Birch comes in 2 beats later and has nobody to follow"
            in lines
        )
        page.get_by_text("Who stands where now").click()
        assert "Ash’s spot stays empty: 3.0 m to stage right, 4.0 m upstage" in listed(page)
        assert "Birch: 3.0 m to stage left, 4.0 m upstage" in listed(page)

        # A moment leads there in the sheet, by keyboard.
        page.locator(".switched li", has_text="the canon of").get_by_role("button").focus()
        page.keyboard.press("Enter")
        page.wait_for_selector(".count.on[aria-label^='Bar 9, count 1, ']")

        # Crew, by mouse; the checks had time, so this switch is told by itself.
        ivy.get_by_label("is away").check()
        planner.waits_for("Ivy is away. 3 jobs are open")
        assert "Ivy, spotter at the post: nobody has it now" in listed(page)
        assert "Ash, calls the stop: nobody has it, as before" in listed(page)

        # Somebody takes Ash's part, then Ash is there again.
        page.wait_for_function(DONE)
        ash.get_by_label("has a stand-in").check()
        ash.get_by_label("Who takes the part").fill("Fern")
        ash.get_by_label("Height").fill("1.62 m")
        page.keyboard.press("Enter")
        planner.waits_for("Fern dances the part of Ash. 2 moves come back")
        page.wait_for_function(DONE)  # else the two switches are told as one
        page.get_by_role("button", name="Everybody is there").click()
        planner.waits_for("Ash is there again, instead of Fern")
        assert "Ivy, spotter at the post: filled again" in listed(page)
        page.locator(".came .gone").first.wait_for()
        planner.page.get_by_role("button", name="Undo").click()
        planner.waits_for("Fern dances the part of Ash")  # a step back is a switch too
        assert planner.faults == []


def test_the_list_is_there_again_when_the_show_is_next_opened(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.looked()
        planner.tab("Who")
        for name in ("Ivy", "Ash"):
            planner.page.get_by_role("region", name=name, exact=True).get_by_label(
                "is away"
            ).check()
            planner.waits_for(f"{name} is away. ")
            planner.page.wait_for_function(DONE)  # else the two switches are told as one
        planner.page.wait_for_function(ALL)
        lines = listed(planner.page)
        planner.page.get_by_role("button", name="Save").click()
        eventually(lambda: "away: [Ivy, Ash]" in show.read_text(encoding="utf-8"))
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Who")
        planner.waits_for("Ash is away. 2 moves fall out")
        planner.page.wait_for_function(DONE)
        planner.page.wait_for_function(
            ALL
        )  # the checks are done anew; what they found is known before
        assert listed(planner.page) == lines
        planner.page.get_by_role("button", name="Everybody is there").click()
        planner.waits_for("Ash is there again")
        planner.page.get_by_role("button", name="Save").click()
        eventually(lambda: show.read_text(encoding="utf-8") == FULL)
        assert not show.with_name(f".{show.name}.switch").exists()


@pytest.mark.parametrize("scheme", ["light"])
def test_axe_finds_nothing_in_the_list_of_a_switch(flat_browser, show, axe, scheme):
    show.write_text(FULL + "tonight: {away: [Birch]}\n", encoding="utf-8")
    with warm_desk(show) as served, page_of(flat_browser, served.address, scheme) as page:
        page.get_by_role("tab", name="Who").click()
        page.get_by_role("region", name="Birch", exact=True).get_by_label("is here").check()
        page.locator(".switched").wait_for()
        page.get_by_text("Who stands where now").click()
        assert found(page, axe) == []
