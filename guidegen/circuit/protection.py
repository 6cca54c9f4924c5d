"""What a short does: the fuse, the resistor and every wire section behind it."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.calc.fuse import (
    fault_current_a,
    lasting_current_a,
    must_open_a,
    must_open_multiple,
    sure_to_open,
)
from guidegen.calc.resistor import running_w, upper_ohm
from guidegen.calc.wire_limit import overload_limit_a
from guidegen.circuit.arrangement import Arrangement, Conductor, RunPlan
from guidegen.circuit.conditions import Conditions
from guidegen.circuit.far_end import far_end_ohm
from guidegen.circuit.solution import Protection, Section, Solution


def protection(arrangement: Arrangement, solution: Solution) -> Protection:
    """How the fuse and the wires of an arrangement stand up to a short.

    The fuse is first thing in +, before the shared lead.  ValueError while no
    fuse is picked.
    """
    rating_a, supply = arrangement.fuse.rating_a, arrangement.supply
    if rating_a is None:
        raise ValueError("no fuse is picked yet")
    opens_a = must_open_a(rating_a, must_open_multiple(arrangement.fuse.standard))
    fault_a = fault_current_a(supply.lower_v, supply.output_ohm, supply.limit_a)
    behind_a = tuple(
        fault_current_a(supply.lower_v, _upper_ohm_behind_resistor(arrangement, run), supply.limit_a)
        for run in arrangement.runs
    )
    far_a = tuple(
        fault_current_a(supply.lower_v, _upper_ohm_to_far_end(arrangement, run), supply.limit_a)
        for run in arrangement.runs
    )
    return Protection(
        must_open_a=opens_a,
        fault_a=fault_a,
        sure=sure_to_open(fault_a, opens_a),
        fault_after_resistor_a=behind_a,
        sure_after_resistor=tuple(sure_to_open(each, opens_a) for each in behind_a),
        fault_far_end_a=far_a,
        sure_far_end=tuple(sure_to_open(each, opens_a) for each in far_a),
        far_end_w=tuple(_far_end_w(arrangement, run) for run in arrangement.runs),
        sections=tuple(_sections(arrangement, solution, opens_a)),
    )


def _upper_ohm_behind_resistor(arrangement: Arrangement, run: RunPlan) -> float:
    case = Conditions(wire="high", air_degc=arrangement.warmest_c)
    supply = arrangement.supply
    resistor_ohm = upper_ohm(run.resistor.ohm, run.resistor.tolerance)
    return supply.output_ohm + 2 * case.cable_ohm(supply.lead) + resistor_ohm


def _upper_ohm_to_far_end(arrangement: Arrangement, run: RunPlan) -> float:
    case = Conditions(wire="high", air_degc=arrangement.warmest_c)
    return _upper_ohm_behind_resistor(arrangement, run) + far_end_ohm(run, case)


def _far_end_w(arrangement: Arrangement, run: RunPlan) -> float:
    """Most watts in the run's resistor with its far end shorted: upper volts, least ohms, as `shorted_w`."""
    case = Conditions(resistor="low", wire="low", air_degc=arrangement.coldest_c)
    supply, resistor_ohm = arrangement.supply, case.resistor_ohm(run)
    if resistor_ohm == 0:
        return 0.0
    wires_ohm = 2 * case.cable_ohm(supply.lead) + far_end_ohm(run, case)
    return running_w(supply.upper_v / (supply.output_ohm + wires_ohm + resistor_ohm), resistor_ohm)


def _sections(arrangement: Arrangement, solution: Solution, opens_a: float) -> Iterator[Section]:
    supply = arrangement.supply
    low = Conditions(resistor="low", wire="low", air_degc=arrangement.coldest_c)

    def section(key: str, run: str, wire: Conductor, ahead_ohm: float, running_a: float) -> Section:
        lasting_a = lasting_current_a(opens_a, supply.limit_a, supply.upper_v, ahead_ohm)
        return Section(
            key=key,
            run=run,
            lasting_a=lasting_a,
            limit_a=wire.limit_a,
            ahead_ohm=ahead_ohm,
            running_a=running_a,
            holds=lasting_a <= overload_limit_a(wire.limit_a),
            inferred=wire.inferred,
            area_m2=wire.area_m2,
        )

    ahead_ohm = supply.output_ohm
    if supply.lead is not None:
        yield section("lead", "", supply.lead.conductor, ahead_ohm, solution.supply_a)
    ahead_ohm += 2 * low.cable_ohm(supply.lead)
    for run, solved in zip(arrangement.runs, solution.runs, strict=True):
        behind_ohm = ahead_ohm + low.resistor_ohm(run)
        if run.feeder is not None:
            yield section("feeder", run.name, run.feeder.conductor, behind_ohm, solved.current_a)
        behind_ohm += 2 * low.cable_ohm(run.feeder)
        if run.extra is not None:
            yield section("extra", run.name, run.extra.conductor, behind_ohm, solved.current_a)
        yield section("string", run.name, run.conductor, behind_ohm, solved.current_a)
