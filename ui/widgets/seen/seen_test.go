package seen

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

func TestHiddenThingsAreNotSeen(t *testing.T) {
	secret := widget.NewLabel("secret")
	secret.Hide()
	box := container.NewVBox(widget.NewLabel("one"), secret, container.NewHBox(widget.NewButton("two", nil)))
	Open(t, fyne.NewSize(300, 200), box)
	if got := Texts(box); !slices.Equal(got, []string{"one", "two"}) {
		t.Errorf("texts %q", got)
	}
	if !Says(box, "on") || Says(box, "secret") || len(All[*widget.Button](box)) != 1 {
		t.Error("the box was misread")
	}
}
