package garment

import (
	"fmt"
	"strings"
)

// Cut is the pattern that a garment is made to.
type Cut string

// The cuts that can be drawn.
const (
	CrewTee        Cut = "crew-tee"
	VNeck          Cut = "v-neck"
	TwoButton      Cut = "two-button"
	FullButton     Cut = "full-button"
	BasketballTank Cut = "basketball-tank"
	RacerbackTank  Cut = "racerback-tank"
	Raglan         Cut = "raglan"
	FootballYoke   Cut = "football-yoke"
	Hockey         Cut = "hockey"
	Soccer         Cut = "soccer"
	Shorts         Cut = "shorts"
)

// CutInfo describes a cut for a list.
type CutInfo struct {
	Cut   Cut
	Title string // as it is printed on a proof
	About string // one line: what makes it this cut
	Noun  string // what the wearer calls it: shirt, jersey, shorts
}

// Cuts returns every cut in a fixed order.
func Cuts() []CutInfo {
	return []CutInfo{
		{CrewTee, "crew tee", "round rib collar, set-in sleeves, straight hem", "shirt"},
		{VNeck, "V-neck", "V rib collar, set-in sleeves, straight hem", "shirt"},
		{TwoButton, "two-button", "narrow round band over a short placket with two buttons", "jersey"},
		{FullButton, "full button", "buttons from neck to hem, shaped tail", "jersey"},
		{BasketballTank, "basketball tank", "sleeveless, bound neck and armholes, side panels", "jersey"},
		{RacerbackTank, "racerback tank", "sleeveless, back cut in between the shoulder blades", "singlet"},
		{Raglan, "raglan", "sleeve seams run to the neck, no shoulder seam", "shirt"},
		{FootballYoke, "football, yoke", "wide shoulders, yoke across, cuffs", "jersey"},
		{Hockey, "hockey", "wide body, dropped shoulders, long sleeves", "jersey"},
		{Soccer, "soccer", "narrow collar, cuffs, side panels, shallow tail", "shirt"},
		{Shorts, "shorts", "elastic waistband with a drawcord", "shorts"},
	}
}

// ParseCut reads the name of a cut; spaces, hyphens, underscores and case do
// not matter. The error lists the names that are known.
func ParseCut(text string) (Cut, error) {
	plain := func(s string) string {
		return strings.ToLower(strings.NewReplacer(" ", "", "-", "", "_", "", ",", "").Replace(s))
	}
	var known []string
	for _, c := range Cuts() {
		if plain(text) == plain(string(c.Cut)) || plain(text) == plain(c.Title) {
			return c.Cut, nil
		}
		known = append(known, string(c.Cut))
	}
	return "", fmt.Errorf("cut %q is unknown: use one of %s", text, strings.Join(known, ", "))
}

// Info returns the description of the cut; ok is false for an unknown one.
func (c Cut) Info() (info CutInfo, ok bool) {
	for _, k := range Cuts() {
		if k.Cut == c {
			return k, true
		}
	}
	return CutInfo{}, false
}
