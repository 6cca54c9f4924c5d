"""Every wire of the installation with the short reference that the schematic shows.

L1 is the lead all runs share; run 1 has resistor R1, feeder W1, extra wire
X1 and the string's own cable S1, run 2 has R2, and so on.
"""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.circuit.arrangement import Arrangement, Cable, Conductor, RunPlan
from guidegen.circuit.solution import RunSolution, Solution
from guidegen.locale import _
from guidegen.locale.numerals import general, with_unit

FUSE = "F1"
LEAD = "L1"


@dataclass(frozen=True)
class WireRow:
    """One wire, as listed beside the schematic.

    `run` is the index of its run (None for the shared lead).  `length_m` is
    the route, one way; `conductor` its size and material in words; `ohm`
    one conductor over that length at 20 degC; `limit_a` the table's current
    limit; `running_a` the largest current in it, None when nothing was
    solved.
    """

    reference: str
    run: int | None
    what: str
    from_place: str
    to_place: str
    cores: int
    length_m: float
    conductor: tuple[str, ...]
    ohm: float
    limit_a: float
    running_a: float | None


def resistor_reference(run: int) -> str:
    """R1, R2, ... by the index of the run."""
    return f"R{run + 1}"


def feeder_reference(run: int) -> str:
    """W1, W2, ... by the index of the run."""
    return f"W{run + 1}"


def extra_reference(run: int) -> str:
    """X1, X2, ... by the index of the run."""
    return f"X{run + 1}"


def string_reference(run: int) -> str:
    """S1, S2, ... by the index of the run."""
    return f"S{run + 1}"


def wire_rows(arrangement: Arrangement, solution: Solution | None = None) -> tuple[WireRow, ...]:
    """Every wire, from the supply outwards; with currents when a solution is given."""
    rows = [] if arrangement.supply.lead is None else [_lead_row(arrangement.supply.lead, solution)]
    for index, run in enumerate(arrangement.runs):
        rows += _run_rows(index, run, solution.runs[index] if solution else None)
    return tuple(rows)


def _lead_row(lead: Cable, solution: Solution | None) -> WireRow:
    """The lead that all runs share."""
    places = _("fuse {fuse} and the supply's −").format(fuse=FUSE), _("where the runs branch")
    return _row(LEAD, None, _("lead"), places, 2, lead, solution.supply_a if solution else None)


def _run_rows(index: int, run: RunPlan, solved: RunSolution | None) -> list[WireRow]:
    """Feeder, extra wire and string cable of one run, those that there are."""
    rows = []
    behind = resistor_reference(index) if run.resistor.fitted else _("where the runs branch")
    joint = behind
    if run.feeder is not None:
        joint = _("the end of feeder {feeder}").format(feeder=feeder_reference(index))
        current = solved.current_a if solved else None
        places = behind, _("the run's first joint")
        rows.append(_row(feeder_reference(index), index, _("feeder"), places, 2, run.feeder, current))
    if run.extra is not None and run.feed != "one end":
        rows.append(_extra_row(index, run, joint, solved))
    rows.append(_string_row(index, run, solved))
    return rows


def _extra_row(index: int, run: RunPlan, joint: str, solved: RunSolution | None) -> WireRow:
    """The extra wire of `opposite ends`, the extra pair of the other feeds."""
    assert run.extra is not None
    single = run.feed == "opposite ends"
    what = _("extra wire, − only") if single else _("extra pair")
    bulb = run.fed_bulb if run.feed == "middle" else run.bulbs
    places = joint, _("bulb {bulb}").format(bulb=bulb)
    current = extra_a(run, solved) if solved else None
    return _row(extra_reference(index), index, what, places, 1 if single else 2, run.extra, current)


def _string_row(index: int, run: RunPlan, solved: RunSolution | None) -> WireRow:
    """The string's own cable."""
    places = _("before bulb 1"), _("bulb {bulb}").format(bulb=run.bulbs)
    cable = Cable(run.length_m, run.conductor)
    current = string_a(run, solved) if solved else None
    return _row(string_reference(index), index, _("the string's own cable"), places, 2, cable, current)


def _row(
    reference: str,
    run: int | None,
    what: str,
    places: tuple[str, str],
    cores: int,
    cable: Cable,
    running_a: float | None,
) -> WireRow:
    """A row of the table from the cable itself."""
    return WireRow(
        reference,
        run,
        what,
        *places,
        cores,
        cable.length_m,
        conductor_words(cable.conductor),
        cable.ohm,
        cable.conductor.limit_a,
        running_a,
    )


def conductor_words(conductor: Conductor) -> tuple[str, ...]:
    """Size and material of a conductor, as a shop would say them."""
    size = with_unit(general(conductor.area_m2 * 1e6), "mm²")
    if conductor.gauge is not None:
        size = _("{gauge} AWG ({area})").format(gauge=f"{conductor.gauge:g}", area=size)
    elif conductor.inferred:
        size = _("like copper of {area}").format(area=size)
    words = [size] if conductor.inferred else [size, _(conductor.material)]
    return (*words, _("measured")) if conductor.measured else tuple(words)


def extra_a(run: RunPlan, solved: RunSolution) -> float:
    """Current in one core of the run's extra wire, A.

    Both cores of the pair at `both ends` carry the same, since both rails
    are alike: I = (V at the joint - V at the last bulb) / (2 R of a core).
    """
    if run.feed == "one end" or run.extra is None:
        return 0.0
    if run.feed != "both ends":
        return solved.current_a
    if run.extra.ohm <= 0:
        return float(solved.bulb_a[run.bulbs // 2 :].sum())
    return (solved.feed_v - float(solved.bulb_v[-1])) / (2 * run.extra.ohm)


def string_a(run: RunPlan, solved: RunSolution) -> float:
    """Largest current in the string's own cable, A."""
    if run.feed == "middle":
        fed = run.fed_bulb
        return float(max(solved.bulb_a[: fed - 1].sum(), solved.bulb_a[fed:].sum()))
    if run.feed == "both ends":
        extra = extra_a(run, solved)
        return max(solved.current_a - extra, extra - float(solved.bulb_a[-1]))
    return solved.current_a
