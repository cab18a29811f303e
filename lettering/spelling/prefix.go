package spelling

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// prefixes of surnames that are written with small letters and followed by a
// capital, as in McLean. O’ needs nothing: its sign stands high as it is.
// Which there are is common practice, no source.
var prefixes = [...]string{"Mc", "Mac", "De", "Di", "Fitz"}

// Raise is Apply for lettering that draws the small letters of a prefix as
// small capitals (McLEAN): it returns the text with those letters as capitals
// in either case, and their indexes in it, counted in characters from 0. A
// prefix is one only where it was typed so, with a capital after it: Mackey and
// MCLEAN have none.
func Raise(text string, c Case, lang string) (cased string, raised []int) {
	text = norm.NFC.String(text)
	var out strings.Builder
	done, count := 0, 0
	write := func(s string) {
		out.WriteString(s)
		count += utf8.RuneCountInString(s)
	}
	for start := range text {
		if start < done || !wordStart(text, start) {
			continue
		}
		small := prefixAt(text[start:])
		if small == 0 {
			continue
		}
		write(Apply(text[done:start+1], c, lang)) // with the prefix's capital
		for range small {
			raised = append(raised, count)
			count++
		}
		done = start + 1 + small
		out.WriteString(strings.ToUpper(text[start+1 : done]))
	}
	write(Apply(text[done:], c, lang))
	return norm.NFC.String(out.String()), raised
}

func wordStart(text string, at int) bool {
	before, _ := utf8.DecodeLastRuneInString(text[:at])
	return at == 0 || !letter(before)
}

// prefixAt returns how many small letters the prefix at the start of the text
// has; 0 for no prefix.
func prefixAt(text string) int {
	for _, p := range prefixes {
		if rest, ok := strings.CutPrefix(text, p); ok {
			if next, _ := utf8.DecodeRuneInString(rest); unicode.IsUpper(next) {
				return len(p) - 1
			}
		}
	}
	return 0
}
