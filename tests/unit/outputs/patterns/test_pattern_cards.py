"""Cards, lists, build steps, drawings and the join chart: what they hold, not how they look."""

import re
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import PosedBody
from sequencer.motion.fitting.search import fitted
from sequencer.motion.fitting.windows import Windows
from sequencer.motion.patterns.build_steps import build_steps
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.props.prop import PROP_KINDS, Prop
from sequencer.motion.trajectories.join_matrix import join_matrix
from sequencer.outputs.figures import write_figure
from sequencer.outputs.patterns import one_pattern as module
from sequencer.outputs.patterns.join_chart import join_chart
from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.patterns.pattern_cards import (
    card_text,
    chosen_patterns,
    joins_text,
    list_text,
    steps_text,
)
from sequencer.outputs.patterns.pattern_drawing import VIEWS, drawn, pattern_figure
from sequencer.outputs.patterns.pattern_records import (
    _figures,
    _reason,
    card_record,
    station_record,
)
from sequencer.outputs.patterns.pattern_steps import steps_pages
from sequencer.show.file_records.prop_records import usual_prop
from tests.repeated import at_length


@pytest.fixture(autouse=True)
def as_drawn(monkeypatch):
    """What is told where the flown motion is not known: figures of the drawing."""
    monkeypatch.setattr(module.OnePattern, "flown", {})


def test_list_filters():
    assert {p.family for p in chosen_patterns(family="weave")} == {"weave"}
    assert all(p.difficulty <= 1 for p in chosen_patterns(hardest=1))
    names = [p.name for p in chosen_patterns(containing="SIDEWAYS figure")]
    assert names == ["infinity"]
    assert "  infinity" in list_text(chosen_patterns(containing="sideways figure"))
    assert list_text([]) == "no pattern matches\n"


def printed(pattern, text):
    found = re.search(pattern, text)
    return float(found[1]) if found else None


@pytest.mark.parametrize("name", sorted(patterns()))
def test_a_card_is_whole_and_true_or_at_most_a_fifth_more(name, monkeypatch):
    """Every figure against its own formula, sampled densely, at a tempo of 100 with a poi of 0.51 m.

    The room that a fit leaves has its own tests, with cards that tell it.
    """
    monkeypatch.setattr(module, "windows_of", lambda dance: Windows(fit=fitted(dance)))
    one = one_pattern(name)
    text = card_text(one)
    assert "as flown: not known" in text
    assert patterns()[name].summary in text
    assert "as the audience sees it" in text
    for parameter in patterns()[name].parameters:
        assert f"  {parameter.name}" in text
    assert "nan" not in text
    assert "inf " not in text

    body, length, mass, rate = Body(stature=1.7), 0.51, 0.2, 100 / 60
    if not one.alike:
        assert text.index("left hand, as you") < text.index("right hand, as you")
    text = text[text.index("right hand, as you") :]
    law = law_for(
        name,
        one.fit.values.get("right", {}),
        side="right",
        body=body,
        tether=length,
        beats=one.cycle,
    )
    motion = law.at(np.linspace(0.0, law.period, 6_001))
    velocity = rate * motion.head_rate(length)
    felt = rate**2 * motion.head_acceleration(length) + np.array([0.0, 0.0, 9.80665])
    away = length * (motion.tether + felt / np.linalg.norm(felt, axis=-1, keepdims=True))
    high = np.maximum(motion.head(length)[:, 2], 0.0)
    flight = (
        np.hypot(velocity[:, 0], velocity[:, 1])
        / 9.80665
        * (velocity[:, 2] + np.sqrt(velocity[:, 2] ** 2 + 2 * 9.80665 * high))
    )
    truths = {
        r"hand up to ([\d.]+) m from": np.linalg.norm(
            motion.hand - PosedBody(body, one.posture).shoulder("right"), axis=-1
        ).max(),
        r"head up to ([\d.]+) m/s": np.linalg.norm(velocity, axis=-1).max(),
        r"pull up to ([\d.]+) N": mass * np.linalg.norm(felt, axis=-1).max(),
        r"flies up to ([\d.]+) m": flight.max(),
    }
    work = np.linalg.norm(away, axis=-1).max()
    assert_allclose(_figures(one, "right")["hand_work_m"], work, rtol=2e-3)  # both are sampled
    hand = rate * np.linalg.norm(motion.hand_rate, axis=-1).max()
    if hand > 0.02:
        truths[r"hand up to ([\d.]+) m/s"] = hand
    else:
        assert "the hand stays still" in text
    for pattern, true in truths.items():
        said = printed(pattern, text)
        assert true * (1 - 1e-6) <= said <= 1.2 * true, pattern
    lift = motion.tether[:, 2]
    outward = length * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
        motion.tether * motion.hand_acceleration, axis=-1
    )
    said = printed(r"stays taut from ([\d.]+) beats", text)
    if lift.max() < 1e-9 and name != "level-stall":  # it stands still where its tether is level
        assert "the tether stays taut at every tempo" in text
    elif said is None:
        assert "no tempo keeps the tether taut" in text
        assert np.any((outward < 0.05) & (lift > -0.01))
    else:
        true = 60 * np.sqrt(np.max(np.where(lift > 0, 9.80665 * lift / outward, 0.0)))
        assert true - 1e-6 <= said <= 1.2 * true
    upto = printed(r"taut .* up to (\d+) beats a minute", text)
    assert (upto is not None) == (name == "carry")
    if upto is not None:  # so fast that the hand overtakes the head
        true = 60 * np.sqrt(
            np.min(np.where(outward < 0, 9.80665 * lift / np.minimum(outward, -1e-9), np.inf))
        )
        assert 0.99 * true - 1 <= upto <= true
    assert "at most" not in text.split("\nparameters:")[0]


def test_a_card_tells_the_arm_and_the_room_left():
    near = card_text(one_pattern("static-spin"))
    assert "the arm is 0.662 m long: 13 cm to spare" in near
    tall = card_text(one_pattern("static-spin", body=Body(stature=2.0)))
    assert "2.00 m tall" in tall
    assert "the arm is 0.779 m long" in tall
    law = law_for("static-spin", {}, side="right", body=Body(stature=1.7))
    out = law.at(np.array(0.0)).hand[1]
    arm = Body(stature=1.7).arm_length
    more = {
        key: f"{arm - out + by:.9f}" for key, by in (("exact", 0.0), ("over", 0.004), ("far", 0.2))
    }

    def card(ahead, **rest):
        return card_text(one_pattern("static-spin", {"ahead": ahead, **rest}))

    assert "long: fully stretched" in card(more["exact"])
    assert "long: the shoulder reaches the last 4 mm" in card(more["over"])
    far = card(more["far"], across=0, up=0)
    assert re.search(r"long: \d+ cm out of reach, even with the shoulder forward", far)
    assert "does not fit: the hand would be" in far


def test_a_bound_that_is_no_value_says_so(monkeypatch):
    """A law of another package, of whose third derivatives nothing is proven."""
    one = one_pattern("pro-bend-4")
    made = one.laws["right"]

    class Unknown:
        period = made.period
        at = staticmethod(made.at)

        @staticmethod
        def bounds():
            return replace(made.bounds(), hand_jerk=np.inf)

    monkeypatch.setitem(one.laws, "right", Unknown())
    text = card_text(one)
    assert "pull at most" in text
    assert "head up to" in text
    assert "no tempo keeps the tether taut" not in text
    assert "the lowest tempo that keeps the tether taut is not known" in text


def test_no_card_gives_counsel_that_the_checks_refuse():
    for name in patterns():
        notes = patterns()[name].notes
        assert "ahead of you" not in notes
        assert " cm" not in notes  # a length that is right for every body there is not


def test_card_figures_are_those_of_the_design():
    card = card_record(one_pattern("pro-bend-4", {"hand_radius": 0.6, "tether": 0.55}, tempo=100))
    hand = card["hands"]["right"]
    assert round(100 * hand["hand_work_m"]) == 43
    assert round(hand["lowest_tempo"], 2) == 40.44
    assert hand["after_one_cycle"] == "home"
    assert set(card_record(one_pattern("extension-with-antispin"))["hands"]) == {"left", "right"}


def test_steps_are_told_for_both_eyes_with_cross_points():
    steps = build_steps("pro-bend-3", {})
    one = one_pattern("pro-bend-3")
    text = steps_text(one)
    assert "cycle 1" in text
    assert "cycle 2" in text
    assert text.count("you see:") == 13
    assert text.count("the audience sees:") == 6  # the outs lie in the wall plane
    assert text.count("cross point") == 12
    assert "back where you began" in text
    assert text.count("next: hand to ") == 12
    assert station_record(one, steps[1])["cross"] == steps[1].cross.tolist()
    assert station_record(one, steps[0])["cross"] is None


def test_joins_are_listed_with_their_counts():
    matrix = join_matrix(names=("toroid", "pro-bend-3", "static-spin"))
    text = joins_text(matrix)
    assert "wrong way round: 2" in text
    assert text.count("↺") == 3  # two pairs and the legend
    chart = join_chart(matrix)
    assert [t.get_text() for t in chart.axes[0].get_xticklabels()] == list(matrix.names)


def test_views_are_straight_and_right_handed():
    for view in VIEWS:
        right, up = np.array(view.right), np.array(view.up)
        assert abs(right @ up) < 1e-12
        assert np.isclose(np.linalg.norm(right), 1)
        assert np.isclose(np.linalg.norm(up), 1)
    # behind sees the performer's right on the right, and looks along y
    assert VIEWS[0].near.tolist() == [0, -1, 0]
    assert VIEWS[1].near.tolist() == [1, 0, 0]
    assert VIEWS[2].near.tolist() == [0, 0, 1]


def test_a_drawing_has_four_views_to_one_scale(tmp_path):
    for tether in (0.41, 0.55):
        figure = pattern_figure(one_pattern("pro-bend-3", {"hand_radius": 0.25, "tether": tether}))
        spans = [np.ptp(axes.get_xlim()) for axes in figure.axes[:4]]
        assert np.allclose(spans, spans[0])
    assert "hand_radius 0.25" in figure.get_suptitle()
    for ending in ("svg", "png", "pdf"):
        write_figure(figure, tmp_path / f"a.{ending}")
        assert (tmp_path / f"a.{ending}").stat().st_size > 5000


def test_an_odd_build_is_drawn_through_both_cycles():
    assert drawn(one_pattern("pro-bend-3")).beats[-1] == 6
    assert drawn(one_pattern("pro-bend-4")).beats[-1] == 4


@pytest.mark.parametrize(
    ("paper", "size"), [("letter", (8.5, 11.0)), *at_length(("a4", (8.27, 11.69)))]
)
def test_steps_fit_their_pages(paper, size):
    given = {"pro-bend-4": {}, "toroid": {"lobes": 7, "bend": "anti"}}
    for name in (
        given if paper == "letter" else ("toroid",)
    ):  # the longest; letter is the lower paper
        pages = steps_pages(one_pattern(name, given[name]), paper=paper)
        assert len(pages) == (2 if name == "toroid" else 1)  # fourteen steps through two rounds
        for figure in pages:
            assert tuple(figure.get_size_inches()) == size
            box = figure.bbox
            for text in figure.texts:
                extent = text.get_window_extent()
                assert extent.x0 >= box.x0
                assert extent.x1 <= box.x1
                assert extent.y0 >= box.y0
                assert extent.y1 <= box.y1


def test_paper_must_be_known():
    with pytest.raises(ValueError, match="paper must be one of a4, letter"):
        steps_pages(one_pattern("pro-bend-4"), paper="a5")
    with pytest.raises(ValueError, match="is not a toroid"):
        steps_pages(one_pattern("extension"))


@pytest.mark.parametrize("kind", ["staff", "club", "fan", "hoop", "rope dart"])
def test_a_pattern_is_danced_with_what_is_asked(kind):
    """The drawn wicks are those of the prop; a rigid one is asked for torque, a rope for its pull."""
    prop = usual_prop(kind)
    one = one_pattern("pendulum", prop=prop)  # fits with every kind, and swings: a torque
    shown = drawn(one)
    assert shown.prop == prop
    places = shown.spots(7, [spot[:2] for spot in prop.heads])
    assert_allclose(
        np.linalg.norm(places - shown.motion.hand[7], axis=-1), [s.off for s in prop.heads]
    )
    assert (shown.rear is not None) == (kind == "staff")
    hand = card_record(one)["hands"]["right"]
    assert (hand["torque_n_m"] is None) == prop.flexible == (hand["hand_work_m"] is not None)
    text = card_text(one)
    assert ("the hand twists with" in text) == (not prop.flexible)
    assert ("stays taut" in text) == prop.flexible
    assert len(pattern_figure(one).axes) >= 4


def test_a_poi_is_what_is_meant_where_nothing_is_said():
    assert drawn(one_pattern("extension")).prop.kind == "poi"
    assert (
        drawn(one_pattern("extension", {"tether": 0.8}, prop=usual_prop("rope dart"))).prop.length
        == 0.8
    )
    poi = Prop(length=0.51, mass=0.2, wick_radius=0.05)
    assert card_text(one_pattern("extension")) == card_text(one_pattern("extension", prop=poi))


def test_the_command_offers_every_kind():
    from sequencer.cli.patterns import PROPS

    assert PROPS == PROP_KINDS


def test_a_hand_that_leaves_its_path_is_a_reason_of_the_difficulty():
    off = {"hand_off_m": 0.199}
    assert _reason(patterns()["extension"], [off, None]) == "arm and prop are in line"
    told = _reason(patterns()["extension"], [off, {"hand_off_m": 0.214}])
    assert told.endswith("; the prop is steered: the hand leaves its drawn path by up to 21 cm")


def test_toroids_that_take_more_hand_work_are_said_to_be_harder():
    book = patterns()
    bent = [name for name in book if name.split("-bend")[0] in {"iso", "pro", "anti"}]
    work = {name: _figures(one_pattern(name), "right")["hand_work_m"] for name in bent}
    mean = {
        level: np.mean([work[name] for name in bent if book[name].difficulty == level])
        for level in {book[name].difficulty for name in bent}
    }
    assert sorted(mean) == [3, 4, 5]
    assert work["anti-bend-4"] > work["pro-bend-4"] > work["iso-bend-4"]
    assert mean[5] > mean[4]


def test_a_rope_that_is_too_long_for_a_pattern_is_told_to_meet_the_floor():
    rope = Prop(kind="rope dart", length=1.5, mass=0.2, wick_radius=0.05)
    told = card_text(one_pattern("static-spin", prop=rope))
    hand = law_for("static-spin", {}, side="right", body=Body(stature=1.7)).at(np.array(0.0)).hand
    deep = 100 * (1.5 + 0.05 - hand[2])
    assert f"a wick goes {deep:.0f} cm into the floor" in told
    assert "into the floor" not in card_text(one_pattern("static-spin"))


def test_the_speed_of_a_fan_is_that_of_its_outer_wicks():
    """They move with the plane's own turning too, which a bend of a toroid has."""
    fan = Prop(kind="fan", length=0.6, mass=1.0, wicks=8, wick_radius=0.03, spread=3.0)
    one = one_pattern("pro-bend-4")  # where a poi fits: a place for this fan is not sought
    one = replace(one, dance=replace(one.dance, props={"right": fan}))
    beats = np.linspace(0.0, 4.0, 20_001)
    motion = one.laws["right"].at(beats)
    aside = np.cross(motion.plane, motion.tether)
    spot = max(fan.heads, key=lambda each: each.across)
    wick = motion.hand + spot.along * motion.tether + spot.across * aside
    moved = np.linalg.norm(np.diff(wick, axis=0), axis=-1).max() / (beats[1] - beats[0])
    told = _figures(one, "right")["head_speed_m_s"]
    assert moved * 100 / 60 <= told <= 1.2 * moved * 100 / 60
