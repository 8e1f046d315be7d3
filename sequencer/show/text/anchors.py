"""Names that a YAML file gives to values (`&poi`, `*poi`): an edit of one use must not change the others."""

from collections.abc import Iterator, Sequence

from sequencer.show.text.document import Document, parse_document
from sequencer.show.text.nodes import Node
from sequencer.show.text.plain_values import ValuePath, Walk
from sequencer.show.text.splices import NodePlace, Splice, spliced
from sequencer.show.text.written import flow_words

_MOST = 1_000  # names that are followed for one edit


def root_place(document: Document) -> NodePlace:
    """All that a document says, at its place in the text."""
    if document.root is None:
        raise ValueError("this document does not remember its text")
    return NodePlace(document.root, 0, ())


def unshared(text: str, file: str, paths: Sequence[ValuePath]) -> str:
    """A text that says the same, in which whatever lies at or around some paths is no other's.

    What an alias stands for on the way is written out; a name that is used behind moves to its next use.

    Parameters
    ----------
    text : str
    file : str
        Its name, for messages.
    paths : sequence of paths
        Whose last keys need not be there.
    """
    for _ in range(_MOST):
        if "&" not in text and "*" not in text:
            return text
        root = root_place(parse_document(text, file))
        found = next((s for s in (_shared(text, root, path) for path in paths) if s), None)
        after = None if found is None else spliced(text, found)
        if after is None:
            return text
        text = after
    return text


def _shared(text: str, root: NodePlace, path: ValuePath) -> list[Splice]:
    """What makes the first shared thing on a way one's own."""
    spot = root
    for n, key in enumerate(path):
        if spot.node.kind == "alias":
            return [Splice(spot.start, spot.end, _written_out(spot.node))]
        if (moved := _handed_on(text, root, spot)) is not None:
            return moved
        try:
            spot = spot.find((key,))
        except ValueError:
            return []
        del n
    for each in _all(spot):
        if (moved := _handed_on(text, root, each, outside=spot)) is not None:
            return moved
    return []


def _handed_on(
    text: str, root: NodePlace, spot: NodePlace, outside: NodePlace | None = None
) -> list[Splice] | None:
    """A name that moves from a value to its next use; None if nothing else uses it."""
    if spot.node.anchor is None or spot.node.kind == "alias":
        return None
    uses = [each for each in _all(root) if each.node.target is spot.node]
    if outside is not None:
        uses = [each for each in uses if not outside.start <= each.start < outside.end]
    if not uses:
        return None
    name = f"&{spot.node.anchor}"
    own = text[spot.start : spot.end]
    bare = own.replace(name, "", 1).lstrip(" ")
    words = bare if "\n" not in bare else _written_out(spot.node)
    start = spot.start + own.index(name)
    end = start + len(name)
    while end < spot.end and text[end] == " ":
        end += 1
    if text[end] in "\r\n#":
        start = len(text[:start].rstrip(" "))
    first = uses[0]
    return [
        Splice(start, end, " " if text[end] == "#" else ""),
        Splice(first.start, first.end, f"{name} {words}"),
    ]


def _written_out(node: Node) -> str:
    return flow_words(Walk("").value(node))


def _all(spot: NodePlace) -> Iterator[NodePlace]:
    yield spot
    for k in range(len(spot.node.items)):
        yield from _all(spot.item(k))
