"""Calls for service, simulated: a few of those that ``tests.benchmarks.service_calls`` makes."""

from statistics import mean

from tests.benchmarks.service_calls import MOST, row


def test_faults_are_named_by_few_readings() -> None:
    found = row("workshop-heater-one-rod", 30)
    assert found.silent + len(found.calls) == found.faults == 30
    assert all(call.named for call in found.calls)
    readings = [call.readings for call in found.calls]
    assert max(readings) <= MOST
    assert mean(readings) <= 5
    assert mean(readings) < mean(call.fixed for call in found.calls) / 1.5
