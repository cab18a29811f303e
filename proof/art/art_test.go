package art_test

import (
	"encoding/xml"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/proof/art"
)

func TestTheDrawingIsAsLargeAsItsBoxAndYPointsDown(t *testing.T) {
	var p geom.Path
	p.MoveTo(geom.Point{X: -5, Y: 0})
	p.QuadTo(geom.Point{X: 0, Y: 10}, geom.Point{X: 5, Y: 0})
	p.CubeTo(geom.Point{X: 1.00004, Y: -0.00001}, geom.Point{X: 1, Y: 1}, geom.Point{X: 2.5, Y: 2})
	p.LineTo(geom.Point{X: 0, Y: 1})
	p.Close()
	var out strings.Builder
	require.NoError(t, art.Write(&out, `7 & "07" <b>`, geom.Rect{Min: geom.Point{X: -5, Y: -1}, Max: geom.Point{X: 5, Y: 5.5}},
		[]art.Layer{{ID: "letters", Path: p, Colour: "#000000"}}))

	var svg struct {
		Width   string `xml:"width,attr"`
		Height  string `xml:"height,attr"`
		ViewBox string `xml:"viewBox,attr"`
		Title   string `xml:"title"`
		Paths   []struct {
			ID   string `xml:"id,attr"`
			Data string `xml:"d,attr"`
		} `xml:"path"`
	}
	require.NoError(t, xml.Unmarshal([]byte(out.String()), &svg))
	assert.Equal(t, "10mm", svg.Width)
	assert.Equal(t, "6.5mm", svg.Height)
	assert.Equal(t, "-5 -5.5 10 6.5", svg.ViewBox)
	assert.Equal(t, `7 & "07" <b>`, svg.Title)
	assert.Equal(t, "M-5 0Q0 -10 5 0C1 0 1 -1 2.5 -2L0 -1Z", svg.Paths[0].Data)
}
