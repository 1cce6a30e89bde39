"""Many leads at one place: which of them leads to a short."""

from tests.sequence.heater import HEATER
from tests.troubleshoot.units import dictionary, number
from wirecheck.troubleshoot.dictionary import Dictionary

#: Three hot leads on the transformer: the burner's, a fan relay's, and a lamp's.
STAR = f"""{HEATER}part fan is relay
part lamp is lamp: 24 V, 2 VA
wire xfmr.R to fan.A
wire fan.B to xfmr.C
wire xfmr.R to lamp to xfmr.C
"""


def shown(known: Dictionary, fault: str) -> str:
    reading = known.by_key["ohms:star:xfmr.r:xfmr"]
    return reading.choices[int(known.value((number(known, fault),), reading))]


def test_the_lead_to_the_short_is_told() -> None:
    known = dictionary(STAR)
    names = {fault.site: fault.key for fault in known.faults if fault.mode == "lead-earthed"}
    for lead, name in enumerate(map(known.diagram.lead_name, known.diagram.leads)):
        if name.startswith("xfmr.R"):
            assert shown(known, names[f"lead:{lead}"]) == f"the lead {name}"
    assert shown(known, "as-drawn") == "none of them"
    assert shown(known, "coil-shorted:fan:coil") == "the lead xfmr.R to fan.A"
