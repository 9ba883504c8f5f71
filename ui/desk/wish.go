package desk

// Wish is what the user has to be asked for before something can be done: a file, say, or a place for one. The window asks, and then
// does the action itself.
type Wish struct {
	For  Wanted
	Key  string  // what it is about: an area, the hash of a photograph, the key of a factor
	Lots []int64 // the lots that it is about
	Name string  // the file's, where it is about one; the text itself, where it is about that
	// Chosen takes the file that is wanted, and reports whether it could; nil: it is not handed over.
	Chosen func(name, hash string) bool
}

// Wanted is a kind of wish.
type Wanted string

// The kinds.
const (
	AddLot            Wanted = "new lot"
	AddDemo           Wanted = "demo sale"
	ReadListing       Wanted = "text of a listing"
	ImportRunList     Wanted = "run list"
	BoardColumns      Wanted = "columns of the Board"
	MoveToSale        Wanted = "another sale for lots"
	ResultOfLot       Wanted = "what a lot went for"
	ImportComparables Wanted = "comparables"
	ImportPastBuys    Wanted = "past buys"
	ImportToShelf     Wanted = "comparables for the shelf"
	RememberedTables  Wanted = "what is remembered of tables"
	PastTemplate      Wanted = "template of past buys"
	NewPhotos         Wanted = "photos"
	LargePhoto        Wanted = "large photo"
	FileOfBill        Wanted = "file of a bill"
	OpenFile          Wanted = "open a file"
	PrintRebuilt      Wanted = "file for the rebuilt inspection"
	WriteLedger       Wanted = "entries for the accountant"
	ShoppingList      Wanted = "shopping list"
	PrintPlan         Wanted = "plan of the sale day on paper"
	NewPack           Wanted = "jurisdiction"
	BackUp            Wanted = "backup"
	RestoreBackup     Wanted = "backup to restore"
	DailyBackup       Wanted = "daily backup"
	EffectOfFactor    Wanted = "effect of a factor"
	ReplayPast        Wanted = "replay"
)

// Want returns the action of a wish.
func Want(what Wanted) Action { return Action{Wish: Wish{For: what}} }

// WantFor returns the action of a wish about lots.
func WantFor(what Wanted, ids ...int64) Action { return Action{Wish: Wish{For: what, Lots: ids}} }

// WantOf returns the action of a wish about something.
func WantOf(what Wanted, key string) Action { return Action{Wish: Wish{For: what, Key: key}} }

// WantRead returns the action of reading a text that was typed or pasted as a listing: it may be a table of comparables, which is asked.
func WantRead(text string) Action { return Action{Wish: Wish{For: ReadListing, Name: text}} }

// WantFile returns the action of asking for the photo or PDF of a bill, whose name and SHA-256 are handed over.
func WantFile(chosen func(name, hash string) bool) Action {
	return Action{Wish: Wish{For: FileOfBill, Chosen: chosen}}
}

// WantOpen returns the action of opening the kept file of a bill in the system's own viewer.
func WantOpen(name, hash string) Action {
	return Action{Wish: Wish{For: OpenFile, Key: hash, Name: name}}
}
