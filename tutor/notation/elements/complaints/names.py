"""What is said about a name that cannot be read?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.elements.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    "unknown-name": Complaint(
        "“{found}” names no force here",
        "the forces are {known}",
        examples=(("F_XYZ + F_AB = 0", 1), ("qqq = 2", 1)),
    ),
    "unknown-name/sentence": Complaint(
        "the sentence could not be read from “{found}” on",
        "write what it says as an equation with the forces, such as {example} = 12, or as sums of forces",
        examples=(
            ("The rest of the forces must be 12 = F_AB", 1),
            ("F_AB + 3 whenever something stands here = 0", 10),
        ),
    ),
    "unknown-name/near": Complaint(
        "“{found}” names no force here",
        "perhaps {nearest} is meant",
        examples=(("F_ABB = 0", 1), ("12 + A_z = 0", 6), ("F_AB_ = 2", 1)),
    ),
    "renamed": Complaint(
        "“{found}” would be another name for {force}, and a force goes by its own name here",
        "write {force} itself in the equations",
        examples=(("let x = F_AB", 5), ("let m = F_AC; m - 12 = 0", 5)),
    ),
    "renamed/alone": Complaint(
        "“{found}” is brought in for {force}, and nothing is said with it",
        "write the equation in the same line, or {force} itself in the equations",
        examples=(("let S be the tension in AB", 5), ("call the force in AB P", 22)),
    ),
    "unknown-name/member": Complaint(
        "“{found}” would be the force in a member {pair}, and no member joins {one} and {other}",
        "{meeting}",
        examples=(("F_AD + F_AB = 0", 1), ("0.6F_DA = 0", 4), ("AD = 12", 1), ("3 F_{AD} = 0", 3)),
        values=(("F_AD = 12", 1),),
    ),
    "unknown-name/end": Complaint(
        "“{found}” would be the force in a member at {joint}, and its other end is no joint",
        "the members at {joint} are {meeting}",
        examples=(("F_AE = 3", 1), ("F_AB + 0.8F_{EA} = 0", 11), ("AE = 1", 1)),
    ),
    "unknown-name/angle": Complaint(
        "“{found}” stands for an angle whose size is not known here",
        "write the angle itself, such as 36.87, or say how large it is and then the equation: {found} = 36.87°",
        examples=(("F_AB cos θ = 12", 10), ("F_AB cosθ = 12", 9), ("F_AB sin(theta) = 0", 10)),
    ),
    "unknown-name/length": Complaint(
        "“{found}” is a letter that nothing here goes by",
        "if it stands for a length, say how long it is and then the equation: {found} = 4 {unit}",
        examples=(("4hF_AB = 12", 2), ("h F_AB = 12", 1), ("F_AB(2L) = 12", 7)),
    ),
    "unknown-name/load": Complaint(
        "“{found}” stands for nothing here yet",
        "write a load as the number that is given, or say how large it is and then the equation: {found} = 12 {unit}",
        examples=(("F_AB = P", 8), ("F_AB - W/2 = 0", 8), ("2V - F_AB = 0", 2)),
    ),
    "unknown-name/joint-or-length": Complaint(
        "“{found}” is no force: it may be the joint {joint}, or a length",
        "name a member force by both its joints, such as {example}, or say how long it is: {found} = 4 {unit}",
        examples=(("4a F_AB = 12", 2), ("b F_AB = 12", 1)),
    ),
    "unknown-name/numbered": Complaint(
        "“{found}” would be a member by its number, and no member here goes by a number",
        "the forces are {known}",
        examples=(("F_1 = 12", 1), ("F2 + 3 = 0", 1), ("S_{12} = 0", 1)),
    ),
    "unknown-name/reaction": Complaint(
        "“{found}” would be a reaction at {joint}, and no such force acts there",
        "the reactions are {reactions}",
        examples=(("C_y + F_AB = 0", 1), ("3 D_x = 0", 3), ("R_B = 0", 1)),
    ),
    "unknown-name/joint": Complaint(
        "“{found}” is a joint and not a force",
        "name a member force by both its joints, such as {example}",
        examples=(("3 A = 12", 3),),
    ),
    "unknown-name/one-joint": Complaint(
        "“{found}” names one joint, and a member force goes by two",
        "name it by both, such as {example}",
        examples=(("F_A = 0", 1), ("T_B = 3", 1)),
    ),
    "unknown-name/whole": Complaint(
        "“{found}” would be the whole reaction at {joint}, and two act there, {reactions}",
        "write the one that is meant, or both",
        examples=(("R_A = 0", 1), ("3 R_{A} = 6", 3)),
    ),
    "unknown-name/component": Complaint(
        "“{found}” would be the {axis} component of the force in {member}, which has none",
        "leave it out, or name another member",
    ),
    "unknown-name/constant": Complaint(
        "“{found}” is a name, and a number is meant here",
        "write the number itself",
        numbers=(("3*x", 3), ("F_AB", 1), ("theta", 1)),
    ),
    "difference": Complaint(
        "“{found}” is one joint less another",
        "write {example} without spaces for the force in the member",
        examples=(("A - B = 12", 1), ("3 + C - D = 0", 5)),
    ),
    "ambiguous": Complaint(
        "“{found}” can mean {one} or {other}",
        "write {cure}",
    ),
    "ambiguous/unit": Complaint(
        "“{found}” can be the unit or the force in member {name}",
        "write {spelling} for the force, and leave out the unit or give the number in {own}",
    ),
    "ambiguous/function": Complaint(
        "“{found}” can be the function or the force in member {name}",
        "write {spelling} for the force and {function} for the function",
        examples=(("F_AB SIN 30 = 0", 6),),
    ),
    "ambiguous/power": Complaint(
        "the power “{found}” can belong to the argument or to the whole function",
        "put brackets around what is raised",
        examples=(("cos 30^2 F_AB = 0", 8), ("√2² F_AB = 0", 3), ("sqrt 2^2 F_AB = 0", 8)),
    ),
    "ambiguous/pi": Complaint(
        "“{found}” has π in an angle without a unit, and bare angles are in degrees",
        "write {call} rad) for radians, or the angle in degrees",
        numbers=(("cos(pi/3)", 4), ("sin(π/4)", 4)),
    ),
    "ambiguous/unit-below": Complaint(
        "the unit in “{found}” can belong to what divides or to the whole fraction",
        "put the fraction in brackets with the unit after it",
        examples=(("F_AB = 1200/sqrt(2) N", 8), ("F_AB = 12/(3 + 4) N", 8)),
    ),
}  # fmt: skip
