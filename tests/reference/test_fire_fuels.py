"""Classes of liquids and flash points against the schemes and handbook entries.

Sources: NFPA 30 (classic classes) and 29 CFR 1910.106 / GHS, read second-hand; NIOSH Pocket Guide.
"""

import pytest

from sequencer.facts.fuels import (
    fuel,
    fuels,
    ghs_category,
    nfpa_class,
)
from sequencer.facts.sources import READING_MARKS


@pytest.mark.parametrize(
    ("name", "nfpa", "ghs"),
    [
        ("kerosene", "II", 3),  # NIOSH npgd0366, 37.8 °C
        ("ethanol", "IB", 2),  # NIOSH npgd0262, 12.8 °C
        ("isopropanol", "IB", 2),  # NIOSH npgd0359, 11.7 °C
        ("vmp-naphtha", "IB", 2),  # OSHA/EPA and NIOSH, −6.7 … 12.8 °C
    ],
)
def test_common_fuels_fall_in_their_printed_class(name, nfpa, ghs):
    found = fuel(name)

    assert (found.nfpa_class, found.ghs_category) == (nfpa, ghs)
    assert found.printed_class == nfpa


@pytest.mark.parametrize(
    ("flash", "boiling", "nfpa", "ghs"),
    [
        (22.9, 90.0, "IC", 2),  # 73 °F is 22.78 °C, the GHS edge 23 °C: the schemes part here
        (60.0, 200.0, "IIIA", 3),  # "<" 140 °F against "≤" 60 °C
        (93.0, 250.0, "IIIA", 4),
        (93.1, 250.0, "IIIA", None),  # 200 °F is 93.33 °C
        (93.4, 250.0, "IIIB", None),
        (-30.0, 36.0, "IA", 2),  # boiling edge 37.8 °C against 35 °C
        (-30.0, 35.0, "IA", 1),
        (-30.0, None, "IA", 1),  # unknown counts as the worse
        (37.7, None, "IC", 3),
    ],
)
def test_the_two_schemes_part_at_their_edges(flash, boiling, nfpa, ghs):
    """Edges of NFPA 30 and 29 CFR 1910.106(a)(19), "<" and "≤" as printed."""
    assert nfpa_class(flash, boiling) == nfpa
    assert ghs_category(flash, boiling) == ghs


def test_names_that_mean_two_liquids_are_not_guessed():
    """ "Paraffin" is kerosene in the UK and lamp oil in the US (trade fuel notes)."""
    with pytest.raises(ValueError, match="kerosene in the UK and lamp oil in the US"):
        fuel("Paraffin")
    with pytest.raises(ValueError, match="petrol in some countries"):
        fuel("benzine")


def test_unknown_fuels_name_the_nearest():
    with pytest.raises(ValueError, match="did you mean kerosene"):
        fuel("kerosine")
    with pytest.raises(ValueError, match="known are kerosene"):
        fuel("dragon breath")


def test_refused_liquids_say_why_and_by_whom():
    """Gasoline is banned under all conditions in Grants Pass OR (permit of 2019-08-29, read)."""
    refused = {found.name: found.refused for found in fuels().values() if found.refused}

    assert {"gasoline", "diesel", "thinner", "unknown-mix"} <= set(refused)
    assert refused["gasoline"].source.key == "A5"
    assert all(reason.why for reason in refused.values())
    assert fuel("Petrol").name == "gasoline"


def test_a_liquid_without_a_flash_point_counts_as_the_worst():
    diesel = fuel("diesel")

    assert diesel.flammable
    assert diesel.nfpa_class is None
    assert diesel.ghs_category is None


def test_every_number_has_a_source_and_an_honest_mark():
    for found in fuels().values():
        for name in (
            "flash_point",
            "boiling_point",
            "density",
            "heat_of_combustion",
            "autoignition",
        ):
            figure = getattr(found, name)
            if figure is not None:
                assert figure.mark in READING_MARKS
                assert figure.source.title
                assert figure.mark in figure.citation
    assert fuel("white-gas").flash_point.mark == "from memory"


def test_flash_point_of_ethanol_against_a_chemistry_library():
    """`chemicals` 1.5.2 (test only): 12.0 °C against NIOSH 12.8 °C; the class is the same."""
    chemicals = pytest.importorskip("chemicals")
    library = chemicals.T_flash("64-17-5") - 273.15

    assert abs(library - 12.8) <= 1.5
    assert nfpa_class(library, 78.3) == fuel("ethanol").nfpa_class


def test_heats_of_combustion_from_formation_enthalpies():
    """`chemicals` 1.5.2: lower heating values; ethanol 26.82, n-heptane 44.56 MJ/kg."""
    chemicals = pytest.importorskip("chemicals")
    from sequencer.facts.pool_fires import pool_fires

    for name, formula, cas in (("ethanol", "C2H6O", "64-17-5"), ("heptane", "C7H16", "142-82-5")):
        burnt = chemicals.combustion_data(formula=formula, Hf=chemicals.Hfl(cas))
        lower = -burnt.LHV / (burnt.MW / 1000)
        assert lower == pytest.approx(pool_fires()[name].heat_of_combustion, rel=0.005)
