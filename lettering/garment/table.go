package garment

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// Generic is said with every figure of the embedded table.
const Generic = "generic: replace with the maker's spec sheet"

//go:embed data/measures.csv
var measuresCSV string

// standard reads the embedded table once. It is never changed afterwards, so
// every caller may share it.
var standard = sync.OnceValues(func() (*table, error) { return readTable(measuresCSV) })

// Figure is one measure with what it rests on.
type Figure struct {
	Measure string  // body length
	MM      float64 // millimetres
	Formula string  // how it was worked out: 735 + 25 k, k = steps from M
	Basis   string  // source or mark
}

type tableKey struct {
	cut  Cut
	size Size
}

// table holds the measures of every cut and size.
type table struct {
	measures map[tableKey]*Measures
	figures  map[tableKey][]Figure // in the order of the file
}

// columns before and after the sizes.
const (
	headColumns = 3 // group, cut, measure
	tailColumns = 2 // formula, basis
)

// readTable reads measures in the form of data/measures.csv and holds them
// against the rules of check and validate.
func readTable(text string) (*table, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("garment table cannot be read: %w", err)
	}
	if len(rows) == 0 || len(rows[0]) != headColumns+len(letters())+tailColumns {
		return nil, fmt.Errorf("garment table has no head of group, cut, measure, sizes, formula and basis")
	}
	t := &table{map[tableKey]*Measures{}, map[tableKey][]Figure{}}
	for i, row := range rows[1:] {
		if err := t.add(row); err != nil {
			return nil, fmt.Errorf("garment table, row %d: %w", i+1, err)
		}
	}
	return t, t.validate()
}

// add stores one row: a measure of a cut in all sizes of a group.
func (t *table) add(row []string) error {
	group, cut, name := Group(row[0]), Cut(row[1]), row[2]
	made := Sizes(group)
	if _, ok := cut.Info(); !ok || made == nil {
		return fmt.Errorf("%s %s is neither a group nor a cut", group, cut)
	}
	for i, letter := range letters() {
		cell := row[headColumns+i]
		if !slices.Contains(made, letter) {
			if cell != "" {
				return fmt.Errorf("%s has no size %s", group, letter)
			}
			continue
		}
		key := tableKey{cut, Size{group, letter}}
		if t.measures[key] == nil {
			t.measures[key] = &Measures{}
		}
		field := t.measures[key].field(name)
		v, err := strconv.ParseFloat(cell, 64)
		if field == nil || err != nil || math.IsNaN(v) {
			return fmt.Errorf("%s %s %s: %q is not a measure", group, cut, name, cell)
		}
		*field = v
		t.figures[key] = append(t.figures[key], Figure{name, v, row[len(row)-2], row[len(row)-1]})
	}
	return nil
}

// validate holds the whole table against the rules it was made to: every cut in
// every size obeys check, measures never fall as sizes rise, the chest of the
// adult crew tee is the EN 13402-3 band middle and 80 mm of ease, and one letter
// means different garments in different groups.
func (t *table) validate() error {
	for _, c := range Cuts() {
		for _, g := range Groups() {
			var before *Measures
			for _, letter := range Sizes(g) {
				m := t.measures[tableKey{c.Cut, Size{g, letter}}]
				if m == nil {
					return fmt.Errorf("garment table lacks %s %s %s", c.Cut, g, letter)
				}
				if err := m.check(c.Cut); err != nil {
					return fmt.Errorf("garment table, %s %s %s: %w", c.Cut, g, letter, err)
				}
				if err := growing(before, m, c.Cut); err != nil {
					return fmt.Errorf("garment table, %s %s %s: %w", c.Cut, g, letter, err)
				}
				before = m
			}
		}
	}
	return t.validateChest()
}

func growing(before, now *Measures, c Cut) error {
	if before == nil {
		return nil
	}
	for _, name := range required(c) {
		if a, b := *before.field(name), *now.field(name); b < a {
			return fmt.Errorf("%s falls from %g to %g", name, a, b)
		}
	}
	return nil
}

func (t *table) validateChest() error {
	for i, want := range []float64{450, 490, 530, 570, 610, 657.5, 715, 777.5} {
		if got := t.measures[tableKey{CrewTee, Size{Adult, letters()[i]}}].ChestHalf; got != want {
			return fmt.Errorf("garment table, crew-tee adult %s: chest half is %g and not %g", letters()[i], got, want)
		}
	}
	for _, c := range Cuts() {
		if c.Cut == Shorts {
			continue
		}
		chest := func(g Group) float64 { return t.measures[tableKey{c.Cut, Size{g, "M"}}].ChestHalf }
		if chest(Youth) >= chest(Women) || chest(Women) >= chest(Adult) {
			return fmt.Errorf("garment table, %s M: youth, women and adult chests do not rise", c.Cut)
		}
	}
	return nil
}

// Standard returns the generic measures of a cut in a size and what each rests
// on. Errors name an unknown cut or size.
func Standard(cut Cut, size Size) (Measures, []Figure, error) {
	if _, ok := cut.Info(); !ok {
		_, err := ParseCut(string(cut))
		return Measures{}, nil, err
	}
	if err := size.check(); err != nil {
		return Measures{}, nil, err
	}
	t, err := standard()
	if err != nil {
		return Measures{}, nil, err
	}
	key := tableKey{cut, size}
	return *t.measures[key], slices.Clone(t.figures[key]), nil
}
