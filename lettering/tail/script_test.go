package tail_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// scripts are the embedded script faces.
var scripts = []string{"yellowtail", "damion", "oleo-script"}

// script sets a name and returns its settled ink.
func script(t testing.TB, face, text string, height float64) geom.Region {
	t.Helper()
	ink, err := inkOf(face, text, height)
	require.NoError(t, err)
	return ink
}

func inkOf(face, text string, height float64) (geom.Region, error) {
	f, err := typeface.Embedded(face)
	if err != nil {
		return nil, err
	}
	line, err := f.NewShaper().Shape(text, "")
	if err != nil {
		return nil, err
	}
	k := height / f.CapHeight()
	var ink geom.Path
	for _, g := range line.Glyphs {
		m := geom.Translate(g.X, g.Y).Then(geom.Scale(k, k))
		ink = append(ink, f.Outline(g.ID).Transform(m)...)
	}
	middle := geom.Translate(-ink.Bounds().Center().X, 0)
	return outline.Union(ink.Transform(middle).Flatten(outline.Tolerance / 2))
}
