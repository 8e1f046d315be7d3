"""Builds the blind corpus: music out of packages that nothing was trained, fitted or tuned on, to be judged once.

    python benchmarks/blind.py OUT

Needs what `validation.py` needs, and its rules of truth hold here too; the first 90 s of each piece. Which pieces is settled by the lists
below and those rules alone. Writes OUT/audio/NAME.ogg and OUT/truth/NAME.json.
"""

import re
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from validation import (
    LeftOutError,
    Player,
    corpus_piece,
    folk_piece,
    keep,
    lumps,
    midi_piece,
    module_piece,
    modules,
    tunes,
    unpacked,
)

MODULES = (
    "bugsquish", "madbomber-data", "pathogen", "penguin-command", "rockdodger", "vectoroids", "vor",
)  # fmt: skip
MIDIS = ("planetblupi-music-midi",)
TUNES = 2  # of music21's collection of Nottingham reels, in 4/4
SCORES = [  # path in music21's corpus, beats a minute, General MIDI programs
    ("handel/rinaldo/Lascia_chio_pianga", 72, [52, 40, 41, 42]), ("cpebach/h186", 92, [6]),
    ("weber/concertino_clarinet", 96, [71, 0]), ("trecento/Fava_Dicant_nunc_iudei", 84, [73, 70, 42]),
    ("palestrina/Agnus_00", 92, [52]), ("palestrina/Agnus_01", 92, [19]),
]  # fmt: skip


def pieces(work: Path) -> Iterator[tuple]:
    """Name, maker, and what to make it of."""
    for package in (*MODULES, *MIDIS):
        how, maker = (lumps, midi_piece) if package in MIDIS else (modules, module_piece)
        found = {data: name for path in unpacked(package, work) for name, data in how(path)}
        yield from ((f"{package}-{name}", maker, data) for data, name in found.items())
    for number, (name, text) in enumerate(tunes("nottingham-dataset", "4/4")):
        if number < TUNES:
            yield f"nottingham-{name}", folk_piece, text
    for path, *how in SCORES:
        yield path.replace("/", "-"), corpus_piece, path, *how


def main() -> None:
    """Make all that is not there yet."""
    out = Path(sys.argv[1])
    for folder in ("audio", "truth"):
        (out / folder).mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as work:
        for label, make, *of in pieces(Path(work)):
            name = re.sub(r"[^a-z0-9_.-]", "_", label.lower())
            if (out / "truth" / f"{name}.json").exists():
                continue
            try:
                print(name, keep(out, name, *make(Player(name, Path(work)), *of)), flush=True)
            except LeftOutError as error:
                print(name, "left out:", error, flush=True)
            except Exception as error:  # noqa: BLE001  # a score that cannot be read is left out, and said
                print(name, "left out:", type(error).__name__, flush=True)


if __name__ == "__main__":
    main()
