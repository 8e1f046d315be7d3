"""Moves and passages of a draft as flown: what no poi can do is never drafted, and what only the drawing forbids may be."""

from dataclasses import replace

import pytest

from sequencer.checks.check import Check
from sequencer.checks.dance import as_flown
from sequencer.checks.dance.unflown_links import unflown_links
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.planning.drafting.auditioning import passages
from sequencer.planning.drafting.auditioning.candidates import DraftMove, dancing_alone
from sequencer.planning.drafting.auditioning.flights import grounded
from sequencer.planning.drafting.auditioning.from_rest import EdgeDance, stranded
from sequencer.planning.drafting.auditioning.passages import MoveLaws, MovePassage, tried
from sequencer.planning.drafting.auditioning.sizes import sizes_of
from sequencer.planning.drafting.costing.auditions import _stages
from sequencer.planning.drafting.finishing import cuts
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.nothing_kept import nothing_kept
from tests.songs import even_song

SHOW = """\
title: One
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 8 m, depth: 8 m}, audience: [{line: [[-8, -6], [8, -6]]}]}
cast: [{name: Ash, stature: 1.7, prop: PROP}]
timeline: []
"""


def move(pattern, cycle, **more):
    return DraftMove(
        pattern=pattern, timing="split", direction="same", cycle=cycle, usual=False, **more
    )


def stage_of(prop, tempo=100.0):
    text = SHOW.replace("PROP", prop)
    ground = ground_of(text, "s.yaml", even_song(33, tempo=tempo, sections={0.0: "A"}))
    return ground, _stages(ground, [(tempo, tempo)])[0][0]


@pytest.fixture(name="poi", scope="module")
def _poi():
    return stage_of("poi")[1]


def test_what_no_poi_can_do_is_grounded(poi):
    """An extension of 75 cm flies in two beats; in twelve its tether would be slack above the hand (mechanics)."""
    said = grounded([move("extension", 2.0), move("extension", 12.0)], poi)
    assert said[0] == ""
    assert said[1].startswith("extension: ")


def test_what_takes_more_room_than_there_is_between_places_is_grounded_in_a_group(poi):
    """A stall stands still where a poi would fall: 85 cm of hand work, for which nobody leaves room (mechanics)."""
    stall = move("stall", 2.0)
    among = replace(poi, together=(poi.record, poi.record))
    assert grounded([stall], poi) == [""]
    assert "hand work" in grounded([stall], among)[0]
    assert grounded([move("extension", 2.0)], among) == [""]


def test_where_places_are_far_apart_what_takes_much_room_stays(poi):
    """No stall reaches farther than its performer by more than its 85 cm of hand work, and it reaches farther by most of it."""
    stall = move("stall", 2.0)
    among = replace(poi, together=(poi.record, poi.record))
    reach = dancing_alone("stall", *poi.laws(stall), poi, beats=16.0).reach

    def said(room):
        return grounded([stall], replace(among, room=room))[0]

    assert said(reach + 0.9) == ""
    assert "hand work" in said(reach + 0.1)
    assert "hand work" in said(0.5)
    assert said(reach + 0.9) == ""  # of what is kept too


def test_what_is_held_is_turned_by_the_hand():
    staff = stage_of("staff")[1]
    assert grounded([move("extension", 12.0)], staff) == [""]


def test_a_link_too_short_to_fly_is_held_against_a_passage(monkeypatch):
    """The checks of the drawing are taken out of the way: what is said is said of the flight."""
    monkeypatch.setattr(passages, "findings_on", lambda *_: {})
    laws = MoveLaws(stage_of("poi", 150.0)[1])
    first, second = move("extension", 4.0), move("reverse-two-beat-weave", 4.0)
    with nothing_kept():
        short, long = tried(
            [MovePassage(before=first, beats=8.0, link=n, after=second) for n in (1, 2)],
            laws,
            laws,
        )
    assert short == "extension into reverse-two-beat-weave: cannot be flown in 1 beat"
    assert long == ""


def test_a_draft_is_judged_as_flown(monkeypatch):
    """What only the margin of the drawing forbids is no fault, and what only the flight forbids is one."""
    show = stage_of("poi")[0].base

    def finding(code):
        return Finding(
            code=code,
            severity="warn",
            message=code,
            who=("Ash",),
            start=0.5,
            end=1.0,
            position="1.1",
        )

    flown = Outcome(findings=(finding("link-cannot-be-flown"), finding("reads-badly")))
    drawn = Outcome(findings=(finding("flown-not-drawn"), finding("pace")))
    near = Outcome(findings=(*drawn.findings, finding("flame-near-body")))  # the flight decides

    def outcome(check, _show):
        return {as_flown.CHECK.name: flown, "feasible": drawn}.get(check.name, Outcome())

    monkeypatch.setattr(cuts, "outcome_as_flown", outcome)
    monkeypatch.setattr(
        Check, "outcome", lambda check, _show: near if check.name == "feasible" else Outcome()
    )
    assert {each.code for each in cuts.grave_findings(show).values()} == {
        "link-cannot-be-flown", "reads-badly", "pace",
    }  # fmt: skip
    # the cheap ones come alone, so that a routine that fails them is not flown
    assert [each.code for each in cuts.caused(show, {})] == ["pace"]
    before = cuts.grave_findings(show, of=("feasible",))
    assert [each.code for each in cuts.caused(show, before)] == [
        "link-cannot-be-flown", "reads-badly",
    ]  # fmt: skip


def test_what_cannot_be_flown_out_of_rest_is_stranded():
    """A small pendulum is taken up in two beats at 152 a minute; of one of the usual size no way was found in any number (measured)."""
    laws = MoveLaws(stage_of("rope dart", 152.0)[1])
    small = next(queue[0] for queue in sizes_of(move("pendulum", 2.0), laws.stage.show.book))
    hands = {"timing": "together", "direction": "same"}
    usual, small = (replace(each, **hands) for each in (move("pendulum", 2.0), small))
    dances = [EdgeDance(move=each, beats=8.0, begins=True) for each in (usual, small)]
    said = stranded(dances, laws)
    assert said == ["from rest into pendulum: cannot be flown in 2 beats", ""]
    ends = [EdgeDance(move=small, beats=beats, begins=False) for beats in (8.0, 7.0)]
    assert stranded(ends, laws) == ["", "pendulum to rest: cannot be flown in 2 beats"]
    staff = MoveLaws(stage_of("staff", 152.0)[1])
    assert stranded(dances[:1], staff) == [""]


def test_links_that_a_show_cannot_fly_are_those_of_the_check():
    """Each is told by itself; the check tells each cause once, and what would do."""
    text = SHOW.replace("PROP", "poi").replace(
        "timeline: []",
        """staging: [{formation: f, from: 1.1}]
formations: {f: {spots: {Ash: {at: [0, 4]}}}}
timeline:
  - {from: 2.1, pattern: extension, cycle: 4, beats: 8}
  - {link: true, beats: 1}
  - {pattern: reverse-two-beat-weave, cycle: 4, beats: 8}
  - {link: true, beats: 2}
  - {pattern: extension, cycle: 4, beats: 8}
""",
    )
    song = even_song(65, tempo=150.0, sections={0.0: "A"})
    show = staged(show_from_document(parse_document(text, "s.yaml")), song)
    short = unflown_links(show)
    code = "link-cannot-be-flown"
    told = [each for each in as_flown.CHECK.outcome(show).findings if each.code == code]
    assert {each.message.partition(",")[0] for each in told} == {
        each.message.partition(":")[0] for each in short
    }
    assert {(each.code, each.severity, each.who) for each in short} == {(code, "warn", ("Ash",))}
    assert {each.message for each in short} >= {
        "extension into reverse-two-beat-weave: cannot be flown"
    }
    assert show.tempo.beats_from_seconds(short[0].start) == pytest.approx(12.0)


def test_a_draft_is_tried_as_lit_though_the_show_has_no_fire(poi):
    """Fire may be added once it is danced: what would burn its performer then is no draft, and no finding of an unlit show."""
    assert poi.lit
    text = SHOW.replace("PROP", "poi").replace(
        "timeline: []",
        """limits: {own_body: 0.4}
timeline:
  - {from: 2.1, pattern: static-spin, cycle: 4, beats: 8}
""",
    )
    show = staged(show_from_document(parse_document(text, "s.yaml")), even_song(33, tempo=100.0))

    def codes(found):
        return {each.code for each in found}

    assert "flame-near-body" in codes(
        cuts.grave_findings(show, of=("feasible",), lit=True).values()
    )
    assert "flame-near-body" not in codes(cuts.grave_findings(show).values())
    dark = cuts.grave_findings(show)
    assert codes(cuts.caused(show, dark)) == {"flame-near-body"}
    assert cuts.caused(show, {**dark, **cuts.grave_findings(show, lit=True)}) == []
