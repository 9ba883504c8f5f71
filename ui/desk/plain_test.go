//go:build !race

package desk_test

const racing = false
