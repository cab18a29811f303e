package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/legibility"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/sizes"
)

// numberRow is a number as size prints it.
type numberRow struct {
	Player         string `json:"player"`
	Text           string `json:"text"`
	Place          string `json:"place"`
	Face           string `json:"face"`
	NumberHeight   number `json:"number_height_mm"`
	TallestDigit   number `json:"tallest_digit_mm"`
	InkWidth       number `json:"ink_width_mm"`
	InkHeight      number `json:"ink_height_mm"`
	BareInkWidth   number `json:"bare_ink_width_mm"`
	Gap            number `json:"gap_mm"`
	GapRaised      bool   `json:"gap_raised"`
	StrokeThin     number `json:"stroke_thin_mm"`
	StrokeMain     number `json:"stroke_main_mm"`
	Limit          number `json:"limit_mm"`
	Verdict        string `json:"verdict"`
	WouldFitHeight number `json:"would_fit_height_mm"`
	// What would mend it, each sized anew.
	WouldFit []numberWayRow `json:"would_fit"`
	// How far away a 20/20 and a 20/40 eye reads it, in metres: information.
	Read20 number `json:"read_20_20_m"`
	Read40 number `json:"read_20_40_m"`
	placingRow

	size string
}

// numberWayRow is a way out of a number as size prints it: the number as it
// then comes out.
type numberWayRow struct {
	Kind         string   `json:"kind"`
	NumberHeight number   `json:"number_height_mm"`
	InkWidth     number   `json:"ink_width_mm"`
	Limit        number   `json:"limit_mm"`
	Face         string   `json:"face"`
	Wdth         number   `json:"wdth"`
	Wght         number   `json:"wght"`
	Gap          number   `json:"gap_mm"`
	Stroke       number   `json:"stroke_mm"` // to ask for; null for none
	StrokeThin   number   `json:"stroke_thin_mm"`
	Outlines     []number `json:"outlines_mm"`
	Size         string   `json:"size"`

	words string
}

func numberJSON(player, place, size string, n numeral.Number, c *numeral.Conflict, unit length.Unit) numberRow {
	far := legibility.Reading{Metres20: math.NaN(), Metres40: math.NaN()}
	if r, err := legibility.Read(n.Height, n.StrokeThin, "number", length.Centimetre); err == nil {
		far = r
	}
	row := numberRow{
		Player: player, Text: n.Text, Place: place, Face: n.FaceID, NumberHeight: number(n.Height),
		TallestDigit: number(n.TallestDigit), InkWidth: number(n.InkWidth), InkHeight: number(n.InkHeight),
		BareInkWidth: number(n.BareInkWidth), Gap: number(n.Gap), GapRaised: n.GapRaised,
		StrokeThin: number(n.StrokeThin), StrokeMain: number(n.StrokeMain), Limit: orNull(n.Limit),
		Verdict: n.Verdict, WouldFitHeight: orNull(n.WouldFitHeight), size: size,
		Read20: number(far.Metres20), Read40: number(far.Metres40), WouldFit: []numberWayRow{},
	}
	if c != nil {
		for _, w := range c.WaysOut {
			row.WouldFit = append(row.WouldFit, numberWayJSON(w, unit))
		}
	}
	return row
}

func numberWayJSON(w numeral.WayOut, unit length.Unit) numberWayRow {
	r, n := w.Request, w.Number
	row := numberWayRow{
		Kind: w.Kind, NumberHeight: number(n.Height), InkWidth: number(n.InkWidth), Limit: orNull(r.Limit), Face: n.FaceID,
		Wdth: number(r.Wdth), Wght: number(n.Wght), Gap: number(n.Gap), Stroke: orNull(r.Stroke + r.EmboldenTo),
		StrokeThin: number(n.StrokeThin), Outlines: []number{}, Size: w.Size, words: sizes.NumberWay(w, unit),
	}
	for _, l := range r.Outlines {
		row.Outlines = append(row.Outlines, number(l.Width))
	}
	return row
}

func numberTable(unit length.Unit, numbers []numberRow) *table {
	show := func(n number, r length.Rounding) string { return printed(n, unit, r) }
	t := &table{}
	t.add("player", "size", "place", "number", "verdict", "height", "width", "room", "gap", "stroke", "thinnest", "read from, 20/20 and 20/40", "what would fit")
	for _, n := range numbers {
		verdict, wide, room := n.Verdict, length.Nearest, length.Nearest
		if n.Verdict == numeral.Over {
			wide, room = length.Up, length.Down
			verdict += " by " + show(n.InkWidth-n.Limit, length.Up)
		}
		t.add(n.Player, n.size, n.Place, n.Text, n.verdict(verdict), show(n.NumberHeight, length.Nearest), show(n.InkWidth, wide),
			show(n.Limit, room), show(n.Gap, length.Nearest), show(n.StrokeMain, length.Down), show(n.StrokeThin, length.Down), readFrom(n, unit), n.would(numberWays(n), unit))
	}
	return t
}

// numberWays lists what would mend a number.
func numberWays(n numberRow) string {
	var out []string
	for _, w := range n.WouldFit {
		out = append(out, w.words)
	}
	if len(out) == 0 && n.Verdict == numeral.Over && n.NoRoom == "" {
		return "none of ours: measure the garment"
	}
	return strings.Join(out, "; ")
}

// readFrom prints the reading distances in whole feet or metres, as goes with the
// job's unit, rounded down.
func readFrom(n numberRow, unit length.Unit) string {
	if math.IsNaN(float64(n.Read20)) {
		return "-"
	}
	per, sign := 1.0, "m"
	if unit == length.Inch {
		per, sign = 0.3048, "ft" // the international foot, exact
	}
	return fmt.Sprintf("%.0f %s, %.0f %s", math.Floor(float64(n.Read20)/per), sign, math.Floor(float64(n.Read40)/per), sign)
}

// numberRequest gathers the flags of one number. Every wrong flag is a usage
// error.
func (l loose) numberRequest() (request numeral.Request, err error) {
	request = numeral.Request{Text: l.number, Wdth: l.wdth, Wght: l.wght, Gap: math.NaN()}
	if request.Height, err = required("height", l.height); err != nil {
		return request, err
	}
	if request.Limit, err = lengthFlag("limit", l.limit); err != nil {
		return request, err
	}
	if l.gap != "" {
		if request.Gap, err = lengthFlag("gap", l.gap); err != nil {
			return request, err
		}
	}
	if request.SmallestGap, err = smallestGap(l.method); err != nil {
		return request, err
	}
	if request.Outlines, err = l.layers(); err != nil {
		return request, err
	}
	if request.Ones, err = l.onesRoom(); err != nil {
		return request, err
	}
	if request.Face, err = l.openFace(); err != nil {
		return request, err
	}
	return request, l.looks.number(&request)
}

func (l loose) onesRoom() (numeral.Ones, error) {
	for _, o := range []numeral.Ones{numeral.OwnWidth, numeral.FullWidth} {
		if l.ones == o.String() {
			return o, nil
		}
	}
	return 0, usagef("--ones: %q is not %q or %q", l.ones, numeral.OwnWidth, numeral.FullWidth)
}

func sizeNumber(c *cobra.Command, s streams, l loose, output format) error {
	request, err := l.numberRequest()
	if err != nil {
		return err
	}
	sizer := numeral.NewSizer()
	n, err := sizer.Number(request)
	if err != nil {
		return err
	}
	others, err := sizes.NumberFaces()
	if err != nil {
		return err
	}
	conflict, err := sizer.Conflict(numeral.Quest{Request: request, Keep: sizes.Makeable(l.method, request.Outlines), Faces: others})
	if err != nil {
		return err
	}
	if err := l.drawArt(c, n.Text, n.Ink(), request.Outlines); err != nil {
		return err
	}
	if err := printSizes(s, output, length.Inch, nil, []numberRow{numberJSON("", "", "", n, conflict, length.Inch)}); err != nil {
		return err
	}
	return overIsAFinding(n.Verdict == numeral.Over)
}
