"""What a server of a show and the processes that work for it load."""

import importlib
import pkgutil

import scipy.linalg  # noqa: F401

from sequencer import desk, planning, tasks
from sequencer.motion.flown.compiled import solver

for package in (desk, planning, tasks):
    for found in pkgutil.walk_packages(package.__path__, package.__name__ + "."):
        importlib.import_module(found.name)
importlib.import_module("sequencer.cli.open")
importlib.import_module("sequencer.outputs.sheets.parts.run_cues")
importlib.import_module("sequencer.outputs.report.printed")
solver()
