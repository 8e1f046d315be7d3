"""How soon an open show answers: from letting go of a block or a spot to its new revision, its view, joins and distances, and all else.

    python benchmarks/open.py --json [SHOW]
    python benchmarks/open.py --json --eight

A real server in a process of its own, asked over HTTP as a page asks it, with the cache of the machine as it is; links and flights of
these edits that an earlier run has left in that cache are found there, unless `--fresh` gives the server an empty one. Blocks are
shifted, stretched and given another pattern, spots are moved; each edit waits for all answers before the next, and then the same
once more in a row, each sent as soon as joins and distances of the one before are there, while that is still being flown. Seconds,
median and longest; and the processor time of all processes for an edit.
"""

import argparse
import http.client
import json
import os
import signal
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "benchmarks"))

from speed import show_text, write_clicks  # noqa: E402

SHOW = ROOT / "shows" / "lantern_round.yaml"
BLOCKS, SPOTS = 9, 4  # edits of each kind
LONGEST = 600.0  # [s] that is waited for a report
SHIFTS = (0.25, 0.5, 0.75)
OTHER = ("two-beat-weave", "windmill", "fountain", "extension")
_TICKS = os.sysconf("SC_CLK_TCK") if hasattr(os, "sysconf") else 0


class Refused(Exception):
    """The server does not take what was asked."""


class Page:
    """Asks the server, and notes when it is told what."""

    def __init__(self, address: str) -> None:
        parts = urlsplit(address)
        self.host, self.secret = parts.netloc, parts.fragment
        self.told: list[tuple[float, str, dict[str, Any]]] = []
        threading.Thread(target=self._listen, daemon=True).start()

    def ask(self, method: str, path: str, body: dict[str, Any] | None = None) -> dict[str, Any]:
        """An answer's JSON.

        Raises
        ------
        Refused
            With the server's sentence.
        """
        connection = http.client.HTTPConnection(self.host, timeout=LONGEST)
        headers = {"x-sequencer-secret": self.secret, "content-type": "application/json"}
        connection.request(method, path, None if body is None else json.dumps(body), headers)
        response = connection.getresponse()
        answer: dict[str, Any] = json.loads(response.read())
        connection.close()
        if response.status >= 400:
            raise Refused(answer["error"]["message"])
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
        end, seen = time.perf_counter() + LONGEST, 0
        while time.perf_counter() < end:
            for at, name, values in self.told[seen:]:
                seen += 1
                if name == event and values.get("revision") == revision and all(
                    values.get(key) == value for key, value in said.items()
                ):  # fmt: skip
                    return at
            time.sleep(0.002)
        raise TimeoutError(f"{event} of revision {revision} was not told")


def block_edits(values: Mapping[str, Any]) -> Iterator[dict[str, Any]]:
    """Blocks of the timeline shifted, shortened and given another pattern in turn, from its middle on."""
    rows = [k for k, row in enumerate(values["timeline"]) if "pattern" in row and "beats" in row]
    rows = rows[len(rows) // 2 :] + rows[: len(rows) // 2]
    for k in range(3 * len(rows)):
        at = ["timeline", rows[k % len(rows)]]
        row = values["timeline"][rows[k % len(rows)]]
        if k % 3 == 0:
            yield {"do": "change-block", "at": at, "values": {"shift": SHIFTS[k // 3 % 3]}}
        elif k % 3 == 1:
            yield {"do": "stretch-block", "at": at, "beats": float(row["beats"]) - 1}
        else:
            other = next(each for each in OTHER[k // 3 % 4 :] + OTHER if each != row["pattern"])
            yield {"do": "change-block", "at": at, "values": {"pattern": other}}


def spot_edits(view: Mapping[str, Any]) -> Iterator[dict[str, Any]]:
    """One spot after the other moved by a hand's breadth."""
    for k in range(100):
        for name, formation in view["formations"].items():
            if formation["spots"]:
                spots = list(formation["spots"].items())
                who, (x, y, _) = spots[k % len(spots)]
                yield {"do": "move-spot", "formation": name, "who": who, "at": [x + 0.1, y]}


class Session:
    """Edits one after the other on an open show."""

    def __init__(self, page: Page, process: int) -> None:
        self.page, self._process = page, process
        self.state = page.ask("GET", "/api/show")

    def edit(self, operation: dict[str, Any], *, wait: bool) -> dict[str, float]:
        """Seconds until each answer; without `wait` only to joins and drawn distances."""
        page, start, spent = self.page, time.perf_counter(), _processor(self._process)
        given = {"revision": self.state["revision"], "operation": operation}
        self.state = page.ask("POST", "/api/operations", given)
        answered = time.perf_counter()
        page.ask("GET", "/api/view")
        seen = time.perf_counter()
        revision = self.state["revision"]
        joins = page.when(revision, "findings", check="joins")
        apart = page.when(revision, "findings", check="distances", **{"as": "drawn"})
        moments = {"answered": answered, "view": seen, "joins_and_distances": max(joins, apart)}
        if wait:
            of_motion = ("feasible", "distances", "let-go")
            flown = [page.when(revision, "findings", check=each, **{"as": "flown"}) for each in (*of_motion, "as-flown")]  # fmt: skip
            moments["flown_distances"], moments["all_flown"] = flown[1], max(flown)
            moments["whole_report"] = page.when(revision, "checks", complete=True)
        found = {name: at - start for name, at in moments.items()}
        return {**found, "processor": _processor(self._process) - spent}

    def edits(
        self, operations: Iterator[dict[str, Any]], count: int, *, wait: bool
    ) -> dict[str, Any]:
        """Median and longest of so many edits that the show takes."""
        rows = []
        for operation in operations:
            if len(rows) == count:
                break
            try:
                rows.append(self.edit(operation, wait=wait))
            except Refused:
                continue
        names = [name for name in (rows[0] if rows else {}) if wait or name != "processor"]
        return {
            "edits": len(rows),
            **{
                name: {
                    "median": round(statistics.median(row[name] for row in rows), 3),
                    "longest": round(max(row[name] for row in rows), 3),
                }
                for name in names
            },
        }


def _processor(process: int) -> float:
    """Seconds of processor time of a process and those that it has started; 0 where the system does not tell them so."""
    total = 0.0
    try:
        tasks = Path(f"/proc/{process}/task")
        fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
        total += (int(fields[11]) + int(fields[12])) / _TICKS
        for task in tasks.iterdir():
            for child in (task / "children").read_text().split():
                total += _processor(int(child))
    except OSError:
        return total
    return total


def measured(show: Path, cache: str | None) -> dict[str, Any]:
    """Figures of one show."""
    begun = time.perf_counter()
    environment = {**os.environ, "XDG_CACHE_HOME": cache} if cache else None
    process = subprocess.Popen(
        [sys.executable, "-m", "sequencer", "open", str(show), "--no-browser"],
        stdout=subprocess.PIPE, text=True, env=environment,
    )  # fmt: skip
    if process.stdout is None:
        raise RuntimeError("it says nothing")
    try:
        page = Page(process.stdout.readline().strip())
        listening = time.perf_counter() - begun
        session = Session(page, process.pid)
        view = page.ask("GET", "/api/view")
        drawn = time.perf_counter() - begun
        page.when(session.state["revision"], "checks", complete=True)
        whole = time.perf_counter() - begun
        time.sleep(5.0)  # as somebody looks at what was found
        values = session.state["values"]
        blocks, spots = block_edits(values), spot_edits(view)
        figures = {
            "blocks": session.edits(blocks, BLOCKS, wait=True),
            "spots": session.edits(spots, SPOTS, wait=True),
            "blocks_in_a_row": session.edits(blocks, BLOCKS, wait=False),
            "spots_in_a_row": session.edits(spots, SPOTS, wait=False),
        }
    finally:
        process.send_signal(signal.SIGINT)
        process.wait(30)
    return {
        "show": show.name, "performers": len(view["cast"]), "blocks_of_it": len(view["blocks"]),
        "duration": round(view["duration"], 1), "listening": round(listening, 2),
        "first_view": round(drawn, 2), "first_report": round(whole, 2), **figures,
    }  # fmt: skip


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("show", nargs="?", type=Path, default=SHOW)
    parser.add_argument("--eight", action="store_true", help="eight performers, four minutes")
    parser.add_argument("--fresh", action="store_true", help="with nothing kept")
    parser.add_argument("--json", action="store_true", help="as one JSON object")
    given = parser.parse_args()
    folder = given.show.parent  # its track stays in reach
    with tempfile.TemporaryDirectory(dir=folder) as own, tempfile.TemporaryDirectory() as cache:
        copy = Path(own) / given.show.name
        if given.eight:
            copy = Path(own) / "eight.yaml"
            write_clicks(copy.with_name("clicks.wav"), 245.0)
            copy.write_text(show_text(8, 120, spacing=4.2), encoding="utf-8")
        else:
            text = given.show.read_text(encoding="utf-8")
            copy.write_text(text.replace("file: ../", "file: ../../"), encoding="utf-8")
        figures = measured(copy, cache if given.fresh else None)
    if given.json:
        print(json.dumps(figures, indent=2))
        return
    for name, value in figures.items():
        print(f"{name:28} {value}")


if __name__ == "__main__":
    main()
