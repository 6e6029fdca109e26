// What listens on PORT. It takes no more time and no more connections from anybody than an honest caller needs.
import { once } from 'node:events';
import { createServer, type RequestListener, type Server } from 'node:http';

export interface Place {
  readonly port: number;
  readonly host: string;
}

export type PlaceFault = 'inUse' | 'denied' | 'noHost';

/** Nobody can listen there, and why. */
export class PlaceError extends Error {
  readonly fault: PlaceFault;
  readonly place: Place;
  constructor(fault: PlaceFault, place: Place, options?: ErrorOptions) {
    super(`listen: ${fault}: ${place.host} ${place.port}`, options);
    this.fault = fault;
    this.place = place;
  }
}

const FAULTS: Readonly<Record<string, PlaceFault>> = {
  EADDRINUSE: 'inUse',
  EACCES: 'denied',
  EADDRNOTAVAIL: 'noHost',
  ENOTFOUND: 'noHost',
  EAI_AGAIN: 'noHost',
};

/** A request that trickles in is answered with 408 and cut off. */
const LIMITS = { headersTimeout: 5000, requestTimeout: 10_000, connectionsCheckingInterval: 1000 };
const MOST_CONNECTIONS = 256;

export interface Listening {
  /** Until it is called, everything is answered with 503. */
  readonly serve: (listener: RequestListener) => void;
  /** Takes no new connection; what is being answered is answered. */
  readonly close: () => void;
  readonly cut: () => void;
}

/** Rejects with a PlaceError where nobody can listen there. */
export async function listen(place: Place, limits: Partial<typeof LIMITS> = {}): Promise<Listening> {
  let answer: RequestListener = (_, response) => void response.writeHead(503).end();
  const server = createServer({ ...LIMITS, ...limits }, (request, response) => {
    answer(request, response);
  });
  server.maxConnections = MOST_CONNECTIONS;
  await bound(server, place);
  return {
    serve: (listener) => {
      answer = listener;
    },
    close: () => {
      server.close();
    },
    cut: () => {
      server.closeAllConnections();
    },
  };
}

async function bound(server: Server, place: Place): Promise<void> {
  try {
    server.listen(place.port, place.host);
    await once(server, 'listening');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    const fault = FAULTS[code];
    throw fault === undefined ? error : new PlaceError(fault, place, { cause: error });
  }
}
