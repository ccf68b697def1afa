"""The command line: where `pullcord` begins.

Exit codes: 0 clean, 1 findings or a failed build, 2 wrong usage.
"""

from __future__ import annotations

import io
import sys

import click

from pullcord.commands.build import build
from pullcord.commands.check import check
from pullcord.commands.diff import diff
from pullcord.commands.explain import explain
from pullcord.commands.fmt import fmt
from pullcord.commands.init import init
from pullcord.commands.join import join
from pullcord.commands.log import log
from pullcord.commands.new import new
from pullcord.commands.pack import pack
from pullcord.commands.print_ import print_
from pullcord.commands.review import review
from pullcord.commands.schema import schema
from pullcord.commands.serve import serve


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="pullcord")
def main() -> None:
    """Check diagnostic procedures and build them into a site for the shop."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


COMMANDS = (
    check,
    build,
    join,
    serve,
    pack,
    print_,
    review,
    log,
    explain,
    schema,
    fmt,
    diff,
    init,
    new,
)
for command in COMMANDS:
    main.add_command(command)
