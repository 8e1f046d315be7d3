"""A song's bars: how steady the count is, section by section, and where to listen again.

Run: python docs/examples/song_bars.py [SONG] [FILE.png]
"""

# %% Hear it (the second time it is looked up) and take its bars as a data frame
import sys

from matplotlib.figure import Figure

from sequencer import hear

song = hear(sys.argv[1] if sys.argv[1:] else "audio_samples/cinder_ferry.ogg")
bars = song.to_frame("bars")
print(song)

# %% Section by section: bars, mean tempo, how far the tempo strays, the least sure bar
table = bars.groupby("section", sort=False).agg(
    bars=("bar", "size"),
    tempo=("tempo", "mean"),
    strays=("tempo", "std"),
    sure=("confidence", "min"),
)
print(table.round(2).to_string())

# %% Bars to listen to again
unsure = bars[bars["confidence"] < 0.5]
print("listen again:", ", ".join(str(bar) for bar in unsure["bar"]) or "nowhere")

# %% The tempo of every bar
figure = Figure(figsize=(8, 3), layout="constrained")
axes = figure.subplots()
axes.step(bars["start"], bars["tempo"], where="post")
axes.set(xlabel="time [s]", ylabel="tempo [beats a minute]", title=song.track)
if sys.argv[2:]:
    figure.savefig(sys.argv[2])
