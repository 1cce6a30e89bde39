"""Diagnoses as JSON: the form is published as ``shared/schemas/troubleshoot.json``."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from wirecheck.report.check_json import SCHEMA, finding_json, problem_json
from wirecheck.report.fault_chart_text import chart_json
from wirecheck.report.troubleshoot_files import TroubleshootFile, summary
from wirecheck.troubleshoot.diagnosis import Advice, Diagnosis, Ending, Group
from wirecheck.troubleshoot.fault import Fault
from wirecheck.troubleshoot.modes import modes
from wirecheck.troubleshoot.reading import Observation, Reading

Json = dict[str, Any]


def troubleshoot_json(files: Sequence[TroubleshootFile]) -> Json:
    """Return the document of a run."""
    return {
        "schema": SCHEMA,
        "files": [_file(file) for file in files],
        "summary": {
            "files": len(files),
            "diagnoses": sum(file.diagnosis is not None for file in files),
            "problems": sum(len(file.problems) for file in files),
            "sentence": summary(files),
        },
    }


def _file(file: TroubleshootFile) -> Json:
    return {
        "file": file.file,
        "problems": [problem_json(problem) for problem in file.problems],
        "findings": [finding_json(finding) for finding in file.mistakes],
        "diagnosis": diagnosis_json(file.diagnosis) if file.diagnosis else None,
        "chart": chart_json(file.chart) if file.chart else None,
        "drawings": list(file.drawings),
    }


def diagnosis_json(diagnosis: Diagnosis) -> Json:
    """Return one diagnosis."""
    return {
        "observations": [_observation(each) for each in diagnosis.observations],
        "groups": [_group(group) for group in diagnosis.groups],
        "next": _advice(diagnosis.advice) if diagnosis.advice else None,
        "ending": _ending(diagnosis.ending) if diagnosis.ending else None,
        "remarks": list(diagnosis.remarks),
        "left_bits": round(diagnosis.left_bits, 4),
    }


def _observation(observation: Observation) -> Json:
    return {
        "reading": observation.reading.key,
        "low": _number(observation.low),
        "high": _number(observation.high),
        "words": observation.words,
        "known": not observation.is_missing,
        "line": observation.span.line if observation.span else None,
    }


def _number(value: float) -> float | None:
    """A number of JSON: an open circuit, and what is not known, have none."""
    return value if math.isfinite(value) else None


def _group(group: Group) -> Json:
    return {
        "probability": round(group.probability, 6),
        "repair": list(group.repair),
        "suspects": [
            {
                "probability": round(suspect.probability, 6),
                "what": suspect.what,
                "faults": [_fault(fault) for fault in suspect.faults],
                "against": [observation.words for observation in suspect.disagrees],
            }
            for suspect in group.suspects
        ],
    }


def _fault(fault: Fault) -> Json:
    mode = modes()[fault.mode]
    return {
        "fault": fault.key,
        "mode": fault.mode,
        "what": fault.what,
        "repair": fault.repair,
        "likelihood": mode.likelihood,
        "likelihood_from": mode.source,
    }


def _advice(advice: Advice) -> Json:
    return {
        "reading": _reading(advice.reading),
        "gain_bits": round(advice.gain_bits, 4),
        "outcomes": [
            {
                "words": outcome.words,
                "value": _number(outcome.value),
                "probability": round(outcome.probability, 6),
                "points_to": outcome.points_to,
            }
            for outcome in advice.outcomes
        ],
        "after_that": [_reading(reading) for reading in advice.others],
    }


def _reading(reading: Reading) -> Json:
    return {
        "reading": reading.key,
        "how": reading.kind,
        "stage": reading.stage.value,
        "ask": reading.ask,
        "unit": reading.unit,
        "choices": list(reading.choices),
        "minutes": reading.cost,
        "cautions": list(reading.cautions),
    }


def _ending(ending: Ending) -> Json:
    return {
        "sure": ending.is_sure,
        "repair": list(ending.repair),
        "proof": list(ending.proof),
        "cautions": list(ending.cautions),
    }
