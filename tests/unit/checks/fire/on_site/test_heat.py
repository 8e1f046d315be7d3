"""Flames and their heat: what is found, at which figure, and that it is rounded to the safe side."""

import pytest

from sequencer.checks.fire.on_site.heat import flame_findings, glow_findings, post_findings
from sequencer.facts.rule_book import rule_book
from sequencer.safety.duties.watching import Duty
from sequencer.safety.site_ground.radiant_heat import Wicks

LIMIT = rule_book().strictest("audience-flux")  # 1.42 kW/m², 24 CFR 51
SPOTTER = Duty(who="Flint", place=(1.0, 2.0), duty="spotter")


def wicks(*, mean=0.42, peak=0.51):
    return {"Wren": Wicks(heat=14e3, centre=1.7, mean=mean, peak=peak)}


@pytest.mark.parametrize(
    ("stated", "found"),
    [
        (0.48, True),  # above the mean of 0.42, but 6 % below the peak of 0.51
        (0.49, False),  # within 5 % of it
        (0.60, False),
        (None, False),  # a blank is another check's finding
    ],
)
def test_a_flame_is_understated_if_its_peak_is(stated, found):
    assert bool(flame_findings(wicks(), stated=stated)) is found


def test_an_understated_flame_is_told_with_mean_and_peak_rounded_up():
    (finding,) = flame_findings(wicks(mean=0.4101, peak=0.5101), stated=0.4)

    assert "0.42 m on the mean and 0.52 m at the peak" in finding.message
    assert "use the larger figure" in finding.message
    assert finding.remedies[0].endswith("flame: 0.52 m")


@pytest.mark.parametrize(("flux", "codes"), [(1420.0, []), (1421.0, ["audience-heat"])])
def test_heat_at_the_audience_is_held_against_the_rule(flux, codes):
    found = glow_findings({"rows": flux}, ("Wren",), limit=LIMIT)

    assert [each.code for each in found] == codes
    assert all("up to 1.43 kW/m² of heat at rows; 1.42 allowed" in each.message for each in found)


@pytest.mark.parametrize(
    ("flux", "severity"), [(1420.0, None), (1421.0, "warn"), (4730.0, "warn"), (4731.0, "stop")]
)
def test_a_hot_post_is_a_warning_and_one_that_hurts_within_15_s_a_stop(flux, severity):
    """Levels of 24 CFR 51, subpart C, appendix II: 450 and 1,500 Btu/(h·ft²)."""
    found = post_findings([SPOTTER], [flux])

    assert [each.severity for each in found] == ([severity] if severity else [])


def test_the_time_to_pain_is_rounded_down():
    """92/5^(4/3) = 10.76 s."""
    (finding,) = post_findings([SPOTTER], [5000.0])

    assert "bare skin hurts after 10 s" in finding.message
    assert (finding.who, finding.where) == (("Flint",), (1.0, 2.0))
