"""The crew's shared sheet: all that a post's own page leaves out."""

import pypdf
import pytest

from sequencer.facts.cautions import page_one
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety.duties.on_stop import AT_ONCE, stop_of
from sequencer.safety.rules.circumstances import cautions_of


@pytest.fixture(scope="module")
def printed(rounds, tmp_path_factory):
    show, paths = rounds.printed(tmp_path_factory)
    return show, next(p for p in paths if "crew-reading" in p.name)


def plain(text):
    return "".join(text.split())


def test_it_is_one_sheet_of_paper_for_everybody(printed, pages):
    show, path = printed
    text = plain(pages.text_of(path))

    assert len(pypdf.PdfReader(path).pages) <= 2  # both sides
    for words in (
        page_one(),
        AT_ONCE,
        "Emergency card",
        "Before the act",
        "Signs on your page",
        "both arms crossed",
    ):
        assert plain(words) in text, words
    assert all(post.name.upper() in text.upper() for post in show.show.crew)
    assert pages.faults(path) == []


def test_every_role_reads_the_words_of_the_one_stop_call(printed, pages):
    show, path = printed
    text = plain(pages.text_of(path))

    for part in stop_of(show.show, 4):
        assert plain("; ".join(part.does)) in text, part.role


def test_all_cautions_for_a_post_are_on_it(printed, pages, rounds):
    show, path = printed
    edition = Edition(staged=show, report=rounds.report())
    text = plain(pages.text_of(path))
    chosen = cautions_of(show, edition.report.conditions, reader="post")

    assert chosen
    assert all(plain(caution.short) in text for caution in chosen)
