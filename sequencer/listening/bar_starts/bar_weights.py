"""Coefficients of the ways to lay bars, fitted by `benchmarks/bars.py --fit`; what each belongs to: `bar_features`, column by column."""

import numpy as np

BAR_WEIGHTS = np.array([
    0.2173, 0.786, 1.095, 0.451, 0.0875, -0.298, 1.462, 0.5258, 0.07642, 1.539, 1.397, 0.8613, -0.3419, -1.22, -0.4673, 0.8382, -0.06944, 1.524, 1.839,
])  # fmt: skip
