"""A show as it is danced tonight: parts that fall out or are taken, while everybody else keeps counts and places."""

import pytest
import soundfile as sf

from sequencer.checks.outcome import Outcome
from sequencer.desk.views.show_view import show_view
from sequencer.errors import InputError
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from sequencer.planning.offers import NOT_TONIGHT, with_mends
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.danced_entries import entry_of_blocks
from sequencer.staging.timeline import staged
from sequencer.tasks.mend import mend_show
from tests.cli.conftest import RATE, click_track
from tests.songs import even_song

SHOW = """\
title: Three
track: {file: a.ogg}
venue: {stage: {shape: round, width: 12 m}, audience: [{line: [[-7, -9], [7, -9]]}]}
cast:
  - {name: Ash, stature: 1.7 m, prop: poi}
  - {name: Birch, stature: 1.6 m, prop: poi}
  - {name: Cedar, stature: 1.8 m, prop: {kind: poi, tether: 50 cm}, birth_year: 2001}
formations:
  row: {shape: line, centre: [0, 4], spacing: 3 m}
  deep: {spots: {Ash: {at: [-3, 3]}, Birch: {at: [0, 6]}, Cedar: {at: [3, 3]}}}
staging:
  - {formation: row, from: 1.1}
  - {formation: deep, from: 9.1, beats: 8, via: {Birch: [[0, 5]]}}
timeline:
  - {from: 2.1, pattern: extension, cycle: 1, beats: 8}
  - {who: [Birch, Cedar, Ash], from: 5.1, pattern: extension, cycle: 1, beats: 8, canon: 4, mirror: [Birch]}
  - {who: Birch, pattern: extension, cycle: 1, from: 9.1, beats: 4}
  - {pattern: extension, cycle: 1, beats: 4}
fire:
  fuel: kerosene
  lit:
    - {who: [Birch], from: 2.1, until: 9.1, lit_by: Ivy}
    - {who: [Ash, Birch], from: 10.1, until: 12.1, put_out_by: Oak}
  handling: {lit_by: Ivy}
crew:
  - {name: Ivy, post: [-8, 6], watches: [Birch]}
  - {name: Oak, post: [8, 6], duty: lighter, watches: [Ash, Birch]}
stop_call: {callers: [Birch], does: {Birch: put the poi down, Ash: lie down}}
wishes: {lead: Birch}
"""


def read(tonight="", text=SHOW):
    return show_from_document(parse_document(text + tonight, "s.yaml"))


def danced(found, who):
    return [(block.start, block.end, block.path) for block in found.blocks if block.who == who]


def test_without_a_word_about_tonight_the_show_is_the_one_that_is_written():
    found = read()
    assert found.show is found.written
    assert found.parts is found.show.cast
    assert staged(found, even_song(80)).missing == ()


def test_the_others_keep_their_counts_their_places_and_their_numbers():
    whole = staged(read(), even_song(80))
    less = staged(read("tonight: {away: [Birch]}\n"), even_song(80))
    assert less.show.names == ("Ash", "Cedar")
    assert [dancer.name for dancer in less.dancers] == ["Ash", "Cedar"]
    for name in less.show.names:
        assert danced(less, name) == danced(whole, name)
        assert less.number_of(name) == whole.number_of(name)
        for before, after in zip(whole.standings, less.standings, strict=True):
            assert after.spots[name] == before.spots[name]
    assert all("Birch" not in one.spots for one in less.standings)
    assert {block.who for block in less.missing} == {"Birch"}
    assert len(less.missing) == len(danced(whole, "Birch"))
    assert [span.who for span in less.lit] == ["Ash"]
    assert less.lit[0].path == ("fire", "lit", 1)


def test_who_is_away_has_no_job_left():
    show = read("tonight: {away: [Birch, Ivy]}\n").show
    assert [post.name for post in show.crew] == ["Oak"]
    assert show.crew[0].watches == ("Ash",)
    assert show.stop_call.callers == ("all",)
    assert set(show.stop_call.does) == {"Ash"}
    assert show.wishes.lead is None
    assert show.fire is not None
    assert show.fire.handling.lit_by is None
    assert [span.lit_by for span in show.fire.lit] == [None, None]
    assert [span.put_out_by for span in show.fire.lit] == [None, "Oak"]
    assert [entry.mirror for entry in show.timeline] == [()] * 4
    assert show.staging[1].via == {}
    watched = read("tonight: {away: [Birch]}\n").show.crew[0]
    assert watched.watches == ()  # everybody


def test_a_stand_in_dances_the_part_with_their_own_body():
    found = read(
        "tonight: {stand_ins: [{for: Cedar, name: Fern, stature: 1.55 m, birth_year: 1990}]}\n"
    )
    part = found.show.cast[2]
    assert (part.name, part.stature, part.birth_year) == ("Cedar", 1.55, 1990)
    assert {prop.tether for prop in part.props.values()} == {0.5}  # the part's
    assert found.cast_path("Cedar") == ("tonight", "stand_ins", 0)
    show = staged(found, even_song(80))
    assert show.dancers[2].body.stature == 1.55
    assert show.taken_by("Cedar") == "Fern"
    assert show.taken_by("Ash") == "Ash"
    assert found.written.cast[2].stature == 1.8


def test_an_edit_elsewhere_reads_the_cast_as_it_is_written():
    before = read("tonight: {stand_ins: [{for: Cedar, name: Fern, stature: 1.55 m}]}\n")
    values = {**before.document.values, "title": "Other"}
    del values["tonight"]
    document = parse_document(SHOW, "s.yaml")
    document.values.update({key: values[key] for key in values if key != "title"})
    after = show_from_document(document, before=before)
    assert after.show.cast[2].stature == 1.8


@pytest.mark.parametrize(
    ("tonight", "says"),
    [
        ("{away: [Ivy, Ivy]}", "Ivy is away twice"),
        ("{away: [Nobody]}", "'Nobody' is in neither cast nor crew"),
        ("{away: [Ash, Birch, Cedar]}", "everybody in the cast is away"),
        ("{stand_ins: [{for: Nobody, name: Fern}]}", "'Nobody' is in neither cast nor crew"),
        ("{stand_ins: [{for: Ash, name: Fern}]}", "nothing says how tall Fern is"),
        ("{stand_ins: [{for: Ivy, name: Fern, arm: 60 cm}]}", "a post needs no arm"),
        ("{stand_ins: [{for: Ash, name: ivy, stature: 1.7}]}", "Ivy has a part of their own tonight"),
        ("{away: [Ash], stand_ins: [{for: Ash, name: Fern, stature: 1.7}]}", "falls out and is taken"),
        ("{stand_ins: [{for: Ash, name: Fern, stature: 1.7}, {for: Ash, name: Elm, stature: 1.7}]}", "taken twice"),
        ("{stand_ins: [{for: Ivy, name: Fern}, {for: Oak, name: Fern}]}", "Fern takes two parts"),
        ("{stand_ins: [{for: Ash, name: Fern, stature: 9}]}", "is outside 0.8 … 2.6 m"),
        ("{stand_ins: [{for: Ash, name: Fern, stature: 1.7, arm: 2 m}]}", "is outside"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_told_with_its_line(tonight, says):
    with pytest.raises(InputError, match=r"s\.yaml:3\d:") as told:
        read(f"tonight: {tonight}\n")
    assert says in str(told.value)


def test_somebody_of_the_show_may_take_another_part_if_their_own_falls_out():
    found = read("tonight: {away: [Ivy], stand_ins: [{for: Ash, name: Ivy, stature: 1.7}]}\n")
    assert found.show.names == ("Ash", "Birch", "Cedar")
    assert [post.name for post in found.show.crew] == ["Oak"]


def test_a_cycle_that_is_left_out_is_as_long_as_with_everybody():
    """Who is away with a long tether slows the others still: they have learned it so."""
    text = SHOW.replace("prop: poi}\n  - {name: Birch", "prop: {tether: 40 cm}}\n  - {name: Birch")
    text = text.replace("1.6 m, prop: poi}", "1.6 m, prop: {tether: 130 cm}}")
    text = (
        text[: text.index("timeline:")]
        + "timeline: [{from: 2.1, pattern: antispin-flower-4, beats: 8}]\n"
    )
    text = text.replace("tether: 50 cm", "tether: 40 cm")
    quick = even_song(80, tempo=200.0)
    whole, less = (staged(read(words, text), quick) for words in ("", "tonight: {away: [Birch]}\n"))
    alone = staged(read("", text.replace("timeline: [{", "timeline: [{who: [Ash, Cedar], ")), quick)
    cycles = [next(b.cycle for b in each.blocks if b.who == "Ash") for each in (whole, less, alone)]
    assert cycles[0] == cycles[1] != cycles[2]


def test_posts_and_people_keep_their_places_in_the_file():
    found = read("tonight: {away: [Ash, Ivy]}\n")
    show = staged(found, even_song(80))
    assert [post.name for post in show.venue.posts] == ["Oak"]
    assert found.cast_path("Cedar") == ("cast", 2)
    view = show_view(show)
    assert [each["path"] for each in view["cast"]] == [["cast", 1], ["cast", 2]]
    assert [each["path"] for each in view["crew"]] == [["crew", 1]]
    assert {each["who"] for each in view["missing"]} == {"Ash"}
    assert show.lit[0].put_out_by is None
    assert [each.put_out_by for each in read("tonight: {away: [Oak]}\n").show.fire.lit] == [
        None,
        None,
    ]


def test_a_block_of_a_canon_is_found_in_its_entry_while_its_first_is_away():
    text = (
        SHOW[: SHOW.index("timeline:")]
        + """\
phrases: {step: [{pattern: extension, cycle: 1, beats: 4}]}
timeline:
  - {who: [Birch, Ash], from: 5.1, phrase: step, canon: 8}
  - {who: Ash, from: 5.1, phrase: step}
"""
    )
    show = staged(read("tonight: {away: [Birch]}\n", text), even_song(80))
    of = entry_of_blocks(show)
    assert {block.start: of[id(block)] for block in show.blocks} == {24.0: 0, 16.0: 1}


def test_a_body_that_nobody_has_is_told_with_what_to_write():
    with pytest.raises(InputError) as told:
        read("tonight: {stand_ins: [{for: Ash, name: Fern, stature: 3 m}]}\n")
    assert told.value.what == "stature of Fern: 3 m is outside 0.8 … 2.6 m"
    assert told.value.mend == "write stature: standing height, 0.8 to 2.6 m"


def test_nothing_is_drafted_while_somebody_is_away():
    with pytest.raises(
        InputError, match=r"whole cast.*“Everybody is there” under Who, or take `tonight` out"
    ):
        ground_of(SHOW + "tonight: {away: [Birch]}\n", "s.yaml", even_song(80))


def test_no_mend_is_written_or_sought_while_somebody_is_away(tmp_path):
    path = tmp_path / "s.yaml"
    text = SHOW.replace("a.ogg", "a.wav") + "tonight: {away: [Birch]}\n"
    path.write_text(text, encoding="utf-8")
    sf.write(tmp_path / "a.wav", click_track(), RATE)
    with pytest.raises(InputError, match="a mend changes the show for everybody"):
        mend_show(path)
    show = staged(read("tonight: {away: [Birch]}\n"), even_song(80))
    outcome = Outcome(findings=(), mendable=())
    assert with_mends(show, outcome).not_checked == (NOT_TONIGHT,)
    assert with_mends(staged(read(), even_song(80)), outcome).not_checked == ()


def test_the_part_has_the_same_props_in_other_hands():
    """A poi without a size is as long as its owner needs; whoever takes it over gets the same."""
    usual = read().show.cast[0].props
    taken = read("tonight: {stand_ins: [{for: Ash, name: Fern, stature: 1.4 m}]}\n").show.cast[0]
    assert taken.stature == 1.4
    assert {side: prop.tether for side, prop in taken.props.items()} == {
        side: prop.tether for side, prop in usual.items()
    }
