"""A pattern's curve: where hand and head of a toroid go, seen from behind and from above.

Run: python docs/examples/pattern_curve.py [FILE.png]
"""

# %% The law of the right hand, and its positions over one hand cycle
import sys

from matplotlib.figure import Figure

from sequencer import Body, law, trace

toroid = law("pro-bend-4", hand_radius="15 cm", start=-1, body=Body(stature=1.68))
rows = trace(toroid, per_beat=96, tempo=100, tether=0.51)
print(toroid)
print(rows[["head_x", "head_y", "head_z"]].agg(["min", "max"]).round(3).to_string())

# %% Proven, not sampled: the fastest that this head can be
print(f"head at most {toroid.bounds().head_speed(0.51) * 100 / 60:.2f} m/s at 100 beats a minute")

# %% Drawn in the body frame [m]: x to the performer's right, y forward, z up
figure = Figure(figsize=(9, 5), layout="constrained")
views = figure.subplots(1, 2)
for axes, (x, y), title in zip(views, ("xz", "xy"), ("from behind", "from above"), strict=True):
    axes.plot(rows[f"head_{x}"], rows[f"head_{y}"], label="head")
    axes.plot(rows[f"hand_{x}"], rows[f"hand_{y}"], label="hand")
    axes.set(aspect="equal", title=title, xlabel=f"{x} [m]", ylabel=f"{y} [m]")
views[0].legend()
if sys.argv[1:]:
    figure.savefig(sys.argv[1])
