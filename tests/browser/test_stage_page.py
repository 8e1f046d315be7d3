"""The stage plan of the planning page: ways, formations, posts; by mouse and by keyboard, and what becomes of the file."""

import pytest

from tests.browser.machine import DRAWN
from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_page import Planner, changed_lines
from tests.desk_client import eventually, warm_desk

SHOW = """\
title: Three spots             # a comment that stays
track: {file: song.wav, corrections: {metre: 4, one: 0:00.5}}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 10 m}
  audience: [{line: [[-8, -4], [8, -4]]}]
  extinguishers:
    - {at: [-6, 8], rating: 21A}
  fuel_station: [6, 9]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.55}}
  - {name: Birch, stature: 1.8, prop: {tether: 0.55}}
formations:
  pair: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4]}}}
  deep: {spots: {Ash: {at: [-3, 7]}, Birch: {at: [3, 4]}}}
staging:
  - {formation: pair, from: 1.1}
  - {formation: deep, from: 5.1, beats: 8}   # upstage
timeline:
  - {from: 3.1, pattern: two-beat-weave, beats: 16}
crew:
  - {name: Ivy, post: [-6, 4]}
"""


@pytest.fixture
def planner(browser, tmp_path):
    path = beside_its_song(tmp_path, SHOW, "three.yaml")
    with warm_desk(path) as served, Planner(browser, served.address) as planner:
        planner.served = served
        yield planner
        assert planner.faults == []


def text(planner):
    return planner.served.page.get("show")[1]["text"]


def became(planner, line, before=SHOW):
    """Waits until one line of the file is another one."""
    eventually(lambda: line in text(planner))
    went, came = changed_lines(before, text(planner))
    assert came == [line]
    assert len(went) <= 1


def on_plan(planner, x, y):
    """Where a place of the stage is on the screen."""
    return planner.page.evaluate(
        """([x, y]) => {
          const svg = document.querySelector('.plan svg'), floor = svg.querySelector('.floor');
          const corners = [...floor.points], m = svg.getScreenCTM();
          const low = Math.min(...corners.map(p => p.x)), high = Math.max(...corners.map(p => p.x));
          const edge = Math.max(...corners.map(p => p.y));
          const p = new DOMPoint((low + high) / 2 + x, edge - y).matrixTransform(m);
          return [p.x, p.y];
        }""",
        [x, y],
    )


def drag(planner, start, end):
    mouse = planner.page.mouse
    mouse.move(*on_plan(planner, *start))
    mouse.down()
    mouse.move(*on_plan(planner, (start[0] + end[0]) / 2, (start[1] + end[1]) / 2))
    mouse.move(*on_plan(planner, *end))


def test_a_way_is_led_through_a_point_by_the_mouse(planner):
    page = planner.page
    page.locator(".walks button", has_text="Ash walks").click()
    page.locator(".way-line").wait_for(state="attached")
    assert (
        page.locator(".way-moment").count() == 7
    )  # of eight beats, the counts between start and end
    drag(planner, (-3, 5.5), (-4.5, 5.5))
    assert page.locator(".way-new").count() == 1
    page.mouse.up()
    line = "  - {formation: deep, from: 5.1, beats: 8, via: {Ash: [[-4.5, 5.5]]}}   # upstage"
    became(planner, line)
    page.locator(".via").wait_for()
    planner.waits_for("through 1 point")

    drag(planner, (-4.5, 5.5), (-4, 6))
    assert page.locator(".close line").count() >= 1  # how far Birch is, while it is dragged
    page.mouse.up()
    became(planner, line.replace("[-4.5, 5.5]", "[-4, 6]"))
    page.get_by_role("button", name="Undo").click()
    became(planner, line)


def test_the_same_by_keyboard(planner):
    page, keys = planner.page, planner.page.keyboard
    planner.tab("Stage")
    page.get_by_label("Look at").select_option("to deep, from 5.1")
    page.get_by_role("button", name="Add a point to Ash’s way").press("Enter")
    eventually(lambda: "via: {Ash: [[" in text(planner))
    page.wait_for_function("() => document.activeElement.classList.contains('via')")
    put = text(planner)
    keys.press("Shift+ArrowLeft")
    eventually(lambda: text(planner) != put)
    assert "via: {Ash: [[-4, 5.5]]}" in text(planner)
    page.wait_for_function("() => document.activeElement.getAttribute('aria-label')?.includes('-4.00 across')")  # fmt: skip
    keys.press("Delete")
    eventually(lambda: text(planner) == SHOW)

    page.get_by_label("in beats").fill("6")
    keys.press("Tab")
    became(planner, "  - {formation: deep, from: 5.1, beats: 6}   # upstage")
    page.get_by_label("From", exact=True).fill("6.1")
    keys.press("Tab")
    became(planner, "  - {formation: deep, from: 6.1, beats: 6}   # upstage")
    page.get_by_role("button", name="Delete this walk").press("Enter")
    eventually(lambda: "formation: deep" not in text(planner))


def test_formations_are_made_renamed_and_given_up(planner):
    page = planner.page
    planner.tab("Stage")
    page.get_by_label("Its name").first.fill("gate")
    page.get_by_label("They walk for").fill("4")
    page.locator(".transport input[type=range]").first.fill("12")  # seconds
    planner.page.get_by_role("button", name="Take it from 6.4").wait_for()
    page.locator(".transport input[type=range]").first.fill("16.5")
    page.get_by_role("button", name="Take it from 9.1").click()
    eventually(lambda: "gate:" in text(planner))
    went, came = changed_lines(SHOW, text(planner))
    assert went == []
    assert [each.strip() for each in came] == [
        "gate: {spots: {Ash: {at: [-3, 7]}, Birch: {at: [3, 4]}}}", "- {formation: gate, from: 9.1, beats: 4}"
    ]  # fmt: skip
    own = page.get_by_role("group", name="The formation gate")
    own.get_by_label("Its name").fill("door")
    page.keyboard.press("Enter")
    eventually(lambda: "- {formation: door, from: 9.1, beats: 4}" in text(planner))
    page.get_by_role("button", name="Delete this walk").click()
    page.get_by_role("button", name="Delete the formation door").click()
    eventually(lambda: text(planner) == SHOW)


@pytest.mark.parametrize(
    ("name", "key", "line"),
    [
        ("Ivy, spotter", "Shift+ArrowUp", "  - {name: Ivy, post: [-6, 4.5]}"),
        ("Extinguisher 1", "ArrowRight", "    - {at: [-5.95, 8], rating: 21A}"),
        ("Fuel", "Shift+ArrowLeft", "  fuel_station: [5.5, 9]"),
    ],
)
def test_posts_extinguishers_and_fuel_are_moved_by_keyboard(planner, name, key, line):
    planner.tab("Stage")
    planner.page.get_by_role("button", name=f"{name}, ").focus()
    planner.page.keyboard.press(key)
    became(planner, line)
    assert text(planner).count(line) == 1


def test_a_post_is_dragged_and_told_how_near_it_is(planner):
    planner.tab("Stage")
    planner.page.locator(".plan").wait_for()
    drag(planner, (-6, 4), (-6, 6))
    assert planner.page.locator(".mark .close line").count() == 2
    planner.page.mouse.up()
    became(planner, "  - {name: Ivy, post: [-6, 6]}")


def test_what_is_added_is_asked_for_first(planner):
    """Nothing is put into the file that nobody said."""
    page = planner.page
    planner.tab("Show")
    page.get_by_text("Place", exact=True).click()
    page.get_by_role("button", name="Add an exit").click()
    own = page.get_by_role("group", name="A new exit")
    add = own.get_by_role("button", name="Add the exit")
    own.get_by_label("name").fill("east")
    own.get_by_label("metres across").fill("7")
    page.keyboard.press("Tab")
    assert add.is_disabled()
    planner.waits_for("Still needed: at, width.")
    own.get_by_label("metres upstage").fill("2.5")
    own.get_by_label("width").fill("1.8 m")
    page.keyboard.press("Tab")
    assert text(planner) == SHOW
    add.click()
    eventually(lambda: "exits:" in text(planner))
    went, came = changed_lines(SHOW, text(planner))
    assert went == []
    assert (
        " ".join(each.strip() for each in came)
        == "exits: - {name: east, at: [7, 2.5], width: 1.8 m}"
    )


def test_lists_places_and_people_have_fields_of_their_own(planner):
    page = planner.page
    planner.tab("Show")
    page.get_by_text("Crew", exact=True).click()
    page.get_by_text("Ivy", exact=True).click()
    crew = page.locator(".forms details.inner", has_text="Ivy")
    crew.get_by_label("metres upstage").fill("5")
    page.keyboard.press("Tab")
    became(planner, "  - {name: Ivy, post: [-6, 5]}")
    crew.get_by_label("Say more").select_option("equipment")
    crew.get_by_label("equipment").fill("damp towel\nfire blanket, folded")
    page.keyboard.press("Tab")
    became(
        planner, '  - {name: Ivy, post: [-6, 5], equipment: [damp towel, "fire blanket, folded"]}'
    )
    crew.get_by_label("Say more").select_option("watches")
    crew.get_by_label("Birch").check()
    eventually(lambda: "watches: Birch}" in text(planner))
    for field in page.locator(".forms input[type=text]").all():
        assert not field.input_value().startswith(("[", "{"))


AT_ONCE = """async () => {
  const crew = [...document.querySelectorAll('.forms details.inner')].find((each) => each.querySelector('summary').textContent === 'Ivy');
  const more = [...crew.querySelectorAll('.more select')].find((each) => [...each.options].some((option) => option.value === 'equipment'));
  more.value = 'equipment';
  more.dispatchEvent(new Event('change', {bubbles: true}));
  while (!crew.querySelector('textarea')) await Promise.resolve();
  const field = crew.querySelector('textarea');
  field.focus();
  field.value = 'damp towel';
  field.dispatchEvent(new Event('input', {bubbles: true}));
  await new Promise((done) => setTimeout(done, 400));
  return field.value;
}"""


def test_what_is_typed_as_soon_as_a_field_is_there_stays(planner):
    planner.tab("Show")
    planner.page.get_by_text("Crew", exact=True).click()
    planner.page.get_by_text("Ivy", exact=True).click()
    assert planner.page.evaluate(AT_ONCE) == "damp towel"


def test_a_newer_file_takes_the_place_of_words_but_not_of_those_being_typed(planner):
    page = planner.page
    planner.tab("Show")
    title, version = (
        page.get_by_label("title", exact=True),
        page.get_by_role("textbox", name="version"),
    )
    page.get_by_label("Say more").first.select_option("version")
    version.fill("half a wo")
    for values in ({"version": "2"}, {"title": "Anew"}):
        revision = planner.served.page.get("show")[1]["revision"]
        assert planner.served.page.do(revision, do="change-titles", values=values)[0] == 200
    page.wait_for_function("() => document.querySelector('#show-title').value === 'Anew'")
    page.evaluate(DRAWN)
    assert (title.input_value(), version.input_value()) == ("Anew", "half a wo")
    version.fill("")
    version.press("x")  # and away again: as it was when it was begun, and not what the file says
    version.press("Backspace")
    page.keyboard.press("Tab")
    page.wait_for_function("() => document.querySelector('#show-version').value === '2'")
    version.fill("three")
    page.keyboard.press("Tab")
    eventually(lambda: "version: three" in text(planner))
