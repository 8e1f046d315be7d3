"""All sections at once: which lines change, what follows, and what is refused."""

from sequencer.show.operations.operation import apply
from sequencer.show.operations.section_operations import SetSections
from tests.unit.show.operations.duo import SHOW, lines, refused

HEARD = (("0:00.0", "A"), ("9.1", "B"), ("17.1", "A"))
GIVEN = SHOW.replace(
    "track: {file: a.ogg}",
    """track:
  file: a.ogg
  corrections:
    sections:
      - {from: 0:00.0, name: A}
      # the drum
      - {from: 9.1, name: B}    # loud
      - {from: 17.1, name: A}""",
)


def test_sections_are_written_where_none_were():
    came = [line for line in lines(SetSections(sections=HEARD)) if line[0] == "+"]
    assert came == ["+track: {file: a.ogg, corrections: {sections: [{from: 0:00.0, name: A}, {from: 9.1, name: B}, {from: 17.1, name: A}]}}"]  # fmt: skip


def test_only_what_is_another_one_is_another_line():
    named = SetSections(sections=(HEARD[0], ("9.1", "refrain"), HEARD[2]))
    assert lines(named, GIVEN) == [
        "-      - {from: 9.1, name: B}    # loud", "+      - {from: 9.1, name: refrain}    # loud",
    ]  # fmt: skip
    split = SetSections(sections=(*HEARD[:2], ("13.1", "break"), HEARD[2]))
    assert lines(split, GIVEN) == ["+      - {from: 13.1, name: break}"]
    joined = SetSections(sections=(HEARD[0], HEARD[2]))
    assert lines(joined, GIVEN) == ["-      - {from: 9.1, name: B}    # loud"]
    assert lines(SetSections(sections=HEARD), GIVEN) == []


def test_who_names_a_section_names_it_as_it_is_called_now():
    text = GIVEN.replace("from: 9.1, beats: 8", "from: A 2, beats: 8")
    text += "wishes: {character: {B: full, A: calm}, moves: {stop: before B}}\n"
    op = SetSections(
        sections=(HEARD[0], ("9.1", "refrain"), HEARD[2]),
        renamed=(("B", "refrain"), ("A 2", "coda")),
    )
    after = apply(text, op, file="s.yaml")
    assert "from: coda, beats: 8" in after
    assert "wishes: {character: {refrain: full, A: calm}, moves: {stop: before refrain}}" in after
    edge = text.replace("from: A 2", "from: end of A 2")
    assert "from: end of coda, beats: 8" in apply(edge, op, file="s.yaml")


def test_no_moment_is_left_without_its_section():
    text = GIVEN.replace("from: 9.1, beats: 8", "from: B, beats: 8")
    joined = SetSections(sections=(HEARD[0], HEARD[2]), gone=("B",))
    assert "this names B, and there would be no such section any more" in refused(joined, text)
    assert "no section would be left" in refused(SetSections(sections=()))
    assert "from: B" not in apply(GIVEN, joined, file="s.yaml")
