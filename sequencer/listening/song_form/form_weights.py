"""Coefficients of the form of a song, fitted by `benchmarks/form.py --fit`.

What each belongs to: `border_evidence`, `part_evidence` and `pair_evidence`, column by column, the constant last.
"""

import numpy as np

from sequencer.listening.song_form.form_labels import LabelWeights
from sequencer.listening.song_form.form_parts import FormWeights

_BORDER = (-0.1509, 0.6152, 0.4245, -0.2388, -0.02062, 0.2364, -0.14, -0.08812, -0.1222, -0.00583, 0.285, 0.1606, 0.291, 0.238, 0.3952, 0.7514, -6.956)  # fmt: skip
_BORDER_MEAN = (0.7513, 0.3745, 0.4949, 0.5744, 0.6805, 0.5727, 0.3532, 0.4523, 0.1701, 0.1556, 0.4189, 0.4831, 1.83, -0.7922, 0.3018, 0.266)  # fmt: skip
_BORDER_SPREAD = (0.349, 0.2264, 0.4762, 0.4461, 0.3598, 0.3285, 0.5306, 0.4596, 0.1444, 0.1347, 0.1702, 0.1449, 1.344, 0.9502, 1.014, 1.006)  # fmt: skip
_PART = (-1.794, -2.904, 1.499, 1.323, 1.197, -0.1809, -3.173, -2.073, 1.183, -0.7305, -0.4188, 0.4146, -0.5026, 0.4246)  # fmt: skip
_LABEL = (1.839, 0.9155, 0.1065, -0.1182, -0.8853, -0.7172, -0.2163, 1.263, 0.8427, -0.2086, -1.081, -0.3447, -0.2007, -0.1726, -0.6022)  # fmt: skip
_LABEL_MEAN = (0.6234, 0.5699, 0.4912, 0.7011, 0.09526, -0.03001, -0.01548, 0.0354, 0.1662, -0.0328, -0.08547, -0.07075, 0.3489, -0.4363)  # fmt: skip
_LABEL_SPREAD = (0.2008, 0.2791, 0.203, 0.2691, 0.2032, 0.2738, 0.2029, 0.2351, 1.01, 0.1152, 0.2467, 0.1756, 0.4766, 0.4781)  # fmt: skip

FORM = FormWeights(*(np.array(row) for row in (_BORDER, _BORDER_MEAN, _BORDER_SPREAD, _PART)))
PART_LABELS = LabelWeights(*(np.array(row) for row in (_LABEL, _LABEL_MEAN, _LABEL_SPREAD)))
