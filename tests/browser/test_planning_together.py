"""The planning page: what follows moves along with a change, and who is there tonight."""

import pytest

from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_page import SHOW, Planner, changed_lines
from tests.desk_client import eventually, warm_desk

# Ash: 3–7, a gap of a beat, 7.2–9, then nothing until 13. Birch with Ash at 7.2, and alone at 9.3.
FULL = SHOW.replace(
    "  - {from: 3.1, pattern: two-beat-weave, beats: 16}\n",
    """\
  - {who: Ash, from: 3.1, pattern: two-beat-weave, beats: 16}
  - {who: [Ash, Birch], from: 7.2, pattern: two-beat-weave, beats: 7}
  - {who: Birch, from: 9.3, pattern: two-beat-weave, until: 11.3}
  - {who: all, from: 14.1, pattern: two-beat-weave, beats: 8, canon: 2}
crew:
  - {name: Ivy, post: [-8, 6], duty: spotter}
""",
)


@pytest.fixture
def show(tmp_path):
    """A small show of two, in a folder of its own."""
    return beside_its_song(tmp_path, FULL)


def saved(planner, show, before):
    planner.page.get_by_role("button", name="Save").click()
    eventually(lambda: show.read_bytes() != before)
    return changed_lines(before.decode(), show.read_text(encoding="utf-8"))


def opened(planner, bar, count):
    planner.count(bar, count).first.click(force=True)  # on the bar that lies over it
    planner.page.wait_for_selector(".place .steps")


def test_what_follows_moves_along_up_to_the_next_gap(flat_browser, show):
    before = show.read_bytes()
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        opened(planner, 5, 1)
        box = planner.page.get_by_label("What follows moves along")
        assert "moves along: 2 moves, up to 11.3" in planner.page.locator(".along").inner_text()
        box.check()
        planner.page.get_by_role("button", name="1 beat longer").click()
        planner.waits_for("Lasts 17 beats")
        said = planner.page.locator(
            ".notices p"
        )  # for everybody to see, not for screen readers alone
        said.wait_for()
        assert said.inner_text() == "two-beat-weave: 17 beats, and 2 that follow, up to 11.3."
        went, came = saved(planner, show, before)
        assert [line.split("#")[0].strip() for line in came] == [
            "- {who: Ash, from: 3.1, pattern: two-beat-weave, beats: 17}",
            "- {who: [Ash, Birch], from: 7.3, pattern: two-beat-weave, beats: 7}",
            "- {who: Birch, from: 9.4, pattern: two-beat-weave, until: 11.4}",
        ]  # the canon stands behind a gap that takes it up
        assert len(went) == 3
        planner.page.get_by_role("button", name="Undo").click()
        planner.waits_for("Lasts 16 beats")
        planner.page.get_by_role("button", name="Save").click()
        eventually(lambda: show.read_bytes() == before)
        planner.page.get_by_role("button", name="1 beat shorter").click()
        planner.waits_for("Lasts 15 beats")
        _, came = saved(planner, show, before)
        assert [line.strip() for line in came][1:] == [
            "- {who: [Ash, Birch], from: 7.1, pattern: two-beat-weave, beats: 7}",
            "- {who: Birch, from: 9.2, pattern: two-beat-weave, until: 11.2}",
        ]
        assert planner.faults == []


def test_what_begins_with_a_section_keeps_its_count_and_the_box_is_empty_at_another_place(
    flat_browser, show
):
    rows = "[{from: 1.1, name: first}, {from: 9.3, name: second}, {from: 14.1, name: third}]"
    show.write_text(
        FULL.replace("one: 0:00.5}", f"one: 0:00.5, sections: {rows}}}"), encoding="utf-8"
    )
    before = show.read_bytes()
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        opened(planner, 5, 1)
        box = planner.page.get_by_label("What follows moves along")
        assert "1 move, up to 9.1" in planner.page.locator(".along").inner_text()
        box.check()
        planner.page.get_by_role("button", name="1 beat longer").click()
        planner.waits_for("Lasts 17 beats")
        _, came = saved(planner, show, before)
        assert [line.split("#")[0].strip() for line in came] == [
            "- {who: Ash, from: 3.1, pattern: two-beat-weave, beats: 17}",
            "- {who: [Ash, Birch], from: 7.3, pattern: two-beat-weave, beats: 7}",
        ]  # Birch's move at 9.3 begins the second section
        assert box.is_checked()
        opened(planner, 7, 5)
        assert not box.is_checked()
        opened(planner, 5, 1)
        assert not box.is_checked()
        assert planner.faults == []


def test_without_it_an_overlap_is_refused_in_a_sentence(flat_browser, show):
    before = show.read_bytes()
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        opened(planner, 5, 1)
        for beats in (17, 18):
            planner.page.get_by_role("button", name="1 beat longer").click()
            if beats == 17:
                planner.waits_for("Lasts 17 beats")
        planner.page.wait_for_selector(".refused:has-text('of the file) runs to')")
        assert show.read_bytes() == before
        assert planner.faults == []


def test_somebody_is_away_tonight_and_somebody_stands_in(flat_browser, show):
    before = show.read_bytes()
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Who")
        birch = planner.page.get_by_role("region", name="Birch")
        assert "comes in at 7.2" in birch.inner_text()
        ash = planner.page.get_by_role("region", name="Ash")
        assert "begins a canon: two-beat-weave" in ash.inner_text()
        birch.get_by_label("is away").check()
        planner.waits_for("falls out: 3 moves, from 7.2")
        # who is there keeps every count; who is away has no line
        assert planner.page.locator(".line .who", has_text="Birch").count() == 0
        _, came = saved(planner, show, before)
        assert [line for line in came if line.strip()] == ["tonight:", "  away: [Birch]"]
        birch.get_by_label("has a stand-in").check()
        birch.get_by_label("Who takes the part").fill("Fern")
        birch.get_by_label("Height").fill("1.62 m")
        birch.get_by_role("button", name="Takes it tonight").click()
        planner.waits_for("Birch tonight Fern")
        away = show.read_bytes()
        _, came = saved(planner, show, away)
        assert "".join(came).replace(" ", "") in {
            "stand_ins:[{for:Birch,name:Fern,stature:1.62m}]",
            "stand_ins:-{for:Birch,name:Fern,stature:1.62m}",
        }
        ivy = planner.page.get_by_role("region", name="Ivy")
        ivy.get_by_label("has a stand-in").check()
        ivy.get_by_label("Who takes the post").fill("Ash")
        ivy.get_by_role("button", name="Takes it tonight").click()
        planner.page.wait_for_selector(".refused:has-text('Ash has a part of their own tonight')")
        planner.page.get_by_role("button", name="Everybody is there").click()
        birch.get_by_label("is here").wait_for()
        planner.page.wait_for_function(
            "() => !document.querySelector('.who').innerText.includes('Fern')"
        )
        assert planner.faults == []
