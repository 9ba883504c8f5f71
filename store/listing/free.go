package listing

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"walkline/store/cell"
	"walkline/store/runlist"
	"walkline/valuation/lot"
)

// words are those of a piece that nothing has been found in yet.
type words []string

// take takes the first run of at most so many words that is one of what is looked for, the longest runs first.
func (w *words) take(most int, is func(phrase string) bool) bool {
	return w.takeSaid(most, func(phrase string, _, _ words) bool { return is(phrase) })
}

// takeSaid is take for what the words before and behind a run can turn into something else.
func (w *words) takeSaid(most int, is func(phrase string, before, behind words) bool) bool {
	for n := min(most, len(*w)); n > 0; n-- {
		for at := 0; at+n <= len(*w); at++ {
			if is(strings.Trim(strings.Join((*w)[at:at+n], " "), " ,.!"), (*w)[:at], (*w)[at+n:]) {
				*w = slices.Delete(slices.Clone(*w), at, at+n)
				return true
			}
		}
	}
	return false
}

// idle are words beside a fact that say nothing more.
var idle = cell.SetOf("a|an|the|and|with|is|has|it|in|of|at|on|to|this|vehicle|car|but|very|great|good|vin|approx|damage|title|reads|" +
	"shows|for|sale|from|auto|" +
	"primary|secondary|main")

// telling returns the words that say something.
func (w words) telling() words {
	return slices.DeleteFunc(slices.Clone(w), func(x string) bool { return idle.Has(x) || len(cell.Words(x)) == 0 })
}

// finders look for one kind of fact each, in this order: each takes its words, and what names the vehicle is what is left beside a year.
var finders = []func(*reading, *words){findVIN, findNumber, findSaleDay, findKeys, findAirbags, findRuns, findTitle, findDriven, findDoors,
	findDamage, findLoss, findEngine, findPower, findOdometer, findBrand, findValue, findVehicle, findAreas}

func findVIN(r *reading, w *words) {
	w.take(1, func(s string) bool {
		s = strings.ToUpper(s)
		if len(s) != 17 || !strings.ContainsAny(s, "0123456789") || len(cell.Words(s)) > 17 || strings.Trim(s, vinLetters) != "" {
			return false
		}
		r.Lot.VIN = s
		r.fact("VIN", s)
		return true
	})
}

// vinLetters are letters and digits, those that no VIN has among them: a slip is shown beside the field.
const vinLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"

var lotNumber = regexp.MustCompile(`(?i)^lot(?: no\.?| number)? ?#? ?(\w*\d\w*)$`)

func findNumber(r *reading, w *words) {
	w.take(3, func(s string) bool {
		m := lotNumber.FindStringSubmatch(s)
		if m != nil {
			r.Lot.Number = m[1]
			r.fact("Lot number", m[1])
		}
		return m != nil
	})
}

// findOdometer takes a reading beside which nothing else is said, or the name of the vehicle: miles beside other words are those that an
// engine has run, or that it is towed.
func findOdometer(r *reading, w *words) {
	w.takeSaid(6, func(s string, before, behind words) bool {
		l, err := cell.ReadLength(s, 0)
		return err == nil && l.Known && r.alone(before, behind) && r.odometer(l)
	})
}

// alone reports whether the words beside a run say nothing, or name the vehicle.
func (r *reading) alone(before, behind words) bool {
	rest := slices.Concat(before, behind)
	return len(rest.telling()) == 0 || r.names(rest)
}

// names reports whether words name the vehicle: a model year stands among them, and none was named before.
func (r *reading) names(w words) bool {
	return r.Lot.ModelYear == 0 && cell.YearIn(strings.Join(w, " ")) > 0
}

// odometer takes a reading in its unit with the statement of it, and reports whether it is one.
func (r *reading) odometer(l cell.Length) bool {
	x := l.Float()
	if l.Unit == "" || x != float64(int(x)) || x > lot.MostMileage {
		return false
	}
	r.statement(l.Status)
	r.Lot.Odometer, r.Lot.OdometerUnit = new(int(x)), l.Unit
	r.fact("Odometer", strconv.Itoa(int(x))+" "+l.Unit)
	return true
}

// statement takes an odometer statement where there is one.
func (r *reading) statement(status string) {
	if status != "" {
		r.Lot.OdometerStatus = status
		r.fact("Odometer statement", plain(status))
	}
}

// vague are words for whether it runs that say so only where nothing else stands beside them.
var vague = cell.SetOf("dead|turns|start|unknown")

func findRuns(r *reading, w *words) {
	whole, doubt := len(*w) == 1, false // what is said of a long run is said of its parts
	for w.takeSaid(5, func(s string, before, behind words) bool {
		code, known := runlist.Condition(s)
		doubt = doubt || known && (denied(before, behind) || past.Has(before.last()))
		return known && !doubt && (whole || !vague.Has(s)) && r.runs(code)
	}) {
	}
}

// runs takes whether the vehicle drives; of two words the one that says more.
func (r *reading) runs(code string) bool {
	at := func(code string) int { return slices.Index(lot.Conditions, code) }
	if r.Lot.Condition == "" || at(code) < at(r.Lot.Condition) {
		r.Lot.Condition = code
		r.Facts = slices.DeleteFunc(r.Facts, func(f Fact) bool { return f.Field == "Runs?" })
		r.fact("Runs?", plain(code))
	}
	return true
}

var (
	keyWords  = cell.SetOf("key|keys")
	keyBeside = cell.SetOf("with|has|have|present|included|one|two|1|2|yes|are|is|there|in|and|available|set|of|no|not|without|" +
		"missing|none|lost")
	keyless = cell.SetOf("no|not|without|missing|none|lost")
)

func findKeys(r *reading, w *words) {
	w.take(4, func(s string) bool {
		key, has := false, true
		for _, word := range cell.Words(s) {
			if !keyWords[word] && !keyBeside[word] {
				return false
			}
			key, has = key || keyWords[word], has && !keyless[word]
		}
		if key {
			r.hasKeys(has)
		}
		return key
	})
}

func (r *reading) hasKeys(has bool) {
	r.Lot.Keys = &has
	r.fact("Keys", map[bool]string{true: "yes", false: "no"}[has])
}

// phrases are the words for what drives a vehicle, by the code of the survey. Common practice, no source.
var (
	drivenWords = map[string]string{"awd": "all", "4wd": "all", "4x4": "all", "all wheel drive": "all", "four wheel drive": "all",
		"all wheels": "all", "fwd": "front", "front wheel drive": "front", "front wheels": "front", "rwd": "rear", "rear wheel drive": "rear",
		"rear wheels": "rear", "2wd front": "front", "2wd rear": "rear"}
	wheels     = cell.SetOf("all wheels|front wheels|rear wheels") // with a label alone: front wheels are bent, too
	powerWords = map[string]string{"gas": "combustion", "gasoline": "combustion", "petrol": "combustion", "diesel": "combustion",
		"flex fuel": "combustion", "hybrid": "hybrid", "plug in hybrid": "hybrid", "gas electric hybrid": "hybrid", "electric": "electric",
		"battery electric": "electric", "ev": "electric"}
)

func (r *reading) phrase(w *words, field string, known map[string]string, at *string, fits func(s string, before, behind words) bool) {
	w.takeSaid(3, func(s string, before, behind words) bool {
		code := known[driver(s)]
		if code = map[bool]string{true: code}[code != "" && fits(s, before, behind)]; code != "" {
			*at = code
			r.fact(field, s)
		}
		return code != ""
	})
}

func findDriven(r *reading, w *words) {
	r.phrase(w, "Driven wheels", drivenWords, &r.Driven, func(s string, before, _ words) bool { return !wheels.Has(s) && !before.deny() })
}

// findPower takes what drives the vehicle where nothing else is said, or in its name: windows are electric, too, and a heater burns diesel.
func findPower(r *reading, w *words) {
	r.phrase(w, "Powertrain", powerWords, &r.Powertrain, func(_ string, before, behind words) bool {
		return r.alone(before, behind) && !before.deny()
	})
}

// driver returns the words for what drives a vehicle, without the word for the engine behind them.
func driver(s string) string {
	w := cell.Words(s)
	if last := len(w) - 1; last > 0 && (w[last] == "engine" || w[last] == "motor") {
		w = w[:last]
	}
	return strings.Join(w, " ")
}

// labelledPhrase fits whatever stands beside: a label explains it.
func labelledPhrase(string, words, words) bool { return true }

// engine is how the size or the cylinders of an engine are written.
var engine = regexp.MustCompile(`(?i)^(\d[.,]\d ?l(it(er|re)s?)?|[viwh]-?\d{1,2}|\d{1,2}[- ]?cyl(inders?)?\.?)$`)

// findEngine takes the engine, which stands with the trim: comparables name it there.
func findEngine(r *reading, w *words) {
	for w.take(2, func(s string) bool {
		if engine.MatchString(s) {
			r.Lot.Trim = strings.TrimSpace(r.Lot.Trim + " " + s)
			r.fact("Engine, kept with the trim", s)
			return true
		}
		return false
	}) {
	}
}

// worths are words of money: the name of a vehicle ends before them.
var worths = cell.SetOf("value|valued|worth")

// findVehicle takes what stands beside a model year, or make and model before one.
func findVehicle(r *reading, w *words) {
	name, rest := *w, words(nil)
	if at := slices.IndexFunc(name, worths.Has); at >= 0 {
		name, rest = name[:at], name[at:]
	}
	text := strings.Join(name, " ")
	if year := cell.YearIn(text); r.Lot.ModelYear == 0 && year > 0 && len(name) > 2 {
		r.vehicle(text)
		*w = rest
	}
}

func (r *reading) vehicle(text string) {
	v := cell.Vehicle(text, "", "")
	engine := r.Lot.Trim
	r.Lot.Make, r.Lot.Model, r.Lot.Trim = v.Make, v.Model, strings.TrimSpace(v.Trim+" "+engine)
	if v.Year > 0 {
		r.year(strconv.Itoa(v.Year))
	}
	r.fact("Make", v.Make)
	r.fact("Model", v.Model)
	if v.Trim != "" {
		r.fact("Trim", v.Trim)
	}
}

// guessed is what is said of a mark whose extent no word tells.
func guessed(d lot.Damage, said bool) string {
	words := d.Extent + ", " + d.Depth
	if !said {
		words += " (a guess: look at it)"
	}
	return words
}
