"""Shows for tests of what is printed: a song whose truth is known, and show files of any size."""

import textwrap
from dataclasses import replace

import numpy as np

from sequencer.findings import Clearance, Finding, Report
from sequencer.outputs.sheets import write_sheets
from sequencer.show.reading import read_show
from sequencer.staging.timeline import staged
from tests.songs import even_song

LABELS = ("intro", "verse", "refrain", "verse", "refrain", "break", "refrain", "end")
LEVELS = (0.3, 0.5, 0.9, 0.55, 0.95, 0.2, 1.0, 0.3)


def song(*, duration=192.0, tempo=120.0, track="lantern_round.ogg"):
    """A song of one tempo in eight equal sections; bar 1 begins at 0.5 s."""
    cuts = np.linspace(0, duration, len(LABELS) + 1)[:-1].tolist()
    curve = np.interp(np.arange(800) / 100, np.arange(8) + 0.5, LEVELS)
    wobble = 0.06 * np.sin(np.arange(800) * 0.9)
    heard = even_song(
        len(np.arange(0.5, duration - 0.2, 60 / tempo)),
        tempo=tempo,
        start=0.5,
        duration=duration,
        sections=dict(zip(cuts, LABELS, strict=True)),
        track=track,
        sha256="4f9a1c2b7d3e" + "0" * 52,
        energy=tuple(float(e) for e in np.clip(curve + wobble, 0, 1)),
    )
    loud = zip(heard.sections, LEVELS, strict=True)
    return replace(heard, sections=tuple(replace(one, energy=level) for one, level in loud))


ROUND = """
title: Lantern Round
version: "3"
date: 2026-11-20
track: {file: lantern_round.ogg}
venue:
  name: Mill yard
  stage: {shape: rectangle, width: 12 m, depth: 9 m}
  audience:
    - {line: [[-9, -6], [9, -6]], name: audience}
  scenery:
    - {name: willow, outline: [[-7.5, 7], [-6.5, 7], [-6.5, 9], [-7.5, 9]], height: 4 m}
    - {name: stone trough, outline: [[6.5, 2], [7.5, 2], [7.5, 3], [6.5, 3]], height: 0.6 m, combustible: false}
  exits: [{name: lane gate, at: [9, 6]}]
  extinguishers: [{at: [-6.5, 1]}, {at: [6.5, 5], kind: water, rating: 2-A}]
  fuel_station: [-10, 10]
  wind: 3 m/s
cast:
  - {name: Łucja, stature: 1.68 m, prop: {tether: 0.55 m, fuel_mass: 45 g}}
  - {name: Søren, stature: 1.82 m, prop: {tether: 0.6 m, fuel_mass: 50 g}}
  - {name: Noa עברית, stature: 1.71 m, prop: {tether: 0.55 m, fuel_mass: 45 g}}
  - {name: 火花, stature: 1.65 m, prop: {tether: 0.5 m, fuel_mass: 40 g}}
formations:
  Line:
    spots:
      Łucja: {at: [-4.5, 2.5]}
      Søren: {at: [-1.5, 2.5]}
      Noa עברית: {at: [1.5, 2.5]}
      火花: {at: [4.5, 2.5]}
  Diamond:
    spots:
      Łucja: {at: [0, 2]}
      Søren: {at: [-3, 4.5], facing: 30}
      Noa עברית: {at: [3, 4.5], facing: -30}
      火花: {at: [0, 7]}
  Two by two:
    spots:
      Łucja: {at: [-3, 3], facing: 90}
      Søren: {at: [3, 3], facing: -90}
      Noa עברית: {at: [-2, 7]}
      火花: {at: [2, 7], facing: 180}
staging:
  - {formation: Line, from: "1.1"}
  - {formation: Diamond, from: "25.1", beats: 8}
  - {formation: Two by two, from: "61.1", beats: 8}
phrases:
  opening:
    - {pattern: static-spin, beats: 8, timing: together}
    - {pattern: three-beat-weave, beats: 24, note: keep it low until the drum}
timeline:
  - {phrase: opening, from: "5.1", repeat: 2}
  - {pattern: butterfly, beats: 16, direction: opposite}
  - {pattern: pro-bend-4, from: "25.1", beats: 32, canon: 2, who: [Łucja, Søren, Noa עברית, 火花]}
  - {pattern: antispin-flower-4, beats: 32, mirror: [Søren], note: "Breathe. Look at Łucja before the turn."}
  - {pattern: pro-bend-3, from: "53.1", beats: 24, timing: split}
  - {link: true, beats: 4}
  - {pattern: two-beat-weave, from: "70.1", beats: 32}
  - {pattern: fountain, beats: 32}
fire:
  fuel: lamp oil
  burn: {time: 240 s, measured: true}
  fuel_on_site: 2 L
  lit:
    - {who: all, from: "5.1", until: "53.1"}
    - {who: [Łucja, Søren], from: "66.1", until: "89.1", props: second set}
  handling: {light: 5 s, put_out: 5 s, swap: 10 s, waiting: on the ground, lit_by: Mira}
crew:
  - {name: Ewa, post: [-7, 4], watches: [Łucja, Noa עברית], equipment: [damp towel, fire blanket]}
  - {name: Jonas, post: [7, 4.5], watches: [Søren, 火花], equipment: [damp towel, extinguisher]}
  - {name: Mira, post: [0, -3], duty: lead, equipment: [whistle, radio]}
  - {name: Ada, post: [-10, 9], duty: fuel keeper, equipment: [lidded can]}
"""


_STAGED = {}  # by text and song: what is staged never changes, and many tests look at the same


def show(folder, text=ROUND, *, name="lantern-round.yaml", heard=None):
    """A staged show from the text of a show file."""
    path = folder / name
    path.write_text(textwrap.dedent(text), encoding="utf-8")
    key = (name, text, repr(heard))
    if "pattern_files" in text:  # they lie beside the show
        return staged(read_show(path), heard or song())
    if key not in _STAGED:
        before = next(reversed(_STAGED.values()), None)  # most texts differ from it in one place
        _STAGED[key] = staged(read_show(path), heard or song(), before=before)
    return replace(_STAGED[key], file=str(path))


_PRINTED = []  # once a process: the round, and all its sheets


def printed(maker):
    """The round as staged and the files of its sheets, in a folder of pytest's `tmp_path_factory`; not to be changed."""
    if not _PRINTED:
        folder = maker.mktemp("printed")
        round_ = show(folder)
        _PRINTED.append((round_, write_sheets(round_, report(), folder / "out")))
    return _PRINTED[0]


def report(*, stop=True):
    """Findings and clearances of every kind; without `stop` nothing stands against the show."""
    found = [
        Finding(
            code="ends-turned-round",
            severity="note",
            who=("Łucja",),
            start=104.5,
            end=116.5,
            position="53.1",
            message="pro-bend-3 ends the other way round",
            remedies=("dance it twice", "start at an out"),
            source="docs/motion.md, section 3",
        )
    ]
    if stop:
        found.insert(
            0,
            Finding(
                code="too-close",
                severity="stop",
                who=("Łucja", "Søren"),
                start=50.3,
                end=52.0,
                position="25.4",
                message="Łucja’s right head comes within 0.12 m of Søren’s left arm",
                remedies=("move Søren 0.4 m to stage left",),
                source="default rules: 0.30 m between performers",
                where=(-1.0, 2.5),
            ),
        )
    passes = (
        Clearance(
            between=("Łucja", "Søren"), distance=0.12 if stop else 0.42, required=0.3, at=50.3, error=0.005,
            parts=("right head", "left arm"), where=(-1.0, 2.5), position="25.4",
        ),
        Clearance(
            between=("Noa עברית", "audience"), distance=3.4, required=3.05, at=60.3, error=0.005,
            parts=("left head", ""), where=(-1.0, -2.5), position="30.4",
        ),
        Clearance(
            between=("Søren", "火花"), distance=2.0, required=0.3, at=0.0, error=0.0, bound=True,
        ),
    )  # fmt: skip
    return Report(
        show="lantern-round.yaml",
        findings=tuple(found),
        clearances=passes,
        not_checked=("Where the crew walk was not looked at.",),
    )


WORDS = "Breathe and look at the others before the turn comes round again. "


def crowd(*, performers, blocks, letters, notes=0, script="Latin"):
    """Text of a show file of any size, with names of `letters` letters."""
    stem = {"Latin": "Wolfenbrand", "Hebrew": "להבה ", "none": "火花炎"}[script]
    names = [(f"P{k} " + stem * letters)[:letters].strip() for k in range(1, performers + 1)]
    cast = "\n".join(f'  - {{name: "{n}", stature: 1.7 m, prop: {{tether: 0.5 m}}}}' for n in names)
    patterns = ("static-spin", "three-beat-weave", "butterfly", "antispin-flower-4")
    steps = []
    for k in range(blocks):
        note = (WORDS * 40)[:notes].strip() if k % 5 == 0 else ""
        start = 'from: "3.1", ' if k == 0 else ""
        steps.append(f'  - {{{start}pattern: {patterns[k % 4]}, beats: 4, note: "{note}"}}')

    def spots(shift):
        return "\n".join(
            f'      "{n}": {{at: [{(k % 8) * 2.2 - 7.7 + shift:.2f}, {(k // 8) * 2.4 + 1:.2f}], facing: {k * 9}}}'
            for k, n in enumerate(names)
        )

    return f"""
title: "{(stem * letters)[:letters].strip()}"
version: "12"
date: 2026-11-20
track: {{file: a.ogg}}
venue:
  stage: {{shape: rectangle, width: 20 m, depth: 14 m}}
  audience: [{{line: [[-12, -8], [12, -8]]}}]
cast:
{cast}
formations:
  One:
    spots:
{spots(0.0)}
  Two:
    spots:
{spots(0.4)}
staging:
  - {{formation: One, from: "1.1"}}
  - {{formation: Two, from: "20.1", beats: 8}}
timeline:
{chr(10).join(steps)}
fire:
  fuel: lamp oil
  lit: [{{who: all, from: "3.1", until: "50.1"}}]
crew:
  - {{name: "Guard {"x" * letters}", post: [-11, -2], equipment: [damp towel, "{"blanket " * 12}"]}}
  - {{name: Second, post: [11, -2], equipment: [damp towel]}}
"""
