"""How many of the lines that people write are judged as a lecturer would judge them?

    PYTHONPATH=tests python -m paper.measure [own-a own-b typed lecturer hurry board pages night asides evening lecterns clippings marking scraps pastings lamplight chalk desk satchel rostrum clipboard margin podium ledger dais tram carbon lamp easel blotter pulpit scans slate stage couch gallery kerb plinth inkpad bench rail binder yard copybook aula kitchen locker rota porch tray folder bunk bicycle atrium valise counter corridor porthole balcony scarf forum rigger courier apron cloister tally dossier slipway toolbox folio crayon azulejo chatter harbour rucksack noticeboard workbench belfry wagon foolscap jotter lighthouse scrapbook lunchbox quayside pinboard postbag gadget academy sayings kiosk envelope teller dictated] [--missed]

prints a table by category for each file; `--missed` adds the lines judged otherwise.
"""

from __future__ import annotations

import json
import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from kept import in_codes

from tutor import Along, Fx, Fy, M, Value, judge, load_problem

HERE = Path(__file__).parent
OUTCOMES = {
    "right": ("right", "unreadable", "wrong", "undecided"),
    "wrong": ("named", "refused", "otherwise", "unreadable", "undecided", "accepted", "falsely"),
    "substance": ("expected", "otherwise"),
}


@dataclass(frozen=True)
class Judged:
    """A line of a file, what was said about it in words and in codes, and which outcome that is."""

    line: Mapping[str, Any]
    outcome: str
    said: str
    codes: str


def lines(name: str) -> list[dict[str, Any]]:
    """The lines of the file `name`.jsonl beside this one."""
    text = (HERE / f"{name}.jsonl").read_text(encoding="utf-8")
    return [json.loads(line) for line in text.splitlines() if line.strip()]


@cache
def problem(truss: str) -> Any:
    """The truss of the file `truss`.toml beside this one."""
    return load_problem(HERE / f"{truss}.toml")


def about(line: Mapping[str, Any]) -> Any:
    """What is asked for: ["Fy", "A"], ["M", "A"], ["Along", 30, "C"], ["Value", "AB"]; a part."""
    kind, *rest = line["about"]
    part = tuple(line.get("part", ()))
    if kind == "Value":
        return Value(rest[0])
    if kind == "M":
        point = rest[0] if isinstance(rest[0], str) else (rest[0][0], rest[0][1])
        return M(at=point, part=part)
    if kind == "Along":
        return Along(rest[0], joint=rest[1])
    joint = rest[0] if rest else None
    return Fx(joint=joint, part=part) if kind == "Fx" else Fy(joint=joint, part=part)


def said(line: Mapping[str, Any]) -> Any:
    """The verdict on the line in its situation."""
    return judge(
        problem(line["truss"]),
        about(line),
        line["text"],
        senses=line.get("senses"),
        known=line.get("known"),
        lines=line.get("lines", ()),
        standing=[about({"about": each}) for each in line.get("standing", ())],
    )


def outcome(line: Mapping[str, Any], verdict: Any) -> str:
    """What became of the line, one of `OUTCOMES` of its kind.

    A wrong line is `named` where its first mistake is among those wanted, `refused` where any
    refusal is (nothing is wanted), `falsely` named where a mistake is said that must not be. Where the
    line says `of` which force, the mistake has to be told of one of these.
    """
    codes = [mistake.code for mistake in verdict.mistakes]
    forces = [mistake.force for mistake in verdict.mistakes]
    if line["kind"] == "right":
        return str(verdict.kind)
    if line["kind"] == "substance":
        fits = verdict.kind in line["expect"] or (codes and codes[0] in line["expect"])
        return "expected" if fits else "otherwise"
    if verdict.right:
        return "accepted"
    if not line["want"]:
        return "refused"
    if verdict.kind != "wrong":
        return str(verdict.kind)
    if set(codes) & set(line.get("never", ())):
        return "falsely"
    if not codes or codes[0] not in line["want"]:
        return "otherwise"
    return "named" if forces[0] in line.get("of", forces) else "otherwise"


def judged(name: str) -> Iterator[Judged]:
    """Each line of the file with its outcome and the words that were said."""
    for line in lines(name):
        verdict = said(line)
        words = [f"{m.code} {m.force or ''}: {m.text}" for m in verdict.mistakes]
        words += [f"({r.code}) {r.text}" for r in verdict.remarks]
        text = " / ".join(words) or str(getattr(verdict, "text", ""))
        yield Judged(line, outcome(line, verdict), f"{verdict.kind}; {text}", in_codes(verdict))


def counts(results: Iterable[Judged]) -> dict[str, Counter[str]]:
    """How often each outcome came, for each kind of line."""
    table: dict[str, Counter[str]] = {}
    for one in results:
        table.setdefault(one.line["kind"], Counter())[one.outcome] += 1
    return table


def table(results: Iterable[Judged]) -> str:
    """The outcomes by kind and category, as lines of text."""
    rows: dict[tuple[str, str], Counter[str]] = {}
    for one in results:
        for category in (one.line["cat"], "all"):
            rows.setdefault((one.line["kind"], category), Counter())[one.outcome] += 1
    text = []
    for kind, names in OUTCOMES.items():
        mine = sorted((category, row) for (of, category), row in rows.items() if of == kind)
        if not mine:
            continue
        text.append(f"{kind:<30}" + "".join(f"{name:>12}" for name in names) + f"{'lines':>12}")
        for category, row in [*[r for r in mine if r[0] != "all"], ("all", rows[kind, "all"])]:
            cells = "".join(f"{row[name] or '':>12}" for name in names)
            text.append(f"  {category:<28}{cells}{sum(row.values()):>12}")
        text.append("")
    return "\n".join(text)


def missed(results: Iterable[Judged]) -> str:
    """The lines that were not judged as a lecturer would, with what was said."""
    good = {"right": ("right",), "wrong": ("named", "refused"), "substance": ("expected",)}
    text = []
    for one in results:
        line = one.line
        if one.outcome in good[line["kind"]]:
            continue
        wanted = line.get("want", line.get("expect", "right"))
        text.append(f"{one.outcome:<11} {line['truss']} {line['about']} {line['text']!r}")
        text.append(f"            wanted {wanted}; {one.said}")
    return "\n".join(text)


def main(arguments: list[str]) -> None:
    """Print the table of each file named."""
    names = [name for name in arguments if not name.startswith("-")]
    for name in names or [
        "own-a",
        "own-b",
        "typed",
        "lecturer",
        "hurry",
        "board",
        "pages",
        "night",
        "asides",
    ]:
        results = list(judged(name))
        print(f"{name}.jsonl\n\n{table(results)}")
        if "--missed" in arguments:
            print(missed(results) + "\n")


if __name__ == "__main__":
    main(sys.argv[1:])
