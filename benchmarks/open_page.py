"""How the planning page feels: first paint, tasks that hold it up, and frames while a spot is dragged and the song plays.

    python benchmarks/open_page.py --json [SHOW]
    python benchmarks/open_page.py --json --hostile

A real server and a chromium without a window, which draws by the processor alone: frames are those of a machine without a graphics
card. Milliseconds; a long task is one of 50 ms or more, as the browser tells them (W3C Long Tasks).
"""

import argparse
import json
import statistics
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT))

from tests.browser.machine import FLAGS, SOFTWARE, executable  # noqa: E402
from tests.desk_client import desk, eventually  # noqa: E402
from tests.hostile_show import hostile_show  # noqa: E402

SHOW = ROOT / "shows" / "lantern_round.yaml"
WIDE = {"width": 1400, "height": 900}
LONGEST = 600.0  # [s] that is waited for the first view
WATCH = """() => { window.tasks = []; window.gaps = [];
  new PerformanceObserver((list) => list.getEntries().forEach((each) => window.tasks.push(each.duration)))
    .observe({ type: "longtask", buffered: true });
  let last = null;
  const frame = (now) => { if (last !== null) window.gaps.push(now - last); last = now; requestAnimationFrame(frame); };
  requestAnimationFrame(frame); }"""
TWO_FRAMES = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"


def taken(page: Page) -> dict[str, float]:
    """Long tasks and frames since the last time."""
    tasks, gaps = page.evaluate("() => [window.tasks.splice(0), window.gaps.splice(0)]")
    return {
        "longest_task": round(max(tasks, default=0.0)), "long_tasks": len(tasks),
        "frame_median": round(statistics.median(gaps), 1) if gaps else 0.0,
        "frame_longest": round(max(gaps, default=0.0)),
        "frames_a_second": round(1000 * len(gaps) / sum(gaps), 1) if gaps else 0.0,
    }  # fmt: skip


def walked(page: Page) -> None:
    """Forty counts and lines by the keyboard, and five sections."""
    page.locator(".count[tabindex='0']").first.focus()
    for key in [*("ArrowRight", "ArrowDown") * 20, *["PageDown"] * 5]:
        page.keyboard.press(key)
        page.evaluate(TWO_FRAMES)


def dragged(page: Page) -> None:
    """A spot led about by the mouse."""
    page.get_by_role("tab", name="Stage").click()
    box = page.locator(".plan .body").first.bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.evaluate("() => [window.tasks.splice(0), window.gaps.splice(0)]")
    for by in (60, -60, 40, -40):
        page.mouse.move(x + by, y + by / 2, steps=30)
    page.mouse.move(x, y, steps=10)


def played(page: Page) -> None:
    """Five seconds of the song."""
    page.locator(".transport .main").click()
    page.wait_for_timeout(5_000)
    page.locator(".transport .main").click()


def page_figures(show: Path) -> dict[str, object]:
    """Figures of one show."""
    with desk(show) as own, sync_playwright() as driver:
        eventually(lambda: own.page.get("view")[0] == 200, LONGEST)
        eventually(lambda: own.page.get("findings")[1]["complete"], LONGEST)
        running = driver.chromium.launch(executable_path=executable(), args=[*FLAGS, *SOFTWARE])
        page = running.new_context(viewport=WIDE).new_page()
        page.set_default_timeout(120_000)
        page.add_init_script(f"({WATCH})()")
        page.goto(own.address)
        page.wait_for_selector(".eight")
        sheet = page.evaluate("performance.now()")
        page.wait_for_timeout(1_500)
        paints = page.evaluate(
            "() => performance.getEntriesByType('paint').map((each) => each.startTime)"
        )
        figures: dict[str, object] = {
            "show": show.name, "first_paint": round(min(paints)), "sheet": round(sheet),
            "opening": taken(page), "elements": page.evaluate("document.querySelectorAll('*').length"),
        }  # fmt: skip
        for name, work in (("walking", walked), ("dragging", dragged)):
            work(page)
            figures[name] = taken(page)
        page.mouse.up()
        page.wait_for_timeout(3_000)
        figures["after_letting_go"] = taken(page)
        played(page)
        figures["playing"] = taken(page)
        for name in ("Count", "Show", "Findings"):
            page.get_by_role("tab", name=name).click()
            page.evaluate(TWO_FRAMES)
        figures["tabs"] = taken(page)
        running.close()
    return figures


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("show", nargs="?", type=Path, default=SHOW)
    parser.add_argument("--hostile", action="store_true", help="40 performers, 10,000 blocks")
    parser.add_argument("--json", action="store_true", help="as one JSON object")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory(dir=given.show.parent) as folder:  # its track stays in reach
        if given.hostile:
            path = hostile_show(Path(folder))
        else:
            path = Path(folder) / given.show.name
            text = given.show.read_text(encoding="utf-8")
            path.write_text(text.replace("file: ../", "file: ../../"), encoding="utf-8")
        figures = page_figures(path)
    if given.json:
        print(json.dumps(figures, indent=2))
        return
    for name, value in figures.items():
        print(f"{name:28} {value}")


if __name__ == "__main__":
    main()
