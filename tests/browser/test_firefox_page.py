"""The pages in Firefox, where there is one: the same planning by keyboard, the count put right, a phone that watches, the rehearsal page."""

import pytest

from tests.browser.firefox import ENTER, ESCAPE, RIGHT, Firefox, firefox_executable
from tests.browser.test_planning_page import SHOW, show
from tests.desk_client import eventually, warm_desk

__all__ = ["show"]  # the fixture


@pytest.fixture(scope="module")
def firefox(tmp_path_factory):
    if firefox_executable() is None:
        pytest.skip("no Firefox on this machine; apt-get install firefox-esr")
    with Firefox(tmp_path_factory.mktemp("firefox")) as running:
        yield running


def test_a_move_is_put_stretched_and_taken_back_by_keyboard(firefox, show):
    before = show.read_bytes()
    with warm_desk(show) as served:
        firefox.goto(served.address)
        firefox.element(".eight")
        firefox.run("document.querySelector(\".count[aria-label^='Bar 1, count 1, ']\").focus()")
        firefox.type(RIGHT)
        firefox.until("return document.activeElement.getAttribute('aria-label')?.startsWith('Bar 1, count 2,')")  # fmt: skip
        firefox.type(ENTER)
        firefox.until("return document.activeElement.getAttribute('role') === 'combobox'")
        firefox.type("static-spin" + ENTER)
        assert "pattern: static-spin" in eventually(lambda: (now := served.page.get("show")[1]["text"]) != SHOW and now)  # fmt: skip
        put = "return [...document.querySelectorAll('.block.written')].some(each => each.innerText.includes('static-spin'))"
        firefox.until(put)
        firefox.type(ESCAPE)
        firefox.until("return document.activeElement.classList.contains('count')")
        served.page.post("undo")
        firefox.until(put.replace("return ", "return !"))
        served.page.post("save")
        eventually(lambda: show.read_bytes() == before)


def test_the_count_is_put_right_and_heard(firefox, show):
    """Tapped along with the song that plays, or with its clock alone where the machine has no sound card."""
    with warm_desk(show) as served:
        firefox.goto(served.address)
        firefox.click("#tab-count")
        firefox.click("button.tap")  # plays
        firefox.until("return document.querySelector('.transport .main').innerText === 'Stop'")
        firefox.run("document.querySelector('button.tap').focus()")
        for _ in range(9):
            firefox.type("t")
            firefox.run("return new Promise((done) => setTimeout(done, 420))")
        found = firefox.until("return document.querySelector('.found')?.innerText")
        assert "beats a minute" in found
        firefox.click(".counting button[aria-keyshortcuts='1']")
        firefox.until("return document.querySelector('.thought .main')?.disabled === false")
        firefox.click(".thought .main")
        text = eventually(lambda: served.page.get("show")[1]["text"] != SHOW and served.page.get("show")[1]["text"])  # fmt: skip
        assert text.count("\n") == SHOW.count("\n")
        assert "one: 0:" in text


def test_a_phone_watches(firefox, show):
    with warm_desk(show, "--share-address", "127.0.0.2") as served:
        said = eventually(lambda: served.page.get("share")[1])
        firefox.goto(said["address"])
        firefox.click("input[name=code]")
        firefox.type(said["code"].lower() + ENTER)
        firefox.element(".eight")
        assert firefox.run("return document.querySelector('h1').innerText") == "Two weaves"
        assert eventually(lambda: served.page.get("share")[1]["watching"]) == 1


def test_the_rehearsal_page_dances(firefox, quartet):
    firefox.goto(quartet.mute.as_uri())
    firefox.until("return document.documentElement.dataset.ready === 'yes'")
    firefox.type(" ")
    firefox.until("return rehearsal.clock.now() > 0.5")
    firefox.type(" ")
    assert firefox.run("return rehearsal.clock.playing") is False
