package tint

// Vision is how an eye parts colours.
type Vision int

// The visions. Protan and deutan together are red-green colour blindness.
const (
	Usual  Vision = iota // three kinds of cones
	Protan               // without the cones for long waves: reds look dark
	Deutan               // without the cones for middle waves
)

// String returns the name of the vision.
func (v Vision) String() string {
	switch v {
	case Protan:
		return "protan"
	case Deutan:
		return "deutan"
	default:
		return "usual"
	}
}

// Simulate returns how a colour looks to an eye that lacks one kind of cones
// altogether, rounded to the nearest screen colour. More people have a weaker
// form of it, so this is the hard case.
func Simulate(c Colour, v Vision) Colour { return c.light().seen(v).colour() }

// The answer of the three kinds of cones to linear red, green and blue of a
// screen, after Smith and Pokorny.
//
// Source: Viénot, Brettel and Mollon, Digital Video Colourmaps for Checking
// the Legibility of Displays by Dichromats, Color Research and Application
// 24(4), 1999, 243 to 252; figures from memory. The tests check them against
// the projections that the same paper prints.
func cones() (long, middle, short light) {
	return light{17.8824, 43.5161, 4.11935},
		light{3.45565, 27.1554, 3.86714},
		light{0.0299566, 0.184309, 1.46709}
}

// seen moves a colour along the line of colours that this eye cannot tell from
// it, to the one that every eye is taken to see alike. In the paper those lie
// in the plane of black, white, the screen's blue and its yellow, where red and
// green are equal. What falls off the screen is cut to its edge (at most 0.023
// of full blue) in place of the paper's dimming of the whole picture, which
// would move the white as well.
func (l light) seen(v Vision) light {
	long, middle, short := cones()
	var lost light // the way along which only the missing cones answer
	switch v {
	case Protan:
		lost = cross(middle, short)
	case Deutan:
		lost = cross(short, long)
	default:
		return l
	}
	t := (l[1] - l[0]) / (lost[0] - lost[1])
	for i := range l {
		l[i] = min(max(l[i]+t*lost[i], 0), 1)
	}
	return l
}

func cross(a, b light) light {
	return light{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}
