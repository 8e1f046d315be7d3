"""A staged show with some values of its file changed, to try a mend before anything is written."""

import copy
from collections.abc import Hashable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from sequencer.content_keys import content_key
from sequencer.kept import recent
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.hand_deviation import LARGE, hand_deviations_of
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.show.editing import Change, Insertion
from sequencer.show.reading import ReadShow, show_from_document
from sequencer.staging.carrying import carry_results
from sequencer.staging.entries.moments import Moments
from sequencer.staging.on_floor.standings import floor_path, standings
from sequencer.staging.results import result_of
from sequencer.staging.staged import Staged, Standing
from sequencer.staging.timeline import dancers_anywhere, staged, staged_alone
from sequencer.timing.song import Song

_OF_THE_FLOOR = {"formations", "staging"}  # headings that only affect paths over the floor
_MOST_TRIED = 1_000  # changes whose dancers are kept


def restaged(
    show: Staged,
    changes: Sequence[Change],
    insertions: Sequence[Insertion] = (),
    *,
    fly: bool = True,
) -> Staged:
    """The show as it would be with changes of its file; nothing is written.

    Parameters
    ----------
    show : Staged
        A show that was staged from a file.
    changes : sequence of (path, value)
    insertions : sequence of (path, index, entry)
    fly : bool
        As in `staged`; False only for a show as `as_drawn` makes it.

    Raises
    ------
    InputError
        If a change does not fit the rest of the show.
    ValueError
        If the show was not staged from a file, or a path does not exist.
    """
    if show.read is None or show.heard is None:
        raise ValueError("this show does not remember its file, so no change can be tried on it")
    read = _changed(show.read, changes, insertions)
    if not _of_the_floor(changes, insertions):
        said = _dance_key(read.document.values, read.document.file)
        return staged(read, show.heard, before=show, fly=fly, key=said)
    places = _places(show, read)
    dancers = tuple(
        replace(dancer, floor=floor_path(read, dancer.name, places)) for dancer in show.dancers
    )
    after = replace(show, show=read.show, read=read, standings=places, dancers=dancers)
    carry_results(show, after)
    return after


def with_everybody(show: Staged) -> Staged:
    """The show as its whole cast dances it; itself if nothing is said of tonight.

    Raises
    ------
    InputError, ValueError
        As `restaged`.
    """
    if show.show.tonight is None:
        return show
    return result_of(show, with_everybody, lambda: restaged(show, [(("tonight",), None)]))


def restaged_alone(
    show: Staged,
    steps: Sequence[tuple[Sequence[Change], Sequence[Insertion]]],
    name: str,
    *,
    fly: bool = True,
) -> Staged:
    """The show as it would be with changes of its file, with one dancer, who stands anywhere; see `staged_alone`.

    Parameters
    ----------
    show : Staged
        A show that was staged from a file.
    steps : sequence of (changes, insertions)
        One after the other.
    name : str
        The performer.
    fly : bool
        As in `staged`.

    Raises
    ------
    InputError, ValueError
        As `restaged`; what is wrong for others only may go unnoticed.
    """
    if show.read is None or show.heard is None:
        raise ValueError("this show does not remember its file, so no change can be tried on it")
    read = show.read
    for changes, insertions in steps:
        read = _changed(read, changes, insertions)
    said = _dance_key(read.document.values, read.document.file)
    return staged_alone(read, show.heard, name, before=show, fly=fly, key=said)


def as_drawn(show: Staged) -> Staged:
    """The show with hand work as every block's margin, so that changes are staged without flying a block; itself if that is so.

    Parameters
    ----------
    show : Staged
    """
    dancers = tuple(
        replace(
            each,
            deviation={
                side: hand_deviations_of(trajectory, each.props[side], show.tempo)
                for side, trajectory in each.trajectories.items()
                if isinstance(trajectory, Trajectory)
            },
        )
        for each in show.dancers
    )
    if all(one.deviation == own.deviation for one, own in zip(dancers, show.dancers, strict=True)):
        return show
    after = replace(show, dancers=dancers)
    carry_results(show, after)
    return after


def needs_flights(show: Staged) -> bool:
    """Whether a show staged without flying any block might have another margin if they were flown."""
    return any(
        own.size > LARGE
        for each in show.dancers
        for hand in each.deviation.values()
        for own in hand
    )


def restaged_dancers(
    show: Staged,
    who: Sequence[int],
    changes: Sequence[Change],
    insertions: Sequence[Insertion] = (),
    *,
    at: float | None = None,
    fly: bool = True,
) -> tuple[Dancer, ...] | None:
    """Some dancers of `restaged`, without the rest of the show.

    Parameters
    ----------
    show : Staged
        A show that was staged from a file.
    who : sequence of int
        Places in the cast.
    changes : sequence of (path, value)
        None of them changes the names of the cast.
    insertions : sequence of (path, index, entry)
    at : float, optional
        A beat at which they are only looked at, see `dancers_anywhere`; None may be the answer then.
    fly : bool
        As in `staged`.

    Raises
    ------
    InputError
        If a change does not fit the rest of the show; where only others are concerned, it may go unnoticed.
    ValueError
        As `restaged`.
    """
    if show.read is None or show.heard is None:
        raise ValueError("this show does not remember its file, so no change can be tried on it")
    read, heard = show.read, show.heard
    plain = [show.dancers[k] for k in who]
    if _of_the_floor(changes, insertions):
        now = _changed(read, changes, insertions)
        places = _places(show, now)
        return tuple(replace(one, floor=floor_path(now, one.name, places)) for one in plain)
    paths = [path for path, _ in changes] + [path for path, _, _ in insertions]
    if _OF_THE_FLOOR & {path[0] for path in paths}:
        after = restaged(show, changes, insertions, fly=fly)
        return tuple(after.dancers[k] for k in who)
    values = changed_values(read.document.values, changes, insertions)
    said = _dance_key(values, read.document.file)
    names = tuple(dancer.name for dancer in plain)

    def work() -> tuple[Song, tuple[Dancer, ...] | None]:
        now = show_from_document(replace(read.document, values=values), before=read)
        return heard, dancers_anywhere(now, names, before=show, at=at, fly=fly, key=said)

    # The song is held, so that no other can have its id.
    key = None if said is None else (said, id(heard), names, at, fly)
    _, dancers = recent("restaged dancers", key, work, most=_MOST_TRIED)
    if dancers is None:
        return None
    return tuple(replace(now, floor=one.floor) for now, one in zip(dancers, plain, strict=True))


def _changed(
    read: ReadShow, changes: Sequence[Change], insertions: Sequence[Insertion]
) -> ReadShow:
    values = changed_values(read.document.values, changes, insertions)
    return show_from_document(replace(read.document, values=values), before=read)


def _of_the_floor(changes: Sequence[Change], insertions: Sequence[Insertion]) -> bool:
    """Whether they only affect paths over the floor."""
    return not insertions and all(path[0] in _OF_THE_FLOOR for path, _ in changes)


def _places(show: Staged, read: ReadShow) -> tuple[Standing, ...]:
    last = max(one.end for one in show.standings)
    return standings(read, Moments(read, show.song, show.tempo), last)


def _dance_key(values: Any, *besides: Hashable) -> Hashable | None:
    """All that a file says apart from the floor; None if other files may change what is danced."""
    if "pattern_files" in values or _brings_beats(values.get("track")):
        return None
    try:
        return content_key(
            {key: own for key, own in values.items() if key not in _OF_THE_FLOOR}, besides
        )
    except TypeError:
        return None


def _brings_beats(track: Any) -> bool:
    corrections = track.get("corrections") if isinstance(track, Mapping) else None
    return isinstance(corrections, Mapping) and "beats" in corrections


def changed_values(
    values: Any, changes: Sequence[Change], insertions: Sequence[Insertion] = ()
) -> Any:
    """Plain values of a file after changes, as `editing.edited_text` makes them in the text."""
    root = copy.copy(values)
    for path, value in changes:
        holder = _opened(root, path[:-1], path)
        if value is None:
            del holder[path[-1]]
        else:
            holder[path[-1]] = copy.deepcopy(
                value
            )  # the caller may change theirs and give it again
    for path, index, entry in sorted(insertions, key=lambda one: -one[1]):
        _opened(root, path, path).insert(index, copy.deepcopy(entry))
    return root


def _opened(root: Any, keys: Sequence[str | int], path: Sequence[str | int]) -> Any:
    """What lies behind some keys, with every container on the way copied; the rest stays the same objects."""
    holder = root
    for key in keys:
        try:
            holder[key] = copy.copy(holder[key])
        except (KeyError, IndexError, TypeError):
            where = "/".join(map(str, path))
            raise ValueError(f"there is no {where} in the show file") from None
        holder = holder[key]
    return holder
