"""The reference pages are what the code says today."""

import importlib.util
from pathlib import Path

import pytest

DOCS = Path(__file__).parents[2] / "docs"


@pytest.fixture(scope="module")
def build():
    spec = importlib.util.spec_from_file_location("build", DOCS / "build.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


PAGES = ["commands.md", "sheets.md", "show-file.md", "show.schema.json", "sources.md"]


@pytest.mark.parametrize("name", PAGES)
def test_page_is_current(build, name):
    built = build.pages()[name]
    assert (DOCS / name).read_text(encoding="utf-8") == built, "run python docs/build.py"


def test_the_table_of_sheets_stands_on_its_page(build):
    assert build.SHEETS.search(build.sheets_page())[2].count("\n| `<show>-") == len(
        build.SHEET_KINDS
    )


def test_the_picture_of_the_house_is_current(build):
    """Every room with its duty, from the contracts that CI holds: none is missing, none is invented."""
    assert build.GUIDE.read_text(encoding="utf-8") == build.guide_page(), "run python docs/build.py"
    drawn = build.HOUSE.search(build.guide_page())[2]
    rooms = {path.parent.name for path in (build.ROOT / "sequencer").rglob("__init__.py")} - {
        "sequencer"
    }
    assert {name for name in rooms if f"{name}/ " not in drawn} == set()


def test_every_key_of_a_show_is_described(build):
    """A key without a description would be a blank row for the user."""
    schema = build.show_schema()
    blank = [
        f"{name}.{key}"
        for name, record in {"Show": schema, **schema["$defs"]}.items()
        for key, value in record.get("properties", {}).items()
        if not value.get("description")
    ]
    assert blank == []
