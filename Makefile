# Two commands: `make demo` builds the demo site, `make test` checks everything.
# Both set up what they need in .venv; nothing else has to be installed by hand.

PYTHON ?= $(shell for p in python3 python3.14 python3.13 python3.12 python3.11; do \
	$$p -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null && { echo $$p; break; }; done)
BIN := .venv/bin
export PIP_DISABLE_PIP_VERSION_CHECK := 1
export PIP_CONSTRAINT := constraints.txt
export PYTHONUTF8 := 1

.PHONY: demo site test lint types unit browser golden kills clean

demo: .venv/for-use
	$(BIN)/pullcord build --config demo/mkdocs.yml
	@echo
	@echo "The demo shed is built. Open this file in a browser:"
	@echo "  $(CURDIR)/demo/site/index.html"

site: .venv/for-use
	$(BIN)/pullcord build --strict

test: lint types unit browser

lint: .venv/for-work
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/pullcord check --strict procedures
	$(BIN)/pullcord fmt --check procedures demo

types: .venv/for-work
	$(BIN)/mypy

unit: .venv/for-work
	$(BIN)/pytest --ignore tests/browser -n 2 --dist loadfile

browser: .venv/for-work
	$(BIN)/python -m tests.browser.chromium
	$(BIN)/pytest tests/browser -n 2 --dist loadfile

# Write the expected outputs anew; read the diff before committing it.
golden: .venv/for-work
	PULLCORD_GOLDEN=write $(BIN)/pytest --ignore tests/browser -k golden

# Kill 200 builds at random moments, some of them in the swap of the sites; takes about eight minutes.
kills: .venv/for-work
	PULLCORD_KILLS=200 $(BIN)/pytest -s tests/test_faults.py -k killed

.venv/for-use: pyproject.toml constraints.txt
	@test -n "$(PYTHON)" || { echo "Python 3.11 or newer is needed: install it, or say make PYTHON=/path/to/python3"; exit 2; }
	$(PYTHON) -m venv .venv || { echo "Python's venv module is missing; on Debian and Ubuntu: apt-get install python3-venv"; exit 2; }
	$(BIN)/python -m pip install --quiet --editable .
	@touch $@

.venv/for-work: .venv/for-use
	$(BIN)/python -m pip install --quiet --editable '.[dev]'
	@touch $@

clean:
	rm -rf .venv .cache site demo/site build dist .mypy_cache .ruff_cache .pytest_cache .hypothesis
