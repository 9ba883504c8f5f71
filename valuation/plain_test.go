//go:build !race

package valuation_test

const racing = false
