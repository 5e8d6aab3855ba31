# Each command does its own set-up: python3 (3.11 or newer) with venv and pip is enough.
PYTHON ?= python3

.PHONY: demo test sweeps lint versions bench coverage mutants schemas docs api lock clean

demo:
	@$(PYTHON) bootstrap.py demo

test:
	@$(PYTHON) bootstrap.py test

sweeps:
	@$(PYTHON) bootstrap.py sweeps

lint:
	@$(PYTHON) bootstrap.py lint

versions:
	@$(PYTHON) bootstrap.py versions

bench:
	@$(PYTHON) bootstrap.py bench

coverage:
	@$(PYTHON) bootstrap.py coverage

mutants:
	@$(PYTHON) bootstrap.py mutants

schemas:
	@$(PYTHON) bootstrap.py run python -m stickwright.files.schemas

docs:
	@$(PYTHON) bootstrap.py run python docs/make_commands.py
	@$(PYTHON) bootstrap.py run python docs/make_measuring.py
	@$(PYTHON) bootstrap.py run python docs/make_glossary.py
	@$(PYTHON) bootstrap.py run python docs/make_architecture.py

api:
	@$(PYTHON) bootstrap.py api

lock:
	@$(PYTHON) bootstrap.py run uv pip compile --quiet --universal --generate-hashes --no-emit-index-url --extra dev pyproject.toml -o requirements.lock

clean:
	rm -rf .venv .pytest_cache .mypy_cache .ruff_cache .hypothesis
