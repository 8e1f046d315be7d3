"""Audio files as mono blocks at a fixed sample rate, read block by block so that memory use does not grow with length.

Samples are in −1 … 1 at `SAMPLE_RATE` Hz. Lengths given in headers are not trusted: what can be decoded
counts. Source of the sample-rate conversion: the SoX resampler (soxr), quality "HQ".
"""

import struct
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.digests import LARGEST_TRACK, sha256_of_file
from sequencer.errors import InputError, Place
from sequencer.listening.signal.loudness_meter import LoudnessMeter
from sequencer.listening.signal.mpeg import Recounted, counted, length_warning
from sequencer.listening.signal.quiet_library import quiet_library

SAMPLE_RATE = 22050  # [Hz] for all analysis
_MOVING = 1e-9  # fraction of the energy that is not one constant level, at least
_RATES = (2_000, 768_000)  # [1/s] below a telephone, above any studio (common practice)
_SHORTEST = 4.0  # [s]
_LONGEST = 4 * 3600.0  # [s]
_BLOCK = 1 << 18  # frames read at a time
_CANCELS = 0.02  # fraction of the energy left after mixing, below which the channels cancel
_SUFFIXES = (
    ".wav",
    ".flac",
    ".ogg",
    ".oga",
    ".opus",
    ".mp3",
    ".aif",
    ".aiff",
    ".au",
    ".caf",
    ".w64",
)

_LONGEST_PAGE = 65_307  # bytes of an Ogg page, RFC 3533
_SILENT = 1e-4  # RMS times the root of the sample rate, about −120 dBFS: no recording is that quiet

Samples = NDArray[np.float32]


@dataclass(slots=True)
class AudioFile:
    """One pass over an audio file; `duration` is known once all blocks have been read."""

    path: Path
    channel: int | None = None  # None: the mean of all channels
    duration: float = 0.0  # [s] decoded so far
    mixed: float = 0.0  # energy of the mean of the channels
    apart: float = 0.0  # mean energy of the channels
    level: float | Floats = 0.0  # sum of the samples of each channel
    frames: int = 0
    meter: LoudnessMeter | None = None  # how strong all channels sound together

    @property
    def cancels(self) -> bool:
        """True if the channels cancel, so that their mean is almost silent."""
        return self.apart > 0 and self.mixed < _CANCELS * self.apart

    def blocks(self) -> Iterator[Samples]:
        """Mono blocks at `SAMPLE_RATE`, in order.

        Raises
        ------
        InputError
            If the file cannot be read to its end, or contains samples that are not numbers.
        """
        import soxr

        with _opened(self.path) as file:
            rate = _believed_rate(self.path, int(file.samplerate))
            stream = soxr.ResampleStream(rate, SAMPLE_RATE, 1, dtype="float32", quality="HQ")
            self.meter = LoudnessMeter(rate, int(file.channels))
            frames = 0
            while len(block := self._read(file, frames, rate)):
                mono = block.mean(axis=1)
                self._weigh(block, mono, frames / rate)
                self.meter.take(block)
                frames += len(block)
                self.duration = frames / rate
                if self.channel is not None:
                    mono = block[:, self.channel]
                yield stream.resample_chunk(np.ascontiguousarray(mono))
            yield stream.resample_chunk(np.zeros(0, np.float32), last=True)
        self._judge_length()

    def _read(self, file: Any, frames: int, rate: int) -> Samples:
        from soundfile import LibsndfileError

        try:
            with quiet_library():
                return file.read(_BLOCK, dtype="float32", always_2d=True)
        except LibsndfileError as error:
            raise InputError(
                "track-damaged",
                Place(str(self.path)),
                f"the audio breaks off after {frames / rate:.1f} s and cannot be read further",
                "copy or export the file again",
                _reason(error),
            ) from error

    def _weigh(self, block: Samples, mono: Samples, at: float) -> None:
        total = float(np.sum(block, dtype=np.float64))
        if not np.isfinite(total):
            raise InputError(
                "track-not-finite",
                Place(str(self.path)),
                f"samples near {at:.0f} s are not numbers (NaN or infinite)",
                "export the file again, as 16- or 24-bit audio",
            )
        self.level = self.level + np.sum(block, axis=0, dtype=np.float64)
        self.frames += len(block)
        self.mixed += float(np.dot(mono.astype(np.float64), mono))
        self.apart += float(np.sum(block.astype(np.float64) ** 2)) / block.shape[1]
        if self.duration > _LONGEST:
            raise InputError(
                "track-too-long",
                Place(str(self.path)),
                f"the track is longer than {_LONGEST / 3600:.0f} hours",
                "cut it to the song of the show",
            )

    def _judge_length(self) -> None:
        if self.apart <= _SILENT**2 * self.duration and self.duration >= _SHORTEST:
            raise InputError(
                "track-silent",
                Place(str(self.path)),
                "the track is completely silent",
                "export the song again, or name another file",
            )
        constant = float(np.mean(np.square(self.level))) / max(self.frames, 1)
        if self.apart - constant <= _MOVING * self.apart and self.duration >= _SHORTEST:
            raise InputError(
                "track-silent",
                Place(str(self.path)),
                "the track holds one constant level, which nobody hears",
                "export the song again, or name another file",
            )
        if self.duration < _SHORTEST:
            raise InputError(
                "track-too-short",
                Place(str(self.path)),
                f"the track lasts {self.duration:.1f} s, too short to detect a beat",
                f"use a track of at least {_SHORTEST:.0f} s",
            )


def _believed_rate(path: Path, rate: int) -> int:
    """The sample rate that a file's header tells, if music may have it."""
    if not _RATES[0] <= rate <= _RATES[1]:
        raise InputError(
            "track-damaged",
            Place(str(path)),
            f"the file says that it has {rate} samples a second, which no recording has",
            "copy or export the file again",
        )
    return rate


def sha256_of(path: Path) -> str:
    """SHA-256 of a file's bytes, as hexadecimal digits.

    Raises
    ------
    InputError
        If the file does not exist or cannot be read.
    """
    _require_file(path)
    try:
        return sha256_of_file(path)
    except OSError as error:
        raise _unreadable(path, error) from error


def warning_of(path: Path) -> str | None:
    """A one-line note on anything unusual about a file that can still be analysed."""
    frames = counted(path)
    return length_warning(frames) if frames else None


def is_audio_name(path: Path) -> bool:
    """True for file names that look like audio; used to select the tracks of a folder."""
    return path.suffix.lower() in _SUFFIXES and not path.name.startswith(".")


def _require_file(path: Path) -> None:
    place = Place(str(path))
    try:
        if path.is_dir():
            raise InputError(
                "track-is-folder",
                place,
                "this is a folder, not a track",
                "give the path of an audio file in it",
            )
        if not path.exists():
            raise InputError(
                "track-not-found", place, "file not found", "check the name and the folder"
            )
        if not path.is_file():
            raise InputError(
                "track-unreadable", place, "this is not a file", "give the path of an audio file"
            )
        if path.stat().st_size == 0:
            raise InputError("track-empty", place, "the file is empty", "copy the track again")
        if path.stat().st_size > LARGEST_TRACK:
            raise InputError(
                "track-too-long", place, f"the file is larger than {LARGEST_TRACK // 10**9} GB",
                "cut it to the song of the show",
            )  # fmt: skip
    except (OSError, ValueError) as error:  # names too long, or with a zero byte
        raise _unreadable(path, error) from error


def _unreadable(path: Path, error: Exception) -> InputError:
    return InputError(
        "track-unreadable",
        Place(str(path)),
        "the file cannot be opened",
        "check that it exists and that you have permission to read it",
        _reason(error),
    )


def _reason(error: Exception) -> str:
    text = getattr(error, "error_string", "") or getattr(error, "strerror", "") or str(error)
    return str(text).strip().rstrip(".")


@contextmanager
def _opened(path: Path) -> Iterator[Any]:
    import soundfile

    _require_file(path)
    _refuse_cut_wave(path)
    _refuse_cut_ogg(path)
    try:
        handle = path.open("rb")  # Python can open any name on any system; the library may not
    except OSError as error:
        raise _unreadable(path, error) from error
    with handle:
        try:
            frames = counted(path)
            wrong = frames is not None and frames.claimed not in {None, frames.found}
            with quiet_library():
                file = soundfile.SoundFile(
                    Recounted(handle, frames) if wrong and frames else handle
                )
        except (soundfile.LibsndfileError, RuntimeError, ValueError) as error:
            raise InputError(
                "track-not-audio",
                Place(str(path)),
                "this is not a readable audio file",
                "use a wav, flac, ogg or mp3 file",
                _reason(error),
            ) from error
        with file:
            yield file


def _refuse_cut_ogg(path: Path) -> None:
    """Raise if the last page of an Ogg file does not end the stream: the rest of the song is missing.

    Source: RFC 3533, The Ogg Encapsulation Format, section 6: byte 5 of a page, bit 0x04, last page.
    """
    try:
        with path.open("rb") as file:
            if file.read(4) != b"OggS":
                return
            file.seek(max(path.stat().st_size - _LONGEST_PAGE, 0))
            tail = file.read()
    except OSError as error:
        raise _unreadable(path, error) from error
    page = tail.rfind(b"OggS")
    if page < 0 or len(tail) < page + 6 or not tail[page + 5] & 0x04:
        raise InputError(
            "track-damaged",
            Place(str(path)),
            "the file breaks off before the end of its stream",
            "copy or export the file again",
        )


def _refuse_cut_wave(path: Path) -> None:
    """Raise if a WAVE file is shorter than its data chunk says: the decoder would not notice.

    Source: Multimedia Programming Interface and Data Specifications 1.0 (1991), RIFF chunks. A size of 0 or
    of all ones is left by streaming writers, and is ignored.
    """
    try:
        size = path.stat().st_size
        with path.open("rb") as file:
            if (head := file.read(12))[:4] != b"RIFF" or head[8:12] != b"WAVE":
                return
            while len(chunk := file.read(8)) == 8:
                name, length = struct.unpack("<4sI", chunk)
                if name == b"data":
                    missing = file.tell() + length - size
                    if length < 0xFFFFF000 and missing > 4096:
                        raise InputError(
                            "track-damaged",
                            Place(str(path)),
                            f"the file is truncated: {missing / length:.0%} of the audio is missing",
                            "copy or export the file again",
                        )
                    return
                file.seek(length + length % 2, 1)
    except OSError as error:
        raise _unreadable(path, error) from error
