/**
 * What the list at the end of a zip says that its parts come to: the zip library unpacks a damaged part without a word, and
 * one changed digit is a wrong length. Source: the .ZIP application note, 4.3.12, 4.3.14 to
 * 4.3.16, and for the checksum 4.4.7: the CRC-32 of ISO 3309.
 */
import { strFromU8 } from 'fflate';

const ENTRY = 0x02014b50;
const END = 0x06054b50;
const END_BYTES = 22;
const LONG_END_POINTER = 0x07064b50;
const LONG_END = 0x06064b50;

/** The checksums by the names of the parts. @throws RangeError where the list is not whole */
export function checksumsIn(bytes: Uint8Array): ReadonlyMap<string, number> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found = new Map<string, number>();
  let at = listStart(view);
  while (view.getUint32(at, true) === ENTRY) {
    const [name, extra, comment] = [28, 30, 32].map((offset) => view.getUint16(at + offset, true)) as [
      number,
      number,
      number,
    ];
    const isUtf8 = (view.getUint16(at + 8, true) & 0x800) !== 0;
    found.set(strFromU8(bytes.subarray(at + 46, at + 46 + name), !isUtf8), view.getUint32(at + 16, true));
    at += 46 + name + extra + comment;
  }
  return found;
}

function listStart(view: DataView): number {
  let end = view.byteLength - END_BYTES;
  while (view.getUint32(end, true) !== END) end--;
  const start = view.getUint32(end + 16, true);
  if (start !== 0xffffffff || view.getUint32(end - 20, true) !== LONG_END_POINTER) return start;
  const longEnd = Number(view.getBigUint64(end - 12, true));
  if (view.getUint32(longEnd, true) !== LONG_END) throw new RangeError('The list of parts is not where it should be');
  return Number(view.getBigUint64(longEnd + 48, true));
}

/** What each value of a byte does to the remainder. */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

/** Goes on with a checksum. @param before of the bytes before these, 0 at the start */
export function checksum(bytes: Uint8Array, before: number): number {
  let rest = ~before;
  for (const byte of bytes) rest = (rest >>> 8) ^ (TABLE[(rest ^ byte) & 255] ?? 0);
  return ~rest >>> 0;
}
