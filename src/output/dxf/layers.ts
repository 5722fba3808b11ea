/**
 * Layer names as release 12 allows them: capitals, digits, `$`, `-`, `_`, at most 31 characters. Different
 * names stay different.
 */
export class LayerNames {
  private readonly names = new Map<string, string>();

  /** `0`, the layer that every file has, for what lies on none. */
  of(layer: string | null): string {
    if (layer === null) return '0';
    const known = this.names.get(layer);
    if (known !== undefined) return known;
    const plain =
      layer
        .toUpperCase()
        .replace(/[^A-Z0-9$_-]+/g, '_')
        .slice(0, 31) || '_';
    const taken = new Set(this.names.values());
    let name = plain;
    for (let i = 2; taken.has(name) || name === '0'; i++)
      name = `${plain.slice(0, 30 - String(i).length)}_${i}`;
    this.names.set(layer, name);
    return name;
  }

  get all(): string[] {
    return ['0', ...this.names.values()];
  }
}
