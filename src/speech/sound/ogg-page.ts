// One page of an Ogg stream (RFC 3533, 6): head, lengths of its packets, packets, and a checksum over all.

export interface PagePlace {
  readonly granule: number;
  readonly sequence: number;
  readonly first?: boolean;
  readonly last?: boolean;
}

const SERIAL = 1;

export function page(
  packets: readonly Uint8Array[],
  { granule, sequence, first, last }: PagePlace,
): Uint8Array {
  const lacing = packets.flatMap(({ length }) => [
    ...Array<number>(Math.floor(length / 255)).fill(255),
    length % 255,
  ]);
  const head = Buffer.alloc(27);
  head.write('OggS', 0, 'latin1');
  head[5] = (first === true ? 2 : 0) | (last === true ? 4 : 0);
  head.writeBigUInt64LE(BigInt(granule), 6);
  head.writeUInt32LE(SERIAL, 14);
  head.writeUInt32LE(sequence, 18);
  head[26] = lacing.length;
  const whole = Buffer.concat([head, Uint8Array.from(lacing), ...packets]);
  whole.writeUInt32LE(checksum(whole), 22);
  return whole;
}

/** CRC-32 with polynomial 0x04c11db7, not reflected, from 0 (RFC 3533, 6, 22–25). */
function checksum(bytes: Uint8Array): number {
  let crc = 0;
  for (const byte of bytes) crc = ((crc << 8) ^ (TABLE[((crc >>> 24) ^ byte) & 255] ?? 0)) >>> 0;
  return crc;
}

const TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index << 24;
  for (let bit = 0; bit < 8; bit += 1) value = value & 0x80000000 ? (value << 1) ^ 0x04c11db7 : value << 1;
  return value >>> 0;
});
