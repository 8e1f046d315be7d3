"""What makes one routine better than another: the terms of its cost, and how much each weighs."""

from collections.abc import Mapping
from dataclasses import dataclass, fields

TERMS: Mapping[str, str] = {
    "energy": "large and fast where the music is loud, small where it is calm",
    "difficulty": "as hard as the level and the music ask for, and something of the performer's own level",
    "learning": "patterns that are still being learnt, outside calm music",
    "ending": "cycles that do not end with the phrase, or come only once",
    "margin": "moves that pass close to body or prop",
    "walking": "hard patterns while walking",
    "links": "links, and the beats spent in them",
    "variety": "patterns, families and planes that follow each other too soon, and hands that go on alike into another part",
    "hands": "changes of the hands' timing or direction, and weaves otherwise than in split time",
    "rest": "one hard move after another",
    "repetition": "patterns, or one way of timing the hands, used more often than others",
    "wishes": "wishes left out",
    "chance": "what a seed other than 0 prefers, at random",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """How much each term costs, a term of 1 weighing as much as a link of two beats [1]; design choices of this project."""

    energy: float = 8.0  # for two eights as far from the music as can be
    difficulty: float = (
        0.8  # for each step too hard; too easy a third of it in calm music, all in loud
    )
    shown: float = 2.0  # for each hard move too few that shows what the performer can do
    learning: float = 20.0  # for two eights; hardly ever worth it
    ending: float = 0.8  # for a phrase that ends half a cycle in
    margin: float = 0.4  # for a move with the least margin
    walking: float = 4.0
    links: float = 1.0
    variety: float = 1.0  # for a family that follows itself
    hands: float = 0.3
    rest: float = 0.6
    repetition: float = 1.0  # for each use too many
    alike: float = 1.5  # for each stretch too many with one way of timing the hands
    wishes: float = 60.0  # for each move that is missing
    chance: float = 0.6  # at most, for each material

    def __post_init__(self) -> None:
        for field in fields(self):
            if not 0 <= getattr(self, field.name) < 1e6:
                raise ValueError(f"the weight of {field.name} must be 0 or more")


TOO_SOON = 30.0  # [1] cost of a pattern within two eights of itself, in another part: nearly never worth it
