"""A pupil's booklet: what comes first is learned first, the steps are those of the pattern, and everybody gets three pages."""

import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg

from sequencer.motion.patterns.library import patterns
from sequencer.outputs.patterns.booklet import faults_of, practice_of, prerequisites, pupil_booklet
from sequencer.outputs.patterns.one_pattern import one_pattern
from tests.repeated import at_length


def test_nothing_is_to_be_learned_before_what_it_needs():
    book = patterns()
    for name in book:
        order = [each.name for each in prerequisites(name)]
        assert len(order) == len(set(order))
        assert set(book[name].needs) & set(book) <= set(order)
        for k, each in enumerate(order):
            assert set(book[each].needs) & set(book) <= set(order[:k])


def test_only_an_odd_pro_or_anti_bend_warns_of_the_turned_round():
    """docs/motion.md, section 3.4: odd pro- and anti-bends come back reversed, iso-bends and even ones do not."""
    warned = {
        name: any("odd number of lobes" in each for each in faults_of(one_pattern(name)))
        for name in ("pro-bend-3", "anti-bend-5", "pro-bend-4", "iso-bend-3", "antispin-flower-3")
    }
    assert [name for name, said in warned.items() if said] == ["pro-bend-3", "anti-bend-5"]


def test_practice_goes_from_the_hand_alone_to_the_music_and_is_unlit_until_sure():
    said = practice_of(one_pattern("pro-bend-3"))
    assert "6, 4, 2, 12, 10, 8 o’clock" in said[0]
    assert "iso-bend-3" in said[-2]
    assert said[-1].startswith("To the music")
    assert "Lit only once" in said[-1]


@pytest.mark.parametrize("name", ["pro-bend-3", *at_length("isolation-with-antispin")])
def test_the_pages_hold_their_words(name):
    """All type is at least 9 pt, and no two texts of a page lie over one another or leave it."""
    pages = pupil_booklet(one_pattern(name))
    assert len(pages) == 3
    for page in pages:
        canvas = FigureCanvasAgg(page)
        canvas.draw()
        boxes = [text.get_window_extent() for text in page.texts]
        assert min(text.get_fontsize() for text in page.texts) >= 9
        for k, one in enumerate(boxes):
            assert 0 < one.x0 < one.x1 < page.bbox.width, page.texts[k].get_text()
            for other in boxes[k + 1 :]:
                wide = min(one.x1, other.x1) - max(one.x0, other.x0)
                tall = min(one.y1, other.y1) - max(one.y0, other.y0)
                assert wide < 2 or tall < 3, page.texts[k].get_text()
