package sheets

import (
	"math"

	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// rosterNeed is what the drawings of the roster must show, mm of garment.
type rosterNeed struct {
	wide    float64 // the widest chest, or what reaches further than it
	deep    float64 // from windowAbove over the shoulder to windowBelow under the number, largest size
	letters float64 // lowest letter height asked for; 0 when there are no names
}

// rosterGrid is how the tiles of the roster stand on their pages.
type rosterGrid struct {
	sheet         page.Sheet
	columns, rows int // of one page
	pages         int
	ratio         float64 // the drawings are 1 to this
	tile          float64 // width of a tile, mm
}

func (g rosterGrid) scale() float64 { return 1 / g.ratio }

// The roster's page, mm on paper but for the window, mm of garment.
const (
	rosterDown  = 1.5 // content top to the first tiles
	rosterKey   = 7.0 // room for the key of marks over the foot
	tileAcross  = 5.0 // between two tiles
	tileDown    = 3.0
	tileLeast   = 36.0
	tileCaption = 12.4

	windowAbove = 18.0 // of the window over the shoulder
	windowBelow = 40.0 // of the window under the number
	chestMargin = 1.08 // tile to chest

	lettersLeast = 1.8 // letter height on paper
	lettersClear = 2.4 // below this a page more is worth it

	fewestColumns = 2
	mostColumns   = 8
)

// chooseGrid takes the grid of the roster: the fewest pages (a page more is
// worth it where letters would be low), then the larger scale, then fewer empty
// places, then landscape, then fewer columns. caption is the height under a
// window. Garments too large for any grid get the smallest scale all the same.
func chooseGrid(players int, paper Paper, need rosterNeed, caption float64) rosterGrid {
	sheets := [2]page.Sheet{paper.sheet().Landscape(), paper.sheet().Portrait()}
	var best rosterGrid
	var bestRank [5]float64
	for _, least := range [2]float64{lettersLeast, 0} {
		for _, sheet := range sheets {
			for columns := fewestColumns; columns <= mostColumns; columns++ {
				for _, ratio := range scales() {
					g, ok := gridAt(players, sheet, columns, ratio, need, caption)
					if !ok || need.letters > 0 && need.letters/ratio < least {
						continue
					}
					if rank := g.rank(players, need); best.ratio == 0 || lower(rank, bestRank) {
						best, bestRank = g, rank
					}
				}
			}
		}
		if best.ratio > 0 {
			return best
		}
	}
	smallest := scales()[len(scales())-1]
	best, _ = gridAt(players, sheets[0], fewestColumns, smallest, rosterNeed{}, caption)
	return best
}

// gridAt lays tiles of one scale out; ok is false when they do not fit.
func gridAt(players int, sheet page.Sheet, columns int, ratio float64, need rosterNeed, caption float64) (rosterGrid, bool) {
	f := parts.NewGrid(sheet)
	g := rosterGrid{sheet: sheet, columns: columns, ratio: ratio}
	g.tile = (f.Live() - tileAcross*float64(columns-1)) / float64(columns)
	if g.tile < tileLeast || chestMargin*need.wide/ratio > g.tile {
		return g, false
	}
	rows := int((tilesHigh(f) + tileDown) / (need.deep/ratio + caption + tileDown))
	if rows < 1 {
		return g, false
	}
	each := columns * rows
	g.pages = (players + each - 1) / each
	g.rows = (min(players, each) + columns - 1) / columns
	return g, true
}

// tilesHigh is the height of a page that tiles may fill.
func tilesHigh(f parts.Grid) float64 { return f.Bottom - f.Top - rosterDown - rosterKey }

// rank orders grids: the lower is the better.
func (g rosterGrid) rank(players int, need rosterNeed) [5]float64 {
	pages, empty, turned := float64(g.pages), 0.0, 0.0
	if need.letters > 0 && need.letters/g.ratio < lettersClear {
		pages++
	}
	if g.pages == 1 {
		empty = float64(g.columns*g.rows - players)
	}
	if !g.sheet.Wide() {
		turned = 1
	}
	return [5]float64{pages, g.ratio, empty, turned, float64(g.columns)}
}

func lower(a, b [5]float64) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return false
}

// window is the height of a tile's window: what must be seen, and as much more
// of the longest garment as the page has room for.
func (g rosterGrid) window(need rosterNeed, longest, caption float64) float64 {
	const underHem = 10.0
	f := parts.NewGrid(g.sheet)
	most := (tilesHigh(f)-tileDown*float64(g.rows-1))/float64(g.rows) - caption
	whole := (windowAbove + longest + underHem) * g.scale()
	return max(need.deep*g.scale(), min(most, whole))
}

// at returns the top left corner of tile i of a page.
func (g rosterGrid) at(f parts.Grid, i int, high float64) (x, y float64) {
	x = f.Left + float64(i%g.columns)*(g.tile+tileAcross)
	y = f.Top + rosterDown + float64(i/g.columns)*(high+tileDown)
	return x, y
}

// rosterNeeds measures the order for its grid.
func (d *document) rosterNeeds() (need rosterNeed, longest float64) {
	side, low, asked := d.rosterSide(), 0.0, math.Inf(1)
	for _, p := range d.in.Sized.Players {
		if p.Garment == nil {
			continue
		}
		longest = max(longest, p.Garment.Bounds(side).Max.Y)
		need.wide = max(need.wide, p.Garment.Measures().ChestHalf)
		var lowest *sizes.Piece
		for i, piece := range p.Pieces {
			if piece.Side != side {
				continue
			}
			reach := math.Abs(piece.At.X) + piece.InkWidth()/2
			need.wide = max(need.wide, 2*reach/chestMargin)
			if lowest == nil || piece.At.Y > lowest.At.Y {
				lowest = &p.Pieces[i]
			}
			if piece.Name != nil {
				asked = min(asked, piece.Name.Asked)
			}
		}
		if lowest != nil {
			low = max(low, lowest.At.Y+lowest.Reach()+underBaseline(*lowest))
		}
	}
	need.deep = windowAbove + low + windowBelow
	if !math.IsInf(asked, 1) {
		need.letters = asked
	}
	return need, longest
}

// underBaseline is how far the letters of a piece reach under its baseline.
func underBaseline(p sizes.Piece) float64 {
	box := p.Ink().Bounds()
	if box.Empty() {
		return 0
	}
	return max(0, -box.Min.Y)
}
