"""Which words of mends a finding is given, with findings and mends that are said here."""

from dataclasses import dataclass
from types import SimpleNamespace

import pytest

from sequencer.checks.dance.feasible import TELLS_MORE
from sequencer.checks.distances.spacing import Conflict
from sequencer.checks.fault_kinds import FAULT_NAMES, FLOWN_CODES, MENDED_CODES
from sequencer.checks.outcome import Mendable
from sequencer.findings import Finding
from sequencer.planning import offers
from sequencer.planning.mends.dance_mends import Cause, DanceMend, FoundMends
from sequencer.planning.trying.fault_places import Crossing, FaultPlace
from sequencer.planning.trying.trial_limits import Allowance
from sequencer.timing.tempo import TempoMap


@dataclass(frozen=True)
class Found:
    who: tuple[str, ...]
    position: str
    remedies: tuple[str, ...] = ("before",)
    code: str = "a code"


@dataclass(frozen=True)
class Result:
    findings: tuple[Found, ...]
    mendable: tuple[Mendable, ...]
    not_checked: tuple[str, ...] = ()


CLOSE = Conflict(
    first=0, second=1, start=8.0, end=9.0, distance=0.1, at=8.0, spans=((8.0, 9.0),),
    parts=("head", "head"), where=(0.0, 4.0),
)  # fmt: skip


SHOW = SimpleNamespace(
    read="a file", heard="a song", part=None, tonight="", dancers=(), span=(0.0, 0.0), seconds=float
)
SHOWN = SimpleNamespace(tempo=TempoMap.steady(120.0))


def test_every_finding_keeps_its_own_words(monkeypatch):
    near, far = Found(("Ash", "Birch"), "3.1"), Found(("Ash", "Birch"), "9.1")
    join, other = Found(("Ash",), "4.1"), Found(("Ash",), "5.1")
    result = Result(
        findings=(near, other, join, far),
        mendable=(Mendable(finding=near, subject=CLOSE), Mendable(finding=far, subject=CLOSE)),
    )
    asked = []
    words = {(("Ash", "Birch"), "3.1"): ("x", "y")}
    monkeypatch.setattr(offers, "words_for", lambda show: asked.append(show) or words)
    monkeypatch.setattr(offers, "dance_words", lambda _show, _found, **_named: {join: ("a",)})
    found = offers.with_mends(SHOW, result).findings
    assert [one.remedies for one in found] == [("x", "y"), ("before",), ("a",), ("before",)]
    assert asked == [SHOW]
    still = Result(findings=(other, join), mendable=())
    found = offers.with_mends(SHOW, still).findings
    assert [one.remedies for one in found] == [("before",), ("a",)]
    assert asked == [SHOW], "no conflict: nothing is tried"
    unread = SimpleNamespace(
        read=None, heard=None, part=None, tonight="", dancers=(), span=(0.0, 0.0), seconds=float
    )
    assert offers.with_mends(unread, still).findings == still.findings, "it cannot be changed"


BLOCK = SimpleNamespace(path=("timeline", 0), start=2.0)


def cause(code, start, *, severity="stop", blocks=(), passage=None, remedies=("plain", TELLS_MORE)):
    fault = Finding(
        code=code, severity=severity, who=("Ash",), start=start, end=start, position=f"{start:g}.1",
        message="", remedies=remedies,
    )  # fmt: skip
    return Cause(
        code=code,
        faults=(fault,),
        place=FaultPlace(
            who="Ash", blocks=blocks, passage=passage, at_the_passage=passage is not None
        ),
    )


def test_what_stops_is_mended_first_then_what_others_follow_from_then_by_time():
    found = [
        cause("too-fast-to-dance", 1.0, severity="warn", blocks=(BLOCK,)), cause("self-hit", 2.0),
        cause("needs-a-link", 1.5), cause("tether-slack", 9.0, blocks=(BLOCK,)),
        cause("hand-out-of-reach", 9.5, blocks=(BLOCK,)),
    ]  # fmt: skip
    assert [found.index(one) for one in offers.in_order(found)] == [4, 3, 2, 1, 0]


def test_a_block_that_warns_comes_before_the_passage_beside_it_that_stops():
    passage = Crossing(who="Ash", before=None, link=None, after=BLOCK)
    link = cause("link-too-hard", 1.0, passage=passage)
    pace = cause("too-fast-to-dance", 2.0, severity="warn", blocks=(BLOCK,))
    other = SimpleNamespace(path=("timeline", 4), start=30.0)
    far = cause("too-fast-to-dance", 0.5, severity="warn", blocks=(other,))
    assert offers.in_order([link, far, pace]) == [pace, link, far]


@pytest.fixture
def answers(monkeypatch):
    """Mends by code, and the causes that each mend clears besides its own."""
    told, clears = {}, {}
    monkeypatch.setattr(offers, "causes", lambda _show, found: found)

    def sought(one):
        return FoundMends(
            mends=tuple(DanceMend(words=words, steps=(), after=one.code) for words in told.get(one.code, ())),
            tried=("the cycle", "another shift"), trials=7,
        )  # fmt: skip

    monkeypatch.setattr(offers, "MendSearch", lambda _show, **_named: SimpleNamespace(of=sought))
    monkeypatch.setattr(
        offers, "FaultTrials",
        lambda show, fly=False: SimpleNamespace(
            has=lambda faults: not fly or faults[0].code not in clears.get(show, ())
        ),
    )  # fmt: skip
    return told, clears


def test_what_follows_from_another_says_so_and_what_has_no_mend_says_what_was_tried(answers):
    told, clears = answers
    told["tether-slack"] = ("a cycle of 2 beats", "another")
    clears["tether-slack"] = ("hits-floor",)
    found = [
        cause("hits-floor", 3.0, severity="warn"), cause("tether-slack", 3.0, blocks=(BLOCK,)),
        cause("self-hit", 4.0),
    ]  # fmt: skip
    words = {one.code: told for one, told in offers.dance_words(SHOWN, found).items()}
    assert words == {
        "tether-slack": ("a cycle of 2 beats", "another"),
        "hits-floor": ("mend the slack tether at 3.1 first; that clears this too",),
        "self-hit": (
            "nothing was found that mends it without harm elsewhere; tried: the cycle, another shift (7 trials)",
            TELLS_MORE,
        ),
    }


def test_a_passage_waits_for_the_mend_of_a_block_beside_it(answers):
    told, clears = answers
    told |= {
        "tether-slack": ("a cycle of 2 beats",),
        "link-too-hard": ("x",),
        "needs-a-link": ("y",),
    }
    beside = Crossing(who="Ash", before=BLOCK, link=None, after=None)
    elsewhere = Crossing(
        who="Ash", before=None, link=None, after=SimpleNamespace(path=("timeline", 9), start=40.0)
    )
    found = [
        cause("tether-slack", 3.0, blocks=(BLOCK,)), cause("link-too-hard", 4.0, passage=beside),
        cause("needs-a-link", 40.0, passage=elsewhere),
    ]  # fmt: skip
    words = {one.code: told for one, told in offers.dance_words(SHOWN, found).items()}
    assert words["link-too-hard"] == (
        "mend the slack tether at 3.1 first, then check again: what leads there changes with it",
    )
    assert words["needs-a-link"] == ("y",)
    clears["tether-slack"] = ("link-too-hard",)
    words = {one.code: told for one, told in offers.dance_words(SHOWN, found).items()}
    assert words["link-too-hard"] == ("mend the slack tether at 3.1 first; that clears this too",)


def test_mends_are_sought_for_the_first_causes_only(answers):
    told, _ = answers
    told["self-hit"] = ("x",)
    found = [cause("self-hit", float(k)) for k in range(offers.MOST_CAUSES + 1)]
    words = list(offers.dance_words(SHOWN, found).values())
    assert words == [("x",)] * offers.MOST_CAUSES + [(offers.LATER,)]


def test_what_is_left_of_an_allowance_is_spent_on_the_most_urgent(answers, monkeypatch):
    """Each search here stages one show: the fourth cause waits, and one whose search was cut short says no more than that."""
    told, _ = answers
    told["self-hit"] = ("x",)
    share = Allowance(left=3)

    def search(_show, *, flown, allowance):
        assert (flown, allowance) == (False, share)

        def of(one):
            allowance.take()
            mends = (
                () if one.faults[0].start == 2.0 else (DanceMend(words="x", steps=(), after="x"),)
            )
            return FoundMends(mends=mends, tried=("the cycle",), trials=1)

        return SimpleNamespace(of=of)

    monkeypatch.setattr(offers, "MendSearch", search)
    found = [cause("self-hit", float(k)) for k in (4, 0, 3, 1, 2)]
    words = offers.dance_words(SHOWN, found, allowance=share)
    assert [words[each.faults[0]] for each in offers.in_order(found)] == [
        ("x",), ("x",), (offers.LATER,), (offers.LATER,), (offers.LATER,),
    ]  # fmt: skip


def test_faults_of_a_show_with_a_mend_are_gathered_once_however_many_causes_follow(
    answers, monkeypatch
):
    told, _ = answers
    told["self-hit"] = ("x",)
    gathered = []
    monkeypatch.setattr(
        offers, "FaultTrials",
        lambda show, fly=False: gathered.append((show, fly)) or SimpleNamespace(has=lambda _faults: True),
    )  # fmt: skip
    found = [cause("self-hit", float(k)) for k in range(100)]
    offers.dance_words(SHOWN, found)
    assert gathered == [("self-hit", True)] * offers.MOST_CAUSES


@pytest.mark.parametrize(
    ("minutes", "faults", "close", "said"),
    [
        (5.0, 3, 8, None),  # 250: as many conflicts as else
        (5.1, 0, 8, "for 3 places where two come too close, which"),
        (60.0, 0, 2, "for 1 place where two come too close, which"),
        (60.0, 2, 1, "for 2 faults of the dance, which"),
        (60.0, 1, 8, "for 1 fault of the dance and 7 places where two come too close, which"),
    ],
)  # fmt: skip
def test_what_so_large_a_show_leaves_untried_is_told_in_one_line(
    monkeypatch, minutes, faults, close, said
):
    show = SimpleNamespace(
        read="a file", heard="a song", part=None, tonight="", dancers=range(50), span=(0.0, minutes),
        seconds=lambda beat: 60.0 * beat,
    )  # fmt: skip
    some = [Found(("Ash",), f"{k}.1") for k in range(faults)]
    pairs = [Found(("Ash", "Birch"), f"{k}.1") for k in range(close)]
    result = Result(
        findings=(*some, *pairs),
        mendable=tuple(Mendable(finding=each, subject=CLOSE) for each in pairs),
        not_checked=("Sparks.",),
    )

    def words(_show, _found, *, allowance, **_named):
        while not allowance.used_up:
            allowance.take()
        return dict.fromkeys(some, (offers.LATER,))

    monkeypatch.setattr(offers, "words_for", lambda _show: {})
    monkeypatch.setattr(
        offers, "dance_words", words if faults and minutes > 6 else lambda *_a, **_k: {}
    )
    first, *more = offers.with_mends(show, result).not_checked
    assert first == "Sparks."
    assert len(more) == (said is not None)
    assert all(said in each for each in more)


def test_every_fault_that_is_mended_has_a_name():
    assert set(FAULT_NAMES) == {*MENDED_CODES, *FLOWN_CODES}
