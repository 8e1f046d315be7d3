"""What taking an error away changes, against closed forms; and the advice that follows."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import norm

from sequencer.checks.distances.binomial import interval
from sequencer.checks.distances.conflict_groups import as_danced
from sequencer.checks.distances.drift_runs import Trials, Work
from sequencer.checks.distances.rehearse_first import advice, must_mend
from sequencer.motion.performers.drifting import Spread
from sequencer.motion.performers.walks import Move

STILL = Spread(place=0, facing=0, timing=0, tempo=0, tether=0, hand=0)


def bodies(dance, apart, **moves):
    return tuple(
        dance.dancer(name, (x, 5), sides=(), moves=moves.get(name, ()))
        for name, x in (("Ada", 0.0), ("Bo", apart))
    )


def spare(cast, apart):
    return apart - 2 * cast[0].body.half_breadth - 0.3


def work_of(cast, spread, *, own=None, end=8.0):
    return Work(dancers=cast, span=(0.0, end), required=0.3, spread=spread, seed=0, own=own or {})


def test_without_ones_errors_it_is_as_likely_as_the_others_make_it(dance):
    """Bodies only. With both: Φ(−s/√2σ); without one's errors Φ(−s/σ); without errors of place never."""
    cast, sigma = bodies(dance, 0.95), 0.1
    room = spare(cast, 0.95)
    (one,) = as_danced(work_of(cast, replace(STILL, place=sigma)), Trials(runs=250)).groups
    low, high = interval(one.conflicts, one.runs)

    assert low <= norm.cdf(-room / (np.sqrt(2) * sigma)) <= high
    assert one.removed.kinds["place"].chance == 0.0
    assert one.removed.matters == "place"
    alone = norm.cdf(-room / sigma)
    for own in one.removed.people.values():
        # 32 runs of each sort are danced again: the change's own interval holds the closed form
        assert one.share + own.low <= alone <= one.share + own.high
        assert own.chance < one.share


def test_two_who_err_alike_are_both_named(dance):
    (one,) = as_danced(
        work_of(bodies(dance, 0.95), replace(STILL, place=0.1)), Trials(runs=150)
    ).groups
    assert one.removed.who == ("Ada", "Bo")


def test_whoever_errs_most_is_named_alone(dance):
    own = {"Bo": replace(STILL, place=0.15)}
    (one,) = as_danced(
        work_of(bodies(dance, 1.0), replace(STILL, place=0.01), own=own), Trials(runs=150)
    ).groups
    assert one.removed.who == ("Bo",)
    assert one.removed.people["Bo"].chance == 0.0
    # with Bo's errors alone: Φ(−s/0.15)
    low, high = interval(one.conflicts, one.runs)
    assert low <= norm.cdf(-spare(bodies(dance, 1.0), 1.0) / np.hypot(0.15, 0.01)) <= high


def swaying(dance, gap):
    """Both step towards each other on the same beat, stay a quarter of a beat, and step back."""
    body = dance.dancer(sides=()).body
    near = 2 * body.half_breadth + 0.3 + gap

    def steps(home, away):
        return (
            Move(start=4.0, end=5.0, place=(away, 5.0), facing=0),
            Move(start=5.25, end=6.25, place=(home, 5.0), facing=0),
        )

    apart = near + 2.0
    return bodies(dance, apart, Ada=steps(0.0, 1.0), Bo=steps(apart, apart - 1.0))


def test_where_exact_timing_makes_it_likelier_the_plan_is_to_be_mended(dance):
    """They come within 2 cm of too close, together. Exactly on the count that is Φ(−0.02/√2·0.05) = 39 %; late, less."""
    spread = replace(STILL, place=0.05, timing=1.0)
    dances = as_danced(work_of(swaying(dance, 0.02), spread, end=10.0), Trials(runs=200))
    (one,) = dances.groups
    timing = one.removed.kinds["timing"]

    assert one.removed.raises == ("timing",)
    assert timing.low > 0
    assert (
        one.share + timing.low <= norm.cdf(-0.02 / (np.sqrt(2) * 0.05)) <= one.share + timing.high
    )
    assert one.removed.matters == "place"
    assert must_mend(one)
    (what,) = advice(dances, 0.0, ())
    assert (what.mend, what.kind, what.who) == (True, "", ("Ada", "Bo"))
    assert what.fall == pytest.approx(one.share)


def test_an_error_that_helps_is_rehearsed(dance):
    """Nothing but place errors: without them it never happens, and the whole chance falls."""
    dances = as_danced(work_of(bodies(dance, 0.95), replace(STILL, place=0.1)), Trials(runs=60))
    (what,) = advice(dances, 0.0, ())
    assert (what.mend, what.kind, what.who) == (False, "place", ("Ada", "Bo"))
    assert what.fall == pytest.approx(dances.groups[0].share)
