"""Are rows of text what a file keeps of them, and how does such a row give a verdict?"""

from __future__ import annotations

import os
from pathlib import Path

from tutor.judge import Verdict, in_words


def is_as_kept(file: Path, rows: str) -> bool:
    """Whether `rows` are those of the file; with `PINJOINT_RENEW_GOLDENS` set they are written there first."""
    if os.environ.get("PINJOINT_RENEW_GOLDENS"):
        file.write_text(rows, encoding="utf-8")
    for row, before in zip(rows.splitlines(), file.read_text("utf-8").splitlines(), strict=True):
        assert row == before
    return True


def in_codes(verdict: Verdict) -> str:
    """The kind of a verdict, its mistakes with their forces, its remarks, and what else the line is true of or left out."""
    codes = [" ".join(filter(None, (m.code, m.force))) for m in verdict.mistakes]
    codes += [f"({r.code})" for r in verdict.remarks]
    if verdict.true_of is not None:
        codes.append(f"is {in_words(verdict.true_of)}")
    codes += [f"without {' '.join(verdict.without)}"] if verdict.without else []
    return f"{verdict.kind}: {', '.join(codes)}" if codes else str(verdict.kind)
