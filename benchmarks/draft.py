"""Routines drafted for songs: whether they are clean, how good they are proven to be, and how they are made.

Run: python benchmarks/draft.py --songs FOLDER [--count 20] [--patterns 10,25,60] [--groups 4,6] [--seed 0] [--json]

For each song and each number of patterns a show of one performer with poi is written, whose repertoire is that
many patterns drawn by the seed; it is drafted, and the file that comes out is checked whole, anew. With `--groups` the
show has so many performers of different statures, who know 25 patterns; formations are drafted too. Of each:

    clean    the check, as it can be flown, says no STOP and no WARN that it does not say of the show without a routine
    gap      how much better a routine could be at most, as a share of the cost
    links    share of the time
    size     rank correlation of loudness and of how large the props are danced, over the stretches
    most     the largest such correlation if what returns were as large each time, however loud
    apart    how far the middle four fifths of these stretches lie apart in loudness [dB]: below 1 dB the song has neither
             calm nor full parts, ranks are those of noise, and a draft follows its strokes instead
    sized    stretches that are drawn smaller or larger than usual
    alike    parts that return are danced alike: the same moves, hands and cycles, in whatever size
    soon     patterns that come again within two eights without being part of what returns
"""

import argparse
import json
import os
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

os.environ.setdefault("OMP_NUM_THREADS", "1")
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import numpy as np
from scipy.stats import rankdata, spearmanr

from sequencer.checks.suite import checked
from sequencer.errors import InputError
from sequencer.motion.patterns.library import patterns
from sequencer.planning.drafting.auditioning.repertoire import BY_NAME_ONLY
from sequencer.planning.drafting.draft_search import drafted_show
from sequencer.planning.drafting.drafted_routine import Draft
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.staged import Block, Staged
from sequencer.staging.timeline import staged
from sequencer.tasks.songs import hear_song
from sequencer.timing.loudness import SAME_LOUDNESS
from sequencer.timing.song import Song

_GROUP_PATTERNS = 25
_TENTHS = 10  # values of loudness per second
_STATURES = (1.70, 1.62, 1.80, 1.66, 1.75, 1.85)  # [m]
_NAMES = ("Ann", "Bo", "Cy", "Dee", "Eve", "Flo")
_STAGE = {1: (8, 8), 4: (16, 12), 6: (22, 14)}  # [m] width and depth
_SHOW = """\
title: Draft
track: {{file: {track}}}
venue: {{name: hall, stage: {{shape: rectangle, width: {width} m, depth: {depth} m}}, audience: [{{name: row, line: [[-12, -6], [12, -6]]}}]}}
cast:
{cast}{staged}timeline: []
"""
_PERFORMER = (
    "  - {{name: {name}, stature: {stature:.2f} m, prop: poi, repertoire: {{known: [{names}]}}}}\n"
)
_ALONE = """\
formations: {start: {spots: {Ann: {at: [0, 4]}}}}
staging: [{formation: start, from: 1.1}]
"""


def repertoire(count: int, seed: int) -> list[str]:
    """So many patterns for poi, drawn by the seed."""
    suited = [
        name for name, each in patterns().items() if each.suits("poi") and name not in BY_NAME_ONLY
    ]
    drawn = np.random.default_rng([seed, count]).permutation(len(suited))[:count]
    return [suited[k] for k in sorted(drawn)]


def drafted(track: Path, song: Song, names: Sequence[str], people: int = 1) -> dict[str, Any]:
    """Figures of one draft."""
    width, depth = _STAGE[people]
    text = _SHOW.format(
        track=json.dumps(str(track)),
        width=width,
        depth=depth,
        cast="".join(
            _PERFORMER.format(name=name, stature=stature, names=", ".join(names))
            for name, stature in list(zip(_NAMES, _STATURES, strict=True))[:people]
        ),
        staged=_ALONE if people == 1 else "",
    )
    before = time.process_time()
    try:
        draft = drafted_show(text, str(track.with_suffix(".yaml")), song)
    except InputError as error:
        return {"refused": str(error), "seconds": time.process_time() - before}
    seconds = time.process_time() - before
    show = staged(show_from_document(parse_document(draft.text, "draft.yaml")), song)
    known = {(one.code, one.message) for one in draft.left}
    if people == 1:
        bare = staged(show_from_document(parse_document(text, "draft.yaml")), song)
        known = {(one.code, one.message) for one in checked(bare, flown=True).findings}
    new = [
        one
        for one in checked(show, flown=True).findings
        if one.severity != "note" and (one.code, one.message) not in known
    ]
    return {
        "clean": not new,
        "stops": sum(one.severity == "stop" for one in new),
        "staggered": draft.text.count("in canon") + draft.text.count("call and answer"),
        "mirrored": sum(block.mirrored for block in show.blocks),
        "findings": [f"{one.severity} {one.code} {one.position}: {one.message}" for one in new],
        "gap": draft.gap,
        "dearer": draft.dearer,
        "cost": draft.cost,
        "seconds": seconds,
        "links": link_share(show),
        "size": size_follows(show, song),
        "most": most_of_size(show, song),
        "apart": apart(show, song),
        "sized": sum(", drawn " in words for *_, words in draft.rows),
        "alike": alike(show),
        "soon": too_soon(show, draft),
        "patterns": len({block.title for block in show.blocks if not block.link}),
    }


def link_share(show: Staged) -> float:
    """Share of the danced time that is spent in links."""
    linked = sum(block.end - block.start for block in show.blocks if block.link)
    whole = sum(block.end - block.start for block in show.blocks)
    return linked / whole


def size_follows(show: Staged, song: Song) -> float:
    """Rank correlation of the loudness of blocks and of how far the heads are from the middle of their paths."""
    dancer = show.dancers[0]
    loud, sizes = [], []
    for block in show.blocks_of(dancer.name):
        if block.link:
            continue
        loud.append(loudness_of(show, song, block))
        beats = np.linspace(block.start + 0.5, block.end - 0.5, 200)
        spread = []
        for side, trajectory in dancer.trajectories.items():
            state = trajectory.at(beats)
            head = state.hand + dancer.props[side].length * state.tether
            spread.append(np.mean(np.sum((head - head.mean(axis=0)) ** 2, axis=1)))
        sizes.append(float(np.sqrt(np.mean(spread))))
    if len(set(loud)) < 3 or len(set(sizes)) < 3:
        return float("nan")
    return float(spearmanr(loud, sizes).statistic)


def loudness_of(show: Staged, song: Song, block: Block) -> float:
    """Mean energy of the song while a block is danced."""
    curve = np.array(song.energy)
    low, high = (
        show.seconds(beat) / song.duration * len(curve) for beat in (block.start, block.end)
    )
    return float(curve[max(int(low), 0) : max(int(high), int(low) + 1)].mean())


def apart(show: Staged, song: Song) -> float:
    """How far the middle four fifths of the blocks lie apart in loudness [dB]; 0 for a song without."""
    if not song.loudness:
        return 0.0
    power = 10 ** (np.array(song.loudness) / 10)
    levels = []
    for block in show.blocks_of(show.dancers[0].name):
        if not block.link:
            low, high = (round(_TENTHS * show.seconds(beat)) for beat in (block.start, block.end))
            levels.append(10 * np.log10(power[max(low, 0) : max(high, low + 1)].mean()))
    return float(np.percentile(levels, 90) - np.percentile(levels, 10))


def most_of_size(show: Staged, song: Song) -> float:
    """Rank correlation of loudness with its mean rank over all blocks of the same part that are danced alike."""
    label = dict(zip(show.song.section_names(), (s.label for s in show.song.sections), strict=True))
    blocks = [block for block in show.blocks_of(show.dancers[0].name) if not block.link]
    ranks = rankdata([loudness_of(show, song, block) for block in blocks])
    same: dict[tuple[Any, ...], list[float]] = {}
    keys = [
        (label.get(show.section_at(block.start)), block.title, block.timing, block.direction)
        for block in blocks
    ]
    for key, rank in zip(keys, ranks, strict=True):
        same.setdefault(key, []).append(float(rank))
    means = [float(np.mean(same[key])) for key in keys]
    if len(set(means)) < 2:
        return float("nan")
    return float(spearmanr(ranks, means).statistic)


def alike(show: Staged) -> bool:
    """Whether sections of one label that are as long begin and go on with the same patterns."""
    names = show.song.section_names()
    danced: dict[tuple[str, int], set[tuple[Any, ...]]] = {}
    for name, section in zip(names, show.song.sections, strict=True):
        own = [
            block
            for block in show.blocks_of(show.dancers[0].name)
            if show.section_at(block.start) == name
        ]
        if not own:
            continue
        beats = round(own[-1].end - own[0].start)
        said = tuple(
            (block.title, block.timing, block.direction, block.cycle)
            for block in own
            if not block.link
        )
        danced.setdefault((section.label, beats), set()).add(said)
    return all(len(each) == 1 for each in danced.values())


def too_soon(show: Staged, _draft: Draft) -> int:
    """Blocks of the first whose pattern comes again within two eights, in a section of another label."""
    label = dict(zip(show.song.section_names(), (s.label for s in show.song.sections), strict=True))
    blocks = [block for block in show.blocks_of(show.dancers[0].name) if not block.link]
    count = 0
    for k, one in enumerate(blocks):
        for other in blocks[k + 1 :]:
            if other.start - one.end >= 16:
                break
            same = label.get(show.section_at(one.start)) == label.get(show.section_at(other.start))
            count += other.title == one.title and not same
    return count


def main() -> None:
    """Draft, check and print."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--songs", type=Path, required=True, help="folder with songs")
    parser.add_argument(
        "--count", type=int, default=20, help="how many of them, evenly from the sorted list"
    )
    parser.add_argument("--patterns", default="10,25,60")
    parser.add_argument(
        "--groups", default="", help="how many performers instead of one: 4, 6, or 4,6"
    )
    parser.add_argument(
        "--tuned",
        type=int,
        default=9,
        help="how many songs, the first, weights were chosen on: summed apart",
    )
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--json", action="store_true")
    given = parser.parse_args()
    files = sorted(
        p for p in given.songs.rglob("*") if p.suffix in {".ogg", ".wav", ".mp3", ".flac"}
    )
    step = max(1, len(files) // given.count)
    rows = []
    with TemporaryDirectory():
        for k, file in enumerate(files[::step][: given.count]):
            song = hear_song(file)
            for count, people in cases(given.patterns, given.groups):
                row = {
                    "song": file.stem,
                    "of": count,
                    "people": people,
                    "tuned": k < given.tuned,
                    **drafted(file, song, repertoire(count, given.seed), people),
                }
                rows.append(row)
                if not given.json:
                    print(_line(row), flush=True)
    summary = {
        "songs it was tuned on": summed([row for row in rows if row["tuned"]]),
        "other songs": summed([row for row in rows if not row["tuned"]]),
    }
    print(json.dumps({"rows": rows, "summary": summary} if given.json else summary, indent=1))


def cases(patterns: str, groups: str) -> list[tuple[int, int]]:
    """How many patterns, and how many performers."""
    if groups:
        return [(_GROUP_PATTERNS, int(each)) for each in groups.split(",")]
    return [(int(each), 1) for each in patterns.split(",")]


def summed(rows: Sequence[dict[str, Any]]) -> dict[str, Any]:
    """All rows together."""
    made = [row for row in rows if "refused" not in row]
    gaps = [row["gap"] for row in made]
    sizes = [row["size"] for row in made if row["size"] == row["size"]]
    heard = [
        row["size"] for row in made if row["size"] == row["size"] and row["apart"] >= SAME_LOUDNESS
    ]
    return {
        "drafts": len(rows),
        "refused": len(rows) - len(made),
        "clean": sum(row["clean"] for row in made),
        "no STOP": sum(not row["stops"] for row in made),
        "gap at most 2 %": sum(gap <= 0.02 for gap in gaps),
        "gap at most 5 %": sum(gap <= 0.05 for gap in gaps),
        "links at most 15 %": sum(row["links"] <= 0.15 for row in made),
        "size follows by 0.6": sum(size >= 0.6 for size in sizes),
        "of songs with calm and full parts": f"{sum(size >= 0.6 for size in heard)} of {len(heard)}",
        "size, median": float(np.median(sizes)) if sizes else None,
        "alike": sum(row["alike"] for row in made),
        "too soon": sum(row["soon"] > 0 for row in made),
        "CPU seconds, median": float(np.median([row["seconds"] for row in rows])) if rows else None,
        "CPU seconds, most": max((row["seconds"] for row in rows), default=None),
    }


def _line(row: dict[str, Any]) -> str:
    head = f"{row['song'][:34]:34s} {row['of']:3d} x {row['people']}"
    if "refused" in row:
        return f"{head}  refused after {row['seconds']:.0f} s: {row['refused']}"
    said = "clean" if row["clean"] else f"NOT clean: {row['findings'][0][:90]}"
    return (
        f"{head}  gap {100 * row['gap']:5.2f} %  links {100 * row['links']:4.1f} %  size {row['size']:5.2f}  "
        f"{'alike' if row['alike'] else 'NOT ALIKE'}  soon {row['soon']}  {row['patterns']:2d} patterns  "
        f"{row['seconds']:5.1f} s  {said}"
        + (
            f"  mirrored {row['mirrored']}, canon or answer {row['staggered']}"
            if row["people"] > 1
            else ""
        )
    )


if __name__ == "__main__":
    main()
