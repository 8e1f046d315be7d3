"""Counts that performers bring: tapped, tabled, or in a MIDI file."""

import mido
import numpy as np
import pytest

from sequencer.errors import InputError
from sequencer.timing.taps import given_count


def written(tmp_path, text, name="taps.txt"):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize(
    "text",
    [
        "0.5\n1.0\n1.5\n2.0\n",
        "# tapped\n0:00.5\n0:01\n\n1.5 s\n0:02.0\n",
        "time,place\n0.5,1\n1.0,2\n1.5,3\n2.0,4\n",
        "\ufeffbar;seconds\n1.1;0,5\n1.2;1,0\n1.3;1,5\n1.4;2,0\n",
        "0.5\t1\n1.0\t2\n1.5\t3\n2.0\t4\n",
        "0.5\n0.55\n1.0\n1.5\n2.0\n",
        "seconds\n0,500\n1,000\n1,500\n2,000\n",
        "0,500;1\n1,000;2\n1,500;3\n2,000;4\n",
    ],
    ids=[
        "plain",
        "clock and comment",
        "csv",
        "semicolons",
        "tabs",
        "a bounced tap",
        "one column of decimal commas",
        "decimal commas",
    ],
)
def test_times_are_read(tmp_path, text):
    assert given_count(written(tmp_path, text)).beats == (0.5, 1.0, 1.5, 2.0)


@pytest.mark.parametrize("time", ["12,345", "0:12,5"])
def test_a_comma_that_may_part_columns_is_refused_and_both_readings_are_named(tmp_path, time):
    first, second = time.split(",")
    text = "".join(f"{first[:-2]}{n},{second}\n" for n in range(12, 20))

    with pytest.raises(
        InputError, match=rf"time {first}\.{second} or as the time {first} and"
    ) as caught:
        given_count(written(tmp_path, text))

    assert (caught.value.code, caught.value.place.line) == ("taps-two-ways", 1)


def test_a_number_of_thousands_of_digits_is_named_by_its_beginning(tmp_path):
    with pytest.raises(InputError, match=r"the time 0.9{20}… or as") as caught:
        given_count(written(tmp_path, f"0,{'9' * 5000}\n" * 4))
    assert len(str(caught.value)) < 400


def test_whole_seconds_with_a_second_column_are_read_where_one_row_shows_it(tmp_path):
    count = given_count(written(tmp_path, "1,1\n2.5,2\n4,1\n5.5,2\n"))

    assert count.beats == (1.0, 2.5, 4.0, 5.5)
    assert count.downbeats == (1.0, 4.0)


def test_bars_are_read_where_told(tmp_path):
    rows = "\n".join(f"{0.5 + 0.5 * i},{i % 3 + 1}" for i in range(9))

    assert given_count(written(tmp_path, rows)).downbeats == (0.5, 2.0, 3.5)
    assert given_count(written(tmp_path, "1\n2\n3\n4\n")).downbeats == ()


@pytest.mark.parametrize(
    ("text", "code", "line"),
    [
        ("0.5\nsoon\n1.5\n2\n", "tap-not-a-time", 2),
        ("0.5\n2\n1.5\n3\n", "taps-do-not-rise", 3),
        ("0.5\n1\n", "taps-too-few", None),
        ("", "taps-too-few", None),
        ("-1\n2\n3\n4\n5\n6\n", "tap-not-a-time", 1),
    ],
)
def test_slips_are_named_by_line(tmp_path, text, code, line):
    with pytest.raises(InputError) as caught:
        given_count(written(tmp_path, text))

    assert (caught.value.code, caught.value.place.line) == (code, line)


def test_files_that_are_none(tmp_path):
    with pytest.raises(InputError, match="cannot be read"):
        given_count(tmp_path / "none.txt")
    binary = tmp_path / "x.csv"
    binary.write_bytes(b"\xff\xfe\x00\x01" * 50)
    with pytest.raises(InputError, match="not text"):
        given_count(binary)
    broken = tmp_path / "x.mid"
    broken.write_bytes(b"MThd\x00\x00\x00\x06\x00\x01\x00\x01\x01\xe0MTrk\x00\x00\x10\x00")
    with pytest.raises(InputError, match=r"MIDI file"):
        given_count(broken)


def test_midi_tempo_and_signature(tmp_path):
    """Source: Standard MIDI Files 1.0: tempo in microseconds a quarter note, 480 ticks a quarter.

    Four quarters at 500 000 µs last 2 s, the next bar at 1 000 000 µs 4 s; then 6/8 in dotted quarters.
    """
    file = mido.MidiFile(ticks_per_beat=480)
    track = mido.MidiTrack()
    file.tracks.append(track)
    track.append(mido.MetaMessage("time_signature", numerator=4, denominator=4, time=0))
    track.append(mido.MetaMessage("set_tempo", tempo=500_000, time=0))
    track.append(mido.MetaMessage("set_tempo", tempo=1_000_000, time=4 * 480))
    track.append(mido.MetaMessage("time_signature", numerator=6, denominator=8, time=4 * 480))
    track.append(mido.Message("note_on", note=60, time=2 * 3 * 480 - 1))
    path = tmp_path / "song.mid"
    file.save(path)

    count = given_count(path)

    np.testing.assert_allclose(
        count.beats, [0, 0.5, 1, 1.5, 2, 3, 4, 5, 6, 7.5, 9, 10.5], atol=1e-6
    )
    assert count.downbeats == (0.0, 2.0, 6.0, 9.0)


def test_a_word_beside_the_first_time_makes_no_heading(tmp_path):
    """The first beat of a table without a heading is not lost because it is named."""
    path = tmp_path / "taps.csv"
    path.write_text("0.5,downbeat\n1.0,x\n1.5,x\n2.0,x\n2.5,downbeat\n", encoding="utf-8")

    assert given_count(path).beats[0] == 0.5
