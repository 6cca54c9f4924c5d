"""The road's order: imports go only downwards, and the quick commands load nothing heavy."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import networkx
import pytest

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "guidegen"

# Top to bottom; the stations of one line may use one another.
ROAD = (
    ("__main__",),
    ("cli",),
    ("build",),
    ("publish",),
    ("drawings",),
    ("guide",),
    ("report",),
    ("study",),
    ("choose",),
    ("safety",),
    ("bench",),
    ("parts",),
    ("hanging",),
    ("circuit",),
    ("project",),
    ("calc",),
    ("tables",),
    ("locale", "errors", "paths"),
    ("__init__",),
)
LEVEL = {station: level for level, line in enumerate(ROAD) for station in line}
ONLY_IN = {
    "matplotlib": ("drawings",),
    "schemdraw": ("drawings",),
    "mkdocs": ("publish",),
    "pint": ("project", "guide", "report"),
    "yaml": ("project",),
}
# What the physics may use: arrays, and Python itself without its ways to the outside.
CALC_MAY_USE = {"numpy", "scipy", "guidegen", *sys.stdlib_module_names} - {
    "os",
    "pathlib",
    "io",
    "subprocess",
}
HEAVY = ("matplotlib", "schemdraw", "mkdocs")

MODULES = {
    ".".join(path.relative_to(ROOT).with_suffix("").parts): path
    for path in sorted(PACKAGE.rglob("*.py"))
    if "_data" not in path.parts
}


def imports_of(module: str) -> Iterator[str]:
    """Every module that `module` imports, inside functions too, with the names it takes from packages."""
    for node in ast.walk(ast.parse(MODULES[module].read_text())):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{module} has a relative import, line {node.lineno}"
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def station(module: str) -> str:
    """The part of the road that a module of guidegen belongs to."""
    parts = module.split(".")
    return parts[1] if len(parts) > 1 and parts[1] in LEVEL else "__init__"


def known(name: str) -> str | None:
    """The module of guidegen that an imported name is, if it is one."""
    return next((module for module in (name, f"{name}.__init__") if module in MODULES), None)


def imports_at_load(module: str) -> Iterator[str]:
    """The modules of guidegen that loading `module` loads: those imported outside functions."""
    waiting = list(ast.parse(MODULES[module].read_text()).body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.Import | ast.ImportFrom):
            yield from _modules_named(node)
        elif not isinstance(node, ast.FunctionDef) and "TYPE_CHECKING" not in ast.unparse(node):
            waiting.extend(ast.iter_child_nodes(node))


def _modules_named(node: ast.Import | ast.ImportFrom) -> Iterator[str]:
    """What one import statement loads; a package that is only the way to its modules is not counted."""
    package = f"{node.module}." if isinstance(node, ast.ImportFrom) else ""
    inside = [known(package + alias.name) for alias in node.names]
    if package and not all(inside):
        inside.append(known(package.rstrip(".")))
    yield from (name for name in inside if name)


@pytest.mark.parametrize("module", MODULES)
def test_a_module_stands_on_the_road(module):
    top = module.split(".")[1]
    assert top in LEVEL, f"{module} is in no station of the road"


@pytest.mark.parametrize("module", MODULES)
def test_a_module_imports_only_from_below(module):
    ours = {name for name in imports_of(module) if name.split(".")[0] == "guidegen"}
    upward = {name for name in ours if LEVEL[station(name)] < LEVEL[station(module)]}
    assert not upward


@pytest.mark.parametrize("module", MODULES)
def test_a_module_imports_only_the_libraries_of_its_station(module):
    libraries = {name.split(".")[0] for name in imports_of(module)}
    assert not [name for name, where in ONLY_IN.items() if name in libraries and station(module) not in where]


@pytest.mark.parametrize("module", [module for module in MODULES if station(module) == "calc"])
def test_the_physics_uses_numbers_alone(module):
    assert {name.split(".")[0] for name in imports_of(module)} <= CALC_MAY_USE


def test_no_modules_import_one_another_in_a_circle():
    edges = [(module, used) for module in MODULES for used in imports_at_load(module) if used != module]
    circles = list(networkx.simple_cycles(networkx.DiGraph(edges)))
    assert circles == []


def test_the_command_line_loads_only_click_before_a_command_is_chosen():
    assert {name.split(".")[0] for name in loaded_by("import guidegen.cli")} & {
        "click",
        "numpy",
        "pydantic",
        "yaml",
    } == {"click"}


LOAD_REPORT = """
import importlib, pkgutil
import guidegen.report
for found in pkgutil.walk_packages(guidegen.report.__path__, "guidegen.report."):
    importlib.import_module(found.name)
"""
RUN_COMMAND = """
import contextlib, io
from guidegen.cli import main
try:
    with contextlib.redirect_stdout(io.StringIO()):
        main([*{command}, "sample_project/potting-bench.yaml"])
except SystemExit as end:
    assert not end.code
"""


@pytest.mark.parametrize(
    "work",
    [
        pytest.param("import guidegen.study", id="study"),
        pytest.param(LOAD_REPORT, id="report"),
        pytest.param(RUN_COMMAND.format(command=["check"]), id="check"),
        pytest.param(RUN_COMMAND.format(command=["figures"]), id="figures"),
        pytest.param(RUN_COMMAND.format(command=["figures", "--json"]), id="figures --json"),
        pytest.param(RUN_COMMAND.format(command=["compare"]), id="compare"),
        pytest.param(RUN_COMMAND.format(command=["compare", "--json"]), id="compare --json"),
    ],
)
def test_quick_work_loads_no_drawing_or_publishing_library(work):
    loaded = loaded_by(work)
    assert "guidegen" in loaded
    assert not [name for name in HEAVY if name in loaded]


def test_what_draws_in_a_second_process_loads_no_reader_of_project_files():
    loaded = loaded_by("from guidegen.drawings import charts, plan, schematic, steps")
    assert "guidegen.drawings.plan" in loaded
    assert not loaded & {"pydantic", "pydantic_core", "pint", "yaml", "guidegen.project"}


def loaded_by(work: str) -> set[str]:
    """The modules that a fresh process has loaded after this work."""
    script = f"import sys\n{work}\nprint('\\nLOADED', *sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=ROOT, check=True, capture_output=True, text=True, encoding="utf-8"
    )
    return set(done.stdout.rsplit("LOADED", 1)[1].split())
