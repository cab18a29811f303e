package typeface

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"yokeline/fonts"
)

// Library opens embedded faces, each once, when first asked for. It is safe
// for concurrent use: the list never changes and every face is filled in once.
type Library struct {
	ids   []string
	faces []func() (*Face, error)
}

// NewLibrary returns a library of all embedded faces, none opened yet.
func NewLibrary() *Library {
	l := &Library{}
	for _, e := range fonts.Catalogue() {
		l.ids = append(l.ids, e.ID)
		l.faces = append(l.faces, sync.OnceValues(func() (*Face, error) { return openEntry(e) }))
	}
	return l
}

func openEntry(e fonts.Entry) (*Face, error) {
	data, err := fonts.Read(e.File)
	if err != nil {
		return nil, err
	}
	return open(opening{file: e.File, id: e.ID, name: strings.TrimSuffix(e.Name+" "+e.Style, " variable"), zero: e.Zero}, data)
}

// Face returns the embedded face with the identifier, read through the same
// guarded door as a user's file. An unknown identifier is an error that names
// the nearest ones.
func (l *Library) Face(id string) (*Face, error) {
	if i := slices.Index(l.ids, id); i >= 0 {
		return l.faces[i]()
	}
	return nil, fmt.Errorf("there is no face %q; nearest: %s", id, strings.Join(l.nearest(id), ", "))
}

// nearest returns the three identifiers with the smallest edit distance; a
// shared beginning counts as near.
func (l *Library) nearest(id string) []string {
	distance := func(known string) int {
		if id != "" && (strings.HasPrefix(known, id) || strings.HasPrefix(id, known)) {
			return 0
		}
		return edits(strings.ToLower(id), known)
	}
	ids := slices.Clone(l.ids)
	slices.SortStableFunc(ids, func(a, b string) int { return distance(a) - distance(b) })
	return ids[:min(3, len(ids))]
}

// edits is the Levenshtein distance in bytes, over the first 64 of each.
func edits(a, b string) int {
	a, b = a[:min(len(a), 64)], b[:min(len(b), 64)]
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			diagonal, row[j+1] = row[j+1], min(row[j+1]+1, row[j]+1, diagonal+cost)
		}
	}
	return row[len(b)]
}

// shared is filled once, on first use, and only read afterwards.
var shared struct {
	once    sync.Once
	library *Library
}

// Embedded returns an embedded face from the library that all callers share.
// Faces are immutable, so sharing them has no effect but speed.
func Embedded(id string) (*Face, error) {
	shared.once.Do(func() { shared.library = NewLibrary() })
	return shared.library.Face(id)
}
