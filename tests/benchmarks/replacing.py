"""Asks for replacements at random, in right examples and in ones with mistakes, and judges them.

``python -m tests.benchmarks.replacing [--requests N] [--seed N]`` prints a line of figures:

* met: the new diagram was made; refused: it was not, with a reason;
* astray: the request was met, and the new text has a problem, or does not run what was planned;
* worse: met where the diagram as found was right, and what came of it is not.

It returns 1 if any request went astray or made a right diagram worse, and fails on a crash.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter
from time import process_time

import wirecheck
from tests.benchmarks.campaign import EXAMPLES, RIGHT
from wirecheck.language.edit import apply, move_end, remove_lead
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Edit
from wirecheck.replace.replacement import Replacement
from wirecheck.replace.request import CannotReplaceError

_CONTROLS = (
    "pilot-ignition-control",
    "pilot-ignition-control: one-rod",
    "pilot-ignition-control: two-rod, sense-link fitted",
    "pilot-ignition-control: damper-socket no",
    "direct-ignition-control",
)
_VALVES = ("", "gas-valve-3-wire", "gas-valve-2-wire", "gas-valve-3-wire: single-seat")
_BURNERS = ("", "pilot-burner", "pilot-burner: one-rod", "direct-burner")
_LABELS = (
    "",
    'labels c: TH as "COM", COM as "TH", GND as "1"\n',
    'labels c: TH as "to", COM as "wire", SENSE as "# 2"\n',
)
#: Whole units of the range take long; the others have everything it has.
_SMALL = [name for name in RIGHT if name != "greenhouse-range"]


def asked(chance: random.Random) -> str:
    """New devices, one or several."""
    control, valve, burner = map(chance.choice, (("", *_CONTROLS), _VALVES, _BURNERS))
    parts = [
        f"part {name} is {kind}\n"
        for name, kind in zip("cvb", (control, valve, burner), strict=True)
        if kind
    ]
    labels = chance.choice(_LABELS) if control else ""
    return "".join([*parts, labels]) or "part c is pilot-ignition-control\n"


def mistaken(diagram: Diagram, chance: random.Random) -> Diagram:
    """The diagram with up to two leads taken out or landed anywhere."""
    for _ in range(chance.randrange(3)):
        edit = _mistake(diagram, chance)
        if edit is not None:
            built = wirecheck.load_text(apply(diagram.source.text, [edit]))
            diagram = diagram if built.problems else built.diagram
    return diagram


def _mistake(diagram: Diagram, chance: random.Random) -> Edit | None:
    number = chance.randrange(len(diagram.leads))
    if chance.random() < 0.5:
        return remove_lead(diagram, number)
    places = [
        part.terminal(name)
        for part in diagram.parts.values()
        for name, spec in part.structure.terminals.items()
        if not spec.inner
    ]
    return move_end(diagram, number, diagram.leads[number].a, chance.choice(places))


def verdict(done: Replacement) -> str:
    """What became of a request that was met."""
    leads = len(done.found.leads) - len(done.left_over) + len(done.missing)
    if done.problems or len(done.after.leads) != leads:
        return "astray"
    return "worse" if done.before.holds and done.new_mistakes else "met"


def main(arguments: list[str] | None = None) -> int:
    """Run it, print the figures, and return 1 if one is not as it should be."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--requests", type=int, default=500, help="so many")
    parser.add_argument("--seed", type=int, default=1, help="the same requests each time")
    options = parser.parse_args(arguments)
    chance = random.Random(options.seed)  # noqa: S311 - no secret hangs on it
    texts = [(EXAMPLES / f"{name}.wiring").read_text(encoding="utf-8") for name in _SMALL]
    counted: Counter[str] = Counter()
    started = process_time()
    for _ in range(options.requests):
        found = mistaken(wirecheck.load_text(chance.choice(texts)).diagram, chance)
        new = asked(chance)
        try:
            done = wirecheck.replace(found, wirecheck.load_text(new).diagram)
        except CannotReplaceError:
            counted["refused"] += 1
            continue
        counted[verdict(done)] += 1
        if verdict(done) != "met":
            print(f"{verdict(done)}: {found.title}:\n{new}")
    rate = options.requests / (process_time() - started)
    columns = ("met", "refused", "astray", "worse")
    print("  ".join(f"{counted[column]} {column}" for column in columns) + f"  {rate:.0f} a second")
    return 1 if counted["astray"] or counted["worse"] else 0


if __name__ == "__main__":
    sys.exit(main())
