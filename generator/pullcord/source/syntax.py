"""The YAML library's complaints, said in the words of someone who writes YAML twice a year."""

from __future__ import annotations

import re

import yaml

from pullcord.source.flaw import Mark, TextFlaw

QUOTE_IT = "put the whole value in double quotes"

_PLAIN_WORDS: tuple[tuple[str, str, str], ...] = (
    (
        "mapping values are not allowed",
        "a key with its colon cannot stand here",
        "line the key up with its neighbours, and see whether the line above lacks its colon "
        "or a space after it",
    ),
    (
        "could not find expected ':'",
        "this line has no colon, so it is neither a key nor part of the text above",
        "write `key: value`, or indent the line deeper to go on with the text above",
    ),
    (
        "unexpected end of stream|found unexpected document indicator",
        "this quote is never closed",
        "put the same kind of quote at the end of the value",
    ),
    (
        "character .*that cannot start any token",
        "a value cannot begin with this character",
        QUOTE_IT,
    ),
    (
        "unknown escape character|did not find expected hexdecimal|expected escape sequence|"
        "invalid Unicode character escape",
        "a backslash inside double quotes has a meaning of its own, and this one has none",
        "write two backslashes, or use single quotes",
    ),
    (
        "expected ',' or '[\\]}]'",
        "this bracket is never closed, or a comma is missing behind it",
        "close it, or write one item a line",
    ),
    (
        "expected key|expected <block end>|expected '-' indicator",
        "this line does not line up with the lines before it, or something stands behind a "
        "finished value",
        "give keys of one level the same indent; put a value with quotes or brackets inside it "
        "in double quotes as a whole",
    ),
    (
        "sequence entries are not allowed",
        "a list item cannot begin on the same line as its key",
        "begin the list on the next line, or put the value in double quotes if it is text",
    ),
    (
        "expected alphabetic or numeric|expected tag URI|undefined tag handle|expected '!'|"
        "while parsing a tag|expected URI",
        "a value that begins with `*`, `&` or `!` has a special meaning in YAML",
        QUOTE_IT,
    ),
    (
        "expected comment or line break|expected chomping or indentation|indentation indicator",
        "the text behind `|` or `>` must begin on the next line",
        "begin it on the next line, indented",
    ),
    (
        "expected (the )?node content",
        "a value is missing here, or it begins with a character that needs quotes",
        QUOTE_IT,
    ),
    (
        "expected '?<document start>'?|directive|incompatible YAML document",
        "this does not belong to the document above",
        "keep one document in the file, without lines that begin with `%`, `---` or `...`",
    ),
)


_AT_ITS_START = "end of stream|expected ',' or|expected ':'|alphabetic or numeric|tag|URI"


def read_syntax_error(error: yaml.YAMLError, text: str) -> TextFlaw:
    """Return the error as a flaw in plain words, at the line the author should look at."""
    problem = str(getattr(error, "problem", None) or error)
    place = _mark_of(error, problem)
    if "mapping values" in problem and _is_second_colon(text, place):
        return TextFlaw(
            place,
            "yaml-syntax",
            "a colon and a space inside a value look like another key",
            QUOTE_IT,
        )
    if "nesting depth" in problem:
        message = "this is nested far too deep"
        return TextFlaw(place, "too-deep", message, "close the brackets that are open")
    for pattern, message, mend in _PLAIN_WORDS:
        if re.search(pattern, problem):
            return TextFlaw(place, "yaml-syntax", message, mend)
    return TextFlaw(place, "yaml-syntax", f"this cannot be read: {problem[:120]}", QUOTE_IT)


def _mark_of(error: yaml.YAMLError, problem: str) -> Mark:
    """Return where it was noticed, or where it began, where that says more."""
    noticed = getattr(error, "problem_mark", None)
    began = getattr(error, "context_mark", None)
    is_at_its_start = re.search(_AT_ITS_START, problem)
    mark = (began if is_at_its_start else None) or noticed or began
    return Mark(mark.line + 1, mark.column + 1) if mark else Mark(1, 1)


def _is_second_colon(text: str, place: Mark) -> bool:
    lines = text.split("\n")
    line = lines[place.line - 1] if place.line <= len(lines) else ""
    return re.search(r":\s", line[: place.column - 1]) is not None
