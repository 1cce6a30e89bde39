"""``wirecheck sequence``: what it prints, writes and returns."""

from __future__ import annotations

import pytest

from tests.cli.command_line import UNKNOWN_KIND, CommandLine
from tests.sequence.heater import HEATER, changed, without

UNGROUNDED = without(HEATER, "wire box.GND to pilot.HOOD")


def test_the_end_comes_first_and_then_the_table(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f'diagram "Bench heater"\n{UNGROUNDED}')
    answer = wirecheck("sequence", "heater.wiring", "--call", "120 s")
    assert answer.code == 0
    assert answer.out == (
        """\
heater.wiring: Bench heater
  box: pilot lights, spark goes on, main never opens: no path back for the flame
    signal: no lead joins pilot.HOOD and box.GND; after 90 s it waits 5 min and
    tries again

    0 s  call                  on
         box                   trial      the call has reached the ignition: gas
                                          and spark
         valve pilot operator  on
         spark                 on
         pilot flame           lighting
    2 s  pilot flame           on
         flame signal          no signal  no path back for the flame signal: no
                                          lead joins pilot.HOOD and box.GND
   90 s  box                   wait       no flame proved in the trial: wait
         valve pilot operator  off
         spark                 off
         pilot flame           off
         flame signal          0 uA
  120 s  call                  off
         box                   idle       the call has ended

1 diagram run: no danger seen. What a run does not show is not thereby safe.
"""
    )


def test_a_danger_is_said_and_gives_1(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f"{HEATER}jumper valve.PV to valve.MV\n")
    answer = wirecheck("sequence", "heater.wiring")
    assert answer.code == 1
    assert "danger, at 0 s: main gas flows with no flame proved, for 3 s" in answer.out
    assert "1 diagram run: 1 danger seen." in answer.out


def test_what_is_on_before_the_call_is_in_the_table(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f"{HEATER}wire xfmr.R to box.TH\n")
    out = wirecheck("sequence", "heater.wiring").out
    before, _call, _after = out.partition("    0 s  call")
    rows = [line.split()[-3:] for line in before.splitlines()]
    assert ["pilot", "operator", "on"] in rows
    assert any(row[-2:] == ["spark", "on"] for row in rows)
    assert not any(row[-2:] == ["power", "on"] for row in rows)


def test_what_only_rusty_metal_does_is_a_possible_danger(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", without(HEATER, "wire xfmr.C to box.COM"))
    answer = wirecheck("sequence", "heater.wiring")
    assert "box: nothing happens: no 24 V at box.TH: no way from xfmr.C to box.COM" in answer.out
    assert "where rusty metal conducts and weak coils act: box: lights and runs" in answer.out
    assert "possible danger, at 0 s: the current of box goes back" in answer.out
    assert answer.code == 1


def test_the_view_chooses_the_table(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", without(HEATER, "wire xfmr.C to box.COM"))
    assert "  proving  " not in wirecheck("sequence", "heater.wiring").out
    assert "  proving  " in wirecheck("sequence", "heater.wiring", "--view", "danger").out


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["--open", "limit"], "box: nothing happens: no 24 V at box.TH: limit stands open"),
        (["--open", "limit at 1 min"], "but stops 60 s after the call"),
        (["--gas-off"], "spark, but no gas: the gas is off"),
        (["--dirty-rod"], "a flame signal of 0.7 uA, 1 uA are needed: the rod is dirty"),
        (["--false-flame"], "does not start: a flame signal is there before the trial"),
        (["--flame-lost", "60"], "lights again once"),
        (["--power-lost", "60", "--power-back", "2 min"], "lights again once"),
        (["--power-lost", "60"], "but stops 60 s after the call: the power is off"),
        (["--calls", "stat"], "lights and runs"),
    ],
)
def test_options(wirecheck: CommandLine, options: list[str], words: str) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("sequence", "heater.wiring", *options)
    assert words in " ".join(answer.out.split())
    assert answer.code == 0


def test_long_retries_are_told_twice(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("sequence", "heater.wiring", "--gas-off", "--call", "100 min")
    assert "…  the same again every 390 s, 13 times more, until 5940 s" in answer.out


def test_a_switch_that_is_not_there_is_a_problem_of_that_file(wirecheck: CommandLine) -> None:
    wirecheck.file("a.wiring", HEATER)
    wirecheck.file("b.wiring", changed(HEATER, (" limit ", " high ")))
    answer = wirecheck("sequence", "a.wiring", "b.wiring", "--open", "limit")
    assert answer.code == 2
    assert "a.wiring: a" in answer.out
    assert "b.wiring:1:1: problem: there is no part “limit”" in answer.out
    assert "1 diagram run: no danger seen, 1 problem." in answer.out


@pytest.mark.parametrize("time", ["soon", "3 kg", "25 V", "100000"])
def test_a_time_that_is_none_is_a_wrong_call(wirecheck: CommandLine, time: str) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("sequence", "heater.wiring", "--call", time)
    assert answer.code == 2
    assert "Invalid value for '--call'" in answer.err


def test_what_cannot_be_read_gives_2_and_the_rest_runs(wirecheck: CommandLine) -> None:
    wirecheck.file("good.wiring", HEATER)
    wirecheck.file("odd.wiring", UNKNOWN_KIND)
    answer = wirecheck("sequence", "good.wiring", "odd.wiring", "missing.wiring")
    assert answer.code == 2
    assert "good.wiring: good" in answer.out
    assert "missing.wiring: not run" in answer.out
    assert "odd.wiring:2:" in answer.out


def test_json_has_both_runs(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", UNGROUNDED)
    document = wirecheck("sequence", "heater.wiring", "--as", "json").document
    (file,) = document["files"]
    assert [run["view"] for run in file["runs"]] == ["operation", "danger"]
    assert file["runs"][0]["outcomes"][0]["outcome"] == "not-proved"
    assert {"time_s": 2.0, "track": "pilot flame", "state": "on", "reason": ""} in file["runs"][0][
        "changes"
    ]
    assert document["summary"] == {"files": 1, "dangers": 0, "problems": 0}


@pytest.mark.parametrize("picture", ["svg", "png"])
def test_the_picture_is_written_where_it_is_wanted(wirecheck: CommandLine, picture: str) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("sequence", "heater.wiring", "--picture", picture, "--out", "sheets")
    assert answer.code == 0
    assert f"drawn: sheets/heater-sequence.{picture}" in answer.out
    assert (wirecheck.folder / f"sheets/heater-sequence.{picture}").stat().st_size > 1000


def test_two_files_of_one_name_do_not_share_a_picture(wirecheck: CommandLine) -> None:
    wirecheck.file("a/heater.wiring", HEATER)
    wirecheck.file("b/heater.wiring", HEATER)
    answer = wirecheck("sequence", "a", "b", "--picture", "svg")
    assert answer.code == 2
    assert "is the timeline of a/heater.wiring already" in answer.out


def test_without_a_control_the_loads_are_shown(wirecheck: CommandLine) -> None:
    wirecheck.file(
        "zone.wiring",
        """\
part x is transformer
part t is thermostat
part z is zone-valve
wire x.R to t to z to x.C
""",
    )
    answer = wirecheck("sequence", "zone.wiring")
    assert answer.code == 0
    assert "no ignition control is drawn: only contacts and loads are shown" in answer.out
    assert "   60 s  z        open\n" in answer.out


def test_each_variant_is_run_too(wirecheck: CommandLine) -> None:
    wirecheck.file("a.wiring", f"{HEATER}variant v\nremove wire box.GND to pilot.HOOD\nend\n")
    answer = wirecheck("sequence", "--as", "json", "--picture", "svg", "a.wiring")
    base, variant = answer.document["files"]
    assert (base["variant"], variant["variant"]) == (None, "v")
    outcomes = [each["runs"][0]["outcomes"][0]["outcome"] for each in (base, variant)]
    assert outcomes == ["runs", "not-proved"]
    assert variant["picture"] == "a-variant-1-sequence.svg"
    assert (wirecheck.folder / "a-variant-1-sequence.svg").exists()
    assert answer.document["summary"]["files"] == 1
    assert "a.wiring: a, variant v\n" in wirecheck("sequence", "a.wiring").out


def test_a_switch_that_a_variant_has_not_is_its_problem(wirecheck: CommandLine) -> None:
    removed = "variant v\nremove part limit\nwire xfmr.R to stat\nend\n"
    wirecheck.file("a.wiring", HEATER + removed)
    answer = wirecheck("sequence", "--open", "limit", "--as", "json", "a.wiring")
    assert answer.code == 2
    base, variant = answer.document["files"]
    assert (base["problems"], len(variant["problems"])) == ([], 1)
