//go:build !unix

package outfile

import "os"

// Without the locks of Unix a file left behind cannot be told from one in use,
// so none is ever swept away.
func lock(*os.File) {}

func removeUnlocked(string) {}

func isReadOnly(error) bool { return false }

func isNotFolder(error) bool { return false }

func syncFolder(string) error { return nil }
