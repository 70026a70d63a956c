"""Four-out one-in: two slots and two wings, corners free, one player inside."""

from backcut.court.spots import Spot
from backcut.offence.formation import Formation

FORMATION = Formation(
    name="four-out",
    title="Four-out one-in",
    ring=(Spot.LC, Spot.LW, Spot.LS, Spot.RS, Spot.RW, Spot.RC),
    start=(Spot.LS, Spot.RS, Spot.LW, Spot.RW),
    ball=Spot.LS,
    inside=(Spot.RB,),
    also_called=("four-out-one-in",),
)
