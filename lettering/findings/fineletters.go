package findings

import (
	"math"
	"strings"
	"unicode"

	"yokeline/lettering/geom"
	"yokeline/lettering/makeable"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
)

// theTail is how a place on a tail is called.
const theTail = "the tail"

// spotWords says where a detail is: R in HERNANDEZ, RN in HERNANDEZ.
func spotWords(s makeable.Spot, text string) string {
	text = strings.ReplaceAll(text, "\n", " ")
	first, second := s.Letter, s.Other
	if s.OtherIndex < s.Index {
		first, second = second, first
	}
	at := first
	switch {
	case s.Index == s.OtherIndex || second == "":
	case first == theTail || second == theTail:
		at += " and " + second
	default:
		at += second
	}
	if at == "" || at == text {
		return text
	}
	return at + " in " + text
}

// lettersOf names the letters of a piece by the contours that they are drawn
// from, which come letter by letter also where letters join; dots and accents
// go with the letter under or over them. Where the contours do not come out as
// the text, places have no names: a wrong one would send the shop to the wrong
// letter.
func lettersOf(p sizes.Piece, ink geom.Region) []makeable.Letter {
	contours, ok := contoursOf(p, ink)
	if !ok {
		return nil
	}
	var names []string
	for _, r := range p.Text() {
		if !unicode.IsSpace(r) && !unicode.Is(unicode.M, r) {
			names = append(names, string(r))
		}
	}
	// Parts that lie over each other but not through each other are accents; a
	// face that draws a letter from parts that cross needs the wider rule, which
	// the swash of a script capital over the next letter does not pass.
	shapes := stacked(contours, accent)
	if len(names) != len(shapes) {
		shapes = stacked(contours, over)
	}
	if len(names) != len(shapes) {
		return nil
	}
	out := make([]makeable.Letter, len(names), len(names)+1)
	for i, name := range names {
		out[i] = makeable.Letter{Text: name, Index: i, Ink: shapes[i]}
	}
	if p.Drawn != nil {
		out = append(out, makeable.Letter{Text: theTail, Index: len(names), Ink: ink, Rest: true})
	}
	return out
}

// contoursOf returns the contours of the letters alone, where they lie in the
// piece. A name that was joined to a tail lies elsewhere than by itself: it is
// brought there by its highest point, which the tail under it leaves alone.
func contoursOf(p sizes.Piece, ink geom.Region) (geom.Region, bool) {
	if p.Drawn == nil || p.Name == nil {
		return p.Ink().Flatten(outline.Tolerance), true
	}
	contours := p.Name.Ink().Flatten(outline.Tolerance)
	from, ok := highest(contours)
	to, found := highest(ink)
	if !ok || !found || math.Abs(from.Y-to.Y) > chords {
		return nil, false
	}
	return contours.Transform(geom.Translate(to.X-from.X, 0)), true
}

// highest returns the highest point, the leftmost of equals.
func highest(r geom.Region) (at geom.Point, ok bool) {
	for _, ring := range r {
		for _, p := range ring {
			if !ok || p.Y > at.Y+1e-3 || p.Y > at.Y-1e-3 && p.X < at.X {
				at, ok = p, true
			}
		}
	}
	return at, ok
}

// stacked puts neighbouring outer contours together that belong together. Which way
// round outer contours run differs from face to face; they hold more ink than
// the holes take away. Holes are left out: a place in a hole is in its letter.
func stacked(contours geom.Region, together func(a, b geom.Rect) bool) []geom.Region {
	way := math.Copysign(1, contours.Area())
	var out []geom.Region
	for _, ring := range contours {
		if ring.Area()*way <= 0 {
			continue
		}
		shape := geom.Region{ring}
		for n := len(out); n > 0 && together(out[n-1].Bounds(), shape.Bounds()); n = len(out) {
			shape = append(out[n-1], shape...)
			out = out[:n-1]
		}
		out = append(out, shape)
	}
	return out
}

// over reports whether the narrower of two boxes lies mostly over or under the
// other.
func over(a, b geom.Rect) bool {
	shared := math.Min(a.Max.X, b.Max.X) - math.Max(a.Min.X, b.Min.X)
	return shared > 0.6*math.Min(a.Width(), b.Width())
}

// accent reports whether one of two boxes lies over or under the other and
// reaches into it by less than half its height.
func accent(a, b geom.Rect) bool {
	shared := math.Min(a.Max.Y, b.Max.Y) - math.Max(a.Min.Y, b.Min.Y)
	return over(a, b) && shared < 0.5*math.Min(a.Height(), b.Height())
}
