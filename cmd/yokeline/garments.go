package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/proof/specimen"
)

// garmentsChoice holds the flags of garments.
type garmentsChoice struct {
	cut, size  string
	units, out string
	spec       string // the maker's spec sheet
	svg, png   bool
}

func garmentsCommand(s streams) *cobra.Command {
	var g garmentsChoice
	c := &cobra.Command{
		Use:   "garments [CUT]",
		Short: "List the cuts that are known, tell the measures of one with their sources, or draw them",
		Long: `garments prints finished measures, laid flat, and what each rests on. All are
generic: replace them with the maker's spec sheet before you cut.

With -o it draws: a cut in one size with its measures, panels and usual places,
or, without a cut, every cut in three sizes at one scale.`,
		Example: `  yokeline garments
  yokeline garments two-button
  yokeline garments two-button --size "youth M"
  yokeline garments two-button --size M --spec makers.csv
  yokeline garments two-button --size M -o drawings --png
  yokeline garments -o drawings`,
		Args: usageArgs(cobra.MaximumNArgs(1)),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			var cuts []string
			for _, info := range garment.Cuts() {
				cuts = append(cuts, string(info.Cut))
			}
			return cuts, cobra.ShellCompDirectiveNoFileComp
		},
	}
	output := formatFlag(c)
	f := c.Flags()
	f.StringVar(&g.size, "size", "", "one size, such as M, YM or \"women L\"")
	f.StringVar(&g.spec, "spec", "", "the maker's spec sheet (CSV) in place of the generic measures")
	f.StringVar(&g.units, "units", "both", "in, cm or both")
	f.StringVarP(&g.out, "output", "o", "", "draw as PDF into this folder; made when it is not there")
	f.BoolVar(&g.svg, "svg", false, "with -o, also write each page as SVG")
	f.BoolVar(&g.png, "png", false, "with -o, also write each page as PNG")
	_ = c.MarkFlagDirname("output")
	_ = c.RegisterFlagCompletionFunc("units", cobra.FixedCompletions([]string{"in", "cm", "both"}, cobra.ShellCompDirectiveNoFileComp))
	c.RunE = func(c *cobra.Command, args []string) error {
		if len(args) == 1 {
			g.cut = args[0]
		}
		if err := g.check(); err != nil {
			return err
		}
		switch {
		case g.out != "":
			return g.draw(c, s)
		case g.cut == "":
			return printCuts(s, *output)
		}
		return g.printMeasures(s, *output)
	}
	return c
}

func (g garmentsChoice) check() error {
	switch {
	case g.unitList() == nil:
		return usagef("--units: %q is not in, cm or both", g.units)
	case g.cut == "" && g.spec != "":
		return usagef("--spec needs a cut: yokeline garments CUT --spec %s", g.spec)
	case g.cut == "" && g.size != "":
		return usagef("--size needs a cut: yokeline garments CUT --size %s", g.size)
	case g.out == "" && (g.svg || g.png):
		return usagef("say where the drawing goes: -o DIR")
	case g.out != "" && g.cut != "" && g.size == "":
		return usagef("say which size to draw: --size M")
	}
	return nil
}

// unitList is the units that lengths are printed in; nil for unknown words.
func (g garmentsChoice) unitList() specimen.Units {
	switch g.units {
	case "in":
		return specimen.Units{length.Inch}
	case "cm":
		return specimen.Units{length.Centimetre}
	case "both":
		return specimen.Units{length.Inch, length.Centimetre}
	}
	return nil
}

// garments are the sizes that were asked for; all of the cut without --size.
func (g garmentsChoice) garments() ([]*garment.Garment, error) {
	cut, err := garment.ParseCut(g.cut)
	if err != nil {
		return nil, usageError{err.Error()}
	}
	wanted, from := garment.AllSizes(), garment.New
	if g.spec != "" {
		sheet, err := g.sheet(cut)
		if err != nil {
			return nil, err
		}
		wanted, from = sheet.Sizes(cut), sheet.Garment
	}
	if g.size != "" {
		size, err := garment.ParseSize(g.size, garment.Adult)
		if err != nil {
			return nil, usageError{err.Error()}
		}
		wanted = []garment.Size{size}
	}
	var out []*garment.Garment
	for _, size := range wanted {
		one, err := from(cut, size)
		if err != nil {
			return nil, err
		}
		out = append(out, one)
	}
	return out, nil
}

// cutRow is a cut as the list prints it.
type cutRow struct {
	Cut    string   `json:"cut"`
	Title  string   `json:"title"`
	About  string   `json:"about"`
	Places []string `json:"places"`
}

func printCuts(s streams, f format) error {
	var list []cutRow
	for _, info := range garment.Cuts() {
		row := cutRow{Cut: string(info.Cut), Title: info.Title, About: info.About}
		for _, place := range garment.Places(info.Cut) {
			row.Places = append(row.Places, string(place))
		}
		list = append(list, row)
	}
	if f == formatJSON {
		return s.printJSON(list)
	}
	t := &table{}
	t.add("cut", "what it is", "places")
	for _, row := range list {
		t.add(row.Cut, row.About, strings.Join(row.Places, ", "))
	}
	return t.print(s.out)
}

// measureRow is one measure of one size.
type measureRow struct {
	Size    string `json:"size"`
	Measure string `json:"measure"`
	MM      number `json:"mm"`
	Formula string `json:"formula"`
	Basis   string `json:"basis"`
}

func (g garmentsChoice) printMeasures(s streams, f format) error {
	if g.spec != "" {
		return g.printSpec(s, f)
	}
	list, err := g.garments()
	if err != nil {
		return err
	}
	if f == formatJSON {
		var rows []measureRow
		for _, one := range list {
			for _, m := range one.Figures() {
				rows = append(rows, measureRow{one.Size().String(), m.Measure, number(m.MM), m.Formula, m.Basis})
			}
		}
		return s.printJSON(struct {
			Cut      string       `json:"cut"`
			Note     string       `json:"note"`
			Measures []measureRow `json:"measures"`
		}{string(list[0].Cut()), garment.Generic, rows})
	}
	if len(list) == 1 {
		err = g.printOne(s, list[0])
	} else {
		err = g.printRun(s, list)
	}
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "\n%s\n", garment.Generic)
	return err
}

// printOne prints the measures of one size, a row each.
func (g garmentsChoice) printOne(s streams, one *garment.Garment) error {
	t, units := &table{}, g.unitList()
	head := []string{one.Size().String(), "mm"}
	for _, u := range units {
		head = append(head, u.String())
	}
	t.add(append(head, "how, in mm", "basis")...)
	for _, m := range one.Figures() {
		row := []string{m.Measure, fmt.Sprintf("%.1f", m.MM)}
		for _, u := range units {
			row = append(row, length.Plain(m.MM, u, length.Nearest))
		}
		t.add(append(row, m.Formula, m.Basis)...)
	}
	return t.print(s.out)
}

// printRun prints a table a group, a column a size.
func (g garmentsChoice) printRun(s streams, list []*garment.Garment) error {
	for i := 0; i < len(list); {
		group := list[i].Size().Group
		n := i
		for n < len(list) && list[n].Size().Group == group {
			n++
		}
		if i > 0 {
			if _, err := fmt.Fprintln(s.out); err != nil {
				return err
			}
		}
		if err := g.groupTable(group, list[i:n]).print(s.out); err != nil {
			return err
		}
		i = n
	}
	return nil
}

func (g garmentsChoice) groupTable(group garment.Group, sizes []*garment.Garment) *table {
	t, unit := &table{}, "mm"
	if units := g.unitList(); len(units) == 1 {
		unit = units[0].String()
	}
	head := []string{string(group) + ", " + unit}
	for _, one := range sizes {
		head = append(head, one.Size().Letter)
	}
	t.add(append(head, "how, in mm: k sizes from M, C girth, H stature", "basis")...)
	for row, m := range sizes[0].Figures() {
		cells := []string{m.Measure}
		for _, one := range sizes {
			mm := one.Figures()[row].MM
			if units := g.unitList(); len(units) == 1 {
				cells = append(cells, length.Plain(mm, units[0], length.Nearest))
			} else {
				cells = append(cells, fmt.Sprintf("%.1f", mm))
			}
		}
		t.add(append(cells, m.Formula, m.Basis)...)
	}
	return t
}
