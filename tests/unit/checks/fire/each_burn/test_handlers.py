"""Somebody is named to light and to put out, and is free for it then."""

import pytest

from tests.handled_show import found, said

SORREL = "  - {name: Sorrel, post: [0, 1], duty: lighter}\n"
TWO = ("who: Wren, from: 11.1", "who: all, from: 11.1")
ALONE = (
    "post: [-5, 9], duty: spotter, watches: Wren}\n  - {name: Brook, post: [5, 9], duty: spotter, watches: Moss}",
    "post: [-5, 9], duty: spotter}",
)  # Flint watches both
MOSS = ("    - {who: Moss, from: 41.1, until: 61.1}\n", "")


def by(name):
    """Wren is lit by somebody from 15 s to 20 s."""
    return ("who: Wren, from: 11.1", f"who: Wren, lit_by: {name}, from: 11.1")


def out_by(name):
    """Wren is put out by somebody from 60 s to 65 s."""
    return ("who: Wren, from: 11.1", f"who: Wren, put_out_by: {name}, from: 11.1")


def weaves(until):
    """Moss dances from the first beat on as well."""
    own = "  - {who: Moss, from: 43.1, p"
    return (own, f"  - {{who: Moss, from: 1.1, until: {until}, pattern: two-beat-weave}}\n{own}")


@pytest.mark.parametrize(
    ("edits", "expected"),
    [
        ([(SORREL, "")], [("nobody-lights", ("Wren",)), ("nobody-lights", ("Moss",))]),
        ([(SORREL, SORREL + SORREL.replace("Sorrel", "Vesper"))],
         [("nobody-lights", ("Wren",)), ("nobody-lights", ("Moss",))]),
        ([(SORREL, ""), ("waiting: on", "lit_by: Linden, waiting: on")], []),  # the lead
        ([by("Linden")], []),
        ([by("Tarn")], [("lighter-unfit", ("Tarn", "Wren"))]),  # keeps the fuel
        ([by("Hazel")], [("lighter-unfit", ("Hazel", "Wren"))]),  # guards the perimeter
        ([by("Flint")], [("lighter-unfit", ("Flint", "Wren"))]),  # watches Wren, alight
        ([by("Brook")], []),  # a spotter who watches nobody then
        ([by("Wren")], [("lighter-unfit", ("Wren", "Wren"))]),
        ([by("Moss")], []),  # dances and burns only later
        # Moss dances until 15 s, 8.3, and a beat longer
        ([by("Moss"), weaves("8.3")], []),
        ([by("Moss"), weaves("8.4")], [("lighter-unfit", ("Moss", "Wren"))]),
        # Moss is put out by 15 s, before 20 s; 5 s later there are 0 s between
        ([by("Moss"), ("who: Moss, from: 41.1, until: 61.1", "who: Moss, from: 4.1, until: 6.1")], []),
        ([by("Moss"), ("who: Moss, from: 41.1, until: 61.1", "who: Moss, from: 4.1, until: 6.2")],
         [("lighter-unfit", ("Moss", "Wren"))]),
        ([out_by("Linden")], []),
        # Flint puts Wren out from 60 s to 65 s, and nobody watches Moss, who burns until 60.5 s; until 60 s they wait
        ([ALONE, ("who: Moss, from: 41.1, until: 61.1", "who: Moss, from: 21.1, until: 31.2")],
         [("put-out-unfit", ("Flint", "Wren"))]),
        ([ALONE, ("who: Moss, from: 41.1, until: 61.1", "who: Moss, from: 21.1, until: 31.1")], []),
        ([out_by("Brook")], []),
        ([out_by("Tarn")], [("put-out-unfit", ("Tarn", "Wren"))]),
        ([out_by("Hazel")], [("put-out-unfit", ("Hazel", "Wren"))]),
        ([out_by("Wren")], [("put-out-unfit", ("Wren", "Wren"))]),
        ([out_by("Moss")], []),
        ([out_by("Moss"), ("who: Moss, from: 41.1", "who: Moss, from: 36.1")], []),  # alight from 65 s
        ([out_by("Moss"), ("who: Moss, from: 41.1", "who: Moss, from: 35.4")],
         [("put-out-unfit", ("Moss", "Wren"))]),
    ],
)  # fmt: skip
def test_whoever_handles_a_flame_is_named_and_free(edits, expected):
    stops = [(code, who) for code, severity, who in found(*edits) if severity == "stop"]
    assert stops == expected


def test_one_person_is_in_one_place_at_a_time():
    """Linden puts Wren out until 65 s and lights Moss 10 m away from 74.5 s on: 9.37 s of slow walk fit, by 0.1 s."""
    both = [out_by("Linden"), ("who: Moss, from: 41.1", "who: Moss, lit_by: Linden, from: FROM")]
    fits = [both[0], (both[1][0], both[1][1].replace("FROM", "40.4"))]
    short = [both[0], (both[1][0], both[1][1].replace("FROM", "40.3"))]
    assert found(*fits) == []
    finding = said("lighter-unfit", *short)
    assert (finding.severity, finding.who) == ("stop", ("Linden", "Moss"))
    assert finding.message == (
        "Linden puts out Wren until 1:05.0 and lights Moss from 1:14.0; the way there is 10 s of slow walk"
    )
    assert finding.remedies == ("let another person light Moss",)


def test_the_findings_say_when_and_whom_to_name():
    nobody = said("nobody-lights", (SORREL, ""), MOSS)
    assert nobody.message == "nobody is named to light Wren, from 0:15.0 to 0:20.0, 5 s"
    assert nobody.remedies == (
        "write lit_by: Linden under fire, handling",
        "add a lighter to the crew",
    )
    usual = ("light: 5 s, put_out", "put_out")
    without = ("  - {name: Linden, post: [0, 11], duty: lead}\n", "")
    both = said("nobody-lights", (SORREL, ""), without, TWO, MOSS, usual)
    # 10 m between them, one after the other
    assert both.message == (
        "nobody is named to light Wren, Moss, from 0:09.4 before the track to 0:20.0, 10 s (assumed, not measured) each"
    )
    assert both.remedies == ("add a lighter to the crew: duty: lighter",)
    watching = said("lighter-unfit", by("Flint"))
    assert watching.message == "Flint lights Wren, but watches Wren, who is alight from 0:15.0"
    keeping = said("lighter-unfit", by("Tarn"))
    assert keeping.message == ("Tarn lights Wren, but Tarn keeps the fuel, where no flame may be")
    assert keeping.remedies == ("name another person: a lighter or the lead",)
    assert said("put-out-unfit", out_by("Tarn")).remedies == (
        "name another person: a spotter who watches nobody else then, the lighter or the lead, under put_out_by",
    )
