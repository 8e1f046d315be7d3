"""The rehearsal page opens at the loop that its address asks for, as a practice plan links to it."""

import pytest


@pytest.fixture
def asking(flat_browser, quartet, opened):
    """Opens the page of a show of four with something behind its address; the show's beats are half a second apart."""

    class Address:
        def __init__(self, asked):
            self.asked = asked

        def as_uri(self):
            return f"{quartet.mute.as_uri()}#{self.asked}"

    return lambda asked: opened(flat_browser, Address(asked), viewport=opened.SMALL)


def test_the_loop_is_there_slowed_and_repeated(asking, quartet):
    tempo, who = quartet.staged.tempo, quartet.staged.dancers[1].name
    with asking(f"from=5.1&until=7.3&speed=60&for={who}") as there:
        page = there.page
        state = page.evaluate(
            "[rehearsal.player.a, rehearsal.player.b, rehearsal.player.repeat, rehearsal.clock.speed, rehearsal.followed()]"
        )
        now = page.evaluate("rehearsal.clock.now()")
        assert page.locator("#repeat").get_attribute("aria-pressed") == "true"
        assert page.locator("#speed-text").inner_text() == "60 %"
        assert page.locator("#span").is_visible()
        assert page.locator("#notices").inner_text().count("asked for") == 0
        assert there.complaints == []
    bars = [tempo.second_of(beat) for beat in (16.0, 26.0)]  # bars of four from beat 0: 5.1 and 7.3
    assert state[:2] == pytest.approx(bars, abs=1e-6)
    assert state[2:] == [True, 0.6, who]
    assert now == pytest.approx(bars[0], abs=1e-6)


LOST = "The loop that was asked for is not in this song"


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("from=900.1&until=901.1&speed=10", (LOST, "“speed=10”: the song can be played at 40 to")),
        ("from=5.1&until=5.1&for=", (LOST, "does not say for whom")),
        ("from=5.6&until=9.1&for=Nobody%20%3Cb%3E", (LOST, "There is no Nobody <b> in this show.")),
        (
            "from=1:99.0&until=soon&speed=abc&a=b",
            (
                "“from=1:99.0”: write a bar and beat, as in from=24.1",
                "“until=soon”: write a bar and beat",
                "“speed=abc”: the song can be played at 40 to 110 %.",
                "“a=b”, which means nothing here",
            ),
        ),
    ],
)
def test_what_is_not_there_is_told_and_the_page_works(asking, asked, says):
    with asking(asked) as there:
        told = there.page.locator("#notices").inner_text()
        assert [each for each in says if each not in told] == []
        assert there.page.evaluate("rehearsal.player.repeat") is False
        assert there.complaints == []


def test_a_link_within_the_page_leaves_it_as_it_is(asking):
    with asking("") as there:
        page = there.page
        page.evaluate("() => { window.here = true; rehearsal.seek(42); }")
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        page.wait_for_function("location.hash === '#transport'")
        there.drawn()
        there.drawn()
        assert page.evaluate("[window.here, rehearsal.clock.now()]") == [True, 42]
        page.keyboard.press("Tab")
        assert page.evaluate("document.activeElement.closest('footer') !== null")
        page.evaluate("() => { location.hash = 'speed=60'; }")
        page.wait_for_function("() => !window.here && window.rehearsal?.clock.speed === 0.6")
