package order

import (
	"embed"
	"io/fs"
)

//go:embed demo starter
var embedded embed.FS

// Demo returns the demo order that comes with the program: the name of its job
// file and the folder it lies in with its roster. The club is invented; the
// roster has what rosters have: a name too long for its size, and 0 beside 00.
func Demo() (jobName string, files fs.FS) {
	return "job.yaml", folder("demo")
}

// File is a file to write.
type File struct {
	Name string
	Data []byte
}

// Starter returns the files of a job to begin with: a job with every common
// key explained, and its roster.
func Starter() []File {
	var out []File
	for _, name := range []string{"job.yaml", "roster.csv"} {
		data, err := fs.ReadFile(folder("starter"), name)
		if err != nil {
			panic("order: the starter is embedded: " + err.Error())
		}
		out = append(out, File{name, data})
	}
	return out
}

func folder(name string) fs.FS {
	sub, err := fs.Sub(embedded, name)
	if err != nil {
		panic("order: the folder is embedded: " + err.Error())
	}
	return sub
}
