"""Every operation that the planning page offers, by keyboard alone and by mouse: what the file says after each, and the first bytes after undo.

What the file must say comes from the operation itself, as a script would do it (`tests/property/test_operations.py` holds those against an
oracle). Every run does by keyboard what no other test of the page does; the long one all by keyboard, and all by mouse.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from time import monotonic, sleep

import pytest

from sequencer.show.operations import block_operations as blocks
from sequencer.show.operations import floor_operations as floor
from sequencer.show.operations import heading_operations as headings
from sequencer.show.operations import pattern_operations as own
from sequencer.show.operations import people_operations as people
from sequencer.show.operations import phrase_operations as phrasing
from sequencer.show.operations import section_operations as sections
from sequencer.show.operations import together_operations as together
from sequencer.show.operations import tonight_operations as tonight
from sequencer.show.operations.combined_operations import DoTogether
from sequencer.show.operations.every_operation import OPERATIONS, read_operation
from sequencer.show.operations.operation import Operation, apply
from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_page import SHOW as PAIR
from tests.browser.test_planning_page import Planner, changed_lines
from tests.browser.test_stage_page import on_plan
from tests.desk_client import eventually, warm_desk
from tests.repeated import at_length

SHOW = """\
title: Two weaves             # a comment that stays
track: {file: song.wav, corrections: {metre: 4, one: 0:00.5, sections: [{from: 1.1, name: first}, {from: 9.1, name: second}]}}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
  exits:
    - {name: gate, at: [7, 9], width: 3 m}    # to the car park
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.55}}   # the first
  - {name: Birch, stature: 1.8, prop: {tether: 0.55}}
formations:
  pair: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4]}}}
  deep: {spots: {Ash: {at: [-3, 7]}, Birch: {at: [3, 4]}}}
  spare: {spots: {Ash: {at: [-2, 4]}, Birch: {at: [2, 4]}}}
  row: {shape: line, centre: [0, 4], spacing: 4 m}
staging:
  - {formation: pair, from: 1.1}
  - {formation: deep, from: 5.1, beats: 8}   # upstage
  - {formation: row, from: 14.1, beats: 8}
patterns:
  # mine
  petals: {law: orbit, set: {ratio: -3}}   # four
phrases:
  wheel:
    - {pattern: extension, beats: 8}   # slowly
  lone:
    - {pattern: extension, beats: 4}
timeline:
  # both
  - {who: all, from: 2.1, pattern: two-beat-weave, beats: 8}   # a weave
  - {who: Ash, from: 4.1, phrase: wheel}
  - {who: Ash, from: 6.3, phrase: wheel}
  - {who: all, from: 9.1, pattern: extension, beats: 8, canon: 2}
crew:
  - {name: Ivy, post: [-8, 6], duty: spotter}
weather: {gusts: 3 m/s}
tonight: {away: [Ivy]}
"""
# Mends are sought where everybody is there: these two are too near each other.
TOO_NEAR = PAIR.replace("[-3, 4]", "[-0.8, 4]").replace("[3, 4]", "[0.8, 4]")
AT = ("timeline", 0)
SHOWN = ".sheet:not(.older)"
IN_FORM = "() => document.activeElement.closest('.place')"
NOTHING_TO_UNDO = "button:text-is('Undo'):disabled"
# Kinds that no control of the page does by themselves, and what does the same there.
ELSEWHERE = {
    "copy-blocks": "the page copies first, and pastes what was copied",
    "split-out": "change-here gives a use its own phrase",
    "change-section": "set-sections, under Count",
    "put-back": "Undo",
}


class Keys:
    """Somebody without a mouse: what cannot be come to by Tab, or by the arrows of a group, is not there."""

    def __init__(self, planner):
        self.planner, self.page, self.keyboard = planner, planner.page, planner.page.keyboard

    def come_to(self, target):
        target.wait_for()
        assert target.evaluate("(each) => { each.focus(); return document.activeElement === each && each.tabIndex >= 0; }")  # fmt: skip

    def press(self, target):
        self.come_to(target)
        self.keyboard.press("Enter")

    def tick(self, target):
        self.come_to(target)
        self.keyboard.press("Space")

    def write(self, field, words, end="Tab"):
        self.come_to(field)
        self.keyboard.press("Control+a")
        self.keyboard.type(words)
        self.keyboard.press(end)

    def choose(self, box, option):
        self.come_to(box)
        options, at = box.evaluate("(each) => [[...each.options].map((one) => one.text), each.selectedIndex]")  # fmt: skip
        by = next(k for k, words in enumerate(options) if words.startswith(option)) - at
        for _ in range(abs(by)):
            self.keyboard.press("ArrowDown" if by > 0 else "ArrowUp")

    def more(self, within, word):
        """A field in which nothing is said yet, from the list that is opened."""
        box = within.get_by_label("Say more").first
        self.come_to(box)
        options = box.evaluate("(each) => [...each.options].map((one) => one.text)")
        self.keyboard.press("Alt+ArrowDown")
        for _ in range(options.index(word)):
            self.keyboard.press("ArrowDown")
        self.keyboard.press("Enter")

    def here(self, group, words):
        """One of several round buttons: the arrows go from one to the next, Space takes it."""
        self.come_to(group.locator("input:checked"))
        for _ in range(2):
            if group.get_by_label(words).evaluate("(each) => document.activeElement === each"):
                break
            self.keyboard.press("ArrowRight")
        self.keyboard.press("Space")

    def tab(self, name):
        self.come_to(self.page.get_by_role("tab", selected=True))
        for _ in range(10):
            chosen = self.page.get_by_role("tab", selected=True)
            if chosen.inner_text().startswith(name):
                return
            before = chosen.inner_text()
            self.keyboard.press("ArrowRight")
            self.page.wait_for_function("(before) => document.activeElement.matches('[role=tab][aria-selected=true]') && document.activeElement.innerText !== before", arg=before)  # fmt: skip

    def count(self, bar, count):
        """Walk over the sheet to a count, and open the form about it."""
        self.come_to(self.page.locator(".count[tabindex='0']"))
        for _ in range(60):
            words = self.page.evaluate("document.activeElement.getAttribute('aria-label')")
            at_bar, at_count = map(int, re.match(r"Bar (\d+), count (\d+),", words).groups())
            second = ", Birch:" in words  # who has a line below Ash's
            if (at_bar, at_count) == (bar, count) and not second:
                break
            key = (
                ("ArrowDown" if at_bar < bar else "ArrowUp") if at_bar != bar or second
                else "ArrowRight" if at_count < count else "ArrowLeft"
            )  # fmt: skip
            self.keyboard.press(key)
            self.page.wait_for_function("(words) => document.activeElement.getAttribute('aria-label') !== words && document.activeElement.matches('.count')", arg=words)  # fmt: skip
        self.keyboard.press("Enter")
        self.page.wait_for_function(IN_FORM)  # the form takes the keyboard when it opens

    def copy(self):
        self.press(self.page.get_by_role("button", name="Copy"))

    def open(self, within, summary):
        found = within.locator("summary", has_text=summary).first
        found.wait_for()
        if found.evaluate("(each) => !each.parentElement.open"):
            self.press(found)

    def late(self):
        """Some bars before the end of the song."""
        self.come_to(self.page.get_by_role("slider", name="Where the song is"))
        self.keyboard.press("End")
        self.keyboard.press("PageDown")
        self.keyboard.press("PageDown")

    def early(self):
        self.come_to(self.page.get_by_role("slider", name="Where the song is"))
        self.keyboard.press("Home")

    def aside(self, name):
        """A spot 50 cm to the audience's right."""
        self.come_to(self.page.locator(f".handle[aria-label^='{name},']"))
        self.keyboard.press("Shift+ArrowRight")

    def undo(self):
        self.come_to(self.page.get_by_role("tab", selected=True))
        self.keyboard.press("Control+z")


class Mouse(Keys):
    """Somebody who points; words are typed all the same."""

    def press(self, target):
        target.click()

    def tick(self, target):
        target.click()

    def write(self, field, words, end="Tab"):
        field.click()
        field.fill(words)
        self.keyboard.press(end)

    def choose(self, box, option):
        words = box.evaluate("(each) => [...each.options].map((one) => one.text)")
        box.select_option(label=next(each for each in words if each.startswith(option)))

    def more(self, within, word):
        within.get_by_label("Say more").first.select_option(label=word)

    def here(self, group, words):
        group.get_by_label(words).click()

    def tab(self, name):
        self.page.get_by_role("tab", name=name).click()

    def count(self, bar, count):
        self.planner.count(bar, count).first.click(force=True)
        self.page.wait_for_function(IN_FORM)  # the form takes the keyboard when it opens

    def late(self):
        box = self.page.get_by_role("slider", name="Where the song is").bounding_box()
        self.page.mouse.click(box["x"] + 0.8 * box["width"], box["y"] + box["height"] / 2)

    def early(self):
        box = self.page.get_by_role("slider", name="Where the song is").bounding_box()
        self.page.mouse.click(box["x"] + 2, box["y"] + box["height"] / 2)

    def aside(self, name):
        x, y = {"Ash": (-3, 4), "Birch": (3, 4)}[name]
        mouse = self.page.mouse
        mouse.move(*on_plan(self.planner, x, y))
        mouse.down()
        mouse.move(*on_plan(self.planner, x + 0.3, y))
        mouse.move(*on_plan(self.planner, x + 0.5, y))
        mouse.up()

    def undo(self):
        self.page.get_by_role("button", name="Undo").click()


@dataclass
class Row:
    """Something that a person does, and the operation that it is."""

    do: Callable[[Keys], Operation | None]
    operation: Operation | None = None  # else what `do` gives
    show: str = SHOW  # on which it is done


def at_count(bar, count, *steps):
    def do(hand):
        hand.count(bar, count)
        for step in steps:
            step(hand)

    return do


def button(name):
    return lambda hand: hand.press(hand.page.get_by_role("button", name=name, exact=True))


def opening(summary):
    return lambda hand: hand.open(hand.page.locator(".place"), summary)


def filling(label, words, end="Tab"):
    return lambda hand: hand.write(hand.page.locator(".place").get_by_label(label, exact=True), words, end)  # fmt: skip


def mirrored(name):
    return lambda hand: hand.tick(hand.page.get_by_role("group", name="Together").get_by_label(name, exact=True))  # fmt: skip


def under(tab, *steps):
    def do(hand):
        hand.tab(tab)
        for step in steps:
            step(hand)

    return do


def in_form(heading, *inner):
    """Steps in the form of a heading, and in a part of it."""
    *parts, step = inner

    def do(hand):
        hand.tab("Show")
        within = hand.page.locator(".forms > details", has=hand.page.locator(f"> summary:text-is('{heading}')"))  # fmt: skip
        hand.open(hand.page.locator(".forms"), heading)
        for part in parts:
            hand.open(within, part)
            within = within.locator("details", has=hand.page.locator(f"> summary:has-text('{part}')")).first  # fmt: skip
        step(hand, within)

    return do


def field(label, words):
    return lambda hand, within: hand.write(within.get_by_label(label, exact=True), words)


def saying_more(label, words):
    def step(hand, within):
        hand.more(within, label)
        hand.write(within.get_by_label(label, exact=True), words)

    return step


def pressing(name):
    return lambda hand, within: hand.press(within.get_by_role("button", name=name, exact=True))


def renaming(words):
    def step(hand, within):
        hand.write(within.get_by_label("Name", exact=True), words)
        hand.press(within.get_by_role("button", name="Rename everywhere"))

    return step


def adding(word, *fields):
    """A new record: each field by its label, with what is typed or chosen."""

    def step(hand, within):
        hand.press(within.get_by_role("button", name=re.compile(f"^Add an? {word}$")))
        new = within.get_by_role("group", name=f"A new {word}")
        for label, words in fields:
            box = new.get_by_label(label, exact=True)
            if box.evaluate("(each) => each.tagName") == "SELECT":
                hand.choose(box, words)
            else:
                hand.write(box, words)
        hand.press(new.get_by_role("button", name=f"Add the {word}"))

    return step


def walk_of_deep(hand):
    hand.tab("Stage")
    hand.choose(hand.page.get_by_label("Look at"), "to deep, from 5.1")
    hand.page.get_by_label("in beats").wait_for()


def paste(hand):
    hand.count(1 + 16, 1)
    hand.press(hand.page.get_by_role("button", name=re.compile("^Paste")))


def part_of(name):
    def find(hand):
        hand.tab("Who")
        return hand.page.get_by_role("region", name=name, exact=True)

    return find


def stands_in(hand):
    ash = part_of("Ash")(hand)
    hand.here(ash, "has a stand-in")
    hand.write(ash.get_by_label("Who takes the part"), "Fern")
    hand.write(ash.get_by_label("Height"), "1.62 m", end="Enter")


def take_pair(hand):
    hand.tab("Stage")
    hand.late()
    form = hand.page.locator("fieldset.take")
    hand.choose(form.get_by_label("Which"), "pair")
    done = form.get_by_role("button")
    start = done.inner_text().removeprefix("Take it from ")
    hand.press(done)
    return floor.PutWalk(formation="pair", start=start, beats=8)


def take_new(hand):
    hand.tab("Stage")
    hand.late()
    form = hand.page.locator("fieldset.take")
    hand.choose(form.get_by_label("Which"), "a new one")
    hand.write(form.get_by_label("Its name"), "gate")
    hand.choose(form.get_by_label("How"), "circle")
    done = form.get_by_role("button")
    start = done.inner_text().removeprefix("Take it from ")
    hand.press(done)
    shape = {"shape": "circle", "centre": [0, 4], "spacing": "4 m"}
    new = floor.SetFormation(name="gate", formation=shape)
    return DoTogether(operations=(new, floor.PutWalk(formation="gate", start=start, beats=8)))


def section_named(hand):
    hand.tab("Count")
    hand.write(hand.page.get_by_label(re.compile("^Name of the section from 9.1")), "chorus")
    done = hand.page.get_by_role("button", name="Set it so")
    hand.page.wait_for_function("() => [...document.querySelectorAll('button.main')].some((each) => each.textContent === 'Set it so' && !each.disabled)")  # fmt: skip
    hand.press(done)


def section_put(hand, within):
    hand.write(within.get_by_label("A section"), "bridge")
    hand.write(within.get_by_label("from bar.beat"), "5.1", end="Enter")


def section_out(hand, within):
    hand.press(within.get_by_role("button", name="Take out").last)


def files_set(hand, within):
    hand.write(within.get_by_label("A file"), "moves.yaml", end="Enter")


def spots_of_row(hand):
    hand.tab("Stage")
    hand.late()
    hand.press(hand.page.get_by_role("button", name="Give everybody their own spot"))


def formation_named(hand):
    hand.tab("Stage")
    hand.early()
    legend = hand.page.get_by_role("group", name="The formation pair")
    hand.write(legend.get_by_label("Its name"), "gate")


def spot_moved(hand):
    hand.tab("Stage")
    hand.early()
    hand.aside("Ash")


def mended(hand):
    """The first mend of the first finding; the page has it from the server, and shows what it changes before it does it."""
    hand.tab("Findings")
    first = hand.page.locator(".mends button").first
    first.wait_for()
    found = hand.page.evaluate(
        """() => fetch("/api/findings", { headers: { "X-Sequencer-Secret": sessionStorage.getItem("secret") } }).then((answer) => answer.json())"""
    )
    words = first.inner_text()
    mend = next(
        each for finding in found["findings"] for each in finding["mends"] if each["words"] == words
    )
    hand.press(first)
    shown = hand.page.locator(".preview pre")
    assert [line[2:] for line in shown.inner_text().splitlines()] == [
        line.strip() for hunk in mend["lines"] for line in (*hunk["out"], *hunk["in"])
    ]
    hand.press(hand.page.get_by_role("button", name="Do it"))
    return read_operation(mend["operation"])


ROWS = {
    "put-block": Row(at_count(17, 1, button("Rest here")), blocks.PutBlock(into=("timeline",), block={"who": "all", "from": "17.1", "rest": 8})),
    "change-block": Row(at_count(1, 5, button("½ beat on")), blocks.ChangeBlock(at=AT, values={"shift": 0.5})),
    "stretch-block": Row(at_count(1, 5, button("1 beat shorter")), blocks.StretchBlock(at=AT, beats=7)),
    "move-block": Row(at_count(9, 1, button("1 beat later")), blocks.MoveBlock(at=("timeline", 3), start="9.2")),
    "split-block": Row(at_count(3, 1, button("Cut in two at 3.1")), blocks.SplitBlock(at=AT, first=4, second=4, shift=4, home=2)),
    "paste-blocks": Row(at_count(1, 5, Keys.copy, paste), blocks.PasteBlocks(into=("timeline",), blocks=("{who: all, from: 2.1, pattern: two-beat-weave, beats: 8}   # a weave",), starts=("17.1",))),
    "delete-blocks": Row(at_count(9, 1, button("Delete")), blocks.DeleteBlocks(at=(("timeline", 3),))),
    "set-canon": Row(at_count(9, 1, button("1 beat farther apart")), together.SetCanon(at=("timeline", 3), beats=3)),
    "set-unison": Row(at_count(9, 1, button("All at once")), together.SetUnison(at=(("timeline", 3),))),
    "set-mirror": Row(at_count(1, 5, mirrored("Birch")), together.SetMirror(at=AT, who=("Birch",))),
    "part-entry": Row(at_count(1, 5, button("Part Birch from the others")), together.PartEntry(at=AT, who=("Birch",), starts={"Ash": "2.1", "Birch": "2.1"})),
    "answer-with": Row(at_count(3, 5, opening("Call and answer"), button("Birch answers at 6.1")), together.AnswerWith(at=("timeline", 1), who=("Birch",), start="6.1")),
    "name-phrase": Row(at_count(1, 5, opening("Make a phrase of it"), filling("Its name", "turn", "Enter")), phrasing.NamePhrase(at=(AT,), name="turn", follow_on=True, beats=(None,))),
    "write-out-phrase": Row(at_count(3, 5, button("Write wheel out here")), phrasing.WriteOutPhrase(at=("timeline", 1))),
    "change-here": Row(at_count(3, 5, button("1 beat shorter")), phrasing.ChangeHere(use=(("timeline", 1),), rounds=(None,), operation=blocks.StretchBlock(at=("phrases", "wheel", 0), beats=7))),
    "everywhere": Row(at_count(3, 5, lambda hand: hand.here(hand.page.locator(".place fieldset").first, "everywhere"), button("1 beat shorter")), blocks.StretchBlock(at=("phrases", "wheel", 0), beats=7)),
    "rename-phrase": Row(at_count(3, 5, filling("Its name", "round", "Enter")), phrasing.RenamePhrase(old="wheel", new="round")),
    "delete-phrase": Row(at_count(17, 1, lambda hand: hand.choose(hand.page.get_by_label("A phrase"), "lone"), button("Delete it: nothing dances it")), phrasing.DeletePhrase(name="lone")),
    "move-spot": Row(spot_moved, floor.MoveSpot(formation="pair", who="Ash", at=(-2.5, 4))),
    "set-formation": Row(spots_of_row, floor.SetFormation(name="row", formation={"spots": {"Ash": {"at": [-2, 4]}, "Birch": {"at": [2, 4]}}})),
    "rename-formation": Row(formation_named, floor.RenameFormation(old="pair", new="gate")),
    "delete-formation": Row(under("Stage", button("Delete the formation spare")), floor.DeleteFormation(name="spare")),
    "put-walk": Row(take_pair),
    "do-together": Row(take_new),
    "change-walk": Row(lambda hand: (walk_of_deep(hand), hand.write(hand.page.get_by_label("in beats"), "6"))[-1], floor.ChangeWalk(number=1, values={"beats": 6})),
    "set-way": Row(lambda hand: (walk_of_deep(hand), hand.press(hand.page.get_by_role("button", name="Add a point to Ash’s way")))[-1], floor.SetWay(number=1, who="Ash", points=((-3.5, 5.5),))),
    "delete-walk": Row(lambda hand: (walk_of_deep(hand), hand.press(hand.page.get_by_role("button", name="Delete this walk")))[-1], floor.DeleteWalk(number=1)),
    "add-performer": Row(in_form("Cast", adding("performer", ("name *", "Cedar"), ("height *", "1.6 m"), ("prop *", "poi"))), people.AddPerformer(performer={"name": "Cedar", "stature": "1.6 m", "prop": "poi"}, spots={"pair": {"at": [0, 3]}, "deep": {"at": [0, 3]}, "spare": {"at": [0, 1.5]}})),
    "add-crew": Row(in_form("Crew", adding("member of the crew", ("name *", "Oak"), ("metres across, right of the middle for the audience", "8"), ("metres upstage of the front edge", "6"), ("duty *", "lighter"))), people.AddCrew(member={"name": "Oak", "post": [8, 6], "duty": "lighter"})),
    "change-person": Row(in_form("Cast", "Ash", field("height", "1.71 m")), people.ChangePerson(group="cast", name="Ash", values={"stature": "1.71 m"})),
    "rename-person": Row(in_form("Cast", "Ash", renaming("Rowan")), people.RenamePerson(group="cast", name="Ash", new="Rowan")),
    "remove-person": Row(in_form("Crew", "Ivy", pressing("Take Ivy out")), people.RemovePerson(group="crew", name="Ivy")),
    "add-pattern": Row(in_form("Patterns of your own", adding("pattern", ("name *", "loops"), ("motion *", "orbit"))), own.AddPattern(name="loops", pattern={"law": "orbit"})),
    "change-pattern": Row(in_form("Patterns of your own", "petals", field("ratio", "-2")), own.ChangePattern(name="petals", values={"set": {"ratio": -2}})),
    "rename-pattern": Row(in_form("Patterns of your own", "petals", renaming("flower of mine")), own.RenamePattern(old="petals", new="flower of mine")),
    "delete-pattern": Row(in_form("Patterns of your own", "petals", pressing("Delete petals")), own.DeletePattern(name="petals")),
    "set-pattern-files": Row(in_form("Patterns of your own", files_set), own.SetPatternFiles(files=("moves.yaml",))),
    "set-away": Row(lambda hand: hand.here(part_of("Ash")(hand), "is away"), tonight.SetAway(name="Ash")),
    "set-stand-in": Row(stands_in, tonight.SetStandIn(part="Ash", person={"name": "Fern", "stature": "1.62 m"})),
    "set-there": Row(under("Who", button("Everybody is there")), tonight.SetThere()),
    "change-titles": Row(in_form("Show", field("title", "Three weaves")), headings.ChangeTitles(values={"title": "Three weaves"})),
    "change-heading": Row(in_form("Weather", field("gusts", "4 m/s")), headings.ChangeHeading(heading="weather", values={"gusts": "4 m/s"})),
    "delete-heading": Row(in_form("Weather", pressing("Leave all of it out")), headings.DeleteHeading(heading="weather")),
    "put-item": Row(in_form("Place", adding("exit", ("name *", "road"), ("metres across, right of the middle for the audience", "-7"), ("metres upstage of the front edge", "9"), ("width *", "2 m"))), headings.PutItem(into="exits", item={"name": "road", "at": [-7, 9], "width": "2 m"})),
    "change-item": Row(in_form("Place", "gate", field("width", "2.5 m")), headings.ChangeItem(into="exits", number=0, values={"width": "2.5 m"})),
    "delete-item": Row(in_form("Place", "gate", pressing("Take it out")), headings.DeleteItem(into="exits", number=0)),
    "correct-count": Row(in_form("Song", saying_more("shift", "10 ms")), headings.CorrectCount(values={"shift": "10 ms"})),
    "make-changes": Row(mended, show=TOO_NEAR),
    "put-section": Row(in_form("Song", section_put), headings.PutSection(start="5.1", name="bridge", before=1)),
    "delete-section": Row(in_form("Song", section_out), headings.DeleteSection(number=1)),
    "set-sections": Row(section_named, sections.SetSections(sections=(("1.1", "first"), ("9.1", "chorus")), renamed=(("second", "chorus"),))),
}  # fmt: skip


def test_the_table_has_every_kind_that_there_is():
    assert set(ROWS) - {"everywhere"} | set(ELSEWHERE) == set(OPERATIONS)
    assert not set(ROWS) & set(ELSEWHERE)
    assert set(ROWS) > SEEN_ELSEWHERE
    for kind, row in ROWS.items():
        assert row.operation is None or kind in (row.operation.KIND, "everywhere")


# Other tests of the page do these in every run, with what they come to in the file.
SEEN_ELSEWHERE = {
    "stretch-block", "split-block", "delete-blocks", "part-entry", "answer-with", "name-phrase", "write-out-phrase", "everywhere",
    "rename-phrase", "move-spot", "set-formation", "rename-formation", "delete-formation", "put-walk", "change-walk", "set-way",
    "delete-walk", "add-pattern", "change-pattern", "set-away", "set-stand-in", "set-there", "set-sections",
}  # fmt: skip
BY_KEYS = (Keys, [kind for kind in ROWS if kind not in SEEN_ELSEWHERE])


@pytest.mark.parametrize(
    ("hand", "kinds"),
    [BY_KEYS, *at_length((Keys, sorted(SEEN_ELSEWHERE)), (Mouse, list(ROWS)))],
    ids=["keys", "keys, all others", "mouse"],
)
def test_each_operation_changes_the_file_as_it_says_and_undo_gives_its_bytes_back(
    flat_browser, tmp_path, hand, kinds
):
    (tmp_path / "moves.yaml").write_text("patterns: {loops: {law: orbit}}\n", encoding="utf-8")
    for number, show in enumerate(dict.fromkeys(ROWS[kind].show for kind in kinds)):
        path = beside_its_song(tmp_path, show, f"two{number or ''}.yaml")
        _all_done_and_undone(flat_browser, hand, path, [kind for kind in kinds if ROWS[kind].show == show])  # fmt: skip


def _all_done_and_undone(browser, hand, path, kinds):
    show = path.read_text(encoding="utf-8")
    with warm_desk(path) as served, Planner(browser, served.address) as planner:
        person, page = hand(planner), planner.page
        if hand is Keys:
            page.set_viewport_size({"width": 1000, "height": 420})  # less to draw
        page.locator(SHOWN).wait_for()
        for kind in kinds:
            row = ROWS[kind]
            done = row.do(person)
            operation = row.operation or done
            comes_to(served, apply(show, operation, file="two.yaml"), kind)
            assert served.page.get("show")[1]["undo"] == operation.words
            person.undo()
            comes_to(served, show, f"{kind} undone")
            page.locator(NOTHING_TO_UNDO).wait_for()
            page.locator(SHOWN).wait_for()
            if (close := page.locator(".place header button")).count():
                close.click()
        assert served.page.get("show")[1]["undo"] is None
        page.keyboard.press("Control+s")
        eventually(lambda: served.page.get("show")[1]["saved"])
        assert path.read_bytes() == show.encode()
        assert planner.faults == []


def comes_to(served, text, what):
    """Waits until the show says a text, and tells how it differs if it does not."""
    now = ""
    end = monotonic() + 60
    while (now := served.page.get("show")[1]["text"]) != text:
        assert monotonic() < end, f"{what}: {changed_lines(text, now)}"
        sleep(0.05)


SLOW = """(slowed) => { const send = window.fetch; window.fetch = async (...what) => {
    if (String(what[0]).includes(slowed)) await new Promise((done) => setTimeout(done, 600)); return send(...what); } }"""
LEFT = ("timeline", 3)


@pytest.mark.parametrize(
    "slowed", ["operations", *at_length("view")]
)  # the change, or what is shown after it
def test_a_second_press_before_the_first_is_shown_touches_nothing_else(flat_browser, tmp_path, slowed):  # fmt: skip
    path = beside_its_song(tmp_path, SHOW)
    with warm_desk(path) as served, Planner(flat_browser, served.address) as planner:
        page, person = planner.page, Mouse(planner)
        page.locator(SHOWN).wait_for()
        page.evaluate(SLOW, slowed)
        # The form about what was cut is still there for a moment.
        person.count(1, 5)
        cut, longer = (page.get_by_role("button", name=each, exact=True) for each in ("Cut", "1 beat longer"))  # fmt: skip
        page.evaluate("([one, other]) => { one.click(); other.click(); }", [cut.element_handle(), longer.element_handle()])  # fmt: skip
        comes_to(served, apply(SHOW, blocks.DeleteBlocks(at=(AT,)), file="two.yaml"), "cut")
        page.locator(SHOWN).wait_for()
        page.wait_for_function("() => document.querySelector('.top [role=status]').innerText.startsWith('Nothing was done')")  # fmt: skip
        assert page.locator(".refused").count() == 0
        person.undo()
        comes_to(served, SHOW, "undone")
        page.locator(NOTHING_TO_UNDO).wait_for()
        page.locator(SHOWN).wait_for()
        # Delete pressed twice on one count: the entry after it stays.
        keys = Keys(planner)
        page.get_by_role("button", name="Close").click()
        keys.count(9, 1)
        page.keyboard.press("Escape")
        page.wait_for_function("() => document.activeElement.matches('.count')")
        for _ in range(2):
            page.keyboard.press("Delete")
        comes_to(served, apply(SHOW, blocks.DeleteBlocks(at=(LEFT,)), file="two.yaml"), "deleted")
        page.locator(SHOWN).wait_for()
        page.wait_for_timeout(100)  # what waited for that has been done
        assert [each["words"] for each in served.page.get("history")[1]["steps"]] == ["delete 1 block"]  # fmt: skip
        assert planner.faults == []
