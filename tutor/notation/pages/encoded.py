"""Which signs has a mail, an address or a program written by their codes? =3D, =E2=88=92, %3D, \\u2212, âˆ’.

Codes are told from what one types by the whole line: in a mail every sign = is written by its code, in an
address there is no other. Letters that no language sets side by side are the bytes of one sign, read in
another code.
"""

from __future__ import annotations

import re
import unicodedata

from tutor.notation.elements.source import Source

_MAY = re.compile(r"=3D|%3D|\\[uxnt']|[Â-ô][\u0080-\u00ff\u0152-\u0192\u02c6-\u2122]|&amp;")
_OF_MAIL = re.compile(r"(?:[^=]*=(?:[0-9A-F]{2}|[ \t]*(?=\r?\n|\r|$)))+[^=]*")
_EQUALS = re.compile(r"=3D(?![A-Za-z_]|[0-9]+[A-Z])")
_MAIL_CODES = re.compile(r"(?:=[0-9A-F]{2})+")
_SOFT_END = re.compile(r"=[ \t]*(?=[\r\n]|$)")
_ADDRESS_CODES = re.compile(r"(?:%[0-9A-F]{2})+")
_ESCAPE = re.compile(r"\\(?:u(?P<four>[0-9a-fA-F]{4})|(?:x|')(?P<two>[0-9a-fA-F]{2}))")
_ROW_END = re.compile(r"(?<!\\)\\(?P<end>[nt])(?![a-z{])")
_AND = re.compile(r"&amp;(?=(?:[A-Za-z]{2,8}|#[0-9]{2,6}|#[xX][0-9A-Fa-f]{2,5});)")
_HIGH = r"[\u0080-\u00bf\u0152\u0153\u0160\u0161\u0178\u017d\u017e\u0192\u02c6\u02dc\u2013-\u203a\u20ac\u2122]"
_BYTES = re.compile(rf"[Â-ß]{_HIGH}|[à-ï]{_HIGH}{{2}}|[ð-ô]{_HIGH}{{3}}")
"""As many letters as a sign has bytes, by the first one."""


def signs_for_codes(text: str) -> Source:
    """The text with every sign that is written by its code as that sign."""
    source = Source.of(text)
    if _MAY.search(text) is None:
        return source
    if is_of_mail(text):
        source = source.rewritten(_MAIL_CODES, lambda found: _of_bytes(found, "="))
        source = source.rewritten(_SOFT_END, "")
    elif "%3D" in text and "=" not in text:
        source = source.rewritten(_ADDRESS_CODES, lambda found: _of_bytes(found, "%"))
    source = source.rewritten(_ESCAPE, _escaped).rewritten(_ROW_END, _row_end).rewritten(_AND, "&")
    return source.rewritten(_BYTES, _of_letters)


def is_of_mail(text: str) -> bool:
    """Whether every sign = of a text begins the code of a sign or ends a row, and one of them is written so.

    9 =3DE/5 is three fifths of DE.
    """
    return _EQUALS.search(text) is not None and _OF_MAIL.fullmatch(text) is not None


def _of_bytes(found: re.Match[str], mark: str) -> str:
    """The signs that bytes stand for: in the code of today or, where they are none, in the one before."""
    code = bytes.fromhex(found[0].replace(mark, ""))
    try:
        said = code.decode("utf-8")
    except UnicodeDecodeError:
        said = code.decode("latin-1")
    return "".join(char if char.isprintable() else " " for char in said)


def _escaped(found: re.Match[str]) -> str | None:
    char = chr(int(found["four"] or found["two"], 16))
    return char if char.isprintable() and char != "\\" else None


def _row_end(found: re.Match[str]) -> str:
    """A mark between statements for the end of a row between them, and a blank for any other."""
    before, after = found.string[: found.start()], found.string[found.end() :]
    between = before.strip(" '\"") and after.strip(" '\"\\nt")
    return "; " if found["end"] == "n" and between else " "


def _of_letters(found: re.Match[str]) -> str | None:
    """The one sign whose bytes were read as letters; None where they are letters after all."""
    code = bytearray()
    for char in found[0]:
        try:
            code += char.encode("cp1252")
        except UnicodeEncodeError:
            code += char.encode("latin-1", "ignore")
    try:
        said = code.decode("utf-8")
    except UnicodeDecodeError:
        return None
    usual = len(said) == 1 and unicodedata.category(said)[0] in "SPNZ"
    return said if usual or said == "º" or _is_letter(said) else None


def _is_letter(said: str) -> bool:
    name = unicodedata.name(said, "") if len(said) == 1 else ""
    return name.startswith(("LATIN ", "GREEK ", "ZERO WIDTH"))
