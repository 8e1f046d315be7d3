"""The page of a show as flown: everybody's own motion, as flown and as drawn, and a frame that outlives a place not known."""

from types import SimpleNamespace

import pytest

from sequencer.outputs.exports.trace import trace_frame
from sequencer.outputs.rehearsal.page_data import show_document
from sequencer.outputs.rehearsal.page_file import page_from_document
from sequencer.outputs.rehearsal.song_audio import silent
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.timeline import staged
from tests.songs import even_song

# Two of unlike stature, prop and dance, so that nobody's motion could pass for another's.
SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 8 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.6, prop: {tether: 0.40}}
  - {name: Birch, stature: 1.8, prop: {tether: 0.50}}
formations:
  apart: {spots: {Ash: {at: [-2, 4]}, Birch: {at: [2, 4]}}}
staging:
  - {formation: apart, from: 1.1}
timeline:
  - {who: Ash, from: 3.1, pattern: anti-bend-4, beats: 12, timing: together}
  - {who: Birch, from: 3.1, pattern: static-spin, beats: 12, timing: together}
"""


@pytest.fixture(scope="module")
def two():
    drawn = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(32))
    return SimpleNamespace(drawn=drawn, flown=flown_show(drawn).staged)


@pytest.fixture(scope="module")
def page(browser, two, opened, tmp_path_factory):
    from sequencer.checks.suite import checked

    path = tmp_path_factory.mktemp("flown") / "two.html"
    document = show_document(two.flown, checked(two.drawn), two.drawn)
    path.write_text(page_from_document(document, silent("")), encoding="utf-8")
    with opened(browser, path, viewport=opened.SMALL) as there:
        yield there.page
        assert there.complaints == []


def farthest(page, rows, before=""):
    """How far [m] a hand or head on the page is from its row, at most."""
    worst = 0.0
    for second, hands in rows.groupby("seconds"):
        shown = {one["name"]: one for one in page.evaluate("t => rehearsal.positions(t)", second)}
        for row in hands.itertuples():
            for part in ("hand", "head"):
                seen = shown[row.performer][part][row.side]
                true = [getattr(row, f"{before}{part}_{axis}") for axis in "xyz"]
                worst = max(worst, *(abs(a - b) for a, b in zip(seen, true, strict=True)))
    return worst


def test_everybody_dances_their_own_motion_as_flown_and_as_drawn(page, two):
    """At eight moments, against the rows that `trace` prints; the page promises 2 mm."""
    rows = trace_frame(two.drawn, rate=0.7, flown=two.flown)
    rows = rows[rows["seconds"].between(3.0, 15.0)]
    assert set(rows["performer"]) == {"Ash", "Birch"}
    assert len(rows["seconds"].unique()) >= 8
    assert farthest(page, rows, "flown_") < 2e-3
    page.evaluate("rehearsal.danceDrawn(true)")
    assert farthest(page, rows) < 2e-3 < farthest(page, rows, "flown_")
    page.evaluate("rehearsal.danceDrawn(false)")


LOST = """() => {
  const { framing, movers } = rehearsal, own = new framing.constructor(movers), shown = movers.map(() => true);
  const before = own.around(10, shown), whole = own.all(0, 20), [one] = movers;
  own.again();
  one.at = (beat, pose) => { Object.getPrototypeOf(one).at.call(one, beat, pose); pose.hand.left[0] = NaN; };
  const after = own.around(12, shown), all = own.all(0, 20);
  delete one.at;
  return [before, after, whole, all];
}"""


def test_a_place_that_is_not_known_leaves_the_frame_as_it_was(page):
    before, after, whole, lost = page.evaluate(LOST)
    assert all(isinstance(side, int | float) for side in (*before, *whole))
    assert after == before
    assert lost is None
