"""Who is away tonight, who stands in, and everybody there again; nothing else of the file changes."""

import pytest

from sequencer.show.operations.operation import apply
from sequencer.show.operations.people_operations import RemovePerson, RenamePerson
from sequencer.show.operations.tonight_operations import SetAway, SetStandIn, SetThere
from tests.unit.show.operations.duo import SHOW, lines, refused

AWAY = apply(SHOW, SetAway(name="Birch"))
FERN = {"name": "Fern", "stature": "1.62 m"}


def test_somebody_is_away_and_there_again():
    assert lines(SetAway(name="Birch")) == ["+", "+tonight:", "+  away: [Birch]"]
    assert lines(SetAway(name="Ivy"), AWAY) == ["-  away: [Birch]", "+  away: [Birch, Ivy]"]
    assert apply(AWAY, SetThere(name="Birch")) == SHOW
    both = apply(AWAY, SetAway(name="Ivy"))
    assert apply(both, SetThere(name="Birch")) == AWAY.replace("away: [Birch]", "away: [Ivy]")
    assert apply(both, SetThere()) == SHOW
    assert apply(SHOW, SetThere()) == SHOW


@pytest.mark.parametrize(
    "text",
    [
        SHOW.rstrip("\n"), SHOW + "\n", SHOW + "# the end\n", SHOW + "\n\n# the end", SHOW.replace("\n", "\r\n"),
        SHOW.rstrip("\n").replace("\n", "\r\n"), SHOW + "weather: {gusts: 3 m/s}\n", SHOW + "\nweather: {gusts: 3 m/s}\n",
        SHOW + "\n# by the sea\nweather:\n  gusts: 3 m/s\n", SHOW.replace("timeline:", "weather: {gusts: 3 m/s}\ntimeline:"),
        SHOW.replace("timeline:", "\n# mine\n\n# by the sea\nweather: {gusts: 3 m/s}\n\ntimeline:"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("switch", [SetAway(name="Birch"), SetStandIn(part="Birch", person=FERN)])
def test_the_bytes_before_the_first_switch_are_back_after_the_last(text, switch):
    switched = apply(text, switch)
    assert switched != text
    assert apply(switched, SetThere(name="Birch")) == text
    assert apply(switched, SetThere()) == text


def test_a_part_is_taken_by_one_person_or_falls_out():
    taken = apply(AWAY, SetStandIn(part="Birch", person=FERN))
    assert "away" not in taken
    assert "{for: Birch, name: Fern, stature: 1.62 m}" in taken
    other = apply(taken, SetStandIn(part="Birch", person={"name": "Gorse", "stature": 1.8}))
    assert "Fern" not in other
    assert "Gorse" in other
    again = apply(other, SetAway(name="Birch"))
    assert again == AWAY


def test_what_cannot_be_is_refused():
    assert "Birch is away already" in refused(SetAway(name="Birch"), AWAY)
    assert "'Nobody' is in neither cast nor crew" in refused(SetAway(name="Nobody"))
    assert "everybody in the cast is away" in refused(SetAway(name="Ash"), AWAY)
    assert "nothing says how tall Fern is" in refused(
        SetStandIn(part="Birch", person={"name": "Fern"})
    )
    assert "Ash has a part of their own tonight" in refused(
        SetStandIn(part="Birch", person={"name": "ash", "stature": 1.7})
    )
    assert "a post needs no stature" in refused(SetStandIn(part="Ivy", person=FERN))


def test_a_new_name_is_followed_and_who_leaves_the_show_is_not_away():
    text = apply(AWAY, SetStandIn(part="Ivy", person={"name": "Birch"}))
    renamed = apply(text, RenamePerson(group="cast", name="Birch", new="Elm"))
    assert "away: [Elm]" in renamed
    assert "{for: Ivy, name: Elm}" in renamed
    crew = apply(text, RenamePerson(group="crew", name="Ivy", new="Oak"))
    assert "{for: Oak, name: Birch}" in crew
    gone = apply(text, RemovePerson(group="crew", name="Ivy"))
    assert "for:" not in gone
    assert "away: [Birch]" in gone


def test_comments_stay_with_their_rows():
    text = (
        SHOW
        + """\
tonight:
  away:
    - Birch    # in bed
  stand_ins:
    - {for: Ivy, name: Oak}    # Oak: allergic
"""
    )
    other = lines(SetStandIn(part="Ivy", person={"name": "Quin"}), text)
    assert [line for line in other if "allergic" not in line] == []
    more = apply(
        text.replace("crew:\n", "crew:\n  - {name: Zed, post: [0, 9]}\n"),
        SetStandIn(part="Zed", person={"name": "Quin"}),
    )
    assert "    - {for: Ivy, name: Oak}    # Oak: allergic\n    - {for: Zed, name: Quin}\n" in more
    fewer = apply(more, SetThere(name="Zed"))
    assert "    - {for: Ivy, name: Oak}    # Oak: allergic\n" in fewer
    assert "    - Birch    # in bed\n" in fewer
    assert "Zed, name" not in fewer


def test_nothing_empty_is_left_when_somebody_is_there_again():
    one_away = apply(SHOW, SetAway(name="Birch"))
    for left in (
        one_away,
        apply(one_away, RemovePerson(group="cast", name="Birch")),
        apply(SHOW, SetStandIn(part="Ivy", person={"name": "Quin"})),
    ):
        assert "tonight" not in apply(apply(left, SetThere(name="Birch")), SetThere(name="Ivy"))
    assert "tonight" not in apply(one_away, RemovePerson(group="cast", name="Birch"))
    for empty in ("tonight: {}\n", "tonight: {away: []}\n", "tonight:\n  stand_ins: []\n  away:\n"):
        assert apply(SHOW + empty, SetThere(name="Birch")).rstrip() == SHOW.rstrip()
    half = apply(SHOW + "tonight: {stand_ins: [], away: [Birch]}\n", SetThere(name="Ivy"))
    assert half.rstrip().endswith("tonight: {away: [Birch]}")
