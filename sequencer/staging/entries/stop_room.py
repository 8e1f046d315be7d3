"""Stops on the timeline: refused where there is no room to come to rest and to start again, or nothing to hold."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from sequencer.errors import InputError
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.trajectories.stops import least_beats
from sequencer.show.reading import ReadShow
from sequencer.staging.entries.moments import Moments
from sequencer.staging.staged import Block
from sequencer.timing.position import TOUCH
from sequencer.units import counted


def refuse_stops(read: ReadShow, moments: Moments, blocks: Sequence[Block]) -> None:
    """Refuse stops that cannot be danced.

    Parameters
    ----------
    read : ReadShow
    moments : Moments
    blocks : sequence of Block
        Of all performers: patterns, links and stops, by start, none overlapping another of the same hand.

    Raises
    ------
    InputError
        If a stop is too short, a hold follows no pattern, or a rest and a hold share a gap.
    """
    if not any(block.stop for block in blocks):
        return
    for record in read.parts:
        own = [block for block in blocks if block.who == record.name]
        links = [block for block in own if block.link]
        for side, prop in record.props.items():
            if side in SIDES:
                seen = _Hand(read, moments, side, prop.held().flexible, links)
                seen.refuse([b for b in own if side in b.hands or side in b.stopped])


@dataclass(frozen=True, slots=True)
class _Hand:
    """What one hand dances: its patterns and stops, and the links written between them."""

    read: ReadShow
    moments: Moments
    side: Side
    hangs: bool
    links: Sequence[Block]

    def refuse(self, own: Sequence[Block]) -> None:
        """Refuse what cannot be danced of its patterns and stops, by start."""
        gaps: list[tuple[Block | None, list[Block]]] = [(None, [])]
        for block in own:
            if block.stop:
                gaps[-1][1].append(block)
            else:
                gaps.append((block, []))
        after = [block for block, _ in gaps[1:]]
        for (before, stops), following in zip(gaps, [*after, None], strict=True):
            if stops:
                self._gap(before, stops, following)

    def _gap(self, before: Block | None, stops: list[Block], after: Block | None) -> None:
        if len({stop.stop for stop in stops}) > 1:
            second = next(stop for stop in stops if stop.stop != stops[0].stop)
            raise self._fault(
                "rest-beside-hold", second,
                f"{second.who} has a {stops[0].stop} before this {second.stop}, and no pattern between them",
                "write one of the two, or a pattern between them",
            )  # fmt: skip
        if stops[0].stop == "hold":
            self._hold(before, stops, after)
        elif before is not None and after is not None:
            self._rest(before, stops, after)

    def _rest(self, before: Block, stops: list[Block], after: Block) -> None:
        first, last = stops[0], stops[-1]
        brakes = not self._linked(before.end, first.start)
        starts = not self._linked(last.end, after.start)
        low = before.end if brakes else first.start
        high = after.start if starts else last.end
        self._roomy(first, high - low, brakes=brakes, starts=starts)

    def _hold(self, before: Block | None, stops: list[Block], after: Block | None) -> None:
        first, last = stops[0], stops[-1]
        if before is None:
            raise self._fault(
                "nothing-to-hold", first, f"nothing comes before {first.who}'s hold, so there is no place to hold",
                "write a pattern before it, or a rest instead",
            )  # fmt: skip
        for earlier, later in pairwise([before, *stops]):
            touches = later.start <= earlier.end + TOUCH
            if not (touches or (earlier is before and self._linked(earlier.end, later.start))):
                raise self._fault(
                    "nothing-to-hold", later,
                    f"{later.who}'s {earlier.title} ends at {self._place(earlier.end)}, before this hold begins",
                    "start the hold there, write a link between them, or a rest instead",
                )  # fmt: skip
        brakes = first.start <= before.end + TOUCH
        starts = after is not None and after.start <= last.end + TOUCH
        self._roomy(first, last.end - first.start, brakes=brakes, starts=starts)

    def _roomy(self, stop: Block, room: float, *, brakes: bool, starts: bool) -> None:
        kind = stop.stop or "rest"
        least = least_beats(kind=kind, hangs=self.hangs, brakes=brakes, starts=starts)
        if room >= least - TOUCH:
            return
        parts = [*["to stop"] * brakes, "to be still", *["to start again"] * starts]
        needs = ", ".join(parts[:-1]) + " and " + parts[-1] if len(parts) > 1 else parts[0]
        raise self._fault(
            "stop-too-short", stop,
            f"{stop.who}'s {kind} of {counted(room, 'beat')} is too short for the {self.side} hand, which needs "
            f"{counted(least, 'beat')} {needs}",
            f"make it {counted(least, 'beat')} or longer, or write a link in its place",
        )  # fmt: skip

    def _linked(self, start: float, end: float) -> bool:
        return any(
            abs(link.start - start) <= TOUCH and abs(link.end - end) <= TOUCH for link in self.links
        )

    def _place(self, beat: float) -> str:
        return str(self.moments.tempo.position_of(beat))

    def _fault(self, code: str, block: Block, what: str, how: str) -> InputError:
        return self.read.fault(code, (*block.path, block.stop or "rest"), what, how)
