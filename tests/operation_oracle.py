"""What each operation comes to on plain Python data: an oracle that shares no code with them.

What changes a phrase here or there is held against the dance itself: the timeline with every phrase written out.
"""

import copy
import json

from sequencer.show.operations import block_operations as blocks
from sequencer.show.operations import floor_operations as floor
from sequencer.show.operations import heading_operations as headings
from sequencer.show.operations import pattern_operations as patterning
from sequencer.show.operations import people_operations as people
from sequencer.show.operations import phrase_operations as phrasing
from sequencer.show.operations import section_operations as sections
from sequencer.show.operations import together_operations as together
from sequencer.show.operations import tonight_operations as tonight
from sequencer.show.operations.combined_operations import DoTogether, MakeChanges

# What plain data say

WRITTEN = {  # entries and steps as a clipboard holds them, with what they say
    "{who: Ash, from: 9.1, pattern: extension, beats: 4}": {"who": "Ash", "from": "9.1", "pattern": "extension", "beats": 4},
    'pattern: fountain  # slowly\nwith:\n  across: 10 cm\n  ahead: 0.2\ncycles: 2\nnote: "a: b"': {
        "pattern": "fountain", "with": {"across": "10 cm", "ahead": 0.2}, "cycles": 2, "note": "a: b"},
    "who: [Birch, Cedar]\n# between its lines\nuntil: 20.1\npattern: corkscrew": {
        "who": ["Birch", "Cedar"], "until": "20.1", "pattern": "corkscrew"},
    "{pattern: extension, beats: 6, drafted: 0123456789ab}": {"pattern": "extension", "beats": 6, "drafted": "0123456789ab"},
    "{accent: 33.1, who: Cedar}": {"accent": "33.1", "who": "Cedar"},
    "rest: 3": {"rest": 3},
}  # fmt: skip


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
    return CHANGES[kind](now, op) if kind in CHANGES else None


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


def _paste(now, op):
    """What is copied is given as it was written: the oracle knows what each of these texts says."""
    rows = [
        copy.deepcopy(WRITTEN[each]) if each in WRITTEN else json.loads(each) for each in op.blocks
    ]
    now["clipboard"] = text_of(rows)
    at = tuple(("clipboard", k) for k in range(len(rows)))
    _copy(now, blocks.CopyBlocks(at=at, into=op.into, before=op.before, starts=op.starts))
    del now["clipboard"]
    return now


def _split_block(now, op):
    rows, number = at(now, op.at[:-1]), op.at[-1]
    second = copy.deepcopy(rows[number])
    for row, beats in ((rows[number], op.first), (second, op.second)):
        _stretched(row, blocks.StretchBlock(at=op.at, beats=beats))
    for key in ("from", "note", "shift", "drafted"):
        second.pop(key, None)
    shift = op.shift if op.shift is None or op.home is None else op.shift % op.home
    if shift or (shift == 0 and op.home is None):
        second["shift"] = text_of(shift)
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
        yield from ((row, "who") for row in now.get("entrances", []))
        yield from ((row, "who") for row in now.get("fire", {}).get("lit", []))
        yield from ((row, "watches") for row in now.get("crew", []))
        yield now.get("wishes", {}), "lead"
    other = "crew" if op.group == "cast" else "cast"
    if op.name in [row["name"] for row in now.get(other, [])]:
        return  # nobody can tell who of the two is meant
    for row in now.get("fire", {}).get("lit", []):
        yield from ((row, key) for key in ("lit_by", "put_out_by"))
    yield now.get("fire", {}).get("handling", {}), "lit_by"
    yield now.get("tonight", {}), "away"
    yield from ((row, "for") for row in now.get("tonight", {}).get("stand_ins", []))
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
    for row in now.get("tonight", {}).get("stand_ins", []):
        row["name"] = op.new if row["name"] == op.name else row["name"]
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
        elif key in ("who", "for"):
            holder["gone"] = True
        else:
            del holder[key]
    stand_ins = now.get("tonight", {}).get("stand_ins", [])
    lit, entrances = now.get("fire", {}).get("lit", []), now.get("entrances", [])
    for rows in (now.get("timeline", []), lit, entrances, stand_ins):
        rows[:] = [row for row in rows if "gone" not in row]
    tonight = {key: own for key, own in now.get("tonight", {}).items() if own}
    if tonight:
        now["tonight"] = tonight
    else:
        now.pop("tonight", None)  # nobody is away any more
    return now


def _add_pattern(now, op):
    assert op.name not in now.get("patterns", {})  # else it is refused
    filled(now, ("patterns",), {})[op.name] = text_of(op.pattern)
    return now


def _change_pattern(now, op):
    keyed(now["patterns"][op.name], op.values)
    return now


def _each_naming(now):
    """Holder and key of everything that may name a pattern."""
    rows = [*now.get("timeline", []), *(r for steps in now.get("phrases", {}).values() for r in steps)]  # fmt: skip
    for row in rows:
        yield from ((each, "pattern") for each in (row, row.get("left", {}), row.get("right", {})))
    yield from ((record, "needs") for record in now["patterns"].values())


def _rename_pattern(now, op):
    for holder, key in _each_naming(now):
        if key in holder:
            own = [op.new if name == op.old else name for name in named(holder[key])]
            holder[key] = own if isinstance(holder[key], list) else own[0]
    own = {op.new if k == op.old else k: v for k, v in now["patterns"].items()}
    now["patterns"] = own
    moves = now.get("wishes", {}).get("moves", {})
    if op.old in moves:
        now["wishes"]["moves"] = {op.new if k == op.old else k: v for k, v in moves.items()}
    return now


def _delete_pattern(now, op):
    for holder, key in _each_naming(now):
        assert op.name not in named(holder.get(key, []))  # else it is refused
    del now["patterns"][op.name]
    if not now["patterns"]:
        del now["patterns"]
    return now


def _pattern_files(now, op):
    now.pop("pattern_files", None)
    if op.files:
        now["pattern_files"] = text_of(op.files)
    return now


def _away(now, op):
    if op.name in named(now.get("tonight", {}).get("away", [])):
        raise ValueError("away already")
    return _tonight(now, op.name, lambda away, others: ([*away, op.name], others))


def _stand_in(now, op):
    row = {"for": op.part, **text_of(op.person)}
    return _tonight(now, op.part, lambda away, others: (away, [*others, row]))


def _there(now, op):
    return _tonight(now, op.name, lambda away, others: (away, others))


def _tonight(now, name, change):
    """Who is away and who stands in, without somebody, then changed."""
    own = now.get("tonight", {})
    away = [each for each in named(own.get("away", [])) if name not in (None, each)]
    others = [row for row in own.get("stand_ins", []) if name not in (None, row["for"])]
    away, others = change(away, others)
    if "tonight" not in now and not (away or others):
        return now
    now.pop("tonight", None)
    if away or others:
        now["tonight"] = {key: v for key, v in (("away", away), ("stand_ins", others)) if v}
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
    if into == "entrances":
        return (into,)
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


def _set_sections(now, op):
    """Each record keeps what else it says; who names a section names it as it is called now."""
    own = filled(now, ("track", "corrections", "sections"), [])
    rows = [{"from": start, "name": name} for start, name in op.sections]
    own[:] = rows
    new = dict(op.renamed)
    lit = (now.get("fire") or {}).get("lit")
    for rows in (now.get("timeline"), now.get("staging"), now.get("entrances"), lit):
        for row in rows or ():
            assert not any(
                str(row.get(key)).endswith(name)
                for key in ("from", "until", "accent", "comes_on", "goes_off")
                for name in op.gone
            )  # what names it is refused
            for key in {"from", "until", "accent", "comes_on", "goes_off"} & set(row):
                row[key] = _called(str(row[key]), new, row[key])
    wishes = now.get("wishes") or {}
    if "character" in wishes:
        wishes["character"] = {
            new.get(key, key): value for key, value in wishes["character"].items()
        }
    if "stop" in wishes.get("moves", {}):
        stop = wishes["moves"]["stop"]
        several = stop if isinstance(stop, list) else [stop]
        several = [f"before {new[each[7:]]}" if str(each)[7:] in new else each for each in several]
        wishes["moves"]["stop"] = several if isinstance(stop, list) else several[0]
    return now


def _called(words, new, otherwise):
    for lead in ("start of ", "end of ", ""):
        if words.startswith(lead) and words[len(lead) :] in new:
            return lead + new[words[len(lead) :]]
    return otherwise


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


CHANGES = {
    blocks.PutBlock: _put_block, blocks.ChangeBlock: _change_block, blocks.StretchBlock: _stretch,
    blocks.MoveBlock: _move, blocks.DeleteBlocks: _delete, blocks.CopyBlocks: _copy, blocks.PasteBlocks: _paste, blocks.SplitBlock: _split_block,
    together.SetCanon: _canon, together.SetMirror: _mirror, together.SetUnison: _unison, together.AnswerWith: _answer,
    phrasing.RenamePhrase: _rename_phrase, phrasing.DeletePhrase: _delete_phrase,
    floor.MoveSpot: _move_spot, floor.SetFormation: _set_formation, floor.RenameFormation: _rename_formation,
    floor.DeleteFormation: _delete_formation, floor.PutWalk: _put_walk, floor.ChangeWalk: _change_walk,
    floor.SetWay: _way, floor.DeleteWalk: _delete_walk,
    people.AddPerformer: _add_performer, people.AddCrew: _add_crew, people.ChangePerson: _change_person,
    people.RenamePerson: _rename_person, people.RemovePerson: _remove_person,
    patterning.AddPattern: _add_pattern, patterning.ChangePattern: _change_pattern, patterning.RenamePattern: _rename_pattern,
    patterning.DeletePattern: _delete_pattern, patterning.SetPatternFiles: _pattern_files,
    tonight.SetAway: _away, tonight.SetStandIn: _stand_in, tonight.SetThere: _there,
    headings.ChangeTitles: _titles, headings.ChangeHeading: _heading, headings.DeleteHeading: _delete_heading,
    headings.PutItem: _put_item, headings.ChangeItem: _change_item, headings.DeleteItem: _delete_item,
    headings.CorrectCount: _count, headings.PutSection: _put_section, headings.ChangeSection: _change_section,
    headings.DeleteSection: _delete_section, sections.SetSections: _set_sections, DoTogether: _together, MakeChanges: _changes,
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
        through = [
            path for path in row["way"] if path in paths
        ]  # itself, or the phrase that it dances
        if through:
            n = paths.index(through[0])
            if n and op.follow_on:
                row["from"] = None
            if row["way"][-1] in paths and "until" in row["what"]:
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
