"""Cast and crew: added, changed, renamed and taken out wherever they are named."""

from sequencer.show.operations.people_operations import (
    AddCrew,
    AddPerformer,
    ChangePerson,
    RemovePerson,
    RenamePerson,
)
from tests.unit.show.operations.duo import SHOW, lines, refused

FULL = (
    SHOW
    + """\
fire:
  fuel: kerosene
  lit: [{who: Ash, from: 2.1, until: 9.1}, {who: [Ash, Birch], from: 10.1, until: 12.1, put_out_by: Ivy}]
  handling: {lit_by: Ivy}
stop_call: {callers: [Ash, Ivy], does: {Ash: lies down}}
wishes: {lead: Ash}
"""
)


def test_a_new_performer_has_a_spot_in_each_formation():
    add = AddPerformer(
        performer={"name": "Elm", "stature": "1.7 m", "prop": "fan"}, spots={"wide": {"at": [0, 6]}}
    )
    assert lines(add) == [
        "+  - {name: Elm, stature: 1.7 m, prop: fan}",
        "-  wide: {spots: {Ash: {at: [-2, 4]}, Birch: {at: [2, 4], facing: 90}}}",
        "+  wide: {spots: {Ash: {at: [-2, 4]}, Birch: {at: [2, 4], facing: 90}, Elm: {at: [0, 6]}}}",
    ]
    nowhere = AddPerformer(performer=add.performer)
    assert "s.yaml:10:9: nothing says where Elm stands in 'wide'" in refused(nowhere)
    other = AddPerformer(performer=add.performer, spots={"row": {"at": [0, 6]}})
    assert "there are no spots in a formation 'row'" in refused(other)
    again = AddPerformer(performer={**add.performer, "name": "ash"}, spots=add.spots)
    assert "the name 'ash' appears twice in the cast" in refused(again)


def test_an_order_gets_the_new_one_at_its_end():
    text = SHOW.replace("spacing: 3 m}", "spacing: 3 m, order: [Birch, Ash]}")
    add = AddPerformer(
        performer={"name": "Elm", "stature": 1.7, "prop": "fan"}, spots={"wide": {"at": [0, 6]}}
    )
    assert "+  row: {shape: line, centre: [0, 4], spacing: 3 m, order: [Birch, Ash, Elm]}" in lines(
        add, text
    )


def test_the_crew_gets_one_more_even_where_there_was_none():
    bare = SHOW[: SHOW.index("crew:")]
    assert lines(AddCrew(member={"name": "Oak", "post": [8, 6]}), bare) == ["+", "+crew:", "+  - {name: Oak, post: [8, 6]}"]  # fmt: skip


def test_what_is_said_of_a_person_changes():
    change = ChangePerson(group="cast", name="Ash", values={"prop": "fan", "birth_year": 1990})
    assert (
        lines(change)[1]
        == "+  - {name: Ash, stature: 1.7 m, prop: fan, birth_year: 1990}     # has a cold"
    )
    assert "rename them instead" in refused(
        ChangePerson(group="cast", name="Ash", values={"name": "x"})
    )
    assert "there is no 'Oak' in the crew" in refused(
        ChangePerson(group="crew", name="Oak", values={})
    )


def test_a_new_name_stands_wherever_the_old_one_did():
    told = lines(RenamePerson(group="cast", name="Ash", new="Flo Ra"), FULL)
    assert not any("Ash" in line for line in told if line.startswith("+"))
    assert sum("Flo Ra" in line for line in told) == 9
    assert "Ivy is here already" in refused(RenamePerson(group="cast", name="Ash", new="Ivy"), FULL)
    crew = lines(RenamePerson(group="crew", name="Ivy", new="Oak"), FULL)
    assert sum("Oak" in line for line in crew) == 4


def test_who_is_taken_out_is_named_nowhere():
    told = lines(RemovePerson(group="cast", name="Ash"), FULL)
    assert [line for line in told if line.startswith("+")] == [
        "+  wide: {spots: {Birch: {at: [2, 4], facing: 90}}}",
        "+  - {formation: row, from: 9.1, beats: 8}",
        "+  - {who: [Birch], from: 8.1, phrase: long one, canon: 4, mirror: [Birch]}",
        "+  - {name: Ivy, post: [-8, 6]}",
        "+  lit: [{who: [Birch], from: 10.1, until: 12.1, put_out_by: Ivy}]",
        "+stop_call: {callers: [Ivy]}",
        "+wishes: {}",
    ]
    assert "-  - {who: Ash, phrase: wheel, repeat: 2, note: twice}" in told


def test_the_last_of_the_cast_stays():
    alone = "title: a\ntrack: {file: a.ogg}\nvenue: {stage: {shape: round, width: 9}, audience: [{line: [[-7, -9], [7, -9]]}]}\ncast: [{name: Ash, stature: 1.7, prop: poi}]\n"
    assert "s.yaml:4:7" in refused(RemovePerson(group="cast", name="Ash"), alone)
