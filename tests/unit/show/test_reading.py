"""Show files: what is read, and how faults are named."""

from pathlib import Path

import pytest

from sequencer.errors import InputError, InputErrors
from sequencer.show.reading import read_show, show_from_document
from sequencer.show.text.document import parse_document
from sequencer.timing.position import Position

GOOD = """\
title: Two lanterns
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience:
    - line: [[-6, -6], [6, -6]]
cast:
  - name: Łucja
    stature: 1.7 m
    prop: {tether: 55 cm}
  - name: 火花 עברית ø
    stature: 5 ft 10 in
    prop: {tether: 0.6}
phrases:
  weave in: [{pattern: two-beat weave, beats: 8}]
timeline:
  - {who: Łucja, from: 17.10, pattern: toroid, with: {lobes: 3}, beats: 8}
  - {phrase: weave in, repeat: 2}
"""


def read(text):
    return show_from_document(parse_document(text, "s.yaml"))


def fault(text):
    with pytest.raises(InputError) as caught:
        read(text)
    return caught.value


def test_a_good_show_is_read_with_units_and_any_script():
    show = read(GOOD).show
    assert show.names == ("Łucja", "火花 עברית ø")
    assert show.cast[1].stature == pytest.approx(1.778)
    assert show.cast[0].held("left").tether == pytest.approx(0.55)
    assert show.timeline[0].start == Position(17, 10)  # not 17.1
    assert show.timeline[1].who == ("all",)


def test_names_of_200_letters_are_read():
    name = "Ø" * 200
    assert read(GOOD.replace("Łucja", name)).show.names[0] == name


@pytest.mark.parametrize(
    ("old", "new", "where", "says", "mend"),
    [
        ("venue:", "venu: 3\nvenue:", "s.yaml:3:1", "unknown key 'venu'", "did you mean 'venue'?"),
        ("width: 10 m", "width: 1800 m", "s.yaml:4:36", "outside 0.001 … 500 m; is it in mm?", "width, or"),
        ("width: 10 m", "width: ten", "s.yaml:4:36", "'ten' is not a number with a unit", "width, or"),
        ("width: 10 m, ", "", "s.yaml:4:10", "needs a width", ""),
        ("stature: 1.7 m", "stature: 17 m", "s.yaml:9:14", "17 m is outside 0.8 … 2.6 m", "standing height"),
        ("title: Two lanterns\n", "", "s.yaml:1:1", "'title' is missing", "add it"),
        ("火花 עברית ø", "łucja", "s.yaml:11:11", "'łucja' appears twice in the cast", "line 8"),
        ("who: Łucja", "who: Lucja", "s.yaml:17:11", "'Lucja' is not in the cast", "did you mean 'Łucja'"),
        ("phrase: weave in", "phrase: weave", "s.yaml:18:14", "there is no phrase", "'weave in'"),
        ("[{pattern: two-beat weave, beats: 8}]", "[{phrase: weave in}]", "s.yaml:15:13",
         "contain each other in a cycle", "remove one"),
        ("beats: 8}\n", "beats: 8, until: 20.1}\n", "s.yaml:17:5", "one of beats, cycles and until", ""),
        ("from: 17.10", "from: 17", "s.yaml:17:24", "'17' is not a moment", "when"),
        ("with: {lobes: 3}", "repeat: 0", "s.yaml:17:56", "greater than or equal to 1", ""),
        ("pattern: toroid", "timing: sideways, pattern: toroid", "s.yaml:17:39", "'together', 'split'", ""),
    ],
)  # fmt: skip
def test_every_fault_names_place_and_mend(old, new, where, says, mend):
    assert old in GOOD
    error = fault(GOOD.replace(old, new, 1))
    assert str(error).startswith(where + ":")
    assert says in error.what
    assert mend in str(error)
    assert "\n" not in str(error)


@pytest.mark.parametrize(
    ("given", "ends"),
    [
        ("'1,500 mm'", "can be read as 1500 mm or as 1.500 mm; write one of these, without the comma [bad-value]"),
        ("3 furlongs", """is not known; use one of m, cm, mm, km, ft, in, ', " [bad-value]"""),
    ],
)  # fmt: skip
def test_a_quantity_that_says_how_to_mend_it_says_so_once(given, ends):
    error = fault(GOOD.replace("width: 10 m", f"width: {given}"))
    assert str(error).startswith("s.yaml:4:36: width: ")
    assert str(error).endswith(ends)


def test_several_faults_are_said_at_once_in_the_order_of_lines():
    error = fault(GOOD.replace("venue:", "venu: 3\nvenue:").replace("tether: 0.6", "tether: x"))
    assert isinstance(error, InputErrors)
    assert [one.place.line for one in error.errors] == [3, 14]


def test_an_alias_bomb_is_stopped_early():
    levels = ["a: &a [x, x, x, x, x, x, x, x, x, x]"]
    levels += [
        f"{b}: &{b} [{', '.join(['*' + a] * 10)}]"
        for a, b in zip("abcdefgh", "bcdefghi", strict=True)
    ]
    assert "aliases expand this file to more than 200000 values" in fault("\n".join(levels)).what


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("a: &a [*a]", "refers to itself"),
        ("[" * 60 + "]" * 60, "nested too deeply"),
        ("", "empty"),
        ("- 1\n- 2", "consists of keys with values"),
        ("a: 1\na: 2", "appears twice"),
        ("a: [1, 2", "not YAML"),
        ("a: !!python/object:os.system x", "tag"),
        ("? [1]\n: 2", "a key must be plain text"),
        ("a: \x07", "not YAML"),
        ("\tb: 1", "not YAML"),
    ],
)
def test_hostile_and_broken_yaml_is_one_line(text, says):
    error = fault(text)
    assert says in str(error)
    assert "\n" not in str(error)


def test_a_note_may_have_several_lines_and_letters_of_any_kind():
    note = '"up\\nהלוך\\u200f\\tوبیا\\u200c 🧑\\u200d🚒"'
    read = show_from_document(parse_document(GOOD.replace("from: 17.10", f"from: 17.10, note: {note}", 1), "show.yaml"))  # fmt: skip
    assert "up\nהלוך\u200f\tوبیا\u200c 🧑\u200d🚒" in [each.note for each in read.show.timeline]


def test_a_missing_file_a_folder_and_no_text(tmp_path: Path):
    (tmp_path / "b.yaml").write_bytes(b"title: \xff\xfe")
    for path, says in [
        ("none.yaml", "file not found"),
        (".", "a folder"),
        ("b.yaml", "not UTF-8 text"),
    ]:
        with pytest.raises(InputError, match=says):
            read_show(tmp_path / path)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("lobes: 3}", "lobes: 3}, shift: soon", "shift 'soon' is not a number"),
        ("stature: 1.7 m", "stature: 1.7 m\n    birth_year: young", "birth_year 'young' is not a whole number"),
        ("[{pattern: two-beat weave, beats: 8}]", "weave", "'weave' is not a list"),
        ("from: 17.10", "from: 17.10, link: perhaps", "link 'perhaps' is neither true nor false"),
        ("[[-6, -6], [6, -6]]", "[[-6], [6, -6]]", "line has too few values: 1"),
        ("stature: 1.7 m", "stature:", "stature: a number is missing, such as"),
        ("width: 10 m", "width: [10 m]", "width: this is not a number with a unit, such as"),
        ("from: 17.10", 'from: 17.10, note: "up\\e[31m"', "31m': a note or cue must not contain control characters"),
        ("from: 17.10", 'from: 17.10, cue: "up\\u202e"', "202e': a note or cue must not contain characters that reverse"),
    ],
)  # fmt: skip
def test_a_value_of_the_wrong_kind_is_told_in_plain_words(old, new, says):
    assert old in GOOD
    said = str(fault(GOOD.replace(old, new, 1)))
    assert says in said
    assert "valid" not in said
