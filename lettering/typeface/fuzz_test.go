package typeface

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzOpen feeds the guarded door. The seeds are small fonts whole, cut,
// flipped and stripped of tables, made here.
func FuzzOpen(f *testing.F) {
	random := rand.New(rand.NewPCG(3, 4))
	for _, data := range [][]byte{boxes(f, "boxes.otf"), boxes(f, "boxes-vf.ttf"), boxes(f, "boxes-kern.ttf"), embeddedFile(f, "quantico")} {
		f.Add(data)
		f.Add(data[:len(data)/2])
		f.Add(data[:64])
		for range 3 {
			flipped := slices.Clone(data)
			for range 4 {
				flipped[random.IntN(len(flipped))] ^= byte(1 << random.IntN(8))
			}
			f.Add(flipped)
		}
		for _, tag := range []string{"GPOS", "GSUB", "GDEF", "OS/2", "post", "name"} {
			f.Add(changed(f, data, func(tables map[string][]byte) { tables[tag] = nil }))
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		face, err := openMeasured(t, data)
		if err != nil {
			return
		}
		exercise(t, face)
		again, err := Open("tested.ttf", data)
		require.NoError(t, err, "the same file is admitted again")
		require.Equal(t, fmt.Sprint(face.Settings(), face.CapHeight(), face.Digest()), fmt.Sprint(again.Settings(), again.CapHeight(), again.Digest()))
	})
}
