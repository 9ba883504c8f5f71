package lot

// renamedJobs are the ids of jobs that risks had as well, by the id that the job has now: finishing the one took the other away.
var renamedJobs = map[string]string{"flood_connectors": "flood_connectors_clean", "flood_bearings": "flood_bearings_grease"}

// JobID returns the id that a job of the catalogue has now, of one that an older case or store knows it by.
func JobID(id string) string {
	if now, renamed := renamedJobs[id]; renamed {
		return now
	}
	return id
}

// SameWork reports whether what was noted of an id speaks of a line or risk: of what an older build noted of both, it speaks of both.
func SameWork(noted, id string) bool { return noted == id || JobID(noted) == id }
