package sheetplan

import (
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/sizes"
)

// Notes are what the maker must know of the pieces, such as films that lie too
// thick or openings that close: each once with the places it is true of, in the
// order of the pieces.
func (p *Plan) Notes(s *sizes.Sized) []string {
	var notes []string
	places := map[string][]string{}
	for _, piece := range p.Pieces {
		place := string(s.Players[piece.Player].Pieces[piece.Piece].Asked.Place)
		for _, note := range piece.Art.Notes {
			if _, known := places[note]; !known {
				notes = append(notes, note)
			}
			if !slices.Contains(places[note], place) {
				places[note] = append(places[note], place)
			}
		}
	}
	for i, note := range notes {
		notes[i] = fmt.Sprintf("%s: %s.", strings.Join(places[note], ", "), note)
	}
	return notes
}
