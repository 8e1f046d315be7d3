"""What ISO 19005-2, level B, asks of a file and can be read off it without a validator.

Clauses by their number in ISO 19005-2:2011, from memory. No validator of PDF/A could be had for these tests, so
the claim rests on this list; what it does not hold (such as the widths of every letter in the embedded
type) was not checked.
"""

import re

import pypdf
import pytest
from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject, StreamObject

FORBIDDEN_KEYS = {"/SMask", "/CA", "/ca", "/BM", "/AA", "/JavaScript", "/JS", "/EmbeddedFiles", "/F", "/FFilter", "/OPI",
                  "/Ref", "/PS", "/TR", "/HTP", "/Alternates", "/NeedAppearances"}  # fmt: skip


@pytest.fixture(scope="module")
def documents(rounds, tmp_path_factory):
    _, paths = rounds.printed(tmp_path_factory)
    return [(path, pypdf.PdfReader(path)) for path in paths[1:]]


def objects(reader):
    """Every object that is reached from the trailer, once."""
    seen, waiting = set(), [reader.trailer]
    while waiting:
        found = waiting.pop()
        if isinstance(found, IndirectObject):
            if (found.idnum, found.generation) in seen:
                continue
            seen.add((found.idnum, found.generation))
            found = found.get_object()
        yield found
        if isinstance(found, DictionaryObject):
            waiting += list(dict.values(found))
        elif isinstance(found, ArrayObject):
            waiting += list(found)


def _listed(value):
    return value if isinstance(value, ArrayObject) else [value]


def test_no_object_holds_what_the_level_forbids(documents):
    """6.1.7 streams in the file alone, 6.2.10 no transparency beyond the opaque, 6.6 no actions."""
    for path, reader in documents:
        assert not reader.is_encrypted
        for each in objects(reader):
            if isinstance(each, DictionaryObject):
                assert not FORBIDDEN_KEYS & set(each), path.name
                assert not {"/LZWDecode", "/Crypt"} & set(_listed(each.get("/Filter")))
                assert each.get("/Subtype") not in ("/Image", "/Movie", "/Sound", "/Screen", "/3D")


def test_every_font_is_embedded_and_can_be_read_as_text(documents):
    """6.2.11.4 embedded, 6.2.11.7 (level U, and so more than asked): a map to Unicode."""
    fonts = 0
    for path, reader in documents:
        for each in objects(reader):
            if isinstance(each, DictionaryObject) and each.get("/Type") == "/Font":
                fonts += 1
                assert "/FontFile2" in each["/FontDescriptor"], path.name
                assert "/ToUnicode" in each
    assert fonts > 10


def test_colours_are_those_of_the_output_intent(documents):
    """6.2.4.3: red, green and blue, or grey, of one intent; no inks, no patterns, no pictures within."""
    for path, reader in documents:
        assert len(reader.trailer["/Root"]["/OutputIntents"]) == 1
        streams = [page.get_contents().get_data() for page in reader.pages]
        streams += [
            each.get_data() for each in objects(reader)
            if isinstance(each, StreamObject) and each.get("/Subtype") == "/Form"
        ]  # fmt: skip
        for content in streams:
            words = re.sub(rb"\((?:\\.|[^\\)])*\)", b"()", content).split()
            assert not {b"k", b"K", b"cs", b"CS", b"sh", b"BI", b"gs", b"ri", b"scn"} & set(
                words
            ), path.name


def test_the_file_begins_and_ends_as_asked(documents):
    """6.1.2 a comment of four high bytes after the header, 6.1.3 an identifier, nothing after the end mark."""
    for path, reader in documents:
        content = path.read_bytes()
        second = content.split(b"\n", 2)[1]

        assert second[:1] == b"%"
        assert all(byte > 127 for byte in second[1:5])
        assert "/ID" in reader.trailer
        assert content.rstrip(b"\r\n").endswith(b"%%EOF")


def test_the_data_stand_open_and_agree(documents):
    """6.6.2: the XMP stream is not compressed away, and says the same as the info dictionary."""
    for _, reader in documents:
        stream = reader.trailer["/Root"]["/Metadata"]
        assert stream["/Subtype"] == "/XML"
        xmp = stream.get_data().decode("utf-8")
        assert "<pdfaid:part>2</pdfaid:part>" in xmp
        assert reader.xmp_metadata.dc_creator == [reader.metadata.author]
        assert reader.xmp_metadata.xmp_creator_tool == reader.metadata.creator
