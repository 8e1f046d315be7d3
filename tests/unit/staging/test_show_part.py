"""Which blocks decide a part, and the moments that name one."""

import pytest

from sequencer.errors import InputError
from sequencer.staging.show_part import MARGIN, near_part, show_part
from sequencer.staging.timeline import staged
from sequencer.tasks import PartOfShow
from sequencer.timing.position import parse_moment
from tests.songs import even_song
from tests.stopped_show import EXTENSION, stopped_show

LONG = [EXTENSION] * 12


def part_of(show, start, until):
    return PartOfShow(start=start, until=until).staged(show.read, show.heard)


def test_the_window_is_whole_slices_of_sixteen_beats_within_the_song():
    song = even_song(120)
    tempo = song.tempo_map()
    found = show_part(parse_moment("6.1"), parse_moment("9.3"), song, tempo)
    assert (found.start, found.end, found.low, found.high) == (20.0, 34.0, 16.0, 48.0)
    first = show_part(None, parse_moment("2.1"), song, tempo)
    assert (first.start, first.low) == (0.0, 0.0)
    last = show_part(parse_moment("28.1"), None, song, tempo)
    assert last.end == last.high == pytest.approx(120.0)


def test_blocks_are_kept_that_reach_near_the_window_and_one_more_of_each_hand():
    show = stopped_show(*LONG, start="1.1")
    part = show_part(parse_moment("13.1"), parse_moment("14.1"), even_song(120), show.tempo)
    assert (part.low, part.high) == (48.0, 64.0)
    kept = sorted(block.start for block in near_part(show.blocks, part))
    # From 48 − 8 to 64 + 8: five blocks, and the one before and after.
    assert MARGIN == 8.0
    assert kept == [32.0, 40.0, 48.0, 56.0, 64.0, 72.0]


def test_a_long_link_widens_the_margin_and_a_neighbour_far_off_is_kept():
    show = stopped_show(
        EXTENSION,
        "{link: true, beats: 16}",
        EXTENSION,
        "{from: 25.1, pattern: extension, cycle: 2, beats: 8}",
        start="1.1",
    )
    part = show_part(parse_moment("20.1"), parse_moment("21.1"), even_song(120), show.tempo)
    kept = sorted((b.start, b.title) for b in near_part(show.blocks, part))
    assert kept == [(24.0, "extension"), (96.0, "extension")]
    wide = show_part(parse_moment("13.1"), parse_moment("14.1"), even_song(120), show.tempo)
    assert (8.0, "link") in [(b.start, b.title) for b in near_part(show.blocks, wide)]


def test_a_part_shows_what_touches_it_and_the_accents_within():
    show = stopped_show(*LONG, "{accent: 5.1}", "{accent: 9.1}", start="1.1")
    own = part_of(show, "5.1", "7.1")
    assert [b.start for b in own.blocks] == [8.0, 16.0, 24.0]
    assert [a.beat for a in own.accents] == [16.0]
    assert own.span == (16.0, 32.0)


@pytest.mark.parametrize(
    ("start", "until", "words"),
    [
        ("nowhere", None, "the song has no section 'nowhere'"),
        ("verse", None, "it has 2 of them: write verse 1 or verse 2"),
        ("99.1", None, "outside the track"),
        ("9.1", "5.1", "5.1 is not after 9.1"),
        ("9.1", "9.1", "9.1 is not after 9.1"),
        ("1.9", None, "9"),
    ],
)
def test_a_part_that_is_not_in_the_song_is_refused_in_one_line(start, until, words):
    show = stopped_show(*LONG, start="1.1")
    song = even_song(120, sections={0.0: "verse", 20.0: "refrain", 40.0: "verse"})
    with pytest.raises(InputError) as caught:
        PartOfShow(start=start, until=until).staged(show.read, song)
    said = str(caught.value)
    assert words in said
    assert "\n" not in said
    assert said.startswith("--")


def test_a_section_is_named_as_in_the_show_file():
    show = stopped_show(*LONG, start="1.1")
    song = even_song(120, sections={0.0: "verse", 16.0: "refrain", 32.0: "verse"})
    own = PartOfShow(start="refrain", until="verse 2").staged(show.read, song)
    assert (own.part.start, own.part.end) == (32.0, 64.0)
    assert staged(show.read, song).part is None
