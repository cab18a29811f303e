package typeface_test

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"yokeline/fonts"
	"yokeline/lettering/typeface"
)

var update = flag.Bool("update", false, "record the reference lines anew with hb-shape")

const (
	namesFile   = "testdata/names.txt"
	recordsFile = "testdata/harfbuzz.txt.gz"
)

// setting is one face at one place of its axes, in one language.
type setting struct {
	id, axes, lang string
}

func (s setting) String() string { return fmt.Sprintf("@ %s %s %s", s.id, s.axes, s.lang) }

// settings lists what is recorded: every embedded face at its default, the
// variable ones at five more places, some chosen on both sides of where
// alternates of heavy weights set in, and every face in three languages with
// forms of their own.
func settings() []setting {
	variable := map[string][]string{
		"league-gothic": {"wdth=75", "wdth=79.25", "wdth=85", "wdth=93.7", "wdth=99"},
		"saira":         {"wght=800,wdth=62", "wght=900,wdth=125", "wght=437.5,wdth=50", "wght=100,wdth=77.3", "wght=620,wdth=100"},
		"archivo":       {"wght=800,wdth=70", "wght=100,wdth=125", "wght=900,wdth=62", "wght=431,wdth=88.08", "wght=600,wdth=113.5"},
	}
	var out []setting
	for _, e := range fonts.Catalogue() {
		out = append(out, setting{e.ID, "-", "und"})
		for _, axes := range variable[e.ID] {
			out = append(out, setting{e.ID, axes, "und"})
		}
		for _, lang := range []string{"tr", "ro", "nl"} {
			out = append(out, setting{e.ID, "-", lang})
		}
	}
	return out
}

// texts returns the names for a setting: all of them, or for a language those
// with letters beyond Latin-1 and with pairs that languages treat apart.
func texts(t *testing.T, s setting) []string {
	data, err := os.ReadFile(namesFile)
	require.NoError(t, err)
	all := strings.Split(strings.TrimSpace(string(data)), "\n")
	if s.lang == "und" {
		return all
	}
	var some []string
	for _, name := range all {
		if strings.ContainsFunc(name, func(r rune) bool { return r > 0xFF && r < 0x2000 }) ||
			strings.Contains(name, "fi") || strings.Contains(strings.ToLower(name), "ij") {
			some = append(some, name)
		}
	}
	return some
}

// TestShapingEqualsHarfBuzz compares glyphs, clusters, advances and offsets of
// every line with those that HarfBuzz's own hb-shape gave; the recording's
// first line names its version and arguments.
func TestShapingEqualsHarfBuzz(t *testing.T) {
	if *update {
		record(t)
	}
	records := readRecords(t)
	compared := map[string]int{}
	for _, s := range settings() {
		lines, names := records[s.String()], texts(t, s)
		require.Len(t, lines, len(names), "recording of %s", s)
		shaper := faceOf(t, s).NewShaper()
		lang := strings.Replace(s.lang, "und", "", 1)
		for i, name := range names {
			require.True(t, norm.NFC.IsNormalString(name), name)
			got, err := shaper.Shape(name, lang)
			if strings.Contains(lines[i], "[0=") || strings.Contains(lines[i], "|0=") {
				checkBoxed(t, shaper.Face(), name, got, err)
				continue
			}
			if text := format(got); err != nil || text != lines[i] {
				t.Errorf("%s, %q: %v\nHarfBuzz %s\nhere     %s", s, name, err, lines[i], text)
				continue
			}
			compared[s.id+s.axes+s.lang]++
		}
		if s.lang == "und" {
			assert.GreaterOrEqual(t, compared[s.id+s.axes+s.lang], 300, "%s: names compared", s)
		}
	}
	total := 0
	for _, n := range compared {
		total += n
	}
	t.Logf("%d lines equal in %d settings", total, len(settings()))
}

// checkBoxed checks a name for which HarfBuzz draws a box: it is refused, or
// all that is missing in it is put together from other characters.
func checkBoxed(t *testing.T, face *typeface.Face, name string, got typeface.Line, err error) {
	made, lacks := strings.ContainsAny(name, "\u02BB\u02BC"), false
	for _, r := range name {
		_, _, composed := face.Composed(r)
		made, lacks = made || composed, lacks || !face.Has(r)
	}
	if made && !lacks {
		assert.NoError(t, err, "%s, %q", face.ID(), name)
		assert.NotEmpty(t, got.Glyphs)
		return
	}
	var missing *typeface.MissingError
	assert.ErrorAs(t, err, &missing, "%s, %q: HarfBuzz draws a box", face.ID(), name)
}

func faceOf(t *testing.T, s setting) *typeface.Face {
	face, err := typeface.Embedded(s.id)
	require.NoError(t, err)
	instance, err := face.Instance(parseAxes(t, s.axes))
	require.NoError(t, err)
	return instance
}

func parseAxes(t *testing.T, text string) map[string]float64 {
	axes := map[string]float64{}
	if text == "-" {
		return axes
	}
	for _, part := range strings.Split(text, ",") {
		tag, value, _ := strings.Cut(part, "=")
		v, err := strconv.ParseFloat(value, 64)
		require.NoError(t, err)
		axes[tag] = v
	}
	return axes
}

// format writes a line as hb-shape does: glyph=cluster@x,y+advance.
func format(line typeface.Line) string {
	var out strings.Builder
	pen := 0.0
	for i, g := range line.Glyphs {
		out.WriteString(map[bool]string{true: "[", false: "|"}[i == 0])
		fmt.Fprintf(&out, "%d=%d", g.ID, g.Cluster)
		if dx := g.X - pen; dx != 0 || g.Y != 0 {
			fmt.Fprintf(&out, "@%g,%g", dx, g.Y)
		}
		fmt.Fprintf(&out, "+%g", g.Advance)
		pen += g.Advance
	}
	return out.String() + "]"
}

func readRecords(t *testing.T) map[string][]string {
	packed, err := os.ReadFile(recordsFile)
	require.NoError(t, err)
	reader, err := gzip.NewReader(bytes.NewReader(packed))
	require.NoError(t, err)
	records, key := map[string][]string{}, ""
	lines := bufio.NewScanner(reader)
	for lines.Scan() {
		switch line := lines.Text(); {
		case strings.HasPrefix(line, "#"):
			require.Contains(t, line, "HarfBuzz")
		case strings.HasPrefix(line, "@"):
			key = line
		default:
			records[key] = append(records[key], line)
		}
	}
	require.NoError(t, lines.Err())
	return records
}

// record runs hb-shape over all settings and writes the recording.
func record(t *testing.T) {
	tool, err := exec.LookPath("hb-shape")
	require.NoError(t, err, "recording needs HarfBuzz's hb-shape on the path (Debian package libharfbuzz-bin)")
	version, err := exec.Command(tool, "--version").Output()
	require.NoError(t, err)
	first, _, _ := strings.Cut(string(version), "\n")
	args := []string{"--shaper=ot", "--features=+kern,-liga,-clig,-dlig", "--no-glyph-names"}
	var out bytes.Buffer
	fmt.Fprintf(&out, "# %s %s\n", first, strings.Join(args, " "))
	for _, s := range settings() {
		entry, _ := fonts.Lookup(s.id)
		list := filepath.Join(t.TempDir(), "names")
		require.NoError(t, os.WriteFile(list, []byte(strings.Join(texts(t, s), "\n")+"\n"), 0o600))
		call := append([]string{"--language=" + s.lang, "--text-file=" + list}, args...)
		if s.axes != "-" {
			call = append(call, "--variations="+s.axes)
		}
		lines, err := exec.Command(tool, append(call, filepath.Join("../../fonts", entry.File))...).Output()
		if exit := (*exec.ExitError)(nil); errors.As(err, &exit) {
			t.Fatalf("hb-shape: %s", exit.Stderr)
		}
		require.NoError(t, err)
		fmt.Fprintln(&out, s)
		out.Write(lines)
	}
	var packed bytes.Buffer
	writer, _ := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	_, err = writer.Write(out.Bytes())
	require.NoError(t, err)
	require.NoError(t, writer.Close())
	require.NoError(t, os.WriteFile(recordsFile, packed.Bytes(), 0o644))
}

// TestSmallFontsShapeAsHarfBuzzDoes covers what no embedded face has: CFF
// outlines, kerning without GPOS, cursive joins. The lines are those of
// hb-shape (HarfBuzz 6.0.0) with the arguments of the recording.
func TestSmallFontsShapeAsHarfBuzzDoes(t *testing.T) {
	for _, c := range []struct{ file, axes, want string }{
		{"boxes-kern.ttf", "-", "[4=0+400|5=1@-40,0+410|2=2+420|7=3+470|9=4+490|10=5+500|11=6+510|5=7+450|5=8+450]"},
		{"boxes.otf", "-", "[4=0+360|5=1+450|2=2+420|7=3+470|9=4+490|10=5+500|11=6+510|5=7+300|5=8@-50,0+400]"},
		{"boxes-vf.ttf", "wdth=50,wght=650", "[4=0+255|5=1+345|8=2+375|7=3+470|9=4+385|10=5+395|11=6+405|5=7+300|5=8@-50,0+295]"},
	} {
		data, err := os.ReadFile("testdata/" + c.file)
		require.NoError(t, err)
		face, err := typeface.Open(c.file, data)
		require.NoError(t, err)
		instance, err := face.Instance(parseAxes(t, c.axes))
		require.NoError(t, err)
		line, err := instance.NewShaper().Shape("AVHÁ012VV", "")
		require.NoError(t, err)
		assert.Equal(t, c.want, format(line), c.file)
	}
}
