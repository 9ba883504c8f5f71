package valuation

import "walkline/valuation/lot"

// Update brings the case of an older file to what this engine reads, with its meaning kept: the ids of jobs that have been given others.
func (c *Case) Update() {
	for i := range c.Repair.Lines {
		c.Repair.Lines[i].ID = lot.JobID(c.Repair.Lines[i].ID)
	}
}
