"""Figures to files: PNG, SVG or PDF by the ending, whole or not at all, the same bytes each time."""

import io
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.errors import InputError, Place
from sequencer.files import write_bytes

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_ENDINGS = {".png": "png", ".svg": "svg", ".pdf": "pdf"}


def check_kind(path: Path) -> str:
    """Kind of picture by a file's ending.

    Raises
    ------
    InputError
        If it is none.
    """
    kind = _ENDINGS.get(path.suffix.lower())
    if kind is None:
        raise InputError(
            "unknown-picture-kind", Place(str(path)), f"{path.suffix or 'no ending'!r} is no kind of picture",
            "end the name in .png, .svg or .pdf",
        )  # fmt: skip
    return kind


def write_figure(figure: "Figure", path: Path, *, dpi: int = 150) -> None:
    """Write a figure.

    Raises
    ------
    InputError
        If the ending is not known or the folder cannot be written.
    """
    kind = check_kind(path)
    import matplotlib as mpl

    quiet = {"png": {"Software": None}, "svg": {"Date": None}, "pdf": {"CreationDate": None}}[kind]
    made = io.BytesIO()
    with mpl.rc_context({"svg.hashsalt": "sequencer"}):
        figure.savefig(made, format=kind, dpi=dpi, metadata=quiet)
    write_bytes(path, made.getvalue())


def write_pages(figures: "Sequence[Figure]", path: Path, *, dpi: int = 150) -> None:
    """Write figures as the pages of one PDF; other kinds of picture hold one page, so only the first.

    Raises
    ------
    InputError
        If the ending is not known, several pages are to go into a picture, or the folder cannot be
        written.
    """
    if path.suffix.lower() != ".pdf":
        if len(figures) > 1:
            raise InputError(
                "several-pages", Place(str(path)), f"these are {len(figures)} pages, a picture holds one",
                "end the name in .pdf",
            )  # fmt: skip
        write_figure(figures[0], path, dpi=dpi)
        return
    from matplotlib.backends.backend_pdf import PdfPages

    made = io.BytesIO()
    with PdfPages(made, metadata={"CreationDate": None}) as pages:
        for figure in figures:
            pages.savefig(figure, dpi=dpi)
    write_bytes(path, made.getvalue())
