package view

import (
	"fmt"
	"strings"

	"walkline/ui/desk"
)

// mostNamed is how many lines or risks a question names.
const mostNamed = 3

// QuestionWords asks about what is open of a build that has ended.
func QuestionWords(q desk.Question) string {
	names := strings.Join(q.Names[:min(len(q.Names), mostNamed)], ", ")
	if more := len(q.Names) - mostNamed; more > 0 {
		names += fmt.Sprintf(" and %d more", more)
	}
	switch q.About {
	case desk.OpenLines:
		return "Not ticked as finished: " + names + ". Was it done, or left out?"
	case desk.OpenBills:
		return "Finished, with parts in the plan and no bill: " + names + ". Are bills missing?"
	case desk.OpenCosts:
		return "The forecast counts these, and no bill does: " + names + ". What did they cost?"
	case desk.OpenDamage:
		return "Hidden damage without an answer: " + names + ". Was it there?"
	case desk.OpenDay:
		return "Sold on " + names + ": that day is still to come. Is it right?"
	case desk.OpenHours:
		return "No hours are entered, though the plan has some."
	}
	return "The price paid, the price it brought or the day of the sale is not entered."
}

// AnswerWords says what answers a question at once; empty: it needs entries of its own.
func AnswerWords(q desk.Question) string {
	return map[desk.Unsettled]string{desk.OpenLines: "All of it is finished", desk.OpenBills: "There are no more bills",
		desk.OpenCosts: "They cost nothing", desk.OpenDamage: "The rest was not there", desk.OpenDay: "The day is right"}[q.About]
}
