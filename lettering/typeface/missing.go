package typeface

import (
	"fmt"
	"strings"

	"golang.org/x/text/unicode/norm"

	"yokeline/fonts"
)

// MissingError says that a face cannot draw a character of a text.
type MissingError struct {
	Face    string   // identifier of the face
	Text    string   // the whole text
	Rune    rune     // the first character that is missing
	Suggest []string // up to three embedded faces that have it; those that have the whole text first
}

// Error names the character, its code point and what has it.
func (e *MissingError) Error() string {
	has := "no embedded face has it; spell the name without it"
	switch n := len(e.Suggest); {
	case n == 1:
		has = e.Suggest[0] + " has it"
	case n > 1:
		has = strings.Join(e.Suggest[:n-1], ", ") + " and " + e.Suggest[n-1] + " have it"
	}
	return fmt.Sprintf("face %s has no %q (%U), needed for %q; %s", e.Face, e.Rune, e.Rune, e.Text, has)
}

const maxSuggest = 3

func missing(f *Face, text string, r rune) *MissingError {
	e := &MissingError{Face: f.ID(), Text: text, Rune: r}
	var partly []string
	for _, entry := range fonts.Catalogue() {
		if entry.Text {
			continue // a face for the proof's own words is no advice for lettering
		}
		other, err := Embedded(entry.ID)
		if err != nil || other.source == f.source || !other.Has(r) {
			continue
		}
		if other.hasAll(text) {
			e.Suggest = append(e.Suggest, entry.ID)
		} else {
			partly = append(partly, entry.ID)
		}
	}
	e.Suggest = append(e.Suggest, partly...)
	e.Suggest = e.Suggest[:min(len(e.Suggest), maxSuggest)]
	return e
}

func (f *Face) hasAll(text string) bool {
	for _, r := range norm.NFC.String(text) {
		if !f.Has(r) {
			return false
		}
	}
	return true
}

// Has reports whether Shape would draw the character: the face maps it, or
// the shaper composes it from a letter and accents that the face maps, or it
// is a space, or an apostrophe letter whose quotation mark the face maps, or a
// letter that is put together here (see Composed).
func (f *Face) Has(r rune) bool {
	if f.source.has(f.source.standIn(r)) {
		return true
	}
	_, ok := f.source.composed(r)
	return ok
}

func (s *source) has(r rune) bool {
	if _, ok := s.nominal(r); ok {
		return true
	}
	if isSpace(r) {
		_, ok := s.nominal(' ')
		return ok
	}
	if r == '\u2011' { // a hyphen that does not break is drawn as the hyphen
		_, ok := s.nominal('\u2010')
		return ok
	}
	base, mark, ok := decompose(r)
	if !ok {
		return false
	}
	if _, ok := s.nominal(mark); !ok {
		return false
	}
	return s.has(base)
}

// decompose splits off the last accent of a composed character, as Unicode's
// canonical decompositions do.
func decompose(r rune) (base, mark rune, ok bool) {
	parts := []rune(norm.NFD.String(string(r)))
	n := len(parts)
	if n < 2 {
		return 0, 0, false
	}
	rest := []rune(norm.NFC.String(string(parts[:n-1])))
	if len(rest) != 1 {
		return 0, 0, false
	}
	return rest[0], parts[n-1], true
}

// standIn returns the character to draw for r. The ʻokina and the modifier
// apostrophe are letters in their languages but look like the two quotation
// marks, which far more faces have. Other apostrophes stay as typed.
func (s *source) standIn(r rune) rune {
	var quote rune
	switch r {
	case '\u02BB':
		quote = '\u2018'
	case '\u02BC':
		quote = '\u2019'
	default:
		return r
	}
	if _, ok := s.nominal(r); ok {
		return r
	}
	if _, ok := s.nominal(quote); ok {
		return quote
	}
	return r
}
