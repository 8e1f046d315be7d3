"""Who is there tonight: what falls out with those who are away, whose canon begins without its first, and texts that still name them.

Common practice: a captain who is short of somebody says aloud what falls out, who comes in first, and who takes the jobs.
"""

from collections.abc import Iterator, Sequence

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding, Severity
from sequencer.safety.duties.people import named_in
from sequencer.show.file_records.tonight_record import StandIn
from sequencer.staging.entries.moments import Moments
from sequencer.staging.staged import Staged
from sequencer.timing.position import TOUCH
from sequencer.units import counted

_SOURCE = "who is there tonight, common practice"


def who_is_there(show: Staged) -> Outcome:
    """What is different tonight from the show as it is written; nothing if everybody is there."""
    if show.read is None or show.read.written.tonight is None:
        return Outcome()
    tonight = show.read.written.tonight
    found = [
        *(_told("stands-in", "note", each.part, _stand_in_words(show, each)) for each in tonight.stand_ins),
        *(_falls_out(show, name) for name in tonight.away),
        *_canons(show, tonight.away),
        *_still_named(show, _not_here(show)),
    ]  # fmt: skip
    return Outcome(findings=tuple(found))


def _told(
    code: str,
    severity: Severity,
    who: str,
    message: str,
    remedies: Sequence[str] = (),
    *,
    at: tuple[float, float, str] | None = None,
) -> Finding:
    start, end, position = at if at is not None else (None, None, None)
    return Finding(
        code=code,
        severity=severity,
        who=(who,),
        start=start,
        end=end,
        position=position,
        message=message,
        remedies=tuple(remedies),
        source=_SOURCE,
    )


def _stand_in_words(show: Staged, each: StandIn) -> str:
    if each.part in show.show.names:
        return f"{each.name} dances the part of {each.part} tonight: looked at with the body of {each.name}"
    return f"{each.name} takes the post of {each.part} tonight"


def _falls_out(show: Staged, name: str) -> Finding:
    own = [block for block in show.missing if block.who == name]
    written = show.read.written if show.read else show.show
    if name not in written.names:
        duty = next(post.duty for post in written.crew if post.name == name)
        return _told(
            "part-falls-out", "note", name, f"{name} ({duty}) is away: nobody stands at that post"
        )
    if not own:
        return _told("part-falls-out", "note", name, f"{name} is away, and would dance nothing")
    start, end = min(block.start for block in own), max(block.end for block in own)
    alone = _nobody_dances(show, name)
    moves = sum(not block.link for block in own)
    message = f"{name} is away: {counted(moves, 'move')} {'falls' if moves == 1 else 'fall'} out"
    if alone:
        message += f"; nobody dances {', '.join(alone)}"
    return _told(
        "part-falls-out", "note", name, message,
        at=(show.seconds(start), show.seconds(end), show.position(start)),
    )  # fmt: skip


def _nobody_dances(show: Staged, name: str) -> list[str]:
    """Spans in which somebody who is away would dance, and nobody does."""
    danced = sorted((block.start, block.end) for block in (*show.blocks, *show.stops))
    spans: list[tuple[float, float]] = []
    for block in sorted(show.missing, key=lambda each: each.start):
        if block.who != name or block.link:
            continue
        at = block.start
        for start, end in (*danced, (block.end, block.end)):
            if end <= at + TOUCH:
                continue
            if min(start, block.end) > at + TOUCH:
                spans.append((at, min(start, block.end)))
            at = max(at, end)
            if at >= block.end - TOUCH:
                break
    merged: list[tuple[float, float]] = []
    for start, end in spans:
        if merged and start <= merged[-1][1] + TOUCH:
            merged[-1] = (merged[-1][0], max(end, merged[-1][1]))
        else:
            merged.append((start, end))
    return [f"from {show.position(start)} to {show.position(end)}" for start, end in merged]


def _canons(show: Staged, away: Sequence[str]) -> Iterator[Finding]:
    if show.read is None:
        return
    written = show.read.written
    moments = Moments(show.read, show.song, show.tempo)
    for k, entry in enumerate(written.timeline):
        who = written.names if "all" in entry.who else tuple(dict.fromkeys(entry.who))
        there = [name for name in who if name not in away]
        if entry.canon is None or who[0] not in away or not there:
            continue
        late = entry.canon * who.index(there[0])
        at = None
        words = f"the canon of line {show.read.document.place('timeline', k).line}"
        if entry.start is not None:
            beat = moments.beat(entry.start, ("timeline", k, "from"))
            at = (show.seconds(beat), show.seconds(beat + late), show.position(beat))
            words = f"the canon {show.at_aloud(beat)}"
        yield _told(
            "canon-without-first", "warn", there[0],
            f"{words} begins with {who[0]}, who is away: {there[0]} comes in {late:g} beats later and has "
            "nobody to follow",
            (f"agree who gives {there[0]} the count", f"let somebody else begin: take {who[0]} out of its `who`"),
            at=at,
        )  # fmt: skip


def _not_here(show: Staged) -> list[str]:
    """People of the show who have no part tonight: they are away, or somebody stands in for them."""
    tonight = show.show.tonight
    if tonight is None:
        return []
    here = {each.name.casefold() for each in tonight.stand_ins}
    gone = [*tonight.away, *(each.part for each in tonight.stand_ins)]
    return [name for name in gone if name.casefold() not in here]


def _still_named(show: Staged, away: Sequence[str]) -> Iterator[Finding]:
    """Texts for the evening that name somebody who is not there."""
    if show.read is None:
        return
    written = show.read.written
    card, fire = written.emergency, written.fire
    words_of = [
        ("the emergency card", words)
        for words in (
            card.caller, card.meets, card.meeting_point, card.first_aider, card.authority, card.gate
        )
    ]  # fmt: skip
    words_of += [
        ("the stop call", words) for does in written.stop_call.does.values() for words in does
    ]
    keyed = [
        ("the stop call", name) for name in (*written.stop_call.callers, *written.stop_call.does)
    ]
    lights: list[tuple[str, str | None]] = []
    if fire is not None:
        lights += [("lighting", fire.handling.lit_by)]
        lights += [("lighting", span.lit_by) for span in fire.lit]
        lights += [("putting out", span.put_out_by) for span in fire.lit]
    replaced = {each.part for each in written.tonight.stand_ins} if written.tonight else set()
    for name in away:
        # Keys of the file name parts, whoever has them; what is written in words names people.
        own = [*words_of, *(() if name in replaced else (*keyed, *lights))]
        places = dict.fromkeys(
            place for place, words in own if words and named_in(words, (name,), as_spelt=True)
        )
        for place in places:
            yield _told(
                "away-but-named", "warn", name,
                f"{name} is not there tonight, and {place} names them",
                ("give the job to somebody who is there",),
            )  # fmt: skip


CHECK = Check(
    name="who-is-there",
    run=who_is_there,
    codes={
        "stands-in": ("note",),
        "part-falls-out": ("note",),
        "canon-without-first": ("warn",),
        "away-but-named": ("warn",),
    },
    progress="checking joins",
)
