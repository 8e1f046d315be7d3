"""The planning page in a real browser: a show begun, drafted and printed on it, and the tour; by mouse and by keyboard."""

import os
import shutil
import subprocess
import sys
from contextlib import contextmanager
from pathlib import Path

import pytest
import soundfile as sf

from tests.browser.machine import PATIENCE
from tests.cli.conftest import RATE, click_track
from tests.desk_client import eventually, warm_desk

WIDE = {"width": 1400, "height": 900}
PHONE = {"width": 390, "height": 844}
FERRY = Path(__file__).parents[2] / "audio_samples" / "cinder_ferry.ogg"
FOCUSED = """words => (document.activeElement.textContent || document.activeElement.getAttribute('aria-label') || '')
    .trim().startsWith(words)"""
WIDER = """() => document.documentElement.scrollWidth <= innerWidth ? [] : [...document.querySelectorAll('*')]
    .filter((each) => each.getBoundingClientRect().right > innerWidth).map((each) => each.outerHTML.slice(0, 80))"""
SLOWLY = """() => { const send = window.fetch; window.fetch = async (...what) => {
    if (String(what[0]).endsWith('operations')) await new Promise((done) => setTimeout(done, 300)); return send(...what); } }"""
SHOW = """\
title: Small
track: {file: song.wav, corrections: {metre: 4, one: 0:00.5}}
venue: {stage: {shape: rectangle, width: 12 m, depth: 10 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast:
  - {name: Ash, stature: 1.7, prop: poi, repertoire: {known: [extension, wheel-spin, two-beat-weave, static-spin]}}
timeline:
  - {from: 3.1, pattern: two-beat-weave, beats: 16}   # a person's
"""


@pytest.fixture
def folder(tmp_path, monkeypatch, tmp_path_factory):
    """An empty folder, and a user who has seen nothing yet but whose songs are known."""
    sf.write(tmp_path_factory.getbasetemp() / "song.wav", click_track(), RATE)
    seen = Path(os.environ["XDG_CACHE_HOME"]) / "sequencer" / "open" / "tour-seen"
    seen.unlink(missing_ok=True)
    return tmp_path


@pytest.fixture
def show(folder, tmp_path_factory):
    """A small show with a song."""
    shutil.copy(tmp_path_factory.getbasetemp() / "song.wav", folder)
    path = folder / "small.yaml"
    path.write_text(SHOW, encoding="utf-8")
    return path


@contextmanager
def visitor(browser, address, first=".eight", **options):
    """A page of somebody, and what went wrong on it."""
    context = browser.new_context(viewport=options.pop("viewport", WIDE), accept_downloads=True, **options)  # fmt: skip
    page = context.new_page()
    page.set_default_timeout(PATIENCE)
    faults = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("dialog", lambda box: box.accept())
    page.goto(address)
    page.wait_for_selector(first)
    try:
        yield page
        assert faults == []
    finally:
        context.close()


def comes_to(page, words):
    """Waits until the keyboard is at what begins with these words."""
    page.wait_for_function(FOCUSED, arg=words)


def text_of(served):
    return served.page.get("show")[1]["text"]


def words_of(pdf):
    return subprocess.run(
        [shutil.which("pdftotext"), str(pdf), "-"], check=True, capture_output=True, text=True
    ).stdout


def test_from_an_empty_folder_with_a_song_to_printed_sheets(flat_browser, folder):
    """Nothing is written by hand: a song brought in, one form, a draft, the sheets."""
    path = folder / "ferry.yaml"
    with (
        warm_desk(path) as served,
        visitor(flat_browser, served.address, ".beginning form") as page,
    ):
        page.get_by_label("Or bring one from elsewhere").set_input_files(FERRY)
        page.get_by_text("lies beside the show now").wait_for()
        page.get_by_label("Name", exact=True).fill("Wren")
        page.get_by_label("Level").select_option("1")
        page.get_by_role("button", name="Make the show").click()
        page.wait_for_selector(".eight")
        assert "timeline: []" in path.read_text(encoding="utf-8")
        for _ in range(4):
            page.get_by_role("button", name="Next").click()
        page.get_by_role("button", name="Done").click()
        page.get_by_role("button", name="Draft a first routine").click()
        page.wait_for_selector(".offered")
        offered = page.locator(".drafting").inner_text()
        # Nothing on the sheet throws the offer away.
        page.get_by_text("Your draft is ready under Draft").wait_for()
        assert page.get_by_role("button", name="Draft a first routine").count() == 0
        assert "as this tool weighs them" in offered
        assert "Checked: no STOP and no WARN comes from the routine." in offered
        danced = page.locator(".offered li span").all_inner_texts()
        page.get_by_role("button", name="Put it into the show").click()
        page.wait_for_selector(".block.written")
        page.get_by_role("button", name="Save").click()
        eventually(lambda: "drafted:" in path.read_text(encoding="utf-8"))
        page.get_by_role("tab", name="Print").click()
        page.get_by_role("button", name="Make the sheets").click()
        page.wait_for_selector(".made")
        assert "Do not dance" not in page.locator(".made").inner_text()
        with page.expect_download() as coming:
            page.get_by_role("link", name="Download ferry-card-wren.pdf").click()
        made = folder / "exports" / "ferry" / "ferry-card-wren.pdf"
        assert Path(coming.value.path()).read_bytes() == made.read_bytes()
        if shutil.which("pdftotext"):
            said = words_of(made)
            assert "Wren" in said
            assert danced[0].partition(",")[0] in said
        assert sorted(each.name for each in folder.iterdir() if each.name[0] != ".") == ["cinder_ferry.ogg", "exports", "ferry.yaml"]  # fmt: skip


def test_a_begun_show_is_not_undone_to_nothing_and_never_begun_over(
    flat_browser, folder, tmp_path_factory
):
    shutil.copy(tmp_path_factory.getbasetemp() / "song.wav", folder)
    path = folder / "undone.yaml"
    with (
        warm_desk(path) as served,
        visitor(flat_browser, served.address, ".beginning form") as page,
    ):
        page.get_by_label("Name", exact=True).fill("Wren")
        page.get_by_label("Height").fill("3 m")
        page.get_by_role("button", name="Make the show").click()
        page.locator(".refused", has_text="Wren's height: 3 m is outside").wait_for()
        page.get_by_label("Height").fill("5'11")
        page.get_by_role("button", name="Make the show").click()
        page.wait_for_selector(".eight")
        saved = path.read_text(encoding="utf-8")
        page.get_by_text("Nothing to look at yet").wait_for()
        assert page.locator(".verdict.good").count() == 0
        page.get_by_role("tab", name="Findings").click()
        page.get_by_text("so there is nothing to look at").wait_for()
        assert page.get_by_role("button", name="Undo").is_disabled()  # there was nothing before
        page.locator("body").press("Control+z")
        state = served.page.get("show")[1]
        emptied = {"do": "replace-text", "text": ""}
        served.page.post("operations", revision=state["revision"], operation=emptied, anyway=True)
        page.get_by_role("heading", name="Nothing is left of this show here").wait_for()
        assert page.get_by_role("button", name="Make the show").count() == 0
        page.keyboard.press("Control+s")
        page.reload()
        page.get_by_text("Undo brings it back").wait_for()
        page.get_by_role("button", name="Undo").click()
        page.wait_for_selector(".eight")
        assert path.read_text(encoding="utf-8") == saved
        page.get_by_text("Nothing to look at yet").wait_for()
        page.wait_for_timeout(500)  # nothing is asked any more when the server goes
        served.process.kill()
        page.locator(".verdict", has_text="Not connected").wait_for()


def test_a_show_is_begun_and_a_draft_given_up_by_keyboard(flat_browser, folder, tmp_path_factory):
    shutil.copy(tmp_path_factory.getbasetemp() / "song.wav", folder)
    path = folder / "keys.yaml"
    with (
        warm_desk(path) as served,
        visitor(flat_browser, served.address, ".beginning form") as page,
    ):
        keys = page.keyboard
        page.get_by_label("Title").focus()
        keys.press("Control+a")
        keys.type("By keys")
        for _ in range(4):  # songs, path, file, name
            keys.press("Tab")
        keys.type("Wren")
        keys.press("Enter")
        page.wait_for_selector(".eight")
        assert 'title: "By keys"' in path.read_text(encoding="utf-8")

        page.get_by_role("tab", name="Draft").focus()
        page.get_by_role("heading", name="A routine for this song").focus()
        keys.press("Tab")
        comes_to(page, "Draft what is empty")
        keys.press("Enter")
        page.wait_for_selector(".drafting .progressing")
        comes_to(page, "Drafting")
        keys.press("Tab")
        keys.press("Tab")
        comes_to(page, "Give it up")
        keys.press("Enter")
        comes_to(page, "A routine for this song")
        assert served.page.get("draft")[1]["state"] == "none"
        assert "drafted" not in str(served.page.get("show")[1]["values"]["timeline"])


def test_the_tour_by_keyboard_put_away_and_called_again(flat_browser, show):
    with warm_desk(show) as served:
        with visitor(flat_browser, served.address) as page:
            tour = page.locator(".tour")
            tour.wait_for()
            assert page.evaluate("document.activeElement === document.body")  # it takes nothing
            tour.get_by_role("button", name="Next").focus()
            page.keyboard.press("Enter")
            comes_to(page, "A routine to begin with")
            assert page.locator(".toured").get_attribute("id") == "tab-draft"
            assert page.evaluate(
                "document.getElementById(document.activeElement.getAttribute('aria-describedby')).innerText"
            ).startswith("Under Draft")
            page.keyboard.press("Escape")
            tour.wait_for(state="detached")
            comes_to(page, "Tour")
            page.keyboard.press("Enter")
            comes_to(page, "The sheet")
            page.get_by_role("button", name="No tour").click()
            page.wait_for_function("() => !document.querySelector('.toured')")
        with visitor(flat_browser, served.address) as page:
            page.wait_for_timeout(500)
            assert page.locator(".tour").count() == 0


def test_the_stretch_at_a_count_is_drafted_while_something_else_is_changed(flat_browser, show):
    more = "  - {from: 11.1, pattern: wheel-spin, beats: 32}\n"
    parts = "sections: [{from: 1.1, name: A}, {from: 3.1, name: A}, {from: 7.1, name: A}]"
    text = SHOW.replace("one: 0:00.5", f"one: 0:00.5, {parts}") + more
    assert parts in text  # clicks are one part to the ear
    show.write_text(text, encoding="utf-8")
    with warm_desk(show) as served, visitor(flat_browser, served.address) as page:
        page.locator(".count[aria-label^='Bar 9, count 1, ']").click()
        page.get_by_role("button", name="Draft 7.1 to 11.1").click()
        page.wait_for_selector(".offered")
        begun = page.locator(".offered b").all_inner_texts()
        assert begun[0] == "7.3"  # after its link from what stands before
        assert all(7.1 <= float(each) < 11.1 for each in begun)  # in nothing but the stretch
        served.page.do(1, do="change-titles", values={"title": "Meanwhile"})
        page.get_by_text("The show has been changed since this was begun").wait_for()
        page.get_by_role("button", name="Put it into the show").click()
        eventually(lambda: "drafted:" in text_of(served))
        assert "title: Meanwhile" in text_of(served)
        assert "{from: 3.1, pattern: two-beat-weave, beats: 16}   # a person's" in text_of(served)
        page.get_by_role("button", name="Undo").click()
        eventually(lambda: text_of(served) == text.replace("title: Small", "title: Meanwhile"))

        page.get_by_role("tab", name="Draft").click()
        page.get_by_label("Section").select_option("A 3")
        page.get_by_role("button", name="Draft this section").click()
        page.wait_for_selector(".offered")
        assert page.locator(".offered h4").all_inner_texts() == ["A 3"]
        page.get_by_role("button", name="Leave it").click()
        page.get_by_role("button", name="Draft what is empty").wait_for()


def test_what_a_draft_leaves_open_stands_out(flat_browser, show):
    text = (
        SHOW
        + """\
formations: {one: {spots: {Ash: {at: [0, 4]}}}}
staging: [{formation: one, from: 1.1}]
entrances: [{who: Ash, comes_on: 1.1, beats: 8, side: stage left}]
"""
    )
    show.write_text(text, encoding="utf-8")
    with warm_desk(show) as served, visitor(flat_browser, served.address, "#tab-draft") as page:
        page.get_by_role("tab", name="Draft").click()
        page.get_by_role("button", name="Draft what is empty").click()
        page.wait_for_selector(".offered")
        said = page.locator(".drafting p", has_text="Left open: ")
        assert said.inner_text().endswith("nobody is on the stage then.")
        assert said.get_attribute("class") == "caution"


def test_a_draft_that_cannot_be_says_why(flat_browser, show):
    text = SHOW.replace("known: [extension, wheel-spin, two-beat-weave, static-spin]", "never: [weave], known: [windmil]")  # fmt: skip
    show.write_text(text.replace("two-beat-weave, beats", "wheel-spin, beats"), encoding="utf-8")
    with warm_desk(show) as served, visitor(flat_browser, served.address, "#tab-draft") as page:
        page.get_by_role("tab", name="Draft").click()
        page.get_by_role("button", name="Draft what is empty").click()
        page.locator(".drafting .fault").wait_for()
        assert "did you mean 'windmill'" in page.locator(".drafting .fault").inner_text()
        page.get_by_role("button", name="Moves known, learnt, never danced").click()
        page.locator(".forms summary:focus", has_text="Cast").wait_for()


def test_chosen_sheets_and_exports_of_a_show_that_stops(flat_browser, show):
    text = SHOW.replace("[[-12, -9], [12, -9]]", "[[-12, 3.4], [12, 3.4]]")
    show.write_text(text, encoding="utf-8")
    with warm_desk(show) as served, visitor(flat_browser, served.address) as page:
        page.get_by_role("tab", name="Print").focus()
        page.keyboard.press("Enter")
        page.get_by_label("what I choose").focus()
        page.keyboard.press("Space")
        assert page.get_by_role("button", name="Make the sheets").is_disabled()
        page.get_by_label("performer, for a performer").check()
        page.get_by_role("group", name="For whom (none chosen: everybody)").get_by_label(
            "Ash"
        ).check()
        page.get_by_role("button", name="Make the sheets").focus()
        page.keyboard.press("Enter")
        comes_to(page, "Printing the sheets")
        page.wait_for_selector(".made")
        comes_to(page, "Ready")
        made = page.locator(".made")
        assert "Do not dance this yet" in made.inner_text()
        assert made.locator("li").count() == 2
        with page.expect_popup() as opened:
            made.get_by_role("link", name="small-performer-ash.pdf", exact=True).click()
        assert opened.value.evaluate("window.opener") is None
        opened.value.close()
        for part in ("Rehearsal page", "Count track"):
            page.get_by_label(part).uncheck()
        page.get_by_label("Timetable").check()
        page.get_by_role("button", name="Make these").click()
        page.get_by_text("timetable.json").first.wait_for()
        assert "Nothing was checked for these" in made.inner_text()
        assert (show.parent / "exports" / "small" / "timetable.csv").is_file()


def test_the_rehearsal_page_opens_and_knows_nothing_of_the_planning_page(flat_browser, show):
    with warm_desk(show) as served, visitor(flat_browser, served.address) as page:
        page.get_by_role("tab", name="Print").click()
        page.get_by_label("Count track").uncheck()
        page.get_by_role("button", name="Make these").click()
        page.wait_for_selector(".made")
        with page.expect_popup() as opened:
            page.get_by_role("link", name="rehearsal.html", exact=True).click()
        rehearsal = opened.value
        rehearsal.wait_for_function("() => document.documentElement.dataset.ready === 'yes'")
        assert rehearsal.evaluate("location.origin") == served.address.partition("/#")[0]
        assert (
            rehearsal.evaluate("self.origin") == "null"
        )  # apart from the page that has the secret
        assert rehearsal.evaluate("rehearsal.clock.now()") >= 0
        asked = rehearsal.evaluate(
            "fetch('/api/show').then((answer) => answer.status, () => 'not even asked')"
        )
        assert asked in {403, "not even asked"}


def test_a_song_that_is_gone_is_chosen_on_the_page(flat_browser, show):
    (show.parent / "song.wav").rename(show.parent / "moved.wav")
    with warm_desk(show) as served, visitor(flat_browser, served.address, ".song-file") as page:
        page.locator(".first").get_by_label("Beside the show").select_option("moved.wav")
        page.locator(".first").get_by_role("button", name="Take this song").click()
        page.wait_for_selector(".eight")
        assert text_of(served) == SHOW.replace("song.wav", "moved.wav")
        page.locator(".first").wait_for(state="detached")


@pytest.mark.skipif(sys.platform == "win32", reason="a browser that is a shell script")
def test_the_page_is_opened_by_a_ticket_once(flat_browser, show, tmp_path_factory):
    seen = tmp_path_factory.mktemp("browser") / "seen"
    asks = seen.with_name("browser.sh")
    asks.write_text(f'#!/bin/sh\nprintf "%s" "$1" > "{seen}.part" && mv "{seen}.part" "{seen}"\n')
    asks.chmod(0o755)
    process = subprocess.Popen(
        [sys.executable, "-m", "sequencer", "open", str(show)],
        stdout=subprocess.PIPE, text=True, env={**os.environ, "BROWSER": f"{asks} %s"},
    )  # fmt: skip
    try:
        process.stdout.readline()
        address = eventually(lambda: seen.is_file() and seen.read_text())
        with visitor(flat_browser, address) as page:
            assert "ticket" not in page.url
            page.reload()
            page.wait_for_selector(".eight")
            with visitor(flat_browser, address, "main.opening p") as other:
                other.get_by_text("has lost its key").wait_for()
    finally:
        process.kill()
        process.wait()
        process.stdout.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_on_a_phone_everything_is_within_the_width(flat_browser, show, folder, scheme):
    with (
        warm_desk(show) as served,
        visitor(flat_browser, served.address, viewport=PHONE, color_scheme=scheme) as page,
    ):
        for tab in ("Draft", "Print", "Show"):
            page.get_by_role("tab", name=tab).click()
            page.wait_for_timeout(200)
            if tab == "Print":
                page.get_by_label("what I choose").check()
                page.get_by_label("plan packet").wait_for()
            assert page.evaluate(WIDER) == [], tab
    with (
        warm_desk(folder / "new.yaml") as served,
        visitor(flat_browser, served.address, ".beginning form", viewport=PHONE, color_scheme=scheme) as page,
    ):  # fmt: skip
        assert page.evaluate(WIDER) == []


def _values_left_open(page, served):
    """The values that a move leaves open are offered by their names, with what they may be; of a record only a part is changed."""
    page.locator(".place details .more select").last.select_option("with")
    values = page.get_by_role("group", name="values of the pattern")
    values.locator(".more select").select_option("width")
    values.get_by_text("0.2 … 1.5").wait_for()
    values.get_by_role("textbox", name="width").fill("0.9")
    page.keyboard.press("Tab")
    values.locator(".more select").select_option("way")
    values.get_by_role("combobox", name="way").select_option("backward")
    eventually(lambda: "with: {width: 0.9, way: backward}" in text_of(served))


def test_a_move_gets_a_cue_word_and_what_else_its_entry_can_say(flat_browser, show):
    text = SHOW.replace(
        "timeline:\n", "phrases:\n  calm: [{pattern: extension, beats: 8}]\ntimeline:\n"
    ) + "  - {from: 7.1, phrase: calm}\n  - {from: 9.1, phrase: calm}\n"  # fmt: skip
    show.write_text(text, encoding="utf-8")
    with warm_desk(show) as served, visitor(flat_browser, served.address) as page:
        _more_of(page, 3)
        cue, note = (page.locator(f".place [id$='-{key}']") for key in ("cue", "note"))
        # Changes of one field while the server still answers the first.
        page.evaluate(SLOWLY)
        for word in ("left", "up", "sweep"):
            cue.fill(word)
            cue.press("Enter")
        eventually(lambda: "cue: sweep" in text_of(served))
        # What is too long is not sent, and stays to be shortened.
        cue.fill("x" * 81)
        cue.press("Tab")
        page.get_by_text("has at most 80 letters, and this one has 81").wait_for()
        assert cue.input_value() == "x" * 81
        page.get_by_role("button", name="Leave cue word out").click()
        eventually(lambda: text_of(served) == text)
        # A choice that is not taken is set back.
        page.locator(".place details .more select").select_option("timing")
        timing = page.locator(".place [id$='-timing']")
        page.route("**/api/operations", lambda route: route.abort())
        timing.select_option("quarter")
        page.get_by_text("does not answer").first.wait_for()
        page.wait_for_function("each => each.value === 'split'", arg=timing.element_handle())
        page.unroute("**/api/operations")
        timing.select_option("together")
        eventually(lambda: "timing: together" in text_of(served))
        # What is so anyway does not stay in the file.
        page.locator(".place details .more select").select_option("mirrored")
        mirrored = page.locator(".place [id$='-mirrored']")
        mirrored.select_option("true")
        eventually(lambda: "mirrored: true" in text_of(served))
        mirrored.select_option("false")
        eventually(lambda: "mirrored" not in text_of(served))
        _values_left_open(page, served)
        # In a phrase, for this time only: the form stays, and the keyboard where it was.
        page.get_by_role("button", name="Close").click()
        _more_of(page, 7)
        cue.fill("one")
        page.keyboard.press("Tab")
        note.fill("and slowly")
        eventually(lambda: "cue: one" in text_of(served))
        page.get_by_text("is danced once").wait_for()
        page.wait_for_function("""() => document.activeElement?.matches(".place [id$='-note']")""")
        note.press("Enter")
        eventually(lambda: "note: and slowly" in text_of(served))
        page.locator(".block .own-note").wait_for()  # staged anew
        assert page.locator(".block .cue-word").all_inner_texts() == ["one"]
        assert page.locator(".block .own-note").all_inner_texts() == ["and slowly"]
        at = page.locator(".count[aria-label^='Bar 7, count 1, ']").first
        assert at.get_attribute("aria-label").endswith("cue: one, note: and slowly")
        assert text_of(served).count("phrase: calm}") == 1
        assert "calm: [{pattern: extension, beats: 8}]" in text_of(served)


def _more_of(page, bar):
    page.locator(f".count[aria-label^='Bar {bar}, count 1, ']").first.click(force=True)
    more = page.locator(".place details", has_text="Cue word, note and more")
    if not more.evaluate("each => each.open"):
        more.locator("summary").click()
    more.locator(".fields").wait_for()
