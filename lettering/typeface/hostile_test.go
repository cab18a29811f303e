package typeface

import (
	"encoding/binary"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestCutFilesAreRefused cuts files at every length near the start and many
// further on; a font cut short must never be let in with letters missing.
func TestCutFilesAreRefused(t *testing.T) {
	cases := 0
	for _, data := range [][]byte{boxes(t, "boxes.otf"), boxes(t, "boxes-vf.ttf"), boxes(t, "boxes-kern.ttf"), embeddedFile(t, "graduate"), embeddedFile(t, "league-gothic")} {
		// the last table may end in up to three bytes of padding
		for n := 0; n < len(data)-3; n += 1 + n/60 {
			_, err := openMeasured(t, data[:n])
			require.Error(t, err, "%d of %d bytes", n, len(data))
			cases++
		}
	}
	require.Greater(t, cases, 800)
	t.Logf("%d cut files", cases)
}

// TestFlippedBytesNeverPanic damages every table of several fonts, a few bytes
// at a time, and uses whatever is admitted.
func TestFlippedBytesNeverPanic(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	refused, admitted := 0, 0
	files := map[string][]byte{"boxes.otf": boxes(t, "boxes.otf"), "boxes-vf.ttf": boxes(t, "boxes-vf.ttf"), "graduate": embeddedFile(t, "graduate"), "league-gothic": embeddedFile(t, "league-gothic")}
	for _, name := range []string{"boxes.otf", "boxes-vf.ttf", "graduate", "league-gothic"} {
		for _, tag := range shaping {
			for range 10 {
				data := changed(t, files[name], func(tables map[string][]byte) {
					table := slices.Clone(tables[tag])
					for range 1 + random.IntN(3) {
						if len(table) > 0 {
							// damage near the start, where counts and offsets are, twice as often
							reach := len(table)
							if random.IntN(3) > 0 {
								reach = min(reach, 64)
							}
							table[random.IntN(reach)] = byte(random.IntN(256))
						}
					}
					tables[tag] = table
				})
				face, err := openMeasured(t, data)
				if err != nil {
					refused++
					continue
				}
				admitted++
				exercise(t, face)
			}
		}
	}
	require.Greater(t, refused, 200)
	require.Greater(t, admitted, 100)
	t.Logf("%d refused, %d admitted and used", refused, admitted)
}

func put16(table []byte, at int, values ...int) []byte {
	for i, v := range values {
		binary.BigEndian.PutUint16(table[at+2*i:], uint16(v))
	}
	return table
}

func put32(table []byte, at, v int) []byte {
	binary.BigEndian.PutUint32(table[at:], uint32(v))
	return table
}

// words makes a table of 16-bit values.
func words(values ...int) []byte { return put16(make([]byte, 2*len(values)), 0, values...) }

// layout makes a GSUB or GPOS table with one lookup of the given type whose
// subtable offsets, n of them, all point at one subtable.
func layout(kind, n int, subtable []byte) []byte {
	table := words(1, 0, 0, 0, 10, 1, 4, kind, 0, n)
	for range n {
		table = append(table, words(6+2*n)...)
	}
	return append(table, subtable...)
}

// repeated makes an array count and n times the same offset.
func repeated(n, offset int) []byte {
	return words(append([]int{n}, slices.Repeat([]int{offset}, n)...)...)
}

type tableSet = map[string][]byte

// TestGiganticCountsAreRefusedBeforeParsing builds one small file for each way
// found to make a parser allocate without end, or run without end.
func TestGiganticCountsAreRefusedBeforeParsing(t *testing.T) {
	for _, c := range []struct {
		name, file, want string
		change           func(f tableSet)
	}{
		{"no glyphs' room in loca", "boxes-kern.ttf", `table "hmtx" is wrong`, func(f tableSet) { f["maxp"] = put16(f["maxp"], 4, 65535) }},
		{"loca too short", "boxes-kern.ttf", `table "loca" is wrong`, func(f tableSet) { f["maxp"] = put16(f["maxp"], 4, 65535); f["hmtx"] = make([]byte, 1<<19) }},
		{"no em", "boxes-kern.ttf", `0 units per em`, func(f tableSet) { f["head"] = put16(f["head"], 18, 0) }},
		{"no advances", "boxes-kern.ttf", `0 advances for`, func(f tableSet) { f["hhea"] = put16(f["hhea"], 34, 0) }},
		{"kern tables without end", "boxes-kern.ttf", "Apple's own format", func(f tableSet) { f["kern"] = put32(put32(make([]byte, 44), 0, 0x10000), 4, 1<<32-1) }},
		{"kern pairs beyond the table", "boxes-kern.ttf", `table "kern" is wrong`, func(f tableSet) { f["kern"] = words(0, 1, 0, 14, 1, 65535, 0, 0, 0) }},
		{"groups beyond the map", "boxes-kern.ttf", `table "cmap" is wrong`, func(f tableSet) {
			f["cmap"] = words(0, 1, 3, 10, 0, 12, 12, 0, 0, 16, 0, 0, 0xFFFF, 0xFFFF)
		}},
		{"segments over segments", "boxes-kern.ttf", "unfold to more than 32 MB", func(f tableSet) { f["cmap"] = overlappingSegments(2000) }},
		{"subtables over one subtable", "boxes-vf.ttf", "unfold to more than 32 MB", func(f tableSet) {
			single := append(words(2, 8+2000*2, 4, 2000), make([]byte, 4000)...)
			f["GPOS"] = layout(1, 20000, append(single, words(1, 1, 2)...))
		}},
		{"ligatures over one ligature", "boxes-vf.ttf", "unfold to more than 32 MB", func(f tableSet) {
			sets := append(words(1, 6+2*5000+2*5001), repeated(5000, 6+2*5000)...)
			sets = append(sets, repeated(5000, 2)...)
			f["GSUB"] = layout(4, 1, append(sets, words(1, 1, 2)...))
		}},
		{"extension of an extension", "boxes-vf.ttf", "an extension lookup leads to another", func(f tableSet) { f["GSUB"] = layout(7, 1, words(1, 7, 0, 0)) }},
		{"ligature without components", "boxes-vf.ttf", "a ligature has no components", func(f tableSet) {
			f["GSUB"] = layout(4, 1, words(1, 16, 1, 8, 1, 4, 2, 0, 1, 1, 2))
		}},
		{"scripts over one script", "boxes-vf.ttf", "unfold to more than 32 MB", func(f tableSet) { f["GSUB"] = repeatedScripts(4000) }},
		{"mark sets over one coverage", "boxes-vf.ttf", "unfold to more than 32 MB", func(f tableSet) { f["GDEF"] = repeatedMarkSets(60000, 2000) }},
		{"glyphs that unfold to points", "boxes-kern.ttf", "points; up to 50000 are read", func(f tableSet) { f["glyf"] = put16(f["glyf"], lastPointOf(f), 59999) }},
		{"composite of itself", "boxes-kern.ttf", "parts of parts", func(f tableSet) { f["glyf"] = put16(f["glyf"], componentOf(f), 7) }},
		{"composites that double", "boxes-kern.ttf", "unfolds to more than 50000 points", doublingComposites},
		{"component that is not there", "boxes-kern.ttf", "which there is not", func(f tableSet) { f["glyf"] = put16(f["glyf"], componentOf(f), 999) }},
		{"instances without end", "boxes-vf.ttf", "", func(f tableSet) { f["fvar"] = put16(f["fvar"], 12, 65535) }},
		{"axes without end", "boxes-vf.ttf", `table "fvar" is wrong`, func(f tableSet) { f["fvar"] = put16(f["fvar"], 8, 65535) }},
		{"axis upside down", "boxes-vf.ttf", "goes from", func(f tableSet) { f["fvar"] = put32(f["fvar"], 20, 1<<30) }},
		{"tuples without end", "boxes-vf.ttf", `table "gvar" is wrong`, func(f tableSet) { f["gvar"] = put16(f["gvar"], firstVariation(f), 0x0FFF) }},
		{"deltas past their data", "boxes-vf.ttf", "reach past its data", func(f tableSet) { f["gvar"] = put16(f["gvar"], firstVariation(f)+4, 0x7FFF) }},
		{"variations for other glyphs", "boxes-vf.ttf", "the font has 2 and 19", func(f tableSet) { f["gvar"] = put16(f["gvar"], 12, 18) }},
		{"variations gone", "boxes-vf.ttf", `no table "gvar"`, func(f tableSet) { f["gvar"] = nil }},
		{"map that stands still", "boxes-vf.ttf", "does not rise", func(f tableSet) { f["avar"] = words(1, 0, 0, 2, 2, 0, 0, 0, 0, 0) }},
		{"advances that unfold", "boxes-vf.ttf", "unfold to more than 32 MB", func(f tableSet) { f["HVAR"] = repeatedStores(4000, 20000) }},
		{"subroutine that calls itself", "boxes.otf", "too deep", func(f tableSet) { f["CFF "] = replaceOnce(t, f["CFF "], []byte{32, 29, 11}, []byte{32, 10, 11}) }},
		{"subroutine that is not there", "boxes.otf", "calls subroutine", func(f tableSet) { f["CFF "] = replaceOnce(t, f["CFF "], []byte{32, 29, 11}, []byte{99, 29, 11}) }},
		{"arithmetic in a glyph", "boxes.otf", "operator 12", func(f tableSet) { f["CFF "] = replaceOnce(t, f["CFF "], []byte{7, 11}, []byte{12, 11}) }},
		{"TrueType places beside CFF outlines", "boxes.otf", "", func(f tableSet) { f["loca"] = words(make([]int, 20)...) }},
		{"index beyond the table", "boxes.otf", `table "CFF " is wrong`, func(f tableSet) { f["CFF "] = put16(f["CFF "], 4, 65535) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			face, err := openMeasured(t, changed(t, boxes(t, c.file), c.change))
			if c.want == "" {
				require.NoError(t, err)
				exercise(t, face)
				return
			}
			require.ErrorContains(t, err, c.want)
		})
	}
}

// TestSubroutinesThatMultiplyAreStopped builds a glyph program of ten levels,
// each calling the next fifty times: 50 to the tenth steps.
func TestSubroutinesThatMultiplyAreStopped(t *testing.T) {
	var data []byte
	var subrs []span
	for level := range 9 {
		from := len(data)
		for range 50 {
			data = append(data, byte(139-107+level+1), 10)
		}
		data = append(data, 11)
		subrs = append(subrs, span{from, len(data)})
	}
	from := len(data)
	data = append(data, 11)
	subrs = append(subrs, span{from, len(data)})
	spent := 0
	run := cffRun{checker: &checker{table: "CFF ", data: data, spent: &spent}, local: subrs}
	run.run(subrs[0], 0)
	assert.Greater(t, run.steps, maxGlyphSteps)
	assert.Less(t, run.steps, maxGlyphSteps+1000)
}

func overlappingSegments(n int) []byte {
	segments := words(4, 0, 0, 2*n, 0, 0, 0)
	segments = append(segments, words(slices.Repeat([]int{0xFFFE}, n)...)...)
	segments = append(segments, words(append([]int{0}, slices.Repeat([]int{0}, n)...)...)...)
	segments = append(segments, words(slices.Repeat([]int{0}, n)...)...)
	segments = append(segments, words(slices.Repeat([]int{2}, n)...)...)
	return append(words(0, 1, 3, 1, 0, 12), append(segments, make([]byte, 140000)...)...)
}

func repeatedScripts(n int) []byte {
	table := words(1, 0, 10, 0, 0, n)
	for range n {
		table = append(table, words(0x6C61, 0x746E, 2+6*n)...)
	}
	table = append(table, words(0, n)...)
	for range n {
		table = append(table, words(0x6C61, 0x746E, 4+6*n)...)
	}
	return append(table, words(0, 0xFFFF, 0)...)
}

func repeatedMarkSets(n, glyphs int) []byte {
	table := words(1, 2, 0, 0, 0, 0, 14, 1, n)
	for range n {
		table = append(table, put32(make([]byte, 4), 0, 4+4*n)...)
	}
	return append(table, append(words(1, glyphs), make([]byte, 2*glyphs)...)...)
}

func repeatedStores(n, items int) []byte {
	table := put32(put16(make([]byte, 20), 0, 1, 0), 4, 20)
	table = append(table, put16(put32(put16(make([]byte, 8), 0, 1), 2, 8+4*n), 6, n)...)
	for range n {
		table = append(table, put32(make([]byte, 4), 0, 8+4*n+4)...)
	}
	table = append(table, words(2, 0)...)
	return append(table, append(words(items, 0, 1, 0), make([]byte, items)...)...)
}

// Places in the small fonts' tables.
func locaOf(f tableSet, glyph int) int { return 2 * int(binary.BigEndian.Uint16(f["loca"][2*glyph:])) }
func lastPointOf(f tableSet) int       { return locaOf(f, 2) + 10 }
func componentOf(f tableSet) int       { return locaOf(f, 7) + 12 }
func firstVariation(f tableSet) int {
	return int(binary.BigEndian.Uint32(f["gvar"][16:])) + 2*int(binary.BigEndian.Uint16(f["gvar"][20+4:]))
}

// doublingComposites makes every glyph from the third on of four copies of the
// one before: few bytes, and 4 to the power of the depth points.
func doublingComposites(f tableSet) {
	glyphs := int(binary.BigEndian.Uint16(f["maxp"][4:]))
	box := f["glyf"][locaOf(f, 2):locaOf(f, 3)]
	var glyf []byte
	loca := []int{0, 0, 0}
	for i := 2; i < glyphs; i++ {
		if i < 4 || i%8 == 0 {
			glyf = append(glyf, box...)
		} else {
			glyf = append(glyf, words(0xFFFF, 0, 0, 0, 0)...)
			for k := range 16 {
				more := 0x20
				if k == 15 {
					more = 0
				}
				glyf = append(glyf, words(more, i-1, 0)...)
			}
		}
		glyf = append(glyf, make([]byte, len(glyf)%2)...)
		loca = append(loca, len(glyf)/2)
	}
	f["glyf"], f["loca"] = glyf, words(loca...)
}

func replaceOnce(t *testing.T, table, old, new []byte) []byte {
	require.Equal(t, 1, strings.Count(string(table), string(old)))
	return []byte(strings.Replace(string(table), string(old), string(new), 1))
}

// TestLayoutWalkFollowsEveryContext gives the walk one small table for each
// form of context that no font here has: whole it passes, a word shorter it
// does not.
func TestLayoutWalkFollowsEveryContext(t *testing.T) {
	rule := []int{2, 1, 3, 0, 0}                // two glyphs, one lookup: the second glyph, the lookup
	chained := []int{1, 9, 2, 3, 1, 9, 1, 0, 0} // one before, two of which the second is given, one after, one lookup
	one := []int{1, 1, 2}                       // coverage of one glyph
	classes := []int{2, 1, 2, 2, 1}             // one range of one class
	subtable := func(parts ...[]int) []byte { return words(slices.Concat(parts...)...) }
	for name, sub := range map[string][]byte{
		"5 7 context of glyphs":     subtable([]int{1, 8, 1, 14}, one, []int{1, 4}, rule),
		"5 7 context of classes":    subtable([]int{2, 10, 16, 1, 26}, one, classes, []int{1, 4}, rule),
		"5 7 context of coverages":  subtable([]int{3, 1, 1, 16, 0, 0}, []int{0, 0}, one),
		"6 8 chained by glyphs":     subtable([]int{1, 8, 1, 14}, one, []int{1, 4}, chained),
		"6 8 chained by classes":    subtable([]int{2, 14, 20, 20, 20, 1, 30}, one, classes, []int{1, 4}, chained),
		"6 8 chained by coverages":  subtable([]int{3, 1, 16, 1, 16, 1, 16, 0}, one),
		"8 0 reversed":              subtable([]int{1, 16, 1, 16, 1, 16, 1, 5}, one),
		"0 3 cursive with a device": subtable([]int{1, 10, 1, 16, 0}, one, []int{3, 0, 0, 10, 0}, []int{9, 10, 1, 0}),
	} {
		var kinds [2]int
		_, err := fmt.Sscan(name, &kinds[0], &kinds[1])
		require.NoError(t, err)
		for i, tag := range []string{"GSUB", "GPOS"} {
			if kinds[i] == 0 {
				continue
			}
			table, spent := layout(kinds[i], 1, sub), 0
			whole := checker{table: tag, data: table, spent: &spent}
			assert.Equal(t, 1, whole.checkLayout(), name)
			assert.NoError(t, whole.err, name)
			assert.Greater(t, spent, 300, name)
			short := checker{table: tag, data: table[:len(table)-4], spent: &spent}
			short.checkLayout()
			assert.Error(t, short.err, name)
		}
	}
}

func TestPackedNumbersStayWithinTheGlyph(t *testing.T) {
	for _, c := range []struct {
		name  string
		data  []byte
		count int
		want  string
	}{
		{"all points", []byte{0}, 8, ""},
		{"two points", []byte{2, 1, 3, 4}, 2, ""},
		{"two points of 16 bits", []byte{2, 0x81, 0, 3, 0, 4}, 2, ""},
		{"a point too far", []byte{1, 0, 8}, 1, "a glyph moves point 8 of 8"},
		{"points that add up too far", []byte{2, 1, 5, 3}, 2, "a glyph moves point 8 of 8"},
		{"a run too long", []byte{1, 1, 1, 1}, 1, "a run of point numbers is too long"},
		{"an end too soon", []byte{0x81, 0}, 256, "it should go on to byte 3 but has 2"},
	} {
		t.Run(c.name, func(t *testing.T) {
			spent := 0
			p := packed{&checker{table: "gvar", data: c.data, spent: &spent}, 0, len(c.data)}
			assert.Equal(t, c.count, p.pointNumbers(8))
			if c.want == "" {
				require.NoError(t, p.err)
				assert.Equal(t, len(c.data), p.at)
				return
			}
			require.ErrorContains(t, p.err, c.want)
		})
	}
}
