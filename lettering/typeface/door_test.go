package typeface

import (
	"os"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/fonts"
)

// maxAlloc bounds what opening any file, good or hostile, may allocate in all.
const maxAlloc = 64 << 20

func boxes(t testing.TB, file string) []byte {
	data, err := os.ReadFile("testdata/" + file)
	require.NoError(t, err)
	return data
}

func embeddedFile(t testing.TB, id string) []byte {
	entry, ok := fonts.Lookup(id)
	require.True(t, ok)
	data, err := fonts.Read(entry.File)
	require.NoError(t, err)
	return data
}

// changed returns the font with its tables changed; a table set to nil goes.
func changed(t testing.TB, data []byte, change func(tables map[string][]byte)) []byte {
	file, err := cut(slices.Clone(data))
	require.NoError(t, err)
	change(file.tables)
	var tags []string
	for tag, table := range file.tables {
		if table != nil {
			tags = append(tags, tag)
		}
	}
	slices.Sort(tags)
	return file.pack(tags)
}

// openMeasured opens a file and checks the bounds that hold for every file:
// no panic, no more memory than allowed, never out of patience, and either a
// face or an error that names the file.
func openMeasured(t testing.TB, data []byte) (*Face, error) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	face, err := Open("tested.ttf", data)
	runtime.ReadMemStats(&after)
	require.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(maxAlloc), "memory: %v", err)
	if err != nil {
		require.Nil(t, face)
		require.Contains(t, err.Error(), `font file "tested.ttf" cannot be used: `)
		require.NotContains(t, err.Error(), "took longer")
		require.Contains(t, err.Error(), ";", "what to do: %v", err)
		return nil, err
	}
	require.NotNil(t, face)
	return face, nil
}

// exercise uses an admitted face in every way. Errors are allowed, panics and
// figures that are no numbers are not.
func exercise(t testing.TB, face *Face) {
	instances := []*Face{face}
	for _, a := range face.Axes() {
		for _, v := range []float64{a.Min, a.Max} {
			if instance, err := face.Instance(map[string]float64{a.Tag: v}); err == nil {
				instances = append(instances, instance)
			}
		}
	}
	shaper := face.NewShaper()
	for _, instance := range instances {
		require.NoError(t, shaper.Use(instance))
		for _, text := range []string{"AVATAR Hx 0123456789", "ÁŻỄffi", "O’NEIL", "A\u0301\u0323\u0301V"} {
			line, err := shaper.Shape(text, "tr")
			if err != nil {
				continue
			}
			for _, g := range line.Glyphs {
				require.False(t, g.X != g.X || g.Y != g.Y || g.Cluster < 0)
				instance.Bounds(g.ID)
			}
		}
		for id := range uint32(min(face.source.glyphs, 60)) {
			instance.Outline(id)
			instance.Advance(id)
		}
		require.Positive(t, instance.CapHeight())
	}
}

func TestSmallFontsOfEveryKindAreAdmitted(t *testing.T) {
	for file, want := range map[string]string{"boxes.otf": "Boxes", "boxes-vf.ttf": "Boxes Variable", "boxes-kern.ttf": "Boxes Kern"} {
		face, err := openMeasured(t, boxes(t, file))
		require.NoError(t, err, file)
		exercise(t, face)
		assert.Equal(t, want, face.Name())
		assert.Equal(t, "tested.ttf", face.ID())
		assert.Equal(t, 700.0, face.CapHeight(), file)
		assert.Equal(t, 500.0, face.XHeight(), file)
		assert.Len(t, face.Digest(), 64)
	}
}

func TestEmbeddedFacesStayFarFromTheBounds(t *testing.T) {
	for _, e := range fonts.Catalogue() {
		file, err := cut(embeddedFile(t, e.ID))
		require.NoError(t, err)
		found, err := file.check()
		require.NoError(t, err)
		assert.Less(t, found.spent, maxSpend/2, e.ID)
		_, err = openMeasured(t, embeddedFile(t, e.ID))
		require.NoError(t, err)
	}
}

func TestFilesThatAreNoFontAreNamedForWhatTheyAre(t *testing.T) {
	for start, want := range map[string]string{
		"ttcf":             "it is a collection of several fonts (.ttc); take the one font you need out of it",
		"wOFF":             "it is a web font (.woff or .woff2), which often lacks letters; use the .ttf or .otf file",
		"wOF2":             "it is a web font",
		"typ1":             "it is an old Type 1 font in a Macintosh wrapper; use its OpenType version",
		"%!PS":             "it is a PostScript Type 1 font; use its OpenType version",
		"\x80\x01..":       "it is a PostScript Type 1 font",
		"%PDF":             "it does not start like a TrueType or OpenType font; use the .ttf or .otf file",
		"\x00\x01\x00\x00": "its header counts 0 tables",
	} {
		_, err := openMeasured(t, append([]byte(start), make([]byte, 100)...))
		assert.ErrorContains(t, err, want, "%q", start)
	}
	_, err := openMeasured(t, nil)
	assert.ErrorContains(t, err, "it has 0 bytes, too few for a font; use the original .ttf or .otf file")
	_, err = openMeasured(t, make([]byte, MaxFileSize+1))
	assert.ErrorContains(t, err, "it has 8388609 bytes, more than the 8388608 that are read")
}

func TestFacesOfNoUseAreRefused(t *testing.T) {
	for _, c := range []struct {
		name, file, want string
		change           func(f tableSet)
	}{
		{"no digit", "boxes-kern.ttf", `it has no '5'; names and numbers need H and all ten digits`, func(f tableSet) { f["cmap"] = withoutCharacter(t, f, '5') }},
		{"no H", "boxes-kern.ttf", `it has no 'H'`, func(f tableSet) { f["cmap"] = withoutCharacter(t, f, 'H') }},
		{"digit without ink", "boxes-kern.ttf", `its '5' has no ink; use another font`, func(f tableSet) {
			at := 2 * 14 // the digit five is glyph 14; let it end where it starts
			copy(f["loca"][at:at+2], f["loca"][at+2:at+4])
		}},
		{"H without ink", "boxes-kern.ttf", "has no ink above the baseline", func(f tableSet) { copy(f["loca"][4:6], f["loca"][6:8]) }},
		{"letters too small", "boxes-kern.ttf", "its H is 0.07 em high, where 0.25 to 1.50 is believable", func(f tableSet) { f["head"] = put16(f["head"], 18, 10000) }},
		{"two readings of one outline", "boxes-kern.ttf", "it is read in two ways", func(f tableSet) { f["hmtx"] = put16(f["hmtx"], 4*2+2, 350) }},
		{"symbol map", "boxes-kern.ttf", "no Unicode character map", func(f tableSet) { f["cmap"] = put16(put16(f["cmap"], 4, 3, 0), 12, 3, 0) }},
		{"no outlines", "boxes-kern.ttf", "it has no outlines", func(f tableSet) { f["glyf"] = nil }},
		{"no map", "boxes-kern.ttf", `it has no table "cmap"`, func(f tableSet) { f["cmap"] = nil }},
		{"Apple layout", "boxes-kern.ttf", "use the maker's OpenType version", func(f tableSet) { f["morx"] = make([]byte, 12) }},
		{"variable CFF", "boxes.otf", "CFF2 outlines; use its TrueType version", func(f tableSet) { f["CFF2"] = make([]byte, 12) }},
		{"kerning that is not understood", "boxes-vf.ttf", `"GPOS" (kerning) has 1 lookups, of which 0 were understood; names would be spaced wrongly`, func(f tableSet) {
			// one class counted for the first glyph, two defined
			f["GPOS"] = layout(2, 1, words(2, 24, 4, 0, 16, 16, 1, 1, 1, 2, 1, 1, 1, 1, 2))
		}},
		{"alternates that are not understood", "boxes-vf.ttf", `"GSUB" (alternates) has 1 lookups, of which 0`, func(f tableSet) {
			f["GSUB"] = layout(2, 1, words(1, 8, 1, 16, 1, 2, 2, 4, 1, 2))
		}},
		{"axes that change nothing", "boxes-vf.ttf", "change nothing, so its variations were not understood", func(f tableSet) {
			f["HVAR"] = nil
			f["gvar"] = put32(append(put16(make([]byte, 20), 0, 1, 0, 2, 0, 0, 0, 19), make([]byte, 40)...), 16, 60)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := openMeasured(t, changed(t, boxes(t, c.file), c.change))
			require.ErrorContains(t, err, c.want)
		})
	}
}

// withoutCharacter makes a format 12 map of the small fonts' characters but one.
func withoutCharacter(t *testing.T, f tableSet, without rune) []byte {
	face, err := Open("boxes", boxes(t, "boxes-kern.ttf"))
	require.NoError(t, err)
	var groups []byte
	for _, r := range " 0123456789AHVx" {
		if id, ok := face.source.nominal(r); ok && r != without {
			group := put32(put32(put32(make([]byte, 12), 0, int(r)), 4, int(r)), 8, int(id))
			groups = append(groups, group...)
		}
	}
	table := append(words(0, 1, 3, 10, 0, 12), put32(put32(put16(make([]byte, 16), 0, 12), 4, 16+len(groups)), 12, len(groups)/12)...)
	return append(table, groups...)
}

// TestUnreadKerningWithGPOSIsDropped: a broken kern table beside GPOS is no
// reason to refuse a font, as GPOS comes first.
func TestUnreadKerningWithGPOSIsDropped(t *testing.T) {
	face, err := openMeasured(t, changed(t, boxes(t, "boxes-vf.ttf"), func(f tableSet) { f["kern"] = words(0, 9, 1) }))
	require.NoError(t, err)
	line, err := face.NewShaper().Shape("AV", "")
	require.NoError(t, err)
	assert.Equal(t, 360.0, line.Glyphs[1].X)
}
