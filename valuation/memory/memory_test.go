package memory_test

import (
	"fmt"
	"testing"

	"walkline/valuation/memory"
)

type inner struct {
	Low, High float64
	hidden    int
}

type content struct {
	Name  string
	On    *bool
	Parts []inner
	Rates map[string]float64
	Sure  bool
	Count int
}

func sample() content {
	yes := true
	return content{"a", &yes, []inner{{1, 2, 3}, {4, 5, 6}}, map[string]float64{"x": 1, "y": 2}, true, 7}
}

func TestEveryFieldIsInTheKey(t *testing.T) {
	no := false
	changes := map[string]func(*content){
		"a string":           func(c *content) { c.Name = "b" },
		"a pointer":          func(c *content) { c.On = &no },
		"no pointer":         func(c *content) { c.On = nil },
		"a nested figure":    func(c *content) { c.Parts[1].High = 5.0000000001 },
		"an inner field":     func(c *content) { c.Parts[0].hidden = 4 },
		"one part fewer":     func(c *content) { c.Parts = c.Parts[:1] },
		"a value of the map": func(c *content) { c.Rates["x"] = 3 },
		"a key of the map":   func(c *content) { delete(c.Rates, "x"); c.Rates["z"] = 1 },
		"a bool":             func(c *content) { c.Sure = false },
		"a count":            func(c *content) { c.Count = -7 },
	}
	seen := map[memory.Key]string{memory.Of(sample()): "nothing"}
	for name, change := range changes {
		c := sample()
		change(&c)
		k := memory.Of(c)
		if other, ok := seen[k]; ok {
			t.Errorf("%s and %s give one key", name, other)
		}
		seen[k] = name
	}
	if _, ok := seen[memory.Of(sample())]; !ok {
		t.Error("one content has two keys")
	}
	if memory.Of("ab", "c") == memory.Of("a", "bc") {
		t.Error("the border between two strings is lost")
	}
}

func TestWhatIsNoContentPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a function passed as content")
		}
	}()
	memory.Of(func() {})
}

// recall asks for n and reports whether it had to be worked out.
func recall(s *memory.Shelf[int], n, size int) bool {
	worked := false
	got := s.Recall(memory.Of(n), func() (int, int) { worked = true; return n, size })
	if got != n {
		panic(fmt.Sprint("asked for ", n, ", got ", got))
	}
	return worked
}

func TestWhatWasUsedLongestAgoGoesFirst(t *testing.T) {
	s := memory.NewShelf[int](3)
	for n := range 3 {
		s.Turn()
		recall(s, n, 1)
	}
	s.Turn()
	recall(s, 0, 1)
	recall(s, 3, 1)
	for n, worked := range map[int]bool{0: false, 2: false, 3: false} {
		if recall(s, n, 1) != worked {
			t.Errorf("%d: worked out again", n)
		}
	}
	if !recall(s, 1, 1) {
		t.Error("the oldest is still kept")
	}
	if s.Size() > 3 {
		t.Errorf("size %d of 3", s.Size())
	}
}

func TestARoundLargerThanTheShelfKeepsItsBeginning(t *testing.T) {
	s := memory.NewShelf[int](10)
	for round := range 3 {
		s.Turn()
		again := 0
		for n := range 15 {
			if recall(s, n, 1) {
				again++
			}
		}
		if want := []int{15, 5, 5}[round]; again != want {
			t.Errorf("round %d: %d worked out, want %d", round, again, want)
		}
	}
	if s.Size() != 10 {
		t.Errorf("size %d of 10", s.Size())
	}
	s.Turn()
	for range 2 {
		if !recall(s, 99, 11) {
			t.Error("what is larger than the shelf was kept")
		}
	}
}
