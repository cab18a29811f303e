package bench_test

import (
	"bytes"
	"encoding/binary"
	"encoding/xml"
	"flag"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/proof/bench"
)

var long = flag.Bool("long", false, "read 500 pieces back, not 20")

// randomPiece is a number or an arched name whose outermost colour no other layer
// has.
func randomPiece(t *testing.T, r *rand.Rand) (piece sizes.Piece, outermost order.Colour) {
	join := outline.Join(r.IntN(3))
	asked := number([]order.Outline{ring(int64(2+r.IntN(4)), white, join), ring(int64(2+r.IntN(4)), navy, join)}[:r.IntN(3)]...)
	outermost = []order.Colour{gold, white, navy}[len(asked.Outlines)]
	if r.IntN(2) == 0 {
		asked.Face = []string{"graduate", "quantico", "oswald"}[r.IntN(3)]
		return sized(t, garment.TwoButton, strconv.Itoa(r.IntN(100)), asked), outermost
	}
	text := ""
	for range 1 + r.IntN(9) {
		text += string(rune('A' + r.IntN(26)))
	}
	return sized(t, garment.TwoButton, text, name([]string{"oswald", "saira", "alfa-slab-one", "oleo-script", "league-gothic"}[r.IntN(5)], asked.Outlines...)), outermost
}

func inkHeight(p sizes.Piece) float64 {
	if p.Name != nil {
		return p.Name.InkHeight
	}
	return p.Number.InkHeight
}

func spanOf(paths []drawn) geom.Rect {
	box := geom.EmptyRect()
	for _, p := range paths {
		box = box.Union(p.bounds())
	}
	return box
}

// What two foreign readers find in the files is as wide and as high as what was
// sized, and on a page of the size that the file names.
func TestFilesReadBackAsWideAsTheSizedPiece(t *testing.T) {
	tool(t, "mutool")
	tool(t, "rsvg-convert")
	n := 20
	if *long {
		n = 500
	}
	r, b, worst := rand.New(rand.NewPCG(11, 4)), newBench(t), 0.0
	for range n {
		piece, outermost := randomPiece(t, r)
		method := order.Methods()[r.IntN(len(order.Methods()))]
		art := made(t, piece, method.ID)
		o := bench.Options{Unsigned: r.IntN(2) == 0}
		what := piece.Text() + " " + piece.Asked.Face + " " + method.ID
		page := bench.Extent(art, o)
		pdf := traced(t, file(t, "art.pdf", written(t, func(w io.Writer) error { return b.PDF(w, art, o) })))
		svg := converted(t, written(t, func(w io.Writer) error { return b.SVG(w, art, o) }))
		for i, s := range []sheet{pdf, svg} {
			assert.InDelta(t, page.Width(), s.wide, 0.01, "%s page", what)
			assert.InDelta(t, page.Height(), s.high, 0.01, "%s page", what)
			if outermost == white && method.ID == "direct-to-film" {
				continue // the white under it has its colour too
			}
			paths := s.filled(outermost.Hex, outermost.Name)
			require.NotEmpty(t, paths, what)
			box := spanOf(paths)
			off := math.Abs(box.Width() - piece.InkWidth())
			worst = math.Max(worst, off)
			assert.Less(t, off, 0.02, "%s: %.4f mm wide in file %d, sized as %.4f", what, box.Width(), i, piece.InkWidth())
			assert.InDelta(t, inkHeight(piece), box.Height(), 0.02, "%s high in file %d", what, i)
		}
	}
	t.Logf("%d pieces, each as SVG and PDF: widths off by %.4f mm at most", n, worst)
}

// Read back, mirrored art has the areas of the plain art negated, and its lengths.
func TestMirroredFilesAreTheReflectionOfPlainOnes(t *testing.T) {
	b := newBench(t)
	art := made(t, sized(t, garment.TwoButton, "2", number(ring(4, navy, outline.Round))), "cut film")
	require.True(t, art.Mirrored)
	for _, what := range []string{"svg", "pdf"} {
		read := func(a layers.Art) geom.Region {
			if what == "svg" {
				return converted(t, written(t, func(w io.Writer) error { return b.SVG(w, a, bench.Options{}) })).filled(gold.Hex, gold.Name)[0].rings
			}
			return traced(t, file(t, "a.pdf", written(t, func(w io.Writer) error { return b.PDF(w, a, bench.Options{}) }))).filled(gold.Hex, gold.Name)[0].rings
		}
		mirrored, plain := read(art), read(art.Mirror())
		require.Equal(t, len(plain), len(mirrored))
		found := 0
		for i := range plain {
			if len(plain[i]) < 3 {
				continue // a move that some writers add at the end
			}
			found++
			assert.NotZero(t, plain[i].Area())
			assert.InEpsilon(t, -plain[i].Area(), mirrored[i].Area(), 1e-5, what)
			assert.InDelta(t, (geom.Region{plain[i]}).Perimeter(), (geom.Region{mirrored[i]}).Perimeter(), 0.02, what)
		}
		assert.Positive(t, found)
	}
}

func TestPDFHasALayerForEachAndNamedSpotColours(t *testing.T) {
	b := newBench(t)
	piece := sized(t, garment.TwoButton, "27", number(ring(3, white, outline.Round), ring(3, order.Colour{Name: "Größe #1/navy", Hex: "#14284b"}, outline.Round)))
	for method, want := range map[string][]string{
		"cut film":        {"white", "gold", "Größe #1/navy", "cut contour", "label", "unsigned"},
		"printed film":    {"cut contour", "All", "label", "unsigned"},
		"screen transfer": {"white", "gold", "Größe #1/navy", "All", "label", "unsigned"},
		"direct-to-film":  {"white", "label", "unsigned"},
		"sewn twill":      {"white", "gold", "Größe #1/navy", "cut contour", "stitch line", "label", "unsigned"},
	} {
		art := made(t, piece, method)
		o := bench.Options{Label: label(piece), Unsigned: true}
		path := file(t, "art.pdf", written(t, func(w io.Writer) error { return b.PDF(w, art, o) }))
		assert.Contains(t, run(t, "qpdf", "--check", path), "No syntax or stream encoding errors")
		s := traced(t, path)
		spots, seen := map[string]bool{}, map[string]bool{}
		for _, p := range s.paths {
			if name, ok := strings.CutPrefix(p.space, "Separation(DeviceRGB,"); ok {
				spots[strings.TrimSuffix(name, ")")] = true
			}
			seen[p.layer] = true
			assert.True(t, p.over, "%s: %s must not cut away what it lies on", method, p.layer)
		}
		for _, name := range want {
			assert.True(t, spots[name], "%s has no spot %q: %v", method, name, spots)
		}
		assert.Len(t, spots, len(want), method)
		assert.Len(t, seen, len(art.Layers)+2, "%s: every layer, the label and the mark", method)
		assert.False(t, seen[""], "nothing is drawn outside a layer")
		assert.True(t, seen["unsigned"] && seen["label"])
		assert.Contains(t, run(t, "qpdf", "--qdf", "--object-streams=disable", path, "-"), "/OCProperties")
	}
}

func TestSVGHasOneGroupForEachLayerAndIsWellFormed(t *testing.T) {
	b := newBench(t)
	piece := sized(t, garment.TwoButton, "27", number(ring(3, white, outline.Round)))
	art := made(t, piece, "cut film")
	svg := written(t, func(w io.Writer) error {
		return b.SVG(w, art, bench.Options{Label: bench.Label{Player: `Ann "Q" <R&D>`, Place: "back number"}})
	})
	decoder, groups := xml.NewDecoder(bytes.NewReader(svg)), []string{}
	for {
		token, err := decoder.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok && e.Name.Local == "g" {
			groups = append(groups, e.Attr[0].Value)
		}
	}
	assert.Equal(t, []string{"outline-1", "digits", "registration", "weed-border", "label"}, groups)
	page := bench.Extent(art, bench.Options{})
	assert.Contains(t, string(svg), `width="`+strconv.FormatFloat(math.Round(page.Width()*1e4)/1e4, 'f', -1, 64)+`mm"`)
	assert.Contains(t, string(svg), "mirrored")
}

func TestTheSameArtGivesTheSameBytes(t *testing.T) {
	piece := sized(t, garment.TwoButton, "27", number(ring(3, white, outline.Round), ring(3, navy, outline.Round)))
	o := bench.Options{Label: label(piece), Unsigned: true}
	first, second := newBench(t), newBench(t)
	second.SVG(io.Discard, made(t, piece, "sewn twill"), bench.Options{})
	for _, method := range order.Methods() {
		a, z := made(t, piece, method.ID), made(t, piece, method.ID)
		assert.True(t, bytes.Equal(written(t, func(w io.Writer) error { return first.SVG(w, a, o) }), written(t, func(w io.Writer) error { return second.SVG(w, z, o) })), method.ID)
		assert.True(t, bytes.Equal(written(t, func(w io.Writer) error { return first.PDF(w, a, o) }), written(t, func(w io.Writer) error { return second.PDF(w, z, o) })), method.ID)
	}
}

// The label stands in the margin: off the ink, inside the page, however small
// the piece.
func TestTheLabelAndTheMarkStandOffTheInk(t *testing.T) {
	b := newBench(t)
	for what, piece := range samples(t) {
		for _, method := range []string{"cut film", "embroidery"} {
			art := made(t, piece, method)
			o := bench.Options{Label: label(piece), Unsigned: true}
			s := traced(t, file(t, "a.pdf", written(t, func(w io.Writer) error { return b.PDF(w, art, o) })))
			page := bench.Extent(art, o)
			ink := art.Ink
			ink = geom.Rect{Min: geom.Point{X: ink.Min.X - page.Min.X, Y: page.Max.Y - ink.Max.Y}, Max: geom.Point{X: ink.Max.X - page.Min.X, Y: page.Max.Y - ink.Min.Y}}
			for _, layer := range []string{"label", "unsigned"} {
				paths := s.inLayer(layer)
				require.NotEmpty(t, paths, "%s %s %s", what, method, layer)
				for _, p := range paths {
					for _, ring := range p.rings {
						for _, q := range ring {
							assert.True(t, q.X < ink.Min.X-0.5 || q.X > ink.Max.X+0.5 || q.Y < ink.Min.Y-0.5 || q.Y > ink.Max.Y+0.5, "%s %s: %s on the ink", what, method, layer)
							assert.True(t, q.X > 0 && q.X < s.wide && q.Y > 0 && q.Y < s.high, "%s %s: %s off the page", what, method, layer)
						}
					}
				}
			}
		}
	}
}

func decoded(t *testing.T, data []byte) *image.NRGBA {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	require.IsType(t, &image.NRGBA{}, img, "with transparency")
	return img.(*image.NRGBA)
}

func TestPNGIsTheInkAt300DPIOnATransparentGround(t *testing.T) {
	b := newBench(t)
	piece := sized(t, garment.TwoButton, "27", small())
	art := made(t, piece, "direct-to-film")
	data := written(t, func(w io.Writer) error { return b.PNG(w, art, bench.Options{}) })
	img := decoded(t, data)
	assert.InDelta(t, piece.InkWidth()/25.4*300, img.Rect.Dx(), 1.001)
	assert.GreaterOrEqual(t, float64(img.Rect.Dx()), piece.InkWidth()/25.4*300-0.3)
	at := bytes.Index(data, []byte("pHYs"))
	require.Positive(t, at)
	assert.Equal(t, uint32(11811), binary.BigEndian.Uint32(data[at+4:]), "dots per metre")
	count, edge := map[color.NRGBA]int{}, 0
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			p := img.NRGBAAt(x, y)
			require.True(t, p.A == 0 || p.A == 255, "a pixel is opaque or empty")
			count[p]++
			if x == 0 && p.A > 0 {
				edge++
			}
		}
	}
	assert.Positive(t, edge, "the ink reaches the edge of the picture")
	perPixel := (25.4 / 300) * (25.4 / 300)
	assert.InDelta(t, 1, float64(count[color.NRGBA{0xe8, 0xb3, 0x3a, 255}])*perPixel/-art.Layers[2].Region.Area(), 0.03, "area of the digits, but for pixels that they share with the outline")
	assert.Positive(t, count[color.NRGBA{255, 255, 255, 255}])
	assert.Positive(t, count[color.NRGBA{}], "transparent")
	assert.Equal(t, color.NRGBA{}, img.NRGBAAt(0, img.Rect.Dy()/2+img.Rect.Dy()/4))
}

func TestPNGIsMirroredMarkedAndComesWithItsWhite(t *testing.T) {
	b := newBench(t)
	asked := small()
	asked.Outlines = nil
	piece := sized(t, garment.TwoButton, "7", asked)
	art := made(t, piece, "direct-to-film")
	colours := decoded(t, written(t, func(w io.Writer) error { return b.PNG(w, art, bench.Options{}) }))
	white := decoded(t, written(t, func(w io.Writer) error { return b.WhitePNG(w, art, bench.Options{}) }))
	marked := decoded(t, written(t, func(w io.Writer) error { return b.PNG(w, art, bench.Options{Unsigned: true}) }))
	plain := decoded(t, written(t, func(w io.Writer) error { return b.PNG(w, art.Mirror(), bench.Options{}) }))
	assert.Equal(t, colours.Rect, white.Rect)
	assert.InDelta(t, float64(colours.Rect.Dy())+10/25.4*300, marked.Rect.Dy(), 1.5)
	differ := 0
	for y := range colours.Rect.Dy() {
		for x := range colours.Rect.Dx() {
			if colours.NRGBAAt(x, y) != plain.NRGBAAt(colours.Rect.Dx()-1-x, y) {
				differ++
			}
			if white.NRGBAAt(x, y).A > 0 {
				require.Equal(t, uint8(255), colours.NRGBAAt(x, y).A, "white shows beside the colours at %d, %d", x, y)
			}
		}
	}
	assert.Less(t, differ, colours.Rect.Dy()*2, "a reflection, but for a row of pixels that an edge halves")
	mark := 0
	for y := colours.Rect.Dy() + 5; y < marked.Rect.Dy(); y++ {
		for x := range marked.Rect.Dx() {
			if marked.NRGBAAt(x, y) == (color.NRGBA{0xa8, 0x36, 0x1a, 255}) {
				mark++
			}
		}
	}
	assert.Greater(t, mark, 200, "UNSIGNED is in the strip under the art")
}

func TestWhatCannotBeWrittenSaysWhy(t *testing.T) {
	b := newBench(t)
	piece := sized(t, garment.TwoButton, "7", number())
	require.ErrorContains(t, b.PNG(io.Discard, made(t, piece, "cut film"), bench.Options{}), "take SVG or PDF")
	require.ErrorContains(t, b.WhitePNG(io.Discard, made(t, piece, "sublimation"), bench.Options{}), "no white layer")
	art := made(t, piece, "direct-to-film")
	art.Ink = art.Ink.Grow(5000)
	require.ErrorContains(t, b.PNG(io.Discard, art, bench.Options{}), "too large")
	art.Layers[1].Colour.Hex = "gold"
	require.ErrorContains(t, b.SVG(io.Discard, art, bench.Options{}), "colour of digits")
}
