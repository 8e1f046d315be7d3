"""The song's samples, for count tracks and the rehearsal page."""

import io
from pathlib import Path

import numpy as np

from sequencer.arrays import Floats
from sequencer.errors import InputError, Place
from sequencer.files import write_bytes


def read_recording(track: Path) -> tuple[Floats, int]:
    """Samples of a track, and their rate.

    Parameters
    ----------
    track : Path

    Returns
    -------
    samples : ndarray, shape (n, c) [1]
    rate : int
        [Hz]

    Raises
    ------
    InputError
        If the file cannot be read.

    Notes
    -----
    Source: libsndfile. Exact for lossless files.
    """
    import soundfile

    try:
        samples, rate = soundfile.read(track, dtype="float64", always_2d=True)
    except (soundfile.LibsndfileError, OSError) as error:
        raise InputError(
            "track-unreadable",
            Place(str(track)),
            "cannot read the track",
            "export it again, as WAV, FLAC, Ogg or MP3",
            str(error).strip().rstrip("."),
        ) from error
    return np.asarray(samples, dtype=np.float64), int(rate)


def write_recording(path: Path, samples: Floats, rate: int) -> None:
    """Write samples as 16-bit WAV, atomically.

    Parameters
    ----------
    path : Path
    samples : ndarray, shape (n,) or (n, c) [1]
    rate : int
        [Hz]

    Raises
    ------
    InputError
        If the file cannot be written.

    Notes
    -----
    Source: libsndfile. Encoded in memory first, because its file writer does not report a full disk reliably.
    """
    import soundfile

    made = io.BytesIO()
    soundfile.write(made, samples, rate, format="WAV", subtype="PCM_16")
    write_bytes(path, made.getvalue())
