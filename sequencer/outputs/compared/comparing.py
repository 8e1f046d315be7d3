"""Two texts of a show compared: nothing in which they differ is left unsaid.

What is danced and walked is compared as it is staged; whatever else the files say, value by value; then how it is written.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal

from sequencer.errors import InputError
from sequencer.outputs.compared.dance_changes import dance_changes
from sequencer.outputs.compared.finding_changes import UNCHECKED, CheckedFindings, findings_compared
from sequencer.outputs.compared.floor_changes import floor_changes
from sequencer.outputs.compared.said_values import (
    SaidFile,
    ValueDifference,
    is_mark_of_change,
    said_file,
    spelled_otherwise,
    value_change,
    value_differences,
)
from sequencer.outputs.compared.show_changes import Eight, ShowChange, ShowComparison
from sequencer.outputs.compared.text_changes import line_changes, mark_changes, writing_changes
from sequencer.outputs.compared.value_words import subject_of
from sequencer.show.drafted import KEY as DRAFTED
from sequencer.show.operations.floor_operations import RenameFormation
from sequencer.show.operations.operation import Operation, applied, read_again, shown_text
from sequencer.show.operations.people_operations import RenamePerson
from sequencer.show.operations.phrase_operations import RenamePhrase
from sequencer.show.operations.tonight_operations import SetThere
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_values import ValuePath
from sequencer.staging.entries.danced_entries import entry_of_blocks
from sequencer.staging.staged import Block, Staged
from sequencer.timing.phrases import phrase_length

_STAGED = {"timeline", "phrases", "formations", "staging"}  # headings that a staged show tells of
_NAMED_OTHERWISE = 8  # names that are followed from one text to the other, at most


@dataclass(frozen=True, slots=True)
class ComparedText:
    """One of two texts that are compared."""

    name: str  # what it is called
    text: str
    findings: CheckedFindings | None = None  # of a check of this very text
    file: str = ""  # for messages, if it is not that of both
    marked: bool = False  # its file begins with a byte order mark, which is no part of `text`
    unchecked: str = UNCHECKED  # why there are none, behind its name


Stage = Callable[[str], Staged]  # the show of a text on its song; raises InputError if it cannot be


def compared(
    old: ComparedText, new: ComparedText, stage: Stage | None = None, *, file: str = "the show file"
) -> ShowComparison:
    """All that differs between two texts of a show.

    Parameters
    ----------
    old, new : ComparedText
    stage : callable, optional
        Stages a text; if not given, or where it cannot, the entries are compared as they are written.
    file : str
        The show file's name, for messages.
    """
    names = f"{old.name} {old.unchecked}", f"{new.name} {new.unchecked}"
    findings = findings_compared(old.findings, new.findings, names)
    marks = tuple(mark_changes(old.marked, new.marked))
    alike = old.text == new.text
    whole = ShowComparison(
        old=old.name, new=new.name, identical=alike and not marks, changes=marks, findings=findings
    )
    if alike:
        return whole
    try:
        was, now = shown_text(old.text, old.file or file), shown_text(new.text, file)
    except InputError as error:
        return replace(
            whole, changes=(*line_changes(old.text, new.text), *marks), faults=(f"compared line by line: {error}",)
        )  # fmt: skip
    was, renamed = _named_alike(was, now)
    files = _said(was, now)
    differences = value_differences(files[0].read, files[1].read)
    staged, faults = _both_staged(was, now, stage)
    changes = [*renamed]
    shown = [each for each in differences if not is_mark_of_change(each, *files)]
    if staged is None:
        changes += [value_change(each, *files) for each in shown]
    else:
        changes += _as_staged(shown, files, staged)
    changes += spelled_otherwise(*files, differences)
    changes += writing_changes(old.text, new.text, others=bool(changes))
    return replace(
        whole, changes=(*changes, *marks), faults=faults,
        eights=tuple(_eights(changes, staged[1])) if staged is not None else (),
    )  # fmt: skip


def _said(was: ShowText, now: ShowText) -> tuple[SaidFile, SaidFile]:
    """What both say; as it is written, if one of them is no show."""
    try:
        shows = [read_again(each, each).written for each in (was, now)]
    except InputError:
        return said_file(was.values, None), said_file(now.values, None)
    return said_file(was.values, shows[0]), said_file(now.values, shows[1])


def _both_staged(
    was: ShowText, now: ShowText, stage: Stage | None
) -> tuple[tuple[Staged, Staged] | None, tuple[str, ...]]:
    if stage is None:
        return None, ()
    try:
        # With everybody: who is there tonight is told by itself.
        return (stage(_with_everybody(was)), stage(_with_everybody(now))), ()
    except InputError as error:
        return None, (f"the entries are compared as they are written, since one of the two cannot be danced: {error}",)  # fmt: skip


def _with_everybody(text: ShowText) -> str:
    return applied(text, SetThere()).text


# --- names ---


def _named_alike(was: ShowText, now: ShowText) -> tuple[ShowText, list[ShowChange]]:
    """The older text with the names of the newer one, where only a name is another one."""
    changes = []
    for _ in range(_NAMED_OTHERWISE):
        found = next(_renames(was, now), None)
        if found is None:
            break
        operation, words, path = found
        try:
            was = applied(was, operation)
        except InputError:
            break
        subject = subject_of(path)
        changes.append(ShowChange(subject=subject, kind="changed", words=words, old=(path,)))
    return was, changes


def _renames(was: ShowText, now: ShowText) -> Iterator[tuple[Operation, str, ValuePath]]:
    groups: tuple[Literal["cast"], Literal["crew"]] = ("cast", "crew")
    for group in groups:
        rows = [
            [row for row in text.value(group) or () if isinstance(row, dict)] for text in (was, now)
        ]
        names = [[str(row.get("name")) for row in own] for own in rows]
        gone = [row for row in rows[0] if str(row.get("name")) not in names[1]]
        came = [row for row in rows[1] if str(row.get("name")) not in names[0]]
        for row in gone:
            alike = [other for other in came if {**row, "name": 0} == {**other, "name": 0}]
            if len(alike) == 1:
                old, new = str(row["name"]), str(alike[0]["name"])
                yield (
                    RenamePerson(group=group, name=old, new=new),
                    f"{old} is called {new} now", (group, old),
                )  # fmt: skip
    for heading in ("formations", "phrases"):
        own, other = (text.value(heading) or {} for text in (was, now))
        if isinstance(own, dict) and isinstance(other, dict):
            yield from _renamed_records(heading, own, other)


def _renamed_records(
    heading: str, own: Mapping[str, Any], other: Mapping[str, Any]
) -> Iterator[tuple[Operation, str, ValuePath]]:
    for name in own:
        alike = [each for each in other if each not in own and other[each] == own[name]]
        if name in other or len(alike) != 1:
            continue
        new = alike[0]
        rename: Operation = (
            RenameFormation(old=name, new=new)
            if heading == "formations"
            else RenamePhrase(old=name, new=new)
        )
        yield rename, f"the {heading[:-1]} {name} is called {new} now", (heading, name)


# --- staged ---


def _as_staged(
    differences: Sequence[ValueDifference],
    files: tuple[SaidFile, SaidFile],
    staged: tuple[Staged, Staged],
) -> list[ShowChange]:
    """The dance and the floor as they are staged; then whatever of the files these do not tell."""
    danced = [*dance_changes(*staged), *floor_changes(*staged)]
    told = Told(danced)
    when = _Moments(staged[0], "old"), _Moments(staged[1], "new")
    rest = []
    for each in differences:
        top = str((each.new if each.new is not None else each.old or ("",))[0])
        change = value_change(each, *files)
        if top in _STAGED:
            if told.of(each):
                continue
            if top in ("timeline", "phrases") and not told.about(each):
                change = replace(change, subject="entries", words=f"{change.words} (danced alike)")
            elif top in ("timeline", "phrases") and each.key == DRAFTED:
                change = replace(change, subject="entries")
        rest.append(_placed(change, each, when))
    if staged[0].song.sha256 != staged[1].song.sha256:
        rest.append(ShowChange(subject="song", kind="changed", words="the track is another recording, or another cut"))  # fmt: skip
    return [*danced, *rest]


class Told:
    """What some changes tell of the entries that they are about.

    Parameters
    ----------
    changes : sequence of ShowChange
    """

    def __init__(self, changes: Sequence[ShowChange]) -> None:
        self._old: dict[ValuePath, set[str]] = {}
        self._new: dict[ValuePath, set[str]] = {}
        for change in changes:
            for paths, found in ((change.old, self._old), (change.new, self._new)):
                for path in paths:
                    found.setdefault(path, set()).update(change.keys)

    def __repr__(self) -> str:
        return f"<Told: {len(self._old)} old entries, {len(self._new)} new ones>"

    def of(self, each: ValueDifference) -> bool:
        """Whether a value that differs is told."""
        return any(
            self._says(found, path)
            for found, path in ((self._old, each.old), (self._new, each.new))
            if path is not None
        )

    def about(self, each: ValueDifference) -> bool:
        """Whether anything is told of the entry of a value."""
        return any(
            path[:n] in found
            for found, path in ((self._old, each.old), (self._new, each.new))
            if path is not None
            for n in range(2, len(path) + 1)
        )

    @staticmethod
    def _says(found: dict[ValuePath, set[str]], path: ValuePath) -> bool:
        if path in found:
            return True
        return any(str(path[n]) in found.get(path[:n], ()) for n in range(2, len(path)))


class _Moments:
    """When the entries of a staged show are danced, its walks made and its props lit."""

    def __init__(self, staged: Staged, side: str) -> None:
        self.staged, self.side = staged, side
        entries = entry_of_blocks(staged)
        self._spans: dict[ValuePath, list[tuple[float, float]]] = {}
        for block in (*staged.blocks, *staged.stops):
            self._note(block, tuple(block.path))
            if (entry := entries.get(id(block))) is not None and block.path[0] != "timeline":
                self._note(block, ("timeline", entry))
        for standing in staged.standings:
            self._spans.setdefault(tuple(standing.path), []).append((standing.walk, standing.start))
        for lit in staged.lit:
            self._spans.setdefault(tuple(lit.path), []).append((lit.start, lit.end))

    def _note(self, block: Block, path: ValuePath) -> None:
        self._spans.setdefault(path, []).append((block.start, block.end))

    def of(self, path: ValuePath | None) -> tuple[tuple[float, float], ...]:
        """Spans of the entry that a path leads to or into [beats]."""
        if path is None:
            return ()
        for n in range(len(path), 1, -1):
            if path[:n] in self._spans:
                own = sorted({(round(a, 6), round(b, 6)) for a, b in self._spans[path[:n]]})
                return tuple(own)
        return ()


def _placed(
    change: ShowChange, each: ValueDifference, when: tuple[_Moments, _Moments]
) -> ShowChange:
    """A change with the moments at which its entry is danced."""
    spans, before = when[1].of(each.new), when[0].of(each.old) if each.new is None else ()
    first = spans or before
    if not first:
        return change
    staged = when[1].staged if spans else when[0].staged
    return replace(change, spans=spans, before=before, position=staged.position(first[0][0]))


# --- eights ---


def _eights(changes: Sequence[ShowChange], staged: Staged) -> Iterator[Eight]:
    """Rows of the sheet in which something differs: an eight each; a section begins a new one."""
    placed: list[tuple[float, int]] = sorted(
        (each.beat, k) for k, each in enumerate(changes) if each.beat is not None
    )
    rows = sheet_rows(staged, max((beat for beat, _ in placed), default=0.0))
    own: dict[int, list[int]] = {}
    at = 0
    for beat, k in placed:
        while at + 1 < len(rows) and beat >= rows[at + 1].start - 1e-6:
            at += 1
        own.setdefault(at, []).append(k)
    for number in sorted(own):
        yield replace(rows[number], changes=tuple(own[number]))


def sheet_rows(staged: Staged, until: float) -> list[Eight]:
    """Rows of an eight up to a beat, as the planning page has them: two bars, four of two beats; a section begins a new one.

    Parameters
    ----------
    staged : Staged
    until : float [beats]
    """
    tempo = staged.tempo
    starts = [float(tempo.beats_from_seconds(each.start)) for each in staged.song.sections]
    first = min([0.0, *(each.start for each in (*staged.blocks, *staged.stops))])
    end = max(staged.span[1], until + 1e-6)
    bar = min(1, tempo.position_of(first + 1e-6).bar)
    most = phrase_length(tempo.metre) // tempo.metre
    rows = []
    while (start := tempo.bar_start(bar)) < end:
        following = bar + 1
        while following < bar + most and not any(
            abs(each - tempo.bar_start(following)) < 0.5 for each in starts
        ):
            following += 1
        beats = tempo.bar_start(following) - start
        rows.append(Eight(bar=bar, start=start, beats=beats, section=staged.section_at(start + 0.5), changes=()))  # fmt: skip
        bar = following
    return rows
