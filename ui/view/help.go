package view

import "strings"

// Help returns what a figure or a field means, in one line, by its label; empty where the label says it all.
func Help(label string) string {
	if strings.HasSuffix(label, ", an hour") {
		return "What an hour of your own is worth to you at this trade: a cost in the sum, and shown apart."
	}
	if strings.HasSuffix(label, " takes off") && help[label] == "" {
		return "What buyers take off a clear title's price for this cause: low, likely, high. All three empty: the starter value, from memory."
	}
	return help[label]
}

var help = map[string]string{
	// Sale plan
	"Planned from":        "The lots of this day, and those of later days that are marked as bid, share what there is.",
	"Cash to spend":       "What you can spend from this day on, invoices and work together. What builds in hand still take comes off first.",
	"Your hours to spend": "Your hours until you want to be done with what you buy. Builds in hand come off first.",
	"Bays in all": "A build takes a bay until its work ends (finished on). Not entered yet: until the day by which nine in ten are " +
		"done.",
	"Money that comes in": "What builds or others pay you between the sale days. It counts for lots of its day and of later days.",
	"Worth of a free bay": "What a bay that you keep free brings at the sales to come. Today a win must bring more than that.",
	"Of a free hour":      "What an hour of yours that you keep brings at the sales to come. At 0 only today's lots count.",
	"Of 1,000 in cash":    "What 1,000 of cash that you keep brings at the sales to come. At 0 only today's lots count.",
	"Comes in on":         "The day by which you have the money to spend. Money that you have already belongs in the cash.",
	"Amount":              "What was paid. Below zero is money back: a refund, a core deposit, a leftover part that was sold.",
	"Amount coming in":    "What is left of it for the sale, selling costs taken off.",
	"First guesses":       "Lots that nobody has looked at stay out unless you tick this. In simulated seasons, leaving them out earned more.",
	"Today's bid":         "How high to go today, if every lot before it is lost. It never exceeds the walk-away bid and follows each result.",
	"Bid on":              "How often following the plan still bids when the lot runs.",
	"Bid after a win":     "The middle of today's bid once one lot before it was won.",
	"Cash left, usual":    "Cash left after a win at the middle of the prices that win.",
	"Cash left, top bid":  "Cash left after a win at today's bid.",

	// Listing
	"Listing":   "What the sale writes about the lot. Enter reads it: facts that are not known yet are filled in, and the rest is left alone.",
	"No damage": "Shows that you looked. An unmarked area alone says nothing.",

	// Facts
	"VIN":                "17 characters. The check digit shows most slips of the pen; it cannot show two swapped pairs that cancel out.",
	"Sale":               "Where the lot is offered. A sale that is one of your yards brings that yard's fees.",
	"Title":              "The words on the title, or what kind of paper it is.",
	"Damage":             "The areas that are marked as damaged: 12 is the front, 03 the right side.",
	PhotoColumn:          "The first photo that was added to the lot. The rows grow with it.",
	PlanColumn:           "The damage plan in small: the ring round the vehicle, front up, and the other areas beside it.",
	"Odometer":           "What the instrument shows. Mileage moves the resale price; leave it empty if it cannot be read.",
	"Odometer statement": "What the paper says of the reading. Not actual, or beyond its limits, frightens buyers: check before you bid.",
	"Trim":               "As the comparables spell it, so that like is set against like.",
	"Valued on":          "The day that counts as today: comparables are brought to it.",
	"Title document": "Salvage can be rebuilt and sold; parts only and junk cannot be registered again in most places. Check with the " +
		"agency.",
	"Brands on it": "Words on the title, parted by commas: they stay on it and lower the price.",
	"Issued in":    "Country and state of the paper, as US-XX.",
	"Register in":  "Where it will be registered when finished: its rules decide what may be rebuilt. Check with the agency.",
	"Runs?":        "Whether it drives, starts, turns over or is dead. What does not run may hide engine work.",

	// What the list says
	"Listed damage":          "Areas that the sale's list names. A first word, not a look: mark what you see under Damage.",
	"Listed value before":    "What the list says the whole vehicle was worth. Whose figure it is, the list seldom says.",
	"Listed repair estimate": "What the list says the repair costs. Compare it with your own lines.",
	"Listed in":              "The currency of the list's two figures. They are kept as the list has them.",
	"Listed note":            "What else the list says, in its own words.",

	// Survey
	"Kind of vehicle": "Rules work in and out: a pickup has a bed and a frame, a van sliding doors. A motorcycle turns the catalogue off, " +
		"which does not speak of one: enter its work and its risks by hand.",
	"Powertrain": "An electric vehicle gets no engine or exhaust work, and its pack and high-voltage parts are looked at. Not known keeps " +
		"both out of sight of the rules.",
	"Driven wheels":  "Which shafts and transmissions there are that can be damaged.",
	"Doors":          "Counting a hatch or tailgate: which doors there are to replace and paint.",
	"Paint":          "Metallic and pearl are blended further than a solid color.",
	"Its parts are":  "Compared with parts for a usual mid-size car. Starter prices of parts and of hidden damage go up and down with it.",
	"Its roads were": "Where roads are salted, bolts and brackets rust, and more breaks while you work.",
	"Missing parts":  "What is missing, apart from damage: it is bought, and nothing is straightened for it.",
	"Water stood":    "How high, by the mark it left. Everything below got wet. It takes the place of a marked water line.",
	"Kind of water":  "Salt goes on eating after it has dried; sewage and mud must be stripped out and cleaned.",
	"Under water":    "Hours under water, if anybody knows. Leave it empty if nobody does.",
	"Dents a panel":  "On an average panel: few to about 15, many to about 75, beaten more. Count one, and say below which differ.",
	"Dent size":      "Across: small to 15 mm, medium to 35 mm, large more. A coin is a gauge.",
	"Glass":          "Ticked: hail broke some.",
	"Dents":          "Ticked: the dents stay, and the resale price drops instead.",
	"Take off":       "What dents that stay take off the price: low, likely, high. Empty: a starter value by their count, from memory.",
	"It went to":     "Smoke alone, scorched paint and plastic, or burned through. A fire marks the places where it was.",
	"Where it was": "A fire in the engine bay and one in the cabin damage different things. Burnt lithium packs can catch fire again: keep " +
		"away from one.",
	"Mechanical": "What the paper or the seller says. Not known counts as an engine or a transmission, most of the time.",

	// Donor vehicle
	"Donor vehicle":         "Which one: year, make, model, where it stands. One line in words, for the list and the paper.",
	"Donor is hit at":       "Where the donor is damaged itself. Nothing from those areas is sold off it.",
	"Donor costs":           "Low, likely, high, with its fees. Until you enter yours it is a starter value. Paid once, for all lines.",
	"Donor's freight":       "To bring it home, and to haul off what is left.",
	"Donor's lead days":     "Until it stands in the shop: the lines that it feeds wait for it.",
	"Donor's parts usable":  "Chance that a part of it can be used. What turns out bad is bought from the line's other sources. Empty: 90 %.",
	"Its rest brings":       "What the parts that no line uses sell for, less fees and your hours to take them off. No more than it costs.",
	"Off the donor vehicle": "Ticked: the line's parts are taken off the donor, and bought only where they turn out bad.",

	// House rules
	"Least expected profit":               "The mean of all outcomes, after your hours are paid. Empty turns the rule off.",
	"Least expected margin":               "Expected profit over all money that goes in, your hours included.",
	"Greatest chance of a loss":           "How often, of all outcomes, you may end below zero.",
	"Most lost on average, worst 1 in 10": "Average loss over the worst 10 of 100 outcomes.",
	"Least return per hour of mine":       "What an hour of your own brings: profit and paid hours over the hours.",
	"Most cash tied up": "All money out before it is sold, 9 times in 10: invoice, freight, parts, sublet work, " +
		"holding.",
	"Longest time": "Days from the sale until the vehicle is sold, 9 times in 10.",

	// Costs
	"Freight":                  "To get it home: low, likely, high. One figure alone is certain.",
	"Yard storage a day":       "What the yard charges for each day after the free ones.",
	"Free days":                "Days that the yard stores it for nothing.",
	"Days until it is fetched": "From the hammer to your gate.",
	"My hours a week":          "Hours that you really work on it in a week: they set how long the build takes.",
	"Waiting for inspection": "Days between finished work and the stamp that lets it be registered. Not counted under a clear title, or one " +
		"already rebuilt in the place where it will be registered.",
	"Days to sell":        "From the first advertisement to the money.",
	"Holding a day":       "Space, insurance and whatever else each day costs while you have it.",
	"Capital cost a year": "What the money would earn or cost elsewhere: it runs on the invoice until it is sold.",
	"One USD is":          "What one USD of the catalogue is in the currency of the lot. Not needed where the lot is in USD.",
	"Share of the price":  "What selling takes of the price: a commission, a fee of the place where it is sold.",
	"Title, inspection, registration": "What the agency takes for title, rebuilt inspection and registration together. Empty is not " +
		"known: nothing is counted, and the answer says so.",
	"Damage note": "For you alone: a note is not counted. What it says of damage counts once you mark it, add a line, or say of a hidden " +
		"risk that you found it.",
	"And flat": "What selling costs whatever the price: advertisement, cleaning, a tank of fuel.",
	"Other serious bidders": "How many others would pay near its worth. The more there are, the more the winner has overrated it. " +
		"Left empty, the Bench's number counts.",
	"Winner's allowance": "Whoever wins is the one who guessed highest. The allowance takes off what that costs on average.",

	"Own share of the doubt": "Of what bidders may misjudge, the part that differs from bidder to bidder. Hidden damage that no photo shows " +
		"is the same blank for all. 50 % is a starter value, from memory.",
	"Winning narrows the doubt": "Winning against others says a little about what the lot is worth. Losses are judged with that.",

	// Ways out
	"Stop after the strip-down": "After the strip-down you may sell it as it is, or for parts, where finishing would bring less. Off: " +
		"every lot is finished, whatever it costs.",
	"Hours to strip it down": "Your hours until you know what is behind the skin. Part of the repair where you finish it.",
	"Strip-down is paid as":  "Whose rate the hours of the strip-down have.",
	"Days to strip it down":  "Days until you know what is behind the skin.",
	"Plans allowed": "What the lot may be bought for. Each plan has a bid of its own under the same house rules; the highest is the " +
		"answer. A plan needs its money below.",
	"As it stands it brings":       "What another buyer pays for it unfinished, after paying to sell it. All three empty: not a way.",
	"Days to sell it as it stands": "From the decision to the money.",
	"Its parts bring":              "All parts that sell, and the rest, after paying to sell them. All three empty: not a way.",
	"Hours to part it out":         "Your hours to take it apart, store and sell the parts.",
	"Parting out is paid as":       "Whose rate the hours of parting out have.",
	"Days to sell the parts":       "From the decision until most of it is money.",

	// Resale
	"Price while I own it": "What the days until the sale do to the price: read off the comparables, nothing, or your own figures.",
	"Yearly change":        "How the price moves in a year, as a share: -10 % is a tenth less. Counts for the days until it is sold.",
	"True mileage may be": "For an odometer that can't be trusted: what the vehicle may really have run, in the odometer's unit, never " +
		"less than it shows. All three empty: up to twice the reading (starter value).",
	"Season": "Prices of this month against the year's mean: 1.03 is 3 % above it. All 1: no season.",
	"My guess: low, likely, high": "Finished and sold. 1 in 10 would bring less than low, 1 in 10 more than high. Used alone without " +
		"comparables.",
	"Branded-title discount":  "What a rebuilt title takes off a clear one's price. Published figures disagree: use what you have seen.",
	"Sold price, % of asking": "What vehicles sell for, as a share of what is asked for them.",
	"Title when sold":         "What the title will say when you sell it.",
	"Upkeep when sold":        "How it will look against others of its age and miles.",

	// Repair lines and risks
	"Chance needed":       "How likely the work has to be done: 100 % is certain.",
	"Materials":           "Paint, filler, rod, fluids, fixings: all that is used up.",
	"Sublet work":         "Work that others do: alignment, glass, calibration, programming.",
	"If no source has it": "What you do when no source has it: make it, or wait for it at a price. It is never free.",
	"Yard":                "Who was asked for the part. A yard or a phone number is enough.",
	"Phone":               "To call again before the sale.",
	"Said on":             "The day on which it was said. A part may be gone a week later.",
	"Said price": "The one price that was said. It is counted as it stands, and the estimate stays beside it. " +
		"Empty: nobody said one.",
	"Hidden damage":                     "What may be there and has not been seen.",
	"It was there in":                   "Of vehicles like this, in how many it was found.",
	"It was not there in":               "Of vehicles like this, in how many it was looked for and not found.",
	"Cost if there":                     "Parts, materials and sublet work when it is there; your hours come on top.",
	"Days that it adds":                 "Waiting that it adds beyond its hours of work.",
	"Leans on the lot's luck, 0 to 0.9": "How much it goes with the rest: on a bad lot everything that leans on its luck is worse together.",

	// Bills
	"Part":           "A part of the plan: choosing it names the line of work, and takes the part off the forecast.",
	"What":           "What was paid for, in your words, where no part of the plan fits.",
	"For":            "Parts, materials and sublet work belong to a line of work; the rest to the build as a whole.",
	"Seller":         "Who was paid: the inspection and the accountant ask for the name.",
	"Receipt number": "As the seller's receipt or invoice has it.",
	"Donor's VIN":    "Of the vehicle that a used part came from. Length, letters and check digit are checked as the lot's own are.",
	"Photos or PDFs": "Any number of files of one bill. A file can be dropped on the build, too. They are kept with the " +
		"store; a name opens its file in the system's viewer.",

	// Found on a build, and the ways out of it
	"Found":                    "Damage that no risk on the list covers. Name it as you would to a parts yard.",
	"Money":                    "Parts, materials and sublet work. Your hours come on top.",
	"Days until it is sold so": "They cost what finishing's days cost: holding, and the money that it would bring today.",
	"Days to part it out":      "Until the last part that you count on is sold. They cost what finishing's days cost.",
	"Also ask for":             "Facts and words of the survey that few reasons ask for. A fact that is not known meets none of them.",
	"Missing":                  "Parts that are not there; any one of them is enough.",
	"Of the hail":              "Left: the dents stay. Glass: some is broken.",
	"Lost by nothing but":      "Met only where the lot was lost by these and nothing else.",
	"Odds times":               "Above 1 it is likelier where this is met, below 1 less likely.",
	"Parts times":              "Parts, sublet work and what hidden damage costs.",
	"Materials times":          "Paint, filler, fluids and the like.",
	"Hours times":              "Your hours. Sublet work counts as parts.",

	// Parting out
	"Selling takes of what parts bring": "Fees, packing and haggling, of each part that sells.",
	"The market's own scatter":          "How far the sum of all parts lies off by the market alone, up or down.",
	"Hours beside the assemblies":       "Draining, photographing, listing and getting rid of the shell: what no assembly's hours hold.",
	"Days until most is money":          "From the day it is home. Holding and capital run on until then.",
	"The rest brings as scrap":          "The shell and what nobody buys, by weight, less what its haul costs.",
	"It drives":                         "How often an engine or transmission out of such a vehicle sells as good.",
	"It starts":                         "How often one out of a vehicle that starts, and was not driven, sells as good.",
	"It turns over":                     "How often one out of a vehicle that turns over and does not start sells as good.",
	"It is dead":                        "How often one out of a vehicle that does nothing sells as good.",
	"Nobody can say":                    "How often one sells as good where nobody has tried it.",
	"What is sold":                      "What is taken off as one piece and sold under this name.",
	"Share of the clean resale price":   "Of what the vehicle would bring clean. All three 0: the price below counts.",
	"Or a price of its own":             "What it brings where it has no share, whatever the vehicle is worth.",
	"Sells when sound":                  "How often it finds a buyer at all while it is sound.",
	"Hours to take it off":              "Your hours to take it off, clean it and pack it.",
	"Reached from damage to":            "The least depth of a hit that spoils it; a scratch leaves what lies behind sound.",
	"Gone where missing":                "Marked missing in the survey, it is not there to be sold.",
	"Spoiled by airbags":                "Where one of these fired, it no longer sells.",
	"Spoiled by a cause":                "Lost by one of these causes, it no longer sells.",

	// Verdict
	"Expected profit":       "The mean of all outcomes at this bid, after your hours and the winner's allowance.",
	"Profit, 8 times in 10": "1 in 10 ends below the first figure, 1 in 10 above the second.",
	"Per hour of mine":      "What an hour of your own brings at this bid: profit and paid hours over the hours.",
	"Resale, 8 times in 10": "What the finished vehicle sells for: 1 in 10 brings less, 1 in 10 more.",
	"My hours":              "Your hours of work on it, on average, hidden damage counted in.",
	"Days until sold":       "From the sale to the money, 8 times in 10.",

	"Chance to win at this bid": "How often the hammer falls at or below the walk-away bid, going by your guess of the hammer price under " +
		"Checks. Without one it goes by what lots of the kind went for in your file, or by starter values.",
	"Both go by":               "What the chance to win and the expected gain rest on.",
	"Expected gain of bidding": "The profit on average of bidding up to the walk-away bid: nothing when another bidder takes it.",
	"Walk-away bid by plan":    "Each plan has a bid of its own under the same house rules. The highest one is the answer.",

	// Columns
	"Walk-away bid": "The largest bid that keeps every house rule. One step more breaks one.",
	"Set by": "The house rule that the next bid would break first. Behind it (was …): a bid that moved when results, surveys, " +
		"factors, comparables or catalogue changed.",
	"Chance of a loss": "How often, of all outcomes at the walk-away bid, you end below zero.",
	"Sold for":         "Brought from what was asked to what it sells for.",
	"By mileage":       "What the difference in mileage to this lot is worth.",
	"By age":           "What the difference in age to this lot is worth.",
	"By title":         "What another title brand is worth.",
	"By trim":          "What another trim is worth.",
	"By engine":        "What another engine, fuel or transmission is worth, where the table says it of all.",
	"By place":         "What another place is worth, where the table says it of all.",
	"By the rest":      "The day, condition, another model and whatever else the table says.",
	"Used for":         "What the row tells: the price, or, of another model, only how prices fall with age and mileage.",
	"Adjusted":         "What this lot would bring with its own title when sold, if it were that one: the price with all adjustments.",
	"Weight":           "How much the row counts: 1 is a vehicle just like this one whose price fits in.",
	"Moves it":         "How far the price would move back if the row were left out.",
	"Upkeep":           "Rough, worn, usual for its age, good, or as new.",
	"Needed":           "How likely the work has to be done.",
	"Whose":            "Starter: from the catalogue, from memory. Yours: changed or added by you.",
	"If there":         "What it costs on average when it is there.",
	"Expected":         "Its chance times what it costs.",
	"Plan":             "What the bid is for: the plan with the highest walk-away bid.",
	"Worth a look": "What a minute of looking at the lot brings on average, in money: with the damage known you bid more for the good ones " +
		"and leave the bad ones. Sort by it to see what to look at next. A first guess is made anew when what it rests on changes.",
	"Chance to win": "How often the hammer falls at or below the walk-away bid, going by your guess of the hammer price. Without " +
		"one it goes by what such lots went for in your file, or by starter values.",
	"Chance, today's bid": "How often the hammer falls at or below today's bid. The Board says it of the walk-away bid.",
	"Gain, today's bid": "The profit on average of bidding up to today's bid: nothing when another bidder takes it. At the walk-away bid " +
		"it is the " +
		"expected gain of the Board.",
	"Expected gain": "The profit on average of bidding up to the walk-away bid: nothing when another bidder takes it.",
	"Loss chance":   "How often, of all outcomes at the walk-away bid, you end below zero.",
	"Per hour":      "What an hour of your own brings at the walk-away bid: profit and paid hours over the hours.",
}
