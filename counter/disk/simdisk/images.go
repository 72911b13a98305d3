package simdisk

import (
	"crypto/sha256"
	"fmt"
	"maps"
	"slices"
)

// Image is what a power cut left: the files by path.
type Image map[string][]byte

// Disk is a disk that holds the image, all of it synced, in a folder.
func (i Image) Disk(folder string) *Disk {
	d := New(folder)
	for _, name := range slices.Sorted(maps.Keys(i)) {
		d.Put(name, i[name])
	}
	return d
}

// apply carries out changes in their order.
func apply(data []byte, ops []op) []byte {
	room, size := slices.Clone(data), len(data)
	grow := func(n int) {
		if n > len(room) {
			room = append(room, make([]byte, n-len(room))...)
		}
	}
	for _, o := range ops {
		if o.data != nil {
			grow(o.off + len(o.data))
			copy(room[o.off:], o.data)
			continue
		}
		if o.size < size { // what was behind is gone for good
			clear(room[o.size:])
		}
		size = o.size
		grow(size)
	}
	return room[:size]
}

// mostMasks bounds how many choices of sectors are tried for one file; beyond that they are spread evenly.
const mostMasks = 1 << 12

// Images gives everything that a power cut at this moment may leave, each once: every choice of the sectors that were
// written and not synced, each of the chosen ones torn after its first byte, in the middle and before its last one (a
// short one after every byte), with every number of the changes of size and of names. It stops when yield says false.
func (d *Disk) Images(yield func(Image) bool) {
	had := map[[sha256.Size]byte]bool{}
	for k := 0; k <= len(d.pending); k++ {
		names := maps.Clone(d.durable)
		for _, p := range d.pending[:k] {
			p.apply(names)
		}
		sorted := slices.Sorted(maps.Keys(names))
		if !d.each(names, sorted, Image{}, func(i Image) bool {
			key := i.key()
			if had[key] {
				return true
			}
			had[key] = true
			return yield(i)
		}) {
			return
		}
	}
}

// each goes through the choices of all files.
func (d *Disk) each(names map[string]*node, rest []string, so Image, yield func(Image) bool) bool {
	if len(rest) == 0 {
		return yield(maps.Clone(so))
	}
	for _, data := range names[rest[0]].choices() {
		so[rest[0]] = data
		if !d.each(names, rest[1:], so, yield) {
			return false
		}
	}
	return true
}

func (i Image) key() [sha256.Size]byte {
	h := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(i)) {
		fmt.Fprintf(h, "%s\n%d\n", name, len(i[name]))
		h.Write(i[name])
	}
	return [sha256.Size]byte(h.Sum(nil))
}

// choices lists what may be on the disk of a file.
func (n *node) choices() [][]byte {
	var sectors, sizes []int
	for i, o := range n.pending {
		if o.data == nil {
			sizes = append(sizes, i)
		} else {
			sectors = append(sectors, i)
		}
	}
	had := map[string]bool{}
	var all [][]byte
	add := func(ops []op) {
		data := apply(n.disk, ops)
		if !had[string(data)] {
			had[string(data)] = true
			all = append(all, data)
		}
	}
	masks := uint64(1) << min(len(sectors), 62)
	step := max(masks/mostMasks, 1) | 1
	for s := 0; s <= len(sizes); s++ {
		for mask := uint64(0); mask < masks; mask += step {
			chosen := n.chosen(sectors, mask, sizes[:s])
			add(chosen)
			for i, o := range chosen {
				for _, cut := range cuts(len(o.data)) {
					torn := slices.Clone(chosen)
					torn[i].data = o.data[:cut]
					add(torn)
				}
			}
		}
	}
	return all
}

// chosen lists the changes that are kept, in their order.
func (n *node) chosen(sectors []int, mask uint64, sizes []int) []op {
	var ops []op
	for i, o := range n.pending {
		k := slices.Index(sectors, i)
		if k >= 0 && mask>>k&1 == 1 || k < 0 && slices.Contains(sizes, i) {
			ops = append(ops, o)
		}
	}
	return ops
}

// cuts are the places where a sector is torn.
func cuts(length int) []int {
	const short = 160
	switch {
	case length < 2:
		return nil
	case length > short:
		return []int{1, length / 2, length - 1}
	}
	var all []int
	for i := 1; i < length; i++ {
		all = append(all, i)
	}
	return all
}
