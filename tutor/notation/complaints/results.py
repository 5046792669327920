"""What is said about a label or a result that cannot be read?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    "label": Complaint(
        "“{found}” before the colon names no equation",
        "write ΣF_x: or ΣF_y: or ΣM_A: with the joint, or leave it out",
        examples=(("hello: F_AB = 0", 1), ("ΣQ: F_AB = 0", 1), (": F_AB = 0", 1), ("M: F_AB = 0", 1)),
    ),
    "label/joint": Complaint(
        "“{found}” names no joint",
        "the joints are {joints}",
        examples=(("ΣM_Z: F_AB = 0", 4), ("MQ: F_AB = 0", 2)),
    ),
    "label/missing-colon": Complaint(
        "“{found}” looks like the name of an equation",
        "put a colon after it, such as “{label}:”",
        examples=(("ΣF_x F_AB - 12 = 0", 1), ("(+ up) sum Fy F_AB = 0", 1), ("ΣF = 0", 1)),
    ),
    "value": Complaint(
        "“{found}” is an unknown, and a result is a number",
        "put in its value",
        values=(("F_AB = 3 F_AC", 10), ("2 F_AB = 24", 3), ("F_AB + 2", 1)),
    ),
    "value/sides": Complaint(
        "there is no force alone on one side of the = sign",
        "write one force and its number, such as F_AB = 12",
        values=(("12 = 12", 4), ("2*6 = 12 C", 5)),
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
        values=(("T 12", 1), ("C 12 kN", 1), ("F_AB = C 12", 8), ("left 12", 1), ("C: 40", 1)),
    ),
    "value/no-equals": Complaint(
        "there is no = sign between “{found}” and the number",
        "write {found} = and then the number",
        values=(("F_AB 40 C", 1), ("AB is 40 kN C", 1), ("A_x -12", 1)),
    ),
    "value/word": Complaint(
        "“{found}” after a number is no unit, letter or direction that is read here",
        "write a unit, T or C, or left, right, up or down",
        values=(("40 kN pull", 7), ("40 kN (push)", 8), ("12 kN wide", 7)),
    ),
    "value/zero": Complaint(
        "“{found}” is a word, and a result is a number",
        "write 0 if the force is zero",
        values=(("none", 1), ("F_AB = none", 8), ("nothing", 1), ("2 zero C", 3)),
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
    ),
    "value/two": Complaint(
        "“{found}” comes after another letter or direction",
        "give one of them, such as 12 C or 12 left",
        values=(("12 C T", 6), ("12 left right", 9), ("12 T left", 6)),
    ),
}  # fmt: skip
