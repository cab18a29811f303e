package order

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/source"
)

// row is one row of a table, as a splitter yields it. Its cells are only valid
// until the next row.
type row struct {
	at     source.Place
	number int // of a sheet's row
	cells  []cell
}

func (r row) blank() bool {
	return !slices.ContainsFunc(r.cells, func(c cell) bool { return strings.TrimSpace(c.text) != "" })
}

// ReadRoster reads the players of a CSV file or an XLSX workbook, told apart
// by content. file is its name in messages; sheet names the sheet of a
// workbook, empty for the first that has a heading row. With any fault the
// roster is nil and every fault is returned, in file order. What is odd but
// usable (no number, a size that is not understood) becomes a Note.
func ReadRoster(file string, data []byte, sheet string, opts RosterOptions) (*Roster, source.Faults) {
	var (
		roster *Roster
		faults source.Faults
	)
	switch kind, hint := sniff(data); {
	case len(data) > rosterBytes:
		faults = refuse(file, fmt.Sprintf("the roster is %d bytes: at most %d (5 MiB) are read", len(data), rosterBytes), "leave out pictures and other sheets")
	case kind == "workbook":
		roster, faults = readWorkbook(file, data, sheet, opts)
	case kind != "text":
		faults = refuse(file, "the roster is "+kind, hint)
	case sheet != "":
		faults = refuse(file, "a sheet is asked for, but the roster is a text file", "delete sheet: from the job")
	default:
		roster, faults = readText(file, data, opts)
	}
	if len(faults) > 0 {
		faults.Sort()
		return nil, faults
	}
	slices.SortStableFunc(roster.Notes, func(a, b Note) int { return a.At.Compare(b.At) })
	return roster, nil
}

// refuse is the one fault of a file that cannot be read at all.
func refuse(file, message, hint string) source.Faults {
	return source.Faults{{Place: source.Place{File: file}, Message: message, Hint: hint}}
}

// sniff tells by its first bytes what a file is; other kinds come with a hint.
func sniff(data []byte) (kind, hint string) {
	const save = "save it as .xlsx or .csv"
	switch {
	case len(bytes.TrimSpace(bytes.TrimPrefix(data, []byte(bom)))) == 0:
		return "empty", "the first row names the columns, such as Name, Number, Size"
	case bytes.HasPrefix(data, []byte("PK\x03\x04")), bytes.HasPrefix(data, []byte("PK\x05\x06")):
		return "workbook", ""
	case bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1")):
		return "an old .xls workbook or one with a password", save + ", without a password"
	case bytes.HasPrefix(data, []byte("%PDF")):
		return "a PDF", "ask for the spreadsheet it was made from"
	case bytes.HasPrefix(data, []byte("\x89PNG")), bytes.HasPrefix(data, []byte("\xff\xd8\xff")):
		return "a picture", "ask for the spreadsheet"
	case bytes.HasPrefix(data, []byte("{\\rtf")), bytes.HasPrefix(bytes.TrimSpace(data), []byte("<")):
		return "a text document or a web page", save
	}
	return "text", ""
}

// scan turns the rows of one table into players.
type scan struct {
	file    string
	opts    RosterOptions
	excerpt func(cell) string
	// strict refuses a row with more cells than headings: in a text file a
	// comma inside a name has then moved every cell after it.
	strict bool
	// look, if set, looks behind the cells of a row of players.
	look func(r row)

	words  vocabulary
	early  []row // rows above the headings
	heads  heads
	team   *team
	faults source.Faults
	notes  []Note
}

// titleRows is how many rows may stand above the headings.
const titleRows = 10

// take reads one row and reports whether to go on.
func (s *scan) take(r row) bool {
	if len(s.faults) > mostFaults || s.team != nil && len(s.team.faults) > mostFaults {
		return false
	}
	if sound, more := s.within(r); !sound {
		return more
	}
	if s.team != nil {
		return s.player(r)
	}
	if r.blank() {
		return true
	}
	s.early = append(s.early, row{r.at, r.number, slices.Clone(r.cells)})
	if len(s.early) < titleRows {
		return true
	}
	return s.start()
}

// within holds a row against the limits. A row with a cell that is too long is
// left out; after one with too many columns nothing more is read.
func (s *scan) within(r row) (sound, more bool) {
	if len(r.cells) > rosterCols {
		c := r.cells[rosterCols]
		s.fault(c, "delete the columns that are not about players", "more than %d columns", rosterCols)
		return false, false
	}
	sound = true
	for _, c := range r.cells {
		if len(c.text) > cellLetters && len([]rune(c.text)) > cellLetters {
			s.fault(cell{c.text, c.at, 1, false}, "shorten it", "a cell of %d characters: at most %d are read", len([]rune(c.text)), cellLetters)
			sound = false
		}
	}
	return sound, true
}

func (s *scan) fault(c cell, hint, format string, args ...any) {
	s.faults = append(s.faults, source.Fault{
		Place: c.at, Message: fmt.Sprintf(format, args...), Hint: hint, Excerpt: s.excerpt(c), Width: c.width,
	})
}

// start finds the headings among the early rows and reads the rows below them.
func (s *scan) start() bool {
	at := s.headingRow()
	if at < 0 {
		s.noHeadings()
		return false
	}
	s.heads = s.readHeads(s.early[at])
	how, named := newNaming(s.heads.has)
	s.missing(s.early[at], named)
	s.team = newTeam(s.opts, how, s.excerpt)
	s.notes = append(s.notes, how.note(s.heads.place(how.back), s.heads.text(how.back))...)
	below := s.early[at+1:]
	s.early = nil
	for _, r := range below {
		if !s.player(r) {
			return false
		}
	}
	return true
}

// headingRow prefers a row with two known headings, as a title may be a word
// that is a heading elsewhere.
func (s *scan) headingRow() int {
	single := -1
	for i, r := range s.early {
		known, key := s.words.count(r)
		if key && known > 1 {
			return i
		}
		if key && single < 0 {
			single = i
		}
	}
	return single
}

// count returns how many headings of a row are known, and whether one of them
// is a name or a number.
func (v vocabulary) count(r row) (known int, key bool) {
	for _, c := range r.cells {
		switch h := v.heading(c.text); {
		case h >= headBack && h <= headNumber:
			key = true
			fallthrough
		case h != headNone:
			known++
		}
	}
	return known, key
}

func (s *scan) noHeadings() {
	if len(s.early) == 0 {
		s.faults = append(s.faults, refuse(s.file, "the roster is empty", "the first row names the columns, such as Name, Number, Size")...)
		return
	}
	var seen []string
	for _, c := range s.early[0].cells {
		if text := strings.TrimSpace(c.text); text != "" && len(seen) < 8 {
			seen = append(seen, quote(clip(text)))
		}
	}
	c := s.early[0].cells[0]
	s.fault(cell{c.text, c.at, c.width, false}, "the first row names the columns, such as Name, Number, Size",
		"no row of headings: the first row says %s", strings.Join(seen, ", "))
}

// clip keeps quoted text short.
func clip(s string) string { return head(s, 24) }

// head returns the first n characters, with … if there are more.
func head(s string, n int) string {
	s = strings.ToValidUTF8(s, "\ufffd") // names of an archive's parts are any bytes
	for i := range s {
		if n == 0 {
			return s[:i] + "…"
		}
		n--
	}
	return s
}

// player reads one row below the headings.
func (s *scan) player(r row) bool {
	if r.blank() {
		return true
	}
	if s.look != nil {
		s.look(r)
	}
	e := entry{row: r.at}
	for i, c := range r.cells {
		if i < len(s.heads.kind) {
			if h := s.heads.kind[i]; h != headNone {
				e.cells[h] = c
			} else if strings.TrimSpace(c.text) != "" {
				s.heads.used[i]++
			}
			continue
		}
		if strings.TrimSpace(c.text) != "" {
			s.beyond(c)
			if s.strict {
				return true
			}
		}
	}
	if len(s.team.players) == rosterRows {
		s.fault(cell{"", r.at, 1, false}, "split the roster", "more than %d players", rosterRows)
		return false
	}
	s.team.add(&e)
	return true
}

// beyond deals with a cell right of the last heading.
func (s *scan) beyond(c cell) {
	if s.strict {
		s.fault(c, "put text with a comma in quotes", "the row has more cells than there are headings (%d)", len(s.heads.kind))
		return
	}
	s.notes = append(s.notes, Note{Severity: Advice, At: c.at, What: "column",
		Message: quote(clip(strings.TrimSpace(c.text))) + " stands under no heading: it is not used", Remedy: "give the column a heading if it matters"})
}

// finish returns the roster and everything wrong with it.
func (s *scan) finish() (*Roster, source.Faults) {
	if s.team == nil && len(s.faults) == 0 {
		s.start()
	}
	if s.team == nil {
		return nil, s.faults
	}
	faults := append(s.faults, s.team.faults...)
	if len(s.team.players) == 0 && len(faults) == 0 {
		faults = append(faults, refuse(s.file, "the roster has headings but no players", "write one player a row below the headings")...)
	}
	s.unnamed()
	how := s.team.naming
	s.notes = append(s.notes, how.wholeNames(s.heads.place(how.back), s.heads.text(how.back), s.team.twoWord, len(s.team.players))...)
	return &Roster{Players: s.team.players, Notes: append(s.notes, s.team.notes...)}, faults
}
