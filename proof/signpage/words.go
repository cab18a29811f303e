package signpage

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// plural counts things in figures: 1 shirt, 15 shirts.
func plural(n int, thing string) string {
	if n == 1 || strings.HasSuffix(thing, "s") {
		return fmt.Sprintf("%d %s", n, thing)
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// counted writes small counts in words: two pieces do not fit yet.
func counted(n int, one, many string) string {
	words := [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	count := fmt.Sprint(n)
	if n < len(words) {
		count = words[n]
	}
	if n == 1 {
		return count + " " + one
	}
	return count + " " + many
}

// list joins words for reading: a, b and c.
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// sentence raises the first letter.
func sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}
