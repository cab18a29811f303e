package order

import (
	"slices"
	"strings"

	"yokeline/lettering/edges"
	"yokeline/lettering/garment"
)

// Places returns the places in their fixed order.
func Places() []Place {
	return []Place{
		garment.BackName, garment.BackNumber, garment.FrontName, garment.FrontNumber,
		garment.LeftChest, garment.SleeveNumber, garment.ShortsNumber,
	}
}

// IsNumber reports whether the place shows the player's number.
func IsNumber(p Place) bool { return strings.HasSuffix(string(p), "number") }

// takesText reports whether the job itself gives the text of the place.
func takesText(p Place) bool { return p == garment.FrontName || p == garment.LeftChest }

// Shapes returns the words for what a name stands on: a straight line, an arch,
// or two edges that its letters are drawn between.
func Shapes() []string {
	words := []string{"straight", "radial arch", "radial arch down", "vertical arch", "vertical arch down"}
	for _, f := range edges.Forms() {
		if !slices.Contains(words, f.String()) {
			words = append(words, f.String())
		}
	}
	return words
}

// isForm reports whether the letters are drawn between edges that are given by
// a rise alone.
func isForm(shape string) bool { return slices.Index(Shapes(), shape) > 4 }

// Sames returns the words for whose names share one letter height: nobody,
// the players of one size, or the whole team.
func Sames() []string { return []string{"none", "size", "team"} }

// Arcs returns the words for who shares the circle that a rise makes: the whole
// team (the rise is measured over the limit of the size that most players
// wear), the players of a size (over the limit of each), or nobody (over each
// name's own width).
func Arcs() []string { return []string{"team", "size", "name"} }

// raisedPrefix is the word that sets the small letters of a prefix such as Mc
// raised.
const raisedPrefix = "raised"

// prefixes are the words for how a prefix is set.
func prefixes() []string { return []string{"plain", raisedPrefix} }

func groups() []string {
	var words []string
	for _, g := range garment.Groups() {
		words = append(words, string(g))
	}
	return words
}

func cuts() []string {
	var ids []string
	for _, c := range garment.Cuts() {
		ids = append(ids, string(c.Cut))
	}
	return ids
}

// near returns the known word that text most likely means, or "" if none is
// close: a word that differs by case or punctuation only, one that text starts
// or ends, or one within a few slips of the pen: one in three letters, but two
// in a word of four.
func near(text string, known []string) string {
	plain := squeeze(text)
	if plain == "" {
		return ""
	}
	letters := len([]rune(plain))
	best, least := "", max(min(2, letters-2), letters/3)+1
	for _, k := range known {
		if squeeze(k) == plain {
			return k
		}
		if d := slips(plain, squeeze(k)); d < least {
			best, least = k, d
		}
	}
	if best == "" && len(plain) >= 3 {
		i := slices.IndexFunc(known, func(k string) bool {
			return strings.HasPrefix(squeeze(k), plain) || strings.HasSuffix(squeeze(k), plain)
		})
		if i >= 0 {
			best = known[i]
		}
	}
	return best
}

// squeeze drops what a writer varies without meaning anything by it: case,
// spaces and punctuation.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(" \t\u00a0_-–./'’()#:&+,?!*\"", r) {
			return -1
		}
		return r
	}, strings.ToLower(s))
}

// longestWord bounds the quadratic comparison; no known word is near a longer one.
const longestWord = 40

// slips counts the insertions, deletions, changes and swaps of neighbours that
// turn a into b (Damerau's count, each stretch edited once).
func slips(a, b string) int {
	s, t := []rune(a), []rune(b)
	if len(s) > longestWord || len(t) > longestWord {
		return max(len(s), len(t))
	}
	rows := make([][]int, len(s)+1)
	for i := range rows {
		rows[i] = make([]int, len(t)+1)
		rows[i][0] = i
	}
	for j := range t {
		rows[0][j+1] = j + 1
	}
	for i := range s {
		for j := range t {
			cost := 1
			if s[i] == t[j] {
				cost = 0
			}
			d := min(rows[i][j]+cost, rows[i][j+1]+1, rows[i+1][j]+1)
			if i > 0 && j > 0 && s[i] == t[j-1] && s[i-1] == t[j] {
				d = min(d, rows[i-1][j-1]+1)
			}
			rows[i+1][j+1] = d
		}
	}
	return rows[len(s)][len(t)]
}

// list joins words for a sentence: a, b or c.
func list(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}
