"""Codes of the faults that mends are sought for by trials on the show, by what they are about."""

SLACK = "tether-slack"
TOO_FAST = "too-fast-to-dance"
TANGLE = "self-tangle"
OUT_OF_REACH = "hand-out-of-reach"
CEILING = "ceiling-too-low"
WALK = "walks-too-fast"
OF_JOINS = ("does-not-join", "needs-a-link", "needs-a-shift", "wrong-way-round", "link-too-hard")
OF_PACE = (SLACK, TOO_FAST)
OF_FIT = (OUT_OF_REACH, TANGLE, "self-hit")
OF_HEIGHT = ("hits-floor", CEILING)
OF_WALKS = (WALK, "turns-too-fast")
OF_BURNS = ("burn-reserve", "burns-out")
# What a performer mends first, as other faults follow from it.
ROOTS = (OUT_OF_REACH, SLACK, TOO_FAST, "self-hit")
MENDED_CODES = (
    *OF_JOINS, "self-hit", "flame-near-body", TANGLE, OUT_OF_REACH, *OF_PACE, *OF_HEIGHT, *OF_WALKS,
    *OF_BURNS,
)  # fmt: skip
