"""What is each mistake called among people? Its code in a few words, for tables and reports."""

from __future__ import annotations

from collections.abc import Mapping

from tutor.judge.claims import CLAIMS
from tutor.judge.mistakes import KINDS

CALLED: Mapping[str, str] = {
    **{kind.code: kind.called for kind in KINDS.values()},
    **{claim.code: claim.called for claim in CLAIMS.values()},
    "soundness": "whether a truss is held",
    "count": "a wrong count",
}


def called(code: str) -> str:
    """A mistake in a few words, from the code of its kind."""
    return CALLED.get(code, code.replace("-", " "))


def counted(code: str, count: int) -> str:
    """A mistake and how often it was made: "a sign turned (3 times)"."""
    return called(code) if count == 1 else f"{called(code)} ({count} times)"
