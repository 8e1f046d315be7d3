"""One cause is told once: the same fault of several performers, or of a phrase that comes back."""

from dataclasses import replace

from sequencer import units
from sequencer.alike_findings import as_one, by_cause
from sequencer.findings import Figure, Finding

FOURS = units.BarLengths()

ELI = Finding(
    code="self-hit", severity="stop", who=("Eli",), start=20.0, end=24.0, position="17.1",
    message="pro-bend-4, both hands: the prop goes 2 cm into the trunk", remedies=("ahead 18 to 24 cm",),
)  # fmt: skip
ASH = replace(ELI, who=("Ash",), message="pro-bend-4, left hand: the prop goes 9 mm into the trunk")


def test_performers_with_one_fault_are_one_and_the_first_tells_its_figures():
    (group,) = by_cause([ELI, ASH, replace(ELI, who=("Bea",))])
    one = as_one(group, FOURS)
    assert one.who == ("Eli", "Ash", "Bea")
    assert one.message == f"{ELI.message} (Eli; much the same for Ash and Bea)"
    assert one.remedies == ELI.remedies


def test_what_comes_back_is_one_and_says_where():
    again = [
        replace(ELI, position=at, start=start) for at, start in (("33.1", 40.0), ("41.1", 50.0))
    ]
    (group,) = by_cause([ELI, *again])
    assert as_one(group, FOURS).message == f"{ELI.message} (again at 33.1 and 41.1)"
    late = replace(again[0], position="33.1+1/16")
    assert as_one([ELI, late, again[1]], FOURS).message.endswith(
        "(again just after 33.1 and at 41.1)"
    )


def test_names_in_a_message_do_not_part_them():
    burns = [
        replace(ELI, code="burn-reserve", who=(who,), message=f"{who} is lit for {time}", remedies=(f"put {who} out",))
        for who, time in (("Eli", "3:25.7"), ("Ash", "3:01.4"))
    ]  # fmt: skip
    assert len(by_cause(burns)) == 1


def test_other_causes_stay_apart():
    others = [
        replace(ELI, code="self-tangle"), replace(ELI, severity="warn"),
        replace(ELI, message="pro-bend-3, both hands: the prop goes 2 cm into the trunk and the leg"),
        replace(ELI, remedies=("another way",)), replace(ELI, who=("Eli", "Ash")), replace(ELI, who=()),
        replace(ELI, severity="note"), replace(ELI, severity="note"),
    ]  # fmt: skip
    groups = by_cause([ELI, *others])
    assert [len(group) for group in groups] == [1] * 9
    assert [as_one(group, FOURS) for group in groups] == [ELI, *others]


def into(metres):
    return Figure(quantity="gap to body", value=-metres, limit=0.0, unit="m", least=True)


def test_where_figures_differ_the_range_is_told():
    eli, ash = replace(ELI, figures=(into(0.02),)), replace(ASH, figures=(into(0.009),))
    assert as_one([eli, ash], FOURS).message.endswith("(Eli; much the same for Ash; 9 mm to 2 cm)")
    assert as_one([eli, replace(ash, figures=(into(0.11),))], FOURS).message.endswith(
        "; 2 to 11 cm)"
    )
    assert as_one([eli, replace(ash, figures=(into(0.0201),))], FOURS).message.endswith("for Ash)")
    bare = replace(ash, figures=())
    assert as_one([eli, bare], FOURS).message.endswith("for Ash)")


def test_how_a_position_is_counted_does_not_part_what_has_one_cause():
    said = [
        units.at_aloud(f"5.1{part}", FOURS) for part in ("", "+1/16", "+5/16", "+1/2", "+15/16")
    ]
    close = [
        replace(
            ELI, message=f"comes within 0.9 m, closest {at}; 2 times up to {at.removeprefix('at ')}"
        )
        for at in said
    ]
    assert len({each.message for each in close}) == len(said)
    assert len(by_cause(close)) == 1
    fast = [replace(ELI, message=f"a wick moves at {speed} m/s") for speed in ("16", "15.5")]
    assert len(by_cause(fast)) == 1


def test_of_several_figures_each_range_is_named():
    def fast(turns, pull):
        return replace(
            ELI,
            figures=(
                Figure(quantity="turns", value=turns, limit=2.5, unit="1/s"),
                Figure(quantity="pull", value=pull, limit=60.0, unit="N"),
            ),
        )

    again = replace(fast(6.7, 84.5), position="41.1")
    assert as_one([fast(4.9, 84.5), again], FOURS).message.endswith(
        "(again at 41.1; turns 4.9 to 6.7 times a second)"
    )


def test_a_reach_tells_how_far_it_is_too_far_and_a_distance_how_far_it_is():
    def one(quantity, value, limit, *, least):
        figure = Figure(quantity=quantity, value=value, limit=limit, unit="m", least=least)
        return replace(ELI, figures=(figure,))

    reach = [one("hand from shoulder", value, 0.66, least=False) for value in (0.70, 0.77)]
    assert as_one(reach, FOURS).message.endswith("(2 times; 4 to 11 cm)")
    apart = [one("distance", value, 0.3, least=True) for value in (0.24, 0.05)]
    assert as_one(apart, FOURS).message.endswith("(2 times; 5 to 24 cm)")


def test_what_messages_tell_whole_is_told_whole_and_what_lies_inside_by_how_far():
    def one(quantity, value, limit, *, least):
        figure = Figure(quantity=quantity, value=value, limit=limit, unit="m", least=least)
        return replace(ELI, figures=(figure,))

    gaps = [one("hand gap", value, 0.05, least=False) for value in (0.20, 0.30)]
    assert as_one(gaps, FOURS).message.endswith("(2 times; 20 to 30 cm)")
    inside = [one("distance", value, 0.3, least=True) for value in (-0.2, -0.5)]
    assert as_one(inside, FOURS).message.endswith("(2 times; 20 to 50 cm)")
    both = [one("distance", value, 0.3, least=True) for value in (-0.2, 0.1)]
    assert as_one(both, FOURS).message.endswith("(2 times; 20 cm into to 10 cm)")


def test_places_between_counts_are_numbers_too():
    said = ("25.2", "the and of 25.2", "just after 26.1", "about the and of 3.4", "just before 7.1")
    every = [replace(ELI, message=f"closest at {where}", position=where) for where in said]
    assert [len(group) for group in by_cause(every)] == [5]
    other = replace(ELI, message="closest in 25.2")
    assert [len(group) for group in by_cause([*every, other])] == [5, 1]
