"""A show file with a drafted routine written into it, line by line, so that all else stays as it is.

Comments and line ends stay. What stands within brackets on one line with something else is refused, never rewritten.
"""

import io
from collections.abc import Collection, Iterator, Mapping, Sequence

from ruamel.yaml import YAML
from ruamel.yaml.nodes import CollectionNode, MappingNode, Node, ScalarNode, SequenceNode

from sequencer.errors import InputError, Place
from sequencer.show.drafted import (
    DraftedRow,
    FileRow,
    drafted_entries,
    drafted_staging,
    flow_text,
    without_drafted,
    written_row,
)
from sequencer.show.text.document import Document


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
        (f"{flow_text(name)}:", [f"  - {written_row(step)}" for step in steps])
        for name, steps in phrases.items()
    ]
    lines.add_named("phrases", bodies, empty=not left.get("phrases"), before="timeline")
    if formations is not None:
        shapes: list[tuple[str, list[str]]] = [
            (f"{flow_text(name)}: {written_row(row)}", []) for name, row in formations.items()
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
