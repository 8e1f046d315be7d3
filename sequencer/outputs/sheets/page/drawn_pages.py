"""Pages drawn once for two files: what a canvas was asked to do on each page, so that another can do the same.

Layout and the search for free room are not repeated; letters are still encoded anew, since each file embeds
the letters that it needs.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import wraps
from typing import Any, TypeAlias

from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable, PageBreak

Drawing: TypeAlias = tuple[Callable[..., Any], tuple[Any, ...], dict[str, Any]]  # as it was called

# What draws nothing, and may be asked at any time.
_ASKED = {"absolutePosition", "beginPath", "getAvailableFonts", "hasForm", "stringWidth"}
# What depends on the rest of the file, such as the letters that it embeds: a page with it is laid out again.
_OF_ONE_FILE = {"beginText", "drawText", "getCurrentPageContent", "getPageNumber"}
_ENDS = {"showPage", "save"}  # of a page


@dataclass(slots=True)
class DrawnPages:
    """What was drawn on the pages of each sheet, by the sheet's name."""

    pages: dict[str, list[list[Drawing]]] = field(default_factory=dict)
    single: set[str] = field(default_factory=set)  # sheets that cannot be drawn again from it

    def knows(self, name: str) -> bool:
        """Whether the sheet of that name can be drawn again."""
        return name in self.pages and name not in self.single

    def story(self, name: str) -> list[Flowable]:
        """The sheet's pages."""
        story: list[Flowable] = []
        for number, drawings in enumerate(self.pages[name]):
            story += [PageBreak()] if number else []
            story.append(_RedrawnPage(drawings))
        return story


class _RedrawnPage(Flowable):  # type: ignore[misc]
    """Everything between head and foot of one page, from where the canvas stands."""

    def __init__(self, drawings: list[Drawing]) -> None:
        super().__init__()
        self._drawings = drawings

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """Without any size: it has its places already."""
        return 0.0, 0.0

    def drawOn(self, canvas: Any, _x: float, _y: float, _sW: float = 0) -> None:  # noqa: N802 - reportlab's names
        """Draw it where it was drawn before."""
        for method, given, named in self._drawings:
            method(canvas, *given, **named)


def noting(kind: type[Canvas]) -> Any:
    """A class of canvases that note what they are asked to draw, in `drawn` under `begin_noting`'s name."""

    class Noting(kind):  # type: ignore[misc]
        drawn: DrawnPages
        _page: list[Drawing] | None = None
        _sheet = ""
        _inside = False
        _written = 0  # lines of the page's code that come from what was noted

        def begin_noting(self, sheet: str) -> None:
            """From here on, what is drawn on this page is content of the sheet."""
            self._page, self._sheet, self._written = [], sheet, len(self._code)
            self.drawn.pages.setdefault(sheet, []).append(self._page)

    for name in dir(kind):
        method = getattr(kind, name)
        if callable(method) and not (
            name.startswith("_") or name in _ASKED or name in vars(Noting)
        ):
            setattr(Noting, name, _noted(name, method))
    return Noting


def _noted(name: str, method: Callable[..., Any]) -> Callable[..., Any]:
    @wraps(method)
    def noted(canvas: Any, *given: Any, **named: Any) -> Any:
        page = canvas._page  # noqa: SLF001 - this is its method
        if page is None or canvas._inside:  # noqa: SLF001
            return method(canvas, *given, **named)
        if name in _OF_ONE_FILE or canvas._written != len(canvas._code):  # noqa: SLF001 - written past its methods
            canvas.drawn.single.add(canvas._sheet)  # noqa: SLF001
        canvas._inside = True  # noqa: SLF001
        try:
            if name in _ENDS:
                canvas._page = None  # noqa: SLF001
            else:
                page.append((method, given, named))
            return method(canvas, *given, **named)
        finally:
            canvas._inside = False  # noqa: SLF001
            canvas._written = len(canvas._code)  # noqa: SLF001

    return noted
