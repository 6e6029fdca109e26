// When the service and we last met, and how: what readiness goes by.

export type Contact =
  | { readonly is: 'poll'; readonly atMs?: number }
  | {
      readonly is: 'webhook';
      /** Of the last check that went well and found the webhook where we had set it. */
      readonly atMs?: number;
      /** What waits at the service. */
      readonly waiting: number;
      /** The service says that it can't bring us what waits. */
      readonly isFailing: boolean;
    };

export interface ContactBook {
  readonly read: () => Contact;
  readonly write: (contact: Contact) => void;
}

export function newContactBook(first: Contact): ContactBook {
  let contact = first;
  return {
    read: () => contact,
    write: (next) => {
      contact = next;
    },
  };
}
