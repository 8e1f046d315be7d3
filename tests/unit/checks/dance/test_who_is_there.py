"""What is told of those who are away: what falls out, whose canon begins without its first, what still names them."""

from sequencer.checks.dance.who_is_there import CHECK
from sequencer.checks.fire.at_posts.crew import job_findings
from sequencer.safety.duties.people import jobs_of
from sequencer.staging.timeline import staged
from tests.songs import even_song
from tests.unit.show.test_tonight import SHOW, read


def told(tonight, text=SHOW):
    found = CHECK.outcome(staged(read(tonight, text), even_song(80))).findings
    return {(each.code, each.severity): each for each in found}, found


def test_nothing_is_told_while_everybody_is_there():
    assert CHECK.outcome(staged(read(), even_song(80))).findings == ()


def test_what_falls_out_and_where_nobody_dances_then():
    by, found = told("tonight: {away: [Birch]}\n")
    note = by["part-falls-out", "note"]
    assert note.message.startswith("Birch is away: 4 moves fall out")
    assert note.position == "2.1"
    warn = by["canon-without-first", "warn"]
    assert warn.message == (
        "the canon at 5.1 begins with Birch, who is away: Cedar comes in 4 beats later and has nobody to follow"
    )
    assert warn.who == ("Cedar",)
    assert [each.code for each in found].count("away-but-named") == 1  # the stop call


def test_where_nobody_dances_is_counted_from_those_who_are_there():
    alone = SHOW.replace("from: 9.1, beats: 4}", "from: 15.1, beats: 4}").replace(
        "  - {pattern: extension, cycle: 1, beats: 4}\n", ""
    )
    by, _ = told("tonight: {away: [Birch]}\n", alone)
    assert (
        "nobody dances from 5.1 to 6.1, from 15.1 to 16.1" in by["part-falls-out", "note"].message
    )


def test_a_canon_whose_first_is_there_is_not_told():
    by, _ = told("tonight: {away: [Cedar]}\n")
    assert ("canon-without-first", "warn") not in by


def test_every_text_that_names_somebody_away_is_told_once():
    text = SHOW.replace(
        "stop_call:", "emergency: {caller: Ivy, meets: 'Ivy, at the gate'}\nstop_call:"
    )
    _, found = told("tonight: {away: [Ivy]}\n", text)
    named = [each.message for each in found if each.code == "away-but-named"]
    assert named == [
        "Ivy is not there tonight, and the emergency card names them",
        "Ivy is not there tonight, and lighting names them",
    ]
    note = next(each for each in found if each.code == "part-falls-out")
    assert note.message == "Ivy (spotter) is away: nobody stands at that post"


def test_a_stand_in_is_told():
    _, found = told(
        "tonight: {stand_ins: [{for: Cedar, name: Fern, stature: 1.55 m}, {for: Oak, name: Elm}]}\n"
    )
    assert [each.message for each in found] == [
        "Fern dances the part of Cedar tonight: looked at with the body of Fern",
        "Elm takes the post of Oak tonight",
    ]


def test_a_link_is_no_dance_and_a_canon_waits_for_all_who_are_away():
    linked = SHOW.replace(
        "  - {who: Birch, pattern: extension, cycle: 1, from: 9.1, beats: 4}\n",
        "  - {who: Birch, pattern: extension, cycle: 1, from: 9.1, beats: 4}\n"
        "  - {who: Birch, link: true, beats: 2}\n",
    )
    _, found = told("tonight: {away: [Birch, Cedar]}\n", linked)
    first = next(each for each in found if each.code == "part-falls-out")
    assert first.message.endswith("nobody dances from 5.1 to 7.1, from 9.1 to 10.1")
    warn = next(each for each in found if each.code == "canon-without-first")
    assert "Ash comes in 8 beats later" in warn.message


def test_who_is_replaced_is_named_in_no_text_but_keys_of_the_file_name_parts():
    text = SHOW.replace("stop_call:", "emergency: {caller: Oak, meets: Elm}\nstop_call:").replace(
        "Ash: lie down", "Ash: 'lie down, Oak comes', Oak: cut the music"
    )
    _, found = told("tonight: {stand_ins: [{for: Oak, name: Elm}]}\n", text)
    assert [each.message for each in found if each.code == "away-but-named"] == [
        "Oak is not there tonight, and the emergency card names them",
        "Oak is not there tonight, and the stop call names them",
    ]
    swapped = "tonight: {away: [Ivy], stand_ins: [{for: Oak, name: Ivy}]}\n"
    _, found = told(swapped, text.replace("caller: Oak", "caller: Ivy"))
    assert not any(each.code == "away-but-named" and "Ivy" in each.message for each in found)


def test_jobs_are_those_of_the_people_who_are_there():
    """A lit performer who stands in and calls for help has two jobs; the one who is replaced has none."""
    text = SHOW.replace("stop_call:", "emergency: {caller: Fern, meets: Ivy}\nstop_call:")
    tonight = (
        "tonight: {stand_ins: [{for: Ash, name: Fern, stature: 1.6 m}, {for: Ivy, name: Elm}]}\n"
    )
    show = staged(read(tonight, text), even_song(80))
    jobs = jobs_of(show)
    assert ("Fern", "lit performer") in {(job.who, job.kind) for job in jobs}
    assert "Ash" not in {job.who for job in jobs}
    (finding,) = job_findings(jobs, show.part_of)
    assert (finding.severity, finding.who) == ("stop", ("Ash",))
    assert finding.message.startswith("Fern is a lit performer and calls for help")
