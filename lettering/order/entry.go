package order

import (
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/source"
	"yokeline/lettering/spelling"
)

// cell is one value of a roster as it was typed.
type cell struct {
	text    string
	at      source.Place
	width   int  // characters of the line it covers; 0 in a workbook
	numeric bool // a workbook's number whose leading zeros are lost, if it had any
}

// entry is one player as written, whatever the file: a cell per heading, empty
// where there is no such column.
type entry struct {
	row   source.Place
	cells [headings]cell
}

// key is equal for two rows whose every cell says the same.
func (e *entry) key() string {
	var b strings.Builder
	for _, c := range e.cells {
		b.WriteString(strings.TrimSpace(c.text))
		b.WriteByte(0)
	}
	return b.String()
}

// RosterOptions are what a job says about its roster.
type RosterOptions struct {
	Group     garment.Group // of sizes that do not say their own; empty: adult
	NoNames   bool          // nothing shows a player's name: names may be missing
	NoNumbers bool          // nothing shows a player's number: numbers may be missing
}

// told joins what was cleaned from a text; plain spaces are not told one by one.
func told(problems []spelling.Problem) string {
	var said []string
	for _, p := range problems {
		what := p.What
		if p.Rune == ' ' {
			what = "stray spaces removed"
		}
		if !slices.Contains(said, what) {
			said = append(said, what)
		}
	}
	return strings.Join(said, "; ")
}

// Roster is the players of one file.
type Roster struct {
	Players []Player
	Notes   []Note
	Sheet   string // of a workbook
}

// team builds the players from their entries and notices what is odd.
type team struct {
	RosterOptions
	naming  naming
	excerpt func(cell) string
	faults  source.Faults
	notes   []Note
	players []Player
	twoWord int            // names of more than one word
	rows    map[string]int // row text to index of player
	numbers map[string]int
	names   map[string]int
	bare    int   // numbers stored as numbers
	lost    []int // players whose number may have lost a leading zero that way
}

func newTeam(opts RosterOptions, how naming, excerpt func(cell) string) *team {
	if opts.Group == "" {
		opts.Group = defaultGroup
	}
	return &team{
		RosterOptions: opts, naming: how, excerpt: excerpt,
		rows: map[string]int{}, numbers: map[string]int{}, names: map[string]int{},
	}
}

// fault adds a fault that covers a cell.
func (t *team) fault(c cell, hint, message string) {
	t.faults = append(t.faults, source.Fault{Place: c.at, Message: message, Hint: hint, Excerpt: t.excerpt(c), Width: c.width})
}

func (t *team) note(severity Severity, p *Player, at source.Place, what, message, remedy string) {
	t.notes = append(t.notes, Note{Severity: severity, Player: p.Label(), At: at, What: what, Message: message, Remedy: remedy})
}

// kind marks the note just made as one that a rule book decides.
func (t *team) kind(k string) { t.notes[len(t.notes)-1].Kind = k }

// at is the place of a cell, or of the row where the cell is missing.
func (e *entry) at(h heading) source.Place {
	if e.cells[h].at != (source.Place{}) {
		return e.cells[h].at
	}
	return e.row
}

// add takes one row. The name comes first, as every message names the player.
func (t *team) add(e *entry) {
	p := Player{Row: e.row}
	t.setName(&p, e)
	t.setNumber(&p, e)
	t.setSize(&p, e)
	t.setRole(&p, e)
	p.Note = t.plain(e.cells[headNote])
	if first, ok := t.rows[e.key()]; ok {
		t.note(Violation, &p, e.row, "row", "the whole row is given twice, first in "+rowLabel(t.players[first].Row),
			"delete one of the rows, or say how the two "+p.Label()+" differ")
	} else {
		t.rows[e.key()] = len(t.players)
		t.compare(&p, e)
	}
	t.players = append(t.players, p)
}

// plain cleans a text that is not drawn; what was cleaned is not worth a note.
func (t *team) plain(c cell) string {
	clean, _ := spelling.Clean(c.text)
	return clean
}

// compare looks for players that share what should tell them apart.
func (t *team) compare(p *Player, e *entry) {
	if first, ok := t.numbers[p.Number]; ok && p.Number != "" {
		other := t.players[first]
		t.note(Violation, p, e.at(headNumber), "number", "number "+p.Number+" is taken by "+other.Label()+" ("+rowLabel(other.Row)+")",
			"ask the coach which number "+p.Label()+" wears")
		t.kind(TakenNumber)
	} else {
		t.numbers[p.Number] = len(t.players)
	}
	key := strings.ToLower(p.Name)
	if first, ok := t.names[key]; ok && p.Name != "" {
		other := t.players[first]
		t.note(Advice, p, e.at(t.naming.back), "name", p.Name+" is also the name of "+other.Label()+" ("+rowLabel(other.Row)+")",
			"give both an initial, if the coach wants them told apart")
	} else {
		t.names[key] = len(t.players)
	}
}

func (t *team) setName(p *Player, e *entry) {
	back, full := t.naming.of(e)
	lines, problems := spelling.CleanLines(back.text)
	clean := spelling.OneLine(lines)
	p.Name = clean
	t.setLines(p, e, lines)
	p.FullName = t.plain(full)
	if strings.Contains(clean, " ") {
		t.twoWord++
	}
	if p.FullName == p.Name {
		p.FullName = ""
	}
	if n := len([]rune(clean)); n > nameLetters {
		t.fault(back, "write only what goes on the back", fmt.Sprintf("a name of %d characters: at most %d are read", n, nameLetters))
	}
	if said := told(problems); said != "" {
		t.note(Advice, p, back.at, "name", said, "check the spelling of "+p.Label())
	}
	if clean == "" && !t.NoNames {
		t.note(Violation, p, e.at(t.naming.back), "name", "no name", "ask the coach for the name of "+p.Label())
	}
	if said := t.naming.guessed(back, full); said != "" && clean != "" {
		t.note(Advice, p, back.at, "name", said, "add a column Name on back if "+p.Label()+" wants another")
	}
}

func (t *team) setNumber(p *Player, e *entry) {
	c := e.cells[headNumber]
	clean, problems := spelling.Clean(c.text)
	if trimmed := strings.TrimSpace(c.text); trimmed != clean {
		t.note(Advice, p, c.at, "number", told(problems), "check the number of "+p.Label())
	}
	if bare := strings.TrimLeft(clean, "#№ "); bare != clean && bare != "" {
		t.note(Advice, p, c.at, "number", clean+" is read as "+bare, "leave the sign out")
		clean = bare
	}
	switch {
	case clean == "" && !t.NoNumbers:
		t.note(Violation, p, e.at(headNumber), "number", "no number", "ask the coach for the number of "+p.Label())
		t.kind(NoNumber)
	case strings.Trim(clean, "0123456789") != "":
		t.fault(c, "write digits 0 to 9 only, or leave it empty until it is known", "number "+quote(clean)+" of "+p.Label()+" is not all digits")
		return
	case len(clean) > digits:
		t.fault(c, "write the number only", "number "+clean+" of "+p.Label()+fmt.Sprintf(" has more than %d digits", digits))
		return
	}
	p.Number = clean
	if !c.numeric {
		return
	}
	t.bare++
	if len(clean) == 1 {
		t.lost = append(t.lost, len(t.players))
	}
}
