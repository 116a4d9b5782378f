/**
 * How many bytes a ZIP archive says that it holds unpacked, by its central directory (PKWARE APPNOTE 6.3, sections 4.3.12
 * and 4.3.16); `null` for what is no such archive. An entry counts as no less than its packed bytes.
 */
export function unpackedBytes(bytes: Uint8Array): number | null {
  if (bytes.length < 22 || bytes[0] !== 0x50 || bytes[1] !== 0x4b) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  const lowest = Math.max(0, end - 65_535);
  while (end >= lowest && view.getUint32(end, true) !== 0x06054b50) end--;
  if (end < lowest) return null;
  const entries = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  let total = 0;
  for (let entry = 0; entry < entries; entry++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== 0x02014b50) return null;
    total += Math.max(view.getUint32(at + 20, true), view.getUint32(at + 24, true));
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return total;
}
