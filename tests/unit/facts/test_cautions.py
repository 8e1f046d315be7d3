"""Cautions: all there, none lost by a misspelling, page one always."""

import pytest

from sequencer.facts.cautions import CONDITIONS, READERS, cautions, cautions_for, page_one


def test_all_forty_are_there_in_order():
    assert [caution.number for caution in cautions()] == list(range(1, 41))
    assert len({caution.key for caution in cautions()}) == 40


def test_every_condition_and_every_reader_is_used():
    assert {caution.when for caution in cautions()} == set(CONDITIONS)
    assert {reader for caution in cautions() for reader in caution.readers} == set(READERS)


def test_page_one_gives_no_permission():
    assert "arithmetic, not permission" in page_one()
    assert "that answer wins" in page_one()


@pytest.mark.parametrize("reader", READERS)
def test_every_reader_of_a_lit_show_gets_the_first_words(reader):
    found = cautions_for({"lit"}, reader)

    assert found
    assert any(caution.key == "can-kill" for caution in found)


def test_cautions_follow_what_is_so():
    assert not cautions_for(set())
    assert "crew-short" in [each.key for each in cautions_for({"lit", "crew-short"}, "performer")]
    assert "crew-short" not in [each.key for each in cautions_for({"lit"}, "performer")]
    assert "indoors" in [each.key for each in cautions_for({"indoors"}, "safety")]
    assert len(cautions_for(CONDITIONS)) == 40


def test_misspelt_conditions_and_readers_are_refused():
    with pytest.raises(ValueError, match="conditions must be of"):
        cautions_for({"litt"})
    with pytest.raises(ValueError, match="reader must be one of"):
        cautions_for({"lit"}, "public")


def test_nothing_calls_itself_safe_or_allowed():
    """A plan never claims what only an authority can give."""
    for caution in cautions():
        for text in (caution.short, caution.text):
            for word in ("is safe", "approved", "legal"):
                assert word not in text.casefold()
