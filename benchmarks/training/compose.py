"""Makes up pieces of music whose beats and bars are known exactly, to train the ear on.

Nothing here comes from a piece that exists: harmony, rhythm and tunes are drawn from seeded tables of
common practice. Moments are in beats from the first full bar (a pickup is negative).
"""
# ruff: noqa: C901, PLR0912, PLR0915, RET504  # tables of musical habit branch a lot

from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np

Rng = np.random.Generator


class Note(NamedTuple):
    """One note of a part."""

    start: float
    length: float
    pitch: int
    velocity: int
    role: str


class Hit(NamedTuple):
    """One stroke of the drums; `key` is the General MIDI drum key."""

    start: float
    key: int
    velocity: int


@dataclass
class Piece:
    """A piece and its exact count."""

    metre: int
    division: int  # of a beat: 2 or 3
    bpm: float
    bars: int
    pickup: float = 0.0
    swing: float = 0.0  # 0 … 1/3 of a half beat by which off-beats come late
    notes: list[Note] = field(default_factory=list)
    hits: list[Hit] = field(default_factory=list)
    style: str = ""
    put_in: tuple[int, int] = (0, 0)  # a bar of other length: its first beat, and its beats

    @property
    def beats(self) -> int:
        """Beats from bar 1 to the end."""
        return self.bars * self.metre + self.put_in[1]

    def firsts(self, numbers: np.ndarray) -> np.ndarray:
        """Which of these beats begin a bar."""
        at, length = self.put_in
        late = (numbers >= at + length) & (length > 0)
        return np.where(late, numbers - length, numbers) % self.metre == 0


SCALES = {
    "major": (0, 2, 4, 5, 7, 9, 11),
    "minor": (0, 2, 3, 5, 7, 8, 10),
    "dorian": (0, 2, 3, 5, 7, 9, 10),
    "mixolydian": (0, 2, 4, 5, 7, 9, 10),
    "harmonic": (0, 2, 3, 5, 7, 8, 11),
    "phrygian": (0, 1, 3, 5, 7, 8, 10),
}
PROGRESSIONS = [
    (0, 3, 4, 0), (0, 4, 5, 3), (0, 5, 3, 4), (5, 3, 0, 4), (0, 3, 0, 4), (0, 0, 3, 4), (0, 6, 5, 6),
    (0, 5, 0, 5), (0, 6, 0, 6), (0, 1, 4, 0), (0, 2, 3, 4), (0, 3, 6, 2, 5, 1, 4, 0), (0, 0, 0, 0),
    (0, 4, 0, 4), (0, 0, 4, 4, 0, 3, 4, 0), (0, 5, 1, 4), (3, 4, 0, 5), (0, 0, 5, 5, 3, 3, 4, 4), (0, 6, 3, 0),
]  # fmt: skip
# 16 steps of a bar of four: kick 36, snare 38, closed hat 42, open hat 46, clap 39, rim 37
DRUMS = {
    "rock": {36: "x.......x.......", 38: "....x.......x...", 42: "x.x.x.x.x.x.x.x."},
    "rock2": {36: "x.....x.x.......", 38: "....x.......x...", 42: "x.x.x.x.x.x.x.x."},
    "rock3": {36: "x..x....x.x.....", 38: "....x.......x...", 42: "x.x.x.x.x.x.x.x."},
    "pop": {36: "x......xx.......", 38: "....x.......x...", 42: "x...x...x...x..."},
    "four": {36: "x...x...x...x...", 38: "....x.......x...", 46: "..x...x...x...x."},
    "house": {36: "x...x...x...x...", 39: "....x.......x...", 46: "..x...x...x...x.", 42: "xxxxxxxxxxxxxxxx"},
    "techno": {36: "x...x...x...x...", 42: "..x...x...x...x."},
    "techno2": {36: "x...x...x...x...", 42: "x.xxx.xxx.xxx.xx", 37: "...x..x....x..x."},
    "kick": {36: "x...x...x...x..."},
    "break": {36: "x.x.......xx....", 38: "....x..x.x..x..x", 42: "x.x.x.x.x.x.x.x."},
    "break2": {36: "x.....x...x.....", 38: "....x..x....x...", 42: "x.x.x.x.x.x.x.x."},
    "funk": {36: "x..x..x...x..x..", 38: "....x..x.x..x...", 42: "xxxxxxxxxxxxxxxx"},
    "hiphop": {36: "x.....xx..x.....", 38: "....x.......x...", 42: "x.x.x.x.x.x.xxx."},
    "jungle": {36: "x.........x.....", 38: "....x.......x...", 42: "x.x.x.x.x.x.x.x."},
    "half": {36: "x.........x.....", 38: "........x.......", 42: "x.x.x.x.x.x.x.x."},
    "drop": {36: "........x.......", 37: "........x.......", 42: "x.x.x.x.x.x.x.x."},
    "skank": {36: "x...x...x...x...", 37: "........x.......", 42: "..x...x...x...x."},
    "march": {36: "x.......x.......", 38: "x.xxx.x.x.xxx.x."},
    "march2": {36: "x...x...x...x...", 38: "..xx..xx..xxx.x."},
    "polka": {36: "x.......x.......", 38: "....x.......x..."},
    "bossa": {36: "x..xx..xx..xx..x", 37: "x..x..x...x..x..", 42: "x.x.x.x.x.x.x.x."},
    "electro": {36: "x.....x...x.....", 38: "....x.......x...", 42: "x.xxx.xxx.xxx.xx"},
    "sparse": {36: "x..............."},
    "sparse2": {36: "x.........x.....", 38: "........x......."},
    "hats": {42: "x...x...x...x..."},
    "hats2": {42: "x.x.x.x.x.x.x.x."},
    "toms": {45: "x..x..x.........", 41: "........x..x..x.", 36: "x.......x......."},
    "plain": {36: "x.......x.......", 38: "....x.......x...", 42: "x.x.x.x.x.x.x.x."},
    "backbeat": {38: "....x.......x..."},
    "offhat": {46: "..x...x...x...x."},
    "shaker": {70: "xxxxxxxxxxxxxxxx", 36: "x.......x......."},
    "clave": {75: "x..x..x...x.x...", 36: "x.......x......."},
    "latin": {36: "x..x...xx..x...x", 56: "x...x.x.x...x.x.", 63: "..xx..xx..xx..xx"},
}  # fmt: skip


def compose(rng: Rng, style: str) -> Piece:
    """A new piece in one of the styles: "tracker", "band", "tune", "score"."""
    metre, division = _metre(rng, style)
    bpm = tempo_of(rng, style, division)
    piece = Piece(metre, division, bpm, 0, style=style)
    if division == 2 and rng.random() < {"tracker": 0.08, "band": 0.15, "tune": 0.2}.get(
        style, 0.0
    ):
        piece.swing = float(rng.uniform(0.12, 0.34))
    scale = SCALES[_pick(rng, list(SCALES), [4, 4, 2, 1.5, 1, 0.5])]
    key = int(rng.integers(0, 12))
    phrase = int(rng.choice([4, 8], p=[0.45, 0.55]))
    labels = {name: Section(rng, piece, scale, key, phrase, style) for name in "ABC"}
    seconds = rng.uniform(45, 80)
    wanted = max(8, int(seconds * bpm / 60 / metre))
    order = _form(rng, style)
    i = 0
    while piece.bars < wanted:
        name = order[i % len(order)]
        labels[name].write(rng, piece, first=i == 0)
        i += 1
    if style in {"tune", "score"} and rng.random() < 0.3:
        length = float(rng.choice([0.5, 1.0])) if division == 2 else 1 / 3
        piece.pickup = length
        piece.notes.append(Note(-length, length * 0.9, 60 + key + 7, 84, "lead"))
    if metre > 2 and rng.random() < 0.12:
        _put_in_a_bar(piece, rng)
    if rng.random() < {"tracker": 0.15, "band": 0.4}.get(style, 0.6):
        close(piece)
    return piece


def close(piece: Piece) -> None:
    """The last bar as pieces end: its first beat, held."""
    at = float(piece.beats - piece.metre)
    first = [n for n in piece.notes if abs(n.start - at) < 1e-6]
    if not first:
        return
    held = [n._replace(length=float(piece.metre)) for n in first]
    piece.notes = [n for n in piece.notes if n.start < at - 1e-6] + held
    piece.hits = [h for h in piece.hits if h.start < at + 1e-6]


def _put_in_a_bar(piece: Piece, rng: Rng) -> None:
    """Somewhere the last beats of a bar come twice, as a shorter bar of their own."""
    length = piece.metre // 2 if rng.random() < 0.7 else int(rng.integers(1, piece.metre))
    at = piece.metre * int(rng.integers(4, max(5, piece.bars - 4)))

    def later(events: list) -> list:
        again = [e._replace(start=e.start + length) for e in events if at - length <= e.start < at]
        rest = [e if e.start < at else e._replace(start=e.start + length) for e in events]
        return rest + again

    piece.notes, piece.hits, piece.put_in = later(piece.notes), later(piece.hits), (at, length)


def _pick(rng: Rng, options: list, weights: list | None = None):
    p = None if weights is None else np.array(weights, float) / np.sum(weights)
    return options[int(rng.choice(len(options), p=p))]


def _metre(rng: Rng, style: str) -> tuple[int, int]:
    table = {
        "tracker": (
            [(4, 2), (3, 2), (4, 3), (2, 3), (6, 2), (5, 2), (7, 2)],
            [88, 4, 4, 1, 0.5, 1.2, 1],
        ),
        "band": (
            [(4, 2), (3, 2), (2, 2), (4, 3), (2, 3), (6, 2), (5, 2), (7, 2)],
            [60, 11, 7, 5, 7, 1, 4, 3],
        ),
        "tune": ([(4, 2), (2, 2), (3, 2), (2, 3), (3, 3)], [33, 27, 13, 24, 3]),
        "score": ([(4, 2), (2, 2), (3, 2), (2, 3), (6, 2), (5, 2)], [46, 15, 27, 9, 2, 1]),
    }
    return _pick(rng, *table[style])


def tempo_of(rng: Rng, style: str, division: int) -> float:
    """Beats a minute, as such music mostly goes."""
    centre, spread, low, high = {
        "tracker": (126, 0.24, 64, 184),
        "band": (112, 0.28, 56, 205),
        "tune": (114, 0.17, 70, 165),
        "score": (92, 0.34, 42, 190),
    }[style]
    if division == 3 and style == "score":
        centre = 80
    return float(np.clip(centre * np.exp(rng.normal(0, spread)), low, high))


def _form(rng: Rng, style: str) -> str:
    if style == "tune":
        return _pick(rng, ["AABB", "AABB", "AB", "AABC", "ABAC"])
    if style == "score":
        return _pick(rng, ["AABA", "AABB", "ABAC", "ABCA", "AAB"])
    return _pick(rng, ["AABABCB", "AABB", "ABAB", "AABBC", "AAAA", "AB", "ABC", "ABACAB"])


def _rhythm(
    rng: Rng, metre: int, division: int, density: float, off: float, fine: bool
) -> list[float]:
    """Onsets of one bar, by metrical weight; `off` moves some of them ahead of the beat."""
    steps = division * (2 if fine and division == 2 else 1)
    found = []
    for i in range(metre * steps):
        beat, inside = divmod(i, steps)
        if inside == 0:
            p = 0.96 if beat == 0 else 0.55 + 0.4 * density
        elif division == 2 and inside * 2 == steps:
            p = 0.1 + 0.75 * density
        elif division == 3:
            p = (0.25 if inside == 1 else 0.5) + 0.5 * density - 0.2
        else:
            p = 0.75 * density**2
        if rng.random() < p:
            at = i / steps
            if i and rng.random() < off:
                at -= 1 / steps
            found.append(at)
    return sorted(set(found)) or [0.0]


def _dotted(rng: Rng, metre: int, pair: float) -> list[float]:
    """Long–short or short–long pairs, as in dotted dances; a pair lasts `pair` beats."""
    found = []
    for i in range(round(metre / pair)):
        at, kind = i * pair, rng.random()
        found.append(at)
        if kind < 0.55:
            found.append(at + 0.75 * pair)
        elif kind < 0.75:
            found.append(at + 0.25 * pair)
        elif kind < 0.9:
            found.append(at + 0.5 * pair)
    return found


class Section:
    """Material of one section: written again whenever it returns."""

    def __init__(
        self, rng: Rng, piece: Piece, scale: tuple, key: int, phrase: int, style: str
    ) -> None:
        self.style, self.scale, self.key, self.phrase = style, scale, key, phrase
        self.metre, self.division = piece.metre, piece.division
        self.slow = piece.bpm < 88
        progression = _pick(rng, PROGRESSIONS)
        pace = float(rng.choice([0.5, 1, 2], p=[0.2, 0.62, 0.18]))
        self.chords = [
            [progression[int((b + h / 2) / pace) % len(progression)] for h in (0, 1)]
            for b in range(phrase)
        ]
        if style in {"tune", "score"}:
            self.chords[-1] = [4, 0] if rng.random() < 0.5 else [0, 0]
        self.parts: dict[str, list[list[Note]]] = {}
        self.drums: list[list[Hit]] = []
        busy = {
            "tracker": {
                "bass": 0.86,
                "chord": 0.48,
                "arp": 0.48,
                "lead": 0.66,
                "pad": 0.38,
                "inner": 0.22,
            },
            "band": {
                "bass": 0.85,
                "chord": 0.75,
                "arp": 0.2,
                "lead": 0.7,
                "pad": 0.35,
                "inner": 0.12,
            },
            "tune": {"bass": 0.85, "chord": 0.2, "arp": 0.05, "lead": 1.0, "pad": 0.08},
            "score": {
                "bass": 0.8,
                "chord": 0.4,
                "arp": 0.3,
                "lead": 0.93,
                "pad": 0.2,
                "inner": 0.55,
                "alto": 0.4,
            },
        }[style]
        for role, chance in busy.items():
            if rng.random() < chance:
                self.parts[role] = getattr(self, "_" + role)(rng)
        if not self.parts:
            self.parts["bass"] = self._bass(rng)
        drummed = {"tracker": 0.82, "band": 0.88, "tune": 0.5, "score": 0.03}[style]
        if rng.random() < drummed:
            self.drums = self._drum_bars(rng)

    # ------------------------------------------------------------ helpers
    def _degree(self, degree: int, octave: int) -> int:
        up, step = divmod(degree, 7)
        return self.key + 12 * (octave + 1 + up) + self.scale[step]

    def _chord_at(self, bar: int, beat: float) -> int:
        return self.chords[bar % self.phrase][0 if beat < self.metre / 2 else 1]

    def _bar_notes(self, onsets: list[float], legato: float) -> list[tuple[float, float]]:
        ends = [*onsets[1:], float(self.metre)]
        return [(a, max(0.08, (b - a) * legato)) for a, b in zip(onsets, ends, strict=True)]

    # ------------------------------------------------------------ parts
    def _bass(self, rng: Rng) -> list[list[Note]]:
        m, d, style = self.metre, self.division, self.style
        octave = int(rng.choice([1, 2], p=[0.5, 0.5]))
        kinds = {
            "tracker": [
                "roots",
                "pulse",
                "off",
                "octaves",
                "syncopated",
                "sixteenths",
                "long",
                "rootfifth",
                "dotted",
                "gallop",
            ],
            "band": [
                "roots",
                "pulse",
                "walk",
                "syncopated",
                "rootfifth",
                "long",
                "octaves",
                "dotted",
            ],
            "tune": ["rootfifth", "rootfifth", "rootfifth", "roots", "walk", "long"],
            "score": ["roots", "walk", "long", "pulse", "free", "rootfifth", "free"],
        }[style]
        kind = _pick(rng, kinds)
        step = 1 / d
        pattern = _rhythm(rng, m, d, rng.uniform(0.2, 0.9), rng.uniform(0, 0.6), d == 2)
        jumps = [int(x) for x in rng.choice([0, 0, 0, 12, 7, -5, 10], size=16)]
        legato = float(rng.uniform(0.45, 1.0))
        late_one = rng.random() < 0.15  # a riff that leaves out the bar's first beat
        out = []
        for bar in range(self.phrase):
            if kind == "roots":
                onsets = [0.0] if m < 4 else [0.0, m / 2 if m % 2 == 0 else float(m // 2 + 1)]
            elif kind == "pulse":
                onsets = [i * step for i in range(m * d)]
            elif kind == "off":
                onsets = [i + step for i in range(m)] if rng.random() < 0.97 else [0.0]
                if d == 3:
                    onsets = [i + 2 / 3 for i in range(m)]
            elif kind == "octaves":
                onsets = [i * step for i in range(m * d)]
            elif kind == "sixteenths" and d == 2:
                onsets = [i + s for i in range(m) for s in (0.25, 0.5, 0.75)]
            elif kind == "gallop" and d == 2:
                onsets = [i + s for i in range(m) for s in (0.0, 0.5, 0.75)]
            elif kind == "dotted" and d == 2:
                onsets = [x for x in np.arange(0, m, 0.75).tolist() if x < m]
            elif kind == "walk":
                onsets = [float(i) for i in range(m)]
            elif kind == "long":
                onsets = [0.0]
            elif kind == "rootfifth":
                onsets = [0.0, m / 2] if m != 3 else ([0.0, 1.5] if rng.random() < 0.4 else [0.0])
            elif kind == "free":
                onsets = _rhythm(rng, m, d, 0.25, 0.05, False)
            else:
                onsets = list(pattern)
            if late_one and kind in {"syncopated", "sixteenths"} and len(onsets) > 2:
                onsets = [x for x in onsets if x > 0]
            notes = []
            for i, (at, length) in enumerate(self._bar_notes(onsets, legato)):
                pitch = self._degree(self._chord_at(bar, at), octave)
                if kind == "octaves" and i % 2:
                    pitch += 12
                elif kind == "rootfifth" and i:
                    pitch += 7
                elif kind in {"syncopated", "sixteenths", "dotted"}:
                    pitch += jumps[i % 16]
                elif kind in {"walk", "free"} and i:
                    pitch = self._degree(
                        self._chord_at(bar, at) + int(rng.choice([1, 2, 4, -1, 0])), octave
                    )
                notes.append(Note(at, length, pitch, int(rng.normal(96, 6)), "bass"))
            out.append(notes)
        if kind in {"syncopated", "walk"} and self.phrase >= 4 and rng.random() < 0.3:
            out[-1] = out[0]
        return out

    def _chord(self, rng: Rng) -> list[list[Note]]:
        m, d = self.metre, self.division
        kind = _pick(
            rng,
            ["beats", "off", "long", "stab", "oom", "eighths", "pattern"],
            [2, 1.5, 2, 2, 3 if m == 3 or self.style in {"tune", "score"} else 1, 1, 2],
        )
        octave = int(rng.choice([3, 4]))
        stab = _rhythm(rng, m, d, rng.uniform(0.1, 0.6), rng.uniform(0, 0.7), d == 2)
        size = int(rng.choice([2, 3, 4], p=[0.25, 0.6, 0.15]))
        legato = float(rng.uniform(0.3, 1.0))
        out = []
        for bar in range(self.phrase):
            onsets = {
                "beats": [float(i) for i in range(m)],
                "off": [i + (0.5 if d == 2 else 2 / 3) for i in range(m)],
                "long": [0.0] if self.chords[bar][0] == self.chords[bar][1] else [0.0, m / 2],
                "stab": stab,
                "oom": [float(i) for i in range(1, m)] if m != 4 else [1.0, 3.0],
                "eighths": [i / d for i in range(m * d)],
                "pattern": stab,
            }[kind]
            if not onsets:
                onsets = [1.0]
            notes = []
            for at, length in self._bar_notes(list(onsets), legato):
                root = self._chord_at(bar, at)
                v = int(rng.normal(76, 6)) + (8 if at == 0 else 0)
                notes += [
                    Note(at, length, self._degree(root + 2 * k, octave), v, "chord")
                    for k in range(size)
                ]
            out.append(notes)
        return out

    def _arp(self, rng: Rng) -> list[list[Note]]:
        m, d = self.metre, self.division
        quick = 0.85 if self.slow else 0.5
        step = float(rng.choice([0.5, 0.25], p=[1 - quick, quick])) if d == 2 else 1 / 3
        cycle = [int(x) for x in rng.choice([0, 2, 4, 7, 9], size=int(rng.choice([3, 4, 4, 6, 8])))]
        if rng.random() < 0.4:
            cycle = _pick(rng, [[0, 4, 2, 4], [0, 2, 4, 7], [7, 4, 2, 0], [0, 2, 4, 2]])
        restart = rng.random() < 0.6  # else the figure runs across the bars
        octave = int(rng.choice([3, 4, 5], p=[0.3, 0.5, 0.2]))
        holes = float(rng.choice([0, 0.15, 0.35], p=[0.6, 0.25, 0.15]))
        mask = rng.random(64) >= holes
        legato = float(rng.uniform(0.4, 1.1))
        accent = rng.random() < 0.5
        n = round(m / step)
        out = []
        for bar in range(self.phrase):
            notes = []
            for i in range(n):
                if not mask[i % 64]:
                    continue
                at = i * step
                place = i if restart else bar * n + i
                pitch = self._degree(self._chord_at(bar, at) + cycle[place % len(cycle)], octave)
                v = 74 + (10 if accent and i % max(1, round(1 / step)) == 0 else 0)
                notes.append(Note(at, step * legato, pitch, v, "arp"))
            out.append(notes)
        return out

    def _inner(self, rng: Rng) -> list[list[Note]]:
        """A second tune, lower and calmer, or in the same rhythm a third below."""
        lines = self._lead(rng)
        if "lead" in self.parts and rng.random() < 0.4:
            down = int(rng.choice([3, 4, 5, 8, 9]))
            return [
                [n._replace(pitch=n.pitch - down, role="inner") for n in bar]
                for bar in self.parts["lead"]
            ]
        return [
            [n._replace(pitch=n.pitch - 7, velocity=n.velocity - 8, role="inner") for n in bar]
            for bar in lines
        ]

    def _alto(self, rng: Rng) -> list[list[Note]]:
        """A part that fills the harmony on or between the beats."""
        return [[n._replace(role="alto") for n in bar] for bar in self._inner(rng)]

    def _pad(self, rng: Rng) -> list[list[Note]]:
        octave = int(rng.choice([3, 4]))
        out = []
        for bar in range(self.phrase):
            a, b = self.chords[bar]
            spans = (
                [(0.0, float(self.metre), a)]
                if a == b
                else [(0.0, self.metre / 2, a), (self.metre / 2, self.metre / 2, b)]
            )
            out.append(
                [
                    Note(at, length, self._degree(c + 2 * k, octave), 66, "pad")
                    for at, length, c in spans
                    for k in range(3)
                ]
            )
        return out

    def _lead(self, rng: Rng) -> list[list[Note]]:
        m, d, style = self.metre, self.division, self.style
        running = style == "tune" or (style == "score" and rng.random() < 0.4)
        density = float(rng.uniform(0.6, 1.0) if running else rng.uniform(0.1, 0.85))
        off = {
            "tracker": rng.uniform(0, 0.5),
            "band": rng.uniform(0, 0.5),
            "tune": 0.0,
            "score": rng.uniform(0, 0.12),
        }[style]
        fine = d == 2 and (
            rng.random() < (0.75 if self.slow else 0.4)
            if style != "tune"
            else (m == 2 or rng.random() < 0.12)
        )
        motifs = [_rhythm(rng, m, d, density, float(off), fine) for _ in range(3)]
        if (
            d == 2
            and rng.random() < {"tune": 0.3, "score": 0.12, "tracker": 0.06, "band": 0.08}[style]
        ):
            motifs = [
                _dotted(rng, m, 0.5 if style == "tune" and m == 2 and rng.random() < 0.6 else 1.0)
                for _ in range(3)
            ]
        shape = _pick(rng, [[0, 0, 0, 1], [0, 1, 0, 2], [0, 1, 0, 1], [0, 0, 1, 2], [0, 1, 2, 1]])
        octave = int(rng.choice([4, 5], p=[0.6, 0.4]))
        degree = int(rng.choice([0, 2, 4, 7]))
        rest = (
            float(rng.choice([0.0, 0.2, 0.5], p=[0.6, 0.25, 0.15]))
            if style in {"tracker", "band"}
            else 0.0
        )
        legato = float(rng.uniform(0.6, 1.0))
        out: list[list[Note]] = []
        for bar in range(self.phrase):
            if bar >= 4 and bar < self.phrase - 1 and rng.random() < 0.6:
                out.append(list(out[bar - 4]))
                continue
            if bar and rng.random() < rest:
                out.append([])
                continue
            onsets = list(motifs[shape[bar % 4]])
            last = bar == self.phrase - 1 or (bar % 4 == 3 and rng.random() < 0.5)
            if last and style in {"tune", "score"}:
                onsets = [x for x in onsets if x < m - 1] + [float(m - 1)] if m > 1 else [0.0]
                onsets = sorted(set(onsets))
            notes = []
            for at, length in self._bar_notes(onsets, legato):
                root = self._chord_at(bar, at)
                if at == int(at) and (at == 0 or rng.random() < 0.6):
                    options = [root + k + o for k in (0, 2, 4) for o in (-7, 0, 7)]
                    degree = min(options, key=lambda x: (abs(x - degree), x))
                else:
                    degree += int(
                        rng.choice(
                            [-2, -1, -1, 1, 1, 2, 3, -3],
                            p=[0.1, 0.26, 0.14, 0.14, 0.16, 0.1, 0.05, 0.05],
                        )
                    )
                degree = int(np.clip(degree, -5, 14))
                v = int(rng.normal(88, 7)) + (8 if at == 0 else 3 if at == int(at) else 0)
                notes.append(Note(at, length, self._degree(degree, octave), v, "lead"))
            if last and notes and style in {"tune", "score"}:
                final = notes[-1]
                notes[-1] = final._replace(pitch=self._degree(0 if degree < 4 else 7, octave))
            out.append(notes)
        if rng.random() < {"score": 0.3, "tune": 0.25}.get(style, 0.15):
            self._begin_before_the_one(rng, out, octave)
        return out

    def _begin_before_the_one(self, rng: Rng, out: list[list[Note]], octave: int) -> None:
        """Phrases that begin with an upbeat, as many tunes do: the end of each fourth bar leads to the next."""
        m, d = self.metre, self.division
        length = float(rng.choice([1 / d, 1.0, 1.0 + 1 / d]))
        steps = max(1, round(length * d))
        for bar in range(3, self.phrase, 4):
            kept = [n for n in out[bar] if n.start < m - length - 1e-6]
            kept = [n._replace(length=min(n.length, m - length - n.start)) for n in kept]
            goal = self._chord_at(bar + 1, 0.0)
            down = int(rng.choice([-1, 1]))
            for i in range(steps):
                at = m - length + i / d
                pitch = self._degree(goal + down * (steps - i), octave)
                kept.append(Note(at, 0.9 / d, pitch, int(rng.normal(84, 6)), "lead"))
            out[bar] = kept

    # ------------------------------------------------------------ drums
    def _drum_bars(self, rng: Rng) -> list[list[Hit]]:
        m, d = self.metre, self.division
        if m == 4 and d == 2:
            names = list(DRUMS)
            if self.style == "tune":
                names = ["plain", "plain", "polka", "rock", "march", "kick", "backbeat", "hats2"]
            pattern = {k: list(v) for k, v in DRUMS[_pick(rng, names)].items()}
            if rng.random() < 0.4:  # a pattern of its own: some strokes moved
                for steps in pattern.values():
                    for _ in range(int(rng.integers(1, 4))):
                        i = int(rng.integers(1, 16))
                        steps[i] = "." if steps[i] == "x" else "x"
            strokes = {k: [i / 4 for i, c in enumerate(v) if c == "x"] for k, v in pattern.items()}
            if rng.random() < 0.15:
                strokes.pop(36, None)
        else:
            strokes = self._other_strokes(rng)
        if rng.random() < 0.2 and len(strokes) > 1:
            strokes.pop(_pick(rng, list(strokes)))
        swap = {
            38: int(rng.choice([38, 40, 39, 37])),
            42: int(rng.choice([42, 44, 51, 70, 54])),
            36: int(rng.choice([36, 35, 41], p=[0.6, 0.3, 0.1])),
        }
        base = {35: 108, 36: 108, 41: 100, 38: 98, 40: 98, 39: 92}
        plain = self.style == "tune"
        fills = int(rng.choice([0, 4, 8], p=[0.35, 0.35, 0.3])) if not plain else 0
        level = float(rng.uniform(0.6, 1.05))
        variant = rng.random() < 0.4 and not plain
        out = []
        for bar in range(self.phrase):
            hits = []
            for key, times in strokes.items():
                k = swap.get(key, key)
                for at in times:
                    v = base.get(k, 74) * level + rng.normal(0, 4) - (14 if at != int(at) else 0)
                    if variant and bar % 2 and at and rng.random() < 0.15:
                        continue
                    hits.append(Hit(at, k, int(np.clip(v, 20, 127))))
            if not plain and bar == self.phrase - 1 and rng.random() < 0.15:
                hits = [h for h in hits if h.start < m - 2]
            if fills and bar % fills == fills - 1 and rng.random() < 0.8:
                since = m - float(rng.choice([1, 2])) if m > 2 else m - 1.0
                hits = [h for h in hits if h.start < since]
                step = 0.25 if d == 2 else 1 / 3
                for at in np.arange(since, m - 1e-6, step):
                    if rng.random() < 0.75:
                        hits.append(
                            Hit(
                                float(at),
                                int(rng.choice([38, 38, 45, 48, 41])),
                                int(rng.normal(94, 8)),
                            )
                        )
            out.append(hits)
        return out

    def _other_strokes(self, rng: Rng) -> dict[int, list[float]]:
        m, d = self.metre, self.division
        if d == 2 and m in {5, 7} and rng.random() < 0.7:
            groups = _pick(rng, {5: [[3, 2], [2, 3]], 7: [[4, 3], [3, 4], [2, 2, 3], [3, 2, 2]]}[m])
            edges = np.concatenate([[0], np.cumsum(groups)[:-1]])
            kick = [float(x) for x in edges]
            snare = [float(x + 1) for x in edges]
        elif m == 3:
            kick, snare = _pick(
                rng,
                [
                    ([0.0], [1.0, 2.0]),
                    ([0.0, 2.0], [1.0]),
                    ([0.0], [2.0]),
                    ([0.0, 1.5], [1.0, 2.0]),
                    ([0.0], [1.0]),
                ],
            )
        else:
            kick = [float(i) for i in range(0, m, 2)]
            snare = [float(i) for i in range(1, m, 2)]
            if rng.random() < 0.2:
                kick = [0.0]
        sub = 2 if rng.random() < 0.25 or d == 2 else 3
        hat = [i / sub for i in range(m * sub)]
        if rng.random() < 0.3:
            hat = [float(i) for i in range(m)]
        if d == 3 and rng.random() < 0.3:
            hat = sorted([float(i) for i in range(m)] + [i + 2 / 3 for i in range(m)])
        if rng.random() < 0.25 and d == 2:
            kick = sorted({*kick, m - 0.5})
        strokes = {36: list(kick), 38: list(snare), 42: hat}
        return strokes

    # ------------------------------------------------------------ writing
    def write(self, rng: Rng, piece: Piece, *, first: bool) -> None:
        """Append the section to the piece; sometimes with parts left out."""
        quiet = {"tracker": 0.22, "band": 0.18}.get(self.style, 0.0)
        roles = [r for r in self.parts if rng.random() >= quiet]
        drums = bool(self.drums) and rng.random() >= quiet
        if first and self.style in {"tracker", "band"} and rng.random() < 0.35:
            drums = False
        if not roles and not drums:
            roles = list(self.parts)
        start = piece.bars * piece.metre
        if drums and rng.random() < 0.3 and self.style != "tune":
            piece.hits.append(Hit(float(start), 49, 90))
        for bar in range(self.phrase):
            at = start + bar * piece.metre
            for role in roles:
                piece.notes += [n._replace(start=at + n.start) for n in self.parts[role][bar]]
            if drums:
                piece.hits += [h._replace(start=at + h.start) for h in self.drums[bar]]
        piece.bars += self.phrase


def swung(at: float, swing: float) -> float:
    """A moment with its off-beat half moved late: 0.5 becomes 0.5 + swing / 2 (of a beat)."""
    whole, part = divmod(at, 1.0)
    late = 0.5 + swing / 2
    if part <= 0.5:
        return whole + part * late / 0.5
    return whole + late + (part - 0.5) * (1 - late) / 0.5
