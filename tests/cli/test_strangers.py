"""A show from a stranger: what it may read and write on this machine, as docs/strangers.md says it, line by line."""

import hashlib
import os
import sys

import pytest
from click.testing import CliRunner

from sequencer.allowed_places import VARIABLE
from sequencer.cli import main
from tests.cli.test_bad_input import assert_refused, run
from tests.desk_client import desk

from .conftest import RATE, SHOW, click_track

PRIVATE = "daemon:x:1:1:a line that nobody may see"


@pytest.fixture
def mailed(tmp_path, monkeypatch):
    """A folder with a song, and beside it a folder with what is nobody's business."""
    import soundfile as sf

    monkeypatch.setenv(VARIABLE, "")
    folder = tmp_path / "mailed"
    folder.mkdir()
    (tmp_path / "private").mkdir()
    for name in ("beats.txt", "rules.yaml", "burns.csv", "patterns.yaml", "type.ttf"):
        (tmp_path / "private" / name).write_text(f"{PRIVATE}\n", encoding="utf-8")
    sf.write(folder / "song.wav", click_track(), RATE)
    sf.write(tmp_path / "private" / "song.wav", click_track(), RATE)
    return folder


def show_that_names(folder, key, name):
    text = {
        "track": SHOW.replace("song.wav", name),
        "beats": SHOW.replace("metre: 4, one: 0:00.5", f"beats: {name}"),
        "rules": SHOW + f"rules: {{file: {name}}}\n",
        "burns": SHOW + f"fire: {{fuel: lamp-oil, burns: {name}}}\n",
        "patterns": SHOW + f"pattern_files: [{name}]\n",
        "type": SHOW + f"type_file: {name}\n",
    }[key]
    (folder / "show.yaml").write_text(text, encoding="utf-8")
    return folder / "show.yaml"


NAMED = (
    ("track", "song.wav"), ("beats", "beats.txt"), ("rules", "rules.yaml"), ("burns", "burns.csv"),
    ("patterns", "patterns.yaml"), ("type", "type.ttf"),
)  # fmt: skip
VERBS = ("check", "sheet", "rehearse", "draft", "draw", "trace")


@pytest.mark.parametrize(("key", "name"), NAMED)
@pytest.mark.parametrize("way", ["above", "absolute"])
def test_it_reads_nothing_outside_its_folder(mailed, key, name, way):
    path = f"../private/{name}" if way == "above" else str(mailed.parent / "private" / name)
    show = show_that_names(mailed, key, path)
    line = assert_refused(run("check", show), "lies outside the folder")
    assert "[outside-folder]" in line
    assert f"{show}:" in line  # with line and column
    assert PRIVATE[:10] not in line


@pytest.mark.parametrize("verb", VERBS)
def test_no_verb_does(mailed, verb, monkeypatch):
    monkeypatch.chdir(mailed)
    show = show_that_names(mailed, "beats", "../private/beats.txt")
    assert_refused(run(verb, show), "lies outside the folder")
    assert sorted(path.name for path in mailed.iterdir()) == ["show.yaml", "song.wav"]


def test_a_song_whose_content_the_show_names_may_lie_anywhere(mailed):
    song = mailed.parent / "private" / "song.wav"
    digest = hashlib.sha256(song.read_bytes()).hexdigest()
    named = SHOW.replace("song.wav", f"../private/song.wav\n  sha256: {digest}")
    (mailed / "show.yaml").write_text(named, encoding="utf-8")
    assert run("check", mailed / "show.yaml").exit_code in {0, 1}
    (mailed / "show.yaml").write_text(named.replace(digest, "0" * 64), encoding="utf-8")
    assert_refused(run("check", mailed / "show.yaml"), "lies outside the folder")


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_a_link_in_its_folder_leads_nowhere_else(mailed):
    (mailed / "beats.txt").symlink_to(mailed.parent / "private" / "beats.txt")
    assert_refused(
        run("check", show_that_names(mailed, "beats", "beats.txt")), "lies outside the folder"
    )


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
@pytest.mark.parametrize("there", [True, False], ids=["there", "not there yet"])
def test_a_practice_log_that_leads_elsewhere_is_neither_read_nor_written(mailed, there):
    target = mailed.parent / "private" / ("burns.csv" if there else "new.desktop")
    (mailed / "show.yaml").write_text(SHOW, encoding="utf-8")
    (mailed / "show.practice.csv").symlink_to(target)
    out = ("--out", mailed.parent / "out")
    for verb in (
        ("practice", mailed / "show.yaml", *out),
        ("practice", mailed / "show.yaml", *out, "--log", "note x"),
        ("check", mailed / "show.yaml", "--danced", 2),
    ):
        line = assert_refused(run(*verb), "outside the show's folder")
        assert PRIVATE[:10] not in line
    assert target.exists() == there
    if there:
        assert target.read_text(encoding="utf-8") == f"{PRIVATE}\n"
    else:
        allowed = ("--allow", target.parent)
        assert (
            run("practice", mailed / "show.yaml", *out, "--log", "note x", *allowed).exit_code == 0
        )
        assert target.read_text(encoding="utf-8").endswith(",x\n")


def test_the_reader_allows_a_folder_and_is_told_what_the_file_says(mailed):
    show = show_that_names(mailed, "beats", "../private/beats.txt")
    result = run("check", show, "--allow", mailed.parent / "private")
    assert_refused(result, "at least four beats")
    result = run("check", show, "--allow", mailed.parent / "settings-not-there")
    assert result.exit_code == 2


def test_a_song_that_a_person_named_is_read_the_next_time(mailed):
    song = mailed.parent / "private" / "song.wav"
    result = run("new", mailed / "mine.yaml", "--track", song, "--no-draft")
    assert result.exit_code == 0, result.output
    assert run("check", mailed / "mine.yaml").exit_code in {0, 1}
    other = SHOW.replace("song.wav", "../private/beats.txt")
    (mailed / "other.yaml").write_text(other, encoding="utf-8")
    assert_refused(run("check", mailed / "other.yaml"), "lies outside the folder")


@pytest.mark.parametrize("verb", ["check"])
def test_what_was_answered_once_is_not_told_where_it_is_not_allowed(mailed, verb):
    show = show_that_names(mailed, "track", "../private/song.wav")
    assert_refused(run(verb, show), "lies outside the folder")
    allowed = ("--allow", mailed.parent / "private")
    assert run(verb, show, *allowed).exit_code in {0, 1}
    os.environ[VARIABLE] = ""  # another process
    assert_refused(run(verb, show), "lies outside the folder")


def test_a_text_that_no_file_holds_yet_is_a_mailed_one_too(mailed):
    from sequencer.errors import InputError
    from sequencer.show.reading import show_from_document
    from sequencer.show.text.document import parse_document

    text = show_that_names(mailed, "beats", "../private/beats.txt").read_text(encoding="utf-8")
    with pytest.raises(InputError, match="lies outside the folder"):
        show_from_document(parse_document(text, str(mailed / "not-there.yaml")))


def test_the_advice_names_the_folder_as_it_is_seen_from_here(mailed, monkeypatch):
    monkeypatch.chdir(mailed.parent)
    show_that_names(mailed, "beats", "../private/beats.txt")
    assert "--allow private " in assert_refused(run("check", "mailed/show.yaml"), "outside")


@pytest.mark.parametrize("name", ["'\\\\host\\share\\song.wav'", "//host/share/song.wav"])
def test_no_other_machine_is_asked(mailed, name, monkeypatch):
    asked = []
    monkeypatch.setattr(
        "sequencer.show.outside_files.is_allowed", lambda *given: asked.append(given)
    )
    assert_refused(run("check", show_that_names(mailed, "track", name)), "lies outside the folder")
    assert asked == []


@pytest.mark.skipif(sys.platform == "win32", reason="no such files there")
def test_a_track_without_end_is_refused_before_it_is_read(mailed):
    with (mailed / "huge.wav").open("wb") as file:
        file.truncate(200 * 10**9)
    assert_refused(run("check", show_that_names(mailed, "track", "huge.wav")), "larger than 4 GB")


@pytest.mark.skipif(sys.platform == "win32", reason="no such files there")
@pytest.mark.parametrize(
    ("key", "size"), [("show", 4), ("beats", 4), ("burns", 5), ("type", 60)]
)  # fmt: skip
def test_a_file_of_more_than_anybody_writes_is_refused(mailed, key, size):
    name = "show.yaml" if key == "show" else "huge"
    show = mailed / name if key == "show" else show_that_names(mailed, key, name)
    if key == "burns":
        text = show.read_text(encoding="utf-8")
        show.write_text(text.replace("lamp-oil, ", "lamp-oil, lit: [{from: 3.1, until: 7.1}], "), encoding="utf-8")  # fmt: skip
    with (mailed / name).open("wb") as file:
        file.truncate(size * 1_000_000 + 1)
    verb = ("sheet", show, "--out", mailed / "out") if key == "type" else ("check", show)
    result = run(*verb)
    assert result.exit_code == 2, result.output
    (line,) = (line for line in result.stderr.splitlines() if "error:" in line)
    assert "large" in line


@pytest.mark.skipif(sys.platform == "win32", reason="no such devices")
@pytest.mark.parametrize("key", [key for key, _ in NAMED])
def test_devices_and_pipes_are_no_files(mailed, key):
    os.mkfifo(mailed / "pipe")
    show = show_that_names(mailed, key, "pipe")
    verb = ("sheet", show, "--out", mailed / "out") if key == "type" else ("check", show)
    result = run(*verb)
    assert result.exit_code == 2, result.output
    assert len([line for line in result.stderr.splitlines() if "error:" in line]) == 1
    assert "Traceback" not in result.output


@pytest.mark.skipif(sys.platform == "win32", reason="no such devices")
def test_a_show_that_never_ends_is_refused(mailed):
    assert_refused(run("check", "/dev/zero"), "a device or a pipe")
    assert_refused(run("patterns", "--from", "/dev/zero"), "a device or a pipe")
    assert_refused(run("listen", mailed / "song.wav", "--tap", "/dev/zero"), "a device or a pipe")


def test_what_steers_a_terminal_is_written_out(mailed):
    show = show_that_names(mailed, "track", '"so\\e[31mng\\u202e.wav"')
    line = assert_refused(run("check", show), "so\\x1b[31mng\\u202e.wav")
    assert line.isprintable()


def test_a_value_of_five_thousand_letters_is_cut(mailed):
    (mailed / "show.yaml").write_text(SHOW.replace("1.7", "a" * 5000), encoding="utf-8")
    assert len(assert_refused(run("check", mailed / "show.yaml"), "stature")) < 900


def test_a_letter_that_yaml_does_not_know_has_its_place(mailed):
    (mailed / "show.yaml").write_text(SHOW.replace("Ash", "As\x01h"), encoding="utf-8")
    assert "show.yaml:9:14: " in assert_refused(run("check", mailed / "show.yaml"), "U+0001")


def test_a_name_like_an_option_is_told_how_to_be_written(mailed, monkeypatch):
    monkeypatch.chdir(mailed)
    (mailed / "-x.yaml").write_text(SHOW, encoding="utf-8")
    result = CliRunner().invoke(main, ["check", "-x.yaml"])
    assert result.exit_code == 2
    assert "./-x.yaml" in result.stderr


@pytest.mark.skipif(sys.platform == "win32", reason="links of POSIX systems")
@pytest.mark.parametrize("kind", ["link", "notes"])
def test_opening_it_writes_no_file_that_the_desk_did_not_write(mailed, kind):
    path = mailed / "show.yaml"
    ash = next(line for line in SHOW.splitlines(keepends=True) if "name: Ash" in line)
    two = SHOW.replace(ash, ash + ash.replace("Ash", "Birch"))
    path.write_text(two + "tonight: {away: [Birch]}\n", encoding="utf-8")
    private = mailed.parent / "private" / "beats.txt"
    foreign = [mailed / f".show.yaml.{end}" for end in ("switch", "draft", "journal")]
    for each in foreign:
        if kind == "link":
            each.symlink_to("../private/beats.txt")
        else:
            each.write_text(f"{PRIVATE}\n", encoding="utf-8")
    with desk(path) as own:
        assert own.page.get("show")[0] == 200
        operation = {"do": "change-titles", "values": {"title": "Two"}}
        status, state = own.page.post("operations", revision=1, operation=operation, anyway=True)
        assert (status, state["kept"]["where"]) == (200, "cache")
        assert own.page.post("save")[0] == 200
    for each in (*foreign, private):
        assert each.read_text(encoding="utf-8") == f"{PRIVATE}\n"
    assert all(each.is_symlink() is (kind == "link") for each in foreign)


@pytest.mark.skipif(sys.platform == "win32", reason="links of POSIX systems")
def test_it_is_not_opened_where_something_else_lies_in_place_of_the_hold(mailed):
    path = mailed / "show.yaml"
    path.write_text(SHOW, encoding="utf-8")
    hold = mailed / ".show.yaml.open"
    hold.symlink_to("../private/beats.txt")
    assert_refused(run("open", path, "--no-browser"), "something else has its name")
    assert hold.read_text(encoding="utf-8") == f"{PRIVATE}\n"
