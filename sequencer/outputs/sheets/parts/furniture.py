"""Pages and what every page carries: running head, warning bar, foot, outline, structure, metadata.

Lengths in points from the lower left corner. The same show gives the same bytes: the clock is never read.
"""

import calendar
import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from reportlab import rl_config
from reportlab.lib.colors import Color
from reportlab.pdfbase import pdfdoc
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import (
    BaseDocTemplate,
    Flowable,
    Frame,
    NextPageTemplate,
    PageBreak,
    PageTemplate,
)

from sequencer.facts.cautions import cautions, page_one
from sequencer.outputs.sheets.page.archive import make_archival
from sequencer.outputs.sheets.page.drawn_pages import DrawnPages, noting
from sequencer.outputs.sheets.page.letters import clipped, font_name, printable, width
from sequencer.outputs.sheets.page.marking import lines_of
from sequencer.outputs.sheets.page.paper import (
    DARK_SIZE,
    HAIR,
    HEADER,
    INK,
    LARGE_FOOT,
    NARROW_MARGIN,
    PAGE_MARGIN,
    PAPER,
    RULE,
    SMALL,
    SOFT,
    TEXT,
    Page,
    PaperName,
)
from sequencer.outputs.sheets.page.prose import TextSpan, mark, one_line, outlined
from sequencer.outputs.sheets.page.quick_pdf import (
    StructElement,
    TextState,
    is_quick,
    text_code,
)
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.version import __version__

BANNER = 25.0  # height of the warning bar


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One print-out: the pages for one reader."""

    name: str  # part of the file name
    title: str  # in the running head and the outline
    story: Callable[[Page], list[Flowable]]
    wide: bool = False
    plain: bool = False  # uses the whole paper, without head and foot
    large: bool = False  # narrow margins, no head, and a foot in large type
    narrow: bool = False  # narrow margins left and right
    who: str | None = None  # the person who carries it, where it is one person's


class SheetCanvas(Canvas):  # type: ignore[misc]
    """A canvas that numbers each sheet's pages and keeps the document's structure."""

    def __init__(self, *args: Any, edition: Edition, **kwargs: Any) -> None:
        super().__init__(
            *args,
            **kwargs,
            invariant=1,
            pageCompression=1,
            initialFontName=font_name("Regular"),
            lang="en",
            pdfVersion=(1, 7),
        )
        self.totals: dict[str, tuple[int, float]] = {}  # pages of a sheet, and the size of type
        self._tags: list[
            list[tuple[str, str]]
        ] = []  # per page: role and alternative text, by number
        self._page_tags: list[tuple[str, str]] = []
        self._stamp(edition.printed_for)

    drawn = DrawnPages()  # of a canvas that notes what it draws

    def begin_noting(self, sheet: str) -> None:
        """The page's head and foot are drawn; see `drawn_pages.noting`."""

    def _stamp(self, date: dt.date | None) -> None:
        stamp = self._doc._timeStamp  # noqa: SLF001 - reportlab has no public way to set it
        moment = dt.datetime.combine(date or dt.date(2000, 1, 1), dt.time(), tzinfo=dt.UTC)
        self.moment = moment
        stamp.lt = moment.timetuple()
        stamp.t = calendar.timegm(stamp.lt)
        stamp.YMDhms = tuple(stamp.lt)[:6]
        stamp.dhh = stamp.dmm = 0

    def mark(self, title: str, level: int, *, top: float) -> None:
        """Add an entry to the document's outline; see `prose.mark`."""
        outlined(self, title, level, top=top)

    def drawString(self, x: float, y: float, text: str, *given: Any, **named: Any) -> None:  # noqa: N802 - reportlab's name
        """Set one line of text."""
        if given or named or not (self.bottomup and is_quick(self._fontname)):
            super().drawString(x, y, text, *given, **named)
            return
        state = TextState(self._fontname, self._fontsize, self._leading)
        self._code.append(text_code(self._doc, x, y, text, state))

    def begin_tag(self, role: str, alternative: str = "") -> None:
        """Begin one element of the structure."""
        self._code.append(f"/{role} <</MCID {len(self._page_tags)}>> BDC")
        self._page_tags.append((role, alternative))

    def begin_artifact(self) -> None:
        """Begin page furniture, which is not content."""
        self._code.append("/Artifact BMC")

    def end_tag(self) -> None:
        """End what `begin_tag` or `begin_artifact` began."""
        self._code.append("EMC")

    def showPage(self) -> None:  # noqa: N802 - reportlab's name
        """Close the page and enter it in the structure."""
        number = len(self._doc.Pages.pages)
        super().showPage()
        page = self._doc.Pages.pages[-1]
        page.__NoDefault__ = [*page.__NoDefault__, "StructParents", "Tabs"]
        page.StructParents = number
        page.Tabs = pdfdoc.PDFName("S")
        self._tags.append(self._page_tags)
        self._page_tags = []

    def save(self) -> None:
        """Fill in the page totals and the structure, and write the file."""
        if len(self._code):
            self.showPage()
        for name, (total, size) in self.totals.items():
            self.beginForm(name, 0, -size / 3, 4.5 * size, 1.4 * size)
            self.setFillColor(SOFT)
            self.setFont(font_name("Bold"), size)
            self.drawString(0, 0, str(total))
            self.endForm()
        self._structure()
        make_archival(self._doc, self.moment)
        super().save()

    def _structure(self) -> None:
        doc = self._doc
        root = pdfdoc.PDFDictionary({"Type": pdfdoc.PDFName("StructTreeRoot")})
        root_ref = doc.Reference(root)
        whole = pdfdoc.PDFDictionary(
            {
                "Type": pdfdoc.PDFName("StructElem"),
                "S": pdfdoc.PDFName("Document"),
                "P": root_ref,
            }
        )
        whole_ref = doc.Reference(whole)
        kids, by_page = [], []
        for number, tags in enumerate(self._tags):
            page = doc.Reference(doc.Pages.pages[number])
            elements = []
            for index, (role, alternative) in enumerate(tags):
                element = StructElement(f"/{role}", whole_ref, page, index, alternative)
                elements.append(doc.Reference(element))
            kids += elements
            by_page += [number, pdfdoc.PDFArray(elements)]
        whole.dict["K"] = pdfdoc.PDFArray(kids)
        root.dict["K"] = pdfdoc.PDFArray([whole_ref])
        root.dict["ParentTree"] = doc.Reference(
            pdfdoc.PDFDictionary({"Nums": pdfdoc.PDFArray(by_page)})
        )
        root.dict["ParentTreeNextKey"] = len(self._tags)
        doc.Catalog.StructTreeRoot = root_ref
        doc.Catalog.MarkInfo = doc.Reference(pdfdoc.PDFDictionary({"Marked": "true"}))


_NotingCanvas = noting(SheetCanvas)


def document_bytes(
    sheets: Sequence[Sheet],
    edition: Edition,
    paper: PaperName,
    title: str,
    drawn: DrawnPages | None = None,
    begun: Callable[[int], None] | None = None,
) -> bytes:
    """One PDF of several sheets, each with separate page numbers.

    Parameters
    ----------
    sheets : sequence of Sheet
    edition : Edition
    paper : {"a4", "letter"}
    title : str
    drawn : DrawnPages, optional
        Sheets in it are drawn from there, on the same paper; if all are new, they are entered.
    begun : callable, optional
        Called with the number of each sheet when its first page begins, from 0.

    Raises
    ------
    ValueError
        If the paper is not known.
    """
    rl_config.useA85 = (
        0  # text-safe streams are a quarter larger, and no current printer needs them
    )
    out = BytesIO()
    pages = [_page(sheet, edition, paper) for sheet in sheets]
    counts = [0] * len(sheets)
    templates, story = [], []
    for index, (sheet, page) in enumerate(zip(sheets, pages, strict=True)):
        area = (page.left, page.bottom, page.inner, page.tall)
        if sheet.plain:
            area = (0.0, 0.0, page.width, page.height)
        frame = Frame(*area, 0, 0, 0, 0, id="frame")
        templates.append(
            PageTemplate(
                id=str(index),
                frames=[frame],
                pagesize=(page.width, page.height),
                onPage=_head_and_foot(index, sheet, page, edition, counts, begun),
            )
        )
        if index:
            story += [NextPageTemplate(str(index)), PageBreak()]
        if drawn is not None and drawn.knows(sheet.name):
            story += drawn.story(sheet.name)
        else:
            story += with_caution(sheet, sheet.story(page), edition)
    document = BaseDocTemplate(
        out,
        pageTemplates=templates,
        pagesize=(pages[0].width, pages[0].height),
        title=title,
        author=f"{edition.title}, {edition.issue}",
        subject=f"Track {edition.track}, sha256 {edition.staged.song.sha256}",
        keywords="run sheet, fire, show",
        creator=f"sequencer {__version__}",
        producer="reportlab",
    )

    def canvas(*args: Any, **kwargs: Any) -> SheetCanvas:
        for known in (
            "invariant",
            "pageCompression",
            "initialFontName",
            "lang",
            "pdfVersion",
        ):
            kwargs.pop(known, None)
        made: SheetCanvas
        if drawn is not None and not drawn.pages:
            made = _NotingCanvas(*args, edition=edition, **kwargs)
            made.drawn = drawn
        else:
            made = SheetCanvas(*args, edition=edition, **kwargs)
        made.showOutline()
        return made

    document.build(story, canvasmaker=canvas)
    return out.getvalue()


def _page(sheet: Sheet, edition: Edition, paper: PaperName) -> Page:
    """The paper of a sheet; in large type, the bar also says DRAFT."""
    marked = edition.banner or (sheet.large and edition.is_draft)
    banner = BANNER if marked else 0.0
    return Page.of(paper, wide=sheet.wide, banner=banner, large=sheet.large, narrow=sheet.narrow)


def with_caution(sheet: Sheet, story: list[Flowable], edition: Edition) -> list[Flowable]:
    """A sheet's story, after checking that it carries the cautions every print-out of a lit show must have.

    Raises
    ------
    ValueError
        If it does not.
    """
    if not edition.is_lit:
        return story
    text = " ".join(lines_of(story))
    if page_one() not in text or not any(words in text for words in first_caution()):
        raise ValueError(f"the sheet {sheet.name!r} leaves out the cautions of a lit show")
    return story


def first_caution() -> tuple[str, str]:
    """The caution that every reader gets, in short and in full."""
    first = next(each for each in cautions() if each.key == "can-kill")
    return first.short, first.text


def _head_and_foot(
    index: int,
    sheet: Sheet,
    page: Page,
    edition: Edition,
    counts: list[int],
    begun: Callable[[int], None] | None,
) -> Callable[[SheetCanvas, BaseDocTemplate], None]:
    def draw(canvas: SheetCanvas, _document: BaseDocTemplate) -> None:
        counts[index] += 1
        if counts[index] == 1 and begun is not None:
            begun(index)
        if counts[index] == 1:
            mark(canvas, sheet.title, 0, top=page.top)
        if not sheet.plain:
            size = DARK_SIZE if sheet.large else SMALL
            canvas.totals[f"total-{index}"] = (counts[index], size)
            canvas.saveState()
            canvas.begin_artifact()
            if sheet.large:
                _large_foot(canvas, page, edition, counts[index], f"total-{index}")
            else:
                _head(canvas, sheet, page, edition)
                if page.banner:
                    _bar(canvas, page, edition.banner)
                _foot(canvas, page, edition, counts[index], f"total-{index}")
            canvas.end_tag()
            canvas.restoreState()
        canvas.begin_noting(sheet.name)

    return draw


DRAFT_WORDS = "DRAFT – no permit that counts"


def _large_foot(canvas: SheetCanvas, page: Page, edition: Edition, number: int, total: str) -> None:
    """Which page of which version to which cut it is, in large type; above it, what speaks against using it."""
    base, right = NARROW_MARGIN + 7.0, page.width - page.left
    if page.banner:
        words = " · ".join(filter(None, (DRAFT_WORDS if edition.is_draft else "", edition.banner)))
        low, tall = NARROW_MARGIN + LARGE_FOOT - 2.0, page.banner - 2.0
        canvas.setFillColor(INK)
        canvas.rect(page.left, low, page.inner, tall, stroke=0, fill=1)
        edge = 34.0 if edition.banner else 0.0
        for x in (page.left, right - edge) if edge else ():
            stripes(canvas, x, low, edge, tall)
        one_line(
            canvas,
            page.width / 2,
            low + tall / 2 - DARK_SIZE * 0.35,
            TextSpan(words, "Bold", DARK_SIZE, PAPER),
            room=page.inner - 2 * edge - 10,
            align="centre",
        )
    words = f"page {number} of"
    one_line(canvas, page.left, base, TextSpan(words, "Bold", DARK_SIZE, SOFT))
    at = page.left + width(words, "Bold") * DARK_SIZE + 0.35 * DARK_SIZE
    canvas.saveState()
    canvas.translate(at, base)
    canvas.doForm(total)
    canvas.restoreState()
    at += 3 * DARK_SIZE
    tail = f" · sha256 {edition.track_hash}"
    long = width(tail, "Regular") * DARK_SIZE
    one_line(canvas, right, base, TextSpan(tail, "Regular", DARK_SIZE, SOFT), align="right")
    track = min(width(printable(edition.track), "Bold") * DARK_SIZE + 0.1, 0.22 * page.inner)
    one_line(
        canvas,
        right - long,
        base,
        TextSpan(edition.track, "Bold", DARK_SIZE, SOFT),
        room=track,
        align="right",
    )
    issue = f" · {edition.issue}"
    room = right - long - track - at - DARK_SIZE
    issue_room = min(width(printable(issue), "Regular") * DARK_SIZE + 0.1, 0.75 * room)
    title = TextSpan(edition.title, "Bold", DARK_SIZE, INK)
    used = one_line(canvas, at, base, title, room=room - issue_room)
    one_line(canvas, at + used, base, TextSpan(issue, "Regular", DARK_SIZE, SOFT), room=issue_room)


def _head(canvas: SheetCanvas, sheet: Sheet, page: Page, edition: Edition) -> None:
    base = page.height - PAGE_MARGIN * 0.6 - HEADER * 0.52
    right = page.width - page.left
    room = page.inner
    if edition.is_draft:
        words = DRAFT_WORDS
        long = width(words, "Bold") * SMALL + 10
        chip(canvas, right - long, base - 4.5, long, 15.0, words)
        right -= long + 8
        room -= long + 8
    issue = edition.issue
    long = width(printable(issue), "Regular") * SMALL
    issue_room = min(long, 0.36 * room)
    one_line(
        canvas,
        right,
        base,
        TextSpan(issue, "Regular", SMALL, SOFT),
        room=issue_room + 0.01,
        align="right",
    )
    room -= issue_room + 10
    name = clipped(edition.title, "Bold", TEXT, room * 0.55)
    used = one_line(canvas, page.left, base, TextSpan(name, "Bold", TEXT, INK), room=room * 0.56)
    one_line(
        canvas,
        page.left + used + 8,
        base,
        TextSpan(sheet.title, "Regular", SMALL, SOFT),
        room=room - used - 8,
    )
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.2)
    canvas.line(page.left, base - 8, page.width - page.left, base - 8)


def _bar(canvas: SheetCanvas, page: Page, words: str) -> None:
    low = page.top + 9
    tall = page.banner - 9
    canvas.setFillColor(INK)
    canvas.rect(page.left, low, page.inner, tall, stroke=0, fill=1)
    stripes(canvas, page.left, low, 34, tall)
    stripes(canvas, page.width - page.left - 34, low, 34, tall)
    one_line(
        canvas,
        page.width / 2,
        low + tall / 2 - 4,
        TextSpan(words, "Bold", 11.0, PAPER),
        room=page.inner - 84,
        align="centre",
    )


def _foot(canvas: SheetCanvas, page: Page, edition: Edition, number: int, total: str) -> None:
    base = PAGE_MARGIN * 0.6 + 4
    canvas.setStrokeColor(RULE)
    canvas.setLineWidth(HAIR)
    canvas.line(page.left, base + 13, page.width - page.left, base + 13)
    words = f"page {number} of"
    one_line(canvas, page.left, base, TextSpan(words, "Bold", SMALL, SOFT))
    canvas.saveState()
    canvas.translate(page.left + width(words, "Bold") * SMALL + 3.4, base)
    canvas.doForm(total)
    canvas.restoreState()
    tail = f" · sha256 {edition.track_hash}"
    long = width(tail, "Regular") * SMALL
    right = page.width - page.left
    one_line(canvas, right, base, TextSpan(tail, "Regular", SMALL, SOFT), align="right")
    one_line(
        canvas,
        right - long,
        base,
        TextSpan(edition.track, "Bold", SMALL, SOFT),
        room=page.inner * 0.5,
        align="right",
    )


def chip(
    canvas: Canvas, x: float, y: float, wide: float, tall: float, words: str, *, colour: Color = INK
) -> None:
    """White words on a dark, rounded field."""
    canvas.setFillColor(colour)
    canvas.roundRect(x, y, wide, tall, 2.5, stroke=0, fill=1)
    one_line(
        canvas,
        x + wide / 2,
        y + tall / 2 - 3.2,
        TextSpan(words, "Bold", SMALL, PAPER),
        room=wide,
        align="centre",
    )


def stripes(canvas: Canvas, x: float, y: float, wide: float, tall: float) -> None:
    """Slanted bars, dark on white: a warning that does not rely on colour."""
    canvas.saveState()
    clip = canvas.beginPath()
    clip.rect(x, y, wide, tall)
    canvas.clipPath(clip, stroke=0, fill=0)
    canvas.setFillColor(PAPER)
    canvas.rect(x, y, wide, tall, stroke=0, fill=1)
    canvas.setFillColor(INK)
    step = 10.0
    at = x - tall
    while at < x + wide:
        bar = canvas.beginPath()
        bar.moveTo(at, y)
        bar.lineTo(at + step / 2, y)
        bar.lineTo(at + step / 2 + tall, y + tall)
        bar.lineTo(at + tall, y + tall)
        bar.close()
        canvas.drawPath(bar, stroke=0, fill=1)
        at += step
    canvas.restoreState()
