package rulebook

import (
	"slices"
	"strings"
)

// suggest returns a hint with the known word nearest to what was written, or
// with all of them when none is near.
func suggest(written string, known []string) string {
	if len(known) == 0 {
		return ""
	}
	near := slices.MinFunc(known, func(a, b string) int { return distance(written, a) - distance(written, b) })
	if distance(written, near) <= max(2, len(near)/4) {
		return "did you mean " + near
	}
	return "it can be: " + strings.Join(known, ", ")
}

// longestWord bounds the work of distance on hostile input.
const longestWord = 64

// distance is how many letters must change, come or go to make b of a
// (Levenshtein 1966).
func distance(a, b string) int {
	if len(a) > longestWord {
		return longestWord
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

func names(about string) []string {
	var out []string
	for _, w := range wordsAbout(about) {
		out = append(out, w.name)
	}
	return append(out, "note")
}
