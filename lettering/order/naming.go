package order

import (
	"slices"
	"strings"

	"yokeline/lettering/source"
)

// naming says which columns give the name on the back and the player's name.
// A column for the name on the back wins, then one for the last name, then a
// plain Name, which is taken as it stands. Only if there is nothing but whole
// names is the last name taken out of them, and that is noted.
type naming struct {
	back  heading
	whole bool // back holds whole names
	full  heading
	first bool // full name is first name and last name, joined
}

// newNaming chooses the columns from those there are; ok is false if there is none.
func newNaming(has func(heading) bool) (n naming, ok bool) {
	order := []heading{headBack, headLast, headName, headPlayer}
	i := slices.IndexFunc(order, has)
	if i < 0 {
		return naming{}, false
	}
	n = naming{back: order[i], whole: order[i] == headPlayer, full: headNone}
	for _, h := range []heading{headPlayer, headName} {
		if has(h) && h != n.back && n.full == headNone {
			n.full = h
		}
	}
	n.first = n.full == headNone && !n.whole && has(headFirst) && (n.back != headBack || has(headLast))
	if n.whole {
		n.full = headPlayer
	}
	return n, true
}

// of returns the name on the back and the player's name of a row. The cells
// keep their places; their text is what was read out of them.
func (n naming) of(e *entry) (back, full cell) {
	back = e.cells[n.back]
	if n.full != headNone {
		full = e.cells[n.full]
	}
	if n.first {
		last := back.text
		if n.back == headBack {
			last = e.cells[headLast].text
		}
		full = cell{text: strings.TrimSpace(e.cells[headFirst].text + " " + last)}
	}
	if n.whole {
		back.text = lastName(back.text)
	}
	return back, full
}

// guessed says how a last name was found where more than one reading is
// possible; a name of two words has only one.
func (n naming) guessed(back, full cell) string {
	if !n.whole || len(strings.Fields(full.text)) <= 2 {
		return ""
	}
	return "the name on the back is taken to be " + quote(strings.TrimSpace(back.text)) + " from " + quote(strings.TrimSpace(full.text))
}

// note tells once that last names are taken out of whole names.
func (n naming) note(at source.Place, heading string) []Note {
	if !n.whole {
		return nil
	}
	return []Note{{Severity: Advice, At: at, What: "name",
		Message: "no column gives the name on the back: the last name of " + quote(heading) + " is taken",
		Remedy:  "add a column Name on back to choose another"}}
}

// wholeNames notes a plain Name that mostly holds first and last names: they
// go on the back as they stand, which is seldom meant.
func (n naming) wholeNames(at source.Place, heading string, twoWord, players int) []Note {
	if n.back != headName || twoWord*2 <= players {
		return nil
	}
	return []Note{{Severity: Advice, At: at, What: "name",
		Message: "most names under " + quote(heading) + " have more than one word: they go on the back as they stand",
		Remedy:  "call the column Player to put last names only on the back"}}
}

// lastName takes the last name out of a whole name: what stands before a
// comma, else the last word with the particles before it and a suffix after
// it. Which words are particles and suffixes is common practice, no source.
func lastName(whole string) string {
	if last, _, inverted := strings.Cut(whole, ","); inverted && !isSuffix(strings.TrimSpace(whole[len(last)+1:])) {
		return last
	}
	words := strings.Fields(strings.ReplaceAll(whole, ",", " "))
	if len(words) < 2 {
		return whole
	}
	i := len(words) - 1
	if isSuffix(words[i]) && i > 1 {
		i--
	}
	for i > 1 && isParticle(words[i-1]) {
		i--
	}
	return strings.Join(words[i:], " ")
}

func isSuffix(word string) bool {
	return slices.Contains([]string{"jr", "sr", "ii", "iii", "iv"}, squeeze(word))
}

func isParticle(word string) bool {
	return slices.Contains([]string{
		"al", "ap", "ben", "bin", "da", "das", "de", "del", "della", "den", "der", "di", "do", "dos", "du",
		"el", "la", "las", "le", "lo", "los", "mac", "mc", "st", "ten", "ter", "van", "von", "y", "zu",
	}, squeeze(word))
}
