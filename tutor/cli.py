"""What does the command line ask for? It opens the tutor, the plain mode, or checks files."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from tutor.shipped import shipped_problems

if TYPE_CHECKING:
    from tutor.model import ProblemSet

GLYPHS = ("braille", "blocks", "ascii", "words")

SUMMARY = """\
Learn the method of joints: take a plane truss apart by hand, and have every line you type checked.
"""

FIRST_LINES = """\
what to type first:
  to practise               pinjoint
  to practise on a file     pinjoint my-truss.toml        (or a folder with problem files)
  to set problems           pinjoint check my-set/        then  pinjoint my-set/
  to check your homework    pinjoint draw                 draws its truss, then checks your work
                            pinjoint homework its-truss.toml        (see docs/homework.md)
  with a screen reader      pinjoint --plain

pinjoint check PATH... reads each problem file, or every one in a folder, and says of each defect
where it is, what is wrong and what would be right; see pinjoint check --help. pinjoint homework
PATH WORK says of work done on paper what is right; see pinjoint homework --help. pinjoint schema
prints the schema by which an editor helps to write problem files.

exit status: 0 when all went well, 1 when a check found a problem that cannot be used or work that
is not all right, 2 when the command line or a path given could not be used, 128 and the signal's
number when stopped by one.

pinjoint teaches statics. It is not for the design of real structures: that is for the local codes
and a licensed engineer.
"""

CHECK_LINES = """\
Each defect is one line: file:line: what is wrong; what would be right. Warnings are told and do
no harm. The exit status is 0 only if every problem can be read, is statically determinate and is
stable; it is 1 otherwise.
"""

HOMEWORK_LINES = """\
The work is a text file of what stands on the paper, in any order and as much as there is of it:
values (AB = 7.5 C, A_x = 3 left), rows of a table (AB,7.5,C), lines with their heading
(ΣFx at C: 3/5 F_AC - 12 = 0), how arrows were drawn (draw A_x left, push AB) and the order of joints
(order C D E). A - in the place of the file reads it from standard input.

With a work file the report is printed, in Markdown: what is right, where it goes wrong first and
with what kind of mistake, which joints close; never a right value. What could not be read is told
on standard error as file:line: why. Without one, the same is typed line by line, with check, hint,
undo and save.

exit status: 0 when all that the work holds is right, 1 when something is wrong or could not be
read, 2 when a path could not be used.
"""

SWITCHED = (
    "This is not a full terminal, so the lesson goes line by line, as with --plain. "
    "In a full terminal pinjoint opens with pictures."
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Do what the arguments ask for (`sys.argv` by default) and return the exit status."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    safe_streams()
    try:
        if given[:1] == ["check"]:
            return check_files(check_parser().parse_args(given[1:]).paths)
        if given[:1] == ["schema"]:
            return print_schema(schema_parser().parse_args(given[1:]))
        if given[:1] == ["--plain"] and given[1:2] in (["homework"], ["draw"]):
            given = [given[1], "--plain", *given[2:]]
        if given[:1] == ["homework"]:
            return homework(homework_parser().parse_args(given[1:]))
        if given[:1] == ["draw"]:
            return draw(draw_parser().parse_args(given[1:]))
        return open_tutor(tutor_parser().parse_args(given))
    except KeyboardInterrupt:
        return 130


def tutor_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint` itself."""
    parser = argparse.ArgumentParser(
        prog="pinjoint",
        usage="pinjoint [options] [PATH ...]\n       pinjoint check [PATH ...]\n"
        "       pinjoint homework [options] PATH [WORK]\n       pinjoint draw [options] [PATH]\n       pinjoint schema",
        description=SUMMARY,
        epilog=FIRST_LINES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument(
        "paths",
        metavar="PATH",
        nargs="*",
        type=Path,
        help="a problem file or a folder of them; without one, the problems that come along",
    )
    parser.add_argument(
        "--plain",
        action="store_true",
        help="the same lesson line by line on standard input and output",
    )
    parser.add_argument(
        "--keep", metavar="DIR", type=Path, help="keep lessons in this folder, not in the usual one"
    )
    with_looks(parser)
    parser.add_argument("--version", action=ShowVersion, nargs=0, help="say the version and leave")
    return parser


def check_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint check`."""
    parser = argparse.ArgumentParser(
        prog="pinjoint check",
        description="Say of problem files whether they can be used, and what is wrong where.",
        epilog=CHECK_LINES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument(
        "paths",
        metavar="PATH",
        nargs="*",
        type=Path,
        help="a problem file, or a folder with problem files or sets in it; without one, the "
        "problems that come along",
    )
    return parser


def homework_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint homework`."""
    parser = argparse.ArgumentParser(
        prog="pinjoint homework",
        description="Say of work done on paper what is right, and where it goes wrong first.",
        epilog=HOMEWORK_LINES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("path", metavar="PATH", type=Path, help="the problem file with the truss")
    parser.add_argument(
        "work", metavar="WORK", nargs="?", help="a text file of the work, or - for standard input"
    )
    return with_ways(parser)


def draw_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint draw`."""
    parser = argparse.ArgumentParser(
        prog="pinjoint draw",
        description="Draw up a truss of your own: joints, members, supports and loads, each "
        "checked at once; then save it, go through it, or check a homework on it.",
        allow_abbrev=False,
    )
    parser.add_argument(
        "path", metavar="PATH", nargs="?", type=Path, help="a problem file to go on drawing on"
    )
    return with_ways(parser)


def with_ways(parser: argparse.ArgumentParser) -> argparse.ArgumentParser:
    """The parser with the options on how one types and where it is kept."""
    parser.add_argument("--plain", action="store_true", help="line by line")
    parser.add_argument(
        "--keep", metavar="DIR", type=Path, help="keep what is entered in this folder"
    )
    return with_looks(parser)


def with_looks(parser: argparse.ArgumentParser) -> argparse.ArgumentParser:
    """The parser with the options on the screen."""
    parser.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")
    parser.add_argument(
        "--glyphs", choices=GLYPHS, help="what figures are drawn with, instead of your last choice"
    )
    return parser


def schema_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint schema`: none."""
    return argparse.ArgumentParser(
        prog="pinjoint schema",
        description="Print the JSON Schema (draft 4) of problem files. Files that pinjoint writes "
        "name it ./problem.schema.json in their first line, which an editor looks for beside them.",
        allow_abbrev=False,
    )


def print_schema(options: argparse.Namespace) -> int:
    """Print the schema of problem files."""
    from tutor.model.schema import shipped_text  # here for start-up time

    print(shipped_text(), end="")
    return 0


def homework(options: argparse.Namespace) -> int:
    """Check a work file, or take the work line by line."""
    if not is_there(options.path):
        print(told_missing(options.path), file=sys.stderr)
        return 2
    if options.work is not None:
        from tutor.handed_in import check_work  # here for start-up time

        return check_work(options.path, options.work)
    return open_deed([options.path], options, "homework")


def draw(options: argparse.Namespace) -> int:
    """Draw up one's own truss, from the beginning or from a file."""
    if options.path is not None and not is_there(options.path):
        print(told_missing(options.path), file=sys.stderr)
        return 2
    return open_deed([shipped_problems()], options, "draw", options.path)


def open_deed(
    paths: Sequence[Path],
    options: argparse.Namespace,
    deed: Literal["homework", "draw"],
    drawing: Path | None = None,
) -> int:
    """Open a homework or a drawing on the screen, or line by line."""
    if options.plain or not full_terminal():
        return open_plain(paths, options.keep, first=deed, drawing=drawing)
    from tutor.screens.app import run  # here so that nothing else loads Textual

    deed_there = "own" if deed == "draw" else deed
    return run(
        paths,
        keep=options.keep,
        mouse=not options.no_mouse,
        glyphs=options.glyphs,
        deed=deed_there,
        drawing=drawing,
    )


def check_files(paths: Sequence[Path]) -> int:
    """Print each defect of the problems at `paths` and a closing count; 0 if all can be used."""
    from tutor.check import check  # here for start-up time

    found = [check(path) for path in paths or (shipped_problems(),)]
    for defect in (defect for each in found for defect in each.defects):
        print(defect)
    problems = sum(each.problems for each in found)
    sound = all(each.sound for each in found)
    files = "1 problem" if problems == 1 else f"{problems} problems"
    print(
        f"{files} checked: "
        + ("all can be used." if sound else "what is named above has to be put right.")
    )
    return 0 if sound else 1


def open_tutor(options: argparse.Namespace) -> int:
    """Open the tutor on the screen, or line by line where that is asked for or all there is."""
    paths = options.paths or [shipped_problems()]
    missing = [path for path in paths if not is_there(path)]
    if missing:
        print(*(told_missing(path) for path in missing), sep="\n", file=sys.stderr)
        return 2
    if options.plain or not full_terminal():
        if not options.plain:
            print(SWITCHED)
        return open_plain(paths, options.keep)
    from tutor.screens.app import run  # here so that nothing else loads Textual

    return run(paths, keep=options.keep, mouse=not options.no_mouse, glyphs=options.glyphs)


def open_plain(
    paths: Sequence[Path],
    keep: Path | None,
    first: Literal["lesson", "homework", "draw"] = "lesson",
    drawing: Path | None = None,
) -> int:
    """Begin line by line on the problems at `paths`: lessons, a homework, or a drawing."""
    from tutor.plain import run  # here for start-up time

    sets = sets_at(paths)
    return 2 if sets is None else run(sets, keep=keep, first=first, drawing=drawing)


def is_there(path: Path) -> bool:
    """Whether there is a file or folder of this name."""
    try:
        return path.exists()
    except (OSError, ValueError):
        return False


def told_missing(path: Path) -> str:
    """What is said of a path at which there is nothing."""
    from tutor.model.source import file_name  # here for start-up time

    return f"{file_name(path)}: there is no such file or folder; check its name and where you are"


def sets_at(paths: Sequence[Path]) -> tuple[ProblemSet, ...] | None:
    """The problem sets at these paths; None, after saying why, where one holds nothing to read."""
    from tutor.model import ProblemError, load_sets  # here for start-up time

    found: list[ProblemSet] = []
    refused = False
    for path in paths:
        try:
            found += load_sets(path)
        except ProblemError as error:
            print(error, file=sys.stderr)
            refused = True
    return None if refused else tuple(found)


def full_terminal() -> bool:
    """Whether input and output are a terminal that can draw a screen."""
    streams = sys.stdin, sys.stdout, sys.__stderr__  # the screen is written to the last
    return os.environ.get("TERM", "dumb") not in ("", "dumb", "unknown") and all(
        stream is not None and stream.isatty() for stream in streams
    )


class ShowVersion(argparse.Action):
    """Looks the version up only when it is asked for: the first frame must not wait for that."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        print(f"pinjoint {own_version()}")
        parser.exit()


def own_version() -> str:
    """The version of the installed distribution."""
    from importlib.metadata import PackageNotFoundError, version  # here for start-up time

    try:
        return version("pinjoint")
    except PackageNotFoundError:
        return "(not installed)"


def safe_streams() -> None:
    """What cannot be written in the terminal's encoding is written as a question mark."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
