"""What do `pinjoint paper`, `vary` and `new` write, and what do they say of it?"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from pathlib import Path

from tutor.model import ProblemError
from tutor.model.first import first_files
from tutor.model.source import file_name
from tutor.paper.hand_out import Files, Kind, Wanted, papers_for, problems_for, put
from tutor.paper.roster import read_roster
from tutor.paper.typst import NoTypst
from tutor.text import one_line

SHOWN = 5


def write_paper(options: argparse.Namespace) -> int:
    """Sheets, with keys and worked solutions where they are asked for; the exit status."""
    kinds: list[Kind] = ["sheet"]
    kinds += ["key"] if options.key else []
    kinds += ["worked"] if options.worked else []

    def make() -> Files:
        people = read_roster(options.roster) if options.roster is not None else ()
        return papers_for(
            options.path, Wanted(tuple(kinds), options.form, people, options.one_file)
        )

    return _write(make, options.to, options.replace)


def write_problems(options: argparse.Namespace) -> int:
    """Each student's problem files; the exit status."""
    return _write(
        lambda: problems_for(options.path, read_roster(options.roster)), options.to, options.replace
    )


def write_first(options: argparse.Namespace) -> int:
    """A problem file or a set to begin with; the exit status."""
    path: Path = options.path
    if path.suffix == ".toml":
        return _write(lambda: {Path(path.name): first_files()["problem.toml"]}, path.parent, False)
    return _write(
        lambda: {Path(name): content for name, content in first_files().items()}, path, False
    )


def _write(make: Callable[[], Files], to: Path, replace: bool) -> int:
    try:
        files = make()
        there = put(files, to, replace)
    except ProblemError as refused:
        print(refused, file=sys.stderr)
        return 1
    except NoTypst as missing:
        print(missing, file=sys.stderr)
        return 2
    except OSError as refused:
        reason = one_line(refused.strerror or str(refused))
        print(
            f"{file_name(to)}: it cannot be written: {reason}; name a folder that can",
            file=sys.stderr,
        )
        return 2
    if there:
        names = ", ".join(file_name(path) for path in there[:SHOWN])
        more = f" and {len(there) - SHOWN} more" if len(there) > SHOWN else ""
        print(
            f"{names}{more} already there, so nothing was written; name another folder, or add "
            "--replace",
            file=sys.stderr,
        )
        return 2
    for name in list(files)[:SHOWN]:
        print(file_name(to / name))
    if len(files) > SHOWN:
        print(f"and {len(files) - SHOWN} more files in {file_name(to)}")
    return 0
