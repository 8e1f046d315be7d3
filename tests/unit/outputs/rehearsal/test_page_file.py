"""The page as a file: whole, small, inert, and built from the sources that lie beside it."""

import base64
import hashlib
import json
import re
from html.parser import HTMLParser
from importlib.resources import files
from pathlib import Path

import pytest

from sequencer.outputs.rehearsal.page_data import show_document
from sequencer.outputs.rehearsal.page_file import embedded_json, page_from_document, rehearsal_page
from sequencer.outputs.rehearsal.song_audio import Sound, silent

WEB = Path(__file__).parents[4] / "web"
ASSETS = files("sequencer.outputs.rehearsal") / "assets"


class Scripts(HTMLParser):
    """Contents of all script and style elements, and whatever points out of the page."""

    def __init__(self):
        super().__init__()
        self.parts, self.links, self.open = [], [], None

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        self.links += [given[key] for key in ("src", "href") if key in given]
        self.open = (tag, given) if tag in {"script", "style"} else None

    def handle_data(self, data):
        if self.open:
            self.parts.append((*self.open, data))
            self.open = None


@pytest.fixture(scope="module")
def page(rounds, tmp_path_factory):
    staged = rounds.show(tmp_path_factory.mktemp("page"))
    return rehearsal_page(staged, rounds.report(), silent("no song"))


def read(text):
    parser = Scripts()
    parser.feed(text)
    return parser


def test_nothing_points_out_of_the_page(page):
    assert read(page).links == ["#transport"]


def test_script_and_style_are_those_that_the_policy_names(page):
    """W3C, Content Security Policy Level 3: the hash is that of the element's text."""
    policy = re.search(r'Content-Security-Policy" content="([^"]+)"', page)[1]
    for tag, given, text in read(page).parts:
        if "type" in given:
            continue  # data, never run
        digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
        assert f"{tag}-src 'sha256-{digest}'" in policy
    assert "default-src 'none'" in policy


def test_hostile_text_stays_text():
    text = "</script><!-- <img src=x onerror=alert(1)> &amp; \u2028"
    written = embedded_json({"name": text})

    assert not re.search("[<>&\u2028]", written)
    assert json.loads(written)["name"] == text


def test_marks_in_a_show_are_not_filled_in(rounds, tmp_path):
    """A title that looks like a mark of the shell."""
    staged = rounds.show(tmp_path, rounds.ROUND.replace("title: Lantern Round", 'title: "@SONG@"'))
    document = show_document(staged, rounds.report())
    page = page_from_document(document, Sound(kind="embedded", type="audio/mpeg", data="QUJD"))

    assert page.count("QUJD") == 1
    assert "<title>@SONG@</title>" in page


def test_the_size_without_a_song(page):
    assert len(page.encode()) < 1_500_000


def test_the_same_show_gives_the_same_page(rounds, tmp_path):
    staged = rounds.show(tmp_path)
    pages = {rehearsal_page(staged, rounds.report(), silent("no song")) for _ in range(2)}

    assert len(pages) == 1


def test_the_document_holds_what_is_danced(rounds, tmp_path):
    staged = rounds.show(tmp_path)
    document = show_document(staged, rounds.report())

    assert [entry["name"] for entry in document["cast"]] == list(staged.show.names)
    assert len(document["blocks"]) == len(staged.blocks)
    first = document["blocks"][0]
    assert document["texts"][first[3]][0] == staged.blocks[0].title
    assert document["burn"] == {"seconds": 240.0, "measured": True}
    assert document["error"]["measured"] < document["error"]["stated"] == 0.002


def test_the_page_is_built_from_these_sources():
    """`npm run build` in web/ notes a hash of what it read; users get the built file."""
    if not WEB.is_dir():
        pytest.skip("the sources of the page are not beside the package")
    digest = hashlib.sha256()
    for path in sorted((WEB / "src").iterdir(), key=lambda p: p.name):
        digest.update(path.name.encode() + b"\0" + path.read_bytes().replace(b"\r\n", b"\n"))
    digest.update((WEB / "package-lock.json").read_bytes().replace(b"\r\n", b"\n"))

    assert (ASSETS / "built-from.txt").read_text(encoding="utf-8").strip() == digest.hexdigest()
