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
    const plain = plainName(layer);
    const taken = new Set(this.names.values());
    let name = plain;
    for (let i = 2; taken.has(name) || name === '0'; i++)
      name = `${plain.slice(0, 30 - String(i).length)}_${i}`;
    this.names.set(layer, name);
    return name;
  }

  /** Names that lost a sign, their end or their likeness to others on the way, and what they became. */
  get changed(): { readonly name: string; readonly became: string }[] {
    return [...this.names]
      .filter(([name, became]) => name.toUpperCase().replaceAll(' ', '_') !== became)
      .map(([name, became]) => ({ name, became }));
  }

  get all(): string[] {
    return ['0', ...this.names.values()];
  }
}

/** Letters lose their marks first; a name in another script, of which nothing would be left, is only numbered. */
function plainName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toUpperCase()
    .replace(/[^A-Z0-9$_-]+/g, '_')
    .slice(0, 31);
  return /[A-Z0-9]/.test(plain) ? plain : 'NAME';
}
