package changes

import (
	"math"
	"strings"
)

// wearer is one player's changes under way.
type wearer struct {
	*speaker
	all []Change
}

// player says what changed of one player.
func (s *speaker) player(all []Change) []Line {
	w := wearer{s, all}
	out := w.roster()
	var places []string
	for _, c := range all {
		if c.About != "" && (len(places) == 0 || places[len(places)-1] != c.About) {
			places = append(places, c.About)
		}
	}
	said := map[string]bool{}
	for _, place := range places {
		if !said[place] {
			out = append(out, w.piece(place)...)
			said[place] = true
		}
	}
	return out
}

func (w *wearer) changed(about string, what ...string) bool {
	_, ok := find(w.all, about, what...)
	return ok
}

// roster says what the roster says otherwise.
func (w *wearer) roster() []Line {
	var out []Line
	for _, r := range [...]struct{ fact, what string }{
		{"name", "spelling"}, {"number", "number"}, {"size", "size"}, {"role", "role"}, {"lines", "broken into lines"}, {"full name", "full name"},
	} {
		c, ok := find(w.all, "", r.fact)
		if !ok || (r.fact == "lines" || r.fact == "full name") && w.changed("", "name") {
			continue
		}
		out = append(out, w.line(c, r.what))
	}
	return out
}

// piece says what changed of one piece.
func (w *wearer) piece(place string) []Line {
	side, sided := find(w.all, place, "side")
	if sided && (side.came() || side.went()) {
		l := Line{About: place, Is: "new"}
		if side.went() {
			l.Is = "left out now"
		}
		if w.worded(place) || w.asked(place, "face") {
			return nil
		}
		return []Line{l}
	}
	var out []Line
	if sided {
		out = append(out, w.line(side, "side"))
	}
	out = append(out, w.words(place)...)
	out = append(out, w.heights(place)...)
	out = append(out, w.settings(place, len(out) == 0)...)
	return append(out, w.where(place)...)
}

// worded reports whether the roster or the job gives a piece another text.
func (w *wearer) worded(place string) bool {
	own := "name"
	if strings.HasSuffix(place, "number") {
		own = "number"
	}
	return w.changed("", own) || w.asked(place, "text", "case", "language")
}

// words says that other letters are cut than the roster's change explains, or
// in another face or shape than the job's.
func (w *wearer) words(place string) []Line {
	var out []Line
	for _, r := range [...]struct {
		fact, what string
		follows    bool
	}{
		{"letters", "letters", w.worded(place)}, {"digits", "digits", w.worded(place)},
		{"set in", "face", w.asked(place, "face")}, {"form", "shape", w.asked(place, "shape")},
		{"left of the placket", "left of the placket", w.worded(place)}, {"right of the placket", "right of the placket", w.worded(place)},
	} {
		if c, ok := find(w.all, place, r.fact); ok && !r.follows {
			out = append(out, w.line(c, r.what))
		}
	}
	return out
}

// heights says how high the piece is now and whether it fits.
func (w *wearer) heights(place string) []Line {
	var out []Line
	if c, ok := find(w.all, place, "letter height", "number height"); ok && c.far() {
		out = append(out, w.line(c, high(place)))
	}
	if c, ok := find(w.all, place, "verdict"); ok {
		l := w.line(c, "fit")
		l.Was, l.Is = fitWords(l.Was), fitWords(l.Is)
		out = append(out, l)
	}
	if c, ok := find(w.all, place, "no room"); ok {
		l := Line{About: place, What: "room", Is: "none on this size"}
		if c.went() {
			l.Is = "enough now"
		}
		out = append(out, l)
	}
	return out
}

// fitWords says a verdict as the key of the roster does.
func fitWords(verdict string) string {
	if verdict == "over" {
		return "over: does not fit"
	}
	return verdict
}

// settings says how the letters are set otherwise, where nothing explains it.
func (w *wearer) settings(place string, bare bool) []Line {
	if !bare || w.worded(place) || w.changed("", "size") || w.asked(place) {
		return nil
	}
	var out []Line
	for _, r := range [...]struct{ fact, less, more string }{
		{"tracking", "set closer", "set wider"}, {"digit gap", "digits closer", "digits wider apart"}, {"emboldened", "lighter", "bolder"},
	} {
		if c, ok := find(w.all, place, r.fact); ok && c.far() {
			out = append(out, Line{About: place, Is: lessOrMore(c.by(), r.less, r.more)})
		}
	}
	if c, ok := find(w.all, place, "width scale", "width axis", "weight axis"); ok {
		out = append(out, w.line(c, c.What))
	}
	if c, ok := find(w.all, place, "arch radius", "line distance"); ok && c.far() {
		out = append(out, w.line(c, c.What))
	}
	if len(out) == 0 && !w.moved(place) && w.ways(place) {
		out = append(out, Line{About: place, What: "ways out", Is: "others to choose from"})
	}
	return out
}

func lessOrMore(by float64, less, more string) string {
	if by < 0 {
		return less
	}
	return more
}

// ways reports whether other ways out are offered.
func (w *wearer) ways(place string) bool {
	for _, c := range w.all {
		if c.About == place && (strings.HasPrefix(c.What, "way ") || strings.HasPrefix(c.What, "remedy ")) {
			return true
		}
	}
	return false
}

func (w *wearer) moved(place string) bool {
	for _, what := range [...]string{"across", "down", "turn"} {
		if c, ok := find(w.all, place, what); ok && (what == "turn" || math.Abs(c.by()) >= leastMove) {
			return true
		}
	}
	return false
}

// where says how far the piece moved on a shirt of the same size.
func (w *wearer) where(place string) []Line {
	if w.changed("", "size") {
		return nil
	}
	const slight = 25.4 / 16 // other letters stand a little otherwise
	other := w.worded(place) || w.asked(place, "face") || w.changed(place, "letter height", "number height")
	var out []Line
	for _, r := range [...]struct{ fact, less, more string }{{"down", "up", "down"}, {"across", "to the left", "to the right"}} {
		c, ok := find(w.all, place, r.fact)
		if !ok || math.Abs(c.by()) < leastMove || other && (r.fact == "across" || math.Abs(c.by()) < slight) {
			continue
		}
		out = append(out, Line{About: place, Is: "moved " + lessOrMore(c.by(), r.less, r.more) + " by " + w.distance(math.Abs(c.by()))})
	}
	if c, ok := find(w.all, place, "turn"); ok {
		out = append(out, w.line(c, "turned by"))
	}
	return out
}

// distance prints how far something moved; steps of a sixteenth of an inch are
// too coarse for the smallest moves.
func (w *wearer) distance(mm float64) string {
	const sixteenth = 25.4 / 16
	if w.say == nil || mm < sixteenth {
		return millimetresPlain(mm, 1)
	}
	return w.say(mm)
}
