"""`pullcord explain`."""

from __future__ import annotations

import click

from pullcord.commands.say import paint
from pullcord.model.nearest import did_you_mean
from pullcord.rules.report.explain import rule_list, rule_names, rule_page


@click.command()
@click.argument("rule", default="")
def explain(rule: str) -> None:
    """Say what a rule is for, with an example put right; without RULE, list every rule.

    RULE is what stands in brackets behind a finding.
    """
    name = rule.strip("[]")
    if name and name not in rule_names():
        near = did_you_mean(name, rule_names(), "`pullcord explain` lists them all")
        raise click.UsageError(f"there is no rule `{name}`; {near}")
    for line in rule_page(name) if name else rule_list():
        click.echo("".join(paint(role, text) for role, text in line))
