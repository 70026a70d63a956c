"""Every error that Backcut raises.

    BackcutError
    ├── CourtError       a court that cannot be: contradictory or impossible measures
    ├── BookFileError    a book file that cannot be read at all (empty, encoding, size)
    ├── NotationError    a text that is not in our notation: a move list, a situation, a spot
    ├── MoveError        a move that cannot be made in this situation
    ├── SituationError   a situation that cannot be: two players on one spot, nobody has the ball
    ├── MotionError      a run or a pass that cannot be timed
    ├── FilmError        a tracking file that cannot be read
    ├── ModelError       a model for an outside checker that cannot be written
    ├── ShelfError       a book that cannot be kept or found under a name
    ├── GoneError        a floor that is not open (any more)
    └── ConflictError    a change of something that has changed since it was looked at

What a coach gets wrong inside a book is not an error but a list of `Problem`, all at once.
Every message names the place, what is wrong, and what would be right.
"""


class BackcutError(Exception):
    """Base of all errors; the command line prints its message and ends with exit code 2."""


class CourtError(BackcutError):
    """A court whose measures contradict each other or cannot be."""


class BookFileError(BackcutError):
    """A book file that cannot be read at all."""


class NotationError(BackcutError):
    """A text that is not in our notation."""


class MoveError(BackcutError):
    """A move that cannot be made in this situation."""


class SituationError(BackcutError):
    """A situation that cannot be."""


class MotionError(BackcutError):
    """A run or a pass that cannot be timed."""


class FilmError(BackcutError):
    """A tracking file that cannot be read."""


class ModelError(BackcutError):
    """A model for an outside model checker that cannot be written."""


class ShelfError(BackcutError):
    """A book that cannot be kept or found under a name."""


class GoneError(BackcutError):
    """A floor that is not open (any more)."""


class ConflictError(BackcutError):
    """A change of something that has changed since it was looked at."""
