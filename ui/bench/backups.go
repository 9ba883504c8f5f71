package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/widgets"
)

// newBackups returns the section of copies of all that is kept.
func newBackups(p *Page) *section {
	where := widget.NewLabel("")
	where.Wrapping = fyne.TextWrapWord
	now := widgets.NewButton("Back up now…", func() { p.do(desk.Want(desk.BackUp)) })
	restore := widgets.NewButton("Restore from a backup…", func() { p.do(desk.Want(desk.RestoreBackup)) })
	daily := widgets.NewButton("Daily backup…", func() { p.do(desk.Want(desk.DailyBackup)) })
	waits := widgets.NewNote(widgets.Care, "A backup is ready: close the window and start again, and it takes the place of what is here. "+
		"What is here then is set aside whole, beside it.")
	drop := widgets.NewButton("Do not restore it", func() { p.do(desk.Unstage()) })
	waiting := container.NewVBox(waits, container.NewHBox(drop))
	body := container.NewVBox(
		form.Heading("Backup and restore", "Every change is kept as it is made, so there is nothing to save. A backup is for a lost or broken "+
			"disk: put it on another one."),
		where, container.NewHBox(now, restore, daily), waiting)
	return &section{name: "Backup", body: container.NewVScroll(body), show: func(s desk.State) {
		where.SetText("All is kept in " + s.Keeping.Path)
		if s.Keeping.Path == "" {
			where.SetText("All is kept in memory only.")
		}
		waiting.Hidden = !s.Keeping.Staged
		body.Refresh()
	}, first: func() fyne.Focusable { return now }}
}
