"""The Wright omega function, against its own equation and against another implementation."""

import numpy as np
import pytest
from scipy.special import wrightomega

from guidegen.calc.omega import LARGE_Z, SMALL_Z, wright_omega

#: All that a diode may ask for, and the places where the first guess changes.
Z = np.concatenate([np.linspace(-700, 1000, 17_001), np.linspace(-60, 60, 12_001), [-2.0, 1.0, LARGE_Z]])


def test_it_is_what_another_implementation_gives() -> None:
    # scipy's own; both are good to some ten units of the last digit.
    assert wright_omega(Z) == pytest.approx(wrightomega(Z), rel=1e-14, abs=0)


@pytest.mark.parametrize(("z", "w"), [(1.0, 1.0), (0.0, 0.5671432904097838), (1 + np.e, np.e)])
def test_its_known_values(z: float, w: float) -> None:
    # w + ln w = z: 1 + 0, e + 1; omega(0) is the omega constant (OEIS A030178, from memory).
    assert float(wright_omega(z)) == pytest.approx(w, rel=1e-15)


def test_w_and_its_logarithm_add_up_to_z() -> None:
    z = Z[(Z > SMALL_Z) & (Z < 1e6)]
    w = wright_omega(z)
    assert w + np.log(w) == pytest.approx(z, rel=1e-14, abs=1e-14)


@pytest.mark.parametrize(("z", "w"), [(-np.inf, 0.0), (np.inf, np.inf), (1e300, 1e300)])
def test_its_ends(z: float, w: float) -> None:
    assert float(wright_omega(z)) == w


def test_no_number_stays_none() -> None:
    assert np.isnan(wright_omega(np.nan))
