"""What a show costs that is larger than any: python benchmarks/load.py [--only SUBJECT …] [--share S] [--json].

Each subject is doubled up to its full size, in processes of the real command; the first finds nothing kept but the song, the others
what those before have worked out:

    cast       `check`, `sheet`, `rehearse` and `trace` of 500 performers
    blocks     the same of 50 performers with 10,000 blocks
    findings   the same of a show of which 10,000 findings are told
    hours      `listen` to a song of 3 hours, and the same verbs of two performers over all of it
    file       files of 100 MB given as a show, patterns, taps, rules, a log of burns, an archive: refused at once

Told are processor seconds, seconds on the clock and the most memory, and how the cost grows: the exponent over all
sizes, and that between the last two. Every file that is written is opened: PDF by pypdf to its last page, tables with as many
cells in each row, JSON, MIDI, captions, pages. With `--share 0.1` all sizes are a tenth, with `--last 1` only the full size is made.
"""

import argparse
import csv
import io
import json
import math
import os
import re
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from scale import CHILD, exponent, forget
from speed import ROOT, show_text, write_clicks

VERBS = {
    "check": ("check", "{show}", "--drawn", "--json"),
    "sheet": ("sheet", "{show}", "--drawn", "--out", "{out}"),
    "rehearse": ("rehearse", "{show}", "--drawn", "--audio", "none", "--out", "{out}", "--only", "page", "--only", "midi",
                 "--only", "captions", "--only", "timetable", "--only", "timecode"),
    "trace": ("trace", "{show}", "--drawn", "--rate", "1"),
}  # fmt: skip
LARGEST_FILE = 100_000_000  # bytes


@dataclass(frozen=True)
class Subject:
    """What grows, and the show and song that have so much of it."""

    sizes: tuple[float, ...]
    text: Callable[[float], str]
    seconds: Callable[[float], float]  # of the song
    listens: bool = False


def _far_apart(performers: int, bars: int) -> str:
    return show_text(performers, max(16, bars), spacing=4.2)


def _faulty_bars(findings: float) -> int:
    """As measured: some 690 findings of 16 bars, and 146 of every eight more."""
    return 24 + 8 * max(0, math.ceil((findings - 780) / 146))


def _faulty(findings: float) -> str:
    """A show in whose blocks hands are asked beyond the arm: each is a finding."""
    bars = _faulty_bars(findings)
    text = show_text(50, bars, spacing=4.2)
    return re.sub(
        r"(who: [A-Z]\w*, from: [\d.]+, pattern: )[\w-]+",
        r"\1pro-bend-4, with: {hand_radius: 45 cm}",
        text,
    )


SUBJECTS = {
    "cast": Subject((62, 125, 250, 500), lambda n: _far_apart(int(n), 40), lambda _n: 90.0),
    "blocks": Subject((1250, 2500, 5000, 10_000), lambda n: _far_apart(50, round(n * 808 / 10_000)), lambda n: 16 + n * 0.162),
    "findings": Subject((1250, 2500, 5000, 10_000), _faulty, lambda n: 2.0 * _faulty_bars(n)),
    "hours": Subject((0.375, 0.75, 1.5, 3.0), lambda h: _far_apart(2, round(h * 1800) - 8), lambda h: 3600 * h, listens=True),
}  # fmt: skip


def command(*words: str, into: Path | None = None) -> dict[str, float]:
    """Cost of one process of the command, and what it printed in a file."""
    with (into or Path(os.devnull)).open("wb") as out:
        done = subprocess.run(
            [sys.executable, "-c", CHILD, *words],
            stdout=out,
            stderr=subprocess.PIPE,
            check=False,
            cwd=ROOT,
        )
    last = done.stderr.decode().splitlines()[-1:]
    return json.loads(last[0]) if last else {"status": done.returncode}


def opened(path: Path) -> str:
    """What is in a file, once it was opened and read to its end.

    Raises
    ------
    Exception
        Whatever its reader says.
    """
    kind = path.suffix.lower()
    if kind in BINARY:
        return BINARY[kind](path)
    return TEXTS[kind](path.read_text(encoding="utf-8"))


def _pdf(path: Path) -> str:
    import pypdf

    pages = pypdf.PdfReader(path).pages
    if not all(page.extract_text().strip() for page in (pages[0], pages[-1])):
        raise ValueError("an empty page")
    return f"{len(pages)} pages"


def _midi(path: Path) -> str:
    import mido

    return f"{sum(len(track) for track in mido.MidiFile(path, clip=True).tracks)} events"


def _sound(path: Path) -> str:
    import soundfile

    return f"{soundfile.info(path).duration:.0f} s"


def _rows(text: str) -> int:
    lines = [line for line in csv.reader(io.StringIO(text)) if line and not line[0].startswith("#")]
    if len({len(line) for line in lines}) != 1:
        raise ValueError("rows of several lengths")
    return len(lines)


def _page(text: str) -> str:
    if not text.rstrip().endswith("</html>"):
        raise ValueError("the page has no end")
    data = re.findall(r'<script[^>]*type="application/json"[^>]*>(.*?)</script>', text, re.DOTALL)
    for each in data:
        json.loads(each)
    return f"page, {len(data)} tables, {len(text) / 1e6:.1f} MB"


def measured(
    name: str, share: float, last: int, verbs: list[str], folder: Path, cache: Path
) -> Iterator[dict]:
    """One line a verb and size, then one with the growth of each if there are several sizes."""
    subject, costs = SUBJECTS[name], {}
    for size in subject.sizes[-last:]:
        wanted = size * share
        write_clicks(folder / "clicks.wav", subject.seconds(wanted) + 10)
        heard = command("listen", str(folder / "clicks.wav"))
        if subject.listens:
            costs.setdefault("listen", {})[wanted] = heard["cpu_s"]
            yield {"subject": name, "size": wanted, "verb": "listen", **_rounded(heard)}
        show = folder / f"{name}-{size:g}.yaml"
        show.write_text(subject.text(wanted), encoding="utf-8")
        forget(cache)
        for verb in verbs:
            out = folder / "out" / verb
            out.mkdir(parents=True, exist_ok=True)
            printed = out / ("printed.json" if verb == "check" else "printed.csv")
            words = [word.format(show=show, out=out) for word in VERBS[verb]]
            cost = command(*words, into=printed)
            costs.setdefault(verb, {})[wanted] = cost.get("cpu_s", math.nan)
            yield {
                "subject": name,
                "size": wanted,
                "verb": verb,
                **_rounded(cost),
                **_looked_at(out, verb, printed),
            }
            subprocess.run(["rm", "-rf", str(out)], check=True)  # noqa: S607
    for verb, of in costs.items():
        sizes, seconds = list(of), list(of.values())
        if len(sizes) < 2:
            continue
        yield {
            "subject": name, "verb": verb, "exponent": round(exponent(sizes, seconds), 2),
            "last": round(exponent(sizes[-2:], seconds[-2:]), 2),
        }  # fmt: skip


def _rounded(cost: dict) -> dict:
    return {key: round(value, 1) for key, value in cost.items()}


def _looked_at(out: Path, verb: str, printed: Path) -> dict:
    """How many files a verb wrote, what they are, and which cannot be opened."""
    if verb not in {"check", "trace"}:
        printed.unlink()
    files = [
        path for path in sorted(out.rglob("*")) if path.is_file() and not path.name.startswith(".")
    ]
    broken, kinds = [], {}
    for path in files:
        try:
            kinds.setdefault(path.suffix, []).append(opened(path))
        except Exception as error:  # noqa: BLE001 (whatever its reader says is told)
            broken.append(f"{path.name}: {type(error).__name__} {error}"[:200])
    found = {
        "files": len(files),
        "opened": {kind: f"{len(each)}: {each[0]}" for kind, each in kinds.items()},
        "broken": broken,
    }
    if verb == "check" and printed.stat().st_size:
        found["findings"] = len(json.loads(printed.read_bytes())["findings"])
    return found


BINARY = {".pdf": _pdf, ".mid": _midi, ".wav": _sound, ".flac": _sound}
TEXTS = {
    ".csv": lambda text: f"{_rows(text)} rows",
    ".json": lambda text: f"{len(json.loads(text))} keys",
    ".html": _page,
    ".vtt": lambda text: f"{text.count(' --> ')} cues",
    ".lrc": lambda text: f"{len(text.splitlines())} lines",
}
SMALL = "title: a\ntrack: {{file: clicks.wav{more}}}\nvenue: {{stage: {{shape: rectangle, width: 9, depth: 9}}, audience: [{{line: [[-9, -9], [9, -9]]}}]}}\ncast: [{{name: A, stature: 1.7, prop: {{tether: 0.5}}}}]\n{rest}"


def refused(folder: Path) -> Iterator[dict]:
    """Files of 100 MB where a small one is expected: what it costs to refuse each."""
    write_clicks(folder / "clicks.wav", 40)
    command("listen", str(folder / "clicks.wav"))
    line = b"a: {b: [1, 2, 3]}\n"
    (folder / "huge.yaml").write_bytes(line * (LARGEST_FILE // len(line)))
    (folder / "huge.zip").write_bytes(bytes(LARGEST_FILE))
    (folder / "huge.txt").write_bytes(b"0.5\n" * (LARGEST_FILE // 4))
    given = {
        "check": ("check", "huge.yaml"), "draft": ("draft", "huge.yaml"), "sheet": ("sheet", "huge.yaml"), "pack": ("pack", "huge.yaml"),
        "compare": ("compare", "huge.yaml", "huge.yaml"), "schema": ("new", "huge.yaml", "--schema"),
        "patterns": ("patterns", "--from", "huge.yaml"), "tap": ("listen", "clicks.wav", "--tap", "huge.txt"),
        "unpack": ("unpack", "huge.zip"),
    }  # fmt: skip
    named = {
        "its beats": SMALL.format(more=", corrections: {beats: huge.txt}", rest=""),
        "its patterns": SMALL.format(more="", rest="pattern_files: [huge.yaml]\n"),
        "its rules": SMALL.format(more="", rest="rules: {file: huge.yaml}\n"),
        "its burns": SMALL.format(more="", rest="fire: {fuel: lamp-oil, burns: huge.txt}\n"),
    }
    for name, text in named.items():
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
        given[name] = ("check", f"{name}.yaml", "--drawn")
    for name, words in given.items():
        paths = [str(folder / word) if (folder / word).exists() else word for word in words]
        yield {"subject": "file", "verb": name, **_rounded(command(*paths))}


def main() -> None:
    """Print the figures, one JSON object a line, or all as one."""
    asked = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    asked.add_argument(
        "--only", nargs="*", choices=[*SUBJECTS, "file"], default=[*SUBJECTS, "file"]
    )
    asked.add_argument("--verbs", nargs="*", choices=list(VERBS), default=list(VERBS))
    asked.add_argument("--share", type=float, default=1.0)
    asked.add_argument(
        "--last", type=int, default=4, help="how many of the sizes, from the largest"
    )
    asked.add_argument("--json", action="store_true", dest="as_json")
    given = asked.parse_args()
    lines = []
    for name in given.only:
        with tempfile.TemporaryDirectory() as base:
            folder, cache = Path(base), Path(base) / "cache"
            os.environ["XDG_CACHE_HOME"] = os.environ["LOCALAPPDATA"] = str(cache)
            some = (
                refused(folder)
                if name == "file"
                else measured(name, given.share, given.last, given.verbs, folder, cache)
            )
            for line in some:
                lines.append(line)
                if not given.as_json:
                    print(json.dumps(line), flush=True)
    if given.as_json:
        print(json.dumps(lines, indent=1))
    sys.exit(any(line.get("broken") or line.get("status", 0) not in {0, 1, 2} for line in lines))


if __name__ == "__main__":
    main()
