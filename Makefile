# `make run` opens the live floor on the demo offence, `make test` passes the tests; each first sets up what it needs in .venv.

VENV := .venv
BIN := $(VENV)/bin
LOCKS := requirements-build.lock requirements.lock

# Only pinned and hashed wheels are installed: nothing is built, so no unpinned build tool is ever fetched.
PIP := $(BIN)/python -m pip --disable-pip-version-check --quiet install
LOCKED := $(PIP) --require-hashes --only-binary :all:
COMPILE := UV_CUSTOM_COMPILE_COMMAND="make lock" $(BIN)/uv pip compile --no-config --quiet --universal \
  --python-version 3.11 --generate-hashes --no-annotate --no-emit-index-url --no-emit-find-links

.DEFAULT_GOAL := help
.PHONY: help setup run test lint bench lock clean

help: ## say what can be made
	@sed -n 's/^\([a-z]*\):.*## /make \1: /p' Makefile

run: $(VENV)/.runs ## open the live floor on the demo offence; without a terminal, print what a proof finds and a possession
	@$(BIN)/backcut

setup: $(VENV)/.develops ## everything needed to run, test and change Backcut, in .venv

test: setup ## pass the tests; `make test TESTS=tests/court` passes a part of them
	$(BIN)/pytest -n 2 --dist loadfile $(TESTS)

lint: setup ## style, types, the scripts' own tests, and that imports point one way
	$(BIN)/ruff check
	$(BIN)/ruff format --check
	$(BIN)/mypy
	$(BIN)/lint-imports --no-logo
	@if command -v tsc >/dev/null; then echo tsc --project .; tsc --project .; else echo "No tsc here (Debian: node-typescript): the scripts' types are not checked."; fi
	@if command -v node >/dev/null; then echo node --test tests/js; node --test tests/js/*.test.js; else echo "No node here (Debian: nodejs): the scripts' own tests are skipped."; fi

bench: setup ## measure: run every file in benchmarks/
	@set -e; for bench in $(sort $(wildcard benchmarks/[a-z]*.py)); do echo "== $$bench"; $(BIN)/python $$bench; done

lock: setup ## write the locks from pyproject.toml; `make lock NEWER=--upgrade` takes the newest of everything
	$(COMPILE) $(NEWER) --group pyproject.toml:build --output-file requirements-build.lock
	$(COMPILE) $(NEWER) pyproject.toml --output-file requirements.lock
	$(COMPILE) $(NEWER) --group pyproject.toml:dev $(LOCKS:%=--constraint %) --output-file requirements-dev.lock

clean: ## take away .venv and everything else that was made
	rm -rf $(VENV) out dist build .pytest_cache .mypy_cache .ruff_cache .import_linter_cache .hypothesis
	find . -name __pycache__ -type d -prune -exec rm -rf {} +

# The stamps say what .venv holds: the first what Backcut runs with, the second what its tests need besides.
$(VENV)/.runs: $(LOCKS) pyproject.toml Makefile | $(BIN)/pip
	@echo "Setting up what Backcut runs with, in $(VENV) ..."
	@$(LOCKED) $(LOCKS:%=-r %)
	@$(PIP) --no-deps --no-build-isolation --no-index --editable .
	@touch $@

$(VENV)/.develops: requirements-dev.lock $(VENV)/.runs
	@echo "Setting up what its tests and checks need ..."
	@$(LOCKED) -r requirements-dev.lock
	@touch $@

# pip comes last into a new environment, so where it is there the environment is whole.
$(BIN)/pip:
	@for python in $(PYTHON) python3.11 python3; do \
	  if $$python -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then \
	    echo "Making $(VENV) with $$($$python --version) ..."; \
	    $$python -m venv $(VENV) && exit; \
	    echo "$$python cannot make an environment. On Debian or Ubuntu: apt-get install python3-venv"; exit 1; \
	  fi; \
	done; \
	echo "Backcut needs Python 3.11 or newer; python3 here is: $$(python3 --version 2>&1 || echo missing)."; \
	echo "If you have a newer one elsewhere: make PYTHON=/path/to/python3.12 $(MAKECMDGOALS)"; exit 1
