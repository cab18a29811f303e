package spelling

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// CleanLines is Clean for a text that may have been typed in lines: each line
// is cleaned by itself, and the lines that say something are joined by single
// line feeds. A break beside an empty line is a problem, one between two lines
// is not.
func CleanLines(text string) (clean string, problems []Problem) {
	var lines []string
	for at := 0; text != ""; {
		line, sign, rest := cutLine(text)
		cleaned, found := Clean(line)
		for _, p := range found {
			p.At += at
			problems = append(problems, p)
		}
		at += utf8.RuneCountInString(line)
		r, _ := utf8.DecodeRuneInString(sign)
		switch {
		case cleaned == "" && sign != "":
			problems = append(problems, Problem{at, r, fmt.Sprintf("line break %s beside an empty line, removed", code(r))})
		case sign != "" && strings.TrimSpace(rest) == "":
			problems = append(problems, Problem{at, r, fmt.Sprintf("line break %s at the end, removed", code(r))})
		}
		if cleaned != "" {
			lines = append(lines, cleaned)
		}
		at += utf8.RuneCountInString(sign)
		text = rest
	}
	return strings.Join(lines, "\n"), problems
}

// cutLine parts a text at its first line break.
func cutLine(text string) (line, sign, rest string) {
	at := strings.IndexAny(text, "\n\v\f\r\u0085\u2028\u2029")
	if at < 0 {
		return text, "", ""
	}
	_, size := utf8.DecodeRuneInString(text[at:])
	if strings.HasPrefix(text[at:], "\r\n") {
		size = 2
	}
	return text[:at], text[at : at+size], text[at+size:]
}

// OneLine returns the text with its line breaks as spaces, or as nothing after
// a hyphen that a word was broken at.
func OneLine(text string) string {
	return strings.ReplaceAll(strings.ReplaceAll(text, "-\n", "-"), "\n", " ")
}
