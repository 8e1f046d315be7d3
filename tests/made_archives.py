"""Zip archives as nobody's packer writes them: every field can be made to say what it should not."""

import hashlib
import json
import struct
import zlib
from dataclasses import dataclass, field, replace

FILE, LINK, DEVICE, PIPE = 0o100644, 0o120777, 0o020666, 0o010644
SHOW = "title: Small\ntrack: {file: song.wav}\nrules: {file: rules.yaml}\n"
FILES = {"rules.yaml": b"rules: []\n", "show.yaml": SHOW.encode(), "song.wav": b"RIFF" + bytes(96)}


@dataclass(frozen=True)
class Entry:
    """A file in an archive, and what is said of it."""

    name: bytes
    content: bytes
    method: int = 0
    flags: int = 0
    mode: int = FILE
    marks: int = 0  # as MS-DOS says it
    size: int | None = None  # that is claimed
    own_name: bytes | None = (
        None  # before its content, where it differs from that in the list at the end
    )
    lies_at: int | None = None
    extra: bytes = b""
    own_extra: bytes = b""  # before its content
    comment: bytes = b""
    own: dict = field(
        default_factory=dict
    )  # numbers before its content that differ, by their place
    padding: bytes = b""  # behind its content


def entries(held=FILES, **told):
    """The entries of an honest archive of some files, after its manifest."""
    return [Entry(b"manifest.json", manifest(held, **told))] + [
        Entry(name.encode(), content, flags=0 if name.isascii() else 0x0800)
        for name, content in sorted(held.items())
    ]


def manifest(held=FILES, **told):
    """What an honest list says, and whatever is to be said instead."""
    rows = [told_of(name, content) for name, content in sorted(held.items())]
    song = next((row for row in rows if row["file"] == "song.wav"), told_of("song.wav", b""))
    said = {"format": "sequencer show 1", "show": "show.yaml", "song": song, "files": rows}
    return json.dumps(said | told).encode()


def told_of(name, content, **told):
    return {
        "file": name,
        "bytes": len(content),
        "sha256": hashlib.sha256(content).hexdigest(),
    } | told


def archive(rows, *, before=b"", behind=b"", comment=b"", count=None, end=()):
    """The bytes of an archive; `end` is what its last bytes say instead."""
    out, listed = bytearray(before), bytearray()
    for row in rows:
        packed = row.content
        if row.method == 8:
            squeeze = zlib.compressobj(9, zlib.DEFLATED, -15)
            packed = squeeze.compress(row.content) + squeeze.flush()
        size = len(row.content) if row.size is None else row.size
        numbers = (row.flags, row.method, 0, 33, zlib.crc32(row.content), len(packed), size)
        at = len(out) if row.lies_at is None else row.lies_at
        name = row.name if row.own_name is None else row.own_name
        own = [row.own.get(k, number) for k, number in enumerate((20, *numbers))]
        out += (
            struct.pack("<4sHHHHHLLLHH", b"PK\3\4", *own, len(name), len(row.own_extra))
            + name
            + row.own_extra
            + packed
            + row.padding
        )
        listed += struct.pack(
            "<4sHHHHHHLLLHHHHHLL", b"PK\1\2", 3 << 8 | 20, 20, *numbers, len(row.name), len(row.extra), len(row.comment), 0, 0,
            row.mode << 16 | row.marks, at,
        ) + row.name + row.extra + row.comment  # fmt: skip
    number = len(rows) if count is None else count
    numbers = {"sign": b"PK\5\6", "disk": 0, "first": 0, "here": number, "number": number, "length": len(listed), "at": len(out), "comment": len(comment)}  # fmt: skip
    ending = struct.pack("<4sHHHHLLH", *(numbers | dict(end)).values())
    return bytes(out + listed + ending + comment + behind)


def with_entry(rows, which, **changed):
    """The same with one entry changed."""
    return [replace(row, **changed) if row.name == which else row for row in rows]
