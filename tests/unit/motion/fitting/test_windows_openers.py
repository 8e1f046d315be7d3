"""What is told where nothing fits: which changes are tried, in what order, and in what words.

Whether a changed dance fits is given here, so that what is told follows by hand.
"""

from itertools import chain
from math import inf, nextafter

import numpy as np
import pytest

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.fitting import windows
from sequencer.motion.fitting.fits import Dance, Fit, Margins
from sequencer.motion.fitting.windows import Window, Windows, ways_out, window_of, windows_of
from sequencer.motion.patterns.library import cycle_beats
from sequencer.motion.props.prop import Prop

POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
STAFF = Prop(length=0.5, behind=0.5, mass=0.8, wick_radius=0.04, kind="staff")
GOOD = Fit()
BAD = Fit(margins=Margins(0.0, inf, 0.1, inf))


def dance(given=None, *, sides=SIDES, props=None, tempo=(100.0, 110.0), **more):
    given = given or {}
    return Dance(
        parts={side: ("pro-bend-4", given.get(side, {}) if set(given) <= set(SIDES) else given) for side in sides},
        cycle=cycle_beats("pro-bend-4", {}), tempo=tempo, body=Body(stature=1.7),
        props=props or dict.fromkeys(sides, POI), **more,
    )  # fmt: skip


def test_tables():
    """Approved: what is tried, from the least change on."""
    assert windows.SHORTER == (0.9, 0.75, 0.6)
    assert windows.QUICKER == (1.1, 1.2, 1.35, 1.5)
    assert (windows.MOST_OPENERS, windows.SIZE_PARAMETERS) == (2, ("hand_radius", "size"))


# Windows


def test_what_fits_has_windows_and_what_does_not_has_openers(monkeypatch):
    asked = dance()
    monkeypatch.setattr(windows, "_windows", lambda *both: {"both": both})
    monkeypatch.setattr(windows, "_openers", lambda *both: iter([both]))
    monkeypatch.setattr(windows, "fitted", lambda _dance: GOOD)
    assert windows_of(asked) == Windows(fit=GOOD, windows={"both": (asked, GOOD)})
    monkeypatch.setattr(windows, "fitted", lambda _dance: BAD)
    assert windows_of(asked) == Windows(fit=BAD, opens=((asked, BAD),))


def test_the_window_of_one_parameter_leaves_it_open_and_the_others_set(monkeypatch):
    asked = dance({"up": 0.1, "ahead": 0.2})
    free = dance({"ahead": 0.2})
    found = Window(name="up", low=0.0, high=0.1, best=0.05)
    monkeypatch.setattr(
        windows, "_windows", lambda *all_: {"up": found} if all_ == (free, GOOD, ("up",)) else {}
    )
    monkeypatch.setattr(windows, "fitted", lambda each: GOOD if each == free else None)
    assert window_of(asked, "up") is found
    monkeypatch.setattr(windows, "fitted", lambda each: BAD if each == free else None)
    assert window_of(asked, "up") is None


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        # Ends count as met to a hundred-millionth of a metre.
        (0.1 + 0.9e-8, 0.2 - 0.9e-8, "10 to 20 cm"),
        (0.1 + 1.1e-8, 0.2 - 1.1e-8, "11 to 19 cm"),
        (0.104, 0.106, "10.5 cm"),
        (0.1, 0.1, "10 cm"),
        (0.09, 0.1, "9 to 10 cm"),
        (0.123404, 0.123416, "12.34 cm"),
        # Nothing is never negative.
        (0.0, 0.1, "0 to 10 cm"),
        (-0.1, -0.0, "-10 to 0 cm"),
        (-1e-9, 1e-9, "0 cm"),
    ],
)
def test_words_round_into_the_window(low, high, words):
    assert Window(name="up", low=low, high=high, best=(low + high) / 2).words == words


def test_a_window_holds_its_ends_to_a_nanometre():
    window = Window(name="up", low=0.1, high=0.25, best=0.2)
    off = (1.1e-9, 0.9e-9)
    assert (
        [window.holds(0.1 - x) for x in off]
        == [window.holds(0.25 + x) for x in off]
        == [False, True]
    )
    assert window.apart == 0.0


# Ways out


def told(monkeypatch, asked, found, *, together=False, openers=()):
    """Ways out of a dance; `found` has a window for each parameter or None."""
    tried = []

    def one(each, name):
        assert each is asked
        tried.append(name)
        return found[name]

    left = []
    monkeypatch.setattr(windows, "window_of", one)
    monkeypatch.setattr(
        windows, "fitted", lambda each: left.append(each) or (GOOD if together else BAD)
    )
    monkeypatch.setattr(
        windows, "_openers", lambda *both: iter(openers) if both == (asked, BAD) else iter(())
    )
    return ways_out(asked), tried, left


def window(name, low=0.0, high=0.1, apart=0.0):
    return Window(name=name, low=low, high=high, best=(low + high) / 2, apart=apart)


def test_each_parameter_that_was_set_is_told_by_its_window(monkeypatch):
    """In order of the alphabet; only places and sizes; not where what was set is within already."""
    asked = dance({"up": 0.3, "from": 30, "ahead": 0.05, "hand_radius": 0.2, "across": 0.123})
    found = {
        "up": window("up"),
        "ahead": window("ahead"),
        "hand_radius": None,
        "across": window("across"),
    }
    words, tried, _ = told(monkeypatch, asked, found)
    assert words == ("across 0 to 10 cm (now 12.3 cm)", "up 0 to 10 cm (now 30 cm)")
    assert tried == ["across", "ahead", "hand_radius", "up"]


def test_what_either_hand_has_outside_is_told_with_the_first_hands_value(monkeypatch):
    asked = dance({"left": {"up": 0.05}, "right": {"up": 0.2}})
    assert told(monkeypatch, asked, {"up": window("up")})[0] == ("up 0 to 10 cm (now 5 cm)",)
    asked = dance({"right": {"up": 0.2}, "left": {}})
    assert told(monkeypatch, asked, {"up": window("up")})[0] == ("up 0 to 10 cm (now 20 cm)",)
    asked = dance({"right": {"up": 0.1}, "left": {}})
    assert told(monkeypatch, asked, {"up": window("up")}, openers=["x"])[0] == ("it fits with x",)


@pytest.mark.parametrize(
    ("apart", "left_out"), [(5e-4, False), (5.1e-4, True), (-5.1e-4, True), (-5e-4, False)]
)
def test_hands_that_lie_apart_have_no_one_value(monkeypatch, apart, left_out):
    words = told(monkeypatch, dance({"up": 0.3}), {"up": window("up", apart=apart)})[0]
    assert words == (
        ("leave up out: the pattern is then placed where it fits",)
        if left_out
        else ("up 0 to 10 cm (now 30 cm)",)
    )


def test_all_together_where_none_alone_helps(monkeypatch):
    names = {"up": 0.3, "ahead": 0.1, "across": 0.1}
    none = dict.fromkeys(names)
    words, _, left = told(monkeypatch, dance(names), none, together=True)
    assert words == ("leave across, ahead and up out: the pattern is then placed where it fits",)
    assert left == [dance()]
    two = {"up": 0.3, "ahead": 0.1}
    assert told(monkeypatch, dance(two), none, together=True)[0] == (
        "leave ahead and up out: the pattern is then placed where it fits",
    )
    # One alone was tried already; and where one helps, together is not asked.
    assert told(monkeypatch, dance({"up": 0.3}), none, together=True, openers=["x"])[2] == [
        dance({"up": 0.3})
    ]
    words, _, left = told(monkeypatch, dance(two), none | {"up": window("up")}, together=True)
    assert (len(words), left) == (1, [])


def test_else_what_opens_it(monkeypatch):
    words = told(
        monkeypatch, dance({"up": 0.3, "ahead": 0}), {"up": None, "ahead": None}, openers=["a", "b"]
    )[0]
    assert words == ("it fits with a", "it fits with b")


def test_without_leaves_only_what_is_named_open():
    asked = dance(
        {"left": {"up": 0.1, "ahead": 0.2}, "right": {"up": 0.3, "from": 30}}, timing="together"
    )
    expected = dance({"left": {"ahead": 0.2}, "right": {"from": 30}}, timing="together")
    assert windows.without(asked, "up") == expected
    assert windows.without(asked, "up", "ahead", "from") == dance(timing="together")


# Openers


def opened(monkeypatch, asked, margins, fitting):
    """What opens a dance if the changes in these words fit, and all that was tried."""
    tried = []
    words = {}

    def noting(name):
        inner = getattr(windows, name)

        def kind(dance_):
            for text, other in inner(dance_):
                words[id(other)] = text
                tried.append(text)
                kept.append(other)
                yield text, other

        return kind

    kept = []
    for name in ("_other_tempi", "_shorter", "_left_out", "_other_hands"):
        monkeypatch.setattr(windows, name, noting(name))
    monkeypatch.setattr(windows, "fitted", lambda each: GOOD if words[id(each)] in fitting else BAD)
    return list(windows._openers(asked, Fit(margins=margins))), tried, kept


TEMPI = [f"{tempo} beats per minute or more" for tempo in (110, 120, 135, 150)]
TETHERS = [f"a tether of {length} cm" for length in (45, 38, 30)]
OUT = [f"{name} left for the tool to choose" for name in ("ahead", "hand_radius")]
HANDS = [
    f"{timing} time, {direction}" for timing, direction in (
        ("same", "same direction"), ("same", "opposite directions"), ("split", "opposite directions"),
        ("quarter", "same direction"), ("quarter", "opposite directions"),
    )
] + ["one hand alone"] * 2  # fmt: skip


@pytest.mark.parametrize(
    ("margins", "kinds"),
    [
        (Margins(0.0, 0.0, 0.1, -1e-9), [TEMPI, TETHERS, OUT, HANDS]),
        (Margins(0.0, nextafter(0.026, 0), 0.1, 0.0), [TETHERS, OUT, HANDS]),
        (Margins(0.0, 0.026, 0.1, 0.0), [TETHERS, OUT]),
    ],
)
def test_all_that_may_help_is_tried(monkeypatch, margins, kinds):
    asked = dance({"ahead": 0.1, "hand_radius": 0.2, "from": 30})
    words, tried, _ = opened(monkeypatch, asked, margins, ())
    assert words == []
    assert sorted(tried) == sorted(chain(*kinds))
    # Kinds in this order, and each in its own; of the timings any order is as good.
    before = [*chain(*(kind for kind in kinds if kind is not HANDS))]
    assert tried[: len(before)] == before
    # Of each kind the first that fits; after two no more is tried.
    firsts = [kind[1] for kind in kinds]
    words, tried, _ = opened(monkeypatch, asked, margins, firsts)
    assert words == firsts[:2]
    assert tried == kinds[0][:2] + kinds[1][:2]
    words, tried, _ = opened(monkeypatch, asked, margins, [kinds[-1][0]])
    assert words == [kinds[-1][0]]


def test_one_hand_has_no_other_hand(monkeypatch):
    asked = dance(sides=("left",))
    assert opened(monkeypatch, asked, Margins(0.0, 0.0, 0.1, 1.0), ())[1] == TETHERS


def test_what_is_changed_and_nothing_else(monkeypatch):
    props = {"left": POI, "right": Prop(length=0.6234, mass=0.3, wick_radius=0.05)}
    asked = dance(
        {"left": {"up": 0.1}, "right": {"up": 0.2}},
        props=props,
        tempo=(85.0, 91.0),
        timing="quarter",
    )
    tempi = list(windows._other_tempi(asked))
    assert [words.split()[0] for words, _ in tempi] == [
        "94",
        "102",
        "115",
        "128",
    ]  # 93.5, 102, 114.75, 127.5 up
    for share, (_, other) in zip((1.1, 1.2, 1.35, 1.5), tempi, strict=True):
        assert other.tempo == pytest.approx((85 * share, 91 * share))
        assert (other.parts, other.timing, other.props) == (asked.parts, "quarter", props)
    shorter = list(windows._shorter(asked))
    assert [words for words, _ in shorter] == [f"a tether of {size} cm" for size in (56, 47, 37)]
    lengths = [(other.props["left"].length, other.props["right"].length) for _, other in shorter]
    assert lengths == [(0.45, 0.561), (0.375, 0.468), (0.3, 0.374)]
    assert [other.props["right"].mass for _, other in shorter] == [0.3] * 3
    hands = list(windows._other_hands(asked))
    changed = [(other.timing, other.direction) for _, other in hands[:-2]]
    assert len(set(changed)) == len(changed) == 5
    assert ("quarter", "same") not in changed
    assert all(other.parts == asked.parts for _, other in hands[:-2])
    for side, (_, other) in zip(SIDES, hands[-2:], strict=True):
        assert other.parts == {side: asked.parts[side]}
        assert other.props == {side: props[side]}
        assert other.timing == "quarter"


def test_a_rigid_prop_is_not_shortened():
    assert list(windows._shorter(dance(props={"left": POI, "right": STAFF}))) == []
    assert len(list(windows._shorter(dance()))) == 3


def test_lengths_in_words():
    assert [windows._length(x) for x in (nextafter(0.01, 0), 0.01, 0.126, 0.0012)] == [
        "10 mm",
        "1 cm",
        "13 cm",
        "1 mm",
    ]
    assert [windows._centimetres(x) for x in (0.3, 0.12345, -0.05)] == ["30 cm", "12.3 cm", "-5 cm"]
    assert np.isclose(windows.CENTIMETRE, 0.01)
