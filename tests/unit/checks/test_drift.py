import json

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.drift import as_danced, drift, interval, one_run
from sequencer.checks.requirements import Requirements
from sequencer.motion.drifting import KINDS, Spread, drifted
from sequencer.motion.floor import Move
from sequencer.timing.tempo import TempoMap

STILL = Spread(place=0, facing=0, timing=0, tempo=0, tether=0, hand=0)


def pair(dance, apart):
    return [dance.dancer("Ada", (0, 5)), dance.dancer("Bo", (apart, 5))]


def danced(cast, **options):
    return as_danced(cast, start=0, end=8, required=0.3, **{"runs": 30, **options})


def test_no_errors_dance_the_plan(dance):
    (clear,), (tight,) = (danced(pair(dance, apart), spread=STILL, runs=3) for apart in (5.0, 1.6))

    assert (clear.conflicts, tight.conflicts) == (0, 3)


def test_a_narrow_plan_fails_now_and_then(dance):
    """With bodies only the chance is known: the gap is a normal number."""
    from scipy.stats import norm

    cast = [dance.dancer(n, (x, 5), sides=()) for n, x in (("Ada", 0.0), ("Bo", 1.0))]
    sigma = 0.1
    spare = 1.0 - 2 * cast[0].body.half_breadth - 0.3
    spread = Spread(place=sigma, facing=0, timing=0, tempo=0, tether=0, hand=0)
    (chance,) = danced(cast, spread=spread, runs=400)
    # Across the line of centres an error hardly counts: sqrt(d² + y²) ≈ d + y²/2d.
    expected = norm.cdf(-spare / (np.sqrt(2) * sigma))

    assert 0.02 < expected < 0.2
    assert chance.low <= expected <= chance.high
    assert chance.low < chance.share < chance.high


def test_same_seed_same_answer_whoever_works(dance):
    cast = pair(dance, 2.2)
    alone, other, two = (
        danced(cast, runs=6),
        danced(cast, runs=6, seed=1),
        danced(cast, runs=6, jobs=2),
    )

    assert alone == two
    assert alone != other


def test_what_matters_is_told(dance):
    spread = Spread(place=0.4, facing=0.001, timing=0.001, tempo=0, tether=0.001, hand=0.001)
    (chance,) = danced(pair(dance, 2.2), spread=spread)

    assert chance.matters == "place"
    assert chance.who in {"Ada", "Bo"}


def test_an_interrupted_call_goes_on(dance, tmp_path):
    cast, store = pair(dance, 2.2), tmp_path / "runs.json"
    told = []

    def stop(share):
        told.append(share)
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        danced(cast, runs=40, store=store, progress=stop)
    assert len(json.loads(store.read_text("utf-8"))["runs"]) == 20
    resumed = danced(cast, runs=40, store=store, progress=told.append)
    assert told == [0.5, 1.0]
    assert resumed == danced(cast, runs=40)


@pytest.mark.parametrize("content", ["", "{", '{"key": "another"}', "[]", '{"runs": 3}'])
def test_a_spoilt_store_is_not_trusted(dance, tmp_path, content):
    store = tmp_path / "runs.json"
    store.write_text(content, encoding="utf-8")

    assert danced(pair(dance, 2.2), runs=3, store=store) == danced(pair(dance, 2.2), runs=3)


def test_findings(dance):
    outcome = drift(
        pair(dance, 2.3),
        TempoMap.steady(120, beats=16),
        Requirements(),
        start=0,
        end=8,
        runs=20,
    )

    (finding,) = outcome.findings
    assert (finding.code, finding.severity) == ("too-close-as-danced", "warn")
    assert "of 20 runs" in finding.message
    assert "95 % confidence" in finding.message
    assert "rehearse" in finding.remedies[1]
    assert "seed 0" in outcome.unseen[0]
    assert (
        drift(pair(dance, 8), TempoMap.steady(120), Requirements(), start=0, end=8, runs=2).findings
        == ()
    )


def test_the_interval_is_the_printed_one():
    """Clopper–Pearson at 95 %: 0 of 10 gives 0 to 0.3085 (1 − 0.025^(1/10)); 5 of 10 gives 0.187 to 0.813."""
    assert_allclose(interval(0, 10), (0.0, 1 - 0.025**0.1), atol=1e-12)
    assert_allclose(interval(10, 10), (0.025**0.1, 1.0), atol=1e-12)
    assert_allclose(interval(5, 10), (0.1871, 0.8129), atol=1e-4)


@pytest.mark.parametrize("kind", KINDS)
def test_each_error_moves_the_dancer_within_its_bounds(dance, kind):
    moves = (Move(start=2, end=6, place=(1, 4), facing=1, through=((1, 3),)),)
    ada = dance.dancer(moves=moves)
    spread = Spread(tempo=0.02).only(kind)
    other = drifted(ada, spread, np.random.default_rng(3), 4.0)
    beats = np.linspace(0, 8, 8001)
    points, rates = other.stage_points(beats)

    assert np.max(np.abs(points - ada.stage_points(beats)[0])) > 1e-3
    assert_allclose(np.gradient(points, beats, axis=1)[:, 2:-2], rates[:, 2:-2], atol=1e-2)
    pieces = other.pieces(0, 8)
    assert pieces.edges[0] == 0
    assert pieces.edges[-1] == 8
    for k in range(len(pieces.speed)):
        own = (beats >= pieces.edges[k]) & (beats <= pieces.edges[k + 1])
        speed = np.linalg.norm(rates[:, own], axis=-1).max(axis=1)
        assert np.all(speed <= pieces.speed[k] + 1e-9)


def test_the_same_numbers_are_drawn_for_every_kind(dance):
    ada = dance.dancer()
    place = [
        drifted(ada, spread, np.random.default_rng(3), 4.0).floor.place
        for spread in (Spread(), Spread().only("place"))
    ]

    assert place[0] == place[1]


def test_one_performer_alone_can_drift(dance):
    cast = pair(dance, 1.9)

    assert one_run(cast, (0, 8), 0.3, Spread(), 0, 0) != one_run(
        cast, (0, 8), 0.3, STILL, 0, 0, "Ada"
    )


@pytest.mark.parametrize("given", [{"place": -1}, {"hand": float("nan")}, {"tempo": 0.2}])
def test_absurd_spreads_are_refused(given):
    with pytest.raises(ValueError, match=next(iter(given))):
        Spread(**given)


def test_no_runs_are_refused(dance):
    with pytest.raises(ValueError, match="runs"):
        danced(pair(dance, 3), runs=0)
