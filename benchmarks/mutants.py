"""Every small fault that can be planted in a module's arithmetic, as cosmic-ray's operators plant them.

Operators, from cosmic-ray: `+` for `-` and back, `*` for `/` and back, `**` and `//` for `*`; each
comparison for its neighbour (`<` for `<=`) and its opposite; `and` for `or` and back, `not` before a
condition; True for False and back; every number one larger and one smaller; a sign or a `not` left out;
`break` for `continue` and back; a loop that never runs; an exception that is not caught. From here: one
operand of a sum, product, power, `and` or `or` left out, so that each term of a formula stands trial.

Left out, since no behaviour hangs on them: annotations, default arguments of decorators (a dataclass's
`frozen`, a cache's size), `strict=True` of a zip (a guard against a fault of the programmer), `__all__`,
the text of messages (whatever a `raise` or an f-string says), the `*` that marks keywords, and mutants that
are the same program.
"""

import ast
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

import parso
from cosmic_ray.ast import ast_nodes
from cosmic_ray.mutating import mutate_code
from cosmic_ray.operators.operator import Operator
from cosmic_ray.operators.provider import OperatorProvider

PREFIX = "ReplaceBinaryOperator_", "ReplaceComparisonOperator_", "ReplaceUnaryOperator_"
BINARY = ("Add_Sub", "Sub_Add", "Mul_Div", "Div_Mul", "Pow_Mul", "FloorDiv_Mul", "Mod_Mul",
          "BitAnd_BitOr", "BitOr_BitAnd")  # fmt: skip
COMPARISON = ("Lt_LtE", "Lt_GtE", "LtE_Lt", "LtE_Gt", "Gt_GtE", "Gt_LtE", "GtE_Gt", "GtE_Lt",
              "Eq_NotEq", "NotEq_Eq", "Is_IsNot", "IsNot_Is")  # fmt: skip
UNARY = ("Delete_USub", "Delete_Not", "Delete_Invert")
PLAIN = ("AddNot", "ReplaceTrueWithFalse", "ReplaceFalseWithTrue", "ReplaceAndWithOr",
         "ReplaceOrWithAnd", "ReplaceBreakWithContinue", "ReplaceContinueWithBreak",
         "ExceptionReplacer", "NumberReplacer", "ZeroIterationForLoop")  # fmt: skip
UNMUTATED = ("decorator", "raise_stmt", "import_from", "import_name", "fstring")


class DropOperand(Operator):  # type: ignore[misc]  # cosmic-ray has no types
    """Leaves one operand of a sum, product, power, `and` or `or` out, with the operator before it."""

    KINDS = ("arith_expr", "term", "power", "and_test", "or_test")

    def mutation_positions(self, node: Any) -> Iterator[tuple[Any, Any]]:
        """One position for each operand after the first, and one for the first."""
        if node.type in self.KINDS and _joined(node):
            for child in node.children[::2]:
                yield (child.start_pos, child.end_pos)

    def mutate(self, node: Any, index: int) -> Any:
        """The node without its operand of that index; a difference keeps the sign of what is left."""
        parts = node.children
        if index:
            kept = [*parts[: 2 * index - 1], *parts[2 * index + 1 :]]
        else:
            lead = {"-": " -", "/": " 1 /", "//": " 1 //"}.get(parts[1].value, " ")
            kept = [parso.parse(lead), *parts[2:]]
        return parso.python.tree.PythonNode("atom", [parso.parse(" ("), *kept, parso.parse(")")])

    @classmethod
    def examples(cls) -> tuple[()]:
        """None: tests/benchmarks/test_mutants.py holds them."""
        return ()


@dataclass(frozen=True)
class Mutant:
    """One fault in one file."""

    module: str  # path below the repository, with slashes
    operator: str
    occurrence: int
    line: int
    before: str = ""  # the statement's line as `ast.unparse` writes it
    after: str = ""

    @property
    def key(self) -> str:
        """Names it as long as its statement stays the same, wherever it moves in its file."""
        return f"{self.module} | {self.operator} | {self.before} -> {self.after}"


@cache
def operators() -> dict[str, Operator]:
    """The operators used, by name."""
    provider = OperatorProvider()
    names = [
        prefix + name
        for prefix, group in zip(PREFIX, (BINARY, COMPARISON, UNARY), strict=True)
        for name in group
    ]
    return {name: provider[name]() for name in (*names, *PLAIN)} | {"DropOperand": DropOperand()}


def places(root: Path, module: str) -> list[Mutant]:
    """Where each operator applies in a file, not yet looked at what it does there.

    Parameters
    ----------
    root : Path
        The repository.
    module : str
        Path of the file below it.
    """
    tree = parso.parse((root / module).read_text(encoding="utf-8"))
    return [
        Mutant(module, name, occurrence, line)
        for name, operator in operators().items()
        for occurrence, (node, line) in enumerate(_positions(tree, operator))
        if not _idle(node)
    ]


def planted(root: Path, place: Mutant) -> tuple[Mutant, str] | None:
    """A mutant with what it changes, and its whole file; None where it is the same program or none."""
    source = (root / place.module).read_text(encoding="utf-8")
    code = mutate_code(source, operators()[place.operator], place.occurrence)
    try:
        mutated = ast.unparse(ast.parse(code or ""))
    except SyntaxError:
        return None
    pairs = zip(_lines(source), mutated.splitlines(), strict=False)
    before, after = next(((a, b) for a, b in pairs if a != b), ("", ""))
    if before == after:
        return None
    return replace(place, before=before.strip(), after=after.strip()), code


@lru_cache(maxsize=256)
def _lines(source: str) -> tuple[str, ...]:
    return tuple(ast.unparse(ast.parse(source)).splitlines())


def _positions(tree: Any, operator: Operator) -> Iterator[tuple[Any, int]]:
    """Nodes in cosmic-ray's order, once for each mutation, with the line it begins in."""
    for node in ast_nodes(tree):
        for start, _ in operator.mutation_positions(node):
            yield node, start[0]


def _joined(node: Any) -> bool:
    """Whether operands and operators alternate: not so a call, which parso calls a power as well."""
    signs = node.children[1::2]
    return len(node.children) % 2 == 1 and all(
        sign.type in ("operator", "keyword") and sign.value not in ("(", "[", ".") for sign in signs
    )


def _idle(node: Any) -> bool:
    """Whether no behaviour hangs on what stands there."""
    if node.type == "operator" and node.parent.type in ("parameters", "arglist", "argument"):
        return True  # the mark of keywords, not a product
    inner = node
    while (outer := inner.parent) is not None:
        if outer.type in UNMUTATED or _annotates(outer, inner) or _strict(outer):
            return True
        if outer.type == "expr_stmt" and outer.children[0].get_code().strip() == "__all__":
            return True
        inner = outer
    return False


def _annotates(outer: Any, inner: Any) -> bool:
    """Whether a node is the annotation of a variable, a parameter or a result."""
    if outer.type == "annassign":
        return inner is outer.children[1]
    if outer.type == "tfpdef":
        return inner is outer.children[2]
    return outer.type == "funcdef" and outer.annotation is inner


def _strict(node: Any) -> bool:
    return node.type == "argument" and node.get_code(include_prefix=False) == "strict=True"
