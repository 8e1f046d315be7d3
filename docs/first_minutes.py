"""Makes docs/pictures/first-minutes.png: a first visit of the planning page, as a strip of pictures with the time of each.

    python docs/first_minutes.py

A show is begun in an empty folder with one of the sample songs, a routine is drafted, looked at, changed, and its sheets are
printed; nothing is written by hand. It needs the development extra and Debian's chromium. The times are those of the
machine it runs on: they say what a person waits for there.
"""

import io
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from PIL import Image, ImageDraw, ImageFont
from playwright.sync_api import Page, sync_playwright

from sequencer.files import write_bytes

ROOT = Path(__file__).parents[1]
SONG = ROOT / "audio_samples" / "cinder_ferry.ogg"
MADE = Path(__file__).parent / "pictures" / "first-minutes.png"
SIZE = (1280, 800)  # [pixels] of the page
WIDE = 560  # [pixels] of one picture
ACROSS = 3
HEAD = 30  # [pixels] of the words above one
COLOURS = 96
FLAGS = [
    "--no-sandbox",
    "--use-gl=angle",
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
]  # 3-D drawn in software


_SHORT = """folder => {
    const all = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (all.nextNode()) all.currentNode.data = all.currentNode.data.replaceAll(folder, "…/shows");
}"""


class Strip:
    """Pictures of a page in their order, each with the time since it was opened; the folder is called something short."""

    def __init__(self, page: Page, folder: str) -> None:
        self.page, self.folder, self.began = page, folder, time.monotonic()
        self.taken: list[tuple[str, Image.Image]] = []

    def take(self, words: str) -> None:
        """A picture of the page as it is now."""
        since = int(time.monotonic() - self.began)
        self.page.evaluate(_SHORT, self.folder)
        picture = Image.open(io.BytesIO(self.page.screenshot())).convert("RGB")
        self.taken.append((f"{since // 60}:{since % 60:02d}  {words}", picture))

    def whole(self) -> Image.Image:
        """All of them, in rows."""
        tall = WIDE * SIZE[1] // SIZE[0]
        rows = -(-len(self.taken) // ACROSS)
        strip = Image.new("RGB", (ACROSS * (WIDE + 16), rows * (tall + HEAD + 16)), "white")
        draw = ImageDraw.Draw(strip)
        font = ImageFont.load_default(17)
        for k, (words, picture) in enumerate(self.taken):
            x, y = 8 + (k % ACROSS) * (WIDE + 16), 8 + (k // ACROSS) * (tall + HEAD + 16)
            draw.text((x, y + 4), words, fill="black", font=font)
            strip.paste(picture.resize((WIDE, tall), Image.Resampling.LANCZOS), (x, y + HEAD))
            draw.rectangle((x, y + HEAD, x + WIDE - 1, y + HEAD + tall - 1), outline="#888888")
        return strip.quantize(COLOURS, method=Image.Quantize.FASTOCTREE)


def visit(strip: Strip) -> None:
    """From an empty folder to printed sheets."""
    page = strip.page
    page.wait_for_selector(".beginning form")
    page.get_by_label("Or bring one from elsewhere").set_input_files(SONG)
    page.get_by_text("lies beside the show now").wait_for()
    page.get_by_label("Name", exact=True).fill("Wren")
    page.get_by_label("Level").select_option("2")
    strip.take("a song, who dances, how much they can")
    page.get_by_role("button", name="Make the show").click()
    page.wait_for_selector(".eight")
    strip.take("the song is heard; the tour says what is where")
    page.get_by_role("button", name="No tour").click()
    page.get_by_role("button", name="Draft a first routine").click()
    page.wait_for_selector(".drafting .progressing")
    page.wait_for_timeout(4000)
    strip.take("a routine is drafted")
    page.wait_for_selector(".offered")
    strip.take("it is shown before it is put in")
    page.get_by_role("button", name="Put it into the show").click()
    page.wait_for_selector(".block.written")
    page.get_by_role("tab", name="Findings").click()
    _looked(page)
    strip.take("put in, and looked at as it can be flown")
    page.locator(".block.written.pattern.begins").nth(1).click()
    page.wait_for_selector(".place .steps")
    strip.take("a move, to be changed")
    page.get_by_role("button", name="Close (Escape)").or_(
        page.get_by_title("Close (Escape)")
    ).first.click()
    page.get_by_role("tab", name="Dance").click()
    page.wait_for_function(
        "() => !document.querySelector('.dance').innerText.includes('being drawn')"
    )
    page.get_by_role("slider", name="Where the song is").fill("48")
    page.wait_for_timeout(1500)
    strip.take("the dance")
    page.get_by_role("button", name="Save").click()
    page.get_by_role("tab", name="Print").click()
    page.get_by_role("button", name="Make the sheets").click()
    page.wait_for_selector(".made")
    strip.take("its sheets, made")


def _looked(page: Page) -> None:
    page.wait_for_function(
        "() => !document.querySelector('.verdict').classList.contains('looking')"
    )


def main(visiting: Callable[[Strip], None] = visit) -> None:
    """Make the strip."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as play:
        command = [
            sys.executable,
            "-m",
            "sequencer",
            "open",
            str(Path(folder) / "first.yaml"),
            "--no-browser",
        ]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as server:  # noqa: S603 (our own command)
            if server.stdout is None:
                raise SystemExit("the server says nothing")
            address = next(
                word for line in server.stdout for word in line.split() if "http" in word
            )
            browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=FLAGS)
            page = browser.new_page(viewport={"width": SIZE[0], "height": SIZE[1]})
            page.set_default_timeout(600_000)
            page.goto(address)
            strip = Strip(page, folder)
            visiting(strip)
            browser.close()
            server.terminate()
    held = io.BytesIO()
    strip.whole().save(held, "PNG", optimize=True)
    write_bytes(MADE, held.getvalue())
    print(f"{MADE}: {len(held.getvalue()) // 1000} kB, {len(strip.taken)} pictures")


if __name__ == "__main__":
    main()
