"""What is written at once is what reportlab writes in its general way, byte for byte."""

import pytest
from reportlab.pdfbase import pdfdoc
from reportlab.pdfgen.canvas import Canvas

from sequencer.outputs.sheets.page.letters import font_name
from sequencer.outputs.sheets.page.quick_pdf import StructElement, TextState, is_quick, text_code


@pytest.mark.parametrize("alternative", ["", "Stage plan (from above)", "Łucja – 火花 \\"])
def test_an_element_of_the_structure(alternative):
    document = Canvas("never-written.pdf", invariant=1)._doc
    parent, page = (
        document.Reference(pdfdoc.PDFDictionary({"Type": pdfdoc.PDFName(name)}))
        for name in ("StructElem", "Page")
    )
    general = {
        "Type": pdfdoc.PDFName("StructElem"),
        "S": pdfdoc.PDFName("TD"),
        "P": parent,
        "Pg": page,
        "K": 12,
    }
    if alternative:
        general["Alt"] = pdfdoc.PDFString(alternative)
    quick = StructElement("/TD", parent, page, 12, alternative)
    assert quick.format(document) == pdfdoc.PDFDictionary(general).format(document)


TEXTS = ["", "Lit (at 3.1) \\ 40 g", "Łucja – עברית", "".join(map(chr, range(0xA1, 0x250)))]


def test_lines_of_text_in_their_order():
    """Letters are numbered as they are first used, so that one line changes what the next becomes."""
    general, quick = (Canvas("never-written.pdf", invariant=1) for _ in range(2))
    for face in ("Regular", "Bold"):
        for canvas in (general, quick):
            canvas.setFont(font_name(face), 9.5)
        for x, text in enumerate([*TEXTS, *reversed(TEXTS)]):
            general.drawString(x / 3, -x, text)
            state = TextState(quick._fontname, quick._fontsize, quick._leading)
            assert text_code(quick._doc, x / 3, -x, text, state) == general._code[-1]


def test_type_that_is_not_embedded_is_left_to_reportlab():
    assert not is_quick("Helvetica")
    assert is_quick(font_name("Italic"))
