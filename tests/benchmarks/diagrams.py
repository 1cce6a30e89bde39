"""Valid diagrams of any size: the same burner wired over and over, each with its own supply."""

UNIT = """\
part line-{n} is mains: 120 V
part xfmr-{n} is transformer: primary 120 V, secondary 24 V, rating 40 VA
part limit-{n} is high-limit
part stat-{n} is thermostat: anticipator 0.75 A
part box-{n} is pilot-ignition-control: pilot two-rod, trial 90 s, wait 5 min
part valve-{n} is gas-valve-3-wire: pilot 0.2 A, main 0.4 A
part pilot-{n} is pilot-burner: two-rod
wire line-{n}.L1 to xfmr-{n}.L1: black, 14 AWG
wire line-{n}.N to xfmr-{n}.N: white, 14 AWG
wire line-{n}.G to earth: green, 14 AWG
wire xfmr-{n}.R to limit-{n} to {more}stat-{n} to box-{n}.TH: red, 18 AWG, 12 ft
wire xfmr-{n}.C to box-{n}.COM: blue, 18 AWG
wire xfmr-{n}.C to earth: green, 18 AWG
plug box-{n} to valve-{n}: PV, MV, VC to C
wire box-{n}.SPARK to pilot-{n}.SPARK: ignition-cable, 24 in
wire box-{n}.SENSE to pilot-{n}.ROD
wire box-{n}.GND to pilot-{n}.HOOD: green"""

LEADS_OF_A_UNIT = 14


def statements(leads: int) -> list[str]:
    """Wire as many burners as make exactly so many leads, one statement a line.

    The leads that do not make a whole burner put more limits into the safety chains: each such
    limit lengthens its chain by one lead.

    Args:
        leads: at least the 14 of one burner.
    """
    units, left_over = divmod(leads, LEADS_OF_A_UNIT)
    lines: list[str] = []
    for number in range(1, units + 1):
        limits = left_over // units + (number <= left_over % units)
        names = [f"limit-{number}-{letter}" for letter in "abcdefghijklm"[:limits]]
        lines += [f"part {name} is high-limit" for name in names]
        more = "".join(f"{name} to " for name in names)
        lines += UNIT.format(n=number, more=more).splitlines()
    return lines
