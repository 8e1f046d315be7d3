"""How a page says an error."""

import pytest

from sequencer.desk.connection.page_values import error_values, plain_words
from sequencer.errors import InputError, InputErrors, Place


@pytest.mark.parametrize(
    ("place", "said"),
    [
        (Place("two.yaml", 92, 5), "they overlap (both use a hand); shorten one"),
        (Place("/a/two.yaml", 92), "they overlap (both use a hand); shorten one"),
        (Place("operation move-block"), "they overlap (both use a hand); shorten one"),
        (Place("/b/beats.csv", 3, 1), "beats.csv, line 3: they overlap (both use a hand); shorten one"),
        (Place("song.wav"), "song.wav: they overlap (both use a hand); shorten one"),
    ],
)  # fmt: skip
def test_neither_code_nor_place_in_the_show_but_the_name_of_another_file(place, said):
    error = InputError("overlap", place, "they overlap", "shorten one", "both use a hand")
    assert plain_words(error, "/a/two.yaml") == said


def test_several_errors_are_all_said_and_the_terminals_words_stay():
    place = Place("two.yaml", 1, 2)
    several = InputErrors([InputError("a-b", place, "one?", "mend"), InputError("c", place, "two", "mend")])  # fmt: skip
    values = error_values(several, "two.yaml")
    assert values["said"] == "one? mend\ntwo; mend"
    assert values["message"] == "two.yaml:1:2: one? mend [a-b]\ntwo.yaml:1:2: two; mend [c]"
