package sheets

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/proof/pdf"
)

// BenchmarkProof draws the demo's whole proof and writes it as PDF.
func BenchmarkProof(b *testing.B) {
	in, pages := demoInput(b), 0
	for b.Loop() {
		book, err := Proof(in)
		require.NoError(b, err)
		require.NoError(b, pdf.Write(io.Discard, book, pdf.Facts{}))
		pages += len(book.Pages())
	}
	b.ReportMetric(float64(pages)/b.Elapsed().Seconds(), "pages/s")
}
