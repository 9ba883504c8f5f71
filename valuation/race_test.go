//go:build race

package valuation_test

// racing: arithmetic on one goroutine has nothing to race with, and is ten times as slow under the detector.
const racing = true
