"""A file as an editor's YAML server sees it: by the core schema of YAML 1.2.2, section 10.3.2."""

from __future__ import annotations

import json
import re
from typing import Any, ClassVar

import jsonschema
import yaml

from pullcord.model.schema import schema_text


class CoreLoader(yaml.SafeLoader):
    """PyYAML's loader with the tag resolution of YAML 1.2 in place of that of 1.1."""

    yaml_implicit_resolvers: ClassVar[dict[str, Any]] = {}


for tag, pattern, first in (
    ("null", r"null|Null|NULL|~|", ["n", "N", "~", ""]),
    ("bool", r"true|True|TRUE|false|False|FALSE", list("tTfF")),
    ("int", r"[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+", list("-+0123456789")),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", list("-+.0123456789")),
):
    CoreLoader.add_implicit_resolver(
        f"tag:yaml.org,2002:{tag}", re.compile(f"^(?:{pattern})$"), first
    )


def as_editor(text: str) -> Any:
    """Return a file's data with the keys of JSON, which are all text."""
    data = yaml.load(text, Loader=CoreLoader)  # noqa: S506 (a safe loader)
    return json.loads(json.dumps(data))


def schema_faults(kind: str, data: Any) -> list[str]:
    """Return where data does not follow the schema of a kind of file, by `jsonschema`."""
    validator = jsonschema.Draft7Validator(json.loads(schema_text(kind)))
    return sorted("/".join(map(str, error.absolute_path)) for error in validator.iter_errors(data))
