"""What the form of a new show says, looked at before the song is heard: told by the name of the field."""

import pytest

from sequencer.desk.pages.begin_form import form_cast, form_floor
from sequencer.errors import InputError

WREN = {"name": "Wren", "stature": " 5'11 ", "prop": "poi", "level": 2}
MOSS = {"name": "Moss", "stature": "3 m", "prop": "poi", "level": 2}


def test_what_is_right_stays_as_it_was_written():
    assert form_cast([WREN]) == [{**WREN, "stature": "5'11"}]
    assert form_floor([" 8 m", "26 ft "]) == ["8 m", "26 ft"]


@pytest.mark.parametrize(
    ("stature", "what"),
    [
        ("3 m", "3 m is outside 0.8 … 2.6 m"),
        ("tall", "'tall' is not a number with a unit"),
        ("1,500 m", "can be read as 1500 m or as 1.500 m"),
        ("tall\nevil: true", "is not a number with a unit"),
    ],
)
def test_a_height_that_nobody_has_is_told_by_whose_it_is(stature, what):
    with pytest.raises(InputError) as told:
        form_cast([WREN, {**MOSS, "stature": stature}])
    assert str(told.value).startswith("Moss's height: ")
    assert what in told.value.what
    assert "write" in told.value.mend


def test_of_two_mistakes_the_first_is_told():
    with pytest.raises(InputError) as told:
        form_cast([{**WREN, "stature": "x"}, MOSS])
    assert str(told.value).count("height") == 2, "the field, and how to mend it"
    assert "Moss" not in str(told.value)


def test_a_name_and_a_floor_are_looked_at_too():
    with pytest.raises(InputError, match="reverse the direction"):
        form_cast([{**WREN, "name": "a\u202eb"}])
    with pytest.raises(InputError, match=r"The floor's depth: .*write a length"):
        form_floor(["8 m", "deep"])
    with pytest.raises(InputError, match=r"The floor's width: 900 m is outside"):
        form_floor(["900 m", "8 m"])
