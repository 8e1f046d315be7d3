"""Parameters: the edge of every limit, what people write, and the order of what is tried, by hand."""

import pytest

from sequencer.motion.patterns.parameters import (
    Free,
    OffsetLimits,
    Parameter,
    combinations,
    nearest,
    read_all,
)


def parameter(kind, default=1.0, low=0.5, high=4.0, **more):
    return Parameter(name="size", kind=kind, default=default, help="", low=low, high=high, **more)


LENGTH, ANGLE = parameter("length"), parameter("angle")
RATIO, COUNT = parameter("ratio", low=-4.0), parameter("count", low=1)
CHOICE = parameter("choice", choices=(1, -1, "in"))


def test_units_and_ranges_in_words():
    assert [p.unit for p in (LENGTH, ANGLE, RATIO, COUNT, CHOICE)] == ["m", "degrees", "", "", ""]
    assert LENGTH.range_words == "0.5 … 4 m"
    assert ANGLE.range_words == "0.5 … 4 degrees"
    assert COUNT.range_words == "1 … 4"
    assert CHOICE.range_words == "1, -1, in"
    bare = Parameter(name="bare", kind="ratio", default=None, help="")
    assert (bare.low, bare.high, bare.choices) == (0.0, 0.0, ())


@pytest.mark.parametrize(
    ("read", "given", "value"),
    [
        (LENGTH, "50 cm", 0.5), (LENGTH, 0.5, 0.5), (LENGTH, "4", 4.0), (ANGLE, "2 deg", 2.0),
        (ANGLE, 4, 4.0), (RATIO, "-7/2", -3.5), (RATIO, "3", 3.0), (RATIO, -4, -4.0),
        (COUNT, 1, 1), (COUNT, 4.0, 4), (COUNT, "3", 3), (CHOICE, "1", 1), (CHOICE, " +1 ", 1),
        (CHOICE, -1, -1), (CHOICE, "in", "in"),
    ],
)  # fmt: skip
def test_what_is_read(read, given, value):
    found = read.read(given)
    assert found == value
    assert type(found) is type(value)


@pytest.mark.parametrize(
    ("read", "given", "words"),
    [
        (LENGTH, 0.499, "size must be 0.5 … 4 m, got 0.499"),
        (LENGTH, 4.001, "size must be 0.5 … 4 m, got 4.001"),
        (LENGTH, "3 furlong", "size: .*furlong"),
        (ANGLE, "3 m", "size: .*unit 'm'"),
        (COUNT, 2.5, "size must be a whole number, got 2.5"),
        (COUNT, "x", "size must be a number such as 4, got 'x'"),
        (COUNT, 0, "size must be 1 … 4, got 0"),
        (RATIO, "x", "size must be a number such as -3 or 3/2, got 'x'"),
        (RATIO, "1/0", "a number such as -3 or 3/2"),
        (RATIO, "inf", "a number such as"),
        (RATIO, float("nan"), "a number such as"),
        (RATIO, True, "size must be a number, got True"),
        (RATIO, None, "size must be a number, got None"),
        (LENGTH, [1], r"size must be a number, got \[1\]"),
        (CHOICE, "out", "size must be one of 1, -1, in, got 'out'"),
        (CHOICE, True, "size must be one of"),
    ],
)
def test_what_is_refused(read, given, words):
    with pytest.raises(ValueError, match=words):
        read.read(given)


def test_how_far_a_centre_may_be_moved_where_nothing_is_said():
    """Approved: the limits within which most patterns still fit their names."""
    assert OffsetLimits() == OffsetLimits(across=(-0.2, 0.4), ahead=(-0.3, 0.4), up=(-0.4, 0.3))


def named(name, default=0.0):
    return Parameter(name=name, kind="ratio", default=default, help="", low=-9.0, high=9.0)


def test_combinations_go_by_the_sum_of_their_places_and_the_first_parameters_change_last():
    free = [Free("a", (0, 1, 2)), Free("b", (0, 5))]
    found = combinations(free, [named("b"), named("a")], prop="poi")
    rows = [(each["a"], each["b"]) for each in found]
    assert rows == [(0.0, 0.0), (0.0, 5), (1, 0.0), (1, 5), (2, 0.0), (2, 5)]
    assert list(found[0]) == ["a", "b"]
    assert combinations(free, [], prop="poi") == [{}]
    assert combinations(free, [named("b")], prop="poi") == [{"b": 0.0}, {"b": 5}]
    assert len(combinations(free, [named("a"), named("b")], prop="poi", most=4)) == 4


def test_forty_combinations_at_most():
    free = [Free(name, tuple(range(7))) for name in "ab"]
    assert len(combinations(free, [named("a"), named("b")], prop="poi")) == 40


def test_values_of_a_prop_go_before_those_of_all_and_before_the_default():
    free = [
        Free("a", (7, 8), props=("staff", "club")),
        Free("a", (3, 4)),
        Free("b", (1,), ("hoop",)),
    ]
    allowed = [named("a", 2), named("b", 5)]
    assert combinations(free, allowed, prop="staff") == [{"a": 7}, {"a": 8}]
    # the pattern's own default first, then the usual ones
    assert combinations(free, allowed, prop="poi") == [{"a": 2}, {"a": 3}, {"a": 4}]
    assert combinations(free, allowed, prop="hoop")[0] == {"a": 2, "b": 1}
    assert combinations([Free("a", (3, 4))], [named("a", 4)], prop="poi") == [{"a": 4}, {"a": 3}]
    # the prop gives the length: there is no default to try
    assert combinations([Free("a", (3, 4))], [named("a", None)], prop="poi") == [{"a": 3}, {"a": 4}]
    # a default of 0 is a default
    assert combinations([Free("a", (3,))], [named("a", 0)], prop="poi") == [{"a": 0}, {"a": 3}]


def test_shares_are_of_the_default_to_a_micrometre():
    free = [Free("a", (1.0, 0.5, 1 / 3), share=True)]
    found = [each["a"] for each in combinations(free, [named("a", 0.1000006)], prop="poi")]
    assert found == [0.100001, 0.05, 0.033334]
    assert combinations(free, [named("a", None)], prop="poi")[0] == {"a": 0.0}
    staff = [Free("a", (0.5,), ("staff",), True)]
    assert combinations(staff, [named("a", 0.3)], prop="staff") == [{"a": 0.15}]


def test_every_value_is_given_or_its_default():
    allowed = [named("a", 2), named("b", None)]
    assert read_all({}, allowed, of="it") == {"a": 2, "b": None}
    assert read_all({"b": "3"}, allowed, of="it") == {"a": 2, "b": 3.0}
    with pytest.raises(ValueError, match="it has a fixed c; it cannot be set"):
        read_all({"c": 1}, allowed, of="it", fixed=["c"])
    with pytest.raises(ValueError, match="it has no parameter 'c'; write one of: a, b"):
        read_all({"a": 1, "c": 1}, allowed, of="it", fixed=["d"])


def test_hints_of_near_names():
    """By the shares of letters in common: 'spat' and 'spot' share 6 of 8 letters, 'plan' and 'plane' 8 of 9."""
    assert nearest("Plan", ["plane", "turn"]) == "; did you mean plane?"
    assert nearest("spat", ["spot", "spit", "turn"]) in (
        "; did you mean spot or spit?",
        "; did you mean spit or spot?",
    )
    assert nearest("ab", ["abxy", "q"]).startswith("; did you mean abxy")  # 4 of 6 letters
    four = ["spota", "spotb", "spotc", "spotd"]
    assert nearest("spot", four).count(" or ") == 2  # three at most
    # 2 of 4 letters are half, 2 of 5 less
    assert nearest("ab", ["ax"]) == "; did you mean ax?"
    assert nearest("ab", ["axy"]) == "; write one of: axy"
    assert nearest("zz", []) == ""
    twelve = [f"n{k}" for k in range(12)]
    assert nearest("zz", twelve) == f"; write one of: {', '.join(twelve)}"
    assert nearest("zz", [*twelve, "n12"]) == ""
