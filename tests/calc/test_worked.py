"""Worked calculations: words and value from one call."""

import dataclasses
import importlib
import inspect
import math
import pkgutil
import re

import pytest

from guidegen import calc
from guidegen.calc import resistor, supply, wire
from guidegen.calc.worked import formula_of, work

#: SI units as printed, none for a pure number or the unit of whatever was read; hours for energy alone.
UNITS = {
    "",
    "V",
    "A",
    "Ω",
    "W",
    "m",
    "m2",
    "Ω/m",
    "Ω m",
    "°C",
    "K",
    "1/K",
    "h",
    "A h",
    "kWh",
    "1/kWh",
    "N",
    "N/m",
}
FUNCTION_WORDS = {"ln", "min", "max", "exp", "sinh", "cosh", "π"}


def _formula_functions():
    found = {}
    for info in pkgutil.iter_modules(calc.__path__):
        module = importlib.import_module(f"guidegen.calc.{info.name}")
        for function in vars(module).values():
            if hasattr(function, "__formula__"):
                found[f"{function.__module__}.{function.__name__}"] = function
    return found


FUNCTIONS = _formula_functions()


def _symbols_in(text):
    return set(re.findall(r"[^\W\d]\w*", text.replace("²", ""))) - FUNCTION_WORDS


@pytest.fixture(params=FUNCTIONS, scope="module")
def function(request):
    return FUNCTIONS[request.param]


def test_there_are_formulas_to_check():
    assert "guidegen.calc.resistor.running_w" in FUNCTIONS


def test_a_formula_says_everything(function):
    said = formula_of(function)
    assert said.title and said.text and said.source
    assert all(each.symbol and each.meaning for each in (*said.symbols, said.result))


def test_a_formula_speaks_in_si_units(function):
    said = formula_of(function)
    assert {each.unit for each in (*said.symbols, said.result)} <= UNITS


def test_a_formula_names_its_arguments_and_no_others(function):
    named = [each.argument for each in formula_of(function).symbols]
    assert sorted(named) == sorted(inspect.signature(function).parameters)


def test_a_formula_uses_its_symbols_and_no_others(function):
    said = formula_of(function)
    symbols = [each.symbol for each in (*said.symbols, said.result)]
    assert len(set(symbols)) == len(symbols)
    assert _symbols_in(said.text) == set(symbols)


def test_a_formula_gives_its_result_on_the_left(function):
    said = formula_of(function)
    assert said.text.split(" = ")[0] == said.result.symbol


def test_a_formulas_text_computes_what_its_function_computes(function):
    # Independent method: the printed text itself, evaluated.
    said = formula_of(function)
    values = {each.argument: 4.0 - 0.37 * position for position, each in enumerate(said.symbols)}
    printed = said.text.split(" = ", 1)[1]
    for shown, python in (("²", "**2"), ("^", "**"), ("−", "-"), ("·", "*")):
        printed = printed.replace(shown, python)
    names = {each.symbol: values[each.argument] for each in said.symbols}
    known = {"ln": math.log, "sinh": math.sinh, "cosh": math.cosh, "π": math.pi, "min": min, "max": max}
    assert eval(printed, {"__builtins__": {}}, {**known, **names}) == pytest.approx(function(**values))


def test_a_formula_has_a_docstring(function):
    assert function.__doc__


def test_the_decorated_function_stays_plain():
    assert resistor.running_w(0.2, 10) == pytest.approx(0.4)


def test_work_gives_value_and_words_from_one_call():
    # By hand: 0.2^2 x 10.
    worked = work(resistor.running_w, current_a=0.2, resistance_ohm=10)
    assert worked.value == worked.result.value == pytest.approx(0.4)
    assert worked.formula == "P = I² · R"
    assert [(term.symbol, term.unit, term.value) for term in worked.terms] == [
        ("I", "A", 0.2),
        ("R", "Ω", 10),
    ]
    assert (worked.result.symbol, worked.result.unit) == ("P", "W")


def test_defaults_are_shown_as_arguments_too():
    worked = work(wire.wire_ohm, per_m_ohm=0.05, length_m=2.0)
    assert [term.value for term in worked.terms] == [0.05, 2.0, 2]


def test_a_worked_calculation_cannot_be_changed():
    worked = work(supply.power_w, voltage_v=5, current_a=1)
    with pytest.raises(dataclasses.FrozenInstanceError):
        worked.title = "other"


def test_a_missing_argument_is_an_error():
    with pytest.raises(TypeError, match="resistance_ohm"):
        work(resistor.running_w, current_a=0.2)


def test_a_function_without_a_formula_is_an_error():
    with pytest.raises(TypeError, match="carries no formula"):
        work(wire.gauge_area_m2, gauge=28)
