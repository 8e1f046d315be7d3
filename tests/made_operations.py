"""Operations drawn at random, and what each comes to on plain Python data: an oracle that shares no code with them.

What changes a phrase here or there is held against the dance itself: the timeline with every phrase written out.
"""

# ruff: noqa: ARG005  # each maker is given the draw and the values

import copy
import json

from sequencer.show.operations import block_operations as blocks
from sequencer.show.operations import floor_operations as floor
from sequencer.show.operations import heading_operations as headings
from sequencer.show.operations import people_operations as people
from sequencer.show.operations import phrase_operations as phrasing
from sequencer.show.operations import together_operations as together
from sequencer.show.operations.combined_operations import DoTogether, MakeChanges

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

# What is danced more than once
phrases:
  both:
    - {pattern: extension, cycle: 2, beats: 6, timing: together}
    # and then
    - {link: true, beats: 2}
  "all of it":
    - {phrase: both, repeat: 3, note: thrice}
    - pattern: corkscrew  # inner: slowly
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


# What plain data say


def text_of(value):
    """A value with every scalar as the text that a file has for it."""
    if isinstance(value, dict):
        return {key: text_of(own) for key, own in value.items()}
    if isinstance(value, list | tuple):
        return [text_of(own) for own in value]
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return str(int(value)) if value == int(value) else repr(value)
    return None if value is None else str(value)


def at(values, path):
    for key in path:
        values = values[key]
    return values


def filled(values, path, nothing):
    """The container at a path, made where it is missing."""
    for n, key in enumerate(path):
        if key not in values or values[key] is None:
            values[key] = nothing if n == len(path) - 1 else {}
        values = values[key]
    return values


def keyed(row, values):
    for key, value in values.items():
        if value is None:
            row.pop(key, None)
        else:
            row[key] = text_of(value)


def put(rows, before, new):
    place = len(rows) if before is None else before
    rows[place:place] = text_of(new)


def named(value):
    return value if isinstance(value, list) else [value]


def dancing(values, row):
    who = named(row.get("who", "all"))
    return [each["name"] for each in values["cast"]] if "all" in who else who


def shortest(names):
    return names[0] if len(names) == 1 else list(names)


def expected(values, op):
    """The plain values after an operation on phrases' insides, or None where the dance itself is the measure."""
    now = copy.deepcopy(values)
    kind = type(op)
    return _CHANGES[kind](now, op) if kind in _CHANGES else None


def _stretched(row, op):
    for key in ("beats", "cycles", "until"):
        row.pop(key, None)
    stop = "rest" if "rest" in row else "hold" if "hold" in row else None
    if op.until is not None:
        row["until"] = op.until
        if stop:
            row[stop] = "true"
    elif stop and row[stop] != "true":
        row[stop] = text_of(op.beats)
    else:
        row["beats"] = text_of(op.beats)


def _put_block(now, op):
    put(filled(now, op.into, []), op.before, [op.block])
    return now


def _change_block(now, op):
    keyed(at(now, op.at), op.values)
    return now


def _stretch(now, op):
    _stretched(at(now, op.at), op)
    return now


def _move(now, op):
    row, rows = at(now, op.at), at(now, op.at[:-1])
    if op.start is not None:
        row["accent" if "accent" in row else "from"] = op.start
    if op.before is not None:
        number = op.at[-1]
        rest = [*rows[:number], None, *rows[number + 1 :]]
        rest.insert(op.before, row)
        rows[:] = [each for each in rest if each is not None]
    return now


def _delete(now, op):
    for path in sorted(set(op.at), key=lambda path: (str(path[:-1]), path[-1]), reverse=True):
        del at(now, path[:-1])[path[-1]]
    return now


def _copy(now, op):
    rows = copy.deepcopy([at(now, path) for path in op.at])
    for k, row in enumerate(rows):
        row.pop("drafted", None)
        if op.into[0] != "timeline":
            for key in ("who", "from", "until", "canon", "mirror"):
                row.pop(key, None)
        elif op.starts:
            if op.starts[k] is not None:
                row["accent" if "accent" in row else "from"] = op.starts[k]
            elif "accent" not in row:
                row.pop("from", None)
    put(filled(now, op.into, []), op.before, rows)
    return now


def _split_block(now, op):
    rows, number = at(now, op.at[:-1]), op.at[-1]
    second = copy.deepcopy(rows[number])
    for row, beats in ((rows[number], op.first), (second, op.second)):
        _stretched(row, blocks.StretchBlock(at=op.at, beats=beats))
    for key in ("from", "note", "shift", "drafted"):
        second.pop(key, None)
    if op.shift is not None:
        second["shift"] = text_of(op.shift)
    rows.insert(number + 1, second)
    return now


def _canon(now, op):
    row = at(now, op.at)
    row["canon"] = text_of(op.beats)
    if op.who or "who" not in row:
        row["who"] = list(op.who) or dancing(now, row)
    return now


def _mirror(now, op):
    keyed(at(now, op.at), {"mirror": shortest(op.who) if op.who else None})
    return now


def _unison(now, op):
    paths = sorted(set(op.at))
    rows = [at(now, path) for path in paths]
    who = [name for row in rows for name in dancing(now, row)]
    keyed(rows[0], {"canon": None, "mirror": None})
    if len(rows) > 1:
        rows[0]["who"] = shortest(list(dict.fromkeys(who)))
    gone = [path[1] for path in paths[1:]]
    now["timeline"] = [row for k, row in enumerate(now["timeline"]) if k not in gone]
    return now


def _answer(now, op):
    row = copy.deepcopy(at(now, op.at))
    for key in ("from", "mirror", "drafted"):
        row.pop(key, None)
    if len(op.who) == 1:
        row.pop("canon", None)
    everyone = {each["name"] for each in now["cast"]}
    row["who"] = "all" if set(op.who) == everyone else shortest(op.who)
    if op.start is not None:
        row["from"] = op.start
    now["timeline"].insert(op.at[1] + 1, row)
    return now


def _rename_phrase(now, op):
    for row in [*now.get("timeline", []), *(r for steps in now["phrases"].values() for r in steps)]:
        if row.get("phrase") == op.old:
            row["phrase"] = op.new
    now["phrases"] = {op.new if k == op.old else k: own for k, own in now["phrases"].items()}
    return now


def _delete_phrase(now, op):
    del now["phrases"][op.name]
    return now


def _move_spot(now, op):
    spot = filled(now, ("formations", op.formation, "spots", op.who), {})
    spot["at"] = text_of(op.at)
    if op.facing is not None:
        spot["facing"] = text_of(op.facing)
    return now


def _set_formation(now, op):
    filled(now, ("formations",), {})[op.name] = text_of(op.formation)
    return now


def _rename_formation(now, op):
    for row in now.get("staging", []):
        if row["formation"] == op.old:
            row["formation"] = op.new
    now["formations"] = {op.new if k == op.old else k: own for k, own in now["formations"].items()}
    return now


def _delete_formation(now, op):
    del now["formations"][op.name]
    return now


def _put_walk(now, op):
    row = {"formation": op.formation, "from": op.start}
    keyed(row, {"beats": op.beats, "path": op.path, "via": op.via or None})
    put(filled(now, ("staging",), []), op.before, [row])
    return now


def _change_walk(now, op):
    keyed(now["staging"][op.number], op.values)
    return now


def _way(now, op):
    row = now["staging"][op.number]
    via = row.setdefault("via", {})
    keyed(via, {op.who: op.points or None})
    if not via:
        del row["via"]
    return now


def _delete_walk(now, op):
    del now["staging"][op.number]
    return now


def _add_performer(now, op):
    name = op.performer["name"]
    put(now["cast"], op.before, [op.performer])
    for key, formation in now.get("formations", {}).items():
        if "spots" in formation:
            formation["spots"][name] = text_of(op.spots[key])
        elif "order" in formation:
            formation["order"] = [*named(formation["order"]), name]
    return now


def _add_crew(now, op):
    put(filled(now, ("crew",), []), op.before, [op.member])
    return now


def _change_person(now, op):
    keyed(next(row for row in now[op.group] if row["name"] == op.name), op.values)
    return now


def _each_mention(now, op):
    """Holder and key of everything that may name a person of a group."""
    if op.group == "cast":
        for row in now.get("timeline", []):
            yield from ((row, key) for key in ("who", "mirror"))
        for formation in now.get("formations", {}).values():
            yield from ((formation, key) for key in ("spots", "order"))
        yield from ((row, "via") for row in now.get("staging", []))
        yield from ((row, "who") for row in now.get("fire", {}).get("lit", []))
        yield from ((row, "watches") for row in now.get("crew", []))
        yield now.get("wishes", {}), "lead"
    other = "crew" if op.group == "cast" else "cast"
    if op.name in [row["name"] for row in now.get(other, [])]:
        return  # nobody can tell who of the two is meant
    for row in now.get("fire", {}).get("lit", []):
        yield from ((row, key) for key in ("lit_by", "put_out_by"))
    yield now.get("fire", {}).get("handling", {}), "lit_by"
    yield now.get("stop_call", {}), "callers"
    yield now.get("stop_call", {}), "does"


def _rename_person(now, op):
    places = list(_each_mention(now, op))
    next(row for row in now[op.group] if row["name"] == op.name)["name"] = op.new
    for holder, key in places:
        own = holder.get(key)
        if isinstance(own, dict):
            holder[key] = {op.new if name == op.name else name: v for name, v in own.items()}
        elif isinstance(own, list):
            holder[key] = [op.new if name == op.name else name for name in own]
        elif own == op.name:
            holder[key] = op.new
    return now


def _remove_person(now, op):
    places = list(_each_mention(now, op))
    now[op.group] = [row for row in now[op.group] if row["name"] != op.name]
    for holder, key in places:
        own = holder.get(key)
        if own is None or op.name not in (own if isinstance(own, dict) else named(own)):
            continue
        if isinstance(own, dict):
            left = {name: v for name, v in own.items() if name != op.name}
        else:
            left = [name for name in named(own) if name != op.name]
        if left:
            holder[key] = left
        elif key == "who":
            holder["gone"] = True
        else:
            del holder[key]
    for rows in (now.get("timeline", []), now.get("fire", {}).get("lit", [])):
        rows[:] = [row for row in rows if "gone" not in row]
    return now


def _titles(now, op):
    keyed(now, op.values)
    return now


def _heading(now, op):
    given = {key: value for key, value in op.values.items() if value is not None}
    if op.heading in now or given:
        keyed(filled(now, (op.heading,), {}), op.values)
    return now


def _delete_heading(now, op):
    del now[op.heading]
    return now


def _items(now, into):
    return ("fire", "lit") if into == "lit" else ("venue", into)


def _put_item(now, op):
    put(filled(now, _items(now, op.into), []), op.before, [op.item])
    return now


def _change_item(now, op):
    keyed(at(now, _items(now, op.into))[op.number], op.values)
    return now


def _delete_item(now, op):
    del at(now, _items(now, op.into))[op.number]
    return now


def _count(now, op):
    if "corrections" in now["track"] or any(own is not None for own in op.values.values()):
        keyed(filled(now, ("track", "corrections"), {}), op.values)
    return now


def _put_section(now, op):
    put(filled(now, ("track", "corrections", "sections"), []), op.before, [{"from": op.start, "name": op.name}])  # fmt: skip
    return now


def _change_section(now, op):
    keyed(
        now["track"]["corrections"]["sections"][op.number],
        {key: own for key, own in (("from", op.start), ("name", op.name)) if own is not None},
    )
    return now


def _delete_section(now, op):
    del now["track"]["corrections"]["sections"][op.number]
    return now


def _together(now, op):
    for each in op.operations:
        now = expected(now, each)
    return now


def _changes(now, op):
    for path, value in op.changes:
        keyed(at(now, path[:-1]), {path[-1]: value})
    for path, index, row in op.insertions:
        put(at(now, path), index, [row])
    return now


_CHANGES = {
    blocks.PutBlock: _put_block, blocks.ChangeBlock: _change_block, blocks.StretchBlock: _stretch,
    blocks.MoveBlock: _move, blocks.DeleteBlocks: _delete, blocks.CopyBlocks: _copy, blocks.SplitBlock: _split_block,
    together.SetCanon: _canon, together.SetMirror: _mirror, together.SetUnison: _unison, together.AnswerWith: _answer,
    phrasing.RenamePhrase: _rename_phrase, phrasing.DeletePhrase: _delete_phrase,
    floor.MoveSpot: _move_spot, floor.SetFormation: _set_formation, floor.RenameFormation: _rename_formation,
    floor.DeleteFormation: _delete_formation, floor.PutWalk: _put_walk, floor.ChangeWalk: _change_walk,
    floor.SetWay: _way, floor.DeleteWalk: _delete_walk,
    people.AddPerformer: _add_performer, people.AddCrew: _add_crew, people.ChangePerson: _change_person,
    people.RenamePerson: _rename_person, people.RemovePerson: _remove_person,
    headings.ChangeTitles: _titles, headings.ChangeHeading: _heading, headings.DeleteHeading: _delete_heading,
    headings.PutItem: _put_item, headings.ChangeItem: _change_item, headings.DeleteItem: _delete_item,
    headings.CorrectCount: _count, headings.PutSection: _put_section, headings.ChangeSection: _change_section,
    headings.DeleteSection: _delete_section, DoTogether: _together, MakeChanges: _changes,
}  # fmt: skip


# What is danced

_NOT_OF_A_STEP = {"who", "from", "canon", "mirror", "mirrored", "note", "drafted"}


def danced(values):
    """The timeline with every phrase written out: who, when, how, and what, block by block."""
    return [row for k in range(len(values.get("timeline") or ())) for row in _entry(values, k)]


def _entry(values, k):
    row = values["timeline"][k]
    found = list(_steps(values, row, row.get("mirrored") == "true", (("timeline", k),)))
    out = []
    for n, (step, flip, notes, way) in enumerate(found):
        out.append(
            {
                "who": dancing(values, row), "canon": row.get("canon"),
                "mirror": sorted(named(row["mirror"])) if "mirror" in row else [],
                "from": row.get("from") if n == 0 else "on", "flip": flip, "note": "; ".join(notes),
                "what": {key: own for key, own in step.items() if key not in _NOT_OF_A_STEP}, "way": way,
            }
        )  # fmt: skip
    return out


def _steps(values, row, flip, way):
    """Steps with whether they are mirrored, their notes, and the way to them: uses, and the time of each that repeats."""
    own = [row["note"]] if row.get("note") else []
    if "phrase" not in row:
        yield row, flip, own, way
        return
    first = True
    name = row["phrase"]
    if not values["phrases"][name]:
        yield {"nothing": "danced"}, flip, own, way
    for turn in range(int(row.get("repeat", 1))):
        for j, step in enumerate(values["phrases"][name]):
            inner = _steps(values, step, flip != (step.get("mirrored") == "true"), (*way, turn, ("phrases", name, j)))  # fmt: skip
            for each, flips, notes, path in inner:
                yield each, flips, own + notes if first else notes, path
                first = False


def alike(row):
    """What is danced, without the way to it."""
    return {key: own for key, own in row.items() if key != "way"}


def right_dance(before, after, op):
    """Whether the dance after an operation on phrases is what it must be, from the dance before it."""
    if isinstance(op, phrasing.ChangeHere):
        return _right_here(before, after, op)
    if isinstance(op, together.PartEntry):
        return _right_part(before, after, op)
    then, now = danced(before), danced(after)
    if isinstance(op, phrasing.NamePhrase):
        _named(then, op)
    if isinstance(op, phrasing.WriteOutPhrase | phrasing.NamePhrase):
        for row in (
            *then,
            *now,
        ):  # whether a block follows on, or its entry's step does, is the same
            row["from"] = None if row["from"] == "on" else row["from"]
    return [alike(row) for row in then] == [alike(row) for row in now]


def _named(rows, op):
    """What naming a phrase does to blocks that say when they start or end."""
    paths = sorted(op.at, key=lambda path: path[-1])
    for row in rows:
        if row["way"][-1] in paths:
            n = paths.index(row["way"][-1])
            if n and op.follow_on:
                row["from"] = None
            if "until" in row["what"]:
                del row["what"]["until"]
                row["what"]["beats"] = text_of(op.beats[n])


def _right_here(before, after, op):
    """One use has the change, and no other: the oracle changes the blocks that the way leads to."""
    then = danced(before)
    changed = []
    for row in then:
        if not _leads_through(row["way"], op):
            changed.append(alike(row))
            continue
        if isinstance(op.operation, blocks.StretchBlock):
            _stretched(row["what"], op.operation)
        else:
            keyed(row["what"], op.operation.values)
        changed.append(alike(row))
    return changed == [alike(row) for row in danced(after)]


def _leads_through(way, op):
    """Whether the way to a block ends with the use and the step that are meant."""
    uses, turns = way[::2], way[1::2]
    n, rounds = len(op.use), op.rounds or (None,) * len(op.use)
    return (
        uses[-n - 1 :] == (*op.use, op.operation.at)
        and len(turns) >= n
        and all(wanted in (None, turn) for wanted, turn in zip(rounds, turns[-n:], strict=True))
    )


def _right_part(before, after, op):
    """Everybody dances what they danced, from when they were said to."""

    def by_name(values):
        found = []
        for k, row in enumerate(values["timeline"]):
            who = dancing(values, row)
            mirror = named(row.get("mirror", []))
            for name in who:
                same = {
                    key: own
                    for key, own in row.items()
                    if key not in ("who", "from", "canon", "mirror")
                }
                late = who.index(name) if "canon" in row else 0
                found.append((name, json.dumps(same, sort_keys=True), name in mirror or "all" in mirror, late, row, k))  # fmt: skip
        return found

    then, now = by_name(before), by_name(after)
    if sorted(each[:3] for each in then) != sorted(each[:3] for each in now):
        return False
    entry = before["timeline"][op.at[1]]
    for name, _, _, late, row, k in now:
        if not op.at[1] <= k < op.at[1] + len(after["timeline"]) - len(before["timeline"]) + 1:
            continue
        if (name in op.who) != (set(dancing(after, row)) <= set(op.who)):
            return False
        was = dancing(before, entry).index(name) if "canon" in entry else 0
        first = dancing(after, row)[0]
        start = dancing(before, entry).index(first) if "canon" in entry else 0
        if start + late != was:  # as far behind the first of the canon as before
            return False
        if row.get("from") != (
            op.starts.get(first) if start or "from" not in entry else entry["from"]
        ):
            return "accent" in entry
    return True


# Operations at random

_MOMENTS = ("3.1", "17.3+1/2", "1:02.5", "verse", "end of intro", "200.1")
_NEW = ("Dew", "Elm", "Ash", "Flo Ra", "é")
_PATTERNS = ("extension", "corkscrew", "two-beat-weave")


class Draw:
    """Operations at random on a show; some of them cannot be done."""

    def __init__(self, random):
        self.random = random

    def one(self, values):
        """An operation; its kind is drawn first, so that rare kinds occur."""
        made = self.random.choice(_MAKERS)(self, values)
        if self.random.random() < 0.05 and type(made) in _CHANGES:
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
    paths = tuple({draw.row(values) for _ in range(draw.random.randint(1, 3))})
    into = draw.list(values)
    starts = tuple(draw.of(None, *_MOMENTS) for _ in paths) if draw.random.random() < 0.5 else ()
    return blocks.CopyBlocks(at=paths, into=into, before=draw.before(values, into), starts=starts)


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
    }[into]


_LISTS = ("audience", "ceilings", "scenery", "exits", "extinguishers", "lit")


def _rows_of(values, into):
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


def _formation(draw, values):
    return draw.of(*(values.get("formations") or ["none"]))


_MAKERS = (
    _put, _put, _move_any, _move_any, _paste_like, _paste_like, _here, _here, _here,
    lambda d, v: blocks.ChangeBlock(at=d.row(v), values=d.of({"note": d.of("new", "a: b", None)}, {"beats": d.beats()}, {"with": {"across": 0.1}}, {"with": None}, {"pattern": "fountain"}, {"mirrored": d.of(True, None)}, {"repeat": d.of(2, 3, None)}, {"who": d.of("Ash", ["Ash", "Cedar"], None)})),
    lambda d, v: blocks.StretchBlock(at=d.row(v), beats=d.beats()) if d.random.random() < 0.8 else blocks.StretchBlock(at=d.row(v), until=d.of(*_MOMENTS)),
    lambda d, v: blocks.DeleteBlocks(at=tuple(d.row(v) for _ in range(d.random.randint(1, 3)))),
    lambda d, v: blocks.SplitBlock(at=d.row(v), first=d.beats(), second=d.beats(), shift=d.of(None, 2)),
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
    lambda d, v: headings.ChangeTitles(values=d.of({"title": "New: one"}, {"version": 2}, {"night": d.of("2027-06-19", None)}, {"title": None})),
    _any_heading, _any_heading,
    lambda d, v: headings.DeleteHeading(heading=d.of("fire", "rules", "stop_call", "weather")),
    _put_any_item, _change_any_item, _delete_any_item,
    lambda d, v: headings.CorrectCount(values=d.of({"metre": 3}, {"tempo": "half", "one": "0:01.2"}, {"shift": "-12 ms"}, {"metre": None, "tempo": None}, {"metre": 9})),
    lambda d, v: headings.PutSection(start=d.of(*_MOMENTS), name=d.of("drop", "a: b"), before=d.of(None, 0)),
    lambda d, v: headings.ChangeSection(number=d.number(_sections(v)), start=d.of(None, "6.1"), name=d.of(None, "bridge")),
    lambda d, v: headings.DeleteSection(number=d.number(_sections(v))),
    lambda d, v: MakeChanges(said="a mend", changes=(((*d.row(v), "note"), "mended"),), insertions=d.of((), ((("timeline",), 0, {"rest": 2}),)) if v.get("timeline") else ()),
)  # fmt: skip
