// What is read off the label of supplied meat.

/** Numbers and names that stand on the label of supplied meat. */
export interface Label {
  supplierLot?: string;
  establishment?: string;
  supplier?: string;
  produced?: string;
}
