"""Timed burns at the limits of what is read, matched and estimated, by the formulas of the sources."""

from itertools import product
from math import sqrt
from statistics import median

import pytest
from scipy import stats

from sequencer.errors import InputError, InputErrors
from sequencer.facts.burn_log import TimedBurn, estimate, matching, parse_burn_log, read_burn_log
from sequencer.facts.log_tables import LARGEST_TABLE

# Croux and Rousseeuw 1992, small-sample factors of the median absolute deviation (from memory)
FACTORS = {2: 1.196, 3: 1.495, 4: 1.363, 5: 1.206, 6: 1.2, 7: 1.14, 8: 1.129, 9: 1.107}
TIMES = [240.0, 200.0, 290.0, 251.0, 190.0, 330.0, 222.0, 275.0, 246.0, 310.0, 181.0, 262.0]


def burns(times):
    return [TimedBurn(fuel="kerosene", seconds=one, line=k) for k, one in enumerate(times, 2)]


@pytest.mark.parametrize("n", range(1, 13))
def test_an_estimate_is_that_of_the_formulas(n):
    """1.4826 times the factor times the median deviation; t·s·√(1 + 1/n) at 95 % from three burns on."""
    times = TIMES[:n]
    found = estimate(burns(times))
    middle = median(times)
    deviation = median([abs(time - middle) for time in times])
    spread = max(1.4826 * FACTORS.get(n, n / (n - 0.8)) * deviation, 0.05 * middle)
    assert (found.count, found.shortest) == (n, min(times))
    assert found.middle == pytest.approx(middle, rel=1e-12)
    assert found.spread == pytest.approx(spread, rel=1e-12)
    if n < 3:
        assert found.lower is found.upper is None
        assert found.counted_on == min(times)
    else:
        margin = stats.t.ppf(0.95, n - 1) * spread * sqrt(1 + 1 / n)
        assert found.lower == pytest.approx(max(middle - margin, 1.0), rel=1e-12)
        assert found.upper == pytest.approx(middle + margin, rel=1e-12)
        assert found.counted_on == min(found.lower, *times)


def test_equal_burns_spread_by_a_twentieth_and_none_lasts_less_than_a_second():
    same = estimate(burns([100.0] * 4))
    assert same.spread == 5.0
    wild = estimate(burns([1.0, 2.0, 90.0, 180.0]))
    assert wild.lower == 1.0
    assert wild.counted_on == 1.0


def test_outliers_lie_more_than_three_and_a_half_spreads_away():
    """Burns of 100 s spread by 5 s: 17.5 s away is not yet out."""
    found = estimate(burns([100.0] * 6 + [117.5, 82.5, 117.6, 82.4]))
    assert found.spread == 5.0
    assert found.outliers == (10, 11)


def test_what_is_said_of_one_burn_and_of_three():
    one = estimate(burns([240.0])).burn_time()
    assert one.source == "shortest of 1 timed burns; no interval with fewer than 3"
    assert (one.seconds, one.basis, one.count) == (240.0, "measured", 1)
    three = estimate(burns([240.0, 244.0, 236.0]))
    said = three.burn_time()
    assert said.seconds == pytest.approx(three.lower)
    assert said.source == (
        f"3 timed burns, median 240 s; the next lasts at least {three.lower:.0f} s "
        "with 95% confidence, the shortest lasted 236 s"
    )


def test_only_burns_that_burnt_out_are_estimated():
    put_out = TimedBurn(fuel="kerosene", seconds=9.0, burnt_out=False, line=9)
    assert estimate([*burns([240.0, 250.0]), put_out]) == estimate(burns([240.0, 250.0]))
    plain = TimedBurn(fuel="kerosene", seconds=1.0)
    assert (plain.burnt_out, plain.line, plain.performer, plain.wick) == (True, 0, "", "")


def test_rows_match_by_fuel_performer_and_wick_and_without_a_name_everybody():
    log = [
        TimedBurn(fuel=liquid, seconds=60.0, performer=who, wick=wick)
        for liquid, who, wick in product(
            ("kerosene", "lamp-oil"), ("", "Wren", "Moss"), ("", "W1", "W2")
        )
    ]
    for who, wick in product(("", "wren", "MOSS"), ("", "w1", "W2")):
        found = matching(log, fuel="kerosene", performer=who, wick=wick)
        expected = [
            one
            for one in log
            if one.fuel == "kerosene"
            and one.performer.lower() in (("", who.lower()) if who else ("", "wren", "moss"))
            and one.wick.lower() in (("", wick.lower()) if wick else ("", "w1", "w2"))
        ]
        assert list(found) == expected
    assert len(matching(log, fuel="kerosene")) == 9


def test_columns_in_any_order_and_case_with_lines_and_gaps():
    text = "\ufeffEnded , BURN,Fuel,extra,Performer,wick\n\nPUT OUT,4:05,Kerosene,x,Wren,W 1\n ,, ,\n,90s,kerosene\n"
    found = parse_burn_log(text.removeprefix("\ufeff"), "b.csv")
    assert found == (
        TimedBurn(
            fuel="kerosene", seconds=245.0, performer="Wren", wick="W 1", burnt_out=False, line=3
        ),
        TimedBurn(fuel="kerosene", seconds=90.0, line=5),
    )


@pytest.mark.parametrize(
    ("header", "row"),
    [
        ("fuel;burn;a,b", "kerosene;240;x,y"),
        ("fuel,burn,a;b", "kerosene,240,x;y"),
        ("fuel,burn", "kerosene,240"),
    ],
)
def test_the_mark_that_parts_the_header_more_often_parts_the_rows(header, row):
    assert [one.seconds for one in parse_burn_log(f"{header}\n{row}\n", "b.csv")] == [240.0]


def test_as_many_semicolons_as_commas_are_commas():
    with pytest.raises(InputError, match="no column fuel"):
        parse_burn_log("fuel;burn,burn\n", "b.csv")
    with pytest.raises(InputError, match="no column fuel and burn"):
        parse_burn_log("x\n", "b.csv")


@pytest.mark.parametrize("faults", [2, 12, 13])
def test_a_dozen_faults_are_told_at_once(faults):
    with pytest.raises(InputErrors) as caught:
        parse_burn_log("fuel,burn\n" + "kerosene,x\n" * faults, "b.csv")
    assert len(caught.value.errors) == min(faults, 12)
    assert caught.value.errors[-1].place.line == min(faults, 12) + 1


def test_faults_point_at_their_cell_by_the_widths_before_it():
    for row, column, line in (("ab;x;kerosene", 4, 2), ("ab;60;nothing", 7, 2), ("ab;60", 1, 2)):
        with pytest.raises(InputError) as caught:
            parse_burn_log(f"note;burn;fuel\n{row}\n", "b.csv")
        if column > 1:
            assert (caught.value.place.line, caught.value.place.column) == (line, column)
    with pytest.raises(InputError, match="'boom' is not a valid end") as caught:
        parse_burn_log("fuel,burn,ended\n\nkerosene,60,boom\n", "b.csv")
    assert caught.value.place == ("b.csv", 3, 13)


def test_a_row_may_be_longer_than_the_header_by_empty_cells_only():
    assert len(parse_burn_log("fuel,burn\nkerosene,60, ,\n", "b.csv")) == 1
    with pytest.raises(InputError, match="this line has 4 cells, the first line names 2"):
        parse_burn_log("fuel,burn\nkerosene,60,,x\n", "b.csv")


def test_a_log_of_five_megabytes_is_read(tmp_path):
    """As a practice log, which may be the burn log."""
    assert LARGEST_TABLE == 5_000_000
    path = tmp_path / "b.csv"
    text = b"fuel,burn\nkerosene,240\n"
    path.write_bytes(text.ljust(5_000_000, b"\n"))
    assert len(read_burn_log(path)) == 1
    path.write_bytes(text.ljust(5_000_001, b"\n"))
    with pytest.raises(InputError, match="larger than 5 MB"):
        read_burn_log(path)
    with pytest.raises(InputError) as caught:
        read_burn_log(tmp_path)
    assert caught.value.code == "cannot-read"
