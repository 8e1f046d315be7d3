"""The site on a plan: what is shown, where, and in which words."""

from matplotlib.figure import Figure

from sequencer.outputs.plans.site_marks import SiteMarks, draw_site, site_labels, site_marks
from sequencer.outputs.plans.stage_plan import PlanPicture, stage_plan
from tests.sites import site

ZONE = ("  fire_lane:", "  spin_off: [[10, 13], [13, 13], [13, 16]]\n  gate: [20, 4]\n  fire_lane:")


def test_everything_that_a_site_has_is_named_once():
    marks = site_marks(site(ZONE, ("at: [-16, -12]", "at: [0, 16]")))
    said = [label.text for label in site_labels(marks, 0.1)]

    assert said == [
        "exit lane, does not count", "exit road", "fuel", "no flame, no audience within 6.10 m of the fuel",
        "fire lane 4.0 m", "gate", "spin-off zone", "extinguisher", "extinguisher", "extinguisher",
    ]  # fmt: skip
    assert site_labels(SiteMarks(), 0.1) == []


def test_the_ring_is_drawn_to_scale_round_the_fuel():
    axes = Figure().subplots()
    draw_site(axes, site_marks(site(ZONE)))
    (ring,) = (patch for patch in axes.patches if hasattr(patch, "get_radius"))

    assert (ring.center, round(ring.get_radius(), 3)) == ((11.0, 12.0), 6.096)
    assert len(axes.patches) == 3  # with lane and zone


def test_exits_and_gate_lie_in_the_picture_and_what_is_far_off_does_not_shrink_it():
    show = site(ZONE, ("at: [16, -12]", "at: [400, -12]"))
    figure = stage_plan(show.dancers, show.venue, 0.0, picture=PlanPicture(site=site_marks(show)))
    (left, right), (down, up) = figure.axes[0].get_xlim(), figure.axes[0].get_ylim()

    assert left < -16 < 20 < right < 100
    assert down < -12 < 16 < up
