"""The planning page as it travels with the package."""

import hashlib
import re
from importlib.resources import files
from pathlib import Path

import pytest

from sequencer.desk.pages import page_routes
from sequencer.facts.fuels import fuel, fuels

WEB = Path(__file__).parents[4] / "web"
ASSETS = files("sequencer.desk") / "assets"


@pytest.mark.parametrize(
    ("assets", "sources"),
    [(ASSETS, ("planning", "src")), (ASSETS / "watch", ("watching", "planning", "src"))],
    ids=["planning", "watching"],
)
def test_the_page_is_built_from_these_sources(assets, sources):
    """`npm run build` in web/ notes a hash of what it read; users get the built file."""
    if not WEB.is_dir():
        pytest.skip("the sources of the page are not beside the package")
    digest = hashlib.sha256()
    for folder in sources:
        for path in sorted((WEB / folder).iterdir(), key=lambda p: p.name):
            digest.update(path.name.encode() + b"\0" + path.read_bytes().replace(b"\r\n", b"\n"))
    digest.update((WEB / "package-lock.json").read_bytes().replace(b"\r\n", b"\n"))

    assert (assets / "built-from.txt").read_text(encoding="utf-8").strip() == digest.hexdigest()


@pytest.mark.parametrize("assets", [ASSETS, ASSETS / "watch"], ids=["planning", "watching"])
def test_nothing_of_the_page_comes_from_elsewhere(assets):
    """The policy forbids it; nothing in the shell asks for it."""
    shell = (assets / "page.html").read_text(encoding="utf-8")
    assert "://" not in shell
    assert "<style" not in shell
    assert "<script>" not in shell


@pytest.mark.parametrize("folder", ["planning", "watching", "src"])
def test_what_the_pages_say_has_one_kind_of_apostrophe(folder):
    if not WEB.is_dir():
        pytest.skip("the sources of the page are not beside the package")
    comments = re.compile(r"^\s*/?\*.*|/\*.*?\*/|(?<![:\"'])//.*")
    straight = re.compile(r"[A-Za-z})]'(?:s|t|re|ll)\b|[a-z]s' [a-z]")
    said = {}
    for path in sorted((WEB / folder).glob("*.ts*")):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if straight.search(comments.sub("", line)):
                said[f"{path.name}:{number}"] = line.strip()
    assert said == {}


def test_a_form_offers_fuels_that_a_show_may_name():
    """Nobody can know by which name a fuel is known here; what is refused is not offered."""
    with pytest.raises(StopIteration) as answer:  # it waits for nothing
        page_routes._schema(None, {}).send(None)
    known = answer.value.value["known"]["fuel"]
    assert known
    for name in known:
        assert fuel(name).name == name
        assert fuel(name).refused is None
    assert len(known) < len(fuels())
