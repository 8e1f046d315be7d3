"""Random operations through the desk's code: findings as those of a check from nothing, and undo to the first byte.

Reference: a worker that stages and checks the last text with nothing kept. More of them: `python benchmarks/desk_sequences.py`.
"""

from tests.desk_sequences import sequence


def test_a_sequence_ends_with_the_findings_of_a_fresh_check_and_undoes_to_the_first_byte(tmp_path):
    told = sequence(1, tmp_path / "show.yaml", operations=3)
    assert told.alike
    assert told.done == 3
    assert told.findings > 0
