"""Write figures to files: PNG, SVG or PDF by the extension, atomically, the same bytes each time."""

import io
import warnings
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, ParamSpec, TypeVar

from sequencer.errors import InputError, Place
from sequencer.files import write_bytes

if TYPE_CHECKING:
    from matplotlib.figure import Figure

P = ParamSpec("P")
R = TypeVar("R")
_ENDINGS = {".png": "png", ".svg": "svg", ".pdf": "pdf"}


def check_kind(path: Path) -> str:
    """Picture format from a file's extension.

    Raises
    ------
    InputError
        If the extension is not a picture format.
    """
    kind = _ENDINGS.get(path.suffix.lower())
    if kind is None:
        raise InputError(
            "unknown-picture-kind", Place(str(path)), f"{path.suffix or 'no extension'!r} is not a picture format",
            "end the name in .png, .svg or .pdf",
        )  # fmt: skip
    return kind


def plain_text(make: Callable[P, R]) -> Callable[P, R]:
    """Decorate a function that makes figures: a dollar sign in a name is one, where else a formula would begin."""

    @wraps(make)
    def plainly(*given: P.args, **more: P.kwargs) -> R:
        import matplotlib as mpl

        with mpl.rc_context({"text.parse_math": False}):
            return make(*given, **more)

    return plainly


@contextmanager
def _boxes_for_letters() -> Iterator[None]:
    """A letter that the font lacks is drawn as a box; that it is one, everybody sees."""
    with warnings.catch_warnings():
        warnings.filterwarnings("ignore", message="Glyph .* missing from", category=UserWarning)
        yield


def write_figure(figure: "Figure", path: Path, *, dpi: int = 150) -> None:
    """Write a figure.

    Raises
    ------
    InputError
        If the extension is not known or the folder cannot be written.
    """
    kind = check_kind(path)
    import matplotlib as mpl

    quiet = {"png": {"Software": None}, "svg": {"Date": None}, "pdf": {"CreationDate": None}}[kind]
    made = io.BytesIO()
    with mpl.rc_context({"svg.hashsalt": "sequencer"}), _boxes_for_letters():
        figure.savefig(made, format=kind, dpi=dpi, metadata=quiet)
    write_bytes(path, made.getvalue())


def write_pages(figures: "Sequence[Figure]", path: Path, *, dpi: int = 150) -> None:
    """Write figures as the pages of one PDF; other formats hold a single page.

    Raises
    ------
    InputError
        If the extension is not known, there are several pages for a single-page format, or the folder
        cannot be written.
    """
    if path.suffix.lower() != ".pdf":
        if len(figures) > 1:
            raise InputError(
                "several-pages", Place(str(path)), f"there are {len(figures)} pages, and this format holds only one",
                "end the name in .pdf",
            )  # fmt: skip
        write_figure(figures[0], path, dpi=dpi)
        return
    from matplotlib.backends.backend_pdf import PdfPages

    made = io.BytesIO()
    with PdfPages(made, metadata={"CreationDate": None}) as pages, _boxes_for_letters():
        for figure in figures:
            pages.savefig(figure, dpi=dpi)
    write_bytes(path, made.getvalue())
