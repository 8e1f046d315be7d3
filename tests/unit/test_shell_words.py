"""Commands that somebody is told to type: a shell hands every name on as it is."""

import shutil
import subprocess

import pytest

from sequencer.shell_words import shell_path, shell_word

NAMES = (
    "lantern (1)", "x;touch pwned;#.yaml", "$(touch pwned)", "`touch pwned`", "a b", "it's", 'say "x"', "$HOME", "~", "~root", "a&b",
    "back\\slash", "!!", "*", "?", "[a]", "{a,b}", "", "café 漢字", "%PATH%", "=ls", "a\nb", "“x”", "a|b>c", "60% 6/8", "show.yaml", "@x", "#x",
)  # fmt: skip


@pytest.mark.skipif(shutil.which("sh") is None, reason="no such shell here")
def test_a_shell_hands_on_what_was_meant(tmp_path):
    line = " ".join(shell_word(each, windows=False) for each in NAMES)
    said = subprocess.run(
        ["sh", "-c", f"printf '%s\\0' {line}"], cwd=tmp_path, capture_output=True, check=True
    )
    assert said.stdout.decode().split("\0")[:-1] == list(NAMES)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("name", NAMES)
def test_on_windows_nothing_acts_upon_it(name):
    word = shell_word(name, windows=True)
    if not word.startswith('"'):
        assert word == name
        assert name in {"back\\slash", "show.yaml"}
        return
    assert not set(word[1:-1]) & set('"`$!“”\n')
    assert word.count("%") <= 1
    assert all(one in (each, "?") for one, each in zip(word[1:-1], name, strict=True))


def test_nothing_is_quoted_that_need_not_be():
    assert shell_word("shows/mine.yaml", windows=False) == "shows/mine.yaml"
    assert shell_word("C:\\shows\\mine.yaml", windows=True) == "C:\\shows\\mine.yaml"
    assert shell_word("C:\\my shows\\mine.yaml", windows=True) == '"C:\\my shows\\mine.yaml"'
    assert shell_word("lantern (1)", windows=False) == '"lantern (1)"'


def test_a_path_is_no_option():
    assert shell_path("--help", windows=False) == "./--help"
    assert shell_path("-d/a b.yaml", windows=False) == '"./-d/a b.yaml"'
