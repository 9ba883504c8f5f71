package hedonic

// cell is what a row has in an extra column, read once for all fits of a table.
type cell struct {
	word   string // empty: nothing
	number float64
	counts bool // it is a number
}

// table is the rows of a fit and its subject with their cells read.
type table struct {
	names   []string // of the columns that the subject states too, sorted
	rows    []Sale
	subject Traits
}

// read returns a copy of rows and subject with their cells.
func read(rows []Sale, subject Traits) table {
	t := table{rows: make([]Sale, len(rows))}
	for _, name := range sorted(subject.More) {
		if !notFacts[Key(name)] && Key(subject.More[name]) != "" {
			t.names = append(t.names, name)
		}
	}
	t.subject = subject.read(t.names, make([]cell, 0, len(t.names)))
	room := make([]cell, len(rows)*len(t.names))
	for i, r := range rows {
		from := i * len(t.names)
		r.Traits = r.Traits.read(t.names, room[from:from:from+len(t.names)])
		t.rows[i] = r
	}
	return t
}

// read returns t with its cells in room, which is empty.
func (t Traits) read(names []string, room []cell) Traits {
	if t.Trim != "" {
		t.within = t.Model + ": " + t.Trim
	}
	for _, name := range names {
		c := cell{word: Key(t.More[name])}
		if x, ok := Number(c.word); ok {
			c.number, c.counts = x, true
		}
		room = append(room, c)
	}
	t.cells = room
	return t
}
