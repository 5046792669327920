"""What does the command line ask for? It opens the tutor, the plain mode, or checks files."""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Callable, Mapping, Sequence
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from tutor.arguments import command_in
from tutor.class_options import class_parser, hand_in_parser
from tutor.guide_options import skills_parser
from tutor.options import (
    check_parser,
    draw_parser,
    homework_parser,
    new_parser,
    paper_parser,
    schema_parser,
    tutor_parser,
    vary_parser,
)
from tutor.shipped import shipped_problems
from tutor.streams import full_terminal, safe_streams

if TYPE_CHECKING:
    from tutor.model import ProblemSet
    from tutor.records.settings import ThisTime

SWITCHED = (
    "This is not a full terminal, so the lesson goes line by line, as with --plain. "
    "In a full terminal pinjoint opens with pictures."
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Do what the arguments ask for (`sys.argv` by default) and return the exit status."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    safe_streams()
    try:
        asked = command_in(given, PARSERS)
        if asked is None:
            return open_tutor(tutor_parser().parse_args(given))
        parser, run = COMMANDS[asked.command]
        return run(parser().parse_args(asked.words, asked.ways))
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        return nobody_reads()


def nobody_reads() -> int:
    """The status of a program whose output was cut off, as by `head`; nothing more is written."""
    sys.stdout = open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115 - until the program ends
    return 141


def paper(options: argparse.Namespace) -> int:
    """Write sheets, keys and worked solutions."""
    from tutor.handing_out import write_paper  # here for start-up time

    return write_paper(options)


def vary(options: argparse.Namespace) -> int:
    """Write each student's problem files."""
    from tutor.handing_out import write_problems  # here for start-up time

    return write_problems(options)


def hand_in(options: argparse.Namespace) -> int:
    """Write the file that a student hands in."""
    from tutor.handing_in import write_lessons  # here for start-up time

    return write_lessons(options)


def count_class(options: argparse.Namespace) -> int:
    """Say what a class gets wrong, into files, on the screen or in print."""
    from tutor.handing_in import is_for_screen, report_for, write_reports  # here for start-up time

    if not is_for_screen(options) or options.plain or not full_terminal():
        return write_reports(options)
    report = report_for(options)
    from tutor.screens.class_app import show_class  # here so that nothing waits for Textual

    return report if isinstance(report, int) else show_class(report, not options.no_mouse)


def begin(options: argparse.Namespace) -> int:
    """Write a problem file or a set to begin with."""
    from tutor.handing_out import write_first  # here for start-up time

    return write_first(options)


def skills(options: argparse.Namespace) -> int:
    """Say what the student can do now."""
    from tutor.plain.skills import tell_skills  # here for start-up time

    return tell_skills(options.keep, options.to, options.replace, options.signs)


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
        from tutor.records import Keep

        return check_work(options.path, options.work, Keep(options.keep))
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
        return open_plain(paths, options, first=deed, drawing=drawing)
    run = on_screen()
    deed_there = "own" if deed == "draw" else deed
    return run(
        paths,
        keep=options.keep,
        mouse=not options.no_mouse,
        glyphs=options.glyphs,
        deed=deed_there,
        drawing=drawing,
    )


def on_screen() -> Callable[..., int]:
    """What opens the tutor on the screen; from here to its first frame nothing is collected, since
    next to nothing of what is loaded until then could be."""
    gc.disable()
    from tutor.screens.run import run  # here so that nothing else loads Textual

    return run


def check_files(options: argparse.Namespace) -> int:
    """Print what there is to say of the problems at the paths; 0 if all can be used."""
    from tutor.check import check  # here for start-up time
    from tutor.check.told import Bar, as_json, as_text

    bar = Bar(sys.stderr)
    try:
        found = [check(path, bar) for path in options.paths or (shipped_problems(),)]
    finally:
        bar.clear()
    if options.json:
        print(as_json(found))
    else:
        print(*as_text(found), sep="\n")
    return 0 if all(each.sound for each in found) else 1


def open_tutor(options: argparse.Namespace) -> int:
    """Open the tutor on the screen, or line by line where that is asked for or all there is."""
    paths = options.paths or [shipped_problems()]
    missing = [path for path in paths if not is_there(path)]
    if missing:
        print(*(told_missing(path) for path in missing), sep="\n", file=sys.stderr)
        return 2
    if options.student is not None and (notice := keep_student(options)):
        print(notice, file=sys.stderr)
        return 2
    if options.plain or not full_terminal():
        if not options.plain:
            print(SWITCHED)
        return open_plain(paths, options)
    return on_screen()(
        paths,
        keep=options.keep,
        mouse=not options.no_mouse,
        glyphs=options.glyphs,
        given=given_in(options),
    )


def keep_student(options: argparse.Namespace) -> str:
    """Keep the student's id among their choices; why that failed, else empty."""
    from tutor.records import Keep, read_settings, write_settings  # here for start-up time

    folder = Keep(options.keep).folder
    settings, _ = read_settings(folder)
    return write_settings(folder, settings._replace(student=options.student))


def open_plain(
    paths: Sequence[Path],
    options: argparse.Namespace,
    first: Literal["lesson", "homework", "draw"] = "lesson",
    drawing: Path | None = None,
) -> int:
    """Begin line by line on the problems at `paths`: lessons, a homework, or a drawing."""
    from tutor.plain import run  # here for start-up time

    sets = sets_at(paths, options.keep)
    if sets is None:
        return 2
    return run(
        sets,
        keep=options.keep,
        first=first,
        drawing=drawing,
        signs=options.signs,
        given=given_in(options),
    )


def given_in(options: argparse.Namespace) -> ThisTime:
    """How the student is led this time; a homework and a drawing say nothing of it."""
    from tutor.records.settings import ThisTime  # here for start-up time

    return ThisTime(getattr(options, "begin", ""), getattr(options, "no_guide", False))


def is_there(path: Path) -> bool:
    """Whether there is a file or folder of this name."""
    try:
        return path.exists()
    except (OSError, ValueError):
        return False


def told_missing(path: Path) -> str:
    """What is said of a path at which there is nothing."""
    from tutor.model.source import file_name  # here for start-up time

    said = f"{file_name(path)}: there is no such file or folder; check its name and where you are"
    meant = get_close_matches(str(path)[:20], COMMANDS, n=1, cutoff=0.75)
    return f"{said}, or type {meant[0]} for that command" if meant else said


def sets_at(paths: Sequence[Path], keep: Path | None) -> tuple[ProblemSet, ...] | None:
    """The problem sets at these paths as the student of this folder has them; None, after saying why, where one holds nothing to read."""
    from tutor.model import ProblemError, load_sets  # here for start-up time
    from tutor.records import Keep, read_settings
    from tutor.variants import personal

    student = read_settings(Keep(keep).folder)[0].student
    found: list[ProblemSet] = []
    refused = False
    for path in paths:
        try:
            found += [personal(each, student) for each in load_sets(path)]
        except ProblemError as error:
            print(error, file=sys.stderr)
            refused = True
    return None if refused else tuple(found)


COMMANDS: Mapping[
    str,
    tuple[Callable[[], argparse.ArgumentParser], Callable[[argparse.Namespace], int]],
] = {
    "check": (check_parser, check_files),
    "paper": (paper_parser, paper),
    "vary": (vary_parser, vary),
    "new": (new_parser, begin),
    "hand-in": (hand_in_parser, hand_in),
    "class": (class_parser, count_class),
    "homework": (homework_parser, homework),
    "draw": (draw_parser, draw),
    "skills": (skills_parser, skills),
    "schema": (schema_parser, print_schema),
}
"""Each command's arguments, and what does it."""
PARSERS = {command: parser for command, (parser, _) in COMMANDS.items()}
