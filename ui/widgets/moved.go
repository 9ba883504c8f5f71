package widgets

import (
	"walkline/ui/widgets/plan"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/table"
)

// Names that pages still use for what lives in walkline/ui/widgets/plan, plot and table now. They go when the last page
// says plan.New, plot.NewScatter and table.New itself.
type (
	Plan         = plan.Plan
	Column       = table.Column
	Row          = table.Row
	Table        = table.Table
	Axis         = plot.Axis
	BandPoint    = plot.BandPoint
	Curve        = plot.Curve
	CurveData    = plot.CurveData
	CurvePoint   = plot.CurvePoint
	Scatter      = plot.Scatter
	ScatterData  = plot.ScatterData
	ScatterPoint = plot.ScatterPoint
	Share        = plot.Share
	ShareBars    = plot.ShareBars
	Subject      = plot.Subject
	Waterfall    = plot.Waterfall
	WaterfallBar = plot.WaterfallBar
)

// Makers of the above.
var (
	NewPlan      = plan.New
	NewTable     = table.New
	NewCurve     = plot.NewCurve
	NewScatter   = plot.NewScatter
	NewShareBars = plot.NewShareBars
	NewWaterfall = plot.NewWaterfall
)
