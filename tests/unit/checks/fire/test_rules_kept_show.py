"""A sound show of two, and the same show with one thing of fire, crew or rules broken at a time."""

from dataclasses import replace

import pytest

from sequencer.checks.distances.rule_distances import distances_by, required_distances
from sequencer.checks.fire import rules_kept
from sequencer.checks.fire.at_posts import lines_of_sight, watch_kept
from sequencer.checks.fire.each_burn import burning_time
from sequencer.checks.fire.each_burn.burning_time import cuts_of
from sequencer.checks.fire.on_site import audience_room, exits_clear, heat
from sequencer.checks.outcome import Outcome
from sequencer.checks.registry import check_named
from sequencer.checks.suite import reported
from sequencer.errors import InputError
from sequencer.facts.profiles import profile
from sequencer.facts.rule_book import rule_book
from sequencer.safety.rules.circumstances import cautions_of, conditions_of
from sequencer.safety.safety_plan import refuel_seconds, safety_plan, watched_by_one
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.timing.song import Section
from tests.songs import even_song

PERMIT = "permit: {number: P-2026-7, issued_by: fire office, from: 2026-12-01, until: 2026-12-31, place: Yard}"
LOOSE = PERMIT.replace("}", ", loosens: [audience-distance]}")
SHOW = f"""\
title: Two lanterns
date: 2026-11-25
night: 2026-12-05
track: {{file: song.ogg}}
venue:
  name: Yard
  setting: outdoors
  ceiling: open
  stage: {{shape: rectangle, width: 10 m, depth: 8 m}}
  audience:
    - {{name: front, line: [[-12, -9], [12, -9]]}}
  extinguishers:
    - {{at: [-5, 4], rating: "2-A:10-B:C", kind: foam}}
    - {{at: [5, 4], rating: "2-A:10-B:C", kind: foam}}
    - {{at: [11, 11], rating: "2-A:10-B:C", kind: foam}}
  fuel_station: [11, 12]
  spin_off: [[10, 13], [12.5, 13], [12.5, 15], [10, 15]]
  exits: [{{name: lane, at: [-16, -12], width: 2 m}}, {{name: road, at: [16, -12], width: 3 m}}]
  audience_size: 100
  wind: 2 m/s
  wind_from: upstage
cast:
  - {{name: Wren, stature: 1.7 m, prop: {{tether: 55 cm, fuel_mass: 45 g}}, birth_year: 1994}}
  - {{name: Moss, stature: 1.8 m, prop: {{tether: 55 cm, fuel_mass: 45 g}}, birth_year: 1990}}
formations:
  pair: {{spots: {{Wren: {{at: [-2, 4]}}, Moss: {{at: [2, 4]}}}}}}
staging:
  - {{formation: pair, from: 1.1}}
fire:
  fuel: kerosene
  burn: {{time: 4 min, measured: true}}
  flame: 0.7 m
  fuel_on_site: 3 L
  handling: {{light: 1 s, put_out: 1 s, cool: 1 s}}
  lit:
    - {{who: all, from: 1.1, until: 81.1}}
crew:
  - {{name: Flint, post: [0, 9], duty: spotter, equipment: [2 damp towels, fire blanket]}}
  - {{name: Hazel, post: [0, -4], duty: perimeter}}
  - {{name: Tarn, post: [12, 12], duty: fuel keeper}}
  - {{name: Linden, post: [-8, 0], duty: lead, equipment: [whistle]}}
rules:
  {PERMIT}
"""
WALL = """\
  scenery: [{name: wall, height: 2 m, outline: [[-9, 6], [9, 6], [9, 6.5], [-9, 6.5]]}]
"""
EXITS = SHOW[SHOW.index("  exits:") : SHOW.index("  wind:")]
WAY_OUT = "  exits: [{name: gate, at: [16, -12], width: 9 m}]\n"
FIRE = (
    "burning-time", "crew", "posts", "watch", "hand-overs", "lines-of-sight", "heat", "equipment", "extinguishers",
    "fuel-point", "fuel", "wind", "house-rules", "downwind", "exits", "audience-room", "to-confirm", "not-planned",
)  # fmt: skip
# 120 beats a minute: 81.1 is 160 s, under 0.8 of 240 s = 192 s.


def song():
    return even_song(600, sections={0.0: "verse", 60.0: "refrain", 180.0: "end"})


def show(text=SHOW):
    return staged(show_from_document(parse_document(text, "s.yaml")), song())


def safety(show):
    """What the checks of fire, crew and house rules say; each is held to the codes it declares."""
    return sum((check_named(name).outcome(show) for name in FIRE), Outcome())


def safety_findings(show):
    return list(safety(show).findings)


def brought_up(show):
    return reported(show, safety(show)).conditions


def changed(*pairs):
    text = SHOW
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    return safety_findings(show(text))


def test_a_sound_show_has_only_notes():
    found = safety_findings(show())

    assert {finding.severity for finding in found} == {"note"}
    assert [finding.code for finding in found] == ["to-confirm"]


@pytest.mark.parametrize(
    ("code", "severity", "pairs"),
    [
        ("burns-out", "stop", [("until: 81.1", "until: 126.1")]),
        ("burn-reserve", "warn", [("until: 81.1", "until: 101.1")]),
        ("burn-reserve", "warn", [("fuel: kerosene", "fuel: kerosene\n  reserve: 0.6")]),
        ("burn-not-timed", "warn", [("measured: true", "measured: false")]),
        ("burn-not-timed", "stop", [("  burn: {time: 4 min, measured: true}\n", "")]),
        ("burn-unknown", "stop", [("  burn: {time: 4 min, measured: true}\n", ""),
                                  ("fuel: kerosene", "fuel: ethanol"), (", fuel_mass: 45 g", "")]),
        ("nobody-watching", "stop", [("duty: spotter", "duty: lead")]),
        ("nobody-watching", "stop", [("duty: spotter", "duty: spotter, watches: [Moss]")]),
        ("post-out-of-reach", "stop", [("post: [0, 9]", "post: [-6, 9]")]),
        ("crew-doubles", "stop", [("name: Hazel", "name: moss")]),
        ("too-few-safety", "stop", [("  - {name: Hazel, post: [0, -4], duty: perimeter}\n", "")]),
        ("too-few-safety", "stop", [("  - {name: Tarn, post: [12, 12], duty: fuel keeper}\n", "")]),
        ("equipment-missing", "stop", [("2 damp towels", "damp towel")]),
        ("equipment-missing", "stop", [(", fire blanket", "")]),
        ("post-without-equipment", "warn",
         [("duty: perimeter}", "duty: perimeter}\n  - {name: Brook, post: [0, 10]}")]),
        ("post-without-equipment", "warn",
         [("duty: perimeter}", "duty: perimeter}\n  - {name: Brook, post: [0, 10], equipment: [whistle]}")]),
        ("extinguishers-few", "stop", [("2-A:10-B:C", "1-A:10-B:C")]),
        ("extinguisher-small", "warn", [("fuel_on_site: 3 L", "fuel_on_site: 40 L")]),
        ("limit-loosened", "note", [(PERMIT, LOOSE + "\n  audience: 4 m")]),
        ("extinguishers-one-side", "warn", [("at: [-5, 4]", "at: [6, 4]"), ("at: [11, 11]", "at: [6, 9]"),
                                            ("fuel_station: [11, 12]", "fuel_station: [11, 11]")]),
        ("extinguisher-far", "stop", [("at: [11, 11]", "guards: fuel, at: [-11, 11]")]),
        ("fuel-extinguisher-missing", "stop", [("at: [11, 11]", "at: [-11, 11]")]),
        ("extinguisher-far", "stop", [("at: [5, 4]", "at: [12.5, 4]"), ("at: [-5, 4]", "at: [-12.5, 4]")]),
        ("fuel-point-close", "stop", [("fuel_station: [11, 12]", "fuel_station: [8, 8]")]),
        ("fuel-point-close", "stop", [("[[-12, -9], [12, -9]]", "[[-12, -9], [16, -9], [16, 12]]")]),
        ("fuel-point-close", "stop", [("spin_off: [[10, 13], [12.5, 13], [12.5, 15], [10, 15]]",
                                       "spin_off: [[-1, 3], [1, 3], [1, 5], [-1, 5]]")]),  # where they dance
        ("fuel-point-close", "stop", [("spin_off: [[10, 13], [12.5, 13], [12.5, 15], [10, 15]]",
                                       "spin_off: [[-1, -13], [1, -13], [1, -10], [-1, -10]]")]),  # in the crowd
        ("fuel-point-close", "stop", [("fuel_station: [11, 12]", "fuel_station: [0, -17]")]),  # deep in it
        ("fuel-refused", "stop", [("fuel: kerosene", "fuel: petrol")]),
        ("fuel-refused", "stop", [("fuel: kerosene", "fuel: paint thinner")]),
        ("fuel-class", "warn", [("fuel: kerosene", "fuel: white gas")]),
        ("fuel-over-limit", "stop", [("fuel_on_site: 3 L", "fuel_on_site: 4 L")]),
        ("indoors-not-recorded", "stop", [("setting: outdoors", "setting: indoors")]),
        ("indoors-forbidden", "stop", [("setting: outdoors", "setting: indoors"),
                                       (PERMIT, "profile: montreal")]),
        ("no-permit", "warn", [(PERMIT, "profile: default")]),
        ("not-recorded", "stop", [("  wind: 2 m/s\n", "")]),
        ("not-recorded", "stop", [("  fuel_on_site: 3 L\n", "")]),
        ("not-recorded", "stop", [(", birth_year: 1994", "")]),
        ("not-recorded", "stop", [("  fuel_station: [11, 12]\n", "")]),
        ("not-recorded", "stop", [("  setting: outdoors\n", "")]),
        ("not-recorded", "stop", [("  ceiling: open\n", "")]),
        ("not-recorded", "stop", [("  flame: 0.7 m\n", "")]),
        ("not-recorded", "stop", [("  spin_off: [[10, 13], [12.5, 13], [12.5, 15], [10, 15]]\n", "")]),
        ("no-permit", "warn", [("issued_by: fire office, ", "")]),
        ("no-permit", "warn", [("night: 2026-12-05\n", "")]),
        ("permit-contradicts", "stop", [("place: Yard", "place: Quay")]),
        ("permit-contradicts", "stop", [("night: 2026-12-05", "night: 2027-01-01")]),
        ("permit-contradicts", "stop", [("night: 2026-12-05", "night: 2026-11-30")]),
        ("breathes-fire", "stop", [("title: Two lanterns", "title: Two lanterns, with fire breathing")]),
        ("under-age", "stop", [("birth_year: 1994", "birth_year: 2009")]),
        ("wind-high", "stop", [("wind: 2 m/s", "wind: 15 mph")]),
        ("wind-still", "warn", [("wind: 2 m/s", "wind: 0 m/s")]),
        ("wind-near", "warn", [("wind: 2 m/s", "wind: 5 m/s")]),
        ("wind-high", "stop", [("rules:\n", "weather: {gusts: 2 m/s}\nrules:\n")]),
        ("limit-capped", "warn", [("rules:\n", "weather: {gusts: 9 m/s}\nrules:\n")]),
        ("limit-capped", "warn", [("fuel: kerosene", "fuel: kerosene\n  reserve: 0.9")]),
        ("limit-capped", "warn", [("rules:\n", "rules:\n  audience: 3 m\n")]),
        ("fuel-downwind", "stop", [("wind_from: upstage", "wind_from: stage right")]),
        ("audience-downwind", "warn", [("[[-12, -9], [12, -9]]", "[[-12, -7.5], [12, -7.5]]")]),
        ("scenery-downwind", "warn", [("wind_from: upstage", "wind_from: audience"), ("  fuel_station", WALL + "  fuel_station")]),
        ("not-recorded", "stop", [("  wind_from: upstage\n", "")]),
        ("roof-contradicts", "stop", [("setting: outdoors", "setting: indoors")]),
        ("stop-call-kept", "warn", [("rules:\n", "stop_call: {callers: [Hazel]}\nrules:\n")]),
        ("exits-too-narrow", "stop", [("width: 3 m", "width: 1 m"), ("audience_size: 100", "audience_size: 781")]),
        ("exits-too-narrow", "warn", [("audience_size: 100", "audience_size: 781")]),
        ("not-recorded", "stop", [(", width: 3 m", "")]),
        ("not-recorded", "stop", [(EXITS, "  audience_size: 20\n")]),
        ("not-recorded", "stop", [("  audience_size: 100\n", "")]),
        ("audience-crowded", "warn", [(EXITS, WAY_OUT + "  audience_size: 101\n  audience_area: 50 m²\n")]),
        ("audience-crowded", "stop", [(EXITS, WAY_OUT + "  audience_size: 167\n  audience_area: 50 m²\n")]),
        ("too-few-safety", "stop", [(EXITS, WAY_OUT + "  audience_size: 1001\n"), (PERMIT, "profile: england-wales")]),
        ("fire-ban", "stop", [(PERMIT, "profile: nsw-fire-ban")]),
        ("flame-high", "stop", [(PERMIT, PERMIT + "\n  profile: austin")]),
        ("limit-loosened", "note", [(PERMIT, LOOSE + "\n  profile: kansas-city")]),
        ("fuel-short", "warn", [("fuel_on_site: 3 L", "fuel_on_site: 250 mL")]),
        ("fuel-over-limit", "stop", [("fuel_mass: 45 g}, birth_year: 1994", "fuel_mass: 700 g}, birth_year: 1994")]),
        ("not-recorded", "stop", [(", fuel_mass: 45 g}, birth_year: 1994", "}, birth_year: 1994")]),
        ("flame-understated", "warn", [("fuel: kerosene", "fuel: kerosene"), ("flame: 0.7 m", "flame: 0.3 m")]),
        ("audience-heat", "stop", [("[[-12, -9], [12, -9]]", "[[-12, 2], [12, 2]]")]),
        ("sight-blocked", "stop", [("  fuel_station", WALL + "  fuel_station")]),
        ("fuel-permit", "warn", [("fuel_on_site: 3 L", "fuel_on_site: 40 L"),
                                 (PERMIT, PERMIT + "\n  profile: new-york")]),
    ],
)  # fmt: skip
def test_one_thing_broken_is_found_and_says_who_rules(code, severity, pairs):
    found = [finding for finding in changed(*pairs) if finding.code == code]

    assert found
    assert {finding.severity for finding in found} == {severity}
    for finding in found:
        assert finding.source
        assert finding.remedies or severity == "note"


def test_the_wind_s_direction_is_asked_for_without_a_fuel_point_too():
    found = changed(("  wind_from: upstage\n", ""), ("  fuel_station: [11, 12]\n", ""))
    said = {each.message for each in found if each.code == "not-recorded"}

    assert said == {
        "wind direction is not recorded; a blank counts as unmet",
        "the fuel point is not recorded; a blank counts as unmet",
    }


def test_people_downwind_are_named_in_still_air():
    found = changed(
        ("wind: 2 m/s", "wind: 0 m/s"), ("[[-12, -9], [12, -9]]", "[[-12, -7.5], [12, -7.5]]")
    )

    assert "audience-downwind" in {each.code for each in found}


def test_the_fuel_keeper_reads_of_every_burn_that_is_too_long():
    """Not only of those that eat the reserve: of those that go out too."""
    text = SHOW.replace("until: 81.1", "until: 126.1").replace(
        "fuel_on_site: 3 L", "fuel_on_site: 4 L"
    )
    report = reported(show(text), safety(show(text)))

    codes = {each.code for each in report.findings if each.code in report.fuel_codes}
    assert codes == {"burns-out", "fuel-over-limit"}


def test_the_remedies_of_a_burn_name_sections_and_hold():
    (finding,) = [
        each for each in changed(("until: 81.1", "until: 121.1")) if each.who == ("Wren",)
    ]

    # 240 s of dance. Before it 1 s of lighting, then 4 m at 3.5 ft/s, 3.75 s, and 1 s in which Moss is lit; after it
    # 1 s until it is out. The wick burns 240 s
    assert finding.code == "burns-out"
    assert (
        "lit for 4:06.8 (1 s being lit, 5 s waiting alight, 4:00.0 danced, 1 s until it is out), but the wick "
        "burns 4:00.0"
    ) in finding.message
    # 192 s allowed, 6.75 s of them handled: the last border before 3:05.25 is the end's start at 3:00.0, bar 91
    assert finding.remedies[0].startswith("put Wren out at 91.1 (end, 3:00.0), 60 s earlier")
    # 1 s to put out, the usual 20 s to change sets, 1 s to light
    assert finding.remedies[1] == (
        "put Wren out at 91.1 (end, 3:00.0), and relight with a second soaked set (props: second set), 22 s later "
        "or more"
    )
    assert finding.remedies[2] == (
        "use a wick that holds at least 1.29 times the fuel and, timed, burns 5:08.5 or longer"
    )


def test_the_posts_that_are_proposed_mend_it():
    """Taken over into the show, the proposed place is in reach, sees and stands outside every reach."""
    bad = [
        each
        for each in changed(("post: [0, 9]", "post: [-6, 9]"))
        if each.code == "post-out-of-reach"
    ]
    said = bad[0].remedies[-1]
    x, y = said[said.index("[") + 1 : said.index("]")].split(",")

    assert said.startswith("post 1 spotter at ")
    mended = changed(("post: [0, 9]", f"post: [{x}, {y}]"))
    assert [each.code for each in mended if each.severity != "note"] == []


def test_where_there_is_no_place_for_a_post_none_is_proposed():
    pen = "[[-2.6, 3.4], [2.6, 3.4], [2.6, 4.6], [-2.6, 4.6], [-2.6, 3.4]]"
    found = changed(("post: [0, 9]", "post: [-6, 9]"), ("[[-12, -9], [12, -9]]", pen))
    said = [each for each in found if each.code == "post-out-of-reach"]

    assert said
    assert not any("of everybody" in text for each in said for text in each.remedies)


def test_block_borders_are_cuts_and_sections_outside_the_song_are_not():
    text = SHOW.replace(
        "fire:", "timeline:\n  - {from: 33.1, pattern: two-beat-weave, beats: 8}\nfire:"
    )
    staged_show = show(text)
    late = Section(start=400.0, end=410.0, label="ghost")
    odd = replace(
        staged_show, song=replace(staged_show.song, sections=(*staged_show.song.sections, late))
    )
    labels = {cut.position: cut.label for cut in cuts_of(odd)}

    assert labels == {"1.1": "verse", "31.1": "refrain", "33.1": "two-beat-weave", "91.1": "end"}


def test_a_book_without_a_needed_rule_is_a_fault_of_the_caller(monkeypatch):
    plan = safety_plan(show())
    bare = replace(plan, book=rule_book(profile("utah"), with_default=False))

    monkeypatch.setattr(burning_time, "safety_plan", lambda _show: bare)
    with pytest.raises(ValueError, match="burn-share"):
        burning_time.burning_time(show())
    assert watched_by_one(bare.book, 3) == (3, None)
    assert refuel_seconds(bare.book) == 0


def test_without_a_date_the_age_is_that_of_this_year():
    found = changed(("date: 2026-11-25\n", ""), ("birth_year: 1994", "birth_year: 2099"))

    assert "under-age" in [each.code for each in found]


def test_burns_on_one_soak_are_counted_together():
    """Eight seconds dark are no time to cool, soak and spin off; the second burn goes on on the first soak.

    120 s and 80 s, with 1 s to light and 1 s to put out each time; 28 s dark are more than the 1 + 25 s needed.
    """
    split = "until: 61.1}\n    - {who: Wren, from: 65.1, until: 105.1}"
    late = split.replace("65.1", "75.1").replace("105.1", "115.1")
    together = changed(("until: 81.1}", split))
    fresh = changed(("until: 81.1}", late))

    assert [each.code for each in together if each.severity != "note"] == ["burn-reserve"]
    assert "count as one" in together[0].message
    assert [each.code for each in fresh if each.severity != "note"] == []


def test_a_log_of_timed_burns_goes_before_what_is_stated(tmp_path):
    rows = "fuel,performer,burn\nkerosene,Wren,180\nkerosene,Wren,184\nkerosene,Moss,400\n"
    (tmp_path / "burns.csv").write_text(rows, encoding="utf-8")
    text = SHOW.replace("fuel: kerosene", "fuel: kerosene\n  burns: burns.csv")
    read = show_from_document(parse_document(text, str(tmp_path / "s.yaml")))
    found = {
        each.code: each
        for each in safety_findings(staged(read, song()))
        if each.code != "to-confirm"
    }

    # Wren: 160 s of 180 s is over 0.8; Moss has 400 s; both logs are too short for an interval
    assert set(found) == {"burn-reserve", "burn-few-times"}
    assert found["burn-reserve"].who == ("Wren",)
    assert "shortest of 2 timed burns" in found["burn-reserve"].source

    (tmp_path / "burns.csv").unlink()
    with pytest.raises(InputError, match="burn log not found"):
        safety_findings(staged(read, song()))


def test_the_check_says_what_it_did_not_look_at():
    assert safety(show()).not_checked == (
        watch_kept.NOT_CHECKED, lines_of_sight.NOT_SEEN, heat.NOT_CHECKED, exits_clear.NOT_WALKED,
        audience_room.EXITS, audience_room.NO_FLOOR, rules_kept.NOT_CHECKED,
    )  # fmt: skip
    floor = SHOW.replace("  wind:", "  audience_area: 50 m²\n  wind:")
    assert audience_room.NO_FLOOR not in safety(show(floor)).not_checked
    dark = SHOW[: SHOW.index("fire:")] + SHOW[SHOW.index("crew:") :]
    assert safety(show(dark)).not_checked == ()


def test_own_rules_of_a_file_hold(tmp_path):
    rules = "title: By-law\nrules:\n  - {rule: spotters, value: 3, source: By-law 1 section 2}\n"
    (tmp_path / "rules.yaml").write_text(rules, encoding="utf-8")
    text = SHOW.replace(PERMIT, PERMIT + "\n  file: rules.yaml")
    read = show_from_document(parse_document(text, str(tmp_path / "s.yaml")))
    found = [each for each in safety_findings(staged(read, song())) if each.severity == "stop"]

    assert [each.code for each in found] == ["too-few-safety"]
    assert "By-law, spotters: 3. By-law 1 section 2 [own; as entered]" in found[0].source


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("fuel: kerosene", "fuel: kerosine", "unknown-fuel"),
        ("fuel: kerosene", "fuel: paraffin", "unknown-fuel"),
        ("time: 4 min", "time: 0 s", "bad-value"),
        (PERMIT, "profile: atlantis", "unknown-profile"),
        ('{at: [-5, 4], rating: "2-A:10-B:C"', '{at: [-5, 4], rating: "huge"', "bad-rating"),
        ("fuel_mass: 45 g}, birth_year: 1994", "fuel_mass: -45 g}, birth_year: 1994", "bad-value"),
    ],
)
def test_names_that_no_table_holds_are_refused_where_they_stand(old, new, code):
    with pytest.raises(InputError) as caught:
        show(SHOW.replace(old, new))

    assert caught.value.code == code
    assert caught.value.place.line > 1


def test_a_dark_show_asks_nothing_of_fire():
    text = SHOW[: SHOW.index("fire:")] + SHOW[SHOW.index("crew:") :]

    assert safety_findings(show(text)) == []
    assert safety_findings(show(text.replace("setting: outdoors", "setting: indoors"))) == []
    assert cautions_of(show(text)) == ()


def test_cautions_follow_place_and_crew():
    indoors = show(SHOW.replace("setting: outdoors", "setting: indoors"))
    alone = show(SHOW[: SHOW.index("crew:")] + SHOW[SHOW.index("rules:") :])

    assert {"indoors", "exits"} <= conditions_of(indoors)
    assert "wind" not in conditions_of(indoors)
    assert "crew" not in conditions_of(alone)


def test_cautions_follow_the_findings():
    sound, broken = show(), show(SHOW.replace(PERMIT, "profile: default"))

    assert "without-permit" not in conditions_of(sound)
    assert "without-permit" in conditions_of(broken, brought_up(broken))
    assert {"lit", "outdoors", "wind", "music", "crew"} <= conditions_of(sound)
    keys = [each.key for each in cautions_of(broken, brought_up(broken), reader="packet")]
    assert "no-permit" in keys
    short = show(SHOW.replace("duty: spotter", "duty: lead"))
    assert "crew-short" in conditions_of(short, brought_up(short))


def test_distances_come_from_the_rules_in_force():
    default = show()
    local = show(SHOW.replace(PERMIT, LOOSE + "\n  profile: kansas-city"))
    own = show(SHOW.replace(PERMIT, "audience: 9 m\n  between_performers: 50 cm"))

    alone = rule_book(profile("montreal"), with_default=False)
    assert distances_by(default, alone).audience == 5.0
    assert distances_by(default, alone).ceiling_least == pytest.approx(3.6576)  # its own default
    found = required_distances(default)
    assert (found.audience, found.audience_more) == pytest.approx((6.096, 1.524))
    assert "Grants Pass" in found.source("audience")
    assert required_distances(local).audience == pytest.approx(3.048)
    found = required_distances(own)
    assert (found.audience, found.audience_more, found.performers) == (9.0, 0.0, 0.5)


def test_a_smaller_distance_of_the_show_needs_a_reference():
    loose = SHOW.replace(PERMIT, "audience: 3 m")
    agreed = SHOW.replace(PERMIT, "audience: 3 m\n  " + LOOSE)

    assert required_distances(show(loose)).audience == pytest.approx(6.096)
    found = required_distances(show(agreed))
    assert found.audience == 3.0
    assert "permit P-2026-7" in found.source("audience")
