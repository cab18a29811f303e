package sizes

import (
	"fmt"
	"math"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/source"
	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
)

// plan is everything that holds for the order as a whole: it is complete
// before the first player is sized and is only read after that.
type plan struct {
	order   *order.Order
	rules   *rulebook.Rules
	workers int
	faces   map[string]*typeface.Face
	layouts map[garment.Size]*layout
	gap     float64 // smallest gap the decoration method can make, mm
	// narrower are the embedded faces to try for a name that does not fit, from
	// the widest to the narrowest.
	narrower []*typeface.Face
}

// worker sizes one player after the other with caches of its own.
type worker struct {
	plan   *plan
	fitter *fit.Fitter
	sizer  *numeral.Sizer
}

func (p *plan) newWorker() *worker {
	return &worker{plan: p, fitter: fit.NewFitter(), sizer: numeral.NewSizer()}
}

func newPlan(o *order.Order, options Options) (*plan, source.Faults) {
	p := &plan{
		order: o, rules: options.Rules, workers: options.Workers,
		faces: map[string]*typeface.Face{}, layouts: map[garment.Size]*layout{},
	}
	if m, ok := order.LookupMethod(o.Method); ok {
		p.gap = m.MinGap
	}
	var faults source.Faults
	var err error
	if p.narrower, err = NarrowerFaces(); err != nil {
		return nil, source.Faults{{Message: err.Error()}}
	}
	for _, piece := range o.Pieces {
		if _, ok := p.faces[piece.Face]; ok {
			continue
		}
		face, err := options.Face(piece.Face)
		if err != nil {
			faults = append(faults, source.Fault{Message: fmt.Sprintf("%s: %v", piece.Place, err)})
			continue
		}
		p.faces[piece.Face] = face
	}
	if len(faults) > 0 {
		return nil, faults
	}
	w := p.newWorker()
	for _, size := range wornSizes(o) {
		l, err := w.layout(size)
		if err != nil {
			return nil, append(faults, source.Fault{Message: err.Error()})
		}
		p.layouts[size] = l
	}
	return p, nil
}

// wornSizes lists the sizes of the roster, each once, in roster order.
func wornSizes(o *order.Order) []garment.Size {
	var out []garment.Size
	seen := map[garment.Size]bool{}
	for _, player := range o.Players {
		if player.SizeKnown && !seen[player.Size] {
			seen[player.Size] = true
			out = append(out, player.Size)
		}
	}
	return out
}

// player sizes one player. Faults are kept in the result until all are known.
func (w *worker) player(from order.Player) Player {
	out := Player{Player: from}
	if !from.SizeKnown {
		return out
	}
	l := w.plan.layouts[from.Size]
	out.Garment = l.garment
	for i, asked := range w.plan.order.Pieces {
		text := textOf(asked, from)
		if text == "" {
			continue
		}
		piece, err := w.piece(asked, text, &l.spots[i], l.spots[i].height)
		if err != nil {
			out.faults = append(out.faults, faultOf(from, asked.Place, err))
			continue
		}
		out.Pieces = append(out.Pieces, piece)
	}
	return out
}

// textOf returns what a piece says for a player: the roster's name or number,
// or the job's own text.
func textOf(asked order.Piece, p order.Player) string {
	switch {
	case asked.Place == garment.BackName:
		return p.Name
	case isNumber(asked.Place):
		return p.Number
	}
	return asked.Text
}

func isNumber(place garment.Place) bool {
	switch place {
	case garment.BackNumber, garment.FrontNumber, garment.SleeveNumber, garment.ShortsNumber:
		return true
	}
	return false
}

// piece sizes one piece at the spot it has on its garment.
func (w *worker) piece(asked order.Piece, text string, at *spot, height float64) (Piece, error) {
	piece := Piece{
		Asked: asked, Side: at.placement.Side, Room: at.room,
		Top: at.top, BelowCollar: at.below, Turn: at.placement.Turn,
	}
	if isNumber(asked.Place) {
		n, err := w.number(asked, text, at.limit, height)
		if err != nil {
			return piece, err
		}
		piece.Number, piece.At = &n, at.placement.Point(0, at.top+n.Height)
		return piece, nil
	}
	n, err := w.fitter.Name(w.plan.nameRequest(asked, text, at.limit, height))
	if err != nil {
		return piece, err
	}
	piece.Name, piece.At = &n, at.placement.Point(0, at.top+at.drop+n.LetterHeight)
	return piece, nil
}

func (w *worker) number(asked order.Piece, text string, limit, height float64) (numeral.Number, error) {
	r := numeral.Request{
		Text: text, Face: w.plan.faces[asked.Face], Wdth: axis(asked.Wdth), Wght: axis(asked.Wght),
		Height: height, Gap: math.NaN(), SmallestGap: w.plan.gap, Limit: limit, Outlines: layers(asked),
	}
	if asked.Gap != nil {
		r.Gap = asked.Gap.MM()
	}
	return w.sizer.Number(r)
}

func (p *plan) nameRequest(asked order.Piece, text string, limit, height float64) fit.Request {
	r := fit.Request{
		Text: spelling.Apply(text, asked.Case, asked.Lang), Lang: asked.Lang, Face: p.faces[asked.Face],
		Wdth: axis(asked.Wdth), Wght: axis(asked.Wght), Height: height, Limit: limit,
		Shape: shapeOf(asked.Shape), Spacing: spacingOf(asked.Spacing), Outlines: layers(asked),
		Squash: asked.Squash, SmallestGap: p.gap,
		Ladder: fit.DefaultLadder(height), Narrower: p.narrower,
	}
	r.Ladder.Tracking, r.Ladder.Width = p.order.Fit.Tracking, p.order.Fit.Width
	if floor := p.order.Fit.Height; floor != nil {
		r.Ladder.Height = math.Min(floor.MM(), height)
	}
	if asked.Radius != nil {
		r.Radius = asked.Radius.MM()
	}
	if asked.Rise != nil {
		r.Rise = asked.Rise.MM()
	}
	return r
}

func axis(v *float64) float64 {
	if v == nil {
		return math.NaN()
	}
	return *v
}

func shapeOf(word string) fit.Shape {
	for _, s := range []fit.Shape{fit.RadialArch, fit.RadialArchDown, fit.VerticalArch, fit.VerticalArchDown} {
		if s.String() == word {
			return s
		}
	}
	return fit.Straight
}

func spacingOf(word string) fit.Spacing {
	if word == fit.Middle.String() {
		return fit.Middle
	}
	return fit.Baseline
}

// faultOf names the player, the place and the row of what cannot be made.
func faultOf(p order.Player, place garment.Place, err error) source.Fault {
	return source.Fault{Place: p.Row, Message: fmt.Sprintf("%s, %s: %v", p.Label(), place, err)}
}

// collect gathers the faults of all players in roster order.
func (p *plan) collect(s *Sized) source.Faults {
	var out source.Faults
	for i := range s.Players {
		out = append(out, s.Players[i].faults...)
	}
	return out
}

func (p *plan) digests() map[string]string {
	out := map[string]string{}
	for name, face := range p.faces {
		out[name] = face.Digest()
	}
	return out
}

// NarrowerFaces opens the condensed faces of the catalogue that are tried for
// a name that does not fit, from wide to narrow as the width of one long name
// in each was measured.
func NarrowerFaces() ([]*typeface.Face, error) {
	var out []*typeface.Face
	for _, id := range [...]string{"barlow-condensed", "oswald", "anton", "league-gothic"} {
		face, err := typeface.Embedded(id)
		if err != nil {
			return nil, err
		}
		out = append(out, face)
	}
	return out, nil
}
