"""Builds what `form.py` learns and judges the form of songs on: spectra, bars as heard, and the true parts.

    python benchmarks/form_corpus.py OUT [--songs 44]

Two sources: tracker modules out of Debian packages, whose parts follow from their own notes by the rule of
`form_modules`, and songs that `training/songs.py` makes up, whose form is known exactly; a few of these have
one part only. Needs libopenmpt0, libfluidsynth3, fluid-soundfont-gm, apt-get and what `validation.py` needs.
Writes OUT/NAME.npz; what is there already is not made again.
"""

import argparse
import os
import re
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

os.environ.update(OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1", NUMBA_NUM_THREADS="1")
sys.path.insert(0, str(Path(__file__).parent / "training"))

import numpy as np
import render
import songs
import soxr
import validation
from form_modules import RATE, bars_of, parts_of, played

from sequencer.listening.activations import activations_of
from sequencer.listening.beats import count_of
from sequencer.listening.signal.audio import SAMPLE_RATE
from sequencer.listening.signal.spectra import Ear

FONT = "/usr/share/sounds/sf2/FluidR3_GM.sf2"
PACKAGES = (
    "bomberclone-data", "circuslinux-data", "heroes-sound-tracks", "pingus-data", "ri-li-data", "tecnoballz-data",
    *validation.MODULES,
)  # fmt: skip
IN_THREES = {
    "pingus-data-pingus-8",
    "pingus-data-the_big_march_in_space",
    "pingus-data-rough_journey",
}
MOST = 6  # modules of a package
LONGEST = 150.0  # s
ALONE = ("a48", "a48", "a48", "a64", "a64")  # forms of songs of one part


def heard(sound: np.ndarray) -> dict:
    """Spectra, duration and first beats of mono sound at `SAMPLE_RATE`."""
    ear = Ear()
    ear.take(np.asarray(sound, np.float32))
    spectra = ear.spectra(len(sound) / SAMPLE_RATE)
    count = count_of(activations_of(spectra), spectra.duration)
    return {
        "mel": spectra.mel, "chroma": spectra.chroma, "loudness": spectra.loudness,
        "duration": spectra.duration, "downbeats": count.downbeats,
    }  # fmt: skip


def made_songs(count: int, out: Path) -> Iterator[tuple[str, dict]]:
    """Made-up songs that are not there yet."""
    synth = render.Synth(FONT)
    for seed, form in enumerate([*[""] * count, *ALONE]):
        name = f"made-{seed:03d}"
        if (out / f"{name}.npz").exists():
            continue
        rng = np.random.default_rng(seed)
        piece, parts = songs.song(rng, form)
        sound, beats = render.played_by_synth(piece, rng, synth)
        starts = [0.0, *(float(beats[b * piece.metre]) for b in parts.starts[1:])]
        found = heard(render.roughened(np.asarray(sound, np.float64), rng))
        yield name, found | {"starts": starts, "labels": parts.names, "source": f"made {seed % 4}"}


def module_pieces(out: Path) -> Iterator[tuple[str, dict]]:
    """Modules of the packages that are not there yet, each 25 s or longer with eight bars or more."""
    with tempfile.TemporaryDirectory() as work:
        for package in PACKAGES:
            files = validation.unpacked(package, Path(work))
            found = {data: x for path in files for x, data in validation.modules(path)}
            kept = 0
            for label, data in validation.shuffled([(x, data) for data, x in found.items()]):
                name = re.sub(r"[^a-z0-9_.-]", "_", f"{package}-{label}".lower())
                if kept == MOST or name in validation.NOT_AS_COUNTED | IN_THREES:
                    continue
                if (out / f"{name}.npz").exists():
                    kept += 1
                elif piece := _module_piece(data):
                    kept += 1
                    yield name, piece | {"source": package}


def _module_piece(data: bytes) -> dict | None:
    piece = played(data, LONGEST)
    if piece is None or len(piece.sound) < 25 * RATE or len(piece.rows) < 128:
        return None
    bars = bars_of(piece.rows)
    if len(bars) < 8 or np.diff(bars).max() > 2 * np.diff(bars).min():
        return None
    sound = soxr.resample(piece.sound * (0.9 / np.abs(piece.sound).max()), RATE, SAMPLE_RATE)
    starts, labels = parts_of(piece, bars)
    found = heard(sound)
    if len(found["downbeats"]) < 8:
        return None
    return found | {"starts": starts, "labels": labels}


def main() -> None:
    """Make all that is not there yet."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("out", type=Path)
    parser.add_argument("--songs", type=int, default=44)
    a = parser.parse_args()
    a.out.mkdir(parents=True, exist_ok=True)
    for pieces in (module_pieces(a.out), made_songs(a.songs, a.out)):
        for name, piece in pieces:
            np.savez(a.out / f"{name}.npz", **piece)
            print(
                name,
                [f"{s:.0f}{x}" for s, x in zip(piece["starts"], piece["labels"], strict=True)],
                flush=True,
            )


if __name__ == "__main__":
    main()
