"""The song on the rehearsal page: re-encoded to a small size and embedded, linked, or left out.

The codec is MP3 at a constant rate: every browser plays it and can seek in it exactly.
"""

import base64
import io
import urllib.parse
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

import numpy as np

from sequencer.arrays import Floats

Carried = Literal["embedded", "linked", "none"]
RATE = 44_100  # [Hz]
LEVEL = 0.75  # on libsndfile's scale for MP3, where 0 is the largest file


@dataclass(frozen=True, slots=True, kw_only=True)
class Sound:
    """What the page plays."""

    kind: Carried
    type: str = ""  # media type
    data: str = ""  # base 64, where embedded
    link: str = ""  # relative address, where linked
    notice: str = ""  # what to show if there is none


def silent(why: str) -> Sound:
    """No song: the page runs on a silent clock and says why."""
    return Sound(kind="none", notice=why)


def embedded(samples: Floats, rate: int) -> Sound:
    """The song, embedded in the page.

    Parameters
    ----------
    samples : ndarray, shape (n, c) [1]
        One or two channels, −1 … 1.
    rate : int
        Sample rate [Hz].

    Returns
    -------
    sound : Sound

    Notes
    -----
    Source: MPEG-1 layer III, by libsndfile. Lossy; timing is exact to the sample if the
    player honours the encoder's delay tag.
    """
    import soundfile

    samples = np.atleast_2d(samples.T).T
    if samples.shape[1] > 2:
        samples = samples.mean(axis=1, keepdims=True)
    if rate != RATE:
        import soxr

        samples = np.asarray(soxr.resample(samples, rate, RATE))
    buffer = io.BytesIO()
    soundfile.write(
        buffer, np.clip(samples, -1.0, 1.0), RATE, format="MP3", subtype="MPEG_LAYER_III",
        compression_level=LEVEL, bitrate_mode="CONSTANT",
    )  # fmt: skip
    return Sound(
        kind="embedded",
        type="audio/mpeg",
        data=base64.b64encode(buffer.getvalue()).decode("ascii"),
    )


def linked(track: Path, page: Path) -> Sound:
    """The song as a file beside the page, by its relative address."""
    import os

    try:
        relative = Path(os.path.relpath(track.resolve(), page.resolve().parent)).as_posix()
    except ValueError:  # another drive on Windows
        return Sound(kind="linked", link=track.resolve().as_uri())
    return Sound(kind="linked", link=urllib.parse.quote(relative))
