package sizes_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
)

// scripted is the order of herons with a script front name over a number.
func scripted(edit func(*order.Piece)) *order.Order {
	o := herons(player("Ng", "7", garment.Adult, "M"), player("Quill", "12", garment.Youth, "S"))
	gold := order.Colour{Name: "gold", Hex: "#e8b33a"}
	name := order.Piece{Place: garment.FrontName, Text: "Herons", Face: "yellowtail", Case: spelling.Typed, Shape: "straight", Spacing: "baseline",
		Height: order.Height{Length: length.Inches(3, 1)}, Colour: gold, Tail: &order.Tail{Plain: true},
		Outlines: []order.Outline{{Width: length.Inches(1, 8), Colour: o.Pieces[0].Colour}}}
	edit(&name)
	o.Pieces = append(o.Pieces, name, order.Piece{Place: garment.FrontNumber, Face: "quantico", Height: order.Height{Length: length.Inches(3, 1)},
		Shape: "straight", Spacing: "baseline", Colour: gold})
	return o
}

func frontName(t *testing.T, o *order.Order, i int) (sizes.Piece, sizes.Piece) {
	t.Helper()
	s := resolve(t, o, nil)
	name, ok := s.Players[i].Piece(garment.FrontName)
	require.True(t, ok)
	number, ok := s.Players[i].Piece(garment.FrontNumber)
	require.True(t, ok)
	return name, number
}

func TestATailBelongsToThePiece(t *testing.T) {
	for i := range 2 {
		bare, _ := frontName(t, scripted(func(p *order.Piece) { p.Tail = nil }), i)
		name, number := frontName(t, scripted(func(*order.Piece) {}), i)
		require.NotNil(t, name.Drawn)
		box := name.Ink().Bounds()
		assert.InDelta(t, box.Width()+25.4/4, name.InkWidth(), 0.01, "outlines of 1/8 in on both sides")
		assert.InDelta(t, 0, box.Min.X+box.Max.X, 0.01, "centred with its tail")
		assert.LessOrEqual(t, name.InkWidth(), name.Room.Width)
		assert.Less(t, box.Min.Y, bare.Ink().Bounds().Min.Y-5, "the tail hangs under the letters")
		assert.Greater(t, number.Top, name.At.Y-box.Min.Y+3, "and the number clears it")
	}
}

func TestANameWithItsTailIsMadeSmallerTogether(t *testing.T) {
	limit := length.Inches(7, 1)
	bare, _ := frontName(t, scripted(func(p *order.Piece) { p.Tail, p.Limit = nil, &limit }), 0)
	name, _ := frontName(t, scripted(func(p *order.Piece) { p.Limit = &limit; p.Tail.Length = 1.2 }), 0)
	assert.LessOrEqual(t, bare.InkWidth(), limit.MM())
	assert.LessOrEqual(t, name.InkWidth(), limit.MM())
	assert.Greater(t, name.InkWidth(), limit.MM()-0.5, "and not more than needed")
	assert.Less(t, name.Height(), bare.Height())
	assert.Equal(t, limit.MM(), name.Name.Limit)
}

func TestTextInATailIsCutOutOrLaidOn(t *testing.T) {
	area := func(p geom.Path) float64 { return p.Flatten(0.01).Area() }
	plain, _ := frontName(t, scripted(func(p *order.Piece) { p.Tail.Thickness = 0.4 }), 0)
	text := func(laid bool) func(*order.Piece) {
		return func(p *order.Piece) {
			p.Tail.Thickness, p.Tail.Text, p.Tail.Face, p.Tail.Laid, p.Tail.Colour = 0.4, "ALDER POINT", "oswald", laid, p.Colour
		}
	}
	cut, _ := frontName(t, scripted(text(false)), 0)
	assert.Less(t, area(cut.Ink()), area(plain.Ink())-20, "mm² of letters are gone")
	assert.Empty(t, cut.Laid)
	laid, _ := frontName(t, scripted(text(true)), 0)
	assert.InDelta(t, area(plain.Ink()), area(laid.Ink()), 0.01)
	require.NotEmpty(t, laid.Laid)
	assert.InDelta(t, area(plain.Ink())-area(cut.Ink()), laid.Laid.Area(), 0.2, "the same letters")
	_, err := sizes.Resolve(context.Background(), scripted(func(p *order.Piece) {
		p.Tail.Text, p.Tail.Face = "Đ", "graduate"
	}), sizes.Options{Face: typeface.Embedded})
	require.ErrorContains(t, err, "text in the tail")
}

func TestALetteringFormIsPlacedByItsHighestPlace(t *testing.T) {
	rise := length.Inches(3, 4)
	for _, shape := range []string{"bulge", "pinch", "arched top", "sunken top", "arched foot", "taper", "slant"} {
		name, number := frontName(t, scripted(func(p *order.Piece) { p.Tail, p.Shape, p.Rise, p.Face = nil, shape, &rise, "oswald" }), 0)
		assert.Equal(t, shape, name.Name.Form())
		box := name.Ink().Bounds()
		assert.GreaterOrEqual(t, name.At.Y-box.Max.Y, name.Top-3, "%s stays under its cap line but for overshoot", shape)
		assert.Greater(t, number.Top, name.At.Y, shape)
		if name.Name.Verdict != fit.Over {
			assert.LessOrEqual(t, name.InkWidth(), name.Room.Width, shape)
		}
	}
}

func TestEverySettingOfLettersChangesTheFingerprint(t *testing.T) {
	seen := map[string]string{}
	hundredth := length.FromMM(0.5, length.Millimetre)
	for what, edit := range map[string]func(*order.Piece){
		"nothing":         func(*order.Piece) {},
		"no tail":         func(p *order.Piece) { p.Tail = nil },
		"length":          func(p *order.Piece) { p.Tail.Length = 0.8 },
		"thickness":       func(p *order.Piece) { p.Tail.Thickness = 0.3 },
		"gap":             func(p *order.Piece) { p.Tail.Gap = 0.2 },
		"curl":            func(p *order.Piece) { p.Tail.Plain, p.Tail.Curl, p.Tail.Taper = false, 0.2, 0.9 },
		"taper":           func(p *order.Piece) { p.Tail.Plain, p.Tail.Curl, p.Tail.Taper = false, 0.3, 0.5 },
		"slope":           func(p *order.Piece) { p.Tail.Plain, p.Tail.Slope, p.Tail.Curl, p.Tail.Taper = false, 3, 0.3, 0.9 },
		"lean":            func(p *order.Piece) { p.Lean = 2 },
		"embolden":        func(p *order.Piece) { p.Embolden = &hundredth },
		"optical":         func(p *order.Piece) { p.Optical = true },
		"keep gap":        func(p *order.Piece) { p.KeepGap = true },
		"text in it":      func(p *order.Piece) { p.Tail.Text, p.Tail.Face = "1998", "oswald" },
		"text laid on it": func(p *order.Piece) { p.Tail.Text, p.Tail.Face, p.Tail.Laid = "1998", "oswald", true },
	} {
		f := resolve(t, scripted(edit), nil).Fingerprint()
		assert.Empty(t, seen[f], "%s gives the fingerprint of %s", what, seen[f])
		seen[f] = what
	}
}

func TestAShortNameWithATailFitsEverySize(t *testing.T) {
	// The tail reaches past a short name that ends in a descender: the letters
	// alone have room to spare, and only they can be made smaller.
	for _, tenths := range []int64{106, 100, 80} {
		limit := length.Inches(tenths, 10)
		name, _ := frontName(t, scripted(func(p *order.Piece) { p.Text, p.Limit = "Óddly", &limit }), 0)
		require.NotEqual(t, fit.Over, name.Name.Verdict)
		assert.LessOrEqual(t, name.InkWidth(), limit.MM())
		assert.Greater(t, name.InkWidth(), 0.9*limit.MM(), "and not much less than there is room for, the leap of a tail to another letter apart")
	}
}
