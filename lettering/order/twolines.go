package order

import (
	"fmt"
	"strings"

	"yokeline/lettering/spelling"
)

// A name is set in two lines where it was typed with a line break: in the cell
// of a roster, or in quotes with \n, or as a block of two lines, in the job.

// setLines notes a name that was typed in lines.
func (t *team) setLines(p *Player, e *entry, lines string) {
	back, _ := t.naming.of(e)
	switch n := strings.Count(lines, "\n") + 1; {
	case n == 1:
	case n > 2:
		t.fault(back, "leave the line breaks out, or keep one", fmt.Sprintf("a name in %d lines: at most two are set", n))
	case t.naming.whole:
		// Only the last name of a whole name goes on the back: how the cell was
		// broken says nothing about it.
	default:
		p.Lines = lines
		t.note(Advice, p, back.at, "name", "the name is set in two lines, as it was typed: "+strings.ReplaceAll(lines, "\n", " / "),
			"take the line break out of the cell for one line")
	}
}

// twoLines returns a cleaned text of one or two lines and of at most longest
// characters.
func (v value) twoLines(longest int) (string, bool) {
	s, ok := v.scalar()
	if !ok {
		return "", false
	}
	clean, problems := spelling.CleanLines(strings.TrimRight(s, "\n"))
	switch n := strings.Count(clean, "\n") + 1; {
	case clean == "":
		v.fault("give it a value or delete the line", "%s is left empty", v.name)
		return "", false
	case n > 2:
		v.fault("leave the line breaks out, or keep one", "%s has %d lines: at most two are set", v.name, n)
		return "", false
	}
	if n := len([]rune(clean)); n > longest {
		v.fault("", "%s has %d characters: at most %d are read", v.name, n, longest)
		return "", false
	}
	if said := told(problems); said != "" {
		v.note(Advice, "text", v.name+": "+said, "check the text")
	}
	return clean, true
}
