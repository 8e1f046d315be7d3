"""A post's page: one page, large type, the stop call in it, its rows; read back from the PDF with pdfplumber."""

import re
from dataclasses import replace

import pdfplumber
import pytest

from sequencer.facts.cautions import page_one
from sequencer.outputs.sheets.page.paper import DARK_SIZE
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.post_sheet import nearest_extinguisher, post_sheet
from sequencer.outputs.sheets.writing import sheets_of

LEAST = 14.0  # [pt] as the crew asked for a page that is read at arm's length in the dark


@pytest.fixture(scope="module")
def printed(rounds, tmp_path_factory):
    return rounds.printed(tmp_path_factory)


def posts(printed):
    return [path for path in printed[1] if "-post-" in path.name]


def plain(text):
    return " ".join(text.replace("\u00a0", " ").split())


def made(edition, number, folder, *, paper="a4"):
    path = folder / f"post-{number}-{paper}.pdf"
    path.write_bytes(document_bytes([post_sheet(edition, number)], edition, paper, "post"))
    return path


def sizes(path):
    with pdfplumber.open(path) as pdf:
        return [round(each["size"], 2) for page in pdf.pages for each in page.chars]


def test_a_post_has_one_page_and_nothing_on_it_is_small(printed):
    assert LEAST == DARK_SIZE
    assert len(posts(printed)) == 4
    for path in posts(printed):
        with pdfplumber.open(path) as pdf:
            # the lead lights all four twice besides saying go: more rows than a page holds
            assert len(pdf.pages) == (2 if "mira" in path.name else 1)
            assert all(page.width > page.height for page in pdf.pages)
        assert min(sizes(path)) >= LEAST, path.name
        assert max(sizes(path)) >= 24.0


def test_stop_call_and_own_action_stand_white_on_black_in_one_size(printed, pages):
    with pdfplumber.open(posts(printed)[0]) as pdf:
        page = pdf.pages[0]
        white = [each for each in page.chars if each["non_stroking_color"] == (1, 1, 1)]
        band = [each for each in white if each["top"] < 100]
        words = "".join(each["text"] for each in band)
        assert "STOP" in words
        assert "YOU" in words
        assert len({round(each["size"], 2) for each in band}) == 1
        assert pages.picture(posts(printed)[0]).getpixel((30, 30)) < 60  # of 255


def test_the_page_says_where_to_stand_what_is_at_hand_and_what_to_do(printed, pages):
    """Ewa at [-7, 4] beside a stage 12 m wide and 9 m deep: 0.5 m to the right of the middle of its stage right side,
    1 m outside. The extinguisher at [-6.5, 1] is √9.25 = 3.04 m away; from there, facing stage left, the audience is on the right."""
    text = plain(pages.text_of(posts(printed)[0], 0))

    for words in (
        "S1", "Ewa", "spotter", "mark S1: stage right side", "0.5 m to the right of its middle, 1.0 m outside the edge",
        "damp towel and fire blanket", "4 m, on your right", "FIRST AID", "CALLS HELP", "HELP IS MET", "WATCH 1 ŁUCJA",
        "PUT OUT 1 ŁUCJA", "−0:20", plain(page_one()), "version 3 · 2026-11-20", "sha256 4f9a1c2b7d3e", "page 1 of 1",
        "DRAFT – no permit that counts", "DO NOT DANCE YET – 1",
    ):  # fmt: skip
        assert words in text, words
    assert not re.search(r"\bbar\b", text)
    assert "2 SØREN" not in text


def test_a_keeper_reads_of_the_first_and_the_last_flame_only(printed, pages):
    text = plain(pages.text_of(posts(printed)[3], 0))

    assert text.count("first flame") == text.count("last flame out") == 1
    assert "KEEP every can shut" in text
    assert "WATCH" not in text.replace("Watch", "")


def test_the_nearest_extinguisher_is_one_of_the_act_and_for_the_keeper_one_of_the_fuel(
    rounds, tmp_path
):
    text = rounds.ROUND.replace(
        "extinguishers: [", "extinguishers: [{at: [-7.2, 4], guards: fuel}, {at: [-9, 10], guards: fuel}, "
    )  # fmt: skip
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report(stop=False))
    ewa, ada = edition.staged.show.crew[0], edition.staged.show.crew[3]

    assert nearest_extinguisher(edition, ewa)[1] == (-6.5, 1)
    assert nearest_extinguisher(edition, ada) == (pytest.approx(2**0.5), (-9, 10))
    bare = edition.staged.show.venue.model_copy(update={"extinguishers": ()})
    show = edition.staged.show.model_copy(update={"venue": bare})
    without = Edition(staged=replace(edition.staged, show=show), report=rounds.report(stop=False))
    assert nearest_extinguisher(without, ewa) is None


RELIGHTS = "\n".join(
    f'    - {{who: Søren, from: "{bar}.1", until: "{bar + 1}.1", props: second set}}'
    for bar in range(6, 86, 8)
)


def test_only_rows_that_do_not_fit_go_on_a_second_page(rounds, tmp_path, pages):
    """Ten burns of one performer are twenty rows; a page of 595 pt holds about five of 14 pt and more."""
    text = (
        rounds.ROUND[: rounds.ROUND.index("  lit:")]
        + f"  handling: {{light: 2 s, put_out: 2 s}}\n  lit:\n{RELIGHTS}\n"
    )
    text += rounds.ROUND[rounds.ROUND.index("crew:") :]
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report(stop=False))
    path = made(edition, 2, tmp_path, paper="letter")
    with pdfplumber.open(path) as pdf:
        count = len(pdf.pages)

    assert count > 1
    assert min(sizes(path)) >= LEAST
    for number in range(count):
        words = plain(pages.text_of(path, number))
        assert f"page {number + 1} of {count}" in words
        assert "YOU:" in words
    whole = plain(pages.text_of(path))
    assert whole.count("PUT OUT 2 SØREN") == whole.count("WATCH 2 SØREN") == 10
    assert pages.faults(path) == []


def test_a_print_against_the_last_one_stays_on_its_page(rounds, tmp_path, pages):
    now = rounds.show(tmp_path)
    old = rounds.show(
        tmp_path, rounds.ROUND.replace("post: [-7, 4]", "post: [-7, 5]"), name="o.yaml"
    )
    said = rounds.report()
    edition = Edition(staged=now, report=said, before=Edition(staged=old, report=said))
    path = tmp_path / "post.pdf"
    sheet = next(each for each in sheets_of(edition) if each.name.startswith("post-1"))
    path.write_bytes(document_bytes([sheet], edition, "a4", "post"))

    with pdfplumber.open(path) as pdf:
        assert len(pdf.pages) == 1
    assert min(sizes(path)) >= LEAST
    assert "Since version 3 · 2026-11-20:" in plain(pages.text_of(path, 0))
    assert pages.faults(path) == []
