"""What is said about the text as a whole that cannot be read?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.elements.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    "empty": Complaint(
        "nothing is written yet",
        "write an equation such as 3/5 F_AB + F_AC - 12 = 0",
        examples=(("", 1), ("   ", 4)),
        placed=False,
    ),
    "empty/value": Complaint(
        "nothing is written yet",
        "write a number, such as {example}",
        values=(("", 1), (" ", 2)),
        numbers=(("", 1),),
        placed=False,
    ),
    "empty/heading": Complaint(
        "nothing is written yet",
        "name an equation, such as ΣF_x or ΣM_A",
        headings=(("", 1),),
        placed=False,
    ),
    "too-long": Complaint(
        "the text has {count} characters and at most 500 are read",
        "split it or leave out what is not needed",
        examples=(("F_AB = " + "1 + " * 200, 501),),
        values=(("1" * 501, 501),),
        numbers=(("1+" * 300, 501),),
        placed=False,
    ),
    "too-many": Complaint(
        "the text has more than 128 symbols",
        "put known numbers together first",
        examples=(("F_AB = " + "1+" * 70 + "1", 135),),
        placed=False,
    ),
    "too-deep": Complaint(
        "“{found}” lies more than 32 levels deep",
        "take out brackets or signs that are not needed",
        examples=(("(" * 33 + "F_AB" + ")" * 33 + " = 0", 33), ("F_AB = " + "-" * 40 + "1", 40)),
    ),
    "control": Complaint(
        "there is a control character, {found}, which no key for a formula types",
        "delete it and type the line again",
        examples=(
            ("F_AB\x1b[A = 12", 5),
            ("\x00", 1),
            ("F_AB =\x0b12", 7),
            ("\x1b[<0;35;12M", 1),
            ("F_AB\x07 = 0", 5),
        ),
        values=(("12\x7f", 3),),
    ),
    "invisible": Complaint(
        "there is an invisible character, {found}",
        "delete it (it often comes along when text is copied)",
        examples=(("F_AB\u200f = 12", 5), ("F_\u202eAB = 12", 3)),
        numbers=(("12\u200b", 3), ("\ufeff3/2", 1)),
    ),
    "invisible/hyphen": Complaint(
        "there is a hyphen that only shows at the end of a line (U+00AD)",
        "type a minus where one is meant, or delete it",
        examples=(("F_AB \u00ad 12 = 0", 6), ("\u00adF_AB = 12", 1)),
    ),
    "character/mark": Complaint(
        "there is a mark on the character before it, {found}",
        "delete it, for names and numbers are read without accents",
        examples=(("F_A\u0301B = 12", 4), ("F_AB\u20dd = 12", 5), ("F_AB = 1\u03382", 9)),
        values=(("12 \u0301", 4),),
    ),
    "character": Complaint(
        "“{found}” has no meaning in a formula",
        "write numbers, names, + - * / ^, brackets, units and one =",
        examples=(("F_AB 😀 = 12", 6), ("F_AB = 12 $", 11), ("F_AB & F_AC = 0", 6)),
        values=(("12 %", 4),),
    ),
    "character/sum": Complaint(
        "“{found}” has no meaning in a formula",
        "write Σ if the sign for a sum is meant",
        examples=(("F_AB + © = 0", 8), ("© = F_AB", 1)),
    ),
    "character/inequality": Complaint(
        "“{found}” compares and does not set equal",
        "write = between the two sides",
        examples=(("F_AB < 12", 6), ("F_AB ≥ 12", 6)),
    ),
    "proportion": Complaint(
        "“{found}” has more parts on one side than on the other",
        "write each force over its own number, such as F_AB/4 = F_AC/5 = 12/3",
        examples=(("F_AB : F_AC : 12 = 4 : 5", 1), ("so F_AB : F_BC : 6 = 3 : 4 : 5 : 6", 4)),
    ),
}  # fmt: skip
