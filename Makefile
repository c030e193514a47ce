# Two commands do everything: `make demo` and `make test`. Each stands alone and is safe to repeat.
SHELL := /bin/bash
.SHELLFLAGS := -eu -o pipefail -c
.DEFAULT_GOAL := help
PYTHON ?= python3
UV := .tools/bin/uv
BIN := .venv/bin
LOCK := requirements.lock
export UV_PYTHON_DOWNLOADS = never
export UV_LINK_MODE = copy
export VIRTUAL_ENV = $(CURDIR)/.venv
# Every source is compiled once, when it is set up, as pip does it; else each process compiles it again, a second each.
export UV_COMPILE_BYTECODE = 1
unexport PYTHONDONTWRITEBYTECODE

.PHONY: help demo test bench docs lock clean

help:
	@echo "make demo   set up and run the main job on the starter boat"
	@echo "make test   set up and run every check and test"
	@echo "make bench  measure speed against references, side by side"
	@echo "make docs   write the generated pages, the schema and the README's pictures again"

$(UV):
	@echo "• fetching uv into .tools"
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { echo "Anchorwatt needs Python 3.11 or newer; $(PYTHON) is $$($(PYTHON) --version). Try: make PYTHON=python3.12"; exit 1; }
	@$(PYTHON) -m pip install --quiet --disable-pip-version-check --root-user-action=ignore --target .tools uv

.venv/.installed: $(UV) $(LOCK) pyproject.toml Makefile
	@echo "• setting up .venv from $(LOCK)"
	@test -x $(BIN)/python || $(UV) venv --quiet --python $(PYTHON) .venv
	@$(UV) pip sync --quiet --require-hashes $(LOCK)
	@$(UV) pip install --quiet --no-deps --editable .
	@$(BIN)/python -m compileall -q src
	@touch $@

demo: .venv/.installed
	@$(BIN)/anchorwatt new trawler-14m out/demo.yaml --replace
	@$(BIN)/anchorwatt assess out/demo.yaml --plot out/demo-night.svg

# Both runs of tests use one kernel, compiled once: its folder is named by a hash of the sources it comes from.
test: export ANCHORWATT_CACHE := $(CURDIR)/.venv/kernels
test: .venv/.installed
	@echo "• format and lint"; $(BIN)/ruff format --check --quiet . && $(BIN)/ruff check --quiet .
	@echo "• types"; $(BIN)/mypy --no-error-summary
	@echo "• import contract"; $(BIN)/lint-imports --no-cache > .venv/imports.log || { cat .venv/imports.log; exit 1; }
	@echo "• tests"; $(BIN)/pytest -n 2 --dist loadfile --no-loadscope-reorder --ignore tests/browser
	@$(BIN)/python tools/chromium.py
	@echo "• tests in the browser"; $(BIN)/pytest -n 2 --dist loadgroup tests/browser

bench: .venv/.installed
	@$(BIN)/pytest bench --benchmark-only --benchmark-group-by=group --benchmark-columns=min,median,rounds

docs: .venv/.installed
	@$(BIN)/python tools/write_generated.py

lock: $(UV)
	@$(UV) pip compile --quiet --universal --python-version 3.11 --generate-hashes --no-header --no-annotate --no-emit-index-url --no-emit-find-links --group dev pyproject.toml --output-file $(LOCK)

clean:
	rm -rf .venv .tools out .mypy_cache .ruff_cache .pytest_cache
	find src tests bench tools -name __pycache__ -prune -exec rm -rf {} +
