"""What both one-line notations share: a spot as it may be written, and where a text stops making sense."""

from lark import UnexpectedInput, UnexpectedToken

from backcut.court.spots import Spot

#: A spot by short id or coach's name, longest first, as one pattern for the grammars.
SPOT_WORDS = "|".join(
    sorted((word for spot in Spot for word in (spot.value, spot.title)), key=len, reverse=True)
).replace(" ", r"\s+")

_SHOWN = 24


def where_it_stops(text: str, error: UnexpectedInput) -> tuple[int, str]:
    """The column, from 1, where a text cannot be read, and what stands there, quoted; or the end."""
    if (isinstance(error, UnexpectedToken) and error.token.type == "$END") or error.pos_in_stream is None:
        return len(text.rstrip()) + 1, "it ends too early"
    return error.pos_in_stream + 1, f'"{text[error.pos_in_stream :].strip()[:_SHOWN]}"'
