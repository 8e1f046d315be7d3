"""Findings of two texts: new, gone, told otherwise; never compared where one was not checked."""

from sequencer.findings import Finding
from sequencer.outputs.compared.comparing import ComparedText, compared
from sequencer.outputs.compared.finding_changes import CheckedFindings, findings_compared
from sequencer.outputs.compared.told_comparison import comparison_text, comparison_values

NAMES = ("then was not checked", "now was not checked")


def finding(code="near", severity="warn", who=("Ash",), position="3.1", message="0.4 m"):
    return Finding(
        code=code,
        severity=severity,
        who=who,
        start=1.0,
        end=2.0,
        position=position,
        message=message,
    )


def test_new_ones_those_that_are_gone_and_those_that_changed():
    stays, twice = finding(), finding(code="twice")
    old = CheckedFindings(
        (stays, twice, twice, finding(message="0.3 m"), finding(code="late", severity="stop"))
    )
    new = CheckedFindings(
        (stays, twice, finding(message="0.2 m", position="4.1"), finding(code="fast")),
        ("the wind",),
    )
    found = findings_compared(old, new, NAMES)
    assert found.same == 2
    assert [(each.kind, each.severity, each.position, each.message, each.before) for each in found.changes] == [
        ("new", "warn", "3.1", "0.4 m", ""),
        ("changed", "warn", "4.1", "0.2 m", "WARN 3.1 0.3 m"),
        ("gone", "stop", "3.1", "0.4 m", ""),
        ("gone", "warn", "3.1", "0.4 m", ""),
    ]  # fmt: skip
    assert found.unseen == ("not looked at now: the wind",)
    assert found.words == "findings: 1 new, 2 gone, 1 changed, 2 as before"


def test_a_worse_severity_is_a_change():
    found = findings_compared(
        CheckedFindings((finding(),)), CheckedFindings((finding(severity="stop"),)), NAMES
    )
    assert [(each.kind, each.severity, each.before) for each in found.changes] == [("changed", "stop", "WARN 3.1 0.4 m")]  # fmt: skip


def test_what_was_not_checked_is_not_compared_and_that_is_said():
    found = findings_compared(None, CheckedFindings(()), NAMES)
    assert found.unknown == ("then was not checked",)
    assert found.changes == ()
    assert found.words == "then was not checked"
    assert findings_compared(CheckedFindings(()), CheckedFindings(()), NAMES).words == (
        "findings: none new, none gone, 0 as before"
    )


def test_text_and_values_hold_the_same_changes():
    old = ComparedText("then", "a: 1\nb: 2\n", CheckedFindings(()))
    new = ComparedText("now", "a: 1\nb: 3\n", CheckedFindings((finding(),)))
    found = compared(old, new)
    text, values = comparison_text(found, width=80), comparison_values(found)
    assert "          ≠ b 3 instead of 2" in text.splitlines()
    assert "          + new: WARN 3.1 0.4 m" in text.splitlines()
    assert [each["words"] for each in values["changes"]] == ["b 3 instead of 2"]
    assert values["elsewhere"] == [0]
    assert values["findings"]["line"] == "findings: 1 new, 0 as before"
