package signpage

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	cdpruntime "github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// visit is a browser window on one page.
type visit struct {
	t       *testing.T
	ctx     context.Context
	name    string
	folder  string // of downloads
	mu      sync.Mutex
	trouble []string // errors of the page and requests to a network
}

// browse starts a browser, or skips the test where there is none.
func browse(t *testing.T) context.Context {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("YOKELINE_TOOLS") == "required" {
			t.Fatalf("chromium is needed: %v", err)
		}
		t.Skip("chromium is not installed")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox,
		chromedp.Flag("hide-scrollbars", true), chromedp.WSURLReadTimeout(time.Minute))
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(stop)
	require.NoError(t, chromedp.Do(ctx, chromedp.Navigate("about:blank")))
	return ctx
}

// open opens a page in a window of its own; without script where bare is set.
func open(t *testing.T, browserCtx context.Context, name, url string, width, height int64, bare bool) *visit {
	t.Helper()
	ctx, stop := chromedp.NewContext(browserCtx)
	t.Cleanup(stop)
	v := &visit{t: t, ctx: ctx, name: name, folder: t.TempDir()}
	require.NoError(t, chromedp.Listen(ctx, v.listen))
	command(v, network.Enable, network.EnableParams{})
	command(v, cdpruntime.Enable, cdp.Empty{})
	command(v, log.Enable, cdp.Empty{})
	command(v, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{
		Width: width, Height: height, DeviceScaleFactor: 1, Mobile: width < 720,
	})
	command(v, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: "reduce"}},
	})
	command(v, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: bare})
	_, err := chromedp.CallBrowser(ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: v.folder,
	})
	require.NoError(t, err)
	v.do(chromedp.Navigate(url))
	return v
}

// command sends the browser a command about the window.
func command[P, R any](v *visit, c cdp.Command[P, R], params P) {
	v.t.Helper()
	_, err := chromedp.Call(v.ctx, c, params)
	require.NoError(v.t, err)
}

// listen notes what the page must not do.
func (v *visit) listen(event any) {
	v.mu.Lock()
	defer v.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		url := e.Request.URL
		if !strings.HasPrefix(url, "file:") && !strings.HasPrefix(url, "data:") && !strings.HasPrefix(url, "blob:") {
			v.trouble = append(v.trouble, "request to "+url)
		}
	case *cdpruntime.EventConsoleAPICalled:
		v.trouble = append(v.trouble, fmt.Sprintf("console: %v", e.Args))
	case *cdpruntime.EventExceptionThrown:
		v.trouble = append(v.trouble, fmt.Sprintf("exception: %+v", e.ExceptionDetails))
	case *log.EventEntryAdded:
		v.trouble = append(v.trouble, "log: "+e.Entry.Text)
	}
}

func (v *visit) do(actions ...chromedp.Action[chromedp.Void]) {
	v.t.Helper()
	ctx, stop := context.WithTimeout(v.ctx, time.Minute)
	defer stop()
	require.NoError(v.t, chromedp.Do(ctx, actions...))
}

func (v *visit) click(selector string) {
	v.t.Helper()
	v.do(chromedp.Click(chromedp.CSS(selector), chromedp.NodeVisible))
}

func (v *visit) write(selector, text string) {
	v.t.Helper()
	v.do(chromedp.SendKeys(chromedp.CSS(selector), text))
}

// text is what an element says.
func (v *visit) text(selector string) string {
	v.t.Helper()
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[string](fmt.Sprintf(`document.querySelector(%q).textContent.replace(/\s+/g, " ").trim()`, selector)))
	require.NoError(v.t, err)
	return out
}

func (v *visit) is(script string) bool {
	v.t.Helper()
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[bool](script))
	require.NoError(v.t, err)
	return out
}

// shot keeps a picture of the page where pictures are wanted.
func (v *visit) shot(state string, whole bool) {
	if *shots == "" {
		return
	}
	take := chromedp.CaptureScreenshot()
	if whole {
		take = chromedp.FullScreenshot(100)
	}
	picture, err := chromedp.Run(v.ctx, take)
	require.NoError(v.t, err)
	require.NoError(v.t, os.MkdirAll(*shots, 0o755))
	require.NoError(v.t, os.WriteFile(filepath.Join(*shots, v.name+"-"+state+".png"), picture, 0o644))
}

// printed keeps the page as it is printed and returns the number of sheets.
func (v *visit) printed(state string) {
	if *shots == "" {
		return
	}
	data, err := chromedp.Run(v.ctx, chromedp.PrintToPDF(chromedp.PDFPrintBackground(), chromedp.PDFPreferCSSPageSize()))
	require.NoError(v.t, err)
	require.NoError(v.t, os.WriteFile(filepath.Join(*shots, v.name+"-"+state+".pdf"), data, 0o644))
}
