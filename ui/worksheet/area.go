package worksheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/damage"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
)

// unhurt is what an area says that nobody marked: it is not known to be sound.
const unhurt = "nothing marked"

// hurt is what the area that is selected on the plan has: a click on the plan only selects, and this is where it is marked with
// the mouse.
type hurt struct {
	survey        *survey
	name          *widgets.Words
	extent, depth *widgets.Select
	body          fyne.CanvasObject
	cell          lot.Damage // that is shown
	muted         bool
}

func newHurt(d *survey) *hurt {
	h := &hurt{survey: d, name: widgets.NewLine("")}
	h.extent = widgets.NewSelect(append([]string{unhurt}, lot.Extents...), func(word string) {
		extent, depth := word, h.cell.Depth
		if word == unhurt {
			extent, depth = "", ""
		} else if depth == "" {
			depth = lot.Depths[0]
		}
		h.tell(extent, depth)
	})
	h.depth = widgets.NewSelect(lot.Depths, func(depth string) { h.tell(h.cell.Extent, depth) })
	h.depth.PlaceHolder = "depth"
	h.body = container.NewVBox(h.name, container.NewGridWithColumns(2, h.extent, h.depth), widget.NewSeparator())
	return h
}

func (h *hurt) tell(extent, depth string) {
	if !h.muted {
		h.survey.changed(h.cell.Area, extent, depth)
	}
}

// show shows the cell of an area.
func (h *hurt) show(area string, cells []lot.Damage) {
	h.cell = lot.Damage{Area: area}
	for _, c := range cells {
		if c.Area == area {
			h.cell = c
		}
	}
	h.muted = true
	h.name.SetText("Selected: " + damage.Area(area))
	if h.cell.Extent == "" {
		h.extent.SetSelected(unhurt)
	} else {
		h.extent.SetSelected(h.cell.Extent)
	}
	h.depth.ClearSelected()
	h.depth.Disable()
	if h.cell.Extent != "" {
		h.depth.Enable()
	}
	if h.cell.Depth != "" {
		h.depth.SetSelected(h.cell.Depth)
	}
	h.muted = false
}
