"""Fire breathing and fire eating: found wherever a show file mentions them, and never planned.

Source: banned in several places and able to injure the lungs (Seattle WA, fire performance permits; read).
"""

import re

from sequencer.checks.check import Check
from sequencer.checks.fire.records import PROGRESS, night_finding
from sequencer.checks.outcome import Outcome
from sequencer.safety.rules.house_rules import rules_of
from sequencer.staging.staged import Staged

CODE = "breathes-fire"
_BREATHING = re.compile(
    r"\bfire[\s-]*(breath|eat|spit)|\b(breath|eat|spit)\w*[\s-]+(the\s+)?(fire|flame)",
    re.IGNORECASE,
)


def not_planned(show: Staged) -> Outcome:
    """What a show mentions and this program does not plan, in a lit show or not.

    Raises
    ------
    InputError
        If the show's file of rules cannot be used.
    """
    record = show.show
    texts = [record.title, *record.phrases, *record.patterns, *record.formations]
    texts += [
        words
        for steps in record.phrases.values()
        for step in steps
        for words in (step.note, step.cue)
    ]
    texts += [
        word for entry in record.timeline for word in (entry.note, entry.cue, entry.pattern or "")
    ]
    texts += [note for dancer in record.cast for note in dancer.notes]
    texts += [item for post in record.crew for item in post.equipment]
    said = next((text for text in texts if _BREATHING.search(text)), None)
    if said is None:
        return Outcome()
    rule = rules_of(show).required("fire-breathing-forbidden")
    finding = night_finding(
        CODE,
        "stop",
        f"“{said}”: fire breathing and fire eating are outside this tool, which does not plan them",
        rule.citation if rule else "able to injure the lungs: caution 23",
        ("leave it out",),
    )
    return Outcome(findings=(finding,))


CHECK = Check(
    name="not-planned",
    run=not_planned,
    codes={CODE: ("stop",)},
    cautions={CODE: "fire-breathing"},
    progress=PROGRESS,
)
