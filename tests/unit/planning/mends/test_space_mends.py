"""Every kind of mend of two who come too close: planted, offered, applied to the file, proven, harmless."""

from functools import cache

import numpy as np
import pytest

from sequencer.motion.clearance.nearest import closest
from sequencer.planning.mends.space_mends import baseline, harm_of, mends_for, too_close
from sequencer.planning.offers import checked_with_mends
from sequencer.planning.trying.restaging import restaged
from sequencer.show.editing import edited_text
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SONG = even_song(48)
SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: &poi {tether: 0.45}}  # a note on Ash
  - {name: Birch, stature: 1.7, prop: *poi}
formations:
  close:  # too close on purpose
    FORMATION
MORE
staging:
  - {formation: close, from: 1.1}
WALK
timeline:
  - {TIMELINE}
fire:
  fuel: kerosene
  flame: 0.2 m
  lit: [{from: 1.1, until: 11.1}]
"""
SPIN = "from: 3.1, pattern: static-spin, cycle: 1, beats: 24, timing: together"
REACH = "with: {hand_radius: 40 cm}, cycle: 2, beats: 24, timing: together"
SPOTS = "spots: {Ash: {at: [-1, 4]}, Birch: {at: [APART, 4]}}"


def spots(apart):
    return SPOTS.replace("APART", str(apart))


def text_of(formation, timeline, *, more="", walk=""):
    return (
        SHOW.replace("FORMATION", formation).replace("TIMELINE", timeline)
        .replace("MORE\n", more).replace("WALK\n", walk)
    )  # fmt: skip


PLANTED = {
    "place": text_of(spots(0.55), SPIN),
    "widen": text_of(spots(0.55), SPIN),
    "widen a shape": text_of("shape: line\n    centre: [0, 4]\n    spacing: 2.0", SPIN),
    "turn": text_of("shape: line\n    centre: [0, 4]\n    spacing: 2.3", SPIN),
    "facing": text_of(spots(1.9), f"who: [Ash, Birch], from: 3.1, pattern: extension, {REACH}, canon: 1"),
    "canon": text_of(spots(1.9), f"who: [Ash, Birch], from: 3.1, pattern: extension, {REACH}, canon: 1"),
    "shift": text_of(
        spots(1.9),
        f"who: Ash, from: 3.1, pattern: extension, {REACH}}}\n"
        f"  - {{who: Birch, from: 3.1, shift: 1, pattern: extension, {REACH}",
    ),
    "tether": text_of("shape: line\n    centre: [0, 4]\n    spacing: 2.3", SPIN),
    "tether of its usual length": text_of(
        "shape: line\n    centre: [0, 4]\n    spacing: 2.4", SPIN
    ).replace("{tether: 0.45}", "poi"),
    "plane": text_of(spots(1.3), "from: 3.1, pattern: extension, cycle: 2, beats: 24, timing: together"),
    "way": text_of(
        "spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4.4]}}",
        SPIN,
        more="  there:\n    spots: {Ash: {at: [3, 4]}, Birch: {at: [-3, 4.2]}}\n",
        walk="  - {formation: there, from: 4.1, beats: 16}\n",
    ),
}  # fmt: skip


def stage(text):
    return staged(show_from_document(parse_document(text, "s.yaml")), SONG)


@cache
def mends_of(text):
    """What stands before a mend, and the mends: of a text in which several kinds are planted, found once."""
    before = baseline(stage(text))
    assert before.bad, "the plant must be too close"
    return before, mends_for(before, before.bad[0])


@pytest.mark.parametrize("planted", PLANTED)
def test_every_kind_of_mend_holds(planted):
    text, kind = PLANTED[planted], planted.split()[0]
    before, mends = mends_of(text)
    edit, tried = next(one for one in mends.accepted if one[0].kind == kind)

    kinds = [edit.kind for edit, _ in mends.accepted]
    order = [
        "widen",
        "place",
        "way",
        "turn",
        "facing",
        "canon",
        "shift",
        "tether",
        "plane",
        "place",
    ]
    assert kinds == [each for each in order if each in kinds][: len(kinds)], "as a captain would"
    changed = edited_text(text, list(edit.changes), edit.insertions)
    after = stage(changed)  # what stands in the file, not what was tried in memory
    assert too_close(after) == () == too_close(tried)
    assert harm_of(before, after, trajectories=True) == ()
    assert "# too close on purpose" in changed
    if kind != "tether":
        assert "# a note on Ash" in changed
    # Without any code of the search: many instants of the conflict.
    beats = np.linspace(before.bad[0].start, before.bad[0].end, 4001)
    assert closest(*after.dancers, beats).distance.min() >= 0.3 - 1e-6


def test_a_smaller_change_of_the_same_kind_does_not_do():
    """The mend offered is the first that holds: the next smaller widening still comes too close."""
    text = PLANTED["widen a shape"]
    before, mends = mends_of(text)
    edit = next(e for e, _ in mends.accepted if e.kind == "widen")
    ((path, spacing),) = edit.changes
    less = restaged(before.show, [(path, spacing - 0.2)])

    assert too_close(less)


def test_a_mend_that_does_harm_elsewhere_is_told_as_such():
    """Birch may go neither way along the line: the edge of the stage, and a third who stands there."""
    text = PLANTED["place"].replace("width: 14 m", "width: 3.2 m")
    before = baseline(stage(text))
    mends = mends_for(before, before.bad[0], trajectories=False)
    told = " ".join(word for _, harm in mends.rejected for word in harm)

    assert "off-stage" in told
    for _edit, after in mends.accepted:
        assert harm_of(before, after, trajectories=False) == ()


def test_a_third_who_would_be_crowded_is_seen():
    third = PLANTED["place"].replace(
        "  - {name: Birch, stature: 1.7, prop: *poi}\n",
        "  - {name: Birch, stature: 1.7, prop: *poi}\n  - {name: Clay, stature: 1.7, prop: *poi}\n",
    ).replace("at: [0.55, 4]}}", "at: [0.55, 4]}, Clay: {at: [3.1, 4]}}")  # fmt: skip
    before = baseline(stage(third))
    (conflict,) = before.bad
    closer = restaged(before.show, [(("formations", "close", "spots", "Birch", "at"), [1.5, 4])])
    assert "Birch and Clay are too close" in harm_of(before, closer, trajectories=False)
    for _edit, after in mends_for(before, conflict, trajectories=False).accepted:
        assert too_close(after) == ()


def test_a_harm_that_grows_is_seen():
    """Too near to the audience already, and nearer after: no finding is new, but it is worse."""
    text = PLANTED["place"].replace("[[-7, -9], [7, -9]]", "[[-7, -3], [7, -3]]")
    before = baseline(stage(text))
    spots = ("formations", "close", "spots")
    nearer = restaged(before.show, [((*spots, "Ash", "at"), [-1, 3.5])])
    farther = restaged(before.show, [((*spots, "Ash", "at"), [-1, 4.5])])

    assert "Ash comes closer to audience" in harm_of(before, nearer, trajectories=False)
    assert not any("audience" in word for word in harm_of(before, farther, trajectories=False))


def test_a_warning_that_is_new_is_harm():
    """A walk of 6 m in two beats: nothing stops, but nobody walks as fast."""
    before = baseline(stage(PLANTED["way"]))
    hasty = restaged(before.show, [(("staging", 1, "beats"), 2)])
    assert "Ash: walks-too-fast" in harm_of(before, hasty, trajectories=False)
    assert not any("walks" in word for word in harm_of(before, before.show, trajectories=False))


def test_the_report_offers_what_holds():
    report = checked_with_mends(stage(PLANTED["shift"]))
    (finding,) = (one for one in report.findings if one.code == "too-close")

    assert (
        finding.remedies[0] == "spread close from its middle: neighbours 3.50 m apart, not 2.90 m"
    ), "a wider formation before another dance"
    assert "let Ash start 1 beat further into extension at 3.1" in finding.remedies


def test_a_show_that_does_not_know_its_file_cannot_be_changed():
    from dataclasses import replace

    show = replace(stage(PLANTED["place"]), read=None)
    with pytest.raises(ValueError, match="does not remember"):
        restaged(show, [])
