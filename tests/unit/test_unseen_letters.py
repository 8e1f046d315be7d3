"""Letters that steer a terminal: what is refused, and what is written out where something is printed."""

import json

import pytest

from sequencer.unseen_letters import seen_text, steering_fault

STEERING = [*map(chr, (*range(9), 11, 12, *range(14, 32), *range(0x7F, 0xA0)))]
TURNERS = [*"\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"]
GOOD = "up\nהלוך\u200f\tوبیا\u200c 🧑\u200d🚒 14\u00a0m ½ 🔥"


def test_each_control_character_and_each_turner_is_refused_and_written_out():
    for letter in (*STEERING, *TURNERS):
        words = "reverse the direction of text" if letter in TURNERS else "control characters"
        assert words in (steering_fault(f"a{letter}b") or ""), ascii(letter)
        assert seen_text(f"a{letter}b") == f"a\\u{ord(letter):04x}b"


def test_what_people_write_stays():
    assert steering_fault(GOOD) is None
    assert seen_text(GOOD) == GOOD


def test_a_carriage_return_stays_where_a_line_ends_only():
    assert steering_fault("good\rbad") == "must not contain control characters"
    assert seen_text("1,2\r\n3\r4\r") == "1,2\r\n3\\u000d4\\u000d"


@pytest.mark.parametrize("slashes", ["", "\\", "\\\\"])
def test_json_says_the_same_as_before(slashes):
    value = {"why": f"{slashes}\u202e\x9b\x7f\x1b[2J"}
    printed = seen_text(json.dumps(value, ensure_ascii=False))
    assert printed.isprintable()
    assert json.loads(printed) == value
