"""MIDI time code as a Standard MIDI File: a full message, then four quarter frames a frame.

Quarter notes and tempo of the file carry no music: they are chosen so that every quarter frame falls on a tick. A
quarter frame is no event of its own in such a file and stands in an escape (F7), as the standard has it for what is
sent as it is. The file's offset names the time code at which it begins.

Source: MIDI Time Code (RP-004/RP-008) and Standard MIDI Files 1.0 (RP-001), MIDI Manufacturers Association, read
second-hand.
"""

import struct
from fractions import Fraction
from pathlib import Path

from sequencer.files import write_bytes
from sequencer.timing.timecode import Rate, TimeDigits, digits_of

_TICKS = 2400  # a quarter note: 24, 25 and 30 frames of four quarters divide it
_CODES = {"24": 0, "25": 1, "29.97df": 2, "30": 3}  # of the rates


def write_midi_timecode(path: Path, first: int, start: Fraction, end: Fraction, rate: Rate) -> None:
    """Write the time code between two moments.

    Parameters
    ----------
    path : Path
    first : int
        The frame that begins at moment 0.
    start, end : Fraction
        [s]; the file begins at `start`, its code with the first frame that begins there or later.
    rate : Rate

    Raises
    ------
    InputError
        If the file cannot be written.
    """
    write_bytes(path, midi_timecode(first, start, end, rate))


def midi_timecode(first: int, start: Fraction, end: Fraction, rate: Rate) -> bytes:
    """The file; see `write_midi_timecode`."""
    pulled = Fraction(rate.nominal) / rate.exact  # 1.001 where numbers are dropped
    quarter = round(1_000_000 * pulled)  # [µs] of a quarter note, in which `nominal` frames pass
    each = _TICKS // (4 * rate.nominal)  # ticks of a quarter frame

    def tick(moment: Fraction) -> int:
        return round((moment - start) / pulled * _TICKS)

    low = -(-start * rate.exact // 1)
    high = int(end * rate.exact)
    begins = digits_of(first + int(low), rate)
    code = _CODES[rate.name]
    events = [
        (0, b"\xff\x03" + _counted(f"Time code {rate.name}".encode())),
        (0, b"\xff\x51\x03" + quarter.to_bytes(3, "big")),
        (0, b"\xff\x54\x05" + bytes([code << 5 | begins.hours, *begins[1:], 0])),
        (tick(low / rate.exact), b"\xf0" + _counted(_full(begins, code))),
    ]
    for frame in range(int(low), high - 1, 2):  # a whole message takes two frames
        at = tick(frame / rate.exact)
        for piece, value in enumerate(_pieces(digits_of(first + frame, rate), code)):
            events.append((at + piece * each, b"\xf7\x02\xf1" + bytes([piece << 4 | value])))
    events.append((max(tick(end), events[-1][0]), b"\xff\x2f\x00"))
    track = bytearray()
    now = 0
    for at, message in events:
        track += _variable(at - now) + message
        now = at
    head = struct.pack(">4sIHHH", b"MThd", 6, 0, 1, _TICKS)
    return head + struct.pack(">4sI", b"MTrk", len(track)) + bytes(track)


def _full(digits: TimeDigits, code: int) -> bytes:
    """A full message to all devices, without the byte that opens it."""
    return bytes([0x7F, 0x7F, 0x01, 0x01, code << 5 | digits.hours, *digits[1:], 0xF7])


def _pieces(digits: TimeDigits, code: int) -> list[int]:
    """The eight halves of a quarter-frame message, frames first."""
    values = [digits.frames, digits.seconds, digits.minutes, code << 5 | digits.hours]
    return [half for value in values for half in (value & 15, value >> 4)]


def _counted(data: bytes) -> bytes:
    return _variable(len(data)) + data


def _variable(value: int) -> bytes:
    """A number of seven bits a byte, the largest first."""
    out = [value & 0x7F]
    while value := value >> 7:
        out.append(value & 0x7F | 0x80)
    return bytes(reversed(out))
