package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"
)

// streams are the program's connections to the outside.
type streams struct {
	out, err io.Writer
	live     bool // standard error is a terminal: progress may overwrite its line
	env      func(string) string
}

func processStreams() streams {
	return streams{out: os.Stdout, err: os.Stderr, live: term.IsTerminal(int(os.Stderr.Fd())), env: os.Getenv}
}

// printJSON writes a value as indented JSON. Characters such as & and < stay
// as they are: names are read by people too.
func (s streams) printJSON(v any) error {
	encoder := json.NewEncoder(s.out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(v)
}

// number is a figure in JSON: four decimals or more, null when there is none.
type number float64

// MarshalJSON prints NaN and infinities as null.
func (n number) MarshalJSON() ([]byte, error) {
	v := float64(n)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	return fmt.Appendf(nil, "%.6f", v), nil
}

// orNull is a figure where 0 means that there is none.
func orNull(v float64) number {
	if v == 0 {
		return number(math.NaN())
	}
	return number(v)
}

// table prints rows in columns that are as wide as their widest cell. The
// last column is not padded, so that no line ends in spaces.
type table struct{ rows [][]string }

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }

func (t *table) print(w io.Writer) error {
	var widths []int
	for _, row := range t.rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range t.rows {
		var line strings.Builder
		for i, cell := range row {
			line.WriteString(cell)
			if i < len(row)-1 {
				line.WriteString(strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)+2))
			}
		}
		if _, err := fmt.Fprintln(w, strings.TrimRight(line.String(), " ")); err != nil {
			return err
		}
	}
	return nil
}

// progress returns a function that reports long work on standard error: one
// line that is overwritten on a terminal, otherwise a line at every tenth.
// Short work stays silent.
func (s streams) progress(what string) func(done, all int) {
	const longWork = 60 // players; fewer are done before anyone wonders
	last := -1
	return func(done, all int) {
		if all < longWork {
			return
		}
		tenth := done * 10 / all
		if s.live {
			fmt.Fprintf(s.err, "\r%s %d of %d", what, done, all)
			if done == all {
				fmt.Fprintln(s.err)
			}
		} else if tenth != last {
			fmt.Fprintf(s.err, "%s %d of %d\n", what, done, all)
		}
		last = tenth
	}
}
