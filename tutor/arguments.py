"""Which options stand before a command as well as behind it, and where does a command stand?"""

from __future__ import annotations

import argparse
from collections.abc import Container, Sequence
from pathlib import Path
from typing import NoReturn

from tutor.text import marked

MOST_ECHOED = 400
GLYPHS = ("braille", "blocks", "ascii", "words")

CAUTION_LINES = """\
pinjoint teaches statics. It is not for the design of real structures: that is for the local codes
and a licensed engineer.
"""


def with_ways(parser: argparse.ArgumentParser) -> argparse.ArgumentParser:
    """The parser with the options that stand before a command or behind it."""
    parser.add_argument(
        "--plain",
        action="store_true",
        help="line by line on standard input and output, for a screen reader or a script",
    )
    parser.add_argument(
        "--signs",
        action="store_true",
        help="line by line, leave signs like \u03a3 and \u00b0 as they are",
    )
    parser.add_argument(
        "--keep",
        metavar="DIR",
        type=folder,
        help="keep what is done in this folder, not in the usual one",
    )
    parser.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")
    parser.add_argument(
        "--glyphs", choices=GLYPHS, help="what figures are drawn with, instead of your last choice"
    )
    return parser


def folder(text: str) -> Path:
    """The folder named by an argument, which must name one."""
    if not text.strip():
        raise argparse.ArgumentTypeError("this names no folder; leave it out for the usual one")
    return Path(text)


class Parser(argparse.ArgumentParser):
    """Arguments as argparse takes them; what it echoes of a wrong one is plain text."""

    def error(self, message: str) -> NoReturn:
        super().error(marked(message)[:MOST_ECHOED])


def parser_of(command: str, description: str, epilog: str = "") -> Parser:
    """The parser of a command; an `epilog` keeps its lines as they are."""
    layout = argparse.RawDescriptionHelpFormatter if epilog else argparse.HelpFormatter
    return Parser(
        prog=f"pinjoint {command}",
        description=description,
        epilog=epilog or None,
        formatter_class=layout,
        allow_abbrev=False,
    )


def command_in(
    given: Sequence[str], commands: Container[str]
) -> tuple[int, argparse.Namespace] | None:
    """Where the word of a command stands, and the options before it; None where none does.

    Only options may come before it: the word is a path where another path stands there.
    """
    for place, word in enumerate(given):
        if word == "--":
            return None
        if word in commands:
            before = with_ways(Parser(add_help=False, allow_abbrev=False, exit_on_error=False))
            try:
                found, rest = before.parse_known_args(given[:place])
            except argparse.ArgumentError:  # the word is the value of an option
                continue
            if not rest:
                return place, found
    return None
