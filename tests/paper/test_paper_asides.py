"""Is a line judged alike whatever is said behind it that says nothing of it?"""

from __future__ import annotations

from random import Random

import pytest
from paper.measure import lines, said

ASIDES = (
    "too",
    "as before",
    "bc nothing else acts there",
    "cuz the load just hangs there",
    "(both of them)",
    "(dont forget this one)",
    "hmm ok",
    "which makes sense",
    "so thats it",
    "as it should be",
    "for now",
    "because its the only one left",
    "with the other one known",
)


@pytest.mark.parametrize("file", ["night", "hurry", "asides"])
def test_an_aside_makes_no_wrong_line_right_and_no_right_line_wrong(file: str) -> None:
    unread = 0
    for row in lines(file):
        before = said(row)
        after = said({**row, "text": f"{row['text']} {Random(row['text']).choice(ASIDES)}"})
        unread += after.kind == "unreadable" and before.kind != "unreadable"
        if row["kind"] == "wrong":
            assert not after.right, row["text"]
            assert [m.code for m in after.mistakes] == [m.code for m in before.mistakes]
        else:
            assert after.kind != "wrong", row["text"]
    assert unread <= 1
