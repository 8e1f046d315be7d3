"""The song's samples, for count tracks and the rehearsal page."""

import io
from collections.abc import Mapping
from pathlib import Path

import numpy as np

from sequencer.arrays import Floats
from sequencer.errors import InputError, Place
from sequencer.files import write_bytes

_MP3_RATES = (
    8_000,
    11_025,
    12_000,
    16_000,
    22_050,
    24_000,
    32_000,
    44_100,
    48_000,
)  # [Hz]; ISO/IEC 11172-3, 13818-3
_SMALL = 0.6  # 0 is best, 1 is smallest


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


def write_recording(
    path: Path, samples: Floats, rate: int, *, tags: Mapping[str, str] | None = None
) -> None:
    """Write samples, atomically: as MP3 if the file's name ends so, else as 16-bit WAV.

    Parameters
    ----------
    path : Path
    samples : ndarray, shape (n,) or (n, c) [1]
    rate : int
        [Hz]; an MP3 that cannot have it gets 44,100 Hz.
    tags : mapping, optional
        Of an MP3: `title`, `album`, `comment`.

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
    if path.suffix.lower() == ".mp3":
        _encode(made, samples, rate, tags or {})
    else:
        soundfile.write(made, samples, rate, format="WAV", subtype="PCM_16")
    write_bytes(path, made.getvalue())


def _encode(made: io.BytesIO, samples: Floats, rate: int, tags: Mapping[str, str]) -> None:
    """MP3 of a rate that varies, some 100 kbit/s for music in two channels."""
    import soundfile

    if rate not in _MP3_RATES:
        import soxr

        samples, rate = soxr.resample(samples, rate, 44_100), 44_100
    channels = 1 if samples.ndim == 1 else samples.shape[1]
    with soundfile.SoundFile(
        made, "w", rate, channels, "MPEG_LAYER_III", format="MP3",
        bitrate_mode="VARIABLE", compression_level=_SMALL,
    ) as file:  # fmt: skip
        for name, value in tags.items():
            setattr(file, name, value)
        for start in range(0, len(samples), rate):
            file.write(samples[start : start + rate])
