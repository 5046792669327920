"""Where is the force named again whose value is typed: AB = AB = 12 C, AB = Top chord AB: 12 C?

Who is asked for the value of AB may begin with its name, or with words and its name, all the same.
"""

from __future__ import annotations

import re

from tutor.notation.naming.names import Names

_NAME = r"[^\W\d][\w{}'-]*"
_BEGUN = re.compile(rf"\s*(?P<name>{_NAME})\s*=\s*(?P<rest>.*)", re.DOTALL)
_NAMED = re.compile(
    rf"(?P<words>(?:[^\W\d][\w'-]*,?\s+)*)(?P<name>{_NAME})\s*(?P<sign>[=:])(?!=)\s*(?P<value>.*)",
    re.DOTALL,
)


def named_once(text: str, names: Names, awaited: str | None = None) -> str:
    """A value with the name of its force once; `awaited` is the force that was asked for before.

    A sentence that names it stays, with = for the colon behind the name.
    """
    rest = text
    if awaited is None:
        begun = _BEGUN.fullmatch(text)
        if begun is None or len(names.meant(begun["name"])) != 1:
            return text
        awaited, rest = names.meant(begun["name"])[0], begun["rest"]
    said = _NAMED.fullmatch(rest.strip())
    if said is None or names.meant(said["name"]) != (awaited,) or not said["value"]:
        return text
    row = said["sign"] == "=" or not said["words"]
    return rest.strip() if row else f"{said['words']}{said['name']} = {said['value']}"
