"""Which sheets are printed: the pack, chosen kinds, what one person carries; and what a print leaves in its folder."""

import pypdf
import pytest

from sequencer.errors import InputError
from sequencer.outputs.sheets import choosing, write_sheets, writing
from sequencer.outputs.sheets.choosing import SheetChoice
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.writing import SHEET_KINDS, check_choice, sheets_of

MOST_PAGES = 40  # of a set for four performers, as the crew asked


@pytest.fixture(scope="module")
def printed(rounds, tmp_path_factory):
    return rounds.printed(tmp_path_factory)


@pytest.fixture(scope="module")
def edition(printed, rounds):
    return Edition(staged=printed[0], report=rounds.report())


def names(edition, **asked):
    return [sheet.name for sheet in sheets_of(edition, SheetChoice(**asked))]


def test_the_pack_of_four_performers_is_small(printed):
    pack = [kind.name for kind in SHEET_KINDS if kind.pack]
    files = [
        path
        for path in printed[1][1:]
        if any(path.name.startswith(f"lantern-round-{name}") for name in pack)
    ]

    assert sum(len(pypdf.PdfReader(path).pages) for path in files) <= MOST_PAGES
    assert {"safety", "night", "crew-reading", "post", "operator", "fuel", "card"} == set(pack)


def test_the_pack_is_what_is_carried_and_all_is_the_pack_and_the_rest(edition):
    every, pack = names(edition), names(edition, pack=True)

    assert set(pack) < set(every)
    assert {name for name in set(every) - set(pack) if "performer" not in name} == {
        "formation-book", "build-steps", "plan-packet",
    }  # fmt: skip
    assert pack[:4] == ["safety", "night", "crew-reading", "post-1-ewa"]


@pytest.mark.parametrize(
    ("who", "carries"),
    [
        ("Łucja", ["card-lucja", "performer-lucja"]),
        ("ŁUCJA ", ["card-lucja", "performer-lucja"]),
        ("Ewa", ["crew-reading", "post-1-ewa"]),
        ("mira", ["safety", "night", "crew-reading", "post-3-mira"]),
        ("Ada", ["crew-reading", "post-4-ada", "fuel"]),
    ],
)
def test_one_person_gets_all_that_they_carry(edition, who, carries):
    assert names(edition, for_whom=(who,)) == carries


def test_kinds_and_people_narrow_each_other(edition):
    assert names(edition, only=("post",), for_whom=("Mira", "Ewa")) == ["post-1-ewa", "post-3-mira"]
    assert names(edition, only=("plan-packet", "NIGHT")) == ["night", "plan-packet"]
    with pytest.raises(InputError, match="has no post sheet for Łucja"):
        names(edition, only=("post",), for_whom=("Łucja",))


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ({"for_whom": ("Eva",)}, "nobody in the cast or crew is called 'Eva': did you mean Ewa"),
        ({"for_whom": ("zzz",)}, "choose from: Łucja, Søren"),
        ({"only": ("posts",)}, "no kind of sheet 'posts': did you mean post"),
        ({"only": ("7",)}, "choose from: safety, night, crew-reading, post"),
    ],
)
def test_an_unknown_name_or_kind_is_told_with_near_ones(edition, asked, says):
    with pytest.raises(InputError) as error:
        check_choice(
            edition.staged.show, edition.staged.file, **{"only": (), "for_whom": (), **asked}
        )

    assert says in str(error.value)
    assert str(error.value).startswith(edition.staged.file)
    assert "\n" not in str(error.value)
    with pytest.raises(InputError):
        names(edition, **asked)


def test_a_sheet_against_the_last_show_is_marked_in_a_pack_too(rounds, edition, tmp_path):
    old = rounds.show(tmp_path, rounds.ROUND.replace("[whistle, radio]", "[horn]"), name="old.yaml")
    before = Edition(staged=old, report=rounds.report())
    now = Edition(staged=edition.staged, report=edition.report, before=before)

    assert names(now, only=("post",), for_whom=("Mira",)) == ["post-3-mira"]
    (sheet,) = sheets_of(now, SheetChoice(only=("post",), for_whom=("Mira",)))
    assert sheet.story is not sheets_of(edition, SheetChoice(for_whom=("Mira",)))[-1].story


def test_a_print_of_some_leaves_the_rest_and_tells_what_is_old(rounds, tmp_path, monkeypatch):
    """A folder after a pack, one person's sheets, and a pack of a changed show with another crew."""
    monkeypatch.setattr(writing, "document_bytes", lambda sheets, *_: sheets[0].name.encode())
    show, out = rounds.show(tmp_path), tmp_path / "out"
    report = rounds.report()
    write_sheets(show, report, out)
    every = {path.name for path in out.glob("*.pdf")}
    old, gone = [], []
    told = {"outdated": old.append, "removed": lambda path, why: gone.append((path.name, why))}
    paths = write_sheets(show, report, out, for_whom=["Ewa"], **told)

    assert [p.name for p in paths[1:]] == ["lantern-round-crew-reading.pdf", "lantern-round-post-1-ewa.pdf"]  # fmt: skip
    assert {path.name for path in out.glob("*.pdf")} == every
    assert old == gone == []

    other = rounds.show(tmp_path, rounds.ROUND.replace("name: Ewa", "name: Eve"))
    write_sheets(other, report, out, pack=True, **told)
    assert gone == [
        (
            "lantern-round-post-1-ewa.pdf",
            "left over from an earlier print, for somebody or something no longer in this show",
        )
    ]
    assert {p.name.split("-")[2] for p in old} == {"formation", "performer", "build", "plan"}
    gone.clear()
    write_sheets(other, report, out, only=["performer"], **told)
    assert gone == []


def test_the_sheets_of_who_is_away_are_taken_away_and_it_is_said_whose(
    rounds, tmp_path, monkeypatch
):
    """Cast and crew; nobody is said to have left the show."""
    monkeypatch.setattr(writing, "document_bytes", lambda sheets, *_: sheets[0].name.encode())
    out, gone = tmp_path / "out", {}
    write_sheets(rounds.show(tmp_path), rounds.report(), out)
    away = rounds.show(tmp_path, f"{rounds.ROUND}tonight: {{away: [Søren, Ewa]}}\n")
    write_sheets(
        away, rounds.report(), out, removed=lambda path, why: gone.update({path.name: why})
    )

    assert {name: why for name, why in gone.items() if why.startswith("Søren")} == dict.fromkeys(
        ("lantern-round-card-soren.pdf", "lantern-round-performer-soren.pdf"),
        "Søren is away tonight; print again when they are back",
    )
    assert gone["lantern-round-post-1-ewa.pdf"].startswith("Ewa is away tonight")
    # A post keeps its number, as performers do: nobody else's sheet changes its name.
    assert "lantern-round-post-3-mira.pdf" not in gone
    assert (out / "lantern-round-post-3-mira.pdf").read_bytes().startswith(b"post-3-mira")
    assert [away.post_number(name) for name in ("Ewa", "Jonas", "Mira", "nobody")] == [1, 2, 3, 0]
    assert away.show.crew[1].name == "Mira"
    assert not [name for name in gone if (out / name).exists()]


def test_what_is_asked_for_and_is_not_there_is_an_error_of_one_line():
    error = choosing.nothing_asked(SheetChoice(only=("fuel",), for_whom=("Ada",)), "show.yaml")

    assert str(error) == (
        "show.yaml: this show has no fuel sheet for Ada; ask for another kind, or leave the choice out [no-sheet]"
    )
