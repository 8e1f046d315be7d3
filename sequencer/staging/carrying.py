"""Parts of a staged show, which of them a change of its file leaves as they were, and the results that still hold then.

A result declares the parts it depends on. It holds only if everything else in the show is the same as well: the song
and its count, the cast, rules, limits, weather and texts, and the files that the show names.
"""

import datetime as dt
from collections.abc import Collection, Mapping
from contextlib import suppress
from pathlib import Path
from types import MappingProxyType
from typing import Any

from sequencer.content_keys import content_key, whole_code
from sequencer.digests import sha256_of_file
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.staging.results import SHOW_PARTS, OfPerformer, Part, once_per_show
from sequencer.staging.reuse import same_count
from sequencer.staging.staged import Staged

HEADINGS: Mapping[str, Part] = MappingProxyType(
    {
        "timeline": "trajectories",
        "phrases": "trajectories",
        "formations": "places",
        "staging": "places",
        "entrances": "places",
        "venue": "venue",
        "crew": "crew",
        "fire": "fire",
    }
)  # of the show file; every other heading counts for all parts


def carry_results(before: Staged, after: Staged) -> None:
    """Give a show the results of an earlier staging of the same file that still hold.

    Parameters
    ----------
    before : Staged
    after : Staged
        Results that it has already are kept.
    """
    if not _same_around(before, after):
        return
    same_cast = before.show.cast == after.show.cast
    parts = same_parts(before, after) if same_cast else frozenset()
    dances = _same_dances(before, after)
    for key, result in list(before.results.items()):
        if isinstance(key, OfPerformer):
            holds = key.who in dances
        else:
            needed = getattr(key, "depends_on", None)
            holds = same_cast and needed is not None and parts.issuperset(needed)
        if holds:
            after.results.setdefault(key, result)


def same_parts(before: Staged, after: Staged) -> frozenset[Part]:
    """Parts that two stagings of a file have in common.

    Parameters
    ----------
    before, after : Staged
        Of files that agree under every heading outside `HEADINGS`.
    """
    pairs = list(zip(before.dancers, after.dancers, strict=True))
    same: dict[Part, bool] = {
        "trajectories": all(_same_motion(a, b) for a, b in pairs),
        "bodies": all(_same_body(a, b) for a, b in pairs),
        "places": all(a.floor == b.floor for a, b in pairs),
        "burns": before.lit == after.lit,
        "venue": before.venue == after.venue,
    }
    old, new = _headings(before), _headings(after)
    edited = {part for heading, part in HEADINGS.items() if old.get(heading) != new.get(heading)}
    return frozenset(part for part in SHOW_PARTS if same.get(part, True) and part not in edited)


def parts_content(show: Staged, parts: Collection[Part]) -> bytes | None:
    """A content key of some parts of a show and of all that belongs to no part.

    Shows with the same one have these parts in common, as `carry_results` compares them. None if there is none: the show
    is from no file, or names files of patterns, which may have changed since.

    Parameters
    ----------
    show : Staged
    parts : collection of Part
    """
    each = _contents(show)
    if each is None:
        return None
    return content_key(each["rest"], *(each[part] for part in SHOW_PARTS if part in parts))


@once_per_show
def _contents(show: Staged) -> Mapping[str, bytes] | None:
    """The content of each part, and of the rest, which belongs to none."""
    said = _headings(show)
    if show.read is None or "pattern_files" in said:
        return None
    headings = {
        part: [said.get(name) for name, own in HEADINGS.items() if own == part]
        for part in SHOW_PARTS
    }
    dancers, tempo = show.dancers, show.tempo
    moving = [[each.trajectories, each.deviation] for each in dancers]
    found: dict[str, Any] = {
        "trajectories": moving,
        "bodies": [[each.props, each.carriage.held] for each in dancers],
        "places": [each.floor for each in dancers],
        "burns": show.lit,
        "venue": show.venue,  # with the posts of the crew
    }
    rest = {name: value for name, value in said.items() if name not in HEADINGS}
    count = tempo.times, tempo.first, tempo.bars, tempo.metre
    year = dt.datetime.now(tz=dt.UTC).year  # of a show without a date
    around = show.file, rest, show.song, count, files_beside(show), year, show.part
    with suppress(TypeError):  # a law of another package
        contents: dict[str, bytes] = {
            part: content_key(headings[part], found.get(part)) for part in SHOW_PARTS
        }
        return contents | {"rest": content_key(whole_code(), around)}
    return None


def same_files_beside(show: Staged) -> bool:
    """Whether the files that a show names beside its song and patterns are still as they were when it was staged."""
    return _files_now(show) == files_beside(show)


@once_per_show
def files_beside(show: Staged) -> tuple[tuple[str, bytes], ...]:
    """Name and hash of the rules and the log of burns that a show names."""
    return _files_now(show)


def _files_now(show: Staged) -> tuple[tuple[str, bytes], ...]:
    names = [*show.show.rules.file, *([show.show.fire.burns] if show.show.fire else [])]
    found = []
    for name in names:
        if name is not None:
            try:
                digest = sha256_of_file(Path(show.file).parent / name).encode("ascii")
            except OSError:
                found.append((name, b""))  # the check that reads it says so
            else:
                found.append((name, digest))
    return tuple(found)


def _same_around(before: Staged, after: Staged) -> bool:
    """Whether two stagings agree in everything outside the parts, apart from the cast."""
    if before.read is None or after.read is None or before.file != after.file:
        return False
    old, new = (
        {key: value for key, value in _headings(show).items() if key not in {*HEADINGS, "cast"}}
        for show in (before, after)
    )
    return (
        old == new
        and before.part == after.part
        and "pattern_files" not in new  # they may have changed since
        and [record.name for record in before.show.cast] == [r.name for r in after.show.cast]
        and before.song == after.song
        and same_count(before.tempo, after.tempo)
        and files_beside(before) == files_beside(after)
    )  # fmt: skip


def _same_dances(before: Staged, after: Staged) -> set[str]:
    """Names of performers whose dance, body, props and burns are the same."""
    old, new = ({each.name: each for each in show.show.cast} for show in (before, after))
    return {
        b.name
        for a, b in zip(before.dancers, after.dancers, strict=True)
        if _same_motion(a, b) and _same_body(a, b) and a.lit == b.lit and old[a.name] == new[b.name]
    }


def _same_motion(a: Dancer, b: Dancer) -> bool:
    return (
        a.trajectories.keys() == b.trajectories.keys()
        and all(_same_trajectory(each, b.trajectories[side]) for side, each in a.trajectories.items())
        and a.deviation == b.deviation
    )  # fmt: skip


def _same_trajectory(a: PropTrajectory, b: PropTrajectory) -> bool:
    if a is b:
        return True
    if not (isinstance(a, Trajectory) and isinstance(b, Trajectory)):
        return False
    with suppress(TypeError):  # a law of another package has no content
        return a.content == b.content
    return False


def _same_body(a: Dancer, b: Dancer) -> bool:
    return a.props == b.props and a.carriage.held == b.carriage.held  # of the same cast


def _headings(show: Staged) -> Mapping[str, Any]:
    """What the file says under each heading; under fire without the burns, which are a part of their own."""
    values = show.read.document.values if show.read else {}
    fire = values.get("fire")
    if not isinstance(fire, Mapping):
        return values
    return {**values, "fire": {key: value for key, value in fire.items() if key != "lit"}}
