"""A rule profile as data, its sources with it. It is made up: no harbour has these rules."""

PROFILES = {
    "harbour": {
        "title": "House rules of the harbour stage",
        "place": "an invented harbour",
        "edition": "2026",
        "authority": False,
        "note": "made up, to show how a profile is written",
        "sources": [
            {
                "key": "harbour-2026",
                "title": "House rules of the harbour stage",
                "date": "2026",
                "where": "invented",
                "mark": "design choice",
            }
        ],
        "rules": [
            {
                "kind": "audience-distance",
                "value": 7.0,
                "printed": "7 m from the flame",
                "source": "harbour-2026",
            },
            {
                "kind": "ask",
                "value": "the tide table hangs at the fuel station",
                "printed": "tide table at the fuel station",
                "source": "harbour-2026",
            },
        ],
    },
}
