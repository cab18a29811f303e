package seams_test

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/seams"
)

// python returns an interpreter that has Shapely, the Python door to GEOS
// (Debian package python3-shapely). A test that needs it is skipped where there is
// none, but fails where CI says that all tools must be there.
func python(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import shapely.geometry").Run() == nil {
			return name
		}
	}
	if os.Getenv("YOKELINE_TOOLS") == "required" {
		t.Fatal("python3-shapely is not installed and YOKELINE_TOOLS=required")
	}
	t.Skip("python3-shapely is not installed: it holds the pieces a second time")
	return ""
}

type (
	xy       [2]float64
	toldLine struct {
		Points []xy    `json:"points"`
		Margin float64 `json:"margin"`
	}
	ground struct {
		Cloth   []xy       `json:"cloth"`
		Panel   []xy       `json:"panel"`
		Lines   []toldLine `json:"lines"`
		Heights []float64  `json:"heights"`

		garment *garment.Garment
		place   garment.Placement
		name    string
		on      *seams.Cloth
		cloth   geom.Region
		others  int // panels of the side that lie on other cloth
	}
	held struct {
		Ground int    `json:"ground"`
		Rings  [][]xy `json:"rings"`
	}
	answer struct {
		Grounds []struct {
			Stray  float64
			Slices [][]xy
		}
		Pieces []struct {
			Panel, Cloth bool
			Distances    []float64
		}
	}
)

func points(ps []geom.Point) []xy {
	out := make([]xy, len(ps))
	for i, p := range ps {
		out[i] = xy{p.X, p.Y}
	}
	return out
}

// grounds are the panels that pieces are thrown at: every cut and place that has
// one panel under the place, in sizes from youth XS up, some with other margins.
func grounds(t *testing.T) []ground {
	var out []ground
	for n, info := range garment.Cuts() {
		for i, size := range []garment.Size{{Group: garment.Youth, Letter: "XS"}, {Group: garment.Women, Letter: "M"}, {Group: garment.Adult, Letter: "3XL"}} {
			g, err := garment.New(info.Cut, size)
			require.NoError(t, err)
			if (n+i)%3 == 0 {
				g, err = g.With(garment.Margins{Seam: 6, Hard: 18, Hem: 40, Underarm: 30})
				require.NoError(t, err)
			}
			for _, p := range garment.Places(info.Cut) {
				place, err := g.Place(p)
				require.NoError(t, err)
				if p != garment.SleeveNumber && !place.Split {
					out = append(out, groundAt(t, g, place))
				}
			}
		}
	}
	return out
}

func groundAt(t *testing.T, g *garment.Garment, place garment.Placement) ground {
	at := place.Point(0, place.TopFor(40)+20)
	out := ground{garment: g, place: place, on: seams.On(g, place), name: string(g.Cut()) + " " + g.Size().String() + " " + string(place.Place)}
	for _, panel := range g.Panels(place.Side) {
		switch {
		case panel.Sleeve:
			continue
		case !(geom.Region{panel.Cloth}).Contains(at):
			out.others++
			continue
		}
		out.cloth = geom.Region{panel.Cloth}
		out.Cloth, out.Panel = points(panel.Cloth), points(panel.Region[0])
		for _, k := range panel.Lines {
			out.Lines = append(out.Lines, toldLine{points(k.Points), k.Margin})
		}
		box := panel.Region.Bounds()
		for i := range 15 {
			out.Heights = append(out.Heights, box.Min.Y+box.Height()*(float64(i)+0.37)/15)
		}
	}
	require.NotEmpty(t, out.Panel, out.name)
	return out
}

// randomPiece is a row of one to six blobs on an arc, some far from round, about
// the place; some are thrown so far that they cross seams or leave the cloth. Where
// the side has other panels too its middle lies on this one, or it would be held
// against another.
func randomPiece(r *rand.Rand, g ground) geom.Region {
	for {
		out := thrown(r, g)
		if middle := out.Bounds().Center(); g.others == 0 || g.cloth.Contains(middle) {
			return out
		}
	}
}

func thrown(r *rand.Rand, g ground) geom.Region {
	letters, size := 1+r.IntN(6), 8+r.Float64()*40
	at := g.place.Point(r.NormFloat64()*30, g.place.TopFor(40)+20+r.NormFloat64()*25)
	if r.IntN(8) == 0 {
		at = at.Add(geom.Point{X: r.NormFloat64() * 200, Y: r.NormFloat64() * 200})
	}
	bend := (r.Float64() - 0.5) / 300
	var out geom.Region
	for i := range letters {
		dx := (float64(i) - float64(letters-1)/2) * size * 2.3
		out = append(out, blob(r, at.Add(geom.Point{X: dx, Y: bend * dx * dx}), size))
	}
	return out
}

// blob is a star-shaped ring, so it never crosses itself; it stays within size.
func blob(r *rand.Rand, at geom.Point, size float64) geom.Ring {
	var out geom.Ring
	n := 5 + r.IntN(40)
	for i := range n {
		a, d := 2*math.Pi*float64(i)/float64(n), size*(0.25+0.75*r.Float64())
		q := at.Add(geom.Point{X: d * math.Cos(a), Y: d * math.Sin(a)})
		out = append(out, geom.Point{X: math.Round(q.X*1e4) / 1e4, Y: math.Round(q.Y*1e4) / 1e4})
	}
	return out
}

func ask(t *testing.T, job any) answer {
	in, err := json.Marshal(job)
	require.NoError(t, err)
	cmd := exec.Command(python(t), "testdata/geos.py")
	cmd.Stdin = bytes.NewReader(in)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	told, err := cmd.Output()
	require.NoError(t, err, errs.String())
	var out answer
	require.NoError(t, json.Unmarshal(told, &out))
	return out
}

// Panels are built a second time by GEOS, as the cloth without the buffers of its
// lines, and 5,000 random pieces (500 with -short) are held against both.
func TestContainmentDistancesAndWidthsAgreeWithGEOS(t *testing.T) {
	python(t)
	r := rand.New(rand.NewPCG(5, 2))
	all := grounds(t)
	n := 5000
	if testing.Short() {
		n = 500
	}
	pieces, regions := make([]held, n), make([]geom.Region, n)
	for i := range pieces {
		k := r.IntN(len(all))
		regions[i] = randomPiece(r, all[k])
		pieces[i].Ground = k
		for _, ring := range regions[i] {
			pieces[i].Rings = append(pieces[i].Rings, points(ring))
		}
	}
	got := ask(t, map[string]any{"grounds": all, "pieces": pieces})
	require.Len(t, got.Pieces, len(pieces))
	inside, over, near := 0, 0, 0
	for i, want := range got.Pieces {
		g := all[pieces[i].Ground]
		lie := g.on.Lay(regions[i], 0)
		require.Equal(t, len(want.Distances), len(lie.Clearances), g.name)
		margin := math.Inf(1)
		for k, c := range lie.Clearances {
			margin = math.Min(margin, want.Distances[k]-c.Line.Margin)
			if want.Distances[k] > 0 && c.Distance < 0 {
				assert.False(t, want.Cloth, "%s piece %d is charged to the %s as off the cloth", g.name, i, c.Line.Words())
				continue
			}
			assert.InDelta(t, want.Distances[k], math.Max(0, c.Distance), 1e-9, "%s piece %d %s", g.name, i, c.Line.Words())
			assert.Equal(t, want.Distances[k] == 0, c.Distance <= 0, "%s piece %d %s", g.name, i, c.Line.Words())
		}
		if math.Abs(margin) < 0.05 { // as near as the curves are drawn
			near++
			continue
		}
		if lie.Inside {
			inside++
		} else if len(lie.Hits()) > 0 && lie.Hits()[0].Over() {
			over++
		}
		assert.Equal(t, want.Panel, lie.Inside, "%s piece %d: %.3f to spare", g.name, i, margin)
	}
	t.Logf("%d grounds; of %d pieces %d inside, %d over a line, %d too near to tell", len(all), len(pieces), inside, over, near)
	assert.Greater(t, inside, n/5)
	assert.Greater(t, over, n/5)
	assert.Less(t, near, n/100)
	comparePanels(t, all, got)
}

// comparePanels holds traced panels and the room at a height against GEOS.
func comparePanels(t *testing.T, all []ground, got answer) {
	worst, rows := 0.0, 0
	for i, g := range all {
		told := got.Grounds[i]
		assert.Less(t, told.Stray, 0.1, g.name)
		worst = math.Max(worst, told.Stray)
		for k, y := range g.Heights {
			want := freeAbout(g.place.CentreX, told.Slices[k])
			room := g.garment.Room(g.place.Place, y, y)
			if math.Abs(want-room.Panel) <= 0.1 {
				rows++
				continue
			}
			// Where the panel's edge runs level a hair's difference in height is a
			// wide one across: the widths a little higher and lower must enclose it.
			lo := math.Min(g.garment.Room(g.place.Place, y-0.05, y-0.05).Panel, g.garment.Room(g.place.Place, y+0.05, y+0.05).Panel)
			hi := math.Max(g.garment.Room(g.place.Place, y-0.05, y-0.05).Panel, g.garment.Room(g.place.Place, y+0.05, y+0.05).Panel)
			assert.True(t, lo-0.1 <= want && want <= hi+0.1, "%s at %.1f: %.2f by GEOS, %v", g.name, y, want, room)
		}
	}
	t.Logf("traced panels stray %.4f mm at most; %d widths of %d agree within 0.1 mm", worst, rows, 15*len(all))
	assert.Greater(t, rows, 14*len(all))
}

// freeAbout is twice the way from x to the nearer end of the slice it lies in.
func freeAbout(x float64, slices []xy) float64 {
	for _, s := range slices {
		if s[0] <= x && x <= s[1] {
			return 2 * math.Min(x-s[0], s[1]-x)
		}
	}
	return 0
}
