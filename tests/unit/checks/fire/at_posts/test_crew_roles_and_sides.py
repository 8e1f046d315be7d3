"""One person, one role; extinguishers on opposing sides: the cases at the edge."""

import pytest

from sequencer.checks.fire.at_posts.crew import crew as crew_check
from sequencer.checks.fire.at_posts.crew import lead_findings, role_findings
from sequencer.checks.fire.at_posts.extinguishers_at_hand import PlacedExtinguisher, opposed
from sequencer.facts.extinguishers import hazard_of_volume
from sequencer.safety.duties.watching import Duty
from tests.sites import site


@pytest.mark.parametrize(
    ("roles", "severity"),
    [(("spotter", "perimeter"), "stop"), (("perimeter", "fuel keeper"), "warn")],
)
def test_a_spotter_with_a_second_role_is_a_stop(roles, severity):
    """A spotter's only task is spotting: Grants Pass OR, 2019 [A5; read]."""
    crew = [Duty(who="Ada", place=(0.0, 0.0), duty=role, watches=("all",)) for role in roles]
    (found,) = role_findings(crew, ["Wren"], lit=["Wren"], apart=None)

    assert (found.code, found.severity) == ("crew-doubles", severity)


@pytest.mark.parametrize(("other", "apart"), [((0.0, 5.0), True), ((0.1, 5.0), False)])
def test_sides_oppose_from_a_right_angle_on(other, apart):
    two = [PlacedExtinguisher(place=(5.0, 0.0), rating="2-A:10-B:C", kind="foam"),
           PlacedExtinguisher(place=other, rating="2-A:10-B:C", kind="foam")]  # fmt: skip

    assert opposed(two, (0.0, 0.0)) == [apart]


def test_a_gallon_is_no_longer_a_light_hazard():
    """Light below 1 US gal, ordinary from it on: NFPA 10 summary [B2; read second-hand]."""
    assert hazard_of_volume(3.785411784e-3) == "ordinary"


def told(*pairs):
    found = crew_check(site(*pairs)).findings
    return [(each.code, each.severity, each.who) for each in found if each.code != "too-few-safety"]


@pytest.mark.parametrize(
    ("pairs", "found"),
    [
        ((), []),
        ([("duty: lead", "duty: lighter")], [("no-lead", "stop", ())]),
        ([("duty: lighter", "duty: lead")], [("two-leads", "warn", ("Linden", "Sorrel")), ("two-jobs", "warn", ("Sorrel",))]),
        ([("caller: Sorrel", "caller: Rowan")], [("two-jobs", "stop", ("Rowan",))]),
        ([("caller: Sorrel", "caller: Linden, the lead")], [("two-jobs", "warn", ("Linden",))]),
        ([("first_aider: Iris", "first_aider: tarn")], [("two-jobs", "stop", ("Tarn",))]),
        ([("meets: Cole", "meets: HAZEL")], [("two-jobs", "stop", ("Hazel",))]),
        ([("meets: Cole", "meets: Wren")], [("two-jobs", "stop", ("Wren",))]),
        ([("meets: Cole", "meets: Iris")], [("two-jobs", "stop", ("Iris",))]),
        ([("first_aider: Iris", "first_aider: Hazelton")], []),
        ([("meets: Cole", "meets: Colette")], []),
    ],
)  # fmt: skip
def test_who_leads_and_who_has_two_jobs(pairs, found):
    assert told(*pairs) == found


def test_three_jobs_of_one_person_are_told_once_with_somebody_who_is_free():
    """The perimeter guard calls and meets the engine: she cannot keep the edge, phone and walk away at once."""
    show = site(("caller: Sorrel", "caller: Hazel"), ("meets: Cole, with a torch", "meets: Hazel"))
    (found,) = [each for each in crew_check(show).findings if each.code == "two-jobs"]

    assert found.message.startswith(
        "Hazel is the perimeter guard, calls for help and meets the responders;"
    )
    assert found.remedies == (
        "write Sorrel under emergency, caller",
        "write Sorrel under emergency, meets",
    )


def test_one_lead_is_enough_and_right():
    lead = Duty(who="A", place=(0.0, 0.0), duty="lead")

    assert not lead_findings([lead])
    assert [each.code for each in lead_findings([])] == ["no-lead"]
