"""Codes of the faults that mends are sought for by trials on the show, by what they are about."""

# Quantities of the figures that findings carry, as docs/findings.md lists them.
REACH = "hand from shoulder"
BODY_GAP = "gap to body"
PROPS_GAP = "gap between props"
DISTANCE = "distance"
TAUT_TEMPO = "tempo"
PROP_TURNS = "turns"
HAND_SPEED = "hand speed"
HAND_ACCELERATION = "hand acceleration"
TURN_ACCELERATION = "turning acceleration"
WICK_SPEED = "wick speed"
PULL = "pull"
TWIST = "twist"
HAND_GAP = "hand gap"
LINK_LENGTH = "link"
WALK_SPEED, WALK_TURN = "walking speed", "turning speed"
BURN = "burn"
# Of what is flown: the least pull in weights of the head, and how far the tether is off its drawing.
FLOWN_PULL, OFF_DRAWING = "least pull", "tether off the drawing"

SLACK = "tether-slack"
TOO_FAST = "too-fast-to-dance"
TANGLE = "self-tangle"
HIT = "self-hit"
NEAR_FLAME = "flame-near-body"
BEYOND_REACH = "hand-out-of-reach"
CEILING = "ceiling-too-low"
FAST_WALK = "walks-too-fast"
OF_JOINS = ("does-not-join", "needs-a-link", "needs-a-shift", "wrong-way-round", "link-too-hard")
OF_PACE = (SLACK, TOO_FAST)
OF_FIT = (BEYOND_REACH, TANGLE, HIT)
OF_HEIGHT = ("hits-floor", CEILING)
OF_WALKS = (FAST_WALK, "turns-too-fast")
OF_BURNS = ("burn-reserve", "burns-out")
# What cannot be flown, or is in the way of itself on the flown paths.
UNFLOWN, UNFLOWN_LINK, TOO_SLOW = "cannot-be-flown", "link-cannot-be-flown", "too-slow-to-fly"
STRAINS, MEETS, HITS = "strained-as-flown", "props-meet-as-flown", "hits-body-as-flown"
ANOTHER_CYCLE = "another-cycle"  # no fault: a note, which what it names can settle
OF_PASSAGES = (*OF_JOINS, UNFLOWN_LINK)  # that another change of the passage may mend
OFF_COURSE = (STRAINS, MEETS, HITS)
FLOWN_CODES = (UNFLOWN, UNFLOWN_LINK, TOO_SLOW, *OFF_COURSE)
# What a performer mends first, as other faults follow from it.
ROOTS = (BEYOND_REACH, SLACK, TOO_FAST, HIT, TOO_SLOW, UNFLOWN)
MENDED_CODES = (
    *OF_JOINS, HIT, NEAR_FLAME, TANGLE, BEYOND_REACH, *OF_PACE, *OF_HEIGHT, *OF_WALKS,
    *OF_BURNS,
)  # fmt: skip
# Of which only the worst is told: of a whole show, or of each pattern in it.
WORST_ONLY = ("let-go-audience", "let-go-near", NEAR_FLAME)
# What a performer calls a fault, as in "mend the reach at 3.1 first".
FAULT_NAMES = {
    **dict.fromkeys(OF_JOINS, "join"), **dict.fromkeys(OF_BURNS, "burn"),
    "link-too-hard": "link", HIT: "hit on the own body", NEAR_FLAME: "flame near the body",
    TANGLE: "tangle", BEYOND_REACH: "reach", SLACK: "slack tether", TOO_FAST: "pace",
    UNFLOWN: "pattern that cannot be flown", UNFLOWN_LINK: "link that cannot be flown", TOO_SLOW: "pace", STRAINS: "strain",
    MEETS: "meeting of the props", HITS: "hit on the own body as flown", "hits-floor": "hit on the floor", CEILING: "height", FAST_WALK: "walk", "turns-too-fast": "turn",
}  # fmt: skip
