"""The count of a show put right: its bars are written anew, or nothing is."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from sequencer.checks.dance.other_count import CHECK
from sequencer.errors import InputError
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.written_count import unknown_to_numbers
from sequencer.staging.timeline import staged
from sequencer.tasks import recounting
from sequencer.tasks.recounting import recount_show
from tests.songs import even_song

# 160 beats a minute from 0.5 s on: bar n begins at 0.5 + 1.5 (n - 1) s.
BORDERS = {0.0: "A", 24.5: "B", 48.5: "C", 72.5: "D"}
SONG = even_song(256, tempo=160, start=0.5, duration=97.0, sections=BORDERS)
SHOW = """\
title: Two
track:
  file: song.ogg
  corrections:
    # as a performer hears it
    sections:
      - {from: 1.1, name: A}
      - {from: 17.1, name: B}   # the verse
      - {from: 33.1, name: C}
      - {from: 49.1, name: D}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7 m, prop: {tether: 0.55}}
  - {name: Moss, stature: 1.7 m, prop: {tether: 0.55}}
formations:
  pair: {spots: {Ash: {at: [-3, 4]}, Moss: {at: [3, 4]}}}
  far: {spots: {Ash: {at: [-4, 4]}, Moss: {at: [4, 4]}}}
staging:
  - {formation: pair, from: 1.1}
  - {formation: far, from: 33.1, beats: 8}
timeline:
  - {from: 3.1, pattern: two-beat-weave, cycles: 4}
  - {from: B, pattern: extension, beats: 30, canon: 2}
  - {link: true, beats: 2}
  - {pattern: two-beat-weave, until: 33.1}
  - {from: 49.1, pattern: extension, until: 60.1}
"""


def staged_text(text, song=SONG):
    return staged(show_from_document(parse_document(text, "s.yaml")), song, fly=False)


def spans(show):
    return [
        (block.who, block.title, round(show.seconds(block.start), 3), round(show.seconds(block.end), 3))
        for block in show.blocks
    ]  # fmt: skip


@pytest.fixture
def file(tmp_path, monkeypatch):
    """The show on disk, with its song as heard."""
    monkeypatch.setattr(recounting.songs, "song_of", lambda *_, **__: SONG)
    path = tmp_path / "two.yaml"
    path.write_text(SHOW, encoding="utf-8")
    return path


def text_of(path):
    return path.read_bytes().decode()


@pytest.mark.parametrize("given", ["tempo=half", "tempo=double", "metre=3", "one=0:00.875"])
def test_all_that_is_danced_stays_at_its_moment_of_the_song(file, given):
    recount_show(file, [given])

    after = text_of(file)
    assert spans(staged_text(after)) == spans(staged_text(SHOW))
    assert [s.start for s in staged_text(after).song.sections] == pytest.approx([*BORDERS])
    assert "# the verse" in after
    assert "# as a performer hears it" in after
    assert given.split("=")[0] in after


def test_what_was_halved_by_hand_is_renumbered_and_told_once(file):
    by_hand = SHOW.replace("    # as", "    tempo: half\n    # as")
    file.write_text(by_hand, encoding="utf-8")
    read = show_from_document(parse_document(by_hand, "two.yaml"))
    assert unknown_to_numbers(read, SONG) == ("tempo",)

    recount_show(file, ["tempo"])
    once = text_of(file)
    assert spans(staged_text(once)) == spans(staged_text(SHOW))
    assert "{from: 9.1, name: B}   # the verse" in once

    with pytest.raises(InputError, match=r"fit the count.*--recount tempo=half"):
        recount_show(file, ["tempo"])
    with pytest.raises(InputError, match="fit the count"):
        recount_show(file, ["tempo=half"])
    assert text_of(file) == once


def test_back_and_forth_is_the_same_to_the_byte(file):
    recount_show(file, ["tempo=half"])
    done = recount_show(file, ["tempo=none"])
    assert text_of(file) == SHOW
    assert done.changed == 9
    assert not done.drafted


def test_a_block_of_so_many_cycles_keeps_their_length(file, monkeypatch):
    """At 50 beats a minute a fountain left alone takes two beats a cycle, as at 100."""
    slow = even_song(240, tempo=100, start=0.5, duration=150.0)
    monkeypatch.setattr(recounting.songs, "song_of", lambda *_, **__: slow)
    head = SHOW.partition("  - {from: 3.1")[0]
    text = f"{head}  - {{from: 3.1, pattern: fountain, cycles: 4}}\n"
    file.write_text(text, encoding="utf-8")

    recount_show(file, ["tempo=half"])

    assert "cycles: 4, cycle: " in text_of(file)
    assert spans(staged_text(text_of(file), slow)) == spans(staged_text(text, slow))


def with_one(one, more=""):
    return SHOW.replace("    # as", f"    one: {one}\n{more}    # as")


def ones(text, song=SONG):
    return np.array(staged_text(text, song).song.downbeats)


def line_of_one(path):
    return next(line.strip() for line in text_of(path).splitlines() if line.strip().startswith("one:"))  # fmt: skip


@pytest.mark.parametrize(
    ("one", "moment", "given", "after"),
    [
        ("2.3", 2.75, "tempo=half", "1.4"),
        ("2.3", 2.75, "tempo=double", "4.1"),
        ("0:02.75", 2.75, "tempo=half", "0:02.75"),
        ("0:02.8", 2.75, "tempo=half", "0:02.8"),
        ("9.4", 13.625, "metre=3", "12.3"),
        ("0:02.75", 2.75, "metre=3", "0:02.75"),
    ],
)
def test_ones_of_the_performers_own_stay_ones(file, one, moment, given, after):
    text = with_one(one)
    file.write_text(text, encoding="utf-8")
    old = ones(text)

    recount_show(file, [given])

    new = ones(text_of(file))
    assert line_of_one(file) == f"one: {after}"
    if given == "tempo=half":
        assert set(new.round(3)) <= set(old.round(3))
    elif given == "tempo=double":
        assert set(old.round(3)) <= set(new.round(3))
    assert np.abs(new - moment).min() < 1e-6
    assert np.abs(old - moment).min() < 1e-6
    assert spans(staged_text(text_of(file))) == spans(staged_text(text))


def test_a_one_that_is_no_beat_of_the_new_count_goes_to_the_next_that_is(file, monkeypatch):
    """Bars of three: each second one lies between two beats of the half count."""
    song = even_song(255, tempo=160, start=0.5, metre=3, duration=97.0)
    monkeypatch.setattr(recounting.songs, "song_of", lambda *_, **__: song)
    text = with_one("0:00.875")
    file.write_text(text, encoding="utf-8")

    recount_show(file, ["tempo=half"])

    assert line_of_one(file) == "one: 0:02.00"
    assert set(ones(text_of(file), song).round(3)) <= set(ones(text, song).round(3))


def test_a_one_comes_back_with_the_count(file):
    file.write_text(with_one("2.3"), encoding="utf-8")
    recount_show(file, ["tempo=half"])
    recount_show(file, ["tempo=none"])
    assert text_of(file) == with_one("2.3")


def test_a_one_of_the_count_before_a_hand_written_tempo_is_kept_too(file):
    file.write_text(with_one("2.1", "    tempo: half\n"), encoding="utf-8")
    recount_show(file, ["tempo"])
    assert line_of_one(file) == "one: 1.3"
    assert spans(staged_text(text_of(file))) == spans(staged_text(with_one("2.1")))


def test_a_one_between_the_beats_of_the_new_count_is_refused_at_its_place(file):
    text = with_one("2.2")
    file.write_text(text, encoding="utf-8")

    for given in (["tempo=half"], ["tempo=half", "metre=3"]):
        with pytest.raises(InputError, match=r"two\.yaml:5:\d+: no one that .* `one: 2\.2`"):
            recount_show(file, given)
        assert text_of(file) == text


def test_of_ones_that_are_beats_of_the_new_count_one_is_taken_from_which_all_bars_go_on(
    file, monkeypatch
):
    """From 2.75 s on, a new bar would begin between two old ones at the bar of five; from 1.25 s on, none does."""
    odd = even_song(lengths=[4] * 20 + [5] + [4] * 43, tempo=160, start=0.5, duration=97.0)
    monkeypatch.setattr(recounting.songs, "song_of", lambda *_, **__: odd)
    text = with_one("0:02.75").partition("  - {from: B")[0]
    file.write_text(text, encoding="utf-8")

    recount_show(file, ["tempo=half"])

    assert line_of_one(file) == "one: 0:01.25"
    assert set(ones(text_of(file), odd).round(3)) <= set(ones(text, odd).round(3))


def test_a_one_that_is_given_is_taken_as_it_is(file):
    file.write_text(with_one("2.3"), encoding="utf-8")
    recount_show(file, ["one=0:02.0"])
    assert line_of_one(file) == "one: 0:02.0"


def test_one_correction_is_given_once(file):
    with pytest.raises(InputError, match="'tempo' is to be corrected twice"):
        recount_show(file, ["tempo=half", "tempo=double"])
    assert text_of(file) == SHOW


def test_a_byte_order_mark_and_line_ends_stay(file):
    file.write_bytes(b"\xef\xbb\xbf" + SHOW.replace("\n", "\r\n").encode())
    recount_show(file, ["tempo=half"])
    raw = file.read_bytes()
    assert raw.startswith(b"\xef\xbb\xbftitle")
    assert raw.count(b"\n") == raw.count(b"\r\n") > 20


@pytest.mark.parametrize(
    ("given", "words"),
    [
        (["tempo"], "no correction 'tempo'"),
        (["speed=half"], "'speed' is no correction"),
        (["tempo=none"], "no correction 'tempo'"),
        (["tempo=quick"], "tempo"),
        (["one=5:00.0"], "outside the track"),
    ],
)
def test_what_is_not_understood_changes_nothing(file, given, words):
    with pytest.raises(InputError, match=words):
        recount_show(file, given)
    assert text_of(file) == SHOW


def test_a_block_that_would_move_is_refused(file, monkeypatch):
    """A bar of five in the middle: half of it loses half a beat, so a length in beats no longer fits."""
    lengths = [4] * 20 + [5] + [4] * 43
    odd = even_song(lengths=lengths, tempo=160, start=0.5, duration=97.0)
    monkeypatch.setattr(recounting.songs, "song_of", lambda *_, **__: odd)

    with pytest.raises(InputError, match=r"would lie 0\.\d s|falls between"):
        recount_show(file, ["tempo=half"])
    assert text_of(file) == SHOW


def test_a_change_meanwhile_is_kept(file, monkeypatch):
    plain = recounting.renumbered

    def slow(text, change):
        file.write_text("title: mine\n", encoding="utf-8")
        return plain(text, change)

    monkeypatch.setattr(recounting, "renumbered", slow)
    with pytest.raises(InputError, match="changed meanwhile"):
        recount_show(file, ["tempo=half"])
    assert text_of(file) == "title: mine\n"


def test_nobody_is_left_out_for_a_night(file):
    file.write_text(SHOW + "tonight: {away: [Moss]}\n", encoding="utf-8")
    with pytest.raises(InputError, match="not everybody"):
        recount_show(file, ["tempo=half"])


@pytest.mark.parametrize("correction", ["tempo: double", "metre: 3", "one: 0:00.875"])
def test_the_check_names_a_count_that_the_bars_do_not_follow(correction):
    """In twice as many beats all bars still lie inside the track, but no section begins where one was heard."""
    text = SHOW.replace("    # as", f"    {correction}\n    # as").replace("60.1", "50.1")
    show = staged_text(text)

    (finding,) = CHECK.run(show).findings
    key = correction.partition(":")[0]
    assert (finding.code, finding.severity) == ("other-count", "warn")
    assert f"`{key}" in finding.message
    assert f"`sequencer check s.yaml --recount {key}`" in finding.remedies[0]


@pytest.mark.parametrize(
    "text",
    [
        SHOW,
        SHOW.replace("    # as", "    shift: 20 ms\n    # as"),
        SHOW.replace("    # as", "    tempo: half\n    # as")
        .replace("17.1", "9.1").replace("33.1", "17.1").replace("49.1", "25.1").replace("60.1", "30.3").replace("beats: 30", "beats: 15"),
        SHOW.replace("    # as", "    tempo: double\n    # as").replace("17.1, name", "18.1, name")
        .replace("33.1, name", "37.1, name").replace("49.1, name", "51.1, name"),
    ],
    ids=["as heard", "shifted", "halved and numbered so", "sections of one's own"],
)  # fmt: skip
def test_the_check_is_silent_where_bars_fit_or_nothing_tells(text):
    assert CHECK.run(staged_text(text)).findings == ()


def test_turns_count_as_borders():
    fewer = replace(
        SONG, sections=SONG.sections[:1], turns=tuple((at, 0.3) for at in [*BORDERS][1:])
    )
    text = SHOW.replace("    # as", "    tempo: double\n    # as")
    read = show_from_document(parse_document(text, "s.yaml"))
    assert unknown_to_numbers(read, fewer) == ("tempo",)
    assert [b - a for a, b in pairwise(BORDERS)] == [24.5, 24.0, 24.0]
