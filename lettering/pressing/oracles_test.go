package pressing_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/pressing"
)

// The oracles of the project's press reference, one after the other. Heats and
// fibres are common practice, no source; the law is named beside each prompt.

func TestFibreDecidesHowHotAPlanMayBe(t *testing.T) {
	s := shop(t)
	for _, test := range []struct {
		name, cloth, method, variant string
		celsius                      float64
		heaviest                     pressing.Level
	}{
		{"standard film on sublimated polyester", "sublimated polyester", "cut film", "standard", 160, pressing.Warn},
		{"a blocker at 145 °C there", "sublimated polyester", "cut film", "blocker", 145, ""},
		{"sublimation at 200 °C on nylon", "nylon", "sublimation", "", 200, pressing.Stop},
		{"sublimation on cotton", "cotton", "sublimation", "", 200, pressing.Stop},
		{"sublimation on half polyester", "50/50 cotton/polyester", "sublimation", "", 190, pressing.Stop},
		{"sublimation on 65 % polyester, its own heat over the pale ceiling", "65% polyester 35% cotton", "sublimation", "", 190, pressing.Warn},
		{"film for half cotton, half polyester, over polyester's ceiling", "50/50 cotton/polyester", "cut film", "standard", 166, pressing.Warn},
		{"and for cotton alone there", "cotton", "cut film", "standard", 165, ""},
		{"5 % spandex lowers that to spandex's ceiling", "48% cotton 47% polyester 5% spandex", "cut film", "standard", 151, pressing.Warn},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, err := s.Check(cloth(t, test.cloth), []pressing.Step{step(t, test.method, test.variant, test.celsius)})
			require.NoError(t, err)
			heaviest := pressing.Level("")
			if all := levels(got); len(all) > 0 {
				heaviest = all[0]
			}
			assert.Equal(t, test.heaviest, heaviest, "%v", got)
		})
	}
}

// A blocker keeps dye back, but the other fibres of a blend feel its heat: with
// cotton it may go past the dye's 150 °C, with spandex it may not.
func TestABlockerHelpsOnlyAgainstDye(t *testing.T) {
	s := shop(t)
	hot := step(t, "cut film", "blocker", 155)
	hot.Setting.ToC = 160
	for text, want := range map[string][]pressing.Level{
		"dyed polyester":                         nil,
		"50/50 cotton/dyed polyester":            nil,
		"92% dyed polyester 8% spandex":          {pressing.Warn, pressing.Think},
		"55% dyed polyester 45% nylon":           {pressing.Warn},
		"60% dyed polyester 40% modacrylic":      {pressing.Stop},
		"recycled dyed polyester and wool blend": {pressing.Warn},
	} {
		got, err := s.Check(cloth(t, text), []pressing.Step{hot})
		require.NoError(t, err)
		assert.Equal(t, want, levels(got), "%s: %v", text, got)
	}
	long := step(t, "sublimation", "", 190)
	long.Seconds = 35
	got, err := s.Check(cloth(t, "65% polyester 35% cotton"), []pressing.Step{long})
	require.NoError(t, err)
	assert.True(t, slices.ContainsFunc(got, func(w pressing.Warning) bool { return strings.Contains(w.Text, "longer than 30 s") }), "cotton's time counts in a blend")
}

func TestSequenceOfHeats(t *testing.T) {
	s := shop(t)
	rising := func(a, b float64) bool {
		got, err := s.Check(cloth(t, "cotton"), []pressing.Step{step(t, "emblem", "", a), step(t, "emblem", "", b)})
		require.NoError(t, err)
		return slices.ContainsFunc(got, func(w pressing.Warning) bool { return strings.Contains(w.Text, "lies on the garment when") })
	}
	assert.True(t, rising(165, 200))
	assert.False(t, rising(200, 150))
	assert.False(t, rising(165, 165))
}

// CPSIA section 101 and 16 CFR 1307 in the US; REACH Annex XVII entry 51 in the
// EU, for every age.
func TestPromptsOfEveryMarketAndAge(t *testing.T) {
	says := func(m pressing.Market, w pressing.Wearer, word string) bool {
		return slices.ContainsFunc(pressing.Prompts(m, w), func(p pressing.Warning) bool { return strings.Contains(p.Text+p.Basis, word) })
	}
	youth, toddler := pressing.Wearer{Child: true}, pressing.Wearer{Child: true, UnderFour: true, Sleepwear: true}
	assert.True(t, says(pressing.US, youth, "lead"))
	assert.True(t, says(pressing.US, youth, "tracking label"))
	assert.False(t, says(pressing.US, youth, "phthalates"), "a team shirt is neither toy nor child care article")
	assert.True(t, says(pressing.US, toddler, "phthalates"))
	assert.Contains(t, levels(pressing.Prompts(pressing.US, toddler)), pressing.Stop, "sleepwear is refused")
	for _, w := range []pressing.Wearer{{}, youth, toddler} {
		assert.True(t, says(pressing.EU, w, "DEHP"))
	}
}

// 1800 W at 120 V are 15 A, over 80 % of 15 A; at 230 V they are 7.8 A.
func TestCircuitsOfTwoContinents(t *testing.T) {
	w, over := pressing.Circuit(1800, 120, 15)
	assert.True(t, over)
	assert.Contains(t, w.Text, "15.0 A")
	for _, amperes := range []float64{10, 13, 16} {
		_, over = pressing.Circuit(1800, 230, amperes)
		assert.False(t, over, "%g A", amperes)
	}
}

func TestTheCoolestSettingIsChosenAndOthersNamed(t *testing.T) {
	s := shop(t)
	for _, test := range []struct{ method, variant, cloth, want string }{
		{"cut film", "", "dyed polyester", "low temperature"},
		{"cut film", "", "cotton", "standard"},
		{"cut film", "blocker", "dyed polyester", "blocker"},
		{"cut film", "", "nylon", "nylon adhesive"},
		{"screen transfer", "", "polyester", "cold peel, heat-sensitive polyester"},
		{"screen transfer", "full colour", "polyester", "full colour, low temperature"},
	} {
		got, others, err := s.Choose(test.method, test.variant, cloth(t, test.cloth))
		require.NoError(t, err)
		assert.Equal(t, test.want, got.Variant)
		assert.Len(t, others, len(s.For(test.method, cloth(t, test.cloth)))-1)
		assert.NotContains(t, others, got)
	}
}

func TestWhatCannotBeChosenSaysWhatToWrite(t *testing.T) {
	s := shop(t)
	_, _, err := s.Choose("cut film", "", pressing.Cloth{})
	assert.ErrorIs(t, err, pressing.ErrUnknownFibre)
	assert.ErrorContains(t, err, "write fibre: in the job")
	_, _, err = s.Choose("flock film", "", cloth(t, "polyester"))
	assert.EqualError(t, err, "no press setting for flock film on polyester, only on cotton: take another method, or write a row with the supplier's figures in the shop's press file")
	_, _, err = s.Choose("cut film", "magic", cloth(t, "cotton"))
	assert.ErrorContains(t, err, "use standard")
}

func TestStretchIsNoted(t *testing.T) {
	s := shop(t)
	got, err := s.Check(cloth(t, "92% polyester 8% spandex"), []pressing.Step{step(t, "cut film", "low", 130)})
	require.NoError(t, err)
	assert.Equal(t, []pressing.Level{pressing.Think}, levels(got))
	assert.Contains(t, got[0].Text, "8 % spandex")
}
