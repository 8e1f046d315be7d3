"""A pattern by itself, as found for a body: in words, drawn, in steps, and as the whole check then has it."""

from dataclasses import replace
from itertools import product
from math import radians
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.suite import checked
from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.geometry.segments import segment_segment
from sequencer.motion.fitting.fits import Fit, Margins
from sequencer.motion.fitting.search import fitted
from sequencer.motion.fitting.windows import Window, Windows
from sequencer.motion.flown.flyable import WouldFly
from sequencer.outputs.patterns import one_pattern as module
from sequencer.outputs.patterns.fit_words import (
    cycle_words,
    danced_words,
    margin_words,
    number_words,
    opens_words,
    prop_words,
    short,
    verdict,
    window_lines,
)
from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.patterns.pattern_cards import card_text, steps_text
from sequencer.outputs.patterns.pattern_drawing import drawn, drawn_hands, labels, pattern_figure
from sequencer.outputs.patterns.pattern_records import card_record
from sequencer.outputs.words.station_words import clock_words
from sequencer.show.file_records.prop_records import usual_prop
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.nothing_kept import nothing_kept
from tests.repeated import at_length
from tests.songs import even_song

ASHORE = Margins(body=0.041, other=0.06, reach=0.2, pull=9.0)


@pytest.fixture(autouse=True)
def as_drawn(monkeypatch):
    """The drawing and its fit; what is flown has its own tests."""
    monkeypatch.setattr(module.OnePattern, "flown", {})


def found(name, values, posture=None, margins=ASHORE, **more):
    """A pattern with a fit of our own."""
    one = one_pattern(name, **more)
    fit = Fit(values=values, posture=posture or Posture(), margins=margins)
    return replace(one, fit=fit)


# --- words ------------------------------------------------------------------------------------------


def test_only_what_is_not_as_usual_is_told():
    assert danced_words(found("pro-bend-4", {})) == ["in its usual place"]
    same = {"hand_radius": 0.1, "across": 0.3, "ahead": -0.18, "up": 0.18, "from": -45.0}
    leaning = Posture(lean=radians(-5))
    one = found("pro-bend-4", {"left": same, "right": same}, leaning)
    assert danced_words(one) == [
        (
            "hand circle 10 cm (usually 20 cm), 30 cm farther out, 18 cm nearer, 18 cm higher than "
            "usual, start the circle at half past four (from -45°, usually -90°)"
        ),
        "lean back a little",
    ]
    assert danced_words(found("pro-bend-4", {"right": {"up": -0.015}})) == [
        "left hand: in its usual place",
        "right hand: 1.5 cm lower than usual",
    ]


@pytest.mark.parametrize("angle", [-90.0, -30.0, 0.0, 45.0, 126.0, 180.0])
def test_where_the_circle_starts_is_where_the_hand_then_is(angle):
    one = one_pattern("pro-bend-4", {"from": angle})
    motion = one.lead("right").at(np.linspace(0.0, 4.0, 401))
    away = motion.hand[0] - motion.hand[:-1].mean(axis=0)
    there = clock_words(float(np.degrees(np.arctan2(away[2], away[0]))))
    assert clock_words(angle) == there


def test_windows_in_words():
    fit = Fit(margins=ASHORE)
    rows = {
        "up": Window(name="up", low=-0.1, high=0.15, best=0.0),
        "hand_radius": Window(name="hand_radius", low=0.01, high=0.10, best=0.1),
        "across": Window(name="across", low=0.3, high=0.3, best=0.3, apart=-0.06),
    }
    assert window_lines(Windows(fit=fit, windows=rows)) == [
        "up           -10 to 15 cm",
        "hand_radius  1 to 10 cm",
        "across       30 cm only (left hand 6 cm less)",
    ]


def test_verdicts():
    def of(**margins):
        return verdict(Fit(margins=ASHORE._replace(**margins)))

    assert of() == ""
    assert of(body=-0.034) == "does not fit: the prop still goes 3 cm into your own body"
    assert of(other=0.01) == "only just: the prop comes within 1 cm of the other prop"
    assert of(reach=-0.02) == "does not fit: the hand would be 2 cm out of reach"
    assert of(pull=-1.0) == "does not fit: the tether goes slack"
    assert of(reach=-0.001) == "only just: the arm is almost straight"
    assert of(body=-0.004) == "only just: the prop brushes the body"
    assert of(other=0.024) == ""
    assert margin_words(Fit(margins=ASHORE)) == (
        "the prop keeps 4 cm from your own body and 6 cm between the two props"
    )
    assert margin_words(Fit(margins=ASHORE), flexible=True) == (
        "as drawn, the prop keeps 4 cm from your own body and 6 cm between the two props"
    )
    assert margin_words(Fit()) == ""
    assert margin_words(Fit(), flexible=True) == ""


def test_what_opens_a_window_is_told():
    tight = Fit(margins=ASHORE._replace(body=-0.1))
    assert opens_words(Windows(fit=Fit(margins=ASHORE))) == ""
    assert opens_words(Windows(fit=tight)) == "none of the changes tried makes room"
    assert opens_words(Windows(fit=tight, opens=("a tether of 41 cm", "one hand alone"))) == (
        "it would fit with a tether of 41 cm, or with one hand alone"
    )


def test_numbers_and_props():
    assert [number_words(x) for x in (2.0, 1.5, 8 / 3, 0.5, 4 / 3)] == [
        "2",
        "1.5",
        "8/3",
        "0.5",
        "4/3",
    ]
    assert [short(x) for x in (0.0099, 0.0199, 0.02, -0.0)] == ["9 mm", "1 cm", "2 cm", "0 mm"]
    pair = usual_prop("staff", stature=1.7, paired=True)
    assert prop_words(pair, 2) == "a pair of staffs of 102 cm"
    assert prop_words(usual_prop("rope dart", stature=1.7), 1) == "one rope dart of 66 cm"


def test_a_cycle_that_is_not_the_usual_one_says_so():
    slow = one_pattern("pro-bend-1", tempo=100)
    assert slow.cycle != slow.usual_beats == 1
    assert cycle_words(slow) == f"{slow.cycle:g} beats (usually 1)"
    assert "one hand cycle: 2 beats (usually 1) unless" in card_text(slow)
    assert cycle_words(one_pattern("extension")) == "1 beat"


# --- who and what -----------------------------------------------------------------------------------


def test_props_are_those_of_the_body_in_the_hands_that_usually_hold_them():
    tall = one_pattern("two-beat-weave", body=Body(stature=1.95))
    assert tall.prop.length == 0.58
    assert tall.sides == ("left", "right")
    assert one_pattern("two-beat-weave", prop="rope dart").sides == ("right",)
    staff = one_pattern("static-spin", prop="staff")
    assert staff.prop == usual_prop("staff", stature=1.7, paired=True)
    assert one_pattern("extension", {"tether": "45cm"}).prop.length == 0.45


@pytest.mark.parametrize("beats", ["none", "0", "-2", "nan", "1e9"])
def test_a_cycle_is_a_number_of_beats(beats):
    with pytest.raises(ValueError, match="beats must be"):
        one_pattern("extension", {"beats": beats})


@pytest.mark.parametrize("name", ["pro-bend-4", "pro-bend-5", "two-beat-weave", "box-antispin"])
def test_what_is_left_between_the_props_is_never_told_too_large(name):
    """Against very many looks; two thin tethers that cross are near for a thousandth of a beat."""
    one = one_pattern(name, body=Body(stature=1.95))
    motions = [law.at(np.linspace(0.0, one.end, 60_001)) for law in one.laws.values()]
    reach, thick = one.prop.length, {0: 0.01, 1: 0.05}
    ends = [(m.hand, m.head(reach)) for m in motions]
    seen = np.inf
    for a, b in product((0, 1), repeat=2):  # 0 the tether, 1 the head
        gap = segment_segment(ends[0][a], ends[0][1], ends[1][b], ends[1][1])[0]
        seen = min(seen, float(gap.min()) - thick[a] - thick[b])
    told = one.proven.margins.other
    if seen < 0.06:
        assert seen - 0.0055 <= told <= seen + 0.0055  # the error of the checks' own search
    else:
        assert told <= seen + 0.01


# --- drawings and steps -----------------------------------------------------------------------------


def test_both_hands_are_drawn_where_they_differ():
    assert [shown.side for shown in drawn_hands(one_pattern("pro-bend-3"))] == ["right"]
    for one in (
        one_pattern("extension-with-antispin"),
        one_pattern("extension", direction="opposite"),
        found("extension", {"left": {"up": 0.06}}),
    ):
        assert [shown.side for shown in drawn_hands(one)] == ["right", "left"]
    hybrid = one_pattern("extension-with-antispin")
    left, right = (drawn(hybrid, side) for side in ("left", "right"))
    assert_allclose(left.motion.hand, hybrid.laws["left"].at(left.beats).hand)
    figure = pattern_figure(hybrid)
    assert len([c for c in figure.axes[0].collections if len(c.get_segments()) > 50]) == 3
    assert "hollow, square beats: left hand" in figure.get_supxlabel()
    alone = pattern_figure(one_pattern("extension"))
    assert "the left does the same on its side, half a turn later" in alone.get_supxlabel()
    assert len(left.beats) == len(right.beats)


def test_only_a_tether_that_swings_in_and_out_has_ins_and_outs():
    def marks(name):
        figure = pattern_figure(one_pattern(name))
        return [sum(line.get_marker() == mark for line in figure.axes[0].lines) for mark in "^v"]

    assert marks("extension") == [0, 0]
    assert marks("antispin-flower-3") == [1, 1]  # a line holds all marks of its kind


def test_a_legend_is_no_wider_than_its_page():
    for one in (one_pattern("two-beat-weave", prop="staff"), one_pattern("pro-bend-3")):
        figure = pattern_figure(one)
        figure.canvas.draw()
        for text in (*figure.texts, figure._supxlabel, figure._suptitle):
            box = text.get_window_extent()
            assert figure.bbox.x0 <= box.x0, text
            assert box.x1 <= figure.bbox.x1, text


def test_beats_that_meet_share_a_label():
    spots = np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 0.01], [1.0, 0.02], [0.0, 0.5]])
    assert [text for _, text in labels(spots)] == ["0, 2", "1, 3", "4"]


@pytest.mark.parametrize(
    "name", ["pro-bend-3", "anti-bend-3", "two-beat-weave", "extension-with-antispin"]
)
def test_numbers_stand_apart(name):
    figure = pattern_figure(one_pattern(name))
    figure.canvas.draw()
    for axes in figure.axes[:4]:
        boxes = [t.get_window_extent() for t in axes.texts if t.get_text()]
        for k, box in enumerate(boxes):
            for other in boxes[k + 1 :]:
                assert not box.padded(-1).overlaps(other.padded(-1))


def test_all_views_of_a_sheet_have_one_scale_on_paper():
    for name in ("pro-bend-3", "extension-with-antispin", "overhead-spin"):
        figure = pattern_figure(one_pattern(name))
        figure.canvas.draw()
        scales = [
            np.ptp(axes.get_xlim()) / axes.get_window_extent().width for axes in figure.axes[:4]
        ]
        assert_allclose(scales, scales[0], rtol=1e-6)


def test_steps_are_those_of_the_dance():
    one = one_pattern("iso-bend-3")
    values = one.fit.values["right"]
    assert values["from"] == -30.0
    for station in one.stations():
        motion = one.lead("right").at(np.array(station.beat))
        assert_allclose(station.hand, motion.hand, atol=1e-12)
        assert_allclose(station.tether, motion.tether, atol=1e-12)
    assert one.stations()[0].place == "30° from right towards bottom"
    text = steps_text(one)
    assert "start the circle at 4 o’clock" in text
    assert "count 1: in, lobe 1; hand at 4 o’clock" in text
    slow = one_pattern("pro-bend-1")
    assert slow.cycle == 2.0
    assert slow.stations()[-1].beat == slow.laws["right"].period


# --- against the whole check ------------------------------------------------------------------------

TEN = (
    "extension", "two-beat-weave", "three-beat-weave", "antispin-flower-4", "pro-bend-4", "anti-bend-3",
    "iso-bend-2", "windmill", "pendulum", "isolation-with-antispin",
)  # fmt: skip
SHOW = """\
title: One pattern
track: {{file: song.ogg}}
venue:
  setting: outdoors
  stage: {{shape: rectangle, width: 20 m, depth: 20 m}}
  audience: [{{name: fence, line: [[-30, -30], [30, -30]]}}]
  ceiling: open
cast: [{{name: Ash, stature: {stature}, birth_year: 1990, prop: {{kind: {kind}}}}}]
formations:
  middle: {{spots: {{Ash: {{at: [0, 10]}}}}}}
staging: [{{formation: middle, from: 1.1}}]
timeline: [{{who: Ash, from: 3.1, pattern: {name}, beats: 16}}]
"""


def show_of(name, stature, *, kind="poi", tempo=100.0):
    text = SHOW.format(name=name, stature=stature, kind=kind)
    return staged(show_from_document(parse_document(text, "one.yaml")), even_song(40, tempo=tempo))


def found_against(show, name):
    """What the check has against the pattern itself, not against the ways from rest and back."""
    return [
        (finding.severity, finding.code)
        for finding in checked(show).findings
        if finding.severity != "note" and finding.message.startswith(f"{name}, ")
    ]


@pytest.mark.parametrize("stature", [1.55, *at_length(1.85)])
@pytest.mark.parametrize("name", TEN)
def test_the_card_says_what_the_check_then_finds(name, stature, monkeypatch):
    """The fit and the figures; the room that the fit leaves is not looked at here."""
    monkeypatch.setattr(module, "windows_of", lambda dance: Windows(fit=fitted(dance)))
    one = one_pattern(name, body=Body(stature=stature))
    card = card_record(one)
    show = show_of(name, stature)
    (block,) = (block for block in show.blocks if not block.link)
    assert block.cycle == card["cycle_beats"]
    assert_allclose(block.posture.angles, one.posture.angles)
    for side, part in block.hands.items():
        assert part.fitted == card["fit"]["values"][side]
        assert show.dancers[0].props[side].length == card["tether_m"]
    assert card["fit"]["fits"]
    assert found_against(show, name) == []
    for hand in card["hands"].values():
        assert hand["out_of_reach_m"] == 0
        assert hand["lowest_tempo"] is None or hand["lowest_tempo"] <= one.tempo


@pytest.mark.parametrize(
    ("name", "kind", "stature", "tempo"),
    [
        ("three-beat-weave", "staff", 1.70, 100.0),
        ("antispin-flower-4", "poi", 1.70, 20.0),
        *at_length(
            ("two-beat-weave", "staff", 1.70, 100.0),
            ("two-beat-weave", "staff", 1.95, 100.0),
            ("two-beat-weave", "poi", 1.70, 12.0),
        ),
    ],
)
def test_what_the_card_says_does_not_fit_the_check_stops(name, kind, stature, tempo):
    one = one_pattern(name, prop=kind, body=Body(stature=stature), tempo=tempo)
    against = found_against(show_of(name, stature, kind=kind, tempo=tempo), name)
    refused = verdict(one.proven).startswith("does not fit")
    assert refused == any(severity == "stop" for severity, _ in against)


# --- what is flown ----------------------------------------------------------------------------------


def test_the_search_for_what_would_fly_is_kept_by_its_content(monkeypatch):
    asked = []

    def nearest(law_of, flying):
        asked.append(law_of(0.4).at(np.array(0.0)).head(0.4))
        return WouldFly(84.0, None, 0.4, None)

    monkeypatch.setattr(module, "would_fly", nearest)
    with nothing_kept():
        for _ in range(2):
            one = one_pattern("static-spin")
            assert one.would_fly("right") == WouldFly(84.0, None, 0.4, None)
        assert len(asked) == 1
        one_pattern("static-spin", tempo=90.0).would_fly("right")
        one_pattern("static-spin", {"up": 0.02}).would_fly("right")
        one_pattern("static-spin", body=Body(stature=1.8)).would_fly("right")
        one_pattern("static-spin").would_fly("left")
    assert len(asked) == 5
    assert_allclose(asked[2] - asked[0], [0.0, 0.0, 0.02], atol=1e-9)


def test_another_tether_is_tried_with_the_law_that_it_has(monkeypatch):
    """The hand of an isolation goes round opposite the head: its circle follows the tether."""
    monkeypatch.setattr(
        module, "would_fly", lambda law_of, _: [law_of(r).at(np.array(0.0)) for r in (0.3, 0.4)]
    )
    with nothing_kept():
        short, long = one_pattern("isolation").would_fly("right")
    assert 0.02 < np.linalg.norm(long.hand - short.hand) < 0.1


@pytest.mark.parametrize(
    ("left", "right", "flies"), [((), (), True), ((), ("pull",), False), (("speed",), (), False)]
)
def test_a_pattern_flies_if_both_hands_do(left, right, flies):
    one = one_pattern("static-spin")
    vars(one)["flown"] = {
        "left": SimpleNamespace(broken=left),
        "right": SimpleNamespace(broken=right),
    }
    assert one.flies is flies
    assert (one.flown_laws is one.laws) is not flies


def test_a_hand_that_never_comes_home_is_not_known_to_fly():
    one = one_pattern("static-spin")
    vars(one)["flown"] = {"right": SimpleNamespace(broken=())}
    assert not one.flies
