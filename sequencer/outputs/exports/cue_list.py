"""The run cues as a table for the desk: number, department, label, bar, seconds, and time code at each rate (CSV).

Its cues and their numbers are those of the operators' sheet. Source of the columns: common practice.
"""

import csv
import io
from contextlib import suppress
from pathlib import Path

from sequencer.files import write_text
from sequencer.outputs.exports.timetable import inert
from sequencer.outputs.sheets.parts.run_cues import run_cues
from sequencer.staging.staged import Staged
from sequencer.timing.timecode import RATES, frame_at, frame_labelled, timecode_of

_CODES = {f"time code {name}": name for name in RATES}
CUE_COLUMNS = ("cue", "department", "label", "bar", "seconds", *_CODES)


def cue_list_csv(staged: Staged, code_from: str = "00:00:00:00") -> str:
    """The table, with a header; text that a spreadsheet would run as a formula is quoted.

    Parameters
    ----------
    staged : Staged
    code_from : str
        The time code at which the track begins; a rate that has no such label gets no codes.
    """
    starts = {}
    for column, name in _CODES.items():
        with suppress(ValueError):
            starts[column] = frame_labelled(code_from, RATES[name])
    out = io.StringIO()
    writer = csv.DictWriter(out, CUE_COLUMNS, restval="", lineterminator="\n")
    writer.writeheader()
    for number, cue in enumerate(run_cues(staged), start=1):
        codes = {
            column: timecode_of(first + frame_at(cue.seconds, RATES[name]), RATES[name])
            for column, name in _CODES.items()
            if (first := starts.get(column)) is not None
        }
        writer.writerow(
            {"cue": number, "department": _DEPARTMENTS[cue.who], "label": inert(cue.what), "bar": cue.position,
             "seconds": f"{cue.seconds:.3f}", **codes}
        )  # fmt: skip
    return out.getvalue()


_DEPARTMENTS = {"sound": "sound", "light": "light", "both": "sound and light"}


def write_cue_list(path: Path, staged: Staged, code_from: str) -> None:
    """Write the table; see `cue_list_csv`.

    Raises
    ------
    InputError
        If the folder cannot be written.
    """
    write_text(path, cue_list_csv(staged, code_from))
