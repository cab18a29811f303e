package pressing_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/order"
	"yokeline/lettering/pressing"
)

func shop(t testing.TB) *pressing.Shop {
	t.Helper()
	s, err := pressing.Starting()
	require.NoError(t, err)
	return s
}

func cloth(t testing.TB, text string) pressing.Cloth {
	t.Helper()
	c, err := pressing.ParseCloth(text)
	require.NoError(t, err)
	return c
}

// setting finds a setting of a method by a word of its variant.
func setting(t testing.TB, method, variant string) pressing.Setting {
	t.Helper()
	for _, s := range shop(t).Settings {
		if slices.Contains(s.Methods, method) && strings.Contains(s.Variant, variant) {
			return s
		}
	}
	t.Fatalf("no setting %s, %s", method, variant)
	return pressing.Setting{}
}

func step(t testing.TB, method, variant string, celsius float64) pressing.Step {
	t.Helper()
	s := pressing.NewStep("back number", setting(t, method, variant))
	s.Celsius = celsius
	return s
}

// levels returns the levels of the warnings, heaviest first, each once.
func levels(all []pressing.Warning) []pressing.Level {
	var out []pressing.Level
	for _, want := range []pressing.Level{pressing.Stop, pressing.Warn, pressing.Think} {
		if slices.ContainsFunc(all, func(w pressing.Warning) bool { return w.Level == want }) {
			out = append(out, want)
		}
	}
	return out
}

// The oracles of the project's press reference: conversions by definition of the
// scales; the others common practice, no source.
func TestTemperaturesConvertExactly(t *testing.T) {
	for _, pair := range [][2]float64{{160, 320}, {150, 302}, {200, 392}, {-40, -40}, {165, 329}, {180, 356}, {135, 275}} {
		assert.Equal(t, pair[1], pressing.Fahrenheit(pair[0]))
		assert.Equal(t, pair[0], pressing.Celsius(pair[1]))
	}
	assert.Equal(t, "135 °C (275 °F)", pressing.Degrees(135))
}

func TestWhatTheClothStands(t *testing.T) {
	for _, test := range []struct {
		name, cloth string
		step        pressing.Step
		want        []pressing.Level
	}{
		{"standard film on sublimated polyester", "sublimated polyester", step(t, "cut film", "standard", 160), []pressing.Level{pressing.Warn}},
		{"a blocker at 145 there", "sublimated polyester", step(t, "cut film", "blocker", 145), nil},
		{"a blocker over its own range", "sublimated polyester", step(t, "cut film", "blocker", 160), []pressing.Level{pressing.Warn}},
		{"low film there", "dyed polyester", step(t, "cut film", "low", 140), nil},
		{"at the warning's edge", "dyed polyester", step(t, "cut film", "standard", 150), nil},
		{"just over it", "dyed polyester", step(t, "cut film", "standard", 150.1), []pressing.Level{pressing.Warn}},
		{"standard film on pale polyester", "polyester", step(t, "cut film", "standard", 160), nil},
		{"sublimation on nylon", "nylon", step(t, "sublimation", "", 200), []pressing.Level{pressing.Stop}},
		{"sublimation on cotton, and long", "cotton", step(t, "sublimation", "", 190), []pressing.Level{pressing.Stop, pressing.Warn}},
		{"sublimation on 60 % polyester", "60% polyester 40% cotton", step(t, "sublimation", "", 200), []pressing.Level{pressing.Stop, pressing.Warn}},
		{"cotton with hot transfer", "cotton", step(t, "screen transfer", "hot peel", 180), nil},
		{"nylon film on nylon", "nylon", step(t, "cut film", "nylon", 140), nil},
		{"cotton film on nylon", "nylon", step(t, "flock film", "", 155), []pressing.Level{pressing.Warn}},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, err := shop(t).Check(cloth(t, test.cloth), []pressing.Step{test.step})
			require.NoError(t, err)
			assert.Equal(t, test.want, levels(got), "%v", got)
			for _, w := range got {
				assert.NotEmpty(t, w.Remedy)
				assert.NotEmpty(t, w.Basis)
			}
		})
	}
}

func TestABlendTakesTheLowestCeiling(t *testing.T) {
	s := shop(t)
	of := func(text string) pressing.Ceiling {
		k, err := s.CeilingOf(cloth(t, text))
		require.NoError(t, err)
		return k
	}
	assert.Equal(t, "polyester", of("50/50 cotton/polyester").Fibre)
	assert.Equal(t, "spandex", of("48% cotton 47% polyester 5% spandex").Fibre)
	assert.Equal(t, 150.0, of("dyed polyester").Warn)
	assert.Equal(t, 165.0, of("polyester").Warn)
}

func TestUnknownFibreIsRefused(t *testing.T) {
	for _, text := range []string{"", "unobtainium", "cotton and unobtainium", "???"} {
		_, err := pressing.ParseCloth(text)
		assert.True(t, errors.Is(err, pressing.ErrUnknownFibre), "%q: %v", text, err)
	}
	_, err := shop(t).Check(pressing.Cloth{}, nil)
	assert.ErrorIs(t, err, pressing.ErrUnknownFibre)
	_, err = pressing.ParseCloth("70% cotton 20% polyester")
	assert.ErrorContains(t, err, "add up to 100")
}

func TestTheHottestComesFirst(t *testing.T) {
	s := shop(t)
	low, high := step(t, "cut film", "standard", 165), step(t, "sublimation", "", 200)
	high.Place = "front name"
	pale := cloth(t, "polyester")
	got, err := s.Check(pale, []pressing.Step{low, high})
	require.NoError(t, err)
	assert.True(t, slices.ContainsFunc(got, func(w pressing.Warning) bool { return strings.Contains(w.Text, "lies on the garment when") }))
	ordered := pressing.Ordered([]pressing.Step{low, high})
	assert.Equal(t, 200.0, ordered[0].Celsius)
	got, err = s.Check(pale, ordered)
	require.NoError(t, err)
	assert.False(t, slices.ContainsFunc(got, func(w pressing.Warning) bool { return strings.Contains(w.Text, "lies on the garment when") }))
}

// Facts of the trade (common practice, no source): a transfer for
// heat-sensitive polyester at 275 °F for 15 s, pre-press about 5 s, cold peel;
// a full-colour low-temperature transfer under a cover sheet for 15 s, cold peel,
// pre-press about 2 s.
func TestStartingPointsOfTheTrade(t *testing.T) {
	s := setting(t, "screen transfer", "heat-sensitive")
	assert.Equal(t, 275.0, pressing.Fahrenheit(s.FromC))
	assert.Equal(t, [2]float64{15, 15}, [2]float64{s.FromS, s.ToS})
	assert.Equal(t, "cold", s.Peel)
	assert.Equal(t, "5 s", s.PrePress)
	full := setting(t, "screen transfer", "full colour")
	assert.True(t, full.Cover)
	assert.Equal(t, 15.0, full.FromS)
	assert.Equal(t, "cold", full.Peel)
	assert.Equal(t, "2 s", full.PrePress)
}

func TestEveryMethodThatIsPressedHasASetting(t *testing.T) {
	s := shop(t)
	for _, m := range order.Methods() {
		found := slices.ContainsFunc(s.Settings, func(set pressing.Setting) bool { return slices.Contains(set.Methods, m.ID) })
		assert.Equal(t, m.ID != "embroidery", found, m.ID)
	}
	for _, set := range s.Settings {
		c := pressing.Cloth{}
		for _, f := range set.Fibres[:1] {
			c.Parts = append(c.Parts, pressing.Part{Fibre: f, Percent: 100})
		}
		assert.Contains(t, s.For(set.Methods[0], c), set)
		got, err := s.Check(c, []pressing.Step{pressing.NewStep("back", set)})
		require.NoError(t, err)
		assert.NotContains(t, levels(got), pressing.Stop, "%s: the cool end of a setting is no danger to its own fibre: %v", set.Name(), got)
	}
}

func TestPromptsFollowMarketAndAge(t *testing.T) {
	text := func(all []pressing.Warning) string {
		var out []string
		for _, w := range all {
			out = append(out, w.Text)
		}
		return strings.Join(out, "\n")
	}
	youth := text(pressing.Prompts(pressing.US, pressing.Wearer{Child: true}))
	assert.Contains(t, youth, "lead")
	assert.Contains(t, youth, "tracking label")
	assert.NotContains(t, youth, "phthalate")
	toddler := pressing.Prompts(pressing.US, pressing.Wearer{Child: true, UnderFour: true, Sleepwear: true})
	assert.Contains(t, text(toddler), "phthalates")
	assert.Contains(t, levels(toddler), pressing.Stop)
	assert.Contains(t, text(pressing.Prompts(pressing.EU, pressing.Wearer{})), "0.1 %")
	assert.Empty(t, pressing.Prompts(pressing.US, pressing.Wearer{}))
}

func TestACircuitIsNotLoadedOverFourFifths(t *testing.T) {
	_, over := pressing.Circuit(1800, 120, 15)
	assert.True(t, over)
	_, over = pressing.Circuit(1800, 230, 16)
	assert.False(t, over)
	_, over = pressing.Circuit(1440, 120, 15)
	assert.False(t, over, "12 A is the limit itself")
}

func TestCautionsAreAlwaysThere(t *testing.T) {
	all := strings.Join(pressing.Cautions(), "\n")
	for _, word := range []string{"burns", "Keep hands clear", "fumes", "circuit", "alone", "data sheet and local rules", "test piece", "child"} {
		assert.Contains(t, all, word)
	}
}

func TestAShopsOwnSettingsAreReadWithEveryFault(t *testing.T) {
	head := "method,variant,fibres,from_c,to_c,from_s,to_s,pressure,pre_press,peel,second_press,cover\n"
	own, faults := pressing.Read("press.csv", []byte(head+"cut film,ours,polyester,130,135,8,8,medium,2 s,warm,none,yes\n"))
	require.Empty(t, faults)
	require.Len(t, own.Settings, 1)
	assert.Equal(t, "the shop's own press.csv", own.Basis)
	assert.NotEmpty(t, own.Ceilings)
	_, faults = pressing.Read("press.csv", []byte(head+"cut film,x,plastic,900,135,8,4,medium,2 s,warm,none,maybe\n"))
	text := faults.Error()
	for _, want := range []string{`"plastic" is not a fibre`, `"900" is not a figure`, "to_s is below from_s", `"maybe" is neither`, "press.csv:2:"} {
		assert.Contains(t, text, want)
	}
	_, faults = pressing.Read("press.csv", []byte("method,variant\n"))
	assert.Contains(t, faults.Error(), "column fibres is missing")
	_, faults = pressing.Read("press.csv", []byte(head+"cut film,x\n"))
	assert.Contains(t, faults.Error(), "press.csv:2")
}

// Whatever the steps, sorted they never warn of their order, and a hotter step
// never has fewer warnings of the cloth than a cooler one of the same kind.
func TestOrderAndHeat(t *testing.T) {
	s := shop(t)
	rapid.Check(t, func(t *rapid.T) {
		c := cloth(&testing.T{}, rapid.SampledFrom([]string{"cotton", "polyester", "dyed polyester", "nylon", "50/50 cotton/polyester"}).Draw(t, "cloth"))
		var steps []pressing.Step
		for range rapid.IntRange(1, 4).Draw(t, "steps") {
			set := rapid.SampledFrom(s.Settings).Draw(t, "setting")
			st := pressing.NewStep("back", set)
			st.Celsius = rapid.Float64Range(set.FromC, set.ToC).Draw(t, "celsius")
			steps = append(steps, st)
		}
		all, err := s.Check(c, pressing.Ordered(steps))
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range all {
			if strings.Contains(w.Text, "lies on the garment when") {
				t.Fatal(w.Text)
			}
		}
	})
}

func FuzzRead(f *testing.F) {
	f.Add([]byte("method,variant,fibres,from_c,to_c,from_s,to_s,pressure,pre_press,peel,second_press,cover\ncut film,x,cotton,150,160,10,15,medium,2 s,hot,none,yes\n"))
	f.Add([]byte("\xff"))
	f.Add([]byte("\"\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, faults := pressing.Read("press.csv", data)
		if (s == nil) == (len(faults) == 0) {
			t.Fatal("neither settings nor a fault")
		}
	})
}
