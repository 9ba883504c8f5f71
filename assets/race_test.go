//go:build race

package assets_test

// racing: arithmetic on one goroutine has nothing to race with, and is ten times as slow under the detector.
const racing = true
