"""The contact sheet: every pattern for every body, both hands, with what is left or lacks; nothing overlaps."""

from itertools import combinations

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import patterns
from sequencer.outputs.patterns import contact_sheet as sheet
from sequencer.outputs.patterns.contact_sheet import BODIES, contact_sheet, view_of
from sequencer.outputs.patterns.one_pattern import one_pattern
from sequencer.outputs.patterns.pattern_drawing import VIEWS
from tests.repeated import at_length


def of(*names):
    return [patterns()[name] for name in names]


FEW = ("static-spin", "pro-bend-3", "two-beat-weave", "extension-with-antispin", "wheel-spin")


@pytest.fixture(scope="module")
def pages():
    return contact_sheet(of(*FEW))


def words(page):
    return [text.get_text().replace("\n", "") for text in page.texts]


def test_a_row_a_pattern_and_a_column_a_body(pages):
    (page,) = pages
    assert len(page.axes) == len(FEW) * len(BODIES)
    said = words(page)
    assert set(FEW) <= set(said)
    assert [text for text in said if "poi of" in text] == [
        "1.50 mpoi of 45 cm", "1.70 mpoi of 51 cm", "1.95 mpoi of 58 cm",
    ]  # fmt: skip
    told = [text for text in said if " cm from the body" in text or " cm between the props" in text]
    assert len(told) == len(page.axes)


def test_families_stay_together_and_pages_are_even():
    rows = [sheet.Row(family="x", cells=()) for _ in range(67)]
    sizes = [len(page) for page in sheet._pages(rows)]
    assert sum(sizes) == 67
    assert set(sizes) == {5, 6}
    (page,) = contact_sheet(of("static-spin", "two-beat-weave", "extension"), [Body(stature=1.7)])
    titles = [text for text in words(page) if "(" in text]
    assert [title.split()[0] for title in titles] == ["static-spin", "extension", "two-beat-weave"]


def test_each_pattern_is_seen_from_where_it_shows():
    behind, side, above, oblique = VIEWS
    expected = {
        "static-spin": behind, "wheel-spin": side, "overhead-spin": above, "two-beat-weave": oblique,
        "pro-bend-3": behind, "stall": side,
    }  # fmt: skip
    for name, view in expected.items():
        assert view_of([one_pattern(name)])[0] is view, name


def test_one_scale_in_a_row(pages):
    axes = pages[0].axes
    for k in range(0, len(axes), 3):
        spans = [np.ptp(cell.get_xlim()) for cell in axes[k : k + 3]]
        assert np.allclose(spans, spans[0])
        cell = axes[k]
        box = cell.get_position()
        wide, tall = pages[0].get_size_inches() * (box.width, box.height)
        assert np.isclose(np.ptp(cell.get_xlim()) / wide, np.ptp(cell.get_ylim()) / tall)


def test_everything_danced_is_within_its_cell(pages):
    for cell in pages[0].axes:
        low, high = np.array([cell.get_xlim(), cell.get_ylim()]).T
        trails = [c for c in cell.collections if len(c.get_segments()) > 50]
        assert len(trails) == 3  # right, and a left one's edge and core
        for trail in trails:
            points = np.concatenate(trail.get_segments())
            assert np.all((points > low) & (points < high))


def test_the_two_hands_are_told_apart_in_grey(pages):
    """The right hand's trail is dark all through, the left one's white within."""
    grey = np.array([0.299, 0.587, 0.114])
    for cell in pages[0].axes:
        edge, core, solid = sorted(
            (c for c in cell.collections if len(c.get_segments()) > 50),
            key=lambda each: each.get_zorder(),
        )
        tones = [float(each.get_colors()[0][:3] @ grey) for each in (edge, core, solid)]
        assert max(tones[0], tones[2]) < 0.5
        assert tones[1] == pytest.approx(1.0)
        inner, outer = (np.array(each.get_linewidths()) for each in (core, edge))
        assert np.all(outer - inner > 0.8)
        assert np.all(inner > 0.4)


@pytest.mark.parametrize("prop", ["poi", *at_length("staff")])
def test_no_words_lie_on_others(prop, pages):
    made = pages if prop == "poi" else contact_sheet(of("two-beat-weave", "windmill"), prop=prop)
    for page in made:
        page.canvas.draw()
        boxes = [(text.get_text(), text.get_window_extent()) for text in page.texts]
        for (first, a), (second, b) in combinations(boxes, 2):
            assert not a.padded(-1).overlaps(b.padded(-1)), (first, second)
        for text, box in boxes:
            assert page.bbox.x0 <= box.x0, text
            assert box.x1 <= page.bbox.x1, text


def test_what_does_not_fit_is_said(monkeypatch):
    given = {"ahead": -0.3, "across": 0, "up": 0}

    def tight(name, **more):
        return one_pattern(name, given, **more)

    monkeypatch.setattr(sheet, "one_pattern", tight)
    (page,) = contact_sheet(of("static-spin"), [Body(stature=1.7)])
    (text,) = (t for t in page.texts if "does not fit" in t.get_text())
    assert text.get_text().replace("\n", " ").startswith("does not fit: the prop still goes")
    assert text.get_fontweight() == "bold"


def test_progress_is_told():
    told = []
    contact_sheet(of("static-spin"), progress=lambda subject, share: told.append((subject, share)))
    assert told == [("fitting patterns to bodies", 0.0), ("drawing", 0.0)]
