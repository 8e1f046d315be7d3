"""Figures of findings: how far beyond their limits, and as JSON and back."""

import json
from dataclasses import asdict
from math import inf, isnan

import pytest

from sequencer.findings import Figure, Finding, restored_row


def figure(value, limit, *, least=False):
    return Figure(quantity="turns", value=value, limit=limit, unit="1/s", least=least)


@pytest.mark.parametrize(
    ("own", "beyond", "times"),
    [
        (figure(5.0, 2.5), 2.5, 2.0),
        (figure(2.0, 2.5), -0.5, 0.8),
        (figure(100.0, 250.0, least=True), 150.0, 2.5),
        (figure(100.0, inf, least=True), inf, inf),
        (figure(-0.04, 0.0, least=True), 0.04, None),
        (figure(2.0, 0.0), 2.0, None),
    ],
)
def test_a_figure_says_how_far_and_how_many_times_it_breaks_its_limit(own, beyond, times):
    assert own.beyond == pytest.approx(beyond)
    assert isnan(own.times) if times is None else own.times == pytest.approx(times)


def test_a_finding_comes_back_from_json_with_its_figures_and_hands():
    finding = Finding(
        code="too-fast-to-dance", severity="warn", who=("Isa",), start=1.0, end=2.0, position="1.2",
        message="x", figures=(figure(5.0, 2.5), figure(1.0, 2.0, least=True)), hands=("left", "right"),
    )  # fmt: skip
    assert restored_row(Finding, json.loads(json.dumps(asdict(finding)))) == finding
