"""Hazards planted in clean shows, one at a time, and what `check` makes of them.

Run: python benchmarks/planted.py [--json] [--draws 50] [--kinds passing,ceiling] [--seed 0]

Each draw makes a clean group show of its own (tempo, places, statures, tethers, patterns), checks it, plants
one hazard of one kind with drawn particulars, and checks again. A hazard is found if the code that
names it is among the findings that stop a show, about a performer whom it concerns. A finding that
stops or warns on the clean show is a false alarm.
"""

import argparse
import json
import time
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from sequencer.checks.suite import checked
from sequencer.findings import Finding
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.timing.song import Section, Song

NAMES = ("Ash", "Birch", "Clay")
BEATS = 72


@dataclass
class Plan:
    """What a show file is written from; planting changes a few of these."""

    tempo: float
    places: dict[str, tuple[float, float]]
    after: dict[str, tuple[float, float]]
    stature: dict[str, float]
    tether: dict[str, float]
    timeline: list[str]
    walk: int = 8
    ceiling: str = "open"
    audience: float = -9.0
    scenery: list[str] = field(default_factory=list)
    posts: dict[str, tuple[float, float]] = field(default_factory=dict)
    lit: tuple[str, str] = ("1.1", "13.1")
    burn: int = 240
    watches: dict[str, str] = field(default_factory=dict)


def clean(draw: np.random.Generator) -> Plan:
    """A show in which nothing is wrong."""

    def near(x: float, y: float) -> tuple[float, float]:
        return (
            round(x + float(draw.uniform(-0.3, 0.3)), 2),
            round(y + float(draw.uniform(-0.3, 0.3)), 2),
        )

    places = {"Ash": near(-4, 4), "Birch": near(4, 4), "Clay": near(0, 8)}
    after = {"Ash": near(-4.5, 5), "Birch": near(4.5, 5), "Clay": near(0, 8.5)}
    pattern = str(draw.choice(["extension", "static-spin"]))
    cycle = {"extension": 2, "static-spin": 1}[pattern]
    return Plan(
        tempo=float(draw.uniform(108, 124)),
        places=places,
        after=after,
        stature={name: round(float(draw.uniform(1.58, 1.85)), 2) for name in NAMES},
        tether={name: round(float(draw.uniform(0.40, 0.50)), 2) for name in NAMES},
        timeline=[
            f"{{who: all, from: 3.1, pattern: {pattern}, cycle: {cycle}, timing: together, beats: 32}}"
        ],
        posts={
            "Dune": (-8.6, 6.0),
            "Eddy": (8.6, 6.0),
            "Fern": (0.0, -4.0),
            "Gale": (0.0, 13.0),
            "Heath": (12.0, 14.5),
        },
        watches={"Dune": "[Ash]", "Eddy": "[Birch]", "Gale": "[Clay]"},
    )


def text_of(plan: Plan) -> str:
    """The show file."""

    def spots(places: dict[str, tuple[float, float]]) -> str:
        return "".join(f"      {who}: {{at: [{x}, {y}]}}\n" for who, (x, y) in places.items())

    cast = "".join(
        f"  - {{name: {name}, birth_year: 1990, stature: {plan.stature[name]}, prop: {{tether: "
        f"{plan.tether[name]}, head_mass: 200 g, wick: 5 cm, fuel_mass: 20 g}}}}\n"
        for name in NAMES
    )
    crew = ""
    for name, (x, y) in plan.posts.items():
        duty = {"Fern": "perimeter", "Heath": "fuel keeper"}.get(name, "spotter")
        watch = f", watches: {plan.watches[name]}" if name in plan.watches else ""
        crew += (
            f"  - {{name: {name}, post: [{x}, {y}], duty: {duty}{watch}, equipment: "
            "[damp towel, fire blanket, bucket of water, lidded metal can]}\n"
        )
    scenery = "  scenery:\n" + "".join(f"    - {row}\n" for row in plan.scenery)
    return f"""\
title: Planted
track: {{file: song.ogg}}
venue:
  setting: outdoors
  stage: {{shape: rectangle, width: 18 m, depth: 12 m}}
  audience:
    - {{name: fence, line: [[-14, {plan.audience}], [14, {plan.audience}]]}}
  ceiling: {plan.ceiling}
{scenery if plan.scenery else ""}  extinguishers:
    - {{at: [-9.4, 6.6], rating: "2-A:10-B:C", kind: foam}}
    - {{at: [9.4, 6.6], rating: "2-A:10-B:C", kind: foam}}
    - {{at: [0, 13.8], rating: "2-A:10-B:C", kind: foam}}
    - {{at: [12, 13.6], rating: "2-A:10-B:C", kind: foam}}
  fuel_station: [12, 13.5]
  wind: 2 m/s
  wind_from: stage left
cast:
{cast}formations:
  first:
    spots:
{spots(plan.places)}  second:
    spots:
{spots(plan.after)}staging:
  - {{formation: first, from: 1.1}}
  - {{formation: second, from: 5.1, beats: {plan.walk}}}
timeline:
{"".join(f"  - {row}{chr(10)}" for row in plan.timeline)}fire:
  fuel: kerosene
  burn: {{time: {plan.burn} s, measured: true}}
  flame: 0.40 m
  fuel_on_site: 2 L
  lit:
    - {{who: all, from: {plan.lit[0]}, until: {plan.lit[1]}}}
crew:
{crew}rules:
  profile: default
  permit: none, a benchmark
"""


def findings(plan: Plan) -> list[Finding]:
    """What stands against the show, or warns of it."""
    beat = 60 / plan.tempo
    song = Song(
        track="song.ogg",
        sha256="0" * 64,
        duration=BEATS * beat,
        tempo=plan.tempo,
        metre=4,
        beats=tuple(float(t) for t in beat * np.arange(BEATS)),
        downbeats=tuple(float(t) for t in beat * np.arange(0, BEATS, 4)),
        sections=(Section(start=0.0, end=BEATS * beat, label="A"),),
    )
    show = staged(show_from_document(parse_document(text_of(plan), "planted.yaml")), song)
    return [finding for finding in checked(show).findings if finding.severity != "note"]


Planting = Callable[[Plan, np.random.Generator], str]  # changes the plan, gives who it concerns


def passing(plan: Plan, draw: np.random.Generator) -> str:
    """Ash walks close by Birch, who stays."""
    x, y = plan.places["Birch"]
    plan.after["Birch"] = (x, y)
    beside = float(draw.uniform(0.8, 1.3))
    plan.places["Ash"], plan.after["Ash"] = (x - 4.0, y + beside), (x + 3.0, y + beside)
    plan.after["Clay"] = plan.places["Clay"]
    plan.walk = 16
    return "Ash"


def crossing(plan: Plan, draw: np.random.Generator) -> str:
    """Ash and Birch change places through each other."""
    ash, birch = plan.places["Ash"], plan.places["Birch"]
    shift = float(draw.uniform(-0.4, 0.4))
    plan.after |= {"Ash": (birch[0], birch[1] + shift), "Birch": ash, "Clay": plan.places["Clay"]}
    plan.walk = 16
    return "Birch"


def ceiling(plan: Plan, draw: np.random.Generator) -> str:
    """A ceiling that the flame comes too near to."""
    plan.ceiling = f"{draw.uniform(2.6, 3.3):.2f} m"
    return "Ash"


def audience(plan: Plan, draw: np.random.Generator) -> str:
    """A fence too near to the front."""
    plan.audience = round(float(draw.uniform(-4.5, -1.5)), 2)
    return "Birch"


def scenery(plan: Plan, draw: np.random.Generator) -> str:
    """Something that burns, or not, within reach of Clay."""
    x, y = plan.after["Clay"]
    burns = str(bool(draw.integers(2))).lower()
    low = x + float(draw.uniform(0.5, 0.9))
    plan.scenery.append(
        f"{{name: crate, outline: [[{low:.2f}, {y - 0.5:.2f}], [{low + 1:.2f}, {y - 0.5:.2f}], "
        f"[{low + 1:.2f}, {y + 0.5:.2f}], [{low:.2f}, {y + 0.5:.2f}]], height: "
        f"{draw.uniform(1.6, 2.4):.2f}, combustible: {burns}}}"
    )
    return "Clay"


def post_inside(plan: Plan, draw: np.random.Generator) -> str:
    """A spotter who stands within Ash's reach."""
    x, y = plan.after["Ash"]
    angle = float(draw.uniform(0, 2 * np.pi))
    away = float(draw.uniform(0.8, 1.2))
    plan.posts["Dune"] = (round(x + away * np.cos(angle), 2), round(y + away * np.sin(angle), 2))
    return "Ash"


def canon(plan: Plan, draw: np.random.Generator) -> str:
    """Neighbours far enough apart in unison, not in a canon of half a cycle."""
    gap = float(draw.uniform(2.35, 2.55))
    x, y = plan.places["Ash"]
    plan.places |= {"Birch": (x + gap, y)}
    plan.after = dict(plan.places)
    plan.tether = dict.fromkeys(NAMES, 0.5)
    plan.stature = dict.fromkeys(NAMES, 1.7)
    how = "with: {hand_radius: 40 cm}, cycle: 2, timing: together, beats: 32, canon: 1"
    plan.timeline = [f"{{who: all, from: 3.1, pattern: extension, {how}}}"]
    return "Ash"


def self_hit(plan: Plan, draw: np.random.Generator) -> str:
    """A toroid with a tether so long that its lobes sweep the own body, written so that nothing is fitted."""
    plan.tether["Ash"] = round(float(draw.uniform(0.66, 0.80)), 2)
    place = "hand_radius: 20 cm, across: 0 cm, ahead: 10 cm, up: 0 cm, from: 0"
    how = f"with: {{lobes: {int(draw.choice([4, 6]))}, {place}}}, timing: together, beats: 16"
    plan.timeline = [f"{{who: Ash, from: 3.1, pattern: toroid, {how}}}"]
    return "Ash"


def slack(plan: Plan, draw: np.random.Generator) -> str:
    """An extension so slow that nothing holds the tether out at the top."""
    plan.timeline.append(
        f"{{who: Clay, from: 11.1, pattern: extension, cycle: {int(draw.integers(4, 7))}, "
        "timing: together, beats: 12}"
    )
    return "Clay"


def wrong_way(plan: Plan, draw: np.random.Generator) -> str:
    """An odd build danced through once, then an even one of the same shape at the same pace."""
    lobes = int(draw.choice([3, 5]))
    plan.timeline = [
        f"{{who: Clay, {when}pattern: toroid, with: {{lobes: {count}, hand_radius: 10 cm}}, cycle: {count}, "
        f"timing: together, beats: {beats}}}"
        for when, count, beats in (("from: 3.1, ", lobes, lobes), ("", 4, 8))
    ]
    return "Clay"


def burn_out(plan: Plan, draw: np.random.Generator) -> str:
    """A wick that burns less long than it is lit."""
    lit = 48 * 60 / plan.tempo
    plan.burn = int(lit * draw.uniform(0.5, 0.95))
    return "Ash"


def uncovered(plan: Plan, draw: np.random.Generator) -> str:
    """Clay's spotter stands far away."""
    plan.posts["Gale"] = (
        round(float(draw.uniform(-4, 4)), 2),
        round(float(draw.uniform(22, 28)), 2),
    )
    return "Clay"


KINDS: dict[str, tuple[Planting, set[str]]] = {
    "passing": (passing, {"too-close"}),
    "crossing": (crossing, {"too-close"}),
    "ceiling": (ceiling, {"ceiling-too-low"}),
    "audience": (audience, {"audience-too-close"}),
    "scenery": (scenery, {"scenery-too-close"}),
    "post-inside": (post_inside, {"post-in-reach"}),
    "canon": (canon, {"too-close"}),
    "self-hit": (self_hit, {"self-hit"}),
    "slack": (slack, {"tether-slack"}),
    "wrong-way": (wrong_way, {"wrong-way-round"}),
    "burn-out": (burn_out, {"burns-out"}),
    "uncovered": (uncovered, {"post-out-of-reach"}),
}


def planted(kind: str, draws: int, seed: int) -> dict[str, object]:
    """Figures of one kind."""
    plant, codes = KINDS[kind]
    found = false = 0
    missed, alarms = [], []
    for k in range(draws):
        plan = clean(np.random.default_rng([seed, k]))
        before = findings(plan)
        false += bool(before)
        alarms += [finding.code for finding in before]
        who = plant(plan, np.random.default_rng([seed, k, 1]))
        after = findings(plan)
        hit = any(finding.code in codes and who in finding.who for finding in after)
        found += hit
        if not hit:
            missed.append({"draw": k, "said": sorted({finding.code for finding in after})})
    return {
        "planted": draws,
        "found": found,
        "recall": found / draws,
        "clean_shows_with_a_finding": false,
        "false_alarms": sorted(set(alarms)),
        "missed": missed,
    }


def main() -> None:
    """Plant, check, print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--json", action="store_true")
    parser.add_argument("--draws", type=int, default=50)
    parser.add_argument("--kinds", default=",".join(KINDS))
    parser.add_argument("--seed", type=int, default=0)
    given = parser.parse_args()
    began = time.process_time()
    rows = {kind: planted(kind, given.draws, given.seed) for kind in given.kinds.split(",")}
    total = sum(int(str(row["planted"])) for row in rows.values())
    figures = {
        "kinds": rows,
        "planted": total,
        "found": sum(int(str(row["found"])) for row in rows.values()),
        "clean_shows_with_a_finding": sum(
            int(str(row["clean_shows_with_a_finding"])) for row in rows.values()
        ),
        "seconds": round(time.process_time() - began, 1),
    }
    if given.json:
        print(json.dumps(figures, indent=2))
        return
    for kind, row in rows.items():
        print(kind, row)
    print({key: value for key, value in figures.items() if key != "kinds"})


if __name__ == "__main__":
    main()
