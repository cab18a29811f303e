package order

// Limits on what is read, so that no file, however made, takes more than a
// moment or more memory than a laptop has. Each is far above any real order
// and each is named in the message that refuses a file.
const (
	jobBytes    = 1 << 20  // a job of 1 MiB
	jobDepth    = 8        // a layer of an outline is 5 deep
	jobKeys     = 200      // keys of one mapping; there are 24 at the top
	rosterBytes = 5 << 20  // a roster of 5 MiB
	rosterRows  = 20_000   // players
	rosterCols  = 60       // columns
	cellLetters = 200      // characters of one cell
	nameLetters = 40       // characters of a name; a jersey takes some 20
	digits      = 4        // digits of a number; roller derby allows 4
	lineLetters = 120      // characters of a title line of the job
	termLetters = 4000     // characters of the terms
	layers      = 4        // outlines of one piece
	mostFaults  = 20_000   // after which a roster is read no further
	zipBytes    = 32 << 20 // a workbook unpacked, pictures and all
	sheetBytes  = 16 << 20 // one of its sheets; 20,000 players take 4
	partBytes   = 8 << 20  // any other of its XML parts
	zipFiles    = 1000     // its parts
	sheetRows   = 100_000  // rows of a sheet, blank ones too
	sheetCells  = 400_000  // cells of a sheet, blank ones too
	xmlTag      = 16 << 10 // bytes of one tag in a workbook's XML
	xmlDepth    = 100      // elements inside each other there; 10 are usual
)
