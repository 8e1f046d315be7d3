"""What `compare` does: two show files, and what differs between them."""

import json
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.files import AnyPath
from sequencer.progress import Progress, within
from sequencer.show.text.file_text import disk_text
from sequencer.tasks.kept_reports import AskedReport
from sequencer.tasks.shows import stage_show

if TYPE_CHECKING:
    from sequencer.outputs.compared.comparing import ComparedText
    from sequencer.outputs.compared.finding_changes import CheckedFindings
    from sequencer.outputs.compared.show_changes import ShowComparison
    from sequencer.staging.staged import Staged


def compare_shows(
    old: AnyPath, new: AnyPath, *, progress: Progress | None = None
) -> "ShowComparison":
    """All that differs between two show files.

    Parameters
    ----------
    old, new : path
    progress : callable, optional

    Returns
    -------
    comparison : ShowComparison
        Findings are compared where `check` has looked at both files as they stand.

    Raises
    ------
    InputError
        If a file cannot be read as text.
    """
    from sequencer.outputs.compared.comparing import compared

    sides = [_text_of(Path(each)) for each in (old, new)]
    turns = iter((within(progress, 0.0, 0.5), within(progress, 0.5, 1.0)))
    folders = iter((Path(old), Path(new)))

    def stage(text: str) -> "Staged":
        """The older one first, whose names may have been made those of the newer one."""
        from sequencer.show.reading import show_from_document
        from sequencer.show.text.document import parse_document

        read = show_from_document(parse_document(text, str(next(folders))))
        return stage_show(read, without_track=True, progress=next(turns))

    return compared(sides[0], sides[1], stage, file=Path(new).name)


def _text_of(path: Path) -> "ComparedText":
    from sequencer.outputs.compared.comparing import ComparedText

    said = disk_text(path)
    return ComparedText(
        path.name, said.text, findings=_known_findings(path), file=path.name, marked=said.marked,
    )  # fmt: skip


def _known_findings(path: Path) -> "CheckedFindings | None":
    """What a check of the file found, if it was checked as it stands."""
    from sequencer.errors import InputError
    from sequencer.outputs.compared.finding_changes import CheckedFindings

    try:
        report = AskedReport(path, flown=True).known()
    except InputError:
        return None
    return None if report is None else CheckedFindings(report.findings, report.not_checked)


def comparison_words(comparison: "ShowComparison", *, as_json: bool, width: int = 100) -> str:
    """A comparison as JSON, or as text for people."""
    from sequencer.outputs.compared.told_comparison import comparison_text, comparison_values

    if as_json:
        return json.dumps(comparison_values(comparison), indent=2, ensure_ascii=False)
    return comparison_text(comparison, width=width)
