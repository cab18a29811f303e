package page

import (
	"encoding/binary"
	"hash/crc32"
	"io"
)

// headerSize is the length of a PNG's signature and its IHDR chunk, which is
// always first (PNG, third edition, 5.2 and 11.2.2).
const headerSize = 8 + 12 + 13

// resolutionWriter puts a pHYs chunk after the header of a PNG that passes
// through it; image/png writes none.
type resolutionWriter struct {
	w        io.Writer
	perMetre uint32
	seen     int
}

func (r *resolutionWriter) Write(p []byte) (int, error) {
	before := min(len(p), max(0, headerSize-r.seen))
	n, err := r.w.Write(p[:before])
	r.seen += n
	if err != nil || before == len(p) && r.seen < headerSize {
		return n, err
	}
	if before > 0 {
		if _, err := r.w.Write(r.chunk()); err != nil {
			return n, err
		}
	}
	if before == len(p) {
		return n, nil
	}
	rest, err := r.w.Write(p[before:])
	r.seen += rest
	return n + rest, err
}

// chunk returns the pHYs chunk: dots per metre both ways (PNG, third edition,
// 11.3.4.3).
func (r *resolutionWriter) chunk() []byte {
	b := binary.BigEndian.AppendUint32(nil, 9)
	b = append(b, "pHYs"...)
	b = binary.BigEndian.AppendUint32(b, r.perMetre)
	b = binary.BigEndian.AppendUint32(b, r.perMetre)
	b = append(b, 1)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
}
