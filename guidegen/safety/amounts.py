"""Numbers of a finding as text: the end of a value's name tells its unit."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import cast

from guidegen.locale import _
from guidegen.locale.numerals import numeral
from guidegen.project.supply_at import SupplyPlace

DIGITS = 3


def _plain(value: float) -> str:
    """A number with three significant digits, never in exponent form."""
    if value == 0:
        return "0"
    text = f"{value:.{DIGITS}g}"
    if "e" in text:
        text = f"{value:.0f}" if abs(value) >= 1 else f"{value:.9f}".rstrip("0")
    return numeral(text)


def _ampere(value: float) -> str:
    return f"{_plain(value)} A" if abs(value) >= 1 else f"{_plain(value * 1000)} mA"


def _metre(value: float) -> str:
    """To the centimetre from one metre on, as a tape measure is read."""
    if abs(value) < 1:
        return f"{_plain(value * 100)} cm"
    return f"{numeral(f'{value:.2f}'.rstrip('0').rstrip('.'))} m"


def _place(value: object) -> str:
    # Loaded where a place is told: most findings have none.
    from guidegen.hanging.supply import place_name  # noqa: PLC0415

    return place_name(cast(SupplyPlace, value))


_SHOWN: dict[str, Callable[[float], str]] = {
    "v": lambda value: f"{_plain(value)} V",
    "a": _ampere,
    "w": lambda value: f"{_plain(value)} W",
    "n": lambda value: f"{_plain(value)} N",
    "ohm": lambda value: f"{_plain(value)} Ω",
    "m": _metre,
    "m2": lambda value: f"{_plain(value * 1e6)} mm²",
    "c": lambda value: f"{value:.0f} °C",
    "percent": lambda value: f"{value * 100:.0f} %",
    "ratio": lambda value: numeral(f"{value:.2f}"),
}


def shown(values: Mapping[str, object]) -> dict[str, str]:
    """Every value as text, by its name.

    Numbers are SI and ratios; `running_w` is shown as "0.43 W", `load_percent`
    as "84 %", `low_ratio` as "0.42", `supply_place` as "H3".  Words are
    translated; lists are joined by commas.
    """
    return {name: _text(name, value) for name, value in values.items()}


def _text(name: str, value: object) -> str:
    unit = name.rsplit("_", 1)[-1]
    if unit == "place":
        return _place(value)
    if isinstance(value, str):
        return _(value)
    if isinstance(value, tuple):
        return ", ".join(_text(name, item) for item in value)
    if unit in _SHOWN and isinstance(value, (int, float)):
        return _SHOWN[unit](float(value))
    return str(value)
