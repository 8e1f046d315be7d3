"""One cause is told once: the same fault of several performers, or of a phrase that comes back."""

from dataclasses import replace

from sequencer.alike_findings import as_one, by_cause
from sequencer.findings import Finding

ELI = Finding(
    code="self-hit", severity="stop", who=("Eli",), start=20.0, end=24.0, position="17.1",
    message="pro-bend-4, both hands: the prop goes 2 cm into the trunk", remedies=("ahead 18 to 24 cm",),
)  # fmt: skip
ASH = replace(ELI, who=("Ash",), message="pro-bend-4, left hand: the prop goes 9 mm into the trunk")


def test_performers_with_one_fault_are_one_and_the_first_tells_its_figures():
    (group,) = by_cause([ELI, ASH, replace(ELI, who=("Bea",))])
    one = as_one(group)
    assert one.who == ("Eli", "Ash", "Bea")
    assert one.message == f"{ELI.message} (Eli; much the same for Ash and Bea)"
    assert one.remedies == ELI.remedies


def test_what_comes_back_is_one_and_says_where():
    again = [
        replace(ELI, position=at, start=start) for at, start in (("33.1", 40.0), ("41.1", 50.0))
    ]
    (group,) = by_cause([ELI, *again])
    assert as_one(group).message == f"{ELI.message} (again at 33.1 and 41.1)"


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
    assert [as_one(group) for group in groups] == [ELI, *others]
