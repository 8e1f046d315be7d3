"""Beats that a performer brings along take the place of what was heard."""

from pathlib import Path

import pytest

from sequencer.errors import InputError
from sequencer.show.beat_files import read_beats


def _file(folder: Path, text: str | bytes) -> Path:
    path = folder / "taps.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    return path


@pytest.mark.parametrize(
    "mark", [",", ";", "\t", "  "], ids=["comma", "semicolon", "tab", "blanks"]
)
def test_columns_and_headings(tmp_path: Path, mark: str) -> None:
    rows = [("time", "beat"), ("0.50", "4"), ("1:01.25", "1"), ("62", "2")]
    text = "# tapped\n\n" + "\n".join(mark.join(row) for row in rows)

    times = read_beats(_file(tmp_path, text))

    assert times.beats == (0.5, 61.25, 62.0)
    assert times.downbeats == (61.25,)


def test_one_column_counts_nothing(tmp_path: Path) -> None:
    assert read_beats(_file(tmp_path, "1.0\n2.0\n3.0\n")).downbeats == ()


@pytest.mark.parametrize(
    ("text", "code", "line"),
    [
        ("1.0\nsoon\n", "bad-beat", 2),
        ("1.0\n1.0\n", "bad-beat", 2),
        ("1.0\n", "no-beats", None),
        (b"MThd\x00\x00\x00\x06", "midi-beats", None),
        (b"\xff\xfe\x00\x01", "bad-beat", None),
    ],
    ids=["words", "twice", "one", "midi", "binary"],
)
def test_what_cannot_be_used_is_refused(
    tmp_path: Path, text: str | bytes, code: str, line: int | None
) -> None:
    with pytest.raises(InputError) as caught:
        read_beats(_file(tmp_path, text))

    assert (caught.value.code, caught.value.place.line) == (code, line)


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"taps\.csv"):
        read_beats(tmp_path / "taps.csv")
