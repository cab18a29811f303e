package specimen_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/fonts"
	"yokeline/lettering/geom"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
	"yokeline/proof/specimen"
)

func TestEveryFaceIsDrawnOnTheSheet(t *testing.T) {
	var faces []specimen.Face
	for _, entry := range fonts.Catalogue() {
		face, err := typeface.Embedded(entry.ID)
		require.NoError(t, err)
		faces = append(faces, specimen.Face{Face: face, Name: entry.Name, Role: entry.Role, Note: entry.ID, Script: entry.Script})
	}
	book, err := specimen.Pages(page.A4(), faces)
	require.NoError(t, err)
	words, fills := "", 0
	for _, p := range book.Pages() {
		paper := geom.Rect{Max: geom.Point{X: p.Sheet.W, Y: p.Sheet.H}}
		for _, op := range p.Ops() {
			switch o := op.(type) {
			case page.Words:
				words += o.Text + "\n"
			case page.Fill:
				fills++
				assert.Equal(t, paper, paper.Union(o.Path.Bounds()), "lettering stays on the paper")
			}
		}
	}
	for _, f := range faces {
		assert.Equal(t, 1, strings.Count(words, f.Note+"\n"), f.Note)
	}
	assert.Equal(t, 2*len(faces), fills, "a name and the digits of each")
}
