package order

import (
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"
)

// tail reads tail: true, or a mapping that says how the tail looks and what
// stands in it.
func (d *draft) tail(p *piece) func(value) {
	return func(v value) {
		if v.node.Kind != yaml.MappingNode {
			if on, ok := v.flag(); ok && on {
				p.Tail = &Tail{Plain: true}
			}
			return
		}
		t := &Tail{Face: habits(p.Place).face, Plain: true}
		kind := cutOut
		_, ok := v.fields("{length: 90%, text: ALDER POINT}", []field{
			{key: "length", read: share(&t.Length, 20, 150)},
			{key: "thickness", read: share(&t.Thickness, 2, 60)},
			{key: "gap", read: share(&t.Gap, 2, 200)},
			{key: "curl", read: t.own(share(&t.Curl, -100, 100))},
			{key: "taper", read: t.own(share(&t.Taper, 0, 100))},
			{key: "slope", read: t.own(func(v value) { set(&t.Slope)(v.degrees(20)) })},
			{key: "text", read: func(v value) { set(&t.Text)(v.text(nameLetters)) }},
			{key: "face", read: d.face(&t.Face)},
			{key: "set", read: word(&kind, "way to set text in a tail", []string{cutOut, laidOn})},
			{key: "colour", also: "color", read: func(v value) { set(&t.Colour)(v.colour(d.o.Colours)) }},
		})
		if !ok {
			return
		}
		if t.Laid = kind == laidOn; t.Laid && t.Colour == (Colour{}) {
			v.keyFault("add colour: and the colour of the text", "%s: text that is laid on needs a colour", v.name)
		}
		p.Tail = t
	}
}

// The words for how text stands in a tail.
const (
	cutOut = "cut out"
	laidOn = "laid on"
)

// own marks that the job shapes the tail itself: what it leaves out is then 0
// and not the default.
func (t *Tail) own(read func(value)) func(value) {
	return func(v value) {
		if t.Plain {
			t.Plain, t.Curl, t.Taper = false, plainCurl, plainTaper
		}
		read(v)
	}
}

// The curl and taper of a tail of which the job says one and not the other:
// those of the tail that is drawn when nothing is said.
const (
	plainCurl  = 0.3
	plainTaper = 0.9
)

func share(to *float64, least, most float64) func(value) {
	return func(v value) { set(to)(v.percent(least, most, "write a share such as 30%")) }
}

// degrees returns an angle written as 12deg or 12°.
func (v value) degrees(most float64) (float64, bool) {
	s, ok := v.scalar()
	if !ok {
		return 0, false
	}
	figure, unit := strings.CutSuffix(strings.TrimSpace(s), "deg")
	if !unit {
		figure, unit = strings.CutSuffix(figure, "°")
	}
	angle, err := strconv.ParseFloat(strings.TrimSpace(figure), 64)
	switch {
	case err != nil || !unit:
		v.fault("write degrees, such as 12deg", "%s: %q is not an angle", v.name, s)
	case angle < -most || angle > most:
		v.fault("", "%s: %s is out of reach: between -%g and %g degrees", v.name, s, most, most)
	default:
		return angle, true
	}
	return 0, false
}
