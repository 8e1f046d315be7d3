from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.finishing.draft_entries import SlotDance, rows_of
from sequencer.planning.drafting.gaps.slots import Slot


def move(name, **more):
    given = {"timing": "split", "direction": "same", "cycle": 2.0, "usual": True, **more}
    return DraftMove(pattern=name, **given)


def danced(start, beats, section, label, name, **more):
    slot = Slot(start=start, end=start + beats, section=section, label=label, material=0)
    return SlotDance(slot=slot, move=move(name), **more)


def rows(each, **more):
    phrases, found = rows_of(each, lambda beat: f"b{beat:g}", **more)
    return phrases, [row.values for row in found]


def test_a_step_says_only_what_is_not_usual():
    plain = danced(0, 16, "A", "A", "line", link=2)
    assert plain.step == {"pattern": "line", "beats": 14}
    other = SlotDance(
        slot=plain.slot,
        move=move(
            "box", timing="together", direction="opposite", cycle=2.5, usual=False, shift=1.0
        ),
        lead=2,
        rest=1,
    )
    assert other.step == {
        "pattern": "box", "timing": "together", "direction": "opposite", "cycle": 2.5, "shift": 1, "beats": 13,
    }  # fmt: skip
    alone = SlotDance(slot=plain.slot, move=move("box", timing="together", one_hand=True))
    assert "timing" not in alone.step


def test_parts_that_return_are_one_phrase_used_again():
    phrases, entries = rows([
        danced(0, 16, "A 1", "A", "line", link=2),
        danced(16, 16, "A 1", "A", "box", link=2),
        danced(32, 16, "B", "B", "windmill", link=1),
        danced(48, 16, "A 2", "A", "line", link=2),
        danced(64, 16, "A 2", "A", "box", rest=2),
    ])  # fmt: skip
    assert phrases == {
        "A": [
            {"pattern": "line", "beats": 14}, {"link": True, "beats": 2}, {"pattern": "box", "beats": 14},
        ]
    }  # fmt: skip
    assert entries == [
        {"from": "b0", "phrase": "A"},
        {"from": "b30", "link": True, "beats": 2},
        {"from": "b32", "pattern": "windmill", "beats": 15},
        {"from": "b47", "link": True, "beats": 1},
        {"from": "b48", "phrase": "A"},
    ]


def test_the_way_out_belongs_to_the_phrase_where_it_is_always_the_same():
    phrases, entries = rows([
        danced(0, 16, "A 1", "A", "line", link=2),
        danced(16, 16, "A 2", "A", "line", link=2),
        danced(32, 16, "B", "B", "box"),
    ])  # fmt: skip
    assert phrases == {"A": [{"pattern": "line", "beats": 14}, {"link": True, "beats": 2}]}
    assert [entry["from"] for entry in entries] == ["b0", "b16", "b32"]


def test_a_phrase_of_that_name_that_a_person_wrote_is_not_touched():
    each = [danced(0, 16, "A 1", "A", "line"), danced(16, 16, "A 2", "A", "line")]
    phrases, entries = rows(each, names={"A"})
    assert list(phrases) == ["A way 2"]
    assert {entry["phrase"] for entry in entries} == {"A way 2"}


def test_two_ways_of_one_label_are_two_phrases():
    each = [
        danced(16 * k, 16, f"A {k + 1}", "A", name)
        for k, name in enumerate(["line", "box", "line", "box"])
    ]
    phrases, entries = rows(each)
    assert list(phrases) == ["A", "A way 2"]
    assert [entry["phrase"] for entry in entries] == ["A", "A way 2", "A", "A way 2"]


def test_a_link_out_of_what_a_person_wrote_stands_before_the_move():
    _, entries = rows([danced(16, 16, "A", "A", "line", lead=2)], besides={"who": ["Ash"]})
    assert entries == [
        {"from": "b16", "who": ["Ash"], "link": True, "beats": 2},
        {"from": "b18", "who": ["Ash"], "pattern": "line", "beats": 14},
    ]


def test_who_is_late_dances_longer_before_and_shorter_after():
    late = {"Ann": 0, "Bo": 2, "Cy": 4}
    sections = []
    for start, section in ((0, "A 1"), (64, "A 2")):
        sections += [
            danced(start, 16, section, "A", "line", link=2, leaves=late, remark="in canon"),
            danced(start + 16, 16, section, "A", "box", link=1, comes=late),
        ]
    phrases, entries = rows(sections)
    assert phrases == {}  # of no two the steps are as long
    assert entries[:8] == [
        {"from": "b0", "who": ["Ann"], "pattern": "line", "beats": 14},
        {"from": "b0", "who": ["Bo"], "pattern": "line", "beats": 16},
        {"from": "b0", "who": ["Cy"], "pattern": "line", "beats": 18},
        {"from": "b14", "who": ["Ann"], "link": True, "beats": 2},
        {"from": "b16", "who": ["Bo"], "link": True, "beats": 2},
        {"from": "b18", "who": ["Cy"], "link": True, "beats": 2},
        {"from": "b16", "who": ["Ann"], "pattern": "box", "beats": 15},
        {"from": "b18", "who": ["Bo"], "pattern": "box", "beats": 13},
    ]
    assert entries[8:10] == [
        {"from": "b20", "who": ["Cy"], "pattern": "box", "beats": 11},
        {"from": "b31", "link": True, "beats": 1},
    ]
    _, found = rows_of(sections, lambda beat: f"b{beat:g}")
    assert [row.remark for row in found if row.remark] == ["A 1: in canon", "A 2: in canon"]


def test_a_solo_is_written_for_each_and_the_links_within_it_for_the_soloist():
    alone = {"alone": "Ash", "others": ("Bo", "Cy"), "remark": "solo of Ash, the others in support"}
    each = [
        danced(0, 16, "A", "A", "line", link=2),
        danced(16, 16, "B", "B", "box", link=1, support=move("spin", direction="opposite"), support_beats=30, goes_on=True, **alone),
        danced(32, 16, "B", "B", "windmill", link=2, **alone),
        danced(48, 16, "C", "C", "line"),
    ]  # fmt: skip
    phrases, found = rows_of(each, lambda beat: f"b{beat:g}")
    assert phrases == {}
    assert [row.values for row in found] == [
        {"from": "b0", "pattern": "line", "beats": 14},
        {"from": "b14", "link": True, "beats": 2},
        {"from": "b16", "who": ["Ash"], "pattern": "box", "beats": 15},
        {
            "from": "b16",
            "who": ["Bo", "Cy"],
            "pattern": "spin",
            "direction": "opposite",
            "beats": 30,
        },
        {"from": "b31", "who": ["Ash"], "link": True, "beats": 1},
        {"from": "b32", "who": ["Ash"], "pattern": "windmill", "beats": 14},
        {"from": "b46", "link": True, "beats": 2},
        {"from": "b48", "pattern": "line", "beats": 16},
    ]
    assert found[2].remark == "B: solo of Ash, the others in support"
    assert each[1].words == (
        "box, split time, same direction, Ash alone; the others: spin, split time, opposite directions"
    )


def test_who_is_off_is_left_out_and_what_returns_is_one_phrase_whoever_dances_it():
    few = {"off": ("Cy",), "who": ("Ash", "Bo")}
    phrases, entries = rows([
        danced(0, 16, "A 1", "A", "line", link=2, **few),
        danced(16, 16, "A 1", "A", "box", link=2, mirror=("Bo",), **few),
        danced(32, 16, "B", "B", "windmill", link=1),
        danced(48, 16, "A 2", "A", "line", link=2),
        danced(64, 16, "A 2", "A", "box", rest=2),
    ])  # fmt: skip
    assert [step["beats"] for step in phrases["A"]] == [14, 2, 14]
    assert entries[0] == {"from": "b0", "who": ["Ash", "Bo"], "phrase": "A"}
    assert entries[1] == {"from": "b30", "who": ["Ash", "Bo"], "link": True, "beats": 2}
    assert entries[2] == {"from": "b32", "pattern": "windmill", "beats": 15}
    assert entries[-1] == {"from": "b48", "phrase": "A"}


def test_whoever_goes_off_ends_the_move_and_only_the_others_are_led_on():
    _, entries = rows([
        danced(0, 16, "A", "A", "line", link=2, mirror=("Bo", "Cy"), who=("Ash", "Bo", "Cy"), ends=("Cy",), ends_early=1),
        danced(16, 16, "A", "A", "box", off=("Cy",), who=("Ash", "Bo")),
    ])  # fmt: skip
    assert entries == [
        {"from": "b0", "who": ["Ash", "Bo"], "pattern": "line", "beats": 14, "mirror": ["Bo"]},
        {"from": "b0", "who": ["Cy"], "pattern": "line", "beats": 15, "mirror": ["Cy"]},
        {"from": "b14", "who": ["Ash", "Bo"], "link": True, "beats": 2},
        {"from": "b16", "who": ["Ash", "Bo"], "pattern": "box", "beats": 16},
    ]


def test_words_say_who_dances_where_somebody_is_off():
    usual = "line, split time, same direction"
    assert danced(0, 16, "A", "A", "line").words == usual
    assert danced(0, 16, "A", "A", "line", who=("Ash", "Bo"), ends=("Bo",)).words == usual
    few = danced(0, 16, "A", "A", "line", off=("Cy", "Di"), who=("Ash", "Bo"))
    assert few.words == f"{usual}, without Cy and Di"
    assert danced(0, 16, "A", "A", "line", off=("Bo",), who=("Ash",)).words == f"{usual}, Ash alone"
