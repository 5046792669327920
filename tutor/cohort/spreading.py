"""Where are the files gathered: here, on every core, or on a cluster? The result is the same.

Each file is gathered by itself. A worker is sent the set as the text of its files, and from a cluster's
client the bytes of what was handed in, so that it needs no disk in common.
"""

from __future__ import annotations

import gc
import os
import signal
import tempfile
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from importlib import import_module
from itertools import islice
from multiprocessing import get_context
from pathlib import Path
from typing import Any

from tutor.cohort.course import Course, course_at
from tutor.cohort.facts import FileFault
from tutor.cohort.folder import Lying, read
from tutor.cohort.gathering import Gathered, Way, gather
from tutor.model import ProblemSet
from tutor.model.set_file import SET_FILE

AT_ONCE = 8
"""So many files go to a worker together."""
LOTS = 8
"""Of a small class fewer go together, so that each worker tells about so many times how far it is."""
WAITING = 3
"""So many such lots wait for each worker, so that a class need not fit into memory."""
FEWEST = 24
"""With fewer files than this other cores are not worth their start."""
Done = Callable[[int], None]


class NoCluster(Exception):  # noqa: N818 - a fact about the machine, not a slip
    """There is no cluster to work on; the text says why and what would help."""


@dataclass(frozen=True)
class Texts:
    """A set as the bytes of its files by name, the name of its folder, and the one file worked on."""

    folder: str
    files: tuple[tuple[str, bytes], ...]
    only: str = ""


@dataclass(frozen=True)
class Sent:
    """A file handed in on its way to a worker: with its bytes where the disk is not shared."""

    lying: Lying
    data: bytes | None = None


def texts_of(among: ProblemSet) -> Texts:
    """A set with everything a worker needs to read it. OSError where a file has gone."""
    assert among.path is not None
    path = among.path.absolute()
    folder = path.parent if path.suffix == ".toml" else path
    names = [problem.source for problem in among.problems if problem.source is not None]
    files = [Path(source) for source in names]
    if (folder / SET_FILE).is_file():
        files.append(folder / SET_FILE)
    only = path.name if path.suffix == ".toml" else ""
    return Texts(folder.name, tuple((file.name, file.read_bytes()) for file in files), only)


@lru_cache(maxsize=2)
def course_of(texts: Texts) -> Course:
    """The set again from its texts."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / (texts.folder or "set")
        folder.mkdir()
        for name, content in texts.files:
            (folder / name).write_bytes(content)
        return course_at(folder / texts.only if texts.only else folder)


def gather_lot(texts: Texts, lot: Sequence[Sent], way: Way) -> list[Gathered]:
    """What these files come to; what a worker does."""
    course = course_of(texts)
    with _no_collecting():
        return [gathered(course, sent, way) for sent in lot]


def gathered(course: Course, sent: Sent, way: Way) -> Gathered:
    """What one file comes to, read from the disk where its bytes were not sent."""
    data = read(sent.lying) if sent.data is None else sent.data
    if isinstance(data, FileFault):
        return Gathered(sent.lying.name, "", faults=(data,))
    return gather(course, sent.lying.name, data, way)


@contextmanager
def _no_collecting() -> Iterator[None]:
    """Python's search for cycles put off until a lot of files is read: after each file it would go
    through all that was found so far, costs a fifth, and finds next to none."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def here(course: Course, files: Sequence[Lying], way: Way, done: Done) -> Iterator[Gathered]:
    """One file after the other."""
    count = 0
    for lot in _lots(files, with_bytes=False):
        found = []
        with _no_collecting():
            for sent in lot:
                found.append(gathered(course, sent, way))
                count += 1
                done(count)
        yield from found


def cores() -> int:
    """How many processors this program may use."""
    affinity = getattr(os, "sched_getaffinity", None)
    return len(affinity(0)) if affinity is not None else os.cpu_count() or 1


def on_cores(
    course: Course, files: Sequence[Lying], way: Way, done: Done, workers: int
) -> Iterator[Gathered]:
    """On several processes of this machine; here where that is not worth it."""
    if workers < 2 or len(files) < FEWEST:
        yield from here(course, files, way, done)
        return
    texts = texts_of(course.among)
    size = max(1, min(AT_ONCE, len(files) // (LOTS * workers)))
    pool = ProcessPoolExecutor(workers, get_context("spawn"), _ends_when_interrupted)
    try:
        with _not_interrupted():
            waiting = {
                pool.submit(gather_lot, texts, lot, way)
                for lot in _lots(files, with_bytes=False, size=size)
            }
        count = 0
        for future in as_completed(waiting):
            found = future.result()
            count += len(found)
            yield from found
            done(count)
    finally:
        pool.shutdown(cancel_futures=True)


def _ends_when_interrupted() -> None:
    """A worker ends with the program that waits for it, and says nothing of it."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


@contextmanager
def _not_interrupted() -> Iterator[None]:
    """Processes that are begun in here are deaf to an interruption until they hear of it otherwise: while
    they are still loading they would tell of it at length."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    was = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, was)


def on_cluster(
    course: Course, files: Sequence[Lying], way: Way, done: Done, address: str
) -> Iterator[Gathered]:
    """On the workers of a Dask scheduler. NoCluster where there is none."""
    client, distributed = _client(address)
    with client:
        texts = texts_of(course.among)
        lots = _lots(files, with_bytes=True)
        most = WAITING * max(1, len(client.scheduler_info()["workers"]))

        def sent(lot: list[Sent]) -> Any:
            return client.submit(gather_lot, texts, lot, way, pure=False, retries=AT_ONCE)

        running = distributed.as_completed([sent(lot) for lot in islice(lots, most)])
        count = 0
        for future in running:
            found = future.result()
            future.release()
            running.update([sent(lot) for lot in islice(lots, 1)])
            count += len(found)
            yield from found
            done(count)


def _client(address: str) -> tuple[Any, Any]:
    try:
        distributed: Any = import_module("distributed")  # an extra, and slow to load
    except ImportError:
        raise NoCluster(
            "a scheduler needs one more package: pip install 'pinjoint[cluster]'"
        ) from None
    try:
        return distributed.Client(address, timeout=20), distributed
    except (OSError, ValueError, TimeoutError) as refused:
        reason = str(refused).splitlines()[0] if str(refused) else type(refused).__name__
        raise NoCluster(
            f"there is no scheduler at {address}: {reason}; give its address, like tcp://host:8786"
        ) from None


def _lots(files: Sequence[Lying], with_bytes: bool, size: int = AT_ONCE) -> Iterator[list[Sent]]:
    for start in range(0, len(files), size):
        lot = []
        for lying in files[start : start + size]:
            data = read(lying) if with_bytes else None
            lot.append(Sent(lying, None if isinstance(data, FileFault) else data))
        yield lot
