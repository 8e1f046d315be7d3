"""What a head that comes off would reach: at which distance it is said, how, and rounded to the safe side."""

from dataclasses import dataclass

import pytest

from sequencer.checks.fire.on_site import let_go_range as check
from sequencer.checks.fire.on_site.let_go_range import let_go_findings
from sequencer.motion.clearance.let_go import LetGo, NearestFlight
from sequencer.safety.site_ground.landings import Landing, LandingPlan


@dataclass(frozen=True)
class Steady:
    """Half a second a beat."""

    def seconds(self, beat):
        return beat / 2

    def position(self, beat):
        return f"beat {beat:g}"


def near(place, name, distance, *, beyond=0.0, who="Sable", beat=75.81):
    flight = NearestFlight(distance=distance, beyond=beyond, beat=beat, landing=(1.0, -2.0))
    return Landing(place=place, name=name, who=who, flight=flight)


def plan(*nearest, proven=True):
    flight = LetGo(flight=7.6, beat=75.8, landing=(1.0, -2.0), fastest=8.2, proven=proven)
    return LandingPlan(farthest=("Sable", flight), nearest=nearest)


@pytest.mark.parametrize(
    ("place", "distance", "beyond", "code", "words"),
    [
        ("audience", 1.01, 0.0, None, ""),
        ("audience", 0.99, 0.0, "let-go-audience", "comes within 0.9 m of rows"),
        ("audience", 0.0, 1.21, "let-go-audience", "lands up to 1.3 m beyond rows"),
        ("fuel", 1.01, 0.0, None, ""),
        ("fuel", 0.37, 0.0, "let-go-near", "comes within 0.3 m of rows"),
        ("exit", 0.99, 0.0, "let-go-near", "comes within 0.9 m of rows"),
        ("exit", 1.01, 0.0, None, ""),
        ("gate", 0.0, 0.0, "let-go-near", "comes within 0.0 m of rows"),
        ("gate", 1.01, 0.0, None, ""),
        ("combustible", 0.5, 0.0, "let-go-near", "comes within 0.5 m of rows"),
        ("combustible", 1.01, 0.0, None, ""),
        ("post", 0.5, 0.0, "let-go-post", "may land at these posts: rows (rows: a head of Sable at 0:37.9)"),
        ("post", 1.01, 0.0, None, ""),
    ],
)  # fmt: skip
def test_what_is_within_a_metre_of_a_flight_is_said(place, distance, beyond, code, words):
    found = let_go_findings(
        plan(near(place, "rows", distance, beyond=beyond)), clock=Steady(), moves=lambda *_: ""
    )

    assert [each.code for each in found] == ([code] if code else [])
    for finding in found:
        assert words in finding.message
        assert finding.severity == ("note" if place == "post" else "warn")
        assert finding.remedies
        assert finding.code in check.CHECK.codes
        if place != "post":
            assert "comes off at 0:37.9" in finding.message
            assert (finding.who, finding.where, finding.position) == (
                ("Sable",),
                (1.0, -2.0),
                "beat 75.8125",
            )


def test_posts_share_one_note_and_all_else_is_said_one_by_one():
    found = let_go_findings(
        plan(
            near("post", "Rowan", 0.6), near("post", "Flint", 0.1, who="Wren"), near("post", "Tarn", 3.0),
            near("exit", "gate", 0.2), near("exit", "road", 0.3),
        ),
        clock=Steady(), moves=lambda who, beat: f"a move of {who} at {beat}",
    )  # fmt: skip

    assert [each.code for each in found] == ["let-go-near", "let-go-near", "let-go-post"]
    assert found[2].who == ("Flint", "Rowan")
    assert "(Flint: a head of Wren at 0:37.9 in a move of Wren at 75.81)" in found[2].message
    assert "comes off at 0:37.9 in a move of Sable at 75.81 comes within" in found[0].message


def test_what_was_not_looked_at_is_said(monkeypatch):
    show = type("Lit", (Steady,), {"lit": True})()
    for proven, words in ((True, 1), (False, 2)):
        monkeypatch.setattr(check, "landing_plan", lambda _show, proven=proven: plan(proven=proven))
        said = check.CHECK.run(show).not_checked
        assert len(said) == words
        assert "bounces, rolls, wind" in said[0]
    assert "not proven" in said[1]
    monkeypatch.setattr(check, "landing_plan", lambda _show: None)
    assert check.CHECK.run(show) == type(check.CHECK.run(show))()
