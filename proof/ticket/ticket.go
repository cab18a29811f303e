// Package ticket draws what the bench works from: the press ticket, the pick
// list, the counts and the bag labels of a sized order, in the look of its
// proof. It decides no size, no heat and no count: those come from the packages
// of lettering, and pages only lay them out.
//
// A press burns and closes with force. Every press ticket says that its figures
// are starting points, that the supplier's data sheet and local rules go before
// them, and that a test piece is pressed first; cloth of unknown fibre gets none.
package ticket

import (
	"errors"
	"fmt"
	"slices"

	"yokeline/lettering/pressing"
	"yokeline/lettering/sizes"
	"yokeline/lettering/tally"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// Kind is one kind of page.
type Kind uint8

// The kinds in the order in which they are drawn.
const (
	PressTicket Kind = iota
	PickList
	Counts
	BagLabels
)

// Kinds returns all kinds in their order.
func Kinds() []Kind { return []Kind{PressTicket, PickList, Counts, BagLabels} }

// String returns the title of the pages.
func (k Kind) String() string {
	return [...]string{"Press ticket", "Pick list", "Counts", "Bag labels"}[k]
}

// Input is everything the pages are drawn from.
type Input struct {
	Sized *sizes.Sized
	// Count is the order counted by package tally; nil counts it without rolls
	// and without sheets.
	Count *tally.Count
	// Shop holds the settings of the press, the shop's own or nil for the starting
	// points that come with the program. Variant names the setting by a word, such
	// as blocker, where the coolest that suits is not meant.
	Shop    *pressing.Shop
	Variant string
	// Also are further presses of the same garments, such as an emblem: they are
	// put in the order of their heats with the steps of the lettering.
	Also []pressing.Step
	// Market and Wearer decide what the law may ask for; where they are not given
	// the job's own words do. A youth size counts as meant for children unless
	// somebody says otherwise.
	Market *pressing.Market
	Wearer *pressing.Wearer
	// Supply is the circuit that the press hangs on; zero: not known.
	Supply Supply

	Head        parts.Head // as sheets.Masthead gives it, so that the pages look like the proof
	Fingerprint string     // of the proof that these pages belong to, 64 hexadecimal digits
	Sheet       page.Sheet // zero for Letter
	Unsigned    bool       // says so on every page, and on every label
	// Only draws these kinds; none means all.
	Only []Kind
}

// Supply is a heat press and the circuit it hangs on.
type Supply struct{ Watts, Volts, Amperes float64 }

// Book draws the pages. The error says what to write where a press ticket would
// not be safe: the fibre of the garment is not known (it then wraps
// pressing.ErrUnknownFibre), or there is no setting for its cloth.
func Book(in Input) (*page.Book, error) {
	d, err := newDocument(in)
	if err != nil {
		return nil, err
	}
	plans := [...]func(*document) ([]leaf, error){(*document).planPress, (*document).planPicks, (*document).planCounts, (*document).planLabels}
	for _, k := range Kinds() {
		if len(in.Only) > 0 && !slices.Contains(in.Only, k) {
			continue
		}
		leaves, err := plans[k](d)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", lowerFirst(k.String()), err)
		}
		d.pages = append(d.pages, leaves...)
	}
	for i, l := range d.pages {
		f := d.newFrame(i)
		if err := l.draw(f); err != nil {
			return nil, fmt.Errorf("page %d, %s: %w", i+1, l.title, err)
		}
		f.foot(l)
	}
	return d.book, nil
}

func newDocument(in Input) (*document, error) {
	if in.Sized == nil || in.Sized.Order == nil {
		return nil, errors.New("pages for the bench need a sized order")
	}
	book, err := page.NewBook()
	if err != nil {
		return nil, err
	}
	if in.Sheet == (page.Sheet{}) {
		in.Sheet = page.Letter()
	}
	if in.Count == nil {
		if in.Count, err = tally.Of(in.Sized, tally.Options{}); err != nil {
			return nil, err
		}
	}
	if in.Shop == nil {
		if in.Shop, err = pressing.Starting(); err != nil {
			return nil, err
		}
	}
	return &document{in: in, order: in.Sized.Order, book: book, sheet: in.Sheet.Portrait(), grid: parts.NewGrid(in.Sheet.Portrait())}, nil
}
