"""Builds the validation corpus of music with exact beats out of packages: modules, MIDI pieces and scores.

    python benchmarks/validation.py OUT

Needs Debian's libopenmpt0, fluidsynth, fluid-soundfont-gm and timgm6mb-soundfont, apt-get to fetch the
packages named below, and PyPI's music21, mido, librosa and soundfile. Writes OUT/audio/NAME.ogg and
OUT/truth/NAME.json, the first 90 s of each; what is there already is not made again.

Truth of a module: the player's own rows (a beat every 4 rows, twice as many where that would make more
than 180 beats a minute, and again; a bar every 4 beats), pattern changes as section borders. Of a MIDI
piece: the tempo and time-signature events of the file, 4/4 where it has none (the default of Standard MIDI
Files 1.0). Of a score: the notated metre under a written tempo curve. A piece is left out, and said to be,
where its metre changes or its notes do not sit on the count. Of the MIDI pieces those are named whose bars,
by their repeats, bass and changes of harmony, begin where the file says; two modules in threes were found
the same way (NOT_AS_COUNTED).
"""

import ctypes
import hashlib
import io
import json
import random
import re
import struct
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from functools import partial
from itertools import pairwise
from pathlib import Path
from typing import Any, NamedTuple

import librosa
import mido
import numpy as np
import soundfile
from music21 import converter, corpus

RATE = 44100
LONGEST = 90.0  # s
FONTS = ["/usr/share/sounds/sf2/FluidR3_GM.sf2", "/usr/share/sounds/sf2/TimGM6mb.sf2"]
MODULES = {  # Debian package: at most so many of its modules
    "ceferino-data": 1, "gweled": 1, "ironseed-data": 4, "jumpnbump": 3, "njam-data": 3, "pachi-data": 3,
    "pekka-kana-2-data": 6, "powermanga-data": 3, "rafkill-data": 5,
    "tomatoes-data": 1, "tuxmath-data": 3,
}  # fmt: skip
MARKS = {  # of FastTracker 2, Impulse Tracker, Scream Tracker 3 and Protracker files, and where they stand
    b"Extended Module: ": 0, b"IMPM": 0, b"SCRM": 44, b"M.K.": 1080, b"6CHN": 1080, b"8CHN": 1080,
}  # fmt: skip
MIDIS = {  # Debian package: its pieces
    "freedoom": "d_ampie d_betwee d_count2 d_ddtblu d_dead2 d_e1m3 d_e1m6 d_e1m7 d_e1m8 d_e2m2 d_e2m3 "
    "d_e3m3 d_e3m6 d_messag d_tense",
    "openttd-openmsx": "chemistry_lab linns_basket midnight_snow_run mighty_giant_run "
    "mosey_along_redfarn run_for_your_life ttsong_iv_imuh3",
}
NOT_AS_COUNTED = {"pekka-kana-2-data-intro", "pekka-kana-2-data-map"}  # both in threes
TUNES = [  # collection of music21, the M: field of its tunes, how many
    ("airdsAirs", "6/8", 2), ("airdsAirs", "2/4", 2), ("airdsAirs", "C", 2), ("airdsAirs", "3/4", 2),
    ("airdsAirs", "9/8", 1), ("essenFolksong", "3/4", 3), ("essenFolksong", "6/8", 2),
    ("essenFolksong", "2/4", 2), ("essenFolksong", "4/4", 2), ("miscFolk", "3/4", 1),
    ("miscFolk", "6/8", 1), ("miscFolk", "2/4", 1), ("miscFolk", "C", 1),
]  # fmt: skip
SCORES = [  # path in music21's corpus, beats a minute, General MIDI programs
    ("bach/bwv310", 84, [19]), ("bach/bwv347", 92, [52]), ("beach/prayer_of_a_tired_child", 84, [0]),
    ("johnson_j_r/lift_every_voice", 96, [0]), ("leadSheet/fosterBrownHair", 92, [24]),
    ("liliuokalani/aloha_oe", 88, [24]), ("schubert/Lindenbaum", 80, [71, 0]),
    ("schumann_clara/polonaise_op1n1", 104, [0]), ("schumann_clara/polonaise_op1n3", 100, [0]),
    ("schumann_robert/opus41no1/movement2", 116, [40, 40, 41, 42]),
    ("schumann_robert/opus48no2", 72, [52, 0]), ("verdi/laDonnaEMobile", 138, [65, 0]),
]  # fmt: skip
Events = list[tuple[float, mido.Message]]  # (s, message)
Piece = tuple[np.ndarray, "Count"]  # sound (samples, 2) and its count


class LeftOutError(ValueError):
    """A piece without exact truth; the message says why."""


class Count(NamedTuple):
    """What is known of a piece: moments in seconds."""

    beats: list[float]
    downbeats: list[float]
    metre: int
    sections: list[tuple[float, str]]
    kind: str


class Player:
    """Draws and soundfont that depend on the name of a piece alone, and a folder to work in."""

    def __init__(self, name: str, work: Path) -> None:
        self.rng = np.random.default_rng(list(hashlib.sha256(name.encode()).digest()[:4]))
        self.font = FONTS[sum(name.encode()) % len(FONTS)]
        self.work = work

    def sound(self, events: Events) -> np.ndarray:
        """Sound (samples, 2) of messages at seconds, through a clock of 960 ticks a second."""
        track, now = mido.MidiTrack(), 0
        end = max(s for s, _ in events) + 0.5
        still = [(end, mido.Message("control_change", channel=c, control=120)) for c in range(16)]
        for s, message in sorted(events + still, key=lambda e: e[0]):
            tick = max(now, round(s * 960))
            track.append(message.copy(time=tick - now))
            now = tick
        midi, wav = self.work / "piece.mid", self.work / "piece.wav"
        mido.MidiFile(ticks_per_beat=480, tracks=[track]).save(midi)
        call = ["fluidsynth", "-niq", "-g", "0.5", "-r", str(RATE), "-F", wav, self.font, midi]
        subprocess.run(call, check=True, capture_output=True)
        return soundfile.read(wav, dtype="float32", always_2d=True)[0]


def shuffled(things: list) -> list:
    """The same order on every run."""
    return random.Random(7).sample(things, len(things))  # noqa: S311  # no secret


def unpacked(package: str, work: Path) -> list[Path]:
    """Files of a Debian package."""
    (folder := work / package).mkdir()
    subprocess.run(["apt-get", "download", "-qq", package], cwd=folder, check=True)  # noqa: S607
    for deb in folder.glob("*.deb"):
        subprocess.run(["dpkg-deb", "-x", deb, folder], check=True)  # noqa: S607
        deb.unlink()
    return sorted(p for p in folder.rglob("*") if p.is_file() and not p.is_symlink())


# ---------------------------------------------------------------- modules
def modules(path: Path) -> Iterator[tuple[str, bytes]]:
    """Name and bytes of the modules that a file is or, in a game's data file, holds."""
    data = path.read_bytes()
    for mark, at in MARKS.items():
        if data[at : at + len(mark)] == mark:
            yield path.stem, data
            return
        if path.suffix == ".dat":
            for n, found in enumerate(re.finditer(re.escape(mark), data)):
                if found.start() >= at:
                    yield f"{path.stem}-{n}", data[found.start() - at :]


def played_module(data: bytes) -> tuple[np.ndarray, list[tuple[float, int, int, int]]]:
    """Sound (samples, 2) and the player's rows: (s, order, row, pattern)."""
    lib = ctypes.CDLL("libopenmpt.so.0")
    lib.openmpt_module_create_from_memory2.restype = ctypes.c_void_p
    made = lib.openmpt_module_create_from_memory2(data, ctypes.c_size_t(len(data)), *[None] * 7)
    if not made:
        raise LeftOutError("unreadable")
    module = ctypes.c_void_p(made)
    get = "openmpt_module_get_current_"
    order, row, pattern = (partial(lib[get + x], module) for x in ("order", "row", "pattern"))
    read = partial(lib.openmpt_module_read_interleaved_float_stereo, module, RATE)
    block = np.zeros((64, 2), np.float32)
    at = block.ctypes.data_as(ctypes.c_void_p)
    sound, rows, n = [], [], 0
    while n < LONGEST * RATE and (got := read(ctypes.c_size_t(len(block)), at)):
        if not rows or rows[-1][1:3] != (order(), row()):
            rows.append((n / RATE, order(), row(), pattern()))
        sound.append(block[:got].copy())
        n += got
    lib.openmpt_module_destroy(module)
    return np.concatenate(sound), rows


def module_piece(_: Player, data: bytes) -> Piece:
    """Sound of a module and its count."""
    sound, rows = played_module(data)

    def beats(step: int) -> list[float]:
        return [t for t, _, row, _ in rows if row % step == 0]

    step = 4
    while np.median(np.diff(beats(step))) < 60 / 180:
        step *= 2
    gaps = np.diff(beats(step))
    if gaps.max() > 2 * gaps.min() or not set(beats(4 * step)[:-1]) <= set(beats(step)[::4]):
        raise LeftOutError("bars or beats of other lengths")
    new = [True] + [a[1] != b[1] for a, b in pairwise(rows)]
    sections = [(r[0], f"p{r[3]}") for r, is_new in zip(rows, new, strict=True) if is_new]
    return sound, Count(beats(step), beats(4 * step), 4, sections, "module")


# ---------------------------------------------------------------- MIDI pieces
def lumps(path: Path) -> Iterator[tuple[str, bytes]]:
    """MIDI pieces that a file is or, in a game's WAD, holds (header and directory: 'doom' WAD format)."""
    data = path.read_bytes()
    if data[:4] == b"MThd":
        yield path.stem, data
    if data[:4] in {b"IWAD", b"PWAD"}:
        count, at = struct.unpack("<ii", data[4:12])
        for n in range(count):
            start, size, name = struct.unpack_from("<ii8s", data, at + 16 * n)
            if data[start : start + 4] == b"MThd":
                yield name.rstrip(b"\0").decode(), data[start : start + size]


def midi_piece(player: Player, data: bytes) -> Piece:
    """Sound of a MIDI file and its count."""
    midi = mido.MidiFile(file=io.BytesIO(data), clip=True)
    events: Events = []
    metres, moments, onsets = set(), {}, []
    now, quarter, tempo = 0.0, 0.0, 500000  # 120 a minute, the default of Standard MIDI Files
    for message in mido.merge_tracks(midi.tracks):
        quarter += message.time / midi.ticks_per_beat
        now += mido.tick2second(message.time, midi.ticks_per_beat, tempo)
        if now > LONGEST + 2:
            break
        if message.type == "set_tempo":
            tempo, moments[quarter] = message.tempo, now
        elif message.type == "time_signature":
            metres.add((message.numerator, message.denominator))
        elif not message.is_meta and message.type != "sysex":
            events.append((now, message))
            if message.type == "note_on" and message.velocity:
                onsets.append(quarter)
    moments |= {0.0: 0.0, quarter: now}
    metre, step = counted(metres or {(4, 4)})
    near = [np.mean(np.abs((np.array(onsets) * n + 0.5) % 1 - 0.5) < n / 24) for n in (3, 4)]
    if max(near) < 0.75:  # on triplets or sixteenths, 1/24 quarter wide
        raise LeftOutError(f"notes beside the grid ({max(near):.2f})")
    q, t = zip(*sorted(moments.items()), strict=True)
    beats = np.interp(np.arange(0, quarter, step), q, t).tolist()
    if np.median(np.diff(beats)) < 60 / 180:
        raise LeftOutError("more than 180 beats a minute")
    return player.sound(events), Count(beats, beats[::metre], metre, [], "midi")


def counted(signs: set[tuple[int, int]]) -> tuple[int, float]:
    """Beats a bar and quarters a beat of a piece with one metre: 6/8 has two beats of three eighths."""
    if len(signs) != 1:
        raise LeftOutError("changes metre" if signs else "no metre")
    ((upper, lower),) = signs
    if upper in {6, 9, 12} and lower == 8:
        return upper // 3, 1.5
    if upper not in {2, 3, 4}:
        raise LeftOutError(f"metre {upper}/{lower}")
    return upper, 4 / lower


# ---------------------------------------------------------------- scores
class Tune(NamedTuple):
    """Notes of a score and its count in quarters: the first full bar starts at `pickup`."""

    notes: list[tuple[float, float, int, int]]  # start, length, MIDI pitch, part
    length: float
    pickup: float
    metre: int
    beat: float


def tune(score: Any) -> Tune:
    """What a score of music21 says, if every bar line of its count is a bar line of the score."""
    parts = list(score.parts) or [score]
    notes = [
        (float(n.offset), float(n.quarterLength), p.midi, i)
        for i, part in enumerate(parts)
        for n in part.stripTies().flatten().notes
        if n.quarterLength > 0
        for p in n.pitches
    ]
    bars = list(parts[0].getElementsByClass("Measure"))
    signs = parts[0].recurse().getElementsByClass("TimeSignature")
    metre, beat = counted({(s.numerator, s.denominator) for s in signs})
    starts = np.array([float(m.offset) for m in bars])
    length = float(bars[-1].offset + bars[-1].duration.quarterLength)
    pickup = starts[1] if len(bars) > 1 and starts[1] < metre * beat - 1e-6 else 0.0
    wanted = np.arange(pickup, length - 1e-6, metre * beat)
    if np.abs(wanted[:, None] - starts).min(axis=1).max() > 1e-6:
        raise LeftOutError("bars of other lengths")
    return Tune(notes, length, pickup, metre, beat)


def repeated(one: Tune, seconds: float, bpm: float) -> Tune:
    """A tune over and over for so long, its count going on; a bass plays each bar's lowest note and its fifth."""
    bar = one.metre * one.beat
    if abs(one.length / bar - round(one.length / bar)) > 1e-6:
        raise LeftOutError("last bar and upbeat make no bar")
    times = int(np.ceil(seconds / (one.length / one.beat * 60 / bpm)))
    notes = [(s + r * one.length, *of) for r in range(times) for s, *of in one.notes]
    half = one.beat * ((one.metre + 1) // 2)
    starts = np.array([n[0] for n in notes])
    for at in np.arange(one.pickup, times * one.length - 1e-6, bar):
        inside = [notes[i][2] for i in np.flatnonzero((starts >= at) & (starts < at + bar))]
        if inside:
            low = min(inside) % 12
            notes.append((at, half * 0.9, 36 + low, 1))
            notes.append((at + half, (bar - half) * 0.9, 36 + (low + 7) % 12, 1))
    return one._replace(notes=notes, length=times * one.length)


def tempo_curve(one: Tune, bpm: float, kind: str, rng: np.random.Generator) -> np.ndarray:
    """Quarters and their seconds (2, 24 a quarter): steady, drifting or slowing by 18 % every 32 beats."""
    q, beat = np.arange(0, one.length + 8, 1 / 24), one.beat
    pace = np.ones_like(q)
    if kind == "drift":
        walk = np.cumsum(rng.normal(size=len(q)))
        walk = (walk - walk.mean()) / (walk.std() + 1e-9)
        pace = np.exp(0.04 * np.convolve(walk, np.ones(192) / 192, "same"))
    if kind == "rit":
        pace = 1 + 0.03 * np.sin(2 * np.pi * q / (16 * beat))
        for s in np.arange(32 * beat, one.length, 32 * beat):
            pace *= 1 - 0.18 * np.clip((q - s + 4 * beat) / (4 * beat), 0, 1) * (q < s)
    seconds = 60 / (bpm * pace) / beat / 24
    return np.array([q, 0.5 + np.concatenate([[0], np.cumsum(seconds[:-1])])])


def drums(beats: np.ndarray, place: np.ndarray, metre: int, parts: int) -> Events:
    """A hat on every part of a beat, bass drum on the first (and third of four), snare on the others."""
    strokes = []
    lengths = np.diff(beats, append=2 * beats[-1] - beats[-2])
    for b, p, length in zip(beats, place, lengths, strict=True):
        strokes.append((b, *((36, 105) if p == 0 or (metre, p) == (4, 2) else (38, 95))))
        strokes += [(b + length * i / parts, 42, 55 if i else 70) for i in range(parts)]
    on = partial(mido.Message, "note_on", channel=9)
    return [(t, on(note=key, velocity=velocity)) for t, key, velocity in strokes]


def score_piece(player: Player, one: Tune, bpm: float, drummed: bool, programs: list[int]) -> Piece:
    """Sound of a score under a tempo curve (onsets scatter by 6 ms) and its count."""
    rng = player.rng
    kind = ["steady", "drift", "rit"][rng.integers(3)]
    q, t = tempo_curve(one, bpm, kind, rng)
    at = partial(np.interp, xp=q, fp=t)
    quarters = np.arange(one.pickup % one.beat, one.length - 1e-6, one.beat)
    place = np.round((quarters - one.pickup) / one.beat).astype(int) % one.metre
    beats = at(quarters)
    change = partial(mido.Message, "program_change")
    events = [(0.0, change(channel=c, program=programs[c % len(programs)])) for c in range(8)]
    for start, length, pitch, part in one.notes:
        on = max(0.0, at(start) + rng.normal(0, 0.006))
        off = max(at(start + length * 0.92), on + 0.03)
        voice = {"channel": part % 8, "note": pitch}
        velocity = int(np.clip(rng.normal(82, 8), 40, 120))
        events.append((on, mido.Message("note_on", velocity=velocity, **voice)))
        events.append((off, mido.Message("note_off", **voice)))
    if drummed:
        events += drums(beats, place, one.metre, 3 if one.beat == 1.5 else 2)
    kind = f"score-{kind}" + "-drums" * drummed
    count = Count(beats.tolist(), beats[place == 0].tolist(), one.metre, [], kind)
    return player.sound(events), count


def folk_piece(player: Player, text: str) -> Piece:
    """Sound and count of an ABC tune at 96 to 132 beats a minute, some with drums, all with a bass."""
    bpm, drummed = float(player.rng.uniform(96, 132)), bool(player.rng.random() < 0.6)
    programs = [[73, 32], [40, 32], [21, 32], [24, 32]][player.rng.integers(4)]
    one = repeated(tune(converter.parse(text, format="abc")), 50, bpm)
    return score_piece(player, one, bpm, drummed, programs)


def corpus_piece(player: Player, path: str, bpm: float, programs: list[int]) -> Piece:
    """Sound and count of a score of music21's corpus."""
    return score_piece(player, tune(corpus.parse(path)), bpm, False, programs)


def tunes(collection: str, metre: str) -> Iterator[tuple[str, str]]:
    """Name and ABC text of the tunes of a collection whose only metre is this."""
    found = []
    for path in sorted(p for p in corpus.getPaths() if p.parent.name == collection):
        for text in re.split(r"(?m)^(?=X:)", path.read_text("utf-8", "replace"))[1:]:
            if re.findall(r"M: *([^\s\]]+)", text) == [metre]:
                number = re.match(r"X: *(\d+)", text)
                found.append((f"{path.stem}-{number[1] if number else 0}", text))
    yield from shuffled(found)


# ---------------------------------------------------------------- what is kept
def on_onsets(sound: np.ndarray, beats: list[float]) -> float:
    """Mean onset strength on the beats over that halfway between them."""
    mono = librosa.resample(sound.mean(1), orig_sr=RATE, target_sr=22050)
    strength = librosa.onset.onset_strength(y=mono, sr=22050)
    b = np.array(beats)
    frames = [(x * 22050 / 512).astype(int) for x in (b, (b[1:] + b[:-1]) / 2)]
    peaks = [[strength[max(0, i - 2) : i + 3].max(initial=0) for i in x] for x in frames]
    return float(np.mean(peaks[0]) / max(np.mean(peaks[1]), 1e-9))


def keep(out: Path, name: str, sound: np.ndarray, count: Count) -> str:
    """Write a piece whose beats lie on onsets, and say what it is."""
    end = min(len(sound) / RATE, LONGEST)
    beats = [round(x, 4) for x in count.beats if x < end - 0.2]
    if end < 25 or len(beats) < 24:
        raise LeftOutError("short")
    sound = sound[: int(end * RATE)]
    ratio = on_onsets(sound, beats)
    if ratio < 1.05:
        raise LeftOutError(f"beats not on onsets ({ratio:.2f})")
    mono = sound.mean(1) * (0.9 / max(1e-6, np.abs(sound).max()))
    path = out / "audio" / f"{name}.ogg"
    with soundfile.SoundFile(path, "w", RATE, 1, format="OGG", subtype="VORBIS") as f:
        for i in range(0, len(mono), RATE):  # libsndfile overflows its stack on long Vorbis writes
            f.write(mono[i : i + RATE])
    sections = [{"start": round(s, 4), "label": x} for s, x in count.sections if s < end]
    truth = {
        "beats": beats,
        "downbeats": [round(x, 4) for x in count.downbeats if x < end - 0.2],
        "sections": sections or None,
        "tempo": round(60 / float(np.median(np.diff(beats))), 2),
        "meter": count.metre,
        "kind": count.kind,
        "source": name,
        "split": "validation",
        "onset_ratio": round(ratio, 2),
    }
    (out / "truth" / f"{name}.json").write_text(json.dumps(truth))
    return f"{count.kind} in {count.metre}, {truth['tempo']} a minute, {ratio:.2f}"


def jobs(work: Path) -> Iterator[tuple[int, list[tuple]]]:
    """Groups of (name, maker of a piece, what to make it of), with how many of each to keep."""
    for path, *how in SCORES:
        yield 1, [(path.replace("/", "-"), corpus_piece, path, *how)]
    for collection, metre, most in TUNES:
        yield (
            most,
            [(f"{collection}-{x}", folk_piece, text) for x, text in tunes(collection, metre)],
        )
    for package, most in MODULES.items():
        found = {data: x for path in unpacked(package, work) for x, data in modules(path)}
        yield most, shuffled([(f"{package}-{x}", module_piece, data) for data, x in found.items()])
    for package, names in MIDIS.items():
        lump = {x.lower(): data for path in unpacked(package, work) for x, data in lumps(path)}
        yield 99, [(f"{package}-{x}", midi_piece, lump[x]) for x in names.split()]


def main() -> None:
    """Make all that is not there yet."""
    out = Path(sys.argv[1])
    for folder in ("audio", "truth"):
        (out / folder).mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as work:
        for most, group in jobs(Path(work)):
            kept = 0
            for label, make, *of in group:
                name = re.sub(r"[^a-z0-9_.-]", "_", label.lower())
                if kept == most or name in NOT_AS_COUNTED:
                    continue
                try:
                    if not (out / "truth" / f"{name}.json").exists():
                        piece = make(Player(name, Path(work)), *of)
                        print(name, keep(out, name, *piece), flush=True)
                    kept += 1
                except LeftOutError as error:
                    print(name, "left out:", error, flush=True)


if __name__ == "__main__":
    main()
