// Package fonts holds the embedded open-licence typefaces, each beside its
// licence text, and their catalogue. It only stores and names files; reading
// them as typefaces is the job of package typeface.
package fonts

import (
	"embed"
	"fmt"
	"slices"
)

// Every folder is named, so that a stray file never ships by accident.
//
//go:embed graduate quantico alfa-slab-one roboto-slab russo-one saira-stencil-one
//go:embed anton league-gothic oswald barlow-condensed saira archivo
//go:embed yellowtail damion oleo-script ibm-plex-sans
var files embed.FS

// Entry describes one embedded typeface file.
type Entry struct {
	ID           string // short name that jobs and flags use
	Name         string // family name
	Style        string // style inside the family, such as "Bold" or "variable"
	File         string // path of the font file, for Read
	Role         string // what the face is for
	Licence      string // SPDX identifier
	LicenceFile  string // path of the licence text, for Read
	ReservedName string // Reserved Font Name of the OFL; empty when none is stated
	Version      string // version in the file's name table (ID 5), without the word "Version"
	Source       string // package, its version and the path inside that the file was taken from
	SHA256       string // of the font file, hexadecimal

	Script  bool // a connected script
	Caps    bool // fit to be set all in capitals; false for scripts
	Numbers bool // fit for players' numbers
	Text    bool // meant for the text of the proof sheet, not for lettering
	Default bool // the face for names when a job asks for none
	Zero    rune // the letter whose glyph stands for the digit 0 in numbers; 0 when the digit's own glyph is right
}

// Catalogue returns all embedded faces in a fixed order. The slice is the
// caller's own.
func Catalogue() []Entry { return slices.Clone(catalogue[:]) }

// Lookup returns the entry with the given identifier.
func Lookup(id string) (Entry, bool) {
	for _, e := range catalogue {
		if e.ID == id {
			return e, true
		}
	}
	return Entry{}, false
}

// Read returns the bytes of an embedded file, named as in Entry.File or
// Entry.LicenceFile. The bytes are the caller's own. The error names a file
// that is not embedded.
func Read(file string) ([]byte, error) {
	data, err := files.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("font file %q is not embedded; see the catalogue for the files there are", file)
	}
	return data, nil
}

// Licence is what the program must print about one embedded family.
type Licence struct {
	Family       string   // family name
	Files        []string // font files under this licence
	SPDX         string   // SPDX identifier
	ReservedName string   // Reserved Font Name; empty when none is stated
	Sources      []string // one a file, as Entry.Source
	Text         string   // the whole licence text
}

// Licences returns one licence a family, in the order of the catalogue. The
// texts belong to the fonts alone: artwork made with a font carries no
// condition of either licence.
func Licences() []Licence {
	var out []Licence
	for _, e := range catalogue {
		if n := len(out); n > 0 && out[n-1].Family == e.Name {
			out[n-1].Files = append(out[n-1].Files, e.File)
			out[n-1].Sources = append(out[n-1].Sources, e.Source)
			continue
		}
		// The path is checked by a test; an embedded file cannot go missing later.
		text, _ := files.ReadFile(e.LicenceFile)
		out = append(out, Licence{
			Family: e.Name, Files: []string{e.File}, SPDX: e.Licence,
			ReservedName: e.ReservedName, Sources: []string{e.Source}, Text: string(text),
		})
	}
	return out
}
