"""A type file of the user's own: its letters are set and embedded, or it is said why not."""

import struct
from pathlib import Path

import matplotlib as mpl
import pypdf
import pytest

from sequencer.errors import InputError
from sequencer.outputs.sheets import write_sheets
from sequencer.outputs.sheets.page.letters import printable, width, with_type
from sequencer.outputs.sheets.page.own_type import joins, read_type

TYPE = Path(mpl.get_data_path()) / "fonts" / "ttf" / "DejaVuSans.ttf"  # holds Georgian
SHOW = """
title: ნინო
track: {file: a.ogg}
type_file: own.ttf
venue: {stage: {shape: round, width: 8 m}, audience: [{line: [[-5, -9], [5, -9]]}]}
cast: [{name: ნინო, stature: 1.7 m, prop: {tether: 50 cm}}]
timeline: [{pattern: static-spin, from: "2.1", beats: 8}]
"""


def with_rights(rights):
    """The same file with other licence bits."""
    content = bytearray(TYPE.read_bytes())
    (count,) = struct.unpack(">H", content[4:6])
    for k in range(count):
        tag, _, start, _ = struct.unpack(">4sLLL", content[12 + 16 * k : 28 + 16 * k])
        if tag == b"OS/2":
            content[start + 8 : start + 10] = struct.pack(">H", rights)
    return bytes(content)


def printed(rounds, folder, content):
    (folder / "own.ttf").write_bytes(content)
    paths = write_sheets(rounds.show(folder, SHOW), rounds.report(stop=False), folder / "out")
    return next(path for path in paths if "performer" in path.name)


def test_letters_of_the_own_type_are_set_and_embedded(rounds, pages, tmp_path):
    path = printed(rounds, tmp_path, TYPE.read_bytes())
    text = pages.text_of(path, 0)
    fonts = pypdf.PdfReader(path).pages[0]["/Resources"]["/Font"].get_object().values()
    names = {font.get_object()["/BaseFont"] for font in fonts}

    assert "ნინო" in text
    assert "Letters missing" not in text
    assert any("DejaVuSans" in name and name[7] == "+" for name in names)
    assert all("/FontFile2" in font.get_object()["/FontDescriptor"] for font in fonts)


@pytest.mark.parametrize(
    ("rights", "words"),
    [(0x0002, "forbid embedding"), (0x0100, "subsetting"), (0x0200, "bitmaps only")],
)
def test_a_type_that_may_not_be_embedded_is_left_out_and_said(
    rounds, pages, tmp_path, rights, words
):
    text = " ".join(pages.text_of(printed(rounds, tmp_path, with_rights(rights)), 0).split())

    assert "The type file was left out" in text
    assert words in text
    assert "Letters missing" in text


@pytest.mark.parametrize("rights", [0x0000, 0x0004, 0x0008, 0x000A])
def test_print_and_preview_may_be_embedded(tmp_path, rights):
    path = tmp_path / "a.ttf"
    path.write_bytes(with_rights(rights))

    assert read_type(path).forbidden == ""


@pytest.mark.parametrize(
    "content", [None, b"", b"OTTO" + bytes(60), b"\x00\x01\x00\x00\xff\xff" + bytes(30)]
)
def test_a_file_that_is_no_type_is_told(rounds, tmp_path, content):
    path = tmp_path / "own.ttf"
    if content is not None:
        path.write_bytes(content)
    with pytest.raises(InputError) as error:
        read_type(path)

    assert error.value.code == "type-file-not-usable"


def test_what_was_measured_with_it_is_forgotten_after():
    bare = printable("ნ"), width("abc", "Regular")
    with with_type(read_type(TYPE)):
        assert printable("ნ") == "ნ"
        assert width("ნ", "Regular") > 0.3
    assert (printable("ნ"), width("abc", "Regular")) == bare
    assert bare[0] == "‹U+10DC›"


def test_scripts_that_are_written_joined_are_known():
    assert joins("abc سلام")
    assert joins("नमस्ते")
    assert not joins("ნინო 火花")
