"""Timed burns: read with their place, estimated robustly, never rosier than the shortest."""

import numpy as np
import pytest
from scipy import stats

from sequencer.errors import InputError, InputErrors
from sequencer.facts import burn_log
from sequencer.facts.burn_log import TimedBurn, estimate, matching, parse_burn_log, read_burn_log
from sequencer.facts.burn_times import BurnTime, default_burn_time
from sequencer.facts.fuels import fuel

LOG = """\
date,performer,fuel,wick,burn,ended,note
2026-09-01,Wren,kerosene,monkey 5 cm,4:05,burnt out,still air
2026-09-01,Wren,kerosene,monkey 5 cm,251,burnt out,
2026-09-08,Wren,paraffin (UK),monkey 5 cm,239 s,,breeze
2026-09-08,Wren,kerosene,monkey 5 cm,3:10,put out,
2026-09-08,Moss,lamp oil,monkey 5 cm,300,burnt out,
"""


def burns(*seconds):
    return [
        TimedBurn(fuel="kerosene", seconds=each, line=i) for i, each in enumerate(seconds, start=2)
    ]


def test_a_log_is_read():
    log = parse_burn_log(LOG, "burns.csv")

    assert [burn.seconds for burn in log] == [245.0, 251.0, 239.0, 190.0, 300.0]
    assert [burn.fuel for burn in log] == ["kerosene"] * 4 + ["lamp-oil"]
    assert [burn.burnt_out for burn in log] == [True, True, True, False, True]
    mine = matching(log, fuel="kerosene", performer="wren")
    assert estimate(mine).count == 3
    assert not matching(log, fuel="kerosene", performer="Moss")


def test_semicolons_and_a_byte_order_mark_are_read(tmp_path):
    path = tmp_path / "burns.csv"
    path.write_text("fuel;burn\nkerosene;240\n\n", encoding="utf-8-sig")

    assert [burn.seconds for burn in read_burn_log(path)] == [240.0]


@pytest.mark.parametrize(
    ("row", "code", "column", "says"),
    [
        (
            "2026,Wren,kerosene,w,four minutes,,",
            "bad-value",
            22,
            "'four minutes' is not a burning time",
        ),
        ("2026,Wren,kerosene,w,-240,,", "bad-value", 22, "above 0"),
        ("2026,Wren,kerosene,w,,,", "bad-value", 22, "not a burning time"),
        ("2026,Wren,kerosene,w,nan,,", "bad-value", 22, "not a burning time"),
        ("2026,Wren,kerosine,w,240,,", "unknown-fuel", 11, "did you mean kerosene"),
        ("2026,Wren,kerosene,w,240,exploded,", "bad-value", 26, "burnt out, or put out"),
    ],
)
def test_faults_name_line_and_column(row, code, column, says):
    with pytest.raises(InputError) as caught:
        parse_burn_log(f"date,performer,fuel,wick,burn,ended,note\n{row}\n", "burns.csv")

    assert caught.value.code == code
    assert caught.value.place == ("burns.csv", 2, column)
    assert says in str(caught.value)


def test_a_comma_inside_a_time_is_not_taken_for_the_end_of_a_column():
    with pytest.raises(InputError, match="this line has 3 cells, the first line names 2") as caught:
        parse_burn_log("fuel,burn\nkerosene,1,245\n", "b.csv")
    assert caught.value.place.line == 2
    with pytest.raises(InputError, match="'4,5' is not a burning time"):
        parse_burn_log("fuel;burn\nkerosene;4,5\n", "b.csv")
    assert [burn.seconds for burn in parse_burn_log("fuel,burn\nkerosene,240,,\n", "b.csv")] == [
        240.0
    ]


def test_several_faults_and_no_header(tmp_path):
    with pytest.raises(InputErrors) as caught:
        parse_burn_log("fuel,burn\nx,1\nkerosene,y\n", "b.csv")
    assert [error.place.line for error in caught.value.errors] == [2, 3]
    for text in ("", "date,time\n1,2\n"):
        with pytest.raises(InputError, match="header has no column"):
            parse_burn_log(text, "b.csv")
    with pytest.raises(InputError, match="burn log not found"):
        read_burn_log(tmp_path / "none.csv")
    with pytest.raises(InputError, match="cannot be read"):
        read_burn_log(tmp_path)
    (tmp_path / "bin.csv").write_bytes(b"fuel,burn\n\xff\xfe")
    with pytest.raises(InputError, match="not UTF-8"):
        read_burn_log(tmp_path / "bin.csv")
    (tmp_path / "big.csv").write_bytes(b"fuel,burn\n" + b"kerosene,240\n" * 400_000)
    with pytest.raises(InputError, match="larger than 5 MB"):
        read_burn_log(tmp_path / "big.csv")


def test_many_burns_are_told_in_one_line():
    said = estimate(burns(238, 240, 242, 244, 246)).burn_time()

    assert (said.basis, said.count) == ("measured", 5)
    assert "5 timed burns, median 242 s; the next lasts at least" in said.source
    with pytest.raises(InputError, match="is not CSV"):
        parse_burn_log('fuel,burn\nkerosene,"' + "x" * 200_000 + '"\n', "b.csv")


def test_few_burns_give_no_interval_and_count_the_shortest():
    found = estimate(burns(250.0, 240.0))

    assert found.lower is None
    assert found.counted_on == 240.0
    assert "no interval with fewer than 3" in found.burn_time().source
    assert estimate([TimedBurn(fuel="kerosene", seconds=9.0, burnt_out=False)]) is None
    assert estimate([]) is None


def test_one_slip_of_the_pen_does_not_move_the_estimate():
    """2400 for 240 s would give a normal sample a mean of 673 s; the median stays, and it is named."""
    clean, slipped = (
        estimate(burns(238, 240, 242, 244, 246)),
        estimate(burns(238, 2400, 242, 244, 246)),
    )

    assert slipped.middle == pytest.approx(clean.middle, abs=3)
    assert slipped.counted_on == pytest.approx(clean.counted_on, abs=20)
    assert slipped.outliers == (3,)
    assert clean.outliers == ()


def test_a_short_burn_is_never_thrown_away():
    found = estimate(burns(120, 240, 242, 244, 246, 241, 243))

    assert found.outliers == (2,)
    assert found.counted_on == 120.0


@pytest.mark.parametrize("n", [3, 5, 8, 15])
def test_the_next_burn_lasts_as_long_as_counted_on(n):
    """Normal burns of 240 ± 20 s: the next one is shorter in at most 5 % of 2,000 draws (+ 3 sigma)."""
    rng = np.random.default_rng(20261125 + n)
    draws = rng.normal(240.0, 20.0, size=(2000, n + 1))
    short = sum(row[-1] < estimate(burns(*row[:-1])).counted_on for row in draws) / len(draws)

    assert short <= 0.05 + 3 * np.sqrt(0.05 * 0.95 / 2000)


def test_the_interval_against_the_textbook():
    """Normal sample, mean ± t·s·√(1 + 1/n) (NIST/SEMATECH e-Handbook, from memory): n = 200, within 2 s."""
    sample = np.random.default_rng(7).normal(240.0, 20.0, size=200)
    found = estimate(burns(*sample))
    margin = stats.t.ppf(0.95, 199) * sample.std(ddof=1) * np.sqrt(1 + 1 / 200)

    assert found.lower == pytest.approx(sample.mean() - margin, abs=5.0)
    assert found.upper == pytest.approx(sample.mean() + margin, abs=5.0)


def test_defaults_say_that_they_are():
    """Kerosene 4 to 7 min, white gas 3 to 4 min: practitioners' guides (common practice)."""
    assert default_burn_time(fuel("kerosene")).seconds == 240.0
    assert default_burn_time(fuel("white-gas")).seconds == 180.0
    assert default_burn_time(fuel("kerosene")).basis == "default"
    assert default_burn_time(fuel("ethanol")) is None
    # 45 g over 314 cm²: less fuel lasts less long than the trade's least time
    soaked = default_burn_time(fuel("kerosene"), soak=0.045, wick_area=0.0314)
    assert soaked.seconds < 100
    assert "soaked mass over burning rate" in soaked.source
    with pytest.raises(ValueError, match="must be positive"):
        default_burn_time(fuel("kerosene"), soak=-1.0, wick_area=0.01)
    with pytest.raises(ValueError, match="must be positive"):
        BurnTime(seconds=0.0, basis="stated", source="")


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("0.5", 0.5), ("3600", 3600.0), ("60:00", 3600.0), ("2:05", 125.0), ("90s", 90.0),
        ("0", None), ("-0.5", None), ("3600.1", None), ("0:00", None), ("soon", None), ("nan", None), ("9" * 400 + ":00", None),
    ],
)  # fmt: skip
def test_a_burn_lasts_longer_than_no_time_and_an_hour_at_most(text, seconds):
    assert burn_log.burning_seconds(text) == seconds
