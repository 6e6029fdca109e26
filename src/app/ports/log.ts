// The port to the log: events by name with plain fields. Never words of people, prices or secrets.
type Write = (fields: Readonly<Record<string, string | number | undefined>>, event: string) => void;

export interface Log {
  readonly info: Write;
  readonly warn: Write;
  readonly error: Write;
}
