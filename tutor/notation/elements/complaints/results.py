"""What is said about a label or a result that cannot be read?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.elements.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    "label": Complaint(
        "“{found}” before the colon names no equation",
        "write ΣF_x: or ΣF_y: or ΣM_A: with the joint, or leave it out",
        examples=(("ΣQ: F_AB = 0", 2), ("3 + 4: F_AB = 0", 1)),
    ),
    "label/colon": Complaint(
        "nothing stands before the colon",
        "write ΣF_x: or ΣF_y: or ΣM_A: with the joint, or leave the colon out",
        examples=((": F_AB = 0", 1),),
    ),
    "label/joint": Complaint(
        "“{found}” names no joint",
        "the joints are {joints}",
        examples=(("ΣM_Z: F_AB = 0", 4), ("MQ: F_AB = 0", 2)),
    ),
    "label/alone": Complaint(
        "“{found}” names an equation, and nothing follows it",
        "write the equation behind it, such as ΣF_x: 3/5 F_AB - 12 = 0",
        examples=(("ΣF_x = 0", 1), ("ΣM_A:", 1)),
    ),
    "label/no-zero": Complaint(
        "“{found}” sets a sum equal to its terms, and nothing says that it is zero",
        "write = 0 behind it",
        examples=(("ΣF_x = F_AC - 12", 1),),
    ),
    "heading": Complaint(
        "“{found}” names no equation",
        "write ΣF_x, ΣF_y, ΣM_A with the joint, or along 30",
        headings=(("hello", 1), ("F_AB", 1), ("12", 1)),
    ),
    "value": Complaint(
        "“{found}” is an unknown, and a result is a number",
        "put in its value",
        values=(("F_AB = 3 F_AC", 10), ("2 F_AB = 24", 3), ("F_AB + 2", 1)),
    ),
    "value/equation": Complaint(
        "there is an = sign, and only a number is meant here",
        "write the number alone",
        numbers=(("x = 3", 3), ("2 = 2", 3)),
    ),
    "value/number": Complaint(
        "“{found}” comes without a number",
        "write the size first, such as 12 {found}",
        values=(("C", 1), ("F_AB = T", 8), ("left", 1)),
    ),
    "value/order": Complaint(
        "“{found}” stands before the number",
        "write it after the number, such as 12 {found}",
        values=(("T 12*2", 1), ("left 12*2", 1)),
    ),
    "value/no-equals": Complaint(
        "there is no = sign between “{found}” and the number",
        "write {found} = and then the number",
        values=(("F_AB 40", 1),),
    ),
    "value/zero": Complaint(
        "“{found}” is a word, and a result is a number",
        "write 0 if the force is zero",
        values=(("F_AB = none", 8), ("F_AB = nothing", 8)),
    ),
    "value/not-zero": Complaint(
        "“{found}” stands beside a number that is not 0",
        "write 0, or the number alone",
        values=(("12 (zero-force member)", 5), ("F_AB = 3 kN, zero", 14)),
    ),
    "value/last": Complaint(
        "“{found}” is not the last thing written",
        "write the size, then the unit, then the letter, such as 12 kN {found}",
        values=(("40 C (kN)", 4), ("40 T kN", 4)),
        examples=(("3 T F_AB = 0", 3),),
    ),
    "value/two": Complaint(
        "“{found}” comes after another letter or direction",
        "give one of them, such as 12 C or 12 left",
        values=(("12 C T", 6), ("12 left right", 9), ("12 T left", 6)),
    ),
    "value/cells": Complaint(
        "“{found}” is a second number in this row",
        "give the force alone, such as 12 C",
        values=(("AB\t5.00\t12.5", 9), ("AB | 5 | 12 | C", 10)),
    ),
}  # fmt: skip
