"""The pace of a possession: how long a look, a signal or a gather takes, and how hard each kind of run is run."""

from __future__ import annotations

from backcut.offence.action import Kind

LEAD_IN_S = 0.6  # estimate: the picture stands this long before the first ball moves
LEAD_OUT_S = 0.8  # estimate: and this long after the last
READ_S = 1.4  # estimate: a defender has stepped into the lane and can be seen there (he moves after 0.5-0.6 s)
JUMP_S = 0.3  # estimate: a jump to the ball can be seen while the pass is in the air
GLANCE_S = 0.3  # estimate: somebody forgets; nothing to see but that he stands
SIGNAL_S = 0.5  # estimate: half a second for a fist or the eyes
LOOK_S = 0.1  # estimate: a cutter at the rim shows his hands before he leaves
GATHER_S = 0.35  # estimate: from the catch to the release of a lay-up or a quick pass
TWO_COUNT_S = 2.0  # a count is a second spoken: common practice, no source
LOOKED_SHARE = 0.6  # estimate: the passer has looked when this share of the cut's time is over, near the lane
SEEN_S = 0.8  # estimate: the holder looks at a back cut before playing on
JAM_SHARE = 0.45  # estimate: a cut is bumped before the free-throw line, under half way
ARRIVING_S = 0.3  # estimate: a dribble at a player begins this long before the player is at the spot
MEETS_S = 1.0  # estimate: a denier steps into the lane this long before his man is at the spot
SET_OFF_S = 0.3  # estimate: an answer is begun before the next one replaces it
HAND_OFF_S = 0.10  # estimate: the ball changes hands
REBOUND_M = 2.2  # estimate: rebounders come within a long step of the rim
TO_BALL_M = 1.2  # estimate: two steps toward the ball
SCREEN_M = 1.0  # estimate: a screen stands this far inside the spot of the one who uses it
BESIDE_M = 1.1  # estimate: two who begin on one spot stand side by side

#: Share of a full sprint for each kind of run: estimates ("sprint the cut" is what coaches ask; fills are quick runs).
EFFORT: dict[Kind, float] = {
    Kind.CUT: 1.0,
    Kind.BACK_CUT: 1.0,
    Kind.SHALLOW_CUT: 0.9,
    Kind.FLASH: 1.0,
    Kind.GET_BACK: 1.0,
    Kind.DRIBBLE: 0.65,
}
USUAL_EFFORT = 0.9  # estimate: fills, exits and the rest are run, not walked: nobody stands in the lane


def effort_of(kind: Kind) -> float:
    """The share of a full sprint that a kind of run is run at."""
    return EFFORT.get(kind, USUAL_EFFORT)
