package specsheet_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/source"
	"yokeline/lettering/specsheet"
)

// drawn is a sheet that obeys every rule: the generic measures of one cut and
// group, each size a little larger by a share that grows with the sizes.
type drawn struct {
	cut    garment.Cut
	sizes  []garment.Size
	values map[garment.Size]map[string]float64
}

func anySheet(t *rapid.T) drawn {
	d := drawn{cut: rapid.SampledFrom(garment.Cuts()).Draw(t, "cut").Cut, values: map[garment.Size]map[string]float64{}}
	group := rapid.SampledFrom(garment.Groups()).Draw(t, "group")
	letters := garment.Sizes(group)
	from := rapid.IntRange(0, len(letters)-1).Draw(t, "from")
	share := rapid.Float64Range(0.97, 1.03).Draw(t, "share")
	for _, letter := range letters[from:rapid.IntRange(from+1, len(letters)).Draw(t, "to")] {
		size := garment.Size{Group: group, Letter: letter}
		_, figures, err := garment.Standard(d.cut, size)
		require.NoError(t, err)
		d.sizes, d.values[size] = append(d.sizes, size), map[string]float64{}
		for _, f := range figures {
			d.values[size][f.Measure] = float64(int(f.MM*share*1e6)) / 1e6
		}
		if v := d.values[size]; v["strap width"] > 0 { // rounding must not part what hangs together
			v["shoulder width"] = v["neck width"] + 2*v["strap width"]
		}
		share += rapid.Float64Range(0, 0.01).Draw(t, "more")
	}
	return d
}

// text writes the sheet with its measures in millimetres, rows in any order.
func (d drawn) text(t *rapid.T) string {
	var rows []string
	for _, size := range d.sizes {
		for _, name := range garment.MeasureNames(d.cut) {
			if mm, ok := d.values[size][name]; ok {
				rows = append(rows, fmt.Sprintf("%s,%s,%s,%s,%.6fmm", size.Group, size.Letter, d.cut, name, mm))
			}
		}
	}
	rows = rapid.Permutation(rows).Draw(t, "rows")
	return "group,size,cut,measure,value\n" + strings.Join(rows, "\n") + "\n"
}

func TestASheetThatKeepsTheRulesIsAcceptedAndItsValuesComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySheet(t)
		s, faults := specsheet.Read("makers.csv", []byte(d.text(t)), specsheet.Defaults{})
		require.NoError(t, faults.Err())
		assert.Equal(t, d.sizes, s.Sizes(d.cut))
		assert.Empty(t, s.Notes(d.cut))
		for _, size := range d.sizes {
			g, err := s.Garment(d.cut, size)
			require.NoError(t, err)
			assert.Empty(t, s.Filled(d.cut, size))
			for _, f := range g.Figures() {
				assert.InDelta(t, d.values[size][f.Measure], f.MM, 1e-6, f.Measure)
				assert.Contains(t, f.Basis, "makers.csv, line ")
			}
		}
	})
}

func TestAPartialSheetIsFilledFromTheGenericTable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySheet(t)
		size := rapid.SampledFrom(d.sizes).Draw(t, "size")
		_, generic, err := garment.Standard(d.cut, size)
		require.NoError(t, err)
		d.sizes = []garment.Size{size}
		for name := range d.values[size] {
			delete(d.values[size], name)
		}
		for _, f := range generic {
			if rapid.Bool().Draw(t, "given") {
				d.values[size][f.Measure] = f.MM
			}
		}
		if len(d.values[size]) == 0 {
			return
		}
		s, faults := specsheet.Read("makers.csv", []byte(d.text(t)), specsheet.Defaults{})
		require.NoError(t, faults.Err())
		g, err := s.Garment(d.cut, size)
		require.NoError(t, err)
		filled := s.Filled(d.cut, size)
		usual := map[string]float64{}
		for _, f := range generic {
			usual[f.Measure] = f.MM
		}
		for _, f := range g.Figures() {
			assert.InDelta(t, usual[f.Measure], f.MM, 1e-6, "given, worked out or filled, the generic figure it is")
			_, given := d.values[size][f.Measure]
			assert.Equal(t, given, strings.HasPrefix(f.Basis, "makers.csv, line "), f.Basis)
			if !given {
				worked := strings.HasPrefix(f.Basis, "worked out")
				assert.NotEqual(t, worked, contains(filled, f.Measure), "%s is filled or worked out", f.Measure)
			}
		}
	})
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// slips are ways to break one rule of one size. Each returns the measures that
// the message must name, or nil where the cut does not have the rule.
func slips() map[string]func(v map[string]float64) []string {
	move := func(a string, to func(v map[string]float64) float64, names ...string) func(v map[string]float64) []string {
		return func(v map[string]float64) []string {
			for _, name := range append(names, a) {
				if v[name] == 0 {
					return nil
				}
			}
			v[a] = to(v)
			return append(names, a)
		}
	}
	return map[string]func(v map[string]float64) []string{
		"no shoulder":    move("neck width", func(v map[string]float64) float64 { return v["shoulder width"] - 39 }, "shoulder width"),
		"narrow chest":   move("chest half", func(v map[string]float64) float64 { return v["shoulder width"] - 1 }, "shoulder width"),
		"short body":     move("body length", func(v map[string]float64) float64 { return v["armhole depth"] + 99 }, "armhole depth"),
		"deep neck":      move("neck drop front", func(v map[string]float64) float64 { return v["armhole depth"] + 1 }, "armhole depth"),
		"deep back":      move("neck drop back", func(v map[string]float64) float64 { return v["neck drop front"] + 1 }, "neck drop front"),
		"steep shoulder": move("shoulder drop", func(v map[string]float64) float64 { return v["armhole depth"] + 1 }, "armhole depth"),
		"odd straps":     move("strap width", func(v map[string]float64) float64 { return v["strap width"] + 3 }, "shoulder width", "neck width"),
		"wide racer":     move("racer width", func(v map[string]float64) float64 { return v["shoulder width"] + 1 }, "shoulder width"),
		"high yoke":      move("yoke depth", func(v map[string]float64) float64 { return v["neck drop front"] - 1 }, "neck drop front"),
		"long placket":   move("placket length", func(v map[string]float64) float64 { return v["body length"] }, "body length"),
		"narrow hip":     move("hip half", func(v map[string]float64) float64 { return v["waist half"] - 1 }, "waist half"),
		"low back rise":  move("back rise", func(v map[string]float64) float64 { return v["front rise"] - 1 }, "front rise"),
		"deep band":      move("band", func(v map[string]float64) float64 { return v["front rise"]/2 + 1 }, "front rise"),
	}
}

func TestASheetThatBreaksARuleIsRefusedNamingMeasureAndSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySheet(t)
		size := rapid.SampledFrom(d.sizes).Draw(t, "size")
		// Only slips that the cut can have: each check tries one.
		fitting := slices.DeleteFunc([]string{"no shoulder", "narrow chest", "short body", "deep neck", "deep back", "steep shoulder",
			"odd straps", "wide racer", "high yoke", "long placket", "narrow hip", "low back rise", "deep band"}, func(name string) bool {
			return slips()[name](maps.Clone(d.values[size])) == nil
		})
		require.NotEmpty(t, fitting)
		measures := slips()[rapid.SampledFrom(fitting).Draw(t, "slip")](d.values[size])
		s, faults := specsheet.Read("makers.csv", []byte(d.text(t)), specsheet.Defaults{})
		require.Nil(t, s)
		requireNames(t, faults, append(measures, size.String()))
	})
}

func TestAMeasureThatFallsIsRefusedNamingMeasureAndSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySheet(t)
		if len(d.sizes) < 2 || d.cut == garment.BasketballTank || d.cut == garment.RacerbackTank {
			return
		}
		i := rapid.IntRange(1, len(d.sizes)-1).Draw(t, "size")
		name := rapid.SampledFrom(garment.MeasureNames(d.cut)).Draw(t, "measure")
		d.values[d.sizes[i]][name] = d.values[d.sizes[i-1]][name] - 0.01
		s, faults := specsheet.Read("makers.csv", []byte(d.text(t)), specsheet.Defaults{})
		require.Nil(t, s)
		requireNames(t, faults, []string{name, "falls", d.sizes[i].String(), d.sizes[i-1].String()})
	})
}

// requireNames wants a fault that says all of the words.
func requireNames(t *rapid.T, faults source.Faults, words []string) {
	for _, f := range faults {
		all := true
		for _, w := range words {
			all = all && strings.Contains(f.Message, w)
		}
		if all {
			require.Positive(t, f.Place.Line)
			return
		}
	}
	require.Fail(t, "no fault names "+strings.Join(words, ", "), "%v", faults)
}

func FuzzRead(f *testing.F) {
	seeds, err := filepath.Glob("testdata/*.csv")
	require.NoError(f, err)
	require.NotEmpty(f, seeds)
	for _, name := range seeds {
		data, err := os.ReadFile(name)
		require.NoError(f, err)
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		s, faults := specsheet.Read("makers.csv", data, specsheet.Defaults{Cut: garment.CrewTee})
		require.Equal(t, s == nil, len(faults) > 0)
		text := strings.ReplaceAll(strings.ReplaceAll(strings.TrimPrefix(string(data), "\ufeff"), "\r\n", "\n"), "\r", "\n")
		for i, fault := range faults {
			require.NotEmpty(t, fault.Message)
			require.True(t, utf8.ValidString(fault.Text()))
			if i > 0 {
				require.LessOrEqual(t, faults[i-1].Place.Compare(fault.Place), 0, "in file order")
			}
			if fault.Place.Line > 0 && utf8.ValidString(text) {
				line := source.NewFile("f", text).Line(fault.Place.Line)
				require.LessOrEqual(t, fault.Place.Column, utf8.RuneCountInString(line)+1, "%v in %q", fault.Place, line)
			}
		}
		if s == nil {
			return
		}
		for _, size := range s.Sizes(garment.CrewTee) {
			_, err := s.Garment(garment.CrewTee, size)
			require.NoError(t, err, "what is accepted can be drawn")
		}
	})
}

func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile("testdata/rows.csv")
	require.NoError(b, err)
	for b.Loop() {
		specsheet.Read("rows.csv", data, specsheet.Defaults{Cut: garment.CrewTee})
	}
}
