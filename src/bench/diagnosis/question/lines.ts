/** The three lines by name, in their order. */
export const LINES = ["L1", "L2", "L3"] as const;

/** The place of a node among them, −1 if it is none. */
export const lineNumber = (node: string): number => (LINES as readonly string[]).indexOf(node);

/** Whether a node is one of them. */
export const isLine = (node: string): boolean => lineNumber(node) >= 0;
