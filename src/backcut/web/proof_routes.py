"""The addresses under which a floor's book is proved and its denial mark tried."""

from __future__ import annotations

from bisect import bisect_right
from typing import Annotated

from fastapi import APIRouter, Query
from fastapi import Path as InPath

from backcut.web.desk import Desk
from backcut.web.envelope import Told
from backcut.web.mark import preview
from backcut.web.proof import Proofs
from backcut.web.proof_data import Looking, MarkData, ProofData, WaysData
from backcut.web.stops import told

Id = Annotated[str, InPath(max_length=40, pattern=r"^[\w-]+$")]
Number = Annotated[int, InPath(ge=1, le=10_000)]
#: Seconds and metres that can be meant: no possession is longer, no floor wider (own design).
Seconds = Annotated[float, Query(ge=0, le=3_600, allow_inf_nan=False)]
Depth = Annotated[float | None, Query(ge=-20, le=20, allow_inf_nan=False)]


def proof_routes(desk: Desk, proofs: Proofs) -> APIRouter:
    """Look at every situation of a floor's book, stop, ways out, and the denial mark at another depth."""
    route = APIRouter(prefix="/floors/{ident}", tags=["findings"])

    @route.get("/proof")
    def how_far(ident: Id) -> Told[ProofData]:
        """How far the proof of this floor's book is, and what it found."""
        return Told(data=ProofData(**proofs.look(ident, desk.find(ident).floor.text)))

    @route.post("/proof")
    def look(ident: Id, asked: Looking) -> Told[ProofData]:
        """Look at every situation of the book as it is on the floor now."""
        text = desk.find(ident).floor.text
        return Told(data=ProofData(**proofs.start(ident, text, asked.depths, asked.apart)))

    @route.delete("/proof")
    def stop(ident: Id) -> Told[ProofData]:
        """Stop looking; what was found stays."""
        text = desk.find(ident).floor.text
        proofs.stop(ident)
        return Told(data=ProofData(**proofs.look(ident, text)))

    @route.post("/proof/{number}/ways")
    def ways(ident: Id, number: Number) -> Told[WaysData]:
        """Look for ways out of a finding, or see how far that is."""
        desk.find(ident)
        return Told(data=WaysData(**proofs.ways(ident, number)))

    @route.get("/mark")
    def mark(ident: Id, t: Seconds = 0.0, mark_m: Depth = None) -> Told[MarkData]:
        """The denial mark at a depth (the book's own where none is given), tried at a moment of the possession."""
        line = told(desk.find(ident).floor)
        stop = line.stops[max(bisect_right([moment.t_s for moment in line.show.moments], t + 0.005) - 1, 0)]
        found = preview(line.played.book, line.show.timeline, stop.situation, t, mark_m)
        return Told(data=MarkData(**found))

    return route
