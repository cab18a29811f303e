// Package sizes turns an order into pieces with every length decided: which
// garment each player wears, how tall and how wide each name and number comes
// out on it, and where it sits. A size knows nothing of paper; the drawing that
// follows decides no size.
package sizes

import (
	"context"
	"sync"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/source"
	"yokeline/lettering/typeface"
)

// Options are what sizing needs from outside.
type Options struct {
	// Face opens a face by the name a job uses: an embedded id or a font file
	// of the shop's own.
	Face func(name string) (*typeface.Face, error)
	// Rules of the league, nil when the job names no rule book. They raise
	// number heights that the job leaves to the garment's size.
	Rules *rulebook.Rules
	// Workers is how many players are sized at once; 1 or less means one.
	Workers int
	// NoWaysOut leaves fit.Name.WouldFit empty. What would fit is tried out for
	// every name that is over or reduced by itself, which costs tens of fits.
	NoWaysOut bool
	// NumberWays fills Piece.Conflict even so: a number's ways out are few, are
	// looked for only where a number does not fit or breaks the rule, and are
	// found once for each number and size.
	NumberWays bool
	// Chosen are the ways out that the coach chose; they take the place of what
	// the pieces came out as.
	Chosen []Choice
	// Signed is the order that players are added to: whoever stands in it comes
	// out exactly as there, and the others on the same circle, at the same shared
	// height and level. nil for an order of its own. Its job must be this one's.
	Signed *Sized
	// Like is an order of the same job and faces, with other players or ways
	// chosen, that was sized before: what is costly and alike is taken from it.
	Like *Sized
	// Progress, when not nil, is told how many players are done. It is called
	// from one goroutine at a time.
	Progress func(done, all int)
}

// Sized is an order with every length decided.
type Sized struct {
	Order   *order.Order
	Rules   *rulebook.Rules
	Players []Player // in the order of the roster
	// Looks are the letter heights that back names share; none where the job
	// sizes each name by itself. They are sorted by size, then by height asked.
	Looks []Look

	runs    []Run // found before the heights of a run were taken; nil: not yet
	waysOut bool  // that names have was looked for
	tails   *tailShelf
	digests map[string]string // SHA-256 of each face's file, by the name the job uses
}

// Player is one player with the garment and the pieces that go on it.
type Player struct {
	order.Player
	Garment *garment.Garment // nil when the size is not known
	Pieces  []Piece          // in the order of the job's pieces; pieces without text are left out
	Signed  bool             // comes out as signed before, see Options.Signed

	faults source.Faults
}

// Piece returns the piece at a place.
func (p Player) Piece(place garment.Place) (Piece, bool) {
	for _, piece := range p.Pieces {
		if piece.Asked.Place == place {
			return piece, true
		}
	}
	return Piece{}, false
}

// Piece is one thing that is cut or printed, sized and placed.
type Piece struct {
	Asked  order.Piece
	Name   *fit.Name       // for names and team names
	Number *numeral.Number // for numbers
	// Drawn are the piece's curves where they are more than its letters, such as
	// a script joined to its tail; nil otherwise.
	Drawn geom.Path
	// Laid is text that lies on the piece's tail, in the colour that the tail
	// asks for; nil for none.
	Laid geom.Region
	Side garment.Side
	// At is where the piece's own origin (the middle of its ink on the
	// baseline) lies on the garment: mm, y down from the high point of
	// shoulder.
	At geom.Point
	// Turn is how far the piece is turned clockwise on the page, radians; only
	// pieces on sleeves are.
	Turn float64
	// Top is the top edge that the placement names (cap line or digit top) and
	// BelowCollar its distance under the neck seam, mm.
	Top, BelowCollar float64
	// Room is the width that the piece may take on this garment and why.
	Room garment.Room
	// Eased is what the stack of a name and its number gave up here to lie inside
	// the panel, in the order taken; see AskedHeight. Short is what it lacks at its
	// foot even so, mm, and TooNear what lacks to Clearance under the name where
	// the job itself says where the number stands.
	Eased          []string
	Short, TooNear float64
	// AskedHeight is the height that the job asks for, mm: over that of the piece
	// where a name was fitted or a stack eased.
	AskedHeight float64
	// NoRoom is set for a piece for which nothing of the panel is left where it was
	// asked to lie: Room.Why says why. It is over, has a limit of 0, is drawn as if
	// there were no limit. Remedies (where ways out are asked for) has what would
	// give it room; a name parted at a placket that is over has some, too.
	NoRoom   bool
	Remedies []Remedy
	// TooTight says why the arch does not carry the name; it is over and drawn
	// straight, as if there were no room. nil for an arch that does.
	TooTight *fit.TooTightError
	// Split is how a front name lies to a full placket; nil elsewhere.
	Split *Split
	// Alone is the letter height in mm that a name would have by itself where it
	// is lower because names share one height; 0 where it is not.
	Alone float64
	// Unmatched is the letter height that the signed names share where a name that
	// was added does not reach it, mm; 0 where it does.
	Unmatched float64
	// Conflict is what is the matter with a number that is over, or that its
	// face, the rule and the room do not let be as the rule wants it, with the
	// ways out of it; nil for a number that is in order, for names, and where
	// ways out were not asked for.
	Conflict *numeral.Conflict
}

// ForTheLook reports a name that would be at the height asked by itself and is
// lower only so that the team looks alike. It needs no way out.
func (p Piece) ForTheLook() bool { return p.Name != nil && p.Alone >= p.Name.Asked && p.Alone > 0 }

// Over reports a piece that does not fit its room.
func (p Piece) Over() bool {
	if p.Name != nil {
		return p.Name.Verdict == fit.Over
	}
	return p.Number.Verdict == numeral.Over
}

// Text returns what the piece says, as it will be cut.
func (p Piece) Text() string {
	if p.Name != nil {
		return p.Name.Text
	}
	return p.Number.Text
}

// Ink returns the curves of the piece, mm, y up, baseline at 0: its letters, or
// what Drawn holds.
func (p Piece) Ink() geom.Path {
	if p.Drawn != nil {
		return p.Drawn
	}
	if p.Name != nil {
		return p.Name.Ink()
	}
	return p.Number.Ink()
}

// Height returns the letter height or the number height in mm.
func (p Piece) Height() float64 {
	if p.Name != nil {
		return p.Name.LetterHeight
	}
	return p.Number.Height
}

// InkWidth returns the width with outlines in mm.
func (p Piece) InkWidth() float64 {
	if p.Name != nil {
		return p.Name.InkWidth
	}
	return p.Number.InkWidth
}

// Reach returns how far the outlines stand out from the letters, mm.
func (p Piece) Reach() float64 { return outline.Reach(layers(p.Asked)) }

// Outlines returns the outline layers as shapes, from the inside outwards, in
// the coordinates of Ink. They cost far more than the fit and no size depends
// on them, so they are made only when something draws them.
func (p Piece) Outlines() ([]geom.Region, error) {
	all := layers(p.Asked)
	return outline.Layers(outline.Flatten(p.Ink(), all), all)
}

// Resolve sizes every player of the order. The error is source.Faults for
// what the shop or the coach must mend (a character that the face lacks, say),
// naming the player and the row, all at once; or the context's error. An arch too
// tight for one player's name is no error, see Piece.TooTight.
func Resolve(ctx context.Context, o *order.Order, options Options) (*Sized, error) {
	if options.Signed != nil {
		return resolveOnto(ctx, o, options)
	}
	if runs(o) {
		return resolveRuns(ctx, o, options)
	}
	return resolve(ctx, o, options)
}

// resolve sizes every player with the heights that the order asks for.
func resolve(ctx context.Context, o *order.Order, options Options) (*Sized, error) {
	plan, faults := newPlan(o, options)
	if len(faults) > 0 {
		return nil, faults
	}
	sized := &Sized{Order: o, Rules: options.Rules, Players: make([]Player, len(o.Players)), digests: plan.digests(), waysOut: plan.waysOut, tails: plan.tails}
	if err := plan.share(ctx, sized); err != nil {
		return nil, err
	}
	if err := plan.each(ctx, len(o.Players), func(w *worker, i int) {
		sized.Players[i] = w.player(i)
	}, options.Progress); err != nil {
		return nil, err
	}
	if faults := plan.collect(sized); len(faults) > 0 {
		return nil, faults
	}
	return sized, nil
}

// each runs work for 0..n-1 on the workers of the plan. Results go to their
// own index, so the outcome does not depend on which worker was first.
func (p *plan) each(ctx context.Context, n int, work func(w *worker, i int), progress func(done, all int)) error {
	next := make(chan int)
	var group sync.WaitGroup
	var reported sync.Mutex
	done := 0
	for range max(1, min(p.workers, n)) {
		group.Go(func() {
			w := p.newWorker()
			for i := range next {
				work(w, i)
				if progress != nil {
					reported.Lock()
					done++
					progress(done, n)
					reported.Unlock()
				}
			}
		})
	}
	err := feed(ctx, next, n)
	group.Wait()
	return err
}

func feed(ctx context.Context, next chan<- int, n int) error {
	defer close(next)
	for i := range n {
		select {
		case next <- i:
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return nil
}

func layers(p order.Piece) []outline.Layer {
	out := make([]outline.Layer, len(p.Outlines))
	for i, o := range p.Outlines {
		out[i] = outline.Layer{Width: o.Width.MM(), Join: o.Join}
	}
	return out
}
