"""A real browser for the rehearsal page: Debian's chromium, driven by Playwright, with the network off.

Without chromium (apt-get install chromium-headless-shell, or chromium) or Playwright's Python package these tests
are skipped. SEQUENCER_BROWSER names another executable.
"""

import os
import shutil
from types import MappingProxyType, SimpleNamespace

import numpy as np
import pytest

FLAGS = (
    "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--autoplay-policy=no-user-gesture-required",
)  # fmt: skip
# WebGL is drawn in software, and only that: pages drawn by way of it too would take twice the processor time.
SOFTWARE = (
    "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
    "--disable-gpu-rasterization", "--disable-gpu-compositing",
)  # fmt: skip
RATE = 44_100
PATIENCE = 180_000  # [ms] for a machine that has much else to do; nothing is concluded from it
DRAWN = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"


def executable():
    """Path of a chromium on this machine, or None.

    The one without windows first: it draws the same pages at half the processor time, since it has no tabs, tool bars and
    services to make for each page.
    """
    names = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "chrome")
    return os.environ.get("SEQUENCER_BROWSER") or next(filter(None, map(shutil.which, names)), None)


@pytest.fixture(scope="session")
def playwright_driver():
    sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    if executable() is None:
        pytest.skip("no chromium on this machine; apt-get install chromium-headless-shell")
    with sync_api.sync_playwright() as driver:
        yield driver


@pytest.fixture(scope="session")
def browser(playwright_driver):
    """Chromium that draws WebGL in software."""
    running = playwright_driver.chromium.launch(
        executable_path=executable(), headless=True, args=[*FLAGS, *SOFTWARE]
    )
    yield running
    running.close()


@pytest.fixture(scope="session")
def flat_browser(playwright_driver):
    """Chromium without WebGL: for tests that look at no picture too, since a page without it costs half."""
    running = playwright_driver.chromium.launch(
        executable_path=executable(), headless=True,
        args=[*FLAGS, "--disable-gpu", "--disable-3d-apis", "--disable-software-rasterizer"],
    )  # fmt: skip
    yield running
    running.close()


def ticking(staged):
    """A song that is silent but for a short tick on every beat."""
    samples = np.zeros(int(staged.song.duration * RATE) + 1)
    k = np.arange(1200)
    tick = 0.8 * np.cos(2 * np.pi * 880 * k / RATE) * np.exp(-k / 250)
    for beat in staged.song.beats:
        at = round(beat * RATE)
        part = tick[: len(samples) - at]
        samples[at : at + len(part)] += part
    return samples[:, None]


@pytest.fixture(scope="session")
def quartet(rounds, tmp_path_factory):
    """A show of four on a song of 330 s, its page without the song, and where it lies."""
    from sequencer.outputs.rehearsal.page_data import show_document
    from sequencer.outputs.rehearsal.page_file import page_from_document
    from sequencer.outputs.rehearsal.song_audio import silent

    folder = tmp_path_factory.mktemp("rehearsal")
    staged = rounds.show(folder, heard=rounds.song(duration=330.0))
    report = rounds.report()
    document = show_document(staged, report)
    mute = folder / "mute.html"
    mute.write_text(
        page_from_document(document, silent("The song was not there.")), encoding="utf-8"
    )
    return SimpleNamespace(
        staged=staged, report=report, document=document, mute=mute, folder=folder
    )


@pytest.fixture(scope="session")
def ticking_page(quartet):
    """Its page with the song, of which every beat ticks."""
    from sequencer.outputs.rehearsal.page_file import page_from_document
    from sequencer.outputs.rehearsal.song_audio import embedded

    path = quartet.folder / "loud.html"
    sound = embedded(ticking(quartet.staged), RATE)
    path.write_text(page_from_document(quartet.document, sound), encoding="utf-8")
    return path


class Opened:
    """A page, and what it did that it must not do."""

    # For tests that look at no picture: each frame is drawn in software, pixel by pixel.
    SMALL = MappingProxyType({"width": 320, "height": 240})

    def __init__(self, browser, path, **options):
        options.setdefault("viewport", {"width": 800, "height": 480})
        options["viewport"] = dict(options["viewport"])
        self.context = browser.new_context(offline=True, **options)
        self.page = self.context.new_page()
        self.page.set_default_timeout(PATIENCE)
        self.said, self.asked, self.boxes = [], [], []
        self.page.on("console", lambda message: self.said.append(f"{message.type}: {message.text}"))
        self.page.on("pageerror", lambda error: self.said.append(f"error: {error}"))
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.on("dialog", lambda box: (self.boxes.append(box.message), box.dismiss()))
        self.page.goto(path.as_uri())
        self.page.wait_for_function("() => document.documentElement.dataset.ready === 'yes'")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.context.close()

    def drawn(self):
        """Waits until what was set is on the screen: two frames, however long they take."""
        self.page.evaluate(DRAWN)

    def plays_past(self, second):
        """Waits until the page's clock has gone past a moment of the song."""
        self.page.wait_for_function("second => rehearsal.clock.now() > second", arg=second)

    @property
    def complaints(self):
        """Console lines that speak of a fault of the page; the driver's own advice is left out."""
        return [
            line
            for line in self.said
            if "GPU stall" not in line and "swiftshader" not in line.lower()
        ]


@pytest.fixture(scope="session")
def opened():
    """Opens a page in a browser."""
    return Opened
