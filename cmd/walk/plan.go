package main

import (
	"fmt"
	"io"
	"strings"

	"walkline/store/casefile"
	"walkline/store/salefile"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

const planUsage = "walk plan problem.json [--json] [--then ID=won@PRICE] [--then ID=lost] [--then ID=withdrawn]"

// patience is how many prices the exact program may look at for one who waits at a terminal: some seconds.
const patience = 20_000_000

// planOrder is what the command line asks of "walk plan".
type planOrder struct {
	path   string
	asJSON bool
	then   []string
}

// salePlan is the command "walk plan": the bids for the lots of a sale with the cash, hours and bays there are.
func salePlan(args []string, out, errs io.Writer) int {
	order, err := readPlanOrder(args)
	if err != nil {
		fmt.Fprintf(errs, "walk plan: %v\n", err)
		return faulty
	}
	data, err := readFile(order.path)
	if err != nil {
		fmt.Fprintf(errs, "walk plan: reading the sale: %v\n", err)
		return failed
	}
	s, faults := salefile.Read(data)
	if len(faults) == 0 {
		s, faults = afterResults(s, order.then)
	}
	if code := report(faults, "", errs); code != done {
		return code
	}
	s.Effort = patience
	a := sale.New(s).Answer()
	if order.asJSON {
		_, err = out.Write(salefile.WriteAnswer(a, s.Currency))
	} else {
		_, err = io.WriteString(out, planText(s, a))
	}
	if err != nil {
		fmt.Fprintf(errs, "walk plan: writing the plan: %v\n", err)
		return failed
	}
	return done
}

func readPlanOrder(args []string) (planOrder, error) {
	var o planOrder
	for i := 0; i < len(args); i++ {
		value, inOne := strings.CutPrefix(args[i], "--then=")
		switch a := args[i]; {
		case a == "--json" || a == "-json":
			o.asJSON = true
		case inOne:
			o.then = append(o.then, value)
		case a == "--then":
			if i++; i == len(args) {
				return o, fmt.Errorf("--then wants a result: %s", planUsage)
			}
			o.then = append(o.then, args[i])
		case strings.HasPrefix(a, "-"):
			return o, fmt.Errorf("no option %s: %s", a, planUsage)
		case o.path != "":
			return o, fmt.Errorf("one sale at a time, got %s and %s", o.path, a)
		default:
			o.path = a
		}
	}
	if o.path == "" {
		return o, fmt.Errorf("which sale? %s", planUsage)
	}
	return o, nil
}

// afterResults returns the sale that is left after results as they stand on the command line.
func afterResults(s sale.Sale, then []string) (sale.Sale, []casefile.Fault) {
	var results []sale.Result
	var faults []casefile.Fault
	for i, text := range then {
		r, err := sale.ParseResult(text, s.Currency)
		if err != nil {
			faults = append(faults, casefile.Fault{Key: fmt.Sprintf("then[%d]", i), Want: err.Error()})
		}
		results = append(results, r)
	}
	if len(faults) > 0 {
		return s, faults
	}
	left, wrong := s.After(results)
	return left, salefile.Faults(wrong)
}

// planText writes a plan for a person at a terminal.
func planText(s sale.Sale, a sale.Answer) string {
	p := page{currency: s.Currency.Code, cur: s.Currency}
	p.line("%s in cash, %g of your hours and %s are left for %d lots", s.Currency.Show(s.Cash), s.Hours, count(s.Bays, "bay"), len(s.Lots))
	for _, in := range s.In {
		p.line("%s comes in on %s", s.Currency.Show(in.Amount), in.Day)
	}
	for _, f := range s.Freed {
		p.line("%s free from %s on", count(f.Bays, "more bay"), f.Day)
	}
	give := "worked out exactly"
	if !a.Exact {
		give = "simulated, standard error " + s.Currency.Whole(a.Error)
	}
	p.line("Expected profit of the plan: %s (%s)", p.whole(a.Expected), give)
	p.line("\n%-10s %12s %8s %10s %8s %15s %18s %18s", "Lot", "today's bid", "to win", "expected", "bid on",
		"bid after a win", "cash left, usual", "cash left, top bid")
	for _, b := range a.Lots {
		p.line("%-10s %12s %6.1f %% %10s %6.1f %% %15s %18s %18s", b.ID, orNone(s.Currency, b.Bid), 100*b.WinChance,
			p.whole(b.Expected), 100*b.Reach, orNone(s.Currency, b.AfterWin),
			orNone(s.Currency, b.CashMiddle), orNone(s.Currency, b.CashFull))
	}
	p.line("\nMore to spend would add: %s for 1,000 of cash, %s for ten of your hours, %s for one bay",
		p.whole(a.Thousand), p.whole(a.TenHours), p.whole(a.Bay))
	p.list("Leave these lots", a.Leave)
	p.list("How to read it", []string{
		"A later lot's bid holds as long as every lot before it was lost. Give each result with --then, and the bids that follow change.",
		"Never go beyond a lot's walk-away bid: no bid here does.",
		"The lots are taken as independent. A market that is dear or cheap for all of them alike moves the risk, not the mean.",
	})
	return p.String()
}

func orNone(cur money.Currency, a *money.Amount) string {
	if a == nil {
		return "-"
	}
	return cur.Group(*a)
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
