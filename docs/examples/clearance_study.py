"""A clearance study: how close every two performers come, where, and in which part of the song.

Run: python docs/examples/clearance_study.py [SHOW.yaml]
"""

# %% Stage the show once; everything after is read from it
import sys

from sequencer import distances, stage

show = stage(sys.argv[1] if sys.argv[1:] else "shows/lantern_round.yaml")
print(show)
if len(show.dancers) < 2:
    print(f"There is one performer, {show.dancers[0].name}: no pair to measure.")
    sys.exit()

# %% Every pair over the whole show, proven to 5 mm
pairs = distances(show).to_frame()
print(pairs[["first", "second", "distance", "position", "first_part", "second_part"]].round(3))

# %% Where it is tightest: the closest pair of each section
for section, name in zip(show.song.sections, show.song.section_names(), strict=True):
    start, end = show.tempo.beats_from_seconds([section.start, section.end])
    near = distances(show, float(start), float(end)).pairs[0]
    print(f"{name:12} {near.first} and {near.second}: {near.distance:.2f} m at {near.position}")

# %% How much room each performer has at the least
each = pairs.melt("distance", ["first", "second"], value_name="who")
print(each.groupby("who")["distance"].min().sort_values().round(3).to_string())
