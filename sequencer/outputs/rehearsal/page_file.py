"""Put the page together as one file: shell, style, script, document and song.

Nothing of the show can become markup: the title is escaped, the document is JSON in a data block in
which every "<" is written as its code, and a content security policy allows only the page's script
and style, identified by their hashes, and forbids every connection.
Source: W3C, Content Security Policy Level 3, hash sources; WHATWG HTML, restrictions on the contents
of script elements.
"""

import base64
import hashlib
import html
import json
from importlib.resources import files
from pathlib import Path

from sequencer.files import write_text
from sequencer.findings import Report
from sequencer.outputs.rehearsal.page_data import Document, show_document
from sequencer.outputs.rehearsal.song_audio import Sound
from sequencer.staging.staged import Staged

_ASSETS = files("sequencer.outputs.rehearsal") / "assets"


def rehearsal_page(
    staged: Staged, report: Report, sound: Sound, drawn: Staged | None = None
) -> str:
    """The rehearsal page of a show; with `drawn`, of one as flown that can be asked how it is drawn.

    Raises
    ------
    ValueError
        If a position could not be drawn within 2 mm.
    """
    return page_from_document(show_document(staged, report, drawn), sound)


def write_page(
    path: Path, staged: Staged, report: Report, sound: Sound, drawn: Staged | None = None
) -> None:
    """Write the rehearsal page of a show.

    Raises
    ------
    InputError
        If the folder cannot be written.
    ValueError
        If a position could not be drawn within 2 mm.
    """
    write_text(path, rehearsal_page(staged, report, sound, drawn))


def page_from_document(document: Document, sound: Sound) -> str:
    """The HTML page of a document."""
    script, style = _asset("page.js"), _asset("page.css")
    whole = document | {"audio": {"kind": sound.kind, "type": sound.type, "notice": sound.notice}}
    media = {"embedded": "blob:", "linked": "file: content: blob: 'self'", "none": "blob:"}[
        sound.kind
    ]
    policy = "; ".join(
        (
            "default-src 'none'",
            f"script-src '{_hash(script)}'",
            f"style-src '{_hash(style)}'",
            f"media-src {media}",
            "img-src data: blob:",
            "base-uri 'none'",
            "form-action 'none'",
        )
    )
    parts = {
        "@POLICY@": policy,
        "@TITLE@": html.escape(str(document["title"])),
        "@STYLE@": style,
        "@SCRIPT@": script,
        "@DATA@": embedded_json(whole),
        "@SONG@": sound.data if sound.kind == "embedded" else embedded_json(sound.link),
    }
    page = _asset("page.html")
    # Each mark occurs once in the shell; parts are inserted from the end, so that none is searched for marks.
    places = sorted(((page.index(mark), mark) for mark in parts), reverse=True)
    for at, mark in places:
        page = page[:at] + parts[mark] + page[at + len(mark) :]
    return page


def embedded_json(value: object) -> str:
    """JSON that is safe inside a script element, whatever it contains."""
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    for letter in "<>&\u2028\u2029":
        text = text.replace(letter, f"\\u{ord(letter):04x}")
    return text


def _asset(name: str) -> str:
    return (_ASSETS / name).read_text(encoding="utf-8")


def _hash(text: str) -> str:
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode("ascii")
