// Why a call is refused, in the words of the service. Clients match on some of them.

export interface ResponseParameters {
  readonly retry_after?: number;
  readonly migrate_to_chat_id?: number;
}

export interface Refusal extends Error {
  readonly code: number;
  readonly parameters?: ResponseParameters;
}

const refusal = (code: number, message: string, parameters?: ResponseParameters): Refusal =>
  Object.assign(new Error(message), parameters === undefined ? { code } : { code, parameters });

export const isRefusal = (error: unknown): error is Refusal =>
  error instanceof Error && 'code' in error && typeof error.code === 'number';

export const badRequest = (why: string, parameters?: ResponseParameters): Refusal =>
  refusal(400, `Bad Request: ${why}`, parameters);

export const forbidden = (why: string): Refusal => refusal(403, `Forbidden: ${why}`);

export const conflict = (why: string): Refusal => refusal(409, `Conflict: ${why}`);

export const unauthorized = (): Refusal => refusal(401, 'Unauthorized');

export const notFound = (why?: string): Refusal =>
  refusal(404, why === undefined ? 'Not Found' : `Not Found: ${why}`);

export const tooLarge = (): Refusal => refusal(413, 'Request Entity Too Large');

export const tooManyRequests = (seconds: number): Refusal =>
  refusal(429, `Too Many Requests: retry after ${seconds}`, { retry_after: seconds });

/** The body that goes with a refusal. */
export const refusalBody = ({ code, message, parameters }: Refusal): object => ({
  ok: false,
  error_code: code,
  description: message,
  ...(parameters === undefined ? {} : { parameters }),
});
