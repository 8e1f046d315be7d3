"""The planning page, wide and on a phone, of a show whose words are longer than any line; read from the boxes on the page.

Source: WCAG 2.2, criteria 1.4.10 (nothing is cut on a narrow page) and 2.5.5 (targets of 44 pixels).
"""

import pytest
import soundfile as sf

from tests.browser.machine import DRAWN, PATIENCE
from tests.cli.conftest import RATE, click_track
from tests.desk_client import eventually, warm_desk

LONG = "https://example.org/" + "x" * 160
WEAVE, WHEEL, PAIR, BIRCH = ("weave" * 30, "wheel" * 30, "pair" * 30, "Birch" * 30)
SHOW = f"""\
title: {LONG}
track: {{file: song.wav, corrections: {{metre: 4, one: 0:00.5}}}}
venue:
  stage: {{shape: rectangle, width: 14 m, depth: 10 m}}
  audience: [{{line: [[-12, -9], [12, -9]]}}]
cast:
  - {{name: Ash, stature: 1.7, prop: {{tether: 0.55}}}}
  - {{name: {BIRCH}, stature: 1.8, prop: {{tether: 0.55}}}}
patterns:
  {WEAVE}: {{law: orbit, set: {{ratio: -3}}, summary: "{LONG}"}}
phrases:
  {WHEEL}: [{{pattern: extension, beats: 8, note: "{LONG}"}}]
formations:
  {PAIR}: {{spots: {{Ash: {{at: [-0.3, 4]}}, {BIRCH}: {{at: [0.3, 4]}}}}}}
staging:
  - {{formation: {PAIR}, from: 1.1}}
timeline:
  - {{from: 3.1, pattern: two-beat-weave, beats: 8, note: "{LONG}", cue: {"c" * 60}}}
  - {{from: 5.1, phrase: {WHEEL}}}
  - {{from: 13.1, pattern: {WEAVE}, beats: 8, note: "{LONG}"}}
"""
# What reaches beyond what holds it, or the screen; a bar of the sheet ends its own words, and the stage plan is a drawing.
CUT = """() => [...document.querySelectorAll('body *')].filter((each) => {
  const own = each.getBoundingClientRect();
  if (!own.width || !own.height || each.closest('.unseen, svg, .skip, .block, .walks button')) return false;
  let right = innerWidth;
  for (let at = each.parentElement; at; at = at.parentElement)
    if (getComputedStyle(at).overflowX !== 'visible') right = Math.min(right, at.getBoundingClientRect().right);
  return own.right > right + 1;
}).map((each) => `${each.tagName}.${each.className}: ${(each.innerText ?? '').slice(0, 30)}`)"""
SMALL = """() => [...document.querySelectorAll('#side :is(button, summary, select, textarea, input, label:has(> input))')].filter((each) => {
  const own = each.getBoundingClientRect(), ticked = each.matches('[type=checkbox], [type=radio]') && each.closest('label');
  return own.height && own.height < 43.5 && !ticked && !(each.matches('label') && each.querySelector('input').getBoundingClientRect().height >= 43.5);
}).map((each) => `${each.tagName} ${each.id} ${each.innerText.slice(0, 30)}`)"""
OPEN = """() => { for (let k = 0; k < 3; k++) for (const each of document.querySelectorAll('#side details')) each.open = true; }"""
SEEN = """(which) => {
  const own = document.querySelector(which).getBoundingClientRect();
  return own.top >= 0 && own.left >= 0 && own.right <= innerWidth && own.bottom <= innerHeight;
}"""
WIDE, PHONE = {"width": 1280, "height": 800}, {"width": 390, "height": 844}


@pytest.fixture(scope="module")
def page(flat_browser, tmp_path_factory):
    """The page on a screen that is touched; a test says how large it is."""
    folder = tmp_path_factory.mktemp("long")
    sf.write(folder / "song.wav", click_track(), RATE)
    path = folder / "long.yaml"
    path.write_text(SHOW, encoding="utf-8")
    with warm_desk(path) as served:
        context = flat_browser.new_context(viewport=WIDE, has_touch=True, is_mobile=True)
        own = context.new_page()
        own.set_default_timeout(PATIENCE)
        own.goto(served.address)
        own.wait_for_selector(".eight")
        eventually(lambda: served.page.get("findings")[1]["complete"])
        yield own
        context.close()


def tapped(page, bar, count):
    """A count of the sheet chosen, without the scrolling that a driver would do; and all that its form holds opened."""
    page.locator(f".count[aria-label^='Bar {bar}, count {count}, ']").first.dispatch_event("click")
    page.wait_for_selector(".place form")
    page.evaluate(OPEN)
    page.evaluate(DRAWN)


def close(page):
    page.locator(".place header button").dispatch_event("click")


@pytest.mark.parametrize("size", [WIDE, PHONE], ids=["wide", "phone"])
def test_nothing_is_cut_and_all_that_is_touched_is_large_enough(page, size):
    page.set_viewport_size(size)
    for bar, count in ((3, 1), (5, 1), (7, 5)):  # a move, a phrase, and nothing yet
        tapped(page, bar, count)
        assert page.evaluate(CUT) == [], (bar, count)
        assert page.evaluate(SMALL) == [], (bar, count)
        assert page.evaluate(SEEN, ".place header button")
    puts = page.locator(".place button", has_text="here").all_inner_texts()
    assert len(set(puts)) == len(puts) >= 2
    close(page)
    for name in ("Findings", "Stage", "Count", "Who", "Show", "Print", "Versions"):
        page.get_by_role("tab", name=name).first.dispatch_event("click")
        page.wait_for_selector("#panel > *")
        page.evaluate(OPEN)
        page.evaluate(DRAWN)
        page.evaluate(OPEN)  # what was made meanwhile
        page.evaluate(DRAWN)
        assert page.evaluate(CUT) == [], name
        if name in ("Findings", "Show"):
            assert page.evaluate(SMALL) == [], name


@pytest.mark.parametrize("size", [WIDE, PHONE], ids=["wide", "phone"])
def test_what_is_chosen_far_down_the_forms_is_seen_with_its_count(page, size):
    page.set_viewport_size(size)
    page.get_by_role("tab", name="Show").dispatch_event("click")
    page.wait_for_selector(".forms")
    page.evaluate(OPEN)
    for _ in range(2):  # the second time it is chosen already
        page.evaluate("() => { document.querySelector('.left').scrollTop = 0; }")
        use = page.locator(".uses button", has_text="13.1")
        use.evaluate("(each) => each.scrollIntoView({ block: 'center' })")
        page.evaluate(DRAWN)
        use.dispatch_event("click")
        page.wait_for_selector(".place .steps")
        page.evaluate(DRAWN)
        page.evaluate(DRAWN)
        assert page.evaluate(SEEN, ".place header button")
        assert page.evaluate(SEEN, ".place h3")
        assert page.evaluate(SEEN, ".count.on")
    close(page)
