package main

import (
	"os"
	"syscall"
	"unsafe"
)

// box shows a message in a window of the system's own.
func box(title, words string) {
	const icon = 0x30 // MB_ICONWARNING
	t, errT := syscall.UTF16PtrFromString(title)
	w, errW := syscall.UTF16PtrFromString(words)
	if errT == nil && errW == nil {
		_, _, _ = syscall.NewLazyDLL("user32.dll").NewProc("MessageBoxW").Call(0, uintptr(unsafe.Pointer(w)), uintptr(unsafe.Pointer(t)), icon)
	}
}

// init joins the terminal that the program was started from, if any: a program with windows has none of its own.
func init() {
	if _, err := os.Stdout.Stat(); err == nil {
		return
	}
	const parent = ^uintptr(0) // ATTACH_PARENT_PROCESS
	if joined, _, _ := syscall.NewLazyDLL("kernel32.dll").NewProc("AttachConsole").Call(parent); joined == 0 {
		return
	}
	if f, err := os.OpenFile("CONOUT$", os.O_WRONLY, 0); err == nil {
		os.Stdout, os.Stderr = f, f
	}
}
