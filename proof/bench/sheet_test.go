package bench_test

import (
	"io"
	"testing"

	"github.com/stretchr/testify/assert"

	"yokeline/lettering/garment"
	"yokeline/proof/bench"
)

// The page of a sheet is the sheet that goes into the machine; only what nobody
// signed has a strip more.
func TestThePageOfASheetIsTheSheet(t *testing.T) {
	b, art := newBench(t), made(t, sized(t, garment.TwoButton, "2", number()), "cut film")
	sheet := bench.Sheet{Name: "sheet 1", Width: 500, Height: 700, Parts: []bench.SheetPart{{Art: art}}}
	assert.Contains(t, string(written(t, func(w io.Writer) error { return b.SheetSVG(w, sheet, bench.Options{}) })), `width="500mm" height="700mm" viewBox="0 -700 500 700"`)
	assert.Contains(t, string(written(t, func(w io.Writer) error { return b.SheetSVG(w, sheet, bench.Options{Unsigned: true}) })), `width="500mm" height="710mm"`)
	assert.Contains(t, string(written(t, func(w io.Writer) error { return b.SheetPDF(w, sheet, bench.Options{}) })), "/MediaBox[0 0 1417.3228 1984.252 ]")
}
