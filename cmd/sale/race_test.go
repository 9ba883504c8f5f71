//go:build race

package main

// racing: arithmetic on one goroutine has nothing to race with, and is ten times as slow under the detector.
const racing = true
