package main

import (
	"fmt"
	"os"
)

func main() {
	all, err := texts(".")
	if err != nil {
		fmt.Fprintln(os.Stderr, "words:", err)
		os.Exit(1)
	}
	for _, t := range all {
		fmt.Printf("%s:%d\t%s\n", t.path, t.line, t.words)
	}
}
