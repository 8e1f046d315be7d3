"""All the places of one performer on one plan: discs that would lie on one another stand apart."""


def test_discs_of_places_that_lie_together_stand_apart_and_near():
    from math import dist

    from sequencer.outputs.sheets.parts.stage_plans.own_places import discs_apart

    points = [(50.0, 50.0), (51.0, 50.0), (50.0, 50.0), (200.0, 50.0)]
    discs = discs_apart(points)
    assert discs[0] == points[0]
    assert discs[3] == points[3]
    assert min(dist(a, b) for k, a in enumerate(discs) for b in discs[:k]) >= 13.2
    assert max(dist(a, b) for a, b in zip(discs, points, strict=True)) < 30
