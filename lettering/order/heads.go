package order

import (
	"strconv"
	"strings"

	"yokeline/lettering/source"
)

// heads is the heading row of a roster.
type heads struct {
	kind []heading // per column
	cell []cell
	used []int // per column without a heading: cells that say something
}

func (h heads) has(want heading) bool { return h.column(want) >= 0 }

func (h heads) column(want heading) int {
	for i, k := range h.kind {
		if k == want && want != headNone {
			return i
		}
	}
	return -1
}

func (h heads) place(want heading) source.Place {
	if i := h.column(want); i >= 0 {
		return h.cell[i].at
	}
	return source.Place{}
}

func (h heads) text(want heading) string {
	if i := h.column(want); i >= 0 {
		return strings.TrimSpace(h.cell[i].text)
	}
	return ""
}

// readHeads reads the heading row. Two columns for one thing are a fault;
// columns nobody knows are noted.
func (s *scan) readHeads(r row) heads {
	h := heads{kind: make([]heading, len(r.cells)), cell: r.cells, used: make([]int, len(r.cells))}
	for i, c := range r.cells {
		text := strings.TrimSpace(c.text)
		kind := s.words.heading(text)
		if first := h.column(kind); first >= 0 {
			s.fault(c, "keep one of them", "columns %s %s and %s %s both give %s",
				columnName(first), quote(h.text(kind)), columnName(i), quote(text), kind)
			continue
		}
		h.kind[i] = kind
		if kind == headNone && text != "" {
			s.notes = append(s.notes, Note{Severity: Advice, At: c.at, What: "column",
				Message: "column " + columnName(i) + " " + quote(clip(text)) + " is not used", Remedy: "rename it if it should be: " + s.guess(text)})
		}
	}
	if h.has(headGender) && !h.has(headGroup) {
		s.notes = append(s.notes, Note{Severity: Advice, At: h.place(headGender), What: "size",
			Message: "sizes that do not say it are taken as adult or women by " + quote(h.text(headGender)),
			Remedy:  "add a column Group with youth, adult or women to choose otherwise"})
	}
	return h
}

// guess names the heading that a column nobody knows is nearest to.
func (s *scan) guess(text string) string {
	for h := headBack; h < headings; h++ {
		if near(text, synonyms(h)) != "" {
			return h.title()
		}
	}
	return "Name, Number, Size, Group, Role or Note"
}

// title is the heading to write over a column.
func (h heading) title() string {
	return [headings]string{"", "Name on back", "Last name", "Name", "Player", "First name", "Number", "Size", "Group", "Gender", "Role", "Captain", "Note"}[h]
}

// columnName is the letter a spreadsheet shows over column i, counted from 0.
func columnName(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return columnName(i/26-1) + string(rune('A'+i%26))
}

// missing faults the columns that every roster needs.
func (s *scan) missing(r row, named bool) {
	var seen []string
	for _, c := range r.cells {
		if text := strings.TrimSpace(c.text); text != "" && len(seen) < 12 {
			seen = append(seen, quote(clip(text)))
		}
	}
	headings := "the headings are " + strings.Join(seen, ", ")
	need := func(ok bool, what, title string) {
		if !ok {
			s.fault(r.cells[0], "call one of the columns "+title, "no column for %s: %s", what, headings)
		}
	}
	need(named || s.opts.NoNames, "the name", "Name on back")
	need(s.heads.has(headNumber) || s.opts.NoNumbers, "the number", "Number")
	need(s.heads.has(headSize), "the size", "Size")
}

func cellsUnused(n int) string {
	if n == 1 {
		return "its one cell is not used"
	}
	return "its " + strconv.Itoa(n) + " cells are not used"
}

// unnamed notes columns that hold something but have no heading.
func (s *scan) unnamed() {
	for i, n := range s.heads.used {
		if n > 0 && strings.TrimSpace(s.heads.cell[i].text) == "" {
			s.notes = append(s.notes, Note{Severity: Advice, At: s.heads.cell[i].at, What: "column",
				Message: "column " + columnName(i) + " has no heading: " + cellsUnused(n), Remedy: "give it a heading if it matters"})
		}
	}
}
