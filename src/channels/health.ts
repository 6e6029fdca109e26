// What a supervisor asks: does the process live, and does it do its work. No kitchen's figures are told here.
import { createServer, type Server } from 'node:http';
import { once } from 'node:events';

export interface HealthParts {
  readonly port: number;
  readonly host: string;
  readonly readiness: () => Promise<{ readonly ready: boolean }>;
}

/** Listens; rejects where the port is taken. */
export async function serveHealth({ port, host, readiness }: HealthParts): Promise<Server> {
  const server = createServer((request, response) => {
    const tell = (status: number, body: object): void => {
      response.writeHead(status, { 'content-type': 'application/json' }).end(`${JSON.stringify(body)}\n`);
    };
    if (request.url === '/livez') return tell(200, { alive: true });
    if (request.url !== '/readyz') return tell(404, {});
    readiness().then(
      (found) => {
        tell(found.ready ? 200 : 503, found);
      },
      () => {
        tell(503, { ready: false });
      },
    );
  }).listen(port, host);
  await once(server, 'listening');
  return server;
}
