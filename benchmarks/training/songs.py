"""Makes up songs whose form is known exactly: intro, verses, refrains and breaks of `compose`'s material.

A part is its material of 4 or 8 bars, over and over; it returns with other instruments now and then. Forms are
drawn from habits of popular and dance music (common practice). Half-way through a part an instrument may
come in: a phrase begins there, but no part.
"""

from dataclasses import dataclass

import numpy as np
from compose import SCALES, Hit, Piece, Rng, Section, tempo_of

FORMS = [  # name and length in eighths of a usual part's bars
    "i4 a16 b16 a16 b16 c8 b16", "i8 a16 b8 a16 b8 c16 b16", "a16 b16 a16 b16", "a8 b8 a8 b8 c8 b8",
    "i8 a16 b16 c16 b16 o8", "a16 b16 c16 a16", "i4 a8 b8 a8 b8 c8 b16 o4", "a32 b16 a32", "i8 a24 c8 a24 o8",
    "i8 b16 a16 b16 c16 b16", "a16 a16 b16 a16", "a12 b8 a12 b8 c12 b8",
]  # fmt: skip


@dataclass(frozen=True)
class Form:
    """Where each part begins, in bars from the first, and its name: `a` and `a` are the same music."""

    starts: tuple[int, ...]
    names: tuple[str, ...]


def song(rng: Rng, form: str = "") -> tuple[Piece, Form]:
    """A song of four beats a bar, or three, and its form: one of `FORMS` unless it is given, such as "a48"."""
    style = str(rng.choice(["tracker", "band"]))
    metre = 4 if rng.random() < 0.85 else 3
    piece = Piece(metre, 2, float(np.clip(tempo_of(rng, style, 2), 84, 170)), 0, style=style)
    scale = SCALES[str(rng.choice(["major", "minor", "dorian", "mixolydian"]))]
    key, phrase = int(rng.integers(12)), int(rng.choice([4, 8]))
    made = {name: Section(rng, piece, scale, key, phrase, style) for name in "abc"}
    _shared(rng, made)
    order = (form or str(rng.choice(FORMS))).split()
    starts, names = [], []
    for word in order:
        name, bars = word[0], int(word[1:])
        starts.append(piece.bars)
        names.append(name if name in made else "a")
        _part(rng, piece, made[names[-1]], bars, thin=name in "io")
    return piece, Form(tuple(starts), tuple(names))


def _shared(rng: Rng, made: dict[str, Section]) -> None:
    """Drums, bass or pad that go on through several parts, as a band's do."""
    for name in "bc":
        if rng.random() < 0.5:
            made[name].drums = made["a"].drums
        if rng.random() < 0.2:
            made[name].chords = made["a"].chords
            for role in ("bass", "pad"):
                if role in made["a"].parts:
                    made[name].parts[role] = made["a"].parts[role]


def _part(rng: Rng, piece: Piece, of: Section, bars: int, *, thin: bool) -> None:
    """Append a part; a thin one, as an intro is, lacks the tune or the drums."""
    roles = [r for r in of.parts if not (thin and r == "lead") and rng.random() >= 0.12]
    roles = roles or list(of.parts)[:1]
    drums = bool(of.drums) and rng.random() >= (0.6 if thin else 0.08)
    late = str(rng.choice(roles)) if len(roles) > 2 and bars >= 16 and rng.random() < 0.25 else ""
    crash = drums and rng.random() < 0.4
    first = piece.bars
    for bar in range(bars):
        at, inside = piece.bars * piece.metre, bar % of.phrase
        for role in roles:
            if role != late or bar >= bars // 2:
                piece.notes += [n._replace(start=at + n.start) for n in of.parts[role][inside]]
        if drums:
            piece.hits += [h._replace(start=at + h.start) for h in of.drums[inside]]
            if bar == bars - 1 and rng.random() < 0.4:
                fill = np.arange(piece.metre - 1, piece.metre, 0.25)
                piece.hits += [Hit(at + float(x), int(rng.choice([38, 45, 41])), 96) for x in fill]
        piece.bars += 1
    if crash:
        piece.hits.append(Hit(float(first * piece.metre), 49, 100))
