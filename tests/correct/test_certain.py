"""What ``check --fix`` makes: edits that leave fewer findings and no new one."""

from pathlib import Path

import pytest

import wirecheck
from tests.correct.heaters import HEATER, NO_BURNER_GROUND, SENSE_ON_SPARK, heater
from wirecheck.correct.certain import fixed

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.wiring"))


def test_each_finding_is_mended_by_itself() -> None:
    done = fixed(heater(SENSE_ON_SPARK, NO_BURNER_GROUND))
    assert {step.finding.rule for step in done.steps} == {"rod-on-spark", "burner-ground-missing"}
    assert done.text == HEATER
    assert not done.checked.findings


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_fewer_findings_are_left_and_none_is_new(path: Path) -> None:
    diagram = wirecheck.load(path).diagram
    before = wirecheck.check(diagram).findings
    done = fixed(diagram)
    assert len(done.checked.findings) <= len(before) - len(done.steps)
    assert {each.rule for each in done.checked.findings} <= {each.rule for each in before}
    if not done.steps:
        assert done.text == diagram.source.text
    assert not fixed(done.checked.diagram).steps
