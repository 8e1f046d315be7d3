"""A small show to practise, staged once, and lines of a log; bars of four at 120 beats a minute."""

import datetime as dt
from functools import cache

from sequencer.outputs.practice_pages.practice_words import PlanEdition
from sequencer.practice.log_reading import LogGround
from sequencer.practice.logged_run import LoggedRun
from sequencer.practice.practice_plan import practice_plan
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.moments import beat_of
from sequencer.staging.timeline import staged
from sequencer.timing.position import parse_moment
from tests.songs import even_song

TODAY = dt.date(2026, 11, 30)  # a Monday
SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ada, stature: 1.70 m, prop: &poi {tether: 0.45 m}}
  - {name: Bo, stature: 1.70 m, prop: *poi}
formations:
  line: {spots: {Ada: {at: [-2, 4]}, Bo: {at: [2, 4]}}}
  deep: {spots: {Ada: {at: [-2, 6]}, Bo: {at: [2, 4.1]}}}
staging:
  - {formation: line, from: 1.1}
  - {formation: deep, from: 9.1, beats: 8}
timeline:
  - {who: all, from: 3.1, pattern: extension, timing: together, beats: 14}
  - {who: all, link: true, beats: 2}
  - {who: all, pattern: static-spin, timing: together, beats: 32}
  - {who: [Ada, Bo], from: 15.1, canon: 4, pattern: pro-bend-3, with: {hand_radius: 10 cm}, timing: together, cycle: 3, beats: 6}
fire:
  fuel: lamp oil
  burn: {time: 240 s, measured: false}
  lit: [{who: Ada, from: 3.1, until: 12.1}]
"""


@cache
def made_show():
    """The show on its song of 96 beats."""
    return staged(show_from_document(parse_document(SHOW, "two.yaml")), even_song(beats=96))


def ground(names=("Ada", "Bo"), today=TODAY):
    """What a log of the show is read against."""
    show = made_show()
    return LogGround(
        names=names,
        beat_of=lambda text: beat_of(parse_moment(text), show.song, show.tempo),
        today=today,
    )


def run(day=30, who="Ada", *, line=0, month=11, **more):
    """A line of a log, of November 2026 unless said otherwise; at tempo."""
    given = {"speed": 1.0, **more}
    return LoggedRun(date=dt.date(2026, month, day), who=who, line=line, **given)


def edition(runs=(), who=("Ada", "Bo")):
    """The plan of some performers by a log, with what a print-out of it needs."""
    show = made_show()
    return PlanEdition(
        show=show, plan=practice_plan(show, runs, who), show_path="two.yaml", log_path="two.practice.csv",
        log_name="two.practice.csv", loops="missing",
    )  # fmt: skip
