"""Rows of every kind of post in a show with hand-overs, a relight and named people, against the plan by hand.

120 beats a minute from second 0: a bar is 2 s.
"""

import pytest

from sequencer.findings import Report
from sequencer.outputs.sheets.page.wording import NB
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.own_side import own_side
from sequencer.outputs.sheets.parts.post_acts import act_time, post_acts
from sequencer.outputs.sheets.parts.stage_plans.scene import stage_outline
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two lanterns
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 8 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Wren, stature: 1.7 m, prop: {tether: 55 cm}}
  - {name: Moss, stature: 1.8 m, prop: {tether: 55 cm}}
formations:
  row: {spots: {Wren: {at: [-4, 4]}, Moss: {at: [4, 4]}}}
  crossed: {spots: {Wren: {at: [4, 4]}, Moss: {at: [-4, 4]}}}
staging:
  - {formation: row, from: 1.1}
  - {formation: crossed, from: 17.1, beats: 8}
timeline:
  - {from: 1.1, pattern: two-beat-weave, until: 40.1}
fire:
  fuel: kerosene
  burn: {time: 4 min, measured: true}
  handling: {light: 5 s, put_out: 5 s, lit_by: Sorrel}
  lit:
    - {who: [Wren, Moss], from: 1.1, until: 31.1}
    - {who: Moss, from: 71.1, until: 81.1, put_out_by: Sorrel, lit_by: Linden}
crew:
  - {name: Flint, post: [-7, 4], duty: spotter}
  - {name: Brook, post: [7, 4], duty: spotter}
  - {name: Rowan, post: [0, 60], duty: spotter}
  - {name: Linden, post: [0, -2], duty: lead}
  - {name: Sorrel, post: [-7, 1], duty: lighter}
  - {name: Hazel, post: [0, -6], duty: perimeter}
  - {name: Tarn, post: [9, 9], duty: fuel keeper}
"""


def edition_of(text):
    show = staged(show_from_document(parse_document(text, "s.yaml")), even_song(400))
    return Edition(staged=show, report=Report(show="s.yaml"))


@pytest.fixture(scope="module")
def edition():
    return edition_of(SHOW)


def rows(edition, name):
    """Each row of a post: its time, cue, and orders with their details."""
    post = next(each for each in edition.staged.show.crew if each.name == name)
    side = own_side(stage_outline(edition.staged), post.post)
    return [
        (
            act.when,
            act.cue,
            tuple(f"{each.words} {each.detail}".strip().replace(NB, " ") for each in act.orders),
        )
        for act in post_acts(edition, post, side)
    ]


def test_a_spotter_watches_gives_and_takes_on_the_walk_and_puts_out(edition):
    """They change sides from 17.1, 32 s in, to 19.1: where they pass each other each is taken over by the nearer spotter."""
    first, over, out, *_ = rows(edition, "Flint")

    assert first[1:] == (
        "Sorrel lights Wren, first of 2",
        ("WATCH 1 WREN from the torch until cold",),
    )
    assert first[0] == "−0:18"  # 5 s each, and 8 m of way between them at 3.5 ft/s: 7.5 s
    assert over == (
        "0:34",
        "they are halfway into “crossed”, early in A",
        ("GIVE 1 WREN to Brook", "TAKE 2 MOSS from Brook: say the name"),
    )
    assert out[0] == "1:00"
    assert out[2] == ("PUT OUT 2 MOSS by 1:05: towel on until cold; never spin the flame out",)
    assert [row[2][0].split()[0] for row in rows(edition, "Brook")][:2] == ["WATCH", "GIVE"]


def test_one_spotter_puts_out_whoever_has_least_to_spare_first():
    """Moss burns from 1.1, Wren from 5.1 only, on alike wicks; both are put out at 31.1."""
    text = SHOW.replace("  - {name: Brook, post: [7, 4], duty: spotter}\n", "").replace("[0, 60]", "[90, 60]")  # fmt: skip
    text = text.replace(
        "    - {who: [Wren, Moss], from: 1.1, until: 31.1}\n",
        "    - {who: Moss, from: 1.1, until: 31.1}\n    - {who: Wren, from: 5.1, until: 31.1}\n",
    )
    orders = next(row[2] for row in rows(edition_of(text), "Flint") if row[0] == "1:00")

    assert orders[0].startswith("PUT OUT 2 MOSS, then 1 WREN ")


def test_who_is_named_puts_out_and_the_spotter_stands_by(edition):
    watcher = next(
        name for name in ("Flint", "Brook") if any(row[0] == "2:40" for row in rows(edition, name))
    )
    stands = next(row for row in rows(edition, watcher) if row[0] == "2:40")
    puts = next(row for row in rows(edition, "Sorrel") if row[0] == "2:40")

    assert stands[2] == ("STAND BY 2 MOSS Sorrel puts out; towel ready until cold",)
    assert puts[2] == ("PUT OUT 2 MOSS by 2:45: towel on until cold; never spin the flame out",)
    assert stands[1] == puts[1] == "the last flames go out; late in A"


def test_the_lighter_reads_the_order_with_times_and_places(edition):
    """Sorrel stands at [-7, 1], on the stage right side: Wren at [-4, 4] is 3 m ahead and, upstage, 3 m to the left."""
    first = rows(edition, "Sorrel")[0]

    assert first[1] == "Linden says go"
    assert first[2][0].startswith("LIGHT 1 WREN −0:")
    assert first[2][0].endswith(": 3 m ahead, 3 m to your left")
    assert first[2][1].endswith(": 11 m ahead, 3 m to your left")
    assert first[2][1].startswith("LIGHT 2 MOSS −0:05")
    assert first[2][2] == "PUT OUT the torch then step back to your mark"


def test_the_lead_reads_the_decisions(edition):
    said = rows(edition, "Linden")
    first = {row[2][0]: row for row in said}

    assert first["ASK each by name: go? one no: nobody is lit"][0] == f"−5{NB}min"
    assert first["SAY GO: first flame Sorrel lights Wren first"][1] == "all said go"
    assert first["SAY GO: start the music to the operator"][:2] == ("0:00", "all 2 are alight")
    relight = next(row for row in said if row[2][0] == "DECIDE: light, yes or no light Moss")
    assert "LIGHT 2 MOSS" in relight[2][1]  # the lead lights it, and decides first
    assert said[-1][1:] == (
        "last flame out",
        ("START the fire watch: 30 min", "KEEP everybody out until the watch ends"),
    )


@pytest.mark.parametrize("name", ["Hazel", "Tarn"])
def test_guard_and_keeper_see_the_first_and_the_last_flame(edition, name):
    first, last = rows(edition, name)

    assert (first[1], last[1]) == ("first flame", "last flame out")
    assert (first[0], last[0]) == (rows(edition, "Sorrel")[0][0], "2:45")
    assert all(order.split()[0] in {"LET", "WATCH", "KEEP", "COUNT"} for order in (*first[2], *last[2]))  # fmt: skip


def test_a_spotter_without_a_watch_stays_and_an_unlit_show_has_no_rows(edition):
    assert rows(edition, "Rowan") == [
        (rows(edition, "Sorrel")[0][0], "first flame", ("STAY on your post you watch nobody: you are the spare",))
    ]  # fmt: skip
    dark = edition_of(SHOW[: SHOW.index("fire:")] + SHOW[SHOW.index("crew:") :])
    assert all(rows(dark, post.name) == [] for post in dark.staged.show.crew)


def test_no_order_names_a_bar_and_each_begins_with_its_verb(edition):
    for post in edition.staged.show.crew:
        for _, cue, orders in rows(edition, post.name):
            assert cue
            assert "bar" not in cue
            for order in orders:
                assert order.split()[0].isupper(), order


def test_nobody_is_named_to_light_and_the_row_says_who_is_lit():
    text = SHOW.replace(", lit_by: Sorrel}", "}").replace("duty: lighter", "duty: perimeter")  # fmt: skip
    first = rows(edition_of(text), "Flint")[0]

    assert first[1] == "Wren is lit, first of 2"


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(-300.0, "−5 min"), (-15.0, "−0:15"), (-14.2, "−0:15"), (0.0, "0:00"), (86.9, "1:26")],
)
def test_a_time_is_rounded_so_that_nobody_is_late(seconds, words):
    assert act_time(seconds).replace(NB, " ") == words
