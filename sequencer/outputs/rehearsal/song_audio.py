"""The song on the rehearsal page: re-encoded to a small size and embedded, linked, or left out.

The codec is MP3 at a constant rate: every browser plays it and can seek in it exactly.
"""

import base64
import hashlib
import io
import urllib.parse
from collections.abc import Callable
from dataclasses import asdict, dataclass
from importlib.metadata import version
from pathlib import Path
from typing import Literal

import numpy as np

from sequencer import content_keys, kept
from sequencer.arrays import Floats

_KIND = "song of a rehearsal page"  # of what is kept
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


def embedded_track(track: Path, read: Callable[[], tuple[Floats, int]]) -> Sound:
    """The song of a file, embedded; kept by the file's content, since encoding takes long.

    Parameters
    ----------
    track : Path
    read : callable
        Samples and rate of the file, as `embedded` takes them.

    Raises
    ------
    InputError
        As `read`.
    """
    content = _content(track)
    if content is not None and (found := kept.known(_KIND, content, restore=_restored)):
        return found[0]
    sound = embedded(*read())
    if content is not None and _content(track) == content:  # else nobody knows which was read
        kept.keep(_KIND, content, sound, record=asdict)
    return sound


def _content(track: Path) -> tuple[bytes | str, ...] | None:
    """All that the encoded song depends on; None if the file cannot be read."""
    import soundfile

    try:
        with track.open("rb") as file:
            digest = hashlib.file_digest(file, "sha256").digest()
    except OSError:
        return None
    versions = [version(name) for name in ("soundfile", "soxr", "numpy")]
    return (content_keys.whole_code(), digest, soundfile.__libsndfile_version__, *versions)


def _restored(record: dict[str, str]) -> Sound:
    return Sound(kind="embedded", type=record["type"], data=record["data"])


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
