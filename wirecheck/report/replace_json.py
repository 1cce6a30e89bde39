"""A replacement as JSON: the form is published as ``shared/schemas/replace.json``."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wirecheck.correct.proof import Proof
from wirecheck.replace.replacement import Replacement
from wirecheck.replace.variants import VariantThen
from wirecheck.replace.words import AFTERWARDS, old_mistakes
from wirecheck.report.check_json import SCHEMA, finding_json, problem_json
from wirecheck.report.check_text import CAUTIONS
from wirecheck.report.replace_files import ReplaceFile, verdict

Json = dict[str, Any]


def replace_json(file: ReplaceFile) -> Json:
    """Return the document of a replacement."""
    done = file.replacement
    return {
        "schema": SCHEMA,
        "file": file.file,
        "variant": None,
        "title": file.title,
        "problems": [problem_json(problem) for problem in file.problems],
        "refused": list(file.refused),
        "cautions": [*CAUTIONS, *AFTERWARDS],
        "old_mistakes": (old_mistakes(done) or None) if done else None,
        "devices": list(_devices(done)) if done else [],
        "crossings": _crossings(done) if done else [],
        "left_over": list(done.left_over) if done else [],
        "to_run": [new._asdict() for new in done.missing] if done else [],
        "tasks": [task.words for task in done.tasks] if done else [],
        "gas_side": list(done.plan.gas_side) if done else [],
        "old_comments": list(done.old_comments) if done else [],
        "set_aside": list(done.set_aside) if done else [],
        "before": _state(done.before, file.does_before) if done else None,
        "after": _state(done.proof, file.does_after) if done else None,
        "refuted": list(done.refuted) if done else [],
        "variants": [_variant(each) for each in done.variants] if done else [],
        "text": done.text if done else None,
        "text_problems": list(done.problems) if done else [],
        "written": file.written or None,
        "drawings": list(file.drawings),
        "sentence": verdict(file),
    }


def _devices(done: Replacement) -> Iterator[Json]:
    request = done.plan.request
    for swap in request.swaps:
        new = swap.new
        yield _device(swap.old.name, "replaced", swap.old.kind.name, new.kind, new.stated)
    for device in request.fitted.values():
        yield _device(device.name, "fitted", None, device.kind, device.stated)
    for part in done.plan.out:
        yield _device(part.name, "taken-out", part.kind.name, None, None)


def _device(part: str, happens: str, old: str | None, new: str | None, stated: str | None) -> Json:
    return {"part": part, "happens": happens, "old": old, "new": new, "stated": stated}


def _crossings(done: Replacement) -> list[Json]:
    return [
        {
            "wire": each.wire,
            "colour": each.colour,
            "other_end": each.other,
            "off": each.off,
            "to": each.to or None,
            "wrong": each.wrong or None,
        }
        for each in done.crossings
    ]


def _variant(then: VariantThen) -> Json:
    return {
        "variant": then.name,
        "findings": [finding_json(finding) for finding in then.proof.checked.findings],
        "trouble": list(then.proof.trouble),
        "problems": list(then.problems),
    }


def _state(proof: Proof, does: tuple[str, ...]) -> Json:
    return {
        "does": list(does),
        "findings": [finding_json(finding) for finding in proof.checked.findings],
        "trouble": list(proof.trouble),
    }
