package ui

import (
	"context"
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/task"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
)

// largeSide is the longest side of the large view, in pixels.
const largeSide = 1600

// photoView is the large view of one photograph, with what is said of it.
type photoView struct {
	w       *Window
	hash    string
	dialog  *dialog.CustomDialog
	picture *widgets.Zoomed
	facts   *widget.Label
	caption *widgets.TextEntry
	area    *widgets.Select
	stage   *widget.RadioGroup
	muted   bool
}

// showPhoto opens the large view of one of the photographs in hand. Left and right go to its neighbors.
func (w *Window) showPhoto(hash string) {
	v := &photoView{w: w, picture: widgets.NewZoomed(), facts: widget.NewLabel("")}
	v.facts.Wrapping = fyne.TextWrapWord
	v.caption = widgets.NewTextEntry()
	v.caption.SetPlaceHolder("what it shows")
	v.caption.OnSubmitted = handling(w, func(string) { v.keepCaption(); w.window.Canvas().Unfocus() })
	areas := []string{view.WholeVehicle}
	for _, a := range lot.Areas {
		areas = append(areas, view.PhotoArea(a))
	}
	v.area = widgets.NewSelect(areas, handling(w, func(string) { v.pin() }))
	v.stage = widget.NewRadioGroup([]string{beforeWords, afterWords}, handling(w, func(string) { v.setStage() }))
	v.stage.Required = true
	button := func(words string, do func()) *widgets.Button { return widgets.NewButton(words, w.handler(do)) }
	hint := form.Small("Wheel or + and - zoom, dragging moves it, a double click or 0 shows it whole.")
	side := container.NewVBox(v.facts, hint, widget.NewLabel("Caption"), v.caption, widget.NewLabel("Shows"), v.area, v.stage)
	body := container.NewBorder(nil, nil, nil, container.New(form.FixedWidth{Width: 260}, container.NewVScroll(side)), v.picture)
	v.dialog = dialog.NewCustomWithoutButtons("Photo", body, w.window)
	v.dialog.SetButtons([]fyne.CanvasObject{button("Previous", func() { v.step(-1) }), button("Next", func() { v.step(1) }),
		button("Remove", v.remove), button("Close", v.close)})
	v.dialog.Resize(fyne.NewSize(1080, 620))
	w.window.Canvas().Unfocus()
	w.openWith(v.dialog, handling(w, v.keys))
	v.show(hash)
}

// keys zoom where no field has the keyboard: plus, minus, and 0 for the whole. The arrows step, and move a picture that is zoomed.
func (v *photoView) keys(e *fyne.KeyEvent) {
	const by = .2 // of what is in sight
	moves := map[fyne.KeyName]fyne.Position{fyne.KeyLeft: {X: -by}, fyne.KeyRight: {X: by}, fyne.KeyUp: {Y: -by}, fyne.KeyDown: {Y: by}}
	if move, ok := moves[e.Name]; ok && v.picture.Zoom() > 1 {
		v.picture.Pan(move.X, move.Y)
		return
	}
	switch e.Name {
	case fyne.KeyPlus, fyne.KeyEqual:
		v.picture.In(1)
	case fyne.KeyMinus:
		v.picture.In(-1)
	case fyne.Key0:
		v.picture.Fit()
	case fyne.KeyEscape:
		v.close()
	case fyne.KeyLeft:
		v.step(-1)
	case fyne.KeyRight:
		v.step(1)
	case fyne.KeyDelete:
		v.remove()
	}
}

// photo returns the photograph that is shown, as the state has it.
func (v *photoView) photo() (lot.Photo, bool) {
	_, list := v.w.state.Pictured()
	if i := slices.IndexFunc(list, func(p lot.Photo) bool { return p.Hash == v.hash }); i >= 0 {
		return list[i], true
	}
	return lot.Photo{}, false
}

// show goes to a photograph.
func (v *photoView) show(hash string) {
	v.hash = hash
	p, ok := v.photo()
	if !ok {
		v.dialog.Hide()
		return
	}
	v.muted = true
	v.facts.SetText(view.PhotoFacts(p))
	v.caption.SetText(p.Caption)
	v.area.SetSelected(view.PhotoArea(p.Area))
	v.stage.SetSelected(stageWords(p.Stage))
	v.muted = false
	v.w.largePhoto("large photo", p, func(img image.Image, err error) { v.shown(p, img, err) })
}

// largePhoto brings a photograph large; a newer one of the same key takes its place.
func (w *Window) largePhoto(key string, p lot.Photo, show func(image.Image, error)) {
	task.Start(w.runner, task.Order[image.Image]{Key: key,
		Work: func(context.Context) (image.Image, error) { return picture(w.desk.LargePhoto(p, largeSide)) }, Show: show})
}

// photoOnLive brings the photograph that Live shows between two bids.
func (w *Window) photoOnLive(p lot.Photo, show func(image.Image, error)) {
	w.largePhoto("photo on Live", p, show)
}

// shown takes the picture when it has come, or says why there is none.
func (v *photoView) shown(p lot.Photo, img image.Image, err error) {
	if p.Hash != v.hash {
		return
	}
	if err != nil {
		v.facts.SetText("! This photo cannot be shown: " + err.Error())
	}
	v.picture.SetPicture(img)
}

func (v *photoView) keepCaption() {
	p, ok := v.photo()
	if !ok || v.muted || p.Caption == v.caption.Text {
		return
	}
	v.w.Do(desk.Caption(v.hash, v.caption.Text))
}

func (v *photoView) pin() {
	i := v.area.SelectedIndex()
	if v.muted || i < 0 {
		return
	}
	v.w.Do(desk.Pin(v.hash, append([]string{""}, lot.Areas...)[i]))
}

func (v *photoView) setStage() {
	if v.muted {
		return
	}
	v.w.Do(desk.SetStage(v.hash, stageOf(v.stage.Selected)))
}

// step goes to the next photograph, round and round.
func (v *photoView) step(by int) {
	v.keepCaption()
	p, ok := v.photo()
	if !ok {
		return
	}
	here := v.beside(p)
	for i, other := range here {
		if other.Hash == v.hash {
			v.show(here[(i+by+len(here))%len(here)].Hash)
			return
		}
	}
}

// beside returns the photographs among which one is looked at: those of its area, on Builds all as they are listed.
func (v *photoView) beside(p lot.Photo) []lot.Photo {
	_, list := v.w.state.Pictured()
	if v.w.state.Place == desk.Builds {
		return view.SortedPhotos(list)
	}
	return slices.DeleteFunc(slices.Clone(list), func(other lot.Photo) bool { return other.Area != p.Area })
}

// remove takes the photograph off the lot and closes; undo puts it back.
func (v *photoView) remove() {
	v.dialog.Hide()
	v.w.Do(desk.RemovePhoto(v.hash))
}

func (v *photoView) close() {
	v.keepCaption()
	v.dialog.Hide()
}
