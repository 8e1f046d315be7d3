from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from sequencer.show.differences import edits_between, groups, hunks
from sequencer.show.text.plain_edits import changed_plain

SCALARS = st.sampled_from("abc")
RECORDS = st.dictionaries(
    st.sampled_from("xyz"), SCALARS | st.lists(SCALARS, max_size=2), max_size=3
)
VALUES = st.dictionaries(
    st.sampled_from("kl"), st.lists(RECORDS, max_size=5) | RECORDS | SCALARS, max_size=2
)
TEXTS = st.lists(st.sampled_from("abcd"), max_size=8)


@given(VALUES, VALUES)
def test_edits_between_two_values_lead_from_one_to_the_other(old, new):
    assert changed_plain(old, edits_between(old, new)) == new


@given(TEXTS, TEXTS)
def test_hunks_lead_from_one_list_to_the_other(before, after):
    out, at = [], 0
    for hunk in hunks(before, after):
        assert hunk.start < hunk.end or hunk.first < hunk.last
        out += [*before[at : hunk.start], *after[hunk.first : hunk.last]]
        at = hunk.end
    assert [*out, *before[at:]] == after


@given(TEXTS, TEXTS, TEXTS)
def test_groups_of_hunks_do_not_overlap_and_hold_every_hunk(base, one, other):
    every = [*hunks(base, one, "ours"), *hunks(base, other, "theirs")]
    found = groups(every)
    assert sorted(map(repr, (each for own in found for each in own))) == sorted(map(repr, every))
    ends = [(min(h.start for h in own), max(h.end for h in own)) for own in found]
    assert all(a[1] <= b[0] for a, b in pairwise(ends))
