// Files of the service. The link to one holds the token: it is made here, used here, and told nobody.
import { type Api, GrammyError } from 'grammy';
import type { Service } from './calls.ts';
import type { Pace } from './pace.ts';

const OFFICIAL = 'https://api.telegram.org';

/** Undefined where the service has the file no more, or never gives one so large. Rejects where it can't be reached. */
export const downloader =
  (api: Api, { token, apiRoot = OFFICIAL }: Service, { callSeconds }: Pace) =>
  async (file: string): Promise<Uint8Array | undefined> => {
    const path = await pathOf(api, file);
    if (path === undefined) return undefined;
    const response = await fetch(`${apiRoot}/file/bot${token}/${path}`, {
      signal: AbortSignal.timeout(callSeconds * 1000),
    });
    if (response.status >= 500) throw new Error('the file can not be fetched now');
    return response.ok ? new Uint8Array(await response.arrayBuffer()) : undefined;
  };

async function pathOf(api: Api, file: string): Promise<string | undefined> {
  try {
    return (await api.getFile(file)).file_path;
  } catch (error) {
    if (error instanceof GrammyError && error.error_code === 400) return undefined;
    throw error;
  }
}
