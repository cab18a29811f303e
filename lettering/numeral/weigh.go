package numeral

import (
	"fmt"
	"math"

	"yokeline/lettering/typeface"
	"yokeline/lettering/weight"
)

// solveKey asks for a weight: of a face, by its axis or by emboldening, with a
// stroke of a share of the digits' height.
type solveKey struct {
	face     *typeface.Face
	embolden bool
	share    float64
}

// solution is a value of the weight axis or an amount in font units.
type solution struct {
	value float64
	ok    bool
}

// digits returns the digits of the request's text, at the weight asked.
func (s *Sizer) digits(r *Request) (*digits, error) {
	face, err := instance(r.Face, r.Wdth, r.Wght)
	if err != nil {
		return nil, err
	}
	if r.Stroke > 0 {
		if face, err = s.lightest(face, r.Stroke/r.Height); err != nil {
			return nil, err
		}
	}
	amount := 0.0
	if r.Embolden > 0 || r.EmboldenTo > 0 {
		if amount, err = s.amount(r, face); err != nil {
			return nil, err
		}
	}
	d, err := s.cut(face, amount)
	if err != nil {
		return nil, err
	}
	if err := d.load(r.Text); err != nil {
		return nil, err
	}
	return d, d.makeRoom(r)
}

// lightest returns the lightest instance whose ten digits have the stroke, or
// the heaviest there is; a face without a weight axis is returned as it is.
func (s *Sizer) lightest(face *typeface.Face, share float64) (*typeface.Face, error) {
	key := solveKey{face, false, share}
	found, ok := s.solved[key]
	if !ok {
		wght, enough, err := weight.Lightest(face, weight.Digits, share)
		if err != nil {
			return nil, err
		}
		found = solution{wght, enough}
		s.keep(key, found)
	}
	return instance(face, math.NaN(), found.value)
}

// amount returns what the digits are emboldened by, in font units.
func (s *Sizer) amount(r *Request, face *typeface.Face) (float64, error) {
	shortest, err := shortestOf(face)
	if err != nil || r.EmboldenTo == 0 {
		return r.Embolden * shortest / r.Height, err
	}
	key := solveKey{face, true, r.EmboldenTo / r.Height}
	found, ok := s.solved[key]
	if !ok {
		if found.value, found.ok, err = weight.EmboldenTo(face, weight.Digits, key.share, shortest); err != nil {
			return 0, err
		}
		s.keep(key, found)
	}
	return found.value, nil
}

func (s *Sizer) keep(key solveKey, found solution) {
	if len(s.solved) >= maxFaces {
		clear(s.solved)
	}
	s.solved[key] = found
}

// judgeStroke fills in what became of the weight that was asked for.
func (n *Number) judgeStroke(r *Request, d *digits) {
	face := d.cut.Face()
	n.Wght = math.NaN()
	if v, ok := face.Settings()["wght"]; ok {
		n.Wght = v
	}
	if a := d.cut.Amount(); a > 0 {
		n.Embolden = r.Embolden
		if shortest, err := shortestOf(face); err == nil && r.EmboldenTo > 0 {
			n.Embolden = a / shortest * r.Height
		}
	}
	if asked := math.Max(r.Stroke, r.EmboldenTo); asked > 0 && !(n.StrokeThin >= asked) {
		n.StrokeShort = asked - n.StrokeThin // NaN passes on
	}
}

// instance returns the face with the axis values asked, NaN leaving an axis as
// it stands.
func instance(face *typeface.Face, wdth, wght float64) (*typeface.Face, error) {
	if math.IsNaN(wdth) && math.IsNaN(wght) {
		return face, nil
	}
	values := face.Settings()
	if !math.IsNaN(wdth) {
		values["wdth"] = wdth
	}
	if !math.IsNaN(wght) {
		values["wght"] = wght
	}
	return face.Instance(values)
}

// shortestOf returns the height of the shortest of a face's ten digits, which
// amounts of emboldening are held against, so that all numbers of a team get
// the same.
func shortestOf(face *typeface.Face) (float64, error) {
	shortest := math.Inf(1)
	for c := '0'; c <= '9'; c++ {
		id, err := face.Digit(c)
		if err != nil {
			return 0, err
		}
		if h := face.Bounds(id).Height(); h > 0 {
			shortest = min(shortest, h)
		}
	}
	if math.IsInf(shortest, 1) {
		return 0, fmt.Errorf("the digits of face %s have no ink; use another face", face.ID())
	}
	return shortest, nil
}
