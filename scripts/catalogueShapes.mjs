/** Turns the types of the rooms into shapes: what the catalogue's checks and JSON Schema need to know of a value. */
import ts from "typescript";

/** @typedef {import("../src/catalogue/shape.ts").Shape} Shape */
/** @typedef {import("../src/catalogue/shape.ts").NumberShape} NumberShape */

const UNIT = "~electroheat.unit";
const KIND = "~electroheat.kind";

/**
 * @param {ts.TypeChecker} checker
 * @param {(symbol: ts.Symbol) => string | undefined} nameOf `room.Type` of a public type, to be referred to by name
 */
export function shapeReader(checker, nameOf) {
  /** Public types met on the way, by name. @type {Map<string, ts.Type>} */
  const met = new Map();

  /** @param {ts.Type} type @param {string} key @returns {string | undefined} text of a tag */
  const tag = (type, key) => {
    const property = type.getProperty(key);
    if (property === undefined) return undefined;
    const held = checker.getTypeOfSymbol(property);
    const literal = (held.isUnion() ? held.types : [held]).find((one) => one.isStringLiteral());
    return literal?.isStringLiteral() ? literal.value : undefined;
  };

  /** @param {ts.Type} type @returns {ts.Type[]} members, without undefined; true and false as one */
  const members = (type) => {
    if (type.flags & ts.TypeFlags.Boolean) return [type];
    const all = type.isUnion() ? type.types : [type];
    return all.filter((one) => !(one.flags & ts.TypeFlags.Undefined));
  };

  /** @param {ts.Type} type @returns {ts.Symbol | undefined} the name it goes by, unless it takes type arguments */
  const symbolOf = (type) => {
    if (type.aliasSymbol !== undefined)
      return type.aliasTypeArguments === undefined ? type.aliasSymbol : undefined;
    const generic = checker.getTypeArguments(/** @type {ts.TypeReference} */ (type)).length > 0;
    return generic ? undefined : type.symbol;
  };

  /** @param {ts.Type} type @returns {Shape} */
  const record = (type) => {
    /** @type {Record<string, Shape>} */
    const fields = {};
    for (const property of checker.getPropertiesOfType(type)) {
      const optional = (property.flags & ts.SymbolFlags.Optional) !== 0;
      fields[`${property.name}${optional ? "?" : ""}`] = shape(checker.getTypeOfSymbol(property));
    }
    return { record: fields };
  };

  /** @param {ts.Type} type @returns {Shape} */
  const object = (type) => {
    if (checker.isTupleType(type)) {
      const parts = checker.getTypeArguments(/** @type {ts.TypeReference} */ (type));
      return { tuple: parts.map((part) => shape(part)) };
    }
    if (checker.isArrayType(type)) {
      const [of] = checker.getTypeArguments(/** @type {ts.TypeReference} */ (type));
      return { list: of === undefined ? "opaque" : shape(of) };
    }
    if (type.getCallSignatures().length > 0) return "opaque";
    const properties = checker.getPropertiesOfType(type);
    const [index] = checker.getIndexInfosOfType(type);
    if (index !== undefined) return properties.length === 0 ? { map: shape(index.type) } : "opaque";
    return record(type);
  };

  /** @param {ts.Type} type @returns {Shape} one member of a union, or a type that is none */
  const single = (type) => {
    if (type.flags & ts.TypeFlags.TypeParameter) {
      const constraint = checker.getBaseConstraintOfType(type);
      return constraint === undefined ? "opaque" : shape(constraint);
    }
    if (type.flags & ts.TypeFlags.Null) return "null";
    if (type.flags & ts.TypeFlags.BooleanLike) return "flag";
    if (type.isStringLiteral()) return { names: [type.value] };
    if (type.isNumberLiteral()) return { values: [type.value] };
    const parts = type.isIntersection() ? type.types : [type];
    if (parts.some((one) => one.flags & ts.TypeFlags.NumberLike)) {
      const [unit, kind] = [tag(type, UNIT), tag(type, KIND)];
      /** @type {NumberShape} */
      const number = { number: /** @type {NumberShape["number"]} */ (unit ?? "") };
      return kind === undefined ? number : { ...number, kind };
    }
    if (parts.some((one) => one.flags & ts.TypeFlags.StringLike)) return "text";
    if (!(type.flags & ts.TypeFlags.Object) && !type.isIntersection()) return "opaque";
    const symbol = symbolOf(type);
    const name = symbol && nameOf(symbol);
    if (name === undefined) return object(type);
    met.set(name, type);
    return { ref: name };
  };

  /** @param {ts.Type} type @param {boolean} [open] looks into a public type instead of naming it @returns {Shape} */
  function shape(type, open = false) {
    const name = type.aliasSymbol && !type.aliasTypeArguments ? nameOf(type.aliasSymbol) : undefined;
    const parts = members(type);
    const structured = parts.some((one) => one.flags & ts.TypeFlags.Object || one.isIntersection());
    if (name !== undefined && !open && parts.length > 1 && structured && parts.every(isRecord)) {
      met.set(name, type);
      return { ref: name };
    }
    const shapes = parts.map((part) => (open && parts.length === 1 ? object(part) : single(part)));
    return joined(shapes);
  }

  /** @param {ts.Type} type */
  const isRecord = (type) =>
    (type.flags & ts.TypeFlags.Object) !== 0 && checker.getPropertiesOfType(type).length > 0;

  return { shape, met };
}

/** @param {readonly Shape[]} shapes @returns {Shape} literals gathered, in an order that no compiler run changes */
function joined(shapes) {
  const names = shapes.flatMap((one) => (typeof one === "object" && "names" in one ? one.names : []));
  const values = shapes.flatMap((one) => (typeof one === "object" && "values" in one ? one.values : []));
  /** @type {Shape[]} */
  const rest = shapes.filter((one) => typeof one !== "object" || !("names" in one || "values" in one));
  const isText = rest.includes("text");
  const key = (/** @type {Shape} */ one) => JSON.stringify(one);
  const unique = [...new Map(rest.map((one) => [key(one), one])).values()];
  /** @type {Shape[]} */
  const all = [
    ...unique.filter((one) => one !== "null").sort((a, b) => (key(a) < key(b) ? -1 : 1)),
    ...(values.length > 0 ? [{ values: [...values].sort((a, b) => a - b) }] : []),
    // Any text is allowed beside the names, which are then only the usual ones.
    ...(names.length > 0 && !isText ? [{ names: [...names].sort() }] : []),
    ...(rest.includes("null") ? [/** @type {Shape} */ ("null")] : []),
  ];
  const [only] = all;
  return all.length === 1 && only !== undefined ? only : { either: all };
}
