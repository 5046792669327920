"""What is the table of the grammar? `python -m tutor.notation.formulas.make_table > tutor/notation/formulas/line_table.json`

Run by developers after a change of `line.lark`; only here is lark needed. The table is read from
what `Lark.save` writes. States are numbered in the order in which they are reached, so that the
same grammar always gives the same file.
"""

from __future__ import annotations

import io
import json
import pickle
from collections.abc import Mapping
from pathlib import Path
from typing import Any

STARTS = ("line", "expression")
SHIFT = 0
Row = dict[str, Any]


def table_of(grammar: str) -> dict[str, list[Row]]:
    """For each start the states, each with what to do by the symbol or the rule that comes.

    An action is the number of a state, or a reduction: how many parts, what is built of them (None
    where the one part stays as it is), the rule.
    """
    from lark import Lark

    saved = io.BytesIO()
    options: dict[str, Any] = {"parser": "lalr", "lexer": "basic", "maybe_placeholders": False}
    Lark(grammar, start=list(STARTS), **options).save(saved)
    found = pickle.loads(saved.getvalue())
    table, rules = found["data"]["parser"]["parser"], found["memo"]
    return {start: _numbered(table, rules, table["start_states"][start]) for start in STARTS}


def _numbered(table: Mapping[str, Any], rules: Mapping[int, Any], start: int) -> list[Row]:
    number, order = {start: 0}, [start]
    rows: list[Row] = []
    for state in order:
        row: Row = {}
        actions = table["states"][state]
        for token in sorted(actions, key=table["tokens"].get):
            kind, to = actions[token]
            if kind == SHIFT:
                if to not in number:
                    number[to] = len(order)
                    order.append(to)
                row[table["tokens"][token]] = number[to]
            else:
                row[table["tokens"][token]] = _reduction(rules[to["@"]])
        rows.append(row)
    return rows


def _reduction(rule: Mapping[str, Any]) -> list[Any]:
    size, origin = len(rule["expansion"]), rule["origin"]["name"]
    stays = rule["options"]["expand1"] and size == 1 and rule["alias"] is None
    return [size, None if stays else rule["alias"] or origin, origin]


if __name__ == "__main__":
    here = Path(__file__)
    rows = table_of(here.with_name("line.lark").read_text("utf-8"))
    print(json.dumps(rows, separators=(",", ":")).replace("},{", "},\n{"))
