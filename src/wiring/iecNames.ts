/** Names of the IEC family held here, apart from their tables so that a rule without a table stays small. */
const NAMES = ["IEC 60364-5-52:2009", "IEC 60364-5-52:2001", "BS 7671:2008", "IEC 60204-1:2005"] as const;

/**
 * Editions of the IEC family that this library holds, national ones included.
 * @since 0.1.0
 * @useDeclaredType
 */
export type IecEditionName = (typeof NAMES)[number];

/** Their names. */
export const iecEditionNames = (): readonly IecEditionName[] => NAMES;
