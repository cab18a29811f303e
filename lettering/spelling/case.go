// Package spelling brings a name as somebody typed it into the form that is
// drawn: its case, and the spaces and invisible characters that come along
// when names are copied from elsewhere. It never changes a visible letter
// other than by case; Apostrophes, which is asked for by itself, draws those
// alike.
package spelling

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/cases"
	"golang.org/x/text/language"
	"golang.org/x/text/unicode/norm"
)

// Case is how a name is set.
type Case uint8

// The cases a job can ask for.
const (
	Upper Case = iota // all capitals
	Typed             // as it was typed
)

// String returns the word that jobs use: "upper" or "typed".
func (c Case) String() string {
	if c == Typed {
		return "typed"
	}
	return "upper"
}

// ParseCase reads the word of a job. An unknown word is an error that names
// the ones there are.
func ParseCase(text string) (Case, error) {
	switch text {
	case "upper":
		return Upper, nil
	case "typed", "as typed":
		return Typed, nil
	}
	return Upper, fmt.Errorf("there is no case %q; use upper or typed", text)
}

// Apply returns the text in NFC and in the case asked for. Upper is the full
// mapping of the Unicode Standard (SpecialCasing.txt): ß becomes SS, a
// ligature its letters; in Turkish and Azerbaijani i becomes İ, in Lithuanian
// the dot that kept an accent apart goes, and Greek follows greek below. lang
// is a BCP 47 tag; an empty or unreadable one asks for no language's special
// cases.
func Apply(text string, c Case, lang string) string {
	text = norm.NFC.String(text)
	if c == Typed {
		return text
	}
	tag, err := language.Parse(lang)
	if err != nil {
		tag = language.Und
	}
	if base, _ := tag.Base(); base.String() == "el" {
		text, tag = greek(text), language.Und
	}
	return norm.NFC.String(cases.Upper(tag).String(text))
}

// greek takes the accents and breathings off Greek letters, as Greek capitals
// are written. The diaeresis stays, and where an accent on a vowel kept it
// apart from the ι or υ after it, that one gains a diaeresis (ά+ι becomes
// ΑΪ). A word that is ή alone keeps its accent, to be told from the article.
// These are the rules that CSS Text Level 3 gives for Greek upper case; the
// library's own drop the diaeresis, which changes how a name is read.
func greek(text string) string {
	runes := []rune(norm.NFD.String(text))
	out := make([]rune, 0, len(runes))
	parted := false // the last letter was a vowel that lost an accent
	for i := 0; i < len(runes); {
		end := i + 1
		for end < len(runes) && unicode.Is(unicode.Mn, runes[end]) {
			end++
		}
		letter, marks := runes[i], runes[i+1:end]
		out = append(out, letter)
		if !unicode.Is(unicode.Greek, letter) || aloneEta(runes, i, end) {
			out, parted, i = append(out, marks...), false, end
			continue
		}
		kept := slices.DeleteFunc(slices.Clone(marks), func(m rune) bool { return strings.ContainsRune(greekAccents, m) })
		if parted && strings.ContainsRune("ιυΙΥ", letter) && len(marks) == 0 {
			kept = []rune{diaeresis}
		}
		parted = strings.ContainsRune("αεηιουωΑΕΗΙΟΥΩ", letter) && len(kept) < len(marks) && !slices.Contains(kept, diaeresis)
		out, i = append(out, kept...), end
	}
	return string(out)
}

const (
	diaeresis = '\u0308'
	// grave, acute, macron, breve, the two breathings and the circumflex
	greekAccents = "\u0300\u0301\u0304\u0306\u0313\u0314\u0342"
)

// aloneEta reports whether the letter from i up to end is a whole word η with
// an acute.
func aloneEta(runes []rune, i, end int) bool {
	if runes[i] != 'η' && runes[i] != 'Η' || end != i+2 || runes[i+1] != '\u0301' {
		return false
	}
	return (i == 0 || !unicode.IsLetter(runes[i-1]) && !unicode.Is(unicode.Mn, runes[i-1])) &&
		(end == len(runes) || !unicode.IsLetter(runes[end]))
}
