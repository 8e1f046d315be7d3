"""Short sounds for the count track: clicks, count tones, calls, and counts as words.

A click begins with its largest sample, so its position is exact; tones have a soft attack of 3 ms. Words
were spoken by a formant synthesiser and are stored as data (voice/README.txt); they start on the beat.
Source: design choice of this project; pitches are equal temperament from A4 = 440 Hz (ISO 16).
"""

import json
from functools import cache
from importlib.resources import files

import numpy as np

from sequencer.arrays import Floats

BEAT_HZ, BAR_HZ = 1320.0, 2093.0
# Semitones above A4 for the last four beats before a change: four, three, two, one left; then the change.
COUNT_STEPS = {4: 0, 3: 2, 2: 4, 1: 7}
CHANGE_STEP = 12
_SCALE = (0, 2, 4, 7, 9)  # pentatonic: any two calls sound good next to each other


def click(rate: int, *, first: bool) -> Floats:
    """Click for a beat, or for the first beat of a bar, which is higher, longer and louder.

    Parameters
    ----------
    rate : int
        [Hz]
    first : bool

    Returns
    -------
    samples : ndarray, shape (n,) [1]

    Notes
    -----
    Source: a decaying cosine (module); its first sample is its largest.
    """
    t = np.arange(int(0.06 * rate)) / rate
    if first:
        body = 0.65 * np.cos(2 * np.pi * BAR_HZ * t) + 0.35 * np.cos(2 * np.pi * 2 * BAR_HZ * t)
        return np.asarray(0.8 * body * np.exp(-t / 0.011))
    return np.asarray(0.5 * np.cos(2 * np.pi * BEAT_HZ * t) * np.exp(-t / 0.007))


def tone(rate: int, step: int, seconds: float, *, loud: float = 0.35) -> Floats:
    """Soft tone a number of semitones above A4.

    Parameters
    ----------
    rate : int
        [Hz]
    step : int
        Semitones above 440 Hz.
    seconds : float
    loud : float
        Largest value [1].

    Returns
    -------
    samples : ndarray, shape (n,) [1]

    Notes
    -----
    Source: equal temperament, ISO 16:1975 for the pitch of A4. Exact.
    """
    t = np.arange(int(seconds * rate)) / rate
    hz = 440.0 * 2.0 ** (step / 12.0)
    body = np.sin(2 * np.pi * hz * t) + 0.25 * np.sin(4 * np.pi * hz * t)
    shape = np.minimum(t / 0.003, 1.0) * np.exp(-t / (0.35 * seconds))
    return np.asarray(loud / 1.15 * body * shape)


def call_steps(index: int) -> tuple[int, int, int]:
    """Three pitches, in semitones above A4, for the section family with this number."""
    n = len(_SCALE)
    first, jump = index % n, 1 + (index // n) % (n - 1)
    notes = [first, first + jump, first + 2 * jump]
    if index % 2:
        notes.reverse()
    a, b, c = (_SCALE[note % n] + 12 * (note // n) - 12 for note in notes)
    return a, b, c


@cache
def spoken(number: int, rate: int) -> Floats:
    """The spoken word for a count from one to eight.

    Parameters
    ----------
    number : int
    rate : int
        [Hz]

    Returns
    -------
    samples : ndarray, shape (n,) [1]

    Raises
    ------
    ValueError
        If there is no word for it.

    Notes
    -----
    Source: voice/README.txt. Do not modify the returned array.
    """
    import soundfile
    import soxr

    folder = files("sequencer.outputs.sound") / "voice"
    places = json.loads((folder / "words.json").read_text(encoding="utf-8"))
    if str(number) not in places:
        raise ValueError(f"there are words for {', '.join(places)}, not for {number}")
    start, end = places[str(number)]
    with (folder / "words.flac").open("rb") as file:
        samples, native = soundfile.read(file, start=start, stop=end)
    word: Floats = np.asarray(soxr.resample(samples, native, rate), dtype=np.float64)
    word.setflags(write=False)
    return word
