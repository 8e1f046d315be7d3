"""MIDI time code as midicsv reads the file (Debian: midicsv), put together again as RP-004 has it."""

import shutil
import subprocess
from fractions import Fraction

import pytest

from sequencer.outputs.exports.midi_timecode import midi_timecode, write_midi_timecode
from sequencer.timing.timecode import RATES, digits_of, frame_labelled

READ = pytest.mark.skipif(shutil.which("midicsv") is None, reason="midicsv is not installed")
CODES = {"24": 0, "25": 1, "29.97df": 2, "30": 3}  # MIDI Time Code, RP-004 (from memory)


def rows(path):
    done = subprocess.run(["midicsv", path], capture_output=True, text=True, check=True)
    return [[each.strip() for each in line.split(",")] for line in done.stdout.splitlines()]


def seconds(tick, tempo):
    return Fraction(tick) / 2400 * Fraction(tempo, 1_000_000)


@READ
@pytest.mark.parametrize("name", RATES)
def test_every_second_frame_is_told_when_it_begins(name, tmp_path):
    rate = RATES[name]
    first = frame_labelled("00:00:58:00", rate)
    path = tmp_path / "code.mid"
    write_midi_timecode(path, first, Fraction(0), Fraction(6), rate)
    read = rows(path)
    (tempo,) = (int(row[3]) for row in read if row[2] == "Tempo")
    (offset,) = ([int(each) for each in row[3:]] for row in read if row[2] == "SMPTE_offset")
    assert offset == [CODES[name] << 5, 0, 58, 0, 0]
    (full,) = ([int(each) for each in row[4:]] for row in read if row[2] == "System_exclusive")
    assert full == [127, 127, 1, 1, CODES[name] << 5, 0, 58, 0, 247]
    sent = [(int(row[1]), int(row[5])) for row in read if row[2] == "System_exclusive_packet"]
    assert all(row[3:5] == ["2", "241"] for row in read if row[2] == "System_exclusive_packet")
    assert [data >> 4 for _, data in sent] == [k % 8 for k in range(len(sent))]
    assert len(sent) >= 8 * int(3 * rate.exact) - 8
    for k in range(0, len(sent), 8):
        at = [tick for tick, _ in sent[k : k + 8]]
        low = [data & 15 for _, data in sent[k : k + 8]]
        value = [low[n] | low[n + 1] << 4 for n in (0, 2, 4, 6)]
        frame = k // 4
        told = digits_of(first + frame, rate)
        assert value == [told.frames, told.seconds, told.minutes, CODES[name] << 5 | told.hours]
        for n, tick in enumerate(at):  # four quarter frames a frame
            assert seconds(tick, tempo) == (frame + Fraction(n, 4)) / rate.exact


@READ
def test_a_part_begins_with_the_next_whole_frame(tmp_path):
    rate = RATES["25"]
    path = tmp_path / "code.mid"
    path.write_bytes(midi_timecode(0, Fraction(1001, 100), Fraction(12), rate))
    sent = [row for row in rows(path) if row[2] == "System_exclusive_packet"]
    assert seconds(sent[0][1], 1_000_000) == Fraction(3, 100)  # 10.04 s, frame 251
    assert int(sent[0][5]) == 251 % 25 & 15
