"""Rows of a tapped count one by one: headings, missing cells, and times of a MIDI file to a microsecond."""

from fractions import Fraction

import mido
import pytest

from sequencer.errors import InputError
from sequencer.timing import taps
from sequencer.timing.taps import given_count


def count(tmp_path, text, name="taps.csv"):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return given_count(path)


@pytest.mark.parametrize(
    ("text", "beats", "firsts"),
    [
        (
            "foo,place\n0,1\n1,2\n2,1\n3,2\n",
            (0, 1, 2, 3),
            (0, 2),
        ),  # an unknown heading: the first column
        ("x,time\n9,0\n8,1\n7,2\n6,3\n", (0, 1, 2, 3), ()),
        ("time\n0\n1\n2\n3\n", (0, 1, 2, 3), ()),
        ("0;1;9\n1;2;9\n2;1;9\n3;2;9\n", (0, 1, 2, 3), (0, 2)),
        ("0 1\n1 2\n2 1\n3\n", (0, 1, 2, 3), (0, 2)),  # the last says nothing of its place
        ("  0 x\n1\n\n# 1.5\n2 X\n3 1.1\n", (0, 1, 2, 3), (0, 2, 3)),
        ("time;bar\n0;1\n1;1.2\n2;1.3\n3;2.1\n", (0, 1, 2, 3), (0, 3)),
        ("bar;time\n1;0\n2;1\n1;2\n2;3\n", (0, 1, 2, 3), (0, 2)),
        ("s;label\n0;downbeat\n1;\n2;d\n3;no\n", (0, 1, 2, 3), (0, 2)),
    ],
)
def test_rows_of_every_kind(tmp_path, text, beats, firsts):
    found = count(tmp_path, text)
    assert (found.beats, found.downbeats) == (beats, firsts)


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("time\nsoon\n1\n2\n3\n", 2), ("x 0\n1\n2\n3\n4\n", 1), ("0\n1\n2\nthree\n", 4),
        ("a;time\nx\n", 2),
    ],
)  # fmt: skip
def test_rows_without_a_time_are_refused_where_they_stand(tmp_path, text, line):
    with pytest.raises(InputError, match="is not a time") as caught:
        count(tmp_path, text)
    assert caught.value.place.line == line


def test_a_heading_alone_or_nothing_is_too_few(tmp_path):
    for text, says in (
        ("time\n", "only 0 beats"),
        ("\n\n", "only 0 beats"),
        ("time\n1\n", "only 1 beats"),
    ):
        with pytest.raises(InputError, match=says):
            count(tmp_path, text)


def test_a_file_may_have_four_megabytes():
    assert taps._LARGEST == 4_000_000  # weeks of beats


@pytest.mark.parametrize("suffix", [".mid", ".MIDI", ".smf"])
def test_a_midi_file_is_known_by_its_name(tmp_path, suffix):
    with pytest.raises(InputError) as caught:
        count(tmp_path, "0\n1\n2\n3\n", name=f"song{suffix}")
    assert caught.value.code == "midi-not-understood"


def test_times_of_a_midi_file_are_rounded_to_a_microsecond(tmp_path):
    """Seven ticks a quarter; after one and after twelve ticks the tempo changes: exact fractions beside it."""
    tempi = {0: 333_331, 1: 500_000, 12: 777_777}
    file = mido.MidiFile(ticks_per_beat=7)
    track = mido.MidiTrack()
    for tick, delta in ((0, 0), (1, 1), (12, 11)):
        track.append(mido.MetaMessage("set_tempo", tempo=tempi[tick], time=delta))
    track.append(mido.Message("note_on", note=60, time=28))
    file.tracks.append(track)
    file.save(tmp_path / "x.mid")
    exact, now = [], Fraction(0)
    for tick in range(41):
        if tick % 7 == 0:
            exact.append(round(float(now), 6))
        rate = tempi[max(start for start in tempi if start <= tick)]
        now += Fraction(rate, 7 * 10**6)
    assert given_count(tmp_path / "x.mid").beats == tuple(exact)


def test_an_empty_midi_file_is_too_short(tmp_path):
    file = mido.MidiFile(ticks_per_beat=96)
    file.tracks.append(mido.MidiTrack())
    file.save(tmp_path / "x.mid")
    with pytest.raises(InputError, match="shorter than four beats"):
        given_count(tmp_path / "x.mid")


@pytest.mark.parametrize(
    ("metre", "step", "bar"),
    [((6, 8), 144, 2), ((9, 8), 144, 3), ((12, 8), 144, 4), ((3, 8), 48, 3), ((6, 16), 24, 6), ((6, 4), 96, 6), ((15, 8), 48, 15)],
)  # fmt: skip
def test_beats_in_ticks_of_a_signature_that_begins_late(metre, step, bar):
    """The last beat begins an eighth of itself or more before the end, which is one tick after the last."""
    end = 1000 + 2 * bar * step + step // 8
    ticks, firsts = taps._beat_ticks({1000: metre}, end - 1, 96)
    assert ticks.tolist() == [1000 + k * step for k in range(2 * bar)]
    assert firsts == [k % bar == 0 for k in range(2 * bar)]
    assert len(taps._beat_ticks({1000: metre}, end, 96)[0]) == 2 * bar + 1
