"""A show file to start from: with whom it is said to be danced, it reads as a show."""

import pytest

from sequencer.errors import InputError
from sequencer.show.drafted import drafted_formations, drafted_staging
from sequencer.show.reading import show_from_document
from sequencer.show.starter import STARTER_SPACING, StarterDancer, starter_text
from sequencer.show.text.document import parse_document
from tests.songs import even_song


def begun(cast, **more):
    text = starter_text(even_song(64), track="song.ogg", title="T", date="2026-01-01", blocks=False, cast=cast, **more)  # fmt: skip
    document = parse_document(text, "s.yaml")
    return show_from_document(document).show, document.values


def test_everybody_is_in_it_side_by_side_and_a_draft_may_place_them_anew():
    cast = [
        StarterDancer(name="Wren", stature="5 ft 7 in", prop="rope dart", level=4),
        StarterDancer(name='Moss "the: 2nd"', stature="1.8", prop="staff", level=None),
        StarterDancer(name="yes"),
    ]
    show, values = begun(cast, floor=("12 m", "30 ft"))
    assert show.names == ("Wren", 'Moss "the: 2nd"', "yes")
    assert show.cast[0].stature == pytest.approx(1.7018)
    assert [each.level for each in show.cast] == [4, None, 2]
    spots = [values["formations"]["start"]["spots"][name]["at"] for name in show.names]
    across = [float(at[0]) for at in spots]
    assert across == [-STARTER_SPACING, 0.0, STARTER_SPACING]
    assert drafted_formations(values) == {"start"}
    assert drafted_staging(values) == (0,)


def test_one_alone_stays_where_the_file_says():
    show, values = begun([StarterDancer(name="Wren")])
    assert show.names == ("Wren",)
    assert drafted_staging(values) == ()


@pytest.mark.parametrize("evil", ["1.7 m}\nevil: true", "tall", "1.7 m # or so", "[1, 2]"])
def test_what_is_no_length_is_refused_as_one_value(evil):
    with pytest.raises(InputError, match="stature"):
        begun([StarterDancer(name="Wren", stature=evil)])
    with pytest.raises(InputError, match="width"):
        begun([StarterDancer(name="Wren")], floor=(evil, "8 m"))
