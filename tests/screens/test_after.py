"""The list shows what comes first in a set, until it is done."""

from __future__ import annotations

from pathlib import Path

from rich.cells import cell_len

from tutor.progress.where import CHANGED
from tutor.screens.rows import LONGEST, about, row_of
from tutor.screens.shelf import read_shelf
from tutor.shipped import shipped_problems

PROBLEM = """\
title = "{title}"
force = "kN"
length = "m"
members = ["AB", "AC", "BC"]
[joints]
A = [0, 0]
B = [8, 0]
C = [4, 3]
[supports]
A = "pin"
B = "roller"
[[loads]]
at = "C"
down = 12
"""


def test_a_problem_waits_for_what_comes_first_until_that_is_done(tmp_path: Path) -> None:
    for name, title in (("net", "Trestle for the nets"), ("boom", "Boom by the weir")):
        (tmp_path / f"{name}.toml").write_text(PROBLEM.format(title=title), encoding="utf-8")
    (tmp_path / "set.toml").write_text(
        'title = "Two"\norder = ["net", "boom"]\nafter = { boom = ["net"] }\n', encoding="utf-8"
    )
    net, boom = read_shelf([tmp_path]).entries
    assert "for later" not in row_of(net, 20, {}).plain
    assert row_of(boom, 20, {}).plain.endswith("for later")
    begun = {net.key: "at the joints"}
    assert "for later" in row_of(boom, 20, begun).plain
    done = {net.key: "done"}
    assert row_of(boom, 20, done).plain.endswith("not begun")
    assert "at the joints" in row_of(boom, 20, {boom.key: "at the joints"}).plain
    assert "Best after Trestle for the nets; it can be opened at any time." in about(boom).plain
    assert "Best after" not in about(net).plain


def test_no_row_of_the_shipped_problems_is_cut_on_the_list() -> None:
    entries = read_shelf([shipped_problems()]).entries
    wide = min(LONGEST, max(cell_len(entry.title) for entry in entries))
    within = 76 - 5
    assert len(entries) > 80
    for entry in entries:
        assert cell_len(row_of(entry, wide, {}).plain) <= within, entry.title
        assert cell_len(row_of(entry, wide, {entry.key: CHANGED}).plain) <= within
