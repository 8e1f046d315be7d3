"""The length that an MP3 file claims, compared with the frames it contains.

Decoders play what is there without reporting what is missing, and stop at the file's own count even if more
follows; counting the frames reveals both.
Source: ISO/IEC 11172-3:1993, 2.4.1.3 and 2.4.2.3 (frame header, layer III), ISO/IEC 13818-3 (half sampling
rates); ID3v2.4 structure, section 3.1 (size of the tag); frame count in the first frame, as encoders write
it behind the words "Xing" or "Info" (common practice).
"""

import io
import mmap
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

from sequencer.timing.position import clock_text

_MPEG1 = (0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320, 0)  # [kbit/s]
_MPEG2 = (0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160, 0)
_RATES = {3: (44100, 48000, 32000), 2: (22050, 24000, 16000), 0: (11025, 12000, 8000)}  # [Hz]
_AWRY = 2  # frames by which a count may be off: some writers include the frame that holds it
_IN_A_ROW = 4  # frames: by chance about once in 10¹⁹ bytes
_TAIL = 128  # bytes of an old-style tag at the end, starting with "TAG"


@dataclass(frozen=True, slots=True, kw_only=True)
class Frames:
    """Frames found in a file, and the number it claims."""

    found: int
    claimed: int | None  # None: not stated in the file
    cut: bool  # the last frame is incomplete
    seconds: float  # [s] of one frame
    claim_at: int  # byte offset of the claimed count
    size: int  # bytes from the first frame to the last
    broken: bool = False  # something else follows the last frame, and frames follow that


def frames_of(path: Path) -> Frames | None:
    """Frames of an MP3 file; None if it has none.

    Raises
    ------
    OSError
        If the file cannot be read.
    """
    with path.open("rb") as file, mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ) as data:
        begin = at = _after_tag(data)
        end = len(data) - (_TAIL if data[-_TAIL : -_TAIL + 3] == b"TAG" else 0)
        if (first := _header(data, at)) is None:
            return None
        claim_at = _claim_at(data[at : at + first[0]])
        claimed = (
            int.from_bytes(data[at + claim_at : at + claim_at + 4], "big") if claim_at else None
        )
        found, cut = 0, False
        while at + 4 <= end and (frame := _header(data, at)) is not None:
            cut = at + frame[0] > end
            found += not cut
            at += frame[0]
        broken = not cut and _goes_on(data, at, end, data[begin + 1])
        held = claimed is not None  # the frame with the count has no sound
        return Frames(
            found=max(found - held, 0),
            claimed=claimed,
            cut=cut,
            seconds=first[1],
            claim_at=begin + claim_at,
            size=min(at, end) - begin,
            broken=broken,
        )


def counted(path: Path) -> Frames | None:
    """Frames of a file that starts like an MP3; None for any other or unreadable file."""
    try:
        with path.open("rb") as file:
            start = file.read(3)
        if not (start == b"ID3" or (len(start) == 3 and start[0] == 0xFF and start[1] >= 0xE2)):
            return None
        return frames_of(path)
    except (OSError, ValueError):
        return None  # reading the audio gives a better message


def length_warning(frames: Frames) -> str | None:
    """A one-line note if a file lacks sound or claims a different length; otherwise None."""
    claimed, there = frames.claimed, frames.found * frames.seconds
    if frames.broken:
        return (
            f"the file is damaged at {clock_text(there)}: nothing after that was heard; "
            "copy or export it again"
        )
    if claimed is not None and claimed > frames.found + _AWRY:
        whole = claimed * frames.seconds
        return (
            f"the file is truncated, or its header is wrong: it claims {whole:.1f} s, but has only {there:.1f} s "
            "of sound; copy or export it again"
        )
    if frames.cut:
        return (
            f"the file ends in the middle of a frame after {there:.1f} s; copy or export it again"
        )
    if claimed is not None and claimed < frames.found - _AWRY:
        return (
            f"the file's header claims {claimed * frames.seconds:.1f} s, but it has {there:.1f} s of sound; "
            "players may stop early"
        )
    return None


class Recounted(io.RawIOBase):
    """An MP3 file presented with its true frame count, so that a decoder reads it to the end."""

    def __init__(self, file: BinaryIO, frames: Frames) -> None:
        self._file, self._at = file, frames.claim_at
        self._count = frames.found.to_bytes(4, "big") + frames.size.to_bytes(4, "big")
        file.seek(frames.claim_at - 1)
        sized = file.read(1)[0] & 2  # whether the byte count follows the frame count
        self._count = self._count if sized else self._count[:4]
        file.seek(0)

    def readable(self) -> bool:
        """True."""
        return True

    def seekable(self) -> bool:
        """True."""
        return True

    def seek(self, offset: int, whence: int = 0, /) -> int:
        """Move to a byte."""
        return self._file.seek(offset, whence)

    def tell(self) -> int:
        """The byte that is read next."""
        return self._file.tell()

    def readinto(self, buffer: "bytearray | memoryview", /) -> int:  # type: ignore[override]
        """Fill a buffer, with the true count in place of the claimed one."""
        begin = self._file.tell()
        got = self._file.read(len(buffer))
        changed = bytearray(got)
        for k, byte in enumerate(self._count):
            if 0 <= (at := self._at + k - begin) < len(changed):
                changed[at] = byte
        buffer[: len(changed)] = changed
        return len(changed)


def _after_tag(data: mmap.mmap) -> int:
    if data[:3] != b"ID3" or len(data) < 10:
        return 0
    size = 0
    for byte in data[6:10]:
        size = size << 7 | byte & 0x7F
    return 10 + size + (10 if data[5] & 0x10 else 0)


def _header(data: mmap.mmap, at: int) -> tuple[int, float] | None:
    """Bytes and seconds of the layer III frame that begins here."""
    if at + 4 > len(data) or data[at] != 0xFF or data[at + 1] & 0xE6 != 0xE2:
        return None
    version, rate = data[at + 1] >> 3 & 3, data[at + 2] >> 2 & 3
    if version == 1 or rate == 3:
        return None
    kilobits = (_MPEG1 if version == 3 else _MPEG2)[data[at + 2] >> 4]
    if not kilobits:
        return None
    hertz, samples = _RATES[version][rate], 1152 if version == 3 else 576
    return samples // 8 * kilobits * 1000 // hertz + (data[at + 2] >> 1 & 1), samples / hertz


def _goes_on(data: mmap.mmap, at: int, end: int, kind: int) -> bool:
    """Whether frames of a kind follow somewhere after a byte: so many in a row that no other data looks like them."""
    while 0 <= (at := data.find(b"\xff", at, end)) < end:
        place, seen = at, 0
        while seen < _IN_A_ROW and place + 4 <= end and data[place + 1] == kind:
            if (frame := _header(data, place)) is None:
                break
            place, seen = place + frame[0], seen + 1
        if seen == _IN_A_ROW:
            return True
        at += 1
    return False


def _claim_at(frame: bytes) -> int:
    """Offset of the frame count in the first frame; 0 if there is none."""
    for word in (b"Xing", b"Info"):
        at = frame[:64].find(word)
        if at > 0 and len(frame) >= at + 12 and frame[at + 7] & 1:
            return at + 8
    return 0


__all__ = ["Frames", "Recounted", "counted", "frames_of", "length_warning"]
