// multipart/form-data (RFC 7578), as far as upload clients write it: a name, perhaps a file name, bytes.
import { badRequest } from '../refusal.ts';
import type { Params, Upload } from './params.ts';

const HEAD_END = '\r\n\r\n';

export function readMultipart(body: Buffer, boundary: string): Params {
  const mark = Buffer.from(`--${boundary}`);
  const fields: Record<string, string | Upload> = {};
  let at = body.indexOf(mark);
  for (;;) {
    const next = at < 0 ? -1 : body.indexOf(mark, at + mark.length);
    // The last mark is followed by two dashes, so there is nothing after it.
    if (next < 0) break;
    // Between the marks: a line end, the part, a line end.
    const [name, value] = readPart(body.subarray(at + mark.length + 2, next - 2));
    fields[name] = value;
    at = next;
  }
  if (at < 0) throw badRequest("can't parse multipart form data");
  return fields;
}

function readPart(part: Buffer): readonly [string, string | Upload] {
  const headEnd = part.indexOf(HEAD_END);
  const head = part.subarray(0, Math.max(headEnd, 0)).toString();
  const content = part.subarray(headEnd + HEAD_END.length);
  const name = attribute(head, 'name');
  if (headEnd < 0 || name === undefined) throw badRequest("can't parse multipart form data");
  const fileName = attribute(head, 'filename');
  return [name, fileName === undefined ? content.toString() : { fileName, bytes: new Uint8Array(content) }];
}

/** Some clients leave out the quotes. */
function attribute(head: string, name: string): string | undefined {
  const [, quoted, bare] = new RegExp(`[;\\s]${name}=(?:"([^"]*)"|([^;\\s]+))`, 'i').exec(head) ?? [];
  return quoted ?? bare;
}
