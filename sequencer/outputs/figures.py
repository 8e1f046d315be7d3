"""Figures to files: PNG, SVG or PDF by the ending, whole or not at all, the same bytes each time."""

from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.errors import InputError, Place
from sequencer.files import replacing

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_ENDINGS = {".png": "png", ".svg": "svg", ".pdf": "pdf"}


def write_figure(figure: "Figure", path: Path, *, dpi: int = 150) -> None:
    """Write a figure.

    Raises
    ------
    InputError
        If the ending is not known or the folder cannot be written.
    """
    kind = _ENDINGS.get(path.suffix.lower())
    if kind is None:
        raise InputError(
            "unknown-picture-kind", Place(str(path)), f"{path.suffix or 'no ending'!r} is no kind of picture",
            "end the name in .png, .svg or .pdf",
        )  # fmt: skip
    import matplotlib as mpl

    quiet = {"png": {"Software": None}, "svg": {"Date": None}, "pdf": {"CreationDate": None}}[kind]
    with mpl.rc_context({"svg.hashsalt": "sequencer"}), replacing(path) as scratch:
        figure.savefig(scratch, format=kind, dpi=dpi, metadata=quiet)
