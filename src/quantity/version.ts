/**
 * Version of the package, for results that say what made them. A test keeps it equal to package.json.
 * @since 0.1.0
 */
export const packageVersion: string = "0.1.0";
