package main

import (
	"bufio"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The house rules of DEVELOPERS.md, checked on the source itself so that the
// page cannot drift from the code.

const (
	root        = "../.."
	module      = "yokeline"
	longestFile = 400 // lines
	longestFunc = 60  // lines, doc comment not counted
)

type goFile struct {
	file    string // slash path from the root
	lines   int
	syntax  *ast.File
	fileSet *token.FileSet
}

func sources(t *testing.T) []goFile {
	t.Helper()
	var out []goFile
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") {
			return err
		}
		data, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		set := token.NewFileSet()
		syntax, err := parser.ParseFile(set, name, data, parser.ParseComments)
		if err != nil {
			return err
		}
		slash := strings.TrimPrefix(filepath.ToSlash(name), root+"/")
		out = append(out, goFile{slash, strings.Count(string(data), "\n"), syntax, set})
		return nil
	})
	require.NoError(t, err)
	require.NotEmpty(t, out)
	return out
}

func (s goFile) isTest() bool { return strings.HasSuffix(s.file, "_test.go") }

// importTable reads the table under "## Import table" of DEVELOPERS.md.
func importTable(t *testing.T) map[string][]string {
	t.Helper()
	f, err := os.Open(filepath.Join(root, "DEVELOPERS.md"))
	require.NoError(t, err)
	defer f.Close()
	table, inside := map[string][]string{}, false
	for lines := bufio.NewScanner(f); lines.Scan(); {
		line := lines.Text()
		if strings.HasPrefix(line, "## ") {
			inside = line == "## Import table"
			continue
		}
		cells := strings.Split(line, "|")
		if !inside || len(cells) < 4 || strings.Contains(line, "---") || strings.Contains(line, "may import") {
			continue
		}
		var allowed []string
		for _, word := range strings.Split(cells[2], ",") {
			if word = strings.Trim(word, " `"); word != "" && word != "nothing" {
				allowed = append(allowed, word)
			}
		}
		table[strings.Trim(cells[1], " `")] = allowed
	}
	require.NotEmpty(t, table)
	return table
}

func TestImportsAreThoseOfTheTable(t *testing.T) {
	table, used := importTable(t), map[string][]string{}
	for _, s := range sources(t) {
		if s.isTest() {
			continue
		}
		folder := path.Dir(s.file)
		used[folder] = append(used[folder], "")
		for _, spec := range s.syntax.Imports {
			name, ours := strings.CutPrefix(strings.Trim(spec.Path.Value, `"`), module+"/")
			if !ours {
				continue
			}
			used[folder] = append(used[folder], name)
			assert.Contains(t, table[folder], name, "%s imports %s; the table in DEVELOPERS.md does not list it", s.file, name)
		}
	}
	for folder, allowed := range table {
		require.Contains(t, used, folder, "the table lists a package that is not there")
		for _, name := range allowed {
			assert.Contains(t, used[folder], name, "the table lets %s import %s, which it does not", folder, name)
		}
	}
	for folder := range used {
		assert.Contains(t, table, folder, "a package is missing from the table")
	}
}

func TestImportsPointOneWay(t *testing.T) {
	floors := []string{"fonts", "lettering", "proof", "cmd"}
	floor := func(name string) int { return slices.Index(floors, strings.Split(name, "/")[0]) }
	for _, s := range sources(t) {
		for _, spec := range s.syntax.Imports {
			name, ours := strings.CutPrefix(strings.Trim(spec.Path.Value, `"`), module+"/")
			if ours {
				assert.GreaterOrEqual(t, floor(s.file), floor(name), "%s imports %s", s.file, name)
			}
		}
	}
}

func TestFilesAndFunctionsStayShort(t *testing.T) {
	functions, long := 0, 0
	for _, s := range sources(t) {
		assert.LessOrEqual(t, s.lines, longestFile, s.file)
		for _, d := range s.syntax.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || s.isTest() {
				continue
			}
			lines := s.fileSet.Position(f.End()).Line - s.fileSet.Position(f.Pos()).Line + 1
			assert.LessOrEqual(t, lines, longestFunc, "%s %s", s.file, f.Name)
			functions++
			if lines > 30 {
				long++
			}
		}
	}
	assert.Less(t, float64(long), 0.10*float64(functions), "%d of %d functions are over 30 lines", long, functions)
}

func TestEverythingExportedIsDocumented(t *testing.T) {
	packageDocs := map[string]bool{}
	for _, s := range sources(t) {
		if s.isTest() {
			continue
		}
		folder := path.Dir(s.file)
		packageDocs[folder] = packageDocs[folder] || s.syntax.Doc != nil
		for _, d := range s.syntax.Decls {
			assertDocumented(t, s.file, d)
		}
	}
	for folder, has := range packageDocs {
		assert.True(t, has, "%s has no package comment", folder)
	}
}

func assertDocumented(t *testing.T, file string, d ast.Decl) {
	t.Helper()
	switch d := d.(type) {
	case *ast.FuncDecl:
		if d.Name.IsExported() && receiverExported(d) {
			assert.NotNil(t, d.Doc, "%s: %s", file, d.Name)
		}
	case *ast.GenDecl:
		for _, spec := range d.Specs {
			switch spec := spec.(type) {
			case *ast.TypeSpec:
				if spec.Name.IsExported() {
					assert.True(t, d.Doc != nil || spec.Doc != nil, "%s: %s", file, spec.Name)
				}
			case *ast.ValueSpec:
				if spec.Names[0].IsExported() {
					assert.True(t, d.Doc != nil || spec.Doc != nil || spec.Comment != nil, "%s: %s", file, spec.Names[0])
				}
			}
		}
	}
}

func receiverExported(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	kind := d.Recv.List[0].Type
	if star, ok := kind.(*ast.StarExpr); ok {
		kind = star.X
	}
	if index, ok := kind.(*ast.IndexExpr); ok {
		kind = index.X
	}
	name, ok := kind.(*ast.Ident)
	return ok && name.IsExported()
}

func TestNoFolderHidesBehindAnEmptyName(t *testing.T) {
	for _, s := range sources(t) {
		for _, word := range strings.Split(path.Dir(s.file), "/") {
			assert.NotContains(t, []string{"util", "utils", "common", "helpers", "misc", "model", "types"}, word, s.file)
		}
	}
}

// TestNothingOfAMachineIsCommitted looks for the paths of a build machine in
// every text file that is part of the project.
func TestNothingOfAMachineIsCommitted(t *testing.T) {
	traces := []string{"/wo" + "rk/", "/ro" + "ot/", "proxy.golang" + ".org", "registry." + "npmjs"}
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		switch {
		case d.IsDir() && (d.Name() == ".git" || d.Name() == "proof-out"):
			return filepath.SkipDir
		case d.IsDir(), d.Name() == ".git": // a linked work tree has a file
			return nil
		}
		switch filepath.Ext(name) {
		case ".ttf", ".png", ".pdf", ".xlsx", ".gz", ".sum", ".test", ".prof":
			return nil
		}
		data, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		for _, trace := range traces {
			assert.NotContains(t, string(data), trace, name)
		}
		return nil
	})
	require.NoError(t, err)
}
