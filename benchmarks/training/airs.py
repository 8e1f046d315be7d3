"""Public-domain airs as tunes for the training pieces, with parts of our own beneath them.

    python airs.py AIRS.json

Source: James Aird, A Selection of Scotch, English, Irish and Foreign Airs, Glasgow 1778 to 1801, as encoded in
the corpus that music21 ships. Left out are airs whose metre changes, and, with a wide margin, those that share
runs of intervals with the two collections of that corpus which serve to judge the ear (`JUDGING`).
"""
# ruff: noqa: C901, S314  # a walk through bars branches a lot; the XML is that of an installed package

import json
import re
import sys
import zipfile
from contextlib import suppress
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree as ET

import numpy as np
from compose import SCALES, Note, Piece, Section, close, tempo_of

Rng = np.random.Generator
JUDGING = ("ryansMammoth", "oneills1850")
VALIDATION = {97, 147, 237, 377, 501, 718, 805, 868, 880}  # that `benchmarks/validation.py` plays
_SHINGLE = 9  # intervals in a row
_SHARED = 0.15  # of an air's shingles


# ---------------------------------------------------------------- out of the corpus
def air_of(bars: list, notes: list) -> dict | None:
    """One air in beats from its first full bar; None if its bars are not alike.

    `bars` are (start, length, numerator, denominator) and `notes` (start, length, pitch), in quarters.
    """
    kinds = {bar[2:] for bar in bars}
    if len(kinds) != 1 or not 9 <= len(bars) <= 72:
        return None
    num, den = kinds.pop()
    triple = num in {6, 9, 12} and den == 8
    metre, beat = (num // 3, 1.5) if triple else (num, 4 / den)
    if metre not in {2, 3, 4, 6}:
        return None
    lengths = [length / beat for _, length, _, _ in bars]
    if max(lengths) > metre + 1e-6:
        return None
    line: list[list[float]] = []
    pos, pickup, i = 0.0, 0.0, 0

    def place(bar: int, at: float) -> None:
        line[:] = [n for n in line if n[0] < at - 1e-6]
        start, length = bars[bar][:2]
        line.extend(
            [at + (s - start) / beat, d / beat, p]
            for s, d, p in notes
            if start - 1e-6 <= s < start + length - 1e-6
        )

    while i < len(bars):
        short = lengths[i] < metre - 1e-6
        if i == 0 and short:
            pickup = lengths[0]
            place(0, -pickup)
        elif short and i + 1 < len(bars) and abs(lengths[i] + lengths[i + 1] - metre) < 1e-6:
            place(i, pos)
            place(i + 1, pos + lengths[i])
            pos, i = pos + metre, i + 1
        elif short and i + 1 < len(bars):
            # an upbeat in the middle, over the tail of the bar before
            place(i, pos - lengths[i])
        else:
            place(i, pos)
            pos += metre
        i += 1
    line.sort()
    for one, other in pairwise(line):
        one[1] = min(one[1], other[0] - one[0])
    line = [n for n in line if n[1] > 0.02]
    if len(line) < 24:
        return None
    return {
        "metre": metre,
        "division": 3 if triple else 2,
        "pickup": round(pickup, 4),
        "bars": round(pos / metre),
        "notes": [[round(s, 4), round(d, 4), int(p)] for s, d, p in line],
    }


def shingles(steps: list[int]) -> set[tuple[int, ...]]:
    """Runs of intervals of a tune given as steps of the scale, repeated notes taken as one."""
    single = [p for i, p in enumerate(steps) if i == 0 or p != steps[i - 1]]
    moves = [b - a for a, b in pairwise(single)]
    return {tuple(moves[i : i + _SHINGLE]) for i in range(len(moves) - _SHINGLE + 1)}


def abc_steps(text: str) -> dict[int, list[int]]:
    """Steps of each tune of an ABC file, by its number."""
    found = {}
    for tune in re.split(r"^X:\s*", text, flags=re.MULTILINE)[1:]:
        lines = [x for x in tune.split("\n")[1:] if not re.match(r"[A-Za-z]:|%", x)]
        music = re.sub(r'"[^"]*"|\{[^}]*\}|![^!]*!|%.*', "", "\n".join(lines))
        found[int(re.match(r"\d+", tune).group())] = [
            "CDEFGAB".index(n.upper()) + 7 * (n.islower() + octave.count("'") - octave.count(","))
            for n, octave in re.findall(r"([A-Ga-g])([,']*)", music)
        ]
    return found


def judged_shingles() -> set[tuple[int, ...]]:
    """Those of every tune in the collections that serve to judge."""
    from music21 import corpus

    found: set[tuple[int, ...]] = set()
    for path in map(Path, corpus.getPaths()):
        if not any(name.lower() in str(path).lower() for name in JUDGING):
            continue
        if path.suffix == ".abc":
            for steps in abc_steps(path.read_text(encoding="utf-8", errors="replace")).values():
                found |= shingles(steps)
            continue
        data = path.read_bytes()
        if path.suffix == ".mxl":
            with zipfile.ZipFile(path) as packed:
                name = next(n for n in packed.namelist() if n.endswith("xml") and "META" not in n)
                data = packed.read(name)
        steps = [
            "CDEFGAB".index(pitch.findtext("step")) + 7 * int(pitch.findtext("octave"))
            for pitch in ET.fromstring(data).iter("pitch")
        ]
        found |= shingles(steps)
    return found


def score_of(score) -> tuple[list, list] | None:
    """Bars and notes of the first part, repeats written out, in quarters."""
    from music21 import repeat

    with suppress(repeat.ExpanderException):  # a repeat that is not closed: played once
        score = score.expandRepeats()
    part = score.parts[0] if len(score.parts) else score
    notes = [
        (float(n.offset), float(n.quarterLength), int(n.pitches[-1].midi))
        for n in part.stripTies().flatten().notes
        if n.quarterLength > 0 and n.pitches
    ]
    bars = []
    for bar in part.getElementsByClass("Measure"):
        time = bar.timeSignature or bar.getContextByClass("TimeSignature")
        if time is None:
            return None
        bars.append((float(bar.offset), float(bar.quarterLength), time.numerator, time.denominator))
    return bars, notes


def airs_of(book: int, known: set[tuple[int, ...]]) -> tuple[list[dict], dict[str, int]]:
    """Airs of one book that can be used, and how many were left out, by why."""
    from music21 import corpus

    path = next(
        p for p in map(Path, corpus.getPaths()) if p.parts[-2:] == ("airdsAirs", f"book{book}.abc")
    )
    steps = abc_steps(path.read_text(encoding="utf-8", errors="replace"))
    airs, left = [], {"unread": 0, "uneven": 0, "known": 0}
    for score in corpus.parse(str(path)).scores:
        number = int(score.metadata.number)
        own = shingles(steps[number])
        if number in VALIDATION or len(own & known) > _SHARED * len(own):
            left["known"] += 1
            continue
        try:
            read = score_of(score)
        except Exception:  # noqa: BLE001  what music21 cannot read is left out, and counted
            read = None
        air = air_of(*read) if read else None
        if air is None:
            left["uneven" if read else "unread"] += 1
            continue
        title = re.sub(r"\s+", " ", score.metadata.title or "")
        airs.append({"book": book, "number": number, "title": title, **air})
    return airs, left


def collect(out: str) -> None:
    """Write all airs that can be used, with how many were left out."""
    from joblib import Parallel, delayed

    known = judged_shingles()
    print(len(known), "shingles known", flush=True)
    books = Parallel(n_jobs=-1)(delayed(airs_of)(book, known) for book in range(1, 7))
    airs = [air for book, _ in books for air in book]
    Path(out).write_text(json.dumps(airs), encoding="utf-8")
    print(len(airs), "airs; left out", [left for _, left in books])


# ---------------------------------------------------------------- pieces
class Accompaniment(Section):
    """Parts beneath a given tune, drawn as those of composed sections are."""

    def __init__(self, rng: Rng, piece: Piece, tune: list, bars: int, style: str) -> None:
        self.style, self.metre, self.division = style, piece.metre, piece.division
        self.phrase, self.slow = bars, piece.bpm < 88
        weights = np.zeros(12)
        for _, length, pitch in tune:
            weights[pitch % 12] += length
        last = tune[-1][2] % 12
        self.key, self.scale = max(
            ((k, s) for k in range(12) for s in list(SCALES.values())[:4]),
            key=lambda ks: (
                sum(weights[(ks[0] + step) % 12] for step in ks[1])
                + 0.3 * weights.sum() * (ks[0] == last)
            ),
        )
        self.chords = self._harmony(tune)
        self.parts, self.drums = {}, []
        if rng.random() < 0.85:
            plain = rng.random() < 0.35
            self.parts["bass"] = self._plain_bass() if plain else self._bass(rng)
        for role, chance in {
            "chord": 0.35,
            "pad": 0.15,
            "arp": 0.1 if style == "tune" else 0.3,
        }.items():
            if rng.random() < chance:
                self.parts[role] = getattr(self, "_" + role)(rng)
        if rng.random() < {"tune": 0.5}.get(style, 0.75):
            self.drums = self._drum_bars(rng)

    def _harmony(self, tune: list) -> list[list[int]]:
        halves = 2 if self.metre in {2, 4, 6} else 1
        fit = np.zeros((self.phrase * halves, 7))
        fit += np.array([0.5, 0.0, -0.2, 0.3, 0.35, 0.1, -0.2]) * self.metre / halves
        for start, length, pitch in tune:
            span = int(start * halves // self.metre)
            if not 0 <= span < len(fit):
                continue
            for degree in range(7):
                triad = {(self.key + self.scale[(degree + k) % 7]) % 12 for k in (0, 2, 4)}
                fit[span, degree] += length * (pitch % 12 in triad)
        best = fit.argmax(axis=1).reshape(self.phrase, halves)
        return [[int(row[0]), int(row[-1])] for row in best]

    def _plain_bass(self) -> list[list[Note]]:
        """Root on the bar's first beat, fifth on its middle."""
        out = []
        for bar in range(self.phrase):
            root = self._degree(self.chords[bar][0], 1)
            half = self.metre / 2
            out.append(
                [Note(0.0, half, root, 96, "bass"), Note(half, half * 0.8, root + 7, 92, "bass")]
            )
        return out


def borrowed(rng: Rng, airs: list[dict], style: str) -> Piece:
    """A piece on one of the airs, in one of the styles "tune", "band", "tracker"."""
    air = airs[int(rng.integers(len(airs)))]
    metre, division = air["metre"], air["division"]
    bpm = tempo_of(rng, "tune" if style == "tune" else "band", division)
    piece = Piece(metre, division, bpm, 0, pickup=air["pickup"], style=style)
    if division == 2 and rng.random() < 0.12:
        piece.swing = float(rng.uniform(0.12, 0.34))
    move = int(rng.integers(-5, 6)) + int(rng.choice([0, -12, 12], p=[0.7, 0.2, 0.1]))
    tune = [(start, length, pitch + move) for start, length, pitch in air["notes"]]
    under = Accompaniment(rng, piece, tune, air["bars"], style)
    doubled = rng.random() < 0.15
    wanted = rng.uniform(45, 80) * bpm / 60
    accent = float(rng.choice([0, 6, 12]))
    while piece.bars * metre < wanted:
        at = piece.bars * metre
        for start, length, pitch in tune:
            v = int(rng.normal(84, 8) + accent * (abs(start % metre) < 1e-3))
            if at and start < 0:  # the upbeat of a repeat, over the tail of the last bar
                piece.notes = [n for n in piece.notes if n.role != "lead" or n.start < at + start]
            piece.notes.append(Note(at + start, length * 0.92, pitch, v, "lead"))
            if doubled:
                piece.notes.append(Note(at + start, length * 0.92, pitch - 12, v - 10, "inner"))
        under.write(rng, piece, first=not at)
    if rng.random() < 0.6:
        close(piece)
    return piece


if __name__ == "__main__":
    collect(sys.argv[1])
