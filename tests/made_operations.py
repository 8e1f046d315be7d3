"""A show in several layouts, and operations on it drawn at random."""

# ruff: noqa: ARG005  # each maker is given the draw and the values

import json

from sequencer.show.operations import block_operations as blocks
from sequencer.show.operations import floor_operations as floor
from sequencer.show.operations import heading_operations as headings
from sequencer.show.operations import pattern_operations as own
from sequencer.show.operations import people_operations as people
from sequencer.show.operations import phrase_operations as phrasing
from sequencer.show.operations import section_operations as sections
from sequencer.show.operations import together_operations as together
from sequencer.show.operations import tonight_operations as tonight
from sequencer.show.operations.combined_operations import DoTogether, MakeChanges
from tests.operation_oracle import CHANGES, WRITTEN, at

SHOW = """\
# Three, and a dog
title: "Three"            # its name
version: 1

track:
  file: song.ogg
  corrections:            # ours
    sections:
      - {from: 1.1, name: intro}
      # here the drum comes in
      - {from: 5.1, name: verse}    # loud

venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience:
    - {name: front, line: [[-7, -9], [7, -9]]}
  exits: []               # none yet
  fuel_station: [12, 12]

# Who is in it
cast:
  - {name: Ash, stature: 1.7, prop: &poi {kind: poi, tether: 0.45 m}}
  - {name: Birch, stature: 1.60 m, prop: *poi}    # with a cold
  - name: Cedar
    # inner: measured twice
    stature: '1.8'
    prop: *poi

formations:
  wide:
    spots:
      Ash: {at: [-4, 4]}
      Birch: {at: [0, 4]}    # middle
      Cedar: {at: [4, 4], facing: 90}
  deep: {spots: {Ash: {at: [-3, 3]}, Birch: {at: [0, 6]}, Cedar: {at: [3, 3]}}}
  row: {shape: line, centre: [0, 4], spacing: 3 m, order: [Ash, Birch, Cedar]}

staging:
  - {formation: wide, from: 1.1}
  - formation: deep
    from: 5.1
    beats: 8
    via:                  # inner: round the post
      Ash: [[-3.5, 3.5]]
      Cedar: [[3.5, 3.5]]

entrances:
  - {who: [Ash, Cedar], comes_on: 2.1, beats: 4, side: stage left}
  - {who: Ash, goes_off: 19.1, beats: 4, at: [-6, 3]}   # round the back

pattern_files: [moves.yaml]
patterns:
  # of four petals
  small flower: {law: orbit, set: {ratio: -3, hand_radius: 25 cm}}  # close
  slow cube:
    law: toroid
    needs: [small flower]   # inner: first
    difficulty: 2

# What is danced more than once
phrases:
  both:
    - {pattern: extension, cycle: 2, beats: 6, timing: together}
    # and then
    - {link: true, beats: 2}
  "all of it":
    - {phrase: both, repeat: 3, note: thrice}
    - pattern: slow cube  # inner: slowly
      with: {amplitude: 45}
      beats: 8
    - {phrase: both, mirrored: true}

timeline:
  # in the dark
  - {who: [Ash, Birch], from: 2.1, phrase: both, repeat: 2}   # two of them
  - {who: Cedar, from: 2.1, pattern: static-spin, cycle: 1, beats: 8, note: "look, up: there"}

  # and lights
  - {from: 6.1, phrase: all of it, mirror: [Birch]}
  - {rest: 4}
  - who: [Ash, Birch, Cedar]
    phrase: both
    # inner: four apart
    canon: 4
  - {who: [Ash, Cedar], pattern: extension, until: 20.1}
  - {accent: 21.1}

fire:
  fuel: kerosene
  lit: [{who: Ash, from: 2.1, until: 6.1}, {who: [Birch, Cedar], from: 3.1, until: 9.1, lit_by: Ivy}]
crew:
  - {name: Ivy, post: [-8, 6], duty: spotter, watches: [Ash]}
  - {name: Oak, post: [8, 6], duty: lighter}
stop_call: {callers: [Ash, Ivy], does: {Ash: put the poi down}}
rules: {}
# the end
"""
BARE = """\
title: One
track: {file: a.ogg}
venue: {stage: {shape: round, width: 9}, audience: [{line: [[-7, -9], [7, -9]]}]}
cast: [{name: Ash, stature: 1.7, prop: poi}]"""

_HEAD, _TIMELINE, _TAIL = SHOW.partition("timeline:\n")
_BODY, _FIRE, _REST = _TAIL.partition("\nfire:")
FLUSH = _HEAD + _TIMELINE + "\n".join(line[2:] for line in _BODY.split("\n")) + _FIRE + _REST

VARIANTS = (
    SHOW,
    SHOW.replace("\n", "\r\n"),
    SHOW.removesuffix("\n"),
    BARE,
    BARE + "\n",
    FLUSH,  # the entries stand right below the heading's first letter
)


# Operations at random

_MOMENTS = ("3.1", "17.3+1/2", "1:02.5", "verse", "end of intro", "200.1")
_NEW = ("Dew", "Elm", "Ash", "Flo Ra", "é")
_PATTERNS = ("extension", "corkscrew", "small flower")


class Draw:
    """Operations at random on a show; some of them cannot be done."""

    def __init__(self, random):
        self.random = random

    def one(self, values):
        """An operation; its kind is drawn first, so that rare kinds occur."""
        made = self.random.choice(_MAKERS)(self, values)
        if self.random.random() < 0.05 and type(made) in CHANGES:
            other = headings.ChangeTitles(values={"title": self.of("Four", "a: b")})
            return DoTogether(operations=(made, other))
        return made

    def of(self, *choices):
        return self.random.choice(choices)

    def rows(self, values):
        """Paths of all entries and steps."""
        found = [("timeline", k) for k in range(len(values.get("timeline") or ()))]
        for name, steps in (values.get("phrases") or {}).items():
            found += [("phrases", name, k) for k in range(len(steps))]
        return found

    def row(self, values):
        found = self.rows(values)
        if not found or self.random.random() < 0.03:
            return self.of(("timeline", 99), ("phrases", "none", 0))
        return self.random.choice(found)

    def user(self, values):
        """An entry or step that dances a phrase, where there is one."""
        users = [path for path in self.rows(values) if "phrase" in at(values, path)]
        return self.of(*users) if users else self.row(values)

    def unused(self, values):
        """A phrase that nothing dances, where there is one."""
        used = {at(values, path).get("phrase") for path in self.rows(values)}
        return self.of(
            *([name for name in values.get("phrases") or () if name not in used] or ["both"])
        )

    def entry(self, values):
        n = len(values.get("timeline") or ())
        return "timeline", self.random.randrange(n + (self.random.random() < 0.05) or 1)

    def list(self, values):
        return self.of(("timeline",), *(("phrases", name) for name in values.get("phrases") or {}))

    def before(self, values, path):
        found = values
        for key in path:
            found = (found or {}).get(key)
        n = len(found or ())
        return self.of(None, 0, n, self.random.randrange(n + 1), n + 3 if self.random.random() < 0.1 else None)  # fmt: skip

    def number(self, rows):
        n = len(rows or ())
        return self.random.randrange(n + (self.random.random() < 0.1) or 1)

    def beats(self):
        return self.of(4, 8.5, "1/2", "12", 0 if self.random.random() < 0.1 else 6)

    def name(self, values, group="cast"):
        names = [row["name"] for row in values.get(group) or ()]
        return (
            self.of(*names, "Nobody") if self.random.random() < 0.1 else self.of(*(names or ["No"]))
        )

    def names(self, values, least=0):
        names = [row["name"] for row in values["cast"]]
        self.random.shuffle(names)
        return tuple(names[: self.random.randint(least, len(names))])

    def block(self, values):
        return self.of(
            {"pattern": self.of(*_PATTERNS), "beats": self.beats()},
            {"link": True, "beats": 2},
            {"rest": self.beats()},
            {"pattern": "fountain", "with": {"across": "10 cm", "ahead": 0.2}, "cycles": 2, "note": self.of("a: b", "x # y", "it's", "two\nlines", "")},
            {"phrase": self.of(*(values.get("phrases") or ["none"]))},
            {"pattern": "a", "rest": 3},
        )  # fmt: skip

    def spots(self, values):
        return {row["name"]: {"at": [k, 2.5]} for k, row in enumerate(values["cast"])}

    def xy(self):
        return self.of(
            (1, 2), ("3 ft", -1.25), (0, "x") if self.random.random() < 0.1 else (2.5, 3)
        )

    def use(self, values):
        """A way to a phrase, with what it is called."""
        use, rounds, holder = [], [], self.random.choice(self.rows(values) or [("timeline", 9)])
        for _ in range(4):
            try:
                row = at(values, holder)
            except (KeyError, IndexError):
                return (holder,), (), None
            use.append(holder)
            rounds.append(self.of(None, self.random.randrange(int(row.get("repeat", 1)))))
            if "phrase" not in row:
                return tuple(use), (), None
            steps = values["phrases"][row["phrase"]]
            inner = [k for k, step in enumerate(steps) if "phrase" in step]
            if not inner or self.random.random() < 0.5:
                return (
                    tuple(use),
                    tuple(rounds) if self.random.random() < 0.8 else (),
                    row["phrase"],
                )
            holder = ("phrases", row["phrase"], self.random.choice(inner))
        return tuple(use), (), None


def _neighbours(draw, values):
    into = draw.list(values)
    try:
        n = len(at(values, into))
    except (KeyError, TypeError):
        n = 0
    first = draw.random.randrange(n) if n else 0
    return tuple(
        (*into, k) for k in range(first, min(first + draw.random.randint(1, 3), max(n, 1)))
    )


def _here(draw, values):
    use, rounds, name = draw.use(values)
    steps = (values.get("phrases") or {}).get(name) or [{}]
    k = draw.random.randrange(len(steps))
    step = ("phrases", name or "none", k)
    change = draw.of(
        blocks.StretchBlock(at=step, beats=draw.beats()),
        blocks.ChangeBlock(at=step, values={"timing": draw.of("split", "together")}),
    )
    return phrasing.ChangeHere(
        use=use, rounds=rounds, operation=change, name=draw.of(None, None, "own one")
    )


def _paste_like(draw, values):
    paths = tuple(dict.fromkeys(draw.row(values) for _ in range(draw.random.randint(1, 3))))
    into = draw.list(values)
    starts = tuple(draw.of(None, *_MOMENTS) for _ in paths) if draw.random.random() < 0.5 else ()
    return blocks.CopyBlocks(at=paths, into=into, before=draw.before(values, into), starts=starts)


def _paste(draw, values):
    """Blocks that were copied: as somebody wrote them, or an entry of this file on one line."""
    own = [json.dumps(at(values, path)) for path in draw.rows(values)]
    several = tuple(draw.of(draw.of(*WRITTEN), *own[:40]) for _ in range(draw.random.randint(1, 3)))
    into = draw.list(values)
    starts = tuple(draw.of(None, *_MOMENTS) for _ in several) if draw.random.random() < 0.5 else ()
    return blocks.PasteBlocks(
        into=into, blocks=several, before=draw.before(values, into), starts=starts
    )


def _put(draw, values):
    into = draw.list(values)
    return blocks.PutBlock(into=into, before=draw.before(values, into), block=draw.block(values))


def _move_any(draw, values):
    path = draw.row(values)
    return blocks.MoveBlock(at=path, start=draw.of(None, *_MOMENTS), before=draw.before(values, path[:-1]) if path[-1] != 99 else None)  # fmt: skip


def _item(draw, into):
    return {
        "audience": {"line": [[-5, -8], [5, -8]], "name": "side"},
        "ceilings": {"name": "beam", "outline": [[0, 0], [1, 0], [1, 1]], "height": "3 m"},
        "scenery": {"name": "post", "outline": [[0, 8], [1, 8], [1, 9]], "height": 2},
        "exits": {"name": draw.of("gate", "road"), "at": [9, 9], "width": "3 m"},
        "extinguishers": {"at": [5, 5], "rating": "2-A:10-B:C"},
        "lit": {"from": "4.1", "until": draw.of(*_MOMENTS)},
        "entrances": {
            "who": draw.of("Ash", "Birch"),
            draw.of("comes_on", "goes_off"): draw.of(*_MOMENTS),
            "beats": 8,
            "side": "stage right",
        },
    }[into]


_LISTS = ("audience", "ceilings", "scenery", "exits", "extinguishers", "lit", "entrances")


def _rows_of(values, into):
    if into == "entrances":
        return values.get(into) or ()
    holder = (values.get("fire") or {}) if into == "lit" else values["venue"]
    return holder.get(into) or ()


def _put_any_item(draw, values):
    into = draw.of(*_LISTS)
    return headings.PutItem(into=into, item=_item(draw, into), before=draw.of(None, 0, 1))


def _change_any_item(draw, values):
    into = draw.of(*_LISTS)
    value = draw.of({"name": "other"}, {"height": "4 m"}, {"until": "9.1"}, {"width": None})
    return headings.ChangeItem(into=into, number=draw.number(_rows_of(values, into)), values=value)


def _delete_any_item(draw, values):
    into = draw.of(*_LISTS)
    return headings.DeleteItem(into=into, number=draw.number(_rows_of(values, into)))


def _any_heading(draw, values):
    heading, keys = draw.of(
        ("venue", {"name": draw.of("Yard", "a: b"), "ceiling": draw.of("open", "5 m", None)}),
        ("venue", {"fuel_station": [9, "8 m"], "wind": None}),
        ("fire", {"fuel": "kerosene", "burn": {"time": "200 s", "measured": True}}),
        ("fire", {"flame": draw.of("30 cm", None), "reserve": 0.75}),
        ("emergency", {"number": "112", "address": "1, High Street"}),
        ("weather", {"gusts": draw.of("6 m/s", None), "other": ["heat"]}),
        ("wishes", {"lead": draw.name(values), "moves": {"toroid": 2}}),
        ("limits", {"hand_speed": 5, "join_rate": [0.7, 1.3]}),
        ("rules", {"profile": draw.of("default", None)}),
        ("stop_call", {"word": draw.of("HALT", "")}),
    )
    return headings.ChangeHeading(heading=heading, values=keys)


def _sections(values):
    return (values["track"].get("corrections") or {}).get("sections") or ()


def _set_sections(draw, values):
    """The sections as they are with one moved, named, split or joined; moments that name one may follow."""
    rows = [(str(row["from"]), row["name"]) for row in _sections(values)] or [("0:00.0", "intro")]
    k = draw.random.randrange(len(rows))
    changed = draw.of(
        [*rows[:k], (rows[k][0], "bridge"), *rows[k + 1 :]], [*rows[:k], ("33.1", rows[k][1]), *rows[k + 1 :]],
        [*rows[: k + 1], ("21.1", "drop"), *rows[k + 1 :]], [*rows[:k], *rows[k + 1 :]], rows,
    )  # fmt: skip
    renamed = draw.of((), (("verse", "verse 1"), ("intro", "opening")), ((rows[k][1], "bridge"),))
    gone = draw.of((), (), ("outro",), ("verse", "intro"))
    return sections.SetSections(sections=tuple(changed), renamed=renamed, gone=gone)


def _formation(draw, values):
    return draw.of(*(values.get("formations") or ["none"]))


def _own_pattern(draw, values):
    return draw.of(*(values.get("patterns") or ["none"]), "none")


_MAKERS = (
    _put, _put, _move_any, _move_any, _paste_like, _paste_like, _paste, _here, _here, _here,
    lambda d, v: blocks.ChangeBlock(at=d.row(v), values=d.of({"note": d.of("new", "a: b", None)}, {"beats": d.beats()}, {"with": {"across": 0.1}}, {"with": None}, {"pattern": "fountain"}, {"mirrored": d.of(True, None)}, {"repeat": d.of(2, 3, None)}, {"who": d.of("Ash", ["Ash", "Cedar"], None)})),
    lambda d, v: blocks.StretchBlock(at=d.row(v), beats=d.beats()) if d.random.random() < 0.8 else blocks.StretchBlock(at=d.row(v), until=d.of(*_MOMENTS)),
    lambda d, v: blocks.DeleteBlocks(at=tuple(d.row(v) for _ in range(d.random.randint(1, 3)))),
    lambda d, v: blocks.SplitBlock(at=d.row(v), first=d.beats(), second=d.beats(), **d.of({}, {"shift": 3, "home": 2})),
    lambda d, v: together.SetCanon(at=d.entry(v), beats=d.beats(), who=d.of((), d.names(v))),
    lambda d, v: together.SetMirror(at=d.entry(v), who=d.names(v)),
    lambda d, v: together.SetUnison(at=tuple(d.entry(v) for _ in range(d.random.randint(1, 2)))),
    lambda d, v: together.PartEntry(at=d.entry(v), who=d.names(v, 1), starts={row["name"]: d.of(*_MOMENTS) for row in v["cast"]}),
    lambda d, v: together.AnswerWith(at=d.entry(v), who=d.names(v), start=d.of(None, *_MOMENTS)),
    lambda d, v: phrasing.NamePhrase(at=_neighbours(d, v), name=d.of("fresh", "new: one", "both"), follow_on=d.of(True, False), beats=d.of((), (8, 8, 8))),
    lambda d, v: phrasing.WriteOutPhrase(at=d.user(v)),
    lambda d, v: phrasing.SplitOut(use=d.use(v)[0]),
    lambda d, v: phrasing.RenamePhrase(old=d.of(*(v.get("phrases") or ["none"])), new=d.of("other", "both", "é: x")),
    lambda d, v: phrasing.DeletePhrase(name=d.unused(v)),
    lambda d, v: floor.MoveSpot(formation=_formation(d, v), who=d.name(v), at=d.xy(), facing=d.of(None, 90)),
    lambda d, v: floor.SetFormation(name=d.of("wide", "new one"), formation=d.of({"spots": d.spots(v)}, {"shape": "circle", "centre": [0, 4], "spacing": "3 m"}, {"shape": "circle"})),
    lambda d, v: floor.RenameFormation(old=_formation(d, v), new=d.of("wide", "broad", "x: y")),
    lambda d, v: floor.DeleteFormation(name=_formation(d, v)),
    lambda d, v: floor.PutWalk(formation=_formation(d, v), start=d.of(*_MOMENTS), beats=d.of(None, 8), via=d.of({}, {d.name(v): (d.xy(),)}), before=d.before(v, ("staging",))),
    lambda d, v: floor.ChangeWalk(number=d.number(v.get("staging")), values={"beats": d.beats()}),
    lambda d, v: floor.SetWay(number=d.number(v.get("staging")), who=d.name(v), points=d.of((), (d.xy(), d.xy()))),
    lambda d, v: floor.DeleteWalk(number=d.number(v.get("staging"))),
    lambda d, v: people.AddPerformer(performer={"name": d.of(*_NEW), "stature": "1.7 m", "prop": "poi"}, spots={key: {"at": [1, 1]} for key, own in (v.get("formations") or {}).items() if "spots" in own}, before=d.of(None, 0)),
    lambda d, v: people.AddCrew(member={"name": d.of(*_NEW), "post": [1, 2], "equipment": ["towel"]}),
    lambda d, v: people.ChangePerson(group="cast", name=d.name(v), values=d.of({"stature": "1.65 m"}, {"prop": "staff"}, {"birth_year": 1990}, {"prop": {"kind": "poi", "tether": "50 cm"}}, {"prop": None})),
    lambda d, v: people.ChangePerson(group="crew", name=d.name(v, "crew"), values=d.of({"post": [2, "3 m"]}, {"duty": "lead"}, {"watches": None})),
    lambda d, v: people.RenamePerson(group=(group := d.of("cast", "crew")), name=d.name(v, group), new=d.of(*_NEW)),
    lambda d, v: people.RemovePerson(group=(group := d.of("cast", "crew")), name=d.name(v, group)),
    lambda d, v: own.AddPattern(name=d.of("new: one", "small flower", "é"), pattern=d.of({"law": "orbit", "set": {"ratio": 2}}, {"stations": [{"hand": 0, "bend": 90, "phase": 180}], "needs": ["small flower"]})),
    lambda d, v: own.ChangePattern(name=_own_pattern(d, v), values=d.of({"set": {"ratio": -4}}, {"set": None}, {"needs": ["small flower", "extension"]}, {"needs": "slow cube"}, {"why": "a: b"})),
    lambda d, v: own.RenamePattern(old=_own_pattern(d, v), new=d.of("small flower", "tiny", "x: y")),
    lambda d, v: own.DeletePattern(name=_own_pattern(d, v)),
    lambda d, v: own.SetPatternFiles(files=d.of((), ("moves.yaml",), ("other.yaml", "a: b.yaml"), ("moves.yaml", "more.yaml"))),
    lambda d, v: tonight.SetAway(name=d.name(v, d.of("cast", "crew"))),
    lambda d, v: tonight.SetStandIn(part=d.name(v, d.of("cast", "crew")), person=d.of({"name": d.of(*_NEW), "stature": "1.7 m"}, {"name": "Fern", "stature": "1.62 m", "prop": {"kind": "poi", "tether": "50 cm"}}, {"name": "Gorse"})),
    lambda d, v: tonight.SetThere(name=d.of(None, d.name(v, d.of("cast", "crew")))),
    lambda d, v: headings.ChangeTitles(values=d.of({"title": "New: one"}, {"version": 2}, {"night": d.of("2027-06-19", None)}, {"title": None})),
    _any_heading, _any_heading,
    lambda d, v: headings.DeleteHeading(heading=d.of("fire", "rules", "stop_call", "weather")),
    _put_any_item, _change_any_item, _delete_any_item,
    lambda d, v: headings.CorrectCount(values=d.of({"metre": 3}, {"tempo": "half", "one": "0:01.2"}, {"shift": "-12 ms"}, {"metre": None, "tempo": None}, {"metre": 9})),
    lambda d, v: headings.PutSection(start=d.of(*_MOMENTS), name=d.of("drop", "a: b"), before=d.of(None, 0)),
    lambda d, v: headings.ChangeSection(number=d.number(_sections(v)), start=d.of(None, "6.1"), name=d.of(None, "bridge")),
    lambda d, v: headings.DeleteSection(number=d.number(_sections(v))),
    _set_sections,
    lambda d, v: MakeChanges(said="a mend", changes=(((*d.row(v), "note"), "mended"),), insertions=d.of((), ((("timeline",), 0, {"rest": 2}),)) if v.get("timeline") else ()),
)  # fmt: skip
