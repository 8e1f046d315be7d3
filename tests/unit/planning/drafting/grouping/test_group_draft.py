from itertools import pairwise
from types import SimpleNamespace

import pytest

from sequencer.errors import InputError
from sequencer.planning.drafting import draft_search
from sequencer.planning.drafting.draft_search import drafted_show
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from sequencer.planning.drafting.grouping import group_draft as group_draft_module
from sequencer.planning.drafting.grouping.group_draft import group_draft
from sequencer.show.drafted import drafted_entries, drafted_staging
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: WIDTH m, depth: 12 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast:
  - {name: Ash, stature: 1.7, prop: &poi {kind: poi, tether: 0.45}, repertoire: {known: [KNOWN]}}
  - {name: Birch, stature: 1.6, prop: *poi, repertoire: {known: [KNOWN]}}
wishes: {WISHES}
"""
STAGED = """\
formations: {line: {spots: {Ash: {at: [-3, 5]}, Birch: {at: [3, 5]}}}, back: {spots: {Ash: {at: [-3, 7]}, Birch: {at: [3, 7]}}}}
staging: [{formation: line, from: 1.1}, {formation: back, from: 9.1, beats: 8}]
"""
KNOWN = "wheel-spin, extension, two-beat-weave, antispin-flower-4"


def song():
    energy = tuple([0.2] * 8 + [0.6] * 8 + [0.9] * 8)
    return even_song(97, tempo=100.0, sections={0.0: "A", 19.2: "B", 38.4: "C"}, energy=energy)


def show_text(*, width=16, known=KNOWN, wishes="", more=""):
    text = SHOW.replace("WIDTH", str(width)).replace("KNOWN", known).replace("WISHES", wishes)
    return text + more


def group(text):
    ground = ground_of(text, "s.yaml", song())
    return ground, group_draft(ground, ground.slots())


def test_formations_are_drafted_where_nothing_says_where_people_stand():
    _, found = group(show_text())
    assert set(found.words) <= set(found.formations)
    first, *others = found.staging
    assert "beats" not in first.values
    assert len(others) >= 1
    assert all(row.values["beats"] >= 8 for row in others)
    assert found.walked
    for row in found.formations.values():
        (a, b), (c, d) = (row["spots"][name]["at"] for name in ("Ash", "Birch"))
        assert ((a - c) ** 2 + (b - d) ** 2) ** 0.5 > 2.0


def placed(wishes, labels, beats=64):
    """The beats at which a formation is taken, in a song of parts that last so long."""
    starts = {0.6 * beats * k: label for k, label in enumerate(labels)}
    ground = ground_of(
        show_text(wishes=wishes),
        "s.yaml",
        even_song(1 + beats * len(labels), tempo=100.0, sections=starts),
    )
    return [part.start for part in group_draft_module._parts(ground)]


def test_with_little_walking_a_formation_is_taken_where_something_new_begins_and_kept_for_a_while():
    assert placed("walking: little", "ABABCAB") == [0, 64, 256]
    assert placed("walking: much", "ABABCAB") == [64 * k for k in range(7)]
    assert placed("walking: none", "ABABCAB") == [0]
    # nobody walks again within eight eights
    assert placed("walking: little", "ABCDEF", beats=32) == [0, 64, 128]
    assert len(placed("walking: much", "ABCDEF", beats=32)) == 6


def test_a_formation_that_stays_suits_all_that_is_danced_in_it():
    energy = tuple([0.1] * 8 + [0.3] * 8 + [0.9] * 8)
    ground = ground_of(
        show_text(),
        "s.yaml",
        even_song(97, tempo=100.0, sections={0.0: "A", 19.2: "B", 38.4: "C"}, energy=energy),
    )
    first, _ = group_draft_module._parts(ground)
    assert (first.start, first.end) == (0, 64)
    assert first.loudness == pytest.approx(ground.energy(0, 64))
    assert first.loudness > ground.energy(0, 32)


def test_without_walking_there_is_one_formation():
    _, found = group(show_text(wishes="walking: none"))
    assert len(found.staging) == 1
    assert found.walked == frozenset()


def test_a_persons_formations_stay_and_their_walks_are_known():
    ground, found = group(show_text(more=STAGED))
    assert (found.formations, found.staging) == ({}, ())
    assert [ground.slots()[k].start for k in sorted(found.walked)] == [32]


def test_mirrored_pairs_dance_what_is_neither_loudest_nor_calmest():
    ground, found = group(show_text(more=STAGED))
    by_label = {slot.label: found.mirrored.get(k, ()) for k, slot in enumerate(ground.slots())}
    assert by_label == {"A": (), "B": ("Birch",), "C": ()}


def test_a_stage_that_is_too_small_is_refused_with_its_place():
    with pytest.raises(InputError, match=r"s\.yaml:3:\d+: no formation of 2 fits on this stage"):
        group(show_text(width=2).replace("depth: 12", "depth: 2"))


def test_what_nobody_has_in_common_is_refused():
    text = show_text().replace(KNOWN, "extension", 1).replace(KNOWN, "wheel-spin", 1)
    with pytest.raises(InputError, match=r"s\.yaml:5:\d+: there is no pattern that everybody"):
        drafted_show(text, "s.yaml", song())


def test_a_group_gets_a_clean_routine_with_easy_patterns_on_walks():
    made = drafted_show(show_text(), "s.yaml", song())
    assert made.checked
    document = parse_document(made.text, "s.yaml")
    read = show_from_document(document)
    assert len(drafted_entries(document.values)) == len(read.show.timeline)
    assert len(drafted_staging(document.values)) == len(read.show.staging) > 1
    show = staged(read, song())
    assert any(block.mirrored for block in show.blocks_of("Birch"))
    assert "in canon, Ash first" in made.text
    ends = [
        [block.end for block in show.blocks_of(name) if block.link] for name in ("Ash", "Birch")
    ]
    assert any(b - a == pytest.approx(4) for a, b in zip(*ends, strict=True))
    assert any(b - a == pytest.approx(0) for a, b in zip(*ends, strict=True))
    walks = [(one.walk, one.start) for one in show.standings[1:]]
    for block in show.blocks:
        walking = any(a < block.end and b > block.start for a, b in walks)
        if walking and not block.link:
            assert show.book[block.title].difficulty <= 2
    again = drafted_show(made.text, "s.yaml", song())
    assert again.text == made.text


def test_three_support_a_soloist_by_a_quiet_move_that_passes_every_check(monkeypatch):
    known = "wheel-spin, two-beat-weave, extension, line"
    text = show_text(known=known, wishes="walking: none").replace(
        "wishes:", f"  - {{name: Cedar, stature: 1.75, prop: *poi, repertoire: {{known: [{known}]}}}}\nwishes:"
    )  # fmt: skip
    energy = (0.1, 0.3, 0.5, 0.4, 0.8, 0.9)
    track = even_song(
        97, tempo=100.0, sections={9.6 * k: "ABCDEF"[k] for k in range(6)}, energy=energy
    )
    made = drafted_show(text, "s.yaml", track)
    assert made.checked
    assert "solo of Ash, the others in support" in made.text
    show = staged(show_from_document(parse_document(made.text, "s.yaml")), track)
    by_start = {
        name: {block.start: block.title for block in show.blocks_of(name) if not block.link}
        for name in ("Ash", "Birch", "Cedar")
    }
    assert by_start["Birch"] == by_start["Cedar"]
    (at,) = (start for start, title in by_start["Ash"].items() if by_start["Birch"][start] != title)
    assert show.book[by_start["Birch"][at]].difficulty <= 2
    assert drafted_show(made.text, "s.yaml", track).text == made.text
    # Where the checks find something against every support, all dance the routine.
    real = draft_search.caused

    def caused(show, before):
        alone = [SimpleNamespace(code="planted") for e in show.show.timeline if e.who == ("Ash",)]
        return real(show, before) or alone

    monkeypatch.setattr(draft_search, "caused", caused)
    together = drafted_show(text, "s.yaml", track)
    assert together.checked
    assert "in support" not in together.text


def test_room_is_half_of_what_is_left_between_the_nearest_places_that_are_written():
    """6 m less the 30 cm that must stay between two; only what is danced in it counts, and drafted places leave none to spare."""
    near = STAGED.replace("[-3, 7]", "[-1, 7]").replace("[3, 7]", "[1.4, 7]")
    assert group(show_text(more=STAGED))[1].room == pytest.approx(2.85)
    assert group(show_text(more=near))[1].room == pytest.approx(1.05)
    first = ground_of(show_text(more=near), "s.yaml", song(), section="A")
    assert group_draft(first, first.slots()).room == pytest.approx(2.85)  # back from 9.1 on
    asked = STAGED + "rules: {between_performers: 0.5 m}\n"
    assert group(show_text(more=asked))[1].room == pytest.approx(2.75)
    assert group(show_text())[1].room == 0.0
    assert group(show_text(more=STAGED.replace("-3", "0").replace("3, ", "0.1, ")))[1].room == 0.0


def test_a_stall_that_is_wished_is_danced_where_the_file_leaves_room_for_it():
    """Ten metres apart nobody comes too close to anybody; with drafted places, as far apart as all reach, it is left out."""
    far = "formations: {far: {spots: {Ash: {at: [-5, 5]}, Birch: {at: [5, 5]}}}}\nstaging: [{formation: far, from: 1.1}]\n"
    track = even_song(33, tempo=100.0, sections={0.0: "A"})
    for more, unmet in ((far, ()), ("", ("stall 1 times (there is room for 0)",))):
        text = show_text(
            known="stall, extension, static-spin", wishes="moves: {stall: 1}", more=more
        )
        found = drafted_show(text, "s.yaml", track)
        assert found.unmet == unmet
        assert found.checked
        assert ("pattern: stall" in found.text) == bool(more)


COMING = """\
formations: {line: {spots: {Ash: {at: [-3, 5]}, Birch: {at: [3, 5]}}}}
staging: [{formation: line, from: 1.1}]
entrances: [{who: Birch, comes_on: 1.3, beats: 12, side: stage left}, {who: Ash, goes_off: 9.1, beats: 12, side: stage right}]
"""


def test_who_comes_on_begins_with_a_stretch_and_who_goes_off_has_ended_one():
    """Birch is there at beat 14, and the stretch from 16 on is theirs too; from 32 on Birch dances without the lead."""
    text = show_text(width=12, known="extension, two-beat-weave, wheel-spin", more=COMING)
    track = even_song(49, tempo=100.0, sections={0.0: "A", 19.2: "B"})
    ground, found = group(text)
    made = drafted_show(text, "s.yaml", track)
    assert made.checked
    assert (made.unflown, made.left) == ((), ())
    show = staged(show_from_document(parse_document(made.text, "s.yaml")), track)
    ash, birch = show.blocks_of("Ash"), show.blocks_of("Birch")
    assert (ash[0].start, birch[0].start) == (0, 16)
    assert 28 <= ash[-1].end <= 32
    assert not ash[-1].link
    assert not birch[0].link
    assert any(block.link and block.end == 32 for block in birch)
    assert birch[-1].end > 44
    both = {block.start: block.title for block in ash if 16 <= block.start < 28 and not block.link}
    assert both == {
        block.start: block.title for block in birch if 16 <= block.start < 28 and not block.link
    }
    assert made.on_and_off == (
        "Ash dances until 9.1 (goes off at 9.1)",
        "Birch dances from 5.1 (there at 4.3)",
    )
    words = [said for *_, said in made.rows]
    assert words[0].endswith(", Ash alone")
    assert words[-1].endswith(", Birch alone")
    assert drafted_show(made.text, "s.yaml", track).text == made.text
    # Only walks of those who dance meanwhile ask for easy moves; nobody is late for whom nobody waits.
    assert found.walked == frozenset()
    assert (found.late, found.solos) == ({}, frozenset())
    assert set(found.off.values()) == {frozenset({"Birch"}), frozenset({"Ash"})}
    assert found.room == pytest.approx(2.85)  # not of where they wait
    assert ground.names == ("Ash", "Birch")


LIT = """\
formations: {line: {spots: {Ash: {at: [-3, 5]}, Birch: {at: [3, 5]}}}}
staging: [{formation: line, from: 1.1}]
entrances: [{who: Birch, comes_on: 1.1, beats: 8, side: stage left}]
fire:
  fuel: kerosene
  burn: {time: 120 s, measured: true}
  flame: 0.6 m
  lit: [{who: Ash, from: 1.1, until: 9.1}, {who: Birch, from: 5.4, until: 9.1}]
  handling: {light: 6 s, put_out: 8 s, waiting: on the ground}
"""


def test_who_is_lit_already_dances_on_while_somebody_who_came_on_is_lit():
    """Birch is lit until beat 19 of a stretch from 16 to 32; were nobody to dance then, Ash would hold burning props still."""
    text = show_text(width=12, known="extension, two-beat-weave, wheel-spin", more=LIT)
    track = even_song(33, tempo=100.0, sections={0.0: "A"})
    made = drafted_show(text, "s.yaml", track)
    assert made.checked
    assert made.unflown == ()
    show = staged(show_from_document(parse_document(made.text, "s.yaml")), track)
    ash, birch = show.blocks_of("Ash"), show.blocks_of("Birch")
    assert ash[0].start == 4  # whoever lights Ash steps back
    assert (ash[-1].end, birch[-1].end) == (32, 32)
    assert all(one.end == other.start for one, other in pairwise(ash))
    assert birch[0].start == 24
    assert made.left_open == (
        "0:00.0 to 0:02.4: Ash does not dance while being lit or put out",
        "0:09.6 to 0:12.0: Birch does not dance while being lit or put out",
    )
    assert made.on_and_off == ("Birch dances from 7.1 (there at 3.1)",)


def test_nobody_goes_on_after_another_beside_a_stretch_in_which_somebody_is_off():
    slots = [SimpleNamespace(label=each) for each in "ABCDEA"]
    by_all = group_draft_module._by_all
    assert by_all(slots, {}) == set("ABCDE")
    assert by_all(slots, {2: frozenset({"Birch"})}) == {"A", "E"}
    assert by_all(slots, {0: frozenset({"Birch"})}) == {"C", "D", "E"}  # A comes again


PAIR = """\
formations: {line: {spots: {Ash: {at: [-3, 5]}, Birch: {at: [3, 5]}}}}
staging: [{formation: line, from: 1.1}]
entrances: [{who: WHO, goes_off: 9.1, beats: 12, side: stage SIDE}]
"""


@pytest.mark.parametrize(("who", "side"), [("Ash", "right"), ("Birch", "left")])
def test_of_a_mirrored_pair_nobody_is_mirrored_while_one_of_them_is_off(who, side):
    """B lies between A and C in loudness, so it is danced in mirrored pairs; from 9.1 on one of the two is off."""
    energy = tuple([0.2] * 4 + [0.6] * 8 + [0.9] * 4)
    track = even_song(
        65, tempo=100.0, sections={0.0: "A", 9.6: "B", 28.8: "C"}, energy=energy
    )  # fmt: skip
    ground = ground_of(
        show_text(more=PAIR.replace("WHO", who).replace("SIDE", side)), "s.yaml", track
    )
    slots = ground.slots()
    found = group_draft(ground, slots)
    mirrored = {slot.start: found.mirrored.get(k) for k, slot in enumerate(slots)}
    assert mirrored == {0: None, 16: ("Birch",), 32: (), 48: None}
    assert [slots[k].start for k in sorted(found.off)] == [32, 48]


def test_of_four_those_who_are_there_are_paired_anew():
    """Dee has no partner while Ash is off, and Birch, right of the middle of the three, dances as Cedar's partner."""
    xs = {"Ash": -4.5, "Birch": -1.5, "Cedar": 1.5, "Dee": 4.5}
    spots = [
        {name: (x, 5.0, 0.0) for name, x in xs.items() if name not in off}
        for off in ((), ("Ash",), ("Ash", "Birch", "Cedar"))
    ]
    poi = object()
    cast = [SimpleNamespace(name=name, props={"left": poi, "right": poi}) for name in xs]
    ground = SimpleNamespace(
        dancing=cast, lead=cast[0], base=SimpleNamespace(show=SimpleNamespace(names=tuple(xs)))
    )
    found = group_draft_module._mirrored(ground, spots, [0, 1, 2])
    assert found == {0: ("Cedar", "Dee"), 1: ("Dee",), 2: ()}
