package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/fonts"
	"yokeline/lettering/numeral"
	"yokeline/lettering/typeface"
)

// openFace opens a face by what a job or a flag calls it: the id of an
// embedded face, or the path of a font file of the shop's own.
func openFace(name string) (*typeface.Face, error) {
	if !isFontFile(name) {
		return typeface.Embedded(name)
	}
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, fmt.Errorf("face %s: %w", name, err)
	}
	return typeface.Open(name, data)
}

func isFontFile(name string) bool {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".ttf", ".otf":
		return true
	}
	return false
}

func facesCommand(s streams) *cobra.Command {
	c := &cobra.Command{
		Use:   "faces [FACE]",
		Short: "List the built-in faces, tell all about one, or draw them",
		Example: `  yokeline faces
  yokeline faces -o faces.pdf
  yokeline faces saira
  yokeline faces --format json`,
		Args: usageArgs(cobra.MaximumNArgs(1)),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return faceIDs(), cobra.ShellCompDirectiveNoFileComp
		},
	}
	output := formatFlag(c)
	picture := c.Flags().StringP("output", "o", "", "draw the faces into this .pdf, .svg or .png file")
	c.RunE = func(c *cobra.Command, args []string) error {
		if *picture != "" {
			return drawFaces(c, args, *picture)
		}
		if len(args) == 1 {
			return printFace(s, args[0], *output)
		}
		return printFaces(s, *output)
	}
	return c
}

func faceIDs() []string {
	var ids []string
	for _, entry := range fonts.Catalogue() {
		ids = append(ids, entry.ID)
	}
	return ids
}

// faceRow is a face as the list prints it. Heights are shares of the em.
type faceRow struct {
	ID        string   `json:"id"`
	Name      string   `json:"name"`
	Style     string   `json:"style"`
	Role      string   `json:"role"`
	Numbers   bool     `json:"numbers"`
	Script    bool     `json:"script"`
	CapHeight number   `json:"cap_height_em"`
	Axes      []string `json:"axes"`
	Licence   string   `json:"licence"`
	Reserved  string   `json:"reserved_name"`
	Version   string   `json:"version"`
	Source    string   `json:"source"`
	SHA256    string   `json:"sha256"`
	// Digits are the strokes of the digits as shares of the digit's height,
	// variable faces at their default.
	Digits []digitRow `json:"digits"`
}

// digitRow is the stroke of one digit, a share of its height.
type digitRow struct {
	Digit string `json:"digit"`
	Thin  number `json:"stroke_thin"`
	Main  number `json:"stroke_main"`
}

// digitRows measures the ten digits by the stroke gauge.
func digitRows(face *typeface.Face) ([]digitRow, error) {
	const height = 100.0 // mm; the shares do not depend on it
	sizer := numeral.NewSizer()
	var out []digitRow
	for d := '0'; d <= '9'; d++ {
		n, err := sizer.Number(numeral.Request{Text: string(d), Face: face, Wdth: math.NaN(), Wght: math.NaN(), Gap: math.NaN(), Height: height})
		if err != nil {
			return nil, err
		}
		out = append(out, digitRow{string(d), number(n.StrokeThin / height), number(n.StrokeMain / height)})
	}
	return out, nil
}

// thinnest returns the thinnest of the digits' strokes and main strokes.
func thinnest(digits []digitRow) (thin, main float64) {
	thin, main = math.Inf(1), math.Inf(1)
	for _, d := range digits {
		thin, main = math.Min(thin, float64(d.Thin)), math.Min(main, float64(d.Main))
	}
	return thin, main
}

func faceRowOf(entry fonts.Entry) (faceRow, error) {
	face, err := typeface.Embedded(entry.ID)
	if err != nil {
		return faceRow{}, err
	}
	row := faceRow{
		ID: entry.ID, Name: entry.Name, Style: entry.Style, Role: entry.Role, Numbers: entry.Numbers, Script: entry.Script,
		CapHeight: number(face.CapHeight() / face.UnitsPerEm()), Axes: []string{}, Licence: entry.Licence,
		Reserved: entry.ReservedName, Version: entry.Version, Source: entry.Source, SHA256: entry.SHA256,
	}
	for _, a := range face.Axes() {
		row.Axes = append(row.Axes, fmt.Sprintf("%s %g to %g, default %g", a.Tag, a.Min, a.Max, a.Default))
	}
	row.Digits, err = digitRows(face)
	return row, err
}

func printFaces(s streams, f format) error {
	var list []faceRow
	for _, entry := range fonts.Catalogue() {
		row, err := faceRowOf(entry)
		if err != nil {
			return err
		}
		list = append(list, row)
	}
	if f == formatJSON {
		return s.printJSON(list)
	}
	t := &table{}
	t.add("id", "style", "numbers", "thin", "main", "axes", "licence", "what it is for")
	for _, row := range list {
		numbers := "-"
		if row.Numbers {
			numbers = "yes"
		}
		thin, main := thinnest(row.Digits)
		t.add(row.ID, row.Style, numbers, fmt.Sprintf("%.3f", thin), fmt.Sprintf("%.3f", main), strings.Join(row.Axes, "; "), row.Licence, row.Role)
	}
	if err := t.print(s.out); err != nil {
		return err
	}
	_, err := fmt.Fprintln(s.out, "\nthin and main: the strokes of the lightest digit as shares of its height, measured; variable faces at their default")
	return err
}

func printFace(s streams, id string, f format) error {
	entry, ok := fonts.Lookup(id)
	if !ok {
		_, err := typeface.Embedded(id) // its error lists the ids that are near
		return usageError{err.Error()}
	}
	row, err := faceRowOf(entry)
	if err != nil {
		return err
	}
	if f == formatJSON {
		return s.printJSON(row)
	}
	t := &table{}
	for _, pair := range [][2]string{
		{"id", row.ID}, {"name", row.Name + " " + row.Style}, {"for", row.Role}, {"axes", strings.Join(row.Axes, "; ")},
		{"capital height", fmt.Sprintf("%.4f em, measured on the ink of H", float64(row.CapHeight))},
		{"licence", row.Licence}, {"reserved name", row.Reserved}, {"version", row.Version}, {"source", row.Source}, {"sha256", row.SHA256},
	} {
		if pair[1] != "" {
			t.add(pair[0], pair[1])
		}
	}
	for _, d := range row.Digits {
		t.add("stroke of "+d.Digit, fmt.Sprintf("thin %.3f, main %.3f of its height", float64(d.Thin), float64(d.Main)))
	}
	return t.print(s.out)
}
