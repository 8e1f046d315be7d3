import re
from dataclasses import replace
from itertools import pairwise
from math import inf
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.checks.suite import checked
from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.planning.drafting import draft_search, routine_search
from sequencer.planning.drafting.draft_search import _Drafting, _Whole, drafted_show
from sequencer.planning.drafting.drafted_routine import DraftingStopped, DraftRequest
from sequencer.planning.drafting.gaps.draft_ground import ground_of
from sequencer.planning.drafting.optimising.choices import Chosen
from sequencer.planning.drafting.why import fit, summary
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.timing.tempo import TempoMap
from tests.songs import even_song, silent_song

KNOWN = "two-beat-weave, extension, antispin-flower-4, wheel-spin, line"
SHOW = """\
title: One
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 8 m, depth: 8 m}, audience: [{line: [[-8, -6], [8, -6]]}]}
cast:
  - {name: Ash, stature: 1.7, prop: poi, CAST}
formations: {start: {spots: {Ash: {at: [0, 4]}}}}
staging: [{formation: start, from: 1.1}]
wishes: {WISHES}
timeline: []   # nothing yet
"""
SECTIONS = {0.0: "A", 9.6: "B", 19.2: "A", 28.8: "C"}


def song(beats=65, **more):
    """At 100 beats a minute, where A returns, and the second half of A and B is louder than the first."""
    energy = tuple([0.2] * 8 + [0.9] * 8 + [0.2] * 8 + [0.6] * 8)
    return even_song(beats, **{"tempo": 100.0, "sections": SECTIONS, "energy": energy, **more})


def show_text(known=KNOWN, wishes="", cast=None):
    cast = cast or f"repertoire: {{known: [{known}]}}"
    return SHOW.replace("CAST", cast).replace("WISHES", wishes)


def draft(text, **asked):
    return drafted_show(text, "s.yaml", song(), DraftRequest(**asked))


@pytest.fixture(scope="module")
def plain():
    return draft(show_text())


def stage(text):
    return staged(show_from_document(parse_document(text, "s.yaml")), song())


def danced(text):
    return [(block.start, block.title) for block in stage(text).blocks if not block.link]


def test_a_draft_is_clean_and_fills_the_song(plain):
    show = stage(plain.text)
    bad = [one for one in checked(show).findings if one.severity != "note"]
    assert bad == []
    assert plain.checked
    assert show.blocks[0].start == 0
    assert [row[1] for row in plain.rows] == ["1.1", "5.1", "9.1", "13.1"]
    assert plain.bound <= plain.cost
    assert plain.cost == pytest.approx(sum(plain.terms.values()))
    assert "# nothing yet" in plain.text


def test_what_returns_is_danced_alike_as_one_phrase(plain):
    titles = dict(danced(plain.text))
    assert titles[0] == titles[32]
    same = draft(show_text(wishes="returns: same"))
    titles = dict(danced(same.text))
    assert titles[0] == titles[32]
    assert same.text.count("phrase: A") == 2
    assert titles[16] != titles[0] != titles[48]


def test_loud_music_is_danced_larger(plain):
    show = stage(plain.text)
    sizes = {
        "line": 0,
        "two-beat-weave": 1,
        "wheel-spin": 0,
        "extension": 2,
        "antispin-flower-4": 2,
    }
    titles = dict(danced(plain.text))
    assert sizes[titles[16]] >= sizes[titles[0]]
    assert show.blocks_of("Ash")


def test_the_same_again_and_again(plain):
    assert draft(show_text()).text == plain.text
    assert draft(plain.text).text == plain.text


def test_another_differs_in_a_third_and_is_no_better(plain):
    other = draft(plain.text, another=True)
    before, after = danced(plain.text), danced(other.text)
    differ = sum(a[1] != b[1] for a, b in zip(before, after, strict=True))
    assert differ * 3 >= len(before)
    assert other.checked
    assert other.cost >= plain.cost - 1e-9


def test_what_a_person_wrote_stays_and_a_changed_entry_is_theirs(plain):
    head = "timeline:   # nothing yet\n"
    own = "  # my own\n  - {from: 5.1, pattern: windmill, beats: 16}\n"
    mine = plain.text.replace(head, head + own)
    out = draft(mine)
    assert own in out.text
    assert (16.0, "windmill") in danced(out.text)
    own = r"(from: 5\.1, pattern: )[a-z0-9-]+(.*?)(, with: \{[^}]*\})?"
    changed = re.sub(own + "(, beats)", r"\1fountain\2\4", plain.text, count=1)
    kept = draft(changed)
    assert (16.0, "fountain") in danced(kept.text)


def test_an_entry_made_ones_own_leaves_the_others_as_they_are():
    """Of routines that cost about the same the standing one stays, whatever another search would find first."""
    text = draft(show_text(known=KNOWN + ", wheel-extension, cat-eye"), seed=3).text
    assert ", drafted: " in text
    taken = re.sub(r"(from: 13\.1, pattern: .*), drafted: [a-z]+", r"\1", text)
    assert taken != text
    assert danced(draft(taken).text) == danced(text)


def test_only_one_section_is_drafted_anew(plain):
    out = draft(plain.text.replace("wishes: {}", "wishes: {character: {C: calm}}"), section="C")
    before, after = danced(plain.text), danced(out.text)
    assert before[:3] == after[:3]
    assert len(out.rows) == 1


def test_wishes_are_met_and_stops_are_rests():
    out = draft(show_text(wishes="moves: {line: 1, flower: 1, stop: before C}"))
    titles = {title for _, title in danced(out.text)}
    assert {"line", "antispin-flower-4"} <= titles
    assert out.unmet == ()
    (stop,) = stage(out.text).stops
    assert (stop.start, stop.end) == (40.0, 48.0)


def test_a_stop_before_a_part_that_returns_comes_before_each_unless_it_is_numbered():
    def stops(wish):
        ground = ground_of(show_text(wishes=f"moves: {{stop: {wish}}}"), "s.yaml", song())
        return ground.stop_spans(), ground.stops_left_out()

    assert stops("before A") == ([(24.0, 32.0)], ())  # the song begins with the first
    assert stops("before A 2")[0] == [(24.0, 32.0)]
    assert stops("[before A, before B, before A 2]")[0] == [(8.0, 16.0), (24.0, 32.0)]
    assert stops("before A 1") == ([], ("a stop before A 1: the song begins with it",))


def test_a_wish_for_more_than_there_is_room_for_is_told():
    out = draft(show_text(wishes="moves: {line: 9}"))
    assert len(out.unmet) == 1
    assert "line 9 times (there is room for" in out.unmet[0]
    assert f"left out: {out.unmet[0]}" in summary(out)


def test_levels_and_repertoires_decide_what_is_danced():
    book = stage(show_text()).book
    out = draft(show_text(cast="level: 1"))
    assert {book[title].difficulty for _, title in danced(out.text)} == {1}
    never = draft(show_text(cast=f"repertoire: {{known: [{KNOWN}], never: [line, weave]}}"))
    assert not {"line", "two-beat-weave"} & {title for _, title in danced(never.text)}


def test_what_is_being_learnt_comes_only_in_calm_music():
    cast = "repertoire: {known: [extension, wheel-spin], learning: [pendulum, windmill]}"
    out = draft(show_text(cast=cast))
    titles = dict(danced(out.text))
    assert titles[16] in {"extension", "wheel-spin"}
    assert titles[48] in {"extension", "wheel-spin"}


def test_why_names_every_term_and_the_proof(plain):
    said = summary(plain, why=True)
    assert "no better routine exists under these rules" in said
    assert "leaving out" not in said
    for name in plain.terms:
        assert f"{name}: " in said


def test_how_well_it_fits_is_said_without_figures_that_mean_nothing_to_a_performer(plain):
    of = "music, wishes and what everybody can dance, as this tool weighs them"
    assert fit(plain) == f"no other routine fits better: {of}"
    assert fit(replace(plain, unseen=1)) == f"no other routine of those looked at fits better: {of}"
    assert fit(replace(plain, bound=plain.cost / 2)) == (
        f"close to the best fit of {of}: what counts against it could be 50 % less at most"
    )
    part = replace(plain, left_open=("0:10 to 0:20: too quick",))
    assert fit(part) == f"for what is drafted, no other routine fits better: {of}"
    assert fit(replace(part, bound=plain.cost / 2)).startswith("for what is drafted, close to ")
    assert "exists under these rules, for what is drafted" in summary(part, why=True)
    said = summary(plain)
    assert fit(plain) in said
    assert "cost" not in said.lower()
    assert f"What it costs: {plain.cost:.2f}, no better routine" in summary(plain, why=True)


def test_a_proof_says_what_nobody_looked_at(plain):
    said = summary(replace(plain, unseen=3), why=True)
    assert "under these rules, leaving out 3 ways of dancing a pattern where" in said
    assert "leaving out one way of" in summary(
        replace(plain, unseen=1, bound=plain.cost / 2), why=True
    )
    assert "no STOP and no WARN comes from the routine" in said
    assert "within 50 % of the best" in summary(replace(plain, bound=plain.cost / 2), why=True)
    assert "NOT checked" in summary(replace(plain, checked=False))


def test_why_tells_how_size_follows_and_what_stands_in_the_way(plain):
    good = summary(replace(plain, follows=0.71, most=0.4), why=True)
    assert "Size follows loudness by 0.71" in good
    assert "at most" not in good
    poor = summary(replace(plain, follows=0.3, most=0.4), why=True)
    assert "danced as large each time, at most 0.40 can be had" in poor
    assert "`returns: free` lets them be danced differently" in poor
    assert "`returns: alike`" not in poor
    same = summary(replace(plain, follows=0.3, most=0.4, returns="same"), why=True)
    assert "`returns: alike` draws them larger where they are louder" in same
    assert "at most" not in summary(replace(plain, follows=0.3, most=0.95), why=True)
    assert "Size" not in summary(replace(plain, follows=None), why=True)


def drawn(text):
    """What is set of each pattern, by the beat at which it begins."""
    return drawn_in(stage(text))


def drawn_in(show):
    return {
        block.start: (block.title, dict(next(iter(block.hands.values())).parameters))
        for block in show.blocks
        if not block.link
    }


def test_a_part_that_returns_louder_is_the_same_moves_drawn_larger():
    energy = tuple([0.1] * 8 + [0.4] * 8 + [0.9] * 8 + [0.6] * 8)
    text = show_text(known="extension, antispin-flower-4, butterfly")
    out = drafted_show(text, "s.yaml", song(energy=energy))
    found = drawn(out.text)
    (first, soft), (again, loud) = found[0], found[32]
    assert first == again
    usual = {"butterfly": "10 cm"}.get(first, "35 cm")
    radii = [int(each.get("hand_radius", usual).removesuffix(" cm")) for each in (soft, loud)]
    assert radii[0] < radii[1]
    assert out.checked
    assert drafted_show(out.text, "s.yaml", song(energy=energy)).text == out.text
    same = text.replace("wishes: {", "wishes: {returns: same")
    found = drawn(drafted_show(same, "s.yaml", song(energy=energy)).text)
    assert found[0] == found[32]


def test_who_knows_few_patterns_dances_them_small_and_large():
    out = draft(show_text(known="extension, antispin-flower-4, wheel-spin"))
    found = drawn(out.text)
    sized = {title for title, parameters in found.values() if parameters}
    assert sized <= {"extension", "antispin-flower-4"}
    assert sized
    assert any(", drawn " in words for *_, words in out.rows)


@pytest.mark.parametrize(
    ("cast", "wishes", "says"),
    [
        (f"repertoire: {{known: [{KNOWN}], never: [line]}}", "moves: {line: 1}", r"s\.yaml:8:\d+: line is wished once"),
        ("repertoire: {known: [line], never: [line]}", "", r"s\.yaml:5:\d+: Ash is left without a pattern"),
        (f"repertoire: {{known: [{KNOWN}]}}", "moves: {stop: before X}", r"s\.yaml:8:\d+: the song has no section 'X'"),
        (f"repertoire: {{known: [{KNOWN}]}}", "character: {X: calm}", r"s\.yaml:8:\d+: the song has no section 'X'"),
    ],
)  # fmt: skip
def test_what_cannot_be_drafted_is_told_with_what_to_relax(cast, wishes, says):
    with pytest.raises(InputError, match=says):
        draft(show_text(cast=cast, wishes=wishes))


def test_a_repertoire_of_which_nothing_keeps_the_limits_is_refused():
    text = show_text(known="iso-bend-1") + "limits: {turns: 0.4}\n"
    said = r"s\.yaml:5:\d+: no pattern of Ash's can be danced.*turns up to"
    with pytest.raises(InputError, match=said):
        draft(text)
    wished = show_text(wishes="moves: {iso-bend-1: 1}") + "limits: {turns: 0.9}\n"
    with pytest.raises(
        InputError, match=r"s\.yaml:8:\d+: iso-bend-1 cannot be danced to this song"
    ):
        draft(wished)


def test_a_section_that_is_not_there_or_too_short_or_full_is_refused(plain):
    with pytest.raises(InputError, match="no section 'X'"):
        draft(plain.text, section="X")
    full = show_text().replace(
        "timeline: []", "timeline: [{from: 1.1, pattern: extension, beats: 64}]"
    )
    with pytest.raises(InputError, match="no gap of 6 beats"):
        draft(full)
    short = song(sections={0.0: "A", 19.2: "B", 21.6: "C"})
    with pytest.raises(InputError, match="section 'B' has 4 beats, too few"):
        drafted_show(show_text(), "s.yaml", short, DraftRequest(section="B"))


def test_a_song_without_a_beat_is_refused():
    with pytest.raises(InputError, match=r"s\.yaml:2:\d+: no steady beat"):
        drafted_show(show_text(), "s.yaml", silent_song())


def test_what_was_found_by_an_interruption_comes_with_it(monkeypatch):
    def stop(*_given):
        raise KeyboardInterrupt

    monkeypatch.setattr(draft_search, "caused", stop)
    with pytest.raises(DraftingStopped) as stopped:
        draft(show_text())
    assert not stopped.value.draft.checked
    assert danced(stopped.value.draft.text)


def test_what_a_check_finds_is_forbidden_and_the_search_goes_on(monkeypatch, plain):
    """A check that stops the show wherever the first draft danced its second pattern leads to another one."""
    (first,) = [title for start, title in danced(plain.text) if start == 16]
    real = draft_search.caused
    rounds = []

    def caused(show, before):
        rounds.append(show)
        block = next(block for block in show.blocks if block.start == 16)
        if block.title != first:
            return real(show, before)
        start = show.seconds(24.0)
        return [
            Finding(
                code="self-hit", severity="stop", who=("Ash",), start=start, end=start, position="7.1",
                message="planted", source="test",
            )
        ]  # fmt: skip

    monkeypatch.setattr(draft_search, "caused", caused)
    out = draft(show_text())
    assert len(rounds) > 1
    assert dict(danced(out.text))[16] != first
    assert out.cost >= plain.cost


def test_what_cannot_be_flown_is_left_and_told_after_some_rounds(monkeypatch, plain):
    """A fault of flight that no routine avoids: the search ends, and says what is left."""
    start = float(stage(plain.text).seconds(20.0))
    fault = Finding(
        code="strained-as-flown", severity="warn", message="the hand would have to hurry",
        who=("Ash",), start=start, end=start + 0.5, position="6.1", source="test",
    )  # fmt: skip
    asked = []
    monkeypatch.setattr(draft_search, "caused", lambda *_: asked.append(1) or [fault])
    made = draft(show_text())
    assert made.checked
    assert made.unflown == (fault,)
    assert len(asked) >= draft_search._MOST_FLOWN
    said = summary(made)
    assert "what cannot be flown is left (1 WARN)" in said
    assert "cannot be flown yet (6.1): the hand would have to hurry" in said
    assert "no WARN comes from the routine" not in said


def test_links_that_take_too_much_of_the_time_become_dearer(monkeypatch, plain):
    monkeypatch.setattr(routine_search, "MOST_LINKED", 0.9 * plain.link_share)
    made = draft(show_text())
    assert made.link_share <= plain.link_share
    assert made.dearer > 1.0
    assert f"with links {made.dearer:.1f} times as dear" in summary(made, why=True)


def test_a_clean_draft_is_checked_once_in_its_sizes_and_what_fails_in_one_is_as_it_was(monkeypatch):
    energy = tuple([0.1] * 8 + [0.4] * 8 + [0.9] * 8 + [0.6] * 8)
    text = show_text(known="extension, antispin-flower-4, butterfly")
    sizes, caused, seen, given = draft_search.sized_returns, draft_search.caused, [], {}

    def sized(*asked):
        wider, found = sizes(*asked)
        given.update({wider.slots[k].start: found[k] for k in found})
        return wider, found

    def looked_at(show, before):
        own = drawn_in(show)
        seen.append({start: own[start] for start in given})
        if spoil and seen[-1] == seen[0]:
            return [failure(show, start + 4.0) for start in given]
        return caused(show, before)

    monkeypatch.setattr(draft_search, "sized_returns", sized)
    monkeypatch.setattr(draft_search, "caused", looked_at)
    spoil = False
    plain = drafted_show(text, "s.yaml", song(energy=energy))
    assert given
    assert len(seen) == 1
    first = seen.pop()
    spoil = True
    as_was = drafted_show(text, "s.yaml", song(energy=energy))
    assert len(seen) == 2
    assert seen[0] == first
    assert all(seen[1][start] != first[start] for start in given)
    assert dict(danced(as_was.text)) == dict(danced(plain.text))
    assert as_was.checked


def failure(show, beat):
    start = show.seconds(beat)
    return Finding(
        code="self-hit", severity="stop", message="no", who=("Ash",), start=start, end=start,
        position=show.position(beat),
    )  # fmt: skip


# --- what nothing can be danced over ---


def song_of(lengths):
    """The song, with beats of these lengths, and sections that begin at the same ones."""
    whole = song(beats=len(lengths) + 1)
    beats = np.concatenate([[0.0], np.cumsum(lengths)])
    edges = [*(float(beats[16 * k]) for k in range(len(SECTIONS))), float(beats[-1]) + 0.6]
    sections = tuple(
        replace(each, start=a, end=b)
        for each, (a, b) in zip(whole.sections, pairwise(edges), strict=True)
    )
    return replace(
        whole, beats=tuple(beats), downbeats=tuple(beats[::4]), sections=sections, duration=edges[-1]
    )  # fmt: skip


def grave(text, heard):
    show = staged(show_from_document(parse_document(text, "s.yaml")), heard)
    return [each for each in checked(show, flown=True).findings if each.severity != "note"]


def test_a_stretch_too_quick_for_all_that_is_known_is_left_open_and_the_rest_is_clean():
    lengths = np.full(96, 0.6)
    lengths[64:80] /= 3
    heard = song_of(lengths)
    made = drafted_show(show_text(), "s.yaml", heard)
    assert (made.checked, made.unflown) == (True, ())
    assert grave(made.text, heard) == []
    (said,) = made.left_open
    assert "(16.2 to 22.1): nothing was found that can be danced there" in said
    assert [row[1] for row in made.rows] == ["1.1", "5.1", "9.1", "13.1", "22.1"]


def faults_over(jumps):
    """What a check finds that holds it against a routine where it is danced over a jump of the count."""

    def caused(show, _before):
        over = [
            beat for beat in jumps if any(b.start < beat + 1 and b.end > beat for b in show.blocks)
        ]
        return [
            Finding(
                code="strained-as-flown", severity="warn", who=("Ash",), message="too hard", position="1.1",
                start=show.seconds(beat), end=show.seconds(beat),
            )
            for beat in over
        ]  # fmt: skip

    return caused


def test_where_the_count_jumps_and_nothing_passes_over_it_little_is_left_open(monkeypatch):
    lengths = np.full(64, 0.6)
    lengths[26] = 1.2
    heard, asked = song_of(lengths), []
    over = faults_over([26])

    def caused(*given):
        asked.append(over(*given))
        return asked[-1]

    monkeypatch.setattr(draft_search, "caused", caused)
    made = drafted_show(show_text(), "s.yaml", heard)
    assert (made.checked, made.unflown) == (True, ())
    assert [len(each) for each in asked] == [1, 1, 0]  # two were tried, then none was left there
    (said,) = made.left_open
    assert said.startswith(
        "0:13.8 to 0:19.8 (6.4 to 9.1): the count jumps at 7.3 (a beat of 1.20 s"
    )
    assert f"left open: {said}" in summary(made)
    # danced over where that stands
    monkeypatch.setattr(draft_search, "caused", lambda *_: [])
    assert drafted_show(show_text(), "s.yaml", heard).left_open == ()


def test_a_song_whose_count_jumps_all_along_is_refused_in_a_line(monkeypatch):
    lengths = np.full(64, 0.6)
    jumps = range(4, 64, 8)
    lengths[list(jumps)] = 1.2
    monkeypatch.setattr(draft_search, "caused", faults_over(jumps))
    with pytest.raises(InputError) as refused:
        drafted_show(show_text(), "s.yaml", song_of(lengths))
    assert refused.value.code == "count-jumps"
    assert "s.yaml:2:15: the count of this song jumps 8 times, " in str(refused.value)


# --- the order in which routines are searched, checked as a whole and proven ---

FAULT = Finding(
    code="self-hit", severity="stop", message="no", who=("Ash",), position="1.1", start=1.0, end=1.0
)


def chosen(pick, cost, bound):
    return Chosen(picks=(pick,), cost=float(cost), bound=float(bound))


class Search:
    """Routines in the order in which they are found; what was asked for is noted."""

    def __init__(self, first, near, better, allowed=True, close=()):
        self.setting = SimpleNamespace(slots=())
        self.first, self.near, self.better = first, iter(near), iter(better)
        self.allowed, self.asked, self.close = allowed, [], iter(close)

    def routine(self, known):
        self.asked.append(("routine", known))
        return self.first

    def unproven(self, picks):
        self.asked.append(("unproven", picks))
        return next(self.near)

    def repaired(self, picks):
        self.asked.append(("repaired", picks))
        return next(self.near)

    def proven(self, picks):
        self.asked.append(("proven", picks))
        return next(self.better)

    def mended(self, picks, below):
        self.asked.append(("mended", picks))
        found = next(self.close, None)
        return found if found is None or found.cost < below else None

    def allows(self, picks):
        self.asked.append(("allows", picks))
        return self.allowed


@pytest.fixture(name="sound")
def _sound(monkeypatch):
    """What `_Drafting` keeps of a search, where some picks have a fault; and the picks checked as a whole."""
    monkeypatch.setattr(draft_search, "standing_picks", lambda *_: None)
    monkeypatch.setattr(draft_search, "cut", lambda *_, **__: True)
    monkeypatch.setattr(draft_search, "at_slots_only", lambda *_: False)

    def run(search, faulty, people=1):
        checked = []

        def whole(setting, one, *_, **__):
            checked.append(one.picks[0])
            faults = [FAULT] if one.picks[0] in faulty else []
            return _Whole(one, setting, list(one.picks), None, None, faults, False, set())

        drafting = object.__new__(_Drafting)
        drafting.ground = SimpleNamespace(document=SimpleNamespace(), dancing=[None] * people)
        drafting.say = lambda *_: None
        drafting._whole = whole
        drafting._must_leave = drafting._may_leave = lambda _: False
        drafting._not_clean = lambda finding: LookupError(finding.message)
        return drafting._sound(search, {}), checked

    return run


def test_a_first_routine_that_stands_was_proven_before_it_was_checked(sound):
    search = Search(chosen(0, 10, 9), [], [])
    found, checked = sound(search, {})
    assert found.chosen == search.first
    assert (checked, search.asked) == ([0], [("routine", None)])


def test_proofs_wait_until_a_routine_stands_and_what_is_better_is_checked_too(sound):
    near = [chosen(1, 11, 8), chosen(2, 12, 8)]
    search = Search(chosen(0, 10, 8), near, [chosen(3, 11, 10.9)])
    found, checked = sound(search, {0, 1})
    assert (found.chosen.picks, found.chosen.bound) == ((3,), 10.9)
    assert checked == [0, 1, 2, 3]
    asked = [name for name, _ in search.asked]
    assert asked == ["routine", "unproven", "unproven", "allows", "proven"]


def test_with_a_group_the_first_is_checked_before_it_is_proven_since_mostly_something_is_found(
    sound,
):
    near = [chosen(0, 10, -inf), chosen(1, 11, -inf)]
    search = Search(None, near, [chosen(1, 11, 10.9)])
    found, checked = sound(search, {0}, people=2)
    assert (found.chosen.picks, found.chosen.bound) == ((1,), 10.9)
    assert checked == [0, 1]
    assert search.asked[:2] == [("unproven", None), ("repaired", (0,))]  # near what was checked
    assert [name for name, _ in search.asked[2:]] == ["allows", "proven"]


def test_where_what_is_better_fails_the_one_that_stands_is_kept_and_proven_of_what_is_left(sound):
    stands = chosen(1, 12, 8)
    search = Search(chosen(0, 10, 8), [stands], [chosen(2, 11, 10), chosen(1, 12, 11.9)])
    found, checked = sound(search, {0, 2})
    assert (found.chosen.picks, found.chosen.bound) == ((1,), 11.9)
    assert checked == [0, 1, 2]  # what stands is not checked again
    assert search.asked[-1] == ("proven", (1,))


def test_near_what_is_better_and_fails_something_is_sought_that_is_better_still(sound):
    better = [chosen(2, 11, 10), chosen(4, 11.5, 10)]
    search = Search(chosen(0, 10, 8), [chosen(1, 12, 8)], better, close=[chosen(4, 11.5, 9)])
    found, checked = sound(search, {0, 2})
    assert (found.chosen.picks, found.chosen.bound) == ((4,), 10)
    assert checked == [0, 1, 2, 4]
    dear = [chosen(2, 11, 10), chosen(1, 12, 11.9)]
    search = Search(chosen(0, 10, 8), [chosen(1, 12, 8)], dear, close=[chosen(4, 12.5, 9)])
    found, checked = sound(search, {0, 2})
    assert (found.chosen.picks, checked) == ((1,), [0, 1, 2])  # what costs more is of no use


def test_what_stands_stays_with_its_own_bound_where_something_of_it_was_forbidden_since(sound):
    stands = chosen(1, 12, 8)
    search = Search(chosen(0, 10, 8), [stands], [chosen(2, 11, 10)], allowed=False)
    found, checked = sound(search, {0})
    assert found.chosen == stands
    assert checked == [0, 1]


def test_where_no_routine_stands_the_last_fault_is_told(sound):
    with pytest.raises(LookupError, match="no"):
        sound(Search(chosen(0, 10, 8), [None], []), {0})


def test_a_routine_of_which_only_some_flights_were_looked_at_never_stands(monkeypatch):
    """However often it was sought what can be flown: how near its people come was not looked at."""
    monkeypatch.setattr(draft_search, "at_slots_only", lambda *_: True)
    drafting = object.__new__(_Drafting)
    drafting.ground = SimpleNamespace(dancing=[None] * 6)
    fault = replace(FAULT, code="strained-as-flown", severity="warn")
    setting = SimpleNamespace(slots=())
    whole = _Whole(chosen(0, 1, 1), setting, [0], None, None, [fault], False, set())
    assert drafting._stands(whole, 1000)
    for faults in ([fault], []):
        assert not drafting._stands(whole._replace(of_one=True, faults=faults), 1000)


@pytest.fixture(name="in_sizes")
def _in_sizes(monkeypatch):
    """`_whole` of a routine of four slots, of which two are drawn large; faults by slot; what was made and checked."""
    slots = [SimpleNamespace(start=16 * k, end=16 * k + 16) for k in range(4)]
    cast = SimpleNamespace(moves=("a", "b", "c", "d", "A", "B"))
    wider = SimpleNamespace(cast=cast, slots=slots, stranded=lambda _: set())
    setting = SimpleNamespace(
        slots=slots, wishes=SimpleNamespace(returns="alike"), at_slots=lambda _: [0, 1, 2, 3]
    )
    monkeypatch.setattr(draft_search, "sized_returns", lambda *_: (wider, {0: 4, 1: 5}))
    show = SimpleNamespace(tempo=TempoMap.steady(60.0, beats=64))
    made = []

    def run(faulty, drafting=None):
        def caused(*_):
            at = [8.0 + 16 * k for k in faulty(made[-1])]
            return [replace(FAULT, start=each, end=each) for each in at]

        monkeypatch.setattr(draft_search, "caused", caused)
        drafting = drafting or object.__new__(_Drafting)
        drafting._unsized = getattr(drafting, "_unsized", set())
        drafting.ground = SimpleNamespace(dancing=[None])
        drafting._in_turn = SimpleNamespace(faults=lambda *_: [])
        drafting._made = lambda _wider, _chosen, now: (made.append(now), (None, show))[1]
        made.clear()
        whole = drafting._whole(setting, chosen(0, 1, 1), {}, 0)
        return drafting, whole, [list(now) for now in made]

    return run


def test_a_size_at_fault_is_taken_back_and_looked_at_again(in_sizes):
    drafting, whole, made = in_sizes(lambda now: [1] if now[1] == 5 else [])
    assert made == [[4, 5, 2, 3], [0, 1, 2, 3]]  # what is beside it too
    assert whole.faults == []
    assert not drafting._unsized


def test_where_the_routine_has_to_change_anyway_its_sizes_are_not_looked_at_again(in_sizes):
    drafting, whole, made = in_sizes(lambda now: [3, 0] if now[0] == 4 else [3])
    assert made == [[4, 5, 2, 3]]
    assert [each.start for each in whole.faults] == [
        8.0 + 48
    ]  # that of the size is no fault of a move
    _, whole, made = in_sizes(lambda now: [0] if now[0] == 4 else [], drafting)
    assert made == [[0, 5, 2, 3]]  # it is not drawn large there again
    assert whole.faults == []
