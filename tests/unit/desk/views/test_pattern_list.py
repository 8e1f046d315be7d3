"""The vocabulary as a page lists it."""

import json

import pytest

from sequencer.desk.views.pattern_list import pattern_list
from sequencer.errors import InputError
from tests.unit.planning.test_next_patterns import SHOW, staged_show


@pytest.fixture(scope="module")
def show():
    return staged_show(SHOW)


def test_every_pattern_is_there_with_words_and_parameters(show):
    found = json.loads(json.dumps(pattern_list(show, {"who": "Ash", "at": "12"}), allow_nan=False))
    rows = {one["name"]: one for one in found["patterns"]}
    assert set(rows) == set(show.book)
    assert rows["extension"]["words"] == "joins"
    linked = next(one for one in rows.values() if one["verdict"] == "needs a link")
    assert linked["words"] == f"needs a link of {linked['link_beats']:g} beats".replace(" 1 beats", " 1 beat")  # fmt: skip
    assert {each["name"] for each in rows["toroid"]["parameters"]} >= {"lobes", "bend"}


def test_without_a_place_it_is_the_whole_vocabulary(show):
    found = pattern_list(show, {})["patterns"]
    assert {one["words"] for one in found} == {"nothing stands before it"}


@pytest.mark.parametrize("given", [{"who": "Cedar"}, {"at": "soon"}])
def test_what_is_no_place_is_refused(show, given):
    with pytest.raises(InputError) as error:
        pattern_list(show, given)
    assert error.value.code == "bad-request"
