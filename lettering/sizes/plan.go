package sizes

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/source"
	"yokeline/lettering/typeface"
)

// plan is everything that holds for the order as a whole: it is complete
// before the first player is sized and is only read after that.
type plan struct {
	order      *order.Order
	rules      *rulebook.Rules
	workers    int
	faces      map[string]*typeface.Face
	layouts    map[garment.Size]*layout
	gap        float64 // smallest gap the decoration method can make, mm
	waysOut    bool
	chosen     map[int][]Choice // by player
	tails      *tailShelf
	numberWays bool
	others     []*typeface.Face // to try for numbers
	// arcs are the radii that the whole team shares, by piece; 0 where each size
	// or each name has its own.
	arcs []float64
	// levelled is the largest height that the team's back names share, by the
	// greatest that it might have been; see level.
	levelled map[float64]float64
	// common are the letter heights that back names share, nil for none, and
	// reached what each player's comes to by itself.
	common  map[lookKey]float64
	reached []alone
	// narrower are the embedded faces to try for a name that does not fit, from
	// the widest to the narrowest.
	narrower []*typeface.Face
}

// worker sizes one player after the other with caches of its own.
type worker struct {
	plan    *plan
	fitter  *fit.Fitter
	sizer   *numeral.Sizer
	names   map[key]*fit.Name
	numbers map[key]*numeral.Number
	stuck   map[key]*stuck
	tails   map[key]*tailed
	bigger  map[garment.Size]*layout // sizes that nobody wears, for ways out
	quiet   *worker                  // see still; nil until it is needed
	mended  map[key]*[]Remedy
	rooms   map[key]*int // see trial.steps
	boxes   map[key]*numberBox
	// descents are the deepest descents of pieces, see descent.
	descents map[int]float64
}

// key is what decides how a piece comes out.
type key struct {
	piece         int // of the job
	text          string
	size          garment.Size // of names, for their ways out
	limit, height float64
}

// mostKept bounds each cache of a worker; a full one is emptied.
const mostKept = 4096

// kept returns what make makes, once for each key.
func kept[T any](cache map[key]*T, k key, make func() (T, error)) (*T, error) {
	if known := cache[k]; known != nil {
		return known, nil
	}
	made, err := make()
	if err != nil {
		return nil, err
	}
	if len(cache) >= mostKept {
		clear(cache)
	}
	cache[k] = &made
	return &made, nil
}

func (p *plan) newWorker() *worker {
	return &worker{
		plan: p, fitter: fit.NewFitter(), sizer: numeral.NewSizer(),
		names: map[key]*fit.Name{}, numbers: map[key]*numeral.Number{}, stuck: map[key]*stuck{}, tails: map[key]*tailed{}, bigger: map[garment.Size]*layout{},
		mended: map[key]*[]Remedy{}, rooms: map[key]*int{}, boxes: map[key]*numberBox{}, descents: map[int]float64{},
	}
}

func newPlan(o *order.Order, options Options) (*plan, source.Faults) {
	p := &plan{
		order: o, rules: options.Rules, workers: options.Workers, waysOut: !options.NoWaysOut, chosen: sorted(options.Chosen), tails: shelfOf(options.Like), arcs: make([]float64, len(o.Pieces)),
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
	p.numberWays = options.NumberWays || p.waysOut
	if p.others, err = NumberFaces(); err != nil {
		return nil, source.Faults{{Message: err.Error()}}
	}
	for _, piece := range o.Pieces {
		for _, id := range facesOf(piece) {
			if _, ok := p.faces[id]; ok {
				continue
			}
			face, err := options.Face(id)
			if err != nil {
				faults = append(faults, source.Fault{Message: fmt.Sprintf("%s: %v", piece.Place, err)})
				continue
			}
			p.faces[id] = face
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	w := p.newWorker()
	worn := wornSizes(o)
	if err := w.shareArc(worn); err != nil {
		return nil, append(faults, source.Fault{Message: err.Error()})
	}
	for _, size := range worn {
		l, err := w.layout(size)
		if err != nil {
			return nil, append(faults, source.Fault{Message: err.Error()})
		}
		p.layouts[size] = l
	}
	if err := w.level(worn); err != nil {
		return nil, append(faults, source.Fault{Message: err.Error()})
	}
	return p, nil
}

// facesOf lists the faces that a piece is set in.
func facesOf(p order.Piece) []string {
	if p.Tail != nil && p.Tail.Text != "" {
		return []string{p.Face, p.Tail.Face}
	}
	return []string{p.Face}
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

// player sizes player k. Faults are kept in the result until all are known.
func (w *worker) player(k int) Player {
	from := w.plan.order.Players[k]
	out := Player{Player: from}
	if !from.SizeKnown {
		return out
	}
	l, err := w.dress(k, from.Size)
	if err != nil {
		out.faults = append(out.faults, faultOf(from, garment.BackName, err))
		return out
	}
	out.Garment = l.garment
	for i, asked := range w.plan.order.Pieces {
		text := textOf(asked, from)
		if text == "" {
			continue
		}
		piece, err := w.pieceFor(l, i, text, k)
		if err == nil {
			err = w.choose(&piece, l, i, k)
		}
		if err != nil {
			out.faults = append(out.faults, faultOf(from, asked.Place, err))
			continue
		}
		piece.askAgain()
		out.Pieces = append(out.Pieces, piece)
	}
	w.underLines(&out, l)
	return out
}

// pieceFor sizes piece i for player k.
func (w *worker) pieceFor(l *layout, i int, text string, k int) (Piece, error) {
	if w.plan.order.Pieces[i].Place == garment.BackName && w.plan.common != nil {
		return w.sharedName(l, i, text, w.plan.reached[k])
	}
	return w.piece(l, i, text, l.spots[i].height)
}

// textOf returns what a piece says for a player: the roster's name or number,
// or the job's own text.
func textOf(asked order.Piece, p order.Player) string {
	switch {
	case asked.Place == garment.BackName && p.Lines != "":
		return p.Lines
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
func (w *worker) piece(l *layout, i int, text string, height float64) (Piece, error) {
	at := l.spots[i]
	if !isNumber(w.plan.order.Pieces[i].Place) {
		at = w.forLines(l, i, text)
	}
	return w.pieceAt(l, &at, i, text, height)
}

// pieceAt sizes piece i of the job at a spot.
func (w *worker) pieceAt(l *layout, at *spot, i int, text string, height float64) (Piece, error) {
	asked := w.plan.order.Pieces[i]
	piece := Piece{
		Asked: asked, Side: at.placement.Side, Room: at.room,
		Top: at.top, BelowCollar: at.below, Turn: at.placement.Turn,
		Eased: at.eased, Short: at.short, TooNear: at.tooNear, AskedHeight: at.asked,
	}
	if at.noRoom {
		return w.withoutRoom(piece, l, at, i, text)
	}
	if isNumber(asked.Place) {
		n, err := w.number(i, text, at.limit, height)
		if err != nil {
			return piece, err
		}
		piece.Number, piece.At = n, at.placement.Point(0, at.top+n.Height)
		piece.Conflict, err = w.conflict(l, i, text, at.limit, height)
		return piece, err
	}
	n, err := w.named(&piece, l, at, i, text, height)
	if errors.As(err, &piece.TooTight) {
		return w.withoutRoom(piece, l, at, i, text)
	}
	if err != nil {
		return piece, err
	}
	piece.Name, piece.At = n, at.placement.Point(piece.shift(), at.top+at.drop+n.LetterHeight)
	return piece, nil
}

// named fits a name, with its tail where the piece asks for one, and parted where
// it lies across a full placket.
func (w *worker) named(piece *Piece, l *layout, at *spot, i int, text string, height float64) (*fit.Name, error) {
	if at.opening > 0 && !strings.Contains(text, "\n") {
		return w.parted(piece, l, at, i, text, height)
	}
	if piece.Asked.Tail == nil {
		n, err := w.name(l, i, text, at.limit, height)
		if err == nil {
			w.across(piece, l, at, n)
		}
		return n, err
	}
	t, err := w.withTail(l, i, text, at.limit, height)
	if err != nil {
		return nil, err
	}
	w.across(piece, l, at, &t.name)
	piece.Drawn, piece.Laid = t.path, t.laid
	return &t.name, nil
}

// name fits piece i, with its ways out where they are asked for. The result is
// shared and must not be changed.
func (w *worker) name(l *layout, i int, text string, limit, height float64) (*fit.Name, error) {
	k := key{i, text, l.garment.Size(), limit, height}
	return kept(w.names, k, func() (fit.Name, error) {
		r := w.nameRequest(i, text, limit, height)
		settle(&r, w.plan.order.Pieces[i], w.plan.gap, height/l.spots[i].asked)
		n, err := w.fitter.Name(r)
		if err == nil && w.plan.waysOut && height == l.spots[i].height {
			n.WouldFit = w.ways(l, i, text, r, &n)
		}
		return n, err
	})
}

func (w *worker) nameRequest(i int, text string, limit, height float64) fit.Request {
	p, asked := w.plan, w.plan.order.Pieces[i]
	face := p.faces[asked.Face]
	wording, raised := Wording(text, face, asked.Case, asked.Lang, asked.RaisePrefix)
	r := fit.Request{
		Text: wording, Raised: raised, Lang: asked.Lang, Face: face,
		Wdth: axis(asked.Wdth), Wght: axis(asked.Wght), Height: height, Limit: limit,
		Shape: shapeOf(asked.Shape), Spacing: spacingOf(asked.Spacing), Outlines: layers(asked),
		Squash: asked.Squash, SmallestGap: p.gap,
		Ladder: fit.DefaultLadder(height), Narrower: p.narrower, NoWaysOut: true,
	}
	r.Ladder.Tracking, r.Ladder.Width = p.order.Fit.Tracking, p.order.Fit.Width
	if floor := p.order.Fit.Height; floor != nil {
		r.Ladder.Height = math.Min(floor.MM(), height)
	} else if asked.Floor != nil {
		r.Ladder.Height = math.Min(asked.Floor.MM(), height)
	}
	w.arch(&r, i)
	settle(&r, asked, p.gap, 1)
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
