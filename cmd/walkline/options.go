package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"walkline/cmd/version"
)

// The exit codes.
const (
	done     = 0
	failed   = 1 // the lots could not be opened
	faulty   = 2 // the call is at fault
	noWindow = 3 // no window can be shown here
)

const usage = `walkline opens the window: the most you may bid for a salvage lot, from what you see of it.

  walkline                 the lots in your own data folder
  walkline FILE            the lots in FILE, which must be there
  walkline --store FILE    the lots in FILE, which is made where there is none
  walkline help            this; --help does the same
  walkline version         which build this is; --version does the same

Exit codes: 0 done; 1 the lots could not be opened; 2 the call is at fault; 3 no window can be shown here.
The terminal side is another program: walk.
`

// options is what the command line asks for.
type options struct {
	store string // empty: in the user's data folder
	words string // to be printed instead of opening a window
}

// readOptions reads the arguments. Errors: the call is at fault.
func readOptions(args []string) (o options, err error) {
	for i := 0; i < len(args); i++ {
		a := args[i]
		value, inOne := strings.CutPrefix(strings.TrimPrefix(a, "-"), "-store=")
		switch {
		case a == "help" || a == "-h" || a == "-help" || a == "--help":
			return options{words: usage}, nil
		case a == "version" || a == "-version" || a == "--version":
			return options{words: version.Line("walkline") + "\n"}, nil
		case a == "-store" || a == "--store":
			if i++; i == len(args) || args[i] == "" {
				return o, errors.New("--store wants a file")
			}
			err = o.take(args[i])
		case inOne:
			err = o.take(value)
		case strings.HasPrefix(a, "-"):
			return o, fmt.Errorf("no option %s; walkline help shows what there is", a)
		default:
			if _, there := os.Stat(a); there != nil {
				return o, fmt.Errorf("there is no file %s; to make one: walkline --store %s", a, a)
			}
			err = o.take(a)
		}
		if err != nil {
			return o, err
		}
	}
	return o, nil
}

// take names the file of the lots, once.
func (o *options) take(path string) error {
	if o.store != "" {
		return fmt.Errorf("one file at a time, got %s and %s", o.store, path)
	}
	o.store = path
	return nil
}
