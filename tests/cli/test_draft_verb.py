"""`sequencer draft` and what `sequencer new` drafts: text, exit status, and what becomes of the file."""

import os
import shutil
import signal

import pytest
from click.testing import CliRunner

from sequencer.cli import main
from sequencer.planning.drafting import draft_search
from sequencer.show.drafted import drafted_entries
from sequencer.show.reading import read_show

SHOW = """\
title: Small
track:
  file: song.wav
  corrections: {metre: 4, one: 0:00.5}
venue: {stage: {shape: rectangle, width: 12 m, depth: 10 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast:
  - {name: Ash, stature: 1.7, prop: poi, repertoire: {known: [extension, wheel-spin, two-beat-weave, static-spin]}}
"""


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


@pytest.fixture
def show(stage_folder, tmp_path):
    shutil.copy(stage_folder / "song.wav", tmp_path)
    path = tmp_path / "show.yaml"
    path.write_text(SHOW, encoding="utf-8")
    return path


def test_a_show_without_a_timeline_gets_a_clean_routine(show):
    made = run("draft", show, "--why")
    assert made.exit_code == 0, made.output
    assert "checked: no STOP and no WARN comes from the routine" in made.stdout
    assert "under these rules" in made.stdout
    assert "What it costs" in made.stdout
    assert "What is danced" in made.stdout
    text = show.read_text(encoding="utf-8")
    assert text.startswith(SHOW)
    read = read_show(show)
    assert len(drafted_entries(read.document.values)) == len(read.show.timeline) > 0
    result = run("check", show)
    assert result.exit_code == 0, result.output
    again = run("draft", show)
    assert again.exit_code == 0
    assert show.read_text(encoding="utf-8") == text


def test_printing_leaves_the_file_alone(show):
    made = run("draft", show, "--print")
    assert made.exit_code == 0, made.output
    assert "drafted:" in made.stdout
    assert "as this tool weighs them" in made.stderr
    assert show.read_text(encoding="utf-8") == SHOW


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("known: [", "known: [linn, "), "show.yaml:7:"),
        (("known: [", "never: [weave], known: [windmil, "), "did you mean 'windmill'"),
        (("prop: poi", "prop: fan"), "cannot"),
    ],
)
def test_what_cannot_be_drafted_is_one_line_and_the_file_stays(show, change, says):
    text = SHOW.replace(*change)
    if "fan" in text:
        text += "wishes: {moves: {three-beat-weave: 1, pendulum: 1}}\n"
        says = "pendulum is wished once"
    show.write_text(text, encoding="utf-8")
    result = run("draft", show)
    assert result.exit_code == 2, result.output
    assert says in result.stderr
    assert result.stderr.count("\n") == 1
    assert show.read_text(encoding="utf-8") == text


def test_a_section_that_is_not_there(show):
    result = run("draft", show, "--section", "refrain")
    assert result.exit_code == 2
    assert "no section 'refrain'" in result.stderr
    assert show.read_text(encoding="utf-8") == SHOW


def test_what_is_found_by_an_interruption_is_in_the_file_and_said_to_be_unchecked(
    show, monkeypatch
):
    monkeypatch.setattr(draft_search, "caused", lambda *_given: signal.raise_signal(signal.SIGINT))
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        result = run("draft", show)
    finally:
        signal.signal(signal.SIGINT, before)
    assert result.exit_code == 130
    assert "was not checked" in result.stderr
    assert "drafted:" in show.read_text(encoding="utf-8")


def test_new_drafts_a_routine_unless_told_otherwise(stage_folder, tmp_path):
    made = run("new", tmp_path / "a.yaml", "--track", stage_folder / "song.wav")
    assert made.exit_code == 0, made.output
    drafted = read_show(tmp_path / "a.yaml")
    assert drafted.show.cast[0].level == 2
    assert all(entry.drafted for entry in drafted.show.timeline)
    made = run("new", tmp_path / "b.yaml", "--track", stage_folder / "song.wav", "--no-draft")
    assert made.exit_code == 0, made.output
    plain = read_show(tmp_path / "b.yaml")
    assert not any(entry.drafted for entry in plain.show.timeline)
    assert {entry.pattern for entry in plain.show.timeline if not entry.link} <= {
        "two-beat-weave",
        "three-beat-weave",
    }


def test_the_show_of_a_song_is_written_beside_it(stage_folder, tmp_path):
    song = tmp_path / "ember.wav"
    shutil.copy(stage_folder / "song.wav", song)
    made = run("new", song, "--no-draft")
    assert made.exit_code == 0, made.output
    assert read_show(tmp_path / "ember.yaml").show.track.file == "ember.wav"
    again = run("new", song, "--no-draft")
    assert again.exit_code == 2
    assert "ember.yaml: this file already exists" in again.stderr


@pytest.mark.parametrize("there", [True, False])
def test_a_song_is_never_overwritten_by_a_show(stage_folder, tmp_path, there):
    song = tmp_path / "ember.wav"
    if there:
        shutil.copy(stage_folder / "song.wav", song)
    made = run("new", song, "--track", stage_folder / "song.wav", "--force", "--no-draft")
    assert made.exit_code == 2
    assert "ember.wav: this is a song" in made.stderr
    assert "ember.yaml --track" in made.stderr
    if there:
        assert song.read_bytes() == (stage_folder / "song.wav").read_bytes()
    assert not (tmp_path / "ember.yaml").exists()


def test_nor_by_a_link_or_by_a_name_that_is_no_songs(stage_folder, tmp_path):
    song, sound = tmp_path / "ember.wav", (stage_folder / "song.wav").read_bytes()
    song.write_bytes(sound)
    (tmp_path / "link.yaml").symlink_to(song)
    take = tmp_path / "take.dat"
    take.write_bytes(sound)
    os.link(take, tmp_path / "other.yaml")
    for show, track in (("link.yaml", song), ("take.dat", take), ("other.yaml", take)):
        made = run("new", tmp_path / show, "--track", track, "--force", "--no-draft")
        assert made.exit_code == 2
        assert f"{show}: this is a song" in made.stderr
    assert song.read_bytes() == take.read_bytes() == sound


def test_a_song_has_one_show_whatever_its_ending(stage_folder, tmp_path):
    song = tmp_path / "ember.wav"
    shutil.copy(stage_folder / "song.wav", song)
    (tmp_path / "ember.yml").write_text(SHOW, encoding="utf-8")
    made = run("new", song, "--no-draft")
    assert made.exit_code == 2
    assert "ember.yml: this file already exists" in made.stderr
    assert not (tmp_path / "ember.yaml").exists()
