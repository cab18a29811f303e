package order

import (
	"strings"
	"unicode/utf8"

	"yokeline/lettering/source"
)

// readText reads a roster of separated values.
func readText(file string, data []byte, opts RosterOptions) (*Roster, source.Faults) {
	text, notes, faults := decode(file, data)
	if len(faults) > 0 {
		return nil, faults
	}
	f := source.NewFile(file, text)
	words := newVocabulary()
	var delimiter byte
	start := 0
	if first := strings.ToLower(strings.TrimSpace(f.Line(1))); len(first) == 5 && strings.HasPrefix(first, "sep=") {
		delimiter = first[4]
		start = 1 // a spreadsheet's own way to say how values are separated
	} else {
		delimiter = guessDelimiter(text, words)
	}
	s := &scan{file: file, opts: opts, strict: true, words: words,
		excerpt: func(c cell) string { return f.Line(c.at.Line) }}
	sp := &splitter{file: f, text: text, comma: delimiter, fault: s.fault}
	sp.split(func(r row) bool { return r.at.Line <= start || s.take(r) })
	roster, faults := s.finish()
	if roster != nil {
		roster.Notes = append(notes, roster.Notes...)
	}
	return roster, faults
}

// guessDelimiter takes the one under which most headings are known, then the
// one that parts the first lines most.
func guessDelimiter(text string, words vocabulary) byte {
	if len(text) > 1<<16 {
		text = text[:1<<16] // cut anywhere: only the first rows count
	}
	best, most, widest := byte(','), 0, 0
	for _, comma := range []byte{',', ';', '\t'} {
		known, cells, rows := 0, 0, 0
		sp := &splitter{file: source.NewFile("", ""), text: text, comma: comma, fault: func(cell, string, string, ...any) {}}
		sp.split(func(r row) bool {
			if n, key := words.count(r); key && n > known {
				known = n
			}
			if !r.blank() {
				rows++
			}
			cells = max(cells, len(r.cells))
			return rows < titleRows && cells <= rosterCols
		})
		if known > most || known == most && cells > widest {
			best, most, widest = comma, known, cells
		}
	}
	return best
}

// splitter cuts separated values (RFC 4180) into cells that know their line
// and their column in characters. Unlike the standard reader it allows spaces
// round quoted text and a quote inside plain text (5' 10"), and goes on after
// a fault.
type splitter struct {
	file  *source.File
	text  string
	comma byte
	fault func(c cell, hint, format string, args ...any)

	at, line, column int
}

// split yields every row, blank ones too, until yield says no more.
func (sp *splitter) split(yield func(row) bool) {
	sp.line, sp.column = 1, 1
	var cells []cell
	for sp.at < len(sp.text) {
		cells = cells[:0]
		r := row{at: sp.place()}
		for {
			cells = append(cells, sp.cell())
			if sp.at >= len(sp.text) || sp.text[sp.at] != sp.comma {
				break
			}
			if len(cells) > rosterCols { // too many to go on
				r.cells = cells
				yield(r)
				return
			}
			sp.skip(sp.at + 1)
		}
		sp.lineBreak()
		r.cells = cells
		if !yield(r) {
			return
		}
	}
}

func (sp *splitter) place() source.Place {
	return source.Place{File: sp.file.Name(), Line: sp.line, Column: sp.column}
}

// skip moves on to byte offset to, counting lines and characters.
func (sp *splitter) skip(to int) {
	for sp.at < to {
		c := sp.text[sp.at]
		switch {
		case c == '\n' || c == '\r' && (sp.at+1 == len(sp.text) || sp.text[sp.at+1] != '\n'):
			sp.line++
			sp.column = 1
		case c == '\r':
		case c < utf8.RuneSelf || utf8.RuneStart(c):
			sp.column++
		}
		sp.at++
	}
}

func (sp *splitter) lineBreak() {
	if strings.HasPrefix(sp.text[sp.at:], "\r\n") {
		sp.skip(sp.at + 2)
	} else if sp.at < len(sp.text) {
		sp.skip(sp.at + 1)
	}
}

// end is the offset at which an unquoted cell that starts at from ends.
func (sp *splitter) end(from int) int {
	for i := from; i < len(sp.text); i++ {
		if c := sp.text[i]; c == sp.comma || c == '\n' || c == '\r' {
			return i
		}
	}
	return len(sp.text)
}

// cell reads one cell up to its comma or line break.
func (sp *splitter) cell() cell {
	from := sp.at
	for from < len(sp.text) && sp.text[from] == ' ' {
		from++
	}
	if from < len(sp.text) && sp.text[from] == '"' {
		sp.skip(from)
		return sp.quoted()
	}
	// One space after a comma is how people write, not part of the value.
	if from > sp.at && sp.at > 0 && sp.text[sp.at-1] == sp.comma {
		sp.skip(sp.at + 1)
	}
	end := sp.end(sp.at)
	c := cell{text: sp.text[sp.at:end], at: sp.place()}
	sp.skip(end)
	c.width = sp.column - c.at.Column
	return c
}

// quoted reads a cell in quotes; sp stands on the opening one.
func (sp *splitter) quoted() cell {
	c := cell{at: sp.place(), width: 1}
	var b strings.Builder
	i := sp.at + 1
	for {
		n := strings.IndexByte(sp.text[i:], '"')
		if n < 0 {
			sp.fault(c, "close it, or delete the quote", "a quote is opened here and never closed")
			b.WriteString(sp.text[i:])
			i = len(sp.text)
			break
		}
		b.WriteString(sp.text[i : i+n])
		i += n + 1
		if i >= len(sp.text) || sp.text[i] != '"' {
			break
		}
		b.WriteByte('"')
		i++
	}
	sp.skip(i)
	if sp.line == c.at.Line {
		c.width = sp.column - c.at.Column
	}
	c.text = b.String()
	end := sp.end(sp.at)
	if rest := strings.TrimLeft(sp.text[sp.at:end], " "); rest != "" {
		sp.skip(end - len(rest))
		sp.fault(cell{at: sp.place(), width: utf8.RuneCountInString(rest)}, "inside quoted text write a quote twice", "text follows a closing quote")
	}
	sp.skip(end)
	return c
}
