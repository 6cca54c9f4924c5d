"""Expected and measured readings, what deviations mean, and what to read next: as JSON and as text."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from guidegen.bench.as_built import AsBuilt, Judged, spot_of
from guidegen.bench.diagnose import Cause, Diagnosis
from guidegen.bench.next import NextReadings, Suggestion
from guidegen.bench.spots import Spot
from guidegen.circuit.expected import ExpectedReading
from guidegen.locale import N_, _
from guidegen.locale.numerals import general
from guidegen.report.amounts import amount, percent, span_ends
from guidegen.report.causes import Words
from guidegen.study import Study

_INDENT = "  "
_VERDICTS = {
    "in range": N_("in range"),
    "borderline": N_("borderline"),
    "out of range": N_("out of range"),
}


def readings_json(study: Study) -> list[dict[str, Any]]:
    """Every expected reading, with the measured one where there is one; volt and ampere."""
    words, built = _words(study), study.as_built
    return [_reading_json(words, reading, built) for reading in study.spread.readings]


def diagnosis_json(study: Study) -> dict[str, Any]:
    """The key "diagnosis" with what the readings mean, if any is out of range; else nothing."""
    built, words = study.as_built, _words(study)
    if built is None or built.diagnosis is None:
        return {}
    found = built.diagnosis
    told = {
        "can_tell": found.can_tell,
        "text": words.verdict(found),
        "causes": [_cause_json(words, cause) for cause in found.causes],
        "next": _next_json(words, found),
    }
    return {"diagnosis": told}


def _words(study: Study) -> Words:
    assert study.solved is not None, "nothing was solved"
    return Words(study.solved.arrangement, _show)


def _show(value: float, unit: str) -> str:
    return amount(value, {"Ω": "ohm"}.get(unit, unit))


def at_text(spot: Spot) -> str:
    """The place as the project file writes it: "bulb 12"."""
    return f"bulb {spot.bulb}" if spot.kind == "bulb" else spot.kind


def _reading_json(words: Words, reading: ExpectedReading, built: AsBuilt | None) -> dict[str, Any]:
    spot = spot_of(reading)
    judged = built.at(reading) if built else None
    out = judged is not None and judged.verdict != "in range"
    causes = built.diagnosis.causes if built and built.diagnosis and out else ()
    return {
        "point": reading.point.label if reading.point else None,
        "run": None if spot.run is None else words.run(spot.run),
        "at": at_text(spot),
        "unit": spot.unit,
        "expected": reading.expected,
        "low": reading.low,
        "high": reading.high,
        "out_below": reading.out_low,
        "out_above": reading.out_high,
        "measured": judged.taken.shown if judged else None,
        "verdict": judged.verdict if judged else None,
        "causes": [_cause_json(words, cause) for cause in causes],
    }


def _cause_json(words: Words, cause: Cause) -> dict[str, Any]:
    fault = cause.fault
    return {
        "kind": fault.kind,
        "run": None if fault.run is None else words.run(fault.run),
        "text": words.cause(cause),
        "fit": cause.fit,
        "fit_text": words.fit(cause),
        "weight": cause.weight,
    }


def _next_json(words: Words, found: Diagnosis) -> dict[str, Any] | None:
    if found.deciding is None:
        return None
    deciding = found.deciding
    return {
        "run": None if deciding.spot.run is None else words.run(deciding.spot.run),
        "at": at_text(deciding.spot),
        "if_first_v": deciding.if_first,
        "if_second_v": deciding.if_second,
        "text": words.deciding(deciding, found.causes),
    }


def told_readings(study: Study) -> Iterator[str]:
    """For `check`: readings taken and what they mean, and what to read where nothing was read yet."""
    if study.as_built is not None:
        yield ""
        yield _("Readings")
        yield from (_INDENT + line for line in _built_lines(_words(study), study.as_built))
    for name, found in study.next_readings.items():
        yield ""
        yield _("What to read next")
        yield _INDENT + next_text(name, found)


def readings_lines(study: Study) -> list[str]:
    """For `figures`: every expected reading, and what those taken mean."""
    words, built = _words(study), study.as_built
    lines = [_("Readings to expect (95 of 100 correct builds, meter included)")]
    for reading in study.spread.readings:
        taken = built.at(reading) if built else None
        lines.append(_INDENT + _line(words, reading, taken))
    if built is not None and built.diagnosis is not None:
        lines += [_INDENT + line for line in _diagnosis_lines(words, built.diagnosis)]
    return lines


def _built_lines(words: Words, built: AsBuilt) -> Iterator[str]:
    for judged in built.readings:
        yield _line(words, judged.expected, judged)
    if built.diagnosis is not None:
        yield from _diagnosis_lines(words, built.diagnosis)


def _line(words: Words, reading: ExpectedReading, judged: Judged | None) -> str:
    spot = spot_of(reading)
    label = f"{reading.point.label} " if reading.point else ""
    low, high = span_ends(reading.low, reading.high, spot.unit)
    text = _("{label}{place}: {low} to {high}").format(
        label=label,
        place=words.spot(spot),
        low=low,
        high=high,
    )
    if judged is None:
        return text
    shown = _show(judged.taken.shown, spot.unit)
    return _("{text}; measured {shown}: {verdict}").format(
        text=text, shown=shown, verdict=_(_VERDICTS[judged.verdict])
    )


def _diagnosis_lines(words: Words, found: Diagnosis) -> Iterator[str]:
    yield words.verdict(found)
    for number, cause in enumerate(found.causes, start=1):
        yield _INDENT + f"{number}. {words.ranked(cause, found)}"
    yield words.next_reading(found)


def next_text(name: str, found: NextReadings, show: Callable[[float, str], str] = _show) -> str:
    """Which one or two bench readings to take of a string, and what they are worth.

    `show` puts a value and its unit (V, Ω) into words.
    """
    if found.one_gains and found.two_gain:
        text = _(
            "{name}: no bench reading yet, so its LED current is known to {now} only. One reading brings "
            "that to {after_one}: {one}. Two bring it to {after_two}: {first}, and {second}."
        )
    elif found.one_gains:
        text = _(
            "{name}: no bench reading yet, so its LED current is known to {now} only. One reading brings "
            "that to {after_one}: {one}."
        )
    else:
        text = _(
            "{name}: no bench reading yet, so its LED current is known to {now} only. Two readings bring "
            "that to {after_two}: {first}, and {second}."
        )
    return text.format(
        name=name,
        now=plus_minus(found.now),
        after_one=plus_minus(found.after_one),
        after_two=plus_minus(found.after_two),
        one=suggestion_text(found.one, show),
        first=suggestion_text(found.two[0], show),
        second=suggestion_text(found.two[1], show),
    )


def plus_minus(share: float) -> str:
    """A half-width as people write it."""
    return f"±{general(100 * share, 2)} %" if share < 1 else f"±{percent(share)}"


def suggestion_text(suggestion: Suggestion, show: Callable[[float, str], str]) -> str:
    """One bench reading to take, in words."""
    if suggestion.what == "current":
        text = _("the current in line, on {supply} behind {ohm}")
    else:
        text = _("the volts behind a resistor of {ohm}, on {supply}")
    return text.format(supply=show(suggestion.supply_v, "V"), ohm=show(suggestion.resistor_ohm, "Ω"))
