package layers_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
)

// What each method makes of digits with two outlines: layers as they lie, the order
// they are put down in, and whether they are mirrored (the mirror rule, common
// practice).
func TestEveryMethodMakesItsLayers(t *testing.T) {
	piece := sized(t, garment.TwoButton, "27", number(ring(4, white, outline.Round), ring(4, navy, outline.Round)))
	film := "outline 2:cut contour:1 outline 1:cut contour:2 digits:cut contour:3 registration:registration:0 weed border:weed border:0"
	twill := "outline 2:cut contour:1 stitch line of outline 2:stitch line:1 outline 1:cut contour:2 stitch line of outline 1:stitch line:2" +
		" digits:cut contour:3 stitch line of digits:stitch line:3 registration:registration:0"
	image := "outline 2:print:1 outline 1:print:1 digits:print:1"
	want := map[string]struct {
		layers   string
		mirrored bool
		plates   int
	}{
		"cut film":        {film, true, 3},
		"flock film":      {film, true, 3},
		"printed film":    {image + " cut contour:cut contour:2 registration:registration:0 weed border:weed border:0", false, 2},
		"screen transfer": {"outline 2:print:3 outline 1:print:2 digits:print:1 registration:registration:0", true, 3},
		"direct-to-film":  {"white:white:2 " + image, true, 2},
		"sewn twill":      {twill, false, 3},
		"satin twill":     {twill, false, 3},
		"embroidery":      {"outline 2:stitched area:1 outline 1:stitched area:2 digits:stitched area:3", false, 3},
		"sublimation":     {image, true, 1},
	}
	require.Len(t, want, len(order.Methods()))
	for _, m := range order.Methods() {
		art := of(t, piece, m.ID, layers.Default())
		var got []string
		for _, l := range art.Layers {
			got = append(got, l.Name+":"+string(l.Kind)+":"+string(rune('0'+l.Order)))
		}
		assert.Equal(t, want[m.ID].layers, strings.Join(got, " "), m.ID)
		assert.Equal(t, want[m.ID].mirrored, art.Mirrored, m.ID)
		assert.Len(t, art.Plates(), want[m.ID].plates, m.ID)
		assert.Equal(t, m.ID == "embroidery", len(art.Notes) > 0 && strings.Contains(art.Notes[0], "digitising"), m.ID)
	}
}

func TestTheInkIsAsWideAsTheSizedPiece(t *testing.T) {
	for _, join := range []outline.Join{outline.Round, outline.Mitre, outline.Bevel} {
		for _, asked := range []order.Piece{name("oswald", ring(2, white, join), ring(2, navy, join)), number(ring(2, white, join)), number()} {
			piece := sized(t, garment.TwoButton, "27", asked)
			if asked.Place == garment.BackName {
				piece = sized(t, garment.TwoButton, "Quillon", asked)
			}
			for _, method := range []string{"cut film", "printed film", "direct-to-film"} {
				art := of(t, piece, method, layers.Default())
				want := piece.InkWidth()
				if method == "printed film" {
					want += 2 * 1.75
				}
				assert.InDelta(t, want, art.Ink.Width(), 0.02, "%s %v %s", method, join, asked.Place)
			}
		}
	}
}

func TestFullFilmsNestByTheirSteps(t *testing.T) {
	piece := sized(t, garment.TwoButton, "Quillon", name("oswald", ring(2, white, outline.Round), ring(3, navy, outline.Round)))
	for _, method := range []string{"cut film", "sewn twill", "direct-to-film"} {
		art := of(t, piece, method, layers.Default())
		if art.Mirrored {
			art = art.Mirror()
		}
		shapes := []geom.Region{layer(t, art, "letters").Region, layer(t, art, "outline 1").Region, layer(t, art, "outline 2").Region}
		for i, step := range []float64{25.4 / 8, 25.4 * 3 / 16} {
			assert.True(t, inside(shapes[i], shapes[i+1], 1), "%s %d", method, i)
			least, _ := apart(shapes[i], shapes[i+1], 3)
			assert.InDelta(t, step, least, 0.01, "%s step %d", method, i+1)
		}
	}
}

func TestAKnockedOutFilmReachesUnderTheNextByTheOverlap(t *testing.T) {
	piece := sized(t, garment.TwoButton, "80", number(ring(4, white, outline.Round)))
	for _, overlap := range []float64{1.5, 2, 3} {
		s := layers.Default()
		s.Knockout, s.Overlap = true, overlap
		art := of(t, piece, "cut film", s).Mirror()
		digits, under := layer(t, art, "digits").Region, layer(t, art, "outline 1").Region
		full := of(t, piece, "cut film", layers.Default()).Mirror()
		var cut geom.Region
		for _, ring := range under { // the rings that the full film has not
			if ring.Area() < 0 && !isRing(ring, layer(t, full, "outline 1").Region) {
				cut = append(cut, ring)
			}
		}
		require.NotEmpty(t, cut)
		assert.True(t, inside(cut, digits, 1))
		least, most := apart(cut, digits, 1)
		assert.InDelta(t, overlap, least, 0.005, "overlap")
		assert.Less(t, most, overlap*1.5+0.5, "and hardly more in corners")
		assert.Less(t, under.Area(), layer(t, full, "outline 1").Region.Area()-1000, "film is saved")
	}
}

// isRing reports a ring that a region has too, by area and box.
func isRing(ring geom.Ring, r geom.Region) bool {
	for _, other := range r {
		if math.Abs(other.Area()-ring.Area()) < 0.5 &&
			math.Abs((geom.Region{other}).Bounds().Min.X-(geom.Region{ring}).Bounds().Min.X) < 0.05 {
			return true
		}
	}
	return false
}

// Wherever two separations meet, the later one reaches under the earlier by the
// trap: measured as the width of what both cover.
func TestSeparationsOverlapByTheTrapAndLeaveNoGap(t *testing.T) {
	piece := sized(t, garment.TwoButton, "86", number(ring(4, white, outline.Round), ring(4, navy, outline.Round)))
	for _, trap := range []float64{0.25, 0.4, 0.5} {
		s := layers.Default()
		s.Trap = trap
		art := of(t, piece, "screen transfer", s).Mirror()
		upper, met := layer(t, art, "digits").Region, 0
		for _, under := range []string{"outline 1", "outline 2"} {
			region := layer(t, art, under).Region
			_, solid := holes(upper)
			edge := solid
			inner, _ := holes(region)
			if under == "outline 2" { // the outer edge of the first outline
				_, edge = holes(layer(t, art, "outline 1").Region)
			}
			require.NotEmpty(t, inner)
			for _, hole := range inner {
				if !inside(geom.Region{hole}, edge, 1) {
					continue
				}
				least, _ := apart(geom.Region{hole}, edge, 1)
				if least < 3 { // not a counter's own edge
					met++
					assert.InDelta(t, trap, least, 0.005, "%s trap %g", under, trap)
				}
			}
		}
		assert.GreaterOrEqual(t, met, 4, "two digits on the first outline, and that on the second")
	}
}

func TestAColourThatComesTwiceIsOnePlateAndStillTraps(t *testing.T) {
	piece := sized(t, garment.TwoButton, "7", number(ring(4, white, outline.Round), ring(4, gold, outline.Round)))
	art := of(t, piece, "screen transfer", layers.Default()).Mirror()
	assert.Equal(t, []string{"outline 1", "digits and outline 2", "registration"}, names(art))
	first, second := art.Layers[1], art.Layers[0]
	assert.Equal(t, 1, first.Order, "gold is the top colour and goes first")
	_, white := holes(second.Region)
	inner, _ := holes(first.Region)
	require.NotEmpty(t, inner)
	require.NotEmpty(t, white)
	assert.True(t, inside(inner, white, 1), "white reaches out under the gold ring round it")
	least, _ := apart(inner[:1], white, 1)
	assert.InDelta(t, 0.4, least, 0.005)
}

func TestWhiteStaysInsideTheColoursByTheChoke(t *testing.T) {
	piece := sized(t, garment.TwoButton, "Quillon", name("oswald", ring(2, white, outline.Round)))
	for _, choke := range []float64{0.1, 0.2, 0.3} {
		s := layers.Default()
		s.Choke = choke
		art := of(t, piece, "direct-to-film", s).Mirror()
		outer, white := layer(t, art, "outline 1").Region, layer(t, art, "white").Region
		assert.True(t, inside(white, outer, 1))
		least, _ := apart(white, outer, 3)
		assert.InDelta(t, choke, least, 0.003)
	}
}

func TestThePrintIsCutOutsideItsEdge(t *testing.T) {
	piece := sized(t, garment.TwoButton, "Quillon", name("oswald", ring(2, white, outline.Round)))
	art := of(t, piece, "printed film", layers.Default())
	contour := layer(t, art, "cut contour")
	assert.True(t, inside(layer(t, art, "outline 1").Region, contour.Region, 1))
	least, _ := apart(layer(t, art, "outline 1").Region, contour.Region, 1)
	assert.InDelta(t, 1.75, least, 0.005)
	assert.Equal(t, "cut contour", contour.Spot)
	assert.Empty(t, layer(t, art, "outline 1").Spot, "the printer mixes its colours")
}

func TestTheStitchLineRunsInsideTheEdgeOfTwill(t *testing.T) {
	piece := sized(t, garment.TwoButton, "52", number(ring(4, white, outline.Round)))
	art := of(t, piece, "sewn twill", layers.Default())
	for _, under := range []string{"digits", "outline 1"} {
		line := layer(t, art, "stitch line of "+under).Line.Flatten(0.001)
		region := layer(t, art, under).Region
		assert.True(t, inside(line, region, 1))
		least, most := apart(line, region, 1)
		assert.InDelta(t, 1, least, 0.003, under)
		assert.Less(t, most, 1.03, under)
	}
}

// A blade needs round inner corners: the least radius is measured by what a disc
// of that radius rolled outside the shape can reach.
func TestInnerCornersAreEasedAndNothingElseMoves(t *testing.T) {
	piece := sized(t, garment.TwoButton, "11", number())
	art := of(t, piece, "cut film", layers.Default()).Mirror()
	eased := layer(t, art, "digits").Region
	plain, err := outline.Union(piece.Ink().Flatten(0.002))
	require.NoError(t, err)
	assert.InDelta(t, plain.Bounds().Width(), eased.Bounds().Width(), 0.001)
	gained := eased.Area() - plain.Area()
	// Each right inner corner is filled by r²(1 - π/4).
	corner := 0.25 * 0.25 * (1 - math.Pi/4)
	t.Logf("%.4f mm² gained: %.1f right corners", gained, gained/corner)
	assert.Greater(t, gained, 2*corner)
	assert.Less(t, gained, 40*corner)
	const k = 16 // so large that the arcs of the check do not count
	grown, err := outline.Offset(eased.Transform(geom.Scale(k, k)), 0.24*k, outline.Round)
	require.NoError(t, err)
	back, err := outline.Offset(grown, -0.24*k, outline.Round)
	require.NoError(t, err)
	assert.InDelta(t, eased.Area(), back.Area()/(k*k), 0.01, "nothing sharper than the radius is left")
}

func TestMirroredArtIsTheExactReflection(t *testing.T) {
	piece := sized(t, garment.TwoButton, "Quillon", name("oswald", ring(2, white, outline.Round)))
	for _, m := range order.Methods() {
		art := of(t, piece, m.ID, layers.Default())
		other := art.Mirror()
		assert.NotEqual(t, art.Mirrored, other.Mirrored)
		for i, l := range art.Layers {
			for k, ring := range l.Region {
				reflected := other.Layers[i].Region[k]
				require.Len(t, reflected, len(ring))
				for j, p := range ring {
					assert.True(t, reflected[j] == geom.Point{X: -p.X, Y: p.Y})
				}
				assert.Equal(t, ring.Area(), -reflected.Area(), "signed areas are negated")
				assert.Equal(t, (geom.Region{ring}).Perimeter(), (geom.Region{reflected}).Perimeter())
			}
		}
		assert.True(t, reflect.DeepEqual(art, other.Mirror()), "twice mirrored is as it was")
	}
}

func TestMarksStandClearOfTheInkAtThreeCornersOfEveryPlate(t *testing.T) {
	piece := sized(t, garment.TwoButton, "27", number(ring(4, white, outline.Round)))
	for _, method := range []string{"cut film", "flock film", "printed film", "screen transfer", "sewn twill"} {
		art := of(t, piece, method, layers.Default())
		marks := layer(t, art, "registration")
		require.Len(t, marks.Region, 3, method)
		outer := geom.Region{}
		for _, l := range art.Layers {
			if l.Order > 0 {
				outer = append(outer, l.Region...)
			}
		}
		for _, mark := range marks.Region {
			least, _ := apart(geom.Region{mark}, outer, 1)
			assert.GreaterOrEqual(t, least, 3.0, method)
			box := geom.Region{mark}.Bounds()
			assert.True(t, box.Union(art.Box.Grow(-0.99)) == art.Box.Grow(-0.99), "%s: inside the margin", method)
			for _, room := range art.Waste {
				apart := room.Empty() || room.Max.X < box.Min.X || room.Min.X > box.Max.X || room.Max.Y < box.Min.Y || room.Min.Y > box.Max.Y
				assert.True(t, apart || method == "screen transfer" || method == "printed film", "%s: labels keep off marks", method)
			}
		}
		for _, plate := range art.Plates() {
			assert.Equal(t, marks, layer(t, plate, "registration"), "the same place on every plate")
		}
	}
	alone := of(t, sized(t, garment.TwoButton, "27", number()), "cut film", layers.Default())
	assert.NotContains(t, names(alone), "registration", "one layer has nothing to meet")
	assert.InDelta(t, alone.Ink.Width()+16, alone.Box.Width(), 1e-9)
}

func TestTextLaidOnATailIsTheTopLayer(t *testing.T) {
	piece := sized(t, garment.TwoButton, "", frontName(true))
	require.NotEmpty(t, piece.Laid)
	art := of(t, piece, "screen transfer", layers.Default()).Mirror()
	text := layer(t, art, "text on the tail")
	assert.Equal(t, 1, text.Order)
	assert.InDelta(t, piece.Laid.Area(), text.Region.Area(), 0.01)
	letters := layer(t, art, "letters").Region
	assert.False(t, letters.Contains(inPiece(text.Region)), "the letters are knocked out under it")
	film := of(t, piece, "cut film", layers.Default()).Mirror()
	assert.True(t, inside(layer(t, film, "text on the tail").Region, layer(t, film, "letters").Region, 1))
	dtf := of(t, piece, "direct-to-film", layers.Default())
	assert.Equal(t, "text on the tail", dtf.Layers[len(dtf.Layers)-1].Name)
}

// inPiece is a point well inside the largest ring.
func inPiece(r geom.Region) geom.Point {
	shrunk, err := outline.Offset(r, -0.6, outline.Round)
	if err != nil || len(shrunk) == 0 {
		return r[0][0]
	}
	return shrunk[0][0]
}

func TestAPartedFrontNameIsMadeWithBothHalvesAtTheirPlaces(t *testing.T) {
	asked := frontName(false)
	asked.Face, asked.Case, asked.Text = "oswald", 0, "Ridgemont"
	piece := sized(t, garment.FullButton, "", asked)
	require.NotNil(t, piece.Split)
	require.False(t, piece.Split.Whole())
	art := of(t, piece, "cut film", layers.Default()).Mirror()
	left, right := math.Inf(-1), math.Inf(1)
	for _, ring := range layer(t, art, "outline 1").Region {
		if box := (geom.Region{ring}).Bounds(); box.Center().X < -piece.Split.Shift {
			left = math.Max(left, box.Max.X)
		} else {
			right = math.Min(right, box.Min.X)
		}
	}
	assert.InDelta(t, piece.Split.Gap, right-left, 0.05)
	assert.InDelta(t, piece.InkWidth(), art.Ink.Width(), 0.02)
}

func TestNeighboursOfOneColourAreOneLayer(t *testing.T) {
	piece := sized(t, garment.TwoButton, "27", number(ring(2, gold, outline.Round), ring(2, white, outline.Round)))
	art := of(t, piece, "cut film", layers.Default())
	assert.Equal(t, []string{"outline 2", "digits and outline 1", "registration", "weed border"}, names(art))
	assert.Contains(t, art.Notes[0], "made as one")
}

func TestFourFullFilmsAreAdvisedAgainst(t *testing.T) {
	green := order.Colour{Name: "green", Hex: "#0b6b3a"}
	piece := sized(t, garment.TwoButton, "2", number(ring(4, white, outline.Round), ring(4, navy, outline.Round), ring(4, green, outline.Round)))
	assert.Contains(t, strings.Join(of(t, piece, "cut film", layers.Default()).Notes, "; "), "knock the lower ones out")
	s := layers.Default()
	s.Knockout = true
	assert.Empty(t, of(t, piece, "cut film", s).Notes)
}

func TestPartsThatGrowTogetherWhenCornersAreEasedAreTold(t *testing.T) {
	piece := sized(t, garment.TwoButton, "27", number(ring(3, white, outline.Round), ring(3, navy, outline.Round))) // digits stand as cut film needs it
	assert.Empty(t, of(t, piece, "cut film", layers.Default()).Notes)
	assert.Contains(t, strings.Join(of(t, piece, "sewn twill", layers.Default()).Notes, "; "), "outline 2: openings narrower than 2 mm are closed")
}

func TestNoEdgeIsSoShortThatACutterStutters(t *testing.T) {
	piece := sized(t, garment.TwoButton, "Quillon", name("oswald", ring(2, white, outline.Mitre)))
	for _, l := range of(t, piece, "cut film", layers.Default()).Layers {
		short, all := 0, 0
		for _, ring := range l.Region {
			for i, p := range ring {
				if p.Sub(ring[(i+1)%len(ring)]).Norm() < 0.01 {
					short++
				}
				all++
			}
		}
		t.Logf("%s: %d points, %d edges under 0.01 mm", l.Name, all, short)
		assert.LessOrEqual(t, short, all/200, l.Name)
	}
}

func TestSettingsSayTheirRangesAndRefuseTheRest(t *testing.T) {
	s := layers.Default()
	require.NoError(t, s.Check())
	for _, v := range s.Values() {
		assert.GreaterOrEqual(t, v.MM, v.Least, v.Name)
		assert.LessOrEqual(t, v.MM, v.Most, v.Name)
		assert.Equal(t, "common practice, no source", v.Evidence)
		require.NoError(t, s.Set(v.Name, v.Most))
		require.ErrorContains(t, s.Set(v.Name, v.Most+0.01), v.Name)
		require.Error(t, s.Set(v.Name, math.NaN()))
	}
	assert.Equal(t, 0.5, s.Trap)
	require.ErrorContains(t, s.Set("bleed", 3), "use overlap, ease")
	piece := sized(t, garment.TwoButton, "2", number())
	_, err := layers.Of(piece, "cut film", layers.Settings{})
	require.ErrorContains(t, err, "overlap of 0 mm: set it from 1.5 to 3 mm")
	_, err = layers.Of(piece, "potato print", layers.Default())
	require.ErrorContains(t, err, "cut film, printed film")
}
