from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.distances.boundaries import audience_distance, ceiling_needed
from sequencer.checks.distances.keeping_clear import clearance
from sequencer.checks.distances.requirements import Requirements
from sequencer.checks.outcome import direction_words
from sequencer.geometry.bodies import Body
from sequencer.geometry.regions import (
    AudienceEdge,
    Ceiling,
    Post,
    Region,
    Scenery,
    Venue,
    rectangle,
)
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.walks import Move
from sequencer.timing.tempo import TempoMap

STAGE = rectangle(40, 40)
AUDIENCE = AudienceEdge(line=((-20, -12), (20, -12)))
CLEAN = Venue(stage=STAGE, audience=(AUDIENCE,))


def checked(cast, venue=CLEAN, *, requirements=None, tempo=None, end=32.0):
    return clearance(
        cast,
        tempo or TempoMap.steady(120, beats=64),
        venue,
        requirements or Requirements(),
        start=0.0,
        end=end,
    )


def codes(outcome):
    return sorted({finding.code for finding in outcome.findings})


def test_a_roomy_show_has_no_finding(dance):
    cast = [dance.dancer("Ada", (-3, 8)), dance.dancer("Bo", (3, 8))]
    outcome = checked(cast)

    assert codes(outcome) == []
    between = {row.between for row in outcome.clearances}
    assert ("Ada", "Bo") in between
    assert ("Ada", "audience") in between
    assert all(row.distance >= row.required for row in outcome.clearances)
    assert any("drift" in sentence for sentence in outcome.not_checked)
    assert any("No crew posts" in sentence for sentence in outcome.not_checked)


def test_passing_too_close_is_told_and_mended(dance):
    ada = dance.dancer("Ada", (-4, 8), moves=(Move(start=8, end=16, place=(4, 8), facing=0),))
    bo = dance.dancer("Bo", (0, 9.2))
    tempo = TempoMap.steady(120, beats=64, start=1.0)
    outcome = checked([ada, bo], tempo=tempo)

    (finding,) = outcome.findings
    assert (finding.code, finding.severity, finding.who) == ("too-close", "stop", ("Ada", "Bo"))
    assert 1.0 + 8 / 2 < finding.start < finding.end < 1.0 + 16 / 2
    assert finding.position.startswith(("3.", "4."))
    assert "0.30 m is required" in finding.message
    (case,) = outcome.mendable
    assert case.finding is finding
    assert (case.subject.first, case.subject.second) == (0, 1)
    assert -2 < finding.where[0] < 2


@pytest.mark.parametrize(
    ("venue", "code"),
    [
        (
            Venue(audience=(AudienceEdge(line=((-20, 3), (20, 3))),)),
            "audience-too-close",
        ),
        (Venue(stage=rectangle(6, 8.2)), "off-stage"),
        (
            Venue(
                scenery=(Scenery(name="flat", region=Region(((1, 8), (2, 8), (2, 9))), height=2),)
            ),
            "scenery-too-close",
        ),
        (Venue(ceilings=(Ceiling(height=2.4),)), "ceiling-too-low"),
        (Venue(ceilings=(Ceiling(height=3.7),)), "ceiling-too-low"),
        (
            Venue(ceilings=(Ceiling(height=2.4, region=Region(((1, 7), (2, 7), (2, 9), (1, 9)))),)),
            "ceiling-too-low",
        ),
        (Venue(posts=(Post(name="north", at=(1.0, 8.0)),)), "post-in-reach"),
    ],
)
def test_each_thing_that_stands_still_is_found(dance, venue, code):
    outcome = checked([dance.dancer("Ada", (0, 8))], venue)

    assert codes(outcome) == [code]
    for finding in outcome.findings:
        assert finding.severity == "stop"
        assert finding.remedies
        assert finding.source


def test_a_low_hand_hits_the_floor(dance):
    ada = dance.dancer("Ada", (0, 8), tether=0.9, hand_radius=0.5)
    outcome = checked([ada])

    assert codes(outcome) == ["hits-floor"]
    assert outcome.findings[0].severity == "warn"


def on_the_floor(ada, deviation):
    work = dict.fromkeys(("left", "right"), (HandDeviation(-1.0, 70.0, deviation),))
    (finding,) = checked([replace(ada, deviation=work) if deviation else ada]).findings
    assert finding.code == "hits-floor"
    return finding.message, " / ".join(finding.remedies)


def test_hand_work_is_named_where_it_alone_brings_a_wick_to_the_floor(dance):
    """At 1.45 m a tether of 0.60 m hangs 26 mm into the floor; nobody is told to shorten it by more."""
    ada = dance.dancer("Ada", (0, 8), tether=0.6, stature=1.45, hand_radius=0.1)
    message, mends = on_the_floor(ada, 0.9)

    assert "reaches 3 cm into the floor" in message
    assert "taken off for hand work, down to a straight arm" in message
    assert "hand stays nearer to its drawn path" in mends
    assert "use a tether of at most 0.57 m" in mends
    shorter = dance.dancer("Ada", (0, 8), tether=0.57, stature=1.45, hand_radius=0.1)
    work = dict.fromkeys(("left", "right"), (HandDeviation(-1.0, 70.0, 0.9),))
    assert codes(checked([replace(shorter, deviation=work)])) == []


def test_a_drawing_on_the_floor_is_told_without_hand_work(dance):
    ada = dance.dancer("Ada", (0, 8), tether=0.9, hand_radius=0.5, sides=("right",))
    message, mends = on_the_floor(ada, 0.0)
    lowest = float(ada.stage_points(np.linspace(0, 16, 4001))[0][7, :, 2].min()) - 0.05

    assert lowest == pytest.approx(-0.0554, abs=1e-3)
    assert "reaches 6 cm into the floor" in message or "reaches 5 cm into" in message  # to 5 mm
    assert "hand work" not in message + mends
    assert "raise the hand by 0.10 m (up)" in mends
    assert "use a tether of at most 0.84 m" in mends or "at most 0.85 m" in mends


def test_no_prop_is_to_be_shortened_by_more_than_it_has(dance):
    """The whole path lies under the floor: only the hand can mend it, and it is out of reach besides."""
    ada, given = dance.dancer("Ada", (0, 8), tether=0.3), {"hand_radius": 0.3, "up": -1.0}
    trajectories = {
        side: dance.trajectory_of("orbit", given, side=side, body=ada.body) for side in ada.props
    }
    _, mends = on_the_floor(replace(ada, trajectories=trajectories), 0.0)
    assert "within the arm's reach first" in mends
    assert "tether" not in mends


def test_scenery_that_does_not_burn_may_stand_nearer(dance):
    region = Region(((3.5, 8), (4.5, 8), (4.5, 9)))
    for combustible, expected in ((True, ["scenery-too-close"]), (False, [])):
        piece = Scenery(name="rock", region=region, height=2, combustible=combustible)
        outcome = checked([dance.dancer("Ada", (0, 8))], Venue(stage=STAGE, scenery=(piece,)))
        assert codes(outcome) == expected


def test_each_finding_on_a_still_thing_names_it_beside_the_words(dance):
    """Planning compares findings by thing, so two pieces of scenery must not count as one."""
    pieces = tuple(
        Scenery(name=name, region=Region(((x, 7), (x + 0.5, 7), (x + 0.5, 9), (x, 9))), height=2)
        for name, x in (("left flat", -0.9), ("right flat", 0.4))
    )
    venue = Venue(stage=STAGE, scenery=pieces, ceilings=(Ceiling(name="beam", height=2.5),))
    outcome = checked([dance.dancer("Ada", (0, 8))], venue)

    things = dict(outcome.things)
    assert {"left flat", "right flat", "beam"} <= set(things.values())
    assert set(things) == set(outcome.findings)
    assert all(thing in finding.message for finding, thing in things.items())


def test_a_walk_through_scenery_is_found(dance):
    piece = Scenery(
        name="rock", region=Region(((-0.5, 5), (0.5, 5), (0, 6))), height=1, combustible=False
    )
    ada = dance.dancer(
        "Ada", (0, 2), moves=(Move(start=4, end=12, place=(0, 9), facing=0),), sides=(), lit=()
    )
    outcome = checked([ada], Venue(stage=STAGE, scenery=(piece,)))

    assert codes(outcome) == ["scenery-too-close"]
    assert "body reaches" in outcome.findings[0].message


def test_a_ceiling_elsewhere_is_no_matter(dance):
    ceiling = Ceiling(height=2.4, region=Region(((10, 7), (12, 7), (12, 9), (10, 9))))

    assert codes(checked([dance.dancer("Ada", (0, 8))], Venue(ceilings=(ceiling,)))) == []


def test_two_lit_at_once_need_more(dance):
    rules = Requirements()
    apart = [dance.dancer("Ada", lit=((0, 8),)), dance.dancer("Bo", lit=((9, 16),))]
    together = [dance.dancer("Ada", lit=((0, 8),)), dance.dancer("Bo", lit=((7, 16),))]

    assert_allclose(audience_distance(apart, rules), 6.096)
    assert_allclose(audience_distance(together, rules), 7.62)
    assert_allclose(audience_distance([dance.dancer(lit=())], rules), 6.096)


def test_verdicts_do_not_depend_on_the_tempo(dance):
    cast = dance.random_cast(3, seed=5)
    slow, fast = (checked(cast, tempo=TempoMap.steady(t, beats=64)) for t in (60, 180))

    assert [f.position for f in slow.findings] == [f.position for f in fast.findings]
    assert [f.code for f in slow.findings] == [f.code for f in fast.findings]
    assert_allclose([c.distance for c in slow.clearances], [c.distance for c in fast.clearances])
    assert_allclose([c.at for c in slow.clearances], [3 * c.at for c in fast.clearances])


def test_a_changing_tempo_gives_true_seconds(dance):
    times = np.concatenate([np.arange(0, 8), 8 + 0.4 * np.arange(0, 30)])
    ada = dance.dancer("Ada", (-4, 8), moves=(Move(start=4, end=12, place=(4, 8), facing=0),))
    bo = dance.dancer("Bo", (0, 9.2))
    (finding,) = checked([ada, bo], tempo=TempoMap(times)).findings
    beat = np.interp(finding.start, times, np.arange(len(times)))
    found = approaches([ada, bo], 0, 32, required=0.3)

    assert_allclose(beat, found.spans.start[0], atol=1e-9)


def test_casts_of_none_and_one(dance):
    assert checked([]).findings == ()
    assert "No performer" in checked([]).not_checked[0]
    alone = checked([dance.dancer("Ada", (0, 8))])
    assert "One performer only" in alone.not_checked[0]


def test_equal_names_are_refused(dance):
    with pytest.raises(ValueError, match="must differ"):
        checked([dance.dancer("Ada"), dance.dancer("Ada")])


@pytest.mark.parametrize("value", [-1.0, float("nan"), 1e6])
def test_absurd_requirements_are_refused(value):
    with pytest.raises(ValueError, match="audience"):
        Requirements(audience=value)


def test_sources_come_from_the_caller_first():
    rules = Requirements(sources={"audience": "By-law 12"})

    assert rules.source("audience") == "By-law 12"
    assert "Grants Pass" in rules.source("combustible")


def test_a_performer_without_props_needs_the_least_ceiling(dance):
    assert_allclose(ceiling_needed(dance.dancer(sides=()), Requirements()), 3.6576)


@pytest.mark.parametrize(
    ("by", "words"),
    [
        ((0.0, 0.3), "0.30 m upstage"),
        ((-0.25, -0.1), "0.10 m downstage and 0.25 m to the audience's left"),
        ((0.5, 0.001), "0.50 m to the audience's right"),
        ((0.0, 0.0), "not at all"),
    ],
)
def test_directions_in_words(by, words):
    assert direction_words(by) == words


def test_hand_work_is_in_the_distances_and_said(dance):
    """By how much each hand may be off its path is taken off a distance, and the finding says so."""
    bare = [dance.dancer("Ada", (-1.15, 8)), dance.dancer("Bo", (1.15, 8))]
    both = ("left", "right")
    cast = [
        replace(each, deviation=dict.fromkeys(both, (HandDeviation(0.0, 40.0, 0.18),)))
        for each in bare
    ]
    plain, wider = checked(bare), checked(cast)
    (one,) = [row for row in plain.clearances if row.between == ("Ada", "Bo")]
    (two,) = [row for row in wider.clearances if row.between == ("Ada", "Bo")]
    assert one.distance - two.distance == pytest.approx(0.36, abs=0.02)
    finding = next(f for f in wider.findings if f.code == "too-close")
    assert "(36 cm taken off for hand work)" in finding.message
    assert any("hand work (up to 18 cm a hand)" in sentence for sentence in wider.not_checked)
    assert not any("hand work" in sentence for sentence in plain.not_checked)
    # an arm is as long as it is: the audience's distance stays
    for who in ("Ada", "Bo"):
        found = [
            next(row.distance for row in each.clearances if row.between == (who, "audience"))
            for each in (plain, wider)
        ]
        assert found[0] == found[1]


def test_one_who_stands_off_the_stage_is_not_told_a_length_that_would_not_do(dance):
    """In the middle of a hole the distance is 0, but half a metre more is needed than that says."""
    hole = ((-1.0, 7.5), (1.0, 7.5), (1.0, 8.5), (-1.0, 8.5))
    stage = Region(((-4.0, 4.0), (4.0, 4.0), (4.0, 12.0), (-4.0, 12.0)), (hole,))
    (finding,) = checked([dance.dancer("Ada", (0, 8))], Venue(stage=stage)).findings

    assert finding.code == "off-stage"
    assert "goes beyond the edge of the stage" in finding.message
    assert finding.remedies == (
        "move the place or the walk onto the stage, 0.30 m in from its edge",
    )
    (near,) = checked([dance.dancer("Ada", (0, 11.9))], Venue(stage=stage)).findings
    assert near.remedies == ("move the place or the walk 0.20 m towards the stage",)


def test_a_wheelchair_stands_on_the_stage_whole(dance):
    """By as much as its column is wider than shoulders, it stays farther from the edge."""
    stage = Region(((-4.0, 4.0), (4.0, 4.0), (4.0, 12.0), (-4.0, 12.0)))
    body = Body(stature=1.7, seated=True)
    needed = 0.30 + body.girth - body.half_breadth

    def told(y):
        ada = replace(dance.dancer("Ada", (0, y)), body=body, carriage=None)
        return [f for f in checked([ada], Venue(stage=stage)).findings if f.code == "off-stage"]

    assert 0.70 < needed < 0.80
    assert told(12 - needed - 0.01) == []
    (near,) = told(12 - needed + 0.10)
    assert f"{needed:.2f} m is required" in near.message
    assert near.remedies == ("move the place or the walk 0.10 m towards the stage",)
    (beyond,) = told(12.5)
    assert f"{needed:.2f} m in from its edge" in beyond.remedies[0]
