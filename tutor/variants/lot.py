"""In which order does a student try the numbers there are?

The order follows from SHA-256 of the UTF-8 text

    pinjoint variant 1
    SET
    PROBLEM
    STUDENT

(four lines joined by a newline, none behind the last), each name in Unicode form NFC, without space
at its ends and in lower case (case-folded). The first eight bytes of the digest, big-endian, give the
start, the next eight the step: number i of the order is (start + i * step) mod `count`, the step made
at least 1 and raised until it shares no factor with `count`. So every choice comes once.
"""

from __future__ import annotations

import hashlib
import math
import unicodedata
from collections.abc import Iterator
from functools import lru_cache

FORM = "pinjoint variant 1"


def lot(set_name: str, problem: str, student: str, count: int) -> Iterator[int]:
    """The numbers 0 to `count` - 1, each once, in this student's order."""
    text = "\n".join((FORM, *map(plain_name, (set_name, problem, student))))
    digest = hashlib.sha256(text.encode("utf-8", "surrogatepass")).digest()
    start = int.from_bytes(digest[:8], "big") % count
    step = int.from_bytes(digest[8:16], "big") % count or 1
    while math.gcd(step, count) != 1:
        step += 1
    return ((start + i * step) % count for i in range(count))


@lru_cache(1024)
def plain_name(name: str) -> str:
    """A name as it counts: "  S1041" and "s1041" are one student."""
    return unicodedata.normalize("NFC", name.strip()).casefold()
