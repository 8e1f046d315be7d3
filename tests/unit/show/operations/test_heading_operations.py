"""Venue, fire, all other headings, and the count: which lines change, and what is refused."""

from sequencer.show.operations.heading_operations import (
    ChangeHeading,
    ChangeItem,
    ChangeSection,
    ChangeTitles,
    CorrectCount,
    DeleteHeading,
    DeleteItem,
    DeleteSection,
    PutItem,
    PutSection,
)
from sequencer.show.operations.operation import apply
from tests.unit.show.operations.duo import SHOW, lines, refused


def test_titles_and_dates():
    assert lines(ChangeTitles(values={"title": "Duo: late", "night": "2027-06-19"})) == [
        "-title: Duo", '+title: "Duo: late"', "+night: 2027-06-19", "+",
    ]  # fmt: skip
    assert "cast is none of title" in refused(ChangeTitles(values={"cast": []}))
    assert "the key 'title' is missing" in refused(ChangeTitles(values={"title": None}))


def test_headings_are_made_where_they_are_missing():
    fire = ChangeHeading(
        heading="fire", values={"fuel": "kerosene", "burn": {"time": "200 s", "measured": True}}
    )
    assert lines(fire) == [
        "+fire:",
        "+  fuel: kerosene",
        "+  burn: {time: 200 s, measured: true}",
        "+",
    ]
    lit = apply(SHOW, fire, file="s.yaml")
    assert lines(ChangeHeading(heading="fire", values={"burn": None, "flame": "30 cm"}), lit) == [
        "-  burn: {time: 200 s, measured: true}", "+  flame: 30 cm",
    ]  # fmt: skip
    assert lines(DeleteHeading(heading="fire"), lit) == ["-fire:", "-  fuel: kerosene", "-  burn: {time: 200 s, measured: true}", "-"]  # fmt: skip
    assert "unknown key 'fule'" in refused(
        ChangeHeading(heading="fire", values={"fule": "kerosene"})
    )


def test_things_of_the_venue():
    gate = {"name": "gate", "at": [9, 9], "width": "3 m"}
    assert lines(PutItem(into="exits", item=gate)) == [
        "+  exits:",
        "+    - {name: gate, at: [9, 9], width: 3 m}",
    ]
    text = apply(SHOW, PutItem(into="exits", item=gate))
    assert (
        lines(ChangeItem(into="exits", number=0, values={"width": None}), text)[1]
        == "+    - {name: gate, at: [9, 9]}"
    )
    assert lines(DeleteItem(into="exits", number=0), text) == [
        "-  exits:", "-    - {name: gate, at: [9, 9], width: 3 m}", "+  exits: []",
    ]  # fmt: skip
    assert "there is no entry 2 of 'exits' of the venue" in refused(
        DeleteItem(into="exits", number=1), text
    )
    assert "fill in the fuel first" in refused(
        PutItem(into="lit", item={"from": "1.1", "until": "9.1"})
    )


def test_the_count_is_put_right():
    assert lines(CorrectCount(values={"metre": 3, "one": "0:01.2"})) == [
        "-track: {file: a.ogg}", "+track: {file: a.ogg, corrections: {metre: 3, one: 0:01.2}}",
    ]  # fmt: skip
    assert "sections are put" in refused(CorrectCount(values={"sections": []}))
    assert "metre" in refused(CorrectCount(values={"metre": 9}))


def test_sections_begin_and_end():
    text = apply(SHOW, PutSection(start="1.1", name="intro"), file="s.yaml")
    assert "sections: [{from: 1.1, name: intro}]" in text
    text = apply(text, PutSection(start="9.1", name="verse: one"), file="s.yaml")
    assert 'sections: [{from: 1.1, name: intro}, {from: 9.1, name: "verse: one"}]' in text
    assert "{from: 5.1, name: intro}" in apply(text, ChangeSection(number=0, start="5.1"))
    assert "sections: [{from: 1.1, name: intro}]" in apply(text, DeleteSection(number=1))
    assert "there is no entry 3 of 'sections'" in refused(DeleteSection(number=2), text)
