package why

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets/plot"
)

// drivers is the section of what moves the profit most.
type drivers struct {
	chart   *plot.ShareBars
	room    *container.Scroll
	name    *widget.RichText
	meaning *widget.Label
	all     []view.Driver
}

const driverWords = "How much of the doubt about the profit each cause brings: its share of the variance. The largest is what is worth " +
	"finding out."

func newDrivers() section {
	d := &drivers{chart: plot.NewShareBars(), name: heading(), meaning: wrapping()}
	d.chart.OnSelected = func(i int) { d.show(i); d.follow(i) }
	d.room = scrolled(d.chart)
	intro := wrapping()
	intro.SetText(driverWords)
	beside := container.New(layout.NewCustomPaddedVBoxLayout(0), d.name, d.meaning, intro)
	return section{name: "What moves it most", body: container.New(&columns2{0.6}, d.room, beside), first: d.chart, render: d.render}
}

func (d *drivers) render(o desk.Open) {
	d.all = view.NewWhy(o).Drivers
	shares := make([]plot.Share, len(d.all))
	for i, s := range d.all {
		shares[i] = plot.Share{Name: s.Name, Part: s.Part}
	}
	d.chart.SetShares(shares)
	if d.chart.Selected() < 0 {
		d.chart.Select(0)
	}
	d.show(d.chart.Selected())
}

func (d *drivers) show(i int) {
	if i < 0 || i >= len(d.all) {
		write(d.name, "")
		d.meaning.SetText("No cause brings any doubt: every figure of this lot is certain.")
		return
	}
	write(d.name, d.all[i].Name+"   "+view.Percent(d.all[i].Part))
	d.meaning.SetText(d.all[i].Meaning)
}

// follow scrolls to a cause that the keyboard goes to.
func (d *drivers) follow(i int) {
	row := d.chart.MinSize().Height / float32(len(d.all))
	top := float32(i) * row
	if top < d.room.Offset.Y || top+row > d.room.Offset.Y+d.room.Size().Height {
		d.room.ScrollToOffset(fyne.NewPos(0, top-d.room.Size().Height/2))
	}
}
