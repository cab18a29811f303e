// Package source says where in a shop's file a value stands and what is wrong
// with it. A place is a line and a column of a text file or a cell of a sheet;
// a fault carries the line it was found on, so that the message can show it
// with a caret under the right characters whatever width they take on screen.
package source

import (
	"fmt"
	"sort"
	"strings"
)

// Place is where a value stands. Text files have a line and a column, both
// counted from 1, the column in characters (code points, a tab is one).
// Workbooks have a sheet and a cell. The zero Place is nowhere.
type Place struct {
	File         string
	Line, Column int
	Sheet, Cell  string
}

// String gives the place in the form that editors jump to: job.yaml:4:9, or
// roster.xlsx Sheet1!C7.
func (p Place) String() string {
	switch {
	case p.Cell != "" && p.Sheet != "":
		return p.prefix() + sheetName(p.Sheet) + "!" + p.Cell
	case p.Sheet != "":
		return p.prefix() + sheetName(p.Sheet)
	case p.Line > 0 && p.Column > 0:
		return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
	case p.Line > 0:
		return fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	return p.File
}

func (p Place) prefix() string {
	if p.File == "" {
		return ""
	}
	return p.File + " "
}

// sheetName quotes a name that a formula would quote too.
func sheetName(s string) string {
	if strings.ContainsAny(s, " !'") {
		return "'" + strings.ReplaceAll(s, "'", "''") + "'"
	}
	return s
}

// Compare orders two places of one file as a reader meets them: by line and
// column, or by sheet, row and column. It returns -1, 0 or 1.
func (p Place) Compare(q Place) int {
	pr, pc := cellOrder(p.Cell)
	qr, qc := cellOrder(q.Cell)
	for _, c := range []int{
		sign(p.Line - q.Line), sign(p.Column - q.Column),
		strings.Compare(p.Sheet, q.Sheet), sign(pr - qr), sign(pc - qc),
	} {
		if c != 0 {
			return c
		}
	}
	return 0
}

// cellOrder splits C7 into row 7 and column 3; anything else sorts first.
func cellOrder(cell string) (row, column int) {
	for _, r := range cell {
		switch {
		case r >= 'A' && r <= 'Z' && column < 1<<20:
			column = column*26 + int(r-'A') + 1
		case r >= '0' && r <= '9' && row < 1<<24:
			row = row*10 + int(r-'0')
		}
	}
	return row, column
}

func sign(n int) int {
	switch {
	case n < 0:
		return -1
	case n > 0:
		return 1
	}
	return 0
}

// Fault is one thing that makes a file unusable: where, what, and what to do.
type Fault struct {
	Place   Place
	Message string // lower case, no full stop; names the thing
	Hint    string // the remedy, may be empty
	Excerpt string // the whole line, or the text of the cell
	Width   int    // characters of the excerpt the fault covers; 0 counts as 1
}

// Error gives the place, the message and the hint on one line.
func (f Fault) Error() string {
	text := f.Message
	if at := f.Place.String(); at != "" {
		text = at + ": " + text
	}
	if f.Hint != "" {
		text += " (" + f.Hint + ")"
	}
	return text
}

// Faults is everything wrong with an order's files, in file order.
type Faults []Fault

// shown is how many faults are printed: a shop that reads a hundred has seen
// the pattern, and a wrong file may hold as many faults as it has lines.
const shown = 100

// Sort puts the faults in file order: files as they first appear, then places
// as a reader meets them. Faults at one place keep their order.
func (fs Faults) Sort() {
	rank := map[string]int{}
	for _, f := range fs {
		if _, ok := rank[f.Place.File]; !ok {
			rank[f.Place.File] = len(rank)
		}
	}
	sort.SliceStable(fs, func(i, j int) bool {
		a, b := fs[i].Place, fs[j].Place
		if a.File != b.File {
			return rank[a.File] < rank[b.File]
		}
		return a.Compare(b) < 0
	})
}

// Error prints the faults one below the other with their excerpts, at most a
// hundred of them, and says how many more there are.
func (fs Faults) Error() string {
	var b strings.Builder
	for i, f := range fs {
		if i == shown {
			b.WriteString("\n" + fs.closing())
			break
		}
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(f.Text())
	}
	return b.String()
}

func (fs Faults) closing() string {
	if n := len(fs) - shown; n != 1 {
		return fmt.Sprintf("and %d more faults like these", n)
	}
	return "and 1 more fault like these"
}

// Err returns the faults as an error, or nil if there are none. A bare Faults
// in an error variable would never be nil.
func (fs Faults) Err() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}
