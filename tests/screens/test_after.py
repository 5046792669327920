"""The list shows what comes first in a set, until it is done."""

from __future__ import annotations

from pathlib import Path

from tutor.screens.sheet import about, row_of
from tutor.screens.shelf import read_shelf

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
    assert "after" not in row_of(net, 20, {}).plain
    assert "after “Trestle for the nets”" in row_of(boom, 20, {}).plain
    begun = {net.key: "at the joints"}
    assert "after" in row_of(boom, 20, begun).plain
    done = {net.key: "done"}
    assert "not begun" in row_of(boom, 20, done).plain
    assert "at the joints" in row_of(boom, 20, {boom.key: "at the joints"}).plain
    assert "comes first: Trestle for the nets" in about(boom).plain
    assert "comes first" not in about(net).plain
