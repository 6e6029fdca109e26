// What a supervisor asks: does the process live, does it do its work, and its figures. No kitchen's figures are told here.
import type { RequestListener, ServerResponse } from 'node:http';
import type { Page } from '../app/ports/metrics.ts';

export interface HealthParts {
  readonly readiness: () => Promise<{ readonly ready: boolean }>;
  readonly metrics: () => Promise<Page>;
  /** Everything else that is asked for. */
  readonly otherwise?: RequestListener;
}

export const health =
  ({ readiness, metrics, otherwise = notFound }: HealthParts): RequestListener =>
  (request, response) => {
    const { url } = request;
    if (url === '/livez') return tell(response, 200, { alive: true });
    if (url === '/readyz') return answer(response, () => tellReadiness(response, readiness));
    if (url === '/metrics') return answer(response, () => tellMetrics(response, metrics));
    otherwise(request, response);
  };

async function tellReadiness(response: ServerResponse, readiness: HealthParts['readiness']): Promise<void> {
  const found = await readiness();
  tell(response, found.ready ? 200 : 503, found);
}

async function tellMetrics(response: ServerResponse, metrics: HealthParts['metrics']): Promise<void> {
  const { type, text } = await metrics();
  response.writeHead(200, { 'content-type': type }).end(text);
}

const notFound: RequestListener = (_, response) => {
  tell(response, 404, {});
};

function tell(response: ServerResponse, status: number, body: object): void {
  response.writeHead(status, { 'content-type': 'application/json' }).end(`${JSON.stringify(body)}\n`);
}

/** Where the store cannot say how it is, it is not well. */
function answer(response: ServerResponse, work: () => Promise<void>): void {
  work().catch(() => {
    tell(response, 503, { ready: false });
  });
}
