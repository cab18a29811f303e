package changes

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"yokeline/lettering/sizes"
)

// least is the smallest change of a length that is worth saying, and leastMove
// the smallest move of a piece, mm: nothing is cut or pressed nearer (common
// practice, no source).
const (
	least     = 0.1
	leastMove = 0.5
)

// speaker puts changes in a coach's words.
type speaker struct {
	say func(mm float64) string
	job []Change // of the order as a whole
}

func itoa(n int) string { return strconv.Itoa(n) }

// asked reports whether the job asks for something else of a piece.
func (s *speaker) asked(about string, what ...string) bool {
	_, ok := find(s.job, about, what...)
	return ok
}

// find returns the first change of one of the things.
func find(all []Change, about string, what ...string) (Change, bool) {
	i := slices.IndexFunc(all, func(c Change) bool { return c.About == about && (len(what) == 0 || slices.Contains(what, c.What)) })
	if i < 0 {
		return Change{}, false
	}
	return all[i], true
}

// line says a change with its values.
func (s *speaker) line(c Change, what string) Line {
	l := Line{About: c.About, What: what, Was: s.value(c.was, c.Was), Is: s.value(c.is, c.Is)}
	if l.Was == l.Is && l.Was != "" { // too near for the fractions of an inch
		l.Was, l.Is = near(c.was, l.Was), near(c.is, l.Is)
	}
	return l
}

// value prints a fact without the quotes that tell texts apart in a list.
func (s *speaker) value(f *sizes.Fact, plain string) string {
	if f == nil {
		return ""
	}
	if mm, ok := millimetres(*f); ok && s.say != nil {
		return s.say(mm)
	}
	if f.Kind == sizes.Words && f.Value != "" && f.Value != "-" {
		return f.Value
	}
	return plain
}

// near adds the millimetres to a length that looks like another.
func near(f *sizes.Fact, printed string) string {
	mm, ok := millimetres(*f)
	if !ok {
		return printed
	}
	return printed + " (" + millimetresPlain(mm, 2) + ")"
}

func millimetresPlain(mm float64, decimals int) string {
	return strconv.FormatFloat(mm, 'f', decimals, 64) + "\u00a0mm"
}

// by is how far a length moved, mm; 0 for anything else.
func (c Change) by() float64 {
	if c.was == nil || c.is == nil {
		return 0
	}
	was, ok := millimetres(*c.was)
	is, too := millimetres(*c.is)
	if !ok || !too {
		return 0
	}
	return is - was
}

// far reports a change of a length that is worth saying, or one from or to none.
func (c Change) far() bool {
	return c.was == nil || c.is == nil || c.was.Value == "-" || c.is.Value == "-" || math.Abs(c.by()) >= least
}

// came and went report a change from or to nothing.
func (c Change) came() bool { return c.was == nil }
func (c Change) went() bool { return c.is == nil }

// jobLines says what the order as a whole asks for.
func (s *speaker) jobLines() []Line {
	var out []Line
	measures := map[string]int{}
	for _, c := range s.job {
		switch {
		case strings.HasPrefix(c.About, "size "):
			if !c.came() && !c.went() && !s.asked("", "garment") {
				if measures[c.About]++; measures[c.About] == 1 {
					out = append(out, Line{What: "garment, " + c.About})
				}
			}
		case c.About == "":
			if l, ok := s.orderLine(c); ok {
				out = append(out, l)
			}
		default:
			if l, ok := s.pieceAsked(c); ok {
				out = append(out, l)
			}
		}
	}
	for i, l := range out {
		if about, ok := strings.CutPrefix(l.What, "garment, "); ok && l.Is == "" {
			out[i].Is = plural(measures[about], "measure") + " changed"
		}
	}
	return out
}

// orderLine says a change of the order itself.
func (s *speaker) orderLine(c Change) (Line, bool) {
	switch c.What {
	case "terms":
		return Line{What: "the terms", Is: "rewritten"}, true
	case "edition of the rules":
		return s.line(c, c.What), !s.asked("", "rule book")
	}
	return s.line(c, c.What), true
}

// pieceAsked says a change of what the job asks of a piece; a piece that came or
// went is one line.
func (s *speaker) pieceAsked(c Change) (Line, bool) {
	face, other := find(s.job, c.About, "face")
	switch {
	case other && (face.came() || face.went()):
		l := Line{About: c.About, Is: "new"}
		if face.went() {
			l.Is = "left out now"
		}
		return l, c.What == "face"
	case strings.HasSuffix(c.What, "face file"):
		return Line{About: c.About, What: c.What, Is: "another file"}, !s.asked(c.About, strings.TrimSuffix(c.What, " file"))
	case strings.HasSuffix(c.What, " join"):
		outline, ok := find(s.job, c.About, strings.TrimSuffix(c.What, " join"))
		return s.line(c, c.What), !ok || !outline.came() && !outline.went()
	case c.What == "height":
		return s.line(c, high(c.About)+asAsked), true
	}
	if word := map[string]string{"radius": "arch radius", "limit": "room", "wdth": "width axis", "wght": "weight axis"}[c.What]; word != "" {
		return s.line(c, word), true
	}
	return s.line(c, c.What), true
}

// asAsked tells the height that the job asks for from the one that came out.
const asAsked = ", as asked"

// high is what the height of a piece is called.
func high(place string) string {
	if strings.HasSuffix(place, "number") {
		return "digits high"
	}
	return "letters high"
}
