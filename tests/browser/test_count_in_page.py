"""A count-in that is stopped falls silent at once: what it hands to the sound card is played here by the browser, faster than it sounds."""

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


def test_a_count_in_that_is_stopped_falls_silent(browser, quartet, opened):
    """Beats half a second apart, stopped a quarter of a second after the second."""
    with opened(browser, quartet.mute, viewport=opened.SMALL) as there:
        counted, stopped = there.page.evaluate(PEAKS)
        assert there.complaints == []
    assert min(counted) > 0.2
    assert stopped[:2] == counted[:2]
    assert stopped[2:] == [0, 0]
