"""Archives of shows with lies in them: what they claim of names, sizes, places and hashes is drawn, and their bytes too."""

import json
import tempfile
from dataclasses import replace
from pathlib import Path
from random import Random

from tests.fuzz.changes import changed_bytes
from tests.made_archives import (
    DEVICE,
    FILES,
    LINK,
    SHOW,
    Entry,
    archive,
    manifest,
    told_of,
)

NAMES = (
    "../x.yaml", "/x.yaml", "C:/x.yaml", "a\\x.yaml", ".sequencer", "con.yaml", "SHOW.yaml", "show.yaml/x.yaml", "caf\u00e9.yaml",
    "cafe\u0301.yaml", "x\0.yaml", "", "x/", "x.lnk", "x.zip", "a/b/c.yaml", "x.yaml ", "\u202ex.yaml", "manifest.json", "x" * 260,
)  # fmt: skip
NUMBERS = (0, 1, 30, 2**16 - 1, 2**31 - 1, 2**32 - 1)
VALUES = (None, True, -1, 1.5, 10**400, "", "show.yaml", [], {}, [[]], {"file": "x"}, "0" * 64)


def made_archive(seed: int) -> bytes:
    """An archive with none to three lies, now and then with bytes changed."""
    draw = Random(seed)  # noqa: S311 (no secret: a case is made again from its seed)
    files = dict(FILES)
    if draw.random() < 0.3:
        name = draw.choice(NAMES)
        files[name] = draw.randbytes(20)
        if draw.random() < 0.7:
            files["show.yaml"] = SHOW.replace("rules.yaml", json.dumps(name)).encode()
            files.pop("rules.yaml")
    told: dict = {}
    if draw.random() < 0.3:
        told[draw.choice(("format", "show", "song", "files", "more"))] = draw.choice(VALUES)
    elif draw.random() < 0.2:
        rows = [told_of(name, content) for name, content in files.items()]
        draw.choice(rows)[draw.choice(("file", "bytes", "sha256"))] = draw.choice((*VALUES, *NAMES))
        told["files"] = rows
    rows = [Entry(b"manifest.json", manifest(files, **told))]
    rows += [
        Entry(name.encode("utf-8", "surrogatepass"), content, flags=0x0800)
        for name, content in sorted(files.items())
    ]
    for _ in range(draw.choice((0, 0, 0, 1, 2, 3))):
        rows = _lied(rows, draw)
    around = {
        key: draw.choice((b"PK\5\6", bytes(22), b"x")) for key in ("before", "behind", "comment") if draw.random() < 0.03
    }  # fmt: skip
    count = draw.choice(NUMBERS[:4]) if draw.random() < 0.03 else None
    content = archive(rows, count=count, **around)
    return changed_bytes(content, seed) if draw.random() < 0.15 else content


def _lied(rows: list[Entry], draw: Random) -> list[Entry]:
    k = draw.randrange(len(rows))
    lie = draw.choice((
        {"method": 8}, {"method": 8}, {"method": 8}, {"method": draw.choice((1, 9, 12, 14, 93, 99))}, {"mode": draw.choice((LINK, DEVICE, 0, 0o40755))},
        {"marks": draw.choice((0x10, 0x20))}, {"size": draw.choice(NUMBERS)}, {"lies_at": draw.choice(NUMBERS)},
        {"own_name": draw.choice(NAMES).encode()}, {"name": draw.choice(NAMES).encode()}, {"flags": 1 << draw.randrange(16)},
        {"extra": draw.randbytes(draw.choice((1, 4, 20)))}, {"extra": b"\x01\x00\x08\x00" + b"\xff" * 8, "size": 2**32 - 1},
        {"extra": b"PK\6\7" + bytes(16)}, {"padding": draw.randbytes(draw.choice((1, 24, 100)))}, {"content": draw.randbytes(9)},
        {"own_extra": draw.randbytes(4)}, {"comment": draw.randbytes(4)}, {"own": {draw.randrange(8): draw.choice(NUMBERS[:2])}},
    ))  # fmt: skip
    if draw.random() < 0.1:
        return [*rows, rows[k]]
    return [replace(row, **lie) if j == k else row for j, row in enumerate(rows)]


def unpacked(content: bytes) -> object:
    """What the reader says of an archive; it must write into the new folder only, and that whole."""
    from sequencer.errors import InputError
    from sequencer.tasks.packing import unpack_show

    with tempfile.TemporaryDirectory() as base:
        folder = Path(base) / "in"
        folder.mkdir()
        (folder / "mailed.zip").write_bytes(content)
        try:
            done = unpack_show(folder / "mailed.zip", folder / "new")
        except InputError:
            assert [path.name for path in Path(base).rglob("*")] == ["in", "mailed.zip"]
            raise
        there = {
            path.relative_to(folder).as_posix() for path in Path(base).rglob("*") if path.is_file()
        }
        listed = {f"new/{each.file}" for each in done.manifest.files}
        assert there == {"mailed.zip", "new/.sequencer", *listed}
        return done
