"""A law in the learner's own sentence: are the phrases that marks hang on there, in other words and order as well?

Only words are compared, so the learner has the last word and may tick a point all the same. Synonyms: common practice
of memos, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

# Words taken for one another; the first stands for all.
_SAME = (
    ("square", "squared", "squares", "²"),
    ("distance", "separation", "apart", "distances"),
    ("magnitude", "magnitudes", "size", "sizes", "strength"),
    ("proportional", "proportionally", "varies", "∝"),
    ("inversely", "inverse", "indirectly"),
    ("directly", "direct"),
    ("product", "multiplied", "times"),
    ("electrostatic", "electric", "electrical"),
    ("net", "resultant", "total", "unbalanced"),
    ("zero", "nought", "0"),
    ("sum", "addition", "added"),
    ("vector", "vectorial", "vectorially", "vectors"),
    ("each", "every", "all"),
    ("per", "for"),
    ("same", "equal", "equals", "=", "constant", "uniform", "unchanging", "unchanged", "conserved"),
    ("kinetic", "movement"),
    ("gravitational", "gravity"),
    ("centre", "center", "centers", "centres"),
    ("body", "object", "bodies", "objects", "particle", "particles"),
    ("mass", "masses"),
    ("observed", "detected", "heard", "perceived", "apparent"),
    ("frequency", "pitch"),
    ("rest", "stationary"),
    ("motion", "move", "moves", "moving"),
    ("slide", "slides", "sliding"),
    ("oppose", "opposes", "opposing"),
    ("tendency", "tends", "tend"),
    ("downwards", "downward", "down"),
    ("depend", "depends", "dependent"),
    ("increase", "increases", "increased", "increasing", "rises", "grows"),
    ("decrease", "decreases", "decreased", "decreasing"),
    ("minimum", "least", "lowest", "smallest", "minimal"),
    (
        *("emitted", "emit", "emission", "emitting", "ejected", "eject", "ejecting", "released", "release", "removed"),
        *("remove", "liberated", "liberate", "freed", "free", "escape", "leave", "expelled", "expel", "knock"),
    ),
    ("brighter", "brightly"),
    ("dimmer", "dimly"),
)
_ONE = {word: words[0] for words in _SAME for word in words}
_COUNT = r"(?:number|rate|amount) of (?:the |\w+ed )*(photons|electrons)((?: (?!not |and |but )\w+){0,5}?) "
_SUITABLE, _STAYS = " suitable frequency ", " stays the same "
# Turns of speech that say what a memo says in one word.
_TURNS = (
    (r"\br\s*(?:²|\^\s*2)", " distance square "),
    (r"\bat the same time\b", " simultaneously "),
    (r"\b(?:does not|doesn['’]t|not) depend(?:ent)? on\b", " independent of "),
    (r"\bkinetic and (?:the )?(?:gravitational )?potential energ(?:y|ies)\b", " total mechanical energy "),
    (r"\bno(?: other)? force (?:other )?than\b", " only force "),
    (r"\benergy is (?:transferred|expended|converted|delivered|used)\b", " work done "),
    (r"\benergy (?:transferred|converted|dissipated) per (?:unit (?:of )?time|second)\b", " rate work done "),
    (r"\bwork done by (?:the |a )?(?:cell|battery|source)\b", " energy "),
    (r"\bper unit (?:of )?charge\b", " per unit coulomb of charge "),
    (r"\bvoltages?\b", " potential difference "),
    (r"\badds?\b(?! up)", " add up "),
    (r"\bwork done per\b|\brate of (?:doing )?work\b", " rate work done "),
    (r"\bclosed system\b", " isolated system "),
    (r"\bat the top\b", " highest point "),
    (r"\bphoto-?electrons?\b", " electrons "),
    (r"\b(?:high|large) enough frequency|\bfrequency (?:(?:that|which) )?(?:is )?(?:high|large) enough", _SUITABLE),
    (r"\b(?:sufficient|appropriate|certain)(?:ly)?(?: high| large)? frequency", _SUITABLE),
    (r"\bfrequency (?:above|(?:equal to or )?(?:greater|higher) than|of at least) the thr\w+", _SUITABLE),
    (r"\bplanck(?: ?['’]?s)? constant (?:times|multiplied by) (?:the |its )?frequency", " proportional frequency "),
    (r"\b(?:larger|greater|higher|bigger) (?:number|amount) of\b", " more "),
    (r"\b(?:smaller|lower) (?:number|amount) of\b", " fewer "),
    (r"\be_?k\b", " kinetic energy "),
    (r"\b(?:photon energy|energy of (?:each|one|a) photon) (?:increases?|is (?:larger|greater))\b", " more energy "),
    (r"\b(?:is|are|remains?) (?:also |still )?(?:unchanged|constant|the same)\b", _STAYS),
    (r"\b(?:do|does|did|will|would)(?:n['’]t| not) change\b", _STAYS),
    (r"\b(?:is|are) (?:not (?:changed|affected)|unaffected)\b", _STAYS),
    (r"\bno change (?:in|of|to) ([^,.;:]*)", r" \1 unchanged "),
    (r"\b(?:larger|greater|bigger|higher) current\b", " current increases "),
    (r"\b(?:is|are) (?:larger|greater|bigger|higher)\b(?! than)", " increases "),
    (r"\b(?:is|are) (?:smaller|lower)\b(?! than)", " decreases "),
    (rf"\b{_COUNT}(?:increases?|rises?|grows?|is (?:larger|greater|higher))\b", r" more \1 \2 "),
    (rf"\b{_COUNT}(?:decreases?|falls?|drops?|is (?:smaller|lower))\b", r" fewer \1 \2 "),
    (r"\bno current\b", " current zero "),
    (r"\bnon-?zero\b", " "),  # a net force that acts is none that is zero
)
# What a word says besides itself.
_IMPLIED = {"conserved": ("before", "after"), "opposite": ("direction",)}
_DIRECTLY = {"directly", "proportional"}
# What a phrase may leave out without losing its sense.
_FILLERS = frozenset(
    (
        *(
            "a",
            "an",
            "the",
            "of",
            "to",
            "in",
            "is",
            "are",
            "and",
            "on",
            "it",
        ),
        *(
            "its",
            "their",
            "them",
            "that",
            "by",
            "at",
            "be",
            "will",
            "magnitude",
            "body",
            "test",
        ),
        *(
            "directly",
            "electrostatic",
            "other",
            "you",
            "we",
            "there",
            "amount",
            "linear",
            "which",
            "become",
            "need",
        ),
    )
)


def phrases_said(text: str, phrases: Sequence[str]) -> tuple[tuple[int, ...], tuple[str, ...]]:
    """The places of the phrases that ``text`` says, and a sentence for each known misstatement."""
    found, told = [], []
    for place, phrase in enumerate(phrases):
        wanted = _wanted(phrase)
        part = _part(text, wanted)
        missing = set(wanted) - _FILLERS - set(part)
        if "proportional" in _words(text) and set(wanted) - _DIRECTLY:  # said once, it holds for both
            missing.discard("proportional")
        if not missing:
            found.append(place)
            continue
        slip = _slip(missing, part, set(wanted))
        if slip:
            told.append(slip)
    return tuple(found), tuple(told)


def _slip(missing: set[str], part: Sequence[str], wanted: set[str]) -> str:
    """What is said of a known misstatement, by the word that is missing and the one that stands in its place."""
    of = "charges" if "charge" in wanted else "masses"
    if "square" in missing and "distance" in part:
        return "It is the square of the distance, not the distance itself."
    if "product" in missing and wanted & {"charge", "mass"}:
        if "sum" in part:
            return f"It is the product of the {of}, not their sum."
        return f"It is the product of the {of} that counts: say so." if wanted & set(part) & {"charge", "mass"} else ""
    if "net" in missing and "directly" in wanted and "mass" in part:
        return "The acceleration is directly proportional to the net force; to the mass it is inversely proportional."
    return ""


def _words(text: str) -> list[str]:
    """The words in small letters, one for each group of synonyms and without the s at their ends."""
    plain = text.casefold().translate(_LOWERED)
    for turn, words in _TURNS:
        plain = re.sub(turn, words, plain)
    found = re.findall(r"[^\W_]+|[²∝=]", plain)
    implied = [also for word in found for also in _IMPLIED.get(word, ())]
    return [_ONE.get(word) or _ONE.get(_single(word), _single(word)) for word in [*found, *implied]]


def _single(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us")) else word


_LOWERED = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
# A chain of reasons says of one quantity that it increases and of the next that it decreases.
_CHANGE = frozenset(("increase", "decrease", "brighter", "dimmer", "dark", "lit", "unaltered"))
# What the quantities of a circuit and their changes are called besides; small and capital letters count.
_CHANGE_TURNS = tuple(
    (re.compile(turn), words)
    for turn, words in (
        (r"(?i:\bterminal (?:p\.\s?d\.|pd|voltage))|\bV_?\s?ext\b", " terminal potential difference "),
        (r"(?i:\bp\.\s?d\.|\bpd\b|\bvoltage\b)", " potential difference "),
        (r"(?i:\b(?:voltmeter )?reading\b)", " terminal potential difference "),
        (r"\bV_?\s?p\b", " parallel potential difference "),
        (r"(?i:\bbranches\b)", " parallel "),
        (r"\bI\s?[×·*]?\s?r\b|(?i:\binternal (?:volts|potential difference))", " lost volts "),
        (r"(?i:\blost volts(?:\s+lost volts)+)", " lost volts "),
        (
            r"\bR_?\s?(?:T|tot|total|ext|eq)\b|(?i:\b(?:equivalent|effective|external|overall|combined|circuit)"
            r" resistance\b|\bresistance of the (?:whole |external |entire )?circuit\b)",
            " total resistance ",
        ),
        (r"\bI(?:_?\s?(?:T|tot|total))?\b(?!['’])", " total current "),
        (r"(?i:\b(?:lamp|bulb|lantern)\s?(?=[₁-₉\d]))", " L"),
        (r"(?i:\bmore bright(?:ly)?\b|\bbrightness (?:increases|goes up|rises)\b)", " brighter "),
        (r"(?i:\bless bright(?:ly)?\b|\bfainter\b|\bduller\b|\bbrightness (?:decreases|drops|falls)\b)", " dimmer "),
        (r"↑|(?i:\b(?:go(?:es)? up|larger|bigger|greater|higher|more|doubles|climbs?|raises?|rise)\b)", " increases "),
        (
            r"↓|(?i:\b(?:go(?:es)? down|drops?|falls?|smaller|lower(?:s|ed)?|less|fewer|weaker|reduce[ds]?|lessens?"
            r"|diminish(?:es)?|shrinks?|halves)\b)",
            " decreases ",
        ),
        (
            r"(?i:\b(?:go(?:es)? out|is off|stays dark|stops? glowing|no longer glows?"
            r"|does(?:n['’]t| not) (?:glow|light|shine))\b)",
            " dark ",
        ),
        (r"(?i:\b(?:lights? up|starts? (?:to glow|glowing)|switches on|begins to glow)\b)", " lit "),
        (r"(?i:\bas bright as before\b|\b(?:equally|just as) bright\b|\bsame brightness\b)", " unaltered "),
        (
            r"(?i:\b(?:stays?|remains?|is) (?:the same|constant|unchanged)\b|\bdoes(?:n['’]t| not) change\b)",
            " unaltered ",
        ),
        (r"(?i:\bbrightness (?:stays the same|does(?:n['’]t| not) change)\b)", " unaltered "),
    )
)
_CLAUSES = re.compile(
    r"(?<!\d)[.,]|[.,](?!\d)|[;:\n→⇒]|[-=]>|\b(?:so|therefore|thus|hence|because|since|as|then|and|but|while|which|causes"
    r"|causing|makes|making|leads to|results in|when)\b",
    re.IGNORECASE,
)
_DENIES = re.compile(r"\b(?:not|never|no)\b|n['’]t\b", re.IGNORECASE)


def _turned(text: str) -> str:
    for turn, words in _CHANGE_TURNS:
        text = turn.sub(words, text)
    return text


def _clause(text: str, wanted: Sequence[str]) -> list[str]:
    """The words of the clause that says most of a change, and does not deny it: what increases stands beside that
    word."""
    parts = [_words(part) for part in _CLAUSES.split(_turned(text)) if not _DENIES.search(part)]
    return max(parts, key=lambda part: len(set(wanted) & set(part)), default=[])


def _wanted(phrase: str) -> list[str]:
    """The words of a phrase; of one that says a change, with what it calls the quantity and the change in one way."""
    plain, turned = _words(phrase), _words(_turned(phrase))
    of_a_part = re.search("[₀-₉]", phrase) and _CHANGE & set(turned)  # "L₂ goes out"
    return turned if of_a_part or _CHANGE & set(plain) else plain


def _part(text: str, wanted: Sequence[str]) -> list[str]:
    """Where in the sentence a phrase belongs: what is inversely proportional stands behind that word, the rest not."""
    words = _words(text)
    if _CHANGE & set(wanted):
        return _clause(text, wanted)
    if "proportional" not in wanted:
        return words
    turn = next((place for place, word in enumerate(words) if word == "inversely"), len(words))
    back = next((place for place, word in enumerate(words) if word == "directly" and place > turn), len(words))
    return words[turn:back] if "inversely" in wanted else words[:turn] + words[back:]
