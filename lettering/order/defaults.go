package order

import (
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/outline"
	"yokeline/lettering/spelling"
)

// habit is what a piece gets where the job says nothing.
type habit struct {
	face   string
	cased  Case
	height Height
}

// habits is the one table of a piece's defaults. All of it is common practice,
// no source. Names on the back are set in a narrow plain face in capitals,
// because that is what fits most names; numbers in a block face with square
// corners. Text that the shop writes itself is kept as it was written. Heights
// of names and numbers on the back, front number, sleeve and shorts follow the
// garment's size and the sport (the garment table says how); a team name and a
// left chest have one height for the whole run, as a fixed-width mark does.
func habits(p Place) habit {
	switch p {
	case garment.BackName:
		return habit{"oswald", spelling.Upper, Height{By: BySize}}
	case garment.FrontName:
		return habit{"oswald", spelling.Typed, Height{By: ByLength, Length: length.Inches(5, 2)}}
	case garment.LeftChest:
		return habit{"oswald", spelling.Typed, Height{By: ByLength, Length: length.Inches(3, 4)}}
	}
	return habit{"graduate", spelling.Upper, Height{By: BySize}}
}

// newPiece returns a piece with every default but its colour, which depends on
// the garment.
func newPiece(p Place) Piece {
	h := habits(p)
	return Piece{Place: p, Face: h.face, Case: h.cased, Height: h.height, Shape: "straight", Spacing: "baseline"}
}

// newFit returns the ladder of a job that has none: letters may move together
// by 4 % of their height and narrow to 80 % before they get lower. A team looks
// like one: its names share one letter height.
func newFit() Fit { return Fit{Tracking: -0.04, Width: 0.80, Same: "team", Arc: "size"} }

// The other defaults of a job.
const (
	defaultGroup = garment.Adult
	defaultSport = "other"
	defaultUnits = length.Inch
	defaultJoin  = outline.Round
)

// plainWhite is the garment when the job gives no colour for it.
var plainWhite = Colour{Name: "white", Hex: "#ffffff"}

// contrast is the colour of a piece when the job names no colour that differs
// from the garment's: black on a light garment, white on a dark one. Light is
// taken by the luma of ITU-R BT.601 (299, 587 and 114 parts of 1,000).
func contrast(ground Colour) Colour {
	r, g, b := channels(ground.Hex)
	if 299*r+587*g+114*b >= 128*1000 {
		return Colour{Name: "black", Hex: "#000000"}
	}
	return plainWhite
}

func channels(hex string) (r, g, b int) {
	digit := func(i int) int {
		c := hex[i]
		if c >= 'a' {
			return int(c-'a') + 10
		}
		return int(c - '0')
	}
	if len(hex) != 7 {
		return 0, 0, 0
	}
	return digit(1)*16 + digit(2), digit(3)*16 + digit(4), digit(5)*16 + digit(6)
}
