//go:build race

package desk_test

// racing: this is a run under the race detector.
const racing = true
