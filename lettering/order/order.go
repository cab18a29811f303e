// Package order reads what a shop and a coach hand in: a job file that says
// what goes on which garment, and a roster of players. Every fault of both is
// found in one reading and carries its place. What the package returns is
// settled: defaults are filled in, words are known words, lengths are exact,
// and a player's number is the text that was typed, so 0, 00, 7 and 07 differ.
package order

import (
	"strconv"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/outline"
	"yokeline/lettering/platen"
	"yokeline/lettering/source"
	"yokeline/lettering/specsheet"
	"yokeline/lettering/spelling"
)

// Place is where a piece goes on a garment, by its garment name.
type Place = garment.Place

// Case is how a piece's text is cased.
type Case = spelling.Case

// Order is everything a shop was asked to make, ready to be sized.
type Order struct {
	Team, Customer string
	Number         string // the shop's order number, may be empty
	Shop           string // the shop's own name for the head of the proof, may be empty
	Revision       string // of the proof, may be empty
	Due, ProofDate string // 2027-03-14, or empty; valid dates
	Sport          string // one of Sports
	Rules          string // rule book id, or empty
	Season         string // 2027 or 2026-27; the year of Due unless the job says otherwise
	Category       string // women, 12U: whose figures of the rule book hold; empty for everyone
	Units          length.Unit
	Garment        GarmentChoice
	Method         string // id of one of Methods
	Colours        []Colour
	Pieces         []Piece // in the order of Places, those asked for
	Fit            Fit
	Players        []Player        // in the order of the roster
	Notes          []Note          // on the job, then on the roster in row order
	Terms          string          // what the coach agrees to by signing, may be empty
	Platens        []platen.Platen // of the shop's press; none: those of platen.Usual
	Market, Wearer string          // one of Markets and of Wearers, or empty: not said
}

// GarmentChoice is the garment the whole order is put on.
type GarmentChoice struct {
	Cut   garment.Cut
	Group garment.Group // of sizes that do not say their own
	// Letters is the system that size letters are of, LettersEN or LettersUS; empty
	// where the job does not say.
	Letters string
	Colour  Colour
	Trim    Colour           // zero if none was given
	Fibre   string           // polyester, cotton and so on, in the shop's own word
	Spec    *specsheet.Sheet // the maker's measures, nil: generic ones; see In
	// Clear is how far decoration keeps from the lines of the garment, mm; what is 0
	// is as usual.
	Clear garment.Margins
}

// Colour is a colour of the order.
type Colour struct {
	Name string // as the job calls it, empty for a bare hex
	Hex  string // #14284b, lower case, always seven characters
}

// Outline is one layer round a piece.
type Outline struct {
	Width  length.Length
	Colour Colour
	Join   outline.Join
}

// HeightBy says where a piece's height comes from.
type HeightBy uint8

// A height is written out, follows the garment's size, is the smallest the rule
// book allows, or the largest at which the piece lies inside its panel.
const (
	ByLength HeightBy = iota
	BySize
	ByRule
	Largest
)

// String returns the words a job uses; ByLength has none of its own.
func (h HeightBy) String() string {
	switch h {
	case BySize:
		return "by size"
	case ByRule:
		return "by rule"
	case Largest:
		return "largest"
	}
	return "length"
}

// Height is the height asked for a piece: letter height of a name, number
// height of a number.
type Height struct {
	By     HeightBy
	Length length.Length // with ByLength
}

// Piece is one thing to cut or print for every player, as the job asks for it.
type Piece struct {
	Place  Place
	Text   string // of a front name or left chest, with a line feed where it has two lines; empty where the roster gives it
	Face   string // id of an embedded face, or the path of a font file of the shop's own
	Case   Case
	Height Height
	Shape  string // one of Shapes
	// Radius of the baseline, or Rise over the limit; one of them with an arch.
	Radius, Rise *length.Length
	Limit        *length.Length // widest the outermost outline may be; nil: what the panel allows
	Gap          *length.Length // ink gap between digits; nil: the default
	FullOnes     bool           // a 1 among digits has the room of the widest of the others
	Below        *length.Length // from the collar to the top of the piece; nil: the placement table
	// Heights and Belows are for single groups and sizes, in the order of the
	// job; see HeightFor and BelowFor.
	Heights, Belows []SizedLength
	At              string // one of AtCentre, AtLeft, AtRight; empty: as the placement table has it
	// SplitAt is how many letters of a front name stand left of a full placket's
	// opening, for the viewer; 0: as many as part it nearest its middle. Unsplit
	// leaves it whole.
	SplitAt     int
	Unsplit     bool
	Spacing     string // baseline or middle
	Colour      Colour
	Outlines    []Outline // from the inside outwards
	Wdth, Wght  *float64  // axis values of a variable face, nil: its defaults
	Squash      bool
	Lang        string // BCP 47 tag, or empty
	RaisePrefix bool   // the small letters of Mc, Mac, De, Di and Fitz are set as raised small capitals
	// Lean is how far letters lean to the right, degrees.
	Lean float64
	// Embolden grows every letter outward; Stroke asks for the lightest weight
	// whose strokes are at least this thick (of a face without a weight axis,
	// digits are emboldened to it). nil: as the face has it.
	Embolden, Stroke *length.Length
	// KeepGap keeps the decoration method's smallest gap between the letters of
	// an arch; Optical evens the white between letters.
	KeepGap, Optical bool
	Tail             *Tail // under a script name; nil: none
	// Run is the plan, in the words of package sizerun, by which the piece is made
	// in a few heights over all sizes; empty: each size has the height asked for.
	Run string
	// Floor is the lowest letter height where it does not follow from the height
	// asked and Fit leaves it open; nil: it does. Jobs do not write it: sizing sets
	// it where a run changes the heights.
	Floor *length.Length
}

// Tail is a swash under a script name. Shares are fractions; a share of 0 takes
// the default of package tail.
type Tail struct {
	Length    float64 // of the name's width
	Thickness float64 // of the letter height
	Gap       float64 // under the letters, of the letter height
	Curl      float64 // of the far end, -1 to 1
	Taper     float64 // 0 to 1
	Slope     float64 // degrees
	Plain     bool    // curl, taper and slope are the defaults

	Text   string // small text in the tail, empty for none
	Face   string // of the text
	Laid   bool   // laid on the tail in Colour; else cut out of it
	Colour Colour
}

// Fit is how far a long name may be eased before it is reported as too long.
type Fit struct {
	Tracking float64        // fraction of the letter height, 0 or negative
	Width    float64        // fraction of the asked width, 1 or less
	Height   *length.Length // smallest letter height; nil: 60 % of the height asked
	Same     string         // one of Sames: whose names share one letter height
	Arc      string         // one of Arcs: who shares the circle that a rise makes
}

// Player is one row of the roster.
type Player struct {
	Name     string // on the back, cleaned, as typed, in one line
	Lines    string // Name with the line feed it was typed with; empty for a name in one line
	FullName string // empty unless the roster gives it
	Number   string // as typed
	Size     garment.Size
	// SizeKnown is false when the row has no size or one that is not
	// understood; Size is then zero and a Note says so.
	SizeKnown  bool
	Role, Note string
	Row        source.Place
}

// Label is what messages call the player: the full name, else the name, else
// the row.
func (p Player) Label() string {
	switch {
	case p.FullName != "":
		return p.FullName
	case p.Name != "":
		return p.Name
	}
	return rowLabel(p.Row)
}

// rowLabel names a row by the number a spreadsheet or an editor shows.
func rowLabel(at source.Place) string {
	if at.Cell == "" {
		return "row " + strconv.Itoa(at.Line)
	}
	digits := at.Cell
	for digits != "" && (digits[0] < '0' || digits[0] > '9') {
		digits = digits[1:]
	}
	return "row " + digits
}

// Severity says whether a note must be dealt with.
type Severity string

// A violation must be put right before anything is made; advice may stand.
const (
	Violation Severity = "violation"
	Advice    Severity = "advice"
)

// Kinds of note that a rule book, where there is one, decides.
const (
	NoNumber    = "no number"
	TakenNumber = "taken number"
)

// Note is one thing noticed while reading that does not make the order
// unusable.
type Note struct {
	Severity Severity
	Player   string // Label of the player, empty for the order as a whole
	At       source.Place
	What     string // short: "number", "size", "name"
	// Kind is one of the kinds below, for what a rule book speaks of too; else
	// empty.
	Kind    string
	Message string
	Remedy  string
}
