package bench

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/widgets"
	"walkline/valuation"
)

// sales is the section of what sales charge: those of any sale, and those of each yard by its name.
type sales struct {
	page   *Page
	yard   int // whose terms are shown; -1: any sale
	choose *widgets.Select
	name   *widgets.TextEntry
	named  *fyne.Container
	mark   *whose
	terms  *form.Terms
	home   *form.Form
	muted  bool
}

// anySale is the choice of the terms that hold where no yard has the sale's name.
const anySale = "Any other sale"

func newSales(p *Page) *section {
	s := &sales{page: p, yard: -1, name: widgets.NewTextEntry()}
	s.choose = widgets.NewSelect([]string{anySale}, s.chosen)
	s.name.SetPlaceHolder("name of the sale, as the lots have it")
	s.name.Complete("Sale")
	s.name.OnChanged = s.rename
	add := widgets.NewButton("Add a yard", s.add)
	remove := widgets.NewButton("Remove this yard", s.remove)
	remove.Importance = widget.LowImportance
	s.mark = newWhose("Put the starter values back", s.putBack)
	s.terms = form.NewTerms(s.edit, "")
	s.home = form.New(s.edit)
	form.Home(s.home)
	s.named = container.NewBorder(nil, nil, form.Label("Its name"), remove, s.name)
	head := container.NewVBox(
		form.Heading("What sales charge", "A lot takes the terms of the yard whose name its sale has, and otherwise those of any other sale."),
		container.NewBorder(nil, nil, form.Label("Terms of"), add, s.choose), s.named, s.mark.body)
	body := container.NewVBox(head, s.terms.Body, form.Heading("Bringing it home", ""), s.home.Rows)
	return &section{name: "Sales and yards", body: container.NewVScroll(body), show: s.show, first: func() fyne.Focusable { return s.choose }}
}

// edit changes the terms that are shown.
func (s *sales) edit(label string, change func(*valuation.Case)) {
	yard := s.yard
	s.page.do(desk.EditShop(label, func(shop *desk.Shop) {
		c := shop.Onto(valuation.Defaults())
		if yard < 0 {
			change(&c)
			shop.Take(c)
			return
		}
		c.Buying = shop.Yards[yard].Buying
		change(&c)
		shop.Yards[yard].Buying = c.Buying
	}))
}

func (s *sales) show(st desk.State) {
	s.muted = true
	defer func() { s.muted = false }()
	s.yard = min(s.yard, len(st.Shop.Yards)-1)
	if names := yardNames(st.Shop); !slices.Equal(names, s.choose.Options) {
		s.choose.SetOptions(names)
	}
	s.choose.SetSelectedIndex(s.yard + 1)
	c := st.Shop.Onto(valuation.Defaults())
	if s.yard >= 0 {
		y := st.Shop.Yards[s.yard]
		c.Buying = y.Buying
		if s.name.Text != y.Sale {
			s.name.SetText(y.Sale)
		}
	}
	s.named.Hidden = s.yard < 0
	s.terms.Render(c)
	s.home.Render(c)
	differs := desk.Differing(c, st.StarterShop.Onto(valuation.Defaults()))
	s.mark.set(slices.Contains(differs, desk.SaleCharges) || slices.Contains(differs, desk.BringHome))
	s.named.Refresh()
}

// yardNames returns the choices of the section; a yard without a name is told from the others by its number.
func yardNames(shop desk.Shop) []string {
	names := []string{anySale}
	for i, y := range shop.Yards {
		name := y.Sale
		if name == "" || slices.Contains(names, name) {
			name = fmt.Sprintf("%s (yard %d)", name, i+1)
		}
		names = append(names, name)
	}
	return names
}

// chosen shows the terms of another sale.
func (s *sales) chosen(string) {
	if !s.muted {
		s.yard = s.choose.SelectedIndex() - 1
		s.show(s.page.state)
	}
}

func (s *sales) rename(name string) {
	if yard := s.yard; !s.muted && yard >= 0 {
		s.page.do(desk.EditShop("name of a yard", func(shop *desk.Shop) { shop.Yards[yard].Sale = name }))
	}
}

// add adds a yard that begins with the terms shown.
func (s *sales) add() {
	yard := s.yard
	s.yard = len(s.page.state.Shop.Yards)
	s.page.do(desk.EditShop("add a yard", func(shop *desk.Shop) {
		y := desk.Yard{Sale: "New yard", Buying: shop.Buying}
		if yard >= 0 {
			y.Buying = valuation.Copy(shop.Yards[yard].Buying)
		}
		shop.Yards = append(shop.Yards, valuation.Copy(y))
	}))
}

func (s *sales) remove() {
	yard := s.yard
	s.yard = -1
	s.page.do(desk.EditShop("remove a yard", func(shop *desk.Shop) { shop.Yards = slices.Delete(shop.Yards, yard, yard+1) }))
}

// putBack gives the terms that are shown the starter's figures.
func (s *sales) putBack() {
	starter := valuation.Copy(s.page.state.StarterShop.Buying)
	s.edit("starter values: sale", func(c *valuation.Case) { c.Buying = starter })
}
