"""Three-out two-in: the top and two wings, corners free, one player low and one high."""

from backcut.court.spots import Spot
from backcut.offence.formation import Formation

FORMATION = Formation(
    name="three-out",
    title="Three-out two-in",
    ring=(Spot.LC, Spot.LW, Spot.T, Spot.RW, Spot.RC),
    start=(Spot.T, Spot.RW, Spot.LW),
    ball=Spot.T,
    inside=(Spot.RB, Spot.LE),
    also_called=("three-out-two-in",),
)
