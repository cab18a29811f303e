package source

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// File is a text file with its lines found, so that a fault can be given by
// line and column alone.
type File struct {
	name  string
	text  string
	start []int // byte offset of each line
}

// NewFile indexes the lines of text, which must be valid UTF-8. Lines end with
// LF, CR LF or CR.
func NewFile(name string, text string) *File {
	f := &File{name: name, text: text, start: []int{0}}
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' || text[i] == '\r' && (i+1 == len(text) || text[i+1] != '\n') {
			f.start = append(f.start, i+1)
		}
	}
	return f
}

// Name returns the name the file was opened under.
func (f *File) Name() string { return f.name }

// Lines returns the number of lines; a file that ends with a line break has an
// empty last line.
func (f *File) Lines() int { return len(f.start) }

// Line returns line n without its line break, or "" if there is none.
func (f *File) Line(n int) string {
	if n < 1 || n > len(f.start) {
		return ""
	}
	end := len(f.text)
	if n < len(f.start) {
		end = f.start[n]
	}
	return strings.TrimRight(f.text[f.start[n-1]:end], "\r\n")
}

// Fault returns a fault of this file that covers width characters.
func (f *File) Fault(line, column, width int, message, hint string) Fault {
	return Fault{
		Place:   Place{File: f.name, Line: line, Column: column},
		Message: message, Hint: hint, Excerpt: f.Line(line), Width: width,
	}
}

// BadByte finds the first byte of data that is not UTF-8. Its column is given
// in characters, as the bytes before it are sound. A line ends with LF, CR LF
// or CR.
func BadByte(data []byte) (b byte, line, column int, found bool) {
	if utf8.Valid(data) {
		return 0, 0, 0, false
	}
	i := 0
	for i < len(data) {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			break
		}
		i += size
	}
	head := bytes.ReplaceAll(data[:i], []byte("\r\n"), []byte("\n"))
	head = bytes.ReplaceAll(head, []byte("\r"), []byte("\n"))
	last := bytes.LastIndexByte(head, '\n')
	return data[i], bytes.Count(head, []byte("\n")) + 1, utf8.RuneCount(head[last+1:]) + 1, true
}
