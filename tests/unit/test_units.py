"""Quantities as people write them. Source of the factors: NIST SP 811, appendix B (from memory)."""

import math

import pytest

from sequencer import units


@pytest.mark.parametrize(
    ("text", "table", "default", "value"),
    [
        ("1.8 m", units.LENGTHS, "m", 1.8),
        ("1,8 m", units.LENGTHS, "m", 1.8),
        ("55cm", units.LENGTHS, "m", 0.55),
        ("6 ft", units.LENGTHS, "m", 1.8288),
        ("5 ft 7 in", units.LENGTHS, "m", 1.7018),
        ("20 ft", units.LENGTHS, "m", 6.096),
        ("200 g", units.MASSES, "kg", 0.2),
        ("1 gal", units.VOLUMES, "L", 3.785411784e-3),
        ("15 mph", units.SPEEDS, "m/s", 6.7056),
        ("-12 ms", units.DURATIONS, "s", -0.012),
        (3, units.LENGTHS, "m", 3.0),
    ],
)
def test_quantities_become_si(text, table, default, value):
    assert math.isclose(units.quantity(text, table, default=default), value, rel_tol=1e-12)


@pytest.mark.parametrize(
    ("text", "match"),
    [
        ("wide", "is not a number with a unit"),
        ("3 furlongs", "unit 'furlongs'.*use one of m, cm"),
        ("nan", "is not a number"),
        (math.inf, "not a finite number"),
        (True, "not a number"),
        ("1e400 m", "not a finite number"),
    ],
)
def test_what_is_no_quantity_is_refused(text, match):
    with pytest.raises(ValueError, match=match):
        units.quantity(text, units.LENGTHS, default="m")
