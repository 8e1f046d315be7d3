"""The page of a plan: every step is a link, what is done is ticked, names are text, and fire comes with its warning."""

import re
from dataclasses import replace
from html.parser import HTMLParser

from sequencer.facts.cautions import page_one
from sequencer.outputs.practice_pages.practice_page import practice_page
from tests.practice_show import edition, run

JOIN = "extension into static-spin"


class Links(HTMLParser):
    """Addresses and words of the links of a page."""

    def __init__(self, text):
        super().__init__()
        self.found, self._open = [], False
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self._open = tag == "a"
        if self._open:
            self.found.append((dict(attributes)["href"], "class" in dict(attributes), ""))

    def handle_data(self, data):
        if self._open:
            self.found[-1] = (*self.found[-1][:2], data)
            self._open = False


def test_every_step_opens_its_loop():
    page = practice_page(edition([run(what=JOIN, speed=0.6, tried=10, clean=8)], who=("Ada",)))
    slow, tempo, lit = [each for each in Links(page).found if "from=6.1&until=8.1" in each[0]]
    assert slow == ("rehearsal.html#from=6.1&until=8.1&speed=60&for=Ada", False, "✓ 60 %, unlit")
    assert tempo == ("rehearsal.html#from=6.1&until=8.1&speed=100&for=Ada", True, "100 %, unlit")
    assert lit[1:] == (False, "100 %, lit")
    assert "<script" not in page


def test_a_lit_show_is_warned_of():
    assert "DO NOT DANCE THIS LIT YET" in practice_page(replace(edition(), checked=False))
    assert page_one() in practice_page(edition())


def test_what_the_show_says_is_text():
    whole = edition()
    show = replace(whole.show, show=whole.show.show.model_copy(update={"title": "<b>&</b>"}))
    page = practice_page(replace(whole, show=show))
    assert "&lt;b&gt;&amp;&lt;/b&gt;" in page
    assert re.search(r"<b>&", page) is None


def test_all_done_is_said():
    whole = edition()
    done = replace(whole.plan, items=(), done=whole.plan.items)
    assert "Nothing is left to practise: every" in practice_page(replace(whole, plan=done))


def test_who_is_behind_is_named():
    page = practice_page(edition([run(what=JOIN, tried=10, clean=10)]))
    assert page.count("Bo is behind: next 60 %, unlit") == 1
    assert "behind" not in practice_page(edition())


def test_what_several_write_by_hand_has_room_for_who_it_was():
    assert "<span>who</span>" in practice_page(edition())
    assert "<span>who</span>" not in practice_page(edition(who=("Ada",)))


def test_text_for_the_show_file_stands_out_and_stays_text():
    runs = [run(who=who, drift=(0.0, -0.5)) for who in ("Ada", "Ada", "Ada", "Bo", "Bo")]
    page = practice_page(edition([*runs, run(what="`<i>`", drift=(0.0, -0.9))]))
    assert re.search(r"<code>drift: \{place: \d+ cm\}</code>", page)
    assert "`" not in page.partition("</style>")[2].replace("`<i>`", "")
    assert "<i>" not in page
