package source

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Widths follow Unicode Standard Annex 11 (East Asian Width): W and F take two
// columns, everything else one; marks take none.
func TestCaretStandsUnderTheCharactersByDisplayWidth(t *testing.T) {
	for name, c := range map[string]struct {
		line          string
		column, width int
		shown, caret  string
	}{
		"plain":                   {"team: x", 7, 1, "team: x", "      ^"},
		"several characters":      {"cut: tow-button", 6, 10, "cut: tow-button", "     ^^^^^^^^^^"},
		"width 0 counts as 1":     {"abc", 2, 0, "abc", " ^"},
		"accented letter":         {"é: x", 4, 1, "é: x", "   ^"},
		"combining accent":        {"e\u0301: x", 5, 1, "e\u0301: x", "   ^"},
		"two marks on one letter": {"a\u0323\u0302b", 4, 1, "a\u0323\u0302b", " ^"},
		"fault on a mark":         {"e\u0301x", 2, 1, "e\u0301x", " ^"},
		"mark first":              {"\u0301x", 2, 1, "◌\u0301x", " ^"},
		"wide characters":         {"山田: x", 5, 1, "山田: x", "      ^"},
		"under wide characters":   {"a 山田 b", 3, 2, "a 山田 b", "  ^^^^"},
		"fullwidth digits":        {"７8", 2, 1, "７8", "  ^"},
		"halfwidth kana":          {"ｱb", 2, 1, "ｱb", " ^"},
		"hangul syllables":        {"김 x", 3, 1, "김 x", "   ^"},
		"hangul joined from jamo": {"\u1100\u1161x", 3, 1, "\u1100\u1161x", "  ^"},
		"emoji":                   {"⚾ x", 3, 1, "⚾ x", "   ^"},
		"emoji with skin tone":    {"👍🏽x", 3, 1, "👍🏽x", "  ^"},
		"flag":                    {"🇳🇴x", 3, 1, "🇳🇴x", "  ^"},
		"tab at the start":        {"\tx: y", 2, 1, "    x: y", "    ^"},
		"tab in the middle":       {"ab\tc", 4, 1, "ab  c", "    ^"},
		"tab after a wide one":    {"山\tc", 3, 1, "山  c", "    ^"},
		"under a tab":             {"a\tb", 2, 1, "a   b", " ^^^"},
		"thai mark":               {"ก\u0e34x", 3, 1, "ก\u0e34x", " ^"},
		"hebrew point":            {"ש\u05c1x", 3, 1, "ש\u05c1x", " ^"},
		"joiner is shown":         {"a\u200db", 2, 1, "a<U+200D>b", " ^^^^^^^^"},
		"no-break space":          {"a\u00a0b", 3, 1, "a<U+00A0>b", "         ^"},
		"bidi override is shown":  {"a\u202eb", 3, 1, "a<U+202E>b", "         ^"},
		"control is shown":        {"a\x1b[31mb", 2, 1, "a<U+001B>[31mb", " ^^^^^^^^"},
		"zero byte is shown":      {"a\x00b", 3, 1, "a<U+0000>b", "         ^"},
		"ideographic space":       {"a\u3000b", 3, 1, "a\u3000b", "   ^"},
		"end of line":             {"abc", 4, 1, "abc", "   ^"},
		"past the end":            {"abc", 9, 5, "abc", "   ^"},
		"past the end by width":   {"abc", 3, 9, "abc", "  ^"},
		"column 0":                {"abc", 0, 1, "abc", "^"},
	} {
		t.Run(name, func(t *testing.T) {
			f := Fault{Place: Place{File: "f", Line: 7, Column: c.column}, Message: "m", Excerpt: c.line, Width: c.width}
			assert.Equal(t, strings.Split(f.Text(), "\n")[1:], []string{"  7 | " + c.shown, "    | " + c.caret})
		})
	}
}

func TestLongLinesAreTrimmedRoundTheFault(t *testing.T) {
	long := strings.Repeat("0123456789", 20)
	for name, c := range map[string]struct {
		line          string
		column, width int
		under         string // what stands over the carets
	}{
		"at the start":                {long, 1, 3, "012"},
		"in the middle":               {long, 98, 4, "7890"},
		"at the end":                  {long, 200, 1, "9"},
		"wider than the room":         {long, 50, 150, ""},
		"in a line as long as a file": {strings.Repeat(long, 5000), 500_005, 3, "456"},
		"at the end of such a line":   {strings.Repeat(long, 5000), 1_000_000, 1, "9"},
		"past the end of such a line": {strings.Repeat(long, 5000), 2_000_000, 1, ""},
		"wide characters":             {strings.Repeat("山田太郎", 30), 61, 2, "山田"},
		"marks":                       {strings.Repeat("e\u0301", 100), 101, 2, "e\u0301"},
	} {
		t.Run(name, func(t *testing.T) {
			f := Fault{Place: Place{File: "f", Line: 1, Column: c.column}, Message: "m", Excerpt: c.line, Width: c.width}
			line, caret := f.excerpt()
			assert.LessOrEqual(t, span(show(line)), room+2)
			assert.LessOrEqual(t, len(caret), room+2)
			assert.Contains(t, line, "…")
			if c.under != "" {
				assert.Equal(t, c.under, over(line, caret))
			}
			assert.False(t, strings.HasPrefix(strings.TrimPrefix(line, "…"), "\u0301"), "cut between a letter and its accent")
		})
	}
}

// over returns what stands above the carets.
func over(line, caret string) string {
	from := strings.IndexByte(caret, '^')
	to := len(caret)
	out, column := "", 0
	for _, p := range show(line) {
		if p.width > 0 && column >= from && column < to || p.width == 0 && column > from && column <= to {
			out += p.text
		}
		column += p.width
	}
	return out
}

func TestCellOfAWorkbookIsShownWhole(t *testing.T) {
	f := Fault{Place: Place{File: "r.xlsx", Sheet: "S", Cell: "B7"}, Message: "not digits", Hint: "write digits", Excerpt: "6O 山"}
	assert.Equal(t, "r.xlsx S!B7: not digits\n   | 6O 山\n   | ^^^^^\n  write digits", f.Text())
}

func TestTextWithoutExcerptIsPlaceMessageAndHint(t *testing.T) {
	assert.Equal(t, "job.yaml: empty\n  write one", Fault{Place: Place{File: "job.yaml"}, Message: "empty", Hint: "write one"}.Text())
	assert.Equal(t, "nowhere", Fault{Message: "nowhere"}.Text())
	assert.Equal(t, "name “a<U+202E>b”", Fault{Message: "name “a\u202eb”"}.Text())
}

func TestTextNeverLetsAFileSteerTheTerminal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.StringOf(rapid.RuneFrom([]rune("ab \t山é\u0301\u202e\u200d\x1b\x00\x7f\u0085👍🏽"))).Draw(t, "line")
		f := Fault{
			Place:   Place{File: "f", Line: rapid.IntRange(1, 2000).Draw(t, "l"), Column: rapid.IntRange(0, 200).Draw(t, "c")},
			Message: "m", Excerpt: line, Width: rapid.IntRange(0, 200).Draw(t, "w"),
		}
		text := f.Text()
		require.True(t, utf8.ValidString(text))
		for _, r := range text {
			require.False(t, r != '\n' && hidden(r), "%U in %q", r, text)
		}
		if lines := strings.Split(text, "\n"); len(lines) > 1 {
			require.Len(t, lines, 3)
			require.Contains(t, lines[2], "^")
		}
	})
}
