"""Numbers on paper are rounded to the side on which they are safe."""

import pytest

from sequencer.outputs.sheets.page.wording import NB, at_least, at_most, closed_up, number_spans


@pytest.mark.parametrize(
    ("value", "decimals", "most", "least"),
    [
        (8.25, 1, "8.3 m", "8.2 m"),
        (7.6201, 2, "7.63 m", "7.62 m"),
        (7.6299, 2, "7.63 m", "7.62 m"),
        (7.62, 2, "7.62 m", "7.62 m"),
        (0.04, 1, "0.1 m", "0.0 m"),
        (-0.2, 1, "−0.2 m", "0.0 m"),  # nothing is kept clear of by less than nothing
    ],
)
def test_a_bound_is_never_understated_and_a_clearance_never_overstated(
    value, decimals, most, least
):
    """A walk, a reach, a flight that turns out shorter than printed hurts nobody; one that is longer may."""
    assert at_most(value, decimals=decimals) == most.replace(" ", NB)
    assert at_least(value, decimals=decimals) == least.replace(" ", NB)


def test_a_number_stays_on_one_line_with_its_unit():
    words = "walk 7.5 m: 5 s brisk; 1.42 kW/m² at 6.0 m/s, 80 %, 3 L, 18 years, 5 men, 2 sheets"

    assert closed_up(words) == (
        f"walk 7.5{NB}m: 5{NB}s brisk; 1.42{NB}kW/m² at 6.0{NB}m/s, 80{NB}%, 3{NB}L, 18{NB}years, 5 men, 2 sheets"
    )


@pytest.mark.parametrize(
    ("numbers", "said"),
    [([], ""), ([3], "3"), ([1, 2], "1, 2"), ([1, 2, 3], "1–3"), ([1, 2, 4, 5, 6, 9], "1, 2, 4–6, 9")],
)  # fmt: skip
def test_numbers_in_a_row_are_the_first_and_the_last(numbers, said):
    assert number_spans(numbers) == said
