"""How long until something is on the screen, against an empty Textual app?

Run with: python -m pytest tests/benchmarks -m benchmark --benchmark-enable -s

Each is a program of its own on a terminal of its own, timed from before it is started to the moment
when Textual says that its first frame is out.
"""

from __future__ import annotations

import asyncio
import os
import statistics
import struct
import subprocess
import sys
import threading
import time
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pairs import Pair
from strategies import make_truss

from tutor.model import load_sets, write_problem
from tutor.records import Keep, Settings, write_settings
from tutor.records.listed import FILE_NAME
from tutor.screens.app import TutorApp
from tutor.session import open_session
from tutor.shipped import shipped_problems

pytestmark = [
    pytest.mark.benchmark,
    pytest.mark.skipif(os.name == "nt", reason="the system has no pseudo-terminals"),
]
SETTINGS = Settings(glyphs="braille")
ROUNDS = 15
ROUNDS_OF_LISTS = 5
TUTOR_TO_EMPTY = 1.25
STAMP = """
import sys, time

def on_ready(app):
    with open(sys.argv[1], "w") as file:
        file.write(str(time.monotonic()))
    app.exit()
"""
EMPTY = f"""{STAMP}
from textual.app import App

class Empty(App):
    pass

Empty.on_ready = on_ready
Empty().run()
"""
STAMPED = """
from tutor import cli

given_in = cli.given_in

def stamped(options):  # asked for once the screens are loaded, as they are for everybody
    from tutor.screens.app import TutorApp

    {patch}
    return given_in(options)

cli.given_in = stamped
cli.main(["--keep", sys.argv[2], *sys.argv[3:]])
"""
TUTOR = STAMP + STAMPED.format(patch="TutorApp.on_ready = on_ready")
LIST = STAMP + STAMPED.format(
    patch="TutorApp.settle = lambda app, *_: app.call_after_refresh(on_ready, app)"
)
LARGE_TO_SMALL = 1.5
FILES = 1000
KEPT = 1000
FULL_TO_NONE = 1.25


def first_frame(program: str, place: Path, *more: str) -> float:
    """Seconds from the start of a program to its first frame."""
    import fcntl
    import pty
    import termios

    stamp = place / "stamp"
    stamp.unlink(missing_ok=True)
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    listener = threading.Thread(target=drain, args=(ours,), daemon=True)
    listener.start()
    start = time.monotonic()
    subprocess.run(
        [sys.executable, "-c", program, str(stamp), str(place / "kept"), *more],
        stdin=theirs,
        stdout=theirs,
        stderr=theirs,
        env={**os.environ, "TERM": "xterm-256color", "COLORTERM": "truecolor"},
        timeout=60,
        check=True,
    )
    os.close(theirs)
    listener.join(5)
    os.close(ours)
    return float(stamp.read_text()) - start


def drain(descriptor: int) -> None:
    """Read what a program writes to its terminal, so that it never waits for us."""
    try:
        while os.read(descriptor, 65536):
            pass
    except OSError:
        return


def test_the_first_frame_comes_nearly_as_soon_as_that_of_an_empty_app(
    benchmark: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).parents[2]))
    times: dict[str, list[float]] = {TUTOR: [], EMPTY: []}
    for n in range(ROUNDS + 1):
        for program, spent in times.items():
            seconds = first_frame(program, tmp_path)
            if n:  # the first round only warms the disk
                spent.append(seconds)
    pair = Pair(statistics.median(times[TUTOR]), statistics.median(times[EMPTY]))
    benchmark.pedantic(lambda: first_frame(TUTOR, tmp_path), rounds=3)
    assert pair.told(benchmark) <= TUTOR_TO_EMPTY


def test_the_list_of_a_thousand_problems_comes_nearly_as_soon_as_that_of_one(
    benchmark: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).parents[2]))
    large, small = tmp_path / "large", tmp_path / "small"
    large.mkdir()
    small.mkdir()
    for seed in range(FILES):
        problem = replace(make_truss(seed, 3 + seed % 8), title=f"Truss {seed}")
        (large / f"{seed:04}.toml").write_text(write_problem(problem), "utf-8")
    for seed in range(2):
        (small / f"{seed:04}.toml").write_bytes((large / f"{seed:04}.toml").read_bytes())
    times: dict[Path, list[float]] = {large: [], small: []}
    for n in range(ROUNDS_OF_LISTS + 1):
        for folder, spent in times.items():
            seconds = first_frame(LIST, tmp_path, str(folder))
            if n:
                spent.append(seconds)
    pair = Pair(statistics.median(times[large]), statistics.median(times[small]))
    benchmark.pedantic(lambda: first_frame(LIST, tmp_path, str(large)), rounds=1)
    assert pair.told(benchmark) <= LARGE_TO_SMALL


def test_the_list_with_a_thousand_kept_lessons_comes_nearly_as_soon_as_an_empty_app(
    benchmark: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All shipped problems, watched to their ends, each lesson kept many times over; the first frame
    against that of an empty app, and the list against the list without a lesson."""
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).parents[2]))
    full, none = tmp_path / "full", tmp_path / "none"
    keep_many(Keep(full / "kept"))
    none.mkdir()
    see(full / "kept", shipped_problems())
    see(none / "kept", shipped_problems())
    shipped = str(shipped_problems())
    times: dict[tuple[str, Path], list[float]] = {
        key: [] for key in ((LIST, full), (LIST, none), (TUTOR, full), (TUTOR, none), (EMPTY, none))
    }
    for n in range(ROUNDS + 1):
        for (program, place), spent in times.items():
            if program == LIST and n > ROUNDS_OF_LISTS:
                continue
            seconds = first_frame(program, place, shipped)
            if n:
                spent.append(seconds)
    list_full, list_none, first, with_none, empty = map(statistics.median, times.values())
    print(f"\nthe list once its files are read, against an empty app: {list_full / empty:.3f}")
    print(f"as it is remembered, with nothing kept: {with_none / empty:.3f}")
    benchmark.pedantic(lambda: first_frame(LIST, full, shipped), rounds=1)
    assert Pair(first, empty).told(benchmark) <= TUTOR_TO_EMPTY
    assert Pair(list_full, list_none).told(benchmark) <= FULL_TO_NONE


def see(keep: Path, problems: Path) -> None:
    """Open the list once, so that it is remembered, as by anybody who opens it for a second time."""

    async def once() -> None:
        app = TutorApp((problems,), keep=Keep(keep), settings=SETTINGS)
        async with app.run_test(size=(80, 24)) as pilot:
            while not (keep / FILE_NAME).exists():
                await pilot.pause(0.1)

    write_settings(keep, SETTINGS)
    asyncio.run(once())


def keep_many(keep: Keep) -> None:
    """A thousand kept lessons."""
    for problem in (problem for each in load_sets(shipped_problems()) for problem in each.problems):
        session = open_session(problem, keep)
        while session.do("show").accepted:
            pass
        session.close()
    walks = sorted(keep.folder.glob("*.jsonl"))
    for n in range(KEPT - len(walks)):
        walk = walks[n % len(walks)]
        (keep.folder / f"{walk.stem}-{n}.jsonl").write_bytes(walk.read_bytes())
