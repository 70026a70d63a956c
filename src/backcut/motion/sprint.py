"""The mono-exponential sprint: speed, distance and time in closed form.

v(t) = top (1 - exp(-t / tau)), d(t) = top (t - tau (1 - exp(-t / tau))) with tau the time constant: Furusawa, Hill and
Parkinson 1927; Samozino et al. 2016. Good for single efforts under about six seconds; it knows no braking, no fatigue.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from backcut.errors import MotionError

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Sprint:
    """One runner's sprint from standing: `top_speed_m_s` and `time_constant_s`, the time to 63 % of it.

    Raises: MotionError if either is not above zero.
    """

    top_speed_m_s: float
    time_constant_s: float

    def __post_init__(self) -> None:
        for name, value in (("top speed", self.top_speed_m_s), ("time constant", self.time_constant_s)):
            if not (np.isfinite(value) and value > 0):
                raise MotionError(f"A sprint's {name} is {value}; it must be a number above zero.")

    @property
    def first_acceleration_m_s2(self) -> float:
        """The acceleration at the first instant, in m/s2."""
        return self.top_speed_m_s / self.time_constant_s

    def speed_m_s(self, t_s: ArrayLike) -> Floats:
        """Speed in m/s at times `t_s` (any shape) after the start; zero before it."""
        t = np.maximum(np.asarray(t_s, dtype=np.float64), 0.0)
        return np.asarray(-self.top_speed_m_s * np.expm1(-t / self.time_constant_s))

    def distance_m(self, t_s: ArrayLike) -> Floats:
        """Distance in metres run at times `t_s` (any shape) after the start; zero before it."""
        t = np.maximum(np.asarray(t_s, dtype=np.float64), 0.0)
        return np.asarray(self.top_speed_m_s * (t + self.time_constant_s * np.expm1(-t / self.time_constant_s)))

    def time_s(self, distance_m: ArrayLike) -> Floats:
        """Time in seconds to run `distance_m` (any shape) from standing: the exact inverse of `distance_m`.

        With c = d / (top tau) and u = t / tau the distance says u + exp(-u) = c + 1, so u = c + 1 + W(-exp(-c - 1)),
        W being the principal branch of the Lambert function.
        Raises: MotionError if a distance is below zero.
        """
        # A table of answers needs no Lambert function and should not wait for it.
        from scipy.special import lambertw

        distance = np.asarray(distance_m, dtype=np.float64)
        if np.any(distance < 0):
            raise MotionError(f"A sprint over {distance.min()} m cannot be timed; give a distance of zero or more.")
        c = distance / (self.top_speed_m_s * self.time_constant_s)
        # At the very start W sits on its branch point and loses its digits; the series there is c = u^2/2 - u^3/6.
        u = np.where(c < 1e-6, np.sqrt(2 * c) + c / 3, c + 1 + lambertw(-np.exp(-np.maximum(c, 1e-6) - 1)).real)
        return np.asarray(self.time_constant_s * u)
