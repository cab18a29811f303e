package fit

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"yokeline/lettering/typeface"
)

// The kinds of WayOut, in the order in which they are listed.
const (
	LowerLetters = "lower letters"
	NarrowerFace = "narrower face"
	MoreRoom     = "more room"
	TwoLines     = "two lines"
	AnInitial    = "an initial"
)

// WayOut is a change that would help a name that came out reduced or over.
// Each was tried: the change makes the name fit, and taller than it is now
// (LowerLetters apart, which is for names that are over).
type WayOut struct {
	Kind   string
	Height float64 // letter height that comes out, mm; of two lines, that of both
	Limit  float64 // the limit to give for MoreRoom, mm; else that of the name
	FaceID string  // the face to use
	Text   string  // the text to set; the two lines are parted by a line break
}

// Suggested lengths are rounded to hundredths of a mm, to the safe side.
const (
	perMM = 100
	grid  = 1.0 / perMM
)

func (f *Fitter) waysOut(r *Request, n *Name) []WayOut {
	plain := *r
	plain.NoWaysOut, plain.Narrower = true, nil
	best := n.LetterHeight // to beat
	if n.Verdict == Over {
		best = 0
	}
	var out []WayOut
	for _, find := range []func(Request, *Name, float64) (WayOut, bool){
		f.lower,
		func(q Request, n *Name, best float64) (WayOut, bool) { return f.narrower(q, best, r.Narrower) },
		f.room, f.twoLines, f.initial,
	} {
		if w, ok := find(plain, n, best); ok {
			out = append(out, w)
		}
	}
	return out
}

// try fits the changed request and reports whether it fits.
func (f *Fitter) try(r Request) (WayOut, bool) {
	o, err := f.fit(&r)
	if err != nil || o.verdict == Over {
		return WayOut{}, false
	}
	return WayOut{Height: o.state.height, Limit: r.Limit, FaceID: r.Face.ID(), Text: r.Text}, true
}

// lower finds the letter height that would fit, below the ladder's floor.
func (f *Fitter) lower(r Request, n *Name, _ float64) (WayOut, bool) {
	if n.Verdict != Over {
		return WayOut{}, false
	}
	r.Ladder.Height = math.Min(grid, r.Height)
	w, ok := f.try(r)
	if !ok {
		return w, false
	}
	r.Ladder.Height = math.Floor(w.Height*perMM) / perMM
	if r.Ladder.Height <= 0 {
		return w, false
	}
	// What is suggested must itself fit, with every other rung at its floor.
	low := r.Ladder.Height
	w, ok = f.try(r)
	w.Kind, w.Height = LowerLetters, low
	return w, ok
}

// narrower takes the face that gives the tallest letters.
func (f *Fitter) narrower(r Request, best float64, faces []*typeface.Face) (WayOut, bool) {
	var found WayOut
	id := r.Face.ID()
	r.Wdth, r.Wght = math.NaN(), math.NaN()
	for _, face := range faces {
		if r.Face = face; face.ID() == id {
			continue
		}
		if w, ok := f.try(r); ok && w.Height > best+grid {
			best, found = w.Height, w
		}
	}
	found.Kind = NarrowerFace
	return found, found.Height > 0
}

// room finds the limit at which the name comes out at the height asked.
func (f *Fitter) room(r Request, n *Name, _ float64) (WayOut, bool) {
	r.Ladder.Height = r.Height
	floor, err := f.fit(&r) // over: the other rungs at their floors
	if err != nil {
		return WayOut{}, false
	}
	fits := func(limit float64) bool {
		q := r
		q.Limit = limit
		b := newStand(&q) // a rise makes another circle of another limit
		return b.excess(floor.line, floor.state) <= 0
	}
	low, high := n.Limit, n.Limit
	for tries := 0; !fits(high); tries++ {
		if tries == 16 {
			return WayOut{}, false
		}
		low, high = high, 1.5*high
	}
	for high-low > grid/100 {
		if mid := (low + high) / 2; fits(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	r.Limit = math.Ceil(high*perMM) / perMM
	w, ok := f.try(r)
	w.Kind = MoreRoom
	return w, ok
}

// twoLines breaks the name at the space or hyphen nearest its middle.
func (f *Fitter) twoLines(r Request, _ *Name, best float64) (WayOut, bool) {
	first, second, ok := breakInTwo(r.Text)
	if !ok {
		return WayOut{}, false
	}
	r.Text = first
	a, ok := f.try(r)
	if !ok {
		return a, false
	}
	r.Text = second
	b, ok := f.try(r)
	if !ok {
		return b, false
	}
	b.Kind, b.Text, b.Height = TwoLines, first+"\n"+second, math.Min(a.Height, b.Height)
	return b, b.Height > best+grid
}

// breakInTwo parts a text at the space or after the hyphen nearest its middle,
// counted in characters; of two as near, the later, for the first line reads
// better full.
func breakInTwo(text string) (first, second string, ok bool) {
	nearest := math.MaxInt
	for i, r := range text {
		if !parts(r) {
			continue
		}
		head, tail := text[:i], text[i+utf8.RuneLen(r):]
		if !unicode.IsSpace(r) {
			head = text[:len(text)-len(tail)]
		}
		head, tail = strings.TrimSpace(head), strings.TrimSpace(tail)
		if !hasLetter(head) || !hasLetter(tail) {
			continue
		}
		off := utf8.RuneCountInString(head) - utf8.RuneCountInString(tail)
		if off = max(off, -off); off <= nearest {
			nearest, first, second, ok = off, head, tail, true
		}
	}
	return first, second, ok
}

func hasLetter(s string) bool { return strings.ContainsFunc(s, unicode.IsLetter) }

// parts reports a character between the parts of a name.
func parts(r rune) bool { return unicode.IsSpace(r) || r == '-' || r == '\u2010' || r == '\u2011' }

// initial shortens the parts of the name to initials from the left, never the
// last, until it fits.
func (f *Fitter) initial(r Request, _ *Name, best float64) (WayOut, bool) {
	for text, ok := shorten(r.Text); ok; text, ok = shorten(text) {
		r.Text = text
		if w, ok := f.try(r); ok && w.Height > best+grid {
			w.Kind = AnInitial
			return w, true
		}
	}
	return WayOut{}, false
}

// shorten makes an initial of the first part that is not one: "DE LA CRUZ"
// becomes "D. LA CRUZ", then "D. L. CRUZ". The last part stays.
func shorten(text string) (string, bool) {
	for start := 0; ; {
		end := strings.IndexFunc(text[start:], parts)
		if end < 0 {
			return "", false
		}
		end += start
		part := text[start:end]
		if !strings.HasSuffix(part, ".") && utf8.RuneCountInString(part) > 1 {
			return text[:start] + firstLetter(part) + "." + text[end:], hasLetter(text[end:])
		}
		_, size := utf8.DecodeRuneInString(text[end:])
		start = end + size
	}
}

// firstLetter returns the first character with the accents that follow it.
func firstLetter(part string) string {
	for i, r := range part {
		if i > 0 && !unicode.Is(unicode.Mn, r) {
			return part[:i]
		}
	}
	return part
}
