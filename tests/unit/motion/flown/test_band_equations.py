"""LAPACK's functions for bands by themselves are those that SciPy offers, and leave SciPy as it would be."""

import subprocess
import sys

import pytest


def in_new_process(code):
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout.split()


@pytest.mark.parametrize("before", ["", "import scipy.linalg"])
def test_they_are_scipys_own(before):
    said = in_new_process(
        f"""
import sys
{before}
from sequencer.motion.flown.band_equations import band_functions
own = band_functions()
print("scipy.linalg" in sys.modules)
import scipy.linalg.lapack
print(own.dgbtrf is scipy.linalg.lapack.dgbtrf, own.dgbtrs is scipy.linalg.lapack.dgbtrs)
print(scipy.linalg._flapack is sys.modules["scipy.linalg._flapack"])
print(scipy.linalg.solve([[2.0]], [1.0])[0])
"""
    )
    assert said == [str(bool(before)), "True", "True", "True", "0.5"]


def test_where_they_cannot_be_had_alone_the_whole_is_loaded():
    said = in_new_process(
        """
import sys
from sequencer.motion.flown import band_equations
band_equations._CODE_NAME = "scipy.linalg.moved"
own = band_equations.band_functions()
print("scipy.linalg" in sys.modules)
import scipy.linalg.lapack
print(own.dgbtrs is scipy.linalg.lapack.dgbtrs)
"""
    )
    assert said == ["True", "True"]
