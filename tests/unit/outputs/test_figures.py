"""Figures hold names as they are written, whatever letters these have."""

import warnings

import pytest
from matplotlib.figure import Figure

from sequencer.outputs.figures import plain_text, write_figure, write_pages


def titled(title):
    figure = Figure(figsize=(2, 1))
    figure.suptitle(title)
    return figure


@pytest.mark.parametrize("name", ["$\\frac{$", "a$b$", "\\$"])
def test_a_dollar_sign_begins_no_formula(tmp_path, name):
    figure = plain_text(titled)(name)
    assert figure.get_suptitle() == name
    assert not figure._suptitle.get_parse_math()
    write_figure(figure, tmp_path / "plain.svg")
    assert (tmp_path / "plain.svg").stat().st_size > 500


def test_a_formula_that_is_none_would_stop_the_picture(tmp_path):
    with pytest.raises(ValueError, match="frac"):
        write_figure(titled("$\\frac{$"), tmp_path / "not.svg")
    assert list(tmp_path.iterdir()) == []


def test_a_letter_that_the_font_lacks_is_no_warning(tmp_path):
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        write_figure(titled("火"), tmp_path / "one.png")
        write_pages([titled("火"), titled("木")], tmp_path / "two.pdf")
