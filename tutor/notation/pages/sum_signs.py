"""Where beside a Σ do pages put its joint, and which index does it run over? (ΣF_x)_A, ΣF_x^(A), Σ_i F_xi.

Each is written as Σ_A F_x, or without the index, which says nothing of its own.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source

_PLACE = r"(?P<place>[A-Z](?:_?\{?[0-9]{1,2}\}?)?)"
_FORCE = r"F_?\{?(?P<axis>[xyXYhvHV])\}?"
_ABOVE = re.compile(rf"Σ *{_FORCE} *\^ *[({{]{{1,2}} *{_PLACE} *[)}}]{{1,2}}")
_BEHIND = re.compile(rf"[(\[{{] *Σ *{_FORCE} *[)\]}}] *\|? *_ *[({{]? *{_PLACE}(?![\w(]) *[)}}]?")
_AT_BAR = re.compile(rf"Σ *{_FORCE} *\| *_ *[({{]? *{_PLACE}(?![\w(]) *[)}}]?")
_IN_BRACKETS = re.compile(rf"Σ *{_FORCE} ?[(\[] ?(?:at |joint )?{_PLACE} ?[)\]](?= *[=:])")
_MOMENT = re.compile(
    rf"(?P<sum>Σ *M) *_ *[({{]{{2}} *{_PLACE} *[)}}]{{2}}|Σ *M *_\( *(?P<plain>[A-Z][0-9]?) *\)"
)
_AT_POINT = re.compile(r"Σ *M *_ *\{ *(?P<point>\([^(){}=]*[,;][^(){}=]*\)) *\}")
_RUN_TOGETHER = re.compile(r"Σ *F_(?P<word>[A-Z][0-9]?[xy])(?!\w)")
_AXIS_FIRST = re.compile(rf"Σ *F_?\{{?(?P<axis>[xy]),? ?{_PLACE}(?!\w)\}}?")
_PLACE_FIRST = re.compile(rf"Σ +F_?\{{{_PLACE},? ?(?P<axis>[xy])\}}")
_INDEX = re.compile(
    r"Σ *_ *(?:(?P<index>[ijkn])|\{ *(?P<braced>[ijkn])(?: *= *[0-9])? *\})(?: *\^ *(?:\w|\{ *\w *\}))?(?!\w) *"
)
_INDEXED = r"(?P<what>[FM])_(?:(?P<lone>{i})(?!\w)|\{{? *(?P<before>[xyXY]|[A-Z][0-9]?)? *,? *{i} *,? *(?P<behind>[xyXY])? *\}}?)"


def sums_typed(source: Source) -> Source:
    """The source with the sums of a page as one types them; text without Σ stays as it is."""
    if "Σ" not in source.text:
        return source
    if (index := _INDEX.search(source.text)) is not None:
        indexed = re.compile(_INDEXED.format(i=index["index"] or index["braced"]))
        source = source.rewritten(_INDEX, "Σ").rewritten(indexed, _without_index)
    for pattern in (_ABOVE, _BEHIND, _AT_BAR, _IN_BRACKETS):
        source = source.rewritten(pattern, lambda found: f"Σ_{found['place']} F_{found['axis']}")
    source = source.rewritten(_AT_POINT, lambda found: f"ΣM_{found['point']}")
    source = source.rewritten(_MOMENT, lambda found: f"ΣM_{found['place'] or found['plain']}")
    for pattern in (_AXIS_FIRST, _PLACE_FIRST):
        source = source.rewritten(pattern, lambda found: f"ΣF_{{{found['axis']}{found['place']}}}")
    return source.rewritten(_RUN_TOGETHER, lambda found: f"ΣF_{{{found['word']}}}")


def _without_index(found: re.Match[str]) -> str:
    lower = found["before"] or found["behind"]
    return f"{found['what']}_{lower}" if lower else found["what"]
