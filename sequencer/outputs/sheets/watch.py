"""Who watches whom from which post, and how far away: plain records for the crew's pages."""

from dataclasses import dataclass
from math import hypot

from sequencer.outputs.sheets.cues import place_at
from sequencer.show.burning import burn_time
from sequencer.show.model import Post
from sequencer.show.staged import Lit, Staged


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Watch:
    """One burn as the crew sees it."""

    burn: Lit
    spot: tuple[float, float, float]  # X [m], Y [m], facing [degrees] where it is lit
    out_spot: tuple[float, float, float]
    watchers: tuple[tuple[Post, float], ...]  # nearest first, with the distance [m] to `spot`
    burns_until: float | None  # [s] of the track when the wick is expected to burn dry


def spotters(staged: Staged) -> tuple[Post, ...]:
    """Posts that watch performers."""
    return tuple(post for post in staged.show.crew if post.duty in {"spotter", "lead"})


def watchers_of(staged: Staged, who: str) -> tuple[Post, ...]:
    """Posts whose duty names a performer; a spotter who names nobody watches all."""
    return tuple(
        post
        for post in staged.show.crew
        if who in post.watches or (not post.watches and post.duty == "spotter")
    )


def watches(staged: Staged) -> tuple[Watch, ...]:
    """Every burn with its watchers, in the order of lighting."""
    found = []
    for burn in staged.lit:
        spot = place_at(staged, burn.who, burn.start)
        near = sorted(
            (
                (post, hypot(post.post[0] - spot[0], post.post[1] - spot[1]))
                for post in watchers_of(staged, burn.who)
            ),
            key=lambda pair: pair[1],
        )
        time = burn_time(staged, burn.who)
        until = None if time is None else staged.seconds(burn.start) + time.seconds
        found.append(
            Watch(
                burn=burn,
                spot=spot,
                out_spot=place_at(staged, burn.who, burn.end),
                watchers=tuple(near),
                burns_until=until,
            )
        )
    return tuple(found)
