package specimen_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/fonts"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
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

func TestEveryShapeIsDrawnInsideItsCell(t *testing.T) {
	block, err := typeface.Embedded("oswald")
	require.NoError(t, err)
	script, err := typeface.Embedded("yellowtail")
	require.NoError(t, err)
	book, err := specimen.Shapes(page.Letter(), block, []*typeface.Face{script})
	require.NoError(t, err)
	words, fills := "", 0
	for _, p := range book.Pages() {
		var captions, drawings []geom.Rect
		for _, op := range p.Ops() {
			switch o := op.(type) {
			case page.Words:
				words += o.Text + "\n"
				captions = append(captions, geom.Rect{Min: geom.Point{X: o.X, Y: o.Y - 2.5}, Max: geom.Point{X: o.X + 20, Y: o.Y + 0.5}})
			case page.Fill:
				fills++
				drawings = append(drawings, o.Path.Bounds())
			}
		}
		for _, d := range drawings {
			for _, c := range captions {
				apart := d.Min.X > c.Max.X || d.Max.X < c.Min.X || d.Min.Y > c.Max.Y || d.Max.Y < c.Min.Y
				assert.True(t, apart, "a drawing at %v lies on a caption at %v", d, c)
			}
		}
	}
	for _, shape := range order.Shapes() {
		assert.Contains(t, words, shape+"\n")
	}
	assert.Equal(t, len(order.Shapes())+1+4, fills, "every shape, the oblique, four tails")
}
