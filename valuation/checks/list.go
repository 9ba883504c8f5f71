package checks

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
)

// Item is one thing to look at, ask for or stop at. JSON keys are those of the answer.
type Item struct {
	ID      string   `json:"id"`
	Kind    string   `json:"kind"`  // title | inspection | paper | stop
	Fixed   bool     `json:"fixed"` // the program decides on it, nobody answers it
	Text    string   `json:"text"`
	Why     string   `json:"why"`
	Minutes float64  `json:"minutes"`
	Worth   *float64 `json:"worth"` // money; nil: not worked out
	State   string   `json:"state"` // open | ok | bad
	Most    int      `json:"most"`  // vehicles that may be sold, of the question after it
	Tick    bool     `json:"tick"`  // ticked ("no" trouble) when it is in hand or settled
	Fee     float64  `json:"fee"`   // money that the look itself costs
	Look    string   `json:"look"`  // how to look
	Tools   string   `json:"tools"`
	Where   string   `json:"where"`  // part of the walk round the vehicle; bring | keep | standing: list of a paper
	Risks   []string `json:"risks"`  // ids of the risks that the look tells of
	Source  string   `json:"source"` // what the item rests on, with its status; empty: common practice, no source
}

// Subject is what the list is made for.
type Subject struct {
	Lot      lot.Lot
	Damage   []lot.Damage
	On       lot.Date // the day of the sale, or of the valuation
	Risks    []hidden.Risk
	Findings []hidden.Finding
	Answers  map[string]string // finding -> yes | no
	Packs    []Pack            // of where it will be registered, the nearest first, see Choose
}

// List returns the checklist: stops, title, paper, then inspection items in the order of the walk round the vehicle.
func List(s Subject) []Item {
	items := append(titleStops(s), jurisdiction(s)...)
	items = append(items, vinItems(s.Lot)...)
	items = append(items, odometer(s))
	items = append(items, strangeBrands(s.Lot)...)
	items = append(items, papers...)
	items = append(items, inspection(s)...)
	items = append(items, paperwork(s)...)
	for i, p := range items {
		if p.State == "" {
			items[i].State = state(s.Answers[p.ID])
		}
	}
	items = append(items, Contradictions(s)...)
	slices.SortStableFunc(items, func(a, b Item) int { return order(a) - order(b) })
	return append(items, looks(s)...)
}

// RoadOnly reports whether a stop forbids the road and nothing else: the lot may still be sold on or taken apart.
func RoadOnly(i Item) bool { return i.ID == "stop_title" || i.ID == "stop_pack" }

// Stops returns the texts of the stops among the items.
func Stops(items []Item) []string {
	var texts []string
	for _, i := range items {
		if i.Kind == "stop" {
			texts = append(texts, i.Text)
		}
	}
	return texts
}

func order(i Item) int { return slices.Index([]string{"stop", "title", "paper", "inspection"}, i.Kind) }

func state(answer string) string {
	switch answer {
	case "yes":
		return "bad"
	case "no":
		return "ok"
	}
	return "open"
}

// plainTitle returns the words of a title in small letters, without those that only say that it is one.
func plainTitle(word string) string {
	words := strings.FieldsFunc(strings.ToLower(word), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	return strings.Join(slices.DeleteFunc(words,
		func(w string) bool { return slices.Contains([]string{"certificate", "of", "title", "vehicle"}, w) }), " ")
}

// titleStops returns a stop for each document or brand that cannot be rebuilt, and for a document of which nobody knows what it
// allows until that is answered.
func titleStops(s Subject) []Item {
	var items []Item
	l := s.Lot
	for _, word := range append([]string{l.Title.Document}, l.Title.Brands...) {
		if lot.ReadPaper(word) == lot.Dead {
			items = append(items, Item{ID: "stop_title", Kind: "stop", State: "bad", Fixed: true,
				Text: fmt.Sprintf("The title reads %q: in most places such a vehicle may not go back on the road. Ask the agency.", word),
				Why:  "Where it is to be registered (" + orUnknown(l.Title.RegisterIn) + "), ask the agency before any bid."})
		}
	}
	return append(items, document(s)...)
}

// document asks what must be settled of the title document before a bid. It stops the bid until "no" says that it is settled.
func document(s Subject) []Item {
	i := Item{Kind: "stop", Minutes: 10}
	word := s.Lot.Title.Document
	switch lot.ReadPaper(word) {
	case lot.Untitled:
		i.ID, i.Text = "title_none", fmt.Sprintf("The document reads %q. Is it still open how it gets a title where it will be registered? "+
			"Ask the agency before any bid.", word)
		i.Why = "Without a title it can't be registered, and in some places not even sold whole. A bill of sale is no title."
	case lot.Unheard:
		i.ID, i.Text = "title_document_unheard",
			fmt.Sprintf("The document reads %q, which is no word of the list. Is it still open whether such a vehicle may be rebuilt and "+
				"registered? Ask the agency before any bid.", word)
		i.Why = "Agencies word their own documents. One that isn't known may be for parts or scrap."
	case lot.Unknown:
		i.ID, i.Kind, i.Text = "title_document_open", "title", "Is it still not known which title document it has?"
		i.Why = "Until it is known, the bid counts on one that may be rebuilt."
	default:
		return nil
	}
	i.State = state(s.Answers[i.ID])
	if i.State == "ok" {
		i.Kind = "title"
	}
	return []Item{i}
}

func orUnknown(s string) string {
	if s == "" {
		return "not entered"
	}
	return s
}

// papers are asked of every lot (common practice, no source, but where the text names one).
var papers = []Item{
	{ID: "title_differs", Kind: "title", Minutes: 5, Text: "Does the title document differ from what the sale lists (kind, state, brands)?",
		Why: "The document handed over decides what may be registered; ask the agency where it will be registered."},
	{ID: "lien_open", Kind: "title", Minutes: 5, Text: "Is a lien noted on the title without its " +
		"release?", Why: "A lien goes with the vehicle."},
	{ID: "seller_unclear", Kind: "title", Minutes: 5, Text: "Is the seller someone else than the owner on the " +
		"title?", Why: "Only the owner or their agent can sign it over."},
}

// inspection asks what the rebuilt inspection wants, of a title that it may be asked of.
func inspection(s Subject) []Item {
	i := Item{ID: "inspection_unknown", Kind: "paper", Minutes: 10,
		Why: "Photos before the work, bills of sale with donor VINs and forms cannot be had afterwards. Ask the agency."}
	switch s.Lot.Title.Inspection() {
	case lot.Inspected:
		return nil
	case lot.InspectionOpen:
		i.Text = "Is it still unknown whether a rebuilt inspection is asked for under this title, and how long its queue is?"
	default:
		i.Text = "Is it still unknown what the rebuilt inspection asks for and how long its queue is?"
	}
	return []Item{i}
}

// looks returns the findings that inform this lot's risks, in the order of the catalogue.
func looks(s Subject) []Item {
	names, ids := map[string][]string{}, map[string][]string{}
	for _, r := range s.Risks {
		for _, e := range r.Findings {
			names[e.Finding] = append(names[e.Finding], r.Name)
			ids[e.Finding] = append(ids[e.Finding], r.ID)
		}
	}
	var items []Item
	for _, f := range s.Findings {
		if len(ids[f.ID]) == 0 {
			continue
		}
		items = append(items, Item{ID: f.ID, Kind: "inspection", Text: f.Text, Why: "Points to: " + strings.Join(names[f.ID], ", ") + ".",
			Minutes: f.Minutes, Fee: f.Fee, Look: f.Look, Tools: f.Tools, Where: f.Where, Risks: ids[f.ID], State: state(s.Answers[f.ID])})
	}
	return items
}
