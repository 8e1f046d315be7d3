"""Entrances and exits: where everybody is, by which way, and what is refused."""

import pytest

from sequencer.checks.dance.in_the_wings import CHECK
from sequencer.checks.dance.travel import walks
from sequencer.checks.distances.keeping_clear import boundaries_of
from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.outputs.sheets.parts.cues import cues_of
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.on_floor.own_walks import own_walks
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ada, stature: 1.70 m, prop: poi}
  - {name: Bo, stature: 1.80 m, prop: poi}
formations:
  line: {spots: {Ada: {at: [-2, 4]}, Bo: {at: [2, 4]}}}
  deep: {spots: {Ada: {at: [-2, 6]}, Bo: {at: [2, 6]}}}
staging:
  - {formation: line, from: 1.1}
  - {formation: deep, from: 9.1, beats: 8}
timeline:
  - {who: Ada, from: 1.1, pattern: extension, beats: 32}
"""
THREE = (  # one formation, with Cy downstage between Ada and Bo
    SHOW.replace("  - {name: Bo,", "  - {name: Cy, stature: 1.7 m, prop: poi}\n  - {name: Bo,")
    .replace("Bo: {at: [2, 4]}", "Bo: {at: [2, 4]}, Cy: {at: [0, 2]}")
    .replace("Bo: {at: [2, 6]}", "Bo: {at: [2, 6]}, Cy: {at: [0, 2]}")
    .replace("  - {formation: deep, from: 9.1, beats: 8}\n", "")
)
ON = "entrances:\n  - {who: Bo, comes_on: 5.1, beats: 8, side: stage left}\n"
OFF = "  - {who: Bo, goes_off: 13.1, beats: 4, side: stage right}\n"
FIRE = "fire: {fuel: lamp oil, lit: [{who: Bo, from: 3.1, until: 6.1}]}\n"


def made(text: str) -> Staged:
    return staged(show_from_document(parse_document(text, "show.yaml")), even_song(beats=96))


def _place(show: Staged, who: str, beat: float) -> tuple[float, float]:
    dancer = next(each for each in show.dancers if each.name == who)
    x, y = dancer.floor.place_at(beat)
    return round(x, 3), round(y, 3)


def _walks(show: Staged, who: str) -> list[tuple[float, float, tuple[float, ...]]]:
    """Walks of somebody as the floor has them, which are those that the sheets tell."""
    dancer = next(each for each in show.dancers if each.name == who)
    found = [(each.start, each.end, each.place) for each in dancer.floor.moves]
    told = own_walks(who, show.standings)
    assert [(each.start, each.end, each.spot[:2]) for each in told] == [
        each for each in found if each[:2] in {(one.start, one.end) for one in told}
    ]
    return found


def test_who_comes_on_waits_in_the_wings_and_walks_to_their_spot() -> None:
    show = made(SHOW + ON)
    assert (
        _place(show, "Bo", 0.0) == _place(show, "Bo", 16.0) == (6.0, 4.0)
    )  # 1 m off a stage of 10
    assert _place(show, "Bo", 20.0) == (4.0, 4.0)  # half-way at half time, by the law of a walk
    assert _place(show, "Bo", 24.0) == (2.0, 4.0)
    assert _place(show, "Ada", 20.0) == (-2.0, 4.0)
    assert [(each.formation, each.walk, each.start, each.end) for each in show.standings] == [
        ("line", 0.0, 0.0, 16.0), ("line", 16.0, 24.0, 32.0), ("deep", 32.0, 40.0, 96.0),
    ]  # fmt: skip
    assert show.standings[1].path == ("entrances", 0)


def test_who_goes_off_walks_from_their_spot_and_stays_off_when_others_walk() -> None:
    show = made(SHOW + "entrances:\n" + OFF.replace("13.1", "5.1"))
    assert _place(show, "Bo", 16.0) == (2.0, 4.0)
    assert _place(show, "Bo", 20.0) == _place(show, "Bo", 60.0) == (-6.0, 4.0)
    assert _place(show, "Ada", 60.0) == (-2.0, 6.0)
    assert show.dancers[1].floor.off == ((16.0, float("inf")),)


def test_who_comes_on_during_a_walk_of_the_others_goes_straight_to_the_new_spot() -> None:
    show = made(SHOW + ON.replace("5.1", "9.3"))
    assert _place(show, "Bo", 34.0) == (6.0, 6.0)
    assert _place(show, "Bo", 42.0) == (2.0, 6.0)  # in their own eight beats, from 34 to 42
    assert len(show.standings) == 2
    assert _walks(show, "Bo") == [(34.0, 42.0, (2.0, 6.0))]
    assert _walks(show, "Ada") == [(32.0, 40.0, (-2.0, 6.0))]


def test_somebody_comes_on_and_goes_off_while_another_walks_slowly() -> None:
    show = made(
        THREE + "entrances:\n"
        "  - {who: Bo, comes_on: 2.1, beats: 8, side: stage left}\n"
        "  - {who: Cy, comes_on: 3.1, beats: 16, side: stage right}\n"
        "  - {who: Bo, goes_off: 6.1, beats: 4, side: stage right}\n"
    )
    assert _walks(show, "Bo") == [(4.0, 12.0, (2.0, 4.0)), (20.0, 24.0, (-6.0, 4.0))]
    assert _walks(show, "Cy") == [(8.0, 24.0, (0.0, 2.0))]
    assert _place(show, "Bo", 16.0) == (2.0, 4.0)
    assert next(each for each in show.dancers if each.name == "Bo").floor.off == (
        (float("-inf"), 12.0),
        (20.0, float("inf")),
    )
    told = [(cue.start, cue.coming.on) for cue in cues_of(show, "Bo") if cue.coming is not None]
    assert told == [(4.0, True), (20.0, False)]


def test_somebody_goes_off_and_comes_on_from_another_side_while_another_walks_slowly() -> None:
    show = made(
        THREE + "entrances:\n"
        "  - {who: Bo, goes_off: 2.1, beats: 4, side: stage left}\n"
        "  - {who: Cy, goes_off: 2.2, beats: 40, side: stage right}\n"
        "  - {who: Bo, comes_on: 5.1, beats: 8, side: stage right}\n"
    )
    walks = _walks(show, "Bo")
    assert walks[0] == (4.0, 8.0, (6.0, 4.0))
    assert [place for _, _, place in walks[1:]] == [
        (6.0, 9.0),
        (-6.0, 9.0),
        (-6.0, 4.0),
        (2.0, 4.0),
    ]
    assert walks[1][0] == 8.0
    assert walks[3][1] == pytest.approx(16.0)
    assert walks[4][:2] == (16.0, 24.0)


@pytest.mark.parametrize("turned", ["", ", facing: 90"])
def test_a_formation_is_taken_while_somebody_walks_behind_the_stage(turned: str) -> None:
    both = SHOW.replace("Bo: {at: [2, 6]}", f"Bo: {{at: [2, 6]{turned}}}") + (
        "entrances:\n"
        "  - {who: Bo, goes_off: 6.1, beats: 4, side: stage left}\n"
        "  - {who: Bo, comes_on: 13.1, beats: 8, side: stage right}\n"
    )
    walks = _walks(made(both), "Bo")
    assert len(walks) == 5
    assert walks[0] == (20.0, 24.0, (6.0, 4.0))
    assert walks[-1] == (48.0, 56.0, (2.0, 6.0))


def test_somebody_comes_on_and_goes_off_within_one_walk_of_the_others() -> None:
    long = SHOW.replace("from: 9.1, beats: 8", "from: 4.1, beats: 40") + "entrances:\n"
    on_off = made(
        long + "  - {who: Bo, comes_on: 5.1, beats: 8, side: stage left}\n"
        "  - {who: Bo, goes_off: 8.1, beats: 4, side: stage right}\n".replace("goes_off: 8.1", "goes_off: 16.1")
    )  # fmt: skip
    assert _walks(on_off, "Bo") == [(16.0, 24.0, (2.0, 6.0)), (60.0, 64.0, (-6.0, 6.0))]
    within = made(
        long + "  - {who: Bo, comes_on: 5.1, beats: 8, side: stage left}\n"
        "  - {who: Bo, goes_off: 8.1, beats: 4, side: stage right}\n"
    )
    assert _walks(within, "Bo") == [(16.0, 24.0, (2.0, 6.0)), (28.0, 32.0, (-6.0, 6.0))]
    off_on = made(
        long + "  - {who: Bo, goes_off: 3.3, beats: 4, side: stage left}\n"
        "  - {who: Bo, comes_on: 8.1, beats: 8, side: stage left}\n"
    )
    assert _walks(off_on, "Bo")[0] == (10.0, 14.0, (6.0, 4.0))
    assert _walks(off_on, "Bo")[-1] == (28.0, 36.0, (2.0, 6.0))


def test_an_exit_into_a_walk_is_not_hurried_by_an_entrance_of_somebody_else() -> None:
    show = made(
        THREE.replace("  - {formation: line, from: 1.1}\n", "  - {formation: line, from: 1.1}\n  - {formation: deep, from: 9.1, beats: 8}\n")
        + "entrances:\n"
        "  - {who: Bo, goes_off: 8.1, beats: 6, side: stage left}\n"
        "  - {who: Cy, comes_on: 8.3, beats: 2, side: stage right}\n"
    )  # fmt: skip
    assert _walks(show, "Bo") == [(28.0, 34.0, (6.0, 4.0))]


def test_those_on_one_side_wait_beside_each_other() -> None:
    both = SHOW.replace("Bo: {at: [2, 4]}", "Bo: {at: [2, 4.5]}").replace(
        "pattern: extension", "rest: 1, note: x"
    )
    both = both.replace("rest: 1, note: x, beats: 32", "rest: 8")
    show = made(both + "entrances:\n  - {who: all, comes_on: 5.1, beats: 8, side: upstage}\n")
    near = made(
        both.replace("[-2, 4]", "[1.5, 4]")
        + "entrances:\n  - {who: all, comes_on: 5.1, beats: 8, side: upstage}\n"
    )
    assert [_place(show, who, 0.0) for who in ("Ada", "Bo")] == [(-2.0, 9.0), (2.0, 9.0)]
    assert [_place(near, who, 0.0) for who in ("Ada", "Bo")] == [(1.5, 9.0), (2.0, 10.5)]


def test_the_way_to_another_side_leads_behind_the_stage() -> None:
    show = made(SHOW + ON + OFF + "  - {who: Bo, comes_on: 20.1, beats: 4, side: stage left}\n")
    assert _place(show, "Bo", 52.0) == (-6.0, 6.0)
    assert _place(show, "Bo", 76.0) == (6.0, 6.0)
    between = [_place(show, "Bo", beat)[1] for beat in (60.0, 64.0, 68.0)]
    assert min(between) >= 8.0  # never over the stage, which is 8 m deep


def test_the_edge_of_the_stage_is_no_limit_for_entrances_but_for_whoever_is_lit_there() -> None:
    def off_stage(text: str) -> list[tuple[str, str]]:
        return [
            (each.who[0], each.code)
            for each in boundaries_of(made(text)).findings
            if each.code == "off-stage"
        ]

    assert off_stage(SHOW + ON + OFF) == []
    assert off_stage(SHOW + ON + OFF + FIRE) == [("Bo", "off-stage")]
    assert off_stage(
        SHOW.replace(
            "deep: {spots: {Ada: {at: [-2, 6]}, Bo: {at: [2, 6]}",
            "deep: {spots: {Ada: {at: [-2, 6]}, Bo: {at: [7, 6]}",
        )
        + ON
    ) == [("Bo", "off-stage")]
    assert off_stage(SHOW.replace("Bo: {at: [2, 4]}", "Bo: {at: [7, 4]}")) == [("Bo", "off-stage")]


def test_whoever_is_lit_in_the_wings_is_told_what_helps() -> None:
    (finding,) = [
        each for each in boundaries_of(made(SHOW + ON + FIRE)).findings if each.code == "off-stage"
    ]
    assert finding.position == "3.1"  # when the burn begins, while Bo waits
    assert "nobody is lit in the wings" in finding.remedies[0]


def test_nobody_walks_into_the_audience_on_the_way_on_or_off_lit_or_not() -> None:
    def close(text: str) -> list[Finding]:
        return [
            each for each in boundaries_of(made(text)).findings if each.code == "audience-too-close"
        ]

    def at(place: str) -> str:
        return SHOW + ON.replace("side: stage left", f"at: {place}")

    (through,) = close(at("[2, -15]"))  # the line is 9 m downstage
    assert (through.severity, through.who) == ("stop", ("Bo",))
    (figure,) = through.figures
    assert figure.value < 0
    assert figure.limit == 0.30
    assert "another side" in through.remedies[0]
    (waits,) = close(at("[2, -8.6]"))  # body and props are beside the line as long as Bo waits
    assert waits.position == made(SHOW).position(0.0)
    assert close(at("[2, -7]")) == close(at("[6, 4]")) == []
    behind = at("[2, -7]") + (
        "  - {who: Bo, goes_off: 9.1, beats: 4, side: stage right}\n"
        "  - {who: Bo, comes_on: 14.1, beats: 4, at: [2, -10]}\n"
    )
    behind = behind.replace("  - {formation: deep, from: 9.1, beats: 8}\n", "")
    assert len(close(behind)) == 1  # the way round behind the stage leads into the audience
    near = SHOW.replace("[[-12, -9], [12, -9]]", "[[-12, -0.1], [12, -0.1]]").replace(
        "Ada: {at: [-2, 4]}", "Ada: {at: [-2, 0.1]}"
    )
    assert close(near) == close(near + ON) == []  # on stage only whoever is lit keeps off


def test_a_hurried_way_behind_the_stage_is_told_with_what_helps() -> None:
    one = SHOW.replace("  - {formation: deep, from: 9.1, beats: 8}\n", "") + "entrances:\n"

    def hurried(back: str) -> list[Finding]:
        show = made(
            one + "  - {who: Bo, goes_off: 3.1, beats: 8, side: stage right}\n"
            f"  - {{who: Bo, comes_on: {back}, beats: 8, side: stage left}}\n"
        )
        return [each for each in walks(show).findings if each.code == "walks-too-fast"]

    (finding,) = [each for each in hurried("6.1") if "behind" in each.message]
    assert finding.position == "5.1"
    assert "4 beats to get round behind the stage" in finding.message
    (figure,) = finding.figures
    seconds = 4 * 0.5 * 5 / 22  # 5 of 22 m in this share of the time, at 120 beats a minute
    assert figure.value == pytest.approx(15 / 8 * 5 / seconds, rel=0.01)
    later = float(finding.remedies[0].split()[4])
    assert later == pytest.approx(4 * (figure.value / 1.6 - 1), abs=0.5)
    assert not any("give the walk" in each for each in finding.remedies)
    assert not any("behind" in each.message for each in hurried("19.1"))


def test_nobody_dances_in_the_wings_unnoticed() -> None:
    danced = SHOW.replace(
        "  - {who: Ada", "  - {who: Bo, from: 1.1, pattern: extension, beats: 32}\n  - {who: Ada"
    )
    (finding,) = CHECK.run(made(danced + ON)).findings
    assert (finding.code, finding.severity, finding.who, finding.position) == (
        "dances-in-wings",
        "warn",
        ("Bo",),
        "1.1",
    )
    assert finding.end == pytest.approx(made(danced).seconds(16.0))
    later = danced.replace("who: Bo, from: 1.1", "who: Bo, from: 5.1")
    assert CHECK.run(made(later + ON)).findings == ()  # a move while they walk on is seen
    linked = later.replace(
        "  - {who: Bo", "  - {who: Bo, from: 4.3, link: true, beats: 2}\n  - {who: Bo"
    )
    assert CHECK.run(made(linked + ON)).findings == ()  # bringing the props up is no move
    assert CHECK.run(made(danced)).not_checked == ()


@pytest.mark.parametrize(
    ("said", "code", "line"),
    [
        (ON + "  - {who: Bo, comes_on: 13.1, beats: 4, side: upstage}\n", "entrance-twice", 19),
        (ON + OFF.replace("13.1", "6.1"), "entrance-too-soon", 19),
        (ON.replace("5.1", "8.3"), "entrance-in-a-walk", 18),
        ("entrances:\n" + OFF.replace("13.1", "9.3"), "entrance-in-a-walk", 18),
        (ON.replace("5.1", "24.1"), "walk-past-the-end", 18),
        (ON + OFF + "  - {who: Bo, comes_on: 14.1, beats: 4, side: stage left}\n", "entrance-too-soon", 20),
        (ON.replace("Bo", "Cy"), "unknown-performer", 18),
        (ON.replace("side: stage left", "at: [0, 5]"), "waits-on-stage", 18),
        (ON.replace("side: stage left", "at: [5, 5]"), "waits-on-stage", 18),  # on the edge
        (ON.replace("Bo", "all").replace("side: stage left", "at: [7, 5]"), "one-place-for-all", 18),
        (ON.replace("Bo", "[Ada, Bo]").replace("side: stage left", "at: [7, 5]"), "bad-value", 18),
        (ON.replace(", side: stage left", ""), "bad-value", 18),
        (ON.replace("comes_on: 5.1, ", ""), "bad-value", 18),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_with_its_line(said: str, code: str, line: int) -> None:
    with pytest.raises(InputError) as caught:
        made(SHOW + said)
    assert (caught.value.code, caught.value.place.line) == (code, line)
    assert caught.value.mend


def test_a_place_on_the_stage_is_refused_with_one_beside_it() -> None:
    for at, beside in (("[-3, 5]", "[-6, 5]"), ("[0.5, 5]", "[6, 5]")):
        with pytest.raises(InputError) as caught:
            made(SHOW + ON.replace("side: stage left", f"at: {at}"))
        assert f"{at} is on the stage" in caught.value.what
        assert beside in caught.value.mend
        made(SHOW + ON.replace("side: stage left", f"at: {beside}"))


def test_from_in_front_of_the_stage_the_way_behind_leads_past_a_side() -> None:
    one = SHOW.replace("  - {formation: deep, from: 9.1, beats: 8}\n", "") + "entrances:\n"
    show = made(
        one + "  - {who: Bo, goes_off: 3.1, beats: 4, at: [2, -2]}\n"
        "  - {who: Bo, comes_on: 13.1, beats: 4, side: stage right}\n"
    )
    ways = [place for _, _, place in _walks(show, "Bo")]
    assert ways[1:-1] == [(6.0, -2.0), (6.0, 9.0), (-6.0, 9.0), (-6.0, 4.0)]
    back = made(
        one + "  - {who: Bo, goes_off: 3.1, beats: 4, side: upstage}\n"
        "  - {who: Bo, comes_on: 13.1, beats: 4, at: [-1, -2]}\n"
    )
    ways = [place for _, _, place in _walks(back, "Bo")]
    assert ways[1:-1] == [(-6.0, 9.0), (-6.0, -2.0), (-1.0, -2.0)]


def test_the_way_behind_leads_past_whoever_would_wait_farther_upstage() -> None:
    show = made(
        SHOW + "entrances:\n  - {who: Bo, goes_off: 3.1, beats: 4, at: [1, 12]}\n"
        "  - {who: Bo, comes_on: 13.1, beats: 4, side: stage left}\n"
    )
    assert [place for _, _, place in _walks(show, "Bo")] == [
        (1.0, 12.0), (6.0, 12.0), (6.0, 6.0), (2.0, 6.0),
    ]  # fmt: skip


@pytest.mark.parametrize("side", ["left", "right"])
def test_on_one_side_the_way_leads_straight(side: str) -> None:
    x = 6.0 if side == "left" else -6.0
    show = made(
        SHOW + f"entrances:\n  - {{who: Bo, goes_off: 3.1, beats: 4, side: stage {side}}}\n"
        f"  - {{who: Bo, comes_on: 13.1, beats: 4, side: stage {side}}}\n"
    )
    assert [place for _, _, place in _walks(show, "Bo")] == [(x, 4.0), (x, 6.0), (2.0, 6.0)]


def test_whoever_keeps_their_spot_comes_on_and_goes_off_while_the_others_walk() -> None:
    kept = SHOW.replace("Bo: {at: [2, 6]}", "Bo: {at: [2, 4]}")
    on = made(kept + ON.replace("5.1", "8.3"))  # from 30 to 38, the others from 32 to 40
    assert _walks(on, "Bo") == [(30.0, 38.0, (2.0, 4.0))]
    off = made(kept + "entrances:\n" + OFF.replace("13.1", "9.3"))
    assert _walks(off, "Bo") == [(34.0, 38.0, (-6.0, 4.0))]


def test_who_comes_on_as_the_others_set_off_waits_level_with_the_spot_that_they_go_to() -> None:
    show = made(SHOW + ON.replace("5.1", "9.1"))
    assert _walks(show, "Bo") == [(32.0, 40.0, (2.0, 6.0))]
    assert _place(show, "Bo", 0.0) == (6.0, 6.0)


def test_upstage_the_way_to_another_place_leads_straight() -> None:
    show = made(
        SHOW + "entrances:\n  - {who: Bo, goes_off: 3.1, beats: 4, side: upstage}\n"
        "  - {who: Bo, comes_on: 13.1, beats: 4, at: [-3, 12]}\n"
    )
    assert [place for _, _, place in _walks(show, "Bo")] == [(2.0, 9.0), (-3.0, 12.0), (2.0, 6.0)]


def test_whoever_is_away_tonight_has_no_entrance() -> None:
    show = made(SHOW + ON + "tonight: {away: [Bo]}\n")
    assert show.comings == ()
    assert [each.name for each in show.dancers] == ["Ada"]
