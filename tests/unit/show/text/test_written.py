"""Values as a person writes them are read back as they were meant."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sequencer.show.text.document import parse_document
from sequencer.show.text.written import Written, flow_words, quoted_like, said

SCALARS = st.one_of(
    st.booleans(), st.integers(), st.floats(allow_nan=False, allow_infinity=False), st.text()
)
VALUES = st.recursive(
    SCALARS, lambda own: st.lists(own) | st.dictionaries(st.text(), own), max_leaves=8
)


@given(VALUES, st.sampled_from(["k: ", "k: {a: 1, b: ", "k: [1, "]))
def test_any_value_is_read_back(value, before):
    close = {"k: {": "}", "k: [": "]"}.get(before[:4], "")
    read = parse_document(f"{before}{flow_words(value)}{close}\n", "s.yaml").values["k"]
    assert (read["b"] if close == "}" else read[1] if close else read) == said(value)


@given(st.text(), st.sampled_from([None, "'", '"']))
def test_any_text_is_read_back_in_the_quotes_that_were_there(text, style):
    assert parse_document(f"k: {quoted_like(style, text)}\n", "s.yaml").values == {"k": text}


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ("1.8 m", "1.8 m"),
        ("17.3+1/2", "17.3+1/2"),
        ("1:02.5", "1:02.5"),
        ("end of verse 2", "end of verse 2"),
        ("150 m²", "150 m²"),
        ("2-A:10-B:C", '"2-A:10-B:C"'),
        ("no", '"no"'),
        (True, "true"),
        (8.0, "8"),
        (-0.0, "0"),
        (0.1 + 0.2, "0.30000000000000004"),
        (1e-7, "0.0000001"),
        ({"at": [1, "-2.5"]}, "{at: [1, -2.5]}"),
        (Written({"a": 1}, ("a: 1",)), "{a: 1}"),
    ],
)
def test_quotes_only_where_they_have_to_be(value, words):
    assert flow_words(value) == words


@pytest.mark.parametrize("value", [float("nan"), float("inf"), object()])
def test_what_a_file_cannot_say_is_refused(value):
    with pytest.raises(ValueError, match="cannot say"):
        flow_words(value)
