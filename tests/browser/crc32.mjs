// CRC-32 as in PNG and in the share code. Node has one of its own from version 20.15 on; Debian's is older.

/** Of bytes, as a number without a sign. */
export function crc32(bytes) {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let i = 0; i < 8; ++i) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}
