package changes_test

import (
	"context"
	"fmt"
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/changes"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

// demo is the demo order, read afresh so that a test may edit it.
func demo(t testing.TB) *order.Order {
	t.Helper()
	name, files := order.Demo()
	o, err := order.Read(name, func(file string) ([]byte, error) { return fs.ReadFile(files, file) },
		order.WithFaces("oswald", "quantico", "yellowtail", "anton"), order.WithRules("nfhs-softball"))
	require.NoError(t, err)
	return o
}

func sized(t testing.TB, o *order.Order) *sizes.Sized {
	t.Helper()
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Workers: 1})
	require.NoError(t, err)
	return s
}

func edited(t testing.TB, edit func(*order.Order)) *sizes.Sized {
	t.Helper()
	o := demo(t)
	edit(o)
	return sized(t, o)
}

func lines(all []changes.Change) string {
	var out []string
	for _, c := range all {
		out = append(out, c.Text())
	}
	return strings.Join(out, "\n")
}

func TestNothingChangedIsNothingSaid(t *testing.T) {
	assert.Empty(t, changes.Between(sized(t, demo(t)), sized(t, demo(t))))
}

func TestAChangeIsSaidInWords(t *testing.T) {
	was := sized(t, demo(t))
	for _, test := range []struct {
		name string
		edit func(*order.Order)
		says []string
	}{
		{"a spelling", func(o *order.Order) { o.Players[4].Name = "MacTavernish" }, []string{`Fay McTavernish: name was "McTavernish" and is "MacTavernish"`}},
		{"a number as text", func(o *order.Order) { o.Players[1].Number = "07" }, []string{`Alma Peña: number was "7" and is "07"`, `Alma Peña: back number, digits was "7" and is "07"`}},
		{"a size", func(o *order.Order) { o.Players[8].Size.Letter = "L" }, []string{`Rue Dell: size was "adult M" and is "adult L"`}},
		{"a new player", func(o *order.Order) {
			p := o.Players[0]
			p.Name, p.FullName, p.Number = "Reed", "Ana Reed", "2"
			o.Players = append(o.Players, p)
		}, []string{"Ana Reed was added: number 2, youth M"}},
		{"a player gone", func(o *order.Order) { o.Players = o.Players[:15] }, []string{"Kit Rook was taken off: number 9, adult S"}},
		{"another order", func(o *order.Order) { o.Players[2], o.Players[3] = o.Players[3], o.Players[2] }, []string{"the players stand in another order"}},
		{"a colour", func(o *order.Order) { o.Pieces[0].Colour.Hex = "#fffffe" }, []string{`colour was "white #ffffff" and is "white #fffffe"`}},
		{"a height", func(o *order.Order) { o.Pieces[0].Height.Length = length.Inches(15, 8) }, []string{"the order: back name, height was 2 in and is 1 7/8 in"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			got := changes.Between(was, edited(t, test.edit))
			for _, want := range test.says {
				assert.Contains(t, lines(got), want)
			}
		})
	}
}

func TestAHundredthOfAMillimetreIsToldApart(t *testing.T) {
	was := sized(t, demo(t))
	l, err := length.Parse("50.81mm")
	require.NoError(t, err)
	got := lines(changes.Between(was, edited(t, func(o *order.Order) { o.Pieces[0].Height.Length = l })))
	assert.Contains(t, got, "back name, height was 2 in (50.8 mm) and is 2 in (50.81 mm)")
}

// Whatever the edits, something is said exactly when the fingerprint moved, and
// every player of the later order is matched once at most.
func TestSomethingIsSaidExactlyWhenTheFingerprintMoved(t *testing.T) {
	base := demo(t)
	base.Players = base.Players[:5]
	base.Pieces = base.Pieces[:2]
	was := sized(t, base)
	print := was.Fingerprint()
	rapid.Check(t, func(t *rapid.T) {
		o := *base
		o.Players = append([]order.Player{}, base.Players...)
		for range rapid.IntRange(0, 3).Draw(t, "edits") {
			i := rapid.IntRange(0, len(o.Players)-1).Draw(t, "player")
			switch rapid.IntRange(0, 4).Draw(t, "edit") {
			case 0:
				o.Players[i].Number = rapid.SampledFrom([]string{"0", "00", "7", "07", "12"}).Draw(t, "number")
			case 1:
				o.Players[i].Name = rapid.SampledFrom([]string{"Vo", "Brandt", "Ng", ""}).Draw(t, "name")
			case 2:
				o.Players[i].Size = garment.Size{Group: garment.Adult, Letter: rapid.SampledFrom([]string{"M", "L"}).Draw(t, "size")}
			case 3:
				o.Players = append(o.Players, o.Players[i])
			case 4:
				k := rapid.IntRange(0, len(o.Players)-1).Draw(t, "other")
				o.Players[i], o.Players[k] = o.Players[k], o.Players[i]
			}
		}
		s, err := sizes.Resolve(context.Background(), &o, sizes.Options{Face: typeface.Embedded, Workers: 1})
		if err != nil {
			t.Fatal(err)
		}
		all := changes.Between(was, s)
		if (len(all) > 0) != (s.Fingerprint() != print) {
			t.Fatalf("%d changes: %s", len(all), lines(all))
		}
		seen := map[int]bool{}
		for i, k := range changes.Match(was, s) {
			if k >= 0 && seen[k] {
				t.Fatalf("player %d is matched twice", i)
			}
			seen[k] = true
		}
	})
}

func ExampleChange_Text() {
	fmt.Println(changes.Change{Kind: changes.Changed, Player: "Rue Dell", What: "number", Was: `"7"`, Is: `"07"`}.Text())
	// Output: Rue Dell: number was "7" and is "07"
}
