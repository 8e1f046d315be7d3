from dataclasses import dataclass
from types import SimpleNamespace

import pytest

from sequencer.planning.drafting.finishing import in_turn
from sequencer.planning.drafting.finishing.in_turn import FlownInTurn


@dataclass
class Show:
    name: str
    dancers: tuple


SHOWS = {
    name: Show(name, tuple(SimpleNamespace(name=who) for who in ("Ash", "Birch", "Cedar")))
    for name in ("base", "first", "second")
}


@pytest.fixture(name="looked")
def _looked(monkeypatch):
    """What is told, by show, kind and performer; and in which order it was asked for."""
    told, asked = {}, []

    def teller(kind):
        def tell(show):
            (who,) = (each.name for each in show.dancers)
            if show.name != "base":
                asked.append((kind, who))
            return [
                SimpleNamespace(code=kind, position=at)
                for at in told.get((show.name, kind, who), "")
            ]

        return tell

    monkeypatch.setattr(in_turn, "unflown_links", teller("link"))
    monkeypatch.setattr(in_turn, "strained", teller("strain"))
    monkeypatch.setattr(in_turn, "first_touch", teller("touch"))
    return told, asked


def places(found):
    return [(each.code, each.position) for each in found]


def anything(found):
    return bool(found)


def test_who_cannot_fly_something_comes_first_the_next_time(looked):
    told, asked = looked
    told["first", "strain", "Birch"] = "57"
    turns = FlownInTurn(SHOWS["base"])
    assert places(turns.faults(SHOWS["first"], anything)) == [("strain", "5"), ("strain", "7")]
    kinds = ("link", "strain", "touch")
    of_two = [(kind, who) for who in ("Ash", "Birch") for kind in kinds]
    assert asked == [*of_two[:-1], *((kind, "Cedar") for kind in kinds)]
    asked.clear()
    assert turns.faults(SHOWS["second"], anything) == []
    assert [who for kind, who in asked if kind == "link"] == ["Birch", "Ash", "Cedar"]


def test_two_who_cannot_fly_something_end_the_look(looked):
    told, asked = looked
    told["first", "link", "Ash"], told["first", "strain", "Birch"] = "1", "57"
    told["first", "link", "Cedar"] = "3"
    turns = FlownInTurn(SHOWS["base"])
    found = [("link", "1"), ("strain", "5"), ("strain", "7")]
    assert places(turns.faults(SHOWS["first"], anything)) == found
    assert asked == [("link", "Ash"), ("link", "Birch"), ("strain", "Birch")]


def test_links_come_before_patterns_and_what_the_show_has_anyway_is_no_fault(looked):
    told, _ = looked
    told["base", "link", "Ash"] = told["base", "strain", "Cedar"] = "1"
    told["first", "link", "Ash"], told["first", "strain", "Ash"] = "12", "3"
    turns = FlownInTurn(SHOWS["base"])
    assert places(turns.faults(SHOWS["first"], anything)) == [("link", "2")]
    told["second", "strain", "Cedar"] = "1"
    assert turns.faults(SHOWS["second"], anything) == []


def test_what_nothing_can_be_done_about_is_left_to_the_check_of_the_whole(looked):
    told, _ = looked
    told["first", "link", "Ash"], told["first", "strain", "Birch"] = "2", "9"

    def counts(found):
        return any(each.position == "9" for each in found)

    turns = FlownInTurn(SHOWS["base"])
    assert places(turns.faults(SHOWS["first"], counts)) == [("strain", "9")]
