"""`pullcord schema`."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from pullcord.model.schema import KINDS, schema_text
from pullcord.source.modeline import schema_name

_OUTPUT = click.Path(path_type=Path)


@click.command()
@click.argument("kind", type=click.Choice(tuple(KINDS)), required=False)
@click.option("-o", "--output", type=_OUTPUT, help="The file for KIND, or the folder for them all.")
def schema(kind: str | None, output: Path | None) -> None:
    r"""Write the schema of a kind of file, by which an editor helps while one types.

    \b
    pullcord schema procedure         prints one
    pullcord schema -o schemas        writes them all into a folder
    """
    if kind is None and output is None:
        raise click.UsageError("name a kind of file, or say -o FOLDER for them all")
    if kind is not None and output is None:
        click.echo(schema_text(kind), nl=False)
        return
    texts = _texts(kind, output or Path())
    try:
        for path, text in texts.items():
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
    except OSError as error:
        click.echo(f"error: {error.filename} cannot be written: {error.strerror}", err=True)
        sys.exit(1)
    for path in texts:
        click.echo(f"The schema is {path}")


def _texts(kind: str | None, output: Path) -> dict[Path, str]:
    if kind is not None:
        return {output: schema_text(kind)}
    return {output / schema_name(each): schema_text(each) for each in KINDS}
