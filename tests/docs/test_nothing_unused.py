"""Every public function, class and method of the package is used: by the package, its docs or its benchmarks."""

import ast
import re
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).parents[2]
# what only tests and other people's code call, and why it stays
KEPT = {
    "checks.registry.found_by": "checks of other packages read what an earlier one found",
    "geometry.bodies.Body.of_survey": "tests stand bodies of a published survey on the stage",
    "listening.signal.mpeg.Recounted.readinto": "the library that reads sound calls it",
    "listening.signal.mpeg.Recounted.seekable": "the library that reads sound calls it",
}


def module_of(path):
    return ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


def trees():
    return {
        module_of(path): ast.parse(path.read_text(encoding="utf-8"))
        for path in sorted((ROOT / "sequencer").rglob("*.py"))
    }


def around():
    """Text of all that is neither the package nor its tests."""
    files = [ROOT / "README.md", ROOT / "DEVELOPERS.md"]
    for folder in ("docs", "benchmarks", "audio_samples", "examples"):
        files += [*(ROOT / folder).rglob("*.py"), *(ROOT / folder).rglob("*.md")]
    return "\n".join(path.read_text(encoding="utf-8") for path in files)


def public(tree):
    """Functions, classes and methods without a leading underscore, each with its class."""
    for node in tree.body:
        if not isinstance(node, ast.FunctionDef | ast.ClassDef) or node.name.startswith("_"):
            continue
        yield None, node
        for inner in node.body if isinstance(node, ast.ClassDef) else ():
            if isinstance(inner, ast.FunctionDef) and not inner.name.startswith("_"):
                yield node.name, inner


def names_used(tree):
    """Every name read in a tree, and how often."""
    return Counter(
        node.id if isinstance(node, ast.Name) else node.attr
        for node in ast.walk(tree)
        if isinstance(node, ast.Name | ast.Attribute)
    )


def imported(tree):
    """(module, name) of every `from … import …`."""
    return {
        (node.module, alias.name)
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom)
        for alias in node.names
    }


def test_nothing_is_there_for_tests_alone():
    modules, others = trees(), around()
    used = {name: names_used(tree) for name, tree in modules.items()}
    taken = {name: imported(tree) for name, tree in modules.items()}
    attributes = set().union(*used.values())
    dead = set()
    for module, tree in modules.items():
        for owner, node in public(tree):
            name = f"{module}.{owner}.{node.name}" if owner else f"{module}.{node.name}"
            short = name.removeprefix("sequencer.")
            package, _, last = module.rpartition(".")
            if owner:  # a method may be called on anything
                alive = node.name in attributes
            else:
                alive = any(
                    (module, node.name) in taken[other]
                    or ((package, last) in taken[other] and node.name in used[other])
                    for other in modules
                    if other != module
                )
            # by its own module, but not by itself
            alive = alive or used[module][node.name] > names_used(node)[node.name]
            if not alive and not re.search(rf"\b{node.name}\b", others):
                dead.add(short)

    assert sorted(dead - set(KEPT)) == []
    assert sorted(set(KEPT) - dead) == []  # what is used by now needs no reason
