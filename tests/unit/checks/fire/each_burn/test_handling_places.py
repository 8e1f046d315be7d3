"""Places of lighting and putting out: clear of those who dance, of the audience and of what burns."""

import pytest

from sequencer.checks.fire.each_burn.handling_kept import CHECK
from sequencer.checks.fire.each_burn.handling_places import REST_ROOM, room_at_rest
from sequencer.checks.fire.on_site.fuel_point import CHECK as FUEL_POINT
from tests.handled_show import found, handled, said

NOT_MOSS = ("    - {who: Moss, from: 41.1, until: 61.1}\n", "")
HAY = "  scenery: [{name: hay, height: 2 m, outline: [[-2, Y], [2, Y], [2, 40], [-2, 40]]}]\n  fuel_station"
OWN_DISTANCE = "rules: {audience: 9 m}\ncast:"


def at(x, y):
    return ("who: Wren, from: 11.1", f"who: Wren, lit_at: [{x}, {y}], from: 11.1")


def stage(x):
    """Moss stands this far to stage left."""
    return ("Moss: {at: [5, 4]}", f"Moss: {{at: [{x}, 4]}}")


def spins(start, until):
    """Moss dances then too."""
    own = "  - {who: Moss, from: 43.1, p"
    return (
        own,
        f"  - {{who: Moss, from: {start}, until: {until}, pattern: two-beat-weave}}\n{own}",
    )


def hay(y):
    return ("  fuel_station", HAY.replace("Y", f"{y}"))


def reach():
    return handled().dancers[1].reach


def placed(*edits):
    return [
        (code, who) for code, _severity, who in found(NOT_MOSS, *edits) if code.endswith("place")
    ]


def test_lit_props_at_rest_take_a_metre_or_their_own_length():
    assert room_at_rest(handled().dancers[0]) == REST_ROOM == 1.0
    long = handled(
        (
            "prop: {tether: 50 cm, fuel_mass: 20 g}}\n  - {name: Moss",
            "prop: {kind: rope dart, tether: 90 cm, fuel_mass: 20 g}}\n  - {name: Moss",
        )
    )
    assert room_at_rest(long.dancers[0]) == pytest.approx(0.4 + 0.9)


def test_nobody_is_lit_within_the_reach_of_somebody_who_dances():
    """Moss weaves from 10 s to 18 s; Wren is lit from 15 s on, 5 m to stage right."""
    edge = -5 + reach() + REST_ROOM
    dances = spins("6.1", "10.1")
    assert placed(dances, stage(round(edge + 0.02, 3))) == []
    assert placed(dances, stage(round(edge - 0.02, 3))) == [("lighting-place", ("Wren", "Moss"))]
    # the same on the way to 15 s, 8.3: before she is lit nobody is near a flame
    assert placed(spins("4.1", "8.3"), stage(round(edge - 0.02, 3))) == []
    finding = said("lighting-place", NOT_MOSS, dances, stage(-2.5))
    assert (finding.severity, finding.start, finding.end) == ("stop", 15.0, 20.0)
    assert finding.message == (
        f"Wren is lit within the reach of Moss: Moss dances two-beat-weave 2.50 m away, {reach() + 1:.2f} m needed "
        f"({reach():.2f} m of reach, 1.00 m for Wren and whoever handles the props)"
    )
    assert finding.remedies == (
        f"choose a place {reach() - 1.5:.2f} m farther from Moss, or let Moss rest from 0:15.0 to 0:20.0",
    )


def test_nobody_is_put_out_within_the_reach_of_somebody_who_dances():
    """Putting out lasts from 60 s to 65 s; the weave of Moss ends at 60 s, 31.1, or goes on."""
    near = stage(round(-5 + reach() + REST_ROOM - 0.02, 3))
    assert placed(spins("28.1", "31.1"), near) == []
    assert placed(spins("28.1", "31.2"), near) == [("putting-out-place", ("Wren", "Moss"))]
    assert placed(spins("28.1", "31.2"), stage(round(-5 + reach() + REST_ROOM + 0.02, 3))) == []


@pytest.mark.parametrize(
    ("edits", "expected"),
    [
        ([at(-7, 4)], []),
        ([at(-11, 4)], ["warn"]),  # off a stage of 20 m
        # 6.096 m to the audience with one lit, and 1 m of props: at y = −12.904
        ([at(-7, -12.9)], ["warn"]),
        ([at(-7, -12.91)], ["stop", "warn"]),
        ([at(-7, -24)], ["stop", "warn"]),  # among the audience, however deep
        # the show's own distance is larger: 9 m and 1 m of props
        ([at(-7, -9.99), ("cast:", OWN_DISTANCE)], ["warn"]),
        ([at(-7, -10.01), ("cast:", OWN_DISTANCE)], ["stop", "warn"]),
        # 6.096 m to what burns and 1 m of props: at x = 0 from y = 8
        ([at(0, 0.9), hay(8)], []),
        ([at(0, 0.91), hay(8)], ["stop"]),
        ([at(0, 10), hay(8)], ["stop", "stop"]),  # inside it, and no way out
    ],
)
def test_a_place_away_from_the_dance_is_looked_at(edits, expected):
    findings = [
        severity for code, severity, who in found(NOT_MOSS, *edits) if code == "lighting-place"
    ]
    assert findings == expected


def test_a_place_says_what_is_wrong_with_it():
    big = ("width: 20 m, depth: 12 m", "width: 90 m, depth: 12 m")

    def told(*edits):
        findings = CHECK.outcome(handled(NOT_MOSS, big, *edits)).findings
        return [each.message for each in findings if each.code == "lighting-place"]

    assert told(at(-9, 4), hay(8)) == []
    assert told(at(0, 2), hay(8)) == [
        "the place where Wren is lit leaves 5.00 m between lit props and hay, which can burn; 6.10 m required"
    ]
    assert told(at(0, 10), hay(8)) == [
        "the place where Wren is lit is inside hay",
        "the place where Wren is lit has no way to where the burn begins",
    ]
    assert told(at(-7, -14))[0] == (
        "the place where Wren is lit leaves 5.00 m between lit props and front; 6.10 m required"
    )
    assert told(at(-7, -24))[0] == "the place where Wren is lit is behind front, among the audience"


def test_a_place_near_the_fuel_is_found_by_the_check_of_the_fuel_point():
    """The fuel stands at [30, 20]; the performer is followed from the place of lighting on."""
    near = FUEL_POINT.outcome(handled(NOT_MOSS, at(26, 18))).findings
    assert [each.code for each in near] == ["fuel-point-close"]
    assert FUEL_POINT.outcome(handled(NOT_MOSS, at(10, 10))).findings == ()
