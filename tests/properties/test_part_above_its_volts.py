"""Too many volts for a part, and what is none: a pilot generator on the valve made for it."""

from wirecheck import check, load_text

MILLIVOLT = """\
part stat is thermostat
part limit is high-limit
part valve is millivolt-gas-valve
part pilot is standing-pilot-burner
part pile is thermopile
wire pile.PLUS to valve.GEN
wire pile.MINUS to valve.C
wire valve.GEN to limit to stat to valve.CALL: red, 18 AWG
"""


def found(text: str) -> set[str]:
    return {finding.rule for finding in check(load_text(text).diagram).findings}


def test_a_millivolt_heater_is_right() -> None:
    """750 mV with nothing connected, about half of that under load (common practice, no source)."""
    assert found(MILLIVOLT) == set()


def test_24_volts_on_a_millivolt_operator_are_told() -> None:
    wrong = MILLIVOLT.replace("wire pile.PLUS to valve.GEN", "part x is transformer").replace(
        "wire pile.MINUS to valve.C", "wire x.R to valve.GEN\nwire x.C to valve.C"
    )
    assert {"part-above-its-volts", "millivolt-valve-on-control-circuit"} & found(wrong)
