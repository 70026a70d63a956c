"""The process in which books are proved, so that the floor never waits: one line of JSON a message, both ways.

Read: `{"do": "prove", "text": ..., "depths": [...], "apart": false}`, `{"do": "ways", "number": 2}`, `{"do": "stop"}`.
Told: lines with `is`: "progress", "so far", "proof", "ways", "refused". It ends when nobody talks to it any more.
"""

from __future__ import annotations

import _thread
import gc
import json
import os
import queue
import signal
import sys
import threading
import time
import traceback
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from types import FrameType
from typing import Any, TextIO

#: Seconds without work after which the process goes home, and between two words of progress (own design).
IDLE_S = 600.0
TELLS_S = 0.15
#: A book's situations at one depth looked at for the page, and the memory for it: a folded situation takes about 7 kB,
#: measured on the school team at "overlapped" (36,294 in 0.27 GB), so that this many come to 1.4 GB.
MOST_SITUATIONS = 200_000
MOST_MEMORY_BYTES = 3 << 30

Tell = Callable[[dict[str, Any]], None]


class Worker:
    """Does one piece of work after the other; `tell` sends a message to whoever started the process."""

    def __init__(self, tell: Tell) -> None:
        self.tell = tell
        self.orders: queue.Queue[dict[str, Any] | None] = queue.Queue()
        self.stopping = False
        self.working = False
        self.told_s = 0.0
        self.ways: Any = None

    def listen(self, lines: TextIO) -> None:
        """Take orders until nobody gives any more; a word to stop interrupts the work in hand."""
        for line in lines:
            order = json.loads(line)
            if order["do"] == "stop":
                self.stopping = True
                _thread.interrupt_main()
            else:
                self.orders.put(order)
        os._exit(0)  # whoever started this is gone, and so is the need for any answer

    def interrupted(self, number: int, frame: FrameType | None) -> None:
        """SIGINT stops the work in hand, and nothing else."""
        if self.working:
            raise KeyboardInterrupt

    def work(self) -> None:
        """One order after another, until none has come for a while."""
        while True:
            try:
                order = self.orders.get(timeout=IDLE_S)
            except queue.Empty:
                return
            if order is not None:
                self.stopping = False
                self._do(order)

    def _do(self, order: dict[str, Any]) -> None:
        from backcut.errors import BackcutError

        try:
            self._prove(order) if order["do"] == "prove" else self._ways(order["number"])
        except BackcutError as error:
            self._refuse(str(error))
        except KeyboardInterrupt:
            self._refuse("Stopped before anything was found.")
        except MemoryError:
            self.ways = None
            self._refuse("There are more situations than this machine can hold. Look less far, or at a smaller book.")
        except Exception:  # the floor has to hear of it, whatever it is
            traceback.print_exc()
            self._refuse("This book could not be looked at: something went wrong here, not in the book.")
        finally:
            self.working = False

    def _refuse(self, said: str) -> None:
        self.working = False
        self.tell({"is": "refused", "said": said})

    @contextmanager
    def _interruptible(self) -> Iterator[None]:
        """Work that a word to stop interrupts; the collector of rings rests, because a proof makes none."""
        self.working = True
        if self.stopping:
            raise KeyboardInterrupt
        gc.disable()
        try:
            yield
        finally:
            self.working = False
            gc.enable()

    def _progress(self, where: str, count: int) -> None:
        now_s = time.monotonic()
        if now_s - self.told_s >= TELLS_S:
            self.told_s = now_s
            self.tell({"is": "progress", "where": where, "count": count})

    def _prove(self, order: dict[str, Any]) -> None:
        from backcut.prove.depth import Depth
        from backcut.prove.own import asked_of
        from backcut.prove.proof import Proof, prove
        from backcut.prove.property import Sometimes
        from backcut.prove.suggest import Ways
        from backcut.web.proof_view import findings_data, proof_data

        self.ways = None
        book = _ready(order["text"])
        asked = asked_of(book)
        depths = [depth for depth in Depth if depth in order["depths"]]

        def look(at: Sequence[Depth], wanted: Sequence[Any]) -> Proof:
            with self._interruptible():
                return prove(
                    book,
                    at,
                    wanted,
                    named=asked.named,
                    sided=asked.sided,
                    most=MOST_SITUATIONS,
                    progress=self._progress,
                )

        if len(depths) > 1:  # what the first depth shows is there at once, while the deeper ones are looked at
            near = look(depths[:1], [one for one in asked.properties if not isinstance(one[0], Sometimes)])
            if near.findings and not near.stopped:
                self.tell({"is": "so far", "findings": findings_data(near)})
            proof = near if near.stopped else look(depths, asked.properties)
            if proof.stopped and len(proof.findings) <= len(near.findings):  # what was found stays
                proof, near.stopped = near, True
                near.asked, near.depths = asked.properties, tuple(depths)
                near.not_judged = [prop for prop, _ in asked.properties if isinstance(prop, Sometimes)]
        else:
            proof = look(depths, asked.properties)
        self.ways = None if proof.stopped else Ways(order["text"], proof)
        self.tell({"is": "proof", "proof": proof_data(proof, order["apart"])})

    def _ways(self, number: int) -> None:
        from backcut.errors import BackcutError
        from backcut.web.proof_view import way_data

        if self.ways is None:
            raise BackcutError("Ways out are looked for once a book has been looked at to the end. Look again first.")
        self.ways.progress = lambda count: self._progress("ways out", count)
        found, stopped = [], False
        try:
            with self._interruptible():
                found = self.ways.out_of(self.ways.proof.findings[number - 1])
        except KeyboardInterrupt:
            stopped = True
        self.tell({"is": "ways", "number": number, "ways": [way_data(way) for way in found], "stopped": stopped})


def _ready(text: str) -> Any:
    """The book in a text. Raises: BackcutError with its first problem, where it has one."""
    from backcut.errors import BackcutError
    from backcut.motion.squads import SQUADS
    from backcut.offence.reading import book_from_text
    from backcut.prove.own import problems_of

    book, problems = book_from_text(text, SQUADS)
    problems = (*problems, *(problems_of(book) if book.proofs else ()))
    if problems:
        first = min(problems, key=lambda problem: (problem.line, problem.column))
        more = f" {len(problems) - 1} more to put right after it." if len(problems) > 1 else ""
        raise BackcutError(f"Put line {first.line} of the book right first: {first.wrong} {first.right}{more}")
    return book


def _bound_memory() -> None:
    """Leave the machine its memory. Where the system has no such bound, the count of situations alone is one."""
    with suppress(ImportError, OSError, ValueError):
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY_BYTES, MOST_MEMORY_BYTES))


def main() -> None:
    """Answer orders until there are none."""
    said = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(2, 1)  # what anything else prints is no message
    lock = threading.Lock()

    def tell(message: dict[str, Any]) -> None:
        with lock:
            said.write(json.dumps(message, ensure_ascii=False) + "\n")
            said.flush()

    _bound_memory()
    with suppress(AttributeError, OSError):
        os.nice(5)  # the floor goes first
    worker = Worker(tell)
    signal.signal(signal.SIGINT, worker.interrupted)
    threading.Thread(target=worker.listen, args=(sys.stdin,), daemon=True).start()
    with suppress(BrokenPipeError):
        worker.work()
    os._exit(0)


if __name__ == "__main__":
    main()
