package fit

import (
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// retold returns the request with another text. Raised letters stay with the
// characters that the two texts have in common at their ends.
func (r Request) retold(text string) Request {
	from, to := []rune(r.Text), []rune(text)
	head := 0
	for head < min(len(from), len(to)) && from[head] == to[head] {
		head++
	}
	tail := 0
	for tail < min(len(from), len(to))-head && from[len(from)-1-tail] == to[len(to)-1-tail] {
		tail++
	}
	var raised []int
	for _, i := range r.Raised {
		switch {
		case i < head:
			raised = append(raised, i)
		case i >= len(from)-tail:
			raised = append(raised, i+len(to)-len(from))
		}
	}
	r.Text, r.Raised = text, raised
	return r
}

// breakInTwo parts a text at the space or after the hyphen nearest its middle,
// counted in characters; of two as near, the later, for the first line reads
// better full. A suffix never stands alone, nor do initials.
func breakInTwo(text string) (first, second string, ok bool) {
	if strings.Contains(text, lineBreak) {
		return "", "", false
	}
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
		if !hasLetter(head) || !hasLetter(tail) || isSuffix(tail) || isInitials(head) {
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

// shorten makes an initial of the first part that is not one: "DE LA CRUZ"
// becomes "D. LA CRUZ", then "D. L. CRUZ". The last part stays, with a suffix
// after it.
func shorten(text string) (string, bool) {
	for start := 0; ; {
		end := strings.IndexFunc(text[start:], parts)
		if end < 0 {
			return "", false
		}
		end += start
		if isSuffix(text[end:]) {
			return "", false
		}
		part := text[start:end]
		if !strings.HasSuffix(part, ".") && utf8.RuneCountInString(part) > 1 {
			return text[:start] + firstLetter(part) + "." + text[end:], hasLetter(text[end:])
		}
		_, size := utf8.DecodeRuneInString(text[end:])
		start = end + size
	}
}

// isSuffix reports what follows a name and is no name itself: JR., III. Which
// words are suffixes is common practice, no source.
func isSuffix(text string) bool {
	word := strings.ToUpper(strings.Trim(text, " .,\n"))
	return slices.Contains([]string{"JR", "SR", "II", "III", "IV"}, word)
}

// isInitials reports a text of single letters with full stops: J. or A.-B.
func isInitials(text string) bool {
	for part := range strings.FieldsFuncSeq(text, parts) {
		if letter, ok := strings.CutSuffix(part, "."); !ok || firstLetter(letter) != letter {
			return false
		}
	}
	return true
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
