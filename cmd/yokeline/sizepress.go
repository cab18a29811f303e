package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"yokeline/lettering/length"
	"yokeline/lettering/platen"
	"yokeline/lettering/sizes"
)

// pressRow is how one place is pressed as size --press prints it.
type pressRow struct {
	Size       string     `json:"size"`
	Place      string     `json:"place"` // back, all at once: every piece of a side together
	Pieces     int        `json:"pieces"`
	Player     string     `json:"player"` // whose piece needs most
	Text       string     `json:"text"`   // what it says; of a stack, whose it is
	Width      number     `json:"width_mm"`
	Height     number     `json:"height_mm"`
	NeedWidth  number     `json:"need_width_mm"`
	NeedHeight number     `json:"need_height_mm"`
	Platen     string     `json:"platen"`
	Turned     bool       `json:"turned"`
	Presses    int        `json:"presses"` // 0: not even two presses of a platen do
	Overlap    number     `json:"overlap_mm"`
	Under      []underRow `json:"under"`
}

// underRow is a line of the garment under the platen.
type underRow struct {
	What      string `json:"what"`
	Hard      bool   `json:"hard"`
	FromPiece number `json:"from_piece_mm"`
}

func printPress(s streams, f format, sized *sizes.Sized) error {
	rows, none := []pressRow{}, false
	presses := sized.Press()
	for _, p := range presses {
		rows = append(rows, pressJSON(sized, p))
		none = none || p.Fit.Presses == 0 && p.Place != ""
	}
	if f == formatJSON {
		if err := s.printJSON(struct {
			Edge  number     `json:"edge_mm"`
			Press []pressRow `json:"press"`
		}{platen.Edge, rows}); err != nil {
			return err
		}
		return overIsAFinding(none)
	}
	if err := printPressed(s, sized, rows); err != nil {
		return err
	}
	printUnsized(s, sized)
	_, err := fmt.Fprintf(s.out, "\nThe platen is centred on the piece, which stays %s inside its edge (common practice, no source); turned is with\n"+
		"its second side along the lettering. Distances are from the edge of the art. What is thick holds the press off the film\n"+
		"and may be crushed: pad seams, drape plackets, buttons and zips over the edge. Behind is the other side of a garment\n"+
		"that lies flat: slip it over the platen and it is out of the way. A press is hot and closes with force: keep hands clear,\n"+
		"and go by its manual and by the data sheets of film and cloth for heat, pressure and time.\n", show(sized, platen.Edge, length.Nearest))
	if err != nil {
		return err
	}
	return overIsAFinding(none)
}

// printPressed prints a table a place, with a row a size. Rows come by size.
func printPressed(s streams, sized *sizes.Sized, rows []pressRow) error {
	up := func(n number) string { return show(sized, float64(n), length.Up) }
	var places []string
	for _, r := range rows {
		if !slices.Contains(places, r.Place) {
			places = append(places, r.Place)
		}
	}
	for i, place := range places {
		if i > 0 {
			fmt.Fprintln(s.out)
		}
		fmt.Fprintf(s.out, "%s\n", place)
		t := &table{}
		t.add("  size", "pieces", "largest", "width x height", "with its edge", "platen", "under the platen: pad or drape")
		for _, r := range rows {
			if r.Place == place {
				t.add("  "+r.Size, fmt.Sprint(r.Pieces), r.Text, up(r.Width)+" x "+up(r.Height),
					up(r.NeedWidth)+" x "+up(r.NeedHeight), platenWords(sized, r), underWords(sized, r.Under))
			}
		}
		if err := t.print(s.out); err != nil {
			return err
		}
	}
	return nil
}

func pressJSON(sized *sizes.Sized, p sizes.Press) pressRow {
	player := sized.Players[p.Player]
	row := pressRow{
		Size: p.Size.String(), Place: string(p.Place), Pieces: p.Pieces, Player: player.Label(),
		Width: number(p.Box.Width), Height: number(p.Box.Height), NeedWidth: number(p.Fit.NeedWidth), NeedHeight: number(p.Fit.NeedHeight),
		Turned: p.Fit.Turned, Presses: p.Fit.Presses, Overlap: number(math.NaN()), Under: []underRow{},
	}
	if piece, ok := player.Piece(p.Place); ok {
		row.Text = inARow(piece.Text())
	} else {
		row.Place, row.Text = p.Side.String()+", all at once", "of "+player.Label()
	}
	if p.Fit.Presses > 0 {
		row.Platen = p.Fit.Platen.String()
	}
	if p.Fit.Presses == 2 {
		row.Overlap = number(p.Fit.Overlap)
	}
	for _, u := range p.Fit.Under {
		row.Under = append(row.Under, underRow{u.Words(p.Side), u.Hard, number(u.FromPiece)})
	}
	return row
}

func platenWords(sized *sizes.Sized, r pressRow) string {
	words := r.Platen
	if r.Turned {
		words += " turned"
	}
	switch r.Presses {
	case 0:
		return "none, not even in two presses"
	case 2:
		return words + ", TWO PRESSES that overlap by " + show(sized, float64(r.Overlap), length.Down)
	}
	return words
}

// underWords lists what lies under the platen, nearest first.
func underWords(sized *sizes.Sized, under []underRow) string {
	var art, near []string
	for _, u := range under {
		if u.FromPiece == 0 {
			art = append(art, u.What)
		} else {
			near = append(near, u.What+" "+show(sized, float64(u.FromPiece), length.Down)+" off")
		}
	}
	if len(art) > 0 {
		near = append([]string{"UNDER THE ART: " + strings.Join(art, ", ")}, near...)
	}
	if len(near) == 0 {
		return "nothing"
	}
	return strings.Join(near, "; ")
}
