import itertools
import json
import signal
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.distances import drift_runs
from sequencer.checks.distances.drift import as_danced, drift, gathered, interval
from sequencer.checks.distances.drift_runs import (
    RunConflict,
    Trials,
    Work,
    danced,
    drawn_dancers,
    one_run,
)
from sequencer.checks.distances.requirements import Requirements
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
    return as_danced(work, Trials(runs=runs, seed=seed, **how), progress=progress)


def test_no_errors_dance_the_plan(dance):
    told = []
    clear, tight = (
        chances(pair(dance, apart), spread=STILL, runs=3, progress=told.append)
        for apart in (5.0, 1.6)
    )

    assert clear == ()
    assert told == [0.0, 0.9, 0.0, 0.9, 1.0]  # what is left tells conflicts apart, if there are any
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


def test_what_matters_is_told(dance):
    """One kind of error, and one performer's, are made large: each must be named."""
    small = {"facing": 0.001, "timing": 0.001, "tempo": 0, "tether": 0.001, "hand": 0.001}
    (one,) = chances(pair(dance, 2.2), spread=Spread(place=0.4, **small))
    assert one.matters == "place"
    assert one.who in {"Ada", "Bo"}

    (one,) = chances(pair(dance, 2.2), spread=Spread(**{**small, "place": 0.001, "hand": 0.3}))
    assert one.matters == "hand"


def test_two_places_of_a_show_are_two_conflicts(dance):
    """They meet at beats 4 to 8 and again at 28 to 32, and stand far apart between."""
    moves = [
        Move(start=start, end=start + 4, place=(x, 5), facing=0)
        for start, x in ((2, 1.2), (8, 8.0), (26, 1.2), (32, 8.0))
    ]
    cast = [dance.dancer("Ada", (0, 5)), dance.dancer("Bo", (8, 5), moves=moves)]
    runs = danced(work_of(cast, end=40.0), Trials(runs=4))
    found = sorted(gathered(cast, runs), key=lambda one: one.start)

    assert [one.conflicts for one in found] == [4, 4]
    assert 2 < found[0].start < found[0].end < 12
    assert 26 < found[1].start < found[1].end < 36
    assert all(one.worst < 0.3 for one in found)


def test_one_run_counts_once_at_a_place(dance):
    """Two approaches of one run close together are one conflict; another run at the same place adds one."""
    cast = pair(dance, 5)
    runs = [
        (RunConflict(0, 4.0, 5.0, 0.2), RunConflict(0, 6.0, 7.0, 0.1)),
        (RunConflict(0, 5.5, 5.6, 0.25),),
        (RunConflict(0, 30.0, 31.0, 0.0),),
        (),
    ]
    early, late = gathered(cast, runs)

    assert (early.conflicts, early.runs, early.start, early.end) == (2, 4, 4.0, 7.0)
    assert (early.worst, late.conflicts, late.worst) == (0.1, 1, 0.0)


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

    outcome, table = dance_it(2.3, 20)
    (finding,) = outcome.findings
    assert (finding.code, finding.severity) == ("too-close-as-danced", "warn")
    assert "of 20 runs" in finding.message
    assert "95 % confidence" in finding.message
    assert "rehearse" in finding.remedies[1]
    (one,) = table.chances
    assert one.between == finding.who == ("Ada", "Bo")
    assert (one.start, one.end, one.position) == (finding.start, finding.end, finding.position)
    assert one.chance == one.conflicts / 20
    assert (table.pairs, table.clear, table.seed) == (1, 0, 0)

    outcome, table = dance_it(8, 2)
    assert outcome.findings == table.chances == ()
    assert table.clear == 1
    assert_allclose(table.clear_high, 1 - 0.025**0.5)


def test_one_performer_has_nobody_to_come_too_close_to(dance):
    outcome, table = drift([dance.dancer()], TempoMap.steady(120), Requirements(), start=0, end=8)

    assert outcome.findings == table.chances == ()
    assert table.pairs == 0


def test_the_interval_is_the_printed_one():
    """Clopper–Pearson at 95 %: 0 of 10 gives 0 to 0.3085 (1 − 0.025^(1/10)); 5 of 10 gives 0.187 to 0.813."""
    assert_allclose(interval(0, 10), (0.0, 1 - 0.025**0.1), atol=1e-12)
    assert_allclose(interval(10, 10), (0.025**0.1, 1.0), atol=1e-12)
    assert_allclose(interval(5, 10), (0.1871, 0.8129), atol=1e-4)


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


def test_one_performer_alone_can_drift(dance):
    work = work_of(pair(dance, 1.9))
    drawn = drawn_dancers(work, 0, only="Ada")

    assert drawn[1] is work.dancers[1]
    assert drawn[0].floor != work.dancers[0].floor
    assert one_run(work, 0) != one_run(work, 0, only="Ada")


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
