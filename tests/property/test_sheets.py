"""Layout never breaks: any cast, any number of blocks, names and notes of any length, on both papers.

Read back from the PDF with pdfplumber, which knows nothing of how the page was made.
"""

import pypdf
import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.writing import sheets_of

SIZES = st.fixed_dictionaries(
    {
        "performers": st.sampled_from([1, 2, 5, 12]),
        "blocks": st.sampled_from([1, 4, 15]),
        "letters": st.sampled_from([3, 12, 40, 200]),
        "notes": st.sampled_from([0, 80, 2000]),
        "script": st.sampled_from(["Latin", "Hebrew", "none"]),
    }
)


def printed(rounds, folder, sizes, *, paper, kinds, stop=True):
    show = rounds.show(folder, rounds.crowd(**sizes), name="crowd.yaml")
    edition = Edition(staged=show, report=rounds.report(stop=stop))
    chosen = {}
    for sheet in sheets_of(edition):
        kind = sheet.name.split("-")[0]
        if kind in kinds:
            chosen.setdefault(kind, sheet)
    path = folder / "pages.pdf"
    path.write_bytes(document_bytes(list(chosen.values()), edition, paper, "pages"))
    return path


@settings(
    max_examples=6,
    phases=(Phase.explicit, Phase.generate),  # a case takes seconds: shrinking would take minutes
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(SIZES, st.sampled_from(["a4", "letter"]), st.booleans())
def test_no_letter_is_small_outside_or_over_another(rounds, pages, tmp_path, sizes, paper, stop):
    path = printed(
        rounds,
        tmp_path,
        sizes,
        paper=paper,
        kinds={"performer", "safety", "card", "post"},
        stop=stop,
    )

    assert pages.faults(path, pages={0, 1, 2, 4, 6, 9, 12}) == []


@pytest.mark.parametrize(
    ("performers", "letters", "paper"),
    [(40, 40, "a4"), (40, 200, "letter")],
    ids=["long", "longest"],
)
def test_a_cast_of_forty_fits_every_kind_of_sheet(
    rounds, pages, tmp_path, performers, letters, paper
):
    sizes = {"performers": performers, "blocks": 2, "letters": letters, "notes": 400}
    path = printed(
        rounds,
        tmp_path,
        sizes,
        paper=paper,
        kinds={"operator", "fuel", "formation", "card", "night"},
    )

    assert pages.faults(path, pages=set(range(0, 18, 2))) == []


def test_sixty_blocks_flow_over_pages_with_their_head(rounds, pages, tmp_path):
    sizes = {"performers": 1, "blocks": 60, "letters": 12}
    path = printed(rounds, tmp_path, sizes, paper="a4", kinds={"performer"})
    text = [pages.text_of(path, number) for number in range(len(pypdf.PdfReader(path).pages))]
    full = [page for page in text if page.count("antispin-flower") + page.count("static-spin") > 3]

    assert len(full) >= 2
    assert all("what you do" in page for page in full)
    assert pages.faults(path, pages={0, 1, 2}) == []
