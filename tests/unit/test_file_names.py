"""What a file can be called so that every system takes it.

Source of what Windows refuses: its documentation on naming files, from memory.
"""

import pytest

from sequencer.file_names import clashing, fitting_name, unfit_path


@pytest.mark.parametrize(
    "path", ["a.yaml", "a/b/c.ogg", "mine (before).yaml", "café ½.wav", "漢字.yaml", "a..b.txt", "console.yaml", "com10.txt"]
)  # fmt: skip
def test_what_every_system_takes(path):
    assert unfit_path(path) is None
    assert fitting_name(path.rsplit("/", 1)[-1]) == path.rsplit("/", 1)[-1]


@pytest.mark.parametrize(
    "path", ["", "/a", "..", "a/..", "../a", "a/", "/", ".a", "a/.b", "a.", "a ", " a", "nul", "Con.txt", "com1.a.b", "lpt9 .txt",
             "a\\b", "a:b", 'a"b', "a|b", "a?b", "a*b", "a<b", "a\nb", "a\0b", "a\u202eb", "a\ufeffb", "a\u034fb", "\u2800", "\u3164", "a\ufe0f", "a\U000e01efb", "é" * 101, "b/" * 201 + "a",
             "a\udcffb"]
)  # fmt: skip
def test_what_some_system_does_not_take(path):
    assert unfit_path(path)
    name = fitting_name(path.rsplit("/", 1)[-1])
    assert unfit_path(name) is None


def test_names_that_are_one_to_some_system():
    assert list(clashing(["a", "b", "A"])) == ["A"]
    assert list(clashing(["caf\u00e9", "cafe\u0301", "CAFE\u0301"])) == ["cafe\u0301", "CAFE\u0301"]
    assert list(clashing(["a/b", "a", "A/c", "a/B"])) == ["a", "A/c", "a/B"]
    assert list(clashing(["a", "a/b"])) == ["a/b"]
    assert list(clashing(["straße", "STRASSE"])) == ["STRASSE"]
    assert list(clashing(["a/b", "b/a", "ab"])) == []


def test_a_fitting_name_is_like_the_given_one_and_unlike_the_taken():
    assert fitting_name("a:b.wav") == "a-b.wav"
    assert fitting_name("fire\ufe0f.wav") == "fire.wav"
    assert fitting_name("con.yaml") == "file-con.yaml"
    assert fitting_name("A.csv", ["a.csv", "a-2.csv"]) == "A-3.csv"
    assert fitting_name("é" * 300 + ".ogg") == "é" * 60 + ".ogg"
