"""A process that proves, seen from the outside: orders go in, messages come out, and it can be ended."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections import deque
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from threading import Lock, Thread
from typing import Any

import backcut

Message = dict[str, Any]

#: The messages that end a piece of work.
ANSWERS = frozenset({"proof", "ways", "refused"})


class Child:
    """One process. `hear` is told every message with the order it answers (None while work goes on), `gone` its end.

    `floor_id` is the floor it works for, `proved` the digest of the text it proved last.
    """

    def __init__(self, hear: Callable[[Child, Message, Message | None], None], gone: Callable[[Child], None]) -> None:
        self.floor_id = ""
        self.proved = ""
        self.asked = 0
        self.answered = 0
        self._orders: deque[Message] = deque()
        self._writing = Lock()
        self._process = subprocess.Popen(
            [sys.executable, "-m", "backcut.web.proof_worker"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            encoding="utf-8",
            env=_surroundings(),
            start_new_session=True,  # Ctrl-C in the terminal is the server's to answer
        )
        Thread(target=self._read, args=(hear, gone), daemon=True).start()

    @property
    def pid(self) -> int:
        """The number the system knows the process by."""
        return self._process.pid

    @property
    def busy(self) -> bool:
        """Whether it has been asked for something it has not answered yet."""
        return self.answered < self.asked

    def ask(self, order: Message) -> None:
        """Give it work; it does one thing after the other."""
        self.asked += 1
        self._orders.append(order)
        self._write(order)

    def stop(self) -> None:
        """Let it stop what it is doing, and answer with what it has."""
        self._write({"do": "stop"})

    def kill(self) -> None:
        """End it now. `gone` is told."""
        with suppress(OSError):
            self._process.kill()

    def wait(self, longest_s: float) -> bool:
        """Whether it has ended within so many seconds."""
        with suppress(subprocess.TimeoutExpired):
            self._process.wait(longest_s)
        return self._process.poll() is not None

    def _write(self, message: Message) -> None:
        assert self._process.stdin is not None
        with self._writing, suppress(OSError, ValueError):  # it has ended: `gone` says so
            self._process.stdin.write(json.dumps(message, ensure_ascii=False) + "\n")
            self._process.stdin.flush()

    def _read(self, hear: Callable[[Child, Message, Message | None], None], gone: Callable[[Child], None]) -> None:
        assert self._process.stdout is not None
        for line in self._process.stdout:
            message = json.loads(line)
            order = None
            if message["is"] in ANSWERS:
                order = self._orders.popleft()
                self.answered += 1
            hear(self, message, order)
        with self._writing, suppress(OSError):
            assert self._process.stdin is not None
            self._process.stdin.close()
        self._process.stdout.close()
        self._process.wait()
        self.answered = self.asked
        gone(self)


def _surroundings() -> dict[str, str]:
    """The environment: this very package, and one thread for arrays, so that the floor keeps a core of its own."""
    here = str(Path(backcut.__file__).parents[1])
    known = os.environ.get("PYTHONPATH")
    return os.environ | {
        "PYTHONPATH": os.pathsep.join([here, known] if known else [here]),
        "OPENBLAS_NUM_THREADS": "1",
        "OMP_NUM_THREADS": "1",
    }
