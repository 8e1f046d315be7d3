"""A track with a click on every detected beat, for checking the count by ear."""

from pathlib import Path

import numpy as np

from sequencer.arrays import Floats
from sequencer.outputs.sound.clicks import click
from sequencer.outputs.sound.recording import read_recording, write_recording
from sequencer.timing.song import Song

SONG = 0.5  # the song's peak as a share of full scale, so that clicks stand out
_CEILING = 10 ** (-1 / 20)  # −1 dBFS


def clicked(song: Song, samples: Floats, rate: int) -> Floats:
    """The song with a click on every beat, exact to the sample.

    Parameters
    ----------
    song : Song
    samples : ndarray, shape (n, c) [1]
    rate : int
        [Hz]

    Returns
    -------
    track : ndarray, shape (n,) [1]
        One channel, no peak over −1 dBFS.

    Notes
    -----
    Source: sum of the sounds. Clicks start on the sample nearest to their beat.
    """
    track = samples.mean(axis=1)
    track = track * (SONG / max(float(np.max(np.abs(track), initial=0.0)), 1e-9))
    firsts = set(song.downbeats)
    sounds = {first: click(rate, first=first) for first in (True, False)}
    for beat in song.beats:
        start = round(beat * rate)
        sound = sounds[beat in firsts][: max(len(track) - start, 0)]
        track[start : start + len(sound)] += sound
    peak = float(np.max(np.abs(track), initial=0.0))
    return np.asarray(track * min(1.0, _CEILING / max(peak, 1e-9)))


def write_clicked(song: Song, track: Path, path: Path) -> None:
    """Write the song with clicks as 16-bit WAV.

    Raises
    ------
    InputError
        If the track cannot be read or the folder cannot be written.
    """
    samples, rate = read_recording(track)
    write_recording(path, clicked(song, samples, rate), rate)
