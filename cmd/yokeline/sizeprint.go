package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/proof/art"
	"yokeline/proof/outfile"
	"yokeline/proof/records"
)

// nameRow is a name as size prints it.
type nameRow struct {
	Player       string   `json:"player"`
	Text         string   `json:"text"`
	Place        string   `json:"place"`
	Face         string   `json:"face"`
	Shape        string   `json:"shape"`
	Radius       number   `json:"radius_mm"`
	LetterHeight number   `json:"letter_height_mm"`
	WidthScale   number   `json:"width_scale"`
	Wdth         number   `json:"wdth"`
	Wght         number   `json:"wght"`
	Tracking     number   `json:"tracking_mm"`
	InkWidth     number   `json:"ink_width_mm"`
	InkHeight    number   `json:"ink_height_mm"`
	BareInkWidth number   `json:"bare_ink_width_mm"`
	Limit        number   `json:"limit_mm"`
	Verdict      string   `json:"verdict"`
	OverBy       number   `json:"over_by_mm"`
	SmallestGap  number   `json:"smallest_gap_mm"`
	WouldFit     []wayRow `json:"would_fit"`
	placingRow

	size string
}

// wayRow is a way out as size prints it.
type wayRow struct {
	Kind         string `json:"kind"`
	LetterHeight number `json:"letter_height_mm"`
	Limit        number `json:"limit_mm"`
	Face         string `json:"face"`
	Text         string `json:"text"`
	WidthFloor   number `json:"width_floor"`
	Radius       number `json:"radius_mm"`
	Rise         number `json:"rise_mm"`
	Size         string `json:"size"`
}

func nameJSON(player, place, size string, n fit.Name) nameRow {
	row := nameRow{
		Player: player, Text: n.Text, Place: place, Face: n.FaceID, Shape: n.Form(), Radius: orNull(n.Radius),
		LetterHeight: number(n.LetterHeight), WidthScale: number(n.WidthScale), Wdth: number(n.Wdth), Wght: number(n.Wght),
		Tracking: number(n.Tracking), InkWidth: number(n.InkWidth), InkHeight: number(n.InkHeight),
		BareInkWidth: number(n.BareInkWidth), Limit: orNull(n.Limit), Verdict: n.Verdict.String(), OverBy: number(n.OverBy),
		SmallestGap: number(n.SmallestGap), WouldFit: []wayRow{}, size: size,
	}
	for _, w := range n.WouldFit {
		row.WouldFit = append(row.WouldFit, wayRow{
			Kind: w.Kind, LetterHeight: orNull(w.Height), Limit: orNull(w.Limit), Face: w.FaceID, Text: w.Text,
			WidthFloor: orNull(w.WidthFloor), Radius: orNull(w.Radius), Rise: orNull(w.Rise), Size: w.Size,
		})
	}
	return row
}

// printSizes prints names and numbers as a table in the unit given, or as JSON
// in millimetres.
func printSizes(s streams, f format, unit length.Unit, names []nameRow, numbers []numberRow) error {
	if f == formatJSON {
		return s.printJSON(sizedJSON{"", append([]nameRow{}, names...), append([]numberRow{}, numbers...)})
	}
	if len(names) > 0 {
		if err := nameTable(unit, names).print(s.out); err != nil {
			return err
		}
	}
	if len(names) > 0 && len(numbers) > 0 {
		fmt.Fprintln(s.out)
	}
	if len(numbers) > 0 {
		return numberTable(unit, numbers).print(s.out)
	}
	return nil
}

func nameTable(unit length.Unit, names []nameRow) *table {
	show := func(n number, r length.Rounding) string { return printed(n, unit, r) }
	t := &table{}
	t.add("player", "size", "place", "text", "verdict", "letters", "width", "room", "set", "what would fit")
	for _, n := range names {
		verdict, wide, room := n.Verdict, length.Nearest, length.Nearest
		if n.OverBy > 0 && n.NoRoom == "" { // rounding must not hide that it does not fit
			verdict += " by " + show(n.OverBy, length.Up)
			wide, room = length.Up, length.Down
		}
		t.add(n.Player, n.size, n.Place, inARow(n.Text), n.verdict(verdict), show(n.LetterHeight, lettersRounded(n.Verdict)), show(n.InkWidth, wide),
			show(n.Limit, room), howSet(n), n.would(wouldFit(n, unit), unit))
	}
	return t
}

// inARow shows a text of two lines in a table.
func inARow(text string) string { return strings.ReplaceAll(text, "\n", " / ") }

// howSet tells in words what was done to a name.
func howSet(n nameRow) string {
	out := n.Shape
	if w := float64(n.WidthScale); w < 1 {
		out += fmt.Sprintf(", %.1f %% wide", w*100)
	}
	if w := float64(n.Wdth); !math.IsNaN(w) {
		out += fmt.Sprintf(", wdth %.1f", w)
	}
	if h := float64(n.LetterHeight); float64(n.Tracking) != 0 && h > 0 {
		out += fmt.Sprintf(", tracking %.1f %%", float64(n.Tracking)/h*100)
	}
	return out
}

func wouldFit(n nameRow, unit length.Unit) string {
	out := ""
	for _, w := range n.WouldFit {
		if out != "" {
			out += "; "
		}
		out += w.Kind
		switch w.Kind {
		case fit.LowerLetters:
			out += " " + printed(w.LetterHeight, unit, length.Down)
		case fit.MoreRoom:
			out += " " + printed(w.Limit, unit, length.Up)
		case fit.NarrowerLetters:
			out += fmt.Sprintf(" %.1f %% wide at %s", float64(w.WidthFloor)*100, printed(w.LetterHeight, unit, length.Down))
		case fit.FlatterArch, fit.RounderArch:
			out += " " + arch(w, unit)
		case fit.NarrowerFace:
			out += " " + w.Face + " at " + printed(w.LetterHeight, unit, length.Down)
		case fit.NextSize:
			out += " " + w.Size + " at " + printed(w.LetterHeight, unit, length.Down)
		default:
			out += fmt.Sprintf(" %s at %s", inARow(w.Text), printed(w.LetterHeight, unit, length.Down))
		}
	}
	return out
}

// arch tells the rise or the radius to give, rounded to the side that fits.
func arch(w wayRow, unit length.Unit) string {
	towards := length.Down // a flatter arch rises less and has a larger radius
	if w.Kind == fit.RounderArch {
		towards = length.Up
	}
	if !math.IsNaN(float64(w.Rise)) {
		return "rise " + printed(w.Rise, unit, towards)
	}
	if towards == length.Down {
		return "radius " + printed(w.Radius, unit, length.Up)
	}
	return "radius " + printed(w.Radius, unit, length.Down)
}

func printed(n number, unit length.Unit, r length.Rounding) string {
	if math.IsNaN(float64(n)) {
		return "-"
	}
	return length.Plain(float64(n), unit, r)
}

// sizeJob sizes every piece of a job and prints it in roster order.
func sizeJob(c *cobra.Command, s streams, choice jobChoice, output format) error {
	sized, err := sizedForProof(c.Context(), s, choice)
	if err != nil {
		return err
	}
	names, numbers, over := rows(sized)
	if output == formatJSON {
		err = s.printJSON(sizedJSON{sized.Fingerprint(), append([]nameRow{}, names...), append([]numberRow{}, numbers...)})
	} else {
		err = printSizes(s, output, sized.Order.Units, names, numbers)
		printLooks(s, sized)
	}
	if err != nil {
		return err
	}
	return overIsAFinding(over)
}

// sizedJSON is a sized order. The fingerprint is that of its proof; names and
// numbers given by flags have none.
type sizedJSON struct {
	Fingerprint string      `json:"fingerprint,omitempty"`
	Names       []nameRow   `json:"names"`
	Numbers     []numberRow `json:"numbers"`
}

// sizedForProof sizes a job as its proof shows it: onto what was signed where
// something was.
func sizedForProof(ctx context.Context, s streams, choice jobChoice) (*sizes.Sized, error) {
	j, err := readJob(choice)
	if err != nil {
		return nil, err
	}
	sh, err := openShelf(choice)
	if err != nil {
		return nil, err
	}
	if _, signed := records.LastSigned(sh.all); !signed {
		return j.size(ctx, s, withWaysOut)
	}
	i, err := prepare(ctx, s, choice)
	if err != nil {
		return nil, err
	}
	return i.sized, nil
}

// lettersRounded is how a letter height is rounded: down where it was lowered,
// as check and the proof say it, for it must not promise more than it is.
func lettersRounded(verdict string) length.Rounding {
	if verdict == fit.Reduced.String() {
		return length.Down
	}
	return length.Nearest
}

// printLooks tells the heights that names share, and whose name sets them.
func printLooks(s streams, sized *sizes.Sized) {
	show := func(mm float64) string { return length.Plain(mm, sized.Order.Units, length.Nearest) }
	low := func(mm, asked float64) string {
		if mm >= asked {
			return show(mm)
		}
		return length.Plain(mm, sized.Order.Units, length.Down)
	}
	for _, look := range sized.Looks {
		who := "the team"
		if look.Size != (garment.Size{}) {
			who = look.Size.String()
		}
		if look.Player < 0 {
			fmt.Fprintf(s.out, "\none look for %s: every name that fits is %s high, as asked\n", who, show(look.Height))
			continue
		}
		if look.Names < 2 { // its row says how it comes out
			continue
		}
		setter := sized.Players[look.Player]
		fmt.Fprintf(s.out, "\none look for %s: every name that fits is %s high, of %s asked; %s sets it, without that name %s\n",
			who, low(look.Height, look.Asked), show(look.Asked), setter.Label(), low(look.Without, look.Asked))
	}
}

func rows(sized *sizes.Sized) (names []nameRow, numbers []numberRow, over bool) {
	for _, p := range sized.Players {
		for _, piece := range p.Pieces {
			place, size := string(piece.Asked.Place), p.Size.String()
			if piece.Number != nil {
				numbers = append(numbers, numberJSON(p.Label(), place, size, *piece.Number, piece.Conflict, sized.Order.Units))
				numbers[len(numbers)-1].place(piece, sized.Order.Units)
				over = over || piece.Number.Verdict == numeral.Over
				continue
			}
			names = append(names, nameJSON(p.Label(), place, size, *piece.Name))
			names[len(names)-1].place(piece, sized.Order.Units)
			over = over || piece.Name.Verdict == fit.Over
		}
	}
	return names, numbers, over
}

// drawArt writes the piece at 1:1 when --art asks for it.
func (l loose) drawArt(c *cobra.Command, text string, ink geom.Path, outlines []outline.Layer) error {
	if l.art == "" {
		return nil
	}
	layers, box, err := artLayers(ink, outlines)
	if err != nil {
		return err
	}
	return outfile.Write(c.Context(), l.art, func(w io.Writer) error { return art.Write(w, text, box, layers) })
}

// artLayers returns a piece's outlines and letters, undermost first, in greys.
func artLayers(ink geom.Path, outlines []outline.Layer) ([]art.Layer, geom.Rect, error) {
	settled, err := outline.Union(outline.Flatten(ink, outlines))
	if err != nil {
		return nil, geom.Rect{}, err
	}
	regions, err := outline.Layers(settled, outlines)
	if err != nil {
		return nil, geom.Rect{}, err
	}
	greys := [...]string{"#8a8a8a", "#c4c4c4"}
	var layers []art.Layer
	for i := len(regions) - 1; i >= 0; i-- {
		layers = append(layers, art.Layer{ID: fmt.Sprintf("outline-%d", i+1), Path: regions[i].Path(), Colour: greys[i%len(greys)]})
	}
	layers = append(layers, art.Layer{ID: "letters", Path: ink, Colour: "#000000"})
	return layers, outline.ExtentOf(ink.Bounds(), settled, outlines), nil
}
