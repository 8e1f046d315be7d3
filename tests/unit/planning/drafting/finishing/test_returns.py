"""What returns is drawn smaller or larger, as the music is."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import spearmanr

from sequencer.planning.drafting.auditioning.candidates import Heard
from sequencer.planning.drafting.auditioning.sizes import sizes_of
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.finishing import returns
from sequencer.planning.drafting.finishing.returns import follows, most_by_material, sized_returns
from sequencer.show.file_records.wishes import Wishes
from tests.unit.planning.drafting.costing.test_setting import moves, setting, slot

SLOTS = [
    slot(0, label="A", material=0), slot(1, label="B", material=1),
    slot(2, label="A", material=0), slot(3, label="C", material=2), slot(4, label="A", material=0),
]  # fmt: skip
LOUDNESS = [0.0, 0.5, 1.0, 0.6, 0.5]
SIZES = {"": 0.4, "small": 0.2, "large": 0.6}
PICKS = [1, 0, 4]  # an extension is what returns


@pytest.fixture(name="found")
def _found(monkeypatch):
    """A setting in which the extension comes in three sizes, and passages that fail."""
    one = setting(
        SLOTS,
        loudness=LOUDNESS,
        heard=tuple(Heard(passes=True, size=s) for s in (0.1, 0.4, 0.3, 0.5, 0.7)),
    )
    bad = set()

    def in_sizes(setting_, usual, slots):
        assert slots == [0, 2, 4]
        own = [usual, *(queue[0] for queue in sizes_of(usual, setting_.cast.book))]
        return [(move, Heard(passes=True, size=SIZES[move.drawn])) for move in own]

    def tried(self, keys):
        drawn = [(self.cast.moves[k[0]].drawn, k[2], self.cast.moves[k[3]].drawn) for k in keys]
        return ["no" if each in bad else "" for each in drawn]

    monkeypatch.setattr(returns, "_in_sizes", in_sizes)
    monkeypatch.setattr(Setting, "tried", tried)
    monkeypatch.setattr(Setting, "joins", lambda self, *_: np.zeros((self.count,) * 2, dtype=bool))
    one.try_all([key for _, key in one.passage_keys(PICKS)])
    return one, bad


def drawn(wider, sized):
    return {k: (wider.cast.moves[m].pattern, wider.cast.moves[m].drawn) for k, m in sized.items()}


def test_what_returns_softly_is_drawn_small_and_what_returns_loudly_large(found):
    one, _ = found
    wider, sized = sized_returns(one, PICKS)
    assert drawn(wider, sized) == {0: ("extension", "small"), 2: ("extension", "large")}
    # steps, hands and cycles stay
    assert all(wider.cast.moves[m].as_usual == one.cast.moves[1] for m in sized.values())
    assert wider.cast.moves[: one.count] == one.cast.moves
    # what passes there need not pass elsewhere
    assert {(1, m) for m in sized.values()} <= wider.forbidden
    assert not one.forbidden
    at = [sized.get(k, m) for k, m in enumerate(one.at_slots(PICKS))]
    sizes = [wider.cast.heard[k].size for k in at]
    usual = [one.cast.heard[k].size for k in one.at_slots(PICKS)]
    assert follows(one.loudness, sizes) > follows(one.loudness, usual)


def test_a_size_that_no_passage_leads_to_is_left_alone(found):
    one, bad = found
    bad |= {("small", n, "") for n in (1, 2, 3, 4)}
    wider, sized = sized_returns(one, PICKS)
    assert drawn(wider, sized) == {2: ("extension", "large")}


def test_links_do_not_grow_for_it(found):
    one, bad = found
    bad.add(("", 2, "large"))  # a link of another length would pass
    wider, sized = sized_returns(one, PICKS)
    assert drawn(wider, sized) == {0: ("extension", "small")}
    assert ("no" in one.bad.values()) is False  # nothing of it is kept in what was searched


def test_no_link_comes_between_what_joined(found, monkeypatch):
    one, _ = found

    def joins(self, *_):
        table = np.zeros((self.count,) * 2, dtype=bool)
        table[: one.count, : one.count] = True
        return table

    monkeypatch.setattr(Setting, "joins", joins)
    one.try_all([key for _, key in one.passage_keys(PICKS)])
    wider, sized = sized_returns(one, PICKS)
    # The second time it is joined to what comes before; the first time nothing does, and it leads on by a link.
    assert drawn(wider, sized) == {0: ("extension", "small")}


def test_what_would_hardly_be_seen_is_not_worth_two_sizes(found):
    one, _ = found
    near = replace(one, loudness=np.array([0.45, 0.5, 0.55, 0.6, 0.5]))
    _, sized = sized_returns(near, PICKS)
    assert sized == {}


def test_what_does_not_return_stays_as_it_is(found):
    one, _ = found
    once = replace(
        one, slots=tuple(SLOTS[k] for k in (0, 1, 3)), loudness=np.array([0.0, 0.5, 1.0])
    )
    wider, sized = sized_returns(once, PICKS)
    assert sized == {}
    assert wider.cast.moves == one.cast.moves


@pytest.mark.parametrize("seed", range(10))
def test_how_well_size_follows_is_the_rank_correlation(seed):
    draw = np.random.default_rng(seed)
    loud, sizes = draw.integers(0, 6, 12) / 6, draw.integers(0, 6, 12) / 6
    assert follows(loud, list(sizes)) == pytest.approx(spearmanr(loud, sizes).statistic, abs=1e-12)
    assert follows(loud, [0.1, 0.2] * 6) is None


def test_the_most_that_can_be_had_with_one_size_for_what_returns(found):
    one, _ = found
    # Ranks 1, 2.5, 5, 4, 2.5: what returns has the mean (1 + 5 + 2.5) / 3 each time.
    mean = (1 + 5 + 2.5) / 3
    expected = spearmanr(LOUDNESS, [mean, 2.5, mean, 4, mean]).statistic
    assert most_by_material(one) == pytest.approx(expected, abs=1e-12)
    for sizes in ([2, 1, 2, 3, 2], [1, 2, 1, 3, 1], [3, 2, 3, 1, 3], [1, 3, 1, 2, 1]):
        assert spearmanr(LOUDNESS, sizes).statistic <= expected + 1e-12


@pytest.mark.parametrize("wished", ["alike", "free"])
def test_moves_that_follow_are_worth_more_where_their_part_returns(wished):
    own = moves(("static-spin", "extension"))
    heard = (Heard(passes=True, size=0.3), Heard(passes=True, size=0.3))
    found = setting(
        SLOTS[:3], loudness=[0.0, 0.5, 1.0], own=own, heard=heard, wishes=Wishes(returns=wished)
    )
    found.cast = replace(found.cast, sizable=(False, True))
    one, other = found.own_terms(0)["energy"]
    assert (one > other) == (wished == "alike")
    alone, beside = found.own_terms(1)["energy"]
    assert alone == beside
