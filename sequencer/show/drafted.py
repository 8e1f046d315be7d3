"""What `sequencer draft` wrote in a show file: how it is known again, taken out, and written.

Every drafted entry, and every step of a drafted phrase, carries the key `drafted` with a word made from what the entry
says. Whoever changes the entry, or takes the key out, makes it their own: the word no longer matches, and it is never
replaced. `drafted: true` marks an entry as replaceable whatever it says. How it is written: `show.drafted_lines`.
"""

import hashlib
import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

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
    return flow_text({**row, KEY: mark_of(row)})


def flow_text(value: Any) -> str:
    """A value on one line, quoted where it has to be."""
    if isinstance(value, Mapping):
        return (
            "{"
            + ", ".join(f"{flow_text(key)}: {flow_text(own)}" for key, own in value.items())
            + "}"
        )
    if isinstance(value, list | tuple):
        return "[" + ", ".join(map(flow_text, value)) + "]"
    if isinstance(value, str):
        plain = _PLAIN.fullmatch(value) and value.casefold() not in _WORDS
        return value if plain else json.dumps(value, ensure_ascii=False)
    return _scalar(value)
