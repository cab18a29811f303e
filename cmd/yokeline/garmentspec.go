package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/specsheet"
)

// sheet reads the maker's spec sheet.
func (g garmentsChoice) sheet(cut garment.Cut) (*specsheet.Sheet, error) {
	data, err := os.ReadFile(g.spec)
	if err != nil {
		return nil, usagef("--spec: %s cannot be read; give the maker's sheet saved as CSV", g.spec)
	}
	sheet, faults := specsheet.Read(filepath.Base(g.spec), data, specsheet.Defaults{Cut: cut})
	if len(faults) > 0 {
		return nil, faults
	}
	if len(sheet.Sizes(cut)) == 0 {
		return nil, usagef("--spec: %s has no measures of a %s", g.spec, cut)
	}
	return sheet, nil
}

// printSpec prints the sheet's measures, filled from the generic table.
func (g garmentsChoice) printSpec(s streams, f format) error {
	cut, err := garment.ParseCut(g.cut)
	if err != nil {
		return usageError{err.Error()}
	}
	sheet, err := g.sheet(cut)
	if err != nil {
		return err
	}
	list, err := g.garments()
	if err != nil {
		return err
	}
	if f == formatJSON {
		return printSpecJSON(s, sheet, list)
	}
	if len(list) == 1 {
		err = g.printOne(s, list[0])
	} else {
		err = g.printSpecSizes(s, sheet, list)
	}
	if err != nil {
		return err
	}
	fmt.Fprintf(s.out, "\nMeasures of %s\n", sheet.File())
	for _, n := range sheet.Notes(cut) {
		if n.At.Line > 0 { // what was filled stands in the table
			fmt.Fprintf(s.out, "%s: %s; %s\n", n.At, n.Message, n.Remedy)
		}
	}
	for _, one := range list {
		if !sheet.Has(cut, one.Size()) {
			fmt.Fprintf(s.out, "%s: no measures of %s: all are generic\n", sheet.File(), one.Size())
		}
	}
	return nil
}

func printSpecJSON(s streams, sheet *specsheet.Sheet, list []*garment.Garment) error {
	var rows []measureRow
	for _, one := range list {
		for _, m := range one.Figures() {
			rows = append(rows, measureRow{one.Size().String(), m.Measure, number(m.MM), m.Formula, m.Basis})
		}
	}
	notes := []string{}
	for _, n := range sheet.Notes(list[0].Cut()) {
		notes = append(notes, fmt.Sprintf("%s: %s", n.At, n.Message))
	}
	return s.printJSON(struct {
		Cut      string       `json:"cut"`
		Spec     string       `json:"spec"`
		Notes    []string     `json:"notes"`
		Measures []measureRow `json:"measures"`
	}{string(list[0].Cut()), sheet.File(), notes, rows})
}

// printSpecSizes prints a table with a column a size; a star marks what the sheet
// does not give.
func (g garmentsChoice) printSpecSizes(s streams, sheet *specsheet.Sheet, list []*garment.Garment) error {
	unit, units := length.Millimetre, g.unitList()
	if len(units) == 1 {
		unit = units[0]
	}
	t := &table{}
	head := []string{unit.String()}
	for _, one := range list {
		head = append(head, one.Size().String())
	}
	t.add(head...)
	starred := false
	for row, m := range list[0].Figures() {
		cells := []string{m.Measure}
		for _, one := range list {
			f := one.Figures()[row]
			text := fmt.Sprintf("%.1f", f.MM)
			if unit != length.Millimetre {
				text = length.Plain(f.MM, unit, length.Nearest)
			}
			if slices.Contains(sheet.Filled(one.Cut(), one.Size()), f.Measure) {
				text, starred = text+" *", true
			}
			cells = append(cells, text)
		}
		t.add(cells...)
	}
	if err := t.print(s.out); err != nil {
		return err
	}
	if starred {
		fmt.Fprintf(s.out, "\n%s\n", strings.TrimSpace("* not in "+sheet.File()+": generic, ask the maker"))
	}
	return nil
}
