"""What can be said on the command line? Each command's arguments, and what its help tells."""

from __future__ import annotations

import argparse
from pathlib import Path

from tutor.arguments import CAUTION_LINES, Parser, parser_of, with_ways
from tutor.guide_options import with_guide

LONGEST_ID = 60
SUMMARY = """\
Learn the method of joints: take a plane truss apart by hand, and have every line you type checked.
"""

FIRST_LINES = """\
what to type first:
  to practise               pinjoint
  to practise on a file     pinjoint my-truss.toml        (or a folder with problem files)
  to watch one first        pinjoint --begin watch my-truss.toml
  to see what you can do    pinjoint skills
  to set problems           pinjoint new my-set           then  pinjoint check my-set
                            pinjoint paper my-set --to sheets --key       (see docs/instructors.md)
  to hand in, and to see what a class gets wrong
                            pinjoint hand-in my-set --to s1041.txt
                            pinjoint class handed-in --set my-set
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
no harm: a roller that would have to pull, awkward numbers, no joint with two unknown forces, a force
that is nearly zero, a picture too cramped for 80x24, two problems that are one and the same, words
that do not follow numbers which vary. Where numbers vary, fifty students are tried.
The exit status is 0 only if every problem can be read, is statically determinate and is
stable; it is 1 otherwise.
"""

PAPER_LINES = (
    """\
A sheet has the picture, the story, the numbers and room to work; a key has the answers; a worked
solution has the free body, every line with its numbers, a picture of each joint, and the closing
check. With a roster each student gets a sheet of their own, and the key holds everybody's.

exit status: 0 when all is written, 1 when a problem or the roster cannot be used, 2 when a path or
the command line could not be used.

"""
    + CAUTION_LINES
)

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


def tutor_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint` itself."""
    parser = Parser(
        prog="pinjoint",
        usage="pinjoint [options] [PATH ...]\n       pinjoint check [PATH ...]\n"
        "       pinjoint paper [options] PATH --to DIR\n       pinjoint vary PATH --for ROSTER.csv --to DIR\n"
        "       pinjoint hand-in [PATH] --to FILE\n       pinjoint class DIR [options]\n"
        "       pinjoint new PATH\n       pinjoint homework [options] PATH [WORK]\n       pinjoint draw [options] [PATH]\n       pinjoint skills [--to FILE]\n       pinjoint schema",
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
    with_ways(parser)
    parser.add_argument(
        "--student",
        metavar="ID",
        type=student_id,
        help="your id, as your instructor has it: problems whose numbers vary have yours; it is kept, "
        "so say it once",
    )
    with_guide(parser)
    parser.add_argument("--version", action=ShowVersion, nargs=0, help="say the version and leave")
    return parser


def student_id(text: str) -> str:
    """A student's id: a short printable text."""
    if not text.strip() or len(text) > LONGEST_ID or not text.isprintable():
        raise argparse.ArgumentTypeError(f"an id is a short text, at most {LONGEST_ID} characters")
    return text.strip()


def check_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint check`."""
    parser = parser_of(
        "check",
        "Say of problem files whether they can be used, and what is wrong where.",
        CHECK_LINES,
    )
    parser.add_argument(
        "paths",
        metavar="PATH",
        nargs="*",
        type=Path,
        help="a problem file, or a folder with problem files or sets in it; without one, the "
        "problems that come along",
    )
    parser.add_argument(
        "--json", action="store_true", help="the same as one JSON value, for a program to read"
    )
    return parser


def paper_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint paper`."""
    parser = parser_of(
        "paper", "Write problems as sheets to print, with keys and worked solutions.", PAPER_LINES
    )
    with_hand_out(parser, needed=False)
    parser.add_argument("--key", action="store_true", help="the answers too, in tables")
    parser.add_argument("--worked", action="store_true", help="worked solutions too")
    parser.add_argument(
        "--as",
        dest="form",
        choices=("md", "html", "pdf"),
        default="html",
        help="Markdown with SVG pictures, one HTML file that needs nothing else (as it is by "
        "default), or PDF, for which the extra is needed: pip install 'pinjoint[paper]'",
    )
    parser.add_argument(
        "--one-file", action="store_true", help="the sheets of all students in one file, to print"
    )
    return parser


def vary_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint vary`."""
    parser = parser_of(
        "vary",
        "Write each student's problem files, with the numbers that [vary] gives them.",
        "Each student of the roster gets a folder named by their id. " + CAUTION_LINES,
    )
    return with_hand_out(parser, needed=True)


def with_hand_out(parser: argparse.ArgumentParser, needed: bool) -> argparse.ArgumentParser:
    """The parser with what is handed out, for whom, and where it is written."""
    parser.add_argument("path", metavar="PATH", type=Path, help="a problem file, or a set's folder")
    parser.add_argument(
        "--for",
        dest="roster",
        metavar="ROSTER.csv",
        type=Path,
        required=needed,
        help="the students, under a line id,name; each gets their own numbers",
    )
    parser.add_argument(
        "--to", metavar="DIR", type=Path, required=True, help="the folder to write into"
    )
    parser.add_argument("--replace", action="store_true", help="write over files of the same names")
    return parser


def new_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint new`."""
    parser = parser_of(
        "new",
        "Write a problem file, or a folder with a set, to begin with: sound as it is, "
        "and with a remark on everything that it may say.",
    )
    parser.add_argument(
        "path", metavar="PATH", type=Path, help="a name ending in .toml, or that of a new folder"
    )
    return parser


def homework_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint homework`."""
    parser = parser_of(
        "homework",
        "Say of work done on paper what is right, and where it goes wrong first.",
        HOMEWORK_LINES,
    )
    parser.add_argument("path", metavar="PATH", type=Path, help="the problem file with the truss")
    parser.add_argument(
        "work", metavar="WORK", nargs="?", help="a text file of the work, or - for standard input"
    )
    return with_ways(parser)


def draw_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint draw`."""
    parser = parser_of(
        "draw",
        "Draw up a truss of your own: joints, members, supports and loads, each "
        "checked at once; then save it, go through it, or check a homework on it.",
    )
    parser.add_argument(
        "path", metavar="PATH", nargs="?", type=Path, help="a problem file to go on drawing on"
    )
    return with_ways(parser)


def schema_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint schema`: none."""
    return parser_of(
        "schema",
        "Print the JSON Schema (draft 4) of problem files. Files that pinjoint writes "
        "name it ./problem.schema.json in their first line, which an editor looks for beside them.",
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
