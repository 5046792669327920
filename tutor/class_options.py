"""What can be said on the command line of handing in, and of what a class gets wrong?"""

from __future__ import annotations

import argparse
from pathlib import Path

from tutor.arguments import CAUTION_LINES, parser_of, with_ways
from tutor.options import student_id

NAMINGS = ("id", "name", "number")

HAND_IN_LINES = """\
The file is plain text: all your lessons on the set's problems, with every line you typed, when, and
what was said of it. Look into it before you hand it in; do not change it, for a changed file shows. You
can hand in again after you have worked on: the last one counts.

exit status: 0 when the file is written, 2 when not.
"""

CLASS_LINES = (
    """\
Verdicts are recomputed: where this program said them and every check sum agrees, a sample is judged
again that nobody can know beforehand; else, and with --in-full, every answer. What is wrong with a file
is told, and the others count. Without an output option the report opens on the screen; where there is
no full terminal, it is printed.

exit status: 0 when the report was made, 1 when a problem of the set or the roster cannot be used, 2
when a path or the command line could not be used.

"""
    + CAUTION_LINES
)


def hand_in_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint hand-in`."""
    parser = parser_of(
        "hand-in",
        "Write everything you have done of a set into one file, for your instructor.",
        HAND_IN_LINES,
    )
    parser.add_argument(
        "path", metavar="PATH", nargs="?", type=Path, help="the set's folder, as you opened it"
    )
    parser.add_argument(
        "--to", metavar="FILE", type=Path, required=True, help="the file to write, like s1041.txt"
    )
    parser.add_argument(
        "--student", metavar="ID", type=student_id, help="your id, if you have not said it before"
    )
    parser.add_argument("--replace", action="store_true", help="write over a file of this name")
    return with_ways(parser)


def class_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint class`."""
    parser = parser_of(
        "class", "Say what a class did with a set, and what it gets wrong.", CLASS_LINES
    )
    add = parser.add_argument
    add("folder", metavar="DIR", type=Path, help="the folder with the files handed in")
    add(
        "--set",
        dest="set",
        metavar="PATH",
        type=Path,
        help="the set's folder, as you handed it out",
    )
    add(
        "--for",
        dest="roster",
        metavar="ROSTER.csv",
        type=Path,
        help="the students, under a line id,name",
    )
    add("--text", action="store_true", help="print the report")
    for name, what in OUTPUTS.items():
        add(f"--{name}", metavar="FILE", type=Path, help=what)
    add("--names", choices=NAMINGS, default="id", help="how students are called; id by default")
    add("--no-skills", action="store_true", help="do not trace which skills are mastered")
    add("--in-full", action="store_true", help="judge every answer anew")
    add(
        "--scheduler",
        metavar="ADDRESS",
        default="",
        help="share the work with a Dask cluster, like tcp://host:8786; needs pip install 'pinjoint[cluster]'",
    )
    add("--replace", action="store_true", help="write over files of the same names")
    return with_ways(parser)


OUTPUTS = {
    "html": "one HTML page with plots that needs nothing beside it",
    "csv": "a row for each student and problem; beside it FILE-students.csv, a row for each student",
    "json": "everything, for a program",
    "results": "results for a grade book, as OneRoster 1.2 has them",
    "statements": "each answer as an xAPI statement (IEEE 9274.1.1)",
}
"""What can be written, by its option."""
