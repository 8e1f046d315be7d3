"""Beats of every signature and tempo in a MIDI file, and the words of a table that begin a bar.

Source: Standard MIDI Files 1.0: 120 quarters a minute and 4/4 where the file says nothing; a signature's
denominator is the note that is counted, and 6/8, 9/8 and 12/8 are counted in dotted quarters.
"""

import struct

import mido
import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.errors import InputError
from sequencer.timing import taps
from sequencer.timing.taps import given_count


def saved(tmp_path, messages, *, ticks=96, name="song.mid"):
    """A file with messages at absolute ticks, in one track."""
    file, track, now = mido.MidiFile(ticks_per_beat=ticks), mido.MidiTrack(), 0
    for tick, message in messages:
        track.append(message.copy(time=tick - now))
        now = tick
    file.tracks.append(track)
    file.save(tmp_path / name)
    return tmp_path / name


def signed(numerator, denominator):
    return mido.MetaMessage("time_signature", numerator=numerator, denominator=denominator)


NOTE = mido.Message("note_on", note=60)


def test_a_file_that_says_nothing_is_in_four_at_120(tmp_path):
    count = given_count(saved(tmp_path, [(8 * 96 - 1, NOTE)]))
    assert_allclose(count.beats, np.arange(8) / 2, atol=1e-6)
    assert count.downbeats == (0.0, 2.0)


@pytest.mark.parametrize(
    ("numerator", "denominator", "quarters", "bar"),
    [
        (2, 4, 1.0, 2), (3, 4, 1.0, 3), (5, 4, 1.0, 5), (6, 4, 1.0, 6),
        (3, 8, 0.5, 3), (5, 8, 0.5, 5), (7, 8, 0.5, 7), (2, 2, 2.0, 2), (4, 2, 2.0, 4),
        (6, 8, 1.5, 2), (9, 8, 1.5, 3), (12, 8, 1.5, 4),
    ],
)  # fmt: skip
def test_beats_are_those_of_the_signature(tmp_path, numerator, denominator, quarters, bar):
    end = round(3 * bar * quarters * 96) - 1
    count = given_count(saved(tmp_path, [(0, signed(numerator, denominator)), (end, NOTE)]))
    assert_allclose(count.beats, np.arange(3 * bar) * quarters / 2, atol=1e-6)
    assert count.downbeats == count.beats[::bar]


def test_a_tempo_changes_within_a_beat(tmp_path):
    """Half a quarter at 0.5 s, then all at 0.25 s a quarter: the next beat comes 0.25 + 0.125 s later."""
    tempo = mido.MetaMessage("set_tempo", tempo=250_000)
    count = given_count(saved(tmp_path, [(144, tempo), (6 * 96 - 1, NOTE)]))
    assert_allclose(count.beats, [0, 0.5, 0.875, 1.125, 1.375, 1.625], atol=1e-6)


def test_a_tempo_change_on_a_beat_holds_from_it(tmp_path):
    tempi = [mido.MetaMessage("set_tempo", tempo=t) for t in (600_000, 300_000, 900_000)]
    events = [(0, tempi[0]), (96, tempi[1]), (288, tempi[2]), (5 * 96 - 1, NOTE)]
    count = given_count(saved(tmp_path, events))
    assert_allclose(count.beats, [0, 0.6, 0.9, 1.2, 2.1], atol=1e-6)


def test_a_signature_begins_a_bar_and_cuts_the_one_before(tmp_path):
    """Three eighths of 7/8 short of its bar: a new bar all the same; the last of a moment counts."""
    events = [
        (0, signed(7, 8)),
        (4 * 48, signed(5, 8)),
        (4 * 48, signed(3, 4)),
        (4 * 48 + 6 * 96 - 1, NOTE),
    ]
    count = given_count(saved(tmp_path, events))
    assert_allclose(count.beats, [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 3.5], atol=1e-6)
    assert count.downbeats == (0.0, 1.0, 2.5)


def test_a_beat_hardly_before_a_signature_is_that_of_the_signature():
    """An eighth of a beat is the least: 7 of 8 parts leave the beat out, 6 of 8 leave it in."""
    for late, kept in ((12, False), (13, True)):
        ticks, firsts = taps._beat_ticks({0: (4, 4), 192 + late: (4, 4)}, 192 + late + 95, 96)
        assert (192 in ticks.tolist()) == kept
        assert firsts == [True, False, *([False] if kept else []), True]


def test_tracks_share_one_time(tmp_path):
    """The tempo may stand in a track of its own, after the notes."""
    file = mido.MidiFile(ticks_per_beat=96)
    file.tracks.append(mido.MidiTrack([NOTE.copy(time=4 * 96 - 1)]))
    file.tracks.append(mido.MidiTrack([mido.MetaMessage("set_tempo", tempo=10**6, time=96)]))
    file.save(tmp_path / "two.mid")
    assert_allclose(given_count(tmp_path / "two.mid").beats, [0, 0.5, 1.5, 2.5], atol=1e-6)


def test_a_midi_file_is_known_by_what_it_holds_too(tmp_path):
    path = saved(tmp_path, [(4 * 96 - 1, NOTE)], name="song.dat")
    assert given_count(path).beats == (0.0, 0.5, 1.0, 1.5)


def test_three_beats_are_too_few_and_four_are_not(tmp_path):
    with pytest.raises(InputError) as caught:
        given_count(saved(tmp_path, [(3 * 96 - 1, NOTE)]))
    assert caught.value.code == "taps-too-few"
    path = tmp_path / "taps.txt"
    path.write_text("1\n2\n3\n", encoding="utf-8")
    with pytest.raises(InputError, match="only 3 beats"):
        given_count(path)
    path.write_text("0\n1\n2\n3\n", encoding="utf-8")
    assert given_count(path).beats == (0.0, 1.0, 2.0, 3.0)


def test_a_file_of_exactly_the_largest_size_is_read(tmp_path, monkeypatch):
    path = tmp_path / "taps.txt"
    path.write_text("0\n1\n2\n3\n", encoding="utf-8")
    monkeypatch.setattr(taps, "_LARGEST", path.stat().st_size)
    assert len(given_count(path).beats) == 4
    monkeypatch.setattr(taps, "_LARGEST", path.stat().st_size - 1)
    with pytest.raises(InputError, match="too large"):
        given_count(path)


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("1", True), ("1.0", True), ("17.1", True), ("1.1", True), ("2.0", False), ("3.2", False),
        ("2", False), ("12", False), ("downbeat", True), ("Downbeat", True), ("X", True), ("d", True),
        ("true", True), ("yes", True), ("no", False), ("", False), ("10", False), ("1.10", False), ("1." + "9" * 5000, False),
    ],
)  # fmt: skip
def test_what_begins_a_bar(text, first):
    assert taps._is_first(text) == first


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("2", 2.0), ("2.", 2.0), (".5", 0.5), (",5", 0.5), ("1:02.5", 62.5), ("10:00", 600.0),
        (" 3 s ", 3.0), ("3s", 3.0), ("1:2:3", None), ("-1", None), ("1e3", None), ("", None),
    ],
)  # fmt: skip
def test_what_a_time_may_look_like(text, seconds):
    assert taps._seconds(text) == seconds


def test_a_bouncing_finger_is_one_nearer_than_an_eighth_of_a_second(tmp_path):
    path = tmp_path / "taps.txt"
    path.write_text("0\n0.119\n1\n1.12\n1.121\n2\n3\n", encoding="utf-8")
    assert given_count(path).beats == (0.0, 1.0, 1.12, 2.0, 3.0)


@pytest.mark.parametrize("head", taps._TIMES)
def test_each_heading_of_times_is_known_in_any_column(tmp_path, head):
    path = tmp_path / "taps.csv"
    rows = "".join(f"x;{k % 2 + 1};{k}\n" for k in range(4))
    path.write_text(f"note;place;{head}\n{rows}", encoding="utf-8")
    count = given_count(path)
    assert count.beats == (0.0, 1.0, 2.0, 3.0)
    assert count.downbeats == (0.0, 2.0)


@pytest.mark.parametrize("head", taps._PLACES)
def test_each_heading_of_places_is_known_before_the_times(tmp_path, head):
    path = tmp_path / "taps.csv"
    rows = "".join(f"{k % 2 + 1},{k}\n" for k in range(4))
    path.write_text(f"{head},time\n{rows}", encoding="utf-8")
    assert given_count(path).downbeats == (0.0, 2.0)


def test_a_heading_without_places_leaves_the_bars_open(tmp_path):
    path = tmp_path / "taps.csv"
    path.write_text("time,note\n0,1\n1,1\n2,1\n3,1\n", encoding="utf-8")
    assert given_count(path).downbeats == ()


def test_a_row_without_a_time_is_named_by_its_line(tmp_path):
    path = tmp_path / "taps.csv"
    path.write_text("# by hand\nplace;time\n1;0\n2;1\n1\n", encoding="utf-8")
    with pytest.raises(InputError) as caught:
        given_count(path)
    assert (caught.value.code, caught.value.place.line, caught.value.place.column) == (
        "tap-not-a-time", 5, 1,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("lines", "mark"),
    [
        (["1;2,5"], ";"), (["1\t2,5"], "\t"), (["1,2"], ","), (["1 2"], None), ([], None),
        (["time", "0,5"], None), (["time,place", "0,1"], ","), (["1", "2,5"], ","),
    ],
)  # fmt: skip
def test_what_parts_columns(lines, mark):
    assert taps._separator(lines) == mark


def test_commas_are_columns_where_one_row_cannot_be_read_two_ways(tmp_path):
    path = tmp_path / "taps.csv"
    for text in ("1,2\n2,x\n3,1\n4,2\n", "1.5,1\n2,2\n3,1\n4,2\n", "1,1\n2,2,x\n3,1\n4,2\n"):
        path.write_text(text, encoding="utf-8")
        assert len(given_count(path).beats) == 4
    path.write_text("1:02,5\n1:03,5\n1:04,5\n1:05,5\n", encoding="utf-8")
    with pytest.raises(InputError, match=r"time 1:02\.5 or as the time 1:02 and a second"):
        given_count(path)


def test_a_time_given_twice_is_refused(tmp_path):
    path = tmp_path / "taps.txt"
    path.write_text("1\n2\n2\n3\n4\n", encoding="utf-8")
    with pytest.raises(InputError, match="2 s comes after 2 s"):
        given_count(path)


def headed(tmp_path, division, signature=b"", delta=b"\x60", notes=40):
    """A file written by hand, as no program writes it."""
    track = (
        signature + b"".join(delta + b"\x90\x3c\x40" for _ in range(notes)) + b"\x00\xff\x2f\x00"
    )
    head = b"MThd" + struct.pack(">IHHH", 6, 0, 1, division)
    path = tmp_path / "odd.mid"
    path.write_bytes(head + b"MTrk" + struct.pack(">I", len(track)) + track)
    return path


@pytest.mark.parametrize(
    ("division", "signature", "says"),
    [
        (0xE728, b"", "does not count in parts of a beat"),  # SMPTE, 25 frames of 40 ticks
        (0x0000, b"", "does not count in parts of a beat"),
        (96, b"\x00\xff\x58\x04\x00\x02\x18\x08", "signature of 0 over 4"),
        (96, b"\x00\xff\x58\x04\x04\x14\x18\x08", "more than a million"),
        (96, b"\x00\xff\x58\x04\x04\xff\x18\x08", "more than a million"),
        (96, b"\x00\xff\x58\x04\x04\x07\x18\x08", "signature of 4 over 128"),
        (96, b"\x00\xff\x51\x03\x00\x00\x00", "tempo of no time"),
        (96, b"\x00\xff\x59\x02\xfd\x07", "cannot be read"),  # a key of three flats in no mode
    ],
)
def test_heads_and_signatures_that_count_nothing_are_refused(tmp_path, division, signature, says):
    with pytest.raises(InputError, match=says):
        given_count(headed(tmp_path, division, signature))


def test_a_file_longer_than_any_song_is_refused_before_its_beats_are_made(tmp_path):
    with pytest.raises(InputError, match="longer than 100,000 beats"):
        given_count(headed(tmp_path, 96, delta=b"\xff\xff\xff\x7f", notes=50))
    with pytest.raises(InputError, match="longer than 100,000 beats"):
        given_count(headed(tmp_path, 1, delta=b"\x87\x68", notes=101))  # 1,000 beats each
    with_finest = b"\x00\xff\x58\x04\x04\x06\x18\x08"
    assert len(given_count(headed(tmp_path, 96, with_finest)).beats) == 16 * 40 + 1
