"""Splices of a show file's text for edits of what it says, by where the parser found each value."""

from collections.abc import Iterator, Sequence
from typing import Any

from sequencer.show.text.plain_edits import (
    KeyNamed,
    RowsIn,
    TakenOut,
    TextEdit,
    ValueSet,
)
from sequencer.show.text.plain_values import ValuePath, key_text
from sequencer.show.text.splices import (
    NodePlace,
    Splice,
    indented,
    line_end,
    line_start,
    next_line,
    skipped,
    with_comments,
)
from sequencer.show.text.written import Written, flow_words, quoted_like, said

_INDENT = 2
_IN_FRONT = ("who", "from")  # of an entry


class Writer:
    """Splices of one text.

    Parameters
    ----------
    text : str
    root : NodePlace
        Of all that it says.
    values : mapping
        Its plain values.
    headings : sequence of str
        In which order new headings are written.
    """

    def __init__(
        self, text: str, root: NodePlace, values: Any, headings: Sequence[str] = ()
    ) -> None:
        self._text, self._root, self._values, self._headings = text, root, values, headings
        self._newline = "\r\n" if "\r\n" in text else "\n"

    def splices(self, edits: Sequence[TextEdit]) -> Iterator[Splice]:
        """What the edits change in the text.

        Raises
        ------
        ValueError
            If a path does not exist.
        """
        taken: dict[ValuePath, list[int]] = {}
        for edit in edits:
            if isinstance(edit, ValueSet):
                yield from self._set(edit)
            elif isinstance(edit, RowsIn):
                yield from self._rows_in(self._root.find(edit.path), edit.index, edit.rows)
            elif isinstance(edit, KeyNamed):
                spot = self._root.find(edit.path)
                assert spot.holder is not None  # noqa: S101 (a key stands among others)
                start, end = spot.holder.name(spot.number)
                yield Splice(start, end, self._key(edit.name, self._text[start:end]))
            elif isinstance(edit, TakenOut):
                spot = self._root.find(edit.path)
                taken.setdefault(edit.path[:-1], []).append(spot.number)
        filled = {edit.path for edit in edits if isinstance(edit, RowsIn) and edit.rows}
        for path, numbers in taken.items():
            holder = self._root.find(path)
            if path in filled and not holder.node.flow:  # others come in: it is never empty
                for k in numbers:
                    yield self._taken_line(holder, k)
            else:
                yield from self._take(holder, sorted(numbers))

    # Values

    def _set(self, edit: ValueSet) -> Iterator[Splice]:
        holder = self._root.find(edit.path[:-1])
        key, new = edit.path[-1], said(edit.value)
        known = range(len(holder.node.items)) if holder.node.kind == "list" else self._names(holder)
        if key in known:
            yield from self._assign(holder.find((key,)), new, edit.value)
        elif holder.node.kind == "keys":
            yield from self._add(holder, str(key), edit.value)
        else:
            yield from self._assign(holder, {str(key): new}, {str(key): edit.value})

    def _assign(self, spot: NodePlace, new: Any, value: Any) -> Iterator[Splice]:
        """Make a value another one, and change no more of it than differs."""
        old = _at(self._values, spot.path)
        if old == new:
            return
        if spot.node.kind == "alias":
            yield from self._replace(spot, value)
        elif isinstance(old, dict) and isinstance(new, dict) and old.keys() & new.keys():
            yield from self._assign_keys(spot, old, new, value)
        elif isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
            for k, (own, each) in enumerate(zip(new, value, strict=True)):
                yield from self._assign(spot.item(k), own, each)
        else:
            yield from self._replace(spot, value)

    def _assign_keys(
        self, spot: NodePlace, old: dict[str, Any], new: dict[str, Any], value: Any
    ) -> Iterator[Splice]:
        of = {str(key): own for key, own in value.items()}
        for k, key in enumerate(self._names(spot)):
            if key in new:
                yield from self._assign(spot.item(k), new[key], of[key])
        gone = [k for k, key in enumerate(self._names(spot)) if key not in new]
        yield from self._take(spot, gone)
        for key in new:
            if key not in old:
                yield from self._add(spot, key, of[key])

    def _replace(self, spot: NodePlace, value: Any) -> Iterator[Splice]:
        """Write a value in place of what stands there."""
        node, text = spot.node, self._text
        rows = None if self._in_flow(spot) else self._lines_below(spot, value)
        if node.kind == "scalar" and node.end > node.start and rows is None:
            yield Splice(spot.start, spot.end, quoted_like(node.style, value))
            return
        if (node.flow or node.kind == "alias") and rows is None:
            yield Splice(spot.start, spot.end, flow_words(value))
            return
        behind = self._behind_sign(spot)
        head = text[behind : spot.start].rstrip() if "#" in text[behind : spot.start] else ""
        if rows is None:
            yield Splice(behind, spot.end, f" {flow_words(value)}{head}")
            return
        yield Splice(behind, spot.end, head)
        yield self._below(spot.end, rows)

    def _lines_below(self, spot: NodePlace, value: Any) -> list[str] | None:
        """Lines for a heading that had nothing, if what it gets is better read line by line."""
        if spot.holder is None or spot.node.items or spot.holder.node.kind != "keys":
            return None
        column = spot.holder.node.names[spot.number].column
        lines = _key_lines("", value, top=spot.holder.holder is None)
        return indented(lines[1:], column) if len(lines) > 1 else None

    # Keys

    def _add(self, holder: NodePlace, key: str, value: Any) -> Iterator[Splice]:
        node, text = holder.node, self._text
        name = flow_words(key)
        if node.flow and not node.items:
            rows = None if self._in_flow(holder) else self._lines_below(holder, {key: value})
            if rows is None:
                yield Splice(holder.end - 1, holder.end - 1, f"{name}: {flow_words(value)}")
            else:
                yield from self._replace(holder, {key: value})
            return
        last = self._extent(holder, len(node.items) - 1)[1]
        if node.flow:
            start = self._front(holder, key)
            if start is None:
                yield Splice(last, last, f", {name}: {flow_words(value)}")
            else:
                yield Splice(start, start, f"{name}: {flow_words(value)}, ")
            return
        lines = indented(_key_lines(name, value, top=holder.holder is None), node.names[0].column)
        before = self._later_heading(holder, key)
        if before is not None:
            start = with_comments(text, line_start(text, before))
            yield Splice(start, start, self._joined([*lines, ""]))
        else:
            if holder.holder is None and "\n" in self._joined(lines).strip():
                lines = ["", *lines]
            yield self._below(last, lines)

    def _front(self, holder: NodePlace, key: str) -> int | None:
        """Where a key is written that people write before the others; None for any other key."""
        if key not in _IN_FRONT:
            return None
        before = _IN_FRONT[: _IN_FRONT.index(key)]
        return next(
            (holder.name(k)[0] for k, name in enumerate(self._names(holder)) if name not in before),
            None,
        )

    def _later_heading(self, holder: NodePlace, key: str) -> int | None:
        """Where the first heading begins that comes after a new one."""
        if holder.holder is not None or key not in self._headings:
            return None
        later = set(self._headings[self._headings.index(key) + 1 :])
        for k, name in enumerate(self._names(holder)):
            if name in later and holder.name(k)[0] > 0:
                return holder.name(k)[0]
        return None

    def _names(self, holder: NodePlace) -> list[str]:
        return [key_text(name) for name in holder.node.names]

    def _key(self, name: str, old: str) -> str:
        return quoted_like(old[0] if old[0] in "\"'" else None, name)

    # Lists

    def _rows_in(self, holder: NodePlace, index: int, rows: Sequence[Any]) -> Iterator[Splice]:
        node, text = holder.node, self._text
        if not rows:
            return
        if not node.items:
            yield from self._first_rows(holder, rows)
            return
        if node.flow:
            words = ", ".join(flow_words(row) for row in rows)
            if index:
                end = self._extent(holder, index - 1)[1]
                yield Splice(end, end, f", {words}")
            else:
                start = self._extent(holder, 0)[0]
                yield Splice(start, start, f"{words}, ")
            return
        dash = self._extent(holder, 0)[0]
        column = dash - line_start(text, dash)
        lines = [line for row in rows for line in indented(_row_lines(row), column)]
        if index:
            yield self._below(self._extent(holder, index - 1)[1], lines)
        elif dash == skipped(text, line_start(text, dash)):
            start = line_start(text, dash)
            yield Splice(start, start, self._joined(lines))
        else:  # it stands behind the dash of what holds it
            yield Splice(dash, dash, self._joined(lines).lstrip(" ") + " " * column)

    def _first_rows(self, holder: NodePlace, rows: Sequence[Any]) -> Iterator[Splice]:
        if holder.holder is None or holder.holder.node.kind != "keys" or self._in_flow(holder):
            yield from self._replace(holder, list(rows))
            return
        column = holder.holder.node.names[holder.number].column + _INDENT
        behind, text = self._behind_sign(holder), self._text
        head = text[behind : holder.start].rstrip() if "#" in text[behind : holder.start] else ""
        yield Splice(behind, holder.end, head)
        yield self._below(
            holder.end, [line for row in rows for line in indented(_row_lines(row), column)]
        )

    def _take(self, holder: NodePlace, numbers: Sequence[int]) -> Iterator[Splice]:
        """Take items, or keys with their values, out."""
        node = holder.node
        if not numbers:
            return
        if len(numbers) == len(node.items):
            yield from self._emptied(holder)
        elif node.flow:
            for run in _runs(numbers):
                yield from self._taken_from_flow(holder, run)
        elif holder.holder is None and len(numbers) == 1:
            yield self._taken_heading(holder, numbers[0])
        else:
            for k in numbers:
                yield self._taken_line(holder, k)

    def _emptied(self, holder: NodePlace) -> Iterator[Splice]:
        nothing: Any = [] if holder.node.kind == "list" else {}
        if holder.node.flow:
            end = skipped(self._text, self._extent(holder, len(holder.node.items) - 1)[1])
            yield Splice(self._first(holder), end + (self._text[end] == ","), "")
        elif holder.holder is None:
            yield Splice(holder.start, holder.end, flow_words(nothing))
        elif self._stands_below(holder):
            behind = self._behind_sign(holder)
            yield Splice(behind, behind, f" {flow_words(nothing)}")
            for k in range(len(holder.node.items)):  # one by one: comments between them stay
                yield self._taken_line(holder, k)
        else:
            yield from self._replace(holder, nothing)

    def _stands_below(self, holder: NodePlace) -> bool:
        """Whether the items stand on lines of their own, below what they belong to."""
        first, text = self._first(holder), self._text
        named = holder.node.anchor is not None or holder.node.tag is not None
        return not named and not text[line_start(text, first) : first].strip()

    def _taken_line(self, holder: NodePlace, k: int) -> Splice:
        text = self._text
        start, end = self._extent(holder, k)
        first = line_start(text, start)
        if not text[first:start].strip(" \ufeff"):
            return Splice(start - len(text[first:start].lstrip("\ufeff")), next_line(text, end), "")
        # It stands behind the dash of what holds it: the next one moves up, unless comments stand between.
        behind = self._extent(holder, k + 1)[0]
        if "#" not in text[next_line(text, end) : behind]:
            return Splice(start, behind, "")
        return Splice(len(text[:start].rstrip(" ")), line_end(text, end), "")

    def _taken_heading(self, holder: NodePlace, k: int) -> Splice:
        """A heading with the empty line that sets it apart, and nothing else: what `_add` wrote is gone to the byte."""
        text, cut = self._text, self._taken_line(holder, k)
        start, end = cut.start, cut.end
        if k + 1 < len(holder.node.items):
            after = next_line(text, end)
            return Splice(start, end if text[end:after].strip() else after, cut.text)
        if not text[line_start(text, start - 1) : start].strip():
            start = line_start(text, start - 1)
        if end == len(text) and not text.endswith("\n"):
            start = line_end(text, line_start(text, start - 1))
        return Splice(start, end, cut.text)

    def _taken_from_flow(self, holder: NodePlace, run: Sequence[int]) -> Iterator[Splice]:
        """Neighbours between brackets; some others stay."""
        text, last = self._text, len(holder.node.items) - 1
        start, end = self._extent(holder, run[0])[0], self._extent(holder, run[-1])[1]
        if run[-1] == last:
            start = self._extent(holder, run[0] - 1)[1]
        else:
            end = self._extent(holder, run[-1] + 1)[0]
        if "#" not in text[start:end]:
            yield Splice(start, end, "")
            return
        for k in run:  # each with its comma, so that comments stay
            start, end = self._extent(holder, k)
            comma = skipped(text, end)
            end = comma + 1 if text[comma] == "," else end
            first, rest = line_start(text, start), text[end : line_end(text, end)].strip()
            alone = not text[first:start].strip() and (not rest or rest.startswith("#"))
            if alone and line_end(text, end) == line_end(text, start):
                yield Splice(first, next_line(text, end), "")
            else:
                yield Splice(start, end + (text[end] == " " and not rest.startswith("#")), "")

    # Places

    def _extent(self, holder: NodePlace, k: int) -> tuple[int, int]:
        """Where an item begins, with its dash or its key, and where it ends."""
        item = holder.item(k)
        if holder.node.kind == "keys":
            start, end = holder.name(k)
            return start, max(end, item.end)
        if holder.node.flow:
            return item.start, item.end
        dash = self._dash(holder, k)
        return dash, max(dash + 1, item.end)

    def _dash(self, holder: NodePlace, k: int) -> int:
        text = self._text
        if holder.node.offsets is not None and k < len(holder.node.offsets):
            return skipped(text, holder.node.offsets[k][0] + holder.base)
        at = skipped(text, holder.start if k == 0 else holder.item(k - 1).end)
        while text[at] in "&!":  # a name or a tag of the list
            while text[at] not in " \t\r\n":
                at += 1
            at = skipped(text, at)
        return at

    def _first(self, holder: NodePlace) -> int:
        return self._extent(holder, 0)[0]

    def _behind_sign(self, spot: NodePlace) -> int:
        """Behind the colon of the key, or the dash, that a value belongs to."""
        assert spot.holder is not None  # noqa: S101 (the whole file belongs to none)
        if spot.holder.node.kind == "list":
            return self._dash(spot.holder, spot.number) + 1
        return self._text.index(":", spot.holder.name(spot.number)[1]) + 1

    def _in_flow(self, spot: NodePlace) -> bool:
        return spot.holder is not None and spot.holder.node.flow

    def _below(self, end: int, lines: Sequence[str]) -> Splice:
        """Lines put below the line in which something ends."""
        at = next_line(self._text, end)
        written = self._joined(lines)
        if at == len(self._text) and not self._text.endswith("\n"):
            return Splice(at, at, self._newline + written.removesuffix(self._newline))
        return Splice(at, at, written)

    def _joined(self, lines: Sequence[str]) -> str:
        return "".join(line + self._newline for line in lines)


def own_lines(text: str, holder: NodePlace, k: int, value: Any) -> Written | None:
    """An item of a list in block style as it is written, to be put elsewhere; None if it cannot be taken along."""
    if holder.node.flow or holder.node.kind != "list":
        return None
    item = holder.item(k)
    if item.node.style in ("|", ">") or item.node.kind == "alias":
        return None
    column = item.start - line_start(text, item.start)
    end = line_end(text, item.end)
    first, *more = text[item.start : end].replace("\r\n", "\n").split("\n")
    if any(
        line.strip() and line[:column].strip() and not line.lstrip().startswith("#")
        for line in more
    ):
        return None
    return Written(
        value, (first, *(line[min(column, len(line) - len(line.lstrip())) :] for line in more))
    )


def comments_above(text: str, holder: NodePlace, k: int) -> tuple[str, ...]:
    """Comments on lines of their own between an item of a list and what stands before it."""
    end = line_start(text, holder.item(k).start)
    start = next_line(text, holder.item(k - 1).end) if k else 0
    lines = [line.strip() for line in text[start:end].splitlines()]
    if not k:  # from the heading on
        kept = len(lines)
        while kept and (not lines[kept - 1] or lines[kept - 1].startswith("#")):
            kept -= 1
        lines = lines[kept:]
    return tuple(line for line in lines if line.startswith("#"))


def _runs(numbers: Sequence[int]) -> list[list[int]]:
    """Numbers in order, with neighbours together."""
    runs: list[list[int]] = []
    for k in numbers:
        if runs and runs[-1][-1] == k - 1:
            runs[-1].append(k)
        else:
            runs.append([k])
    return runs


def _row_lines(row: Any) -> list[str]:
    if isinstance(row, Written):
        first, *more = row.lines
        return [*row.above, f"- {first}", *indented(more, _INDENT)]
    return [f"- {flow_words(row)}"]


def _key_lines(name: str, value: Any, *, top: bool) -> list[str]:
    """A key with its value: rows below each other, what stands below a heading too, all else on one line."""
    if (
        isinstance(value, list | tuple)
        and value
        and all(isinstance(said(row), dict) for row in value)
    ):
        rows = [line for row in value for line in indented(_row_lines(row), _INDENT)]
        return [f"{name}:", *rows]
    if top and isinstance(value, dict) and value:
        below = [_key_lines(flow_words(str(key)), own, top=False) for key, own in value.items()]
        return [f"{name}:", *indented([line for lines in below for line in lines], _INDENT)]
    return [f"{name}: {flow_words(value)}"]


def _at(values: Any, path: ValuePath) -> Any:
    for key in path:
        values = values[key]
    return values
