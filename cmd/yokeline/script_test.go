package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "write what the scripts print back into them")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"yokeline": func() { os.Exit(runProcess()) }})
}

// TestCommandLine runs the scripts in testdata/script against the program
// itself. Their own commands: exits CODE ARGS… runs yokeline and wants an exit
// code; figure PATH VALUE TOLERANCE wants a number in the JSON printed last.
func TestCommandLine(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			return os.CopyFS(filepath.Join(env.WorkDir, "orders"), os.DirFS("../../testdata/orders"))
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "figure": figure,
		},
	})
}

func exits(ts *testscript.TestScript, _ bool, args []string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec("yokeline", args[1:]...)
	got := 0
	if err != nil {
		var exit interface{ ExitCode() int }
		if !asExit(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

func asExit(err error, target *interface{ ExitCode() int }) bool {
	exit, ok := err.(interface{ ExitCode() int })
	*target = exit
	return ok
}

// figure walks a dotted path such as names.0.ink_width_mm.
func figure(ts *testscript.TestScript, neg bool, args []string) {
	var value any
	decoder := json.NewDecoder(bytes.NewReader([]byte(ts.ReadFile("stdout"))))
	ts.Check(decoder.Decode(&value))
	for _, step := range strings.Split(args[0], ".") {
		switch v := value.(type) {
		case map[string]any:
			next, ok := v[step]
			if !ok {
				ts.Fatalf("there is no %q in %v", step, v)
			}
			value = next
		case []any:
			i, err := strconv.Atoi(step)
			ts.Check(err)
			value = v[i]
		default:
			ts.Fatalf("%s: nothing below %v", args[0], value)
		}
	}
	if len(args) == 2 {
		if (fmt.Sprint(value) == args[1]) == neg {
			ts.Fatalf("%s is %v, want %s", args[0], value, args[1])
		}
		return
	}
	want, err := strconv.ParseFloat(args[1], 64)
	ts.Check(err)
	tolerance, err := strconv.ParseFloat(args[2], 64)
	ts.Check(err)
	if got, ok := value.(float64); !ok || math.Abs(got-want) > tolerance {
		ts.Fatalf("%s is %v, want %v within %v", args[0], value, want, tolerance)
	}
}
