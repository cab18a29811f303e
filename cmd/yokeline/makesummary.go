package main

import (
	"fmt"
	"io"

	"yokeline/lettering/sheetplan"
)

// summary says what was made and what it takes, and first of all what must not be
// pressed.
func (b *bench) summary(w io.Writer) error {
	for _, stop := range b.stops {
		fmt.Fprintf(w, "STOP, do not press it as it stands: %s; %s\n", stop.Text, stop.Remedy)
	}
	b.takes(w, b.plan.Figures(b.by))
	b.notMade(w)
	b.loose(w)
	b.tooWide(w)
	for _, note := range b.notes {
		fmt.Fprintf(w, "note: %s\n", note)
	}
	if b.unsigned {
		fmt.Fprintln(w, "UNSIGNED: nobody has agreed to this; every file says so.")
	}
	_, err := fmt.Fprintln(w, b.dir)
	return err
}

// takes says how much is made, of how much material.
func (b *bench) takes(w io.Writer, f sheetplan.Figures) {
	fmt.Fprintf(w, "%s for %s, %s\n", counted(len(b.plan.Pieces), "piece", "pieces"), players(len(b.made().Players)), methodOf(b.sized.Order))
	if f.Stock <= 0 {
		return
	}
	boxes, area := f.Least()
	least := fmt.Sprintf("at the very least %.0f %%", 100*area)
	if boxes > 0 {
		least = fmt.Sprintf("%.0f %% at the least by boxes, %s", 100*boxes, least)
	}
	fmt.Fprintf(w, "%s of %s, %.2f m²: %.0f %% waste (%s)\n", counted(f.Sheets, "sheet", "sheets"), b.plan.Stock.Name, f.Stock/1e6, 100*f.Waste(), least)
}

// notMade names who gets nothing, for nobody knows the size.
func (b *bench) notMade(w io.Writer) {
	for _, p := range b.made().Players {
		if p.Garment == nil {
			fmt.Fprintf(w, "nothing is made for %s: the size is not known; ask, and write it in the roster\n", p.Label())
		}
	}
}

// loose names what no sheet takes, each piece once though it may have several
// layers.
func (b *bench) loose(w io.Writer) {
	last := ""
	for i, part := range b.plan.Parts {
		why := b.plan.Loose[i]
		if why == "" {
			continue
		}
		player := b.sized.Players[part.Player]
		line := fmt.Sprintf("on no sheet: %s of %s, which is %s\n", player.Pieces[part.Piece].Asked.Place, player.Label(), why)
		if line != last {
			fmt.Fprint(w, line)
		}
		last = line
	}
}

// tooWide names what was made as it stands though it does not fit: only an order
// that nobody signed has such pieces, for a choice comes with a signature.
func (b *bench) tooWide(w io.Writer) {
	for _, p := range b.plan.Pieces {
		player := b.sized.Players[p.Player]
		if piece := player.Pieces[p.Piece]; piece.Over() {
			fmt.Fprintf(w, "does not fit: %s of %s, made as it stands; let the coach choose a way out first\n", piece.Asked.Place, player.Label())
		}
	}
}
