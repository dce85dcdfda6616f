/** Datasets by their ids, and what to write instead when a name is not an id. */
import { fail, oneOf } from "../quantity/index.ts";

/** The dataset of an id. A name that several datasets go by is ambiguous and lists theirs; any other lists all. */
export function datasetById<D extends { readonly id: string }>(
  known: readonly D[],
  id: string,
  isMeantBy: (dataset: D, name: string) => boolean,
): D {
  const found = known.find((one) => one.id === id);
  if (found !== undefined) return found;
  const meant = typeof id === "string" ? known.filter((one) => isMeantBy(one, id)) : [];
  const isMissing = id === undefined || id === null || id === "";
  return fail({
    code: isMissing ? "missing" : meant.length > 0 ? "ambiguous" : "unknown-name",
    path: "id",
    expected: oneOf((meant.length > 0 ? meant : known).map((one) => one.id)),
    received: id,
  });
}
