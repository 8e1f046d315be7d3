"""Parameters that fit: proven clear by the checks' own measures, the performer's word kept, nothing by chance."""

import json
from dataclasses import replace
from math import inf

import numpy as np
import pytest

from sequencer import kept
from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture
from sequencer.motion.fitting import kept_fits, sampled_dance, search
from sequencer.motion.fitting.fits import GOOD, LEAST_MARGIN, REACH_SPARE, Dance, Fit, Margins
from sequencer.motion.fitting.pacing import twist
from sequencer.motion.fitting.sampled_dance import Placing, SampledDance
from sequencer.motion.fitting.search import fitted, searched
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.patterns.library import cycle_beats, patterns
from sequencer.motion.performers.feasibility import body_gap, props_gap, reach_left
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from tests.repeated import at_length


@pytest.fixture(autouse=True)
def nothing_kept(monkeypatch, tmp_path):
    monkeypatch.setattr(kept_fits, "folder", lambda: tmp_path / "fits")
    monkeypatch.setattr(search, "_KEPT", {})
    monkeypatch.setattr(kept, "_RECENT", {})


def poi(length):
    return Prop(length=length, mass=0.2, wick_radius=0.05)


def dance(name, *, stature=1.7, tether=0.5, given=None, sides=SIDES, **more):
    return Dance(
        parts={side: (name, given or {}) for side in sides},
        cycle=cycle_beats(name, given or {}),
        tempo=(100.0, 100.0),
        body=Body(stature=stature),
        props=dict.fromkeys(sides, poi(tether)),
        **more,
    )


def proven(asked, fit):
    """Gap from the own body, between the props, and the arm left, by the checks' branch and bound."""
    laws = asked.laws(fit.values)
    span = 2 * max(law.period for law in laws.values())
    trajectories = {
        side: Trajectory(
            (Span(start=0.0, end=span, law=law, origin=0.0, kind="block", label="it"),)
        )
        for side, law in laws.items()
    }
    carriage = Carriage(body=asked.body, held=(HeldPosture(-1.0, span + 1.0, fit.posture),))
    own = min(
        body_gap(c, [0, span], prop=asked.props[s], body=asked.body, near=inf, carriage=carriage)[
            0
        ].value
        for s, c in trajectories.items()
    )
    reach = min(
        reach_left(c, [0, span], side=s, body=asked.body, carriage=carriage)[0].value
        for s, c in trajectories.items()
    )
    fatter = {s: replace(p, wick_radius=p.wick_radius + 0.01) for s, p in asked.props.items()}
    pairs = [(trajectories[s], fatter[s]) for s in SIDES if s in trajectories]
    other = props_gap(*pairs, [0, span])[0].value if len(pairs) == 2 else inf
    return own, other, reach


def test_what_is_clear_as_it_usually_lies_stays():
    fit = fitted(dance("extension"))

    assert fit.values == {}
    assert fit.posture == UPRIGHT
    assert fit.margins.least >= GOOD


@pytest.mark.parametrize("stature", [1.45, *at_length(1.70, 2.00)])
@pytest.mark.parametrize(
    "name", ["iso-bend-3", "pro-bend-4", "pro-bend-5", "anti-bend-3", "buzzsaw"]
)
def test_toroids_are_proven_clear_of_body_and_each_other(name, stature):
    asked = dance(name, stature=stature, tether=0.45)
    fit = fitted(asked)
    own, other, reach = proven(asked, fit)

    assert fit.fits
    assert own >= 0.02
    assert other > -0.005
    assert reach >= 0.0


def apart(asked, fit, count=20_000):
    """Smallest gaps of poi from the body and from each other, by formulas of its own at many moments [m]."""
    laws, prop = asked.laws(fit.values), asked.props["right"]
    beats = np.linspace(0, max(law.period for law in laws.values()), count, endpoint=False)
    tethers = [
        (motion.hand, motion.hand + prop.length * motion.tether)
        for motion in (laws[side].at(beats) for side in SIDES)
    ]

    def balls(points, ends, radius):
        """From a point to a segment at each moment, radii taken off."""
        low, high = ends
        way = high - low
        share = np.einsum("...i,...i", points - low, way) / np.einsum("...i,...i", way, way)
        foot = low + np.clip(share, 0, 1)[..., None] * way
        return float(np.linalg.norm(points - foot, axis=-1).min()) - radius

    wick, thin = prop.wick_radius, prop.shaft_radius
    other = np.inf
    for mine, its in (tethers, tethers[::-1]):
        other = min(other, float(np.linalg.norm(mine[1] - its[1], axis=-1).min()) - 2 * wick)
        other = min(other, balls(mine[1], its, wick + thin))
        for share in np.linspace(0, 1, 13):
            other = min(other, balls(mine[0] + share * (mine[1] - mine[0]), its, 2 * thin))
    own = np.inf
    for capsule in PosedBody(asked.body, fit.posture).capsules:
        ends = np.array(capsule.start), np.array(capsule.end)
        for low, high in tethers:
            own = min(own, balls(high, ends, wick + capsule.radius))
            for share in np.linspace(0, 1, 13):
                own = min(own, balls(low + share * (high - low), ends, thin + capsule.radius))
    return own, other


@pytest.mark.parametrize(
    ("name", "stature", "tether"),
    [
        ("anti-bend-4", 1.85, 0.55),
        ("pro-bend-3", 1.95, 0.58),
        *at_length(
            ("pro-bend-4", 1.95, 0.58), ("anti-bend-4", 1.45, 0.45), ("iso-bend-3", 1.70, 0.50)
        ),
    ],
)
def test_what_fits_keeps_its_two_centimetres_between_the_looks_too(name, stature, tether):
    """Props that pass each other fast may meet between two looks."""
    asked = dance(name, stature=stature, tether=tether)
    fit = searched(asked)
    own, other = apart(asked, fit)

    assert fit.fits
    assert own >= 0.02
    assert other >= 0.02


def test_a_hand_is_not_asked_to_twist_more_than_it_can():
    """A club swung slowly about the hand's own circle: a narrower one takes less of the wrist."""
    club = Prop(kind="club", length=0.6, behind=0.1, mass=0.5, head_mass=0.1, wick_radius=0.04)
    wide = replace(dance("slow-inspin", sides=("right",)), props={"right": club})
    asked = replace(wide, torque=4.0)

    def needed(fit):
        law = asked.laws(fit.values)["right"]
        return twist(law.at(np.linspace(0, law.period, 512)), club, 100 / 60)

    assert 4.0 < needed(searched(wide)) < wide.torque
    assert needed(searched(asked)) <= 4.0


@pytest.mark.parametrize(("gain", "taken"), [(0.0005, 0), (0.0015, 1)])
def test_a_less_usual_shape_is_taken_only_where_it_gains_a_millimetre(monkeypatch, gain, taken):
    class Shaped:
        pull, heavy = inf, False

        def __init__(self, _dance, shape):
            self.rank = shape["right"]["from"]

        def placed(self):
            least = 0.03 + gain * self.rank
            return Placing({}, UPRIGHT, Margins(least, inf, 0.3, inf))

        def score(self, place):
            return place.margins.least

        def fit(self, place):
            return Fit(values={"right": {"from": self.rank}}, margins=place.margins)

    monkeypatch.setattr(search, "SampledDance", Shaped)
    monkeypatch.setattr(search, "best_place", Shaped.placed)
    monkeypatch.setattr(
        search, "_shapes", lambda _dance: ({"right": {"from": k}} for k in range(2))
    )

    assert searched(dance("pro-bend-4")).values["right"]["from"] == taken


def test_of_two_places_the_one_that_is_safe_and_low_wins():
    """A centimetre that lacks of what is sure outweighs a longer way; arms tire of being held high."""
    looks = SampledDance(dance("pro-bend-4"), {})

    def scored(least, **move):
        way = np.array([move.get(name, 0.0) for name in ("out", "ahead", "up")])
        return looks.score(
            Placing(dict.fromkeys(SIDES, way), UPRIGHT, Margins(least, inf, 0.3, inf))
        )

    assert scored(0.03, ahead=0.25) > scored(0.02)
    assert scored(0.05) > scored(0.04) > scored(0.05, ahead=0.25)
    assert scored(0.05, up=0.1) < scored(0.05, ahead=0.1) == scored(0.05, out=0.1)


def test_margins_are_what_is_proven():
    """Of a few looks a beat, so never less than proven by more than a look's error."""
    asked = dance("pro-bend-4", stature=1.6)
    fit = fitted(asked)
    own, _, reach = proven(asked, fit)

    assert own - 0.006 <= fit.margins.body <= own + 0.012
    assert reach >= 0.0
    assert fit.margins.reach >= REACH_SPARE


def test_what_the_performer_sets_stays():
    given = {"hand_radius": "12 cm", "up": 0.05, "from": -90}
    fit = fitted(dance("pro-bend-4", given=given))

    for values in fit.values.values():
        assert not set(values) & set(given)


def test_a_place_that_is_set_is_not_moved():
    given = {"across": 0, "ahead": 0, "up": 0, "hand_radius": 0.2, "from": -90}
    fit = fitted(dance("pro-bend-4", given=given))

    assert fit.values == {}
    assert not fit.fits


def test_every_open_move_is_used_alike_by_hands_that_mirror():
    fit = fitted(dance("pro-bend-4", direction="opposite", timing="together"))

    assert fit.fits
    assert fit.margins.other >= LEAST_MARGIN


def test_one_hand_alone():
    asked = dance("pro-bend-4", sides=("right",))
    fit = fitted(asked)

    assert set(fit.values) <= {"right"}
    assert proven(asked, fit)[0] >= 0.02


def test_a_slack_pattern_takes_a_narrower_circle():
    """A slow inspin of half a turn a hand turn: R·ω² must stay under r·ω²/4 and gravity."""
    asked = replace(dance("slow-inspin"), cycle=0.5)
    fit = fitted(asked)

    assert fit.margins.pull > 0
    assert fit.values["right"]["hand_radius"] <= 0.1


def test_the_body_gives_way_only_where_that_helps():
    upright = [
        fitted(dance(name)).posture for name in ("extension", "two-beat-weave", "pro-bend-4")
    ]

    assert upright == [UPRIGHT] * 3


def test_a_posture_is_tried_where_no_place_will_do(monkeypatch):
    """With the trunk leant back the chest gives room to a circle that may not be moved."""
    given = {"across": 0.16, "up": 0, "hand_radius": 0.15, "from": -90}
    asked = dance("pro-bend-4", given=given, stature=1.6, tether=0.55)
    best = searched(asked)
    monkeypatch.setattr(sampled_dance, "_postures", lambda _body: ())
    without = searched(asked)

    assert best.margins.least >= without.margins.least


@pytest.mark.parametrize("name", ["pro-bend-4", "buzzsaw"])
def test_places_agree_with_laws_built_with_the_values(name):
    """A move of the centre moves hand and prop as one: the law with the values set gives the same margins.

    A buzzsaw lies across the body as it is, which a move is added to.
    """
    asked = dance(name, stature=1.55)
    fit = fitted(asked)
    assert all("across" in fit.values[side] for side in SIDES)
    moved = {s: dict(fit.values[s]) for s in SIDES}
    built = replace(
        asked, parts={s: (name, {**given, **moved[s]}) for s, (name, given) in asked.parts.items()}
    )
    looks = SampledDance(built, {})
    (place,) = looks.places([{s: np.zeros(3) for s in SIDES}], [fit.posture])

    assert place.margins == pytest.approx(fit.margins, abs=1e-4)


def test_mirrored_postures_mirror():
    posture = Posture(turn=0.2, lean=-0.1, side=0.05, nod=0.1, tilt=-0.2)
    assert posture.mirrored().mirrored() == posture
    assert posture.mirrored().turn == -0.2


def test_the_same_question_has_the_same_answer():
    asked = dance("anti-bend-3", stature=1.6)

    assert searched(asked) == searched(asked)


def test_near_tempi_have_one_answer_whichever_was_asked_first(monkeypatch):
    """At 86.7 beats a minute this tether is just not taut enough, at 86.8 it is."""
    slow, quick = (
        replace(dance("buzzsaw"), cycle=2.0, tempo=(tempo, tempo)) for tempo in (86.68, 86.78)
    )
    assert searched(slow) != searched(quick)
    answers = []
    for first in (slow, quick):
        monkeypatch.setattr(search, "_KEPT", {})
        monkeypatch.setattr(kept, "_RECENT", {})
        monkeypatch.setattr(kept_fits, "load", lambda _question: None)
        answers.append(fitted(first))
    assert answers[0] == answers[1]


def test_questions_differ_by_everything_that_matters():
    base = dance("pro-bend-3")
    others = [
        replace(base, timing="together"),
        replace(base, direction="opposite"),
        replace(base, cycle=4.0),
        replace(base, tempo=(90.0, 100.0)),
        replace(base, body=Body(stature=1.71)),
        replace(base, body=Body(stature=1.7, arm=0.7)),
        replace(base, props={**base.props, "left": poi(0.51)}),
        dance("pro-bend-3", given={"start": -1}),
        dance("pro-bend-4"),
        dance("pro-bend-3", sides=("right",)),
    ]
    questions = {each.question for each in (base, *others)}

    assert len(questions) == 1 + len(others)
    flame = replace(base, props={s: replace(p, flame_reach=0.3) for s, p in base.props.items()})
    assert flame.question == base.question  # a flame moves no hand


def test_a_fit_is_kept_on_disk_and_trusted_only_whole(monkeypatch):
    asked = dance("pro-bend-3", stature=1.62)
    fit = fitted(asked)
    (entry,) = kept_fits.folder().glob("*.json")
    whole = entry.read_text()

    assert kept_fits.load(asked.question) == fit
    for broken in (whole[:-7], whole.replace("0.", "1.", 1), "{}", "[]", "\x00"):
        entry.write_text(broken)
        assert kept_fits.load(asked.question) is None
    monkeypatch.setattr(search, "_KEPT", {})
    monkeypatch.setattr(kept, "_RECENT", {})
    assert fitted(asked) == fit  # searched afresh, and written whole again
    assert json.loads(entry.read_text())["question"] == asked.question


def test_other_formulas_search_anew(monkeypatch):
    asked = dance("extension")
    kept_fits.store(asked.question, Fit())
    assert kept_fits.load(asked.question) is not None

    monkeypatch.setattr(kept_fits, "formulas", lambda: "others")
    assert kept_fits.load(asked.question) is None


def test_a_folder_that_cannot_be_written_stops_nothing(monkeypatch, tmp_path):
    blocked = tmp_path / "file"
    blocked.write_text("in the way")
    monkeypatch.setattr(kept_fits, "folder", lambda: blocked / "fits")

    assert fitted(dance("extension")).margins.least >= GOOD


def test_the_folder_stays_small(monkeypatch):
    """It is looked through after each third entry, so it holds two more at most."""
    monkeypatch.setattr(kept_fits, "MOST", 6)
    monkeypatch.setattr(kept_fits, "_PRUNED_EACH", 3)
    for k in range(30):
        kept_fits.store(f"question {k}", Fit())
        assert len(list(kept_fits.folder().glob("*.json"))) <= 8

    assert kept_fits.load("question 29") is not None


def test_infinite_margins_survive_the_disk():
    fit = Fit(margins=Margins(inf, inf, 0.1, inf), posture=Posture(tilt=0.1))
    kept_fits.store("q", fit)

    assert kept_fits.load("q") == fit


def test_a_wrong_pattern_or_parameter_is_refused():
    with pytest.raises(ValueError, match="did you mean"):
        fitted(replace(dance("extension"), parts={"right": ("extensoin", {})}))
    with pytest.raises(ValueError, match="hand_radius"):
        fitted(dance("extension", given={"hand_radius": "3 m"}))


def test_least_counts_reach_only_where_the_arm_ends():
    assert Margins(0.1, 0.2, 0.5, 1.0).least == 0.1
    assert Margins(0.1, 0.05, 0.5, 1.0).least == 0.05
    assert Margins(0.1, 0.2, REACH_SPARE - 0.03, 1.0).least == pytest.approx(-0.03)
    assert Margins(0.1, 0.2, REACH_SPARE + 0.01, 1.0).least == 0.1


def test_the_vocabulary_has_no_pattern_without_a_move():
    for name in patterns():
        assert SampledDance(dance(name), {}).free != [False] * 3, name


def shape_of(fit):
    return {
        side: {k: v for k, v in values.items() if k not in sampled_dance.PLACE_OFFSETS}
        for side, values in fit.values.items()
    }


def test_those_who_dance_together_take_one_shape():
    """Alone they would begin an iso-bend 60° apart; together all begin alike, each where it fits."""
    dances = [
        dance("iso-bend-3", stature=s, tether=t) for s, t in ((1.5, 0.5), (1.7, 0.5), (2.0, 0.55))
    ]
    alone = [shape_of(fitted(each)) for each in dances]
    fits = search.fitted_together(dances)

    assert any(shape != alone[0] for shape in alone)
    assert all(shape_of(fit) == shape_of(fits[0]) for fit in fits)
    assert all(fit.fits for fit in fits)
    for each, fit in zip(dances, fits, strict=True):
        own, _, reach = proven(each, fit)
        assert own >= 0.02
        assert reach >= 0.0


def test_those_who_fit_alike_keep_what_they_have_alone():
    dances = [dance("extension", stature=s) for s in (1.6, 1.7)]

    assert search.fitted_together(dances) == [fitted(each) for each in dances]
