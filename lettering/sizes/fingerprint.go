package sizes

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
)

// Fingerprint returns 64 hex digits that stand for exactly this order as it
// will be made: SHA-256 over a plain text that lists every text, length,
// colour, face file, garment measure and placement in a fixed order. Lengths
// that someone wrote go in as nanometres; lengths that were computed go in as
// whole micrometres, coarse enough that the last bits of another processor's
// arithmetic do not show and fine enough that a hundredth of a millimetre does.
func (s *Sized) Fingerprint() string {
	var c canon
	c.put("yokeline order", "1")
	c.order(s.Order)
	if s.Rules != nil {
		c.put("rules", s.Rules.ID, s.Rules.Edition, s.Rules.Season)
	}
	for _, piece := range s.Order.Pieces {
		c.asked(piece, s.digests[piece.Face])
	}
	for _, p := range s.Players {
		c.player(p)
	}
	sum := sha256.Sum256([]byte(c.text.String()))
	return hex.EncodeToString(sum[:])
}

// canon collects the canonical text: one line a fact, fields parted by tabs.
type canon struct{ text strings.Builder }

func (c *canon) put(fields ...string) {
	for i, f := range fields {
		if i > 0 {
			c.text.WriteByte('\t')
		}
		// A tab or line feed inside a text must not read as a new field.
		fmt.Fprintf(&c.text, "%q", f)
	}
	c.text.WriteByte('\n')
}

// um prints a computed length in whole micrometres; a missing one as a dash.
func um(mm float64) string {
	if math.IsNaN(mm) {
		return "-"
	}
	return fmt.Sprintf("%d", int64(math.Round(mm*1000)))
}

// thousandths prints a ratio or an axis value.
func thousandths(v float64) string { return um(v) }

func nm(l *length.Length) string {
	if l == nil {
		return "-"
	}
	return fmt.Sprintf("%d", l.Nanometres())
}

func (c *canon) order(o *order.Order) {
	c.put("team", o.Team, o.Customer, o.Sport)
	c.put("garment", string(o.Garment.Cut), o.Garment.Colour.Hex, o.Garment.Trim.Hex, o.Garment.Fibre)
	c.put("method", o.Method)
	c.put("terms", o.Terms)
}

func (c *canon) asked(p order.Piece, digest string) {
	c.put("piece", string(p.Place), p.Text, p.Face, digest, p.Shape, p.Spacing, p.Lang, p.Colour.Hex,
		nm(p.Radius), nm(p.Rise), nm(p.Limit), nm(p.Gap), nm(p.Below))
	if p.RaisePrefix {
		c.put("prefix", "raised")
	}
	c.settings(p)
	for _, o := range p.Outlines {
		c.put("outline", nm(&o.Width), o.Join.String(), o.Colour.Hex)
	}
}

// settings lists what a piece may be given on top; a piece without any adds
// nothing.
func (c *canon) settings(p order.Piece) {
	if p.Lean != 0 || p.Embolden != nil || p.Stroke != nil || p.KeepGap || p.Optical {
		c.put("letters", thousandths(p.Lean), nm(p.Embolden), nm(p.Stroke), fmt.Sprint(p.KeepGap), fmt.Sprint(p.Optical))
	}
	if t := p.Tail; t != nil {
		c.put("tail", thousandths(1000*t.Length), thousandths(1000*t.Thickness), thousandths(1000*t.Gap),
			thousandths(1000*t.Curl), thousandths(1000*t.Taper), thousandths(t.Slope), fmt.Sprint(t.Plain),
			t.Text, t.Face, fmt.Sprint(t.Laid), t.Colour.Hex)
	}
}

func (c *canon) player(p Player) {
	c.put("player", p.Name, p.FullName, p.Number, p.Size.String(), p.Role)
	if p.Garment == nil {
		return
	}
	for _, f := range p.Garment.Figures() {
		c.put("measure", f.Measure, um(f.MM))
	}
	for _, piece := range p.Pieces {
		c.piece(piece)
	}
}

func (c *canon) piece(p Piece) {
	c.put("at", string(p.Asked.Place), side(p.Side), um(p.At.X), um(p.At.Y), thousandths(p.Turn*1000))
	if n := p.Name; n != nil {
		c.put("name", n.Text, n.Form(), um(n.Radius), um(n.LetterHeight), thousandths(n.WidthScale*1000),
			thousandths(n.Wdth), thousandths(n.Wght), um(n.Tracking), um(n.InkWidth), n.Verdict.String())
	}
	if n := p.Number; n != nil {
		c.put("number", n.Text, um(n.Height), um(n.InkWidth), um(n.Gap), n.Verdict)
	}
}

func side(s garment.Side) string {
	if s == garment.Front {
		return "front"
	}
	return "back"
}
