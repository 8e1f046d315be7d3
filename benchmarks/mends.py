"""Faults planted in clean solos, one at a time, and the mends that are found for them.

Run: python benchmarks/mends.py [--json] [--faults 100] [--seed 0] [--kinds reach,link]

Each draw takes one of a few clean solos of its seed (performer, tempo, patterns, links, lit or not), plants one fault
of one kind with drawn particulars, and checks again (as drawn, unless
`--flown` is given); a draw in which nothing of that kind is found is drawn anew. Then mends are
sought as `check` seeks them, and each is made in the file and the file is checked from its text. A mend holds if
the fault is gone from its place and no `stop` or `warn` has come that was not there; of a range, a drawn value too. The solos are shared, and lengths
are planted in whole 5 cm, so that most patterns are fitted once.
"""

import argparse
import json
import statistics
import time
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

import numpy as np

from sequencer.checks.fault_kinds import MENDED_CODES
from sequencer.checks.suite import checked
from sequencer.errors import InputError
from sequencer.findings import SEVERITIES, Finding
from sequencer.planning.mends.dance_mends import FoundMends, causes, sought
from sequencer.planning.trying.trials import FaultTrials, of_one_worst
from sequencer.show.editing import edited_text
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.song import Section, Song

BEATS = 96
CALM = (
    "two-beat-weave",
    "three-beat-weave",
    "static-spin",
    "extension",
    "butterfly",
    "windmill",
    "pendulum",
)
FULL = ("antispin-flower-4", "inspin-flower-4", "infinity", "pro-bend-4", "pro-bend-3", "anti-bend-4",
        "extension-with-antispin")  # fmt: skip
# Tempo, stature [m] and tether [m]: few, so that patterns fitted once need not be fitted again.
PERFORMERS = ((100.0, 1.60, 0.40), (118.0, 1.78, 0.50), (128.0, 1.78, 0.40), (110.0, 1.60, 0.50))
SOLOS = 12  # clean ones of a seed
_SAME = 0.4  # [s] by which a fault may have moved within its block and count as the same
_SEVERAL = 0.3  # of the shows have one or two faults more, in other blocks
_DRAWS = 25  # of a plant, or of a clean solo, before another is drawn


@dataclass(kw_only=True)
class Block:
    """One pattern of a solo."""

    pattern: str
    beats: float
    hands: dict[str, str] = field(default_factory=dict)  # timing and direction
    given: dict[str, Any] = field(default_factory=dict)  # under `with`
    more: dict[str, Any] = field(default_factory=dict)  # cycle and shift
    link: float = 2.0  # [beats] of the link after it; none if 0

    @property
    def rows(self) -> list[str]:
        """Its lines of the timeline."""
        parts = [f"pattern: {self.pattern}"]
        if self.given:
            parts.append("with: {" + ", ".join(f"{k}: {v}" for k, v in self.given.items()) + "}")
        parts += [f"{k}: {v}" for k, v in {**self.hands, **self.more}.items()]
        parts.append(f"beats: {self.beats:g}")
        rows = ["  - {" + ", ".join(parts) + "}"]
        if self.link:
            rows.append(f"  - {{link: true, beats: {self.link:g}}}")
        return rows


@dataclass(kw_only=True)
class Solo:
    """What a show file is written from."""

    tempo: float
    stature: float
    tether: float
    lit: bool
    blocks: list[Block]

    @property
    def text(self) -> str:
        """The show file."""
        rows = [row for block in self.blocks for row in block.rows]
        if self.blocks[-1].link:
            rows.pop()
        rows[0] = rows[0].replace("{", "{from: 2.1, ", 1)
        fire = "fire:\n  fuel: kerosene\n  flame: 0.3 m\n  lit: [{from: 1.1, until: 24.1}]\n"
        return (
            "title: Planted\ntrack: {file: song.ogg}\nvenue:\n"
            "  stage: {shape: round, width: 9 m}\n  audience: [{line: [[-9, -9], [9, -9]]}]\n  ceiling: open\n"
            f"cast:\n  - {{name: Isa, stature: {self.stature:.2f} m, prop: {{tether: {self.tether:.2f} m}}}}\n"
            "formations:\n  middle: {spots: {Isa: {at: [0, 4.5]}}}\nstaging:\n  - {formation: middle, from: 1.1}\n"
            "timeline:\n" + "\n".join(rows) + "\n" + (fire if self.lit else "")
        )


def song_of(tempo: float) -> Song:
    """An even song."""
    times = tuple(60.0 / tempo * k for k in range(BEATS))
    end = times[-1] + 60.0 / tempo
    return Song(
        track="song.ogg", sha256="0" * 64, duration=end, tempo=tempo, metre=4, beats=times,
        downbeats=times[::4], sections=(Section(start=0.0, end=end, label="A"),),
    )  # fmt: skip


def stage(solo: Solo, *, fly: bool = True) -> Staged:
    """The solo, staged."""
    return _staged(solo.text, solo, fly=fly)


def _staged(text: str, solo: Solo, *, fly: bool = True) -> Staged:
    read = show_from_document(parse_document(text, "solo.yaml"))
    return staged(read, song_of(solo.tempo), fly=fly)


def faults_of(show: Staged) -> list[Finding]:
    """What stops or warns."""
    return [each for each in checked(show).findings if each.severity != "note"]


def _at_first_sight(show: Staged) -> list[Finding]:
    """The same as drawn, without a flight being sought: quick, and never fewer."""
    return [each for own in FaultTrials(show=show).before.values() for each in own]


def clean(draw: np.random.Generator) -> Solo:
    """A solo in whose dance nothing is wrong."""
    while True:
        tempo, stature, tether = PERFORMERS[int(draw.integers(len(PERFORMERS)))]
        solo = Solo(
            tempo=tempo,
            stature=stature,
            tether=tether,
            lit=bool(draw.random() < 0.5),
            blocks=[],
        )
        for _ in range(_DRAWS):
            one = _block(draw)
            tried = replace(solo, blocks=[*solo.blocks, one])
            if not any(
                each.code in MENDED_CODES for each in _at_first_sight(stage(tried, fly=False))
            ):
                solo = tried
            if len(solo.blocks) == 4:
                return solo


@cache
def clean_of(seed: int, number: int) -> Solo:
    """One of the clean solos of a seed."""
    return clean(np.random.default_rng([seed, number, SOLOS]))


def _block(draw: np.random.Generator) -> Block:
    name = str(draw.choice(CALM if draw.random() < 0.5 else FULL))
    timing = str(draw.choice(["together", "split"]))
    direction = str(draw.choice(["same", "opposite"]))
    more = {"shift": 0.5 * int(draw.integers(0, 4))} if draw.random() < 0.4 else {}
    return Block(
        pattern=name, beats=float(draw.choice([6, 8, 10, 14])),
        hands={"timing": timing, "direction": direction}, more=more,
        link=float(draw.choice([1, 2, 2, 3])),
    )  # fmt: skip


def _metres(draw: np.random.Generator, least: float, most: float) -> str:
    """A length within bounds [m], in whole 5 cm."""
    value = 0.05 * round(20 * float(draw.uniform(least, most)))
    return f"{100 * value:.0f} cm" if draw.random() < 0.5 else f"{value:.2f} m"


def _own_body(draw: np.random.Generator, block: Block) -> None:
    name = str(draw.choice(["ahead", "across"]))
    block.given = {**block.given, name: _metres(draw, -0.35, 0.15)}


def _reach(draw: np.random.Generator, block: Block) -> None:
    if draw.random() < 0.6:
        block.given = {**block.given, "ahead": _metres(draw, 0.15, 0.5)}
    else:
        block.given = {**block.given, "hand_radius": _metres(draw, 0.35, 0.8)}


def _slack(draw: np.random.Generator, block: Block) -> None:
    block.more = {**block.more, "cycle": float(draw.choice([3, 4, 5, 6, 8]))}


def _pace(draw: np.random.Generator, block: Block) -> None:
    block.more = {**block.more, "cycle": float(draw.choice([0.5, 0.75, 1, 1.5, 2]))}


def _floor(draw: np.random.Generator, block: Block) -> None:
    """Low: with the long tethers that `planted` gives for it, the hand's work reaches the floor."""
    block.pattern = str(draw.choice(["two-beat-weave", "three-beat-weave", "stall", "butterfly"]))
    block.given = {"up": _metres(draw, -0.3, 0.0)}
    block.hands = {"timing": "together", "direction": "same"}


def _link(draw: np.random.Generator, block: Block) -> None:
    block.link = float(draw.choice([0.5, 0.5, 1]))


def _shift(draw: np.random.Generator, block: Block) -> None:
    if draw.random() < 0.5:
        block.link = 0.0
    else:
        block.more = {**block.more, "shift": 0.25 * int(draw.integers(1, 16))}


JOINS = ("does-not-join", "needs-a-link", "needs-a-shift", "wrong-way-round", "link-too-hard")
KINDS: dict[str, tuple[Callable[[np.random.Generator, Block], None], tuple[str, ...]]] = {
    "own body": (_own_body, ("self-hit", "flame-near-body", "self-tangle")),
    "link": (_link, (*JOINS, "self-hit", "flame-near-body")),
    "reach": (_reach, ("hand-out-of-reach",)),
    "slack": (_slack, ("tether-slack",)),
    "pace": (_pace, ("too-fast-to-dance",)),
    "floor": (_floor, ("hits-floor",)),
    "shift": (_shift, (*JOINS, "self-hit", "flame-near-body", "self-tangle")),
}


def planted(
    draw: np.random.Generator, kind: str, *, seed: int, flown: bool = False
) -> tuple[Solo, Staged, list[Finding]]:
    """A solo of a seed with one fault of a kind; its faults, those of the kind first."""
    plant, codes = KINDS[kind]
    while True:
        solo = clean_of(seed, int(draw.integers(SOLOS)))
        for _ in range(_DRAWS):
            k = int(draw.integers(0, len(solo.blocks) - (kind in ("link", "shift"))))
            block = replace(solo.blocks[k])
            plant(draw, block)
            tried = replace(solo, blocks=[*solo.blocks[:k], block, *solo.blocks[k + 1 :]])
            if draw.random() < _SEVERAL:
                tried = _with_others(draw, tried, k, int(draw.integers(1, 3)))
            if kind == "floor":
                tried = replace(
                    tried, tether=round(solo.stature * float(draw.choice([0.41, 0.42])), 2)
                )
            try:
                drawn = stage(tried, fly=False)
            except (InputError, ValueError):
                continue
            if not any(each.code in codes for each in _at_first_sight(drawn)):
                continue
            show = stage(tried, fly=flown)
            found = sorted(
                faults_of(show) if flown else _at_first_sight(show),
                key=lambda each: each.code not in codes,
            )
            if found and found[0].code in codes:
                return tried, show, found


def _with_others(draw: np.random.Generator, solo: Solo, k: int, count: int) -> Solo:
    """The solo with faults of drawn kinds in some more blocks, none of them the one numbered `k`."""
    blocks = list(solo.blocks)
    free = [i for i in range(len(blocks)) if i != k]
    for i in draw.permutation(free)[:count]:
        block = replace(blocks[i])
        plant, _ = KINDS[str(draw.choice(("reach", "slack", "pace", "own body")))]
        plant(draw, block)
        blocks[i] = block
    return replace(solo, blocks=blocks)


def wrong_with(
    found: FoundMends,
    solo: Solo,
    before: list[Finding],
    gone: list[Finding],
    *,
    flown: bool,
    inside: np.random.Generator | None = None,
) -> list[str]:
    """What the mends do not do that they say, each made in the file and checked from its text.

    Of a told range a drawn value is made as well, if `inside` is given.
    """
    wrong = []
    old_show = stage(solo, fly=False)
    made = [(mend, mend.steps) for mend in found.mends]
    if inside is not None:  # a value within each range that is told
        made += [
            (mend, (mend.span[int(inside.integers(len(mend.span)))],))
            for mend in found.mends if mend.span
        ]  # fmt: skip
    for mend, steps in made:
        text = solo.text
        for step in steps:
            text = edited_text(text, list(step.changes), step.insertions)
        show = _staged(text, solo, fly=flown)
        after = faults_of(show) if flown else _at_first_sight(show)
        left = list(before)  # each stands for one of now
        for each in sorted(
            after, key=lambda one: one.message not in [own.message for own in before]
        ):
            # What was there in the same place with the same words is another one, unless it was to be cleared.
            same = [own for own in left if _alike(show, each, old_show, own)]
            if any(own in gone for own in same) and not any(
                own.message == each.message and own not in gone for own in same
            ):
                wrong.append(f"{mend.words}: {each.code} is still there")
                continue
            old = [own for own in same if own not in gone]
            if old:
                left.remove(min(old, key=lambda own, each=each: own.message != each.message))
            else:
                wrong.append(f"{mend.words}: {each.code} at {each.position} is new")
    return wrong


def _alike(now: Staged, each: Finding, then: Staged, other: Finding) -> bool:
    """Whether a fault is another one's kind and hand, no worse, and in the same block at about the same time.

    Of some kinds only the worst of a show, or of a pattern in it, is told: of these one no worse may be anywhere, of that pattern.
    """
    alike = (
        each.code == other.code and each.who == other.who
        and SEVERITIES.index(each.severity) >= SEVERITIES.index(other.severity)
        and _sides(each) <= _sides(other)
    )  # fmt: skip
    if alike and of_one_worst(other, each):
        (new,), (old,) = each.figures, other.figures
        return new.beyond <= old.beyond + 0.01
    return (
        alike and (each.code not in MENDED_CODES or _block_of(now, each) == _block_of(then, other))
        and _overlap(each, other)
    )  # fmt: skip


def _sides(fault: Finding) -> set[str]:
    """The hands that a fault is said to be of; both where none is said."""
    return set(fault.hands) or {"left", "right"}


def _block_of(show: Staged, fault: Finding) -> tuple[int, bool]:
    """How many patterns have begun when a fault of one performer ends, and whether that is in the link after the last."""
    patterns = [block for block in show.blocks_of(fault.who[0]) if not block.link]
    ends = [float(show.tempo.beats_from_seconds(at or 0.0)) for at in (fault.start, fault.end)]
    begun = sum(block.start < ends[1] - 0.05 for block in patterns)
    last = patterns[begun - 1].end if begun else 0.0
    return begun, ends[1] > last + 0.05


def _overlap(each: Finding, other: Finding) -> bool:
    if each.start is None or other.start is None:
        return each.start is other.start
    ends = [
        start if end is None else end
        for start, end in ((each.start, each.end), (other.start, other.end))
    ]
    return each.start <= ends[1] + _SAME and other.start <= ends[0] + _SAME


def outcomes(
    kinds: list[str], count: int, seed: int, *, first: int = 0, flown: bool = False
) -> Iterator[dict[str, Any]]:
    """One row for each planted fault, the kinds in turn, from the number `first` on."""
    numbers = range(first, first + count)
    return rows_of([kinds[k % len(kinds)] for k in numbers], numbers, seed=seed, flown=flown)


def rows_of(
    kinds: list[str], numbers: Iterable[int], *, seed: int, flown: bool = False
) -> Iterator[dict[str, Any]]:
    """One row for each planted fault, of a kind and a number each."""
    for kind, k in zip(kinds, numbers, strict=True):
        solo, show, found = planted(np.random.default_rng([seed, k]), kind, seed=seed, flown=flown)
        trials = FaultTrials(show=show)
        codes = KINDS[kind][1]
        (cause, *_) = [each for each in causes(show, found) if each.code in codes]
        start = time.process_time()
        answer = sought(trials, cause)
        spent = time.process_time() - start
        yield {
            "kind": kind, "number": k, "code": cause.code, "faults": len(found),
            "mends": [mend.words for mend in answer.mends],
            "same pattern": any(not mend.of_the_look for mend in answer.mends),
            "tried": answer.tried, "trials": answer.trials, "seconds": round(spent, 2),
            "message": cause.faults[0].message, "text": solo.text,
            "wrong": wrong_with(
                answer, solo, found, list(cause.faults), flown=flown,
                inside=np.random.default_rng([seed, k, 1]),
            ),
        }  # fmt: skip


def summary(rows: list[dict[str, Any]]) -> dict[str, Any]:
    """Shares of the faults by kind."""
    by: dict[str, Counter[str]] = {}
    for row in rows:
        for kind in (row["kind"], "all"):
            each = by.setdefault(kind, Counter())
            each["planted"] += 1
            each["mended"] += bool(row["mends"])
            each["same pattern"] += row["same pattern"]
            each["told"] += len(row["mends"])
            each["wrong"] += len({words.split(": ")[0] for words in row["wrong"]})
    return {
        "kinds": {kind: dict(each) for kind, each in by.items()},
        "median trials": statistics.median(row["trials"] for row in rows),
        "median seconds": statistics.median(row["seconds"] for row in rows),
        "most seconds": max(row["seconds"] for row in rows),
    }


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--json", action="store_true", help="print every row as JSON")
    parser.add_argument("--faults", type=int, default=100)
    parser.add_argument("--first", type=int, default=0, help="the number of the first fault")
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--kinds", default=",".join(KINDS))
    parser.add_argument("--verbose", action="store_true", help="print each fault as it is done")
    parser.add_argument(
        "--flown",
        action="store_true",
        help="check whole, with blocks flown for their margins (slow)",
    )
    options = parser.parse_args()
    rows = []
    for row in outcomes(
        options.kinds.split(","),
        options.faults,
        options.seed,
        first=options.first,
        flown=options.flown,
    ):
        rows.append(row)
        if options.verbose:
            print(
                row["number"],
                row["kind"],
                row["code"],
                row["trials"],
                row["seconds"],
                row["message"][:90],
                flush=True,
            )
            for words in row["mends"] or (f"tried {row['tried']}",):
                print("     ", words)
            for words in row["wrong"]:
                print("   !!!", words)
    if options.json:
        print(json.dumps({"summary": summary(rows), "rows": rows}, indent=1, ensure_ascii=False))
        return
    for kind, each in summary(rows)["kinds"].items():
        print(f"{kind:<9}", ", ".join(f"{name} {number}" for name, number in each.items()))
    print({key: value for key, value in summary(rows).items() if key != "kinds"})


if __name__ == "__main__":
    main()
