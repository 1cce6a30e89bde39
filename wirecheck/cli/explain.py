"""``wirecheck explain``: what a rule asks for, why, and the mistake it finds."""

from __future__ import annotations

import click

from wirecheck.cli.options import debug_option, form_option
from wirecheck.cli.printing import page, print_json, print_lines


@click.command("explain")
@click.argument("names", nargs=-1, metavar="RULE ...")
@click.option("--all", "every", is_flag=True, help="Explain every rule: this is the reference.")
@form_option
@debug_option
def command(names: tuple[str, ...], every: bool, form: str) -> None:  # noqa: FBT001
    """Explain a rule: why it is there, what it finds, a wrong diagram and the right one."""
    import wirecheck
    from wirecheck.report.rules import explained, rules_json, rules_text

    if every == bool(names):
        raise click.UsageError("name one or more rules, or ask for all of them with --all")
    known = wirecheck.rule_names()
    rules = [explained(wirecheck.rule(_known(name, known))) for name in names or known]
    if form == "json":
        print_json(rules_json(rules))
    else:
        print_lines(rules_text(rules, page()))


def _known(name: str, known: tuple[str, ...]) -> str:
    """The name as the rule has it; for one that is not there say which was meant."""
    from wirecheck.model.nearest import nearest

    if name.lower() in known:
        return name.lower()
    near = nearest(name, known)
    hint = f"did you mean {near}?" if near else "wirecheck explain --all lists them"
    raise click.UsageError(f"there is no rule {name!r}; {hint}")
