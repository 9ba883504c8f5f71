package plan

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/widgets/seen"
	"walkline/valuation/lot"
)

var hurt = []lot.Damage{
	{Area: "12", Extent: "disabling", Depth: "structure"}, {Area: "01", Extent: "functional", Depth: "bolted"},
	{Area: "11", Extent: "minor", Depth: "skin"}, {Area: "03", Extent: "minor", Depth: "bolted"},
	{Area: "engine_bay", Extent: "functional", Depth: "bolted"}, {Area: "undercarriage", Extent: "disabling", Depth: "structure"},
}

func TestPlanLooks(t *testing.T) {
	seen.Picture(t, "plan", fyne.NewSize(860, 560), func() fyne.CanvasObject {
		p := New(nil)
		p.SetDamage(hurt)
		p.FocusGained()
		return p
	})
}
