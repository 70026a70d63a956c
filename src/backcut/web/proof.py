"""Books proved in processes of their own: started when asked for, looked at while they run, stopped at any time.

Every method returns at once and may be called from any thread. At most one proof a floor, and two in all.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import dataclass, field
from threading import RLock, Timer
from typing import Any

from backcut.errors import BackcutError, NotationError
from backcut.files import digest
from backcut.prove.depth import Depth
from backcut.prove.words import counted
from backcut.web.proof_changed import changed_since
from backcut.web.proof_child import Child, Message

#: Processes at once, and floors whose pictures are kept (own design).
MOST_AT_ONCE = 2
MOST_KEPT = 64
#: Seconds a proof may take before it is stopped with what it has; every shipped book takes less than ten at all depths
#: (measured), so this is a book that grows without end. Ways out take a proof for each change: 131 s for four findings
#: of the school team with another exit, at three depths (measured). And how long it may take to stop (own design).
LONGEST_S = 120.0
WAYS_S = 300.0
STOPS_S = 5.0


class BusyError(BackcutError):
    """More was asked for at once than this machine should do."""


@dataclass(slots=True)
class _Ways:
    """What is known of the ways out of one finding."""

    state: str = "looking"
    said: str = "Looking for ways out."
    ways: list[dict[str, Any]] = field(default_factory=list)

    def to_dict(self) -> dict[str, Any]:
        return {"state": self.state, "said": self.said, "ways": self.ways}


@dataclass(slots=True)
class _Look:
    """What is known of one floor's proof: what was asked for, how far it is, what was found."""

    text: str
    depths: tuple[Depth, ...]
    apart: bool
    state: str = "looking"
    said: str = ""
    counts: dict[str, int] = field(default_factory=dict)
    findings: list[dict[str, Any]] = field(default_factory=list)
    proof: dict[str, Any] = field(default_factory=dict)
    ways: dict[int, _Ways] = field(default_factory=dict)
    version: int = 0
    out_of_time: bool = False

    @property
    def words(self) -> str:
        """How far it is, in words."""
        so_far = sum(self.counts.values())
        match self.state:
            case "looking" if not so_far:
                return "Looking. Stop when you like, what was found stays."
            case "looking":
                situations = counted(so_far, "situation")
                return f"Looked at {situations} so far. Stop when you like, what was found stays."
            case "stopped":
                long_ = f"After {LONGEST_S / 60:.0f} minutes it was stopped" if self.out_of_time else "Stopped"
                return f"{long_}, {counted(so_far, 'situation')} looked at. What was found stays."
            case "refused":
                return self.said
            case _:
                return _verdict(self.proof)

    def to_dict(self, text: str | None) -> dict[str, Any]:
        """Everything the page shows. `text` is the book as it stands on the floor now."""
        return {
            "state": self.state,
            "said": self.words,
            "version": self.version,
            "digest": digest(self.text),
            "changed": "" if text is None else changed_since(self.text, text),
            "title": self.proof.get("title", ""),
            "depths": [str(depth) for depth in self.depths],
            "findings": self.findings,
            "covered": self.proof.get("covered", []),
            "holds": self.proof.get("holds", []),
            "not_looked_at": self.proof.get("not_looked_at", []),
            "ways": {str(number): ways.to_dict() for number, ways in self.ways.items()},
        }


def _verdict(proof: dict[str, Any]) -> str:
    if found := len(proof["findings"]):
        return f"{counted(found, 'finding')}."
    judged = sum(row["verdict"] == "holds" for row in proof["holds"])
    if not judged:
        return "Nothing was asked for, so nothing was looked at."
    things, did = ("One thing has", "it did") if judged == 1 else (f"{judged} things have", "they all did")
    return f"Nothing found. {things} to hold; wherever the ball went, {did}."


@dataclass(slots=True)
class Proofs:
    """The proofs of all floors. `close` before the process ends, or leave it: the children go when it goes."""

    looks: OrderedDict[str, _Look] = field(default_factory=OrderedDict)
    children: list[Child] = field(default_factory=list)
    lock: RLock = field(default_factory=RLock)

    def start(
        self, floor_id: str, text: str, depths: Sequence[str] = (Depth.SETTLED,), told_apart: bool = False
    ) -> dict[str, Any]:
        """Look at every situation of the book in `text`, at these depths; what `look` says then.

        Asked again while the same is being looked at, it goes on; else it begins anew. Raises: NotationError for a
        depth there is not, BusyError where two other books are being looked at.
        """
        wanted = _depths(depths)
        with self.lock:
            known = self.looks.get(floor_id)
            if known is not None and known.state == "looking":
                if (known.text, known.depths, known.apart) == (text, wanted, told_apart):
                    return known.to_dict(text)
                self._kill(floor_id)
            child = self._child(floor_id)
            look = self.looks[floor_id] = _Look(text, wanted, told_apart)
            self.looks.move_to_end(floor_id)
            while len(self.looks) > MOST_KEPT:
                self.forget(next(iter(self.looks)))
            self._order(child, look)
            return look.to_dict(text)

    def look(self, floor_id: str, text: str | None = None) -> dict[str, Any]:
        """How far the proof of a floor is and what it found.

        `state` is "none", "looking", "done", "stopped" or "refused"; `said` says it in words. With the floor's `text`,
        `changed` says what was changed since in the book, empty where the pictures still hold.
        """
        with self.lock:
            look = self.looks.get(floor_id)
            if look is None:
                return _NOTHING | {"findings": [], "covered": [], "holds": [], "not_looked_at": [], "ways": {}}
            return look.to_dict(text)

    def ways(self, floor_id: str, number: int) -> dict[str, Any]:
        """The ways out of a finding as far as they are known; asked for the first time, they are looked for.

        Raises: BackcutError where there is no such finding, BusyError where two other books are being looked at.
        """
        with self.lock:
            look = self.looks.get(floor_id)
            if look is None or not 1 <= number <= len(look.findings):
                raise BackcutError(f"There is no finding {number} here. Look at the book first.")
            known = look.ways.get(number)
            if known is not None and known.state in ("looking", "done"):
                return known.to_dict()
            if look.state != "done":
                raise BackcutError("Ways out are looked for once the book has been looked at to the end.")
            child = self._child(floor_id)
            look.ways[number] = _Ways()
            if child.proved != digest(look.text):  # its process has gone, or looked at another book since
                self._order(child, look)
            self._ask(child, {"do": "ways", "number": number})
            look.version += 1
            return look.ways[number].to_dict()

    def stop(self, floor_id: str) -> dict[str, Any]:
        """Stop what is being looked at for a floor; what was found stays. What `look` says then."""
        with self.lock:
            if (child := self._of(floor_id)) is not None and child.busy:
                self._stop(child)
            return self.look(floor_id)

    def forget(self, floor_id: str) -> None:
        """The floor was closed: its proof ends at once, and nothing of it is kept."""
        with self.lock:
            self._kill(floor_id)
            self.looks.pop(floor_id, None)

    def close(self) -> None:
        """The server stops: all proofs end at once."""
        with self.lock:
            children, self.children = self.children, []
        for child in children:
            child.kill()

    # Processes.

    def _of(self, floor_id: str) -> Child | None:
        return next((child for child in self.children if child.floor_id == floor_id), None)

    def _child(self, floor_id: str) -> Child:
        """A process for this floor: its own, one that has nothing to do, or a new one. Raises: BusyError."""
        own = self._of(floor_id)
        free = own or next((child for child in self.children if not child.busy), None)
        if free is None and len(self.children) >= MOST_AT_ONCE:
            raise BusyError("Two books are being looked at already. Wait until one of them is done, or stop it.")
        if free is None:
            free = Child(self._hear, self._gone)
            self.children.append(free)
        if free.floor_id != floor_id:
            free.floor_id, free.proved = floor_id, ""
        return free

    def _order(self, child: Child, look: _Look) -> None:
        """Let the process prove the book of a look."""
        child.proved = digest(look.text)
        order = {"do": "prove", "text": look.text, "depths": [str(d) for d in look.depths], "apart": look.apart}
        self._ask(child, order)

    def _ask(self, child: Child, order: Message) -> None:
        child.ask(order)
        longest_s = LONGEST_S if order["do"] == "prove" else WAYS_S
        timer = Timer(longest_s, self._too_long, (child, child.asked, order))
        timer.daemon = True
        timer.start()

    def _too_long(self, child: Child, asked: int, order: Message) -> None:
        with self.lock:
            if child.busy and child.answered < asked:
                if (look := self.looks.get(child.floor_id)) is not None and order["do"] == "prove":
                    look.out_of_time = True
                self._stop(child)

    def _stop(self, child: Child) -> None:
        child.stop()
        timer = Timer(STOPS_S, self._still_there, (child, child.asked))
        timer.daemon = True
        timer.start()

    def _still_there(self, child: Child, asked: int) -> None:
        if child.busy and child.answered < asked:
            child.kill()

    def _kill(self, floor_id: str) -> None:
        """End the process of a floor if it is at work; one at rest waits for the next floor."""
        child = self._of(floor_id)
        if child is not None and child.busy:
            self.children.remove(child)
            child.floor_id = ""
            child.kill()
        elif child is not None:
            child.floor_id, child.proved = "", ""

    # What the processes tell.

    def _hear(self, child: Child, message: Message, order: Message | None) -> None:
        """Take in a message; `order` is what it answers, None where the work goes on."""
        with self.lock:
            look = self.looks.get(child.floor_id)
            if look is None:
                return
            look.version += 1
            match message["is"]:
                case "progress":
                    self._progress(look, message["where"], message["count"])
                case "so far" if look.state == "looking":
                    look.findings = message["findings"]
                case "proof" if look.state == "looking":
                    self._proved(look, message["proof"])
                case "ways":
                    look.ways[message["number"]] = _told(message)
                case "refused" if order is not None:
                    self._refused(look, order, message["said"])

    def _progress(self, look: _Look, where: str, count: int) -> None:
        if look.state == "looking":
            look.counts[where] = count
            return
        for ways in look.ways.values():
            if ways.state == "looking" and where == "ways out":
                ways.said = f"{counted(count, 'change')} tried so far. You can keep playing."

    def _proved(self, look: _Look, proof: dict[str, Any]) -> None:
        look.proof, look.state = proof, "stopped" if proof["stopped"] else "done"
        look.findings = proof["findings"]

    def _refused(self, look: _Look, order: Message, said: str) -> None:
        if order["do"] == "ways":
            look.ways[order["number"]] = _Ways("refused", said)
        elif look.state == "looking":
            # What the first depth has shown stays, whatever became of the others.
            look.state, look.said = ("stopped", "") if look.findings else ("refused", said)

    def _gone(self, child: Child) -> None:
        """A process has ended: by itself after a long rest, because it was ended, or because it fell over."""
        with self.lock:
            if child in self.children:
                self.children.remove(child)
            look = self.looks.get(child.floor_id)
            if look is None:
                return
            look.version += 1
            if look.state == "looking":
                look.state = "stopped"
            for ways in look.ways.values():
                if ways.state == "looking":
                    ways.state, ways.said = "stopped", "Stopped. Look for ways out again when you like."


def _told(message: Message) -> _Ways:
    if message["stopped"]:
        return _Ways("stopped", "Stopped. Look for ways out again when you like.")
    found = message["ways"]
    none = "No change of one sentence or one choice removes this without making something new."
    return _Ways("done", counted(len(found), "way out", "ways out") + "." if found else none, found)


def _depths(depths: Sequence[str]) -> tuple[Depth, ...]:
    unknown = [depth for depth in depths if depth not in list(Depth)]
    if unknown or not depths:
        said = f'"{unknown[0]}" is no depth.' if unknown else "No depth to look to."
        raise NotationError(f"{said} There are: {', '.join(Depth)}.")
    return tuple(depth for depth in Depth if depth in depths)


_NOTHING: dict[str, Any] = {
    "state": "none",
    "said": "Nobody has looked yet.",
    "version": 0,
    "digest": "",
    "changed": "",
    "title": "",
    "depths": [],
}
