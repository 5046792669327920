"""How is a problem written as a file that reads back as the same problem?"""

from __future__ import annotations

import json
import math
import re
from collections.abc import Iterable, Iterator
from decimal import Decimal
from fractions import Fraction
from typing import Any

from tutor.model.amounts import amount
from tutor.model.parts import Load, Support
from tutor.model.problem import Problem
from tutor.model.read_parts import member_name
from tutor.model.rules import Tolerance
from tutor.model.spread import Spread
from tutor.model.toml_read import Decimals
from tutor.model.vary import VariedPart, Vary
from tutor.notation import Exact
from tutor.text import lines, one_line

DECIMAL = re.compile(r"-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?")
BARE = re.compile(r"[A-Za-z0-9_-]+")
SCHEMA = "./problem.schema.json"


def write_problem(problem: Problem, schema: str = SCHEMA) -> str:
    """TOML text, always in the same order, that loads as a problem equal to `problem`.

    Its first line tells editors where the schema of problem files is, as seen from the file; ""
    leaves that line out.
    Characters that no file may hold (control characters, say) are left out of its texts. Whether
    the problem itself is sound is not looked at. `source` is not written.
    """
    first = (f"#:schema {schema}",) if schema else ()
    return "\n".join((*first, *_head(problem), *_tables(problem))) + "\n"


def _head(problem: Problem) -> Iterator[str]:
    title, story = problem.title, problem.story
    if problem.vary is not None:
        title, story = problem.vary.title, problem.vary.story
    yield f"title = {_text(one_line(title))}"
    if story := lines(story):
        yield f"story = {_text(story)}"
    if topics := _words(problem.topics):
        yield f"topics = {_list(topics)}"
    if problem.level is not None:
        yield f"level = {problem.level}"
    if identity := one_line(problem.id):
        yield f"id = {_text(identity)}"
    if given := _words(problem.given):
        yield f"given = {_list(given)}"
    if problem.truss is not None:
        yield f"truss = {_text(problem.truss)}"
    yield f"force = {_text(problem.force)}"
    yield f"length = {_text(problem.length)}"
    yield f"members = {_list(_member(problem, m.name) for m in problem.members)}"


def _tables(problem: Problem) -> Iterator[str]:
    yield "\n[joints]"
    for joint in problem.joints:
        yield f"{_key(joint.name)} = [{_number(joint.x)}, {_number(joint.y)}]"
    yield "\n[supports]"
    for support in problem.supports:
        yield f"{_key(support.joint)} = {_support(support)}"
    for load in problem.given_loads:
        yield "\n[[loads]]"
        yield from _load(load)
    for spread in problem.spreads:
        if not problem.member.keys() & set(spread.on):
            continue
        yield "\n[[spread]]"
        yield from _spread(problem, spread)
    if problem.tolerance != Tolerance():
        yield "\n[tolerance]"
        yield f"silent = {_percent(problem.tolerance.silent)}"
        yield f"remark = {_percent(problem.tolerance.remark)}"
    if problem.vary is not None:
        yield "\n[vary]"
        yield from _vary(problem.vary)


def _vary(vary: Vary) -> Iterator[str]:
    for of in ("loads", "spread", "joints"):
        groups: dict[str, list[str]] = {}
        for choice in vary.choices:
            if choice.of == of:
                groups.setdefault(" ".join(choice.joints), []).append(_choice(choice))
        if groups:
            inner = (f"{_key(name)} = {{ {', '.join(parts)} }}" for name, parts in groups.items())
            yield f"{of} = {{ {', '.join(inner)} }}"
    scales = [_choice(choice) for choice in vary.choices if choice.of == "scale"]
    if scales:
        yield f"scale = {{ {', '.join(scales)} }}"
    if vary.mirror:
        yield "mirror = true"
    if vary.keep:
        yield f"keep = {_list(condition.text for condition in vary.keep)}"


def _choice(choice: VariedPart) -> str:
    return f"{choice.part} = [{', '.join(map(_number, choice.values))}]"


def _support(support: Support) -> str:
    if support.anchor is not None:
        x, y = support.anchor
        return f"{{ {support.kind} = [{_number(x)}, {_number(y)}] }}"
    if support.angle is not None:
        return f"{{ {support.kind} = {_number(support.angle)} }}"
    return _text(support.kind)


def _load(load: Load) -> Iterator[str]:
    yield f"at = {_text(load.joint)}"
    for way, size in load.pushes:
        yield f"{way} = {_number(size)}"
    if load.size is not None and load.angle is not None:
        yield f"size = {_number(load.size)}"
        yield f"angle = {_number(load.angle)}"


def _spread(problem: Problem, spread: Spread) -> Iterator[str]:
    yield f"on = {_list(_member(problem, name) for name in spread.on if name in problem.member)}"
    if spread.total:
        (way, size) = spread.pushes[0]
        yield f"total = {_number(size)}"
        yield f"way = {_text(way)}"
    else:
        for way, size in spread.pushes:
            yield f"{way} = {_number(size)}"
    if spread.per != "length":
        yield f"per = {_text(spread.per)}"


def _member(problem: Problem, name: str) -> str:
    member = problem.member[name]
    return member_name(member.start, member.end)


def _key(name: str) -> str:
    return name if BARE.fullmatch(name) else _text(name)


def _words(texts: Iterable[str]) -> tuple[str, ...]:
    """Texts as they load: each on one line, once, none empty."""
    return tuple(dict.fromkeys(filter(None, map(one_line, texts))))


def _list(texts: Iterable[str]) -> str:
    return f"[{', '.join(map(_text, texts))}]"


def _text(text: str) -> str:
    """A TOML basic string; JSON's escapes are a part of TOML's, DEL excepted."""
    if "\n" in text:
        inner = json.dumps(text, ensure_ascii=False)[1:-1].replace("\\n", "\n")
        return f'"""\n{inner}"""'
    return json.dumps(text, ensure_ascii=False)


def _number(number: Exact) -> str:
    """The number as it was written where that reads back as the same, else its value."""
    for text in (number.text, str(number.fraction), repr(number.value)):
        if DECIMAL.fullmatch(text):
            plain: Any = int(text) if re.fullmatch(r"-?\d+", text) else Decimals(text)
            if _same(amount(plain), number):
                return text
        if _same(amount(text), number):
            return _text(text)
    raise ValueError(f"the number {number.text!r} cannot be written")


def _same(read: object, number: Exact) -> bool:
    """Whether what was read is the number: exactly, or to the last places for a surd."""
    if not isinstance(read, Exact) or read.fraction != number.fraction:
        return False
    return read.fraction is not None or math.isclose(read.value, number.value, rel_tol=1e-12)


def _percent(fraction: float) -> str:
    """The shortest decimal percentage that reads back as exactly this fraction."""
    percent = Fraction(Decimal(repr(fraction))) * 100
    return format(Decimal(percent.numerator) / Decimal(percent.denominator), "f")
