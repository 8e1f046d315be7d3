"""What is installed with the program is licensed so that anybody may use it; the records of the packages are the source."""

import importlib.util
from email.message import Message
from pathlib import Path
from types import SimpleNamespace

import pytest

ROOT = Path(__file__).parents[2]
_spec = importlib.util.spec_from_file_location("licences", ROOT / "docs" / "licences.py")
licences = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(licences)


def test_everything_that_is_installed_is_allowed():
    found = {
        each.metadata["Name"]: licences.licence_of(each)
        for each in licences.installed(extras=("dask",))
    }
    assert {"numpy", "librosa", "click", "pydantic"} <= set(found)
    assert len(found) > 30
    assert {
        name: words for name, words in found.items() if not licences.is_allowed_licence(words)
    } == {}


@pytest.mark.parametrize(
    ("given", "words", "allowed"),
    [
        ({"License-Expression": "MIT"}, "MIT", True),
        ({"Classifier": "License :: OSI Approved :: BSD License"}, "BSD License", True),
        ({"License": "GPLv3\nall of it"}, "GPLv3", False),
        ({"Classifier": "License :: OSI Approved :: GNU Affero General Public License v3"},
         "GNU Affero General Public License v3", False),
        ({}, "none told", False),
    ],
)  # fmt: skip
def test_a_licence_is_read_from_its_record(given, words, allowed):
    record = Message()
    record["Name"] = "made-up"
    for key, value in given.items():
        record[key] = value.replace("\n", "\n ")
    assert licences.licence_of(SimpleNamespace(metadata=record)) == words
    assert licences.is_allowed_licence(words) is allowed
