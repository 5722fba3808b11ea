/** A collection as OpenType 1.9 has it, every font with tables of its own. */
export function collectionOf(files: readonly Uint8Array[]): Uint8Array {
  const head = 12 + 4 * files.length;
  const starts = files.map((_, i) => files.slice(0, i).reduce((sum, f) => sum + ((f.length + 3) & ~3), head));
  const all = new Uint8Array(head + files.reduce((sum, f) => sum + ((f.length + 3) & ~3), 0));
  const view = new DataView(all.buffer);
  all.set([...'ttcf'].map((c) => c.charCodeAt(0)));
  view.setUint16(4, 1);
  view.setUint32(8, files.length);
  files.forEach((file, i) => {
    const start = starts[i] ?? 0;
    view.setUint32(12 + 4 * i, start);
    all.set(file, start);
    for (let t = 0; t < view.getUint16(start + 4); t += 1) {
      const at = start + 12 + 16 * t + 8;
      view.setUint32(at, view.getUint32(at) + start);
    }
  });
  return all;
}
