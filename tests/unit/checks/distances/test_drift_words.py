"""What findings and advice on a show as danced say."""

from dataclasses import replace

import pytest

from sequencer.checks.distances.binomial import ChanceChange
from sequencer.checks.distances.conflict_groups import ConflictGroup
from sequencer.checks.distances.drift_words import begun, finding_message, rehearsed, remedies
from sequencer.checks.distances.missed_cues import Slip
from sequencer.checks.distances.rehearse_first import Advice, must_mend
from sequencer.checks.distances.removed_errors import Removed
from sequencer.findings import Chance


def removed(**chances):
    """Of 29 %: what is left without each kind of error, and surely more or less if it is far from that."""
    kinds = {
        kind: ChanceChange(chance=own, low=own - 0.29 - 0.1, high=own - 0.29 + 0.1)
        for kind, own in chances.items()
    }
    return Removed(chance=0.29, kinds=kinds, people={}, who=("Wren", "Moss"))


def group(own):
    return ConflictGroup(
        first="Wren", second="Moss", pair=0, scene=0, scene_start=0, scene_end=9, start=1, end=2,
        in_runs=tuple(range(29)), runs=100, worst=0.1, removed=own,
    )  # fmt: skip


def chance(own, **given):
    usual = {
        "between": ("Wren", "Moss"), "start": 1.0, "end": 2.0, "position": "1.2", "conflicts": 29, "runs": 100, "chance": 0.29,
        "low": 0.2, "high": 0.39, "worst": 0.1, "parts": ("left head", "right arm"), "matters": own.matters, "who": own.who, "raises": own.raises,
        "without": {kind: each.chance for kind, each in own.kinds.items()},
    }  # fmt: skip
    return Chance(**{**usual, **given})


def test_what_takes_most_away_is_rehearsed_first():
    own = removed(place=0.06, timing=0.27)
    (first, room) = remedies(group(own), chance(own))
    assert first == (
        "rehearse hitting the places first, Wren and Moss alike: with places hit exactly it is 6 % instead of 29 %"
    )
    assert room.startswith("give them more room")
    alone = replace(chance(own), who=("Wren",))
    assert "first, Wren above all: " in remedies(group(own), alone)[0]


def test_where_an_error_keeps_them_apart_the_plan_is_mended():
    """29 % become 50 without the errors of timing, although 6 are left without those of place."""
    own = removed(place=0.06, timing=0.5)
    first = remedies(group(own), chance(own))[0]
    assert must_mend(group(own))
    assert first.startswith(
        "mend the plan: with everybody exactly on the count it would be 50 % instead of 29 %"
    )


def test_where_no_error_makes_much_of_it_the_plan_is_mended():
    """Of 29 % at least 23.2 % are left (four fifths) without any one kind."""
    own = removed(place=0.24, timing=0.28)
    assert must_mend(group(own))
    assert remedies(group(own), chance(own))[0].startswith("mend the plan: no error by itself")
    assert not must_mend(group(removed(place=0.23, timing=0.28)))


def test_what_was_not_danced_again_is_no_advice():
    assert not must_mend(group(Removed()))
    assert remedies(group(Removed()), chance(Removed()))[-1] == "mend the likelier conflicts first"


def test_a_finding_says_where_and_on_what_it_hangs():
    own = chance(
        removed(place=0.06),
        formation="diamond",
        section="refrain 2",
        moves=("a", "b"),
        half=0.05,
        twice=0.6,
    )
    assert finding_message(own, 0.3, ("25.1", "27.3")) == (
        "as danced, Wren and Moss come closer than 0.30 m in 29 of 100 runs (29 %; 20 to 39 % with 95 % confidence; "
        "5 % with errors half as wide, 60 % twice as wide) – diamond, refrain 2, a and b – between 25.1 and 27.3; "
        "at worst Wren's left head comes within 10 cm of Moss's right arm"
    )
    bare = finding_message(chance(removed(place=0.06)), 0.3, ("25.1", "27.3"))
    assert "with 95 % confidence), between 25.1 and 27.3; at worst" in bare


@pytest.mark.parametrize(
    ("move", "word"),
    [
        ("weave", "weave"),
        ("the link from weave into stall", "stall"),
        ("the link from rest into weave", "weave"),
        ("the link from weave to rest", "rest"),
        ("", ""),
    ],
)
def test_a_link_is_named_by_what_it_leads_into(move, word):
    assert begun(move) == word


def test_advice_in_words():
    slip = Slip(
        who="Wren",
        cue=8.0,
        kind="an eight late",
        meets=("Moss", "Sable"),
        at=9.0,
        worst=-0.28,
        parts=("left flame", "body"),
        apart=0.31,
    )
    cue = Advice(beat=8.0, who=("Wren",), kind="", fall=0.1, slips=(slip,))
    assert rehearsed(cue, "the walk to box", "weave") == (
        "the cue into the walk to box: an eight late, Wren's left flame reaches Moss's body (the head 31 cm away); too close to Sable as well"
    )
    two = replace(
        cue, slips=(slip, replace(slip, cue=20.0), replace(slip, cue=20.0, kind="a bar late"))
    )
    assert rehearsed(two, "", "weave").endswith("as well, and 1 more cue like it")
    near = replace(cue, slips=(replace(slip, worst=0.09, meets=("Moss",)),))
    assert rehearsed(near, "weave", "weave").endswith(
        "an eight late, Wren's left flame comes within 9 cm of Moss's body (the head 31 cm away)"
    )
    place = Advice(beat=8.0, who=("Wren",), kind="place", fall=0.1)
    assert rehearsed(place, "", "weave") == "hitting the places everywhere, weave above all"
    assert rehearsed(place, "", "the link from a into b") == "hitting the places everywhere"
    assert rehearsed(replace(place, mend=True), "", "weave").startswith("mend the plan in weave: ")
