"""The verb `rehearse`: what it writes, what it refuses, and a song that is gone."""

import shutil

import pytest
import soundfile as sf
from click.testing import CliRunner

from sequencer.cli import main


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


@pytest.fixture(scope="module")
def own_folder(stage_folder, tmp_path_factory):
    folder = tmp_path_factory.mktemp("rehearse")
    for name in ("song.wav", "show.yaml"):
        shutil.copy(stage_folder / name, folder / name)
    return folder


def test_writes_what_it_names(own_folder):
    out = own_folder / "exports"
    result = run("rehearse", own_folder / "show.yaml", "--out", out, "--speed", 100, "--speed", 70)

    assert result.exit_code in {0, 1}
    written = [line for line in result.stdout.splitlines() if line]
    assert written == [
        str(out / "show" / name)
        for name in (
            "rehearsal.html", "counts.wav", "counts-70.wav", "cues.mid", "captions.vtt",
            "timetable.csv", "timetable.json", "cue-list.csv",
        )
    ]  # fmt: skip
    assert sf.info(written[1]).duration == pytest.approx(40.5, abs=0.1)
    assert "audio/mpeg" in (out / "show" / "rehearsal.html").read_text(encoding="utf-8")


def test_only_what_is_asked_for(own_folder, tmp_path):
    result = run("rehearse", own_folder / "show.yaml", "--out", tmp_path, "--only", "midi")

    assert result.exit_code in {0, 1}
    assert [path.name for path in (tmp_path / "show").iterdir()] == ["cues.mid"]


@pytest.mark.parametrize("part", ["counts", "midi", "captions", "timetable"])
def test_what_needs_no_check_makes_none(own_folder, tmp_path, monkeypatch, part):
    """Neither checks nor the page's motion; of these only the count track reads the song's samples."""
    from sequencer.outputs.exports import folder
    from sequencer.outputs.rehearsal import page_data
    from sequencer.planning import offers

    def refuse(*_given, **_named):
        raise RuntimeError("not needed")

    monkeypatch.setattr(offers, "checked_with_mends", refuse)
    monkeypatch.setattr(page_data, "cast_document", refuse)
    if part != "counts":
        monkeypatch.setattr(folder, "read_recording", refuse)
    result = run("rehearse", own_folder / "show.yaml", "--out", tmp_path, "--only", part)

    assert result.exit_code == 0, result.output
    assert list((tmp_path / "show").iterdir())
    # Asked in one text that nobody has checked, the page does need the check.
    text = (own_folder / "show.yaml").read_text(encoding="utf-8")
    (tmp_path / "new.yaml").write_text(f"{text}# {part}\n", encoding="utf-8")
    shutil.copy(own_folder / "song.wav", tmp_path / "song.wav")
    asked = run("rehearse", tmp_path / "new.yaml", "--out", tmp_path, "--only", "page")
    assert asked.exit_code == 70  # the refusal above


def test_click_only_for_one_performer_with_words(own_folder, tmp_path):
    result = run(
        "rehearse", own_folder / "show.yaml", "--out", tmp_path, "--only", "counts",
        "--click-only", "--counts", "spoken", "--for", "Ash", "--split",
    )  # fmt: skip

    assert result.exit_code in {0, 1}
    samples, _ = sf.read(tmp_path / "show" / "counts.wav")
    assert abs(samples[:, 0]).max() == 0.0
    assert abs(samples[:, 1]).max() > 0.1


def test_an_unknown_performer_is_bad_input(own_folder, tmp_path):
    result = run("rehearse", own_folder / "show.yaml", "--out", tmp_path, "--for", "Nobody")

    assert result.exit_code == 2
    assert "no 'Nobody' in the cast" in result.stderr
    assert not list(tmp_path.iterdir())


def test_a_song_that_is_gone(own_folder, tmp_path):
    """Without a hash the count is not known; with it, what was heard before stands in, in silence."""
    from sequencer.listening.signal.audio import sha256_of

    text = (own_folder / "show.yaml").read_text(encoding="utf-8")
    pinned = sha256_of(own_folder / "song.wav")
    run("listen", own_folder / "song.wav")
    (tmp_path / "bare.yaml").write_text(text, encoding="utf-8")
    (tmp_path / "pinned.yaml").write_text(
        text.replace("file: song.wav", f"file: song.wav\n  sha256: {pinned}"), encoding="utf-8"
    )

    bare = run("rehearse", tmp_path / "bare.yaml", "--out", tmp_path)
    silent = run("rehearse", tmp_path / "pinned.yaml", "--out", tmp_path, "--only", "page")

    assert bare.exit_code == 2
    assert "cannot find the track" in bare.stderr
    assert silent.exit_code in {0, 1}
    page = (tmp_path / "pinned" / "rehearsal.html").read_text(encoding="utf-8")
    assert "silent clock" in page


@pytest.mark.parametrize("speed", ["10", "300", "fast"])
def test_a_speed_out_of_range_is_refused(own_folder, speed):
    assert run("rehearse", own_folder / "show.yaml", "--speed", speed).exit_code == 2
