"""What `sequencer draft` wrote in a show file: how it is known again, taken out, and written.

Every drafted entry, and every step of a drafted phrase, carries the key `drafted` with a word made from what the entry
says. Whoever changes the entry, or takes the key out, makes it their own: the word no longer matches, and it is never
replaced. `drafted: true` marks an entry as replaceable whatever it says. The text is changed line by line, so that all
else stays as it is, comments and line ends included.
"""

import hashlib
import io
import json
import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.nodes import CollectionNode, MappingNode, Node, ScalarNode, SequenceNode

from sequencer.errors import InputError, Place
from sequencer.show.document import Document

KEY = "drafted"
_ALWAYS = "true"
_LETTERS = (
    "bcdfghjklmnpqrstvwxz"  # no word of a language comes out, and nothing that YAML reads otherwise
)
_LENGTH = 5
_PLAIN = re.compile(r"[A-Za-z][\w'’-]*( [\w'’-]+)*|-?\d+(\.\d+)?(\+\d+/\d+)?")
_WORDS = {"true", "false", "null", "yes", "no", "on", "off", "y", "n"}

FileRow = Mapping[str, Any]  # an entry or a step as in the file


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftedRow:
    """An entry of the timeline to write."""

    values: FileRow
    at: float  # [beats] by which it is put in order
    remark: str = ""  # written behind it


def mark_of(row: FileRow) -> str:
    """The word that marks an entry as drafted, made from all else that it says."""
    said = json.dumps(
        _texts({key: value for key, value in row.items() if key != KEY}), sort_keys=True
    )
    number = int.from_bytes(hashlib.blake2b(said.encode(), digest_size=8).digest(), "big")
    word = ""
    for _ in range(_LENGTH):
        number, letter = divmod(number, len(_LETTERS))
        word += _LETTERS[letter]
    return word


def _texts(value: Any) -> Any:
    """Values with every scalar as the text that a file has for it."""
    if isinstance(value, Mapping):
        return {str(key): _texts(own) for key, own in value.items()}
    if isinstance(value, list | tuple):
        return [_texts(own) for own in value]
    return _scalar(value) if value is not None else None


def _scalar(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return f"{value:.6g}"
    return str(value)


def is_drafted(row: Any) -> bool:
    """Whether an entry or a step is as the draft wrote it."""
    if not isinstance(row, Mapping) or KEY not in row:
        return False
    return row[KEY] in (_ALWAYS, mark_of(row))


def drafted_phrases(values: Mapping[str, Any]) -> frozenset[str]:
    """Names of phrases of which every step is as the draft wrote it."""
    phrases = values.get("phrases")
    if not isinstance(phrases, Mapping):
        return frozenset()
    return frozenset(
        str(name)
        for name, steps in phrases.items()
        if isinstance(steps, list) and steps and all(map(is_drafted, steps))
    )


def drafted_entries(values: Mapping[str, Any]) -> tuple[int, ...]:
    """Places in the timeline of entries that are as the draft wrote them, and use no phrase that a person changed."""
    timeline, own = values.get("timeline"), drafted_phrases(values)
    if not isinstance(timeline, list):
        return ()
    return tuple(
        k
        for k, row in enumerate(timeline)
        if is_drafted(row) and ("phrase" not in row or row["phrase"] in own)
    )


def drafted_staging(values: Mapping[str, Any]) -> tuple[int, ...]:
    """Places in the staging of entries that are as the draft wrote them, and take no formation that a person changed."""
    staging = values.get("staging")
    if not isinstance(staging, list):
        return ()
    own = drafted_formations(values)
    return tuple(
        k for k, row in enumerate(staging) if is_drafted(row) and row.get("formation") in own
    )


def drafted_formations(values: Mapping[str, Any]) -> frozenset[str]:
    """Names of formations that are as the draft wrote them."""
    formations = values.get("formations")
    if not isinstance(formations, Mapping):
        return frozenset()
    return frozenset(str(name) for name, row in formations.items() if is_drafted(row))


def without_drafted(
    values: Mapping[str, Any], keep: Sequence[int] = (), *, staging: bool = True
) -> dict[str, Any]:
    """A document's values without what was drafted.

    Parameters
    ----------
    values : mapping
    keep : sequence of int
        Drafted entries of the timeline that stay, with the phrases that they use.
    staging : bool
        Whether drafted formations are taken out too, with the walks to them.
    """
    out = dict(values)
    gone = set(drafted_entries(values)) - set(keep)
    if isinstance(out.get("timeline"), list):
        out["timeline"] = [row for k, row in enumerate(out["timeline"]) if k not in gone]
    for name in _unused(values, out.get("timeline")):
        out["phrases"] = {key: own for key, own in out["phrases"].items() if key != name}
    walks = drafted_staging(values) if staging else ()
    if walks:
        out["staging"] = [row for k, row in enumerate(out["staging"]) if k not in walks]
        used = {row.get("formation") for row in out["staging"]}
        own = drafted_formations(values) - used
        out["formations"] = {
            name: row for name, row in out["formations"].items() if name not in own
        }
    return out


def _unused(values: Mapping[str, Any], timeline: Any) -> list[str]:
    """Drafted phrases that nothing uses any more."""
    rows = list(timeline) if isinstance(timeline, list) else []
    own = drafted_phrases(values)
    for name, steps in (values.get("phrases") or {}).items():
        if name not in own and isinstance(steps, list):
            rows += steps
    used = {row.get("phrase") for row in rows if isinstance(row, Mapping)}
    return [name for name in own if name not in used]


def written_row(row: FileRow) -> str:
    """An entry on one line, with its mark."""
    return _flow({**row, KEY: mark_of(row)})


def _flow(value: Any) -> str:
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{_flow(key)}: {_flow(own)}" for key, own in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(map(_flow, value)) + "]"
    if isinstance(value, str):
        plain = _PLAIN.fullmatch(value) and value.casefold() not in _WORDS
        return value if plain else json.dumps(value, ensure_ascii=False)
    return _scalar(value)


def drafted_text(
    text: str,
    document: Document,
    *,
    keep: Sequence[int],
    phrases: Mapping[str, Sequence[FileRow]],
    rows: Sequence[DraftedRow],
    starts: Mapping[int, float],
    formations: Mapping[str, FileRow] | None = None,
    staging: Sequence[DraftedRow] = (),
) -> str:
    """A show file with what was drafted before replaced by what is drafted now.

    Parameters
    ----------
    text : str
        The file as it stands.
    document : Document
        What it says.
    keep : sequence of int
        Drafted entries of the timeline that stay, with the phrases that they use.
    phrases : mapping of str to steps
        To write; no name is in use already.
    rows : sequence of DraftedRow
        To write, by time.
    starts : mapping of int to float
        When each entry of the timeline that stays begins [beats]; without one it is not written in between.
    formations : mapping of str to FileRow, optional
        To write; drafted ones that were there stay where this is left out.
    staging : sequence of DraftedRow
        To write, by time, where nothing is staged.

    Raises
    ------
    InputError
        If the timeline is written in a way that cannot be changed line by line.
    """
    lines = _Lines(text, document)
    values = document.values
    gone = sorted(set(drafted_entries(values)) - set(keep))
    left = without_drafted(values, keep, staging=formations is not None)
    for heading in ("phrases", "formations"):
        for name in (values.get(heading) or {}).keys() - (left.get(heading) or {}).keys():
            lines.remove((heading, name))
    walks = () if formations is None else drafted_staging(values)
    remarks = {row.remark for row in (*rows, *staging)}
    for heading, places in (("timeline", gone), ("staging", walks)):
        for k in places:
            lines.remove((heading, k), remarks)
    bodies = [
        (f"{_flow(name)}:", [f"  - {written_row(step)}" for step in steps])
        for name, steps in phrases.items()
    ]
    lines.add_named("phrases", bodies, empty=not left.get("phrases"), before="timeline")
    if formations is not None:
        shapes: list[tuple[str, list[str]]] = [
            (f"{_flow(name)}: {written_row(row)}", []) for name, row in formations.items()
        ]
        lines.add_named("formations", shapes, empty=not left.get("formations"), before="timeline")
        lines.add_rows("staging", staging, {}, [], before="timeline", empty=not left.get("staging"))
    lines.add_rows("timeline", rows, starts, [k for k in starts if k not in gone])
    return lines.text


class _Lines:
    """A file's lines with what is to be put before or taken from each."""

    def __init__(self, text: str, document: Document) -> None:
        self._document = document
        self._end = "\r\n" if "\r\n" in text else "\n"
        self._lines = text.removeprefix("\ufeff").splitlines(keepends=True)
        self._mark = "\ufeff" * text.startswith("\ufeff")
        self._gone: set[int] = set()
        self._before: dict[int, list[str]] = {}
        root = YAML(typ="safe", pure=True).compose(io.StringIO(text.removeprefix("\ufeff")))
        if not isinstance(root, MappingNode):
            raise self._fault((), "a show file consists of keys with values")
        self._root = root

    @property
    def text(self) -> str:
        """The file after all changes."""
        out: list[str] = []
        for k, line in enumerate([*self._lines, ""]):
            added = self._before.get(k, ())
            if added and out and not out[-1].endswith(("\n", "\r")):
                out[-1] += self._end
            out += [each + self._end for each in added]
            if k not in self._gone:
                out.append(line)
        return self._mark + "".join(out)

    def remove(self, path: tuple[str | int, ...], remarks: Collection[str] = ()) -> None:
        """Take an item of a list, or a key with its value, out; a comment behind it that is none of some remarks stays."""
        holder = self._node(path[:-1])
        first, last = self._extent(path)
        others = [other for other in self._extents(holder) if other != (first, last)]
        if _flows(holder) or any(low <= last and first <= high for low, high in others):
            raise self._fault(path, "what was drafted stands on one line with something else")
        self._gone |= set(range(first, last + 1))
        end = self._node(path).end_mark
        _, hash_sign, said = self._lines[last][end.column if end.line == last else 0 :].partition(
            "#"
        )
        if hash_sign and said.strip() not in remarks:
            self._before.setdefault(first, []).append(f"  # {said.strip()}")  # a person's

    def add_named(
        self,
        key: str,
        bodies: Sequence[tuple[str, Sequence[str]]],
        *,
        empty: bool,
        before: str,
    ) -> None:
        """Write items of a heading behind those that are there, each with lines below it.

        With `empty` none of those that are there stays; without the heading it is written before another one.
        """
        heading = self._heading(key)
        if not bodies:
            if heading is not None and empty and self._gone_below(key):
                self._gone.add(heading)
            return
        body = [
            line for name, rows in bodies for line in (f"  {name}", *(f"  {row}" for row in rows))
        ]
        if heading is None:
            self._put(self._above(before), [f"{key}:", *body, ""])
            return
        node = self._node((key,))
        if _flows(node) or not isinstance(node, MappingNode):
            self._replace_empty(key, node, full=bool(getattr(node, "value", ())))
            self._put(heading + 1, body)
            return
        inner = node.value[0][0].start_mark.column
        body = [" " * (inner - 2) + line if inner >= 2 else line for line in body]
        self._put(self._after(key, heading), body)

    def add_rows(
        self,
        key: str,
        rows: Sequence[DraftedRow],
        starts: Mapping[int, float],
        staying: Sequence[int],
        *,
        before: str | None = None,
        empty: bool = False,
    ) -> None:
        """Write entries in order of time, each before the first later entry that says when it begins."""
        heading = self._heading(key)
        if not rows:
            if heading is not None and empty and self._gone_below(key):
                self._gone.add(heading)
            return
        if heading is None:
            at = len(self._lines) if before is None else self._above(before)
            items = [f"{key}:", *(self._item(row, 2) for row in rows)]
            apart = (
                before is None and at not in self._before
            )  # what was put there ends in a blank line
            self._put(at, ["", *items] if apart else items if before is None else [*items, ""])
            return
        node = self._node((key,))
        if _flows(node) or not isinstance(node, SequenceNode):
            full = bool(getattr(node, "value", ())) and bool(staying)
            self._replace_empty(key, node, full=full)
            self._put(heading + 1, [self._item(row, 2) for row in rows])
            return
        column = node.start_mark.column
        later = [k for k in staying if "from" in self._document.values[key][k]]
        end = self._after(key, heading)
        for row in rows:
            place = end
            for k in sorted(later, reverse=True):
                if starts[k] > row.at and all(starts[n] > row.at for n in staying if n >= k):
                    place = self._with_comments(self._extent((key, k))[0])
            self._put(place, [self._item(row, column)])

    def _item(self, row: DraftedRow, column: int) -> str:
        remark = f"   # {row.remark}" if row.remark else ""
        return " " * column + "- " + written_row(row.values) + remark

    def _with_comments(self, line: int) -> int:
        """The first of the comments that stand right above a line."""
        while line > 0 and self._lines[line - 1].lstrip().startswith("#"):
            line -= 1
        return line

    def _put(self, line: int, texts: Sequence[str]) -> None:
        self._before.setdefault(line, []).extend(texts)

    def _heading(self, key: str) -> int | None:
        for name, _ in self._root.value:
            if name.value == key:
                return int(name.start_mark.line)
        return None

    def _above(self, key: str) -> int:
        """The line before a heading and the comments right above it; the end of the file without it."""
        line = self._heading(key)
        if line is None:
            return len(self._lines)
        return self._with_comments(line)

    def _gone_below(self, key: str) -> bool:
        node = self._node((key,))
        return bool(node.value) and all(
            set(range(low, high + 1)) <= self._gone for low, high in self._extents(node)
        )

    def _after(self, key: str, heading: int) -> int:
        """The line behind the last item of a heading."""
        return max([high for _, high in self._extents(self._node((key,)))], default=heading) + 1

    def _replace_empty(self, key: str, node: Node, *, full: bool) -> None:
        """Make room below a heading that says `[]`, `{}` or nothing."""
        line = self._heading(key)
        assert line is not None  # noqa: S101 (the caller has found it)
        if full or (isinstance(node, CollectionNode) and node.end_mark.line != line):
            raise self._fault((key,), f"{key} is written within brackets")
        comment = self._lines[line].partition("#")
        self._lines[line] = (
            f"{key}:" + (f"   #{comment[2].rstrip()}" if comment[1] else "") + self._end
        )

    def _node(self, path: Sequence[str | int]) -> Node:
        node: Node = self._root
        for key in path:
            if isinstance(node, SequenceNode):
                node = node.value[int(key)]
            else:
                node = next(own for name, own in node.value if name.value == key)
        return node

    def _extents(self, holder: Node) -> list[tuple[int, int]]:
        return list(self._each_extent(holder))

    def _each_extent(self, holder: Node) -> Iterator[tuple[int, int]]:
        """First and last line of every item of a list, or of every key with its value."""
        if isinstance(holder, SequenceNode):
            for node in holder.value:
                yield self._dash(node), _last_line(node)
        elif isinstance(holder, MappingNode):
            for key, node in holder.value:
                yield int(key.start_mark.line), max(int(key.start_mark.line), _last_line(node))

    def _extent(self, path: tuple[str | int, ...]) -> tuple[int, int]:
        holder, key = self._node(path[:-1]), path[-1]
        places = (
            range(len(holder.value))
            if isinstance(holder, SequenceNode)
            else [name.value for name, _ in holder.value]
        )
        return self._extents(holder)[list(places).index(key)]

    def _dash(self, node: Node) -> int:
        """The line of an item's dash: a comment may stand between it and the item."""
        line = int(node.start_mark.line)
        while line > 0 and not self._lines[line].lstrip().startswith("-"):
            line -= 1
        return line

    def _fault(self, path: Sequence[str | int], what: str) -> InputError:
        return InputError(
            "cannot-draft-here",
            self._document.place(*path) if path else Place(self._document.file),
            what,
            "write one entry on each line: `- {from: 17.1, …}`",
        )


def _flows(node: Node) -> bool:
    """Whether a list or mapping is written within brackets."""
    return isinstance(node, CollectionNode) and bool(node.flow_style)


def _last_line(node: Node) -> int:
    """The last line of a node's own text, without comments below it."""
    if isinstance(node, ScalarNode) or _flows(node):
        end = node.end_mark
        return int(end.line) - (1 if end.column == 0 and end.line > node.start_mark.line else 0)
    inside = [
        part for each in node.value for part in (each if isinstance(each, tuple) else (each,))
    ]
    return max([_last_line(part) for part in inside], default=int(node.start_mark.line))
