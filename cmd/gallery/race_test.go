//go:build race

package main

// racing: this is a run under the race detector.
const racing = true
