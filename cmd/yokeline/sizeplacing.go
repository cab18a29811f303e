package main

import (
	"strings"

	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
)

// placingRow is how a piece lies on its garment where that is not plain, as size
// prints it. Nothing of it is printed for a piece that lies where it should.
type placingRow struct {
	NoRoom   string   `json:"no_room,omitempty"`  // why nothing of the panel is left for it
	Remedies []string `json:"remedies,omitempty"` // what would give it room
	Stack    []string `json:"stack,omitempty"`    // what name and number gave up to lie inside the panel
	Short    number   `json:"short_mm,omitempty"` // what the stack lacks at its foot even so
	TooNear  number   `json:"too_near_mm,omitempty"`
	Split    string   `json:"split,omitempty"`      // RIDGE | MONT: the halves left and right of the opening
	Opening  number   `json:"opening_mm,omitempty"` // between the halves
	Straddle []string `json:"straddle,omitempty"`   // letters that lie on the opening, or would unsplit
}

// place fills the row in; a piece without room has a limit of 0, not none.
func (r *nameRow) place(p sizes.Piece, unit length.Unit) {
	if r.placingRow = placingJSON(p, unit); p.NoRoom {
		r.Limit = 0
	}
}

// place does for a number what nameRow.place does for a name.
func (r *numberRow) place(p sizes.Piece, unit length.Unit) {
	if r.placingRow = placingJSON(p, unit); p.NoRoom {
		r.Limit = 0
	}
}

func placingJSON(p sizes.Piece, unit length.Unit) placingRow {
	out := placingRow{Stack: p.Eased, Short: number(p.Short), TooNear: number(p.TooNear)}
	if p.NoRoom {
		out.NoRoom = strings.TrimPrefix(p.Room.Why, "seam: ")
	}
	for _, r := range p.Remedies {
		out.Remedies = append(out.Remedies, r.Words(func(mm float64) string { return length.Plain(mm, unit, length.Nearest) }))
	}
	if s := p.Split; s != nil {
		out.Opening, out.Straddle = number(s.Gap), s.Straddle
		if !s.Whole() {
			out.Split = s.Left + " | " + s.Right
		}
	}
	return out
}

// verdict adds to the verdict of a piece what its place has to say.
func (r placingRow) verdict(v string) string {
	switch {
	case r.NoRoom != "":
		return v + ", no room"
	case r.Short > 0:
		return v + ", stack too tall"
	case len(r.Stack) > 0:
		return v + ", stack eased"
	}
	return v
}

// would adds what the place has to say of what would fit.
func (r placingRow) would(fit string, unit length.Unit) string {
	var parts []string
	if fit != "" {
		parts = append(parts, fit)
	}
	if r.NoRoom != "" {
		parts = append(parts, r.NoRoom)
	}
	if len(r.Remedies) > 0 {
		parts = append(parts, "would fit: "+strings.Join(r.Remedies, "; "))
	}
	if len(r.Stack) > 0 {
		parts = append(parts, "stack: "+strings.Join(r.Stack, ", then "))
	}
	if r.Short > 0 {
		parts = append(parts, "stack lacks "+printed(r.Short, unit, length.Up)+" at its foot")
	}
	if r.TooNear > 0 {
		parts = append(parts, printed(r.TooNear, unit, length.Up)+" too near the name")
	}
	switch {
	case r.Split != "":
		parts = append(parts, "parted at the opening: "+r.Split)
	case len(r.Straddle) > 0:
		parts = append(parts, strings.Join(r.Straddle, ", ")+" on the opening or its clearance")
	}
	return strings.Join(parts, "; ")
}
