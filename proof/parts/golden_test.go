package parts_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/proof/page"
)

var update = flag.Bool("update", false, "write the golden files anew")

func TestPartsSheetLooksAsItDid(t *testing.T) {
	var got bytes.Buffer
	require.NoError(t, partsSheet(t).WriteSVG(&got, page.SVGOptions{Paper: true}))
	golden := filepath.Join("testdata", "parts.svg")
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(golden, got.Bytes(), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	if !bytes.Equal(want, got.Bytes()) {
		t.Errorf("the sheet of parts has changed; look at it, then run the test with -update")
	}
}
