// Package version answers: which build is this?
//
// The number is stamped by the linker (-X walkline/cmd/version.stamped=1.2.3) from the file assets/VERSION; the Makefile does so for every
// build. What was built without it says so, instead of bearing a number that nobody gave it.
package version

import (
	"fmt"
	"runtime"

	"walkline/valuation"
)

// stamped is set by the linker.
var stamped string

// Number returns the version, or that there is none.
func Number() string {
	if stamped == "" {
		return "unstamped"
	}
	return stamped
}

// Line names a program with its version, the version of its arithmetic, and what it was built with and for, in one line.
func Line(program string) string {
	return fmt.Sprintf("%s %s (%s, %s, %s/%s)", program, Number(), valuation.Engine, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}
