"""What stands together in one line of a performer's sheet, and which plans and cautions a reader gets."""

import pypdf
import pytest

from sequencer.outputs.sheets.parts.cues import cues_of
from sequencer.outputs.sheets.parts.dance_rows.folding import SHORT_REST, folded, walk_words
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.writing import sheets_of
from sequencer.safety.rules.circumstances import cautions_of

BY_THE_WAY = '{formation: Diamond, from: "25.1", beats: 8, via: {Łucja: [[-2.55, 3.88]]}}'


@pytest.fixture(scope="module")
def lantern(rounds, tmp_path_factory):
    text = rounds.ROUND.replace('{formation: Diamond, from: "25.1", beats: 8}', BY_THE_WAY)
    return rounds.show(tmp_path_factory.mktemp("folding"), text)


def test_every_cue_is_in_one_line(lantern):
    for who in lantern.show.names:
        cues = cues_of(lantern, who)
        told = [cue for entry in folded(cues) for cue in entry.cues]

        assert len(told) == len({id(cue) for cue in told})
        left = [cue for cue in cues if not any(cue is one for one in told)]
        assert [cue.kind for cue in left if cue.kind != "end"] in ([], ["wait"])
        assert all(cue.beats < 1 for cue in left)


def test_links_and_short_rests_stand_with_what_they_follow(lantern):
    entries = folded(cues_of(lantern, "Łucja"))

    assert all(entry.cue.kind != "link" for entry in entries)
    assert any(cue.kind == "link" for entry in entries for cue in entry.then)
    for entry in entries:
        assert entry.cue.kind != "wait" or entry.cue.beats > SHORT_REST
        for cue in entry.then:
            assert cue.start >= entry.cue.end - 1e-6


def test_fire_is_never_folded_away(lantern):
    for who in lantern.show.names:
        cues = cues_of(lantern, who)
        fire = [cue for cue in cues if cue.kind in {"light", "out"}]
        lines = [entry.cue for entry in folded(cues) if entry.cue.kind in {"light", "out"}]

        assert [id(cue) for cue in lines] == [id(cue) for cue in fire]


def test_a_walk_says_by_which_points_it_passes(lantern):
    walk = next(cue for cue in cues_of(lantern, "Łucja") if cue.kind == "walk")

    assert walk_words(walk).replace("\u00a0", " ") == (
        "8 beats to Diamond; pass the point 2.5 m to stage right, 3.9 m upstage; "
        "end on the centre line, 2.0 m upstage, face the audience"
    )
    assert next(c for c in cues_of(lantern, "Søren") if c.kind == "walk").via == ()


def test_cautions_are_whole_for_the_lead_and_the_authority_and_in_short_for_the_others(
    rounds, lantern
):
    edition = Edition(staged=lantern, report=rounds.report())
    readers = {"safety": "safety", "plan-packet": "packet", "performer": "performer", "crew-reading": "post",
               "operator": "operator", "fuel": "fuel", "formation-book": "captain"}  # fmt: skip
    for sheet in sheets_of(edition):
        reader = next((r for name, r in readers.items() if sheet.name.startswith(name)), None)
        if reader is None:
            continue
        whole = sheet.name in {"safety", "plan-packet"}
        text = _text(document_bytes([sheet], edition, "a4", sheet.title))
        chosen = cautions_of(lantern, edition.report.conditions, reader=reader)
        assert chosen
        for caution in chosen:
            assert _plain(caution.text if whole else caution.short) in text, (sheet.name, caution)


def _text(content):
    from io import BytesIO

    reader = pypdf.PdfReader(BytesIO(content))
    return _plain(" ".join(page.extract_text() for page in reader.pages))


def _plain(text):
    return "".join(text.split())
