"""What `rehearse` writes, and what it refuses."""

import numpy as np
import pytest
import soundfile as sf

from sequencer.errors import InputError
from sequencer.outputs.exports.folder import ExportOptions, write_exports
from sequencer.outputs.sound.counts import Mix


@pytest.fixture(scope="module")
def staged(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("exports"))


def test_everything_is_written(staged, rounds, tmp_path):
    track = tmp_path / "song.wav"
    sf.write(track, np.zeros((8000 * 192, 1)), 8000)

    written = write_exports(
        staged, rounds.report(), track, tmp_path / "out", ExportOptions(speeds=(1.0, 0.7))
    )

    assert [path.name for path in written] == [
        "rehearsal.html", "counts.wav", "counts-70.wav", "cues.mid", "captions.vtt",
        "timetable.csv", "timetable.json",
    ]  # fmt: skip
    assert all(path.stat().st_size > 500 for path in written)
    slow, plain = sf.info(written[2]), sf.info(written[1])
    assert slow.duration == pytest.approx((plain.duration - 0.5) / 0.7 + 0.5, abs=0.01)


def test_a_missing_song_makes_a_silent_page_and_clicks(staged, rounds, tmp_path):
    written = write_exports(
        staged,
        rounds.report(),
        tmp_path / "gone.wav",
        tmp_path,
        ExportOptions(parts=("page", "counts")),
    )

    assert "silent clock" in written[0].read_text(encoding="utf-8")
    assert sf.info(written[1]).duration > 190


def test_a_linked_song_is_named_from_the_page(staged, rounds, tmp_path):
    track = tmp_path / "my song.wav"
    sf.write(track, np.zeros(800), 8000)

    write_exports(
        staged,
        rounds.report(),
        track,
        tmp_path / "out",
        ExportOptions(parts=("page",), audio="link"),
    )

    page = (tmp_path / "out" / "rehearsal.html").read_text(encoding="utf-8")
    assert '"../my%20song.wav"' in page


def test_a_name_that_nobody_has_is_refused(staged, rounds, tmp_path):
    with pytest.raises(InputError, match="no 'Nobody' in the cast"):
        write_exports(
            staged, rounds.report(), None, tmp_path, ExportOptions(mix=Mix(who=("Nobody",)))
        )


def test_a_track_that_is_no_sound_is_refused(staged, rounds, tmp_path):
    track = tmp_path / "song.wav"
    track.write_text("no sound", encoding="utf-8")
    with pytest.raises(InputError, match="cannot read the track"):
        write_exports(staged, rounds.report(), track, tmp_path, ExportOptions(parts=("counts",)))
