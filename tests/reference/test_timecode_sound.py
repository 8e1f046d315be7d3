"""Linear time code as libltc hears it, a decoder of its own (Debian: libltc11), called by its C interface."""

import ctypes
import ctypes.util
from fractions import Fraction

import numpy as np
import pytest

from sequencer.outputs.sound.linear_timecode import (
    BITS,
    TIMECODE_SAMPLING,
    frame_bits,
    timecode_sound,
)
from sequencer.timing.timecode import RATES, digits_of, frame_labelled, timecode_of

LIBRARY = ctypes.util.find_library("ltc")
HEARD = pytest.mark.skipif(LIBRARY is None, reason="libltc is not installed (Debian: libltc11)")


class Told(ctypes.Structure):
    """`SMPTETimecode` of ltc.h."""

    _fields_ = (("zone", ctypes.c_char * 6), *((name, ctypes.c_ubyte) for name in ("year", "month", "day", "hours", "minutes", "seconds", "frame")))  # fmt: skip


class Frame(ctypes.Structure):
    """`LTCFrameExt` of ltc.h."""

    _fields_ = (("bits", ctypes.c_ubyte * 10), ("start", ctypes.c_longlong), ("end", ctypes.c_longlong),
                ("reverse", ctypes.c_int), ("ticks", ctypes.c_float * 80), ("least", ctypes.c_ubyte),
                ("most", ctypes.c_ubyte), ("volume", ctypes.c_double))  # fmt: skip


def heard(sound, rate):
    """(sample, hours, minutes, seconds, frames, drop) of every frame that libltc finds."""
    library = ctypes.CDLL(LIBRARY)
    library.ltc_decoder_create.restype = ctypes.c_void_p
    decoder = ctypes.c_void_p(
        library.ltc_decoder_create(int(TIMECODE_SAMPLING / rate.exact), 10_000)
    )
    pcm = np.rint(32_767 * sound).astype(np.int16)
    library.ltc_decoder_write_s16(
        decoder, pcm.ctypes.data_as(ctypes.c_void_p), ctypes.c_size_t(len(pcm)), ctypes.c_longlong(0)
    )  # fmt: skip
    frame, told, out = Frame(), Told(), []
    while library.ltc_decoder_read(decoder, ctypes.byref(frame)):
        library.ltc_frame_to_time(ctypes.byref(told), frame.bits, 0)
        assert not frame.reverse
        drop = frame.bits[1] >> 2 & 1  # bit 10
        out.append((frame.start, told.hours, told.minutes, told.seconds, told.frame, drop))
    library.ltc_decoder_free(decoder)
    return out


def sounding(first, start, end, rate):
    return np.concatenate(list(timecode_sound(first, Fraction(start), Fraction(end), rate)))


@HEARD
@pytest.mark.parametrize("name", RATES)
def test_every_frame_is_read_back_where_it_begins(name):
    """Over the minute at which drop-frame skips two numbers, and over midnight."""
    rate = RATES[name]
    for begins in ("00:00:55:00", "23:59:58:00"):
        first = frame_labelled(begins, rate)
        found = heard(sounding(first, 0, 12, rate), rate)
        assert len(found) >= int(12 * rate.exact) - 1  # the last one has no frame after it
        for k, (sample, *digits, drop) in enumerate(found):
            assert tuple(digits) == digits_of(first + k, rate)
            assert abs(sample - float(k / rate.exact) * TIMECODE_SAMPLING) <= 3
            assert drop == rate.drop


@HEARD
def test_an_hour_on_it_is_as_exact_as_at_the_beginning():
    rate = RATES["29.97df"]
    found = heard(sounding(0, 3600, 3602, rate), rate)
    begins = -(-3600 * rate.exact // 1)
    assert len(found) > 55
    for k, (sample, *digits, _) in enumerate(found):
        assert tuple(digits) == digits_of(int(begins) + k, rate)
        exact = float((begins + k) / rate.exact - 3600) * TIMECODE_SAMPLING
        assert abs(sample - exact) <= 3


@pytest.mark.parametrize("name", RATES)
def test_turns_of_a_frame_are_even_and_bits_are_where_the_standard_has_them(name):
    """SMPTE ST 12-1: decimal digits, bit 10 says drop-frame, the parity bit is 59 at 25 frames a second and else 27."""
    rate = RATES[name]
    frame = frame_labelled("12:34:56:18", rate)
    bits = frame_bits(frame, rate)
    assert len(bits) == BITS

    def digit(first, width):
        return sum(bit << k for k, bit in enumerate(bits[first : first + width]))

    assert [digit(*at) for at in ((56, 2), (48, 4), (40, 3), (32, 4), (24, 3), (16, 4), (8, 2), (0, 4))] == [1, 2, 3, 4, 5, 6, 1, 8]  # fmt: skip
    assert bits[10] == rate.drop
    assert "".join(map(str, bits[64:])) == "0011111111111101"
    for k in range(100):
        own = frame_bits(frame + k, rate)
        assert sum(own) % 2 == 0
        assert own[27 if name == "25" else 59] == 0


def test_turns_take_40_microseconds_and_pieces_fit_without_a_seam():
    """Rise from a tenth to nine tenths: 40 ± 10 µs (SMPTE ST 12-1)."""
    rate = RATES["25"]
    sound = sounding(0, 0, 21, rate)  # more than one piece
    assert len(sound) == 21 * TIMECODE_SAMPLING
    assert np.abs(sound).max() == pytest.approx(0.5)
    steepest = np.abs(np.diff(sound)).max() * TIMECODE_SAMPLING  # [1/s]
    width = np.pi / 2 / steepest  # of a cosine from −½ to ½
    rise = width * (1 - 2 * np.arccos(0.8) / np.pi)
    assert 30e-6 < rise < 50e-6
    second = sound[10 * TIMECODE_SAMPLING : 11 * TIMECODE_SAMPLING]
    assert np.abs(sounding(0, 10, 11, rate) - second).max() < 1e-9


@pytest.mark.parametrize("name", RATES)
def test_labels_and_frames_both_ways(name):
    rate = RATES[name]
    for frame in (*range(0, 40_000, 7), rate.day - 1):
        assert frame_labelled(timecode_of(frame, rate), rate) == frame


@pytest.mark.parametrize(
    ("label", "name"),
    [
        ("1:00:00:00", "25"), ("00:00:00:25", "25"), ("24:00:00:00", "25"), ("00:60:00:00", "30"),
        ("00:00:60:00", "30"), ("00:01:00;01", "29.97df"), ("now", "24"), ("٠٠:00:00:00", "24"),
    ],
)  # fmt: skip
def test_what_is_no_label_is_refused(label, name):
    with pytest.raises(ValueError, match="time code"):
        frame_labelled(label, RATES[name])
