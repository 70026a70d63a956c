"""Five-out: nobody inside, the ball at the top (open post)."""

from backcut.court.spots import Spot
from backcut.offence.formation import Formation

FORMATION = Formation(
    name="five-out",
    title="Five-out",
    ring=(Spot.LC, Spot.LW, Spot.T, Spot.RW, Spot.RC),
    start=(Spot.T, Spot.RW, Spot.LW, Spot.RC, Spot.LC),
    ball=Spot.T,
    also_called=("open-post",),
)
