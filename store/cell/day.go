package cell

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"walkline/valuation/lot"
)

// Order is the order in which a day is written where its numbers alone don't tell.
type Order string

// The orders. A day whose year stands first is read in either.
const (
	DayFirst   Order = "day first"   // 4/3/2026
	MonthFirst Order = "month first" // 3/4/2026
)

// The years that a day may lie in: the first motor car, and a bound that catches slips.
const firstYear, lastYear = 1886, 2200

// The spreadsheet days that are read: 1927 to 2118.
const firstSerial, lastSerial = 10_000, 80_000

// months are the names of months in the seven languages, folded, in full or as the first letters that tell them apart.
var months = numbered(
	"january|jan|januar|janvier|janv|enero|ene|stycznia|styczen|sty|januari|gennaio|gen|janner",
	"february|feb|februar|fevrier|fevr|febrero|lutego|luty|lut|februari|febbraio|febr",
	"march|mar|marz|mars|marzo|marca|marzec|maart|mrt|mrz",
	"april|apr|avril|avr|abril|abr|kwietnia|kwiecien|kwi|aprile",
	"may|mai|mayo|maja|maj|mei|maggio|mag",
	"june|jun|juni|juin|junio|czerwca|czerwiec|cze|giugno|giu",
	"july|jul|juli|juillet|juil|julio|lipca|lipiec|lip|luglio|lug",
	"august|aug|aout|agosto|ago|sierpnia|sierpien|sie|augustus",
	"september|sep|sept|septembre|septiembre|wrzesnia|wrzesien|wrz|settembre|set",
	"october|oct|oktober|okt|octobre|octubre|pazdziernika|pazdziernik|paz|ottobre|ott",
	"november|nov|novembre|noviembre|listopada|listopad|lis",
	"december|dec|dezember|dez|decembre|diciembre|dic|grudnia|grudzien|gru|dicembre")

func numbered(lists ...string) map[string]int {
	m := map[string]int{}
	for i, list := range lists {
		for _, word := range strings.Split(list, "|") {
			m[word] = i + 1
		}
	}
	return m
}

// idle are words of a day that say nothing of it, and days of the week.
var idle = SetOf("on|the|of|de|del|le|am|den|der|il|op|dnia|st|nd|rd|th|er|t|z|utc|mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|monday|" +
	"tuesday|wednesday|thursday|friday|saturday|sunday|" +
	"montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonntag|mo|di|mi|do|fr|sa|so|lundi|mardi|mercredi|jeudi|vendredi|samedi|" +
	"dimanche|lunes|martes|miercoles|jueves|viernes|sabado|domingo|" +
	"maandag|dinsdag|woensdag|donderdag|vrijdag|zaterdag|zondag|lunedi|martedi|mercoledi|giovedi|venerdi|sabato|domenica|r|listed|sold|" +
	"since|seit|ab")

// date is a day as its parts stand in a cell.
type date struct {
	numbers [3]int
	widths  [3]int // digits of each number
	n       int
	month   int  // of a name; 0: none
	after   int  // how many numbers stand before the name
	points  bool // parted by points
}

var errDay = errors.New("no day of the calendar")

// partsOf returns the numbers and month of a cell. Errors: other words stand there, or too many numbers.
func partsOf(cell string) (d date, err error) {
	for at := 0; at < len(cell); {
		start := at
		switch c := cell[at]; {
		case isDigit(c):
			for at < len(cell) && isDigit(cell[at]) {
				at++
			}
			if d.n == 3 || at-start > 8 {
				return d, errDay
			}
			d.numbers[d.n], _ = strconv.Atoi(cell[start:at])
			d.widths[d.n] = at - start
			d.n++
		case c >= 0x80 || c|0x20 >= 'a' && c|0x20 <= 'z':
			for at < len(cell) && (cell[at] >= 0x80 || cell[at]|0x20 >= 'a' && cell[at]|0x20 <= 'z') {
				at++
			}
			word := strings.Join(Words(cell[start:at]), " ")
			if month := months[word]; month > 0 && d.month == 0 {
				d.month, d.after = month, d.n
			} else if !idle[word] && word != "" {
				return d, errDay
			}
		default:
			d.points = d.points || c == '.'
			at++
		}
	}
	return d, nil
}

// withoutTime cuts a time of day off, which has a colon.
func withoutTime(cell string) string {
	colon := strings.IndexByte(cell, ':')
	if colon < 0 {
		return cell
	}
	if at := strings.LastIndexAny(cell[:colon], " T,"); at > 0 {
		return cell[:at]
	}
	return cell
}

// Proves returns the order that a day's numbers prove, and whether they could be read in either and mean two days.
func Proves(cell string) (proven Order, either bool) {
	d, err := partsOf(withoutTime(cell))
	if err != nil || d.month > 0 || d.n < 2 || d.n == 3 && d.widths[0] == 4 || d.n == 2 && (d.widths[0] == 4 || d.widths[1] == 4) {
		return "", false
	}
	switch a, b := d.numbers[0], d.numbers[1]; {
	case d.points:
		return "", false
	case a > 12 && b <= 12:
		return DayFirst, false
	case b > 12 && a <= 12:
		return MonthFirst, false
	default:
		return "", a != b && a <= 12 && b <= 12
	}
}

// ReadDay returns the day that a cell says, against the day of the import where it says "3 days ago" or leaves the year out.
// Errors: no such day, or none at all.
func ReadDay(cell string, order Order, on lot.Date) (lot.Date, error) {
	if len(cell) == 10 && cell[4] == '-' && cell[7] == '-' {
		if day, ok := plainDay(cell); ok {
			return day, nil
		}
	}
	if day, ok := relative(cell, on); ok {
		return day, nil
	}
	d, err := partsOf(withoutTime(cell))
	if err != nil {
		return "", err
	}
	year, month, day, err := d.resolve(order, on)
	if err != nil {
		return "", err
	}
	return dayOf(year, month, day)
}

// plainDay reads YYYY-MM-DD.
func plainDay(cell string) (lot.Date, bool) {
	d, err := partsOf(cell)
	if err != nil || d.n != 3 || d.month > 0 {
		return "", false
	}
	day, err := dayOf(d.numbers[0], d.numbers[1], d.numbers[2])
	return day, err == nil && string(day) == cell
}

func dayOf(year, month, day int) (lot.Date, error) {
	if year < firstYear || year > lastYear || month < 1 || month > 12 || day < 1 || day > daysIn(year, month) {
		return "", errDay
	}
	text := []byte("0000-00-00")
	text[0], text[1], text[2], text[3] = byte('0'+year/1000), byte('0'+year/100%10), byte('0'+year/10%10), byte('0'+year%10)
	text[5], text[6], text[8], text[9] = byte('0'+month/10), byte('0'+month%10), byte('0'+day/10), byte('0'+day%10)
	return lot.Date(text), nil
}

func daysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// resolve says which number is the year, the month and the day.
func (d date) resolve(order Order, on lot.Date) (year, month, day int, err error) {
	a, b, c := d.numbers[0], d.numbers[1], d.numbers[2]
	switch {
	case d.month > 0 && d.n == 2 && d.widths[0] == 4:
		return a, d.month, b, nil
	case d.month > 0 && d.n == 2:
		return d.fullYear(1, on), d.month, a, nil
	case d.month > 0 && d.n == 1 && d.widths[0] == 4:
		return a, d.month, 1, nil
	case d.month > 0 && d.n == 1:
		return d.yearBefore(d.month, a, on), d.month, a, nil
	case d.n == 1 && d.widths[0] == 8:
		return a / 10000, a / 100 % 100, a % 100, nil
	case d.n == 1 && a >= firstSerial && a <= lastSerial:
		t := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC).AddDate(0, 0, a)
		return t.Year(), int(t.Month()), t.Day(), nil
	case d.n == 1 && d.widths[0] == 4:
		return 0, 0, 0, errors.New("a year alone is no day")
	case d.n == 2 && d.widths[0] == 4:
		return a, b, 1, nil
	case d.n == 2 && d.widths[1] == 4:
		return b, a, 1, nil
	case d.n == 3 && d.month == 0 && d.widths[0] == 4:
		return a, b, c, nil
	}
	return d.inOrder(order, on)
}

// inOrder reads two or three numbers whose order must be known.
func (d date) inOrder(order Order, on lot.Date) (year, month, day int, err error) {
	if d.n < 2 || d.month > 0 {
		return 0, 0, 0, errDay
	}
	day, month = d.numbers[0], d.numbers[1]
	switch {
	case d.points:
	case order == MonthFirst:
		day, month = month, day
	case order == "" && month > 12:
		day, month = month, day
	}
	if month > 12 {
		return 0, 0, 0, fmt.Errorf("%w: read %s, as the table is", errDay, order)
	}
	if d.n == 2 {
		return d.yearBefore(month, day, on), month, day, nil
	}
	return d.fullYear(2, on), month, day, nil
}

// fullYear returns a year that may have two digits: of this century where that is not past the year after the import's.
func (d date) fullYear(at int, on lot.Date) int {
	year := d.numbers[at]
	if d.widths[at] != 2 {
		return year
	}
	century := on.Year() / 100 * 100
	if year += century; year > on.Year()+1 {
		year -= 100
	}
	return year
}

// yearBefore returns the year in which a day without one came last.
func (d date) yearBefore(month, day int, on lot.Date) int {
	year := on.Year()
	if then, err := dayOf(year, month, day); err == nil && then > on {
		year--
	}
	return year
}

// The words of days that hang on the import's.
var (
	ago      = SetOf("ago|vor|il|hace|temu|geleden|fa|a|y|back|old|listed|since|for|seit|posted|hours")
	relation = map[string]int{"today": 0, "heute": 0, "aujourd hui": 0, "hoy": 0, "dzisiaj": 0, "dzis": 0, "vandaag": 0, "oggi": 0,
		"just now": 0, "now": 0,
		"yesterday": 1, "gestern": 1, "hier": 1, "ayer": 1, "wczoraj": 1, "gisteren": 1, "ieri": 1,
		"day before yesterday": 2, "the day before yesterday": 2, "vorgestern": 2, "avant hier": 2, "anteayer": 2, "przedwczoraj": 2,
		"eergisteren": 2, "altroieri": 2,
		"last week": 7, "letzte woche": 7, "la semaine derniere": 7, "semaine derniere": 7, "la semana pasada": 7, "semana pasada": 7,
		"w zeszlym tygodniu": 7, "zeszly tydzien": 7,
		"vorige week": 7, "afgelopen week": 7, "la settimana scorsa": 7, "settimana scorsa": 7}
	spans = map[string]int{"hour": -1, "hours": -1, "hr": -1, "hrs": -1, "h": -1, "minute": -1, "minutes": -1, "min": -1, "mins": -1,
		"stunde": -1, "stunden": -1, "heure": -1, "heures": -1, "hora": -1, "horas": -1,
		"godzin": -1, "godziny": -1, "godzine": -1, "uur": -1, "ora": -1, "ore": -1,
		"day": 1, "days": 1, "d": 1, "tag": 1, "tagen": 1, "tage": 1, "jour": 1, "jours": 1, "dia": 1, "dias": 1, "dzien": 1, "dni": 1,
		"dagen": 1, "dag": 1, "giorno": 1, "giorni": 1,
		"w": 7, "week": 7, "weeks": 7, "wk": 7, "wks": 7, "woche": 7, "wochen": 7, "semaine": 7, "semaines": 7, "semana": 7, "semanas": 7,
		"tydzien": 7, "tygodnie": 7, "tygodni": 7, "weken": 7, "settimana": 7, "settimane": 7,
		"mo": 30, "month": 30, "months": 30, "monat": 30, "monate": 30, "monaten": 30, "mois": 30, "mes": 30, "meses": 30, "miesiac": 30,
		"miesiace": 30, "miesiecy": 30, "maand": 30, "maanden": 30, "mese": 30, "mesi": 30}
	lasts = SetOf("last month|letzten monat|le mois dernier|mois dernier|el mes pasado|mes pasado|w zeszlym miesiacu|vorige maand|il " +
		"mese scorso|mese scorso")
	ones = SetOf("a|an|one|ein|einem|einer|eine|un|une|una|uno|een|jeden|jednego")
)

// relative returns a day said against the day of the import.
func relative(cell string, on lot.Date) (lot.Date, bool) {
	if cell = withoutTime(cell); cell == "" || isDigit(cell[len(cell)-1]) || !on.Known() {
		return "", false
	}
	words := Words(cell)
	phrase := strings.Join(words, " ")
	if days, known := relation[phrase]; known {
		return daysBefore(on, 0, days), true
	}
	if lasts[phrase] {
		return daysBefore(on, 1, 0), true
	}
	count, span := -1, 0
	for _, w := range apart(words) {
		if n, err := strconv.Atoi(w); err == nil && count < 0 && n < 5000 {
			count = n
			continue
		}
		switch {
		case spans[w] != 0 && span == 0:
			span = spans[w]
		case ones[w] && count < 0 && w != "a":
			count = 1
		case w == "a" && count < 0 && words[0] == "a":
			count = 1
		case !ago[w]:
			return "", false
		}
	}
	switch {
	case count < 0 || span == 0:
		return "", false
	case span == 30:
		return daysBefore(on, count, 0), true
	}
	return daysBefore(on, 0, count*max(span, 0)), true
}

// apart returns words with a number parted from the letters that follow it, as in "5h ago".
func apart(words []string) (out []string) {
	for _, w := range words {
		unit := strings.TrimLeft(w, "0123456789")
		if n := len(w) - len(unit); n > 0 && unit != "" {
			out = append(out, w[:n])
			w = unit
		}
		out = append(out, w)
	}
	return out
}

// daysBefore returns the day so many months and days before another; of a month that has no such day, its last.
func daysBefore(on lot.Date, monthsBack, days int) lot.Date {
	t, err := time.Parse(time.DateOnly, string(on))
	if err != nil {
		return ""
	}
	first := time.Date(t.Year(), t.Month()-time.Month(monthsBack), 1, 0, 0, 0, 0, time.UTC)
	day := min(t.Day(), daysIn(first.Year(), int(first.Month())))
	return lot.Date(first.AddDate(0, 0, day-1-days).Format(time.DateOnly))
}
