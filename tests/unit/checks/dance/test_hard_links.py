"""Links over the show's limits: by the second, in a performer's words, with remedies for what is written there."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.checks.dance import hard_links
from sequencer.checks.dance.joins import CHECK
from sequencer.motion.trajectories.one_link.link_law import LinkLaw
from sequencer.timing.tempo import TempoMap
from tests.stopped_show import EXTENSION, stopped_show

SLOW_HAND = "limits: {hand_speed: 1}\n"
UNEVEN = TempoMap(np.cumsum([0.0, *[0.25] * 8, *[0.5] * 24]))  # twice as fast at first
WEAVE = "{pattern: two-beat-weave, beats: 8}"


def hard(*entries, limits=""):
    show = stopped_show(*entries, cast=limits)
    found = [f for f in CHECK.outcome(show).findings if f.code == "link-too-hard"]
    return show, found


def test_a_link_within_the_limits_is_not_told_and_one_over_them_is():
    entries = (EXTENSION, "{link: true, beats: 2}", WEAVE)
    assert not [f for f in hard(*entries)[1] if f.severity == "stop"]
    show, found = hard(*entries, limits=SLOW_HAND)
    (one,) = [f for f in found if f.severity == "stop" and "right hand" in f.message]
    assert one.message.startswith("from extension to two-beat-weave, right hand, in 2 beats: ")
    assert "the hand would have to move too fast (" in one.message
    assert " m/s, limit 1)" in one.message
    assert one.remedies == (
        "give the link another number of beats", "change the shift of two-beat-weave",
    )  # fmt: skip
    assert one.position == "5.1"
    # The figure told is the largest of the link's proven bounds, at the song's 120 beats a minute.
    (law,) = (s.law for s in show.dancers[0].trajectories["right"].spans if s.start == 16.0)
    told = float(one.message.split("too fast (")[1].split(" m/s")[0])
    assert told == pytest.approx(law.bounds().hand_speed * 2, rel=5e-3)


@pytest.mark.parametrize(
    ("entries", "before", "after", "ways"),
    [
        ((EXTENSION,), "extension", "rest", ("end extension 2 beats earlier", "write a link of 3 or 4 beats before the rest")),
        ((EXTENSION,), "rest", "extension", ("change the shift of extension", "write a link of 3 or 4 beats after the rest")),
        ((EXTENSION, "{rest: 4}", WEAVE), "extension", "rest", ("make the rest longer", "end extension 2 beats earlier")),
        ((EXTENSION, "{hold: 4}", WEAVE), "extension", "hold", ("make the hold longer", "end extension 2 beats earlier")),
        ((EXTENSION, "{from: 5.3, pattern: two-beat-weave, beats: 8}"), "extension", "two-beat-weave", ("end extension earlier", "change the shift of two-beat-weave")),
    ],
)  # fmt: skip
def test_where_no_link_is_written_none_is_to_be_given_more_beats(entries, before, after, ways):
    _, found = hard(*entries, limits=SLOW_HAND.replace("1", "0.3"))
    own = [f for f in found if f"from {before} to {after}, right hand" in f.message]
    assert own
    for one in own:
        assert one.severity == "warn"
        assert "give the link another number of beats" not in one.remedies
        for said, wanted in zip(one.remedies, ways, strict=False):
            assert said.startswith(wanted)


def test_a_bridge_is_told_where_nothing_else_tells_the_border():
    """With tolerances that let anything join, two blocks a turn apart are bridged in half a beat."""
    wide = "limits: {join_hand: 3, join_tether: 90, join_axis: 90, join_rate: [0.01, 100]}\n"
    entries = (EXTENSION, "{pattern: antispin-flower-4, shift: 1, beats: 8}")
    show, found = hard(*entries, limits=wide.replace("{", "{hand_speed: 0.5, ", 1))
    way = show.dancers[0].trajectories["right"]
    bridged = [b for b in way.blends if b.bridge is not None]
    told = [
        f for f in found if "right hand" in f.message and "put a link between" in str(f.remedies)
    ]
    unjoined = [f for f in CHECK.outcome(show).findings if f.code != "link-too-hard"]
    assert len(told) + bool(unjoined) >= len(bridged)


def test_every_link_over_a_limit_by_its_bounds_is_told():
    """The bounds of each sixteenth at the tempo of each, computed apart from the check."""
    entries = (
        EXTENSION,
        "{link: true, beats: 1}",
        WEAVE,
        "{rest: 4}",
        EXTENSION,
        "{hold: 3}",
        WEAVE,
    )
    for speed, turns in ((0.5, 2.5), (1.5, 2.5), (6.0, 0.9), (6.0, 2.5)):
        show, found = hard(*entries, limits=f"limits: {{hand_speed: {speed}, turns: {turns}}}\n")
        for side, way in show.dancers[0].trajectories.items():
            for span in way.spans:
                if not isinstance(span.law, LinkLaw):
                    continue
                over = any(
                    b.hand_speed * 2 > speed * 1.0001
                    or b.turn_rate * 2 / (2 * np.pi) > turns * 1.0001
                    for _, _, b in span.law.parts
                )
                start = show.seconds(span.start)
                told = any(f.start == start and f"{side} hand" in f.message for f in found)
                assert told or not over


LINKED = (EXTENSION, "{link: true, beats: 2}", WEAVE)


def of_the_link(limits):
    show, found = hard(*LINKED, limits=limits)
    (one,) = [f for f in found if f.position == "5.1" and f.hands == ("right",)]
    (span,) = (s for s in show.dancers[0].trajectories["right"].spans if s.start == 16.0)
    return show.dancers[0].props["right"], span, one


def heads(span, length, beats):
    """Places of the head by the second at 120 beats a minute [m], from the states alone."""
    state = span.at(beats)
    return state.hand + length * state.tether


def test_a_wick_too_fast_on_a_link_is_told_as_a_warning_with_its_speed():
    prop, span, one = of_the_link("limits: {head_speed: 3}\n")
    assert one.severity == "warn"
    assert "a wick would move too fast (" in one.message
    beats = np.linspace(span.start, span.end, 4001)
    places = heads(span, prop.length, beats)
    speeds = np.linalg.norm(np.diff(places, axis=0), axis=1) / (np.diff(beats) / 2)
    (figure,) = one.figures
    assert (figure.quantity, figure.limit, figure.unit) == ("wick speed", 3.0, "m/s")
    assert figure.value == pytest.approx(speeds.max(), rel=2e-3)


def test_a_prop_that_pulls_too_hard_on_a_link_is_told_with_its_force():
    prop, span, one = of_the_link("limits: {pull: 1}\n")
    assert one.severity == "warn"
    assert "the prop would pull too hard (" in one.message
    beats = np.linspace(span.start, span.end, 4001)
    step = (beats[1] - beats[0]) / 2  # [s]
    places = heads(span, abs(prop.centre_of_mass), beats)
    felt = np.diff(places, n=2, axis=0) / step**2 + np.array([0.0, 0.0, 9.80665])
    (figure,) = one.figures
    assert (figure.quantity, figure.unit) == ("pull", "N")
    assert figure.value == pytest.approx(prop.mass * np.linalg.norm(felt, axis=1).max(), rel=5e-3)


@pytest.mark.parametrize(("over", "told"), [(1.0005, False), (1.002, True), (1.02, True)])
def test_a_wick_hardly_over_its_limit_is_told_by_a_number_that_is_over_it_or_not_at_all(over, told):
    """Over by less than 0.1 % counts as kept, as in a pattern."""
    linked = (*LINKED[:2], "{pattern: two-beat-weave, cycle: 2, beats: 8}")
    show, _ = hard(*linked)
    prop, way = show.dancers[0].props["right"], show.dancers[0].trajectories["right"]
    (span,) = (each for each in way.spans if each.start == 16.0)
    motion = span.at(np.linspace(span.start, span.end, 20_001))
    most = 2 * np.linalg.norm(motion.head_rate(prop.length), axis=-1).max()
    _, found = hard(*linked, limits=f"limits: {{head_speed: {most / over:.9f}, pull: 100}}\n")
    own = [f for f in found if f.position == "5.1" and f.hands == ("right",)]
    assert len(own) == told
    for one in own:
        value, limit = (
            float(part.split(" m/s")[0].split(")")[0])
            for part in one.message.split("too fast (")[1].split(", limit ")
        )
        assert value > limit
        assert one.figures[0].value == pytest.approx(most, rel=1e-3)


STAVES = "{kind: staff, length: 1.3 m, mass: 750 g}"
HELD = (
    "{pattern: extension, cycle: 2, beats: 8}", "{link: true, beats: 1.5}", "{pattern: wheel-spin, cycle: 2, beats: 8}",
)  # fmt: skip


def test_a_hand_that_would_twist_too_hard_on_a_link_is_told_with_its_torque():
    """The staff as a hundred points of mass, moved as the states say: the moment of what drives them, about the hand."""
    show = stopped_show(*HELD, prop=STAVES, cast="limits: {torque: 0.5}\n")
    found = [f for f in CHECK.outcome(show).findings if f.code == "link-too-hard"]
    (one,) = [f for f in found if f.position == "5.1" and f.hands == ("right",)]
    assert one.severity == "warn"
    assert "the hand would have to twist too hard (" in one.message
    assert one.message.endswith(" N·m, limit 0.5)")
    dancer = show.dancers[0]
    prop, span = dancer.props["right"], next(s for s in dancer.trajectories["right"].spans if s.start == 16.0)  # fmt: skip
    beats = np.linspace(span.start, span.end, 3001)
    state, step = span.at(beats), (beats[1] - beats[0]) / 2  # [s] at 120 beats a minute
    share = (np.arange(100) + 0.5) / 100
    along = [*(-prop.behind + (prop.length + prop.behind) * share), prop.length, -prop.behind]
    frame = prop.mass - 2 * prop.head_mass
    masses = [*[frame / 100] * 100, prop.head_mass, prop.head_mass]
    moment = np.zeros((len(beats) - 2, 3))
    for s, mass in zip(along, masses, strict=True):
        spots = state.hand + s * state.tether
        force = mass * (np.diff(spots, 2, axis=0) / step**2 + [0, 0, 9.80665])
        moment += np.cross(spots[1:-1] - state.hand[1:-1], force)
    (figure,) = one.figures
    assert (figure.quantity, figure.limit, figure.unit) == ("twist", 0.5, "N·m")
    assert figure.value == pytest.approx(np.linalg.norm(moment, axis=1).max(), rel=3e-3)


def test_a_link_of_more_beats_asks_less_of_the_wrist_and_a_line_asks_nothing():
    told = {}
    for beats in (1, 2, 4, 6):
        entries = (HELD[0], f"{{link: true, beats: {beats}}}", HELD[2])
        found = CHECK.outcome(stopped_show(*entries, prop=STAVES)).findings
        told[beats] = [f for f in found if "to twist too hard" in f.message and f.position == "5.1"]
    assert told[1]
    assert not told[6]
    found = CHECK.outcome(stopped_show(*HELD, cast="limits: {torque: 0.001}\n")).findings
    assert not [f for f in found if "twist" in f.message]


def test_a_link_that_keeps_both_is_not_told():
    assert not [f for f in hard(*LINKED)[1] if f.position == "5.1"]


def test_a_pattern_that_turns_too_fast_itself_is_to_be_slowed_first():
    _, _, one = of_the_link("limits: {turns: 0.5}\n")
    assert one.remedies[0].startswith("give the cycle of ")
    assert one.remedies[0].endswith(" more beats: it turns too fast itself")
    assert one.severity == "stop"
    assert one.figures[0].quantity == "turns"


def test_what_is_known_of_a_link_holds_for_no_other_limits_prop_or_tempo():
    """One thing changed at a time, all in one memory: each answer is the one from nothing."""
    changes = [
        "", "limits: {hand_speed: 1}\n", "limits: {hand_acceleration: 9}\n", "limits: {turns: 0.4}\n",
        "limits: {head_speed: 3}\n", "limits: {pull: 1}\n",
    ]  # fmt: skip
    shows = [stopped_show(*LINKED, cast=each) for each in changes]
    shows += [stopped_show(*LINKED, prop="{kind: poi, tether: 0.45, head_mass: 900 g}")]
    shows += [
        stopped_show(*LINKED, prop=STAVES, cast=f"limits: {{torque: {most}}}\n")
        for most in (0.1, 40)
    ]

    def ways():
        for show in shows:
            prop = show.dancers[0].props["right"]
            like = shows[0] if prop.flexible else shows[-1]  # the links of both staffs are one
            (span,) = (s for s in like.dancers[0].trajectories["right"].spans if s.start == 16.0)
            for start, end in ((16.0, 18.0), (4.0, 6.0)):
                own = replace(show, tempo=UNEVEN)
                way = hard_links._Way(own, own.dancers[0], "right", start, end, span, span)
                yield way, span.law, hard_links._around(own, own.dancers[0], "right")

    for _ in range(2):
        said = [way.known(law, around) for way, law, around in ways()]
        assert said == [way.broken(law) for way, law, _ in ways()]
    assert len(set(map(repr, said))) >= len(changes)


def test_a_link_of_a_song_that_sways_is_judged_at_its_fastest():
    """Every other beat a tenth shorter: the wick is as much faster as the quickest beat within the link."""
    show, _ = hard(*LINKED, limits="limits: {head_speed: 3}\n")
    count = np.arange(len(show.tempo.times))
    times = 0.5 * count - 0.05 * ((count + 1) // 2)
    swaying = replace(show, tempo=TempoMap(times, bars=show.tempo.bars, metre=show.tempo.metre))
    pace = swaying.tempo.fastest(16.0, 18.0)
    assert pace > 1.05 * swaying.tempo.slowest(16.0, 18.0)
    even, swung = (
        next(
            f
            for f in CHECK.outcome(each).findings
            if "a wick would move too fast" in f.message
            and f.position == "5.1"
            and f.hands == ("right",)
        )
        for each in (show, swaying)
    )
    assert swung.figures[0].value == pytest.approx(even.figures[0].value * pace / 2, rel=2e-3)
