//go:build !race

package assets_test

const racing = false
