// The server on its port, and its outages: nobody listens, or every connection is cut.
import { createServer, type RequestListener, type Server } from 'node:http';
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';

export type OutageMode = 'refuse' | 'drop';

export interface Listener {
  readonly port: number;
  outage: (mode: OutageMode) => Promise<void>;
  recover: () => Promise<void>;
  close: () => Promise<void>;
}

export async function listen(handle: RequestListener, wantedPort: number): Promise<Listener> {
  let isDropping = false;
  const server = createServer(handle);
  server.on('connection', (socket) => {
    if (isDropping) socket.destroy();
  });
  // The service keeps idle connections for long; a short time here would cut calls that begin as it ends.
  server.keepAliveTimeout = 60_000;
  const port = await open(server, wantedPort);
  const outage = async (mode: OutageMode): Promise<void> => {
    isDropping = mode === 'drop';
    if (mode === 'refuse') await shut(server);
    else server.closeAllConnections();
  };
  const recover = async (): Promise<void> => {
    isDropping = false;
    if (!server.listening) await open(server, port);
  };
  return { port, outage, recover, close: () => shut(server) };
}

async function open(server: Server, wantedPort: number): Promise<number> {
  server.listen(wantedPort, '127.0.0.1');
  await once(server, 'listening');
  return (server.address() as AddressInfo).port;
}

async function shut(server: Server): Promise<void> {
  if (!server.listening) return;
  const closed = once(server, 'close');
  server.close();
  server.closeAllConnections();
  await closed;
}
