// Package sheets draws the pages of a proof: the look, the roster, the sizes,
// the choices, the rules and the sign-off. It lays out what was sized and found
// elsewhere; a drawing decides no size.
//
// Pages are planned before any is drawn, so that each knows how many there are
// and on which of them another thing stands.
package sheets

import (
	"yokeline/lettering/findings"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
)

// Paper is the family of sheets that a proof is printed on.
type Paper uint8

// US Letter or ISO A4; each page turns it as it needs.
const (
	Letter Paper = iota
	A4
)

// PaperFor returns the paper that goes with the unit of a job: inches are
// printed on Letter.
func PaperFor(u length.Unit) Paper {
	if u == length.Inch {
		return Letter
	}
	return A4
}

func (p Paper) sheet() page.Sheet {
	if p == A4 {
		return page.A4()
	}
	return page.Letter()
}

// Input is everything a proof is drawn from.
type Input struct {
	Sized       *sizes.Sized
	Results     []findings.Result // of the rule book and the roster; none when no rule book was named
	Fingerprint string            // 64 hexadecimal digits
	Paper       Paper
	// Onto is the signed revision that players were added to: the players who are
	// not signed are new, and one who is stands among them to compare. 0 for a
	// proof of its own.
	Onto int
	// Face opens a face by the name the job uses, as when the order was sized.
	// It sets the team's name in the head and the samples under Faces.
	Face func(name string) (*typeface.Face, error)
	// Progress, when not nil, is told how many pages are drawn.
	Progress func(done, all int)
}
