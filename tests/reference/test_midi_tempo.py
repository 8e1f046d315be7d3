"""Tempo and deltas of MIDI files, from bytes written out by hand.

Sources: set tempo is FF 51 03 and 24 bits, most significant byte first, not a variable-length quantity, and
120 beats a minute hold where no event sets it (a note on tempo at blitter.com, read; a mailing list of Pure
Data, 2018-02-11, read); bytes of deltas, and the file of two tempi with its 204 and 136 beats a minute,
from issue reports of a MIDI parser (4490, 2586, 4535, read); the sum of its seconds is arithmetic.
"""

import struct

import mido
import pytest

from sequencer.timing.taps import given_count


def track_of(*events):
    body = b"".join(bytes.fromhex(event) for event in (*events, "00 FF 2F 00"))
    return b"MTrk" + struct.pack(">I", len(body)) + body


def file_of(folder, division, *events):
    path = folder / "song.mid"
    path.write_bytes(b"MThd" + struct.pack(">IHHH", 6, 0, 1, division) + track_of(*events))
    return path


@pytest.mark.parametrize(
    ("tempo", "beat"),
    [
        (
            "00 FF 51 03 07 A1 20",
            0.5,
        ),  # 500,000 µs: 120 a minute; read as a delta it is another number
        ("00 FF 51 03 04 7C E5", 0.294117),
        ("00 FF 51 03 06 BB 57", 0.441175),
        ("00 FF 51 03 0A 2C 2A", 0.666666),
        ("00 FF 01 01 41", 0.5),  # a text event: no tempo is set
    ],
)
def test_microseconds_of_a_quarter(tmp_path, tempo, beat):
    beats = given_count(file_of(tmp_path, 96, tempo, "86 00 FF 01 01 42")).beats  # 768 ticks

    assert beats[:3] == pytest.approx([0.0, beat, 2 * beat], abs=1e-6)


@pytest.mark.parametrize(
    ("delta", "ticks"),
    [("A8 00", 5120), ("87 7F", 1023), ("88 00", 1024), ("83 2E", 430), ("81 07", 135),
     ("83 60", 480), ("87 40", 960)],
)  # fmt: skip
def test_deltas_are_of_variable_length(tmp_path, delta, ticks):
    """The tempo halves after the delta: the first beat after it tells how long it was."""
    path = file_of(
        tmp_path, 10, "00 FF 51 03 01 86 A0", f"{delta} FF 51 03 03 0D 40", "83 60 FF 01 01 42"
    )
    beats = given_count(path).beats  # ten ticks a beat: 0.1 s each before, 0.2 s each after
    after = ticks // 10 + 1

    assert mido.MidiFile(path).tracks[0][1].time == ticks
    assert beats[after] == pytest.approx(ticks * 0.01 + (10 * after - ticks) * 0.02, abs=1e-6)


def test_a_file_of_two_tempi_adds_up(tmp_path):
    """5120 ticks at 294,117 µs and 1023 at 441,175 µs a quarter of 256 ticks: 7.645317 s.

    With the last tempo alone it would be 10.586 s, with the first alone 7.058 s.
    """
    path = file_of(
        tmp_path, 256, "00 FF 51 03 04 7C E5", "A8 00 FF 51 03 06 BB 57", "87 7F FF 01 01 42"
    )
    beats = given_count(path).beats
    last = 5120 + 3 * 256  # ticks of the last beat before the end

    assert beats[20] == pytest.approx(5.882340, abs=1e-6)
    assert beats[23] + (5120 + 1023 - last) / 256 * 0.441175 == pytest.approx(7.645317, abs=1e-6)
