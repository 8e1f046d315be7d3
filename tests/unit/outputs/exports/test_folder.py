"""What `rehearse` writes, and what it refuses."""

from dataclasses import replace

import numpy as np
import pytest
import soundfile as sf

from sequencer.errors import InputError
from sequencer.outputs.exports.folder import ExportOptions, write_exports
from sequencer.outputs.sound.counts import Mix
from sequencer.outputs.sound.recording import write_recording


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
        "timetable.csv", "timetable.json", "cue-list.csv",
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


def test_small_tracks_of_everybody_keep_the_beat_and_say_whose_they_are(staged, rounds, tmp_path):
    """MP3 (ISO/IEC 11172-3) by way of libsndfile; the clicks come back within 2 ms, the tags as they were."""
    both, mix = staged.show.names[:2], Mix(song=None, counts="none", calls=False)

    def written_for(names, speeds, folder):
        options = ExportOptions(
            parts=("counts",), speeds=speeds, small=True, each=True, mix=replace(mix, who=names)
        )
        return write_exports(staged, rounds.report(), None, tmp_path / folder, options)

    first, again = written_for(both, (1.0,), "both"), written_for(both[:1], (1.0, 0.7), "one")

    assert len({path.name for path in first}) == len(first) == 2
    assert len({path.name for path in again}) == len(again) == 2
    assert again[0].read_bytes() == first[0].read_bytes()
    for path, speed, name in (
        (first[0], 1.0, both[0]), (first[1], 1.0, both[1]), (again[1], 0.7, both[0]),
    ):  # fmt: skip
        assert path.name.startswith("counts-")
        assert path.suffix == ".mp3"
        assert path.stat().st_size < 6_000_000
        with sf.SoundFile(path) as file:
            assert file.title == f"Counts for {name}" + ("" if speed == 1.0 else " at 70%")
            assert file.album == staged.show.title
            sound, rate = file.read()[:, 0], file.samplerate
        for beat in staged.song.beats[4:40]:
            at = round(beat / speed * rate)
            near = np.abs(sound[at - rate // 50 : at + rate // 50])
            assert np.argmax(near > 0.5 * near.max()) == pytest.approx(rate // 50, abs=0.002 * rate)


def test_a_recording_of_a_rate_that_mp3_does_not_know_is_brought_to_one(tmp_path):
    t = np.arange(96_000) / 96_000
    write_recording(tmp_path / "high.mp3", 0.5 * np.sin(2 * np.pi * 440 * t), 96_000)
    sound, rate = sf.read(tmp_path / "high.mp3")
    assert rate == 44_100
    spectrum = np.abs(np.fft.rfft(sound[10_000:32_050]))
    assert np.argmax(spectrum) * rate / 22_050 == pytest.approx(440, abs=2)


def test_time_code_is_written_on_demand_and_a_label_that_is_none_is_refused(
    staged, rounds, tmp_path
):
    options = ExportOptions(
        parts=("timecode",), timecodes=("25", "29.97df"), code_from="01:00:00:00"
    )
    written = write_exports(staged, rounds.report(), None, tmp_path, options)
    assert [path.name for path in written] == [
        "timecode-25.wav", "timecode-25.mid", "timecode-29.97df.wav", "timecode-29.97df.mid",
    ]  # fmt: skip
    assert sf.info(written[0]).duration == pytest.approx(staged.song.duration, abs=1e-4)
    for wrong in ("1:00", "00:00:00:25"):
        with pytest.raises(InputError, match="--code-from"):
            write_exports(
                staged, rounds.report(), None, tmp_path / "x",
                ExportOptions(parts=("timecode",), code_from=wrong),
            )  # fmt: skip
        with pytest.raises(InputError, match="--code-from"):
            write_exports(
                staged, rounds.report(), None, tmp_path / "x",
                ExportOptions(parts=("timetable",), code_from=wrong.replace("25", "30")),
            )  # fmt: skip
    assert not (tmp_path / "x").exists()


def test_everybody_s_track_has_a_name_of_its_own(rounds, tmp_path):
    """Names that are written alike without their accents, and one that looks like a speed."""
    text = rounds.ROUND.replace("Søren", "Zoë B").replace("Łucja", "Zoe B").replace("火花", '"70"')
    written = write_exports(
        rounds.show(tmp_path, text), rounds.report(), None, tmp_path / "out",
        ExportOptions(parts=("counts",), speeds=(1.0, 0.7), each=True, mix=Mix(song=None, counts="none", calls=False)),
    )  # fmt: skip
    names = [path.name for path in written]
    assert len(set(names)) == len(names)
    assert not {"counts-70.wav", "counts.wav"} & set(names)
    assert len(list((tmp_path / "out").iterdir())) == len(names)
