"""The form of songs: how well parts, their labels and the confidence of borders are found, source by source.

    python benchmarks/form.py CORPUS                 # the weights of today; nothing is kept apart
    python benchmarks/form.py CORPUS --folds 4       # fitted on the other sources each time
    python benchmarks/form.py CORPUS --fit sequencer/listening/song_form/form_weights.py

CORPUS is what `form_corpus.py` builds. A fold holds whole source packages, so that no composer is on both sides.
Measures of mir_eval: border F within 3 s and 0.5 s (ends not counted; songs of one part have none and are told
by the share that is left whole), pairwise label F.
"""

import argparse
import os
import warnings
from itertools import pairwise
from pathlib import Path

os.environ.update(OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1")

import mir_eval
import numpy as np
from scipy.optimize import minimize

from sequencer.listening.signal.spectra import Spectra
from sequencer.listening.song_form import sections
from sequencer.listening.song_form.form_features import (
    bar_edges,
    bar_groups,
    border_evidence,
    likeness,
    long_bars,
)
from sequencer.listening.song_form.form_labels import LabelWeights, pair_evidence
from sequencer.listening.song_form.form_parts import (
    FormWeights,
    fits_in,
    part_evidence,
    scored,
    shares_of,
)

SMALL_BORDER, SMALL_PART, SMALL_LABEL = 0.3, 0.1, 1.0  # penalties on squared coefficients
DROPPED, STILL = (
    ("rhythm", "loud"),
    0.3,
)  # views that a copy of each song lacks, and its weight: calm music is music too
MADE = 0.5  # weight of a made-up song beside a module
_NEAR = 1.6  # [s] of a true border from the bar that is taken for it


class Song:
    """A piece of the corpus with its evidence and its true borders, in bars as heard."""

    def __init__(self, path: Path) -> None:
        given = np.load(path)
        self.name, self.source = path.stem, str(given["source"])
        self.made = self.source.startswith("made")
        self.spectra = Spectra(
            given["mel"], given["chroma"], given["loudness"], float(given["duration"])
        )
        self.downbeats = given["downbeats"]
        self.starts, self.labels = given["starts"].tolist(), [str(x) for x in given["labels"]]
        bars = long_bars(self.downbeats)
        self.groups = bar_groups(self.spectra, bars)
        self.alike = likeness(self.groups)
        edges = bar_edges(bars, self.spectra.duration)
        self.evidence = (
            border_evidence(self.groups, self.alike),
            *part_evidence(self.alike, edges),
        )
        still = {k: v * (k not in DROPPED) for k, v in self.groups.items()}
        alike = likeness(still)
        self.still = (border_evidence(still, alike), *part_evidence(alike, edges))
        near = [int(np.argmin(np.abs(bars - s))) for s in self.starts[1:]]
        inner = {
            b
            for b, s in zip(near, self.starts[1:], strict=True)
            if b > 0 and abs(bars[b] - s) < _NEAR
        }
        self.borders = [0, *sorted(inner), len(bars)]
        middles = [(edges[a] + edges[b]) / 2 for a, b in pairwise(self.borders)]
        named = [self.labels[np.searchsorted(self.starts, m) - 1] for m in middles]
        i, j = np.tril_indices(len(named), -1)
        self.pairs = pair_evidence(self.groups, self.alike, self.borders)[i, j]
        self.same = np.array([float(named[a] == named[b]) for a, b in zip(i, j, strict=True)])


def fitted(songs: list[Song]) -> tuple[FormWeights, LabelWeights]:
    """Weights of greatest likelihood, with small penalties."""
    rows = np.concatenate([s.evidence[0][1:-1] for s in songs])
    mean, spread = rows.mean(axis=0), rows.std(axis=0) + 1e-9
    k = rows.shape[1]
    small = np.concatenate([np.full(k, SMALL_BORDER), [0], np.full(14, SMALL_PART)])

    def loss(v: np.ndarray) -> tuple[float, np.ndarray]:
        total, slope = float(small @ v**2), 2 * small * v
        for song in songs:
            weights = FormWeights(v[: k + 1], mean, spread, v[k + 1 :])
            for evidence, share in ((song.evidence, 1.0), (song.still, STILL)):
                one, of = _likelihood(evidence, song.borders, weights)
                weight = share * (MADE if song.made else 1.0)
                total, slope = total - weight * one, slope - weight * of
        return total, slope

    best = minimize(loss, np.zeros(k + 15), jac=True, method="L-BFGS-B", options={"maxiter": 100}).x
    return FormWeights(best[: k + 1], mean, spread, best[k + 1 :]), _fitted_labels(songs)


def _likelihood(
    evidence: tuple[np.ndarray, np.ndarray, np.ndarray],
    true_borders: list[int],
    weights: FormWeights,
) -> tuple[float, np.ndarray]:
    """Logarithm of the share of the true division, and its slope."""
    borders, parts, whole = evidence
    nodes, lengths, alone = scored(weights, borders, parts, whole)
    nodes[0] = nodes[-1] = 0.0
    shares = shares_of(nodes, lengths, alone)
    inner, longest = true_borders[1:-1], lengths.shape[1]
    true = [(a, b - a - 1) for a, b in pairwise(true_borders) if b - a <= longest]
    single = not inner and true_borders[-1] > longest
    value = nodes[inner].sum() + sum(lengths[x] for x in true) + alone * single - shares.total
    rows = (borders - weights.mean) / weights.spread
    slope = [
        rows[inner].sum(axis=0) - rows.T @ shares.border,
        [len(inner) - shares.border.sum()],
        sum((parts[x] for x in true), np.zeros(14))
        + whole * (single - shares.whole)
        - np.tensordot(shares.part * fits_in(true_borders[-1]), parts, ([0, 1], [0, 1])),
    ]
    return float(value), np.concatenate(slope)


def _fitted_labels(songs: list[Song]) -> LabelWeights:
    rows, same = np.concatenate([s.pairs for s in songs]), np.concatenate([s.same for s in songs])
    mean, spread = rows.mean(axis=0), rows.std(axis=0) + 1e-9
    given, side = np.column_stack([(rows - mean) / spread, np.ones(len(rows))]), 2 * same - 1
    small = np.append(np.full(rows.shape[1], SMALL_LABEL), 0.0)

    def loss(v: np.ndarray) -> tuple[float, np.ndarray]:
        against = -side * (given @ v)
        slope = given.T @ (-side / (1 + np.exp(-against)))
        return float(np.logaddexp(0, against).sum() + small @ v**2), slope + 2 * small * v

    best = minimize(loss, np.zeros(given.shape[1]), jac=True, method="L-BFGS-B").x
    return LabelWeights(best, mean, spread)


def measured(song: Song) -> dict[str, float]:
    """Measures of one song with the weights in force."""
    form = sections.form_of(song.spectra, song.downbeats)
    end = song.spectra.duration
    true = np.array(list(pairwise([*song.starts, end])))
    told = np.array([(p.start, p.end) for p in form.parts])
    out = {"parts": len(told), "true parts": len(true)}
    if len(true) == 1:
        return out | {"left whole": float(len(told) == 1)}
    for window in (3.0, 0.5):
        p, r, f = mir_eval.segment.detection(true, told, window=window, trim=True)
        out |= {f"P {window:g}": p, f"R {window:g}": r, f"F {window:g}": f}
    names = [p.label for p in form.parts]
    return out | {"label F": mir_eval.segment.pairwise(true, song.labels, told, names)[2]}


def sureness(song: Song) -> list[tuple[float, float]]:
    """Of each border that is drawn: its confidence, and whether a true one lies within a bar."""
    bars = long_bars(song.downbeats)
    form = sections.form_of(song.spectra, song.downbeats)
    found = []
    for part in form.parts[1:]:
        b = int(np.argmin(np.abs(bars - part.start)))
        found.append(
            (part.confidence, float(min(abs(b - x) for x in song.borders[1:-1] or [9999]) <= 1))
        )
    return found


def bar_shares(song: Song) -> list[tuple[float, float]]:
    """Of each bar: the share of divisions with a border there, and whether a true one is at this very bar."""
    shares = shares_of(*scored(sections.FORM, *song.evidence)).border
    return [(float(shares[b]), float(b in song.borders)) for b in range(1, song.borders[-1])]


def table(rows: dict[str, dict[str, float]], sources: dict[str, str]) -> None:
    """Means by source, of the kinds of source and of all."""
    kinds = {
        "modules": lambda s: not s.startswith("made"),
        "made-up songs": lambda s: s.startswith("made"),
        "all": bool,
    }
    names = sorted(set(sources.values()) - {s for s in sources.values() if s.startswith("made")})
    groups = {s: [n for n in rows if sources[n] == s] for s in names}
    groups |= {kind: [n for n in rows if of(sources[n])] for kind, of in kinds.items()}
    columns = (
        "parts",
        "true parts",
        "P 3",
        "R 3",
        "F 3",
        "P 0.5",
        "R 0.5",
        "F 0.5",
        "label F",
        "left whole",
    )
    print("| | n | " + " | ".join(columns) + " |\n|" + "---|" * (len(columns) + 2))
    for group, members in groups.items():
        means = [[rows[n][c] for n in members if c in rows[n]] for c in columns]
        cells = [f"{np.mean(m):.2f}" if m else "–" for m in means]
        print(f"| {group} | {len(members)} | " + " | ".join(cells) + " |")


def reliability(pairs: list[tuple[float, float]], title: str) -> None:
    """How many are right of those that are told with each confidence."""
    told, right = np.array(pairs).T
    print(f"\n| {title} | how many | mean | right |\n|---|---|---|---|")
    for low, high in pairwise((0.0, 0.1, 0.2, 0.3, 0.5, 0.6, 0.7, 0.8, 0.9, 1.01)):
        inside = (told >= low) & (told < high)
        if inside.any():
            print(
                f"| {low:g} – {min(high, 1):g} | {inside.sum()} | {told[inside].mean():.2f} | {right[inside].mean():.2f} |"
            )


def written(form: FormWeights, labels: LabelWeights) -> str:
    """The module of the weights."""
    named = {
        "_BORDER": form.border, "_BORDER_MEAN": form.mean, "_BORDER_SPREAD": form.spread, "_PART": form.part,
        "_LABEL": labels.weight, "_LABEL_MEAN": labels.mean, "_LABEL_SPREAD": labels.spread,
    }  # fmt: skip
    rows = "".join(
        f"{name} = ({', '.join(f'{x:.4g}' for x in values)})  # fmt: skip\n"
        for name, values in named.items()
    )
    return f'''"""Coefficients of the form of a song, fitted by `benchmarks/form.py --fit`.

What each belongs to: `border_evidence`, `part_evidence` and `pair_evidence`, column by column, the constant last.
"""

import numpy as np

from sequencer.listening.song_form.form_labels import LabelWeights
from sequencer.listening.song_form.form_parts import FormWeights

{rows}
FORM = FormWeights(*(np.array(row) for row in (_BORDER, _BORDER_MEAN, _BORDER_SPREAD, _PART)))
PART_LABELS = LabelWeights(*(np.array(row) for row in (_LABEL, _LABEL_MEAN, _LABEL_SPREAD)))
'''


def main() -> None:
    """Print the tables, or write the weights."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("corpus", type=Path)
    parser.add_argument("--folds", type=int, default=0)
    parser.add_argument("--fit", type=Path)
    a = parser.parse_args()
    warnings.simplefilter("ignore")
    songs = [Song(path) for path in sorted(a.corpus.glob("*.npz"))]
    if a.fit:
        a.fit.write_text(written(*fitted(songs)), encoding="utf-8")
        return
    order = sorted({s.source for s in songs})
    rows, sure, raw = {}, [], []
    for fold in range(max(a.folds, 1)):
        apart = [s for s in songs if not a.folds or order.index(s.source) % a.folds == fold]
        if a.folds:
            sections.FORM, sections.PART_LABELS = fitted([s for s in songs if s not in apart])
        rows |= {s.name: measured(s) for s in apart}
        for s in apart:
            sure += sureness(s)
            raw += bar_shares(s)
    table(rows, {s.name: s.source for s in songs})
    reliability(sure, "confidence told")
    reliability(raw, "share of divisions, every bar")


if __name__ == "__main__":
    main()
