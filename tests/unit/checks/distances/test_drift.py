import itertools
import json
import signal
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.distances import drift_runs
from sequencer.checks.distances.binomial import interval
from sequencer.checks.distances.conflict_groups import as_danced, gathered
from sequencer.checks.distances.drift import CHANCE, Erring, PlanWords, drift
from sequencer.checks.distances.drift_runs import (
    RunConflict,
    Trials,
    Work,
    danced,
    drawn_dancers,
)
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.distances.scenes import scene_edges
from sequencer.findings import Clearance
from sequencer.motion.performers.drifting import ERROR_KINDS, Spread, drifted
from sequencer.motion.performers.walks import Move
from sequencer.timing.tempo import TempoMap

STILL = Spread(place=0, facing=0, timing=0, tempo=0, tether=0, hand=0)


def pair(dance, apart):
    return [dance.dancer("Ada", (0, 5)), dance.dancer("Bo", (apart, 5))]


def work_of(cast, *, spread=None, seed=0, end=8.0):
    return Work(
        dancers=tuple(cast), span=(0.0, end), required=0.3, spread=spread or Spread(), seed=seed
    )


def chances(cast, *, spread=None, runs=30, seed=0, end=8.0, progress=None, **how):
    work = work_of(cast, spread=spread, seed=seed, end=end)
    return as_danced(work, Trials(runs=runs, seed=seed, **how), progress=progress).groups


def test_no_errors_dance_the_plan(dance):
    told = []
    clear, tight = (
        chances(pair(dance, apart), spread=STILL, runs=3, progress=told.append)
        for apart in (5.0, 1.6)
    )

    assert clear == ()
    thrice = [0.0, 0.65, 0.65, 0.75, 0.75, 0.85]  # as it is, with half the errors, with twice
    # what is left tells conflicts apart, if there are any
    assert told == pytest.approx([*thrice, *thrice, 0.95, 1.0])
    assert [one.conflicts for one in tight] == [3]


def test_a_narrow_plan_fails_now_and_then(dance):
    """With bodies only the chance is known: the gap is a normal number."""
    from scipy.stats import norm

    cast = [dance.dancer(n, (x, 5), sides=()) for n, x in (("Ada", 0.0), ("Bo", 1.0))]
    sigma = 0.1
    spare = 1.0 - 2 * cast[0].body.half_breadth - 0.3
    spread = Spread(place=sigma, facing=0, timing=0, tempo=0, tether=0, hand=0)
    (one,) = chances(cast, spread=spread, runs=400)
    # Across the line of centres an error hardly counts: sqrt(d² + y²) ≈ d + y²/2d.
    expected = norm.cdf(-spare / (np.sqrt(2) * sigma))
    low, high = interval(one.conflicts, one.runs)

    assert 0.02 < expected < 0.2
    assert low <= expected <= high
    assert low < one.share < high


def test_same_seed_same_answer_whoever_works(dance):
    work = work_of(pair(dance, 2.2))
    alone, other, two = (
        danced(work, Trials(runs=21)),  # a whole part, and another
        danced(replace(work, seed=1), Trials(runs=21, seed=1)),
        danced(work, Trials(runs=21, jobs=2)),
    )

    assert any(alone)
    assert alone == two
    assert alone != other


def test_nobody_is_surer_of_the_place_half_way(dance):
    """Side by side on a walk, looked at half way: as likely as standing, Φ(−s/√2σ) = 25 %, not Φ(−s/σ) = 17 %."""
    from scipy.stats import norm

    sigma = 0.1
    walk = [Move(start=2, end=6, place=(x, 9), facing=0) for x in (0.0, 1.0)]
    cast = [
        dance.dancer(name, (x, 5), sides=(), moves=[walk[k]])
        for k, (name, x) in enumerate((("Ada", 0.0), ("Bo", 1.0)))
    ]
    spare = -norm.ppf(0.25) * np.sqrt(2) * sigma
    required = 1.0 - 2 * cast[0].body.half_breadth - spare
    spread = Spread(place=sigma, facing=0, timing=0, tempo=0, tether=0, hand=0)
    work = Work(dancers=tuple(cast), span=(3.99, 4.01), required=required, spread=spread, seed=0)
    runs = danced(work, Trials(runs=400))
    low, high = interval(sum(map(bool, runs)), 400)

    assert low <= 0.25 <= high
    assert norm.cdf(-spare / sigma) < low


def test_a_tempo_error_moves_walks(dance):
    """2 % quicker, one is at a beat b of the plan when the others are at m + (b − m)/1.02."""
    ada = dance.dancer(moves=(Move(start=20, end=24, place=(2, 3), facing=0),))
    quick = drifted(ada, Spread(tempo=0.02).only("tempo"), np.random.default_rng(3), 10.0)
    (move,) = quick.floor.moves
    pace = quick.trajectories["left"].stretch

    assert abs(pace - 1) > 1e-3
    assert (move.start, move.end) == pytest.approx((10 + 10 / pace, 10 + 14 / pace))


def test_it_agrees_with_a_simulation_of_its_own(dance):
    """Bodies that pass on crossing walks, with errors of place, timing and tempo: drawn and moved anew, by NumPy alone.

    Minimum jerk, a quarter turn from one place's error to the next's; two shares of 300 and of 4000 runs, by the normal
    test of two proportions at 99.9 %."""
    from scipy.stats import norm

    ways = (((0.0, 2.0), (4.0, 6.0), 4.0, 12.0), ((4.0, 2.0), (0.0, 6.0), 5.0, 13.0))
    cast = [
        dance.dancer(name, a, sides=(), moves=[Move(start=s, end=e, place=b, facing=0)])
        for name, (a, b, s, e) in zip(("Ada", "Bo"), ways, strict=True)
    ]
    spread = Spread(place=0.15, facing=0, timing=0.4, tempo=0.02, tether=0, hand=0)
    work = Work(dancers=tuple(cast), span=(0.0, 20.0), required=0.3, spread=spread, seed=0)
    mine = np.mean([bool(run) for run in danced(work, Trials(runs=300))])

    draw, n, beats = np.random.default_rng(11), 4000, np.linspace(0.0, 20.0, 401)
    places = []
    for a, b, start, end in ways:
        late, pace = draw.normal(size=(n, 1)) * 0.4, 1 + draw.normal(size=(n, 1)) * 0.02
        own = 10 + (beats - late - 10) * pace
        u = np.clip((own - start) / (end - start), 0, 1)
        s = 10 * u**3 - 15 * u**4 + 6 * u**5
        off = draw.normal(size=(2, n, 1, 2)) * 0.15
        turn = (np.pi / 2 * s)[..., None]
        way = np.array(a) + s[..., None] * (np.array(b) - np.array(a))
        places.append(way + np.cos(turn) * off[0] + np.sin(turn) * off[1])
    gap = np.linalg.norm(places[0] - places[1], axis=-1).min(axis=1)
    theirs = np.mean(gap - 2 * cast[0].body.half_breadth < 0.3)

    both = (300 * mine + n * theirs) / (300 + n)
    error = np.sqrt(both * (1 - both) * (1 / 300 + 1 / n))
    assert 0.1 < theirs < 0.9
    assert abs(mine - theirs) < norm.ppf(0.9995) * error


def test_two_places_of_a_show_are_two_conflicts(dance):
    """They meet at beats 4 to 8 and again at 28 to 32, and stand far apart between."""
    moves = [
        Move(start=start, end=start + 4, place=(x, 5), facing=0)
        for start, x in ((2, 1.2), (8, 8.0), (26, 1.2), (32, 8.0))
    ]
    cast = [dance.dancer("Ada", (0, 5)), dance.dancer("Bo", (8, 5), moves=moves)]
    work = replace(work_of(cast, end=40.0), edges=(scene_edges(*cast, (0.0, 40.0)),))
    runs = danced(work, Trials(runs=4))
    found = sorted(gathered(work, runs), key=lambda one: one.start)

    held = [one for one in found if (one.scene_start, one.scene_end) in {(6, 8), (30, 32)}]
    assert len(held) == 2  # the others are the walks there and back
    assert [one.in_runs for one in held] == [(0, 1, 2, 3)] * 2
    for one in found:  # what reaches over an edge by less than a beat is told where it comes from
        assert one.scene_start - 1 < one.start < one.end < one.scene_end + 1
    found = held
    assert 2 < found[0].start < found[0].end < 12
    assert 26 < found[1].start < found[1].end < 36
    assert all(one.worst < 0.3 for one in found)


def test_one_run_counts_once_at_a_place(dance):
    """One conflict of a run in a scene; another run in the same scene adds one, whenever it is."""
    work = replace(work_of(pair(dance, 5), end=40.0), edges=((0.0, 20.0, 40.0),))
    runs = [
        (RunConflict(0, 0, 4.0, 7.0, 0.1, 6.5),),
        (RunConflict(0, 0, 15.5, 15.6, 0.25, 15.5),),
        (RunConflict(0, 1, 30.0, 31.0, 0.0, 30.5),),
        (),
    ]
    early, late = gathered(work, runs)

    assert (early.conflicts, early.runs, early.start, early.end) == (2, 4, 4.0, 15.6)
    assert (early.worst, late.conflicts, late.worst) == (0.1, 1, 0.0)
    assert (early.moments, early.in_runs, late.in_runs) == ((6.5, 15.5), (0, 1), (2,))
    assert (early.window, late.window) == ((0.0, 19.6), (26.0, 35.0))


def test_an_interrupted_call_goes_on(dance, tmp_path):
    work, told = work_of(pair(dance, 2.2)), []
    whole = danced(work, Trials(runs=25))

    def stop(share):
        told.append(share)
        if share > 0:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        danced(work, Trials(runs=25, folder=tmp_path), progress=stop)
    (kept,) = tmp_path.rglob("*.json")
    assert len(json.loads(kept.read_text("utf-8"))["runs"]) == 20
    again = []
    resumed = danced(work, Trials(runs=25, folder=tmp_path), progress=again.append)

    assert again[0] == pytest.approx(20 / 25)
    assert any(resumed)
    assert resumed == whole


def test_an_interruption_waits_until_a_part_is_whole(dance, tmp_path, monkeypatch):
    """Pressed in the middle of the writing: answered, and the part is kept."""
    work, plain, told = work_of(pair(dance, 2.2)), drift_runs.write_text, []

    def pressed(path, text):
        signal.raise_signal(signal.SIGINT)
        plain(path, text)

    monkeypatch.setattr(drift_runs, "write_text", pressed)
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        with pytest.raises(KeyboardInterrupt):
            danced(work, Trials(runs=5, folder=tmp_path))
        assert signal.getsignal(signal.SIGINT) is signal.default_int_handler
    finally:
        signal.signal(signal.SIGINT, before)
    danced(work, Trials(runs=5, folder=tmp_path), progress=told.append)

    assert told == [1.0]


def test_what_a_kill_left_half_written_is_taken_away(dance, tmp_path):
    work = work_of(pair(dance, 2.2))
    right = danced(work, Trials(runs=5, folder=tmp_path))
    (kept,) = tmp_path.rglob("*.json")
    left = kept.with_name(".partial-0123.json")
    kept.rename(left)

    assert danced(work, Trials(runs=5, folder=tmp_path)) == right
    assert not left.exists()
    assert kept.exists()


def test_more_runs_use_those_that_are_there(dance, tmp_path):
    work = work_of(pair(dance, 2.2))
    first = danced(work, Trials(runs=20, folder=tmp_path))
    told = []
    more = danced(work, Trials(runs=30, folder=tmp_path), progress=told.append)

    assert more[:20] == first
    assert told[0] == pytest.approx(20 / 30)
    assert danced(work, Trials(runs=25, folder=tmp_path)) == more[:25]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda work: replace(work, seed=1), "seed"),
        (lambda work: replace(work, required=0.4), "required"),
        (lambda work: replace(work, spread=Spread(place=0.2)), "spread"),
        (lambda work: replace(work, own={"Ada": Spread(place=0.2)}), "a performer's own spread"),
        (lambda work: replace(work, edges=((0.0, 4.0, 8.0),)), "scenes"),
        (lambda work: replace(work, span=(0.0, 9.0)), "span"),
        (lambda work: replace(work, dancers=work.dancers[::-1]), "cast"),
    ],
)
def test_runs_of_another_show_are_not_taken(dance, tmp_path, change, says):
    work = work_of(pair(dance, 2.2))
    danced(work, Trials(runs=5, folder=tmp_path))
    other, told = change(work), []
    found = danced(other, Trials(runs=5, folder=tmp_path), progress=told.append)

    assert told[0] == 0.0, says
    assert found == danced(other, Trials(runs=5))


def spoilt(text):
    held = json.loads(text)
    held["runs"][next(k for k, run in enumerate(held["runs"]) if run)] = []
    return json.dumps(held)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda _text: "",
        lambda text: text[:-20],
        lambda _text: "[]",
        lambda _text: '{"runs": 3}',
        lambda text: text.replace('"key": "', '"key": "0'),
        spoilt,
    ],
)
def test_a_spoilt_part_is_not_trusted(dance, tmp_path, spoil):
    work = work_of(pair(dance, 2.2))
    right = danced(work, Trials(runs=5, folder=tmp_path))
    assert any(right)
    (kept,) = tmp_path.rglob("*.json")
    kept.write_text(spoil(kept.read_text("utf-8")), encoding="utf-8")
    told = []

    assert danced(work, Trials(runs=5, folder=tmp_path), progress=told.append) == right
    assert told[0] == 0.0


def test_a_folder_that_cannot_be_written_is_no_reason_to_fail(dance, tmp_path):
    (tmp_path / "in-the-way").write_text("", encoding="utf-8")
    work = work_of(pair(dance, 2.2))

    assert danced(work, Trials(runs=3, folder=tmp_path / "in-the-way")) == danced(
        work, Trials(runs=3)
    )


def test_findings(dance):
    def dance_it(apart, runs):
        return drift(
            pair(dance, apart),
            TempoMap.steady(120, beats=16),
            Requirements(),
            start=0,
            end=8,
            trials=Trials(runs=runs),
        )

    outcome, table = dance_it(2.2, 20)
    (finding,) = outcome.findings
    assert (finding.code, finding.severity) == ("too-close-as-danced", "warn")
    assert "of 20 runs" in finding.message
    assert "95 % confidence" in finding.message
    assert "with errors half as wide" in finding.message
    assert finding.remedies[0].startswith("rehearse hitting the places first, Ada and Bo alike: ")
    (one,) = table.chances
    assert one.between == finding.who == ("Ada", "Bo")
    assert (one.start, one.end, one.position) == (finding.start, finding.end, finding.position)
    assert one.chance == one.conflicts / 20
    assert one.apart is not None
    assert one.apart > one.worst
    assert sum(one.slices) == one.conflicts
    assert (one.low, one.high) == interval(one.conflicts, 20)
    assert one.low >= CHANCE
    assert (table.pairs, table.clear, table.seed) == (1, 0, 0)
    now, half, twice = table.anything
    assert (now.spread, half.spread, twice.spread) == (1.0, 0.5, 2.0)
    assert now.chance == table.goes_wrong == one.chance
    assert half.chance == one.half < one.chance < one.twice == twice.chance

    outcome, table = dance_it(8, 2)
    assert outcome.findings == table.chances == table.rehearse == ()
    assert table.clear == 1
    assert_allclose(table.clear_high, 1 - 0.025**0.5)


def test_a_finding_needs_the_interval_and_not_one_hit(dance):
    """A chance of 5 % is sure from 4 of 20 on: the least that is compatible with 4 is 5.7 %, with 3 it is 3.2 %."""
    outcome, table = drift(
        pair(dance, 2.45), TempoMap.steady(120, beats=16), Requirements(), start=0, end=4,
        trials=Trials(runs=20),
    )  # fmt: skip
    (one,) = table.chances

    assert 1 <= one.conflicts <= 3
    assert one.low < CHANCE <= one.chance
    assert outcome.findings == ()
    assert interval(3, 20)[0] < CHANCE < interval(4, 20)[0]


def test_whoever_errs_by_their_own_does(dance):
    """Bo's places are a metre off, Ada's as all: 300 draws of each, by the standard error of a standard deviation."""
    own = {"Bo": Spread(place=1.0)}
    work = replace(work_of(pair(dance, 5)), own=own)
    off = np.array(
        [[d.floor.place_at(0.0)[0] for d in drawn_dancers(work, run)] for run in range(300)]
    )
    assert_allclose(off.std(axis=0), (0.15, 1.0), rtol=4 / np.sqrt(600))
    assert work.times(2).own["Bo"].place == 2.0
    assert work.times(2).spread.place == 0.3


def test_marks_that_are_off_for_all(dance):
    """20 cm are left before the post; marks are off by 10 cm: exp(−2²/2) = 13.5 % at most, and 13.0 … 14.1 % drawn."""
    rows = [
        Clearance(between=("Ada", "Flint"), distance=0.7, required=0.5, at=3.0, error=0.0),
        Clearance(between=("Ada", "floor"), distance=0.1, required=0.1, at=3.0, error=0.0),
        Clearance(between=("Bo", "front rows"), distance=8.0, required=7.0, at=3.0, error=0.0),
    ]
    _, table = drift(
        pair(dance, 8), TempoMap.steady(120, beats=16), Requirements(), start=0, end=1,
        erring=Erring(marks=0.1), plan=PlanWords(still=rows), trials=Trials(runs=1),
    )  # fmt: skip
    marks = table.marks
    off = np.random.default_rng(1).normal(size=(100_000, 2)) * 0.1

    assert (marks.between, marks.room) == (("Ada", "Flint"), pytest.approx(0.2))
    assert marks.most == pytest.approx(np.exp(-2))
    assert np.mean(np.hypot(*off.T) >= 0.2) == pytest.approx(marks.most, abs=0.004)
    assert np.mean(off[:, 0] >= 0.2) < marks.most  # a straight line is crossed less often


def test_one_performer_has_nobody_to_come_too_close_to(dance):
    outcome, table = drift([dance.dancer()], TempoMap.steady(120), Requirements(), start=0, end=8)

    assert outcome.findings == table.chances == ()
    assert table.pairs == 0


@pytest.mark.parametrize("kind", ERROR_KINDS)
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
        drifted(ada, spread, np.random.default_rng(3), 4.0).floor.strays[0][:2]
        for spread in (Spread(), Spread().only("place"))
    ]

    assert place[0] == place[1]


def test_drawings_are_normal_and_independent(dance):
    """Mean 0, the standard deviation stated, and no correlation of one performer's with another's."""
    work = work_of(pair(dance, 5), spread=Spread(place=0.2))
    off = np.array(
        [[d.floor.place_at(0.0) for d in drawn_dancers(work, run)] for run in range(600)]
    ) - np.array([d.floor.place for d in work.dancers])
    off = off.reshape(600, 4)

    assert_allclose(off.mean(axis=0), 0, atol=4 * 0.2 / np.sqrt(600))
    assert_allclose(off.std(axis=0), 0.2, rtol=4 / np.sqrt(1200))
    for i, j in itertools.combinations(range(4), 2):
        assert abs(np.corrcoef(off[:, i], off[:, j])[0, 1]) < 4 / np.sqrt(600)


@pytest.mark.parametrize("given", [{"place": -1}, {"hand": float("nan")}, {"tempo": 0.2}])
def test_absurd_spreads_are_refused(given):
    with pytest.raises(ValueError, match=next(iter(given))):
        Spread(**given)


@pytest.mark.parametrize("given", [{"runs": 0}, {"seed": -1}])
def test_absurd_trials_are_refused(given):
    with pytest.raises(ValueError, match=next(iter(given))):
        Trials(**given)
