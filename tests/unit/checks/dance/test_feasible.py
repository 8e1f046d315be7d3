"""What can be done, found in staged shows: each fault planted once, and a clean show."""

import re
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.checks.dance.dancer_case import FeasibilityLimits, limits_of
from sequencer.checks.dance.feasible import feasible
from sequencer.checks.dance.joins import joins
from sequencer.checks.dance.proven import gap_to_body
from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.flown_figures import FlownFigures, FlyingHand
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.timing.song import Section, Song
from tests.repeated import at_length
from tests.unit.checks.dance.solo import TOROIDS, found, stage


def test_a_clean_show_has_no_fault():
    found_here = feasible(stage(TOROIDS))
    assert found(found_here) == []
    assert found_here.not_checked


def test_slack_depends_on_the_tempo(monkeypatch):
    monkeypatch.setattr(FlyingHand, "worth_flying", lambda *_: False)
    slow = "  - {from: 3.1, pattern: static-spin, beats: 8, cycle: 1}\n"
    lines = [f for f in feasible(stage(slow, tempo=45)).findings if f.code == "tether-slack"]
    assert len(lines) == 1
    assert lines[0].severity == "stop"
    assert (
        "stays taut from 47.3 on" in lines[0].message
    )  # √(9.80665/0.4)/2π = 0.7882 turns a second
    assert "tether-slack" not in found(feasible(stage(slow, tempo=48)))


@pytest.mark.parametrize("cycle", [4, 6, 9, 16])
def test_turning_slowly_is_no_stall(cycle, monkeypatch):
    """However slow a steady extension is, its slack stops the show, unless it flies."""
    monkeypatch.setattr(FlyingHand, "worth_flying", lambda *_: False)
    asked = stage(f"  - {{from: 3.1, pattern: extension, cycle: {cycle}, beats: 16}}\n")
    severities = [f.severity for f in feasible(asked).findings if f.code == "tether-slack"]
    assert severities
    assert set(severities) == {"stop"}


def test_a_stall_is_slack_by_nature():
    outcome = feasible(stage("  - {from: 3.1, pattern: stall, beats: 8}\n"))
    (line,) = [f for f in outcome.findings if f.code == "tether-slack"]
    assert line.severity == "note"


@pytest.mark.parametrize(
    ("block", "tether", "code"),
    [
        ("{from: 3.1, pattern: toroid, with: {across: 0, ahead: 0, up: 0, hand_radius: 0.2, from: -90}, beats: 8}", "0.7", "self-hit"),
        ("{from: 3.1, pattern: extension, with: {across: 0.5, hand_radius: 0.35}, beats: 8}", "0.4", "hand-out-of-reach"),
        ("{from: 3.1, pattern: butterfly, timing: together, direction: opposite, left: LEFT, beats: 8}", "0.4", "self-tangle"),
        ("{from: 3.1, pattern: inspin-flower-5, cycle: 1, beats: 8}", "0.55", "too-fast-to-dance"),
    ],
)  # fmt: skip
def test_each_fault_is_found(block, tether, code):
    if "LEFT" in block:
        still = "across: -0.14, up: 0, hand_radius: 0.1, yaw: 0"
        part = f"{{pattern: butterfly, with: {{turn: clockwise, ahead: 0.14, {still}}}}}"
        other = f"{{pattern: butterfly, with: {{ahead: 0, {still}}}}}"
        block = f"{{from: 3.1, left: {part}, right: {other}, timing: together, beats: 8}}"
    outcome = feasible(stage(f"  - {block}\n", tether=tether))
    mine = [f for f in outcome.findings if f.code == code]
    assert mine
    assert all(f.remedies and f.source and f.position for f in mine)


@pytest.mark.parametrize(
    ("prop", "words"),
    [
        ("{tether: 1.71 m}", "Ash: the poi's tether of 1.71 m is more than the stature of 1.70 m"),
        ("{kind: staff, length: 1.71 m}", "the staff's length of 1.71 m"),
        ("{kind: staff, length: 1.70 m}", None),
        ("{kind: rope dart, tether: 3 m}", None),
        ("{kind: hoop, diameter: 1.71 m}", "the hoop's diameter of 1.71 m"),
        *at_length(
            ("{kind: staff, length: 1.71 m, grip: 0.3 m}", "the staff's length of 1.71 m"),
            ("{kind: fan, length: 1.71 m}", "the fan's length of 1.71 m"),
        ),
    ],
)
def test_a_prop_longer_than_its_performer_is_told_once(prop, words):
    show = stage("  - {from: 3.1, pattern: extension, beats: 4}\n", held=prop)
    told = [f for f in feasible(show).findings if f.code == "prop-longer-than-performer"]
    assert len(told) == (words is not None)
    if words is not None:
        assert words in told[0].message
        assert told[0].severity == "warn"
        assert told[0].who == ("Ash",)


@pytest.mark.parametrize(
    ("beyond", "words"),
    [(0.0, None), (0.0015, None), (0.004, "4 mm out of reach"), (0.03, "3 cm out of reach")],
)
def test_a_hand_at_the_arms_length_is_within_it(beyond, words, monkeypatch, tmp_path):
    """What is met exactly, to the proven 2 mm, is no fault; what is beyond by little is told in millimetres.

    The arm straight ahead, the shoulder as far forward as it gives, and the trunk kept from leaning.
    """
    monkeypatch.setattr("sequencer.motion.fitting.sampled_dance._postures", lambda _body: ())
    monkeypatch.setattr("sequencer.motion.fitting.search._KEPT", {})
    monkeypatch.setattr("sequencer.motion.fitting.kept_fits.folder", lambda: tmp_path)
    body = Body(stature=1.7)
    hand = law_for("static-spin", {}, side="right", body=body).at(np.array(0.0)).hand
    ahead = body.arm_length - (hand - body.shoulder("right"))[1] + body.shoulder_give[1][1] + beyond
    given = f"{{ahead: {ahead:.6f}, across: 0, up: 0, yaw: 0}}"
    show = stage(
        f"  - {{from: 3.1, pattern: static-spin, hands: right, with: {given}, beats: 8}}\n"
    )
    told = [f.message for f in feasible(show).findings if f.code == "hand-out-of-reach"]
    assert len(told) == (words is not None)
    if words is not None:
        arm = body.arm_length
        assert (
            f"{words}: {arm + beyond:.3f} m from the shoulder, with an arm of {arm:.3f} m"
            in told[0]
        )


def test_a_limit_that_is_met_exactly_is_kept():
    """A static spin of one turn a beat at 100 beats a minute: 1.667 turns, 4.189 m/s at 0.4 m, 10.7 N."""
    spin = "  - {from: 3.1, pattern: static-spin, cycle: 1, beats: 8}\n"
    turns = 100 / 60
    speed, pull = 2 * np.pi * turns * 0.4, 0.2 * ((2 * np.pi * turns) ** 2 * 0.4 + 9.80665)
    for key, value in (("turns", turns), ("head_speed", speed), ("pull", pull)):
        for share, over in ((1.0, False), (0.9995, False), (0.99, True)):
            told = feasible(stage(spin + f"limits: {{{key}: {share * value:.6f}}}\n"))
            lines = [f.message for f in told.findings if f.code == "too-fast-to-dance"]
            assert bool(lines) == over, (key, share)
            for line in lines:
                said, limit = re.search(r"up to ([\d.]+) .*\(limit ([\d.]+)\)", line).groups()
                assert float(said) > float(limit)


def test_pace_is_told_by_what_is_reached_and_not_by_a_sum_of_bounds():
    """A fan's frame turns faster than any of its wicks: the bound is 9 m/s, the wicks move at 6."""
    fan = "{kind: fan, length: 40 cm}"
    still = "{across: 0, ahead: 0, up: 0, hand_radius: 0.2, from: -90}"
    block = f"  - {{from: 3.1, pattern: pro-bend-4, with: {still}, cycle: 4, beats: 8}}\n"
    assert "too-fast-to-dance" not in found(
        feasible(stage(block + "limits: {head_speed: 6.5, torque: 20}\n", held=fan))
    )
    slow = feasible(stage(block + "limits: {head_speed: 5.5, torque: 20}\n", held=fan))
    (line,) = {f.message for f in slow.findings if f.code == "too-fast-to-dance"}
    said = float(re.search(r"a wick moves at up to ([\d.]+)", line)[1])
    assert 5.5 < said < 6.5


def test_a_torque_is_searched_wherever_a_bound_does_not_settle_it():
    """A slow static spin turns a club about the hand: what twists is its weight, held level, m·g·c."""
    club = "{kind: club, length: 0.6 m, mass: 1.0 kg}"
    spin = "  - {from: 3.1, pattern: static-spin, cycle: 4, beats: 8}\n"
    held = stage(spin, held=club, tempo=60)
    prop = held.dancers[0].props["right"]
    weight = prop.mass * 9.80665 * prop.centre_of_mass
    for share, over in ((1.02, False), (0.98, True)):
        told = feasible(held, limits=replace(limits_of(held), torque=share * weight))
        assert any("the hand twists with" in f.message for f in told.findings) == over


FLOWN = FlownFigures(
    head_rms=0.2, head_most=0.31, hand_rms=0.1, hand_most=0.22, least_pull=0.5, hand_speed=3.0,
    hand_acceleration=50.0, spare_reach=0.1, tether_off=0.2, moved=0.0, residual=1e-7, broken=(),
)  # fmt: skip


@pytest.mark.parametrize(
    ("flown", "words"),
    [
        (FLOWN, "both hands: reads soft: as flown the head is up to 31 cm, typically 20 cm, off the drawn path"),
        (replace(FLOWN, head_rms=0.14), None),
        (replace(FLOWN, broken=("pull",)), "cm, off the drawn circle; distances to others allow for it"),
        (None, "cm, off the drawn circle; distances to others allow for it"),
    ],
)  # fmt: skip
def test_what_needs_much_hand_work_is_told_once_a_pattern_as_it_flies(monkeypatch, flown, words):
    """Clean to 15 cm RMS; a pattern that cannot be flown is told by what its hand would have to do."""
    monkeypatch.setattr(FlyingHand, "figures", lambda *_: flown)
    outcome = feasible(stage(TOROIDS))
    notes = [f for f in outcome.findings if f.code == "flown-not-drawn"]
    assert len(notes) == (words is not None)
    for note in notes:
        assert words in note.message
        assert "both hands" in note.message
        tells = any("as flown, tells" in way for way in note.remedies)
        assert tells == ("hands: reads" not in note.message)


def test_only_what_needs_much_hand_work_is_flown(monkeypatch):
    """A check of what needs little never waits for a flight; nor does one of what turns far too slowly."""
    monkeypatch.setattr(FlyingHand, "figures", lambda *_: pytest.fail("flown"))
    assert "tether-slack" not in found(
        feasible(stage("  - {from: 3.1, pattern: two-beat-weave, beats: 8}\n"))
    )
    slow = feasible(stage("  - {from: 3.1, pattern: extension, cycle: 12, beats: 24}\n"))
    assert "tether-slack" in found(slow)


@pytest.mark.parametrize(
    ("rms", "broken", "severity"), [(0.2, (), "note"), (0.1, (), "note"), (0.2, ("pull",), "stop")]
)
def test_slack_as_drawn_that_flies_is_a_note(monkeypatch, rms, broken, severity):
    """A static spin that is taut from 47.3 a minute, at 45: the hand may leave its path to keep it taut."""
    own = replace(FLOWN, head_rms=rms, broken=broken)
    monkeypatch.setattr(FlyingHand, "figures", lambda *_: own)
    slow = "  - {from: 3.1, pattern: static-spin, beats: 8, cycle: 1}\n"
    (line,) = [f for f in feasible(stage(slow, tempo=45)).findings if f.code == "tether-slack"]
    assert line.severity == severity
    assert ("reads soft: " in line.message) == (rms > 0.15 and severity == "note")
    said = (
        "as drawn the tether would go slack at 45 beats a minute; flown, the hand goes up to 22 cm"
    )
    assert (said in line.message) == (severity == "note")
    assert any("as flown, tells" in way for way in line.remedies) == (severity == "stop")
    assert "shorten the cycle" in line.remedies[0]


def test_limits_are_the_callers():
    show = stage("  - {from: 3.1, pattern: extension, beats: 8}\n")
    strict = feasible(show, limits=FeasibilityLimits(hand_speed=0.5))
    assert "too-fast-to-dance" in found(strict)
    assert "too-fast-to-dance" not in found(feasible(show))


@pytest.mark.parametrize(
    ("speed", "gap", "severity", "word"),
    [
        (5.0, 0.03, "note", "passes"),
        (0.4, 0.03, "warn", "lingers"),
        (5.0, 0.004, "warn", "brushes past"),
    ],
)
def test_a_wick_near_the_own_body_is_grave_where_it_lingers_or_touches(
    monkeypatch, speed, gap, severity, word
):
    """0.2 s in a flame of 100 kW/m² give the dose of pain; a weave goes by in a fiftieth of that."""
    from sequencer.checks.dance import feasible as module

    least = SimpleNamespace(value=gap, beat=12.0, label=0)

    def everywhere(show, near):
        assert near == 0.05
        return {
            hand: [own._replace(least=least) for own in each]
            for hand, each in gap_to_body(show, near).items()
        }

    monkeypatch.setattr(module, "gap_to_body", everywhere)
    monkeypatch.setattr(module, "_head_rate", lambda *_: speed / (100.0 / 60.0))
    asked = stage("  - {from: 3.1, pattern: three-beat-weave, beats: 8}\n")
    near = [f for f in feasible(asked).findings if f.code == "flame-near-body"]

    assert {f.severity for f in near} == {severity}
    assert all(word in f.message for f in near)


def seated(stature, timeline, tether="0.5"):
    held = f"{{tether: {tether}}}, posture: seated"
    return stage(timeline, held=held, stature=stature)


@pytest.mark.parametrize("stature", ["1.40", *at_length("1.70", "2.10")])
@pytest.mark.parametrize("name", ["two-beat-weave", "three-beat-weave", "static-spin", "windmill"])
def test_by_its_name_alone_a_pattern_clears_the_chair(stature, name):
    """From rest, through the pattern and back to rest: nothing out of reach, nothing in wheel, leg or trunk."""
    show = seated(stature, f"  - {{from: 3.1, pattern: {name}, beats: 16}}\n")

    assert {f.code for f in feasible(show).findings} <= {"flame-near-body", "flown-not-drawn"}
    assert found(joins(show)) == []


def test_a_prop_in_a_wheel_is_told_by_its_name():
    """A wheel-plane circle beside the shoulder, where a standing performer has nothing but air."""
    line = "  - {from: 3.1, pattern: static-spin, with: {plane: wheel, across: 0, ahead: 0, up: 0}, beats: 8}\n"
    show = seated("1.70", line)
    told = [f.message for f in feasible(show).findings if f.code == "self-hit"]

    assert any("into the wheel" in message for message in told)
    assert "self-hit" not in found(feasible(stage(line, tether="0.5")))


def test_another_cycle_than_usual_is_noted_unless_it_was_written():
    """A stall of 2 beats turns 2.6 times a second at 100 a minute; of 4 it does not."""

    def told(block):
        show = stage(f"  - {{from: 3.1, pattern: {block}, beats: 8}}\n", tempo=100)
        return [f for f in feasible(show).findings if f.code == "another-cycle"]

    (line,) = told("stall")
    assert line.severity == "note"
    assert line.message == (
        "stall takes 4 beats a cycle, not its usual 2, so that it can be danced with this prop "
        "at this song's 100 beats a minute"
    )
    assert told("stall, cycle: 4") == []
    assert told("static-spin") == []


LINGERING = """\
title: Two links
track: {file: song.ogg}
venue:
  stage: {shape: round, width: 9 m}
  audience: [{line: [[-9, -9], [9, -9]]}]
  ceiling: open
cast:
  - {name: Isa, stature: 1.78 m, prop: {tether: 0.40 m}}
timeline:
  - {from: 2.1, pattern: two-beat-weave, timing: together, direction: same, shift: 1.5, beats: 14}
  - {link: true, beats: 1}
  - {pattern: inspin-flower-4, timing: together, direction: opposite, shift: 0.0, beats: 8}
  - {link: true, beats: 3}
  - {pattern: pendulum, with: {across: -0.35 m}, timing: together, direction: same, shift: 1.0, beats: 14}
  - {link: true, beats: 1}
  - {pattern: inspin-flower-4, timing: split, direction: same, beats: 8}
fire: {fuel: kerosene, flame: 0.3 m, lit: [{from: 1.1, until: 24.1}]}
"""


def test_a_wick_that_lingers_near_the_body_is_told_of_each_link():
    """A link is no pattern that comes back: a nearer pass in one must not hide that in another."""
    times = tuple(60.0 / 128.0 * k for k in range(96))
    song = Song(
        track="song.ogg", sha256="0" * 64, duration=45.0, tempo=128.0, metre=4, beats=times,
        downbeats=times[::4], sections=(Section(start=0.0, end=45.0, label="A"),),
    )  # fmt: skip
    show = staged(show_from_document(parse_document(LINGERING, "s.yaml")), song)
    near = [f for f in feasible(show).findings if f.code == "flame-near-body"]
    links = [f for f in near if f.message.startswith("link,")]
    assert [f.severity for f in links].count("warn") == 2
    assert [f.severity for f in links].count("note") <= 1
    assert {f.position.split(".")[0] for f in links if f.severity == "warn"} == {"8", "12"}
