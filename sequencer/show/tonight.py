"""A show as it is danced tonight: without those who are away, and with the bodies and props of those who stand in.

Everybody keeps their counts and their spots: a part that falls out leaves a hole. Entries keep their numbers, so that every
path still leads to the same place of the file.
"""

from collections.abc import Iterable, Mapping
from typing import Any, TypeVar

from sequencer.show.file_records.performer_record import Performer
from sequencer.show.file_records.record import Names, Record
from sequencer.show.model import CrewMember, Entry, Fire, Formation, Show, Staging

_Record = TypeVar("_Record", bound=Record)


def parts_of(show: Show) -> tuple[Performer, ...]:
    """Every part of the cast, also of those who are away, danced by who takes it tonight.

    Parameters
    ----------
    show : Show
        As the file says it.
    """
    if show.tonight is None:
        return show.cast
    stands_in = {each.part: each for each in show.tonight.stand_ins}
    return tuple(
        stands_in[part.name].as_performer(part) if part.name in stands_in else part
        for part in show.cast
    )


def as_tonight(show: Show, parts: tuple[Performer, ...]) -> Show:
    """The show as it is danced tonight; itself if everybody is there.

    Parameters
    ----------
    show : Show
        As the file says it.
    parts : tuple of Performer
        As `parts_of` gives them.
    """
    if show.tonight is None or not (show.tonight.away or show.tonight.stand_ins):
        return show
    away = frozenset(show.tonight.away)
    lead = show.wishes.lead
    return show.model_copy(
        update={
            "cast": tuple(part for part in parts if part.name not in away),
            "crew": tuple(_watching(post, away) for post in show.crew if post.name not in away),
            "formations": {name: _standing(each, away) for name, each in show.formations.items()},
            "staging": tuple(_walking(each, away) for each in show.staging),
            "entrances": tuple(
                _changed(each, who=_without(each.who, away)) for each in show.entrances
            ),
            "timeline": tuple(_dancing(each, away) for each in show.timeline),
            "fire": None if show.fire is None else _lit(show.fire, away),
            "stop_call": _changed(
                show.stop_call,
                callers=_without(show.stop_call.callers, away) or ("all",),
                does={who: does for who, does in show.stop_call.does.items() if who not in away},
            ),
            "wishes": _changed(show.wishes, lead=None if lead in away else lead),
        }
    )


def _without(names: Iterable[str], away: frozenset[str]) -> Names:
    return tuple(name for name in names if name not in away)


def _changed(record: _Record, **values: Any) -> _Record:
    """A record with other values; the same one if nothing is another, so that what is known of it stays known."""
    new = {key: value for key, value in values.items() if getattr(record, key) != value}
    return record.model_copy(update=new) if new else record


def _watching(post: CrewMember, away: frozenset[str]) -> CrewMember:
    """Whoever watched only those who are away watches everybody."""
    return _changed(post, watches=_without(post.watches, away))


def _standing(formation: Formation, away: frozenset[str]) -> Formation:
    if formation.spots is None:
        return formation  # a shape is filled for everybody, so that the others stand where they are used to
    spots = {who: spot for who, spot in formation.spots.items() if who not in away}
    return _changed(formation, spots=spots)


def _walking(staging: Staging, away: frozenset[str]) -> Staging:
    via: Mapping[str, Any] = {who: way for who, way in staging.via.items() if who not in away}
    return _changed(staging, via=via)


def _dancing(entry: Entry, away: frozenset[str]) -> Entry:
    return _changed(entry, who=_without(entry.who, away), mirror=_without(entry.mirror, away))


def _lit(fire: Fire, away: frozenset[str]) -> Fire:
    handling = fire.handling
    return _changed(
        fire,
        lit=tuple(
            _changed(
                span,
                who=_without(span.who, away),
                lit_by=None if span.lit_by in away else span.lit_by,
                put_out_by=None if span.put_out_by in away else span.put_out_by,
            )
            for span in fire.lit
        ),
        handling=_changed(handling, lit_by=None if handling.lit_by in away else handling.lit_by),
    )
