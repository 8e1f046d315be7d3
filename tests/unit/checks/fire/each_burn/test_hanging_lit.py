"""Lit props held still: where the flame ends, what heat the hand has, and for how long.

20 g of kerosene a wick in 240 s: 43.2 MJ/kg give 3.6 kW, at the peak 5.4 kW. Heskestad: 0.235 · 5.4^0.4 − 1.02 · 0.1 m =
0.359 m of flame over a wick of 5 cm radius, so it ends 0.409 m over the wick's centre and its middle is 0.230 m over it.
"""

from math import pi

import pytest

from sequencer.checks.fire.each_burn import hanging_lit
from sequencer.checks.fire.each_burn.handling_kept import CHECK
from sequencer.checks.fire.each_burn.hanging_lit import (
    at_hands,
    peak_heat,
    resting_flame_of,
    still_spans,
)
from sequencer.geometry.bodies import Body
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.rests import rest
from sequencer.planning.trying.restaging import restaged
from sequencer.safety.safety_plan import safety_plan
from sequencer.show.file_records.prop_records import PropRecord
from sequencer.staging.timeline import staged
from tests.handled_show import found, handled, said
from tests.nothing_kept import nothing_kept

HANG = ("waiting: on the ground", "waiting: hanging")
SWING = ("waiting: on the ground", "waiting: swinging")
NOT_MOSS = ("    - {who: Moss, from: 41.1, until: 61.1}\n", "")
WREN = "name: Wren, stature: 1.7 m, prop: {tether: 50 cm, fuel_mass: 20 g}"
BLOCK = "{who: Wren, from: 13.1, pattern: two-beat-weave, until: 30.1}"
TWO_BLOCKS = (BLOCK, ("{who: Wren, from: 13.1, pattern: two-beat-weave, until: 20.1}\n"
              "  - {who: Wren, from: 25.1, pattern: two-beat-weave, until: 30.1}"))  # fmt: skip
LATE = (BLOCK, "{who: Wren, from: 26.1, pattern: two-beat-weave, until: 30.1}")


def holds(prop):
    return (WREN, WREN.replace("{tether: 50 cm, fuel_mass: 20 g}", f"{{{prop}}}"))


def tether(cm):
    return holds(f"tether: {cm} cm, fuel_mass: 20 g")


def hanging(*edits):
    return [
        severity
        for code, severity, who in found(NOT_MOSS, *edits)
        if code == "hanging-lit" and who == ("Wren",)
    ]


def spans(*edits):
    show = handled(NOT_MOSS, *edits)
    waiting = show.show.fire.handling.waiting
    (burn,) = safety_plan(show).burns
    return [
        (each.start, each.end, each.when)
        for each in still_spans(show, show.dancers[0], burn, waiting)
    ]


@pytest.mark.parametrize(
    ("edits", "expected"),
    [
        # lit from 15 s; the lift into 24 s starts two beats before it, 23 s; at rest again at 59 s, out from 60 s on
        ([HANG], [(15.0, 23.0, "first"), (59.0, 60.0, "last")]),
        ([], []),
        ([SWING], []),
        # rests in between hang whatever is said of waiting: 38 s and 48 s, less two beats each
        ([TWO_BLOCKS], [(39.0, 47.0, "between")]),
        ([TWO_BLOCKS, HANG], [(15.0, 23.0, "first"), (39.0, 47.0, "between"), (59.0, 60.0, "last")]),
        # without a dance they wait all the time
        ([(BLOCK, "{who: Moss, from: 13.1, pattern: two-beat-weave, until: 30.1}"), HANG], [(15.0, 60.0, "first")]),
    ],
)  # fmt: skip
def test_lit_props_hang_where_they_are_at_rest_and_not_on_the_ground(edits, expected):
    found = spans(*edits)
    assert [when for *_, when in found] == [when for *_, when in expected]
    for (start, end, _), (low, high, _) in zip(found, expected, strict=True):
        assert (start, end) == pytest.approx((low, high))


def test_who_waits_to_be_put_out_hangs_on():
    """Flint puts out Moss as well, who has less to spare: Wren's props hang for 5 s and 10 m of way more."""
    together = [("who: Wren, from: 11.1", "who: Wren, put_out_by: Linden, from: 11.1"),
                ("who: Moss, from: 41.1, until: 61.1", "who: Moss, put_out_by: Linden, from: 9.1, until: 31.1"), HANG]  # fmt: skip
    show = handled(*together)
    wren = next(burn for burn in safety_plan(show).burns if burn.who == "Wren")
    assert wren.queue_s == pytest.approx(5.0 + 10 / 1.0668)
    last = still_spans(show, show.dancers[0], wren, "hanging")[-1]
    assert (last.end, last.when) == (pytest.approx(60.0 + wren.queue_s), "last")


def at_hand(*edits, sides=("left",)):
    show = handled(NOT_MOSS, HANG, *edits)
    (burn,) = safety_plan(show).burns
    flames = {
        side: resting_flame_of(show.show.cast[0].props[side], show.show.fire, burn)
        for side in sides
    }
    return at_hands(show.dancers[0], flames, 31.0)


def test_flame_and_heat_at_the_hand_by_hand():
    """0.5 m of tether: the flame ends 0.091 m under the hand, its middle 0.270 m; 0.3 · 5.4 kW / (4π 0.270²) = 1.76 kW/m².

    The other hand's flame is 0.6 to 0.8 m away. The dose of pain, 92 (kW/m²)^(4/3)·s, takes 43 s at that heat.
    """
    height = 0.235 * 5.4**0.4 - 1.02 * 0.1
    (left,) = at_hand()
    assert left.flame == pytest.approx(height)
    assert left.gap == pytest.approx(0.5 - 0.05 - height)
    own = 0.3 * 5400 / (4 * pi * (0.5 - 0.05 - height / 2) ** 2)
    assert left.glow == pytest.approx(own)
    assert left.pain == pytest.approx(92 / (own / 1000) ** (4 / 3))
    assert not left.touches
    both = at_hand(sides=("left", "right"))
    assert [each.side for each in both] == ["left", "right"]
    extra = [each.glow - own for each in both]
    assert extra == pytest.approx([extra[0]] * 2)
    assert 0.3 * 5400 / (4 * pi * 0.9**2) < extra[0] < 0.3 * 5400 / (4 * pi * 0.5**2)


def test_a_flame_that_reaches_the_hand_hurts_at_once():
    """100 kW/m² in a flame (from memory): 92 / 100^(4/3) = 0.198 s."""
    (left,) = at_hand(tether(40))
    assert left.gap == pytest.approx(0.4 - 0.409, abs=1e-3)
    assert left.touches
    assert left.pain == pytest.approx(0.198, abs=1e-3)


@pytest.mark.parametrize(
    ("edits", "expected"),
    [
        ([HANG], []),  # 8 s at 1.8 kW/m²: less than pain, and less than 4.73 kW/m²
        ([HANG, tether(42)], []),  # the flame ends 1 cm under the hand: 8 s at 3.6 kW/m², pain after 17 s
        ([HANG, tether(40)], ["stop", "stop"]),  # before the first and after the last move
        ([tether(40)], []),
        ([SWING, tether(40)], []),
        ([tether(40), TWO_BLOCKS], ["stop"]),
        ([TWO_BLOCKS], []),
        # 34 s at 1.8 kW/m² do not hurt, and 34 s at 2.7 do (24 s)
        ([HANG, LATE], []),
        ([HANG, LATE, tether(45)], ["stop"]),
        # five wicks of 12 g on a fan: 5.4 kW/m² for 8 s, pain after 9.6 s
        ([HANG, holds("kind: fan, fuel_mass: 12 g")], ["warn", "warn"]),
        ([HANG, LATE, holds("kind: fan, fuel_mass: 12 g")], ["stop", "warn"]),
    ],
)  # fmt: skip
def test_props_that_hang_too_near_or_too_long_are_found(edits, expected):
    assert hanging(*edits) == expected


@pytest.mark.parametrize(
    ("length", "grams", "gap"),
    [
        # 10.8 kW at the peak: 0.527 m of flame over 0.04 m of wick, 0.5 m under the hand
        (1.0, 40.0, 0.5 - 0.04 - (0.235 * 10.8**0.4 - 1.02 * 0.08)),
        (1.4, 20.0, 0.7 - 0.04 - (0.235 * 5.4**0.4 - 1.02 * 0.08)),
    ],
)
def test_a_staff_is_held_upright_and_its_lower_flame_counts(length, grams, gap):
    record = PropRecord(kind="staff", length=length, fuel_mass=grams / 1000).sized(
        1.7, paired=False
    )
    show = handled(NOT_MOSS)
    (burn,) = safety_plan(show).burns
    body, prop = Body(stature=1.9), record.held()
    own = Dancer(
        name="Wren", body=body, props={"right": prop}, floor=WalkPath((0.0, 0.0)),
        trajectories={"right": assembled((), rest("right", body, prop))},
    )  # fmt: skip
    (hand,) = at_hands(own, {"right": resting_flame_of(record, show.show.fire, burn)}, 0.0)
    assert hand.gap == pytest.approx(
        max(gap, -0.04)
    )  # in the flame's middle, no more than its radius
    assert hand.touches is (gap < 0)


def test_what_is_said_names_the_heat_the_time_and_what_to_do_instead():
    hot = said("hanging-lit", NOT_MOSS, HANG, LATE, tether(45))
    assert hot.message == (
        "Wren holds the lit poi still for 34.0 s from 0:15.0 on: the flame, 0.36 m at its peak, ends 0.04 m from the "
        "left hand on a tether of 0.45 m; 2.9 kW/m² there hurt after 22.4 s"
    )
    assert hot.remedies[:2] == (
        "lay the heads on bare ground, 0.45 m to the side, from 0:15.0 to 0:49.0: fire, handling, waiting: on the ground",
        "keep the props swinging (a pendulum) from 0:15.0 to 0:49.0: fire, handling, waiting: swinging",
    )
    assert hot.remedies[2].startswith("write from: 17.1 (0:32.0), 12 s later")
    later = ("who: Wren, from: 11.1", "who: Wren, from: 17.1")
    assert hanging(HANG, LATE, tether(45), later) == []
    reached = said("hanging-lit", NOT_MOSS, tether(40), TWO_BLOCKS)
    assert reached.message.endswith(
        "reaches the left hand on a tether of 0.40 m, and in a flame it hurts within 0.2 s"
    )
    assert reached.remedies == (
        "dance a pendulum from 0:39.0 to 0:47.0: a hand that swings leaves the flame behind",
    )
    (last,) = (each for each in _findings(HANG, tether(40)) if each.start > 30)
    assert last.remedies[2] == "write until: 30.3 (0:59.0)"


def _findings(*edits):
    return [
        each
        for each in CHECK.outcome(handled(NOT_MOSS, *edits)).findings
        if each.code == "hanging-lit"
    ]


def test_two_who_hold_alike_props_still_at_once_are_one_finding():
    both = ("who: Wren, from: 11.1, until: 31.1", "who: all, from: 11.1, until: 31.1")
    dance = ("{who: Wren, from: 13.1, p", "{from: 13.1, p")
    moss = ("  - {who: Moss, from: 43.1, pattern: two-beat-weave, until: 60.1}\n", "")
    other = (
        "name: Moss, stature: 1.7 m, prop: {tether: 50 cm",
        "name: Moss, stature: 1.7 m, prop: {tether: 40 cm",
    )
    ends = [
        each for each in _findings(HANG, tether(40), both, dance, moss, other) if each.start > 30
    ]
    assert [(each.who, each.end) for each in ends] == [(("Wren", "Moss"), 60.0)]
    assert ends[0].message.startswith("Wren, Moss hold the lit poi still for 1.0 s from 0:59.0 on")


def test_heat_comes_from_fuel_and_time_or_else_from_the_flame():
    """Where a wick is not weighed the flame says how much burns: 0.359 m over 0.1 m are 5.4 kW."""
    record = handled().show.cast[0].props["left"]
    fire = handled().show.fire
    assert peak_heat(record, fire, 0.1, 240.0) == pytest.approx(5400.0)
    assert peak_heat(record, fire, 0.359, None) == pytest.approx(5400.0, rel=5e-3)
    unweighed = record.model_copy(update={"fuel_mass": None})
    assert peak_heat(unweighed, fire, 0.359, 240.0) == pytest.approx(5400.0, rel=5e-3)


def test_what_a_hand_has_is_known_after_an_edit_of_others_and_no_longer(monkeypatch):
    """Another step of Moss leaves Wren's hands known; another flame or burning time does not."""
    show = handled(HANG, TWO_BLOCKS)
    CHECK.outcome(show)
    asked = []
    plain = hanging_lit.at_hands

    def noted(dancer, *rest):
        asked.append(dancer.name)
        return plain(dancer, *rest)

    monkeypatch.setattr(hanging_lit, "at_hands", noted)
    steps = show.read.document.values["timeline"]
    moss = next(k for k, entry in enumerate(steps) if entry["who"] == "Moss")
    after = restaged(show, [(("timeline", moss, "shift"), 0.25)])
    CHECK.outcome(after)
    assert set(asked) == {"Moss"}
    for change in ((("fire", "flame"), "1.2 m"), (("fire", "burn", "time"), "150 s")):
        asked.clear()
        changed = restaged(show, [change])
        text = {each.message for each in CHECK.outcome(changed).findings}
        assert set(asked) == {"Moss", "Wren"}
        with nothing_kept():
            fresh = staged(changed.read, show.heard)
            assert text == {each.message for each in CHECK.outcome(fresh).findings}


STATED = ("burn: {time: 4 min,", "flame: 1.2 m\n  burn: {time: 4 min,")


def _known_by(show):
    hanging_lit.hanging_findings(show, safety_plan(show))
    return {
        each.besides
        for each in show.results
        if getattr(each, "what", "") == "hands at hanging flames"
    }


def test_another_heat_of_the_same_flame_is_no_result_that_is_known():
    """A flame of a stated 1.2 m is as high with 150 s as with 240 s, and moves as far; the heat at the hand is another."""
    show = handled(NOT_MOSS, HANG, STATED)
    (burn,) = safety_plan(show).burns
    assert _known_by(show)
    changed = restaged(show, [(("fire", "burn", "time"), "150 s")])
    record, fire = (changed.show.cast[0].props["left"], changed.show.fire)
    (after,) = safety_plan(changed).burns
    was, now = (resting_flame_of(record, fire, each) for each in (burn, after))
    assert was.height == now.height == 1.2
    assert now.watts == pytest.approx(240 / 150 * was.watts)
    assert all(changed.dancers[0].props[side] == own for side, own in show.dancers[0].props.items())
    assert _known_by(changed) > _known_by(show)  # what was known is left, and asked for no more
    flames = {flame for _, own in _known_by(changed) - _known_by(show) for _, flame in own}
    assert flames == {now}


def test_another_height_of_the_flame_is_no_result_that_is_known():
    (low, high) = (
        _known_by(handled(NOT_MOSS, HANG, (STATED[0], STATED[1].replace("1.2", height))))
        for height in ("1.2", "1.3")
    )
    assert low
    assert not low & high


def _must_not_be_asked(*_):
    raise AssertionError("it is known")


def test_the_rest_of_what_is_said_of_the_fire_leaves_it_known(monkeypatch):
    show = handled(NOT_MOSS, HANG)
    known = _known_by(show)
    cooler = restaged(show, [(("fire", "handling", "cool"), "40 s")])
    assert cooler.show.fire != show.show.fire
    monkeypatch.setattr(hanging_lit, "at_hands", _must_not_be_asked)
    assert _known_by(cooler) == known
