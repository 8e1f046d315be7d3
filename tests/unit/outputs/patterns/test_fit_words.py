"""Words for one fit: numbers as they are said."""

from sequencer.outputs.patterns.fit_words import two_figures_up


def test_figures_aretwo_figures_up_to_two():
    cases = {
        0.0: "0",
        0.0431: "0.044",
        0.43: "0.43",
        0.991: "1.0",
        1.0: "1.0",
        9.91: "10",
        12.01: "13",
        120.4: "130",
    }
    assert {value: two_figures_up(value) for value in cases} == cases
