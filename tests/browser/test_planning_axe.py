"""What axe-core finds against the pages, in every state that they have: nothing.

axe-core comes with the page's own tools (`npm ci` in web/); without it these tests are skipped.
Source: WCAG 2.2, as far as axe-core looks at it; what it cannot see is in docs/planning.md's promise and tested beside.
"""

from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.browser.machine import PATIENCE
from tests.browser.test_planning_page import SHOW, show
from tests.desk_client import eventually, warm_desk

__all__ = ["show"]  # the fixture
AXE = Path(__file__).parents[2] / "web" / "node_modules" / "axe-core" / "axe.min.js"
SCHEMES = ("light", "dark")
MORE = "  - {who: Ash, from: 9.1, pattern: windmill, beats: 8}\n  - {who: Birch, from: 9.1, pattern: no-wrap, beats: 8}\n"

# The count that was pressed is not under what opens.
ABOVE_FORM = """() => document.querySelector('.count.on').getBoundingClientRect().bottom
    <= document.querySelector('.place').getBoundingClientRect().top"""
# What is pressed of a move, where that is less than 44 pixels high.
SMALL_TARGETS = """() => [...document.querySelectorAll('.place :is(button, summary, select, input[type=text], label:has(> input))')]
    .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 43.9)
    .map((each) => `${each.outerHTML.slice(0, 90)} is ${each.getBoundingClientRect().height}`)"""


@pytest.fixture(scope="module")
def axe():
    if not AXE.is_file():
        pytest.skip("axe-core is not installed; npm ci in web/")
    return AXE.read_text(encoding="utf-8")


@contextmanager
def page_of(browser, address, scheme, **options):
    options.setdefault("viewport", {"width": 1400, "height": 900})
    context = browser.new_context(
        color_scheme=scheme, bypass_csp=True, reduced_motion="reduce", **options
    )
    page = context.new_page()
    page.set_default_timeout(PATIENCE)
    page.goto(address)
    yield page
    context.close()


def found(page, axe):
    """Violations, in words."""
    page.evaluate(axe)
    result = page.evaluate("() => axe.run(document, {resultTypes: ['violations']})")
    assert len(result["passes"]) > 10, "it has looked"
    return [
        f"{one['id']}: {one['help']}: {node['html'][:160]}"
        for one in result["violations"]
        for node in one["nodes"]
    ]


@pytest.mark.parametrize("scheme", SCHEMES)
def test_the_planning_page(browser, show, axe, scheme):
    entrances = "entrances:\n  - {who: Birch, comes_on: 5.1, beats: 4, side: stage left}\n"
    show.write_text(SHOW + MORE.replace("no-wrap", "extension") + entrances, encoding="utf-8")
    with (
        warm_desk(show, "--share-address", "127.0.0.2") as served,
        page_of(browser, served.address, scheme) as page,
    ):
        page.wait_for_selector(".eight")
        page.wait_for_selector(".shared")
        served.page.until_checked()
        assert found(page, axe) == []
        page.locator(".shared summary").click()
        page.locator(".block.written").first.click()
        page.wait_for_selector(".place form")
        assert found(page, axe) == []
        # As after a change, until the show is staged and looked at anew: too short a time to be met by chance.
        page.evaluate(
            "() => document.querySelectorAll('.sheet, .findings, .margin').forEach((each) => each.classList.add('older'))"
        )
        assert found(page, axe) == [], "what is being looked at again"
        page.evaluate(
            "() => document.querySelectorAll('.older').forEach((each) => each.classList.remove('older'))"
        )
        page.keyboard.press("Escape")
        for name in ("Stage", "Dance", "Who", "Show", "Text", "Count"):
            page.get_by_role("tab", name=name).click()
            page.wait_for_selector(
                f"#panel[aria-labelledby='tab-{'forms' if name == 'Show' else name.lower()}']"
            )
            if name == "Who":
                page.wait_for_selector(".cues")
            if name == "Show":
                page.wait_for_selector(".forms summary")
                page.evaluate(
                    "() => document.querySelectorAll('.forms details').forEach((each) => (each.open = true))"
                )
            assert found(page, axe) == [], name
        page.get_by_role("button", name="Half as fast").click()
        page.wait_for_selector(".thought .main:not(:disabled)")
        page.locator(".how summary").click()
        assert found(page, axe) == []


@pytest.mark.parametrize("scheme", SCHEMES)
def test_at_a_phone_s_width(browser, show, axe, scheme):
    """Also: nothing is wider than the screen."""
    phone = {"viewport": {"width": 390, "height": 844}, "has_touch": True}
    with warm_desk(show) as served, page_of(browser, served.address, scheme, **phone) as page:
        page.wait_for_selector(".eight")
        for name in ("Findings", "Stage", "Count", "Show", "Text"):
            page.get_by_role("tab", name=name).click()
            assert found(page, axe) == [], name
            assert page.evaluate("() => document.documentElement.scrollWidth <= innerWidth"), name
        page.locator(".block.pattern.written").last.click()
        page.wait_for_selector(".place .steps")
        page.wait_for_function(ABOVE_FORM)
        page.locator(".place summary", has_text="Cue word").click()
        page.wait_for_selector(".place .fields input")
        assert page.evaluate(SMALL_TARGETS) == []
        assert found(page, axe) == []


@pytest.mark.parametrize("scheme", SCHEMES)
def test_the_page_that_watches(browser, show, axe, scheme):
    show.write_text(SHOW + MORE.replace("no-wrap", "extension"), encoding="utf-8")
    phone = {"viewport": {"width": 390, "height": 844}, "has_touch": True}
    with warm_desk(show, "--share-address", "127.0.0.2") as served:
        said = eventually(lambda: served.page.get("share")[1])
        with page_of(browser, said["address"], scheme, **phone) as page:
            page.wait_for_selector(".door")
            assert found(page, axe) == []
            page.get_by_label("Code").fill("wrong")
            page.keyboard.press("Enter")
            page.wait_for_selector(".door .fault")
            assert found(page, axe) == []
            page.get_by_label("Code").fill(said["code"])
            page.keyboard.press("Enter")
            page.wait_for_selector(".eight")
            page.get_by_label("For").select_option("Ash")
            for name in ("Sheet", "Stage", "Dance", "Findings"):
                page.get_by_role("tab", name=name).click()
                assert found(page, axe) == [], name
                assert page.evaluate("() => document.documentElement.scrollWidth <= innerWidth"), (
                    name
                )
