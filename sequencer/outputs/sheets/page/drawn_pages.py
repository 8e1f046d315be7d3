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

from sequencer.outputs.sheets.page.quick_pdf import TextState, is_quick, text_code

Drawing: TypeAlias = tuple[Callable[..., Any], tuple[Any, ...], dict[str, Any]]  # as it was called

# What draws nothing, and may be asked at any time.
_ASKED = {"absolutePosition", "beginPath", "getAvailableFonts", "hasForm", "stringWidth"}
# What depends on the rest of the file, such as the letters that it embeds: a page with it is laid out again.
_OF_ONE_FILE = {"beginText", "drawText", "getCurrentPageContent", "getPageNumber"}
_ENDS = {"showPage", "save"}  # of a page
# Whose whole effect, on a page with nothing but these and lines of text, is the code that they write.
_ONLY_CODE = {
    "circle", "clipPath", "drawPath", "line", "lines", "rect", "restoreState", "rotate", "roundRect", "saveState",
    "scale", "setDash", "setFillColor", "setFont", "setLineCap", "setLineJoin", "setLineWidth", "setStrokeColor",
    "translate",
}  # fmt: skip
_MOVES = {"rotate", "scale", "translate"}
_OF_THE_FILE = (" gs", " scn", " SCN")  # ends of code that names something of its file
# Called again: they enter something into the document's structure or outline, or turn the page.
_ENTERED = {"begin_artifact", "begin_tag", "end_tag", "mark", "setPageRotation"}


@dataclass(slots=True)
class DrawnPage:
    """What was drawn on one page: as calls, and, where nothing speaks against it, as code with lines of text."""

    calls: list[Drawing] = field(default_factory=list)
    code: list[str | Drawing] | None = field(default_factory=list)

    def note(self, canvas: Any, name: str, drawing: Drawing, lines: list[str], matrix: Any) -> None:
        """Note a call that wrote these lines, where the canvas stood at `matrix`."""
        self.calls.append(drawing)
        if self.code is None:
            return
        method, given, named = drawing
        if name in _ONLY_CODE and not any(line.endswith(_OF_THE_FILE) for line in lines):
            if name in _MOVES and not lines and self.code:  # joined with the move before it
                self.code[-1] = canvas._code[-1]  # noqa: SLF001
            self.code += lines
            if (name == "setFont" and lines) or (name in _MOVES and not self.code):
                self.code = (
                    None  # the name that a type has in its file; a move joined with the head's
                )
        elif name == "drawString" and len(given) == 3 and not named and is_quick(canvas._fontname):  # noqa: SLF001 - no public name
            state = TextState(canvas._fontname, canvas._fontsize, canvas._leading)  # noqa: SLF001
            self.code.append((_set_text, (*given, state), {}))
        elif name in _ENTERED:
            self.code.append((_entered, (matrix, method, given, named), {}))
        else:
            self.code = None

    def draw(self, canvas: Any) -> None:
        """Draw the page again."""
        if self.code is None:
            for method, given, named in self.calls:
                method(canvas, *given, **named)
            return
        for part in self.code:
            if isinstance(part, str):
                canvas._code.append(part)  # noqa: SLF001 - as its own methods do
            else:
                method, given, named = part
                method(canvas, *given, **named)


def _set_text(canvas: Any, x: float, y: float, text: str, state: TextState) -> None:
    canvas._code.append(text_code(canvas._doc, x, y, text, state))  # noqa: SLF001


def _entered(
    canvas: Any, matrix: Any, method: Callable[..., Any], given: Any, named: dict[str, Any]
) -> None:
    """Call a method where the canvas stood then."""
    before, canvas._currentMatrix = canvas._currentMatrix, matrix  # noqa: SLF001
    method(canvas, *given, **named)
    canvas._currentMatrix = before  # noqa: SLF001


@dataclass(slots=True)
class DrawnPages:
    """What was drawn on the pages of each sheet, by the sheet's name."""

    pages: dict[str, list[DrawnPage]] = field(default_factory=dict)
    single: set[str] = field(default_factory=set)  # sheets that cannot be drawn again from it

    def knows(self, name: str) -> bool:
        """Whether the sheet of that name can be drawn again."""
        return name in self.pages and name not in self.single

    def story(self, name: str) -> list[Flowable]:
        """The sheet's pages."""
        story: list[Flowable] = []
        for number, page in enumerate(self.pages[name]):
            story += [PageBreak()] if number else []
            story.append(_RedrawnPage(page))
        return story


class _RedrawnPage(Flowable):  # type: ignore[misc]
    """Everything between head and foot of one page, from where the canvas stands."""

    def __init__(self, page: DrawnPage) -> None:
        super().__init__()
        self._page = page

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """Without any size: it has its places already."""
        return 0.0, 0.0

    def drawOn(self, canvas: Any, _x: float, _y: float, _sW: float = 0) -> None:  # noqa: N802 - reportlab's names
        """Draw it where it was drawn before."""
        self._page.draw(canvas)


def noting(kind: type[Canvas]) -> Any:
    """A class of canvases that note what they are asked to draw, in `drawn` under `begin_noting`'s name."""

    class Noting(kind):  # type: ignore[misc]
        drawn: DrawnPages
        _page: DrawnPage | None = None
        _sheet = ""
        _inside = False
        _written = 0  # lines of the page's code that come from what was noted

        def begin_noting(self, sheet: str) -> None:
            """From here on, what is drawn on this page is content of the sheet."""
            self._page, self._sheet, self._written = DrawnPage(), sheet, len(self._code)
            self.drawn.pages.setdefault(sheet, []).append(self._page)

    for name in dir(kind):
        method = getattr(kind, name)
        if callable(method) and not (
            name.startswith("_") or name in _ASKED or name in vars(Noting)
        ):
            setattr(Noting, name, _noted(name, method))
    return Noting


def _noted(name: str, method: Callable[..., Any]) -> Callable[..., Any]:
    single, ends = name in _OF_ONE_FILE, name in _ENDS

    @wraps(method)
    def noted(canvas: Any, *given: Any, **named: Any) -> Any:
        page = canvas._page  # noqa: SLF001 - this is its method
        if page is None or canvas._inside:  # noqa: SLF001
            return method(canvas, *given, **named)
        before = len(canvas._code)  # noqa: SLF001
        if single or canvas._written != before:  # noqa: SLF001 - written past its methods
            canvas.drawn.single.add(canvas._sheet)  # noqa: SLF001
        matrix = canvas._currentMatrix  # noqa: SLF001
        canvas._inside = True  # noqa: SLF001
        try:
            if ends:
                canvas._page = None  # noqa: SLF001
            result = method(canvas, *given, **named)
        finally:
            canvas._inside = False  # noqa: SLF001
            canvas._written = len(canvas._code)  # noqa: SLF001
        if not ends:
            page.note(canvas, name, (method, given, named), canvas._code[before:], matrix)  # noqa: SLF001
        return result

    return noted
