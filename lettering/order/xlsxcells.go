package order

import (
	"fmt"
	"strconv"
	"strings"

	"yokeline/lettering/source"
)

// examine looks behind the text of the cells that matter: formulas that were
// never worked out, errors, and numbers that lost their zeros.
func examine(s *scan, r row, m marks) {
	number := r.number
	for i := range r.cells {
		if i >= len(s.heads.kind) || s.heads.kind[i] == headNone {
			continue
		}
		switch c := &r.cells[i]; m.of(number, i) {
		case markError:
			s.fault(*c, "put the value itself into the cell", "the cell shows the error %s", c.text)
		case markFormula:
			s.fault(*c, "open the workbook in a spreadsheet program and save it, or put the value itself into the cell", "the cell holds a formula without its result")
		case markNumber:
			// A format such as 00 shows the zeros that the number itself lacks.
			c.numeric = c.text == "0" || !strings.HasPrefix(c.text, "0")
		}
	}
}

// lostZeros notes once that numbers are stored as numbers. Only those of one
// digit can have lost a zero: 07 becomes 7 and 00 becomes 0.
func (s *scan) lostZeros() []Note {
	if s.team == nil || s.team.bare == 0 {
		return nil
	}
	var doubtful []string
	for _, i := range s.team.lost {
		p := s.team.players[i]
		doubtful = append(doubtful, p.Number+" ("+p.Label()+")")
	}
	remedy := "none of them has one digit, so none is in doubt"
	if n := len(doubtful); n > 0 {
		remedy = "ask the coach whether these have a zero in front: " + strings.Join(doubtful[:min(n, 12)], ", ")
		if n > 12 {
			remedy += " and " + strconv.Itoa(n-12) + " more"
		}
	}
	return []Note{{
		Severity: Advice, At: s.heads.place(headNumber), What: "number",
		Message: fmt.Sprintf("%d numbers are stored as numbers, not as text: a leading zero is lost that way, 07 is kept as 7 and 00 as 0", s.team.bare),
		Remedy:  remedy,
	}}
}

// hiddenRows gathers the rows a coach does not see.
type hiddenRows struct {
	first source.Place
	rows  []string
}

func (h *hiddenRows) add(at source.Place) {
	if len(h.rows) == 0 {
		h.first = at
	}
	h.rows = append(h.rows, strings.TrimPrefix(rowLabel(at), "row "))
}

func (h *hiddenRows) note() []Note {
	n := len(h.rows)
	if n == 0 {
		return nil
	}
	shown := strings.Join(h.rows[:min(n, 12)], ", ")
	if n > 12 {
		shown += " and " + strconv.Itoa(n-12) + " more"
	}
	return []Note{{
		Severity: Advice, At: h.first, What: "row",
		Message: "rows that are hidden in the workbook are read too: " + shown,
		Remedy:  "ask the coach whether they belong to the order, or delete them",
	}}
}
