package scenario

// Holding returns the memory with that many bytes of columns for one outcome to hold on to.
func (m *Memory) Holding(bytes int) *Memory {
	m.room = bytes
	return m
}
