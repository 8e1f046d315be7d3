"""Every job of every person, and who would be needed in two places or for two things at once.

Besides the duty of each crew member, the emergency card and the stop call give people jobs in words: who calls,
who is the first aider, who meets the responders. A name in such a text is found as a whole word, in any case, the
longest first; a text without a known name is about the person named up to its first comma.

Two jobs clash where the second asks for another place, or for an action at the moment of the first: during the
act, or at a stop call. Sources: a spotter's only task is spotting (Grants Pass OR, 2019 [A5; read]), and not filming,
lighting, fuelling or crowd work; which other jobs one person can hold is common practice.
"""

import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Literal

from sequencer.findings import Severity
from sequencer.geometry.regions import Point
from sequencer.safety.burns.handling import lighter_of
from sequencer.show.model import Show
from sequencer.staging.staged import Staged

JobKind = Literal[
    "lit performer", "performer", "spotter", "perimeter", "fuel keeper", "lighter", "lead",
    "caller", "first aider", "meets", "operator", "lights again",
]  # fmt: skip
JOB_WORDS: Mapping[JobKind, str] = {
    "lit performer": "is a lit performer",
    "performer": "is a performer",
    "spotter": "is a spotter",
    "perimeter": "is the perimeter guard",
    "fuel keeper": "is the fuel keeper",
    "lighter": "is the lighter",
    "lead": "leads",
    "caller": "calls for help",
    "first aider": "is the first aider",
    "meets": "meets the responders",
    "operator": "cuts the sound",
    "lights again": "lights props while others are alight",
}
_POSTS: tuple[JobKind, ...] = (
    "lit performer", "performer", "spotter", "perimeter", "fuel keeper", "lighter", "lead"
)  # fmt: skip
ERRANDS: tuple[JobKind, ...] = ("caller", "first aider", "meets", "operator")
_ON_STAGE = "a lit performer is on stage with burning props"
_GOES = "a spotter goes to the performer at once"
_EDGE = "a guard keeps the crowd back and cannot leave the edge"
_FUEL = "the keeper stays with the fuel"
_DECIDES = "the lead decides at that moment"
_DANCES = "a performer is on stage until then"
_TORCH = "whoever lights holds a torch until the last are lit"
_TREATS = "a first aider has both hands on the casualty"
_ON_THE_PHONE = "a caller stays on the phone near the casualty"
# What each job that must not be left is doing, and how grave each errand beside it is.
_BESIDE: Mapping[JobKind, tuple[str, Mapping[JobKind, Severity]]] = {
    "lit performer": (_ON_STAGE, dict.fromkeys(ERRANDS, "stop")),
    "spotter": (_GOES, dict.fromkeys(ERRANDS, "stop")),
    "perimeter": (_EDGE, dict.fromkeys(ERRANDS, "stop")),
    # can phone from there, and nothing else
    "fuel keeper": (_FUEL, {**dict.fromkeys(ERRANDS, "stop"), "caller": "warn"}),
    "lead": (_DECIDES, {**dict.fromkeys(ERRANDS, "warn"), "meets": "stop"}),
    "performer": (_DANCES, dict.fromkeys(ERRANDS, "warn")),
    "lights again": (_TORCH, dict.fromkeys(ERRANDS, "warn")),
    "first aider": (_TREATS, {"caller": "stop", "meets": "stop"}),
    "caller": (_ON_THE_PHONE, {"meets": "warn"}),
}  # fmt: skip
# How an action at the stop call begins that is one of these jobs.
_SAID: Mapping[JobKind, tuple[str, ...]] = {
    "caller": ("call for help", "call the emergency", "call emergency", "phone", "dial"),
    "first aider": ("give first aid",),
    "meets": ("meet the engine", "meet the ambulance", "meet the responders", "meet the fire"),
    "operator": ("cut the music", "cut the sound", "music off", "sound off"),
}
_ROLES: Mapping[str, JobKind] = {
    "lead": "lead", "safety lead": "lead", "guard": "perimeter", "perimeter guard": "perimeter",
    "fuel keeper": "fuel keeper", "keeper": "fuel keeper", "lighter": "lighter",
}  # fmt: skip
_END = re.compile(r"[,;(–]|\s-\s")


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One job of one person."""

    who: str  # as the cast or the crew spells it
    kind: JobKind
    written: str  # where in the show file
    place: Point | None = None  # [m, stage frame] of a crew post


@dataclass(frozen=True, slots=True, kw_only=True)
class JobClash:
    """Two jobs that one person cannot do at once."""

    first: Job
    second: Job
    severity: Severity
    why: str  # what whoever has the first does at that moment


def named_in(text: str, names: Iterable[str], *, as_spelt: bool = False) -> tuple[str, ...]:
    """Names that a text contains as whole words, in its order.

    Parameters
    ----------
    text : str
    names : iterable of str
        Where one is part of another, the longer is found.
    as_spelt : bool
        Only in this case and not as the beginning of a longer name: for a text about a place, where `Hazel Road`
        and `under the hazel` are nobody.
    """
    own = {_plain(name, fold=not as_spelt): name for name in names}
    if not own:
        return ()
    text = _plain(text, fold=not as_spelt)
    longest_first = sorted(own, key=lambda name: (-len(name), name))
    word = f"(?<!\\w)(?:{'|'.join(map(re.escape, longest_first))})(?!\\w)"
    found = [
        own[match.group()]
        for match in re.finditer(word, text)
        if not (as_spelt and text[match.end() :].lstrip(" ")[:1].isupper())
    ]
    return tuple(dict.fromkeys(found))


def jobs_of(show: Staged) -> tuple[Job, ...]:
    """Every job that a show gives to anybody, posts first; of whoever stands in, under their own name."""
    record = show.show
    burning = {burn.who for burn in show.lit}
    posts = [
        Job(
            who=show.taken_by(name), kind="lit performer" if name in burning else "performer",
            written="cast",
        )
        for name in record.names
    ]  # fmt: skip
    posts += [
        Job(who=show.taken_by(post.name), kind=post.duty, written="crew", place=post.post)
        for post in record.crew
    ]
    names = tuple(job.who for job in posts)
    return (
        *posts,
        *_of_the_card(record, names, posts),
        *_at_stop(show),
        *_with_torch(show),
    )


def clashes(jobs: Iterable[Job]) -> tuple[JobClash, ...]:
    """Pairs of jobs that one person cannot do at once, by person."""
    of: dict[str, list[Job]] = {}
    for job in jobs:
        of.setdefault(_plain(job.who), []).append(job)
    found = []
    for own in of.values():
        unlike = {job.kind: job for job in reversed(own)}
        for one, other in combinations([job for job in own if unlike[job.kind] is job], 2):
            for first, second in ((one, other), (other, one)):
                why, beside = _BESIDE.get(first.kind, ("", {}))
                if second.kind in beside:
                    severity = beside[second.kind]
                    found.append(JobClash(first=first, second=second, severity=severity, why=why))
                    break
    return tuple(found)


def free_for(job: Job, jobs: Iterable[Job]) -> tuple[str, ...]:
    """Members of the crew who could take over a job: none of theirs clashes with it."""
    others = [each for each in jobs if each != job]
    crew = dict.fromkeys(each.who for each in others if each.place is not None)
    return tuple(
        who
        for who in crew
        if not clashes(
            [each for each in others if _plain(each.who) == _plain(who)] + [replace(job, who=who)]
        )
    )


def _of_the_card(record: Show, names: tuple[str, ...], posts: list[Job]) -> list[Job]:
    """Jobs that the emergency card gives."""
    card = record.emergency
    found: list[Job] = []
    texts: tuple[tuple[JobKind, str, str | None], ...] = (
        ("caller", "caller", card.caller),
        ("first aider", "first_aider", card.first_aider),
        ("meets", "meets", card.meets),
    )
    for kind, key, text in texts:
        people = _people_in(text, names, posts) if text else ()
        found += [Job(who=who, kind=kind, written=f"emergency, {key}") for who in people]
    for who in named_in(card.meeting_point or "", names, as_spelt=True):
        if not any(job.who == who and job.kind == "meets" for job in found):
            found.append(Job(who=who, kind="meets", written="emergency, meeting_point"))
    return found


def _people_in(text: str, names: tuple[str, ...], posts: list[Job]) -> tuple[str, ...]:
    """The people that a text of the emergency card is about."""
    known = named_in(text, names)
    if known:
        return known
    head = _END.split(text)[0].strip()
    role = _ROLES.get(_plain(head).removeprefix("the "))
    if role is not None:
        return tuple(job.who for job in posts if job.kind == role)
    return (head,) if head else ()


def _at_stop(show: Staged) -> list[Job]:
    """Jobs of others that the stop call gives to a person or to everybody of a duty."""
    record = show.show
    parts = {*record.names, *(post.name for post in record.crew)}
    found = []
    for key, does in record.stop_call.does.items():
        people = (show.taken_by(key),) if key in parts else tuple(
            show.taken_by(post.name) for post in record.crew if post.duty == key
        )  # fmt: skip
        for kind, phrases in _SAID.items():
            if any(_plain(action).startswith(phrases) for action in does):
                found += [
                    Job(who=who, kind=kind, written=f"stop_call, does, {key}") for who in people
                ]
    return found


def _with_torch(show: Staged) -> list[Job]:
    """Who still lights when somebody is alight already."""
    fire = show.show.fire
    if fire is None or not show.lit:
        return []
    first = min(burn.start for burn in show.lit)
    found = []
    for burn in show.lit:
        span = fire.lit[int(burn.path[2])]
        lights = lighter_of(span.lit_by, fire, show.show.crew)
        if lights is not None and burn.start > first:
            found.append(
                Job(who=show.taken_by(lights), kind="lights again", written="fire, lit, lit_by")
            )
    return list(dict.fromkeys(found))


def _plain(text: str, *, fold: bool = True) -> str:
    """A text as names in it are compared."""
    text = unicodedata.normalize("NFC", text)
    return text.casefold() if fold else text
