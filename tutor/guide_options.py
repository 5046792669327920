"""What can be said on the command line of how a student is led: what stands first, and what they can do?"""

from __future__ import annotations

import argparse
from pathlib import Path

from tutor.arguments import CAUTION_LINES, parser_of, with_ways

BEGINNINGS = ("watch", "half", "joints", "reactions", "alone")
"""How a lesson can be begun; the words of `begin` in a lesson, without loading one."""

SKILLS_LINES = (
    """\
Only your own first answers count, by the lessons kept here. The page is for you alone: nothing of it is
in what you hand in.

exit status: 0 when all went well, 2 when the file could not be written.

"""
    + CAUTION_LINES
)


def with_guide(parser: argparse.ArgumentParser) -> None:
    """Add how the student is led."""
    parser.add_argument(
        "--begin",
        choices=BEGINNINGS,
        default="",
        help="how a problem is begun: watched, written up to the reactions, the joints or half of the "
        "members, or alone; by default as is offered",
    )
    parser.add_argument(
        "--no-guide",
        action="store_true",
        help="this time, say nothing of what comes next, what may stand first, and what you can do",
    )


def skills_parser() -> argparse.ArgumentParser:
    """The options of `pinjoint skills`."""
    parser = parser_of(
        "skills",
        "Say what you can do now, and from which of your lines that is judged.",
        SKILLS_LINES,
    )
    parser.add_argument("--to", metavar="FILE", type=Path, help="write it as Markdown instead")
    parser.add_argument("--replace", action="store_true", help="write over a file of this name")
    return with_ways(parser)
