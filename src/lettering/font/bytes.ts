/**
 * Reading big-endian font data that may be damaged or hostile: every read is checked against the end of
 * its table, and one `FontProblem` thrown here is caught at the font door (`font.ts`).
 */

export type FontReason =
  | { readonly code: 'too-big'; readonly bytes: number; readonly most: number }
  | { readonly code: 'not-a-font' }
  | { readonly code: 'no-table'; readonly table: string }
  | { readonly code: 'no-outlines' }
  | { readonly code: 'damaged'; readonly table: string }
  | { readonly code: 'too-many-glyphs'; readonly glyphs: number; readonly most: number }
  | { readonly code: 'bad-units'; readonly units: number };

export class FontProblem extends Error {
  readonly reason: FontReason;
  constructor(reason: FontReason) {
    super(reason.code);
    this.reason = reason;
  }
}

/** A stretch of font data, named by its table for the reason when it turns out too short. */
export class Bytes {
  readonly data: Uint8Array;
  readonly table: string;
  private readonly view: DataView;

  constructor(data: Uint8Array, table: string) {
    this.data = data;
    this.table = table;
    this.view = new DataView(data.buffer, data.byteOffset, data.byteLength);
  }

  get length(): number {
    return this.data.length;
  }

  private check(at: number, size: number): void {
    if (at < 0 || at + size > this.data.length) this.damaged();
  }

  damaged(): never {
    throw new FontProblem({ code: 'damaged', table: this.table });
  }

  u8(at: number): number {
    this.check(at, 1);
    return this.view.getUint8(at);
  }

  u16(at: number): number {
    this.check(at, 2);
    return this.view.getUint16(at);
  }

  i16(at: number): number {
    this.check(at, 2);
    return this.view.getInt16(at);
  }

  u32(at: number): number {
    this.check(at, 4);
    return this.view.getUint32(at);
  }

  tag(at: number): string {
    return String.fromCharCode(this.u8(at), this.u8(at + 1), this.u8(at + 2), this.u8(at + 3));
  }

  slice(from: number, length: number, table = this.table): Uint8Array {
    if (from < 0 || length < 0 || from + length > this.data.length) {
      throw new FontProblem({ code: 'damaged', table });
    }
    return this.data.subarray(from, from + length);
  }
}
