"""How is the same done to many files on several processors, with the results in their order?

Only where the system can fork, so that nothing has to be sent to those who work, and only for as many
files as make up for it. Where it cannot be done, or breaks off, the rest is done one by one.
"""

from __future__ import annotations

import gc
import os
import signal
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import Any, TypeVar

Item = TypeVar("Item")
Made = TypeVar("Made")
ENOUGH = 120
MOST_AT_WORK = 4
_tasks: list[tuple[Callable[[Any], Any], Sequence[Any]]] = []


def spread(work: Callable[[Item], Made], items: Sequence[Item]) -> Iterator[Made]:
    """What `work` makes of each item, in their order; it must be possible to pickle what it makes."""
    workers = min(MOST_AT_WORK, processors())
    done = 0
    if len(items) >= ENOUGH and workers > 1 and sys.platform == "linux":
        for made in _side_by_side(work, items, workers):
            done += 1
            yield made
    for item in items[done:]:
        yield work(item)


def processors() -> int:
    """How many processors this program may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _side_by_side(
    work: Callable[[Item], Made], items: Sequence[Item], workers: int
) -> Iterator[Made]:
    """The results as far as they come: fewer than there are items where a worker is lost."""
    from concurrent.futures import ProcessPoolExecutor  # here for start-up time
    from concurrent.futures.process import BrokenProcessPool
    from multiprocessing import get_context

    size = max(1, min(25, len(items) // (4 * workers)))
    _tasks.append((work, items))
    try:
        with ProcessPoolExecutor(workers, get_context("fork"), _at_work) as pool:
            starts = range(0, len(items), size)
            waiting = [pool.submit(_some, start, start + size) for start in starts]
            try:
                for each in waiting:
                    yield from each.result()
            except BrokenProcessPool:
                return
            finally:
                pool.shutdown(wait=False, cancel_futures=True)
    except OSError:  # no more processes can be had
        return
    finally:
        _tasks.pop()


def _at_work() -> None:
    """An interruption is for the program that waits, not for those who work for it; they end before a
    search for cycles would be worth it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    gc.disable()


@contextmanager
def no_collecting() -> Iterator[None]:
    """Python's search for cycles put off while files are looked at: it would go through all that was read
    so far again and again, which costs a third, and finds next to none."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def _some(start: int, end: int) -> list[Any]:
    work, items = _tasks[-1]
    return [work(item) for item in items[start:end]]
