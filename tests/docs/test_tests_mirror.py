"""Where a test stands says what it tests: tests/unit mirrors the package, module by module."""

from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
TESTS = ROOT / "tests" / "unit"
PACKAGE = ROOT / "sequencer"


def subject_of(test: Path):
    """The module that a test file is named after, the longest name first; None where there is none."""
    room = PACKAGE / test.parent.relative_to(TESTS)
    words = test.stem.removeprefix("test_").split("_")
    names = ["_".join(words[:k]) for k in range(len(words), 0, -1)]
    return next((name for name in names if (room / f"{name}.py").is_file()), None)


def test_every_unit_test_stands_where_its_module_stands():
    tests = sorted(TESTS.rglob("test_*.py"))

    assert len(tests) > 100
    assert [str(test.relative_to(ROOT)) for test in tests if subject_of(test) is None] == []


@pytest.mark.parametrize(
    ("name", "subject"),
    [
        ("test_files.py", "files"),
        ("geometry/test_bodies_seated.py", "bodies"),
        ("checks/fire/test_fire_and_crew.py", "fire_and_crew"),
        ("geometry/test_seated.py", None),
        ("nowhere/test_bodies.py", None),
    ],
)
def test_a_name_tells_its_module(name, subject):
    assert subject_of(TESTS / name) == subject
