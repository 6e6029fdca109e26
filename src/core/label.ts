// What is read off the label of supplied meat.

/** Numbers and names that stand on the label of supplied meat. */
export interface Label {
  supplierLot?: string;
  establishment?: string;
  supplier?: string;
  produced?: string;
}

const FIELDS = ['supplierLot', 'establishment', 'supplier', 'produced'] as const;

/** With one more: what was said apart of one label ("lot 4471", "est 18") is one; said again it is another label. */
export function withLabel(labels: readonly Label[], label: Label): readonly Label[] {
  const last = labels.at(-1);
  const isMore =
    last !== undefined && FIELDS.every((field) => last[field] === undefined || label[field] === undefined);
  if (!isMore) return [...labels, label];
  const said = Object.fromEntries(Object.entries(label).filter(([, value]) => value !== undefined));
  return [...labels.slice(0, -1), { ...last, ...said }];
}

/** Whether all that a label says stands on one that is known. */
export const holdsLabel = (known: readonly Label[], label: Label): boolean =>
  known.some((each) => FIELDS.every((field) => label[field] === undefined || label[field] === each[field]));
