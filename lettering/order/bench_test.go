package order

import (
	"fmt"
	"strings"
	"testing"
)

const manyPlayers = 10_000

func manyRows() string {
	var b strings.Builder
	b.WriteString("Name on back,Player,Number,Size,Role\n")
	for i := range manyPlayers {
		fmt.Fprintf(&b, "Peña-%d,Ana Peña-%d,%d,YM,guard\n", i, i, i)
	}
	return b.String()
}

func BenchmarkReadCSV10000Rows(b *testing.B) {
	data := []byte(manyRows())
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if r, faults := ReadRoster("r.csv", data, "", RosterOptions{}); len(faults) > 0 || len(r.Players) != manyPlayers {
			b.Fatal(faults)
		}
	}
}

func BenchmarkReadXLSX10000Rows(b *testing.B) {
	rows := [][]any{{"Name on back", "Player", "Number", "Size", "Role"}}
	for i := range manyPlayers {
		rows = append(rows, []any{fmt.Sprintf("Peña-%d", i), fmt.Sprintf("Ana Peña-%d", i), i, "YM", "guard"})
	}
	data := book(b, rows, nil)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if r, faults := ReadRoster("r.xlsx", data, "", RosterOptions{}); len(faults) > 0 || len(r.Players) != manyPlayers {
			b.Fatal(faults)
		}
	}
}

func BenchmarkReadJob(b *testing.B) {
	data := []byte(full)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := ReadJob("j", data); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}
