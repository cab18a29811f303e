package garment

// band is a column of the placement table: sizes that share their figures.
type band uint8

const (
	youthSmall band = iota // youth XS to M
	youthLarge             // youth L and XL
	adultSmall             // adult XS to M
	adultLarge             // adult L and XL
	adultOver              // adult 2XL to 4XL
	women                  // all women's sizes
)

// bandOf returns the column of a size.
func bandOf(s Size) band {
	switch {
	case s.Group == Women:
		return women
	case s.Group == Youth && s.letterRank() <= 2:
		return youthSmall
	case s.Group == Youth:
		return youthLarge
	case s.letterRank() <= 2:
		return adultSmall
	case s.letterRank() <= 4:
		return adultLarge
	}
	return adultOver
}

// distances are the placement conventions of one column, in millimetres. All are
// common practice, no source: shops' habits, never a rule.
//
// Two fingers below the neckline, 38 to 50 mm, is the habit where the eye takes
// the neckline's own lowest point: below the point of a V (frontTopVee, but for
// the largest sizes), and on the smallest children's fronts (frontTop). On a round
// collar of a larger size shops go lower, 51 to 89 mm, so that the design lies on
// the chest and not in the bend of the collar bone; frontTop follows that.
type distances struct {
	frontTop, frontTopVee  float64 // top of a front design below the collar seam; below the point of a V
	chestDown, chestAcross float64 // left chest: centre below HPS, and from the centre front
	chestSize              float64 // left chest: largest width and height
	nameTop                float64 // back name: cap line below the back collar seam
	numberTop              float64 // back number without a name: top below the back collar seam
	nameGap                float64 // baseline of the back name to the top of the number
	teamGap                float64 // team name to front number
	sleeveDown             float64 // sleeve number: centre below the shoulder seam
	sleeveHem              float64 // sleeve item: lowest edge above the hem, at least
	shortsHem              float64 // shorts number: bottom above the hem
	shortsSide             float64 // shorts number: nearest edge from the side seam
}

// distancesFor returns the column of a size. Ranges seen in the trade (common
// practice, no source): front 51 to 89 mm below the collar, left chest 178 to
// 229 down from HPS and 102 to 152 from the centre on adults, back 89 to 140
// below the collar, name to number 25 to 38.
func distancesFor(s Size) distances {
	return [...]distances{
		youthSmall: {50, 40, 125, 65, 65, 65, 100, 25, 20, 65, 20, 45, 25},
		youthLarge: {60, 45, 140, 75, 75, 75, 115, 25, 25, 75, 25, 50, 25},
		adultSmall: {75, 50, 180, 95, 90, 90, 140, 32, 30, 90, 38, 65, 38},
		adultLarge: {75, 50, 190, 100, 90, 100, 150, 38, 38, 90, 38, 65, 38},
		adultOver:  {90, 60, 205, 115, 100, 110, 165, 38, 38, 100, 38, 75, 38},
		women:      {65, 45, 165, 85, 80, 80, 125, 32, 30, 75, 25, 50, 30},
	}[bandOf(s)]
}
