package main

import (
	"fmt"
	"os"
	"runtime"

	"github.com/go-gl/glfw/v3.3/glfw"
)

// unshowable says why no window can be shown, and what to do.
type unshowable struct{ why, advice string }

func (u unshowable) Error() string { return u.why + ".\n" + u.advice }

// terminalInstead is what works without a window.
const terminalInstead = `Without a window, "walk value case.json" values a lot in the terminal.`

// noDisplay returns what is wrong where a Unix desktop has no X server, else nil.
func noDisplay() error {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" || os.Getenv("DISPLAY") != "" {
		return nil
	}
	return unshowable{"there is no display, so no window can be opened", "On a desktop, start it from a terminal there. " + terminalInstead}
}

// tryWindow opens the display and draws nothing in a window that is not seen, as the toolkit will: it would only log that it could not,
// and run on unseen. It is called before the lots are touched.
func tryWindow() (err error) {
	if err := noDisplay(); err != nil {
		return err
	}
	defer func() {
		if v := recover(); v != nil { // the binding's answer to a display that it could not open, which it only logs
			err = unshowable{fmt.Sprintf("the display cannot be opened (%v)", v),
				"Look at the variable DISPLAY, and whether this user may draw there. " + terminalInstead}
		}
	}()
	if err := glfw.Init(); err != nil {
		panic(err)
	}
	glfw.WindowHint(glfw.Visible, glfw.False)
	glfw.WindowHint(glfw.ContextVersionMajor, 2) // what the toolkit asks for
	glfw.WindowHint(glfw.ContextVersionMinor, 1)
	w, err := glfw.CreateWindow(16, 16, "Walkline", nil, nil)
	if err != nil {
		glfw.Terminate()
		return unshowable{fmt.Sprintf("the graphics driver gives no OpenGL 2.1 (%v)", err), softwareAdvice(runtime.GOOS) + " " + terminalInstead}
	}
	w.Destroy()
	glfw.DefaultWindowHints()
	return nil
}

// softwareAdvice says where a system gets OpenGL from when its driver has none.
func softwareAdvice(system string) string {
	switch system {
	case "windows":
		return "Install the maker's driver for the graphics card, or put opengl32.dll of Mesa's software renderer beside walkline.exe."
	case "darwin":
		return "Start it on the Mac's own screen."
	}
	return "Install the card's driver, or Mesa's software renderer (Debian: libgl1-mesa-dri)."
}
