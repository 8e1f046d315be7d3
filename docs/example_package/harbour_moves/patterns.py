"""A pattern as data, written as in a show file; it may use the package's own law."""

PATTERNS = {
    "harbour star": {
        "law": "starfish",
        "set": {"points": 5},
        "defaults": {"hand_radius": "20 cm"},
        "summary": "the hand draws a star of five points, the prop turns against it",
        "difficulty": 3,
        "why": "the hand slows down in every point while the prop goes on",
        "needs": ["extension"],
        "props": ["poi", "club", "fan"],
        "source": "invented for this example",
    },
}
