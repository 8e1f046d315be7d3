"""Rebuilds the pages that follow from the code: `python docs/build.py` (a test sees that it was done).

- commands.md: every verb's --help
- show-file.md and show.schema.json: every key of a show file
"""

import json
import os
from pathlib import Path
from typing import Any

import click
from click.testing import CliRunner

from sequencer.cli import main
from sequencer.show.schema import show_schema

DOCS = Path(__file__).parent


def commands_page() -> str:
    """Every verb's help, as the command line prints it."""
    os.environ.update(COLUMNS="100")
    runner = CliRunner()
    lines = ["# Commands", "", "What `--help` prints; this page is rebuilt from it.", ""]
    context = click.Context(main)
    for verb in ["", *main.list_commands(context)]:
        asked = [verb, "--help"] if verb else ["--help"]
        text = runner.invoke(main, asked, prog_name="sequencer", terminal_width=100).output
        lines += [f"## sequencer {verb}".rstrip(), "", "```text", text.rstrip(), "```", ""]
    return "\n".join(lines)


def show_page(schema: dict[str, Any]) -> str:
    """Every heading of a show file with its keys."""
    lines = [
        "# The show file",
        "",
        "YAML 1.2, written by hand and kept in version control. Times are `bar.beat` counted from 1",
        "(`17.1`, `17.3+1/2`), `m:ss.s` of the track (`1:02.5`), or a section (`verse 2`,",
        "`end of verse 2`). Lengths are metres unless a unit follows (`6 ft`). Places are [X, Y] from",
        "the middle of the downstage edge: X to the audience's right, Y upstage.",
        "Unknown keys are errors. This page is rebuilt from the code.",
        "",
    ]
    lines += _heading("the file", schema)
    for name, record in schema["$defs"].items():
        lines += _heading(name, record)
    return "\n".join(lines)


def _heading(name: str, record: dict[str, Any]) -> list[str]:
    lines = [f"## {name}", "", record.get("description", "").split("\n")[0], ""]
    lines += ["| key | kind | if left out | what it says |", "|---|---|---|---|"]
    required = set(record.get("required", ()))
    for key, value in record.get("properties", {}).items():
        default = "needed" if key in required else _default(value.get("default"))
        lines.append(
            f"| `{key}` | {_kind(value)} | {default} | {_cell(value.get('description', ''))} |"
        )
    return [*lines, ""]


def _default(value: object) -> str:
    if value in (None, [], {}, ""):
        return "–"
    if isinstance(value, dict):
        return "as if empty"
    return (
        f"`{json.dumps(value, ensure_ascii=False)}`" if not isinstance(value, str) else f"`{value}`"
    )


def _kind(value: Any) -> str:  # noqa: PLR0911 (one return a form of the schema)
    if not isinstance(value, dict):
        return "value"
    if "$ref" in value:
        name = value["$ref"].rsplit("/", 1)[-1]
        return f"[{name}](#{name.lower()})"
    if "enum" in value:
        return " · ".join(f"`{word}`" for word in value["enum"])
    if "const" in value:
        return f"`{value['const']}`"
    if "anyOf" in value:
        parts = [_kind(part) for part in value["anyOf"] if part.get("type") != "null"]
        return " or ".join(dict.fromkeys(parts))
    kind = value.get("type")
    if kind == "array":
        if "prefixItems" in value:
            return "[X, Y]"
        return f"list of {_kind(value.get('items', {}))}"
    if kind == "object":
        return f"name: {_kind(value.get('additionalProperties') or {})}"
    if isinstance(kind, list):
        shown = value.get("examples", [""])[0]
        return f"{value.get('description', 'value').split(';')[0]} (`{shown}`)"
    return {"string": "text", "integer": "whole number", "boolean": "true or false"}.get(
        str(kind), str(kind or "value")
    )


def _cell(text: str) -> str:
    return " ".join(text.split()).replace("|", "\\|")


def pages() -> dict[str, str]:
    """Every built page by its file name."""
    schema = show_schema()
    return {
        "commands.md": commands_page(),
        "show-file.md": show_page(schema),
        "show.schema.json": json.dumps(schema, indent=2, ensure_ascii=False) + "\n",
    }


if __name__ == "__main__":
    for name, text in pages().items():
        (DOCS / name).write_text(text, encoding="utf-8", newline="\n")
        print(f"wrote docs/{name}")
