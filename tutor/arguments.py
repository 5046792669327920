"""Which options stand before a command as well as behind it, and where does a command stand?"""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import NamedTuple, NoReturn

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


class Asked(NamedTuple):
    """A command: its word, the words for it, and the options that stand before any command."""

    command: str
    words: list[str]
    ways: argparse.Namespace


def command_in(
    given: Sequence[str], parser_for: Mapping[str, Callable[[], argparse.ArgumentParser]]
) -> Asked | None:
    """The command asked for; None where none is.

    Only options may come before its word, the command's own too: the word is a path where another
    path stands there.
    """
    for place, word in enumerate(given):
        if word == "--":
            return None
        if word in parser_for:
            before = with_ways(Parser(add_help=False, allow_abbrev=False, exit_on_error=False))
            try:
                found, rest = before.parse_known_args(given[:place])
            except argparse.ArgumentError:  # the word is the value of an option
                continue
            if not rest or are_options(rest, parser_for[word]()):
                return Asked(word, [*rest, *given[place + 1 :]], found)
    return None


def are_options(words: Sequence[str], parser: argparse.ArgumentParser) -> bool:
    """Whether the words are nothing but options of this parser, with their values."""
    rest = iter(words)
    for word in rest:
        name, gives, _ = word.partition("=")
        option = parser._option_string_actions.get(name)
        if option is None or (option.nargs != 0 and not gives and next(rest, None) is None):
            return False
    return True
