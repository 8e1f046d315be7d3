"""Clicks by what is handed to the sound card.

A count-in that is stopped falls silent at once: it is played here by the browser, faster than it sounds. A click whose
moment is past is left out.
"""

PEAKS = """async () => {
  const { tempo, player: { clicks } } = rehearsal, peaks = [];
  for (const stopped of [false, true]) {
    const own = new clicks.constructor(tempo), context = new OfflineAudioContext(1, 3 * 44100, 44100), stop = new AbortController();
    Object.defineProperty(context, "state", { value: "running" });
    void own.countIn({ context }, 60, 1, () => undefined, stop.signal);
    void context.suspend(0.75).then(() => { if (stopped) stop.abort(); return OfflineAudioContext.prototype.resume.call(context); });
    const sound = (await context.startRendering()).getChannelData(0);
    stop.abort();
    peaks.push([0, 0.5, 1, 1.5].map((from) => sound.slice((from + 0.04) * 44100, (from + 0.2) * 44100).reduce((most, x) => Math.max(most, Math.abs(x)), 0)));
  }
  return peaks;
}"""

# The moment of beat 8 is so far ahead of the sound card's clock; without `when` the page reckons it from the song and the delay.
HANDED = """() => [[-0.05, 0, 0], [-0.005, 0, 0], [0.05, 0, 0], [null, 0.3, 0.4], [null, 0.3, 0.25]].map(([by, delay, before]) => {
  const { tempo, player: { clicks } } = rehearsal, own = new clicks.constructor(tempo), made = [];
  const context = { currentTime: 10, state: "running", outputLatency: delay };
  own.click = (_context, at) => made.push(Math.round((at - 10) * 1000));
  own.on = true;
  own.run({ context, playing: true, speed: 1, ...(by === null ? {} : { when: () => 10 + by }) }, tempo.secondsAt(8) - before);
  return made;
})"""


def test_a_click_that_comes_too_late_is_left_out(flat_browser, quartet, opened):
    """50 ms behind its beat it would be heard beside it; 5 ms behind it sounds now; a slow loudspeaker is given its clicks sooner."""
    with opened(flat_browser, quartet.mute, viewport=opened.SMALL) as there:
        assert there.page.evaluate(HANDED) == [[], [0], [50], [100], []]


def test_a_count_in_that_is_stopped_falls_silent(flat_browser, quartet, opened):
    """Beats half a second apart, stopped a quarter of a second after the second."""
    with opened(flat_browser, quartet.mute, viewport=opened.SMALL) as there:
        counted, stopped = there.page.evaluate(PEAKS)
        assert there.complaints == []
    assert min(counted) > 0.2
    assert stopped[:2] == counted[:2]
    assert stopped[2:] == [0, 0]
