"""What the show agrees for the evening, as the sheets print it; what it leaves out is a line to write on."""

from io import BytesIO

import pypdf
import pytest

from sequencer.outputs.sheets.page.marking import lines_of
from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.page.wording import wind_words
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.writing import sheets_of

EVENING = """
stop_call:
  word: Halt
  signal: whistle, three times
  callers: [Mira, Jonas]
  does: {spotter: [run, smother], Łucja: [kneel at once]}
emergency: {number: "112", gate: east gate, first_aider: Ada}
weather: {gusts: 4 m/s, rain: drizzle}
"""


@pytest.fixture(scope="module")
def said(rounds, tmp_path_factory):
    folder = tmp_path_factory.mktemp("evening")
    text = rounds.ROUND + EVENING
    text = text.replace(
        "at: [9, 6]}", "at: [30, -12], width: 3 m}, {name: ramp, at: [-30, -12], width: 4 m}"
    )
    text = text.replace(
        "  wind: 3 m/s",
        "  setting: outdoors\n  wind: 3 m/s\n  wind_from: 135\n  audience_size: 900\n  audience_area: 600 m²",
    )
    edition = Edition(staged=rounds.show(folder, text), report=rounds.report(stop=False))
    return {
        sheet.name: " ".join(lines_of(sheet.story(Page.of("a4", wide=sheet.wide)))).replace(
            "\u00a0", " "
        )
        for sheet in sheets_of(edition)
    }


def test_every_sheet_tells_the_agreed_call(said):
    for name, words in said.items():
        assert "Halt" in words, name
        assert "whistle, three times" in words, name
    assert "Called by Mira and Jonas; anyone who sees danger tells them" in said["safety"]


def test_each_reader_gets_what_they_do(said):
    assert "You: kneel at once." in said["performer-lucja"]
    assert "You: stop the props" in said["performer-soren"]
    assert "YOU: run; smother." in said["post-1-ewa"]
    assert "kneel at once" in said["card-lucja"]
    assert "kneel at once" in said["crew-reading"]


def test_who_calls_for_help_is_told_alike_on_every_sheet(rounds, tmp_path):
    def words(caller):
        text = f"{rounds.ROUND}\nemergency: {{caller: {caller}}}\n"
        edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report(stop=False))
        return {
            sheet.name: " ".join(lines_of(sheet.story(Page.of("a4", wide=sheet.wide))))
            for sheet in sheets_of(edition)
        }

    ada, mira = words("Ada"), words("Mira")

    calls = "anybody hurt or on fire: call for help at once"
    for name in ("safety", "night", "crew-reading", "post-3-mira", "plan-packet"):
        assert "check that Ada is calling for help" in ada[name], name
        assert calls in mira[name], name
        assert "Mira is calling" not in mira[name], name
    for name in ("post-4-ada", "crew-reading", "plan-packet"):
        assert f"{calls}; tell the lead; name the gate" in ada[name], name
    assert not any(
        calls in ada[name] for name in ada if name.startswith("post") and "ada" not in name
    )
    for words in (*ada.values(), *mira.values()):  # nobody waits for a word, or for the music
        assert "help, on the lead’s word" not in words
        assert "Music off" not in words


def test_the_operator_knows_of_flames_before_the_track(rounds, tmp_path):
    """Four lit one after another, 5 s each, 3 m of slow walk between them: alight from 28.4 s before all four begin."""
    # beats of half a second: bar 1 is at 0.5 s, bar 5 at 8.5 s, bar 21 at 40.5 s
    for bar, waits in (("1.1", "28 s"), ("5.1", "20 s"), ("21.1", "")):
        text = rounds.ROUND.replace('from: "5.1", until: "53', f'from: "{bar}", until: "53')
        edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report(stop=False))
        sheet = next(each for each in sheets_of(edition) if each.name == "operator")
        said = " ".join(lines_of(sheet.story(Page.of("a4", wide=sheet.wide))))
        assert (f"The first flame is lit {waits} before the track starts" in said) is bool(waits)


def test_the_card_stands_where_people_call_from_and_keeps_its_blanks(said):
    for name in ("safety", "crew-reading", "plan-packet", "operator"):
        assert "Emergency card: fill in on the day" in said[name], name
        assert "112" in said[name].split("Emergency number here")[1][:40], name
        assert "Meeting point" in said[name], name
    assert "Emergency: 112" in said["card-lucja"]
    assert "Emergency card filled in by hand: who calls, address of the place" in said["night"]


def test_weather_and_wind_stand_among_what_must_be_so(said):
    assert "Gusts at prop height below 4.0 m/s (this show’s own limit)" in said["night"]
    assert "No drizzle" in said["night"]
    assert "from upstage and stage left" in said["safety"]


def test_the_packet_counts_the_exits(said):
    """Widths of 3 and 4 m, five minutes: 3 · 78 · 5 = 1170 with the larger lost, 7 · 78 · 5 = 2730; 600 m² hold 1200.

    Source of the sum: open-air guide by way of Hastings BC (read); 78 a metre and minute is the IMO's 1.3 a second.
    """
    for words in ("1170", "2730", "900", "holds 1200", "3.00 m", "not an evacuation study"):
        assert words in said["plan-packet"].replace("none of this is an", "not an")


@pytest.mark.parametrize(
    ("degrees", "words"),
    [
        (0, "the audience"),
        (90, "stage left"),
        (180, "upstage"),
        (-90, "stage right"),
        (45, "the audience and stage left"),
    ],
)
def test_a_wind_in_words(degrees, words):
    assert wind_words(degrees) == words


def test_an_unlit_show_prints_no_empty_emergency_card(rounds, tmp_path):
    text = rounds.ROUND[: rounds.ROUND.index("fire:")]
    edition = Edition(staged=rounds.show(tmp_path, text), report=rounds.report(stop=False))
    whole = BytesIO(document_bytes(sheets_of(edition), edition, "a4", "all"))
    words = "".join(page.extract_text() for page in pypdf.PdfReader(whole).pages)

    assert "Emergency card" not in words


def test_the_lead_reads_beside_each_lighting_who_watches_from_where(rounds, tmp_path):
    """Ewa at [-7, 4], Łucja at [0, 2] in the diamond: √53 = 7.28 m; 0.231 s + 7.28 m / 1.6 or 1.0668 m/s, rounded up."""
    edition = Edition(staged=rounds.show(tmp_path), report=rounds.report(stop=False))
    for name in ("safety", "plan-packet"):
        sheet = next(each for each in sheets_of(edition) if each.name == name)
        words = " ".join(lines_of(sheet.story(Page.of("a4", wide=sheet.wide))))
        assert "S1 Ewa  walk 7.3 m: 5 s brisk, 8 s slow" in words.replace("\u00a0", " "), name
