"""The long run, by hand: `python -m tests.fuzz TARGET --runs N [--seed S] [--plain]`.

With atheris (the optional list `fuzz`) it follows the coverage of the package; `--plain`, or where
atheris is missing, every input is a seed after some changes. It stops at the first input for which
the property does not hold, and writes that input to a file. `--replay FILE` runs one again.
"""

from __future__ import annotations

import argparse
import atexit
import logging
import sys
import time
from collections.abc import Callable
from hashlib import sha256
from importlib.util import find_spec
from pathlib import Path
from random import Random

NAMES = ("loader", "limits", "plugin", "log")


class Tally:
    """How far a run has come."""

    def __init__(self, name: str, run: Callable[[bytes], None], keep: Path) -> None:
        """Begin to count."""
        self.name, self.run, self.keep = name, run, keep
        self.count, self.began, self.slowest = 0, time.monotonic(), 0.0

    def take(self, raw: bytes) -> None:
        """Run one input and count it; keep it in a file when it does not hold."""
        begun = time.process_time()
        try:
            self.run(raw)
        except BaseException:
            file = self.keep / f"{self.name}-{sha256(raw).hexdigest()[:12]}"
            file.write_bytes(raw)
            print(f"kept in {file}: {raw[:2000]!r}", flush=True)
            raise
        self.slowest = max(self.slowest, time.process_time() - begun)
        self.count += 1
        if self.count % 10000 == 0:
            self.tell()

    def tell(self) -> None:
        """Print what was done so far."""
        from tests.fuzz.bounds import peak_megabytes

        print(
            f"{self.name}: {self.count} inputs, {time.process_time():.0f} s of processor time, "
            f"{time.monotonic() - self.began:.0f} s, slowest {self.slowest:.2f} s, "
            f"at most {peak_megabytes()} MB",
            flush=True,
        )


def main() -> None:
    """Read the command line and run."""
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    parser.add_argument("target", choices=NAMES)
    parser.add_argument("--runs", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--plain", action="store_true")
    parser.add_argument("--keep", type=Path, default=Path())
    parser.add_argument("--replay", type=Path)
    given = parser.parse_args()
    is_guided = not given.plain and given.replay is None and find_spec("atheris") is not None
    if is_guided:
        import atheris

        with atheris.instrument_imports(include=["pullcord"]):
            from tests.fuzz import bounds, targets
    else:
        from tests.fuzz import bounds, targets
    target = targets.TARGETS[given.target]
    if given.replay:
        target(given.replay.read_bytes())
        return
    tally = Tally(given.target, lambda raw: bounds.hold_within_bounds(target, raw), given.keep)
    atexit.register(tally.tell)
    # What MkDocs says of each input belongs to nobody here.
    logging.getLogger("mkdocs").addHandler(logging.NullHandler())
    (run_guided if is_guided else run_plain)(tally, given.runs, given.seed)


def run_plain(tally: Tally, runs: int, seed: int) -> None:
    """Run inputs that are seeds after some changes."""
    from tests.fuzz.change import input_of

    draw = Random(seed)  # noqa: S311 # Nothing secret: the same number gives the same inputs.
    for _ in range(runs):
        tally.take(input_of(tally.name, draw))


def run_guided(tally: Tally, runs: int, seed: int) -> None:
    """Let atheris choose what to change: inputs that reach new code are changed further."""
    import atheris

    from tests.fuzz.change import change, input_of

    input_of(tally.name, Random(seed))  # noqa: S311 # The seeds are read before anything is timed.

    def mutate(raw: bytes, most: int, number: int) -> bytes:
        draw = Random(number)  # noqa: S311
        kind = draw.random()
        if kind < 0.2:
            return input_of(tally.name, draw)[:most]
        if kind < 0.3:
            return bytes(atheris.Mutate(raw, most))
        return change(tally.name, raw, draw)[:most]

    options = (f"-atheris_runs={runs}", f"-seed={seed}", "-max_len=9000", "-timeout=600")
    words = [sys.argv[0], *options, "-rss_limit_mb=0", "-verbosity=0"]
    atheris.Setup(words, tally.take, custom_mutator=mutate)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
