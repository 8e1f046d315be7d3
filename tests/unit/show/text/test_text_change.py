from hypothesis import given
from hypothesis import strategies as st

from sequencer.show.text.text_change import change_between

TEXTS = st.text(alphabet="ab\n", max_size=12)


@given(TEXTS, TEXTS)
def test_a_change_leads_there_and_back_and_is_the_shortest(before, after):
    change = change_between(before, after)
    assert change.on(before) == after
    assert change.back.on(after) == before
    if change.old and change.new:
        assert change.old[0] != change.new[0]
        assert change.old[-1] != change.new[-1]
