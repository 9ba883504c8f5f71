package desk

// InHand returns what "this lot" means where the user is: the build on screen, else the open lot; nil: neither.
func (s State) InHand() *Open {
	b := s.BuildInHand()
	switch {
	case b == nil, s.Open != nil && s.Open.ID == b.ID:
		return s.Open
	}
	return &Open{ID: b.ID, State: b.State, Case: b.Case, Faults: b.Case.Check(), Photos: b.Photos, Went: b.Build.Hammer}
}

// BuildInHand returns the build on screen, nil: none is.
func (s State) BuildInHand() *OpenBuild {
	if s.Place != Builds {
		return nil
	}
	return s.Build
}
