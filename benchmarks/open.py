"""How soon an open show answers: from an edit to its new revision, its view, joins and distances, and the whole report.

    python benchmarks/open.py --json [SHOW]

A real server in a process of its own, asked over HTTP as a page asks it, with the cache of the machine as it is. Edits move a
spot, stretch a block and name a pattern in turn; each waits for all answers before the next. Seconds, median and longest.
"""

import argparse
import http.client
import json
import signal
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path
from urllib.parse import urlsplit

ROOT = Path(__file__).parents[1]
SHOW = ROOT / "shows" / "lantern_round.yaml"
EDITS = 12
LONGEST = 600.0  # [s] that is waited for the first report


class Page:
    """Asks the server, and notes when it is told what."""

    def __init__(self, address: str) -> None:
        parts = urlsplit(address)
        self.host, self.secret = parts.netloc, parts.fragment
        self.told: list[tuple[float, str, dict]] = []
        threading.Thread(target=self._listen, daemon=True).start()

    def ask(self, method: str, path: str, body: dict | None = None) -> dict:
        """An answer's JSON."""
        connection = http.client.HTTPConnection(self.host, timeout=LONGEST)
        headers = {"x-sequencer-secret": self.secret, "content-type": "application/json"}
        connection.request(method, path, None if body is None else json.dumps(body), headers)
        answer = json.loads(connection.getresponse().read())
        connection.close()
        return answer

    def _listen(self) -> None:
        connection = http.client.HTTPConnection(self.host, timeout=LONGEST)
        connection.request("GET", "/api/events", headers={"x-sequencer-secret": self.secret})
        event = ""
        for line in connection.getresponse():
            text = line.decode().rstrip("\n")
            if text.startswith("event: "):
                event = text[7:]
            elif text.startswith("data: "):
                self.told.append((time.perf_counter(), event, json.loads(text[6:])))

    def when(self, revision: int, event: str, **said: object) -> float:
        """When something was told of a revision, once it was."""
        end = time.perf_counter() + LONGEST
        while time.perf_counter() < end:
            for at, name, values in self.told:
                if name == event and values.get("revision") == revision and all(
                    values.get(key) == value for key, value in said.items()
                ):  # fmt: skip
                    return at
            time.sleep(0.002)
        raise TimeoutError(f"{event} of revision {revision} was not told")


def edits(view: dict, values: dict):
    """Operations that change a little here and there, and back."""
    name, formation = next(iter(view["formations"].items()))
    who, (x, y, _) = next(iter(formation["spots"].items()))
    rows = [k for k, row in enumerate(values["timeline"]) if row.get("beats") and "pattern" in row]
    for k in range(EDITS):
        if k % 3 == 0:
            shift = 0.1 * (1 + k % 2)
            yield {"do": "move-spot", "formation": name, "who": who, "at": [x + shift, y]}
        elif k % 3 == 1 and rows:
            row = rows[(k // 3) % len(rows)]
            yield {
                "do": "change-block",
                "at": ["timeline", row],
                "values": {"shift": 0.25 * (k % 4)},
            }
        else:
            yield {"do": "change-titles", "values": {"title": f"Edit {k}"}}


def measured(show: Path) -> dict:
    """Figures of one show."""
    begun = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, "-m", "sequencer", "open", str(show), "--no-browser"],
        stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    try:
        page = Page(process.stdout.readline().strip())
        listening = time.perf_counter() - begun
        state = page.ask("GET", "/api/show")
        view = page.ask("GET", "/api/view")
        drawn = time.perf_counter() - begun
        page.when(state["revision"], "checks", complete=True)
        whole = time.perf_counter() - begun
        rows = []
        for operation in edits(view, state["values"]):
            start = time.perf_counter()
            given = {"revision": state["revision"], "operation": operation, "anyway": True}
            state = page.ask("POST", "/api/operations", given)
            answered = time.perf_counter() - start
            page.ask("GET", "/api/view")
            seen = time.perf_counter() - start
            revision = state["revision"]
            joins = page.when(revision, "findings", check="joins") - start
            apart = page.when(revision, "findings", check="distances", **{"as": "drawn"}) - start
            flown = page.when(revision, "findings", check="distances", **{"as": "flown"}) - start
            full = page.when(revision, "checks", complete=True) - start
            rows.append((answered, seen, max(joins, apart), flown, full))
    finally:
        process.send_signal(signal.SIGINT)
        process.wait(30)
    names = ("answered", "view", "joins_and_distances_drawn", "distances_flown", "whole_report")
    columns = dict(zip(names, zip(*rows, strict=True), strict=True))
    return {
        "show": show.name, "performers": len(view["cast"]), "blocks": len(view["blocks"]),
        "duration": round(view["duration"], 1), "edits": len(rows),
        "listening": round(listening, 2), "first_view": round(drawn, 2), "first_report": round(whole, 2),
        **{
            name: {"median": round(statistics.median(own), 3), "longest": round(max(own), 3)}
            for name, own in columns.items()
        },
    }  # fmt: skip


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("show", nargs="?", type=Path, default=SHOW)
    parser.add_argument("--json", action="store_true", help="as one JSON object")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory(dir=given.show.parent) as folder:  # its track stays in reach
        copy = Path(folder) / given.show.name
        text = given.show.read_text(encoding="utf-8")
        copy.write_text(text.replace("file: ../", "file: ../../"), encoding="utf-8")
        figures = measured(copy)
    if given.json:
        print(json.dumps(figures, indent=2))
        return
    for name, value in figures.items():
        print(f"{name:28} {value}")


if __name__ == "__main__":
    main()
