package spelling

import (
	"strings"
	"unicode"

	"golang.org/x/text/language"
)

// What apostrophes and the ʻokina are drawn as.
const (
	apostrophe = '\u2019'
	okina      = '\u2018'
)

// Apostrophes returns the text with every apostrophe drawn alike, whatever key
// it was typed with: ' ’ ‘ ʼ ´ ` ′ ‛ and the full-width one become ’. Only a
// sign beside a letter is one (or before the figures of a year): a prime after
// a figure stays, and so does a ‘ that opens a quotation. The ʻokina is a
// letter that turns the other way and becomes ‘; in Hawaiian, Tahitian, Samoan,
// Tongan and Rarotongan, by the language tag given, every sign before a vowel
// is one.
func Apostrophes(text, lang string) string {
	runes := []rune(text)
	polynesian := hasOkina(lang)
	for i, r := range runes {
		switch {
		case r == '\u02BB':
			runes[i] = okina
		case !strings.ContainsRune("'\u2018\u2019\u201B\u02BC\u00B4`\u2032\uFF07", r) || !apostropheAt(runes, i):
		case polynesian && i+1 < len(runes) && strings.ContainsRune("aeiouāēīōūAEIOUĀĒĪŌŪ", runes[i+1]):
			runes[i] = okina
		default:
			runes[i] = apostrophe
		}
	}
	return string(runes)
}

// apostropheAt reports whether the sign at i is an apostrophe by what stands
// beside it.
func apostropheAt(runes []rune, i int) bool {
	at := func(k int) rune {
		if k < 0 || k >= len(runes) {
			return ' '
		}
		return runes[k]
	}
	before, after := at(i-1), at(i+1)
	if runes[i] == '\u2018' && !letter(before) && closes(runes[i+1:]) {
		return false
	}
	return letter(before) || letter(after) || unicode.IsDigit(after) && !unicode.IsDigit(before)
}

// closes reports whether a quotation that was opened before ends in the text.
func closes(runes []rune) bool {
	for i, r := range runes {
		if r == '\u2019' && (i+1 == len(runes) || !letter(runes[i+1])) {
			return true
		}
	}
	return false
}

func letter(r rune) bool { return unicode.IsLetter(r) || unicode.Is(unicode.M, r) }

// hasOkina reports a language that writes the glottal stop with this sign
// (the orthographies of the languages named at Apostrophes, from memory).
func hasOkina(lang string) bool {
	tag, err := language.Parse(lang)
	if err != nil {
		return false
	}
	switch base, _ := tag.Base(); base.String() {
	case "haw", "ty", "sm", "to", "rar":
		return true
	}
	return false
}
