"""What is set for a pattern, in words instead of the file's names."""

import pytest

from sequencer.motion.patterns.law_kinds import _BUILT_IN
from sequencer.outputs.words.block_words import parameters_text
from sequencer.outputs.words.setting_words import TOLD_AS_DANCED, setting_words


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"lobes": 1}, "1 lobe"),
        ({"lobes": 4}, "4 lobes"),
        ({"ratio": "-3/2"}, "prop turns 1.5 times a round, against the hand"),
        ({"ratio": 2}, "prop turns twice a round, with the hand"),
        ({"lag": "-45°"}, "prop 45° behind the arm"),
        ({"lag": 0}, "prop in line with the arm"),
        ({"loops": -4}, "4 loops a round, against the hand"),
        ({"width": 0.6}, "60 % as wide as usual"),
        ({"yaw": 20}, "plane turned 20° to your left"),
        ({"low": -10}, "arm 10° below level at its lowest"),
        ({"swing": -75}, "plane turns 75° away from the wall plane as the hand crosses"),
        ({"place": "overhead"}, "hand crosses over the head"),
        ({"shape": "infinity"}, "hand goes along a lying eight"),
        ({"tether": "45 cm"}, "45 cm from hand to head"),
        ({"apart": -0.1}, "10 cm nearer to the body than usual"),
        ({"wobble_rate": 3}, "wobble rate 3"),  # of somebody's own pattern: by its name
    ],
)
def test_phrases(given, told):
    assert setting_words(given) == [told]


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"hand_radius": "6 in"}, "hand’s circle 15 cm in radius"),
        ({"size": 0.25}, "hand’s path 50 cm across"),
        ({"across": -0.1}, "10 cm farther in than usual"),
        ({"up": 0}, "as high as usual"),
    ],
)
def test_places_only_where_nobody_tells_them_as_danced(given, told):
    assert setting_words(given) == []
    assert setting_words(given, places=True) == [told]


def test_every_parameter_of_the_vocabulary_has_words():
    """No name of the file is left, whatever its value."""
    looked = 0
    for kind in _BUILT_IN:
        for each in kind.parameters:
            if each.name in TOLD_AS_DANCED:
                continue
            for value in each.choices or (each.low, 0.5 * (each.low + each.high), each.high):
                (told,) = setting_words({each.name: value}, places=True)
                assert told != parameters_text({each.name: value})
                looked += 1
    assert looked > 100
