"""A file is named after what it holds.

`no-spark.yaml` holds `procedure: no-spark`, `old-pump.yaml` holds `machine: old-pump`. So a
procedure is found by its name, two people do not write the same one twice, and the address of its
page can be told from the file.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import PurePosixPath

from pullcord.finding import Flaw
from pullcord.model.base import Record, name_of
from pullcord.rules.example import example

ID = "wrong-file-name"

FAILING = {"pump.yaml": example("procedure: no-prime\n")}

MENDED = {"no-prime.yaml": example("procedure: no-prime\n")}


def check(files: Mapping[str, Record]) -> Iterator[tuple[str, Flaw]]:
    """Yield a file and a flaw for every file whose name is not that of what it holds."""
    for file, record in files.items():
        stem = PurePosixPath(file).stem
        kind, name = name_of(record)
        if stem != name:
            yield (
                file,
                Flaw(
                    (kind,),
                    f"the {kind} is called `{name}`, but the file `{stem}`",
                    f"rename the file to `{name}.yaml`, or the {kind}",
                ),
            )
