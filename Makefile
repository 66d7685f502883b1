# `make run` and `make test` are all one needs to know. Each sets up what it needs, says what it does,
# and stops at the first thing that fails. HOST and PORT move the server: make run PORT=9000

SHELL := bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := run
.DELETE_ON_ERROR:
.NOTPARALLEL:

PYTHON_HERE := .venv/bin/python
NODE_TOOLS := node_modules/.bin
WIRE ?= static/src/plan/wire.ts
CLIENT_TESTS := build/client-tests
# Browsers mostly wait: three of them keep two cores busy.
AT_ONCE ?= 3
# First our own environment: Node may have been installed there.
export PATH := $(CURDIR)/.venv/bin:$(PATH)

# --- The two commands, and the bench

.PHONY: run phone test bench sweep timing chaos soak odd
run: .venv/ready-to-run client
	@echo "- Starting Slipway. Ctrl-C stops it."
	@exec $(PYTHON_HERE) app.py

phone: .venv/ready-to-run client
	@.ci/debian-packages "A phone in the room needs" haproxy openssl
	@echo "- Starting Slipway for phones in this network. Ctrl-C stops it."
	@exec $(PYTHON_HERE) -m web.for_phones

test: .venv/ready-to-test system-packages lint types units client pytest

bench: .venv/ready-to-test system-packages client
	@echo "- Measuring. Only ratios within this run mean anything."
	@$(PYTHON_HERE) -m tests.bench

timing: .venv/ready-to-test system-packages client
	@echo "- Rowing for 40 minutes, recorded. A machine that does nothing else gives the clearest table."
	@$(PYTHON_HERE) -m tests.timing

soak: .venv/ready-to-test system-packages client
	@echo "- Letting a wall run through eight hours of a quick clock: some ten minutes."
	@$(PYTHON_HERE) -m tests.soak

chaos: .venv/ready-to-test system-packages client
	@echo "- Running random schedules against the reference model: COUNT=1000 of them, or the one of SEED."
	@$(PYTHON_HERE) -m tests.chaos

odd: .venv/ready-to-test system-packages client
	@echo "- Showing every odd text of the list on the screens: some two minutes."
	@ODD_TEXTS=whole $(PYTHON_HERE) -m pytest -q tests/browser/test_odd_texts.py

sweep: .venv/ready-to-test
	@echo "- Making a session for every piece, length of warm-up, level and room."
	@$(PYTHON_HERE) -m tests.sweep

# --- Setting up: done again when the file that lists what is needed has changed

.venv/ready-to-run: requirements.txt .ci/python-environment
	@.ci/python-environment requirements.txt
	@touch $@

.venv/ready-to-test: requirements-test.txt .venv/ready-to-run
	@.ci/python-environment requirements-test.txt
	@touch $@

node_modules/ready: package.json package-lock.json | .venv/ready-to-run
	@echo "- Installing the client's packages into node_modules."
	@npm ci --ignore-scripts --no-audit --no-fund --loglevel=error
	@touch $@

.PHONY: system-packages
system-packages:
	@.ci/system-packages

# --- The client

.PHONY: client wire
client: node_modules/ready
	@echo "- Building the client into static/dist."
	@$(PYTHON_HERE) -m web.build

wire: .venv/ready-to-run node_modules/ready
	@echo "- Writing $(WIRE) from the API's own description."
	@mkdir -p build
	@$(PYTHON_HERE) -m web.api.document > build/openapi.json
	@$(NODE_TOOLS)/openapi-typescript build/openapi.json --output $(WIRE) \
	  --root-types --root-types-no-schema-prefix >/dev/null

# --- The steps of `make test`

.PHONY: lint types units pytest
lint: .venv/ready-to-test
	@echo "- Reading the Python code for faults and for layout (ruff)."
	@$(PYTHON_HERE) -m ruff check .
	@$(PYTHON_HERE) -m ruff format --check .

types: .venv/ready-to-test node_modules/ready
	@echo "- Checking types: Python (mypy, strict), then TypeScript (tsc, strict)."
	@$(PYTHON_HERE) -m mypy
	@$(NODE_TOOLS)/tsc --project tsconfig.json
	@$(NODE_TOOLS)/tsc --project tests/client

units: node_modules/ready
	@echo "- Testing the client without a browser (Node's own test runner)."
	@rm -rf $(CLIENT_TESTS)
	@$(NODE_TOOLS)/esbuild $$(find tests/client -name '*.test.ts') --bundle --platform=node --format=esm \
	  --sourcemap=inline --outbase=tests/client --outdir=$(CLIENT_TESTS) --out-extension:.js=.mjs --log-level=warning
	@node --enable-source-maps --test --test-reporter=spec $$(find $(CLIENT_TESTS) -name '*.test.mjs')

pytest: .venv/ready-to-test client
	@echo "- Testing the planner, the server and the app in three browsers (pytest)."
	@$(PYTHON_HERE) -m pytest --numprocesses=$(AT_ONCE) --dist=worksteal --ignore=tests/timing
	@echo "- Recording what is heard, with nothing else running (pytest)."
	@$(PYTHON_HERE) -m pytest tests/timing

.PHONY: clean
clean:
	@echo "- Removing everything that was made here."
	@rm -rf .venv node_modules build static/dist
