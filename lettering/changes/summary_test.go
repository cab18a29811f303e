package changes_test

import (
	"context"
	"fmt"
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

// quick sizes an edited demo without the ways out, which take most of the time.
func quick(t testing.TB, edit func(*order.Order)) *sizes.Sized {
	t.Helper()
	o := demo(t)
	edit(o)
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Workers: 2, NoWaysOut: true})
	require.NoError(t, err)
	return s
}

func asIs(*order.Order) {}

func inches(mm float64) string { return length.Plain(mm, length.Inch, length.Nearest) }

// The whole summary of an edit, line by line: what only follows from something
// that is said (ink widths, limits, letters cut, a level that moved because the
// size did) does not stand in it.
func TestASummarySaysWhatACoachWouldSayAndNoMore(t *testing.T) {
	few := func(o *order.Order) { o.Players = append([]order.Player{o.Players[8]}, o.Players[:5]...) }
	was := quick(t, few)
	for _, test := range []struct {
		name string
		edit func(*order.Order)
		says []string
	}{
		{"nothing", func(*order.Order) {}, nil},
		{"a spelling", func(o *order.Order) { o.Players[5].Name = "MacTavernish" },
			[]string{"Fay McTavernish: spelling: McTavernish, now MacTavernish"}},
		{"a number as text", func(o *order.Order) { o.Players[1].Number = "00" },
			[]string{"Linh Vo: number: 0, now 00"}},
		{"a size", func(o *order.Order) { o.Players[0].Size.Letter = "L" },
			[]string{"Rue Dell: size: adult M, now adult L"}},
		{"a role", func(o *order.Order) { o.Players[4].Role = "captain" },
			[]string{`Nora O'Shaughnell: role: none, now captain`}},
		{"a player gone", func(o *order.Order) { o.Players = o.Players[1:] },
			[]string{"Rue Dell was taken off: number 24, adult M"}},
		{"another order", func(o *order.Order) { o.Players[2], o.Players[3] = o.Players[3], o.Players[2] },
			[]string{"the players stand in another order"}},
		{"a colour", func(o *order.Order) { o.Pieces[0].Colour.Hex = "#fffffe" },
			[]string{"the order: back name, colour: white #ffffff, now white #fffffe"}},
		{"a face", func(o *order.Order) { o.Pieces[1].Face = "oswald" },
			[]string{"the order: back number, face: quantico, now oswald"}},
		{"a word on all", func(o *order.Order) { o.Pieces[2].Text = "Hérons" },
			[]string{"the order: front name, text: Herons, now Hérons"}},
		{"a hundredth of a millimetre", func(o *order.Order) { o.Pieces[0].Height.Length = length.FromMM(50.81, length.Inch) },
			[]string{"the order: back name, letters high, as asked: 2 in (50.80\u00a0mm), now 2 in (50.81\u00a0mm)"}},
		{"a place", func(o *order.Order) { l := length.Inches(6, 1); o.Pieces[1].Below, o.Players = &l, o.Players[1:4] },
			[]string{"the order: back number, below the collar: 6 in", "Linh Vo: back number: moved down by 7/16 in",
				"Alma Peña: back number: moved down by 1/16 in", "Ida Brandt: back number: moved up by 13/16 in"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			is, before := quick(t, func(o *order.Order) { few(o); test.edit(o) }), *was
			if test.name == "a place" {
				before.Players = before.Players[1:4]
			}
			told := changes.Summary(changes.Between(&before, is), inches)
			assert.Equal(t, test.says, told.Text())
			assert.Equal(t, test.says == nil, told.Empty())
		})
	}
}

// Lower letters for all are said once, with how many share it; whoever came out
// otherwise has lines of their own.
func TestWhatMostPlayersShareIsSaidOnce(t *testing.T) {
	was := quick(t, asIs)
	told := changes.Summary(changes.Between(was, quick(t, func(o *order.Order) { o.Pieces[0].Height.Length = length.Inches(7, 4) })), inches)
	text := strings.Join(told.Text(), "\n")
	assert.Contains(t, text, "the order: back name, letters high, as asked: 2 in, now 1 3/4 in")
	assert.NotContains(t, text, "letters high: 2 in, now 1 3/4 in", "not once more for the players who come out as asked")
	assert.Contains(t, text, "16 players, back number: moved up by 1/4 in")
	assert.Contains(t, text, "Ola Wójtaszewicz: back name, fit: reduced, now eased")
	for _, p := range told.Players {
		assert.NotEmpty(t, p.Lines, p.Player)
	}
}

// Whatever the edits, there is a summary exactly when something changed, it is
// no longer than the list of facts, and no player is told of twice.
func TestASummaryIsEmptyExactlyWhenNothingChanged(t *testing.T) {
	base := demo(t)
	base.Players = base.Players[:3]
	base.Pieces = base.Pieces[:2]
	was := quick(t, func(o *order.Order) { *o = *base })
	rapid.Check(t, func(t *rapid.T) {
		o := *base
		o.Players = append([]order.Player{}, base.Players...)
		o.Pieces = append([]order.Piece{}, base.Pieces...)
		for range rapid.IntRange(0, 3).Draw(t, "edits") {
			i := rapid.IntRange(0, len(o.Players)-1).Draw(t, "player")
			switch rapid.IntRange(0, 5).Draw(t, "edit") {
			case 0:
				o.Players[i].Number = rapid.SampledFrom([]string{"0", "00", "7", "", "12"}).Draw(t, "number")
			case 1:
				o.Players[i].Name = rapid.SampledFrom([]string{"Vo", "Brandt", "Ng", ""}).Draw(t, "name")
			case 2:
				o.Players[i].Size = garment.Size{Group: garment.Adult, Letter: rapid.SampledFrom([]string{"M", "L"}).Draw(t, "size")}
			case 3:
				o.Players = append(o.Players, o.Players[i])
			case 4:
				o.Pieces[0].Height.Length = length.FromMM(rapid.SampledFrom([]float64{50.8, 50.81, 40}).Draw(t, "height"), length.Inch)
			case 5:
				o.Players[i].Role = rapid.SampledFrom([]string{"", "captain"}).Draw(t, "role")
			}
		}
		s, err := sizes.Resolve(context.Background(), &o, sizes.Options{Face: typeface.Embedded, Workers: 2, NoWaysOut: true})
		if err != nil {
			t.Fatal(err)
		}
		all := changes.Between(was, s)
		told := changes.Summary(all, nil)
		if told.Empty() != (len(all) == 0) || len(told.Text()) > len(all) {
			t.Fatalf("%d facts, told:\n%s", len(all), strings.Join(told.Text(), "\n"))
		}
		seen := map[string]bool{}
		for _, p := range told.Players {
			k := fmt.Sprint(p.Before, " ", p.After)
			if seen[k] {
				t.Fatalf("%s is told of twice", p.Player)
			}
			seen[k] = true
		}
	})
}

func ExampleLine_Text() {
	fmt.Println(changes.Line{What: "spelling", Was: "Ng", Is: "Ngo"}.Text())
	fmt.Println(changes.Line{About: "back number", Is: "moved up by 1/4 in", Players: 12}.Text())
	// Output:
	// spelling: Ng, now Ngo
	// 12 players, back number: moved up by 1/4 in
}
