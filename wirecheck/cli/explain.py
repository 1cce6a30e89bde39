"""``wirecheck explain``: what a rule or a property asks for, why, and the mistake it finds."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from wirecheck.cli.options import debug_option, form_option
from wirecheck.cli.printing import page, print_json, print_lines

if TYPE_CHECKING:
    from wirecheck.report.rules import Explained


@click.command("explain")
@click.argument("names", nargs=-1, metavar="RULE ...")
@click.option(
    "--all", "every", is_flag=True, help="Explain every rule and property: the reference."
)
@form_option
@debug_option
def command(names: tuple[str, ...], every: bool, form: str) -> None:  # noqa: FBT001
    """Explain a rule: why it is there, what it finds, a wrong diagram and the right one.

    So are the properties: what must hold in every position of the switches.
    """
    import wirecheck
    from wirecheck.check.text_rules import TEXT_RULES
    from wirecheck.report.rules import rules_json, rules_text

    if every == bool(names):
        raise click.UsageError("name one or more rules, or ask for all of them with --all")
    known = (*wirecheck.rule_names(), *wirecheck.property_names(), *TEXT_RULES)
    rules = [_explained(_known(name, known)) for name in names or known]
    if form == "json":
        print_json(rules_json(rules))
    else:
        print_lines(rules_text(rules, page()))


def _explained(name: str) -> Explained:
    import wirecheck
    from wirecheck.check.text_rules import TEXT_RULES
    from wirecheck.report.rules import explained, explained_property, explained_text_rule

    if name in TEXT_RULES:
        return explained_text_rule(TEXT_RULES[name])
    if name in wirecheck.property_names():
        return explained_property(wirecheck.property_called(name))
    return explained(wirecheck.rule(name))


def _known(name: str, known: tuple[str, ...]) -> str:
    """The name as the rule has it; for one that is not there say which was meant."""
    from wirecheck.model.nearest import nearest

    if name.lower() in known:
        return name.lower()
    near = nearest(name, known)
    hint = f"did you mean {near}?" if near else "wirecheck explain --all lists them"
    raise click.UsageError(f"there is no rule {name!r}; {hint}")
