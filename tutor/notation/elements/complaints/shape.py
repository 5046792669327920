"""What is said about the shape of an equation that cannot be read?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.elements.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    "no-equals": Complaint(
        "there is no = sign",
        "an equation sets two sides equal, such as 3/5 F_AB - 12 = 0",
        examples=(("3/5 F_AB - 12", 14), ("F_AB", 5)),
        placed=False,
    ),
    "two-equals": Complaint(
        "there are two = signs with nothing between them",
        "write one = sign, or what belongs between the two",
        examples=(("F_AB = = 12", 8),),
    ),
    "two-equals/chain": Complaint(
        "there is more than one equation, and one is meant here",
        "write “{found}” on a line of its own",
        examples=(("F_AB = 12 = F_AC", 13), ("A_x = 0, A_y = 6", 16)),
    ),
    "no-formula": Complaint(
        "“{found}” has no equation and no number in it",
        "write an equation such as 3/5 F_AB - 12 = 0, or a number",
        examples=(("by inspection", 1),),
    ),
    "letters": Complaint(
        "“{found}” says how large a letter is, and no equation stands beside it",
        "write both in one line, the letter first: {found}, and then the equation",
        examples=(("θ = 36.87°", 1), ("a = 4 m", 1), ("tan θ = 3/4", 1)),
    ),
    "two-sizes": Complaint(
        "“{found}” gives {name} another size than stands before it",
        "give {name} one size only",
        examples=(("tan θ = 3/4 ⇒ θ = 53.13°", 15), ("θ = 30°, θ = 60°", 10)),
    ),
    "empty-side": Complaint(
        "there is nothing {side} the = sign",
        "write something on both sides, 0 where nothing is left",
        examples=(("= 12", 1), ("F_AB =", 7), ("=", 1), ("F_AB = ", 7)),
    ),
    "brackets": Complaint(
        "the bracket “{found}” is never closed",
        "close it with “{partner}”",
        examples=(("3/5 (F_AB + F_AC = 12", 5), ("cos(30 F_AB = 0", 4), ("3/5 F_AB + ( = 0", 12)),
        values=(("(12", 1),),
    ),
    "brackets/unopened": Complaint(
        "the bracket “{found}” closes nothing",
        "take it out, or open it with “{partner}” before",
        examples=(("F_AB) = 12", 5), ("F_AB = 12)", 10)),
    ),
    "brackets/across": Complaint(
        "the bracket “{found}” is still open at the = sign",
        "close it with “{partner}” on its own side",
        examples=(("3(F_AB = 12)", 2),),
    ),
    "brackets/mixed": Complaint(
        "“{found}” cannot close “{opened}”",
        "close “{opened}” with “{partner}”",
        examples=(("3(F_AB + 2] = 0", 11), ("[F_AB} = 0", 6)),
    ),
    "brackets/empty": Complaint(
        "there is nothing in the brackets “{found}”",
        "write what belongs there, or take them out",
        examples=(("F_AB () = 0", 6), ("cos() F_AB = 0", 4)),
    ),
    "unfinished": Complaint(
        "nothing follows “{before}”",
        "write a number or a force after it, or take it out",
        examples=(("F_AB + = 0", 8), ("F_AB = 12 *", 12), ("(F_AB -) = 0", 8), ("2^ = F_AB", 4)),
        values=(("12 +", 5),),
    ),
    "operator": Complaint(
        "“{found}” comes right after “{before}”",
        "write a number or a force between the two, or take one out",
        examples=(("F_AB + * 3 = 0", 8), ("F_AB */ 3 = 0", 7), ("2^*3 F_AB = 0", 3)),
    ),
    "operator/first": Complaint(
        "nothing stands before “{found}”",
        "write a number or a force before it, or take it out",
        examples=(("*F_AB = 0", 1), ("F_AB = / 3", 8), ("(^2) F_AB = 0", 2)),
    ),
    "order": Complaint(
        "“{found}” cannot follow “{before}”",
        "write the operator that belongs between them, or brackets",
        examples=(("2^3^2 F_AB = 0", 4), ("30°° F_AB = 0", 4)),
    ),
    "argument": Complaint(
        "“{before}” has nothing to be taken of",
        "write it with its angle or number, such as {before}(30)",
        examples=(("F_AB cos = 12", 10), ("F_AB cos * 3 = 0", 10), ("F_AB (cos) = 0", 10)),
    ),
}  # fmt: skip
