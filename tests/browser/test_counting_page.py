"""The count put right by ear on the planning page: taps, the one, half and double, sections; by mouse and by keyboard."""

import re
from itertools import pairwise

import pytest

from tests.browser.test_planning_page import SHOW, Planner, changed_lines, show
from tests.desk_client import eventually, warm_desk

__all__ = ["show"]  # the fixture

# Taps at moments of the song that are given, with the page's own clock in place of fingers.
TAP_AT = """async ([first, gap, count]) => {
  const until = (at) => new Promise((done) => { const look = () => (performance.now() >= at ? done() : setTimeout(look, 1)); look(); });
  const button = document.querySelector("button.tap");
  const where = () => Number(document.querySelector(".transport input[type=range]").value);
  await new Promise((done) => { const look = () => (where() > 0.3 ? done() : requestAnimationFrame(look)); look(); });
  const now = performance.now(), song = where();
  for (let k = 0; k < count; k++) {
    const at = now + 1000 * (first + gap * k - song);
    await until(at);
    button.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, button: 0 }));
  }
}"""


def text_of(served):
    return served.page.get("show")[1]["text"]


def counted(planner):
    planner.page.wait_for_function("() => document.querySelector('.thought .main')?.disabled === false")  # fmt: skip
    return planner.page.locator(".thought").inner_text()


def test_taps_between_the_beats_move_the_count_there(flat_browser, show):
    """Tapped a quarter of a second after each beat: the page says so, offers it, shows what moves, and writes one line."""
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Count")
        planner.page.locator("button.tap").click()
        planner.page.wait_for_function("() => document.querySelector('.transport .main').innerText === 'Stop'")  # fmt: skip
        planner.page.evaluate(TAP_AT, [1.25, 0.5, 16])
        planner.page.wait_for_selector(".found")
        said = planner.page.locator(".found").inner_text()
        tempo = float(re.search(r"taps: ([\d.]+) beats a minute", said)[1])
        assert tempo == pytest.approx(120, abs=1.5)
        assert "between the beats" in said
        assert "sway" in said
        assert planner.page.locator(".marks .tapped").count() >= 8
        planner.page.locator(".transport .main").click()
        planner.page.get_by_role("button", name="Count half a beat later").click()
        assert "so sounds elsewhere: 2 moves, by up to 0.2 s" in counted(planner) or "0.3 s" in counted(planner)  # fmt: skip
        assert planner.page.locator(".marks .one").count() > 5
        assert served.page.get("show")[1]["revision"] == 1  # nothing is done yet
        planner.page.get_by_role("button", name="Set it so").click()
        eventually(lambda: "shift: 250 ms" in text_of(served))
        went, came = changed_lines(SHOW, text_of(served))
        assert (len(went), len(came)) == (1, 1)
        planner.page.get_by_role("button", name="Undo").click()
        eventually(lambda: text_of(served) == SHOW)
        assert planner.faults == []


# What the sound card was given, by which a tap's moment of the song follows without the page's own clock.
SPY = """() => { window.pieces = [];
  const make = AudioContext.prototype.createBufferSource;
  AudioContext.prototype.createBufferSource = function () { const node = make.call(this), start = node.start;
    window.context = this;
    node.start = (at, from, long) => { window.pieces.push([at, from]); return start.call(node, at, from, long); }; return node; }; }"""
TAPS_EXPECTED = """async (count) => {
  const button = document.querySelector("button.tap"), out = [];
  for (let k = 0; k < count; k++) {
    await new Promise((done) => setTimeout(done, 300 + 37 * (k % 5)));
    const event = new PointerEvent("pointerdown", { bubbles: true, button: 0 });
    const held = performance.now() + 12 * (k % 3); // a page that is busy gets it late
    while (performance.now() < held);
    button.dispatchEvent(event);
    const stamp = context.getOutputTimestamp();
    const heard = stamp.contextTime + (event.timeStamp - stamp.performanceTime) / 1000;
    const [at, from] = pieces.filter(([begun]) => begun <= heard).pop();
    out.push(from + heard - at);
  }
  return out;
}"""


def test_a_tap_is_the_moment_that_was_heard_when_the_finger_went_down(flat_browser, show):
    """Held against the sound card's own account: what it was given to play when, and which sample leaves now."""
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        page.evaluate(SPY)
        planner.tab("Count")
        page.locator("button.tap").click()
        page.wait_for_function("() => window.pieces.length > 3 && context.getOutputTimestamp().contextTime > 0.5")  # fmt: skip
        with page.expect_request(
            lambda asked: (
                asked.url.endswith("/api/taps") and len(asked.post_data_json["taps"]) == 14
            )
        ) as asked:
            expected = page.evaluate(TAPS_EXPECTED, 14)
        sent = asked.value.post_data_json
        off = [tap - wanted for tap, wanted in zip(sent["taps"], expected, strict=True)]
        # The stamp moves by a block of samples, and another one may have left from one call to the next.
        assert max(map(abs, off)) < 0.012, off
        assert sent["latency"] is not None


def test_the_whole_of_it_by_keyboard(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        page.locator("#tab-findings").focus()
        for _ in range(3):
            page.keyboard.press("ArrowRight")
        page.wait_for_function("() => document.activeElement.id === 'tab-count'")
        page.keyboard.press("Tab")
        page.keyboard.press("Tab")
        page.wait_for_function("() => document.activeElement.classList.contains('tap')")
        page.keyboard.press("Enter")
        page.wait_for_function(
            "() => document.querySelector('.transport .main').innerText === 'Stop'"
        )
        for k in range(9):
            page.keyboard.press(" " if k % 2 else "t")
            page.wait_for_timeout(300)
        page.wait_for_function("() => document.querySelector('.tap b').innerText === '9 taps'")
        page.keyboard.press("1")
        counted(planner)
        one = re.search(r"The one is at (\S+) now", page.locator("header [role=status]").inner_text())  # fmt: skip
        page.get_by_role("button", name="Half as fast").focus()
        page.keyboard.press("Enter")
        page.wait_for_function(
            "() => document.querySelector('.tells b').innerText.startsWith('60')"
        )
        counted(planner)
        page.get_by_role("button", name="Set it so").focus()
        page.keyboard.press("Enter")
        eventually(lambda: "tempo: half" in text_of(served))
        assert one is None or f"one: {one[1]}" in text_of(served)
        page.keyboard.press("Control+z")
        eventually(lambda: text_of(served) == SHOW)
        assert planner.faults == []


def test_letters_are_keys_only_while_the_panel_has_the_keyboard(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Count")
        planner.count(1, 1).focus()
        planner.page.keyboard.press("1")
        planner.page.keyboard.press("t")
        assert planner.page.locator(".thought").count() == 0
        planner.page.locator(".borders input").first.fill("t1")
        assert planner.page.locator(".tap b").inner_text() == ""


def test_the_one_moved_by_a_beat_and_left_as_it_was(flat_browser, show):
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Count")
        planner.page.get_by_role("button", name="One a beat later").click()
        said = counted(planner)
        assert "The beats stay" in said
        assert "by up to 0.5 s" in said
        planner.page.get_by_role("button", name="Leave it as it was").click()
        planner.page.wait_for_function("() => !document.querySelector('.thought')")
        assert planner.page.locator(".marks").count() == 0
        assert text_of(served) == SHOW


# Clicks are one part to the ear: these are given, three of one name.
IN_PARTS = SHOW.replace("{from: 3.1, pattern", "{from: A 2, pattern").replace(
    "one: 0:00.5", "one: 0:00.5, sections: [{from: 1.1, name: A}, {from: 3.1, name: A}, {from: 7.1, name: A}]"
)  # fmt: skip


def test_sections_are_named_split_moved_and_joined_as_one_operation(flat_browser, show):
    show.write_text(IN_PARTS, encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        before = [one["name"] for one in served.page.get("view")[1]["sections"]]
        assert before[:3] == ["A 1", "A 2", "A 3"]
        planner.tab("Count")
        page.locator(".borders input").nth(1).fill("chorus")
        page.keyboard.press("Tab")
        counted(planner)
        page.get_by_role("button", name="A 2 a bar later").click()
        page.locator(".bar", has_text=re.compile("^5$")).click()
        page.get_by_role("button", name="Split at 5.1").click()
        page.get_by_role(
            "button", name=re.compile("^Join .* with the section before it$")
        ).last.click()
        counted(planner)
        page.get_by_role("button", name="Set it so").click()
        eventually(lambda: served.page.get("show")[1]["revision"] == 2)
        assert "{from: chorus, pattern" in text_of(served), "who begins with it still does"
        names = [one["name"] for one in served.page.get("view")[1]["sections"]]
        assert names[1] == "chorus"
        assert "new" in names
        assert len(names) == len(before)
        assert served.page.post("undo")[1]["text"] == show.read_text(encoding="utf-8")
        assert planner.faults == []


def test_a_section_that_somebody_begins_with_is_not_joined_away(flat_browser, show):
    show.write_text(IN_PARTS, encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Count")
        planner.page.get_by_role("button", name="Join A 2 with").click()
        planner.page.locator(".refused").wait_for()
        assert "this names A 2, and there would be no such section any more" in planner.page.locator(".refused").inner_text()  # fmt: skip
        assert served.page.get("show")[1]["revision"] == 1


def test_clicks_follow_the_count_that_is_thought_of(flat_browser, show):
    """What the sound card is given to click: the beats of the count that is shown, higher on the one."""
    spy = """() => { window.clicked = []; const make = AudioContext.prototype.createOscillator;
      AudioContext.prototype.createOscillator = function () { const tone = make.call(this), start = tone.start;
        tone.start = (at) => { window.clicked.push([at, tone.frequency.value]); return start.call(tone, at); }; return tone; }; }"""
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        page = planner.page
        page.evaluate(spy)
        planner.tab("Count")
        page.get_by_label("Click on every count, higher on the one").check()
        page.get_by_role("button", name="Half as fast").click()
        counted(planner)
        page.locator(".transport .main").click()
        page.wait_for_function("() => window.clicked.length > 5")
        clicked = page.evaluate("window.clicked")
        assert even([b[0] - a[0] for a, b in pairwise(clicked[1:])], 1.0)
        assert {round(tone) for _, tone in clicked} == {1175, 1760}
        page.get_by_role("button", name="Leave it as it was").click()
        page.evaluate("window.clicked = []")
        page.wait_for_function("() => window.clicked.length > 5")
        clicked = page.evaluate("window.clicked")
        assert even([b[0] - a[0] for a, b in pairwise(clicked[2:])], 0.5)


def even(gaps, step):
    """Whether clicks come at a step; a busy machine may leave one out, but never clicks between."""
    beats = [round(gap / step) for gap in gaps]
    near = all(abs(gap - count * step) < 0.03 for gap, count in zip(gaps, beats, strict=True))
    return near and min(beats) == 1


def test_sections_of_the_file_begin_where_they_did_on_another_count(flat_browser, show):
    """Ten sections by bars, as a show that was begun on the page has them: all are told, and none is outside the song."""
    rows = ", ".join(f"{{from: {2 * k + 1}.1, name: part {k}}}" for k in range(9))
    text = SHOW.replace("one: 0:00.5}", f"one: 0:00.5, sections: [{rows}]}}")
    show.write_text(text, encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        before = [each["start"] for each in served.page.get("view")[1]["sections"]]
        planner.tab("Count")
        for name, last in (
            ("Half as fast", "part 8 from 9.1"),
            ("Twice as fast", "part 8 from 33.1"),
        ):
            planner.page.get_by_role("button", name=name).click()
            said = counted(planner)
            assert "begin where they did in the song" in said
            assert last in said
            planner.page.get_by_role("button", name="Set it so").click()
            planner.page.wait_for_selector(".thought", state="detached")
            view = eventually(lambda: (got := served.page.get("view"))[0] == 200 and got[1])
            assert [each["start"] for each in view["sections"]] == pytest.approx(before, abs=0.03)
            planner.page.get_by_role("button", name="Undo").click()
            eventually(lambda: text_of(served) == text)
            planner.page.wait_for_selector(
                "button:disabled:has-text('Undo')"
            )  # the page knows it too
        assert planner.faults == []


def test_a_count_tells_of_every_section_that_begins_elsewhere(flat_browser, show):
    """Nine new names: none is hidden behind the first eight."""
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        planner.tab("Count")
        for k in range(18):
            planner.page.get_by_role("slider", name="Where the song is").fill(str(1 + 2 * k))
            planner.page.locator(".counting button", has_text="Split at").click()
        said = counted(planner)
        assert said.count(" begins at ") >= 10
        assert planner.faults == []


def test_the_form_of_the_song_holds_sections_as_the_count_does(flat_browser, show):
    rows = ", ".join(f"{{from: {1 + 2 * k}.1, name: part {k}}}" for k in range(5))
    text = SHOW.replace("one: 0:00.5}", f"one: 0:00.5, sections: [{rows}]}}")
    show.write_text(text, encoding="utf-8")
    with warm_desk(show) as served, Planner(flat_browser, served.address) as planner:
        before = [each["start"] for each in served.page.get("view")[1]["sections"]]
        planner.tab("Show")
        planner.page.locator(".forms summary", has_text="Song").click()
        planner.page.get_by_label("Say more").filter(visible=True).last.select_option("tempo")
        planner.page.locator("#count-tempo").select_option("half")
        eventually(lambda: "tempo: half" in text_of(served))
        view = eventually(
            lambda: (now := served.page.get("view")[1])["revision"] == 2 and now
        )  # one step: Undo takes back both
        assert [each["start"] for each in view["sections"]] == pytest.approx(before, abs=0.03)
        assert "{from: 5.1, name: part 4}" in text_of(served)
        planner.page.get_by_role("button", name="Undo").click()
        eventually(lambda: text_of(served) == text)
        assert planner.faults == []
