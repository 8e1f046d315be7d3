"""Files that the pages name are in the repository, and their links lead somewhere."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PAGES = [
    ROOT / "README.md",
    ROOT / "DEVELOPERS.md",
    *sorted((ROOT / "docs").glob("*.md")),
    ROOT / "benchmarks" / "README.md",
]
NAMES = [page.relative_to(ROOT).as_posix() for page in PAGES]
FENCED = re.compile(r"^```.*?^```", re.DOTALL | re.MULTILINE)
PATH = re.compile(r"`([\w.-]+(?:/[\w.-]+)+/?)`")  # no placeholder, command or unit
LINK = re.compile(r"\]\(([^)\s]+)\)")
SOURCE = (".py", ".md", ".json", ".yaml", ".toml")
MODULE = re.compile(r"`(\w+\.py)`")  # by its name alone, where the text around it says the folder
WRITTEN_BY_A_RUN = ("exports", ".venv")  # not kept in the repository
KEPT = [ROOT / name for name in ("sequencer", "tests", "docs", "benchmarks")]
PLACES = {path.name for base in (ROOT, ROOT / "sequencer") for path in base.iterdir()}
MODULES = {path.name for base in KEPT for path in base.rglob("*.py")}


def prose(page):
    return FENCED.sub("", page.read_text(encoding="utf-8"))


def paths(page):
    """Paths in backticks that look like this repository's: by their first folder or by their ending."""
    found = {path for path in PATH.findall(prose(page)) if "NAME" not in path}
    return {
        path
        for path in found
        if (path.split("/")[0] in PLACES or path.endswith(SOURCE))
        and path.split("/")[0] not in WRITTEN_BY_A_RUN
    }


def is_there(path):
    """At the root or, in the short form, in the package."""
    return (ROOT / path).exists() or (ROOT / "sequencer" / path).exists()


def anchors(page):
    """Anchors of a page's headings: lower case, punctuation dropped, blanks to hyphens, repeats numbered."""
    found = []
    for heading in re.findall(r"^#+ (.+)$", prose(page), re.MULTILINE):
        plain = re.sub(r"\[([^]]*)\]\([^)]*\)", r"\1", heading).strip().lower()
        anchor = re.sub(r"[^\w\- ]", "", plain).replace(" ", "-")
        again = found.count(anchor)
        found.append(f"{anchor}-{again}" if again else anchor)
    return set(found)


def broken(page):
    """Relative links of a page whose file or whose heading is not there."""
    links = {link for link in LINK.findall(prose(page)) if "://" not in link}
    return sorted(link for link in links if not leads_somewhere(page, link))


def leads_somewhere(page, link):
    name, _, anchor = link.partition("#")
    target = page.parent / name if name else page
    return target.exists() and (not anchor or anchor in anchors(target))


@pytest.mark.parametrize("page", PAGES, ids=NAMES)
def test_every_path_is_in_the_repository(page):
    assert sorted(path for path in paths(page) if not is_there(path)) == []


@pytest.mark.parametrize("page", PAGES, ids=NAMES)
def test_every_module_named_alone_is_in_the_repository(page):
    assert sorted(set(MODULE.findall(prose(page))) - MODULES) == []


@pytest.mark.parametrize("page", PAGES, ids=NAMES)
def test_every_link_leads_to_a_file_and_a_heading(page):
    assert broken(page) == []


def test_a_wrong_path_link_and_anchor_are_seen(tmp_path):
    """The measure itself, on a page with one right and one wrong of each."""
    page = tmp_path / "page.md"
    page.write_text(
        "# 3.8 What, why?\n[a](#38-what-why) [b](#37-what-why) [c](page.md) [d](none.md)\n"
        "`motion/laws/law.py` `motion/laws/none.py` `tests/docs/test_links.py` `3 m/s`\n",
        encoding="utf-8",
    )

    assert broken(page) == ["#37-what-why", "none.md"]
    assert [path for path in paths(page) if not is_there(path)] == ["motion/laws/none.py"]


def test_the_pages_name_files():
    """The patterns find what they are to judge."""
    assert len(set().union(*map(paths, PAGES))) > 50
