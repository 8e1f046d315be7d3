"""The timeline as a table: what begins and ends when, in seconds and bar.beat, as CSV and JSON."""

import csv
import io
import json
from pathlib import Path
from typing import Any

from sequencer.files import write_text
from sequencer.outputs.words.block_words import block_words
from sequencer.outputs.words.entrance_words import only_entrances
from sequencer.staging.staged import Staged, Standing

TIMETABLE_COLUMNS = ("start", "end", "from", "until", "kind", "who", "what", "how", "section")


def timetable(staged: Staged) -> list[dict[str, Any]]:
    """Rows by start: sections, formations, blocks, links, stops, accents and burns.

    Returns
    -------
    rows : list of dict
        `start` and `end` in seconds of the track, `from` and `until` as bar.beat.
    """
    rows = []

    def add(start: float, end: float, kind: str, who: str, what: str, how: str) -> None:
        rows.append(
            {
                "start": round(staged.seconds(start), 4),
                "end": round(staged.seconds(end), 4),
                "from": staged.position(start),
                "until": staged.position(end),
                "kind": kind,
                "who": who,
                "what": what,
                "how": how,
                "section": staged.section_at(start),
            }
        )

    beats = staged.tempo.beats_from_seconds
    for section, name in zip(staged.song.sections, staged.song.section_names(), strict=True):
        add(float(beats(section.start)), float(beats(section.end)), "section", "", name, "")
    for standing in staged.standings:
        walk = standing.start - standing.walk
        how = f"walk of {walk:g} beats" if walk > 0 and not only_entrances(standing) else ""
        add(standing.walk, standing.end, "formation", _on_stage(standing), standing.formation, how)
    for each in staged.comings:
        add(each.start, each.end, "entrance" if each.on else "exit", each.who, each.words, "")
    dancers = {dancer.name: dancer for dancer in staged.dancers}
    for block in (*staged.blocks, *staged.stops):
        title, *lines = block_words(block, dancers.get(block.who))
        kind = "link" if block.link else block.stop or "block"
        add(block.start, block.end, kind, block.who, title, "; ".join(lines))
    for accent in staged.accents:
        add(accent.beat, accent.beat, "accent", accent.who, "accent", accent.note)
    for span in staged.lit:
        add(span.start, span.end, "lit", span.who, "lit", "")
    order = {name: i for i, name in enumerate(staged.show.names)}
    rows.sort(key=lambda row: (row["start"], row["kind"], order.get(str(row["who"]), -1)))
    return rows


def _on_stage(standing: Standing) -> str:
    """Whose formation it is: all, or those who are not in the wings."""
    if not standing.waiting:
        return "all"
    return ", ".join(who for who in standing.spots if who not in standing.waiting) or "nobody"


def timetable_csv(staged: Staged) -> str:
    """The table as CSV with a header; text that a spreadsheet would run as a formula is quoted."""
    out = io.StringIO()
    writer = csv.DictWriter(out, TIMETABLE_COLUMNS, lineterminator="\n")
    writer.writeheader()
    for row in timetable(staged):
        words = {key: inert(row[key]) for key in ("who", "what", "how", "section")}
        writer.writerow(row | words)
    return out.getvalue()


def timetable_json(staged: Staged) -> str:
    """The table as JSON, with the show's title and the length of the song."""
    whole = {
        "show": staged.show.title,
        "version": staged.show.version,
        "duration": staged.song.duration,
        "rows": timetable(staged),
    }
    return json.dumps(whole, ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def write_timetable(path: Path, staged: Staged) -> None:
    """Write the table, as CSV or JSON by the file's extension.

    Raises
    ------
    InputError
        If the folder cannot be written.
    """
    as_json = path.suffix.lower() == ".json"
    write_text(path, timetable_json(staged) if as_json else timetable_csv(staged))


def inert(text: str) -> str:
    """Text that no spreadsheet takes for a formula."""
    return "'" + text if text[:1] in {"=", "+", "-", "@", "\t", "\r"} else text
