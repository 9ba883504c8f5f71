package worksheet

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/damage"
	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/repair"
)

// work is the section of the repair lines: the table, the line that is selected, and the hidden damage below.
type work struct {
	page    *Page
	jobs    []repair.Job
	known   []hidden.Entry
	addJob  *widgets.Suggest
	addRisk *widgets.Suggest
	table   *table.Table
	risks   *table.Table
	totals  *widget.RichText
	line    *lineForm
	rows    []view.RepairRow
	chosen  string // id of the selected line
	restore *widgets.Button
	donor   *widgets.Button
}

// newRepair returns the section of the work that is known and of the damage that may be hidden.
func newRepair(p *Page, know valuation.Knowledge) *section {
	w := &work{page: p, totals: form.Small("")}
	p.work = w
	w.table = table.New(columns(view.RepairColumns, false))
	w.table.Empty = "No work yet. Enter the damage, or add a line from the catalogue."
	w.table.OnSelected = func(row int) { w.choose(row) }
	w.table.OnOpen = func(int) { // Enter goes to the line's fields
		if first := w.line.first(); first != nil {
			draw.FocusOn(first)
		}
	}
	w.table.OnDelete = func(row int) { w.line.remove(w.rows[row].Line) }
	w.table.Menu = w.menu
	w.risks = table.New(columns(view.RiskColumns, false))
	w.risks.OnDelete, w.risks.Menu = w.strike, w.riskMenu
	w.risks.Empty = "No hidden risk is raised by what is entered."
	w.line = newLineForm(p.edit, p.do, w.lineOf)
	w.addJob = widgets.NewSuggest("Add a job: type any word of it", w.add)
	w.addRisk = widgets.NewSuggest("Add a risk: type any word of it", w.raise)
	w.know(know)
	blank := widgets.NewButton("Add my own line", w.addBlank)
	shop := widgets.NewButton("Shopping list…", func() { p.do(desk.Want(desk.ShoppingList)) })
	w.donor = widgets.NewButton("Plan with a donor vehicle", w.planDonor)
	w.restore = widgets.NewButton(restoreWords, w.bringBack)
	w.restore.Importance = widget.LowImportance
	top := container.New(&widgets.Beside{Least: 260}, w.addJob, blank)
	below := form.Under(container.New(layout.NewCustomPaddedLayout(theme.Half, 0, 0, 0), w.addRisk), w.risks, nil)
	tables := widgets.NewVSplit("worksheet.work", w.table, below, linesShare)
	left := form.Under(top, container.New(form.LeastHeight{Height: 300}, tables),
		container.NewVBox(w.totals, container.New(layout.NewRowWrapLayout(), w.restore, w.donor, shop)))
	share := 0.63
	if theme.Scale() > form.LargeText {
		share = 0.5 // the fields need the room
	}
	split := widgets.NewHSplit("worksheet.repair", container.NewVScroll(left), w.line.body, share)
	return &section{body: split, show: func(p *Page) { w.render() }, first: w.table}
}

// menu is what may be done with a line.
func (w *work) menu(row int) []*fyne.MenuItem {
	return []*fyne.MenuItem{fyne.NewMenuItem("Remove this line", func() { w.line.remove(w.rows[row].Line) }),
		fyne.NewMenuItem("Add my own line", w.addBlank), fyne.NewMenuItem(restoreWords, w.bringBack)}
}

const restoreWords = "Restore removed ones"

// riskMenu is what may be done with a hidden risk.
func (w *work) riskMenu(row int) []*fyne.MenuItem {
	return []*fyne.MenuItem{fyne.NewMenuItem("Remove this risk", func() { w.strike(row) }), fyne.NewMenuItem(restoreWords, w.bringBack)}
}

// strike takes a hidden risk out; it can be restored.
func (w *work) strike(row int) {
	r, know := w.page.open.Worked().Valued.Answer.Hidden.Risks[row], *w.page.known
	w.page.edit("remove "+r.Name, func(c *valuation.Case) { valuation.StrikeRisk(c, know, r.ID) })
}

// linesShare is what the lines of known work get of the height: a dozen of them at 1280 x 720.
const linesShare = 0.82

// columns turns a view's columns into a table's.
func columns(cols []view.Column, sortable bool) []table.Column {
	var out []table.Column
	for _, c := range cols {
		out = append(out, table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Meaning: view.Help(c.Title), Sortable: sortable,
			Grows: c.Title == "Work" || c.Title == "Hidden damage"})
	}
	return out
}

// know takes the catalogues for type-ahead.
func (w *work) know(k valuation.Knowledge) {
	w.jobs, w.known = k.Jobs.Jobs, k.Risks.Risks
	var jobs, risks []widgets.Choice
	for _, j := range w.jobs {
		jobs = append(jobs, widgets.Choice{ID: j.ID, Name: j.Job, Note: damage.Area(j.Area)})
	}
	for _, r := range w.known {
		risks = append(risks, widgets.Choice{ID: r.ID, Name: r.Name, Note: view.Percent(r.Chance.Mean())})
	}
	w.addJob.SetChoices(jobs)
	w.addRisk.SetChoices(risks)
}

// raise takes a risk of the catalogue as one of the lot's own, whatever the survey says.
func (w *work) raise(chosen widgets.Choice) {
	at := slices.IndexFunc(w.known, func(r hidden.Entry) bool { return r.ID == chosen.ID })
	risk := valuation.Copy(w.known[at].Risk)
	risk.Why = strings.TrimSpace(risk.Why + " (added by hand)")
	w.page.edit("add "+risk.Name, func(c *valuation.Case) {
		c.Hidden.Risks = slices.DeleteFunc(c.Hidden.Risks, func(r hidden.Risk) bool { return r.ID == risk.ID })
		c.Hidden.Risks = append(c.Hidden.Risks, risk)
	})
}

func (w *work) render() {
	w.rows = view.Repair(w.page.open)
	rows := make([]table.Row, len(w.rows))
	at := -1
	for i, r := range w.rows {
		rows[i] = table.Row{Cells: r.Cells}
		if r.Line.ID == w.chosen {
			at = i
		}
	}
	w.table.SetRows(rows)
	var risks []table.Row
	for _, r := range view.Risks(w.page.open) {
		risks = append(risks, table.Row{Cells: r})
	}
	w.risks.SetRows(risks)
	w.totals.Segments[0].(*widget.TextSegment).Text = strings.TrimSpace(view.RepairTotals(w.page.open) + " " + view.RepairHours(w.page.open))
	w.totals.Refresh()
	w.restore.Hidden = len(w.page.open.Case.Struck()) == 0 &&
		!slices.ContainsFunc(w.page.open.Case.Repair.Lines, func(l repair.Line) bool { return l.Removed })
	w.restore.Refresh()
	w.donor.Hidden = w.page.open.Case.Repair.Donor != nil
	if w.table.Selected() != at {
		w.table.SelectRow(at) // the mark stands on the line that is shown beside
	}
	if at < 0 {
		w.line.clear()
		return
	}
	w.line.render(w.page.open.Case, w.rows[at])
}

// choose shows a line beside the table.
func (w *work) choose(row int) {
	if row >= 0 && row < len(w.rows) {
		w.chosen = w.rows[row].Line.ID
		w.line.render(w.page.open.Case, w.rows[row])
	}
}

// lineOf returns the line of an id among the user's own in c, putting the catalogue's there first: from then on it is
// the user's.
func (w *work) lineOf(c *valuation.Case, id string) *repair.Line {
	for i := range c.Repair.Lines {
		if c.Repair.Lines[i].ID == id {
			c.Repair.Lines[i].Edited = true
			return &c.Repair.Lines[i]
		}
	}
	for _, r := range w.rows {
		if r.Line.ID == id {
			l := r.Line
			l.Edited = true
			c.Repair.Lines = append(c.Repair.Lines, l)
			return &c.Repair.Lines[len(c.Repair.Lines)-1]
		}
	}
	return nil
}

// add takes a job of the catalogue as a line of the user's.
func (w *work) add(chosen widgets.Choice) {
	at := slices.IndexFunc(w.jobs, func(j repair.Job) bool { return j.ID == chosen.ID })
	job := w.jobs[at].Line
	job.Why = strings.TrimSpace(job.Why + " (added by hand)")
	job.Edited, job.Chance = true, nil
	w.chosen = job.ID
	w.page.edit("add "+job.Job, func(c *valuation.Case) {
		c.Repair.Lines = slices.DeleteFunc(c.Repair.Lines, func(l repair.Line) bool { return l.ID == job.ID })
		c.Repair.Lines = append(c.Repair.Lines, job)
	})
}

// planDonor buys a donor vehicle for the lot's parts and goes to its line.
func (w *work) planDonor() {
	w.chosen = repair.DonorLine
	w.page.do(desk.PlanDonor())
}

// addBlank adds an empty line.
func (w *work) addBlank() {
	w.page.edit("add a line", func(c *valuation.Case) {
		w.chosen = freeID(c.Repair.Lines)
		c.Repair.Lines = append(c.Repair.Lines, repair.Line{ID: w.chosen, Job: "New work", Operation: "repair", Edited: true})
	})
}

// freeID returns an id that no line has.
func freeID(lines []repair.Line) string {
	for n := len(lines) + 1; ; n++ {
		id := fmt.Sprint("own_", n)
		if !slices.ContainsFunc(lines, func(l repair.Line) bool { return l.ID == id }) {
			return id
		}
	}
}

// bringBack lets the catalogue add the lines and risks again that were removed.
func (w *work) bringBack() {
	know := *w.page.known
	w.page.edit("restore what was removed", func(c *valuation.Case) {
		valuation.RestoreRisks(c, know)
		c.Repair.Lines = slices.DeleteFunc(c.Repair.Lines, func(l repair.Line) bool { return l.Removed })
	})
}
