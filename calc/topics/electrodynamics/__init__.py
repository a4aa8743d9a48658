"""Electrodynamics: magnetic flux, induced emf and its direction, generators and motors, alternating current."""

from __future__ import annotations

from calc.model.questions import Topic
from calc.topics.electrodynamics.direction import DIRECTION
from calc.topics.electrodynamics.dynamo import DYNAMO
from calc.topics.electrodynamics.emf import INDUCTION
from calc.topics.electrodynamics.flux import COIL
from calc.topics.electrodynamics.flux_graph import FLUX_GRAPH
from calc.topics.electrodynamics.kiln import KILN
from calc.topics.electrodynamics.laws import FARADAY, FLUX, GENERATOR, LENZ, MOTOR, ROOT_MEAN_SQUARE
from calc.topics.electrodynamics.line import LINE
from calc.topics.electrodynamics.machines import MACHINES
from calc.topics.electrodynamics.peak import TURNING
from calc.topics.electrodynamics.rms import ALTERNATING
from calc.topics.electrodynamics.search_coil import SEARCH
from calc.topics.electrodynamics.stream import STREAM
from calc.topics.electrodynamics.trace import TRACE

TOPIC = Topic(
    key="electrodynamics",
    title="Electrodynamics",
    laws=(FLUX, FARADAY, LENZ, GENERATOR, MOTOR, ROOT_MEAN_SQUARE),
    questions=(
        COIL,
        INDUCTION,
        DIRECTION,
        MACHINES,
        TURNING,
        ALTERNATING,
        LINE,
        FLUX_GRAPH,
        TRACE,
        SEARCH,
        KILN,
        STREAM,
        DYNAMO,
    ),
    cautions=(
        "Strong magnets snap together and trap fingers: bring them close slowly. Keep them away from pacemakers and"
        " other implants, phones and bank cards.",
        "A coil with many turns gives a spark and a shock when its circuit is opened: switch the supply off first and"
        " keep the voltage low.",
        "Turning shafts and belts catch hair, sleeves and fingers: tie back what hangs loose.",
        "No experiment here uses the mains: take a low-voltage supply made for schools, and never open a plug,"
        " appliance or transformer. Local rules and the supervising teacher come first.",
    ),
)
