package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/widgets/seen"
)

func TestAFigureGoesUnderItsNameWhereThereIsNoRoom(t *testing.T) {
	one, two := NewFacing("Profit, 8 times in 10", "-950 to 6,476", 400), NewFacing("Profit, 8 times in 10", "-950 to 6,476", 120)
	seen.Open(t, fyne.NewSize(400, 200), container.NewVBox(one, two))
	if high, low := two.MinSize(), one.MinSize(); high.Height < 2*low.Height || high.Width >= low.Width {
		t.Errorf("in a narrow place %v, in a wide one %v", high, low)
	}
}

func TestAButtonGoesUnderAFieldWhereThereIsNoRoom(t *testing.T) {
	field, button := NewTextEntry(), NewButton("Add my own line", nil)
	row := container.New(&Beside{Least: 200}, field, button)
	w := seen.Open(t, fyne.NewSize(600, 200), container.NewVBox(row))
	if button.Position().Y != 0 || field.Size().Width+button.Size().Width > row.Size().Width {
		t.Errorf("in a wide place the button is at %v, the field is %v", button.Position(), field.Size())
	}
	w.Resize(fyne.NewSize(260, 200))
	if button.Position().Y < field.Size().Height || field.Size().Width < row.Size().Width {
		t.Errorf("in a narrow place the button is at %v, the field is %v", button.Position(), field.Size())
	}
	if least := row.MinSize().Height; least < field.Size().Height+button.Size().Height {
		t.Errorf("the row asks for %v", least)
	}
}
