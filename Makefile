# Walkline. The two commands that matter: make run, make test. All of them: make help.

# One set of build flags for every command below: each of these is a key of Go's build cache, so a second set would
# compile the OpenGL binding once more. clang compiles that binding four times faster than gcc.
export CC := clang
export GOFLAGS := -trimpath -buildvcs=false

# The window ships with Fyne's quick path for updates, and without its face of emoji, which each style of text would load once more: the
# system's own draws them. Tests leave the quick path out, so that Fyne logs an update from a wrong thread.
WINDOW_TAGS := migrated_fynedo,no_emoji

# Both programs bear the version; what is not a release says so.
export VERSION := $(shell cat assets/VERSION)
STAMP := -ldflags "-X walkline/cmd/version.stamped=$(VERSION)-dev"

STATICCHECK := honnef.co/go/tools/cmd/staticcheck@v0.8.2
FUZZTIME ?= 1000x
DEMO := assets/demo/front.json

# A window needs an X server (a Wayland desktop brings one along), or macOS.
HAS_DISPLAY := $(if $(filter Darwin,$(shell uname -s)),yes,$(DISPLAY))

.DEFAULT_GOAL := help
.NOTPARALLEL:
.PHONY: help run run-window run-terminal build walk pictures test bench bench-window setup-bench bench-learn bench-resale bench-sale bench-season wrecks words \
	setup setup-test torture format vet staticcheck notices unit fuzz window release release-mac test-release

help: ## list these commands
	@awk -F ':.*## ' '/^[a-z-]+:.*## / { printf "make %-12s %s\n", $$1, $$2 }' $(MAKEFILE_LIST)

run: $(if $(HAS_DISPLAY),run-window,run-terminal) ## bring what is missing, build, open the window (no display: the demo lot in the terminal)

run-window: build
	./bin/walkline $(ARGS)

run-terminal:
	@.ci/setup go
	@echo 'No display here ($$DISPLAY is empty), so no window: the demo lot is valued in the terminal instead.'
	CGO_ENABLED=0 go run ./cmd/walk value $(DEMO)
	@$(MAKE) --no-print-directory pictures
	@echo 'The window itself: "make run" on a desktop, or "make build" for its program alone.'

build: setup ## build the window into bin/walkline
	go build -tags $(WINDOW_TAGS) $(STAMP) -o bin/walkline ./cmd/walkline

walk: ## build the terminal side into bin/walk, without cgo
	@.ci/setup go
	CGO_ENABLED=0 go build $(STAMP) -o bin/walk ./cmd/walk

pictures: ## write pictures of the window's pages into pictures/, without a display
	@.ci/setup go
	@mkdir -p pictures
	CGO_ENABLED=0 go run ./cmd/gallery $(ARGS)
	@echo 'Pictures of the window:'; ls pictures/*.png

# The quick checks come first; the window test, the slowest, comes last.
test: setup-test format vet staticcheck walk notices unit fuzz window ## bring what tests need, run everything that CI runs

bench: ## run the benchmarks; the engine beside the same model in NumPy and SciPy, where they are
	@.ci/setup go
	CGO_ENABLED=0 go test -run '^$$' -bench . -benchmem ./valuation/... ./store/... ./ui/... ./cmd/walk/... ./cmd/wire/... ./cmd/sale/...

bench-window: build setup-test ## print start-up, memory, edits and the Board against their baselines
	@.ci/bench-window

# The open price sets that the repository holds; PRICES and TASKS name a folder with more of them.
PRICES ?= testdata/prices
TASKS ?= $(PRICES)

bench-learn: ## play a simulated shop: learned factors against its known truth, and what tuned bids earn
	@.ci/setup go
	CGO_ENABLED=0 go run ./cmd/shop $(ARGS)

bench-sale: ## play seasons of invented sales: the plan against rules of thumb, as ratios
	@.ci/setup go
	CGO_ENABLED=0 go run ./cmd/sale $(ARGS)

bench-season: ## play years of a shop at invented sales: the program and each part of it against rules of thumb and a clairvoyant
	@.ci/setup go
	CGO_ENABLED=0 go run ./cmd/season $(ARGS)

words: ## list every text that the program may show, to be read in one go
	@.ci/setup go
	@CGO_ENABLED=0 go run ./cmd/words

wrecks: ## value the wrecks of testdata/wrecks and write what each comes to into its table
	@.ci/setup go
	CGO_ENABLED=0 go test -count=1 ./assets -run TestTableOfTheWrecks -wrecks -v

bench-resale: ## foretell open prices by the resale model and by reference methods, and print the errors
	@.ci/setup go
	CGO_ENABLED=0 go run ./cmd/fitprior -prices $(PRICES) -tasks $(TASKS)

setup:
	@.ci/setup window

setup-test:
	@.ci/setup window test

release: ## build what people install into bin/release: packages, installer, programs, checksums
	@.ci/setup window release
	.ci/release all

release-mac: ## build the window for the Mac, on a Mac only
	.ci/release mac

test-release: ## install the .deb of bin/release in a bare root and start both programs there (as root, with a network)
	@.ci/setup go release
	.ci/test-release

setup-bench: ## bring NumPy and SciPy, with which "make bench" compares the engine
	@.ci/setup go bench

format:
	@echo 'gofmt -l .'
	@unformatted=$$("$$(go env GOROOT)/bin/gofmt" -l .) && test -z "$$unformatted" \
		|| { echo "not formatted, run gofmt -w on:"; echo "$$unformatted"; exit 1; }

# With the window's tags: so the toolkit is compiled once for these, the window and its test.
vet:
	go vet -tags $(WINDOW_TAGS) ./...

staticcheck:
	go run $(STATICCHECK) -tags $(WINDOW_TAGS) ./...

notices:
	.ci/notices check

unit: export LANG := en_US.UTF-8
unit:
	.ci/unit

fuzz:
	FUZZTIME=$(FUZZTIME) .ci/fuzz

TORTURE ?= 50

torture: build setup-test ## kill, fill, damage, cut the power, signal and overload, TORTURE rounds; prints survived of tried, fails on any loss
	TORTURE=$(TORTURE) CGO_ENABLED=0 go test -p 1 -count 1 -v -timeout 60m -run 'TestTorture|TestPowerLoss|TestBounds' ./store ./cmd/walk
	TORTURE=$(TORTURE) RUN=TestBehavesOnSignals .ci/e2e

window: build
	.ci/e2e
