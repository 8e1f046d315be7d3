"""What `check --mend` does to distances: spots of formations moved by the shortest proven vector."""

from dataclasses import dataclass

from sequencer.checks.boundaries import boundaries
from sequencer.checks.outcome import direction_words
from sequencer.checks.rule_distances import required_distances
from sequencer.checks.spacing import Conflict, conflicts
from sequencer.errors import InputError
from sequencer.motion.approach import approaches
from sequencer.motion.mending import MovePlace, place_mends
from sequencer.show.document import parse_document
from sequencer.show.editing import Change, edited_text
from sequencer.show.house_rules import rules_of
from sequencer.show.reading import show_from_document
from sequencer.show.staged import Staged
from sequencer.show.timeline import staged
from sequencer.timing.song import Song

MOST_CHANGES = 60
_TOUCH = 1e-6  # [beats]


@dataclass(frozen=True, slots=True, kw_only=True)
class Spaced:
    """A show file after spots were moved."""

    text: str
    done: tuple[str, ...]  # what was changed, in words
    left: tuple[str, ...]  # pairs that still come too close, in words


def mended_spacing(text: str, file: str, song: Song) -> Spaced:
    """A show file whose spots are moved until no two performers come too close; comments stay.

    Parameters
    ----------
    text : str
        The show file as it stands.
    file : str
        Its name, for messages.
    song : Song
        What was heard.

    Returns
    -------
    spaced : Spaced

    Raises
    ------
    InputError
        If the show cannot be used as it stands.

    Notes
    -----
    The worst conflict goes first. A move is kept only if, the whole show staged again, less time is
    spent under the requirement than before, and nothing else comes too close. Spots of named shapes are not moved: widen the shape.
    """
    done: list[str] = []
    show = _staged(text, file, song)
    bad = _conflicts(show)
    while bad and len(done) < MOST_CHANGES:
        step = _helped(text, file, song, show, bad)
        if step is None:
            break
        text, words, show, bad = step
        done.append(words)
    names = [dancer.name for dancer in show.dancers]
    left = [
        f"{names[one.first]} and {names[one.second]}, {show.position(one.start)}" for one in bad
    ]
    return Spaced(text=text, done=tuple(done), left=tuple(left))


def _helped(
    text: str, file: str, song: Song, show: Staged, bad: list[Conflict]
) -> tuple[str, str, Staged, list[Conflict]] | None:
    span = _span(show)
    required = _required(show)
    standing = _bounded(show)
    for conflict in bad:
        for mend in place_mends(
            show.dancers,
            conflict.first,
            conflict.second,
            conflict=(conflict.start, conflict.end),
            show=span,
            required=required,
        ):
            changes = _changes(show, mend)
            if not changes or mend.crowds:
                continue
            changed = edited_text(text, changes)
            try:
                after = _staged(changed, file, song)
            except InputError:
                continue  # the change does not fit the rest of the show
            left = _conflicts(after)
            if _time(left) < _time(bad) - _TOUCH and _bounded(after) <= standing:
                words = " and ".join(
                    f"moved {who} {direction_words(by)}"
                    for who, by in zip(mend.who, mend.by, strict=True)
                )
                return changed, f"{words} in {_formations(show, mend)}", after, left
    return None


def _changes(show: Staged, mend: MovePlace) -> list[Change]:
    """New spots in every formation that the mend moves; none if one of them is a named shape."""
    changes: dict[tuple[str | int, ...], list[float]] = {}
    for standing in _held(show, mend):
        formation = show.show.formations.get(standing)
        if formation is None or formation.spots is None:
            return []
        for who, (x, y) in zip(mend.who, mend.by, strict=True):
            at = formation.spots[who].at
            changes["formations", standing, "spots", who, "at"] = [
                round(at[0] + x, 2),
                round(at[1] + y, 2),
            ]
    return list(changes.items())


def _held(show: Staged, mend: MovePlace) -> list[str]:
    """Formations held while the mend acts, and not merely walked from or to."""
    return list(
        dict.fromkeys(
            standing.formation
            for standing in show.standings
            if standing.start < mend.end - _TOUCH and standing.end > mend.start + _TOUCH
        )
    )


def _formations(show: Staged, mend: MovePlace) -> str:
    return " and ".join(_held(show, mend))


def _time(bad: list[Conflict]) -> float:
    return sum(high - low for one in bad for low, high in one.spans)


def _conflicts(show: Staged) -> list[Conflict]:
    required = _required(show)
    found = approaches(show.dancers, *_span(show), required=required, minima=False)
    return sorted(conflicts(show.dancers, found, required), key=lambda one: one.distance)


def _bounded(show: Staged) -> int:
    """Findings that audience, scenery, ceiling, edge and posts have: a move must add none."""
    required = required_distances(show, rules_of(show))
    start, end = _span(show)
    outcome = boundaries(show.dancers, show.tempo, show.venue, required, start=start, end=end)
    return sum(finding.severity == "stop" for finding in outcome.findings)


def _required(show: Staged) -> float:
    return required_distances(show, rules_of(show)).performers


def _span(show: Staged) -> tuple[float, float]:
    end = float(show.tempo.beats_from_seconds(show.song.duration))
    return min(0.0, float(show.tempo.beats_from_seconds(0.0))), end


def _staged(text: str, file: str, song: Song) -> Staged:
    return staged(show_from_document(parse_document(text, file)), song)
