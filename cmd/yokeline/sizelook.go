package main

import (
	"math"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/edges"
	"yokeline/lettering/fit"
	"yokeline/lettering/numeral"
)

// looks are the flags that change how letters and digits are drawn.
type looks struct {
	embolden, stroke string
	lean             float64
	keepGap, optical bool
}

func (k *looks) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&k.embolden, "embolden", "", "grow every letter or digit outward by this much, at the height asked")
	f.StringVar(&k.stroke, "stroke", "", "thinnest stroke: the lightest weight of a weight-axis face that has it; other faces' digits are emboldened to it")
	f.Float64Var(&k.lean, "lean", 0, "degrees that letters lean to the right")
	f.BoolVar(&k.keepGap, "keep-gap", false, "on an arch, keep the --method's smallest gap between letters")
	f.BoolVar(&k.optical, "optical", false, "even the white between letters")
}

// name puts the flags into the request of a name whose height is known.
func (k looks) name(r *fit.Request) (err error) {
	if r.Embolden, err = lengthFlag("embolden", k.embolden); err != nil {
		return err
	}
	if r.Stroke, err = lengthFlag("stroke", k.stroke); err != nil {
		return err
	}
	if math.Abs(k.lean) > 60 {
		return usagef("--lean: %g is outside -60 to 60 degrees", k.lean)
	}
	r.Edges.Shear, r.Optical = k.lean*math.Pi/180, k.optical
	if k.keepGap {
		if r.SmallestGap == 0 {
			return usagef("--keep-gap needs --method: the gap is the method's")
		}
		r.KeepGap = r.SmallestGap
	}
	return nil
}

func (k looks) number(r *numeral.Request) (err error) {
	if r.Embolden, err = lengthFlag("embolden", k.embolden); err != nil {
		return err
	}
	stroke, err := lengthFlag("stroke", k.stroke)
	if err != nil {
		return err
	}
	r.EmboldenTo = stroke
	for _, a := range r.Face.Axes() {
		if a.Tag == "wght" {
			r.Stroke, r.EmboldenTo = stroke, 0
		}
	}
	return nil
}

// form reads the shape of edges that a name is drawn between; ok is false when
// --shape names no such form.
func (l loose) form() (shape edges.Shape, ok bool, err error) {
	form, err := edges.Parse(l.shape)
	if err != nil || form.Kind() == edges.Straight || strings.HasPrefix(l.shape, "vertical") {
		return shape, false, nil
	}
	rise, err := lengthFlag("rise", l.rise)
	switch {
	case err != nil:
		return shape, true, err
	case l.radius != "" || l.down:
		return shape, true, usagef("--shape %s is given by its --rise alone", l.shape)
	case rise <= 0:
		return shape, true, usagef("--shape %s needs --rise", l.shape)
	case l.limit == "":
		return shape, true, usagef("--rise is measured over the limit: give --limit too")
	}
	shape, err = form.ByRise(rise)
	return shape, true, err
}

// shapeWords lists what --shape takes.
func shapeWords() string {
	words := []string{"straight", "radial", "vertical"}
	for _, f := range edges.Forms() {
		if f.Kind() != edges.Straight && !strings.HasPrefix(f.String(), "vertical") {
			words = append(words, "\""+f.String()+"\"")
		}
	}
	return strings.Join(words, ", ")
}
