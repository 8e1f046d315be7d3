"""Fuel, lighting and the run of the night of a show of three, with a relight."""

import math
from dataclasses import replace

import pytest

from sequencer.errors import InputError
from sequencer.facts.profiles import profile
from sequencer.facts.rule_book import rule_book
from sequencer.safety.burns.fuel_plan import FUEL_RESERVE, SPIN_OFF
from sequencer.safety.run_of_night import MINUTE, run_of_the_night
from sequencer.safety.safety_plan import safety_plan
from sequencer.safety.site_ground.post_ground import proposed_posts
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Three lanterns
begins: "23:59"
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 8 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
  extinguishers: [{at: [-7, 4]}, {at: [7, 4]}]
cast:
  - {name: Wren, stature: 1.7 m, prop: {tether: 55 cm, fuel_mass: 48.6 g}}
  - {name: Moss, stature: 1.8 m, prop: {tether: 55 cm, fuel_mass: 48.6 g}}
  - {name: Sable, stature: 1.8 m, prop: {tether: 55 cm}}
formations:
  turned: {spots: {Wren: {at: [12, 4]}, Moss: {at: [-8, 4]}, Sable: {at: [2, 4]}}}
  row: {spots: {Wren: {at: [-4, 4]}, Moss: {at: [0, 4]}, Sable: {at: [4, 4]}}}
staging: [{formation: row, from: 1.1}]
fire:
  fuel: kerosene
  burn: {time: 4 min, measured: true}
  lit:
    - {who: [Wren, Moss], from: 1.1, until: 41.1}
    - {who: Wren, from: 81.1, until: 101.1, props: second set}
    - {who: Sable, from: 81.1, until: 91.1}
  handling: {light: 5 s, put_out: 4 s, swap: 20 s, waiting: on the ground, lit_by: Sorrel}
crew:
  - {name: Flint, post: [-4, 9], duty: spotter, equipment: damp towel}
  - {name: Brook, post: [4, 9], duty: spotter, equipment: damp towel}
  - {name: Sorrel, post: [7, 1], duty: lighter}
"""
# Wren and Moss stand 4 m apart, Sable and Wren 8 m: at the slow walk of 3.5 ft/s
NEXT, FAR = 4 / 1.0668, 8 / 1.0668


STAGED = """\
staging:
  - {formation: row, from: 1.1}
  - {formation: turned, from: 3.1, beats: 8}
"""


@pytest.fixture(scope="module")
def show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(600))


@pytest.fixture(scope="module")
def plan(show):
    return safety_plan(show)


def test_fuel_for_each_prop_and_in_all(plan):
    """48.6 g kept of kerosene at 810 kg/m³ (SG 0.81, NIOSH) are 60 mL; a quarter more was spun off."""
    wren = [each for each in plan.fuel.props if each.who == "Wren"]

    assert [(each.side, each.soaks) for each in wren] == [("left", 2), ("right", 2)]
    assert wren[0].taken_up == pytest.approx(2 * 60e-6 / (1 - SPIN_OFF))
    assert wren[0].spun_off == pytest.approx(2 * 60e-6 / (1 - SPIN_OFF) * SPIN_OFF)
    assert plan.fuel.of("Wren") == pytest.approx(2 * wren[0].taken_up)
    assert plan.fuel.of("Moss") == pytest.approx(wren[0].taken_up)
    assert plan.fuel.of("Sable") is None
    assert plan.fuel.unweighed == ("Sable",)
    assert plan.fuel.taken_up == pytest.approx(6 * 80e-6)
    assert plan.fuel.prepared == pytest.approx(6 * 80e-6 * (1 + FUEL_RESERVE))
    assert plan.fuel.spun_off == pytest.approx(6 * 20e-6)


def test_who_has_least_to_spare_is_lit_last(plan):
    first, second = plan.lighting

    assert [light.burn.who for light in first.lights] == ["Wren", "Moss"]
    assert [light.at_s for light in first.lights] == pytest.approx([-10.0 - NEXT, -5.0])
    # 80 s danced, then 4 s until Flint has put out Wren, and for Moss the way there and 4 s more
    assert [light.spare_s for light in first.lights] == pytest.approx([146.0 - NEXT, 147.0 - NEXT])
    assert [light.burn.who for light in second.lights] == ["Sable", "Wren"]
    assert [light.at_s for light in second.lights] == pytest.approx([150.0 - FAR, 155.0])


def test_a_flame_counts_from_its_lighting_until_it_is_out(plan):
    """Wren is alight while Moss is lit: 80 s of dance are 98 s of burn; 4 min after the lighting the wick is dry."""
    wren, moss = plan.burns[0], plan.burns[1]

    assert (wren.who, wren.lighting_s, wren.out_s) == ("Wren", 5.0, 84.0)
    assert (wren.wait_s, wren.lit_s) == pytest.approx((5.0 + NEXT, 94.0 + NEXT))
    assert wren.dry_s == pytest.approx(240.0 - 10.0 - NEXT)
    assert (moss.who, moss.wait_s, moss.put_out_by) == ("Moss", 0.0, "Flint")
    assert (moss.queue_s, moss.lit_s, moss.dry_s) == pytest.approx((4.0 + NEXT, 93.0 + NEXT, 235.0))


def test_who_lights_who_waits_and_who_puts_out_stand_in_the_steps(show, plan):
    steps = run_of_the_night(show, plan).steps
    lights = [step for step in steps if step.what.startswith("Sorrel lights")]
    outs = [step for step in steps if "puts out" in step.what]
    swaps = [step for step in steps if step.what.startswith("change to the second soaked set")]

    assert [step.what for step in lights] == ["Sorrel lights, in this order, 5 s each"] * 2
    assert [step.who for step in lights] == [
        ("Sorrel", "Wren", "Moss"),
        ("Sorrel", "Sable", "Wren"),
    ]
    assert lights[0].checks == (
        "Wren, from 0:13.7 before the track: 142 s to spare at the end",
        "Moss, from 0:05.0 before the track: 143 s to spare at the end",
        "Lay the heads on bare ground, tethers to your side, until the first move",
    )
    assert (
        "Wren, from 2:35.0: 191 s to spare at the end, with the second soaked set, never the hot wick"
        in lights[1].checks
    )
    assert [(step.at, step.until, step.who) for step in swaps] == [(135.0, 155.0, ("Wren",))]
    assert [step.what for step in outs] == [
        "Flint puts out in this order, 4 s each: smother; never spin the flame out",
        "Brook puts out Sable, 4 s: smother; never spin the flame out",
        "Flint puts out Wren, 4 s: smother; never spin the flame out",
    ]
    assert outs[0].checks[:2] == ("Wren: out by 1:24.0", "Moss: out by 1:31.7")
    assert [(step.at, step.until) for step in outs[1:]] == [(180.0, 184.0), (200.0, 204.0)]


def test_where_nobody_is_named_the_step_says_so_and_times_are_marked_as_assumed():
    text = SHOW.replace(
        "  handling: {light: 5 s, put_out: 4 s, swap: 20 s, waiting: on the ground, lit_by: Sorrel}\n",
        "",
    )
    text = text.replace("duty: lighter", "duty: lead").replace("duty: spotter", "duty: perimeter")
    bare = staged(show_from_document(parse_document(text, "s.yaml")), even_song(600))
    said = [step.what for step in run_of_the_night(bare, safety_plan(bare)).steps]

    assert said.count("NOBODY IS NAMED TO LIGHT: do not light") == 2
    assert said.count("NOBODY IS NAMED TO PUT OUT: do not light") == 3
    assert (
        "change to the second soaked set, never the hot wick, 20 s (assumed, not measured)" in said
    )


def test_what_the_posts_carry_is_set_out(show, plan):
    steps = run_of_the_night(show, plan).steps
    lines = next(step.checks for step in steps if step.what == "set out equipment")

    assert "each post’s own things, as on its page" in lines
    assert "at least 2 damp towels in total" in lines
    assert "2 extinguishers in position" in lines


def test_the_night_runs_from_load_in_to_the_end_of_the_fire_watch(show, plan):
    night = run_of_the_night(show, plan)
    said = [step.what for step in night.steps]
    times = [step.at for step in night.steps]

    assert times == sorted(times)
    assert said[0].startswith("load in")
    assert said[-1].startswith("hand the venue back")
    order = ["load in", "mark the floor", "set out", "test the sound cut", "first go", "briefing", "open the fuel point", "soak",
             "shut the can", "second go", "Sorrel lights, in this order", "start the music",
             "Flint puts out", "quench", "sweep", "hand the venue"]  # fmt: skip
    places = [next(i for i, text in enumerate(said) if text.startswith(word)) for word in order]
    assert places == sorted(places)
    watch = next(step for step in night.steps if step.what.startswith("fire watch"))
    assert (watch.at, watch.until) == (204.0, 204.0 + 30 * MINUTE)
    assert "from memory" in watch.source
    # nothing is sealed while a wick is hot: 10 min unless it was timed
    seal = next(step for step in night.steps if step.what == "seal the fuel")
    assert seal.at == 204.0 + 10 * MINUTE
    assert seal.checks[0] == "every wick cold, 10 min (assumed, not measured)"


def test_clock_times_pass_midnight(show, plan):
    night = run_of_the_night(show, plan)

    assert night.clock(0.0) == "23:59:00"
    assert night.clock(90.0) == "00:00:30"
    assert night.clock(-120 * MINUTE) == "21:59:00"
    assert night.steps[0].position is None
    assert run_of_the_night(show, plan).begins == "23:59"


def test_go_and_log_name_the_rules_and_every_burn(show, plan):
    night = run_of_the_night(show, plan)

    asked = {line.asks: line for line in night.go}
    assert "Gusts at prop height below 6.7 m/s (Beaufort 4; borrowed from open burning)" in asked
    lower = asked["Gusts at prop height below 4.5 m/s"]  # the rules' warning, a line of its own
    assert lower.if_no == "go on only if you measure again before each lighting"
    assert any("none recorded" in words for words in asked)
    for needed in ("ban notice", "Extinguisher 2 of 2", "pressure, pin, tag", "Every can shut", "props counted out: 8",
                   "Sound cut tested with the operator", "2 damp towels", "Exits"):  # fmt: skip
        assert any(needed in words for words in asked), needed


def test_everybody_is_asked_by_name_and_only_after_they_were_sent(show, plan):
    """Posts are manned ten minutes before; the first go or no-go is long before, and asks nobody to be on post."""
    night = run_of_the_night(show, plan)
    at = {step.what.split(":")[0]: step.at for step in night.steps}

    assert at["first go or no-go"] == night.first_go
    assert at["second go or no-go"] == night.second_go
    assert night.first_go < at["open the fuel point"] < at["soak and spin off"] < at["to the posts"]
    assert at["to the posts"] < night.second_go < 0
    assert not any("on post" in line.asks for line in night.go)
    for name in ("S1 Flint, spotter: on post", "S2 Brook, spotter: on post", "________, lead: on post",
                 "________, perimeter guard: on post", "________, first aider: there", "Sable, performer: ready"):  # fmt: skip
        assert name in night.people
    early = {line.asks for line in night.go if line.first}
    assert not any(
        word in words for words in early for word in ("soaked", "can shut", "Perimeter closed")
    )


def test_where_soaking_takes_long_all_that_comes_before_it_is_earlier(show, plan):
    """Fifty props at a minute each: the fuel is opened 70 min before the song, so go or no-go comes 40 min before that."""
    many = replace(
        plan, fuel=replace(plan.fuel, props=plan.fuel.props[:1] * 25)
    )  # each soaked twice
    night = run_of_the_night(show, many)
    at = {step.what.split(":")[0]: step.at for step in night.steps}

    assert at["open the fuel point"] == -70 * MINUTE
    assert night.first_go == at["first go or no-go"] == -110 * MINUTE
    assert at["check costume and hair"] < at["open the fuel point"]
    assert run_of_the_night(show, plan).first_go == -75 * MINUTE


def test_the_fire_watch_walks_every_ten_minutes_and_at_its_end(show, plan):
    assert run_of_the_night(show, plan).rounds == (0.0, 600.0, 1200.0, 1800.0)
    short = replace(plan, book=rule_book(profile("utah"), with_default=False))
    assert run_of_the_night(show, short).rounds == (0.0,)


def test_a_dark_show_has_a_night_without_fuel():
    text = SHOW[: SHOW.index("fire:")] + SHOW[SHOW.index("crew:") :]
    dark = staged(show_from_document(parse_document(text, "s.yaml")), even_song(600))
    plan = safety_plan(dark)
    night = run_of_the_night(dark, plan)

    assert plan.fuel is None
    assert proposed_posts(dark, plan) is None
    assert not any("soak" in step.what or "fire watch" in step.what for step in night.steps)


def test_a_night_under_a_roof_asks_for_no_wind_but_hands_watches_over():
    """And a burn of unknown time says so where it is lit."""
    text = (
        SHOW.replace("venue:", "venue:\n  setting: indoors")
        .replace("  burn: {time: 4 min, measured: true}\n", "")
        .replace("fuel: kerosene", "fuel: ethanol")
    )
    text = text.replace("staging: [{formation: row, from: 1.1}]", STAGED)
    roof = staged(show_from_document(parse_document(text, "s.yaml")), even_song(600))
    plan = safety_plan(roof)
    night = run_of_the_night(roof, plan)
    said = [step.what for step in night.steps]

    assert not any("Gusts" in line.asks for line in night.go)
    assert any(text.startswith("hand over the watch of") for text in said)
    boxes = [box for step in night.steps for box in step.checks]
    assert any(
        box.startswith("Sable, from") and box.endswith("burning time unknown") for box in boxes
    )
    assert night.clock(0.0) is not None
    assert (
        run_of_the_night(
            replace(roof, show=roof.show.model_copy(update={"begins": None})), plan
        ).clock(0)
        is None
    )
    assert [burn.share() for burn in plan.burns if burn.who == "Sable"] == [math.inf]


def test_texts_that_ask_nothing_of_wind_or_soak_leave_it_out(show, plan):
    bare = replace(plan, book=rule_book(profile("utah"), with_default=False), fuel=None)
    night = run_of_the_night(show, bare)
    boxes = [box for step in night.steps for box in step.checks]

    assert not any("Gusts" in line.asks for line in night.go)
    assert not any("soak at least" in box for box in boxes)
    assert not any("________, perimeter" in line for line in night.people)
    assert (
        next(step for step in night.steps if step.what == "soak and spin off").source
        == "common practice"
    )
    assert proposed_posts(show, replace(plan, crew=()), number=1) is not None


def test_posts_are_proposed_for_as_many_as_the_rules_ask(show, plan):
    posting = proposed_posts(show, plan)

    assert len(posting.places) == 2
    assert posting.way < plan.watch.worst
    assert all(y > -9 for _, y in posting.places)


def test_a_bad_clock_time_is_refused():
    with pytest.raises(InputError, match="24:10"):
        show_from_document(parse_document(SHOW.replace("23:59", "24:10"), "s.yaml"))
