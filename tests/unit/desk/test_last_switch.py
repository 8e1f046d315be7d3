"""The last switch of who is there: by whichever way it came, from the last show that was looked at."""

from sequencer.desk.last_switch import SwitchMemory

AWAY = {"away": ["Birch"]}


def report(word):
    return {"findings": [word], "unseen": []}


def test_a_switch_is_noticed_with_what_was_found_before_and_after():
    memory = SwitchMemory()
    memory.take(0, "all", None, None)
    memory.take(1, "other title", None, report("all"))
    assert memory.last is None
    memory.take(2, "away", AWAY, report("other title"))
    assert (memory.last.before, memory.last.after, memory.last.revision) == ("other title", "away", 2)  # fmt: skip
    assert memory.last.report_before == report("other title")
    assert memory.last.report_after is None
    memory.checked(report("away"))
    memory.checked(report("too late"))
    assert memory.last.report_after == report("away")


def test_what_was_found_is_kept_once_something_else_is_changed_and_never_of_another_text():
    memory = SwitchMemory()
    memory.take(0, "all", None, None)
    memory.take(1, "away", AWAY, report("all"))
    memory.take(2, "more", AWAY, report("away"))
    assert memory.last.report_after == report("away")

    memory.take(3, "all again", None, None)
    memory.take(4, "another title", None, None)
    memory.checked(report("another title"))
    assert memory.last.report_after is None


def test_two_switches_that_the_checks_had_no_time_for_are_one():
    memory = SwitchMemory()
    memory.take(0, "all", None, None)
    memory.take(1, "Birch away", AWAY, report("all"))
    memory.take(2, "both away", {"away": ["Birch", "Cedar"]}, None)
    assert (memory.last.before, memory.last.after, memory.last.revision) == ("all", "both away", 2)
    assert memory.last.report_before == report("all")

    memory.take(3, "Cedar away", {"away": ["Cedar"]}, report("both away"))
    assert (memory.last.before, memory.last.report_before) == ("both away", report("both away"))


def test_an_empty_heading_is_nobody():
    memory = SwitchMemory()
    memory.take(0, "all", None, None)
    memory.take(1, "empty", {}, None)
    assert memory.last is None
