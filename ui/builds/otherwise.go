package builds

import (
	"walkline/ui/form"
	"walkline/ui/widgets"
	"walkline/valuation/build"
	"walkline/valuation/prob"
)

// otherWays adds the fields of what the ways out beside finishing would bring. All three numbers at nothing: not judged.
func otherWays(f *form.Of[build.Build]) {
	judged := func(label string, spec widgets.Spec, at func(*build.Otherwise) **prob.Three) {
		f.Three(label, spec, func(b *build.Build) any { return at(&b.Otherwise) })
	}
	judged("As it stands it would bring", form.Amounts, func(o *build.Otherwise) **prob.Three { return &o.AsIs })
	days := widgets.Spec{Unit: "days", Least: widgets.Bound(0)}
	judged("Days until it is sold so", days, func(o *build.Otherwise) **prob.Three { return &o.AsIsDays })
	judged("Its parts would bring", form.Amounts, func(o *build.Otherwise) **prob.Three { return &o.PartOut })
	judged("Hours to part it out", widgets.Spec{Unit: "h", Least: widgets.Bound(0)},
		func(o *build.Otherwise) **prob.Three { return &o.PartOutHours })
	judged("Days to part it out", days, func(o *build.Otherwise) **prob.Three { return &o.PartOutDays })
}
