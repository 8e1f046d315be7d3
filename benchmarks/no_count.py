"""False counts: what is counted where nothing can be counted, and whether music after it is still counted as it is alone.

    python benchmarks/no_count.py [--seeds N] [--first-seed N] [--songs FOLDER --tracks N] --json

Sounds without a count, all made here: noise, rain (drops by Poisson), applause (claps by Poisson, swelling), a crowd (many voices at
once), speech, tuning (long tones that glide), hum. Speech is by eSpeak NG where `espeak-ng` is installed, else the project's spoken
counts at moments drawn at random. Each is heard alone for 30 s, and for 12 s before a song: a band made here that begins at once,
one that begins softly, and songs of a folder. Counted as false: beats before the music, by more than one beat; alone, all beats.
`sure` is the mean confidence of the beats. Music is scored by mir_eval's beat F (70 ms) from the first beat on, without its usual five seconds.
"""

import argparse
import json
import shutil
import subprocess
import tempfile
from pathlib import Path

import mir_eval
import numpy as np
import soundfile

from sequencer.listening.activations import activations_of
from sequencer.listening.beats import count_of
from sequencer.listening.signal.audio import SAMPLE_RATE as RATE
from sequencer.listening.signal.spectra import spectra_of
from sequencer.outputs.sound import voice

VOICE = Path(voice.__path__[0])
TEXT = (
    "Good evening, everybody, and thank you for coming out on such a cold night. Before we begin, please stay behind the line, keep the "
    "way to the gate free, and look after your children. If you hear the bell, walk, do not run. What you are going to see took us a "
    "whole summer. We practised in the rain, in a barn, and once on a roof. This one is for those who could not be here tonight."
)
SECONDS, LEADER = 30.0, 12.0


def noise(rng, seconds):
    """Even noise whose colour is drawn."""
    white = np.fft.rfft(rng.normal(size=int(seconds * RATE)))
    slope = rng.uniform(0.0, 1.0)
    shaped = np.fft.irfft(white / np.maximum(np.arange(len(white)), 40) ** slope)
    return shaped / np.abs(shaped).max()


def rain(rng, seconds):
    """Drops: short clicks of every strength over hiss."""
    samples = 0.15 * noise(rng, seconds)
    for at in rng.uniform(0, seconds - 0.05, rng.poisson(rng.uniform(60, 250) * seconds)):
        n = int(rng.uniform(0.001, 0.006) * RATE)
        drop = rng.normal(size=n) * np.exp(-np.arange(n) / (0.2 * n)) * rng.exponential(0.15)
        samples[int(at * RATE) : int(at * RATE) + n] += drop
    return samples


def applause(rng, seconds):
    """Claps by Poisson; each claps in one of a few ways, and the crowd swells and thins."""
    samples = np.zeros(int(seconds * RATE))
    most = rng.uniform(8, 120)  # claps a second
    for at in rng.uniform(0, seconds - 0.1, rng.poisson(most * seconds)):
        if rng.uniform() > 0.3 + 0.7 * np.sin(np.pi * at / seconds):
            continue
        n = int(0.03 * RATE)
        burst = rng.normal(size=n) * np.exp(-np.arange(n) / (rng.uniform(0.003, 0.01) * RATE))
        hollow = np.sin(2 * np.pi * rng.uniform(600, 1800) * np.arange(n) / RATE)
        samples[int(at * RATE) : int(at * RATE) + n] += burst * hollow * rng.exponential(0.4)
    return samples + 0.002 * rng.normal(size=len(samples))


def speech(rng, seconds):
    """Sentences by a speech synthesiser, or else words with pauses."""
    if shutil.which("espeak-ng"):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "said.wav"
            how = ["-s", str(int(rng.integers(130, 190))), "-p", str(int(rng.integers(20, 80)))]
            words = TEXT.split(". ")
            rng.shuffle(words)
            subprocess.run([shutil.which("espeak-ng"), "-v", "en-gb", *how, "-w", str(path), ". ".join(words)], check=True)  # fmt: skip
            said, rate = soundfile.read(path)
        import soxr

        said = soxr.resample(said, rate, RATE)
        return np.resize(said, int(seconds * RATE)) + 1e-4 * rng.normal(size=int(seconds * RATE))
    spoken, rate = soundfile.read(VOICE / "words.flac")
    edges = list(json.loads((VOICE / "words.json").read_text(encoding="utf-8"))["words"].values())
    samples, at = 1e-3 * rng.normal(size=int(seconds * RATE)), 0.2
    while at < seconds - 1.5:
        first, last = edges[rng.integers(len(edges))]
        word = np.interp(np.arange(0, last - first, rate / RATE), np.arange(last - first), spoken[first:last])  # fmt: skip
        samples[int(at * RATE) : int(at * RATE) + len(word)] += word * rng.uniform(0.5, 1)
        at += len(word) / RATE + rng.choice([0.02, 0.1, 0.6]) * rng.uniform(0.5, 1.5)
    return samples


def crowd(rng, seconds):
    """Two dozen voices at once, each from another place in what it says."""
    one = speech(rng, seconds)
    return sum(np.roll(one, rng.integers(len(one))) * rng.uniform(0.2, 1) for _ in range(24)) / 6


def tuning(rng, seconds):
    """Long tones a fifth apart that swell, glide into tune and overlap."""
    t = np.arange(int(seconds * RATE)) / RATE
    samples = 1e-3 * rng.normal(size=len(t))
    at = 0.0
    while at < seconds - 2:
        length = rng.uniform(1.5, 4.0)
        here = (t >= at) & (t < at + length)
        own = t[here] - at
        pitch = rng.choice([196.0, 293.7, 440.0, 659.3]) * (1 + rng.uniform(-0.03, 0.03) * np.exp(-own * 2))  # fmt: skip
        phase = 2 * np.pi * np.cumsum(pitch) / RATE
        tone = sum(np.sin(k * phase) / k for k in range(1, 7))
        swell = np.minimum(np.minimum(own / 0.3, (length - own) / 0.3), 1)
        samples[here] += 0.2 * rng.uniform(0.4, 1) * swell * tone
        at += length * rng.uniform(0.3, 0.9)
    return samples


def hum(rng, seconds):
    """Mains hum with its overtones, and hiss."""
    t = np.arange(int(seconds * RATE)) / RATE
    return sum(np.sin(2 * np.pi * 50 * k * t + k) / k**1.5 for k in range(1, 9)) + 0.05 * rng.normal(size=len(t))  # fmt: skip


KINDS = {f.__name__: f for f in (noise, rain, applause, crowd, speech, tuning, hum)}


def band(rng, seconds, *, softly=False):
    """Kick, snare, hats, bass and chords at a drawn tempo; beats [s]. One that begins softly swells over eight seconds."""
    tempo = rng.uniform(84, 140)
    beats = np.arange(0.05, seconds - 0.5, 60 / tempo)
    samples = np.zeros(int(seconds * RATE))

    def put(at, sound):
        start = int(at * RATE)
        samples[start : start + len(sound)] += sound[: len(samples) - start]

    t = np.arange(int(0.25 * RATE)) / RATE
    for k, beat in enumerate(beats):
        if k % 2 == 0:
            put(beat, 0.9 * np.sin(2 * np.pi * (50 * t + 6 * (1 - np.exp(-t * 30)))) * np.exp(-t * 14))  # fmt: skip
        else:
            put(beat, 0.5 * rng.normal(size=len(t)) * np.exp(-t * 25))
        for half in (0, 0.5):
            put(beat + half * 60 / tempo, 0.12 * rng.normal(size=len(t) // 4) * np.exp(-t[: len(t) // 4] * 120))  # fmt: skip
        if k % 4 == 0:
            long = np.arange(int(4 * 60 / tempo * RATE)) / RATE
            root = [110.0, 87.3, 130.8, 98.0][k // 4 % 4]
            put(beat, 0.12 * sum(np.sin(2 * np.pi * root * r * long) for r in (1, 2, 2.5, 3)) * np.exp(-long))  # fmt: skip
    if softly:
        samples *= 10 ** (-1.5 * np.clip(1 - np.arange(len(samples)) / (8 * RATE), 0, 1))
    return samples / np.abs(samples).max(), beats


def heard(samples):
    """The count of some samples, as a track would be counted."""
    samples = (0.7 * samples / max(np.abs(samples).max(), 1e-9)).astype(np.float32)
    spectra = spectra_of([samples])
    return count_of(activations_of(spectra), spectra.duration)


def alone(kind, seed):
    """What is counted in a sound without a count."""
    count = heard(KINDS[kind](np.random.default_rng(seed), SECONDS))
    sure = float(np.mean(count.beat_confidence)) if len(count.beats) else 0.0
    return {"beats": len(count.beats), "sure": sure}


def before_music(kind, seed, samples, beats, level):
    """What is counted before music, and how well the music is counted after it."""
    rng = np.random.default_rng(seed + 100)
    lead = KINDS[kind](rng, LEADER)
    music = samples / np.abs(samples).max()
    lead = lead / np.sqrt(np.mean(lead**2)) * np.sqrt(np.mean(music**2)) * level
    count = heard(np.concatenate([lead, music]))
    gap = float(np.median(np.diff(beats)))
    false = count.beats[count.beats < LEADER + beats[0] - gap - 0.1]
    inside = count.beats[count.beats >= LEADER - 0.07] - LEADER
    sure = count.beat_confidence[: len(false)]
    lost = float(inside[0] - beats[0]) if len(inside) else len(music) / RATE
    return {
        "false": len(false),
        "sure": float(sure.mean()) if len(false) else 0.0,
        "f": float(mir_eval.beat.f_measure(beats, inside)) if len(inside) else 0.0,
        "late": max(lost, 0.0),
    }


def main():
    """Tables of all kinds."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seeds", type=int, default=3)
    parser.add_argument("--first-seed", type=int, default=0)
    parser.add_argument("--songs", type=Path, help="a corpus folder, as for hearing.py")
    parser.add_argument("--tracks", type=int, default=4)
    parser.add_argument("--json", action="store_true")
    asked = parser.parse_args()
    rows = {}
    seeds = range(asked.first_seed, asked.first_seed + asked.seeds)
    for kind in KINDS:
        rows[kind] = {"alone": [alone(kind, seed) for seed in seeds]}
        for name, softly in (("band", False), ("soft band", True)):
            rows[kind][name] = [
                before_music(kind, seed, *band(np.random.default_rng(seed), 24.0, softly=softly), 0.5)
                for seed in seeds
            ]  # fmt: skip
        rows[kind]["songs"] = [before_music(kind, k, *song, 0.5) for k, song in enumerate(_songs(asked))]  # fmt: skip
    alones = {
        name: [float(mir_eval.beat.f_measure(beats, heard(samples).beats)) for samples, beats in made]
        for name, made in (
            ("band", [band(np.random.default_rng(seed), 24.0) for seed in seeds]),
            ("soft band", [band(np.random.default_rng(seed), 24.0, softly=True) for seed in seeds]),
            ("songs", list(_songs(asked))),
        )
    }  # fmt: skip
    if asked.json:
        print(json.dumps({"kinds": rows, "alone": alones}))
        return
    for kind, found in rows.items():
        words = f"{kind:9} alone {sum(r['beats'] for r in found['alone']):4} beats (sure {np.mean([r['sure'] for r in found['alone']]):.2f})"
        for name in ("band", "soft band", "songs"):
            if of := found[name]:
                words += f" | {name}: {sum(r['false'] for r in of):3} false (sure {np.mean([r['sure'] for r in of]):.2f}), F {np.mean([r['f'] for r in of]):.3f}, late {np.mean([r['late'] for r in of]):.1f} s"
        print(words)
    print(
        "without a leader:", {name: round(float(np.mean(f)), 3) for name, f in alones.items() if f}
    )


def _songs(asked):
    """The first 30 s of some songs of a folder, with their beats."""
    if asked.songs is None:
        return
    paths = sorted((asked.songs / "audio").glob("*.ogg"))
    for path in paths[:: max(len(paths) // asked.tracks, 1)][: asked.tracks]:
        import soxr

        samples, rate = soundfile.read(path, always_2d=True)
        truth = json.loads(
            (asked.songs / "truth" / f"{path.stem}.json").read_text(encoding="utf-8")
        )
        beats = np.array([b for b in truth["beats"] if b < 29.5])
        if len(beats) > 8:
            yield soxr.resample(samples[: 30 * rate].mean(axis=1), rate, RATE), beats


if __name__ == "__main__":
    main()
