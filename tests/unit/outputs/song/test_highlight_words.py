"""What stands out, told by bar and time."""

from dataclasses import replace

import numpy as np

from sequencer.outputs.song.highlight_words import highlight_records, highlights_text
from sequencer.outputs.song.song_chart import song_chart
from sequencer.outputs.song.song_report import song_record, song_summary
from tests.songs import even_song, silent_song


def song():
    """Quiet for two beats before bar 17; seven strokes that stand alone, each on another place of its bar, the later the stronger."""
    made = even_song(128)
    at = np.arange(640) / 10 / 0.5
    level = np.where((at >= 62) & (at < 64), -40.0, -10.0)
    strokes = tuple((80 + 4.5 * k) * 0.5 for k in range(7))
    strengths = tuple(1 + 0.1 * k for k in range(7))
    return replace(made, loudness=tuple(level.tolist()), onsets=strokes, onset_strengths=strengths)


def test_each_kind_has_a_line_and_the_strongest_are_named():
    assert highlights_text(song()) == [
        "breaks off 2 beats from 16.3 (0:31.0)",
        "drops at 17.1 (0:32.0)",
        "single strokes at 23.2 (0:44.5), the and of 24.2 (0:46.8), 25.3 (0:49.0), the and of 26.3 (0:51.2), 27.4 (0:53.5)",
    ]
    assert highlights_text(song())[0] in song_summary(song())


def test_a_build_says_where_it_leads():
    made = even_song(128)
    level = np.interp(np.arange(640) / 10 / 0.5, [32, 64, 64.1, 128], [-18, -13, -9, -9])
    told = highlights_text(replace(made, loudness=tuple(level.tolist())))
    assert told[0] == "builds up from 9.1 (0:16.0) to 17.1"


def test_the_record_has_all_of_them(tmp_path):
    records = song_record(song(), tmp_path / "s.ogg")["highlights"]
    assert records == highlight_records(song())
    assert records[0] == {
        "kind": "break", "start": 31.0, "end": 32.0, "from": "16.3", "to": "17.1", "strength": 27.0,
    }  # fmt: skip
    assert len(records) == 7


def test_the_chart_explains_what_it_marks():
    legend = song_chart(song()).get_supxlabel()
    assert "□ break" in legend
    assert "◆ drop" in legend
    assert "× accent" in legend
    assert "╱" not in legend


def test_without_a_count_nothing_is_told():
    assert highlights_text(silent_song()) == []
    assert highlight_records(silent_song()) == []
