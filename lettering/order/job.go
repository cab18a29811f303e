package order

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"yokeline/lettering/length"
	"yokeline/lettering/source"
	"yokeline/lettering/spelling"
)

const mapping = yaml.MappingNode

// format is the version of the job file that this package reads.
const format = "1"

// Job is a job file as it was read: the order without the players of its
// roster file. Players that the job lists itself are in Order.Players.
type Job struct {
	Order  Order
	Roster RosterFile
	Spec   SpecFile
}

// RosterFile is the roster a job names.
type RosterFile struct {
	File    string // as the job writes it, relative to the job; empty when the job lists the players
	Sheet   string // of a workbook; empty: the first with a heading row
	At      source.Place
	excerpt string
}

// known are words from outside that a job may use.
type known struct {
	faces, rules []string
	categories   func(rules string) ([]string, bool)
}

// Option tells the reader of a job what is known outside this package.
type Option func(*known)

// WithFaces gives the ids of the embedded faces. Without them any id passes.
func WithFaces(ids ...string) Option { return func(k *known) { k.faces = ids } }

// WithRules gives the ids of the rule books. Without them any id passes.
func WithRules(ids ...string) Option { return func(k *known) { k.rules = ids } }

// WithCategories tells which categories, such as women or 12U, a rule book has
// figures of its own for; false for a book that is not known. Without it any
// category passes.
func WithCategories(of func(rules string) ([]string, bool)) Option {
	return func(k *known) { k.categories = of }
}

// ReadJob reads a job file. file is its name in messages. With any fault the
// job is nil and every fault is returned, in file order.
func ReadJob(file string, data []byte, options ...Option) (*Job, source.Faults) {
	job, r := readJob(file, data, options)
	if len(r.faults) > 0 {
		return nil, r.faults
	}
	return job, nil
}

// readJob returns what could be read beside the faults, so that the roster of
// a faulty job is read too.
func readJob(file string, data []byte, options []Option) (*Job, *reader) {
	r := &reader{}
	for _, set := range options {
		set(&r.known)
	}
	job := &Job{}
	root := r.load(file, data)
	if root != nil {
		d := &draft{reader: r, job: job, o: &job.Order}
		d.read(value{r: r, node: root})
	}
	r.faults.Sort()
	slices.SortStableFunc(r.notes, func(a, b Note) int { return a.At.Compare(b.At) })
	job.Order.Notes = slices.Concat(r.notes, job.Order.Notes)
	return job, r
}

// draft is a job while it is read.
type draft struct {
	*reader
	job      *Job
	o        *Order
	pieces   map[Place]*piece
	players  []entry
	badSport bool // a sport was named, but not understood
}

func (d *draft) read(top value) {
	o := d.o
	o.Sport, o.Units, o.Method, o.Fit = defaultSport, defaultUnits, DefaultMethod, newFit()
	o.Garment = GarmentChoice{Group: defaultGroup}
	found, ok := top.fields("team: Herons", d.top())
	if !ok {
		return
	}
	for _, need := range []struct{ key, why string }{
		{"yokeline", "write yokeline: 1 first, the version of the file's format"},
		{"team", "write team: and the team's name"},
		{"garment", "write garment: {cut: crew-tee, colour: navy}"},
		{"pieces", "write pieces: and what goes on the garment, such as back name"},
	} {
		if _, ok := found[need.key]; !ok {
			d.whole(need.why, "%s: is missing", need.key)
		}
	}
	d.settleRoster(found)
	d.settleSeason()
	d.settleCategory(found["category"])
	d.settlePieces()
	d.settleFit()
	d.settlePlayers()
}

// top is the table of the keys at the top of a job. Colours come first and
// players last, as the others decide how they are read.
func (d *draft) top() []field {
	o := d.o
	return append([]field{
		{key: "yokeline", read: d.version},
		{key: "colours", also: "colors", read: func(v value) { o.Colours = v.colours() }},
		{key: "team", read: line(&o.Team)},
		{key: "customer", read: line(&o.Customer)},
		{key: "order", read: line(&o.Number)},
		{key: "revision", read: line(&o.Revision)},
		{key: "shop", read: line(&o.Shop)},
		{key: "date", read: day(&o.ProofDate)},
		{key: "due", read: day(&o.Due)},
		{key: "sport", read: d.readSport},
		{key: "rules", read: d.rules},
		{key: "season", read: func(v value) { set(&o.Season)(v.season()) }},
		{key: "category", read: line(&o.Category)},
		{key: "units", read: d.units},
		{key: "garment", read: d.garment},
		{key: "method", read: d.method},
		{key: "platens", read: d.platens},
		{key: "pieces", read: d.readPieces},
		{key: "fit", read: d.fit},
		{key: "terms", read: d.terms},
		{key: "roster", read: d.roster},
		{key: "players", read: d.inline},
	}, d.sold()...)
}

// set returns a function that stores what was read if it was read well.
func set[T any](to *T) func(T, bool) {
	return func(got T, ok bool) {
		if ok {
			*to = got
		}
	}
}

func line(to *string) func(value) {
	return func(v value) { set(to)(v.text(lineLetters)) }
}

func day(to *string) func(value) {
	return func(v value) { set(to)(v.date()) }
}

func word(to *string, what string, known []string) func(value) {
	return func(v value) { set(to)(v.word(what, known)) }
}

func (d *draft) version(v value) {
	if s, ok := v.scalar(); ok && s != format {
		v.fault("write yokeline: "+format, "the file is written for format %s; this program reads format %s", s, format)
	}
}

const listRules = "the rules command lists the rule books"

func (d *draft) rules(v value) {
	s, ok := v.scalar()
	switch {
	case !ok:
	case len(d.known.rules) > 0:
		set(&d.o.Rules)(v.wordElse("rule book", d.known.rules, listRules))
	case strings.Trim(s, "abcdefghijklmnopqrstuvwxyz0123456789-") != "":
		v.fault(listRules, "%s: %q is not a rule book", v.name, s)
	default:
		d.o.Rules = s
	}
}

func (d *draft) units(v value) {
	s, ok := v.scalar()
	if !ok {
		return
	}
	switch s {
	case "in", "inch", "inches":
		d.o.Units = length.Inch
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		d.o.Units = length.Centimetre
	default:
		v.fault("use in or cm; single lengths may be written in mm all the same", "%s: %q is not a unit for the proof", v.name, s)
	}
}

func (d *draft) method(v value) {
	s, ok := v.scalar()
	if !ok {
		return
	}
	if m, known := LookupMethod(s); known {
		d.o.Method = m.ID
		return
	}
	v.fault(suggest(s, methodWords()), "%s: %q is not a decoration method", v.name, s)
}

// terms keep their line breaks; each line is cleaned by itself.
func (d *draft) terms(v value) {
	s, ok := v.scalar()
	if !ok {
		return
	}
	if n := len([]rune(s)); n > termLetters {
		v.fault("", "%s has %d characters: at most %d are read", v.name, n, termLetters)
		return
	}
	lines := strings.Split(strings.TrimSpace(s), "\n")
	for i := range lines {
		lines[i], _ = spelling.Clean(lines[i])
	}
	d.o.Terms = strings.Join(lines, "\n")
}
