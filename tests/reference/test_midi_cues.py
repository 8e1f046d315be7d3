"""The MIDI file as two independent libraries read it.

Source: Standard MIDI Files 1.0 (RP-001) by way of mido, a reader of events, and pretty_midi, which
makes seconds of its own from tempo events. Beats must come back to 1 ms, the tolerance asked for; the
file itself is exact to 0.5 µs a beat, and a marker between beats to half a tick (0.3 ms at 112 beats a
minute).
"""

import warnings
from dataclasses import replace

import mido
import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.outputs.exports.midi import midi_file, write_midi


def on_beats(rounds, folder, heard):
    """The round on other beats: its cues are written by the beat, so nobody needs to dance them anew."""
    return replace(rounds.show(folder), song=heard, tempo=heard.tempo_map())


@pytest.fixture(scope="module")
def staged(rounds, tmp_path_factory):
    """A song that wavers and starts with a pickup of three beats."""
    song = rounds.song()
    wavering = np.array(song.beats) + 0.02 * np.sin(np.arange(len(song.beats)) / 7) + 0.1234
    beats = tuple(float(beat) for beat in wavering[wavering < song.duration])
    heard = replace(song, beats=beats, downbeats=beats[3::4])
    return on_beats(rounds, tmp_path_factory.mktemp("midi"), heard)


@pytest.fixture(scope="module")
def path(staged, tmp_path_factory):
    file = tmp_path_factory.mktemp("midi") / "cues.mid"
    write_midi(file, staged)
    return file


def timed(path):
    """(seconds, message) of every event, by mido's own clock."""
    file = mido.MidiFile(path, charset="utf-8")
    now, out = 0.0, []
    for message in file:
        now += message.time
        out.append((now, message))
    return out


def test_bars_are_where_mido_puts_them(staged, path):
    bars = [(s, m.text) for s, m in timed(path) if m.type == "marker" and m.text.startswith("bar ")]

    assert len(bars) > 90
    for seconds, text in bars:
        beat = staged.tempo.bar_start(int(text.removeprefix("bar ")))
        assert seconds == pytest.approx(staged.seconds(beat), abs=1e-3)


def test_blocks_are_where_mido_puts_them(staged, path):
    cues = [(s, m.text.split(":")[0]) for s, m in timed(path) if m.type == "cue_marker"]
    wanted = sorted((staged.seconds(block.start), block.title) for block in staged.blocks)

    assert len(cues) == len(wanted)
    assert_allclose(sorted(s for s, _ in cues), [s for s, _ in wanted], atol=1e-3)


def test_every_beat_is_where_pretty_midi_puts_it(staged, path):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of packages that it imports
        import pretty_midi

        read = pretty_midi.PrettyMIDI(str(path))
    ticks = [read.resolution * i for i in range(len(staged.song.beats) + 1)]
    seconds = np.array([read.tick_to_time(tick) for tick in ticks])
    found = np.array([seconds[np.argmin(np.abs(seconds - beat))] for beat in staged.song.beats])

    assert_allclose(found, staged.song.beats, atol=1e-3)
    assert_allclose(found, staged.song.beats, atol=1e-5)  # what the file can do


def test_downbeats_are_where_pretty_midi_puts_them(staged, path):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import pretty_midi

        found = pretty_midi.PrettyMIDI(str(path)).get_downbeats()
    for downbeat in staged.song.downbeats[:-1]:
        assert np.min(np.abs(found - downbeat)) < 1e-3


def test_names_in_any_script_come_back(staged, path):
    names = [t.name for t in mido.MidiFile(path, charset="utf-8").tracks]

    assert names == [staged.show.title, *staged.show.names]


def test_rounding_does_not_add_up_over_an_hour(rounds, tmp_path):
    """Tempo events are whole microseconds; 7,000 beats of 0.5142857 s stay within 1 µs."""
    beats = tuple(0.3 + 0.5142857 * i for i in range(7000))
    song = replace(
        rounds.song(), beats=beats, downbeats=beats[::4], duration=beats[-1] + 1.0, sections=()
    )
    file = midi_file(on_beats(rounds, tmp_path, song))
    tempos, now, seconds = {}, 0, []
    for message in file.tracks[0]:
        now += message.time
        if message.type == "set_tempo":
            tempos[now // 960] = message.tempo
    tempo, total = 0, 0
    for quarter in range(7001):
        seconds.append(total / 1e6)
        tempo = tempos.get(quarter, tempo)
        total += tempo
    assert_allclose(seconds[1:], beats, atol=1e-6)


def test_a_pause_that_no_tempo_can_say_is_refused(rounds, tmp_path):
    song = rounds.song()
    beats = (*song.beats[:300], song.beats[299] + 20.0)
    heard = replace(song, beats=beats, downbeats=beats[:300:4])
    staged = on_beats(rounds, tmp_path, heard)
    with pytest.raises(ValueError, match=r"at most 16\.7 s"):
        midi_file(staged)


def test_what_is_danced_is_there_as_notes_from_beginning_to_end(staged, path):
    """pretty_midi pairs the notes and gives their seconds: a lit span, a block, each performer on a channel."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import pretty_midi

        read = pretty_midi.PrettyMIDI(str(path))
    told = {}
    for track in mido.MidiFile(path, charset="utf-8").tracks[1:]:
        (text,) = (each.text for each in track if each.type == "text" and "notes:" in each.text)
        for one in text.removeprefix("notes: ").split(", "):
            number, _, title = one.partition(" ")
            assert told.setdefault(title, int(number)) == int(number)
    expected = [
        (told[each.title], each.who, staged.seconds(each.start), staged.seconds(each.end))
        for each in (*staged.blocks, *staged.stops)
    ]
    expected += [
        (told["lit"], each.who, staged.seconds(each.start), staged.seconds(each.end))
        for each in staged.lit
    ]
    names = [each.name.encode("latin-1").decode() for each in read.instruments]
    assert set(names) == set(staged.show.names)
    found = [
        (note.pitch, name, note.start, note.end)
        for name, own in zip(names, read.instruments, strict=True)
        for note in own.notes
    ]
    assert len(found) == len(expected) > 20
    for (pitch, who, start, end), wanted in zip(
        sorted(found, key=lambda n: (n[1], n[0], n[2])),
        sorted(expected, key=lambda n: (n[1], n[0], n[2])),
        strict=True,
    ):
        assert (pitch, who) == wanted[:2]
        assert (start, end) == pytest.approx(wanted[2:], abs=1e-3)
    channels = [
        {each.channel for each in track if not each.is_meta}
        for track in mido.MidiFile(path).tracks[1:]
    ]
    assert all(len(own) == 1 for own in channels)
    assert len(set.union(*channels)) == len(channels)
    assert 9 not in set.union(*channels)


def test_a_note_ends_before_another_begins_at_the_same_moment(path):
    """A program that takes the file in its order never sees a note of what comes next before the last one is over."""
    met = 0
    for track in mido.MidiFile(path).tracks[1:]:
        began = False
        for message in track:
            began = began and message.time == 0
            if message.type == "note_on":
                began = True
            elif message.type == "note_off":
                assert not began
                met += 1
    assert met > 20
