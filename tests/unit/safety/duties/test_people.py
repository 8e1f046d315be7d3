"""Names in what people write, and the jobs that follow from it."""

import pytest

from sequencer.safety.duties.people import JOB_WORDS, Job, clashes, free_for, jobs_of, named_in
from tests.sites import site

NAMES = ("Ann", "Ann Lee", "Rowan", "Łucja")


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Ann Lee, by the gate", ("Ann Lee",)),  # the longest
        ("ANN or łucja", ("Ann", "Łucja")),
        ("Rowanberry Anne", ()),  # whole words
        ("Strowan and Joann", ()),
        ("nobody", ()),
        ("Rowan, then Ann, then Rowan", ("Rowan", "Ann")),
    ],
)
def test_names_are_whole_words_in_any_case_the_longest_first(text, found):
    assert named_in(text, NAMES) == found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("boat shed, Rowan has a torch", ("Rowan",)),
        ("under the rowan", ()),  # a tree
        ("Rowan Street", ()),  # a longer name
        ("Rowan", ("Rowan",)),
    ],
)
def test_a_name_in_the_words_for_a_place_is_somebody_only_as_it_is_spelt(text, found):
    assert named_in(text, NAMES, as_spelt=True) == found


def test_names_written_with_composed_letters_or_marks_are_the_same():
    """Unicode's canonical equivalence: é is e with an acute accent."""
    assert named_in("Andre\u0301 calls", ["Andr\u00e9"]) == ("Andr\u00e9",)


def kinds(show, who):
    return {job.kind for job in jobs_of(show) if job.who == who}


def test_the_card_gives_jobs_by_name_by_role_and_to_people_from_outside():
    show = site(
        ("caller: Sorrel", "caller: the lead"), ("meets: Cole, with a torch", "meets: cole")
    )

    assert kinds(show, "Linden") == {"lead", "caller"}
    assert kinds(show, "Iris") == {"first aider"}
    assert kinds(show, "cole") == {"meets"}
    assert kinds(show, "Rowan") == {"spotter"}  # `under the rowan` is a tree
    assert kinds(show, "Hazel") == {"perimeter"}  # `Hazel Road` is a road
    assert kinds(show, "Wren") == {"lit performer"}


def test_whoever_meets_them_may_stand_with_the_meeting_point():
    show = site(("Hazel Road, under the rowan", "the gate, Hazel waits there"))

    assert kinds(show, "Hazel") == {"perimeter", "meets"}


def test_what_is_said_of_the_stop_call_gives_jobs():
    does = "stop_call: {does: {Rowan: [Phone 112], perimeter: cut the music, Tarn: [shut the can]}}\ncrew:"
    show = site(("crew:", does))

    assert kinds(show, "Rowan") == {"spotter", "caller"}
    assert kinds(show, "Hazel") == {"perimeter", "operator"}
    assert kinds(show, "Tarn") == {"fuel keeper"}


def test_a_lighter_is_free_once_all_are_alight_and_nobody_is_relit():
    later = "until: 81.1}\n    - {who: Wren, from: 91.1, until: 95.1}"

    assert kinds(site(), "Sorrel") == {"lighter", "caller"}
    assert kinds(site(("until: 81.1}", later)), "Sorrel") == {"lighter", "caller", "lights again"}
    only = ("  handling: {lit_by: Sorrel}\n", "")  # the crew's only lighter, who then lights
    assert "lights again" in kinds(site(("until: 81.1}", later), only), "Sorrel")
    other = later.replace("95.1}", "95.1, lit_by: Linden}")
    assert kinds(site(("until: 81.1}", other)), "Linden") == {"lead", "lights again"}


@pytest.mark.parametrize(
    ("pair", "severity"),
    [
        (("spotter", "caller"), "stop"), (("spotter", "first aider"), "stop"), (("spotter", "meets"), "stop"),
        (("spotter", "operator"), "stop"), (("perimeter", "caller"), "stop"), (("perimeter", "meets"), "stop"),
        (("fuel keeper", "first aider"), "stop"), (("fuel keeper", "caller"), "warn"),
        (("lit performer", "caller"), "stop"), (("performer", "caller"), "warn"),
        (("lead", "caller"), "warn"), (("lead", "meets"), "stop"), (("lead", "first aider"), "warn"),
        (("first aider", "caller"), "stop"), (("first aider", "meets"), "stop"), (("caller", "meets"), "warn"),
        (("lights again", "caller"), "warn"), (("lighter", "caller"), None), (("lighter", "first aider"), None),
        (("lighter", "meets"), None), (("caller", "operator"), None),
    ],
)  # fmt: skip
def test_two_jobs_clash_where_they_need_two_places_or_two_hands_at_once(pair, severity):
    """Where each job is and what it does at a stop call: the table of the module."""
    for kinds_of in (pair, pair[::-1]):
        found = clashes([Job(who="Ada", kind=kind, written="crew") for kind in kinds_of])
        assert [each.severity for each in found] == ([severity] if severity else [])
    assert not clashes([Job(who=who, kind=kind, written="crew") for who, kind in zip("AB", pair, strict=True)])  # fmt: skip
    assert all(kind in JOB_WORDS for kind in pair)


def test_one_person_by_two_spellings_is_one_person():
    jobs = [
        Job(who="Ada", kind="spotter", written="crew"),
        Job(who="ADA", kind="caller", written="emergency, caller"),
    ]
    (found,) = clashes(jobs)

    assert (found.first.kind, found.second.kind) == ("spotter", "caller")


def test_a_job_is_offered_to_whom_it_does_not_clash_for():
    jobs = jobs_of(site(("caller: Sorrel", "caller: Rowan")))
    job = next(each for each in jobs if each.kind == "caller")

    assert free_for(job, jobs) == ("Sorrel",)
