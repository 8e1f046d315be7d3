"""Formations for phones: one small page without a script, with everybody's place, walk and marks."""

import re
from html.parser import HTMLParser

from sequencer.outputs.sheets import write_sheets
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.phone_page import phone_page


class Read(HTMLParser):
    """Tags and words of a page; fails where tags do not close."""

    def __init__(self):
        super().__init__()
        self.open, self.tags, self.words = [], [], []

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        if tag != "meta":
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_startendtag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data):
        self.words.append(data)


def read(text):
    page = Read()
    page.feed(text)
    assert page.open == []
    return page, " ".join(" ".join(page.words).split()).replace("\u00a0", " ")


def test_it_says_who_stands_where_and_walks_how(rounds, tmp_path):
    edition = Edition(staged=rounds.show(tmp_path), report=rounds.report())
    page, words = read(phone_page(edition))

    assert len(phone_page(edition)) < 40_000
    assert [attrs["href"] for tag, attrs in page.tags if tag == "a"] == ["#f1", "#f2", "#f3"]
    assert "walk from 0:48, bar 25.1 to 0:52, bar 27.1, 8 counts" in words
    # from (-4.5, 2.5) to (0, 2); 6.32 m from either front corner, at (-6, 0) and (6, 0)
    assert (
        "1 Łucja walk 4.5 m; on the centre line, 2.0 m upstage; face the audience; A 6.32 m, B 6.32 m"
        in words
    )
    assert "DO NOT DANCE YET" in words
    assert "DRAFT" in words
    assert "shout “STOP” three times" in words


def test_it_needs_no_network_and_no_script(rounds, tmp_path):
    page, _ = read(phone_page(Edition(staged=rounds.show(tmp_path), report=rounds.report())))
    assert not {"script", "link", "img", "iframe"} & {tag for tag, _ in page.tags}
    assert not any(
        "src" in attrs or str(attrs.get("href", "#")).startswith("http") for _, attrs in page.tags
    )


def test_a_name_that_is_markup_stays_a_name(rounds, tmp_path):
    text = rounds.ROUND.replace("Łucja", "Ash <b>")
    text = text.replace("name: Ash <b>", "name: 'Ash <b>'")
    _, words = read(phone_page(Edition(staged=rounds.show(tmp_path, text), report=rounds.report())))
    assert "1 Ash <b>" in words


def test_everybody_faces_and_stands_as_on_the_stage_from_either_side(rounds, tmp_path):
    """Noa at (1.5, 2.5) is right of the middle and in the lower half; turned round, left and in the upper half."""
    show = rounds.show(tmp_path)
    for turned in (False, True):
        page, _ = read(phone_page(Edition(staged=show, report=rounds.report(), turned=turned)))
        boxes = [attrs["viewbox"].split() for tag, attrs in page.tags if tag == "svg"]
        wide, tall = float(boxes[0][2]), float(boxes[0][3])
        discs = [attrs for tag, attrs in page.tags if tag == "circle"][:4]
        x, y = float(discs[2]["cx"]), float(discs[2]["cy"])
        assert (x > wide / 2, y > tall / 2) == ((not turned), (not turned))
        turns = [
            float(re.search(r"-?\d+", attrs["transform"])[0])
            for tag, attrs in page.tags
            if "transform" in attrs
        ]
        # Diamond: Søren faces 30 degrees to his own left, which is to the right of the audience; drawn clockwise from above
        assert turns[5] == (150 if turned else -30)


def test_it_is_written_beside_the_sheets_on_demand(rounds, tmp_path):
    show = rounds.show(tmp_path)
    paths = write_sheets(
        show, rounds.report(), tmp_path / "out", only=["formation-book"], phone=True
    )
    assert paths[-1].name == "lantern-round-formations.html"
    assert paths[-1].read_text(encoding="utf-8").startswith("<!doctype html>")
    without = write_sheets(show, rounds.report(), tmp_path / "out", only=["formation-book"])
    assert all(path.suffix == ".pdf" for path in without)
