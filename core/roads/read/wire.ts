import { damaged } from './fault.ts';

/** Wire types of protocol buffers (Google, "Encoding", developers.google.com/protocol-buffers). */
export const WIRE = { varint: 0, eight: 1, bytes: 2, four: 5 } as const;

/**
 * Reads fields of a protocol buffer message. Never reads beyond its end; whatever does not fit is a fault of the file.
 * Numbers are read up to 2^53 in size, which ids of OpenStreetMap are far from.
 */
export class WireReader {
  readonly bytes: Uint8Array;
  at: number;
  readonly end: number;
  field = 0;
  wire = 0;

  constructor(bytes: Uint8Array, at = 0, end = bytes.length) {
    this.bytes = bytes;
    this.at = at;
    this.end = end;
  }

  /** Goes to the next field; false at the end. */
  next(): boolean {
    if (this.at >= this.end) return false;
    const key = this.unsigned();
    this.wire = key % 8;
    this.field = Math.floor(key / 8);
    if (this.field === 0) throw damaged('a field has the number 0');
    return true;
  }

  /** A varint as an unsigned number. */
  unsigned(): number {
    let value = 0;
    let scale = 1;
    for (let count = 0; count < 8; count += 1) {
      const byte = this.byte();
      value += (byte & 0x7f) * scale;
      if (byte < 0x80) {
        if (value > Number.MAX_SAFE_INTEGER) throw damaged('a number is too large');
        return value;
      }
      scale *= 128;
    }
    throw damaged('a number is too large');
  }

  /** A varint of type sint64 or sint32 (zigzag). */
  zigzag(): number {
    const value = this.unsigned();
    return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
  }

  /** A varint of type int64 or int32: negative ones take ten bytes, in two's complement. */
  signed(): number {
    const begin = this.at;
    let value = 0n;
    for (let count = 0; count < 10; count += 1) {
      const byte = this.byte();
      value |= BigInt(byte & 0x7f) << BigInt(7 * count);
      if (byte >= 0x80) continue;
      const number = Number(BigInt.asIntN(64, value));
      if (!Number.isSafeInteger(number)) throw damaged('a number is too large');
      return number;
    }
    this.at = begin;
    throw damaged('a number has more than ten bytes');
  }

  /** The bytes of a field as a message of its own. */
  message(): WireReader {
    if (this.wire !== WIRE.bytes) throw damaged(`field ${this.field} is of another kind than expected`);
    const length = this.unsigned();
    const begin = this.at;
    if (length > this.end - begin) throw damaged('a length leads beyond its block');
    this.at = begin + length;
    return new WireReader(this.bytes, begin, begin + length);
  }

  /** The same as bytes. */
  content(): Uint8Array {
    const part = this.message();
    return part.bytes.subarray(part.at, part.end);
  }

  /** A number field that is not packed. */
  number(): number {
    if (this.wire !== WIRE.varint) throw damaged(`field ${this.field} is of another kind than expected`);
    return this.unsigned();
  }

  /** Numbers of a repeated field, packed or one of several; added to `list`. */
  numbers(list: number[], read: (from: WireReader) => number): void {
    if (this.wire === WIRE.varint) {
      list.push(read(this));
      return;
    }
    const part = this.message();
    while (part.at < part.end) list.push(read(part));
  }

  skip(): void {
    switch (this.wire) {
      case WIRE.varint:
        while (this.byte() >= 0x80);
        return;
      case WIRE.eight:
        this.leap(8);
        return;
      case WIRE.bytes:
        this.message();
        return;
      case WIRE.four:
        this.leap(4);
        return;
      default:
        throw damaged(`a field is of the unknown kind ${this.wire}`);
    }
  }

  private leap(count: number): void {
    if (count > this.end - this.at) throw damaged('a field leads beyond its block');
    this.at += count;
  }

  private byte(): number {
    if (this.at >= this.end) throw damaged('a number leads beyond its block');
    return this.bytes[this.at++] as number;
  }
}

export const readUnsigned = (from: WireReader): number => from.unsigned();
export const readZigzag = (from: WireReader): number => from.zigzag();
