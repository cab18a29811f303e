package garment

// style holds the proportions of a cut that its measures leave open. They are
// ratios and angles, so one set serves all sizes; the few lengths are things
// that do not grow with the wearer. All are common practice, no source: drawn,
// looked at and measured until every size read as cloth.
type style struct {
	neck      neckStyle
	armhole   armholeStyle
	sleeve    sleeveStyle
	body      bodyStyle
	closing   closing
	laced     bool    // the neck is tied with a lace
	pitch     float64 // full button: wanted distance between buttons, mm
	yoke      bool    // a seam across at the yoke depth
	sidePanel float64 // width of a side panel at the hem / chest half; 0 none
	binding   float64 // binding of a tank's armhole / neck width; 0 none
}

// neckStyle shapes the front neck seam and the collar that stands inside it.
type neckStyle struct {
	tip    float64 // angle at centre front / that of the straight chord; 0 = level (crew, scoop)
	full   float64 // handle at centre front / half neck width: larger is squarer
	stand  float64 // handle at HPS / front drop: larger keeps the side of the neck upright for longer
	lean   float64 // degrees by which the seam leaves HPS inward of vertical, about square to the shoulder
	collar float64 // collar height / neck width
}

// armholeStyle shapes the seam from shoulder point to underarm: two curves that
// meet, upright, at the across-chest point.
type armholeStyle struct {
	front float64 // inset of the across-chest point from the shoulder point / shoulder width
	back  float64 // the same at the back: less, since the back is wider between the arms
	level float64 // how far down that point is / (armhole depth - shoulder drop)
	foot  float64 // degrees below horizontal at which the curve runs into the underarm
}

type sleeveKind uint8

const (
	sleeveless sleeveKind = iota
	setIn
	toNeck // raglan: the sleeve seam runs to the neck
)

// sleeveStyle shapes a sleeve as it lies, folded along its top.
type sleeveStyle struct {
	kind    sleeveKind
	spread  float64 // wanted angle between armhole chord and top fold, degrees: it sets how far the arm drops
	minDrop float64 // flattest and steepest mean fold below horizontal, degrees
	maxDrop float64
	bend    float64 // share of the fold that bends, from the shoulder on; the rest is straight
	opening float64 // flat width at the hem / armhole chord
	biceps  float64 // least flat width at the armpit / armhole chord; never below the opening
	under   float64 // least underarm seam / sleeve length
	cuff    float64 // depth of the sleeve's hem or cuff, mm
	ribbed  bool    // a separate cuff, not a turned hem
}

// bodyStyle shapes side seam and hem.
type bodyStyle struct {
	waist float64 // strength of the group's waist shaping, 1 = the group's own
	hem   float64 // hem width / chest half
	tail  float64 // rise of the side over the centre of the hem / body length; 0 = straight
	depth float64 // hem allowance, mm
}

type closing uint8

const (
	pullover closing = iota
	shortPlacket
	fullPlacket
)

// Lengths that do not grow with the wearer, mm. Common practice, no source.
const (
	placketBase    = 24.0 // placket width = 24 + 0.02 chest half: 35 on an adult M, 31 on the smallest child
	placketGrow    = 0.02
	buttonDiameter = 11.43 // 18 ligne at 0.635 mm, the usual shirt button
	buttonCount    = 2     // on a short placket
	stitchEdge     = 4.0   // edge stitching stands this far from a seam or an edge
	twinGap        = 6.0   // between the two rows of a cover-stitched hem
	neckTape       = 7.0   // depth of the tape over the back neck seam, inside
)

// waistShaping is how far each side seam is taken in at the waist / length of
// the side seam. Women's cuts are shaped, children's nearly straight. It is
// taken of the length and not of the chest: wide sizes are not more waisted.
func waistShaping(g Group) float64 {
	switch g {
	case Youth:
		return 0.005
	case Women:
		return 0.026
	}
	return 0.009
}

// teeArmhole: across the chest a tee is about 16 mm narrower a side than at the
// shoulder, 8 at the back; the seam runs out at 38°, as it does when the cloth of
// an armpit lies flat.
func teeArmhole() armholeStyle { return armholeStyle{front: 0.036, back: 0.018, level: 0.54, foot: 38} }

// teeSleeve: 0.80 of the chord opens 163 mm flat on an adult M; 51° of spread drop
// the sleeve by 25 to 30°, the least on wide sizes; half of the fold bends, so that the shoulder rounds and
// the sleeve stays straight.
func teeSleeve() sleeveStyle {
	return sleeveStyle{kind: setIn, spread: 51, minDrop: 25, maxDrop: 30, bend: 0.5, opening: 0.80, under: 0.19, cuff: 22}
}

// jerseySleeve is that of button fronts: a wider opening and a deeper hem.
func jerseySleeve() sleeveStyle {
	return sleeveStyle{kind: setIn, spread: 51, minDrop: 25, maxDrop: 30, bend: 0.5, opening: 0.82, under: 0.19, cuff: 25}
}

// styleOf returns the proportions of a cut that has a body.
func styleOf(c Cut) style {
	switch c {
	case VNeck: // opened by an eighth over the straight chord: sides that bow a little look sewn, not ruled
		return style{neck: neckStyle{tip: 1.12, full: 0.36, stand: 0.34, lean: 13, collar: 0.105},
			armhole: teeArmhole(), sleeve: teeSleeve(), body: bodyStyle{waist: 1, hem: 0.995, depth: 22}}
	case TwoButton: // a 13.5 mm band instead of a rib, round, so that the placket starts from a level edge
		return style{neck: neckStyle{full: 0.58, stand: 0.48, lean: 14, collar: 0.075},
			armhole: teeArmhole(), sleeve: jerseySleeve(), body: bodyStyle{waist: 0.6, hem: 1, depth: 25}, closing: shortPlacket}
	case FullButton: // fronts meet in a soft V; the tail rises by 5 % of the length; buttons 88 mm apart, seven on an adult M
		return style{neck: neckStyle{tip: 1.45, full: 0.46, stand: 0.42, lean: 14, collar: 0.07},
			armhole: teeArmhole(), sleeve: jerseySleeve(), body: bodyStyle{waist: 0.6, hem: 1, tail: 0.05, depth: 12},
			closing: fullPlacket, pitch: 88}
	case BasketballTank, RacerbackTank:
		return tankStyle(c)
	case Raglan: // no shoulder seam breaks the fold, so more of it bends
		s := teeSleeve()
		s.kind, s.maxDrop, s.bend = toNeck, 31, 0.6
		return style{neck: neckStyle{full: 0.60, stand: 0.50, lean: 15, collar: 0.11},
			armhole: armholeStyle{foot: 42}, sleeve: s, body: bodyStyle{waist: 1, hem: 0.995, depth: 22}}
	case FootballYoke, Hockey, Soccer:
		return fieldStyle(c)
	}
	// crew tee: a rib of 0.11 of the neck is 20 mm on an adult M, 15.5 on the smallest child
	return style{neck: neckStyle{full: 0.60, stand: 0.50, lean: 15, collar: 0.11},
		armhole: teeArmhole(), sleeve: teeSleeve(), body: bodyStyle{waist: 1, hem: 0.995, depth: 22}}
}

func tankStyle(c Cut) style {
	if c == RacerbackTank { // squarer scoop, 10 mm bindings, for the straps are 42 mm
		return style{neck: neckStyle{full: 0.66, stand: 0.60, lean: 8, collar: 0.055},
			armhole: armholeStyle{front: 0.036, level: 0.44, foot: 12}, body: bodyStyle{waist: 1, hem: 1, depth: 20}, binding: 0.055}
	}
	// Deep round neck. The front armhole is cut 17 mm a side deeper than the strap, the back hardly, so the back
	// shows beside the front. Bindings of 18 mm. The armhole meets the side almost level.
	return style{neck: neckStyle{full: 0.58, stand: 0.56, lean: 9, collar: 0.095},
		armhole: armholeStyle{front: 0.050, back: 0.012, level: 0.46, foot: 14}, body: bodyStyle{waist: 0.5, hem: 1, depth: 25},
		sidePanel: 0.085, binding: 0.095}
}

func fieldStyle(c Cut) style {
	switch c {
	case FootballYoke: // wide shoulders over pads: upright armhole, short wide sleeve with a cuff, body tapering to the hem
		return style{neck: neckStyle{tip: 1.22, full: 0.40, stand: 0.36, lean: 12, collar: 0.105},
			armhole: armholeStyle{front: 0.028, back: 0.014, level: 0.54, foot: 42},
			sleeve:  sleeveStyle{kind: setIn, spread: 52, minDrop: 25, maxDrop: 29, bend: 0.6, opening: 0.80, under: 0.19, cuff: 25, ribbed: true},
			body:    bodyStyle{waist: 1.4, hem: 0.95, depth: 25}, yoke: true}
	case Hockey: // dropped shoulder, so hardly an inset. The sleeve hangs at 43 to 54°: flatter would be truer to the
		// pattern but twice as wide as high on paper. It tapers from 0.80 of the chord at the armpit to 0.56 at the wrist.
		return style{neck: neckStyle{tip: 1.5, full: 0.48, stand: 0.42, lean: 20, collar: 0.12},
			armhole: armholeStyle{front: 0.016, back: 0.008, level: 0.5, foot: 50},
			sleeve:  sleeveStyle{kind: setIn, spread: 28, minDrop: 44, maxDrop: 54, bend: 0.44, opening: 0.56, biceps: 0.80, under: 0.30, cuff: 30},
			body:    bodyStyle{waist: 0.3, hem: 1.02, depth: 30}, laced: true}
	}
	// soccer, closer than a tee: narrow collar and opening, shaped and tapering side, shallow tail
	return style{neck: neckStyle{full: 0.60, stand: 0.50, lean: 14, collar: 0.085},
		armhole: armholeStyle{front: 0.040, back: 0.020, level: 0.54, foot: 38},
		sleeve:  sleeveStyle{kind: setIn, spread: 51, minDrop: 25, maxDrop: 30, bend: 0.5, opening: 0.78, under: 0.19, cuff: 20, ribbed: true},
		body:    bodyStyle{waist: 1.3, hem: 0.97, tail: 0.03, depth: 18}, sidePanel: 0.07}
}
