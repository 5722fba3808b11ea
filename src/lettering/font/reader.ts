import type { Bytes } from './bytes.ts';

/** Reads on from a place: numbers of as many bytes as they need (section 4.1, 6.1.1). */
export class Reader {
  readonly bytes: Bytes;
  at: number;

  constructor(bytes: Bytes, at = 0) {
    this.bytes = bytes;
    this.at = at;
  }

  u8(): number {
    this.at += 1;
    return this.bytes.u8(this.at - 1);
  }

  u16(): number {
    this.at += 2;
    return this.bytes.u16(this.at - 2);
  }

  u32(): number {
    this.at += 4;
    return this.bytes.u32(this.at - 4);
  }

  i16(): number {
    this.at += 2;
    return this.bytes.i16(this.at - 2);
  }

  take(length: number): Uint8Array {
    this.at += length;
    return this.bytes.slice(this.at - length, length);
  }

  /** `UIntBase128`: seven bits a byte, the highest first. */
  base128(): number {
    let value = 0;
    for (let i = 0; i < 5; i += 1) {
      const byte = this.u8();
      // No number begins with zeros, or is over 32 bits.
      if ((i === 0 && byte === 0x80) || value >= 2 ** 25) this.bytes.damaged();
      value = value * 128 + (byte & 0x7f);
      if (byte < 0x80) return value;
    }
    return this.bytes.damaged();
  }

  /** `255UInt16`. */
  short(): number {
    const code = this.u8();
    if (code === 253) return this.u16();
    if (code === 254) return this.u8() + 506;
    return code === 255 ? this.u8() + 253 : code;
  }
}
