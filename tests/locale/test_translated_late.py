"""No sentence is translated before the language of a project is known."""

from __future__ import annotations

import ast
from collections.abc import Iterator

import pytest

from tests.locale.catalogue import ROOT

TRANSLATING = {"_", "ngettext", "gettext"}
CACHING = {"cache", "lru_cache"}
MODULES = sorted(path for path in (ROOT / "guidegen").rglob("*.py") if "_data" not in path.parts)
Function = ast.FunctionDef | ast.AsyncFunctionDef


def calls(node: ast.AST) -> Iterator[int]:
    """Lines where something is translated inside the node."""
    for each in ast.walk(node):
        if isinstance(each, ast.Call) and isinstance(each.func, ast.Name) and each.func.id in TRANSLATING:
            yield each.lineno


def early(node: ast.AST) -> Iterator[int]:
    """Lines that translate when the module is loaded: outside functions, or in their defaults and marks."""
    if isinstance(node, Function | ast.Lambda):
        arguments = [*node.args.defaults, *filter(None, node.args.kw_defaults)]
        marks = node.decorator_list if isinstance(node, Function) else []
        for each in (*arguments, *marks):
            yield from calls(each)
        return
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in TRANSLATING:
        yield node.lineno
    for child in ast.iter_child_nodes(node):
        yield from early(child)


def cached(tree: ast.AST) -> Iterator[int]:
    """Lines that translate inside a function whose results are kept from call to call."""
    for node in ast.walk(tree):
        if isinstance(node, Function) and CACHING & {
            name.id for mark in node.decorator_list for name in ast.walk(mark) if isinstance(name, ast.Name)
        }:
            yield from calls(node)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_nothing_is_translated_when_a_module_is_loaded_or_kept_over_languages(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    assert [*early(tree), *cached(tree)] == []


def test_a_call_at_the_top_of_a_module_would_be_found():
    assert list(early(ast.parse('A = _("one")\ndef f(x=_("two")): return _("three")'))) == [1, 2]


def test_a_call_in_a_function_that_is_kept_would_be_found():
    assert list(cached(ast.parse('@cache\ndef f(): return _("one")'))) == [2]
