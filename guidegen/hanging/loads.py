"""What a line of lights weighs per metre, and what wind and ice add."""

from __future__ import annotations

from guidegen.calc.catenary import dead_load_n_per_m
from guidegen.calc.weather import bulb_ice_n, ice_n_per_m, together_n_per_m, wind_n_per_m
from guidegen.circuit.arrangement import Arrangement
from guidegen.hanging.plan import HungLine, Loads
from guidegen.project.hung import Hanging
from guidegen.tables import hanging as table
from guidegen.tables.hanging import COPPER_KG_PER_M3

#: Weight of a wire over that of its copper: plastic weighs about as much again (typical, from memory).
INSULATED = 2.0


def loads_of(hanging: Hanging, arrangement: Arrangement, line: HungLine) -> Loads:
    """Loads of a line; bulbs and extra wire count as spread evenly along it."""
    bulbs_per_m = len(line.bulbs) / max(line.lights_m, line.wire_m / 2)
    dead = dead_load_n_per_m(_wire_kg_per_m(hanging, arrangement, line), _bulb_kg(hanging), bulbs_per_m)
    ice = _ice(hanging, bulbs_per_m)
    wind = 0.0 if hanging.wind is None else wind_n_per_m(hanging.wind, _width_m(hanging, bulbs_per_m))
    return Loads(dead, ice, wind, together_n_per_m(dead + ice, wind))


def typical_weights(hanging: Hanging) -> tuple[str, ...]:
    """Keys whose typical values these loads rest on."""
    words = ["wire_weight", "bulb_weight"]
    words += ["guide_wire_weight"] if hanging.guide_wire == "yes" else []
    words += ["wire_diameter", "bulb_size"] if hanging.wind is not None or hanging.ice else []
    return tuple(word for word in words if getattr(hanging, word) is None)


def _bulb_kg(hanging: Hanging) -> float:
    return table.BULB_KG.value if hanging.bulb_weight is None else hanging.bulb_weight


def _wire_kg_per_m(hanging: Hanging, arrangement: Arrangement, line: HungLine) -> float:
    """The strings' cable, the extra wires that run along it, and the guide wire."""
    cable = table.WIRE_KG_PER_M.value if hanging.wire_weight is None else hanging.wire_weight
    extra_kg = sum(_extra_kg(arrangement, run) for run in line.runs)
    guide = 0.0
    if hanging.guide_wire == "yes":
        stated = hanging.guide_wire_weight
        guide = table.GUIDE_KG_PER_M.value if stated is None else stated
    return cable + extra_kg / line.wire_m + guide


def _extra_kg(arrangement: Arrangement, index: int) -> float:
    run = arrangement.runs[index]
    if run.extra is None or run.feed == "one end":
        return 0.0
    cores = 1 if run.feed == "opposite ends" else 2
    copper_m3 = cores * run.extra.conductor.area_m2 * run.extra.length_m
    return INSULATED * COPPER_KG_PER_M3.value * copper_m3


def _diameters_m(hanging: Hanging) -> list[float]:
    """Thickness of the cable, and of the guide wire where there is one."""
    cable = table.WIRE_DIAMETER_M.value if hanging.wire_diameter is None else hanging.wire_diameter
    return [cable, *([table.GUIDE_DIAMETER_M.value] if hanging.guide_wire == "yes" else [])]


def _size_m(hanging: Hanging) -> float:
    return table.BULB_SIZE_M.value if hanging.bulb_size is None else hanging.bulb_size


def _ice(hanging: Hanging, bulbs_per_m: float) -> float:
    thickness = hanging.ice or 0.0
    wires = sum(ice_n_per_m(diameter, thickness) for diameter in _diameters_m(hanging))
    return wires + bulbs_per_m * bulb_ice_n(_size_m(hanging), thickness)


def _width_m(hanging: Hanging, bulbs_per_m: float) -> float:
    """Width that the wind meets, on average along the line: wires, and bulbs as squares."""
    coat = 2 * (hanging.ice or 0.0)
    wires = sum(diameter + coat for diameter in _diameters_m(hanging))
    return wires + bulbs_per_m * (_size_m(hanging) + coat) ** 2
