"""A video of one's own on the rehearsal page: lined up with the song by its sound, in step with it, and never sent anywhere."""

import numpy as np
import pytest

from tests.browser.test_phone_page import BOXES, SCREENS, STATES
from tests.browser.test_planning_axe import axe, found

__all__ = ["axe"]  # the fixture

RATE = 44_100
# A film is recorded in the browser itself, of a part of the song: a canvas, and the sound that a telephone would hear.
RECORDED = """async ([from, seconds]) => {
  const { mono, rate } = await rehearsal.clock.samples();
  const context = new AudioContext(), sound = context.createBuffer(1, Math.round(seconds * rate), rate);
  sound.copyToChannel(mono.slice(Math.round(from * rate), Math.round((from + seconds) * rate)), 0);
  const node = context.createBufferSource(), out = context.createMediaStreamDestination();
  node.buffer = sound;
  node.connect(out);
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = 32;
  const paper = canvas.getContext("2d"), painted = setInterval(() => paper.fillRect(Math.random() * 32, 0, 4, 32), 40);
  const stream = new MediaStream([...canvas.captureStream(25).getTracks(), ...out.stream.getTracks()]);
  const recorder = new MediaRecorder(stream, { mimeType: "video/webm" }), parts = [];
  recorder.ondataavailable = (event) => parts.push(event.data);
  await context.resume();
  const done = new Promise((told) => (recorder.onstop = told));
  recorder.start();
  node.start();
  await new Promise((ended) => (node.onended = ended));
  recorder.stop();
  await done;
  clearInterval(painted);
  await rehearsal.film.show(new File(parts, "me.webm", { type: "video/webm" }));
  return document.querySelector("#film-words").textContent;
}"""


@pytest.fixture(scope="module")
def loud(quartet):
    """The page of the show of four, with a song whose strokes come at no regular times."""
    from sequencer.outputs.rehearsal.page_file import page_from_document
    from sequencer.outputs.rehearsal.song_audio import embedded

    draw = np.random.default_rng(5)
    samples = 1e-4 * draw.normal(size=int(quartet.staged.song.duration * RATE) + 1)
    k = np.arange(4000)
    for at in np.cumsum(draw.uniform(0.15, 0.6, 500)):
        stroke = 0.5 * draw.normal(size=len(k)) * np.exp(-k / 700)
        begin = int(at * RATE)
        part = stroke[: max(0, len(samples) - begin)]
        samples[begin : begin + len(part)] += part
    path = quartet.folder / "irregular.html"
    sound = embedded(samples[:, None], RATE)
    path.write_text(page_from_document(quartet.document, sound), encoding="utf-8")
    return path


def test_a_film_is_lined_up_by_its_sound_and_keeps_step(browser, loud, opened):
    with opened(browser, loud, viewport=opened.SMALL) as there:
        page = there.page
        said = page.evaluate(RECORDED, [40.0, 9.0])
        assert said == "Lined up by its sound."
        # The film begins 40 s into the song; what the recorder needs to start is in it.
        assert page.evaluate("rehearsal.film.start") == pytest.approx(-40.0, abs=0.3)
        page.evaluate(
            "() => { rehearsal.seek(42); rehearsal.player.pace(60); return rehearsal.player.toggle(); }"
        )
        there.plays_past(43.0)
        off = page.evaluate(
            "() => document.querySelector('#film video').currentTime - rehearsal.film.placeOf(rehearsal.clock.now())"
        )
        assert abs(off) < 0.25
        assert page.evaluate("document.querySelector('#film video').playbackRate") == pytest.approx(
            0.6, abs=0.1
        )
        page.evaluate("rehearsal.player.stop()")
        page.evaluate("rehearsal.seek(45)")
        page.wait_for_function(
            "() => Math.abs(document.querySelector('#film video').currentTime - rehearsal.film.placeOf(45)) < 0.05"
        )
        page.locator("#film-tools").get_by_role("button", name="The video a second later").click()
        assert page.evaluate("rehearsal.film.start") == pytest.approx(-41.0, abs=0.3)
        page.locator("#film-tools").get_by_role("button", name="Put the video away").click()
        assert not page.locator("#film").is_visible()
        assert [url for url in there.asked if not url.startswith(("file:", "blob:"))] == []
        assert there.complaints == []


LINED = """([from, speed, noise, seed]) => {
  let state = seed;
  const draw = () => ((state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32);
  const song = Float32Array.from({ length: 6000 }, () => (draw() < 0.04 ? 1 : 0) - 0.04);
  const film = Float32Array.from({ length: 2000 }, (_, i) => {
    const at = from * 100 + i * speed, k = Math.floor(at), share = at - k;
    return (1 - share) * (song[k] ?? 0) + share * (song[k + 1] ?? 0) + noise * (draw() - 0.5);
  });
  return rehearsal.film.lining.linedUp(song, film);
}"""


@pytest.mark.parametrize(
    ("start", "speed"), [(20.0, 1.0), (12.34, 0.6), (30.0, 0.7), (-5.0, 1.0), (50.0, 1.0)]
)
def test_a_lag_and_a_speed_are_found(lining, start, speed):
    """Strokes at random times; the film begins some seconds into the song, which is played slower there."""
    found = lining.evaluate(LINED, [start, speed, 0.3, 7])
    assert found["sure"]
    assert found["speed"] == speed
    assert found["start"] == pytest.approx(-start / speed, abs=0.01)


def test_noise_is_no_song(lining):
    """A film from beyond the song holds nothing of it."""
    assert not lining.evaluate(LINED, [90.0, 1.0, 1.0, 7])["sure"]


@pytest.fixture(scope="module")
def lining(browser, quartet, opened):
    with opened(browser, quartet.mute, viewport=opened.SMALL) as there:
        yield there.page


def test_what_is_no_video_is_told_and_the_page_goes_on(browser, quartet, opened, tmp_path):
    path = tmp_path / "me.mp4"
    path.write_bytes(b"no video at all")
    with opened(browser, quartet.mute, viewport=opened.SMALL) as there:
        there.page.set_input_files("#film input", path)
        there.page.get_by_text("This browser cannot play that video").first.wait_for()
        assert not there.page.locator("#film").is_visible()
        there.page.evaluate("rehearsal.player.toggle()")
        there.plays_past(0.2)


# A second of moving colours without sound, shown as somebody's film.
PAINTED = """async () => {
  const canvas = document.createElement("canvas"), paper = canvas.getContext("2d");
  [canvas.width, canvas.height] = [36, 64];
  const painted = setInterval(() => paper.fillRect(Math.random() * 36, 0, 4, 64), 40);
  const recorder = new MediaRecorder(canvas.captureStream(25), { mimeType: "video/webm" }), parts = [];
  recorder.ondataavailable = (event) => parts.push(event.data);
  const done = new Promise((told) => (recorder.onstop = told));
  recorder.start();
  await new Promise((over) => setTimeout(over, 500));
  recorder.stop();
  await done;
  clearInterval(painted);
  document.getElementById("more").click();
  await rehearsal.film.show(new File(parts, "me.webm", { type: "video/webm" }));
}"""
SIZES = """() => Object.fromEntries(["#film video", "#stage", "#words", "#film-tools"].map((each) => {
  const box = document.querySelector(each).getBoundingClientRect();
  return [each, [box.width, box.height]]; }))"""


@pytest.fixture(scope="module")
def filmed(browser, quartet, opened):
    """A page on a phone with a video beside the dancers."""
    with opened(
        browser, quartet.mute, viewport=size("phone"), is_mobile=True, has_touch=True, bypass_csp=True,
    ) as there:  # fmt: skip
        there.page.evaluate(PAINTED)
        there.page.evaluate("rehearsal.seek(60)")
        yield there
        assert there.complaints == []


def size(screen):
    return dict(zip(("width", "height"), SCREENS[screen], strict=True))


@pytest.mark.parametrize("screen", ["phone", "phone lying", "tablet", "small phone"])
def test_a_video_has_room_on_every_screen(filmed, screen):
    page = filmed.page
    page.set_viewport_size(size(screen))
    for pressed in STATES:
        for each in pressed:
            page.evaluate("id => document.getElementById(id).click()", each)
        filmed.drawn()
        boxes = page.evaluate(SIZES)
        assert page.evaluate(BOXES, SCREENS[screen]) == [], (screen, pressed)
        assert boxes["#film video"][0] >= 130
        assert boxes["#film video"][1] >= (140 if screen == "small phone" else 190)
        assert boxes["#stage"][0] >= boxes["#film video"][0]
        assert boxes["#words"][1] / SCREENS[screen][1] > (0.05 if "more" in pressed else 0.1)
        # One row of buttons, which a small screen gives up while More is open.
        gone = "more" in pressed and screen != "tablet"
        assert boxes["#film-tools"][1] == 0 if gone else 44 <= boxes["#film-tools"][1] < 60
        for each in pressed:
            page.evaluate("id => document.getElementById(id).click()", each)


def test_a_video_closes_more_and_axe_finds_nothing_beside_it(filmed, axe):
    page = filmed.page
    page.set_viewport_size(size("phone"))
    assert page.get_attribute("#more", "aria-expanded") == "false"
    assert page.text_content("#film-words").endswith("line it up with the buttons.")
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        filmed.drawn()
        assert found(page, axe) == []
