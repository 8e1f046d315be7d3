"""Compose, play and write The Cinder Ferry, the demo's track, with its exact beats.

    python audio_samples/compose.py                     the OGG and the truth beside this script
    python audio_samples/compose.py --truth-only        only the truth
    python audio_samples/compose.py --bars 55 58 --out /tmp/listen    an excerpt, to listen to

The truth is computed in fractions and is the same byte for byte everywhere; the samples are the
same on every run on one machine; the bytes of the OGG differ from run to run, because an Ogg
stream carries a serial number drawn by chance.
"""

import argparse
import hashlib
import json
import math
from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from pathlib import Path

import instruments
import numpy as np
import score
import soundfile
from instruments import RATE, Sound
from mixing import Bus, Channel, add, compressed, limited, mixed

from sequencer.files import replacing, write_text

NAME = "cinder_ferry"
CEILING = 10 ** (
    -2.6 / 20
)  # the codec overshoots by up to 1.6 dB; what is heard stays below -1 dBFS
DRIVE = 1.1  # gain into the limiter
COMPRESSION = 1.0  # libsndfile's scale: 0 is best quality, 1 smallest
CHANNELS = {
    "drums": Channel(gain=0.40, reverb=0.07),
    "hand drums": Channel(gain=0.36, reverb=0.16, low_cut=45.0),
    "bass": Channel(gain=0.20, reverb=0.0, duck=0.35, low_cut=35.0),
    "pads": Channel(gain=0.105, reverb=0.25, duck=0.40, low_cut=130.0),
    "plucks": Channel(gain=0.36, reverb=0.22, low_cut=110.0),
    "leads": Channel(gain=0.24, reverb=0.24, duck=0.10, low_cut=110.0),
}
# Voice: instrument, bus, gain on the bus.
VOICES: dict[str, tuple[instruments.Instrument, str, float]] = {
    "kick": (instruments.kick, "drums", 0.90),
    "snare": (instruments.snare, "drums", 0.70),
    "clap": (instruments.clap, "drums", 0.42),
    "closed hat": (instruments.closed_hat, "drums", 0.44),
    "open hat": (instruments.open_hat, "drums", 0.28),
    "shaker": (instruments.shaker, "drums", 0.30),
    "crash": (instruments.crash, "drums", 0.42),
    "swell": (instruments.swell, "drums", 0.30),
    "tom": (instruments.tom, "hand drums", 0.70),
    "frame low": (instruments.frame_low, "hand drums", 0.62),
    "frame rim": (instruments.frame_rim, "hand drums", 0.60),
    "bass": (instruments.bass, "bass", 1.0),
    "drone": (instruments.drone, "bass", 0.36),
    "pad": (instruments.pad, "pads", 1.0),
    "pluck": (instruments.pluck, "plucks", 0.8),
    "reed": (instruments.reed, "leads", 0.9),
    "horns": (instruments.horns, "leads", 0.92),
}


@lru_cache(maxsize=1024)
def played(voice: str, pitch: int, seconds: float, take: int) -> Sound:
    """The sound of one note, computed once."""
    return VOICES[voice][0](pitch, seconds, take)


def seconds_from_beats() -> Callable[[float], float]:
    """The map from beats to seconds, linear within each beat."""
    times = [float(time) for time in score.beat_times()]
    last = 60.0 / float(score.FAST)

    def seconds(beat: float) -> float:
        if beat >= len(times) - 1:
            return times[-1] + (beat - len(times) + 1) * last
        whole = int(beat)
        return times[whole] + (beat - whole) * (times[whole + 1] - times[whole])

    return seconds


def duration() -> Fraction:
    """Length of the whole track [s], silence at both ends included."""
    return score.beat_times()[-1] + score.LEAD_OUT


def samples_of_bars(first_bar: int, last_bar: int) -> tuple[int, int]:
    """First sample of these bars and the one after their last; the ends of the track keep their silence."""
    times = score.beat_times()
    start = Fraction(0) if first_bar == 1 else times[4 * (first_bar - 1)]
    stop = duration() if last_bar == score.N_BARS else times[4 * last_bar]
    return round(start * RATE), round(stop * RATE)


def recorded(first_bar: int, last_bar: int) -> tuple[dict[str, Bus], list[int]]:
    """Buses with every note that begins in these bars, and the samples at which a kick falls."""
    seconds = seconds_from_beats()
    origin, stop = samples_of_bars(first_bar, last_bar)
    buses: dict[str, Bus] = {
        name: np.zeros((stop - origin, 2), dtype=np.float32) for name in CHANNELS
    }
    kicks = []
    for note in score.composed():
        if not score.first_beat(first_bar) <= note.beat < score.first_beat(last_bar + 1):
            continue
        start = seconds(note.beat)
        length = round(seconds(note.beat + note.length) - start, 4)
        if note.voice == "pluck":  # a string rings on; few lengths, so that few are computed
            length = 0.5 * math.ceil(2 * length)
        sound = played(note.voice, note.pitch, length, note.take)
        _, bus, gain = VOICES[note.voice]
        place = round(start * RATE) - origin
        add(buses[bus], sound, place, gain * note.level, note.pan)
        if note.voice == "kick":
            kicks.append(place)
    return buses, kicks


def rendered(first_bar: int = 1, last_bar: int = score.N_BARS) -> Sound:
    """The finished stereo track, or an excerpt, samples of shape (n, 2), full scale 1."""
    buses, kicks = recorded(first_bar, last_bar)
    loud = limited(compressed(mixed(buses, CHANNELS, kicks)), CEILING, DRIVE)
    return loud * closing(*samples_of_bars(first_bar, last_bar))


def closing(start: int, stop: int) -> Sound:
    """Gain of these samples: it fades over the last six beats of the music, to silence after it."""
    end = round(score.beat_times()[-1] * RATE)
    begin = round(score.beat_times()[-7] * RATE)
    place = (np.arange(start, stop) - begin) / (end - begin)
    return np.asarray(0.5 + 0.5 * np.cos(np.pi * np.clip(place, 0, 1)))[:, None]


def truth() -> dict[str, object]:
    """What a perfect ear would report: beats, downbeats, sections, tempo."""
    times = score.beat_times()
    last = (score.LAST_STROKE_BAR - 1) * score.BEATS_PER_BAR
    rounded = [float(round(time, 6)) for time in times]
    sections = [
        {
            "label": section.label,
            "start": rounded[4 * (section.first_bar - 1)],
            "end": rounded[4 * (section.first_bar + section.n_bars - 1)],
            "first_bar": section.first_bar,
            "last_bar": section.first_bar + section.n_bars - 1,
        }
        for section in score.SECTIONS
    ]
    return {
        "track": f"{NAME}.ogg",
        "title": score.TITLE,
        "duration": float(round(duration(), 6)),
        "meter": score.BEATS_PER_BAR,
        "beats": rounded[: last + 1],
        "downbeats": rounded[: last + 1 : score.BEATS_PER_BAR],
        "last_stroke": rounded[last],
        "sections": sections,
        "tempo_map": tempo_map(rounded),
    }


def tempo_map(rounded: list[float]) -> list[dict[str, float]]:
    """Every beat on which the tempo changes: where, when, to how many beats a minute."""
    tempi = score.beat_tempi()
    return [
        {
            "bar": beat // 4 + 1,
            "beat": beat % 4 + 1,
            "seconds": rounded[beat],
            "tempo": float(tempo),
        }
        for beat, tempo in enumerate(tempi)
        if beat == 0 or tempo != tempi[beat - 1]
    ]


def write_sound(path: Path, sound: Sound) -> None:
    """Write Ogg Vorbis, a second at a time: one long write overflows libsndfile's stack."""
    with (
        replacing(path) as scratch,
        soundfile.SoundFile(
            scratch,
            "w",
            RATE,
            2,
            format="OGG",
            subtype="VORBIS",
            compression_level=COMPRESSION,
        ) as out,
    ):
        out.title = score.TITLE
        out.artist = "the sequencer developers"
        out.license = "MIT or CC0-1.0"
        for start in range(0, len(sound), RATE):
            out.write(sound[start : start + RATE])


def main() -> None:
    """Read the options and write what they ask for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument(
        "--out", type=Path, default=Path(__file__).parent, help="folder to write to"
    )
    parser.add_argument("--truth-only", action="store_true", help="write only the truth")
    parser.add_argument("--bars", type=int, nargs=2, metavar=("FIRST", "LAST"), help="an excerpt")
    options = parser.parse_args()
    if options.bars is None:
        text = json.dumps(truth(), indent=1) + "\n"
        write_text(options.out / f"{NAME}.truth.json", text)
    if options.truth_only:
        return
    sound = rendered(*(options.bars or (1, score.N_BARS)))
    part = "" if options.bars is None else "_{}-{}".format(*options.bars)
    write_sound(options.out / f"{NAME}{part}.ogg", sound)
    print("samples sha256", hashlib.sha256(sound.astype("<f4").tobytes()).hexdigest())


if __name__ == "__main__":
    main()
