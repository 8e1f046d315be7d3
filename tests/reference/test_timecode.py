"""SMPTE ST 12-1 time code. The drop-frame rule and its frame counts were read second-hand."""

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sequencer.timing.timecode import RATES, frame_at, timecode_of

DROP = RATES["29.97df"]


def frame_of(text, rate):
    """Frame of a label: of every minute but each tenth, the numbers 00 and 01 were skipped."""
    hours, minutes, seconds, frames = (int(part) for part in re.split("[:;]", text))
    whole = 60 * hours + minutes
    dropped = 2 * (whole - whole // 10) if rate.drop else 0
    return (60 * whole + seconds) * rate.nominal + frames - dropped


TABLE = [
    (0, "00:00:00;00"),
    (1799, "00:00:59;29"),
    (1800, "00:01:00;02"),
    (1801, "00:01:00;03"),
    (3597, "00:01:59;29"),
    (3598, "00:02:00;02"),
    (17981, "00:09:59;29"),
    (17982, "00:10:00;00"),
    (19781, "00:10:59;29"),
    (19782, "00:11:00;02"),
    (107891, "00:59:59;29"),
    (107892, "01:00:00;00"),
    (2589407, "23:59:59;29"),
]


@pytest.mark.parametrize(("frame", "text"), TABLE)
def test_drop_frame_both_ways(frame, text):
    """17,982 frames in ten minutes and 107,892 an hour are printed; the others follow by the rule."""
    assert timecode_of(frame, DROP) == text
    assert frame_of(text, DROP) == frame


def test_a_day_wraps():
    assert timecode_of(2589408, DROP) == "00:00:00;00"
    assert [rate.day for rate in RATES.values()] == [2073600, 2160000, 2589408, 2592000]


def test_dropped_numbers_do_not_exist():
    labels = {timecode_of(frame, DROP) for frame in range(1700, 1900)}
    assert {"00:00:59;29", "00:01:00;02"} <= labels
    assert not {"00:01:00;00", "00:01:00;01"} & labels


def test_tenth_minutes_keep_their_numbers():
    assert timecode_of(2 * 17982, DROP) == "00:20:00;00"


def test_an_hour_of_clock_time():
    """3600 s at 30000/1001: 107,892 frames have begun; the next begins at 3600.0297 s."""
    assert frame_at(3600, DROP) == 107892
    assert float(107892 / DROP.exact) == pytest.approx(3599.9964, abs=1e-6)


def test_a_day_drifts_by_86_ms():
    assert float(86_400 - DROP.day / DROP.exact) == pytest.approx(0.0864, abs=1e-9)


@pytest.mark.parametrize(("name", "frames"), [("24", 86_424), ("25", 90_025), ("30", 108_030)])
def test_whole_rates(name, frames):
    rate = RATES[name]
    assert frame_at(3601, rate) == frames
    assert timecode_of(frames, rate) == "01:00:01:00"


def test_negative_times_are_refused():
    with pytest.raises(ValueError, match="must not be negative"):
        frame_at(-0.1, DROP)
    with pytest.raises(ValueError, match="must not be negative"):
        timecode_of(-1, DROP)


@given(st.sampled_from(list(RATES.values())), st.integers(0, 2_073_599))
def test_every_label_comes_back(rate, frame):
    """Label → frame → label and frame → seconds → frame are identities, exact and as a float."""
    assert frame_of(timecode_of(frame, rate), rate) == frame
    assert frame_at(frame / rate.exact, rate) == frame
    assert frame_at(float(frame / rate.exact), rate) == frame
    assert frame_at((frame + 1) / rate.exact - Fraction(1, 10**6), rate) == frame
