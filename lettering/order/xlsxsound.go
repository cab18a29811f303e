package order

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"strings"

	"yokeline/lettering/source"
)

const again = "copy the roster into a new workbook"

// soundZip refuses archives that are no workbook, would not fit in memory, or
// hold XML that is made to be slow.
func soundZip(file string, data []byte) source.Faults {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return refuse(file, "the workbook is damaged or cut short", "ask for it again")
	}
	if len(z.File) > zipFiles {
		return refuse(file, fmt.Sprintf("the workbook holds %d parts: at most %d are read", len(z.File), zipFiles), again)
	}
	var size uint64
	book := false
	for _, part := range z.File {
		name := strings.ToLower(part.Name)
		book = book || name == "xl/workbook.xml"
		if most := partLimit(name); part.UncompressedSize64 > most {
			return refuse(file, fmt.Sprintf("part %s of the workbook unpacks to more than %d MiB", quote(clip(part.Name)), most>>20), again)
		}
		if size += part.UncompressedSize64; size > zipBytes {
			return refuse(file, fmt.Sprintf("the workbook unpacks to more than %d MiB", zipBytes>>20), again)
		}
	}
	if !book {
		return refuse(file, "the file is an archive, but not an .xlsx workbook", "save the roster as .xlsx or .csv")
	}
	return soundParts(file, z)
}

// partLimit is the most bytes a part may unpack to.
func partLimit(name string) uint64 {
	switch {
	case strings.HasPrefix(name, "xl/worksheets/"):
		return sheetBytes
	case isXML(name):
		return partBytes
	}
	return zipBytes
}

func isXML(name string) bool {
	return strings.HasSuffix(name, ".xml") || strings.HasSuffix(name, ".rels")
}

// soundParts looks through every XML part before anything parses it.
func soundParts(file string, z *zip.Reader) source.Faults {
	for _, part := range z.File {
		if !isXML(strings.ToLower(part.Name)) {
			continue
		}
		r, err := part.Open()
		if err != nil {
			return refuse(file, "the workbook is damaged", "ask for it again")
		}
		text, err := io.ReadAll(io.LimitReader(r, int64(partLimit(strings.ToLower(part.Name)))+1))
		r.Close()
		if err != nil {
			return refuse(file, "the workbook is damaged", "ask for it again")
		}
		if !soundXML(text) {
			return refuse(file, fmt.Sprintf("part %s of the workbook is not as spreadsheet programs write it", quote(clip(part.Name))), again)
		}
	}
	return nil
}

// soundXML reports whether no tag is longer and no element lies deeper than
// spreadsheet programs write; parsers slow down or swell on such text. It only
// counts: what is not well formed is left to the parser.
func soundXML(text []byte) bool {
	depth := 0
	for i := 0; i < len(text); {
		at := bytes.IndexByte(text[i:], '<')
		if at < 0 {
			return true
		}
		i += at
		end, empty := tagEnd(text, i)
		if end-i > xmlTag {
			return false
		}
		switch {
		case i+1 < len(text) && (text[i+1] == '!' || text[i+1] == '?'):
		case i+1 < len(text) && text[i+1] == '/':
			depth--
		case !empty:
			depth++
		}
		if depth > xmlDepth {
			return false
		}
		i = end
	}
	return true
}

// tagEnd is the offset after the tag that opens at from, and whether the tag
// closes itself. A > in quotes does not end it.
func tagEnd(text []byte, from int) (end int, empty bool) {
	quoted := byte(0)
	for i := from + 1; i < len(text); i++ {
		switch c := text[i]; {
		case quoted != 0:
			if c == quoted {
				quoted = 0
			}
		case c == '"' || c == '\'':
			if text[from+1] != '!' && text[from+1] != '?' {
				quoted = c
			}
		case c == '>':
			return i + 1, text[i-1] == '/'
		}
	}
	return len(text), false
}
