"""Moments by what a person at a post sees and hears: formations walked into, patterns that end, sections.

Bars and beats are left to performers. Times are beats of the show.
"""

from sequencer.outputs.sheets.page.wording import brief
from sequencer.outputs.words.entrance_words import comings_words, only_entrances
from sequencer.staging.staged import Block, Staged

_SAME = 1e-6  # [beats]
_SOON = 4.0  # [beats] a pattern that ended so shortly before is what was seen last
_EDGE, _MIDDLE = 0.08, 0.15  # shares of a section that count as its start or end, and as its middle


def sight_of(staged: Staged, beat: float) -> str:
    """What is seen and heard at a beat: the walk into a formation, else the pattern, and where in the song it is."""
    seen = _walk_words(staged, beat) or _danced_words(staged, beat)
    return ", ".join(filter(None, (seen, section_words(staged, beat))))


def last_seen(staged: Staged, who: str, beat: float) -> str:
    """The pattern of a performer that ends at a beat, or shortly before, as "the fountain ends"; empty if none does."""
    done = [
        block
        for block in staged.blocks_of(who)
        if not block.link and block.start < beat - _SAME and block.end > beat - _SOON
    ]
    return f"the {pattern_words(done[-1])} ends" if done else ""


def pattern_words(block: Block) -> str:
    """A pattern by the name of its phrase, or else its own, in plain words."""
    return brief((block.phrase or block.title).replace("-", " "), most=28)


def section_words(staged: Staged, beat: float) -> str:
    """Where in which section of the song a beat is; empty outside all of them."""
    second = staged.seconds(beat) + _SAME
    names = staged.song.section_names()
    for section, name in zip(staged.song.sections, names, strict=True):
        if not section.start <= second < section.end:
            continue
        shown = brief(name, most=20)
        share = (second - section.start) / (section.end - section.start)
        if share < _EDGE:
            return f"{shown} starts"
        if share > 1 - _EDGE:
            return f"{shown} ends"
        if abs(share - 0.5) < _MIDDLE:
            return f"halfway through {shown}"
        return f"{'early' if share < 0.5 else 'late'} in {shown}"
    return ""


def _walk_words(staged: Staged, beat: float) -> str:
    for standing in staged.standings:
        if standing.start - standing.walk < _SAME:
            continue
        if only_entrances(standing):
            if standing.walk - _SAME < beat < standing.start - _SAME:
                return comings_words(standing.comings)
            continue
        name = f"“{brief(standing.formation, most=28)}”"
        if abs(standing.walk - beat) < _SAME:
            return f"they walk into {name}"
        if abs(standing.start - beat) < _SAME:
            return f"they stand in {name}"
        if standing.walk < beat < standing.start:
            share = (beat - standing.walk) / (standing.start - standing.walk)
            part = "halfway" if abs(share - 0.5) < _MIDDLE else "on the way"
            return f"they are {part} into {name}"
    return ""


def _danced_words(staged: Staged, beat: float) -> str:
    """The pattern that is danced at a beat, if all who dance one dance the same."""
    now = {
        pattern_words(block)
        for block in staged.blocks
        if not block.link and block.start <= beat < block.end
    }
    return f"during the {now.pop()}" if len(now) == 1 else ""
