"""What stands around a line on the page it was copied from, and is no part of it?

Bullets, the numbers of paragraphs and the hour of a message before it, the first words of an answer in a
chat, what is done to both sides next (| · 2), notes, points, page numbers and the marks of a corrector behind it.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span

_DAY = r"(?:mon|tue|wed|thu|fri|sat|sun|mo|di|mi|do|fr|sa|so)[a-z]{0,9}\.?"
_TIME = r"[0-2]?[0-9]:[0-5][0-9](?::[0-5][0-9])?(?: ?[ap]\.?m\.?)?"
_WORDS_OF_BUTTONS = "copy(?: code)?|copied|reply|like|quote|edit|share|download|kopieren|antworten|zitieren|copier|r[ée]pondre|copiar|responder"
_BUTTON = rf"(?:{_WORDS_OF_BUTTONS})(?:[!:]| [·•*|])? +(?-i:(?=[-+−–(\[√\\$0-9A-ZΣ∑'\"][^=]*=))"
_BUTTONS = (
    rf" +(?:{_WORDS_OF_BUTTONS})(?: +[·•*|] +(?:{_WORDS_OF_BUTTONS}|[0-9]{{1,2}} ?(?:s|min|h|d)))*"
)
"""What stands on buttons before and behind a line of a web page."""
_SEEN = rf" +(?:(?:seen|read|sent|delivered|edited) +(?:at +)?)?[✓✔]{{0,2}} *{_TIME} *[✓✔]{{0,2}}"
"""When a message came."""
_LEADS = "|".join((
    r"(?:[▪•]\s*)?(?:slide|step|page|sheet|part|task|folie|seite|line|no|nr)\.? ?[0-9]{1,2}[a-z]?\s*[▸▶►│|➜›»→]+\s+",
    r"(?:[-–—*+§·•Øü]|(?-i:[oq]))\t\s*|[■-◿⁃⁌⁍❖➢➣➤✦✧★☆\uf0a7\uf0b7\uf0d8\uf0fc]\s+",
    r"'(?==?[-+A-Z(0-9.√][^']*$)",
    r"[☑✓✔✅✗✘❌❎]+ *",
    _BUTTON,
    r"\$ +(?=[^$]*$)",
    r"§ ?[0-9]{1,2}(?:\.[0-9]{1,2})?[a-z]?[.):]? +",
    r"(?:example|problem|exercise|aufgabe|beispiel|bsp)\.? ?[0-9]{1,2}(?:\.[0-9]{1,2})?[a-z]?[.):]? +(?=[^:]*=)",
    r"0[0-9]{1,3}[:.)|]? +(?=[^-+*/=^ ])",
    r"[0-9]{1,2}(?:\.[0-9]{1,2}){2,3}[.)]? +|[0-9]{1,2}\.[0-9]{1,2}\) +",
    r"(?:step|part|eqn?|line|schritt|no|nr)\.? [0-9]{1,2} [-–—] +",
    rf"\[(?:{_DAY},? *)?(?:[0-9./-]{{3,10}},? *)?{_TIME}(?:,? *{_DAY})?\] +(?=[^ ])",
    rf"{_DAY},? {_TIME}[:|]? +(?=[^ ])",
    r"(?:double|float|var|const|auto|real) +(?=[A-Za-z]\w* *=)",
))  # fmt: skip
_BULLET = re.compile(rf" *(?:{_LEADS})", re.IGNORECASE)
"""A mark before an item of a list, the number of a paragraph or a line, the kind of a variable."""
_DASHED = re.compile(r" *(?P<mark>[–—―‒]) +(?=[^ ])")
_DASHES = re.compile(r"(?<=[ =(])[-–—―‒−‐]")
_LONG = re.compile(r"(?<=[^ =+*/(]) +(?P<mark>—) *(?=[^ =])")
_OPENING = (
    r"(?:(?:yea+h?|yes|yep|yup|ok(?:ay)?|lol|haha|hey|hi|wait|well|actually|sorry|thx|thanks|nah|nope|edit|btw|fixed|oops)\b"
    r"|(?:no+|hm+|oh|ah|so)(?=[,!:.] | +(?:its?|it's|i|so|that)\b))[,.!:…]* +"
)
_ANSWER = re.compile(
    rf" *(?:{_OPENING})+(?:(?:it'?s|i (?:get|got|have|think)|it is|(?:it )?should (?:be|read|say)|that'?s)[: ] *(?:it'?s +)?)*"
    r"(?=[\w(√\\$.][^=]*=)",
    re.IGNORECASE,
)
"""The first words of an answer, right before an equation."""
_NEXT = re.compile(
    r"(?<=[\w)\]}°.]) +(?:[|‖] *|\|\| *)(?:[*:/]|[-+](?: *(?=[A-Z(√])| +(?=[0-9.,]+ *(?:kN|N)? *$))|mal\b|times\b) *[^|=⇒∴→]{1,24}\|? *(?=$|⇒|∴|=>|->|→)"
    r"|(?<=0) +[(\[] ?[*:/] ?[-(]{0,2}[0-9.,/]+\)? ?[)\]] *$"
)
"""What is done to both sides in the next line, behind a bar: | · (-17), | : 0.6."""
_THEN = re.compile(
    r"(?<=[\w)\]}°.])(?: +[|‖] *[*:/×·]|[,;] +(?:[*/×·÷]|(?:x|times|by|mal|divide by|multiply by)(?= ?[0-9]))) *[0-9.,/]+ *:(?=[^=]*=)"
)
"""The same with the next line right behind it: ..., x2: ..."""
_DONE = re.compile(r"[|‖]|\([*:/]|[,;] +[^,;=:]{1,16}:")
"""What a line has in which something may be said to be done to both sides."""
_WHOLE = r"(?:(?<== 0)|(?<==0)|(?<=\([TCtc]\))|(?<=kN)|(?<=lb)|(?<=kip)|(?<=[0-9] N)|(?<=[0-9Nbp] [TCtc]))"
_NOTES = "|".join((
    r" *(?:\*{1,3}|[¹²³⁴-⁹†‡¶↵◄◀⊲◁⏎…~✗✘❌❎👎]+|\|\||_{1,2}|//|={3,}|-{3,}|[:;]-?\)| +:D(?= *$)|\^\^|q\.?e\.?d\b\.?|o\.k\.)",
    _BUTTONS,
    _SEEN,
    r" *\[[0-9]{1,2}(?:[,–-] ?[0-9]{1,2}){1,3}\]| +\([0-9]{1,2}[.-][0-9]{1,2}[a-z]\)",
    r" +[(\[] ?[0-9]{1,2} ?(?:P|pts?|points?|marks?|Pkt|Punkte?)\.? ?[)\]]",
    r" +[(\[]?[ABM][1-3](?: ?[ABM][1-3]){0,2}[)\]]?",
    r" +-? ?(?:page|seite|pg?\.|S\.) *[0-9]{1,3}(?: *(?:of|/|von) *[0-9]{1,3})?",
    r" {3,}- [0-9]{1,3} -| {3,}[0-9]{1,3}(?:/[0-9]{1,3})?",
))  # fmt: skip
_BEHIND = re.compile(rf"{_WHOLE}\.?(?:{_NOTES})[ .]*$", re.IGNORECASE)
"""Notes, points and page numbers behind a line that is whole."""
_MAY_END = re.compile(
    r"[^\w)\]}. ] *$|(?<![(\[][TC])[\])] *$|_ *$|page|eite|\b[Pp]g?\.|S\.| [ABM][1-3]\b| {3}-? ?[0-9]|[qQ]\.?[eE]|\.k\.|[¹²³⁴-⁹]|[0-9]:[0-9]{2}|0 +[A-Za-z]"
)
_TICKED = re.compile(r"(?<=[\w)] )[✓✔☑✅]+(?:[.,;!](?= *[(]))?(?= *[(\[,;⇒∴→])")
_BOXED = re.compile(
    r"(?P<so>(?:[→⇒∴]|=>|->|\b(?:so|hence|thus|therefore|whence|i\.e\.|ie|giving|gives)\b)[,:]? *)"
    r"[\[⟦] *(?P<result>[^\[\]⟦⟧=]+=[^\[\]⟦⟧]+?) *[\]⟧](?=[ .]*$)"
)
"""A result in a box that is drawn with brackets: hence [ AD = 25 kN (C) ]."""
_STOPPED = re.compile(r"(?<=[0-9A-Za-z)\]])\$ *$")
"""The $ that ends a statement of a program for algebra."""


def without_margins(source: Source, raw: str) -> Source:
    """The source without what stands around the line on its page; `raw` is the text as it was typed."""
    text = source.text
    plain = text[:1].isalpha() and "\t" not in raw
    typed = text if plain else source.typed(raw)
    front = _BULLET.match(typed) or _ANSWER.match(text) or (None if plain else _dashed(typed))
    if front is not None:
        source = source.made_of([Span(front.end(), len(text))])
    if "=" not in text:
        return source
    if "—" in raw and front is None:
        source = _set_apart(source, source.typed(raw))
    if _DONE.search(text) is not None:
        source = source.rewritten(_THEN, " ;").rewritten(_NEXT, " ")
    if "]" in text or "⟧" in text:
        source = source.rewritten(_BOXED, lambda found: found["so"] + found["result"])
    source = source.rewritten(_TICKED, " ")
    if _MAY_END.search(text) is not None:
        source = source.rewritten(_BEHIND, " ")
    return source.rewritten(_STOPPED, "") if text.count("$") == 1 else source


def _set_apart(source: Source, typed: str) -> Source:
    """The source with the long dashes of a line as a colon or a comma, where its signs are written with another dash."""
    if not set(_DASHES.findall(typed)) - {"—"}:
        return source
    chars = list(source.text)
    for found in _LONG.finditer(typed):
        at = found.start("mark")
        chars[at] = ":" if "=" not in chars[:at] else ","
    return replace(source, text="".join(chars))


def _dashed(typed: str) -> re.Match[str] | None:
    """A dash before an item of a list, where a sign of the line is written with another dash."""
    found = _DASHED.match(typed)
    if found is None:
        return None
    others = set(_DASHES.findall(typed, found.end()))
    return found if others and found["mark"] not in others else None
