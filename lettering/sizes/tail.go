package sizes

import (
	"fmt"
	"math"
	"sync"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/tail"
)

// tailed is a script name joined to its tail.
type tailed struct {
	name        fit.Name // with the figures of the whole shape
	shape, laid geom.Region
	path        geom.Path // of shape, made once for everyone who wears it
}

// tailRefits is how often a name is made smaller until its tail fits too: the
// tail grows with the letters, so the second try is nearly always enough.
const tailRefits = 12

// withTail fits a name with the tail that its piece asks for: both together
// stay within the limit. The result is shared and must not be changed.
func (w *worker) withTail(l *layout, i int, text string, limit, height float64) (*tailed, error) {
	k := key{i, text, l.garment.Size(), limit, height}
	if t := w.plan.tails.known(k); t != nil {
		return t, nil
	}
	t, err := kept(w.tails, k, func() (tailed, error) {
		search := narrowing{inner: limit}
		for range tailRefits {
			n, err := w.name(l, i, text, search.inner, height)
			if err != nil {
				return tailed{}, err
			}
			t, err := w.drawTail(i, *n, limit)
			if err != nil || limit == 0 || t.name.Verdict == fit.Over || t.name.InkWidth <= limit {
				t.path = t.shape.Path()
				return t, err
			}
			search.next(n.InkWidth, t.name.InkWidth, limit)
		}
		return tailed{}, fmt.Errorf("the tail of %q does not settle within its room; make it shorter with tail: {length: 70%%}", text)
	})
	if err == nil {
		w.plan.tails.keep(k, t)
	}
	return t, err
}

// narrowing searches the limit for the letters under which the letters and
// their tail together keep to a limit.
type narrowing struct {
	inner            float64 // the limit for the letters to try
	letters, reached float64 // width of the letters tried before and of the whole; 0 at first
}

// tailSlack is how far inside the limit later tries aim, in millimetres:
// tries that all come from above would otherwise never get there.
const tailSlack = 0.05

// next takes the width that the letters had and that of the whole, and moves
// on to less room for the letters than they took: at first in proportion, as
// if the tail were one of them; after that by how much the last step has
// helped. Where letters only move closer or get narrower the tail's own
// overhang stays, and proportion helps too little.
func (s *narrowing) next(letters, width, limit float64) {
	letters = min(letters, s.inner)
	s.inner = letters * limit / width * (1 - 1e-6)
	if moved := s.letters - letters; moved > 0 {
		// Another place of the tail changes the width by a leap: no great trust.
		slope := min(max((s.reached-width)/moved, 0.5), 2)
		s.inner = letters - (width-limit+tailSlack)/slope
	}
	s.letters, s.reached = letters, width
}

// tailShelf keeps the tails of a job for every sizing of it: they cost more than
// all else, and do not depend on who plays. It is safe for concurrent use.
type tailShelf struct {
	lock sync.Mutex
	made map[key]*tailed
}

func (s *tailShelf) known(k key) *tailed {
	s.lock.Lock()
	defer s.lock.Unlock()
	return s.made[k]
}

func (s *tailShelf) keep(k key, t *tailed) {
	s.lock.Lock()
	defer s.lock.Unlock()
	if len(s.made) < mostKept {
		s.made[k] = t
	}
}

// shelfOf is the shelf of a job that was sized before, or a new one.
func shelfOf(like *Sized) *tailShelf {
	if like != nil && like.tails != nil {
		return like.tails
	}
	return &tailShelf{made: map[key]*tailed{}}
}

// drawTail joins the name to its tail and measures the whole, centred by its
// box.
func (w *worker) drawTail(i int, n fit.Name, limit float64) (tailed, error) {
	asked := w.plan.order.Pieces[i]
	ink, err := n.Settled()
	if err != nil {
		return tailed{}, err
	}
	drawn, err := tail.Draw(ink, n.LetterHeight, tailParams(asked.Tail))
	if err != nil {
		return tailed{}, fmt.Errorf("tail: %w", err)
	}
	out := tailed{name: n, shape: drawn.Joined}
	if asked.Tail.Text != "" {
		if out.shape, out.laid, err = w.tailText(asked, &drawn); err != nil {
			return tailed{}, err
		}
	}
	box := outline.ExtentOf(out.shape.Bounds(), out.shape, layers(asked))
	shift := geom.Translate(-(box.Min.X+box.Max.X)/2, 0)
	out.shape = out.shape.Transform(shift)
	if out.laid != nil { // nil says that nothing is laid on
		out.laid = out.laid.Transform(shift)
	}
	out.name.Limit, out.name.InkWidth, out.name.InkHeight = limit, box.Width(), box.Height()
	out.name.BareInkWidth = out.shape.Bounds().Width()
	if n.Verdict == fit.Over {
		out.name.OverBy = math.Max(0, box.Width()-limit)
	}
	return out, nil
}

// tailParams returns the tail that a job asks for; what it leaves out is the
// usual one.
func tailParams(t *order.Tail) tail.Params {
	p := tail.Default()
	for _, share := range []struct {
		asked float64
		to    *tail.Measure
	}{{t.Length, &p.Length}, {t.Thickness, &p.Thickness}, {t.Gap, &p.Gap}} {
		if share.asked != 0 {
			*share.to = tail.Share(share.asked)
		}
	}
	if !t.Plain {
		p.Curl, p.Taper, p.Slope = t.Curl, t.Taper, t.Slope
	}
	return p
}

// tailText sets the small text of a tail: cut out of it, or to be laid on it.
func (w *worker) tailText(asked order.Piece, drawn *tail.Tail) (shape, laid geom.Region, err error) {
	r := fit.Request{
		Text: asked.Tail.Text, Face: w.plan.faces[asked.Tail.Face], Wdth: math.NaN(), Wght: math.NaN(),
		Height: drawn.Spot.Height, Lang: asked.Lang, NoWaysOut: true,
	}
	small, err := w.fitter.Name(r)
	if err != nil {
		return nil, nil, fmt.Errorf("text in the tail: %w", err)
	}
	settled, err := small.Settled()
	if err != nil {
		return nil, nil, err
	}
	set, _, err := drawn.Spot.Set(settled)
	if err != nil {
		return nil, nil, fmt.Errorf("text in the tail: %w", err)
	}
	if asked.Tail.Laid {
		laid, err = tail.Lay(drawn.Alone, set)
		return drawn.Joined, laid, err
	}
	shape, err = tail.Cut(drawn.Joined, set)
	return shape, nil, err
}
