"""What learners believe of current, in their own words: that it is used up, and that the cell fixes it.

The words are common practice, no source.
"""

from __future__ import annotations

from calc.model.questions import Misstatement

SAY = "The cell doesn't fix current; total R does."
_GAP = r"(?:(?!not\b|never\b|no\b|nor\b)[\w·]+ ){0,3}?"  # a few words between, none of which denies
_LAMP = (
    r"(?:(?:lamp|bulb|lantern|light|motor|resistor|resistance|rheostat|component|device|load)s?(?: [lr]?\d+)?|[lr]\d+)"
)
_CELL = r"(?:cells?|batter(?:y|ies)|sources?|suppl(?:y|ies)|emf)"
_ADVERBS = (
    r"(?:(?:always|still|only|just|all|already|partly|mostly|slowly|gradually|then|now|also|first|being|completely"
    r"|shared|divided|and) )*"
)
_PASSES = r"(?:pass|go|flow|move|travel|run|get|leav)\w*"
_LESS = (
    r"(?:decreas\w*|drops?|falls?|lessens?|weakens?|diminish\w*|shrinks?|reduces?|loses strength|(?:gets?|becomes?|is"
    r"|grows?) (?:less|smaller|weaker|lower|reduced)(?: and \w+)?)"
)
_END = r"(?= ?(?:[,.]|$|(?:so|because|and|than|as)\b))"
_SOME = r"(?:some|part|most|all|much|half)"

USED_UP = Misstatement(
    "current-used-up",
    (
        # the current is used up; the current used by the first lamp; it is turned into light
        rf"\b(?:current|charges?|electrons) (?:that |which )?(?:is|are|gets?|was|were|has been|had been|will be"
        rf"|becomes)"
        rf" {_ADVERBS}(?:used(?! (?:to|in|for|as|here|when)\b)|consumed|eaten|swallowed|exhausted|depleted|drained"
        r"|spent|lost|burn\w+ up|finished|(?:converted|turned|transformed|changed) into)\b",
        rf"\bcurrent (?:[\w·]+ |, ){{0,6}}?(?:because|since|as|so) it (?:is|gets) {_ADVERBS}(?:used up|consumed)\b",
        r"\bcurrent (?:used(?: up)? (?:by|along|on)|runs out|ran out|loses strength)\b",
        # the first lamp uses some of the current
        rf"\b(?:{_LAMP}|one|it|they|each|first|second) {_GAP}(?:us(?:es?|ed|ing) (?:{_SOME}|up)|us(?:es?|ed"
        rf"|ing)(?= (?:the "
        r"|its |their )?(?:electric |total )?current)|consum(?:es?|ed|ing)|eats?(?: up)?|swallows?|absorbs?|drains?"
        rf"|takes? away) (?:(?:{_SOME}|of|up|the|its|any|their|this|more|less) )*(?:electric |total )?current\b",
        # less current is left for the second one
        r"\b(?:less|little|not enough|too little|smaller|weaker) current (?:(?:is|will be|was) )?(?:left"
        r"|remaining|over)\b",
        r"\b(?:there (?:is|will be) (?:less|too little) left|leav(?:es|ing) (?:less|too little|a smaller|a weaker)"
        rf" current for|current {_GAP}left (?:for|over))\b",
        # the current becomes weaker along the circuit, after each lamp
        rf"\bcurrent {_GAP}{_LESS} (?:more and more |bit by bit |gradually )?(?:along(?! with)|a?round the|(?:as|when"
        rf"|while|each time) it {_PASSES}|after (?:passing|going|flowing|each|every|it (?:passes|goes|has))|past (?:the"
        rf"|each)|from (?:lamp|one)|(?:with|at) (?:each|every) {_LAMP}|after (?:the )?(?:first "
        rf"|second )?{_LAMP}{_END})",
        rf"\bcurrent {_PASSES} (?:through |past |along )?(?:the |each |a )?(?:\w+ )?{_LAMP}(?: ,)? it {_LESS}",
        r"\b(?:less|smaller|weaker|lower) current (?:(?:comes|coming|flows|flowing|goes) )?(?:out of|leav(?:es|ing)"
        rf"|past|behind|beyond|after) (?:the |each )?(?:first |second )?{_LAMP}{_END}",
    ),
    f"Current is not used up: as much leaves a lamp as enters it. {SAY}",
    "current",
)
_SAME = (
    r"(?:(?:will|must|should|then|still|always|also|just|only|simply) )*(?:(?:stays?|stayed|remains?|remained|is|are|be"
    r"|keeps?|was) (?:(?:being|always|still|exactly|just|at) )*(?:the same|constant|fixed|unchanged|unaffected|steady"
    r"|what it was|as before|as it was)|(?:does|do|did|will|has|have|can|is|are|should) not (?:really )?(?:chang\w*"
    r"|alter\w*|var(?:y|ied)|affected|influenced|depend\w* on the (?:total )?resistance)|never chang\w*)"
)
_GIVES = (
    r"(?:(?:giv|provid|produc|driv|mak)(?:es?|ing)|suppl(?:y|ies|ying)|(?:deliver|pump|send|put|output"
    r"|offer)(?:s|t?ing)?"
    r"|push(?:es|ing)?|has)(?: out)?"
)
_KIND = r"(?:fixed|constant|same|certain|steady|unchanging|set|equal)"
_ELSEWHERE = r"(?! (?:in|through|for|across) (?:the )?(?:[lr]\d|lamp|bulb|other|remaining|surviving|that|first|second))"
FIXED = Misstatement(
    "current-fixed",
    (
        # the (total) current stays the same
        rf"(?<!its )(?<![lr]\d s )(?<!lamp s )\bcurrent (?:(?:(?:from|of|in|out of|through|(?:supplied|given) by|that"
        rf" leaves|leaving) the (?:whole |main )?(?:{_CELL}|circuit)|supplied|of [\d·]+ a) )?{_SAME}{_ELSEWHERE}",
        rf"\b(?:total|main) current (?:is|stays) (?:still )?[\d·]+ ?a {_ADVERBS}as before"
        rf"|\btotal current is still [\d·]+",
        rf"\bi (?:is|stays|remains) (?:fixed|constant|the same)\b{_ELSEWHERE}",
        # the cell gives the same current
        rf"\b(?:{_CELL}|it) {_GAP}{_GIVES} {_ADVERBS}(?:(?:a|an|the|exactly|this) )*{_KIND}(?: (?:amount of|value of"
        r"|size of))? (?:electric |total )?current\b(?! (?:to|through|in) (?:both|the two))",
        rf"\b{_CELL} (?:still|always) {_GIVES} [\d·]+ ?a\b|\b(?:constant|fixed) current (?:source|supply)\b",
        rf"\b{_KIND} (?:total |amount of )?current (?:as before )?(?:comes|flows|leaves|is (?:\w+ing|supplied|given))"
        rf" (?:out of|from|out from|by) the {_CELL}\b|\bstill the same current\b{_ELSEWHERE}",
        # the current is fixed by the cell
        rf"\bcurrent (?:is|are) (?:always )?(?:fixed|set|determined|decided|given)(?: only| just)? by the {_CELL}(?!"
        r" (?:and|s|emf|with)\b)",
        rf"\bcurrent (?:(?:only|just) depends|depends (?:only|just)) on the {_CELL}\b"
        rf"|\b{_CELL} (?:fixes|sets|determines|decides) the (?:\w+ )?current",
        # the same current is shared by fewer; what passed one lamp now passes the other
        r"\bsame (?:total |amount of )?current (?:now|still|then|has to|have to|must|will (?:now|still)|is (?:now|still"
        r"|then|shared|divided)|divides|splits)\b",
        rf"\bcurrent (?:(?:that |which )?(?:first )?(?:went|flowed|passed|flowing|going|passing|used to \w+|was"
        rf"|had) (?:\w+ )"
        rf"{{0,4}}?|(?:that |which )|(?:in|of|from|through) (?:the )?)(?:{_LAMP}|other one) (?:(?:had|before|took) )*"
        r"(?:(?:is|now|will|must|has to|can|also|then|all) )*(?:goes?|flows?|pass(?:es)?|moves?|added|diverted"
        r"|redirected"
        r"|available|shared|adds)\b",
        rf"\b(?:gets?|takes?|receives?|has) (?:(?:all|the|both|also) )*(?:{_LAMP}"
        rf"|other one) s (?:share of (?:the )?)?current\b",
    ),
    f"{SAY} Another total resistance means another current from the same cell.",
    "current",
    unless=r"\bseries\b|everywhere|throughout|\bboth sides\b|before and after|\b(?:in|at|through) (?:each|every|all)\b"
    r"|\bjunction\b",
)
CURRENT = (USED_UP, FIXED)
