package fonts_test

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/fonts"
)

func TestEveryFontFileIsTheOneInTheCatalogue(t *testing.T) {
	require.Len(t, fonts.Catalogue(), 17)
	for _, e := range fonts.Catalogue() {
		data, err := fonts.Read(e.File)
		require.NoError(t, err)
		sum := sha256.Sum256(data)
		assert.Equal(t, e.SHA256, hex.EncodeToString(sum[:]), e.File)
	}
}

func TestEveryFamilyHasItsLicenceText(t *testing.T) {
	for _, e := range fonts.Catalogue() {
		data, err := fonts.Read(e.LicenceFile)
		require.NoError(t, err)
		assert.Equal(t, path.Dir(e.File), path.Dir(e.LicenceFile), "the licence lies beside the font")
		switch text := string(data); e.Licence {
		case "OFL-1.1":
			assert.Contains(t, text, "SIL OPEN FONT LICENSE Version 1.1", e.ID)
			// A name is reserved in the copyright line or not at all. Oleo's
			// line reserves one of the two names its name table has.
			reserved := regexp.MustCompile(`(?i)reserved font names?\s+["“]?([A-Z][\w ]*)`).FindStringSubmatch(strings.SplitN(text, "\n\n", 2)[0])
			if e.ReservedName == "" {
				assert.Empty(t, reserved, e.ID)
			} else if assert.NotEmpty(t, reserved, e.ID) {
				assert.Contains(t, e.ReservedName, strings.TrimSpace(reserved[1]), e.ID)
			}
		case "Apache-2.0":
			assert.Contains(t, text, "Apache License", e.ID)
			assert.Contains(t, text, "Version 2.0, January 2004", e.ID)
			assert.Empty(t, e.ReservedName)
		default:
			t.Errorf("%s: licence %q is not one this test knows", e.ID, e.Licence)
		}
	}
}

func TestCatalogueIsWholeAndInOrder(t *testing.T) {
	want := strings.Fields("graduate quantico alfa-slab-one roboto-slab russo-one saira-stencil-one anton league-gothic " +
		"oswald barlow-condensed saira archivo yellowtail damion oleo-script ibm-plex-sans ibm-plex-sans-semibold")
	var ids, defaults, withZero []string
	for _, e := range fonts.Catalogue() {
		ids = append(ids, e.ID)
		assert.NotEmpty(t, e.Name)
		assert.NotEmpty(t, e.Style)
		assert.NotEmpty(t, e.Role)
		assert.Regexp(t, `^\d+\.\d+`, e.Version)
		assert.Regexp(t, `^npm package @[\w-]+/[\w-]+ \d+\.\d+\.\d+, `, e.Source)
		assert.NotContains(t, e.Source, "://")
		assert.NotEqual(t, e.Script, e.Caps, "%s: a script is never set in capitals", e.ID)
		if e.Default {
			defaults = append(defaults, e.ID)
		}
		if e.Zero != 0 {
			withZero = append(withZero, e.ID)
		}
		if e.Script || e.Text || e.ID == "league-gothic" {
			assert.False(t, e.Numbers, e.ID)
		}
		found, ok := fonts.Lookup(e.ID)
		assert.True(t, ok)
		assert.Equal(t, e, found)
	}
	assert.Equal(t, want, ids)
	assert.Equal(t, []string{"oswald"}, defaults)
	assert.Equal(t, []string{"graduate"}, withZero)
	_, ok := fonts.Lookup("none")
	assert.False(t, ok)
}

func TestNoFontFileLiesBesideTheCatalogue(t *testing.T) {
	var listed []string
	for _, e := range fonts.Catalogue() {
		listed = append(listed, e.File, e.LicenceFile)
	}
	require.NoError(t, fs.WalkDir(os.DirFS("."), ".", func(name string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() && path.Dir(name) != "." {
			assert.True(t, slices.Contains(listed, name), "%s is in no catalogue entry", name)
		}
		return err
	}))
}

func TestLicencesListEveryFamilyOnce(t *testing.T) {
	families, files := map[string]bool{}, 0
	for _, l := range fonts.Licences() {
		assert.False(t, families[l.Family], l.Family)
		families[l.Family] = true
		files += len(l.Files)
		assert.Len(t, l.Sources, len(l.Files))
		assert.Greater(t, len(l.Text), 4000, l.Family)
		assert.NotEmpty(t, l.SPDX)
	}
	assert.Len(t, families, 16)
	assert.Equal(t, 17, files)
}

func TestCatalogueIsTheCallersOwn(t *testing.T) {
	fonts.Catalogue()[0].ID = "changed"
	assert.Equal(t, "graduate", fonts.Catalogue()[0].ID)
	data, err := fonts.Read("anton/OFL.txt")
	require.NoError(t, err)
	data[0] = 0
	again, err := fonts.Read("anton/OFL.txt")
	require.NoError(t, err)
	assert.NotZero(t, again[0])
}

func TestReadNamesAFileThatIsNotEmbedded(t *testing.T) {
	_, err := fonts.Read("none/None.ttf")
	assert.EqualError(t, err, `font file "none/None.ttf" is not embedded; see the catalogue for the files there are`)
}
