"""Rebuilds the pages that follow from the code: `python docs/build.py` (a test sees that it was done).

- commands.md: every verb's --help
- show-file.md and show.schema.json: every key of a show file
- sources.md: fuels, rule profiles and every figure's source
- the table of sheets in sheets.md
- the table of operations in operations.md
- the picture of the house in DEVELOPERS.md
"""

import ast
import json
import os
import re
import textwrap
import tomllib
from dataclasses import MISSING, fields
from pathlib import Path
from typing import Any

import click
from click.testing import CliRunner

from sequencer.cli import main
from sequencer.facts.fuels import fuels
from sequencer.facts.heat_criteria import heat_criteria
from sequencer.facts.pace import reactions, speeds
from sequencer.facts.profiles import profile, profile_names
from sequencer.facts.rule_kinds import RULE_KINDS
from sequencer.facts.sources import Range, cited, sources
from sequencer.outputs.sheets.writing import SHEET_KINDS
from sequencer.show.operations.every_operation import OPERATIONS
from sequencer.show.schemas.schema import editor_schema, show_schema

DOCS = Path(__file__).parent
ROOT = DOCS.parent
GUIDE = ROOT / "DEVELOPERS.md"
HOUSE = re.compile(r"(<!-- house[^>]*-->\n)(.*?)(<!-- end of the house -->)", re.DOTALL)

WAYS = re.compile(r"(<!-- operations[^>]*-->\n)(.*?)(<!-- end of the operations -->)", re.DOTALL)
SHEETS = re.compile(r"(<!-- sheets[^>]*-->\n)(.*?)(<!-- end of the sheets -->)", re.DOTALL)


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
        "`end of verse 2`). Lengths are metres unless a unit follows (`6 ft`).",
        "A point on its own is always the decimal point: `1.500 mm` is one and a half millimetres.",
        "A comma may be the decimal mark (`1,8 m`); `1,500 mm`, which may also be 1500 mm, is refused:",
        "write `1500 mm`, `1 500 mm` or `1.5 mm`. Places are [X, Y] from",
        "the middle of the downstage edge: X to the audience's right, Y upstage.",
        "Unknown keys are errors. This page is rebuilt from the code.",
        "",
        *_STOPS.splitlines(),
        "",
    ]
    lines += _heading("the file", schema)
    for name, record in schema["$defs"].items():
        if "properties" in record:
            lines += _heading(name.removesuffix("Record"), record)
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


def _kind(value: Any) -> str:  # noqa: C901, PLR0911 (one return a form of the schema)
    if not isinstance(value, dict):
        return "value"
    if "$ref" in value:
        name = value["$ref"].rsplit("/", 1)[-1]
        shown = name.removesuffix("Record")
        return f"[{shown}](#{shown.lower()})"
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
        if "examples" not in value:
            return "text"
        shown = value.get("examples", [""])[0]
        return f"{value.get('description', 'value').split(';')[0]} (`{shown}`)"
    return {"string": "text", "integer": "whole number", "boolean": "true or false"}.get(
        str(kind), str(kind or "value")
    )


def _cell(text: str) -> str:
    return " ".join(text.split()).replace("|", "\\|")


_STOPS = """\
## Tonight

```yaml
tonight:
  away: [Moss]                                               # their part falls out
  stand_ins:
    - {for: Sable, name: Ash, stature: 1.62 m, birth_year: 1990}   # dances Sable's part
    - {for: Flint, name: Ivy}                                # takes Flint's post
```

For one night only; the show stays as it is written. Everybody who is there keeps their counts, spots and numbers: a canon keeps the place of
who is away, a shape keeps their spot. Whoever watched only them watches everybody. Checks, sheets and the rehearsal page are those of
tonight, with the body of who stands in, and the props of the part if none are given. Whoever takes a part may be somebody of the show whose own
part falls out. Jobs are those of the people who are there: the emergency card is read with their names, and whoever is not there and is named
on it is told. A draft and a mend change the show for everybody, so neither is made while somebody is away or stands in: take
`tonight` out meanwhile.

## Stops and accents

```yaml
timeline:
  - {pattern: extension, beats: 12}
  - {rest: 4}                    # stop for four beats, props hanging
  - {pattern: extension, beats: 10}
  - {link: true, beats: 2}       # two beats to come to rest ...
  - {rest: 4}                    # ... then four beats hanging still
  - {pattern: butterfly, beats: 8}
  - {hold: 4, note: look up}     # hands stay where the butterfly leaves them
  - {accent: 17.1}               # must be hit
```

**`rest: 4`** stops for four beats in all: from the end of the pattern before to the start of the pattern after. The first of
these beats bring the props to hang still, arms down, as before and after the dance; the last start them again; at least one
beat in between they hang still. Both ways are computed and checked as links are, each of at most half of what is left, 2 beats
where there is room (1.5, 2 or ½ times as many where those come out clean). Between two patterns a rest therefore needs
3 beats. A `link` written right before or after it is that way instead: then it takes the link's beats, and the rest hangs
still to its edge (between two links 1 beat is enough). A hole in the timeline beside a rest belongs to it.

**`hold: 4`** stops with the hands where the pattern before leaves them, carried on a little as they brake. A poi or rope dart
hangs straight down from the still hand: a line cannot hold it up. A staff, club, fan or hoop stands still in the direction to
which it turned while the hand braked. Braking and starting take 1 beat each of a poi, ½ beat or 1 beat of a rigid prop, and
part of the hold, unless a link is written there; ½ beat at least is still. A hold follows its pattern, or a link from
it; before the first pattern, or after a hole, there is nothing to hold.

Both take `hands`, `who`, `from`, `note`; `rest: true` with `beats` or `until` says the same. A lit prop that hangs still
burns the hand above it: `hanging-lit` judges rests and holds alike. Without a `rest`, a hole between two patterns of up to 4
beats is one link, and a longer one leads through rest.

**`accent: 17.1`** takes no time and moves nothing. `check` warns (`accent-missed`) where no pattern, no stop and no hand cycle of
two beats or more begins within an eighth of a beat of it. In a phrase the accent is a beat of the phrase, counted from 1
(`accent: 5`), wherever it stands in the list.
"""

_SOURCES_HEAD = """\
# Sources

Every figure that a check or a sheet uses, where it comes from, and how reliable its source is. This page is rebuilt from
the package's data. **The local fire authority decides; nothing here is a permission.** A profile records what one text
says. That a subject is missing from it does not mean that it is allowed: often only the beginning of a page was read.

| mark | meaning |
|---|---|
| read | the figure was read in a copy of the page named |
| read second-hand | read in a mirror, a posting or a library's copy; confirm it with the issuer before quoting it |
| from memory | the source was not looked up; do not quote it to an inspector |
| computed | calculated from figures with marks of their own |
| design choice | our choice, with its reason beside it |
| common practice | how the trade does it; no published source was found |
| as entered | from your own rules file |
"""

_SOURCES_FORMULAS = """\
## Formulas

| what | formula | source |
|---|---|---|
| heat release of a pool | m″ ΔH A (1 − e^(−kβD)), D = √(4A/π) | US NRC, Fire Dynamics Tools (NUREG-1805), sheet 03 [C8; read] |
| mean heat release of a wick | soaked mass × heat of combustion / burning time | conservation of energy |
| flame height at rest | 0.235 Q^0.4 − 1.02 D, Q in kW, never below 0 | Heskestad 1984, Fire Safety Journal 7:25 [HESK; read second-hand] |
| flame of a moving head | height at rest at 1.5 times the mean heat release, × the worst tilt (Thomas 1963), + the dragged base D (1.5 Fr^0.069 − 1) (Moorhouse 1982) | both sources from memory; the factor 1.5 is a design choice; an upper estimate, not a bound |
| radiant flux | χ Q / (4πR²), R from the flame's centre, χ = 0.30 | NUREG-1805 sheet 05.1 [C17–C19; read] |
| time to pain | 92 / q^(4/3), q in kW/m² | HSL/2004/04 [D2; read second-hand] |
| time to burning of skin | 60 × 1.33 q^−1.35 | CIBSE Guide E eq. 10.4 [CIBSE; read second-hand] |
| response | 0.231 s + distance / 1.6 m/s | Woods et al. 2015 [H4; read]; EN ISO 13855:2010 [H1; read] |
| time code | SMPTE ST 12-1; drop-frame skips ;00 and ;01 at each minute but every tenth | [T1–T3; read] |

Pool-fire figures are for pools wider than 0.2 m (Babrauskas 1983). A wick is smaller, upright and moving, so flame sizes
here are orders of magnitude only: watch a real burn and use the larger figure.

## Where texts disagree

| subject | views |
|---|---|
| audience distance | 3.05 m (Kansas City, Portland 2003, Eugene) · 4.57 m (Austin, one San Francisco ruling) · 5 m (Montréal) · 6.10 m + 1.52 m (Grants Pass) |
| ceiling | 3.05 m (Kansas City, Portland, Eugene) · 3.66 m and sprinklers (Seattle) · no roof at all (Montréal) · banned unless agreed (Germany) |
| fuel | Montréal bars flammable liquids; Austin's list allows lighter fluid; New York only sets quantities |
| water | Kansas City and Austin want an open bucket; NFPA 160 wants water 2-A and 10-B:C; an association says that open buckets for dousing props are sometimes harmful |
| blanket or towel | Kansas City wants both; Montréal either |
| extinguisher | 2A-10BC (US) · 3A-10BC (Montréal) · four units (NFPA 160) · foam or wet (Styria) |
| age | 18 · 16 to 17 with consent · 21 (Utah, NFPA 160 operators) |
| flame size | Austin's cap of 0.30 m is below the flame of a normal wick |
| + 5 ft for several performers | once, or for each performer: the text can be read both ways; we read it as once |
| soaking | 10 s until bubbles stop (a maker) · 5 to 10 min (practitioners) |
| autoignition of ethanol | 363 °C (from memory) · 400 °C (IEC) · 422 °C (NTP) |
"""


def sources_page() -> str:
    """Every fuel, rule, figure and source of the package's data."""
    lines = [
        _SOURCES_HEAD,
        "## Fuels",
        "",
        "Your own data sheet takes precedence over this table.",
        "",
    ]
    lines += [
        "| name | also | flash point °C | NFPA 30 | GHS | MJ/kg | source of the flash point |",
        "|---|---|---|---|---|---|---|",
    ]
    for each in fuels().values():
        also = ", ".join(each.aliases)
        if each.refused:
            why = _cell(f"{each.refused.why} [{each.refused.source.key}]")
            lines.append(f"| `{each.name}` | {also} | refused | – | – | – | {why} |")
            continue
        flash = each.flash_point
        lines.append(
            f"| `{each.name}` | {also} | {_span(flash)} | {each.nfpa_class or '–'} | {each.ghs_category or '–'} "
            f"| {_span(each.heat_of_combustion, 1e-6)} | {_cell(flash.citation) if flash else '–'} |"
        )
    lines += ["", "## Rule profiles", ""]
    for name in profile_names():
        found = profile(name)
        whose = "" if found.authority else " (no authority)"
        lines += [
            f"### `{name}`",
            "",
            f"{found.title}{whose}; {found.place}; {found.edition}. {found.note}".strip(),
            "",
        ]
        lines += ["| subject | what it says | source |", "|---|---|---|"]
        for rule in found.rules:
            note = f" ({rule.note})" if rule.note else ""
            lines.append(
                f"| {rule.kind.name} | {_cell(rule.printed + note)} | {_cell(cited(rule.source, rule.mark))} |"
            )
        lines.append("")
    lines += [
        "## Subjects of a rule",
        "",
        "For your own rules file, given in the show under `rules`, `file`: `{rule: SUBJECT, value: …, source: …}`.",
        "",
    ]
    lines += ["| subject | what it is about | compared as |", "|---|---|---|"]
    lines += [f"| `{kind.name}` | {kind.what} | {kind.sort} |" for kind in RULE_KINDS.values()]
    lines += [
        "",
        _SOURCES_FORMULAS,
        "## Heat, pace and reaction",
        "",
        "| figure | value | source |",
        "|---|---|---|",
    ]
    for heat in heat_criteria().values():
        lines.append(
            f"| {heat.effect} | {heat.flux / 1000:.2f} kW/m² | {cited(heat.source, heat.mark)} |"
        )
    lines += [
        f"| {each.what} | {each.speed:.3g} m/s | {each.source.citation} |"
        for each in speeds().values()
    ]
    lines += [
        f"| {each.what} | {each.seconds:.3f} s | {each.source.citation} |"
        for each in reactions().values()
    ]
    lines += [
        "",
        "## List of sources",
        "",
        "Read on 2026-11-25.",
        "",
        "| key | source | where | mark |",
        "|---|---|---|---|",
    ]
    for key, origin in sources().items():
        date = f", {origin.date}" if origin.date else ""
        lines.append(
            f"| {key} | {_cell(origin.title)}{date} | {_cell(origin.where)} | {origin.mark} |"
        )
    return "\n".join(lines) + "\n"


def _span(value: Range | None, scale: float = 1.0) -> str:
    if value is None:
        return "–"
    low = "" if value.low is None else f"{value.low * scale:.4g}"
    high = "" if value.high is None else f"{value.high * scale:.4g}"
    if not low or not high:
        return f"≥ {low}" if low else f"≤ {high}"
    return low if low == high else f"{low} … {high}"


def sheets_page() -> str:
    """The page of the printed sheets with the table of their kinds."""
    rows = ["| file | for whom | what it holds | in the pack |", "|---|---|---|---|"]
    for kind in SHEET_KINDS:
        name = "-".join(filter(None, (kind.name, kind.each)))
        words = (f"`<show>-{name}.pdf`", _cell(kind.reader), _cell(kind.holds))
        rows.append(f"| {' | '.join(words)} | {'yes' if kind.pack else '–'} |")
    lines = "\n".join(rows)
    text = (DOCS / "sheets.md").read_text("utf-8")
    return SHEETS.sub(lambda found: f"{found[1]}{lines}\n{found[3]}", text)


def operations_page() -> str:
    """The page of the operations on a show file with the table of all."""
    rows = ["| in JSON | class | does | fields |", "|---|---|---|---|"]
    for name, kind in OPERATIONS.items():
        what = (kind.__doc__ or "").split("\n\n")[0]
        own = ", ".join(
            f"`{each.name}`" if each.default is MISSING and each.default_factory is MISSING
            else f"`{each.name}`?"
            for each in fields(kind)
        )  # fmt: skip
        rows.append(f"| `{name}` | `{kind.__name__}` | {_cell(' '.join(what.split()))} | {own} |")
    lines = "\n".join(rows) + "\n\nA field with a question mark may be left out."
    text = (DOCS / "operations.md").read_text("utf-8")
    return WAYS.sub(lambda found: f"{found[1]}{lines}\n{found[3]}", text)


def guide_page() -> str:
    """The contributor guide with the house as it stands."""
    lines = "\n".join(_rooms("sequencer", ""))
    return HOUSE.sub(
        lambda found: f"{found[1]}```text\n{lines}\n```\n{found[3]}", GUIDE.read_text("utf-8")
    )


def _rooms(package: str, indent: str) -> list[str]:
    """Packages and loose modules of a package, highest layer first, each with its duty."""
    lines: list[str] = []
    for floor in _floors(package):
        for name in floor:
            path = ROOT / package.replace(".", "/") / name
            inside = path.is_dir()
            source = path / "__init__.py" if inside else path.with_suffix(".py")
            duty = (ast.get_docstring(ast.parse(source.read_text("utf-8"))) or "").split("\n")[0]
            start = f"{indent}{name}{'/' if inside else ''}".ljust(19)
            lines += textwrap.wrap(
                duty, 104, initial_indent=start + " ", subsequent_indent=" " * 20
            )
            if inside and f"{package}.{name}" in _contracts():
                lines += _rooms(f"{package}.{name}", indent + "  ")
    return lines


def _floors(package: str) -> list[list[str]]:
    """Layers from the highest down, as the contract that holds them says."""
    return [re.findall(r"\w+", floor) for floor in _contracts()[package]]


def _contracts() -> dict[str, list[str]]:
    """The layers of each package that has a contract, from pyproject.toml."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    return {
        package: contract["layers"]
        for contract in settings["tool"]["importlinter"]["contracts"]
        if contract["type"] == "layers"
        for package in contract["containers"]
    }


def pages() -> dict[str, str]:
    """Every built page by its file name."""
    schema = show_schema()
    return {
        "commands.md": commands_page(),
        "show-file.md": show_page(schema),
        "sources.md": sources_page(),
        "sheets.md": sheets_page(),
        "operations.md": operations_page(),
        "show.schema.json": json.dumps(editor_schema(), indent=2, ensure_ascii=False) + "\n",
    }


if __name__ == "__main__":
    for name, text in pages().items():
        (DOCS / name).write_text(text, encoding="utf-8", newline="\n")
        print(f"wrote docs/{name}")
    GUIDE.write_text(guide_page(), encoding="utf-8", newline="\n")
    print(f"wrote {GUIDE.name}")
