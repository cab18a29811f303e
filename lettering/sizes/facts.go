package sizes

import (
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
)

// FactKind says how the value of a Fact is to be read.
type FactKind uint8

// A value is text, a length that someone wrote in nanometres, a length that was
// computed in micrometres, or a plain figure in thousandths. A figure that there
// is none of is a dash.
const (
	Words FactKind = iota
	Nanometres
	Micrometres
	Thousandths
)

// Fact is one line of what a fingerprint stands for. No two facts of an order
// are alike in Player, About and What.
type Fact struct {
	Player int    // index into Sized.Players; -1 for the order as a whole
	About  string // a place, a size, or empty
	What   string // letter height
	Kind   FactKind
	Value  string
}

// Facts lists everything that decides what is made, in a fixed order: every
// text, length, colour, face file, garment measure and placement, and the ways
// out that a coach may choose. Lengths that someone wrote are whole nanometres;
// lengths that were computed are whole micrometres, coarse enough that the last
// bits of another processor's arithmetic do not show and fine enough that a
// hundredth of a millimetre does.
func (s *Sized) Facts() []Fact {
	l := ledger{player: -1}
	l.order(s)
	for _, piece := range s.Order.Pieces {
		l.asked(piece, s.digests)
	}
	l.garments(s)
	for i := range s.Players {
		l.player = i
		l.wearer(&s.Players[i])
	}
	return l.facts
}

// ledger collects facts.
type ledger struct {
	player int
	about  string
	facts  []Fact
}

func (l *ledger) add(what string, kind FactKind, value string) {
	l.facts = append(l.facts, Fact{Player: l.player, About: l.about, What: what, Kind: kind, Value: value})
}

func (l *ledger) words(what, value string) { l.add(what, Words, value) }

// flag adds a fact only where it is so.
func (l *ledger) flag(what string, so bool) {
	if so {
		l.words(what, "yes")
	}
}

func (l *ledger) written(what string, v *length.Length) {
	if v != nil {
		l.add(what, Nanometres, fmt.Sprint(v.Nanometres()))
	}
}

func (l *ledger) mm(what string, mm float64) { l.add(what, Micrometres, thousandths(mm)) }

func (l *ledger) figure(what string, v float64) { l.add(what, Thousandths, thousandths(v)) }

// axis adds a figure that may not have been given.
func (l *ledger) axis(what string, v *float64) {
	if v != nil {
		l.figure(what, *v)
	}
}

// thousandths prints a figure in whole thousandths, a missing one as a dash.
func thousandths(v float64) string {
	if math.IsNaN(v) {
		return "-"
	}
	return fmt.Sprint(int64(math.Round(v * 1000)))
}

func (l *ledger) colour(what string, c order.Colour) {
	if c.Hex == "" {
		return
	}
	value := c.Hex
	if c.Name != "" {
		value = c.Name + " " + c.Hex
	}
	l.words(what, value)
}

func (l *ledger) order(s *Sized) {
	o := s.Order
	l.words("team", o.Team)
	l.words("customer", o.Customer)
	l.words("sport", o.Sport)
	l.words("garment", string(o.Garment.Cut))
	l.colour("garment colour", o.Garment.Colour)
	l.colour("trim", o.Garment.Trim)
	l.words("fibre", o.Garment.Fibre)
	if o.Garment.Letters != "" {
		l.words("letters of sizes", o.Garment.Letters)
	}
	l.words("decoration method", o.Method)
	l.words("terms", o.Terms)
	if r := s.Rules; r != nil {
		l.words("rule book", r.ID)
		l.words("edition of the rules", r.Edition)
		l.words("season", r.Season)
		l.words("rules for", r.Category)
	}
}

// asked lists what the job asks for a piece.
func (l *ledger) asked(p order.Piece, digests map[string]string) {
	l.about = string(p.Place)
	defer func() { l.about = "" }()
	l.words("text", p.Text)
	l.words("face", p.Face)
	l.words("face file", digests[p.Face])
	l.words("case", p.Case.String())
	l.words("language", p.Lang)
	l.words("shape", p.Shape)
	l.words("spacing", p.Spacing)
	l.height(p)
	l.written("radius", p.Radius)
	l.written("rise", p.Rise)
	l.written("limit", p.Limit)
	l.written("gap", p.Gap)
	l.flag("ones of full width", p.FullOnes)
	l.written("embolden", p.Embolden)
	l.written("stroke", p.Stroke)
	l.axis("wdth", p.Wdth)
	l.axis("wght", p.Wght)
	if p.Lean != 0 {
		l.figure("lean", p.Lean)
	}
	l.flag("squash", p.Squash)
	l.flag("raised prefix", p.RaisePrefix)
	l.flag("gap kept", p.KeepGap)
	l.flag("optical spacing", p.Optical)
	l.colour("colour", p.Colour)
	for i := range p.Outlines {
		o := &p.Outlines[i]
		what := fmt.Sprintf("outline %d", i+1)
		l.written(what, &o.Width)
		l.words(what+" join", o.Join.String())
		l.colour(what+" colour", o.Colour)
	}
	l.tail(p.Tail, digests)
	l.placing(p)
}

func (l *ledger) height(p order.Piece) {
	if p.Height.By == order.ByLength {
		l.written("height", &p.Height.Length)
		return
	}
	l.words("height", p.Height.By.String())
}

// placing lists where the job puts a piece by its own word.
func (l *ledger) placing(p order.Piece) {
	l.written("below the collar", p.Below)
	for i := range p.Heights {
		l.written("height for "+sizedFor(p.Heights[i]), &p.Heights[i].Length)
	}
	for i := range p.Belows {
		l.written("below the collar for "+sizedFor(p.Belows[i]), &p.Belows[i].Length)
	}
	l.words("at", p.At)
	l.words("size run", p.Run)
	l.written("lowest letters", p.Floor)
	if p.SplitAt != 0 {
		l.figure("split at", float64(p.SplitAt))
	}
	l.flag("unsplit", p.Unsplit)
	l.flag("ones on full width", p.FullOnes)
}

// sizedFor names the sizes that a length is for.
func sizedFor(s order.SizedLength) string {
	return strings.TrimSpace(string(s.Group) + " " + s.Letter)
}

func (l *ledger) tail(t *order.Tail, digests map[string]string) {
	if t == nil {
		return
	}
	l.figure("tail length", 1000*t.Length)
	l.figure("tail thickness", 1000*t.Thickness)
	l.figure("tail gap", 1000*t.Gap)
	l.figure("tail curl", 1000*t.Curl)
	l.figure("tail taper", 1000*t.Taper)
	l.figure("tail slope", t.Slope)
	l.flag("tail plain", t.Plain)
	l.words("tail text", t.Text)
	l.words("tail face", t.Face)
	l.words("tail face file", digests[t.Face])
	l.flag("tail text laid on", t.Laid)
	l.colour("tail text colour", t.Colour)
}

// garments lists the measures of every size that is worn, from small to large.
func (l *ledger) garments(s *Sized) {
	for _, g := range garmentsOf(s) {
		l.about = "size " + g.Size().String()
		for _, f := range g.Figures() {
			l.mm(f.Measure, f.MM)
		}
	}
	l.about = ""
}

func (l *ledger) wearer(p *Player) {
	l.words("name", p.Name)
	l.words("lines", p.Lines)
	l.words("full name", p.FullName)
	l.words("number", p.Number)
	l.words("size", sizeOf(*p))
	l.words("role", p.Role)
	for i := range p.Pieces {
		l.about = string(p.Pieces[i].Asked.Place)
		l.piece(&p.Pieces[i])
	}
	l.about = ""
}

func sizeOf(p Player) string {
	if !p.SizeKnown {
		return "not known"
	}
	return p.Size.String()
}

func (l *ledger) piece(p *Piece) {
	l.words("side", p.Side.String())
	l.mm("across", p.At.X)
	l.mm("down", p.At.Y)
	l.figure("turn", 1000*p.Turn)
	if p.Name != nil {
		l.name("", p.Name)
		for i := range p.Name.WouldFit {
			l.way(wayPrefix(i), &p.Name.WouldFit[i])
		}
	}
	if p.Number != nil {
		l.number("", p.Number)
	}
	if p.Conflict != nil {
		for i := range p.Conflict.WaysOut {
			w, prefix := &p.Conflict.WaysOut[i], wayPrefix(i)
			l.words(prefix+"is", w.Kind)
			l.words(prefix+"size", w.Size)
			l.number(prefix, &w.Number)
		}
	}
	l.flag("no room", p.NoRoom)
	for i, r := range p.Remedies {
		l.words(fmt.Sprintf("remedy %d", i+1), r.Kind+" "+r.Size)
	}
	if p.Split != nil {
		l.words("left of the placket", p.Split.Left)
		l.words("right of the placket", p.Split.Right)
		l.mm("opening", p.Split.Gap)
		l.mm("shifted", p.Split.Shift)
	}
}

// wayPrefix tells the ways out of one piece apart.
func wayPrefix(i int) string { return "way " + string(rune('A'+i)) + " " }

// name lists how a name came out; the prefix tells ways out apart.
func (l *ledger) name(prefix string, n *fit.Name) {
	l.words(prefix+"letters", n.Text)
	l.words(prefix+"set in", n.FaceID)
	l.words(prefix+"form", n.Form())
	l.words(prefix+"verdict", n.Verdict.String())
	l.mm(prefix+"letter height", n.LetterHeight)
	l.mm(prefix+"ink width", n.InkWidth)
	l.mm(prefix+"ink height", n.InkHeight)
	l.mm(prefix+"limit", n.Limit)
	l.mm(prefix+"arch radius", n.Radius)
	l.mm(prefix+"tracking", n.Tracking)
	l.mm(prefix+"line distance", n.Leading)
	l.figure(prefix+"width scale", 1000*n.WidthScale)
	l.figure(prefix+"width axis", n.Wdth)
	l.figure(prefix+"weight axis", n.Wght)
}

func (l *ledger) way(prefix string, w *fit.WayOut) {
	l.words(prefix+"is", w.Kind)
	l.words(prefix+"size", w.Size)
	if w.Name != nil {
		l.name(prefix, w.Name)
	}
}

// number lists how a number came out; the prefix tells ways out apart.
func (l *ledger) number(prefix string, n *numeral.Number) {
	l.words(prefix+"digits", n.Text)
	l.words(prefix+"set in", n.FaceID)
	l.words(prefix+"verdict", n.Verdict)
	l.mm(prefix+"number height", n.Height)
	l.mm(prefix+"ink width", n.InkWidth)
	l.mm(prefix+"ink height", n.InkHeight)
	l.mm(prefix+"limit", n.Limit)
	l.mm(prefix+"digit gap", n.Gap)
	l.mm(prefix+"emboldened", n.Embolden)
	l.figure(prefix+"weight axis", n.Wght)
}

// garmentsOf returns the garment of every size that is worn, each once, from
// small to large.
func garmentsOf(s *Sized) []*garment.Garment {
	seen := map[garment.Size]*garment.Garment{}
	for _, p := range s.Players {
		if p.Garment != nil {
			seen[p.Garment.Size()] = p.Garment
		}
	}
	var out []*garment.Garment
	for _, size := range garment.AllSizes() {
		if g := seen[size]; g != nil {
			out = append(out, g)
		}
	}
	return out
}
