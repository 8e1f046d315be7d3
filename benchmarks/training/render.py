"""Plays made-up pieces and keeps what the ear is given, with the exact beats.

    python render.py OUT --count 4000 --workers 16 --fonts a.sf2 b.sf3

One file a piece: mel bands (half precision), seconds of beats, which of them start a bar, metre (0: no beat).
Piece n is made from seed n alone.
"""
# ruff: noqa: E731, PTH104  # a script that runs where little is installed

import argparse
import ctypes
import json
import os
import sys
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parent))
sys.path.insert(0, str(Path(__file__).parents[2]))
import tracker
from airs import borrowed
from chorales import figured, hymn
from compose import Hit, Note, Piece, close, compose, swung

from sequencer.listening.signal.spectra import FRAMES, Ear, levelled, loud_level

RATE = 22050
Rng = np.random.Generator
PROGRAMS = {
    "bass": [32, 33, 34, 35, 36, 37, 38, 39, 32, 33, 43, 58, 87],
    "chord": [0, 1, 2, 4, 5, 6, 7, 16, 17, 18, 21, 24, 25, 26, 27, 28, 29, 30, 48, 61, 62, 81, 46, 11],
    "lead": [40, 41, 42, 56, 57, 60, 64, 65, 66, 68, 69, 71, 72, 73, 74, 75, 78, 79, 80, 81, 82, 85, 0, 11, 12, 21, 22, 24, 26, 29, 30, 52, 105, 110],
    "arp": [0, 4, 5, 6, 8, 10, 11, 12, 13, 24, 25, 27, 46, 45, 80, 81, 87, 98, 108],
    "pad": [48, 49, 50, 51, 52, 53, 54, 88, 89, 90, 91, 92, 93, 94, 95, 16, 19],
}  # fmt: skip
TUNES = [73, 40, 21, 24, 73, 40, 21, 24, 22, 23, 78, 109, 105, 15, 110, 72, 74, 25, 0, 71, 46, 68]
ENSEMBLES = [
    [40, 40, 41, 42],
    [40, 40, 41, 42],
    [48, 48, 48, 48],
    [0],
    [0],
    [0],
    [6],
    [19],
    [24],
    [73, 68, 71, 70],
    [52, 52, 53, 52],
    [56, 56, 60, 57],
    [44, 45, 46, 48],
    [1],
    [11, 24, 46],
]


# ---------------------------------------------------------------- tempo
def beat_times(piece: Piece, rng: Rng) -> tuple[np.ndarray, np.ndarray]:
    """Beats (1/24 apart, from 4 before bar 1 on) and the seconds at each, tempo curve included."""
    at = np.arange(-4, piece.beats + 8, 1 / 24)
    written = piece.style in {"tune", "score"}
    share = [0.34, 0.25, 0.32, 0.03, 0.06] if written else [0.5, 0.22, 0.14, 0.07, 0.07]
    kind = rng.choice(["steady", "drift", "ritard", "step", "loose"], p=share)
    f = np.ones_like(at)
    if kind in {"drift", "loose"}:
        walk = np.cumsum(rng.normal(size=len(at))) / 24
        walk = (walk - walk.mean()) / (walk.std() + 1e-9)
        width = 24 * (8 if kind == "drift" else 3)
        walk = np.convolve(walk, np.ones(width) / width, "same")
        f = np.exp((0.05 if kind == "drift" else 0.09) * walk)
    elif kind == "ritard":
        f = 1 + rng.uniform(0, 0.05) * np.sin(
            2 * np.pi * at / (4 * piece.metre) + rng.uniform(0, 6)
        )
        depth, phrase = rng.uniform(0.05, 0.3), piece.metre * int(rng.choice([4, 8, 8, 16]))
        for s in np.arange(phrase, piece.beats, phrase):
            if rng.random() < 0.7:
                f = f * (1 - depth * np.clip((at - s + 4) / 4, 0, 1) * (at < s))
    elif kind == "step":
        s = piece.metre * int(rng.integers(1, max(2, piece.bars)))
        f = np.where(at < s, 1.0, rng.uniform(0.7, 1.4))
    step = 60 / (piece.bpm * f) / 24
    seconds = np.concatenate([[0], np.cumsum(step[:-1])])
    start = np.interp(min(0.0, -piece.pickup), at, seconds)
    lead_in = rng.uniform(0.02, 1.2) if rng.random() < 0.8 else rng.uniform(1, 5)
    return at, seconds - start + lead_in


class Synth:
    """libfluidsynth, by its C interface."""

    def __init__(self, font: str, library: str = "libfluidsynth.so.3") -> None:
        self.lib = lib = ctypes.CDLL(library)
        for name in ("new_fluid_settings", "new_fluid_synth"):
            getattr(lib, name).restype = ctypes.c_void_p
        lib.fluid_set_log_function.argtypes = [ctypes.c_int, ctypes.c_void_p, ctypes.c_void_p]
        for level in range(5):
            lib.fluid_set_log_function(level, None, None)
        settings = ctypes.c_void_p(lib.new_fluid_settings())
        lib.fluid_settings_setnum(settings, b"synth.sample-rate", ctypes.c_double(RATE))
        lib.fluid_settings_setnum(settings, b"synth.gain", ctypes.c_double(0.4))
        lib.fluid_settings_setint(settings, b"synth.polyphony", 96)
        self.synth = ctypes.c_void_p(lib.new_fluid_synth(settings))
        if lib.fluid_synth_sfload(self.synth, font.encode(), 1) < 0:
            raise ValueError(f"cannot load {font}")

    def play(
        self,
        events: list[tuple[float, int, int, int, int]],
        programs: dict[int, int],
        seconds: float,
    ) -> np.ndarray:
        """Mono samples; an event is (seconds, kind 1 on | 0 off, channel, key, velocity)."""
        lib, synth = self.lib, self.synth
        lib.fluid_synth_system_reset(synth)
        for channel, program in programs.items():
            lib.fluid_synth_program_change(synth, channel, program)
        out = np.zeros((2, int(seconds * RATE)), np.float32)
        now, total = 0, out.shape[1]
        left, right = out[0].ctypes.data, out[1].ctypes.data
        for at, kind, channel, key, velocity in sorted(events):
            want = min(int(at * RATE), total)
            if want > now:
                lib.fluid_synth_write_float(
                    synth, want - now, ctypes.c_void_p(left), now, 1, ctypes.c_void_p(right), now, 1
                )
                now = want
            if kind:
                lib.fluid_synth_noteon(synth, channel, key, velocity)
            else:
                lib.fluid_synth_noteoff(synth, channel, key)
        if now < total:
            lib.fluid_synth_write_float(
                synth, total - now, ctypes.c_void_p(left), now, 1, ctypes.c_void_p(right), now, 1
            )
        return out.mean(axis=0)

    def bank(self, rng: Rng) -> dict:
        """Single notes of this font as samples for the tracker."""
        found: dict = {"drums": {}}
        for role, programs in PROGRAMS.items():
            found[role] = []
            for program in programs:
                pitch = {"bass": 40, "lead": 69, "arp": 64}.get(role, 60) + int(rng.integers(-4, 5))
                keys = (
                    [pitch, pitch + int(rng.choice([3, 4])), pitch + 7]
                    if role == "chord" and rng.random() < 0.3
                    else [pitch]
                )
                y = self.play(
                    [(0.0, 1, 0, k, 110) for k in keys] + [(1.3, 0, 0, k, 0) for k in keys],
                    {0: program},
                    1.5,
                )
                y = y / (np.abs(y).max() + 1e-9) * 0.85
                half = len(y) // 2
                loop = (half, int(0.3 * RATE)) if role == "pad" else None
                found[role].append(tracker.Sample(y, float(RATE), float(pitch), loop, bounce=True))
        for key in (35, 36, 37, 38, 39, 40, 41, 42, 44, 45, 46, 48, 49, 51, 54, 56, 63, 70, 75):
            y = self.play([(0.0, 1, 9, key, 115)], {}, 0.7 if key != 49 else 1.5)
            found["drums"][key] = tracker.Sample(
                y / (np.abs(y).max() + 1e-9) * 0.85, float(RATE), 60.0
            )
        return found


# ---------------------------------------------------------------- pieces
def played_by_synth(piece: Piece, rng: Rng, synth: Synth) -> tuple[np.ndarray, np.ndarray]:
    """Samples, and seconds of the beats from the pickup's on."""
    at, seconds = beat_times(piece, rng)
    roles = sorted({n.role for n in piece.notes})
    programs, channel = {}, {}
    ensemble = ENSEMBLES[int(rng.integers(len(ENSEMBLES)))]
    for i, role in enumerate(roles):
        channel[role] = i
        options = PROGRAMS.get(role, PROGRAMS["lead"])
        if piece.style == "tune":
            options = [32, 32, 33, 35, 43, 58] if role == "bass" else TUNES
        if piece.style == "score":
            options = [ensemble[i % len(ensemble)]]
        programs[i] = int(rng.choice(options))
    loose = float(rng.choice([0.0, 0.004, 0.008, 0.014]))
    late = {role: float(rng.normal(0, 0.006)) * (loose > 0) for role in (*roles, "drums")}
    level = {role: float(rng.uniform(0.55, 1.1)) for role in (*roles, "drums")}
    when = lambda beat: float(np.interp(swung(beat, piece.swing), at, seconds))
    events = []
    end = when(piece.beats)
    for n in piece.notes:
        if not 12 <= n.pitch <= 120:
            continue
        on = max(0.0, when(n.start) + rng.normal(0, 1) * loose + late[n.role])
        off = max(on + 0.04, when(n.start + n.length))
        v = int(np.clip(n.velocity * level[n.role], 12, 127))
        events += [(on, 1, channel[n.role], n.pitch, v), (off, 0, channel[n.role], n.pitch, 0)]
    kit = int(rng.choice([0, 8, 16, 24, 25, 32, 40], p=[0.5, 0.1, 0.1, 0.08, 0.08, 0.08, 0.06]))
    programs[9] = kit
    for h in piece.hits:
        on = max(0.0, when(h.start) + rng.normal(0, 1) * loose * 0.7 + late["drums"])
        events += [
            (on, 1, 9, h.key, int(np.clip(h.velocity * level["drums"], 8, 127))),
            (on + 0.1, 0, 9, h.key, 0),
        ]
    tail = rng.uniform(0.3, 1.2) if rng.random() < 0.4 else rng.uniform(1.2, 7.0)
    y = synth.play(events, programs, end + tail)  # what rings on after the last beat
    beats = np.arange(int(np.ceil(-piece.pickup)), piece.beats)
    return y, np.interp(beats, at, seconds)


def metronome(rng: Rng) -> tuple[np.ndarray, np.ndarray, np.ndarray, int]:
    """A click track with a marked first beat, sometimes swung, sometimes in noise."""
    metre = int(rng.choice([2, 3, 4, 5, 6, 7], p=[0.15, 0.2, 0.35, 0.1, 0.1, 0.1]))
    bpm = float(np.exp(rng.uniform(np.log(38), np.log(250))))
    n = max(12, int(50 * bpm / 60))
    beats = rng.uniform(0, 1.5) + np.arange(n) * 60 / bpm
    y = np.zeros(int((beats[-1] + 1) * RATE), np.float32)
    length = int(rng.uniform(0.02, 0.08) * RATE)
    t = np.arange(length) / RATE
    fade = np.exp(-t * rng.uniform(30, 120))
    high, low = sorted(rng.uniform(400, 3000, 2))
    first, plain = (high, low) if rng.random() < 0.7 else (low * 0.3, high)
    accent = rng.uniform(0.0, 0.6)
    off = float(rng.choice([0, 0.5, 2 / 3], p=[0.6, 0.2, 0.2])) if bpm < 150 else 0.0
    for i, b in enumerate(beats):
        one = i % metre == 0
        sound = (
            np.sin(2 * np.pi * (first if one else plain) * t)
            * fade
            * (0.9 if one else 0.9 - accent)
        )
        a = int(b * RATE)
        y[a : a + length] += sound[: len(y) - a]
        if off:
            a = int((b + off * 60 / bpm) * RATE)
            y[a : a + length] += (0.3 * np.sin(2 * np.pi * plain * 1.3 * t) * fade)[: len(y) - a]
    if rng.random() < 0.5:
        y += rng.normal(
            0, np.sqrt(np.mean(y**2)) * 10 ** (-rng.uniform(-2, 30) / 20), len(y)
        ).astype(np.float32)
    return y, beats, np.arange(n) % metre == 0, metre


def beatless(rng: Rng, synth: Synth) -> np.ndarray:
    """Sound without a beat: noise, speech-like babble, notes at random moments, stray clicks."""
    seconds = 45.0
    n = int(seconds * RATE)
    kind = int(rng.integers(0, 4))
    if kind == 0:
        y = np.cumsum(rng.normal(0, 1, n)) if rng.random() < 0.3 else rng.normal(0, 1, n)
        y = y - np.convolve(y, np.ones(2000) / 2000, "same")
        if rng.random() < 0.5:
            y = y * (1 + 0.8 * np.interp(np.arange(n) / RATE, np.arange(50), rng.normal(0, 1, 50)))
    elif kind == 1:
        y, at = rng.normal(0, 1e-3, n), 0.2
        while at < seconds - 1:
            length = rng.uniform(0.06, 0.35)
            t = np.arange(int(length * RATE)) / RATE
            phase = (
                2
                * np.pi
                * np.cumsum(
                    rng.uniform(80, 260) * (1 + 0.1 * np.sin(2 * np.pi * rng.uniform(2, 5) * t))
                )
                / RATE
            )
            formant = rng.uniform(300, 2500, 3)
            voice = sum(
                np.sin(k * phase) * np.exp(-np.min(np.abs(formant - k * 150)) / 400)
                for k in range(1, 16)
            )
            if rng.random() < 0.3:
                voice = rng.normal(0, 1, len(t))
            y[int(at * RATE) : int(at * RATE) + len(t)] += (
                rng.uniform(0.1, 0.4) * voice * np.hanning(len(t))
            )
            at += length + float(
                rng.choice([0.02, 0.1, 0.5, 1.2], p=[0.5, 0.25, 0.15, 0.1])
            ) * rng.uniform(0.5, 1.5)
    elif kind == 2:
        times = np.cumsum(rng.exponential(rng.uniform(0.15, 1.2), 400))
        times = times[times < seconds - 2]
        events = []
        for t in times:
            k = int(rng.integers(40, 84))
            events += [
                (t, 1, 0, k, int(rng.integers(50, 110))),
                (t + rng.uniform(0.2, 3), 0, 0, k, 0),
            ]
        y = synth.play(events, {0: int(rng.integers(0, 104))}, seconds)
    else:
        y = np.zeros(n)
        for at in rng.uniform(1, seconds - 1, int(rng.integers(1, 8))):
            y[int(at * RATE) : int(at * RATE) + 300] += rng.normal(0, 1, 300) * np.exp(
                -np.arange(300) / 60
            )
        y += rng.normal(0, 10 ** rng.uniform(-5, -3), n)
    return np.asarray(y, np.float32)


def roughened(y: np.ndarray, rng: Rng) -> np.ndarray:
    """The sound as rooms, loudspeakers and mixing desks leave it."""
    y = y / (np.abs(y).max() + 1e-9)
    if rng.random() < 0.25:  # a room
        n = int(rng.uniform(0.1, 1.2) * RATE)
        tail = rng.normal(0, 1, n) * np.exp(-np.arange(n) / n * 6.9)
        tail[0] = 0
        size = 1 << int(np.ceil(np.log2(len(y) + n)))
        wet = np.fft.irfft(np.fft.rfft(y, size) * np.fft.rfft(tail, size), size)[: len(y)]
        y = y + rng.uniform(0.05, 0.5) * wet / (np.abs(wet).max() + 1e-9)
    if rng.random() < 0.35:  # loud mixing
        drive = rng.uniform(1, 8)
        y = np.tanh(drive * y / (np.abs(y).max() + 1e-9))
    if rng.random() < 0.2:
        noise = rng.normal(0, 1, len(y))
        if rng.random() < 0.5:
            noise = np.convolve(noise, np.exp(-np.arange(40) / 8), "same")
        noise *= (
            np.sqrt(np.mean(y**2)) / np.sqrt(np.mean(noise**2)) * 10 ** (-rng.uniform(5, 40) / 20)
        )
        y = y + noise
    return (y / (np.abs(y).max() + 1e-9) * 10 ** (-rng.uniform(0, 12) / 20)).astype(np.float32)


def example(seed: int, synth: Synth, player: tracker.Player, bank: dict, airs: list[dict]):
    """Mel bands, seconds of beats, downbeat flags, metre of piece `seed`."""
    rng = np.random.default_rng(seed)
    style = rng.choice(
        ["tracker", "band", "tune", "air", "score", "hymn", "figured", "clicks", "none"],
        p=[0.36, 0.14, 0.07, 0.13, 0.11, 0.07, 0.05, 0.045, 0.025],
    )
    if style == "none":
        y, beats, first, metre = beatless(rng, synth), np.zeros(0), np.zeros(0, bool), 0
    elif style == "clicks":
        y, beats, first, metre = metronome(rng)
    else:
        if style == "air" and not airs:
            style = "tune"
        if style == "air":
            style = rng.choice(["tune", "band", "tracker"], p=[0.65, 0.15, 0.2])
            piece = borrowed(rng, airs, str(style))
        elif style in {"hymn", "figured"}:
            piece = hymn(rng) if style == "hymn" else figured(rng)
            if rng.random() < 0.6:
                close(piece)
        else:
            piece = compose(rng, str(style))
        metre = piece.metre
        if style == "tracker" and rng.random() < 0.9:
            content, beats = tracker.module_of(piece, rng, bank)
            y = player.render(content, float(beats[-1]) + 1.5, int(rng.choice([1, 2, 4, 8, 8])))
            beats = beats[beats < len(y) / RATE]
            first = piece.firsts(np.arange(len(beats)))
        else:
            y, beats = played_by_synth(piece, rng, synth)
            numbers = np.arange(len(beats)) + int(np.ceil(-piece.pickup))
            first = piece.firsts(numbers)
        if rng.random() < 0.06 and len(y) > 30 * RATE:  # a break: the count goes on
            a = int(rng.uniform(8, len(y) / RATE - 12) * RATE)
            y = y.copy()
            y[a : a + int(rng.uniform(1, 5) * RATE)] *= 0.02
    y = roughened(np.asarray(y, np.float64), rng)
    ear = Ear()
    ear.take(y)
    spectra = ear.spectra(len(y) / RATE)
    return spectra.mel, beats.astype(np.float32), np.asarray(first, bool), metre


def for_training(
    mel: np.ndarray, beats: np.ndarray, first: np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    """Levelled bands, and signed distance to the nearest beat and downbeat [frames, within ±9]."""
    near = np.full((len(mel), 2), 9.0, np.float32)
    for column, times in enumerate((beats, beats[first])):
        for at in times * FRAMES:
            low, high = max(0, int(np.ceil(at - 8))), min(len(mel), int(np.floor(at + 8)) + 1)
            d = np.arange(low, high) - at
            old = near[low:high, column]
            near[low:high, column] = np.where(np.abs(d) < np.abs(old), d, old)
    return levelled(mel, loud_level(mel)).astype(np.float16), near.astype(np.float16)


def work(job: tuple[int, int, int, str, str, float, list]) -> int:
    """One worker: pieces start, start + step, … until the count or the time is up."""
    start, step, count, font, out, until, airs = job
    os.environ["OMP_NUM_THREADS"] = "1"
    synth, player = Synth(font), tracker.Player()
    bank = synth.bank(np.random.default_rng(start))
    done = 0
    for seed in range(start, count, step):
        if time.time() > until:
            break
        try:
            mel, beats, first, metre = example(seed, synth, player, bank, airs)
            level, near = for_training(mel, beats, first)
        except (ValueError, IndexError, FloatingPointError) as error:
            print("left out", seed, error, flush=True)
            continue
        scratch = f"{out}/.{seed}.npz"
        np.savez(scratch, level=level, near=near, beats=beats, first=first, metre=metre)
        os.rename(scratch, f"{out}/{seed}.npz")
        done += 1
    return done


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("out")
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--count", type=int, default=100)
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--seconds", type=float, default=1e9)
    parser.add_argument("--fonts", nargs="+", required=True)
    parser.add_argument(
        "--airs", type=Path, help="what airs.py wrote; without it every tune is made up"
    )
    a = parser.parse_args()
    Path(a.out).mkdir(parents=True, exist_ok=True)
    import multiprocessing

    until = time.time() + a.seconds
    airs = json.loads(a.airs.read_text(encoding="utf-8")) if a.airs else []
    jobs = [
        (a.first + i, a.workers, a.first + a.count, a.fonts[i % len(a.fonts)], a.out, until, airs)
        for i in range(a.workers)
    ]
    begun = time.time()
    with multiprocessing.get_context("spawn").Pool(a.workers) as pool:
        done = sum(pool.map(work, jobs))
    print("pieces", done, "in", round(time.time() - begun), "s", flush=True)


if __name__ == "__main__":
    main()


__all__ = ["Hit", "Note", "Synth", "example"]
