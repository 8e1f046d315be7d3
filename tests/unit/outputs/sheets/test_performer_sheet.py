"""What a performer takes home: two pages for a solo of four minutes, and a card of one sheet that is enough on stage."""

import math
import re
from dataclasses import replace

import pdfplumber
import pypdf
import pytest

from sequencer.findings import Finding
from sequencer.outputs.sheets.page.paper import TINY
from sequencer.outputs.sheets.parts.cues import cues_of
from sequencer.outputs.sheets.parts.dance_rows.hand_words import said
from sequencer.outputs.sheets.parts.dance_rows.move_words import told_moves
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.writing import sheets_of
from sequencer.outputs.words.company_words import company_of_blocks
from sequencer.outputs.words.law_words import LawWords
from sequencer.safety.rules.permits import MARKED_DRAFT

MOVES = (
    "pendulum", "extension", "two-beat-weave", "three-beat-weave", "butterfly", "windmill",
    "antispin-flower-4", "inspin-flower-4", "corkscrew", "fountain",
)  # fmt: skip

SOLO = """
title: Four Minutes
version: "1"
date: 2026-11-20
track: {file: lantern_round.ogg}
venue:
  name: Mill yard
  stage: {shape: rectangle, width: 12 m, depth: 9 m}
  audience: [{line: [[-9, -6], [9, -6]], name: audience}]
cast: [{name: Ada, stature: 1.68 m, prop: {tether: 0.45 m, fuel_mass: 45 g}, notes: [Breathe out before the drum., Look up.]}]
formations:
  back: {spots: {Ada: {at: [0, 6]}}}
  front: {spots: {Ada: {at: [0, 3]}}}
staging:
  - {formation: back, from: "1.1"}
  - {formation: front, from: "25.1", beats: 8}
  - {formation: back, from: "61.1", beats: 8}
timeline:
"""
FIRE = """
fire:
  fuel: lamp oil
  burn: {time: 400 s, measured: true}
  lit: [{who: all, from: "5.1", until: "116.1"}]
  handling: {light: 5 s, put_out: 5 s, waiting: on the ground, lit_by: Mira}
crew:
  - {name: Ewa, post: [-7, 4], equipment: [damp towel, fire blanket]}
  - {name: Mira, post: [0, -3], duty: lead, equipment: [whistle]}
"""


def solo(rounds, folder, *, moves=27, duration=240.0, name="solo.yaml", head=SOLO, note=""):
    """Twenty-seven moves with their links in four minutes, or fewer in less; each with its note."""
    rows = [
        f'  - {{from: "{5 + 4 * k}.1", pattern: {MOVES[k % len(MOVES)]}, beats: 14, '
        f"cue: word {k}{note}}}\n  - {{link: true, beats: 2}}\n"
        for k in range(moves)
    ]
    rows[-1] = rows[-1].split("\n")[0] + "\n"
    heard = rounds.song(duration=duration, tempo=120.0)
    fire = FIRE.replace('"116.1"', f'"{5 + 4 * moves + 3}.1"')
    show = rounds.show(folder, head + "".join(rows) + fire, name=name, heard=heard)
    return Edition(staged=show, report=rounds.report(stop=False))


def pdf_of(edition, name, folder, paper="a4"):
    sheet = next(each for each in sheets_of(edition) if each.name == name)
    path = folder / f"{name}.pdf"
    path.write_bytes(document_bytes([sheet], edition, paper, name))
    return path


@pytest.fixture(scope="module")
def paper(rounds, tmp_path_factory):
    folder = tmp_path_factory.mktemp("solo")
    edition = solo(rounds, folder)
    return edition, {name: pdf_of(edition, name, folder) for name in ("performer-ada", "card-ada")}


def text_of(path):
    return " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(path).pages).split())


def test_a_solo_of_four_minutes_takes_two_pages_and_one_card(paper, pages):
    _, paths = paper
    assert len(pypdf.PdfReader(paths["performer-ada"]).pages) == 2
    assert len(pypdf.PdfReader(paths["card-ada"]).pages) == 1
    for path in paths.values():
        assert pages.faults(path) == []


def test_every_move_cue_word_and_own_note_is_on_both(paper):
    edition, paths = paper
    for path in paths.values():
        text = text_of(path).replace("\u00ad", "")
        for k in range(27):
            assert f"“word {k}”" in text
        assert "Breathe out before the drum." in text
        assert "Look up." in text
    moves = [cue for cue in cues_of(edition.staged, "Ada") if cue.kind == "move"]
    assert len(moves) == 27


def test_a_place_or_a_pattern_that_is_as_before_is_not_told_again(paper):
    _, paths = paper
    text = text_of(paths["performer-ada"])
    assert "same place" not in text
    assert text.count("poi and hand anticlockwise, wall plane") == 3  # of three patterns
    assert text.count("split time, same direction") == 1
    # the walk back leads to a place that is known: its name and where it is, since no name is explained, but no facing
    assert "walk 8 beats to back, on the centre line, 6.0 m upstage" in text.replace("\u00a0", " ")
    assert "walk 8 beats to back, on the centre line, 6.0 m upstage; face" not in text.replace(
        "\u00a0", " "
    )
    assert "walk 8 beats to front; end on the centre line, 3.0 m" in text.replace("\u00a0", " ")


def test_no_count_is_a_fraction_that_nobody_can_count(paper):
    for path in paper[1].values():
        assert not set("¼¾⅓⅔⅛") & set(text_of(path))
        assert "+1/" not in text_of(path)


def test_a_sections_first_move_stands_on_its_page(paper):
    """The heading of a section is grey; the line under it, on the same page, is a move's time in large type."""
    edition, paths = paper
    names = list(edition.staged.song.section_names())
    found = 0
    with pdfplumber.open(paths["performer-ada"]) as pdf:
        for page in pdf.pages:
            lines = page.extract_text_lines(return_chars=True)
            for k, line in enumerate(lines):
                if not any(line["text"].startswith(f"{name} from ") for name in names):
                    continue
                found += 1
                after = [c for each in lines[k + 1 : k + 3] for c in each["chars"] if c["x0"] < 80]
                assert any("Poster" in c["fontname"] or c["size"] >= 13 for c in after), line[
                    "text"
                ]
    assert found >= 7


def test_nothing_on_the_card_is_blank_and_no_heading_stands_alone(paper):
    """Each of the eight panels says something; the line under "Remember" is in the same panel."""
    with pdfplumber.open(paper[1]["card-ada"]) as pdf:
        page = pdf.pages[0]
        wide, tall = page.width / 4, page.height / 2
        for column in range(4):
            for row in range(2):
                box = (column * wide, row * tall, (column + 1) * wide, (row + 1) * tall)
                text = page.crop(box).extract_text()
                assert len(text) > 25, (column, row)
                upside_down = "rebmemeR" in text
                if "Remember" in text or upside_down:
                    lines = text.splitlines()
                    k = next(
                        i
                        for i, each in enumerate(lines)
                        if "Remember" in each or "rebmemeR" in each
                    )
                    assert (lines[k - 1] if upside_down else lines[k + 1]).strip()


CANON = "who: [Łucja, Søren, Noa עברית, 火花]"


def test_a_canon_says_who_leads_and_how_many_counts_after_whom(rounds, tmp_path):
    """Two counts apart, in the order in which the entry names them."""
    show = rounds.show(tmp_path)
    words = company_of_blocks(show)
    told = {
        who: [words[id(b)] for b in show.blocks_of(who) if b.title == "pro-bend-4"]
        for who in show.show.names
    }
    assert told == {
        "Łucja": ["canon: you lead, Søren follows after 2 counts"],
        "Søren": ["canon: Łucja leads, you 2 counts later"],
        "Noa עברית": ["canon: Łucja leads, you 2 counts after Søren"],
        "火花": ["canon: Łucja leads, you 2 counts after Noa עברית"],
    }


def test_a_canon_without_its_second_keeps_its_counts(rounds, tmp_path):
    show = rounds.show(tmp_path, f"{rounds.ROUND}tonight: {{away: [Søren]}}\n")
    words = company_of_blocks(show)
    block = next(b for b in show.blocks_of("Noa עברית") if b.title == "pro-bend-4")
    assert words[id(block)] == "canon: Łucja leads, you 4 counts later"


def test_a_mirrored_performer_reads_whose_mirror_image_they_are(rounds, tmp_path):
    show = rounds.show(tmp_path)
    words = company_of_blocks(show)
    of = {
        who: next(b for b in show.blocks_of(who) if b.title == "antispin-flower-4")
        for who in show.show.names
    }
    assert words[id(of["Søren"])] == (
        "mirror image of Łucja, Noa עברית and 火花, written for your hands"
    )
    assert words[id(of["Łucja"])] == "Søren mirrors you"
    after = next(b for b in show.blocks_of("Søren") if b.title == "pro-bend-3")
    assert words[id(after)] == "no longer mirrored"


def test_hands_are_told_again_only_where_they_are_new(rounds, tmp_path):
    show = rounds.show(tmp_path)
    told = told_moves(show, "Łucja")
    spins = [told[id(b)] for b in show.blocks_of("Łucja") if b.title == "static-spin"]
    assert len(spins) == 2
    assert spins[0].hands
    assert spins[1].hands == ""
    assert told[id(show.blocks_of("Łucja")[1])].timing == "split time, same direction"


@pytest.mark.parametrize(
    ("prop", "hand", "words"),
    [
        ("wall plane, clockwise", "the hand circles in the wall plane, anticlockwise",
         "poi clockwise, hand anticlockwise, wall plane"),
        ("wall plane, clockwise", "the hand circles in the wall plane, clockwise",
         "poi and hand clockwise, wall plane"),
        ("wheel plane, forward", "the hand circles in the wall plane, clockwise",
         "poi forward, wheel plane; hand clockwise, wall plane"),
        ("wheel plane, forward", "the hand moves from side to side",
         "poi forward, wheel plane; hand from side to side"),
        ("wheel plane, forward", "the hand stays still", "poi forward, wheel plane"),
        ("back and forth in the wheel plane", "the hand stays still", "poi back and forth, wheel plane"),
        ("the plane bends, starting with wheel plane, backward",
         "the hand circles in the wall plane, anticlockwise",
         "poi bends, starting backward, wheel plane; hand anticlockwise, wall plane"),
        ("the prop hangs without turning", "the hand stays still", "poi hangs without turning"),
    ],
)  # fmt: skip
def test_hands_are_told_as_one_performer_tells_another(prop, hand, words):
    assert said(LawWords(prop=prop, hand=hand), "poi") == words


def finding(code, severity, message, **given):
    fixed = {"who": (), "start": None, "end": None, "position": None, "remedies": (f"mend {code}",)}
    return Finding(code=code, severity=severity, message=message, **{**fixed, **given})


def told_of(rounds, folder, *findings):
    """The words of Łucja's sheet with only these findings."""
    said = replace(rounds.report(stop=False), findings=findings)
    path = pdf_of(Edition(staged=rounds.show(folder), report=said), "performer-lucja", folder)
    return text_of(path).replace("\u00a0", " ")


def test_what_should_be_mended_for_the_whole_show_is_told_whoever_burns(rounds, tmp_path):
    """In one line each, without the mends; that there is no permit stands on every page of a draft already."""
    text = told_of(
        rounds,
        tmp_path,
        finding("wind-near", "warn", "The wind is near the limit."),
        finding("stop-call-kept", "warn", "The stop call is kept by one.", start=61.0, end=62.0),
        finding("no-permit", "warn", f"No permit is recorded; {MARKED_DRAFT}"),
        finding("odd", "note", "Only a note."),
    )
    assert "Before you dance: the whole show WARN The wind is near the limit." in text
    assert "WARN 1:01 The stop call is kept by one." in text
    for words in ("mend ", "No permit is recorded", "Only a note", "findings about you"):
        assert words not in text


def test_what_stops_the_whole_show_is_told_whole(rounds, tmp_path):
    text = told_of(
        rounds,
        tmp_path,
        finding("wind", "stop", "The wind is too strong."),
        finding("wind-near", "warn", "A gust is near the limit."),
        finding("reach", "warn", "Your left hand cannot get there.", who=("Łucja",)),
        finding("reach", "warn", "Søren’s hand cannot get there.", who=("Søren",)),
    )
    assert "findings about you" in text
    assert "Your left hand cannot get there." in text
    assert "Søren’s hand cannot" not in text
    assert text.index("the whole show") < text.index("The wind is too strong.")
    assert "mend wind" in text
    assert "WARN A gust is near the limit." in text


NOTED = ", note: low until the drum comes back"


def noted(rounds, folder, moves, **given):
    """A solo with a note and a cue on every move, of eight seconds each."""
    head = given.pop("head", SOLO).replace("61.1", "53.1")
    return solo(
        rounds, folder, moves=moves, duration=8.0 * moves + 40, head=head, note=NOTED, **given
    )


@pytest.mark.parametrize(("paper_name", "moves"), [("a4", 25), ("letter", 25), ("letter", 19)])
def test_a_solo_with_notes_takes_two_pages(rounds, pages, tmp_path, paper_name, moves):
    path = pdf_of(noted(rounds, tmp_path, moves), "performer-ada", tmp_path, paper_name)
    assert len(pypdf.PdfReader(path).pages) == 2
    assert pages.faults(path) == []


@pytest.mark.parametrize(("paper_name", "moves"), [("a4", 21), ("letter", 19)])
def test_and_two_pages_with_what_has_changed(rounds, tmp_path, paper_name, moves):
    """The note on what has changed comes above everything else, and takes room there."""
    head = SOLO.replace('version: "1"', 'version: "0"').replace("[0, 6]", "[0, 6.5]")
    before = noted(rounds, tmp_path, moves, head=head, name="old.yaml")
    edition = replace(noted(rounds, tmp_path, moves), before=before)
    path = pdf_of(edition, "performer-ada", tmp_path, paper_name)
    assert "CHANGED" in text_of(path)
    assert len(pypdf.PdfReader(path).pages) == 2


def _spots(turn):
    """Four people on a ring of four metres, a quarter of a turn further each time but for a little."""
    rows = []
    for k, name in enumerate(("Ada", "Bea", "Cleo", "Dot")):
        angle = math.radians(90 * k + 20 * turn)
        rows.append(
            f"{name}: {{at: [{3.4 * math.sin(angle):.2f}, {4.5 + 2.6 * math.cos(angle):.2f}]}}"
        )
    return ", ".join(rows)


GROUP = SOLO.split("cast:", maxsplit=1)[0] + "\n".join(
    [
        "cast:",
        *(f"  - {{name: {name}, stature: 1.68 m, prop: {{tether: 0.45 m, fuel_mass: 45 g}}}}" for name in ("Ada", "Bea", "Cleo", "Dot")),
        "formations:",
        *(f"  ring {turn}: {{spots: {{{_spots(turn)}}}}}" for turn in range(7)),
        "staging:",
        '  - {formation: ring 0, from: "1.1"}',
        *(f'  - {{formation: ring {turn}, from: "{12 * turn + 1}.1", beats: 8}}' for turn in range(1, 7)),
        "timeline:\n",
    ]
)  # fmt: skip


@pytest.mark.parametrize("paper_name", ["a4", "letter"])
def test_a_group_of_four_takes_two_pages_each(group, pages, tmp_path, paper_name):
    """Many formations and walks: small plans, and sections named in their first row, in no smaller type."""
    path = pdf_of(group, "performer-bea", tmp_path, paper_name)
    assert len(pypdf.PdfReader(path).pages) == 2
    assert pages.faults(path) == []
    with pdfplumber.open(path) as pdf:
        letters = [each for page in pdf.pages for each in page.chars]
        text = " ".join(" ".join(page.extract_text() for page in pdf.pages).split())
    assert min(each["size"] for each in letters) >= TINY
    names = group.staged.song.section_names()
    begun = [name for name in names if re.search(rf"\b{name}: +({'|'.join(MOVES)})", text)]
    if paper_name == "a4":  # which has room for rows of their own
        assert all(f"{name} from " in text for name in names)
    else:  # the first and the last section begin with a rest
        assert begun == list(names[1:-1])
    assert all(f"ring {turn}" in text for turn in range(7))
    assert "1 Ada 2 Bea 3 Cleo 4 Dot" in text  # whose number is which on the small plans
    assert text.count("FRONT") + text.count("AUDIENCE") <= 3


@pytest.mark.parametrize("paper_name", ["a4", "letter"])
def test_where_two_pages_are_not_enough_plans_are_as_large_as_the_others_allow(
    group, rounds, pages, tmp_path, paper_name
):
    """Eight findings fill a page; the fourth page has room for more than the cautions."""
    found = [
        finding(
            f"reach{k}", "warn", "A hand is beyond what the arm reaches.", who=("Bea",), start=k
        )
        for k in range(8)
    ]
    many = replace(group, report=replace(rounds.report(stop=False), findings=tuple(found)))
    path = pdf_of(many, "performer-bea", tmp_path, paper_name)
    assert pages.faults(path) == []
    with pdfplumber.open(path) as pdf:
        assert len(pdf.pages) == 4
        grounds = [
            each
            for page in pdf.pages
            for each in page.rects
            if each["fill"] and each["height"] > 60 and each["non_stroking_color"] != (1, 1, 1)
        ]
        plans = sorted(
            each["width"] for each in grounds if each["width"] < 0.7 * pdf.pages[0].width
        )
        last = pdf.pages[-1].extract_text()
    assert plans[0] > 150  # points: three side by side; the usual ones are 91 wide
    assert "Cautions" in last


@pytest.fixture(scope="module")
def group(rounds, tmp_path_factory):
    return solo(
        rounds,
        tmp_path_factory.mktemp("group"),
        moves=23,
        duration=214.0,
        head=GROUP,
        note=", note: low until the drum comes back and then up at once",
    )
