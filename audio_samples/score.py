"""The Cinder Ferry: form, tempo and every note, in beats.

Bars count from 1 and hold four beats; a note's `beat` counts from 0 at the first downbeat.
Tempo is constant within a beat, so that every beat stands at an exact fraction of a second.
Drum patterns have sixteen steps a bar: X accented, x plain, o soft, - rest. Melodies are
`pitch/beats` words, with `-` as the pitch of a rest.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate

import numpy as np
from instruments import SEED, TAKES

TITLE = "The Cinder Ferry"
BEATS_PER_BAR = 4
LEAD_IN = Fraction(1, 2)  # [s] silence before the first downbeat
LEAD_OUT = Fraction(1)  # [s] silence after the last sound
SLOW, FAST = Fraction(100), Fraction(112)  # [beats a minute]
LAST_STROKE_BAR = 79


@dataclass(frozen=True, slots=True)
class Section:
    """A part of the form."""

    label: str
    first_bar: int
    n_bars: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """One note of one instrument."""

    voice: str
    beat: float
    length: float = 0.25  # [beats]
    pitch: int = 0
    level: float = 1.0
    pan: float = 0.0
    take: int = 0


SECTIONS = (
    Section("intro", 1, 8),
    Section("verse", 9, 16),
    Section("refrain", 25, 8),
    Section("verse", 33, 8),
    Section("refrain", 41, 8),
    Section("break", 49, 8),
    Section("drive", 57, 8),
    Section("refrain", 65, 8),
    Section("end", 73, 8),
)
N_BARS = SECTIONS[-1].first_bar + SECTIONS[-1].n_bars - 1
ACCELERANDO_BARS = (55, 56)  # the tempo climbs beat by beat to the faster one at bar 57


def beat_tempi() -> list[Fraction]:
    """Tempo of every beat of the track [beats a minute]."""
    first = (ACCELERANDO_BARS[0] - 1) * BEATS_PER_BAR
    last = ACCELERANDO_BARS[1] * BEATS_PER_BAR
    climb = [SLOW + (FAST - SLOW) * step / (last - first) for step in range(last - first)]
    return [SLOW] * first + climb + [FAST] * (N_BARS * BEATS_PER_BAR - last)


def beat_times() -> list[Fraction]:
    """Seconds of every beat, and of the end of the last one."""
    return list(accumulate((60 / tempo for tempo in beat_tempi()), initial=LEAD_IN))


def pitch_from_name(name: str) -> int:
    """MIDI note number of a name such as C#4; C4 is 60."""
    step = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}[name[0]]
    return step + name.count("#") - name.count("b") + 12 * (int(name[-1]) + 1)


CHORDS = {
    name: tuple(pitch_from_name(word) for word in words.split())
    for name, words in {
        "Dm": "A3 D4 F4",
        "F": "A3 C4 F4",
        "C": "G3 C4 E4",
        "G": "B3 D4 G4",
        "Am": "A3 C4 E4",
        "Gm": "Bb3 D4 G4",
        "Bb": "Bb3 D4 F4",
        "Eb": "Bb3 Eb4 G4",
        "A": "A3 C#4 E4",
    }.items()
}
ROOTS = {
    name: pitch_from_name(word)
    for name, word in {
        "Dm": "D2",
        "F": "F2",
        "C": "C2",
        "G": "G1",
        "Am": "A1",
        "Gm": "G1",
        "Bb": "Bb1",
        "Eb": "Eb2",
        "A": "A1",
    }.items()
}

INTRO_CHORDS = ["Dm", "Dm", "Dm", "Dm", "Dm", "Dm", "C", "C"]
VERSE_CHORDS = ["Dm", "Dm", "C", "G", "Dm", "Dm", "Am", "C"]
REFRAIN_CHORDS = ["Bb", "F", "C", "Dm", "Bb", "F", "Gm", "A"]
BREAK_CHORDS = ["Gm", "Gm", "Eb", "Eb", "Bb", "Bb", "A", "A"]
DRIVE_CHORDS = ["Dm", "Dm", "Eb", "Dm", "Dm", "Dm", "Eb", "A"]
END_CHORDS = ["Dm", "Dm", "C", "C", "Dm", "Dm"]

INTRO_MELODY = """-/4 -/4 D4/1.5 F4/.5 E4/1 D4/1 A3/4
D4/1.5 F4/.5 G4/1 A4/1 D4/4 E4/1.5 G4/.5 F4/1 E4/1 C4/2 D4/1 E4/1"""
VERSE_MELODY = """D5/1 A4/.5 D5/.5 E5/.5 F5/.5 E5/.5 D5/.5  C5/1 A4/.5 C5/.5 D5/1 A4/1
G4/1 C5/.5 E5/.5 D5/.5 C5/.5 G4/.5 A4/.5  B4/1 D5/.5 B4/.5 G4/2
D5/1 A4/.5 D5/.5 E5/.5 F5/.5 E5/.5 D5/.5  C5/.5 A4/.5 G4/.5 A4/1.5 D5/1
E5/1 C5/.5 A4/.5 C5/.5 E5/.5 D5/.5 C5/.5  G4/.5 A4/.5 C5/.5 D5/.5 E5/2"""
REFRAIN_MELODY = """F5/1.5 D5/.5 F5/1 G5/1  A5/2 G5/1 F5/1  G5/1.5 E5/.5 G5/1 E5/1
F5/1 E5/.5 D5/.5 A4/2  F5/1.5 D5/.5 F5/1 G5/1  A5/1 C6/1 A5/1 F5/1
G5/1.5 A5/.5 Bb5/1 G5/1  A5/2.5 E5/.5 C#5/1"""
REFRAIN_UNDER = """D5/1.5 Bb4/.5 D5/1 D5/1  F5/2 E5/1 C5/1  E5/1.5 C5/.5 E5/1 C5/1
D5/1 C5/.5 A4/.5 F4/2  D5/1.5 Bb4/.5 D5/1 D5/1  F5/1 A5/1 F5/1 C5/1
Bb4/1.5 D5/.5 G5/1 D5/1  E5/2.5 C#5/.5 A4/1"""
BREAK_MELODY = """D5/3 C5/1  Bb4/2 A4/1 G4/1  G4/3 Bb4/1  Eb5/3 D5/1
D5/2 F5/2  D5/3 C5/1  A4/1 A4/1 C#5/1 C#5/1  E5/1 E5/1 G5/1 A5/1"""
DRIVE_RIFFS = {
    "Dm": "D3/.75 D3/.75 F3/.5 D3/.5 G3/.75 F3/.25 D3/.5",
    "Eb": "Eb3/.75 Eb3/.75 G3/.5 Eb3/.5 Bb3/.75 G3/.25 F3/.5",
    "A": "A3/.75 A3/.75 G3/.5 E3/.5 C#3/.75 E3/.25 G3/.5",
}
END_MELODY = """D5/1 A4/.5 D5/.5 E5/.5 F5/.5 E5/.5 D5/.5  C5/1 A4/.5 C5/.5 D5/1 A4/1
G4/1 C5/.5 E5/.5 D5/.5 C5/.5 G4/.5 A4/.5  C5/1 E5/.5 C5/.5 G4/2
A4/1 D5/1 E5/1 F5/1  A5/.5 G5/.5 F5/.5 E5/.5 D5/.5 C5/.5 A4/.5 C5/.5"""

LEVELS = {"X": 1.0, "x": 0.75, "o": 0.45}
FRAME = {"frame low": "X-----x-X-------", "frame rim": "--x-o---o-o-x-o-"}
KIT = {
    "verse": {
        "kick": "X-----o-x-x-----",
        "snare": "----X-------X--o",
        "closed hat": "x-o-x-o-x-o-x-o-",
        "frame low": "o-----o-o-------",
    },
    "verse full": {
        "kick": "X-----o-x-x-----",
        "snare": "----X-------X--o",
        "closed hat": "xoo-xoo-xoo-xooo",
        "frame rim": "--x-----o-o-----",
        "shaker": "x-x-x-x-x-x-x-x-",
    },
    "refrain": {
        "kick": "X---X---X---X---",
        "snare": "----X-------X---",
        "clap": "----X-------X---",
        "closed hat": "o---o---o---o---",
        "open hat": "--x---x---x---x-",
        "shaker": "xoxoxoxoxoxoxoxo",
    },
    "break": {
        "frame low": "X---------x-----",
        "shaker": "x---x---x---x---",
        "frame rim": "--------o-----o-",
    },
    "drive": {
        "kick": "X---X---X---X---",
        "clap": "----X-------X---",
        "frame rim": "o-oxo-oxo-oxo-ox",
        "shaker": "x-x-x-x-x-x-x-x-",
    },
    "end": {
        "kick": "X-------x-------",
        "frame low": "X-----x-X-------",
        "frame rim": "--x-o---o-o-x-o-",
        "shaker": "x-x-x-x-x-x-x-x-",
    },
}
PANS = {"closed hat": 0.35, "open hat": 0.35, "shaker": -0.45, "frame rim": -0.2, "clap": 0.08}
TOMS = tuple(pitch_from_name(name) for name in ("A2", "F2", "D2"))


def first_beat(bar: int) -> float:
    """Beat on which a bar begins."""
    return float((bar - 1) * BEATS_PER_BAR)


def drummed(patterns: dict[str, str], bar: int, level: float = 1.0) -> Iterator[Note]:
    """One bar of drum patterns."""
    for voice, pattern in patterns.items():
        for step, mark in enumerate(pattern):
            if mark in LEVELS:
                beat = first_beat(bar) + step / 4
                yield Note(
                    voice=voice, beat=beat, level=level * LEVELS[mark], pan=PANS.get(voice, 0.0)
                )


def filled(bar: int, steps: str = "----x-o-X-xoXxxX", level: float = 1.0) -> Iterator[Note]:
    """A fill down the toms, from the left hand to the right."""
    for step, mark in enumerate(steps):
        if mark in LEVELS:
            which = min(2, step * 3 // 16)
            yield Note(
                voice="tom",
                beat=first_beat(bar) + step / 4,
                pitch=TOMS[which],
                level=level * LEVELS[mark],
                pan=0.5 * (which - 1),
            )


def sung(
    voice: str, melody: str, bar: int, level: float = 1.0, *, shift: int = 0, pan: float = 0.0
) -> Iterator[Note]:
    """A melody from the first beat of a bar on, moved by semitones."""
    beat = first_beat(bar)
    for word in melody.split():
        name, _, length = word.partition("/")
        if name != "-":
            accent = 1.0 if beat % 1 == 0 else 0.86
            yield Note(
                voice=voice,
                beat=beat,
                length=float(length),
                pitch=pitch_from_name(name) + shift,
                level=level * accent,
                pan=pan,
            )
        beat += float(length)


def held(voice: str, chords: list[str], bar: int, level: float = 1.0) -> Iterator[Note]:
    """Chords of one bar each."""
    for number, chord in enumerate(chords):
        for pitch in CHORDS[chord]:
            beat = first_beat(bar + number)
            yield Note(voice=voice, beat=beat, length=4.0, pitch=pitch, level=level)


def arpeggiated(
    chords: list[str], bar: int, order: str, level: float = 1.0, *, shift: int = 12
) -> Iterator[Note]:
    """Broken chords: one digit a sixteenth, 0 to 2 the chord's notes, 3 its lowest an octave up."""
    for number, chord in enumerate(chords):
        pitches = (*CHORDS[chord], CHORDS[chord][0] + 12)
        for step, digit in enumerate(order):
            if digit.isdigit():
                yield Note(
                    voice="pluck",
                    beat=first_beat(bar + number) + step / 4,
                    length=0.3,
                    pitch=pitches[int(digit)] + shift,
                    level=level * (1.0 if step % 4 == 0 else 0.7),
                    pan=-0.4 if step % 2 else 0.4,
                )


def walked(chords: list[str], bar: int, figure: str, level: float = 1.0) -> Iterator[Note]:
    """A bass figure over the roots: `step:semitones:beats` words, steps in sixteenths."""
    for number, chord in enumerate(chords):
        for word in figure.split():
            step, above, length = word.split(":")
            yield Note(
                voice="bass",
                beat=first_beat(bar + number) + int(step) / 4,
                length=float(length),
                pitch=ROOTS[chord] + int(above),
                level=level * (1.0 if step == "0" else 0.85),
            )


def echoed(notes: Iterator[Note], level: float = 0.33) -> Iterator[Note]:
    """Notes, each with an echo three sixteenths later on the other side."""
    for note in notes:
        yield note
        yield replace(note, beat=note.beat + 0.75, level=note.level * level, pan=-0.6)


def intro(bar: int) -> Iterator[Note]:
    """Drone and frame drum; plucked strings find the melody; a pulse joins after four bars."""
    for number in range(8):
        yield from drummed(FRAME, bar + number, 0.75 + 0.03 * number)
        yield Note(voice="drone", beat=first_beat(bar + number), length=4.2, pitch=38, level=0.8)
        yield Note(voice="drone", beat=first_beat(bar + number), length=4.2, pitch=45, level=0.5)
    yield from echoed(sung("pluck", INTRO_MELODY, bar, 0.9))
    for number in range(4, 8):
        yield from drummed({"kick": "x-------x-------", "shaker": "o-o-o-o-o-o-o-o-"}, bar + number)
    yield from arpeggiated(INTRO_CHORDS[4:], bar + 4, "0-1-2-1-3-1-2-1-", 0.3)
    yield from filled(bar + 7)
    yield Note(voice="swell", beat=first_beat(bar + 7), length=4.0, level=0.7)


def verse(bar: int, *, full: bool) -> Iterator[Note]:
    """Eight bars of the plucked tune over a dancing bass; the full one adds pads and sixteenths."""
    for number in range(8):
        yield from drummed(KIT["verse full" if full else "verse"], bar + number)
    yield from echoed(sung("pluck", VERSE_MELODY, bar, 1.0))
    yield from walked(VERSE_CHORDS, bar, "0:0:1.2 6:0:.4 8:7:.9 12:12:.4 14:7:.4")
    yield from arpeggiated(VERSE_CHORDS, bar, "0--1--2-0--1-2-1", 0.3, shift=0)
    if full:
        yield from held("pad", VERSE_CHORDS, bar, 0.7)
        yield from sung("pluck", VERSE_MELODY, bar, 0.4, shift=-12, pan=0.5)
        yield from filled(bar + 7)
        yield Note(voice="swell", beat=first_beat(bar + 7), length=4.0)


def refrain(bar: int, *, last: bool) -> Iterator[Note]:
    """The tune that returns, on the reed over four on the floor; the last time in two parts."""
    yield Note(voice="crash", beat=first_beat(bar))
    yield Note(voice="crash", beat=first_beat(bar + 4), level=0.6)
    for number in range(8):
        yield from drummed(KIT["refrain"], bar + number)
    yield from sung("reed", REFRAIN_MELODY, bar)
    yield from echoed(sung("pluck", REFRAIN_MELODY, bar, 0.45, pan=0.3))
    yield from held("pad", REFRAIN_CHORDS, bar, 1.0)
    yield from walked(
        REFRAIN_CHORDS, bar, "0:0:.45 2:0:.4 4:12:.45 6:0:.4 8:0:.45 10:0:.4 12:12:.45 14:7:.4"
    )
    yield from arpeggiated(REFRAIN_CHORDS, bar, "0123210123210123", 0.28)
    yield from filled(bar + 7, "--------X-xoXxxX")
    if last:
        yield from sung("reed", REFRAIN_UNDER, bar, 0.55, pan=-0.35)
        yield from sung("horns", REFRAIN_UNDER, bar, 0.4, shift=-12, pan=0.3)
        yield from filled(bar + 3, "--------x-xxX-X-", 0.8)


def middle(bar: int) -> Iterator[Note]:
    """The break: the floor drops out; in its last two bars drums gather and press the tempo on."""
    yield Note(voice="crash", beat=first_beat(bar), level=0.5)
    for number in range(6):
        yield from drummed(KIT["break"], bar + number, 0.8)
    yield from held("pad", BREAK_CHORDS, bar, 0.85)
    yield from sung("reed", BREAK_MELODY, bar, 0.52)
    yield from arpeggiated(BREAK_CHORDS[:6], bar, "0---1---2---3---", 0.7)
    yield from arpeggiated(BREAK_CHORDS[6:], bar + 6, "0-1-2-3-0-1-2-3-", 0.7)
    yield from walked(BREAK_CHORDS[:6], bar, "0:0:3.8", 0.8)
    yield from walked(BREAK_CHORDS[6:], bar + 6, "0:0:.9 4:0:.9 8:0:.9 12:0:.9", 0.8)
    yield from drummed({"frame low": "X---X---X---X---", "snare": "o---o---o-o-o-o-"}, bar + 6, 0.8)
    yield from drummed(
        {"kick": "X---X---X---X---", "frame low": "X---X---X---X---", "snare": "o-o-o-o-oooxxxxX"},
        bar + 7,
    )
    yield from filled(bar + 7, "x-x-x-x-xxxxXXXX")
    yield Note(voice="swell", beat=first_beat(bar + 6), length=8.0, level=1.1)


def drive(bar: int) -> Iterator[Note]:
    """Low horns and drums at the new tempo, no tune on top."""
    yield Note(voice="crash", beat=first_beat(bar))
    for number, chord in enumerate(DRIVE_CHORDS):
        yield from drummed(KIT["drive"], bar + number)
        yield from filled(bar + number, "x--o--x-o-x-o-xo", 0.6)
        yield from sung("horns", DRIVE_RIFFS[chord], bar + number, 1.0)
        yield from sung("bass", DRIVE_RIFFS[chord], bar + number, 0.9, shift=-12)
    for number in range(4, 8):
        yield from drummed({"open hat": "--x---x---x---x-"}, bar + number)
        yield from sung(
            "pluck", DRIVE_RIFFS[DRIVE_CHORDS[number]], bar + number, 0.7, shift=24, pan=0.3
        )
    yield from drummed({"snare": "--------o-o-xxxX"}, bar + 7)
    yield Note(voice="swell", beat=first_beat(bar + 7), length=4.0)


def end(bar: int) -> Iterator[Note]:
    """The plucked tune comes home, all join for a run, one stroke, and it rings away."""
    yield Note(voice="crash", beat=first_beat(bar), level=0.6)
    for number in range(5):
        yield from drummed(KIT["end"], bar + number)
        yield Note(voice="drone", beat=first_beat(bar + number), length=4.2, pitch=38, level=0.7)
    yield from drummed({"kick": "X---X---X---X---", "snare": "o-o-o-o-o-o-xxxX"}, bar + 5)
    yield from filled(bar + 5, "--------XxxxXxXX")
    yield from echoed(sung("pluck", END_MELODY, bar, 1.0))
    yield from sung("reed", " ".join(END_MELODY.split()[-12:]), bar + 4, 0.7)
    yield from held("pad", END_CHORDS, bar, 0.6)
    yield from walked(END_CHORDS, bar, "0:0:1.4 6:0:.4 8:7:.9 12:0:.9")
    yield from struck(bar + 6)


def struck(bar: int) -> Iterator[Note]:
    """The last stroke, on the first beat of a bar."""
    beat = first_beat(bar)
    for voice in ("kick", "crash", "frame low", "snare"):
        yield Note(voice=voice, beat=beat)
    yield Note(voice="tom", beat=beat, pitch=TOMS[2])
    yield Note(voice="bass", beat=beat, length=5.0, pitch=26)
    yield Note(voice="drone", beat=beat, length=6.0, pitch=38, level=0.7)
    for number, name in enumerate(("D4", "A4", "D5", "F5", "A5", "D6")):
        yield Note(
            voice="pluck", beat=beat + 0.02 * number, length=4.0, pitch=pitch_from_name(name)
        )
    for pitch in CHORDS["Dm"]:
        yield Note(voice="pad", beat=beat, length=5.5, pitch=pitch, level=0.8)


def composed() -> list[Note]:
    """Every note of the track in order of time, with the small unevenness of hands."""
    notes = [
        *intro(1),
        *verse(9, full=False),
        *verse(17, full=True),
        *refrain(25, last=False),
        *verse(33, full=True),
        *refrain(41, last=False),
        *middle(49),
        *drive(57),
        *refrain(65, last=True),
        *end(73),
    ]
    notes.sort(key=lambda note: (note.beat, note.voice, note.pitch, note.pan, note.level))
    uneven = 1.0 + 0.06 * np.random.default_rng(SEED).standard_normal(len(notes))
    used: Counter[str] = Counter()
    played = []
    for note, factor in zip(notes, uneven.tolist(), strict=True):
        take = used[note.voice] % TAKES
        used[note.voice] += 1
        swing = 0.03 if round(note.beat * 4) % 2 and note.beat * 4 % 1 == 0 else 0.0
        played.append(replace(note, beat=note.beat + swing, level=note.level * factor, take=take))
    return played
