"""Whole print-outs, read back with pypdf and pdfplumber."""

import math
import re

import pypdf
import pytest

from sequencer.errors import InputError
from sequencer.facts.cautions import page_one
from sequencer.outputs.sheets import write_sheets, writing
from sequencer.outputs.sheets.packet import POINTS_A_METRE, plan_scale
from sequencer.outputs.sheets.page.elements import shared
from sequencer.outputs.sheets.parts.cues import cues_of
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import scene_of
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.outputs.sheets.writing import sheets_of


@pytest.fixture(scope="module")
def printed(rounds, tmp_path_factory):
    return rounds.printed(tmp_path_factory)


def sheets_with_heads(paths):
    """All but the cards, and but the file that holds them too."""
    return [path for path in paths[1:] if "-card-" not in path.name]


def sheet_file(edition, name, folder, *, paper="a4"):
    """One sheet of a print-out in a file of its own."""
    sheet = next(each for each in sheets_of(edition) if each.name == name)
    path = folder / f"{name}.pdf"
    path.write_bytes(document_bytes([sheet], edition, paper, name))
    return path


def plain(text):
    return " ".join(text.split())


def test_names_of_the_files_say_what_they_hold(printed):
    names = [path.name for path in printed[1]]

    assert names[0] == "all-sheets.pdf"
    assert "lantern-round-safety.pdf" in names
    assert "lantern-round-performer-lucja.pdf" in names
    assert "lantern-round-performer-noa-u5e2u5d1u5e8u5d9u5ea.pdf" in names
    assert len(set(names)) == len(names)
    assert all(name.isascii() and len(name) < 120 for name in names)


def test_names_that_look_alike_in_plain_letters_get_files_of_their_own(rounds, tmp_path):
    text = rounds.ROUND.replace("Søren", "Lucja").replace("Noa עברית", "lucja no2")
    show = rounds.show(tmp_path, text)

    names = [sheet.name for sheet in sheets_of(Edition(staged=show, report=rounds.report()))]

    assert len(set(names)) == len(names)
    assert {"performer-lucja", "performer-lucja-no2"} < set(names)


FRONT = (0.75, 0.5, 1.0, 1.0)  # panel 1 of a pocket card


def test_every_page_says_which_show_which_cut_and_which_page(printed, pages):
    for path in sheets_with_heads(printed[1]):
        for number in range(len(pypdf.PdfReader(path).pages)):
            text = plain(pages.text_of(path, number))
            assert "version 3 · 2026-11-20" in text
            assert "lantern_round.ogg" in text
            assert "sha256 4f9a1c2b7d3e" in text
            assert "DRAFT – no permit that counts" in text
            assert "DO NOT DANCE YET – 1" in text.replace("\u00a0", " ")


def test_pages_are_numbered_within_their_sheet(printed, pages):
    path = next(p for p in printed[1] if p.name.endswith("performer-lucja.pdf"))
    total = len(pypdf.PdfReader(path).pages)

    for number in range(total):
        assert f"page {number + 1} of {total}" in plain(pages.text_of(path, number))


def test_page_one_of_every_print_out_carries_the_caution(printed, pages):
    for path in printed[1]:
        panel = FRONT if "-card-" in path.name else None
        assert plain(page_one()) in plain(pages.text_of(path, 0, panel=panel))


def test_a_pocket_card_says_whose_which_show_and_when_lit(printed, pages):
    path = next(p for p in printed[1] if p.name.endswith("card-lucja.pdf"))
    front = plain(pages.text_of(path, 0, panel=FRONT))
    last = plain(pages.text_of(path, 0, panel=(0.0, 0.5, 0.25, 1.0)))

    for words in (
        "Łucja",
        "version 3, 2026-11-20",
        "4f9a1c2b7d3e",
        "DRAFT",
        "DO NOT DANCE YET",
        "−0:20 – 1:50",  # from the start of lighting to the end of putting out
    ):
        assert words in front
    assert "END" in last
    assert "page 6 of 8" in last
    assert len(pypdf.PdfReader(path).pages) == 1


def test_operators_read_time_code_at_every_rate(printed, pages):
    """The second burn starts 130.5 s in.

    Source of the codes: SMPTE ST 12-1; 130.5 s is frame 3132 at 24, 3262 at 25, 3911 at 30000/1001
    (two minutes passed, four numbers dropped: 3915), 3915 at 30 frames a second. Worked by hand.
    """
    path = next(p for p in printed[1] if p.name.endswith("operator.pdf"))
    text = plain(pages.text_of(path))
    line = text[text.index("burn begins: Łucja and Søren") :][:120]

    for code in ("00:02:10:12", "00:02:10;15", "00:02:10:15"):
        assert code in line
    assert line.count("00:02:10:12") == 2


def test_the_fuel_station_reads_what_to_soak(printed, pages):
    """Wicks of 45 and 50 g: two a performer; relit wicks are soaked again."""
    text = plain(pages.text_of(next(p for p in printed[1] if p.name.endswith("fuel.pdf")), 0))

    for words in (
        "90 g",
        "100 g",
        "80 g",
        "SECOND SET",
        "Mira lights",
        "no smoking",
        "flammable material",
    ):
        assert words in text.replace("\u00a0", " ")


def test_the_packet_has_a_plan_to_scale_rules_and_signatures(printed, pages):
    path = next(p for p in printed[1] if p.name.endswith("plan-packet.pdf"))
    text = plain(pages.text_of(path)).replace("\u00a0", " ")

    assert re.search(r"Scale 1 : (75|100|125|150|200) when printed at 100 %", text)
    for words in (
        "8.50 m",
        "Rules in force",
        "Signatures",
        "Emergency card",
        "On the stop call",
        "Audience and exits",
        "For the authority",
        "NFPA",
    ):
        assert words in text


def test_the_site_plan_keeps_its_scale(rounds, tmp_path):
    """At 1 : n a metre of the place is 1000/n mm of paper."""
    show = rounds.show(tmp_path)
    edition = Edition(staged=show, report=rounds.report())
    plan = StagePlan(scene_of(edition, 0), tall=500.0)
    scale = plan_scale(plan, 500.0)
    drawn = StagePlan(scene_of(edition, 0), tall=500.0, scale=POINTS_A_METRE / scale)
    drawn.wrap(500.0, 700.0)
    (x0, y0), (x1, y1) = drawn.at(0.0, 0.0), drawn.at(3.0, 4.0)

    assert math.hypot(x1 - x0, y1 - y0) / 72 * 25.4 == pytest.approx(5000.0 / scale)


def test_the_captain_reads_the_ways(printed, pages):
    path = next(p for p in printed[1] if p.name.endswith("formation-book.pdf"))
    text = plain(pages.text_of(path)).replace("\u00a0", " ")

    assert "8 counts" in text
    assert "4.5 m straight" in text  # Łucja, (-4.5, 2.5) to (0, 2)


def test_changed_lines_are_marked_against_the_last_print(rounds, pages, tmp_path):
    old = rounds.ROUND.replace('version: "3"', 'version: "2"')
    old = old.replace("two-beat-weave", "windmill").replace(
        'from: "66.1", until', 'from: "67.1", until'
    )
    before = rounds.show(tmp_path, old, name="old.yaml")
    now = rounds.show(tmp_path)
    said = rounds.report()
    edition = Edition(staged=now, report=said, before=Edition(staged=before, report=said))
    own = plain(pages.text_of(sheet_file(edition, "performer-lucja", tmp_path)))
    crew = plain(pages.text_of(sheet_file(edition, "safety", tmp_path)))

    against = "Since version 2 · 2026-11-20:"
    said = own.replace("\u00a0", " ")
    assert against in own
    assert "each with a bar in the margin" in said
    assert "CHANGED two-beat-weave (was windmill)" in said
    # the burn begins a bar, 2 s, earlier: at 66.1 instead of 67.1
    assert "CHANGED 1:54 (was 1:56); " in said
    assert "Burn begins at 2:10, bar 66.1" in said[said.index("CHANGED 1:54") :]
    assert "(was Burn begins at 2:12, bar 67.1" in said
    assert "CHANGED" not in said[: said.index("verse 1")]
    assert against in crew


def test_build_steps_follow_the_station_table(printed, pages):
    """Planes of the pro-bend of four lobes, s = −1 … as the tables of motion have them, in the PDF's words."""
    path = next(p for p in printed[1] if p.name.endswith("build-steps.pdf"))
    text = plain(pages.text_of(path)).replace("\u00a0", " ")

    for words in (
        "pro-bend-4",
        "In the routine 32 counts: 4 times round, 8 counts each. After one round you are back where you began.",
        "pro-bend-3",
        "After one round the poi spins the other way; after 2 you are back where you began.",
    ):
        assert words in text
    assert "backward second time forward" in text
    assert (
        "next hand to 4 o’clock; poi swings back towards you into the wall plane, anticlockwise"
        in text
    )


def test_every_file_is_made_for_archives(printed):
    """What ISO 19005-2 level B asks and a reader can see; the files were not run through a validator."""
    for path in printed[1]:
        reader = pypdf.PdfReader(path)
        root = reader.trailer["/Root"]
        xmp = reader.xmp_metadata
        intent = root["/OutputIntents"][0].get_object()
        profile = intent["/DestOutputProfile"].get_object()

        assert reader.pdf_header == "%PDF-1.7"
        assert "/ID" in reader.trailer
        assert (xmp.pdfaid_part, xmp.pdfaid_conformance) == ("2", "B")
        assert xmp.dc_title["x-default"] == reader.metadata.title
        assert xmp.xmp_create_date.date() == reader.metadata.creation_date.date()
        assert xmp.pdf_producer == reader.metadata.producer
        assert intent["/S"] == "/GTS_PDFA1"
        assert profile["/N"] == 3
        assert profile.get_data()[36:40] == b"acsp"  # the ICC's own signature
        assert not {"/AA", "/OpenAction", "/JavaScript", "/AcroForm"} & set(root)
        for page in reader.pages:
            assert "/Group" not in page
            assert "/ExtGState" not in page["/Resources"]
            assert "/Annots" not in page


def test_an_unchanged_show_has_no_marks(rounds, pages, tmp_path):
    show = rounds.show(tmp_path)
    said = rounds.report()
    edition = Edition(staged=show, report=said, before=Edition(staged=show, report=said))
    own = plain(pages.text_of(sheet_file(edition, "performer-lucja", tmp_path)))

    assert "no changes on this sheet" in own
    assert "CHANGED" not in own


def test_the_combined_file_holds_every_sheet(printed):
    _, paths = printed
    whole = pypdf.PdfReader(paths[0])
    parts = [pypdf.PdfReader(path) for path in paths[1:]]

    assert len(whole.pages) == sum(len(part.pages) for part in parts)
    assert len([entry for entry in whole.outline if not isinstance(entry, list)]) == len(parts)


def test_a_performers_sheet_tells_every_cue(printed, pages):
    show, paths = printed
    text = plain(pages.text_of(next(p for p in paths if "performer-lucja" in p.name)))

    for cue in cues_of(show, "Łucja"):
        if cue.block is not None and not cue.block.link:
            assert cue.block.title in text
    for words in ("FLAMES ON", "FLAMES OUT", "keep it low until the drum", "forward, wheel plane"):
        assert words in text
    assert "Łucja’s right head comes within 0.12 m of Søren’s left arm" in text


def test_the_crew_reads_who_burns_and_who_watches(printed, pages):
    text = plain(pages.text_of(next(p for p in printed[1] if "safety" in p.name)))

    for words in (
        "S2 Jonas",
        "out by",
        "What is asked, and what this plan has",
        "NOT STATED",
        "Confirm by hand",
        "If a head comes off",
        "damp towel",
        "TOO CLOSE",
        "STOP",
        "willow",
    ):
        assert words in text.replace("\u00a0", " ")


def test_letters_without_type_are_named(printed, pages):
    text = plain(pages.text_of(printed[1][0], 0))

    assert "Letters missing." in text
    assert "U+706B, U+82B1" in text


def test_type_is_embedded_and_cut_to_what_is_used(printed):
    for path in printed[1][1:]:
        fonts = {}
        for page in pypdf.PdfReader(path).pages:
            fonts |= page["/Resources"]["/Font"].get_object()
        for font in [each.get_object() for each in fonts.values()]:
            assert font["/BaseFont"][7] == "+"
            assert "SequencerSheet" in font["/BaseFont"]
            assert "/FontFile2" in font["/FontDescriptor"]


def test_document_data_name_the_show_and_the_track(printed):
    reader = pypdf.PdfReader(printed[1][0])

    assert reader.metadata.title == "Lantern Round"
    assert "version 3" in reader.metadata.author
    assert "4f9a1c2b7d3e" in reader.metadata.subject
    assert reader.metadata.creation_date.date().isoformat() == "2026-11-20"
    assert reader.trailer["/Root"]["/Lang"] == "en"


def test_headings_are_tagged(printed):
    root = pypdf.PdfReader(printed[1][1]).trailer["/Root"]
    kinds = [kid.get_object()["/S"] for kid in root["/StructTreeRoot"]["/K"][0].get_object()["/K"]]

    assert root["/MarkInfo"]["/Marked"]
    assert {"/H1", "/H2", "/P", "/TH", "/TD", "/Figure"} <= set(kinds)


def test_the_same_show_gives_the_same_bytes(rounds, printed, tmp_path):
    show = rounds.show(tmp_path)
    again = write_sheets(show, rounds.report(), tmp_path / "out")

    assert [p.read_bytes() for p in again] == [p.read_bytes() for p in printed[1]]


def test_a_permit_takes_the_draft_mark_away(rounds, pages, tmp_path):
    permit = (
        "{number: FP-17, issued_by: Town, from: 2027-01-01, until: 2027-12-31, place: Mill yard}"
    )
    show = rounds.show(tmp_path, f"{rounds.ROUND}rules: {{permit: {permit}}}\nnight: 2027-06-19\n")
    edition = Edition(staged=show, report=rounds.report(stop=False))
    path = sheet_file(edition, "safety", tmp_path, paper="letter")
    text = plain(pages.text_of(path, 0))

    assert "DRAFT" not in text
    assert "DO NOT DANCE" not in text
    assert "FP-17" in text
    assert tuple(pypdf.PdfReader(path).pages[0].mediabox[2:]) == (612, 792)


def test_a_solo_without_fire_crew_or_formation_prints_too(rounds, pages, tmp_path):
    text = """
    title: Alone
    track: {file: a.ogg}
    venue: {stage: {shape: round, width: 8 m}, audience: [{line: [[-5, -3], [5, -3]]}]}
    cast: [{name: Ada, stature: 1.7 m, prop: {tether: 50 cm}}]
    timeline: [{pattern: static-spin, from: "2.1", beats: 8}]
    """
    paths = write_sheets(rounds.show(tmp_path, text), rounds.report(stop=False), tmp_path / "out")
    words = plain(pages.text_of(paths[0]))

    assert "version 1 · no date in the sho" in words
    assert "Nobody is lit in this show." in words
    assert "No crew in the show file." in words
    assert plain(page_one()) in words


def test_an_unusable_folder_is_an_input_error_and_leaves_nothing(rounds, tmp_path, monkeypatch):
    show = rounds.show(tmp_path)
    monkeypatch.setattr(writing, "document_bytes", lambda *_given: b"%PDF")
    (tmp_path / "taken").write_text("a file", encoding="utf-8")

    with pytest.raises(InputError, match="cannot write"):
        write_sheets(show, rounds.report(), tmp_path / "taken" / "out")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["lantern-round.yaml", "taken"]


def test_unknown_paper_is_refused_before_anything_is_written(rounds, tmp_path):
    with pytest.raises(ValueError, match="paper must be one of a4, letter"):
        write_sheets(rounds.show(tmp_path), rounds.report(), tmp_path / "out", paper="a5")
    assert not (tmp_path / "out").exists()


def test_columns_share_their_room():
    assert shared([10.0, 20.0], 60.0) == [25.0, 35.0]
    assert shared([10.0, 100.0, 100.0], 110.0) == [10.0, 50.0, 50.0]
