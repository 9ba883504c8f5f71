package main

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"walkline/cmd/version"
)

// The exit codes.
const (
	done   = 0
	failed = 1 // a file could not be read or written
	faulty = 2 // the call or what it was given is at fault
)

// mostMemory is the memory, in bytes, above which the garbage collector works harder. Ours: a machine with 2 GB has room for it.
const mostMemory = 700 << 20

func main() {
	debug.SetMemoryLimit(mostMemory)
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run does what the arguments ask and returns the exit code.
func run(args []string, out, errs io.Writer) int {
	out, errs = terminal{out}, terminal{errs}
	if len(args) == 0 {
		fmt.Fprint(errs, usage)
		return faulty
	}
	if name, wanted := asked(args); wanted {
		return help(name, out, errs)
	}
	switch args[0] {
	case "value":
		return value(args[1:], out, errs)
	case "sheet":
		return decisionSheet(args[1:], out, errs)
	case "plan":
		return salePlan(args[1:], out, errs)
	case "rank":
		return rank(args[1:], out, errs)
	case "parts":
		return parts(args[1:], out, errs)
	case "tune":
		return tune(args[1:], out, errs)
	case "replay":
		return replay(args[1:], out, errs)
	case "comps":
		return comps(args[1:], out, errs)
	case "lots":
		return lots(args[1:], out, errs)
	case "version", "-version", "--version":
		fmt.Fprintln(out, version.Line("walk"))
		return done
	}
	fmt.Fprintf(errs, "walk: no command %q\n\n%s", args[0], usage)
	return faulty
}
