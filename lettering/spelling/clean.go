package spelling

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Problem is one thing that Clean took out of a text or put right.
type Problem struct {
	At   int    // index of the rune in the text given
	Rune rune   // the character; U+FFFD for a byte that is not UTF-8
	What string // what it is and what was done, such as "soft hyphen U+00AD, removed"
}

// String returns the problem with its position counted from 1, as people do.
func (p Problem) String() string { return fmt.Sprintf("character %d: %s", p.At+1, p.What) }

// treatment is what happens to a character.
type treatment uint8

const (
	keep   treatment = iota
	space            // becomes a plain space
	remove           // goes
	report           // stays, and is told
)

// Clean returns the text as it can be set: spaces of every kind become plain
// ones, never two in a row and none at the ends, and characters that draw
// nothing go. Each change is one Problem, in the order of the text, naming the
// code point. Visible characters stay as they are. Cleaning a clean text
// changes nothing and finds nothing, except damaged characters (U+FFFD), which
// stay and are told every time.
func Clean(text string) (clean string, problems []Problem) {
	var out strings.Builder
	out.Grow(len(text))
	at, pending := -1, -1 // index of this rune; of a space not yet written
	last := rune(-1)      // last rune written
	tell := func(i int, r rune, what string) { problems = append(problems, Problem{i, r, what}) }
	for i, r := range text {
		at++
		name, do := classify(r, last)
		if r == utf8.RuneError {
			_, size := utf8.DecodeRuneInString(text[i:])
			name = damaged(size)
		}
		switch do {
		case remove:
			tell(at, r, fmt.Sprintf("%s %s, removed", name, code(r)))
			continue
		case space:
			switch {
			case last < 0:
				tell(at, r, fmt.Sprintf("%s %s at the start, removed", name, code(r)))
			case pending >= 0:
				tell(at, r, fmt.Sprintf("%s %s after another, removed", name, code(r)))
			default:
				pending = at
				if r != ' ' {
					tell(at, r, fmt.Sprintf("%s %s, made a plain space", name, code(r)))
				}
			}
			continue
		case report:
			tell(at, r, fmt.Sprintf("%s %s, left as it is", name, code(r)))
		}
		if pending >= 0 {
			out.WriteByte(' ')
			pending = -1
		}
		out.WriteRune(r)
		last = r
	}
	if pending >= 0 {
		problems = trailing(problems, pending, text)
	}
	return out.String(), problems
}

func code(r rune) string { return fmt.Sprintf("U+%04X", r) }

func damaged(size int) string {
	if size == 1 {
		return "byte that is not UTF-8, read as"
	}
	return "damaged character"
}

// trailing tells of the space that ended the text. If it was told as made
// plain, that word is put right; later characters may have been told after it.
func trailing(problems []Problem, at int, text string) []Problem {
	r := []rune(text)[at]
	name, _ := classify(r, -1)
	told := Problem{at, r, fmt.Sprintf("%s %s at the end, removed", name, code(r))}
	for i, p := range problems {
		if p.At == at {
			problems[i] = told
			return problems
		}
		if p.At > at {
			return append(problems[:i], append([]Problem{told}, problems[i:]...)...)
		}
	}
	return append(problems, told)
}

// named characters; everything else gets the name of its kind.
func nameOf(r rune) string {
	switch r {
	case ' ':
		return "space"
	case '\t':
		return "tab"
	case '\n', '\v', '\f', '\r', '\u0085', '\u2028', '\u2029':
		return "line break"
	case '\u00A0':
		return "no-break space"
	case '\u202F':
		return "narrow no-break space"
	case '\u3000':
		return "wide space"
	case '\u00AD':
		return "soft hyphen"
	case '\u034F':
		return "grapheme joiner"
	case '\u200B':
		return "zero-width space"
	case '\u200C':
		return "zero-width non-joiner"
	case '\u200D':
		return "zero-width joiner"
	case '\u2060':
		return "word joiner"
	case '\uFEFF':
		return "byte order mark"
	case '\u2800':
		return "blank braille pattern"
	case '\u115F', '\u1160', '\u3164', '\uFFA0':
		return "blank filler"
	}
	return ""
}

// classify names a character and says what to do with it. before is the last
// character kept, or negative at the start.
func classify(r, before rune) (string, treatment) {
	name := nameOf(r)
	or := func(kind string) string {
		if name != "" {
			return name
		}
		return kind
	}
	switch {
	case r == utf8.RuneError:
		return "damaged character", report
	case r == '\t' || name == "line break" || unicode.Is(unicode.Z, r):
		return or("odd space"), space
	case r == '\u2800' || name == "blank filler":
		return name, space
	case (r == '\u200C' || r == '\u200D') && joins(before):
		return name, keep
	case unicode.Is(unicode.Bidi_Control, r):
		return "direction mark", remove
	case unicode.Is(unicode.Variation_Selector, r):
		return "variation selector", remove
	case unicode.Is(unicode.Cc, r):
		return "control character", remove
	case unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Other_Default_Ignorable_Code_Point, r):
		return or("invisible character"), remove
	}
	return "", keep
}

// joins reports a letter of a script in which a joiner or non-joiner changes
// what is drawn (Unicode Standard, chapter 23.2); beside other letters it is
// left over from copying.
func joins(before rune) bool {
	return before >= 0 && unicode.In(before, unicode.Arabic, unicode.Syriac, unicode.Nko, unicode.Mongolian,
		unicode.Devanagari, unicode.Bengali, unicode.Gurmukhi, unicode.Gujarati, unicode.Oriya, unicode.Tamil,
		unicode.Telugu, unicode.Kannada, unicode.Malayalam, unicode.Sinhala, unicode.Khmer, unicode.Myanmar, unicode.Tibetan)
}
