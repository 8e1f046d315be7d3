"""The one of the bar: how well bars are laid on beats, and how sure they are, by folds over source packages.

    python benchmarks/bars.py KEPT --corpus FOLDER … --folds 8             # fitted on the other packages each time
    python benchmarks/bars.py KEPT --corpus FOLDER … --fit sequencer/listening/bar_starts/bar_weights.py
    python benchmarks/bars.py KEPT --corpus FOLDER … --folds 8 --figure reliability.svg

Each FOLDER holds audio/NAME.ogg and truth/NAME.json as for `hearing.py`; what is heard of them is kept in KEPT. The fit is that of a
choice among 27 ways (metre and phase) on stretches of 24 beats and more in which the truth has one phase: each song counts once, as a
whole and as three stretches of it drawn by a seed. A bar is right if its first beat and all its beats lie within 70 ms of the truth's.
"""

import argparse
import json
import os
import pickle
from pathlib import Path

os.environ.update(OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1")

import mir_eval
import numpy as np
from scipy.optimize import minimize

from sequencer.files import write_text
from sequencer.listening import beats
from sequencer.listening.activations import Activations, activations_of
from sequencer.listening.bar_starts import bar_choice
from sequencer.listening.bar_starts.bar_choice import BAR_METRES, bar_features
from sequencer.listening.bar_starts.bar_evidence import BarEvidence, bar_evidence
from sequencer.listening.bar_starts.bar_readings import metre_odds
from sequencer.listening.hearing import _spectra
from sequencer.listening.levels import ways_to_count

NEAR, LEAST, MOST, STRETCHES = 0.07, 24, 160, 4
SMALL = 3.0  # penalty on squared coefficients, in spreads of their columns
AT_START = slice(6, 8)  # columns that tell of the song's start: none of a stretch from its middle


class Piece:
    """A track with what was heard of it, and its truth."""

    def __init__(self, audio: Path, kept: Path) -> None:
        self.name = audio.stem
        self.truth = json.loads((audio.parent.parent / "truth" / f"{audio.stem}.json").read_text())
        self.source = self.truth["source"].split("-")[0]
        self.heard, self.chroma, self.duration, self.ways = _heard(audio, kept)
        self.count = self.counted()
        self.bars = np.array(self.truth["downbeats"])

    def counted(self) -> beats.BeatCount:
        """The count with the weights of the moment; the search for beats is not repeated."""
        found, beats.ways_to_count = beats.ways_to_count, lambda *_: self.ways
        try:
            return beats.count_of(self.heard, self.duration, self.chroma)
        finally:
            beats.ways_to_count = found

    def evidence(self) -> BarEvidence:
        """Of all its beats."""
        return bar_evidence(self.count.beats, self.heard, self.chroma, BAR_METRES)


def _heard(audio: Path, kept: Path) -> tuple[Activations, np.ndarray, float, list]:
    path = kept / f"{audio.stem}.pickle"
    if not path.exists():
        spectra = _spectra(audio, lambda *_: None)
        heard = activations_of(spectra)
        fine = [
            beats._finer(beats._chance(odds))  # noqa: SLF001  # as `count_of` does
            for odds in (heard.beat, heard.downbeat)
        ]
        ways = ways_to_count(*fine, heard.metres)
        path.write_bytes(pickle.dumps((heard, spectra.chroma, spectra.duration, ways)))
    return pickle.loads(path.read_bytes())  # noqa: S301  # written above


def stretches(piece: Piece, rng: np.random.Generator) -> list[tuple[int, int, int, int]]:
    """First and last beat, metre and phase of stretches whose true bars go on evenly: whole, and some drawn inside."""
    times, metre = piece.count.beats, piece.truth["meter"]
    ones = np.flatnonzero(np.abs(piece.bars[None] - times[:, None]).min(axis=1) < NEAR)
    cuts = np.flatnonzero(np.diff(ones) != metre) + 1
    found = []
    for run in np.split(ones, cuts):
        if len(run) < 5:
            continue
        low = max(int(run[0]) - metre + 1, 0) if run[0] == ones[0] else int(run[0])
        high, phase = min(int(run[-1]) + metre, len(times)), int(run[0]) % metre
        if high - low < LEAST:
            continue
        found.append((low, high, metre, phase))
        for _ in range(STRETCHES - 1):
            length = int(rng.integers(LEAST, min(high - low, MOST) + 1))
            start = low + int(rng.integers(0, high - low - length + 1))
            found.append((start, start + length, metre, phase))
    return found


def examples(piece: Piece, rng: np.random.Generator) -> list[tuple[np.ndarray, int, float]]:
    """Features of all ways, the true one, and its weight."""
    whole, odds, out = piece.evidence(), metre_odds(piece.ways), []
    spans = stretches(piece, rng)
    for low, high, metre, phase in spans:
        part = BarEvidence(
            whole.strokes[low:high],
            whole.turns[low:high],
            {m: rows[low:high] for m, rows in whole.returns.items()},
            whole.bass_in,
        )
        metres, phases, rows = bar_features(part, piece.heard.metres, odds)
        if low:
            rows[:, AT_START] = 0.0
        true = np.flatnonzero((metres == metre) & (phases == (phase - low) % metre))
        out.append((rows, int(true[0]), 1.0 / len(spans)))
    return out


def fitted(given: list[tuple[np.ndarray, int, float]]) -> np.ndarray:
    """Coefficients of the likeliest choice."""
    rows, true, weight = (np.array(part) for part in zip(*given, strict=True))
    spread = rows.reshape(-1, rows.shape[-1]).std(axis=0) + 1e-6
    rows = rows / spread
    number = np.arange(len(true))

    def loss(at: np.ndarray) -> tuple[float, np.ndarray]:
        score = rows @ at
        score -= score.max(axis=1, keepdims=True)
        chance = np.exp(score)
        chance /= chance.sum(axis=1, keepdims=True)
        told = -np.sum(weight * np.log(chance[number, true] + 1e-12))
        chance[number, true] -= 1
        slope = np.einsum("i,ij,ijk->k", weight, chance, rows)
        return told + SMALL * at @ at, slope + 2 * SMALL * at

    found = minimize(loss, np.zeros(rows.shape[-1]), jac=True, method="L-BFGS-B")
    return found.x / spread


def judged(piece: Piece) -> tuple[dict[str, float], list[tuple[float, bool]]]:
    """Measures of a track with the weights of the moment, and each bar's confidence and whether it is right."""
    count, true = piece.counted(), np.array(piece.truth["beats"])
    on = np.abs(true[None] - count.beats[:, None]).min(axis=1) < NEAR
    firsts = np.searchsorted(count.beats, count.downbeats)
    ends = np.append(firsts[1:], len(count.beats))
    bars = []
    for sure, low, high in zip(count.confidence, firsts, ends, strict=True):
        one = np.abs(piece.bars - count.beats[low]).min() < NEAR
        bars.append((float(sure), bool(one and on[low:high].all())))
    measures = {
        "downbeat_f": mir_eval.beat.f_measure(piece.bars, count.downbeats),
        "metre": float(count.metre == piece.truth["meter"]),
    }
    return measures, bars


def area(bars: np.ndarray) -> float:
    """Area under the curve: how often a right bar is surer than a wrong one."""
    right, wrong = bars[bars[:, 1] == 1, 0], bars[bars[:, 1] == 0, 0]
    above = np.mean(right[:, None] > wrong[None]) + 0.5 * np.mean(right[:, None] == wrong[None])
    return float(above)


def reliability(bars: np.ndarray) -> list[tuple[float, float, int]]:
    """By fifths of the bars: what is said, what is right, how many."""
    parts = np.array_split(bars[np.argsort(bars[:, 0], kind="stable")], 5)
    return [(float(p[:, 0].mean()), float(p[:, 1].mean()), len(p)) for p in parts]


def drawn(fifths: list[tuple[float, float, int]], path: Path) -> None:
    """The reliability figure: said against right, by fifths."""
    from matplotlib import rc_context
    from matplotlib.figure import Figure

    figure = Figure(figsize=(4, 4))
    axes = figure.subplots()
    axes.plot([0, 1], [0, 1], color="0.7")
    axes.plot([f[0] for f in fifths], [f[1] for f in fifths], "o-", color="0.1")
    axes.set(xlabel="confidence that is told", ylabel="share of bars that are right")
    axes.set(xlim=(0, 1), ylim=(0, 1), title="Bars, by fifths")
    with rc_context({"svg.hashsalt": "bars"}):
        figure.savefig(path, metadata={"Date": None})


def main() -> None:
    """Print the table, or write the weights."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("kept", type=Path)
    parser.add_argument("--corpus", type=Path, nargs="+", required=True)
    parser.add_argument("--folds", type=int, default=0)
    parser.add_argument("--fit", type=Path)
    parser.add_argument("--figure", type=Path)
    a = parser.parse_args()
    a.kept.mkdir(parents=True, exist_ok=True)
    audio = [path for corpus in a.corpus for path in sorted((corpus / "audio").glob("*.ogg"))]
    pieces = [
        piece
        for piece in (Piece(path, a.kept) for path in audio)
        if len(piece.count.beats) >= LEAST
    ]
    rng = np.random.default_rng(0)
    given = [examples(piece, rng) for piece in pieces]
    if a.fit:
        weights = ", ".join(f"{x:.4g}" for x in fitted([e for part in given for e in part]))
        head = a.fit.read_text(encoding="utf-8").split("BAR_WEIGHTS = ")[0]
        write_text(a.fit, f"{head}BAR_WEIGHTS = np.array([\n    {weights},\n])  # fmt: skip\n")
        return
    sources = sorted({piece.source for piece in pieces})
    np.random.default_rng(3).shuffle(sources)
    fold = {source: k % max(a.folds, 1) for k, source in enumerate(sources)}
    rows, bars = [], []
    for k in range(max(a.folds, 1)):
        if a.folds:
            others = [
                e
                for p, part in zip(pieces, given, strict=True)
                if fold[p.source] != k
                for e in part
            ]
            bar_choice.BAR_WEIGHTS = fitted(others)
        for piece in pieces:
            if fold[piece.source] == k:
                measures, told = judged(piece)
                rows.append(measures)
                bars += told
                print(
                    f"{piece.name:50s}", {x: round(y, 3) for x, y in measures.items()}, flush=True
                )
    print({x: round(float(np.mean([row[x] for row in rows])), 4) for x in rows[0]})
    table = np.array(bars, dtype=float)
    fifths = reliability(table)
    print("area under the curve", round(area(table), 3))
    for said, right, n in fifths:
        print(f"said {said:.2f}, right {right:.2f}, of {n}")
    if a.figure:
        drawn(fifths, a.figure)


if __name__ == "__main__":
    main()
