package garment

import (
	"fmt"
	"math"

	"yokeline/lettering/garment/internal/curve"
	"yokeline/lettering/geom"
)

type (
	pt    = geom.Point
	chain = curve.Chain
)

const degree = math.Pi / 180

// Ratios of the construction that all cuts share. A handle is the distance from
// a curve's end to its control point. Common practice, no source, as in style.
const (
	backNeckLevel = 0.56 // back neck: level over its middle half (handle at the centre / half width),
	backNeckTurn  = 0.84 // then up within its last sixth, for a shoulder seam meets a neck seam
	backNeckRise  = 0.62 // at about a right angle (place and depth of the upper handle)
	veeHandle     = 0.90 // a V's handle is a share of its chord, which is longer than half the neck
	veeWidest     = 80.0 // degrees: a V opened further would be a scoop

	shoulderLean = 1.7  // the armhole leans at most so many times the straight way in; more would bulge into the chest
	upperHandle  = 0.42 // both handles of the upper curve / its height: nearly straight, as armholes are there
	racerHandle  = 0.40 // the same on a racer back, whose upper curve turns harder
	racerLevel   = 0.46 // racer waist, between the shoulder blades: just above the middle of back neck and underarm
	lowerHandle  = 0.54 // lower curve at the across point / its height: close to a quarter of an ellipse (0.552)
	footHandle   = 0.52 // handle at the underarm / run-out width,
	footHandleY  = 0.62 // but not more of the height than this
	footLimit    = 0.62 // foot angle / that of the straight way, at most: steeper puts a wave into the seam
	footLeast    = 0.2  // sine below which a foot counts as level
	levelBase    = 1.15 // the across point climbs as the run-out grows (level × (base - slope × width/height)),
	levelSlope   = 0.75 // so that a wide size gets a scoop and not a step
	levelMost    = 1.05
	insetBase    = 1.5 // the across point's inset shrinks likewise (inset × (base - slope × width/height)),
	insetSlope   = 2.4
	insetLeast   = 0.35 // so that the seam of a wide size is a slope and not a bulge

	raglanFront = 0.60  // raglan seam starts here along the front neck seam / its length from the centre
	raglanBack  = 0.64  // and here at the back, nearer to HPS, as back seams are
	raglanBow   = 0.035 // bow over the chest / chord
	raglanUpper = 0.34  // handles / chord
	raglanLower = 0.36

	sideUpper  = 0.34 // side seam handles / height: the waist comes a little above the middle
	sideLower  = 0.36
	sideReach  = 0.75 // a cubic reaches this share of its handles' inset
	sideFlare  = 0.30 // the lower handle leans with the hem's own width
	tailLevel  = 0.42 // a shirt tail is level out to here / half hem width, and in any case
	tailClear  = 6.0  // this far beyond HPS, where the body length is measured (mm)
	tailSteep  = 0.74 // lower end of the side's handle / rise: the tail leaves the side steeply
	tailInward = 0.34 // the same across / width of the sweep
	tailSweep  = 0.40 // handle along the level part / width of the sweep
)

// frame is the set of points and lines that both faces of a garment share. Only
// the viewer's right half is constructed; the left is its mirror image.
type frame struct {
	Measures
	cut   Cut
	group Group
	style style

	hps, tip, arm       pt      // high point of shoulder, shoulder point, underarm point
	slope               float64 // shoulder slope below horizontal, radians
	rib                 float64 // collar height, mm
	neckFront, neckBack chain   // neck seams, centre to HPS
	ribFront, ribBack   chain   // upper edges of the collar, centre to its end beside HPS
	armFront, armBack   chain   // armholes, shoulder point (raglan: neck seam) to underarm
	side, hem           chain   // underarm to hem; side to centre
	sleeve              sleeve
}

// newFrame constructs a garment with a body. It is an error when the sleeve
// would end inside the body.
func newFrame(cut Cut, group Group, m Measures) (*frame, error) {
	f := &frame{Measures: m, cut: cut, group: group, style: styleOf(cut)}
	f.hps = pt{X: m.NeckWidth / 2}
	f.tip = pt{X: m.ShoulderWidth / 2, Y: m.ShoulderDrop}
	f.arm = pt{X: m.ChestHalf / 2, Y: m.ArmholeDepth}
	d := f.tip.Sub(f.hps)
	f.slope = math.Atan2(d.Y, d.X)
	f.rib = f.style.neck.collar * m.NeckWidth
	f.drawNecks()
	f.drawArmholes()
	f.drawSide()
	if f.style.sleeve.kind == sleeveless {
		return f, nil
	}
	f.sleeve = f.newSleeve()
	if short := f.arm.X + leastSleeve - f.sleeve.fold.End().X; short > 0 {
		return nil, fmt.Errorf("sleeve length %g ends inside the body: with this chest half and shoulder width it must be about %.0f mm longer", m.SleeveLength, short)
	}
	return f, nil
}

// drawNecks draws the neck seams and the collar edges that stand inside them.
func (f *frame) drawNecks() {
	n, w, drop := f.style.neck, f.NeckWidth/2, f.NeckDropFront
	centre := pt{Y: drop}
	out := pt{X: n.full * w} // level across the centre
	if n.tip > 0 {           // a V leaves at its chord's own angle, opened a little
		a := math.Min(math.Atan2(w, drop)*n.tip, veeWidest*degree)
		out = pt{X: math.Sin(a), Y: -math.Cos(a)}.Mul(n.full * veeHandle * math.Hypot(w, drop))
	}
	in := pt{X: -math.Sin(n.lean * degree), Y: math.Cos(n.lean * degree)}
	f.neckFront = curve.Bezier(centre, centre.Add(out), f.hps.Add(in.Mul(n.stand*drop)), f.hps)
	f.ribFront = f.neckFront.Offset(-f.rib).FromAxis()
	f.neckBack = backNeck(f.NeckDropBack, f.hps)
	f.ribBack = backNeck(f.NeckDropBack-f.rib, f.ribFront.End())
}

func backNeck(drop float64, end pt) chain {
	d := drop - end.Y
	return curve.Bezier(pt{Y: drop}, pt{X: backNeckLevel * end.X, Y: drop}, pt{X: backNeckTurn * end.X, Y: end.Y + backNeckRise*d}, end)
}

func (f *frame) drawArmholes() {
	a := f.style.armhole
	if f.style.sleeve.kind == toNeck {
		f.armFront = f.raglanSeam(f.neckFront, raglanFront)
		f.armBack = f.raglanSeam(f.neckBack, raglanBack)
		return
	}
	f.armFront = f.armhole(f.across(a.front), upperHandle)
	f.armBack = f.armhole(f.across(a.back), upperHandle)
	if f.RacerWidth > 0 {
		f.armBack = f.armhole(pt{X: f.RacerWidth / 2, Y: f.racerAt()}, racerHandle)
	}
}

// racerAt is the level at which a racer back is narrowest.
func (f *frame) racerAt() float64 { return f.NeckDropBack + racerLevel*(f.arm.Y-f.NeckDropBack) }

// across is the across-chest point, where the armhole is upright.
func (f *frame) across(inset float64) pt {
	d := f.arm.Sub(f.tip)
	level := f.style.armhole.level
	if f.style.sleeve.kind == setIn {
		level *= math.Min(levelMost, levelBase-levelSlope*d.X/d.Y)
	}
	if f.style.sleeve.kind == setIn { // over a wide chest the seam runs out all the way
		inset *= math.Min(1, math.Max(insetLeast, insetBase-insetSlope*d.X/d.Y))
	}
	return pt{X: f.tip.X - inset*f.ShoulderWidth, Y: f.tip.Y + level*d.Y}
}

// armhole leaves the shoulder about square to its seam, is upright at the across
// point and runs out to the underarm at the cut's foot angle.
func (f *frame) armhole(across pt, k float64) chain {
	h, g := across.Y-f.tip.Y, f.arm.Sub(across)
	lean := math.Min(f.slope, shoulderLean*math.Atan2(f.tip.X-across.X, h))
	foot := curve.Heading(math.Min(f.style.armhole.foot*degree, footLimit*math.Atan2(g.Y, g.X)))
	reach := math.Min(footHandle*g.X/foot.X, footHandleY*g.Y/math.Max(foot.Y, footLeast))
	return curve.Join(
		curve.Bezier(f.tip, f.tip.Add(pt{X: -math.Sin(lean), Y: math.Cos(lean)}.Mul(k*h)), across.Sub(pt{Y: k * h}), across),
		curve.Bezier(across, across.Add(pt{Y: lowerHandle * g.Y}), f.arm.Sub(foot.Mul(reach)), f.arm))
}

// raglanSeam leaves the neck seam part of the way from centre to HPS, runs almost
// straight to the underarm and flattens into it.
func (f *frame) raglanSeam(neck chain, part float64) chain {
	head, _ := neck.CutAtLength(part * neck.Length())
	from := head.End()
	chord := f.arm.Sub(from)
	bow := curve.Right(chord).Mul(-raglanBow)
	foot := curve.Heading(f.style.armhole.foot * degree)
	return curve.Bezier(from, from.Add(chord.Mul(raglanUpper)).Add(bow), f.arm.Sub(foot.Mul(raglanLower*chord.Norm())), f.arm)
}

// drawSide draws the side seam and the hem.
func (f *frame) drawSide() {
	b := f.style.body
	rise := b.tail * f.BodyLength
	foot := pt{X: b.hem * f.ChestHalf / 2, Y: f.BodyLength - rise}
	h := foot.Y - f.arm.Y
	in := waistShaping(f.group) * b.waist * h / sideReach
	f.side = curve.Bezier(f.arm, f.arm.Add(pt{X: -in, Y: sideUpper * h}), foot.Add(pt{X: -in - sideFlare*(foot.X-f.arm.X), Y: -sideLower * h}), foot)
	if rise == 0 {
		f.hem = curve.Line(foot, pt{Y: f.BodyLength})
		return
	}
	flat := pt{X: math.Max(f.NeckWidth/2+tailClear, tailLevel*foot.X), Y: f.BodyLength}
	sweep := foot.X - flat.X
	f.hem = curve.Join(
		curve.Bezier(foot, foot.Add(pt{X: -tailInward * sweep, Y: tailSteep * rise}), flat.Add(pt{X: tailSweep * sweep}), flat),
		curve.Line(flat, pt{Y: f.BodyLength}))
}

// neck, armhole and collar edge of one side.
func (f *frame) neck(s Side) chain {
	if s == Back {
		return f.neckBack
	}
	return f.neckFront
}

func (f *frame) armholeOf(s Side) chain {
	if s == Back {
		return f.armBack
	}
	return f.armFront
}

// shoulder is the shoulder seam, HPS to shoulder point.
func (f *frame) shoulder() chain { return curve.Line(f.hps, f.tip) }

// outline is the right half of a body piece, from the neck at the centre to the
// hem at the centre.
func (f *frame) outline(s Side) chain {
	neck, armhole := f.neck(s), f.armholeOf(s)
	if f.style.sleeve.kind == toNeck {
		head, _ := splitNeck(neck, armhole.Start())
		return curve.Join(head, armhole, f.side, f.hem)
	}
	return curve.Join(neck, f.shoulder(), armhole, f.side, f.hem)
}

// splitNeck parts a neck seam where a raglan seam meets it, into the body's part
// and the sleeve's. Neck seams run outward all the way, so x finds the place.
func splitNeck(neck chain, at pt) (body, sleeve chain) {
	body, sleeve, _ = neck.CutWhere(func(q pt) float64 { return q.X - at.X })
	return body, sleeve
}
