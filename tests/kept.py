"""Are rows of text what a file keeps of them?"""

from __future__ import annotations

import os
from pathlib import Path


def is_as_kept(file: Path, rows: str) -> bool:
    """Whether `rows` are those of the file; with `PINJOINT_RENEW_GOLDENS` set they are written there first."""
    if os.environ.get("PINJOINT_RENEW_GOLDENS"):
        file.write_text(rows, encoding="utf-8")
    for row, before in zip(rows.splitlines(), file.read_text("utf-8").splitlines(), strict=True):
        assert row == before
    return True
