package typeface

import (
	"encoding/binary"
	"fmt"
	"math"
	"slices"
	"sync/atomic"

	"github.com/go-text/typesetting/font"
)

// Instance returns the face with the given axis values; axes not named stand
// at their default. Without values it returns the face at its default, and
// asking twice usually gives the same Face (a bounded number is kept). It is
// an error, naming what there is, to ask for an axis the face does not have or
// for a value outside the axis's range: a value is never moved silently.
func (f *Face) Instance(axes map[string]float64) (*Face, error) {
	s := f.source
	settings, err := s.settingsOf(axes)
	if err != nil {
		return nil, err
	}
	if slices.Equal(settings, s.root.settings) {
		return s.root, nil
	}
	key := make([]byte, 0, 8*len(settings))
	for _, v := range settings {
		key = binary.BigEndian.AppendUint64(key, math.Float64bits(v))
	}
	if kept := s.instances.get(string(key)); kept != nil {
		return kept, nil
	}
	made, err := s.instance(settings)
	if err != nil {
		return nil, err
	}
	return s.instances.put(string(key), made), nil
}

func (s *source) settingsOf(axes map[string]float64) ([]float64, error) {
	settings := make([]float64, len(s.axes))
	known := 0
	for i, a := range s.axes {
		v, ok := axes[a.Tag]
		if !ok {
			settings[i] = a.Default
			continue
		}
		known++
		if !(v >= a.Min && v <= a.Max) { // also catches NaN
			return nil, fmt.Errorf("%s: axis %s cannot be %g; it goes from %g to %g", s.id, a.Tag, v, a.Min, a.Max)
		}
		settings[i] = v
	}
	if known == len(axes) {
		return settings, nil
	}
	var unknown []string
	for tag := range axes {
		if !slices.ContainsFunc(s.axes, func(a Axis) bool { return a.Tag == tag }) {
			unknown = append(unknown, tag)
		}
	}
	slices.Sort(unknown)
	return nil, fmt.Errorf("%s has no axis %q; its axes: %s", s.id, unknown[0], s.describe())
}

// instance builds the face at the given settings and measures its heights. A
// damaged font may make the parser panic; that becomes an error.
func (s *source) instance(settings []float64) (made *Face, err error) {
	defer func() {
		if r := recover(); r != nil {
			made, err = nil, fmt.Errorf("the variations of %s are damaged (%v); use another copy of the font", s.id, r)
		}
	}()
	f := &Face{
		source: s, settings: settings,
		drawing: &font.Face{Font: s.font},
		pages:   make([]atomic.Pointer[page], (s.glyphs+63)/64),
	}
	if len(s.axes) > 0 {
		design := make([]float32, len(settings))
		for i, v := range settings {
			design[i] = float32(v)
		}
		f.coords = s.font.NormalizeVariations(design)
		f.drawing.SetCoords(f.coords)
	}
	if id, ok := s.nominal('H'); ok {
		f.capTop = inkTop(f, id)
	}
	if id, ok := s.nominal('x'); ok {
		f.xTop = inkTop(f, id)
	}
	if f.capTop <= 0 {
		return nil, fmt.Errorf("the H of %s has no ink above the baseline, so there is no letter height to measure; use another font", s.id)
	}
	return f, nil
}

func inkTop(f *Face, id uint32) float64 {
	if box := f.glyph(id).box; !box.Empty() {
		return box.Max.Y
	}
	return 0
}
