package findings

import (
	"slices"
	"strings"
)

// style looks at the digits as a book speaks of them: arabic numerals, a style,
// front and back alike.
func (c *checker) style() {
	c.numerals()
	c.digitStyle()
	c.alikeOnBothSides()
}

// numerals holds the characters of the numbers against the kind that is asked
// for; books know no other than arabic.
func (c *checker) numerals() {
	f := c.rules.Numbers.Numerals
	if f == nil {
		return
	}
	ok, failed := 0, 0
	for _, w := range c.subject.Players {
		if w.Number == "" {
			continue
		}
		if strings.Trim(w.Number, "0123456789") == "" {
			ok++
			continue
		}
		failed++
		c.cited(f, Result{
			Finding: Finding{Severity: Violation, Player: w.Player, What: "numerals", Measured: w.Number, Required: "arabic numerals"},
			mend:    "give " + who + " a number of the digits 0 to 9",
		})
	}
	if ok > 0 && failed == 0 {
		c.cited(f, Result{Of: ok, Finding: Finding{Severity: InOrder, What: "numerals", Measured: "0 to 9", Required: "arabic numerals"}})
	}
}

// digitStyle names the faces where a book asks for a style: whether a face is
// plain or gothic only people can say.
func (c *checker) digitStyle() {
	f := c.rules.Numbers.Style
	if f == nil || f.None() {
		return
	}
	var faces []string
	for _, w := range c.subject.Players {
		for _, m := range w.Pieces {
			if m.Kind == KindNumber && m.Face != "" && !slices.Contains(faces, m.Face) {
				faces = append(faces, m.Face)
			}
		}
	}
	if n := c.howMany(KindNumber); n > 0 {
		measured := strings.Join(faces, ", ")
		if measured == "" {
			measured = "not known"
		}
		c.cited(f, Result{
			Of:      n,
			Finding: Finding{Severity: Unknown, What: "digit style", Measured: measured, Required: f.Is + " digits"},
			mend:    "look at the digits on the proof: a style is a matter of judgement, so ask the league where they are not clearly " + f.Is,
		})
	}
}

// alikeOnBothSides holds the number on the front against that on the back. All
// pieces of a place are made alike, so it is said once.
func (c *checker) alikeOnBothSides() {
	f := c.rules.Numbers.Alike
	if !f.Yes() {
		return
	}
	front, hasFront := c.first("front number")
	back, hasBack := c.first("back number")
	if !hasFront || !hasBack {
		return
	}
	unlike := differing(front, back)
	r := Result{Of: c.howMany(KindNumber), Finding: Finding{
		Severity: InOrder, What: "front and back alike", Measured: "the same face and colour", Required: "the same style and colour",
	}}
	switch {
	case front.Face == "" || back.Face == "":
		r.Severity, r.Measured = Unknown, "not measured"
	case len(unlike) > 0:
		r.Severity, r.Measured = Violation, strings.Join(unlike, "; ")
		r.mend = "give the front number and the back number one face and one colour"
	}
	c.cited(f, r)
}

// differing says in what two numbers differ, apart from their size.
func differing(front, back Measured) []string {
	var out []string
	for _, d := range [][2]string{{front.Face, back.Face}, {front.BodyColour, back.BodyColour}} {
		if !strings.EqualFold(d[0], d[1]) {
			out = append(out, d[0]+" on the front, "+d[1]+" on the back")
		}
	}
	return out
}
