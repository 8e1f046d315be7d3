"""The rehearsal page in a real browser, from disk and with the network off."""

import io

import numpy as np
import pytest
from PIL import Image

from tests.repeated import at_length

FRAME = 1 / 60  # s


def picture(page):
    """What the drawing shows, as grey values."""
    data = page.locator("#view").screenshot()
    return np.asarray(Image.open(io.BytesIO(data)).convert("L"), dtype=int)


def reads(page, selector, text):
    """Waits until an element says a text; a drawn frame may take long on a busy machine."""
    page.wait_for_function(
        "([selector, text]) => document.querySelector(selector).textContent === text",
        arg=[selector, text],
    )


def test_loads_from_disk_without_the_network(browser, quartet, opened):
    with opened(browser, quartet.mute) as there:
        there.drawn()

        assert there.complaints == []
        assert [url for url in there.asked if not url.startswith(("file:", "blob:"))] == []
        assert there.page.title() == "Lantern Round · rehearsal"
        assert np.ptp(picture(there.page)) > 100, "the drawing is blank"


def test_page_without_the_song_is_small(quartet):
    """Four performers; the size asked for holds for four minutes, this song lasts five and a half."""
    assert quartet.mute.stat().st_size < 1_500_000


def test_positions_are_those_of_trace(browser, quartet, opened):
    """At 50 instants all hands and heads lie within 2 mm of the rows that `trace` prints."""
    import pandas as pd

    from sequencer.outputs.exports.trace import trace_csv

    rows = pd.read_csv(io.StringIO(trace_csv(quartet.staged, rate=20.0)))
    seconds = sorted(rows["seconds"].unique())[7 :: len(rows["seconds"].unique()) // 50][:50]
    worst = 0.0
    with opened(browser, quartet.mute, viewport=opened.SMALL) as there:
        for second in seconds:
            shown = there.page.evaluate("t => rehearsal.positions(t)", second)
            by_name = {one["name"]: one for one in shown}
            for row in rows[rows["seconds"] == second].itertuples():
                for part in ("hand", "head"):
                    drawn = np.array(by_name[row.performer][part][row.side])
                    true = np.array([getattr(row, f"{part}_{axis}") for axis in "xyz"])
                    worst = max(worst, float(np.linalg.norm(drawn - true)))

    assert len(seconds) == 50
    assert worst < 2e-3


def test_distances_are_those_of_the_checks(browser, quartet, opened):
    """Every pair at 40 instants, against the nearest parts that the checks name; poses may be 2 mm off."""
    from sequencer.motion.clearance.nearest import closest

    dancers = quartet.staged.dancers
    seconds = np.linspace(3.0, quartet.staged.song.duration - 1.0, 40)
    beats = quartet.staged.tempo.beats_from_seconds(seconds)
    true = {
        (one.name, other.name): closest(one, other, beats).distance
        for k, one in enumerate(dancers)
        for other in dancers[k + 1 :]
    }
    with opened(browser, quartet.mute, viewport=opened.SMALL) as there:
        for k, second in enumerate(seconds):
            shown = there.page.evaluate("t => rehearsal.apart(t)", second)
            assert len(shown) == len(true) == 6
            for first, other, distance in shown:
                assert distance == pytest.approx(true[first, other][k], abs=4.1e-3)

        there.page.evaluate("t => rehearsal.seek(t)", float(seconds[20]))
        nearest = min(true, key=lambda pair: true[pair][20])
        there.page.wait_for_function(
            "name => document.querySelector('#apart').textContent.includes(name)",
            arg=f"{nearest[0]} – {nearest[1]}",
        )


# What the song's clock goes on by over two frames, and the least and most by the clock on the wall [s]; a page
# that is held up between two readings makes these lie farther apart, and nothing wrong.
GONE = """async () => {
  const read = () => [performance.now(), rehearsal.clock.now(), performance.now()];
  const [a0, a, a1] = read();
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  const [b0, b, b1] = read();
  return [(b0 - a1) / 1000, b - a, (b1 - a0) / 1000];
}"""


def test_plays_stops_and_scrubs(browser, quartet, opened):
    with opened(browser, quartet.mute) as there:
        page = there.page
        page.locator("#play").click()
        there.plays_past(0.8)
        least, gone, most = page.evaluate(GONE)
        page.locator("#play").click()
        page.wait_for_function("() => !rehearsal.clock.playing")
        after = page.evaluate("rehearsal.clock.now()")
        there.drawn()

        assert least - 1e-3 <= gone <= most + 1e-3
        assert page.evaluate("rehearsal.clock.now()") == after

        line = page.locator("#line").bounding_box()
        page.mouse.click(line["x"] + line["width"] / 2, line["y"] + 8)
        assert page.evaluate("rehearsal.clock.now()") == pytest.approx(165.0, abs=1.5)
        reads(page, "#bar", "83")  # it begins at 164.5 s


def test_repeats_between_marks(flat_browser, ticking_page, opened):
    with opened(flat_browser, ticking_page, viewport=opened.SMALL) as there:
        page = there.page
        page.evaluate("rehearsal.seek(0.5 + 8 * 2)")
        page.keyboard.press("[")
        page.evaluate("rehearsal.seek(0.5 + 9 * 2)")
        page.keyboard.press("]")
        assert page.locator("#repeat").get_attribute("aria-pressed") == "true"
        page.keyboard.press("Space")
        seen = page.evaluate(
            """async () => { const out = []; let turns = 0;
            await new Promise((done) => { const look = () => { const now = rehearsal.clock.now();
              turns += now < out.at(-1) - 1; out.push(now);
              turns < 2 ? requestAnimationFrame(look) : done(); }; look(); });
            return out; }"""
        )

    assert min(seen) > 16.45
    assert max(seen) < 18.5 + FRAME


TICKS = 4
LISTEN = """async (ticks) => {
  const { clock } = rehearsal, { context } = clock;
  const ear = context.createAnalyser();
  const size = ear.fftSize = 16384;  // a third of a second: none is missed between two slow frames
  clock.output.connect(ear);
  const heard = new Float32Array(size), beats = rehearsal.doc.tempo.times, off = [];
  const begun = performance.now();
  let last = null;
  await new Promise((done) => {
    const look = () => {
      const before = performance.now();
      const now = context.currentTime, drawn = clock.now(), sounding = clock.heard();
      ear.getFloatTimeDomainData(heard);
      // A look that was held up read its clocks at several moments: it tells nothing.
      if (performance.now() - before > 3) return void requestAnimationFrame(look);
      let at = -1;
      for (let i = size - 1; i >= 200 && at < 0; i--) {
        if (Math.abs(heard[i]) > 0.25 && heard.slice(i - 160, i - 6).every((x) => Math.abs(x) < 0.08)) at = i;
      }
      if (at > 0 && performance.now() > begun + 900) {
        // The tick left the mixer this long before what is drawn now was heard.
        const ago = (size - at) / context.sampleRate - (now - sounding);
        const tick = drawn - ago * clock.speed;
        const beat = beats.reduce((a, b) => (Math.abs(b - tick) < Math.abs(a - tick) ? b : a));
        if (beat !== last) off.push(tick - beat);
        last = beat;
      }
      off.length >= ticks ? done() : requestAnimationFrame(look);
    };
    look();
  });
  return off;
}"""


@pytest.mark.parametrize(
    ("speed", "start"),
    [(1.0, 310.0), (0.4, 300.0), *at_length((1.0, 2.0), (0.7, 120.0), (1.1, 40.0))],
)
def test_drawing_keeps_step_with_the_sound(browser, ticking_page, opened, speed, start):
    """Ticks found in the sound itself lie within one frame of the beats that are drawn."""
    with opened(browser, ticking_page, viewport=opened.SMALL) as there:
        there.page.evaluate(
            "async ([speed, start]) => { rehearsal.clock.speed = speed; rehearsal.seek(start);"
            " await rehearsal.clock.play(); }",
            [speed, start],
        )
        off = there.page.evaluate(LISTEN, TICKS)

    assert len(off) == TICKS
    assert np.max(np.abs(off)) < FRAME


def test_speed_keeps_the_pitch(flat_browser, ticking_page, opened):
    """The tick of 880 Hz is heard at 880 Hz at 60 %."""
    script = """async () => {
      rehearsal.clock.speed = 0.6; rehearsal.seek(20); await rehearsal.clock.play();
      const ear = rehearsal.clock.context.createAnalyser(); ear.fftSize = 8192; ear.smoothingTimeConstant = 0;
      rehearsal.clock.output.connect(ear);
      const bins = new Float32Array(ear.frequencyBinCount); let best = [-Infinity, 0];
      await new Promise((done) => { const look = () => { ear.getFloatFrequencyData(bins);
        bins.forEach((level, i) => { if (level > best[0]) best = [level, i]; });
        rehearsal.clock.now() > 21.5 ? done() : requestAnimationFrame(look); }; look(); });
      return best[1] * rehearsal.clock.context.sampleRate / 8192; }"""
    with opened(flat_browser, ticking_page, viewport=opened.SMALL) as there:
        assert there.page.evaluate(script) == pytest.approx(880.0, abs=25.0)


def test_all_of_it_by_keys(browser, quartet, opened):
    with opened(browser, quartet.mute) as there:
        page = there.page
        now = lambda: page.evaluate("rehearsal.clock.now()")  # noqa: E731
        press = page.keyboard.press

        press("ArrowRight")
        assert now() == pytest.approx(0.5, abs=1e-3)  # from before bar 1 to bar 1
        press("ArrowRight")
        assert now() == pytest.approx(2.5, abs=1e-3)
        press("ArrowLeft")
        assert now() == pytest.approx(0.5, abs=1e-3)
        press("Shift+ArrowRight")
        reads(page, "#bar", "5")  # where the first block begins
        reads(page, "#now", "static-spin")
        press("PageDown")
        assert now() == pytest.approx(330 / 8, abs=1e-3)
        for key, view in zip("12345", ("audience", "behind", "eye", "above", "free"), strict=True):
            press(key)
            assert page.evaluate("rehearsal.eye.view") == view
        press("n")
        reads(page, "#who", "Søren")
        press("o")
        assert page.evaluate("rehearsal.visible()") == [False, True, False, False]
        press("m")
        assert page.evaluate("rehearsal.mirrored") is True
        press(",")
        assert page.evaluate("rehearsal.clock.speed") == pytest.approx(0.95)
        press("t")
        assert page.evaluate("document.documentElement.classList.contains('large')") is True
        press("?")
        assert page.locator("#keys").is_visible()
        press("Escape")
        assert not page.locator("#keys").is_visible()
        press("Home")
        press("Space")
        page.wait_for_function("() => rehearsal.clock.now() > 0.1")
        press("Space")
        page.wait_for_function("() => !rehearsal.clock.playing")
        assert there.complaints == []


def test_keys_of_one_letter_can_be_switched_off(flat_browser, quartet, opened):
    """WCAG 2.2, criterion 2.1.4: character key shortcuts can be turned off."""
    with opened(flat_browser, quartet.mute) as there:
        page = there.page
        page.keyboard.press("?")
        page.locator("#keys-on").uncheck()
        page.keyboard.press("Escape")
        page.keyboard.press("m")
        assert page.evaluate("rehearsal.mirrored") is False
        page.keyboard.press("ArrowRight")
        assert page.evaluate("rehearsal.clock.now()") > 0


def test_tab_reaches_every_control_and_shows_it(browser, quartet, opened):
    with opened(browser, quartet.mute) as there:
        page = there.page
        count = page.evaluate(
            "[...document.querySelectorAll('button, input, [tabindex=\"0\"], a')].filter("
            "(e) => e.checkVisibility() && !e.closest('dialog') && e.tabIndex >= 0).length"
        )
        seen, outlined = set(), 0
        for _ in range(count + 2):
            page.keyboard.press("Tab")
            seen.add(page.evaluate("document.activeElement.outerHTML.slice(0, 160)"))
            outlined += page.evaluate(
                "getComputedStyle(document.activeElement).outlineStyle !== 'none'"
                " || document.activeElement === document.body"
                " || document.activeElement.className === 'skip'"
            )
    assert len(seen) >= count
    assert outlined == count + 2


def test_every_control_has_a_name(browser, quartet, opened):
    with opened(browser, quartet.mute) as there:
        nameless = there.page.evaluate(
            """[...document.querySelectorAll('button, input, [role=slider]')].filter((e) =>
              !(e.getAttribute('aria-label') || e.textContent.trim() || e.labels?.length))
              .map((e) => e.id)"""
        )
        line = there.page.locator("#line")
        text = line.get_attribute("aria-valuetext")

    assert nameless == []
    assert text.startswith("bar ")


CONTRAST = """() => {
  const parse = (c) => c.match(/[\\d.]+/g).map(Number);
  const light = ([r, g, b]) => { const f = (x) => { x /= 255;
    return x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4; };
    return 0.2126 * f(r) + 0.7152 * f(g) + 0.0722 * f(b); };
  const ground = (e) => { let under = null; const over = [];
    for (let at = e; at; at = at.parentElement) { const c = parse(getComputedStyle(at).backgroundColor);
      if (c.length < 4 || c[3] === 1) { under = c.slice(0, 3); break; } if (c[3] > 0) over.push(c); }
    under ??= [12, 15, 18];
    for (const [r, g, b, a] of over.reverse())
      under = [r, g, b].map((x, i) => a * x + (1 - a) * under[i]);
    return under; };
  const out = [];
  for (const e of document.querySelectorAll('body *')) {
    if (!e.checkVisibility() || e.closest('.unseen, .skip, script, noscript, canvas')) continue;
    if (![...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim())) continue;
    const style = getComputedStyle(e), size = parseFloat(style.fontSize);
    const large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
    const [a, b] = [light(parse(style.color)), light(ground(e))].sort((x, y) => y - x);
    const ratio = (a + 0.05) / (b + 0.05);
    if (ratio < (large ? 3 : 4.5)) out.push([e.id || e.className || e.tagName, e.textContent.slice(0, 30), ratio]);
  }
  return out;
}"""


def test_contrast_is_enough(browser, quartet, opened):
    """WCAG 2.2, criterion 1.4.3 (AA), by its own formula of relative luminance, on all text shown."""
    with opened(browser, quartet.mute, viewport={"width": 1280, "height": 900}) as there:
        there.page.evaluate("rehearsal.seek(55)")
        there.drawn()
        assert there.page.evaluate(CONTRAST) == []


def test_findings_are_shown_as_they_happen(browser, quartet, opened):
    from sequencer.alike_findings import by_cause

    finding = next(
        f for f in quartet.report.findings if f.start is not None and f.severity == "stop"
    )
    with opened(browser, quartet.mute) as there:
        page = there.page
        page.evaluate("t => rehearsal.seek(t)", finding.start + 0.1)
        page.wait_for_function(
            "m => document.querySelector('#alert').textContent.includes(m)", arg=finding.message
        )
        page.evaluate("t => rehearsal.seek(t)", (finding.end or finding.start) + 40)
        page.wait_for_function(
            "m => !document.querySelector('#alert').textContent.includes(m)", arg=finding.message
        )
        listed = by_cause(quartet.report.findings)  # one cause is one entry
        assert page.locator("#findings li").count() == len(listed)


def test_missing_song_plays_silent_with_a_notice(flat_browser, quartet, opened):
    from sequencer.outputs.rehearsal.page_file import page_from_document
    from sequencer.outputs.rehearsal.song_audio import Sound

    path = quartet.folder / "linked.html"
    path.write_text(
        page_from_document(quartet.document, Sound(kind="linked", link="nowhere.mp3")),
        encoding="utf-8",
    )
    with opened(flat_browser, path, viewport=opened.SMALL) as there:
        page = there.page
        page.wait_for_function("() => rehearsal.clock.silent")
        assert "not found where this page looks for it" in page.locator("#notices").inner_text()
        page.keyboard.press("Space")
        there.plays_past(0.2)


def test_without_webgl_a_plan_is_drawn(flat_browser, quartet, opened):
    with opened(flat_browser, quartet.mute) as there:
        page = there.page
        page.evaluate("rehearsal.seek(60)")
        there.drawn()
        assert "from the front and from above" in page.locator("#notices").inner_text()
        assert page.evaluate("rehearsal.eye") is None
        before = picture(page)
        assert np.ptp(before) > 100
        page.evaluate("rehearsal.seek(61.3)")
        there.drawn()
        assert np.mean(before != picture(page)) > 0.001, "nothing moved"
        assert there.complaints == []


EVIL = "</script><img src=x onerror=alert(1)><b id=evil>"


def test_nothing_of_a_hostile_show_becomes_markup(browser, rounds, opened, tmp_path):
    """Names, notes and messages with markup, and 10,000 blocks."""
    from dataclasses import replace

    from sequencer.findings import Finding, Report
    from sequencer.outputs.rehearsal.page_data import show_document
    from sequencer.outputs.rehearsal.page_file import page_from_document
    from sequencer.outputs.rehearsal.song_audio import silent

    text = rounds.ROUND.replace("title: Lantern Round", f"title: '{EVIL}'")
    text = text.replace("Łucja", f'"{EVIL}"').replace(
        "note: keep it low until the drum", f"note: '{EVIL}'"
    )
    text = text.replace("name: willow", f"name: '{EVIL}'").replace(
        "name: audience", f"name: '{EVIL}'"
    )
    staged = rounds.show(tmp_path, text.replace(f'Look at "{EVIL}" before the turn.', "Turn."))
    block = staged.blocks[0]
    many = tuple(
        replace(block, start=20 + 0.03 * i, end=20 + 0.03 * (i + 1), note=f"{EVIL}{i % 7}")
        for i in range(10_000)
    )
    staged = replace(staged, blocks=many)
    found = Finding(
        code="too-close", severity="stop", who=(EVIL, EVIL), start=5.0, end=9.0, position="3.1",
        message=EVIL, remedies=(EVIL,), source=EVIL,
    )  # fmt: skip
    report = Report(show=EVIL, findings=(found,) * 500, not_checked=(EVIL,))
    path = tmp_path / "evil.html"
    path.write_text(
        page_from_document(show_document(staged, report), silent(EVIL)), encoding="utf-8"
    )
    with opened(browser, path) as there:
        page = there.page
        for second in (6.0, 30.0, 60.0):
            page.evaluate("t => rehearsal.seek(t)", second)
            there.drawn()
        assert page.evaluate("document.querySelectorAll('img, #evil').length") == 0
        assert page.evaluate("document.scripts.length") == 3
        assert there.boxes == []
        assert page.locator("#title").inner_text() == EVIL
        assert page.evaluate("rehearsal.doc.blocks.length") == 10_000
        assert there.complaints == []


def test_only_the_page_s_own_script_may_run(flat_browser, quartet, opened):
    """The content security policy refuses a script that is put into the page afterwards."""
    with opened(flat_browser, quartet.mute) as there:
        ran = there.page.evaluate(
            """() => { const s = document.createElement('script'); s.textContent = 'window.ran = 1';
            document.body.append(s); return window.ran ?? 0; }"""
        )
    assert ran == 0


def test_a_pattern_is_stepped_through_its_stations(browser, opened, tmp_path):
    from sequencer.outputs.patterns.one_pattern import one_pattern
    from sequencer.outputs.rehearsal.pattern import pattern_page

    path = tmp_path / "pattern.html"
    path.write_text(pattern_page(one_pattern("pro-bend-4")), encoding="utf-8")
    with opened(browser, path) as there:
        page = there.page
        page.keyboard.press("Shift+ArrowRight")
        page.wait_for_function(
            "() => document.querySelector('#station').textContent.startsWith('step 2 · hand ')"
        )
        step = page.locator("#station").inner_text()
        assert "anticlockwise, wall plane" in step
        assert "next: hand to " in step
        page.keyboard.press("Shift+ArrowLeft")
        page.keyboard.press("Shift+ArrowLeft")
        page.wait_for_function(
            "() => document.querySelector('#station').textContent.includes('step 8 · ')"
        )
        page.keyboard.press("Space")
        page.wait_for_function(
            "() => rehearsal.clock.now() < 1 && rehearsal.clock.playing"
        )  # it loops
        assert there.complaints == []


def test_a_pattern_is_danced_as_flown_and_on_demand_as_drawn(browser, opened, tmp_path):
    """Heads at one moment against the two laws; stage x and y are those of the body, negated (docs/motion.md, section 1)."""
    from sequencer.outputs.patterns.one_pattern import one_pattern
    from sequencer.outputs.rehearsal.pattern import pattern_page

    one = one_pattern("three-beat-weave")
    path = tmp_path / "pattern.html"
    path.write_text(pattern_page(one), encoding="utf-8")
    with opened(browser, path, viewport={"width": 800, "height": 600}) as there:
        page = there.page

        def off(laws):
            (seen,) = page.evaluate("() => rehearsal.positions(0.66)")
            heads = [laws[s].at(np.array(1.1)).head(one.prop.length) for s in ("left", "right")]
            shown = np.array([seen["head"][s] for s in ("left", "right")]) * [-1, -1, 1]
            return np.linalg.norm(shown - heads, axis=-1).max()

        assert off(one.flown_laws) < 2e-3
        assert page.get_attribute("#as-drawn", "aria-pressed") == "false"
        page.keyboard.press("f")
        assert page.get_attribute("#as-drawn", "aria-pressed") == "true"
        assert off(one.laws) < 2e-3 < off(one.flown_laws)
        page.click("#as-drawn")
        assert off(one.flown_laws) < 2e-3
        assert there.complaints == []


def test_a_prop_that_flies_as_drawn_has_no_switch(browser, opened, tmp_path):
    from sequencer.outputs.patterns.one_pattern import one_pattern
    from sequencer.outputs.rehearsal.pattern import pattern_page

    path = tmp_path / "pattern.html"
    path.write_text(pattern_page(one_pattern("static-spin", prop="club")), encoding="utf-8")
    with opened(browser, path) as there:
        assert there.page.is_hidden("#as-drawn")


def test_where_there_is_no_sound_device_the_show_plays_in_silence(browser, ticking_page, opened):
    """A browser without one never lets its clock of sound run."""
    with opened(browser, ticking_page, viewport=opened.SMALL) as there:
        there.page.evaluate(
            """() => {
              Object.defineProperty(AudioContext.prototype, "state", { get: () => "suspended" });
              AudioContext.prototype.resume = () => new Promise(() => undefined);
              void rehearsal.player.toggle();
            }"""
        )
        there.page.get_by_text("The show plays without sound.").first.wait_for()
        there.plays_past(0.2)
        assert there.complaints == []
