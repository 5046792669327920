"""Which words are understood in a line, in which languages?

One table for headings, results and remarks: English, German, French, Spanish. Words are in small
letters without accents (`folded`). "→" and other signs stand here too.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from typing import Literal

Meaning = Literal[
    "T", "C", "left", "right", "up", "down", "against", "zero", "filler", "remark", "because",
    "sum", "force", "moment", "about", "resolve", "joint", "x", "y", "along", "across",
    "turn", "positive", "whole", "body", "number", "so", "and", "is", "where", "lead", "quantity",
]  # fmt: skip

DENYING = r"not|never|neither|nicht|kein\w*"
"""What denies whatever is said with it, for a regular expression."""

WAYS: tuple[Meaning, ...] = ("T", "C", "left", "right", "up", "down")
"""What a result says of the way a force acts."""

_WORDS: Mapping[Meaning, str] = {
    "T": """t tens ten tension tensile tensional tie ties pull pulled pulling pulls stretch stretched stretches stretching
        zug zugkraft zugstab zugbeansprucht gezogen gezogener traction tendu tendue tendus tendues etire etiree tirant
        traccion traccionado traccionada tirante tens. trek trekkracht trekstaaf trazione teso tesa""",
    "C": """c comp compr compression compressive compressed strut struts push pushed pushing pushes
        squash squashed squashes squashing thrust thrusts squeezed squeezes squeezing crushed crushing
        druck druckkraft druckstab druckbeansprucht gedruckt gedruckter comprime comprimee comprimes comprimees bielle
        compresion comprimida comprimido puntal druk drukkracht drukstaaf compressione compresso compressa puntone""",
    "left": "left leftward leftwards links gauche izquierda",
    "right": "right rightward rightwards rechts droite derecha",
    "up": "up upward upwards boven oben aufwarts haut arriba vers-le-haut",
    "down": "down downward downwards beneden unten abwarts bas abajo",
    "against": "against opposite reverse reversed contrary entgegen entgegengesetzt oppose opuesto contrario",
    "zero": """zero nil zfm zeroforce nullstab nullstabe nulstaaf nulstaven nulo nula nul nulle
        zero-force zero-force-member zeroforcemember""",
    "remark": """ans answer ok okay qed checked check tick result results sf dp sigfig sigfigs inspection
        symmetry symm sym approx approximately ca say rounded given known final antwort ergebnis reponse resultado
        ergebnis respuesta erg lsg ung""",
    "because": """because since by from off via using see per as due assuming after hence-by with-joint
        weil da aus wegen siehe car puisque depuis porque ya segun por laut note nb if when""",
    "filler": """the a an of in to for at on is acts acting act under member members bar rod force forces it its
        this that be being are was and or also in-the only so say side hand therefore
        der die das des dem den ein eine im ist wirkt wirkend stab kraft richtung auf zu nach zum zur von und mit
        het een van naar staaf staven asta le la les l un une est en du de barre effort agit vers sur et a
        el los las una es actua hacia barra fuerza y""",
    "sum": "sum sums sigma total summe somme suma sumatoria resultant resultante",
    "force": "force forces krafte kraft kraften efforts forces fuerza fuerzas f kraefte",
    "moment": "moment moments m mom moms momente momenten momento momentos torque torques momentengleichgewicht",
    "about": "about abt around round at um bezuglich autour respecto rispetto sobre punkt point",
    "resolve": """resolve resolving resolved resolution taking take takes consider considering isolate isolating examining equating equate
        equilibrium balance balancing balanced summing adding add writing apply applying gives give
        gleichgewicht kraftegleichgewicht equilibre equilibrio projection projections projecting projektion
        proyeccion sommes components component comp comps reactions eq eqm ggw""",
    "joint": """joint joints node nodes knoop jt jnt pin point support pt @ knoten knotenpunkt knotens noeud
        nudo nodo junta punkt lager auflager apoyo appui gelenk roller""",
    "x": """x horizontal horizontally horizontals horiz hor h horizontaal horizontale orizzontale horizontalement horizontales
        waagerecht waagrecht horizontalmente sideways xdir xdirection""",
    "y": """y vertical vertically verticals vert v verticaal verticale verticalement verticales senkrecht
        lotrecht vertikal verticalmente ydir ydirection vertikale""",
    "along": "along parallel langs entlang suivant selon parallele paralelo a-lo-largo largo",
    "across": "across perpendicular normal square perp senkrecht-zu rechtwinklig perpendiculaire perpendicular-to normal-to",
    "turn": """cw ccw acw clockwise clock anticlock anticlockwise counterclockwise counter-clockwise anti-clockwise
        uhrzeigersinn gegen horaire antihoraire anti""",
    "positive": "positive positiv positif positivo positiva ve pos taken",
    "whole": """whole entire complete overall global truss frame structure system ganzes gesamt fachwerk
        gesamtsystem ensemble treillis estructura armadura cercha all""",
    "body": """part section cut cuts cutting sectioning portion piece half fbd body diagram free teil schnitt partie coupe seccion corte
        left-hand right-hand lhs rhs rafter chord bottom top side diagonal post web slope incline member panel""",
    "number": """eq eqn eqns equ equation equations no nr number line step gl gleichung equation ec ecuacion
        zeile schritt etape paso ligne""",
    "so": """so hence thus therefore ie i.e i.e. that-is giving gives give whence thence implies
        folgt daraus ergibt also dus daher somit folglich mithin d.h d.h. dh donc alors dou soit luego entonces follows""",
    "and": "and und et plus-also",
    "is": "is equals ist est es vaut igual gleich",
    "lead": """we have get gets find obtain then now next first finally also too here there both equal
        carries carry nous avons wir haben gilt tenemos""",
    "quantity": """angle slope length height width span depth rise run panel arm distance hypotenuse hyp
        winkel lange hohe spannweite longueur hauteur portee altura longitud luz""",
    "where": "where with wobei mit avec ou con donde for let when using given as angle put set here since because",
}  # fmt: skip


def folded(word: str) -> str:
    """A word in small letters without accents."""
    if word.isascii():
        return word.lower()
    apart = unicodedata.normalize("NFD", word.lower())
    return "".join(char for char in apart if not unicodedata.combining(char)).replace("ß", "ss")


MEANINGS: Mapping[str, frozenset[Meaning]] = {
    word: frozenset(meaning for meaning, words in _WORDS.items() if word in words.split())
    for words in _WORDS.values()
    for word in words.split()
}
"""What each word may say; which of it depends on where it stands."""


def known_word(word: str) -> bool:
    """Whether a word is one of the lexicon, or no word at all."""
    bare = word.strip("()[]{}.,;:!?'\"")
    return sum(map(str.isalpha, bare)) < 4 or folded(bare) in MEANINGS


def says(word: str, *meanings: Meaning) -> bool:
    """Whether a word may say one of these."""
    return bool(MEANINGS.get(folded(word), frozenset()) & set(meanings))


def said(word: str, *meanings: Meaning) -> Meaning | None:
    """The first of these meanings that a word may have."""
    found = MEANINGS.get(folded(word), frozenset())
    return next((meaning for meaning in meanings if meaning in found), None)


_HEDGES = """about abt approx approx. approximately around round roughly circa ca ca. nearly almost exactly just maybe probably
    should must might could would has to be is it its it's that thats that's this comes came out works worked working ends ended as at
    still also again turns turned well yes ok so i we you think get got gets getting guess reckon make find found say ish the a an answer value of say so hopefully surely
    really actually truly
    etwa ungefahr rund zirka ca environ presque unos aproximadamente"""
HEDGES: frozenset[str] = frozenset(_HEDGES.split())
"""What is said before a value of how it was found and how sure it is."""

_SPEECH = """a an the this that these those it its it's he they we i you my our their there here thats that's theres there's heres
    is are was were be been being has have had having do does did dont don't doesnt doesn't didnt didn't isnt isn't arent aren't can
    cant can't will wont won't would should could must might may no not nothing none never only just also too again as same so such like
    both each either all any every other others another else more less most and or but because bc bcs bec b/c cuz coz since for if when
    while where which who what why how then than though although of in on at to from by with without w/ onto into over under through
    across between along behind about abt approx approximately roughly around nearly almost ish exactly sub subs subst subbing substitute
    substituting substituted plug plugging plugged put puts putting use uses using used insert inserting knowing know known recall remember
    get gets got getting give gives gave giving find found finding works working worked leaves leaving comes came coming ends ended makes
    made making means meaning meant say says guess think thought hope hopefully reckon sure surely obviously obv clearly certainly probably
    maybe perhaps indeed actually basically simply now still already before after earlier later ok okay yes yep yeah hm hmm phew lol haha well
    yay duh ofc obvs tbh finally done thanks please check checks checked checking note ie eg aka wrt ditto equal equals equally likewise similarly symmetric symmetrical
    by-the-way btw straight page seite cf etc usw vgl continued cont contd overleaf neg negative pos positive minus forgot forget remembering rounded
    weil da und oder auch nur kein keine keinen nichts gleich denn also wieder noch schon doch hier dort wie mit ohne aus von"""
SPEECH: frozenset[str] = frozenset(_SPEECH.split())
"""Words of ordinary language with which an aside beside an equation begins; none names anything of a truss."""
