"""What learners believe of intensity and frequency, in their own words: that brighter light frees faster electrons, or
any at all below the threshold, and that a higher frequency frees more of them.

The words are common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from calc.model.questions import Misstatement

SAY = "Intensity counts photons; frequency sets energy."
_NOT = (
    r"(?!(?:not|never|no|nor|none|nothing|nobody|neither|without|too|same|constant|unchanged|unaffected|stays?|remains?"
    r"|independent|less|fewer|smaller|slower|only one|if|whatever|regardless)\b)"
)
_GAP = rf"(?:{_NOT}[\w·]+ ){{0,4}}?"  # a few words between, none of which denies
_THEN = rf"(?:{_NOT}[\w·]+ |, ){{0,9}}?"  # the same across a comma or two
_FAR = f" {_THEN}"
_RISES = (
    r"(?:(?:will|would|must|should|also|then|therefore) )*(?:increas\w*|rises?|rising|grows?|growing|goes up|go up"
    r"|doubl\w*|(?:is|are|gets?|becomes?|be|being) (?:much |also |then |now |even )?(?:\w+ed|larger|greater|higher"
    r"|bigger|more|faster|stronger|twice|doubled)(?<!unchanged)(?<!reduced)(?<!decreased)(?<!based)(?<!related)"
    r"(?<!emitted)(?<!ejected)(?<!determined)(?<!needed)(?<!affected)(?<!given)(?<!used)(?<!fixed))"
)
_MORE = r"(?:more|greater|higher|larger|bigger|increased|extra|twice the|double the)"
_ELECTRONS = r"(?:(?:photo ?)?electrons?)"
_OF = rf"(?: of (?:the |each |every |all |all the |an? |these |those )?(?:\w+ )?(?:{_ELECTRONS}|photons?))?"
_ENERGY = (
    rf"(?:(?:maximum |max |photon |electron )?(?:kinetic energ(?:y|ies)|\be ?k(?: max)?|\bk e|\bke|kinetic energy max)"
    rf"|speeds?|velocity|velocities|energ(?:y|ies) of (?:the |each |every |a |one )?(?:\w+ )?(?:{_ELECTRONS}|photons?)"
    r"|photon energ(?:y|ies)|stopping potential)"
)
_RATE = (
    r"(?! (?:per|each|every|a|in (?:one|a|each|total)|altogether|arrives?|falls?|reach\w*) ?(?:second|unit|time"
    r"|on|the)?)"
)
_FASTER = (
    rf"(?:\b{_ENERGY}{_OF} {_GAP}{_RISES}"
    rf"|\b(?:{_ELECTRONS}|photons?|they) {_GAP}(?:faster|quicker|speed\w* up|more energetic|at (?:a )?(?:higher"
    rf"|greater)"
    r" (?:speed|velocity))\b"
    rf"|\b(?:{_ELECTRONS}|photons?|they|one|each|it) {_GAP}{_MORE} (?:maximum |max |kinetic |speed |and )*(?:energy"
    rf"|speed|velocity|ke|e ?k|force|momentum)\b{_RATE}"
    rf"|\b{_MORE} (?:maximum |max )?(?:kinetic energ(?:y|ies)|speeds?|velocity|ke|e ?k)\b"
    rf"|\b(?:faster|quicker|more energetic|higher energy) (?:{_ELECTRONS}|photons)"
    rf"|\bmore (?:kinetic )?energy (?:for|to|per) (?:each |every |an? )?{_ELECTRONS}"
    rf"|\b(?:increases?|raises?|doubles?|boosts?|increasing|affects?|influences?|changes?|determines?|sets?) (?:the"
    rf" |their |its |also |both |current |and )*{_ENERGY}\b"
    rf"|\bso (?:does|do|will|must|is|are) (?:the |their |its )*{_ENERGY}\b"
    rf"|\b{_ENERGY}{_OF} (?:also )?(?:depends? (?:up)?on|is (?:directly )?proportional to|is (?:determined|set|given"
    rf"|affected|influenced) by) (?:the )?(?:light )?(?:intensity|brightness)"
    rf"|\b(?:makes?|making|pushes|kicks?|knocks?|gives?) (?:the |them |all )*{_ELECTRONS}? ?(?:go |move |fly |leave"
    r" |out |off )*(?:faster|quicker|harder)\b)"
)
_EMITTED = r"(?:emitted |ejected |released |freed |free |liberated |of the |such |many )*"
_MANY = (
    rf"(?:\b(?:more|a (?:larger|greater|higher) (?:number|amount) of|extra|twice as many) {_EMITTED}(?:{_ELECTRONS}"
    r"|photons)\b(?! (?:energy|speed))"
    rf"|\b(?:number|amount|rate|quantity) of (?:the )?{_EMITTED}(?:{_ELECTRONS}|photons)(?: \w+ed| per second"
    rf"| each second| that (?:are )?\w+)* {_RISES}"
    rf"|\b(?:rate of emission|emission rate)(?: of \w+)? {_RISES}"
    rf"|\b(?:photo ?)?current {_GAP}{_RISES}"
    r"|\bso (?:does|do|will|must|is) the (?:saturation |photo ?)*(?:current|number of (?:\w+ )?electrons)\b"
    rf"|\b(?:more|larger|greater|higher|bigger|stronger|increased) (?:saturation |electric |photo ?)*current\b"
    rf"|\b(?:increases?|raises?|doubles?|increasing|boosts?) (?:the |also |both )*(?:saturation |electric |photo ?"
    r")*current\b)"
)
_BRIGHT = (
    r"(?:\b(?:bright\w*|stronger|strong|intens\w+) (?:\w+ )?(?:light|beam|lamp|source|radiation|rays)"
    r"|\bmore (?:light\b|intensity|brightness)"
    r"|\b(?:light|lamp|beam|source|radiation|it) (?:(?:is|gets|becomes|shines|made|being|has|been|much|more|was|as)"
    r" )*(?:bright\w*|stronger|intense\w*)"
    r"|\b(?:greater|higher|high|larger|increas\w*|rais\w*|bigger|doubl\w*)(?: (?:the|an?|its"
    r"|in))*(?: light(?: s)?)? (?:intensity"
    r"|brightness)"
    r"|\b(?:intensity|brightness)(?: of (?:the |its )?\w+)? (?:(?:is|was|gets|becomes|has|also|been|will|be|would"
    r"|have|to|must) )*(?:increas\w*"
    r"|rais\w*|rises?|grows?|goes up|higher|greater|larger|doubl\w*|stronger)"
    r"|\b(?:twice|double) the (?:intensity|brightness|power)|\bbright(?:er|en\w*)\b)"
)
_HIGH = (
    r"(?:\b(?:when|if|as|since) f (?:is |gets |becomes )*(?:increas\w*|rais\w*|rises?|grows?|goes up|higher|greater"
    r"|larger)"
    r"|\b(?:higher|high|larger|greater|bigger|more|increas\w*|rais\w*|doubl\w*)(?: (?:the|an?|its|in))*(?: light"
    r"| photon)?"
    r" frequenc(?:y|ies)"
    r"|\bfrequency(?: of (?:the |its )?\w+)? (?:(?:is|was|gets|becomes|has|also|been|will|be) )*(?:increas\w*|rais\w*"
    r"|rises?|grows?|goes up|higher|greater|larger|doubl\w*)"
    r"|\bshorter wavelengths?|\bwavelength (?:is |gets |becomes )*(?:shorter|smaller|decreas\w*)"
    r"|\b(?:ultraviolet|uv|violet|blue) light)"
)
_IF = r"(?:\bif (?:[\w·]+ ){0,4}?)?"
_BY = (
    r"(?: (?:(?:are|is|will be|get|be) \w+|leave|escape|come out)(?: per second| each second)?)? ?,? (?:because|as"
    r"|since|when|if|with|in|for|under|by|through|from|due to|at|the more|whenever) "
)
_BUT_NOT = r"\bnot (?:because|since|that)\b"
_TURNED_UP = (
    rf"{_BUT_NOT}|{_HIGH}|\b(?:frequency|colour) (?:sets|decides|determines)"
    r"|\bdepends? (?:\w+ )?on (?:the )?(?:frequency|colour)"
)

FASTER = Misstatement(
    "brighter-faster",
    (
        rf"{_IF}{_BRIGHT}{_FAR}{_FASTER}",
        rf"{_FASTER}{_BY}{_THEN}{_BRIGHT}",
        rf"{_FASTER} with (?:the )?(?:light )?(?:intensity|brightness)\b",
        r"\bthe (?:brighter|stronger|more intense|(?:higher|greater|larger|more) (?:the )?(?:light )?(?:intensity"
        r"|brightness))(?: the \w+)?(?: is)? ?,? (?:then )?the (?:(?:faster|quicker|more energetic)|(?:higher|greater"
        rf"|larger|more|bigger) (?:the |their |is )*(?:{_ENERGY}|energy))",
        rf"\b{_ENERGY}{_OF} (?:also )?(?:depends? (?:up)?on|is (?:directly )?proportional to|is (?:determined|set|given"
        r"|affected|influenced) by) (?:the )?(?:light )?(?:intensity|brightness)",
        rf"\b(?:intensity|brightness)(?: of (?:the )?\w+)? (?:also )?(?:increases?|affects?|influences?|changes?"
        rf"|determines?|sets?) (?:the |their |its |also |both )*{_ENERGY}\b",
    ),
    f"{SAY} Brighter light of the same frequency frees more electrons, not faster ones.",
    "unchanged",
    unless=_TURNED_UP,
)
# Where the part itself says that the light is brighter, nobody need say it again.
FASTER_HERE = replace(FASTER, says=(*FASTER.says, _FASTER))
FREES_MORE = Misstatement(
    "higher-more",
    (
        rf"{_IF}{_HIGH}{_FAR}{_MANY}",
        rf"{_MANY}{_BY}{_THEN}{_HIGH}",
        rf"{_MANY} with (?:the )?frequency\b",
        r"\bthe (?:higher|greater|larger) (?:the )?frequency(?: of the \w+)?(?: is)? ?,? (?:then )?the (?:more"
        rf" {_EMITTED}{_ELECTRONS}|(?:higher|greater|larger|more|bigger) (?:the |is )*(?:saturation |photo ?)?current"
        r"|(?:higher|greater|larger) the number of (?:\w+ )?electrons)",
        r"\b(?:number of (?:the )?(?:\w+ )?electrons(?: \w+ed)?|current) (?:also )?(?:depends? (?:up)?on|is (?:directly"
        r" )?proportional to|is (?:determined|set|given) by) (?:the )?(?:light )?frequency",
    ),
    f"{SAY} A higher frequency gives an electron more energy; it does not free more of them.",
    "current",
    unless=rf"{_BUT_NOT}|{_BRIGHT}",
)
FREES_MORE_HERE = replace(FREES_MORE, says=(*FREES_MORE.says, _MANY))
_OUT = (
    r"(?:emit(?:s|ted)?|emission|eject(?:s|ed)?|free(?:s|d)?|releas(?:es?|ed)|liberat(?:es?|ed)|escapes?|comes? out"
    r"|come"
    r" off|get out|leaves?|leave|knock(?:s|ed)? (?:\w+ )?(?:out|off)|set free|jump out|enough energy"
    r"|work(?:s)?)\b(?! (?:is"
    r" |does |would |will |remains |stays )*(?:not|no|impossible|fails?|function))"
)
ENOUGH = Misstatement(
    "bright-enough",
    (
        rf"{_IF}{_BRIGHT}{_FAR}{_OUT}",
        rf"{_IF}\b(?:bright|strong|intense) enough{_FAR}{_OUT}",
        rf"\b(?:(?:{_ELECTRONS}|they|it) {_GAP}{_OUT}|emission {_GAP}(?:occurs?|starts?|happens?|takes place)"
        rf"){_BY}{_THEN}(?:{_BRIGHT}|(?:bright|strong|intense) enough)",
        r"\bnot (?:bright|strong|intense) enough\b|\b(?:light|lamp|beam) (?:is|was) too (?:weak|dim|faint)\b",
        r"\byes ?,? (?:but )?(?:only )?(?:if|when) (?:[\w·]+ ){0,5}(?:bright|intens|strong)",
        rf"{_IF}{_BRIGHT}{_FAR}(?:gives?|produces?|causes?|makes?) (?!more )(?:a |the |some )?(?:\w+ )?(?:current"
        rf"|electrons)\b",
        r"\b(?:two|several|many) photons (?:\w+ ){0,2}?(?:have|has|gives?|make|bring|are) (?:\w+ ){0,2}?enough",
        r"\bmore photons(?: (?!but|yet|each|one|only|not|no|none|nor|never|still|whose|too|less|of|without|nothing"
        r"|every"
        rf")[\w·]+| ,){{0,8}}? {_OUT}",
        rf"\b(?:photons|energ(?:y|ies)|they) {_GAP}(?:add(?:s)? up|build(?:s)? up|accumulat\w+|pile up|adds? together"
        r"|work together|combine)\b",
        rf"\b(?:{_ELECTRONS}|it) {_GAP}(?:absorb|take|collect|get|receive|gather|use|is hit by|be hit by)(?:s"
        rf"|ing)? (?:several"
        r"|many|more|two|more than one|multiple|a lot of|lots of|enough|all the) photons\b",
        rf"\b(?:{_ELECTRONS}|it|metal) {_GAP}(?:collect|save|gather|store|build|accumulate)s?(?: up)? (?:enough "
        rf"|up )?(?:of"
        r" the )?energy\b",
        rf"\b(?:after|wait\w*|given) (?:a while|some time|long enough|enough time|a (?:long|short) time|more time"
        rf"){_FAR}{_OUT}",
    ),
    f"{SAY} Below the threshold no photon has enough for an electron, however many arrive.",
    "one photon",
    unless=_TURNED_UP,
)
LIGHT = (FASTER, FREES_MORE)
DARK = (ENOUGH, FASTER, FREES_MORE)
