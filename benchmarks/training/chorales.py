"""Makes up pieces without drums that the other styles lack: hymns and motets for voices, and figuration for one instrument.

Drawn from habits of common practice: a hymn's phrases begin with an upbeat and close on a strong beat, harmony moves to the strong beat
and may stay from it, not into it; a prelude breaks each chord in one figure all through. Moments are as in `compose`.
"""

import numpy as np
from compose import SCALES, Note, Piece, Rng

_NEXT = {  # degrees that follow a degree, by habit
    0: [3, 4, 5, 1, 0, 2], 1: [4, 4, 6, 3], 2: [5, 3, 0], 3: [4, 0, 1, 4], 4: [0, 0, 5, 3], 5: [1, 3, 4, 2], 6: [0, 0, 4],
}  # fmt: skip
_FIGURES = [(0, 2, 4, 2), (0, 4, 2, 4), (0, 2, 4, 7), (7, 4, 2, 0), (0, 2, 4, 7, 4, 2), (0, 4, 7, 9, 7, 4), (0, 2, 4, 2, 4, 7, 4, 2),
            (0, 2, 4, 7, 9, 4, 7, 9), (0, 2, 4, 7, 9, 7, 4, 2)]  # fmt: skip


def _tempo(rng: Rng, centre: float, low: float, high: float) -> float:
    return float(np.clip(centre * np.exp(rng.normal(0, 0.24)), low, high))


def _pitch(key: int, scale: tuple, degree: int, octave: int) -> int:
    up, step = divmod(degree, 7)
    return key + 12 * (octave + 1 + up) + scale[step]


# ---------------------------------------------------------------- voices
def hymn(rng: Rng) -> Piece:
    """Four voices in phrases, together or each in its own rhythm."""
    metre = int(rng.choice([4, 3, 2], p=[0.68, 0.2, 0.12]))
    piece = Piece(metre, 2, _tempo(rng, 84, 46, 140), 0, style="score")
    piece.pickup = float(rng.choice([0, 1, 2 if metre == 4 else 1], p=[0.3, 0.6, 0.1]))
    scale = SCALES[
        str(rng.choice(["major", "minor", "dorian", "mixolydian"], p=[0.45, 0.3, 0.15, 0.1]))
    ]
    key = int(rng.integers(0, 12))
    apart = float(
        rng.choice([0.0, 0.3, 0.6], p=[0.5, 0.25, 0.25])
    )  # how much voices move on their own
    bars = int(rng.choice([2, 4, 3], p=[0.6, 0.3, 0.1]))
    phrases = [_phrase(rng, piece, scale, key, bars, apart) for _ in range(int(rng.integers(2, 6)))]
    order = str(rng.choice(["0101", "00112", "0123", "001", "01201"]))
    wanted = rng.uniform(45, 80) * piece.bpm / 60
    while piece.bars * metre < wanted:
        for name in order:
            at = piece.bars * metre
            piece.notes += [
                n._replace(start=n.start + at) for n in phrases[int(name) % len(phrases)]
            ]
            piece.bars += bars
    return piece


def _phrase(rng: Rng, piece: Piece, scale: tuple, key: int, bars: int, apart: float) -> list[Note]:
    """One phrase from its upbeat to where the next one's begins."""
    metre, upbeat = piece.metre, round(piece.pickup)
    total = bars * metre  # beats, the first `upbeat` of them before bar 1 of the phrase
    strong = [
        (i - upbeat) % metre == 0 or (metre == 4 and (i - upbeat) % metre == 2)
        for i in range(total)
    ]
    last = total - (upbeat or 0) - int(rng.integers(1, metre + 1)) + upbeat
    last = max(i for i in range(last + 1) if strong[i]) if any(strong[: last + 1]) else total - 1
    slow = rng.random() < 0.35  # harmony by the half bar or bar
    degrees = [int(rng.choice([0, 0, 4]))]
    for i in range(1, total):
        stays = 0.75 if slow and not strong[i] else 0.0 if strong[i] else 0.3
        degrees.append(degrees[-1] if rng.random() < stays else int(rng.choice(_NEXT[degrees[-1]])))
    close = int(rng.choice([0, 0, 4]))
    degrees[last] = close
    if last:
        degrees[last - 1] = 4 if close == 0 else int(rng.choice([0, 1, 3]))
    notes: list[Note] = []
    top = int(rng.choice([2, 4, 7]))
    for voice, (octave, role) in enumerate(((4, "lead"), (3, "alto"), (3, "inner"), (2, "bass"))):
        near = (top, 2, -1, 0)[voice]
        line = []
        for i in range(last + 1):
            near = _nearest(rng, degrees[i], near, bass=role == "bass")
            line.append(near)
        notes += _sung(
            rng,
            line,
            strong,
            (octave, role, key, scale),
            apart if voice else apart * 0.7,
            total - last,
        )
    return [n._replace(start=n.start - upbeat) for n in notes]


def _nearest(rng: Rng, degree: int, near: int, *, bass: bool) -> int:
    """The chord's note for a voice that was at `near`."""
    if bass and rng.random() < 0.75:
        return (
            min((degree - 7, degree, degree - 14), key=lambda d: (abs(d - near), d))
            if near
            else degree % 7
        )
    options = sorted(
        (degree + k + o for k in (0, 2, 4) for o in (-14, -7, 0, 7)),
        key=lambda d: (abs(d - near), d),
    )
    return options[0] if rng.random() < 0.6 else options[1]


def _sung(
    rng: Rng, line: list[int], strong: list[bool], voice: tuple, apart: float, held: int
) -> list[Note]:
    """The notes of one voice: tied, delayed and passing ones included; the last is held."""
    octave, role, key, scale = voice
    passing = float(rng.uniform(0.05, 0.4))
    out: list[list[float]] = []
    for i, degree in enumerate(line):
        pitch = _pitch(key, scale, degree, octave)
        tied = out and out[-1][2] == pitch and not strong[i] and rng.random() < 0.5
        if tied or (out and not strong[i] and rng.random() < apart * 0.7):
            out[-1][1] += 1.0  # the note goes on
        elif out and strong[i] and i < len(line) - 1 and rng.random() < 0.1 + apart * 0.3:
            out[-1][1] += 0.5  # a suspension: the note before is held into the strong beat
            out.append([i + 0.5, 0.5, pitch])
        else:
            out.append([float(i), 1.0, pitch])
        if (
            i + 1 < len(line)
            and out[-1][0] == i
            and abs(line[i + 1] - degree) == 2
            and rng.random() < passing
        ):
            out[-1][1] = 0.5
            out.append([i + 0.5, 0.5, _pitch(key, scale, (degree + line[i + 1]) // 2, octave)])
    out[-1][1] += max(held - 1, 0)
    level = {"lead": 88, "bass": 82}.get(role, 76)
    return [Note(s, d * 0.97, int(p), int(rng.normal(level, 5)), role) for s, d, p in out]


# ---------------------------------------------------------------- figuration
def figured(rng: Rng) -> Piece:
    """Broken chords in one figure all through, with or without a bass and a slow tune."""
    metre, division = [(4, 2), (3, 2), (2, 2), (2, 3), (4, 3)][
        int(rng.choice(5, p=[0.52, 0.2, 0.1, 0.1, 0.08]))
    ]
    piece = Piece(metre, division, _tempo(rng, 76, 44, 130), 0, style="score")
    scale = SCALES[str(rng.choice(["major", "minor", "harmonic"], p=[0.5, 0.35, 0.15]))]
    key, octave = int(rng.integers(0, 12)), int(rng.choice([3, 4]))
    step = 1 / 3 if division == 3 else float(rng.choice([0.25, 0.5], p=[0.75, 0.25]))
    span = metre / 2 if metre == 4 and rng.random() < 0.55 else float(metre)  # how long a figure is
    figure = list(_FIGURES[int(rng.integers(len(_FIGURES)))])
    pace = int(rng.choice([1, 2], p=[0.8, 0.2]))  # bars a chord
    bass = str(rng.choice(["held", "struck", "none"], p=[0.45, 0.25, 0.3]))
    tune = rng.random() < 0.4
    wanted = max(8, int(rng.uniform(45, 80) * piece.bpm / 60 / metre))
    form = [_chords(rng, 8) for _ in range(int(rng.integers(2, 5)))]
    late = bool(bass != "none" and rng.random() < 0.35)  # the figure enters after the bass
    velocity = float(rng.uniform(58, 92))
    while piece.bars < wanted:
        degree = form[piece.bars // 8 % len(form)][piece.bars // pace % 8]
        at = float(piece.bars * metre)
        for begin in np.arange(0, metre - 1e-6, span):
            count = round(span / step)
            for i in range(int(late), count):
                pitch = _pitch(key, scale, degree + figure[(i - int(late)) % len(figure)], octave)
                v = int(rng.normal(velocity, 4) + 6 * (i == 0))
                piece.notes.append(Note(at + begin + i * step, step * 1.1, pitch, v, "arp"))
            if bass == "held" or (bass == "struck" and not begin):
                length = span if bass == "held" else 1.0
                piece.notes.append(
                    Note(
                        at + begin, length, _pitch(key, scale, degree, 2), int(velocity + 6), "bass"
                    )
                )
        if tune and rng.random() < 0.85:
            pitch = _pitch(key, scale, degree + int(rng.choice([0, 2, 4])), 5)
            piece.notes.append(Note(at, metre * 0.95, pitch, int(velocity + 10), "lead"))
        piece.bars += 1
    return piece


def _chords(rng: Rng, count: int) -> list[int]:
    """Degrees of so many chords, from the first degree to its dominant or home."""
    found = [0]
    while len(found) < count:
        found.append(int(rng.choice(_NEXT[found[-1]])))
    return found


__all__ = ["figured", "hymn"]
