"""The floor of a check: the libraries it needs, each ready for use and no more; nothing of guidegen is used.

`python bare_check.py UNITS`: pydantic with one model, pint with a registry of the unit file UNITS.
"""

import sys

import click  # noqa: F401 - imported for its cost, as the rest here
import numpy as np  # noqa: F401
import pint
import scipy.linalg
import scipy.special  # noqa: F401
import yaml  # noqa: F401
from pydantic import BaseModel


class Model(BaseModel):
    """The least model."""

    number: int


def ready_libraries(units: str) -> None:
    """Use each library once, as little as can be."""
    Model(number=1)
    pint.UnitRegistry(units)


if __name__ == "__main__":
    ready_libraries(sys.argv[1])
