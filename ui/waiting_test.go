package ui

import (
	"context"
	"errors"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"walkline/cmd/wire/trial"
	"walkline/ui/task"
)

// held returns a window over an empty book whose work waits until it is let go.
func held(t *testing.T) (*Window, *task.Held) {
	t.Helper()
	later := &task.Held{}
	d := trial.Desk(trial.Store(t))
	w := NewWindow(test.NewApp(), Parts{Desk: d, First: d.Load(t.Context()), Runner: later})
	t.Cleanup(w.window.Close)
	w.Show()
	return w, later
}

// Nothing is in sight for a moment after a key whose work takes long: pressed again, it does not do it twice.
func TestAKeyPressedTwiceDoesOneThing(t *testing.T) {
	w, later := held(t)
	w.LoadDemo()
	w.LoadDemo()
	later.Release()
	if n := len(w.state.Entries); n != len(w.desk.Demo()) {
		t.Errorf("%d lots on the Board after the demo sale of %d was asked for twice", n, len(w.desk.Demo()))
	}
	if w.LoadDemo(); w.preparing == "" {
		t.Error("a third time, later, it is not begun")
	}
}

// ending runs work in a program that ends meanwhile.
type ending struct{ task.Inline }

func (ending) Run(j task.Job) {
	ctx, end := context.WithCancel(context.Background())
	end()
	j.Work(ctx)
}

// What takes long ends with the program: the end would wait for it otherwise.
func TestWorkBehindABarEndsWithTheProgram(t *testing.T) {
	w, _ := held(t)
	w.runner = ending{}
	var ended error
	behindBar(w, barred[int]{words: "Working", work: func(ctx context.Context) (int, error) {
		select {
		case <-ctx.Done():
			ended = ctx.Err()
		case <-time.After(10 * time.Second):
		}
		return 0, ended
	}})
	if !errors.Is(ended, context.Canceled) {
		t.Errorf("the work ended with %v", ended)
	}
}

var _ task.Runner = ending{}
