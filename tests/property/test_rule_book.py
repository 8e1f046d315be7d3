"""Rules only ever get stricter by themselves, and burns only ever get worse with time."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sequencer.checks.fire.each_burn.burning_time import Cut, burn_findings
from sequencer.facts.burn_times import BurnTime
from sequencer.facts.profiles import Profile, Rule, kind_of, profile, profile_names
from sequencer.facts.rule_book import rule_book
from sequencer.facts.rule_kinds import RULE_KINDS
from sequencer.facts.sources import Source
from sequencer.safety.burns.burning import PlannedBurn

NUMBERS = [name for name, kind in RULE_KINDS.items() if kind.sort in {"least", "most"}]
COUNTS = [name for name, kind in RULE_KINDS.items() if kind.sort == "count"]
DEFAULT = rule_book()
SHARE = DEFAULT.strictest("burn-share")
ORDER = {None: 0, "burn-reserve": 1, "burns-out": 2}
ROUNDING = 1e-6  # [s] sums of times are not exact


def own(kind, value):
    source = Source(key="own", title="by-law", date="", where="rules.yaml", mark="as entered")
    rule = Rule(
        kind=kind_of(kind),
        value=value,
        printed=str(value),
        profile="Own",
        source=source,
        mark="as entered",
    )
    return Profile(
        name="own", title="Own", place="", edition="", authority=False, note="", rules=(rule,)
    )


@pytest.mark.parametrize("name", profile_names())
def test_a_chosen_profile_without_a_permit_loosens_nothing(name):
    book = rule_book(profile(name))

    assert not book.loosened
    for kind in NUMBERS:
        base, now = DEFAULT.strictest(kind), book.strictest(kind)
        if base is not None:
            sign = 1 if base.kind.sort == "least" else -1
            assert sign * (now.number - base.number) >= 0
    for kind in COUNTS:
        for heads in range(41):
            base, now = DEFAULT.needed(kind, heads, 500), book.needed(kind, heads, 500)
            assert base is None or now[0] >= base[0]
    for lit in range(1, 6):
        assert book.audience_distance(lit)[0] >= DEFAULT.audience_distance(lit)[0]


@pytest.mark.parametrize("name", profile_names())
def test_a_permit_never_loosens_people_and_says_what_it_loosens(name):
    book = rule_book(profile(name), permit="P-1")

    for kind in COUNTS:
        for heads in range(1, 21):
            base = DEFAULT.needed(kind, heads)
            assert base is None or book.needed(kind, heads)[0] >= base[0]
    for each in book.loosened:
        assert each.reference == "P-1"
        assert each.rule.profile == profile(name).title
        assert book.strictest(each.rule.kind.name).number == each.rule.number


@given(st.sampled_from(NUMBERS), st.floats(0.01, 1.0))
def test_an_own_rule_without_a_reference_loosens_nothing(kind, value):
    base, now = DEFAULT.strictest(kind), rule_book(None, own(kind, value)).strictest(kind)

    if base is None:
        assert now.number == value
    else:
        pick = max if base.kind.sort == "least" else min
        assert now.number == pick(base.number, value)


@given(
    st.floats(10.0, 600.0),
    st.floats(10.0, 600.0),
    st.floats(1.0, 60.0),
    st.lists(st.floats(0.0, 600.0), max_size=12),
)
def test_a_longer_burn_is_never_judged_milder_and_remedies_hold(burning, lit, more, cuts):
    """And a relight is proposed just where one is enough: a third burn would take up the first set, still hot."""
    marks = [Cut(seconds=cut, position="1.1", label="x") for cut in sorted(cuts)]

    def judged(seconds):
        burn = PlannedBurn(
            who="W", start=0.0, end=seconds, start_s=0.0, end_s=seconds, lit_s=seconds, fuel="kerosene",
            burn=BurnTime(seconds=burning, basis="measured", source="log"),
        )  # fmt: skip
        found = burn_findings([burn], share=SHARE, cuts=marks, positions=["1.1"])
        assert len(found) <= 1
        return found[0] if found else None

    now, later = judged(lit), judged(lit + more)
    level = {None: 0} if now is None else {now.code: ORDER[now.code]}
    assert ORDER[later.code if later else None] >= max(level.values())
    assert (now is None) == (lit <= SHARE.number * burning + ROUNDING)
    assert (now is not None and now.code == "burns-out") == (lit > burning + ROUNDING)
    if now is not None:
        most = SHARE.number * burning + ROUNDING
        inside = [cut.seconds for cut in marks if 0 < cut.seconds < lit]
        relit = any("and relight" in text for text in now.remedies)
        assert relit == any(cut <= most and lit - cut <= most for cut in inside)
