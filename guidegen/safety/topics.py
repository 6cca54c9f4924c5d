"""Topics that rules and steps of the guide share: what a danger is about, and so where it is told."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

#: Each topic, with the work it belongs to.
TOPICS: Mapping[str, str] = MappingProxyType(
    {
        "supply": "choosing the supply and looking at its marks",
        "supply-volts": "the supply's volts before anything is connected",
        "mains": "the outlet, and the distance to mains wire",
        "strings-identify": "finding out what kind of string it is",
        "two-way": "strings that light half on DC",
        "flashing": "strings that may flash",
        "cells": "the string's own cells and box",
        "conversion": "the moment a string is first changed",
        "bench-power": "a whole string lit on the bench",
        "polarity": "which wire is plus",
        "meter": "the meter in use",
        "meter-ohms": "small resistances on the meter",
        "sharp": "cutting and stripping",
        "soldering": "iron and joints",
        "dead-ends": "ends that stay live and feed nothing",
        "wire": "sizes and lengths of wire",
        "fuse": "the fuse",
        "resistor": "the resistor's value and rating",
        "resistor-mounting": "where and how the resistor is fixed",
        "labels": "labels on leads",
        "outdoors": "rain at the place and at the supply",
        "outdoors-joints": "joints that rain can reach",
        "hanging": "fixing, hanging, and who comes near",
        "first-power": "first power and the first hour",
        "goals": "how good the light is; no danger",
    }
)
