package ui

import (
	"context"

	"walkline/ui/desk"
	"walkline/ui/task"
)

// planDay has the plan of the sale day worked out away from the window, while its page or Live is shown and the data changed.
func (w *Window) planDay() {
	of, due := w.state.PlanDue()
	if !due {
		if of == "" {
			w.runner.Cancel("plan")
		}
		return
	}
	s := w.state
	task.Start(w.runner, task.Order[desk.DayPlan]{Key: "plan", Wait: waiting,
		Work: func(ctx context.Context) (desk.DayPlan, error) { return w.desk.PlanDay(ctx, s) },
		Show: func(p desk.DayPlan, err error) { w.show(w.state.DayPlanned(of, p, err)) }})
}
