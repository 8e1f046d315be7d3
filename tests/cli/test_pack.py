"""`sequencer pack` and `unpack`: a show mailed whole is checked there as here."""

import hashlib
import json
from pathlib import Path

import pytest

from tests.cli.test_bad_input import assert_refused, run
from tests.made_archives import FILES, archive, entries, told_of
from tests.nothing_kept import nothing_kept

from .conftest import SHOW

HALL = """\
name: hall
rules: [{rule: audience-distance, value: 30 m, source: "by-law 12, section 3"}]
"""
NEAR = """formations: {pair: {spots: {Ash: {at: [-0.7, 4]}, Birch: {at: [0.7, 4]}}}}
staging: [{formation: pair, from: 1.1}]
cast:
  - {name: Birch, stature: 1.7, prop: {tether: 0.55}}
"""
MOVES = "patterns: {my flower: {law: orbit, set: {ratio: -3, hand_radius: 15 cm}}}\n"


@pytest.fixture(scope="module")
def sent(stage_folder, tmp_path_factory):
    """A show that names files of several kinds, not all of them beside it, packed."""
    root = tmp_path_factory.mktemp("sender")
    (root / "shows").mkdir()
    (root / ".sequencer").touch()
    (root / "song.wav").write_bytes((stage_folder / "song.wav").read_bytes())
    (root / "hall.yaml").write_text(HALL, encoding="utf-8")
    (root / "shows" / "moves.yaml").write_text(MOVES, encoding="utf-8")
    (root / "shows" / "taps.txt").write_text("\n".join(f"{0.5 + 0.5 * k:.2f}" for k in range(76)))
    text = SHOW.replace("song.wav", "../song.wav").replace("one: 0:00.5", "beats: taps.txt")
    text = text.replace("two-beat-weave", "my flower").replace("cast:\n", NEAR)
    text += "rules: {file: ../hall.yaml}\npattern_files: [moves.yaml]\nfire: {fuel: lamp-oil}\n"
    (root / "shows" / "mine.yaml").write_text(text, encoding="utf-8")
    result = run("pack", root / "shows" / "mine.yaml", "--out", root / "out")
    assert result.exit_code == 0, result.output
    return root, result.output


def test_it_tells_what_is_in_it(sent):
    root, output = sent
    lines = output.splitlines()
    assert lines[0].startswith(f"wrote {root / 'out' / 'mine' / 'mine.zip'}: 5 files, ")
    assert lines[1:] == ["  hall.yaml", "  mine.yaml", "  moves.yaml", "  song.wav", "  taps.txt"]


def test_a_show_is_checked_there_as_here_as_flown_too(sent, tmp_path, monkeypatch):
    root, _ = sent
    monkeypatch.chdir(tmp_path)
    result = run("unpack", root / "out" / "mine" / "mine.zip")
    assert result.exit_code == 0, result.output
    assert result.stdout.splitlines()[0] == "unpacked into mine:"
    assert result.stdout.splitlines()[-1] == "next: sequencer check mine/mine.yaml"
    here = run("check", root / "shows" / "mine.yaml", "--json")
    with nothing_kept():  # found anew there, as by somebody who has never seen the show
        there = run("check", "mine/mine.yaml", "--json")
    assert here.exit_code == there.exit_code in {0, 1}, here.output
    found, again = json.loads(here.stdout), json.loads(there.stdout)
    assert "too-close" in {each["code"] for each in found["findings"]}
    assert any("As flown" in each for each in found["unseen"])
    assert again == found | {"show": "mine/mine.yaml"}
    assert_refused(run("unpack", root / "out" / "mine" / "mine.zip"), "nothing is overwritten")


def test_without_the_song_it_is_told_which_one_is_needed(sent, tmp_path, monkeypatch):
    root, _ = sent
    result = run("pack", root / "shows" / "mine.yaml", "--out", tmp_path, "--without-song")
    assert "needs song.wav, this very recording" in result.output
    monkeypatch.chdir(tmp_path)
    result = run("unpack", "mine/mine.zip", "--out", "theirs")
    digest = hashlib.sha256((root / "song.wav").read_bytes()).hexdigest()
    assert (
        "put the same recording there as theirs/song.wav, then: sequencer check theirs/mine.yaml"
        in result.output
    )
    assert digest in result.output
    (tmp_path / "theirs" / "song.wav").write_bytes((root / "song.wav").read_bytes()[:-1000])
    assert_refused(
        run("check", "theirs/mine.yaml", "--drawn"), "not the cut that the show was made for"
    )


def test_one_line_for_what_is_no_packed_show(tmp_path):
    (tmp_path / "letter.zip").write_bytes(b"Dear all, the show is in the next mail.")
    assert_refused(run("unpack", tmp_path / "letter.zip"), "no archive of a show")
    assert_refused(run("unpack", tmp_path / "none.zip"), "file not found")
    assert_refused(run("pack", tmp_path / "none.yaml"), "file not found")


def test_the_next_command_is_quoted_where_a_stranger_named_the_show(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    name = "x;touch pwned;#.yaml"
    files = {key: content for key, content in FILES.items() if key != "show.yaml"}
    files[name] = FILES["show.yaml"]
    (tmp_path / "lantern (1).zip").write_bytes(archive(entries(files, show=name)))
    result = run("unpack", "lantern (1).zip")
    assert result.exit_code == 0, result.output
    assert result.stdout.splitlines()[-1].endswith('x;touch pwned;#.yaml"')
    assert result.stdout.splitlines()[-1].startswith('next: sequencer check "lantern (1)')
    del files["song.wav"]
    song = told_of("song.wav", b"x")
    files[name] = (
        f"title: S\ntrack: {{file: song.wav, sha256: {song['sha256']}}}\nrules: {{file: rules.yaml}}\n".encode()
    )
    (tmp_path / "b.zip").write_bytes(archive(entries(files, show=name, song=song)))
    assert f'then: sequencer check "{Path("b", name)}"\n' in run("unpack", "b.zip").stdout
