package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/garment"
)

func garmentsCommand(s streams) *cobra.Command {
	var size string
	c := &cobra.Command{
		Use:   "garments [CUT]",
		Short: "List the cuts that are known, or the measures of one with their sources",
		Long: `garments prints finished measures, laid flat, in millimetres, and what each rests
on. All are generic: replace them with the maker's spec sheet before you cut.`,
		Example: `  yokeline garments
  yokeline garments two-button
  yokeline garments two-button --size "youth M"`,
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
	c.Flags().StringVar(&size, "size", "", "one size, such as M, YM or \"women L\"")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if len(args) == 0 {
			return printCuts(s, *output)
		}
		return printMeasures(s, args[0], size, *output)
	}
	return c
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

func printMeasures(s streams, cutName, sizeName string, f format) error {
	cut, err := garment.ParseCut(cutName)
	if err != nil {
		return usageError{err.Error()}
	}
	wanted := garment.AllSizes()
	if sizeName != "" {
		size, err := garment.ParseSize(sizeName, garment.Adult)
		if err != nil {
			return usageError{err.Error()}
		}
		wanted = []garment.Size{size}
	}
	var rows []measureRow
	for _, size := range wanted {
		g, err := garment.New(cut, size)
		if err != nil {
			return err
		}
		for _, m := range g.Figures() {
			rows = append(rows, measureRow{size.String(), m.Measure, number(m.MM), m.Formula, m.Basis})
		}
	}
	if f == formatJSON {
		return s.printJSON(struct {
			Cut      string       `json:"cut"`
			Note     string       `json:"note"`
			Measures []measureRow `json:"measures"`
		}{string(cut), garment.Generic, rows})
	}
	t := &table{}
	t.add("size", "measure", "mm", "how", "basis")
	for _, r := range rows {
		t.add(r.Size, r.Measure, fmt.Sprintf("%.1f", float64(r.MM)), r.Formula, r.Basis)
	}
	if err := t.print(s.out); err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "\n%s\n", garment.Generic)
	return err
}
