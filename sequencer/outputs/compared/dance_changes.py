"""What is danced now and was danced before, performer by performer: put, gone, moved, stretched, danced differently."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Any

from sequencer.motion.patterns.timing_words import TIME_WORDS, WAY_WORDS
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.compared.alignment import TimedPiece, aligned
from sequencer.outputs.compared.show_changes import ChangeKind, ShowChange
from sequencer.outputs.words.block_words import parameters_text
from sequencer.outputs.words.place_words import block_place
from sequencer.outputs.words.posture_words import block_posture
from sequencer.show.text.plain_values import ValuePath
from sequencer.staging.entries.danced_entries import entry_of_blocks
from sequencer.staging.staged import Accent, Block, Staged
from sequencer.units import counted

_CLOSE = 1e-3  # [beats]
_RUN = 3  # moves of one length that are told in one sentence
_WHEN = frozenset(
    {"from", "until", "beats", "cycles", "repeat", "cycle", "rest", "hold", "who", "accent"}
)  # keys that say when something is danced
_ALL = _WHEN | {
    "pattern", "phrase", "with", "left", "right", "hands", "timing", "direction", "shift", "mirrored",
    "mirror", "link", "note", "cue",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Detail:
    words: str
    keys: frozenset[str]


@dataclass(frozen=True, slots=True)
class _One:
    """What differs for one performer."""

    kind: ChangeKind
    words: str
    span: tuple[float, float] | None
    before: tuple[float, float] | None
    old: tuple[ValuePath, ...]
    new: tuple[ValuePath, ...]
    keys: frozenset[str]
    later: float | None = None  # [beats] of a move that is nothing else


def dance_changes(old: Staged, new: Staged) -> list[ShowChange]:
    """What differs in the dance, in order of time; what several dance alike is told once."""
    entries = entry_of_blocks(old), entry_of_blocks(new)
    found: dict[Any, list[str]] = {}
    for name in dict.fromkeys((*old.show.names, *new.show.names)):
        pieces = _pieces(old, name), _pieces(new, name)
        for one in (*_of_blocks(old, new, *pieces, *entries), *_of_accents(old, new, name)):
            found.setdefault(one, []).append(name)
    return _in_runs([_told(one, who, old, new) for one, who in found.items()])


def _pieces(staged: Staged, name: str) -> list[Block]:
    own = (*staged.blocks_of(name), *staged.stops_of(name))
    return sorted(own, key=lambda each: (each.start, each.end))


def _told(one: _One, who: Sequence[str], old: Staged, new: Staged) -> ShowChange:
    start = one.span or one.before
    position = None
    if start is not None:
        position = (new if one.span is not None else old).position(start[0])
    return ShowChange(
        subject="dance", kind=one.kind, words=one.words, who=tuple(who), position=position,
        spans=() if one.span is None else (one.span,), before=() if one.before is None else (one.before,),
        old=one.old, new=one.new, keys=one.keys,
    )  # fmt: skip


# --- blocks ---


def _of_blocks(
    old: Staged, new: Staged, was: list[Block], now: list[Block], was_of: dict[int, int], now_of: dict[int, int]
) -> Iterator[_One]:  # fmt: skip
    dancers = _dancer(old, was), _dancer(new, now)
    for i, j in aligned([_piece(each) for each in was], [_piece(each) for each in now]):
        if i is None and j is not None:
            block = now[j]
            yield _One("new", f"{_named(block)}, {_length(block)}, is new", _span(block), None, (), _paths(block, now_of), _ALL)  # fmt: skip
        elif i is not None and j is None:
            block = was[i]
            yield _One("gone", f"{_named(block)}, {_length(block)}, is gone", None, _span(block), _paths(block, was_of), (), _ALL)  # fmt: skip
        elif i is not None and j is not None:
            yield from _of_pair(old, new, was[i], now[j], dancers, (was_of, now_of))


def _dancer(staged: Staged, blocks: Sequence[Block]) -> Dancer | None:
    name = blocks[0].who if blocks else None
    return next((each for each in staged.dancers if each.name == name), None)


def _piece(block: Block) -> TimedPiece:
    return TimedPiece(_what(block), block.start, block.end)


def _what(block: Block) -> str:
    """What is danced, whenever it is, and however it is fitted to a body."""
    hands = {side: (hand.pattern, _plain(hand.parameters)) for side, hand in block.hands.items()}
    said = (
        sorted(hands.items()), block.timing, block.direction, round(block.cycle, 6),
        round(block.shift, 6), block.mirrored, block.link, block.stop, block.stopped,
    )  # fmt: skip
    return repr(said)


def _plain(values: Mapping[str, Any]) -> str:
    return repr(sorted(values.items(), key=lambda each: each[0]))


def _span(block: Block) -> tuple[float, float]:
    return round(block.start, 6), round(block.end, 6)


def _named(block: Block) -> str:
    if block.stop:
        return f"a {block.stop}"
    return f"{block.title}, of the phrase {block.phrase}" if block.phrase else block.title


def _length(block: Block) -> str:
    return counted(round(block.end - block.start, 3), "beat")


def _paths(block: Block, entries: Mapping[int, int]) -> tuple[ValuePath, ...]:
    entry = entries.get(id(block))
    own: list[ValuePath] = [tuple(block.path)]
    if entry is not None:
        own.append(("timeline", entry))
    return tuple(dict.fromkeys(own))


def _of_pair(
    old: Staged, new: Staged, was: Block, now: Block, dancers: tuple[Dancer | None, Dancer | None],
    entries: tuple[Mapping[int, int], Mapping[int, int]],
) -> Iterator[_One]:  # fmt: skip
    details = list(_details(was, now, dancers))
    shift = now.start - was.start
    longer = (now.end - now.start) - (was.end - was.start)
    moved, stretched = abs(shift) > _CLOSE, abs(longer) > _CLOSE
    if not (details or moved or stretched):
        return
    words, keys = [each.words for each in details], [each.keys for each in details]
    if stretched:
        words.append(f"{_length(now)} instead of {was.end - was.start:g}")
        keys.append(_WHEN)
    if moved:
        words.append(
            f"{_shifted(shift)}, from {new.position(now.start)} instead of {old.position(was.start)}"
        )
        keys.append(_WHEN)
    name = now.title if not now.stop else f"the {now.stop}"
    same = _what(was) == _what(now) or was.title == now.title or (was.stop and was.stop == now.stop)
    head = name if same else f"{_named(now)} instead of {_named(was)}"
    if not same:
        words = [each for each in words if each]
    yield _One(
        kind="moved" if moved and not stretched and not details else "changed",
        words=f"{head}: {'; '.join(words)}" if words else head,
        span=_span(now),
        before=_span(was) if moved or stretched else None,
        old=_paths(was, entries[0]),
        new=_paths(now, entries[1]),
        keys=frozenset().union(*keys) if same else _ALL,
        later=round(shift, 3) if moved and not stretched and not details else None,
    )


def _shifted(beats: float) -> str:
    return f"{counted(round(abs(beats), 3), 'beat')} {'later' if beats > 0 else 'earlier'}"


def _details(
    was: Block, now: Block, dancers: tuple[Dancer | None, Dancer | None]
) -> Iterator[_Detail]:
    """In what two blocks differ, but for when they are."""
    if was.stop != now.stop or was.link != now.link:
        yield _Detail("", _ALL)
    else:
        yield from _of_hands(was, now)
    yield from _of_counting(was, now)
    if was.stopped != now.stopped:
        yield _Detail(
            f"{_hands(now.stopped)} instead of {_hands(was.stopped)}", frozenset({"hands"})
        )
    if was.phrase != now.phrase:
        yield _Detail(_of_phrase(was.phrase, now.phrase), frozenset({"phrase", "pattern"}))
    if was.note.strip() != now.note.strip():
        yield _Detail(_note(was.note.strip(), now.note.strip()), frozenset({"note"}))
    if was.cue.strip() != now.cue.strip():
        yield _Detail(_note(was.cue.strip(), now.cue.strip(), "cue"), frozenset({"cue"}))
    yield from _of_body(was, now, dancers)


def _of_counting(was: Block, now: Block) -> Iterator[_Detail]:
    """How the hands go together, how fast, and where in the pattern they begin."""
    if len(was.hands) == len(now.hands) == 2:
        if was.timing != now.timing:
            yield _Detail(
                f"{TIME_WORDS[now.timing]} instead of {TIME_WORDS[was.timing]}",
                frozenset({"timing"}),
            )
        if was.direction != now.direction:
            yield _Detail(f"{WAY_WORDS[now.direction]} instead of {WAY_WORDS[was.direction]}", frozenset({"direction"}))  # fmt: skip
    if was.hands and now.hands:
        if abs(was.cycle - now.cycle) > 1e-6:
            yield _Detail(f"one hand cycle in {counted(now.cycle, 'beat')} instead of {counted(was.cycle, 'beat')}", frozenset({"cycle"}))  # fmt: skip
        if abs(was.shift - now.shift) > 1e-6:
            yield _Detail(f"begins {_into(now.shift)} instead of {_into(was.shift)}", frozenset({"shift"}))  # fmt: skip
        if was.mirrored != now.mirrored:
            yield _Detail("left and right changed over" if now.mirrored else "left and right no longer changed over", frozenset({"mirrored", "mirror"}))  # fmt: skip


def _of_hands(was: Block, now: Block) -> Iterator[_Detail]:
    keys = frozenset({"pattern", "with", "left", "right", "hands"})
    if set(was.hands) != set(now.hands):
        yield _Detail(f"{_hands(tuple(now.hands))} instead of {_hands(tuple(was.hands))}", keys)
        return
    told = {}
    for side, hand in now.hands.items():
        before = was.hands[side]
        if (hand.pattern, _plain(hand.parameters)) == (before.pattern, _plain(before.parameters)):
            continue
        name = (
            "" if hand.pattern == before.pattern else f"{hand.pattern} instead of {before.pattern}"
        )
        told[side] = "; ".join(
            filter(None, [name, _parameters(before.parameters, hand.parameters)])
        )
    if not told:
        return
    if len(set(told.values())) == 1 and len(told) == len(now.hands):
        alone = next(iter(told.values()))
        title = was.title != now.title and alone == f"{now.title} instead of {was.title}"
        yield _Detail("" if title else alone, keys)
    else:
        yield from (_Detail(f"{side} hand: {words}", keys) for side, words in told.items())


def _parameters(was: Mapping[str, Any], now: Mapping[str, Any]) -> str:
    parts = []
    for key in dict.fromkeys([*was, *now]):
        if key not in now:
            parts.append(f"{parameters_text({key: was[key]})} is left out")
        elif key not in was:
            parts.append(parameters_text({key: now[key]}))
        elif repr(was[key]) != repr(now[key]):
            before = parameters_text({key: was[key]}).removeprefix(key.replace("_", " ")).strip()
            parts.append(f"{parameters_text({key: now[key]})} instead of {before}")
    return ", ".join(parts)


def _hands(sides: Sequence[str]) -> str:
    return "both hands" if len(sides) == 2 else f"the {sides[0]} hand only" if sides else "no hand"


def _into(shift: float) -> str:
    return f"{counted(round(shift, 3), 'beat')} into it" if shift else "at its start"


def _note(was: str, now: str, kind: str = "note") -> str:
    if not now:
        return f"the {kind} “{was}” is gone"
    return f"{kind} “{now}” instead of “{was}”" if was else f"the {kind} “{now}” is new"


def _of_phrase(was: str | None, now: str | None) -> str:
    if now is None:
        return f"no longer of the phrase {was}"
    return f"of the phrase {now}" + (f" instead of {was}" if was else "")


def _of_body(
    was: Block, now: Block, dancers: tuple[Dancer | None, Dancer | None]
) -> Iterator[_Detail]:
    """What follows for the body: it is told where the move is the same, since a performer has to learn it."""
    if was.title != now.title:
        return
    place = [block_place(each, dancer) or "in their usual place" for each, dancer in zip((was, now), dancers, strict=True)]  # fmt: skip
    if place[0] != place[1]:
        yield _Detail(f"hands: {place[1]}, before: {place[0]}", frozenset())
    body = [block_posture(each, dancer).rstrip(".") or "upright" for each, dancer in zip((was, now), dancers, strict=True)]  # fmt: skip
    if body[0] != body[1]:
        yield _Detail(f"body: {body[1].lower()}, before: {body[0].lower()}", frozenset())


# --- accents ---


def _of_accents(old: Staged, new: Staged, name: str) -> Iterator[_One]:
    was = {round(each.beat, 3): each for each in old.accents_of(name)}
    now = {round(each.beat, 3): each for each in new.accents_of(name)}
    for beat in sorted(was.keys() | now.keys()):
        one, other = was.get(beat), now.get(beat)
        span = (beat, beat)
        if one is None and other is not None:
            yield _One(
                "new", f"{_accent(other)} is new", span, None, (), (tuple(other.path),), _ALL
            )
        elif one is not None and other is None:
            yield _One("gone", f"{_accent(one)} is gone", None, span, (tuple(one.path),), (), _ALL)
        elif one is not None and other is not None and one.note != other.note:
            yield _One("changed", f"accent: {_note(one.note, other.note)}", span, None, (tuple(one.path),), (tuple(other.path),), frozenset({"note"}))  # fmt: skip


def _accent(accent: Accent) -> str:
    return f"an accent “{accent.note}”" if accent.note else "an accent"


# --- runs ---


def _in_runs(changes: list[ShowChange]) -> list[ShowChange]:
    """Changes in order of time, with several moves by the same length in one."""
    changes.sort(
        key=lambda each: (each.beat if each.beat is not None else 0.0, each.who, each.words)
    )
    by_who: dict[tuple[str, ...], list[ShowChange]] = {}
    for each in changes:
        by_who.setdefault(each.who, []).append(each)
    out: list[ShowChange] = []
    for own in by_who.values():
        for later, group in groupby(own, key=_later):
            run = list(group)
            out += run if later is None or len(run) < _RUN else [_as_one(run, later)]
    return sorted(
        out, key=lambda each: (each.beat if each.beat is not None else 0.0, each.who, each.words)
    )


def _later(change: ShowChange) -> float | None:
    if change.kind != "moved":
        return None
    return round(change.spans[0][0] - change.before[0][0], 3)


def _as_one(run: Sequence[ShowChange], later: float) -> ShowChange:
    first, last = run[0], run[-1]
    names = list(dict.fromkeys(each.words.partition(":")[0] for each in run))
    return replace(
        first,
        words=f"{len(run)} pieces, from {first.position} to {last.position}: {_shifted(later)} ({', '.join(names)})",
        spans=tuple(span for each in run for span in each.spans),
        before=tuple(span for each in run for span in each.before),
        old=tuple(dict.fromkeys(path for each in run for path in each.old)),
        new=tuple(dict.fromkeys(path for each in run for path in each.new)),
        keys=frozenset().union(*(each.keys for each in run)),
    )
