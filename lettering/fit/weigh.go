package fit

import (
	"math"
	"strings"
	"unicode"

	"yokeline/lettering/typeface"
	"yokeline/lettering/weight"
)

// lightKey asks for the lightest weight of a face whose strokes are a share of
// the letter height.
type lightKey struct {
	face  *typeface.Face
	set   weight.Set
	share float64
}

type thinKey struct {
	cut cutKey
	set weight.Set
}

// alphabet returns the letters that the stroke of a text is held against.
func (r *Request) alphabet() weight.Set {
	if strings.ContainsFunc(r.Text, unicode.IsLower) {
		return weight.Letters
	}
	return weight.Capitals
}

// lightest returns the lightest instance whose letters have the stroke asked
// for at the height asked, or the heaviest there is; a face without a weight
// axis as it is.
func (f *Fitter) lightest(r *Request, face *typeface.Face) (*typeface.Face, error) {
	if r.Stroke == 0 {
		return face, nil
	}
	key := lightKey{face, r.alphabet(), r.Stroke / r.Height}
	wght, ok := f.lights[key]
	if !ok {
		var err error
		if wght, _, err = weight.Lightest(face, key.set, key.share); err != nil {
			return nil, err
		}
		if len(f.lights) >= maxCuts {
			clear(f.lights)
		}
		f.lights[key] = wght
	}
	return instance(face, math.NaN(), wght)
}

// stroke fills in the thinnest stroke of the name's alphabet as it came out,
// when a stroke was asked for. A width scale below 1 thins upright stems only;
// all are taken as thinned.
func (f *Fitter) stroke(r *Request, l *line, n *Name) error {
	n.StrokeThin = math.NaN()
	if r.Stroke == 0 {
		return nil
	}
	key := thinKey{cutKey{l.cut.Face(), r.bold()}, r.alphabet()}
	thin, ok := f.thins[key]
	if !ok {
		var err error
		if thin, err = weight.Thinnest(l.cut, key.set); err != nil {
			return err
		}
		if len(f.thins) >= maxCuts {
			clear(f.thins)
		}
		f.thins[key] = thin
	}
	n.StrokeThin = thin * n.LetterHeight * math.Min(1, n.WidthScale)
	if !(n.StrokeThin >= r.Stroke) {
		n.StrokeShort = r.Stroke - n.StrokeThin
	}
	return nil
}
