package ui

import (
	"bytes"
	"context"
	"fmt"
	"image"
	_ "image/jpeg" // thumbnails are JPEG
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/photo"
	"walkline/ui/task"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/pick"
	"walkline/valuation/lot"
)

// photoEndings are the endings of files that are taken for photographs; what a file is, its bytes say. HEIC stands among them so
// that it is refused with its reason.
var photoEndings = []string{".jpg", ".jpeg", ".jpe", ".png", ".webp", ".heic", ".heif"}

func isPhoto(path string) bool {
	return slices.Contains(photoEndings, strings.ToLower(filepath.Ext(path)))
}

// photoFiles returns the photographs among paths, those that lie in a folder among them included.
func photoFiles(paths []string) []string {
	var out []string
	for _, p := range paths {
		if isPhoto(p) {
			out = append(out, p)
			continue
		}
		inside, err := os.ReadDir(p)
		if err != nil {
			continue // no folder
		}
		for _, f := range inside {
			if isPhoto(f.Name()) {
				out = append(out, filepath.Join(p, f.Name()))
			}
		}
	}
	return out
}

// addPhotos lets the user choose photographs of an area of the open lot: by the path of a file or a folder, or from a list.
func (w *Window) addPhotos(area string) {
	path := widgets.NewTextEntry()
	path.SetPlaceHolder("path of a photo, or of a folder of photos")
	stage := widget.NewRadioGroup([]string{beforeWords, afterWords}, nil)
	stage.Horizontal, stage.Required = true, true
	_, usual := w.photosOf()
	stage.SetSelected(stageWords(usual))
	var d *dialog.CustomDialog
	take := w.handler(func() {
		d.Hide()
		w.takePhotos([]string{strings.TrimSpace(path.Text)}, area, stageOf(stage.Selected))
	})
	path.OnSubmitted = func(string) { take() }
	path.OnEscape = func() { d.Hide() }
	browse := widgets.NewButton("Look for them…", w.handler(func() { d.Hide(); w.browsePhotos(area, stageOf(stage.Selected)) }))
	body := container.NewVBox(widget.NewLabel("JPEG, PNG or WebP. Photos can also be dropped on the window, many at once."),
		container.NewBorder(nil, nil, nil, browse, path), stage)
	d = dialog.NewCustomWithoutButtons("Add photos: "+view.PhotoArea(area), body, w.window)
	d.SetButtons([]fyne.CanvasObject{widgets.NewButton("Cancel", func() { d.Hide() }), widgets.NewButton("Add", take)})
	d.Resize(fyne.NewSize(720, 230))
	w.open(d)
	w.focusIn(path)
}

const (
	beforeWords = "taken before the work"
	afterWords  = "taken after the work"
)

func stageOf(words string) lot.Stage {
	if words == afterWords {
		return lot.After
	}
	return lot.Before
}

func stageWords(s lot.Stage) string {
	if s == lot.After {
		return afterWords
	}
	return beforeWords
}

// browsePhotos lets the user mark photographs in a folder.
func (w *Window) browsePhotos(area string, stage lot.Stage) {
	w.pick("Add photos: "+view.PhotoArea(area), "Add", pick.For{Many: true, Endings: photoEndings, What: "photo", First: "Pictures"},
		func(paths []string) { w.takePhotos(paths, area, stage) })
}

// photosOf returns the lot that photographs added now are of, 0 for none, and when they are taken unless the user says otherwise: on a
// build after the work.
func (w *Window) photosOf() (id int64, usual lot.Stage) {
	id, _ = w.state.Pictured()
	if id != 0 && w.state.Place == desk.Builds {
		return id, lot.After
	}
	return id, lot.Before
}

// takePhotos reads and keeps files away from the window, then adds them to the lot that was open when it began.
func (w *Window) takePhotos(paths []string, area string, stage lot.Stage) {
	id, _ := w.photosOf()
	of := w.state.Photographing()
	if id == 0 {
		w.say(desk.State{Notice: "First open the lot that the photos are of."})
		return
	}
	task.Start(w.runner, task.Order[desk.Kept]{
		Work:   func(ctx context.Context) (desk.Kept, error) { return w.keepPhotos(ctx, paths) },
		Report: func(_ float64, words string) { w.say(desk.State{Notice: words}) },
		Show: func(kept desk.Kept, err error) {
			if err != nil {
				w.failed("add the photos", err)
				return
			}
			kept.Of = of
			w.Do(desk.AddPhotos(id, kept, area, stage))
		}})
}

// keepPhotos looks at every file; one that cannot be kept is named with its reason, and the others go on.
func (w *Window) keepPhotos(ctx context.Context, paths []string) (desk.Kept, error) {
	var kept desk.Kept
	files := photoFiles(paths)
	if len(files) == 0 {
		return kept, fmt.Errorf("no photo is at %s", strings.Join(paths, ", "))
	}
	for i, path := range files {
		if ctx.Err() != nil {
			return kept, ctx.Err()
		}
		name := filepath.Base(path)
		task.Report(ctx, float64(i)/float64(len(files)), fmt.Sprintf("Reading photo %d of %d: %s…", i+1, len(files), name))
		p, err := w.keepPhoto(ctx, path, name)
		if err != nil {
			kept.Refused = append(kept.Refused, name+": "+err.Error()+".")
			continue
		}
		kept.Photos = append(kept.Photos, p)
	}
	return kept, nil
}

func (w *Window) keepPhoto(ctx context.Context, path, name string) (lot.Photo, error) {
	data, err := w.desk.Read(ctx, path, photo.MostBytes)
	if err != nil {
		return lot.Photo{}, err
	}
	return w.desk.KeepPhoto(name, data)
}

// mostThumbnails is how many small pictures stay in memory: about 40 MB of them.
const mostThumbnails = 200

// Thumbnail brings the small picture of a photograph, from memory or from the disk.
func (w *Window) Thumbnail(p lot.Photo, show func(image.Image, error)) {
	if img, ok := w.thumbnails[p.Hash]; ok {
		show(img, nil)
		return
	}
	task.Start(w.runner, task.Order[image.Image]{Key: "thumbnail " + p.Hash,
		Work: func(context.Context) (image.Image, error) { return picture(w.desk.SmallPhoto(p)) },
		Show: func(img image.Image, err error) {
			if err == nil {
				if len(w.thumbnails) >= mostThumbnails || w.thumbnails == nil {
					w.thumbnails = map[string]image.Image{}
				}
				w.thumbnails[p.Hash] = img
			}
			show(img, err)
		}})
}

// picture decodes what the desk gives.
func picture(data []byte, err error) (image.Image, error) {
	if err != nil {
		return nil, err
	}
	img, _, err := image.Decode(bytes.NewReader(data))
	return img, err
}
