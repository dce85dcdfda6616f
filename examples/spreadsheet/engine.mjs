/**
 * Registers the whole catalogue with a spreadsheet engine, from `sheetFunctions()` alone: the way an add-in's author would. Functions
 * are called EH.NAME; EH.STATUS and EH.SPILL take the name of a function first.
 */
import { sheetFunctions, sheetStatus, sheetValue } from "electroheat/catalogue";
import {
  ArraySize,
  CellError,
  ErrorType,
  FunctionArgumentType,
  FunctionPlugin,
  HyperFormula,
  SimpleRangeValue,
} from "hyperformula";

const PREFIX = "EH.";
const ANY = FunctionArgumentType.ANY;
const functions = sheetFunctions();

/** @param {unknown} value a cell of the engine; its empty value is a symbol @returns {unknown} a plain one */
const plainCell = (value) => (typeof value === "symbol" ? null : value);

/** @param {unknown} argument @returns {unknown} */
function plain(argument) {
  if (!(argument instanceof SimpleRangeValue)) return plainCell(argument);
  return argument.data.map((row) => row.map(plainCell));
}

/** An error of the sheet anywhere in the arguments goes on as it is. */
const errorIn = (/** @type {readonly unknown[]} */ args) =>
  args
    .flatMap((one) => (one instanceof SimpleRangeValue ? one.data.flat() : [one]))
    .find((one) => one instanceof CellError);

/** @param {unknown} cell */
const engineCell = (cell) => /** @type {number | string | boolean} */ (cell ?? "");

/** One value, or an error of the engine that says why there is none. @param {string} name @param {readonly unknown[]} args */
function single(name, args) {
  const found = functions.find((one) => one.name === name);
  if (found === undefined) return new CellError(ErrorType.NAME, name);
  const { value, status, code } = found.answer(...args.map(plain));
  if (code !== null) return new CellError(ErrorType.VALUE, String(status));
  if (Array.isArray(value)) return new CellError(ErrorType.VALUE, "name a field, or use EH.SPILL");
  return engineCell(value);
}

/** @param {string} name */
const methodOf = (name) => `call_${name}`;

/**
 * What the engine's plugins have, as far as this page uses it.
 * @typedef {{ runFunction(args: unknown, state: unknown, metadata: unknown, run: (...args: unknown[]) => unknown): unknown, metadata(name: string): unknown }} Runner
 * @typedef {{ readonly args: readonly { readonly value?: unknown }[] }} Ast
 */

class Catalogue extends FunctionPlugin {
  /** @override */
  static implementedFunctions = {
    ...Object.fromEntries(
      functions.map(({ name, parameters, fields }) => [
        `${PREFIX}${name.toUpperCase()}`,
        {
          method: methodOf(name),
          parameters: Array.from({ length: parameters.length + (fields ? 1 : 0) }, () => ({
            argumentType: ANY,
            optionalArg: true,
            defaultValue: /** @type {never} */ (/** @type {unknown} */ (null)),
          })),
        },
      ]),
    ),
    [`${PREFIX}STATUS`]: { method: "status", parameters: [{ argumentType: ANY }], repeatLastArgs: 1 },
    // Rows and columns first, as numbers in the formula: the engine wants to know the size before it knows a value.
    [`${PREFIX}SPILL`]: {
      method: "spilled",
      sizeOfResultArrayMethod: "spilledSize",
      parameters: [{ argumentType: ANY }],
      repeatLastArgs: 1,
    },
  };

  /** @param {any} ast @param {any} state */
  status(ast, state) {
    return this.runFunction(ast.args, state, this.metadata(`${PREFIX}STATUS`), (name, ...args) => {
      const status = sheetStatus(name, ...args.map(plain));
      return typeof status === "string" ? status : (status.flat().find((one) => one !== "ok") ?? "ok");
    });
  }

  /** @param {any} ast @param {any} state */
  spilled(ast, state) {
    const metadata = this.metadata(`${PREFIX}SPILL`);
    return this.runFunction(ast.args, state, metadata, (rows, columns, name, ...args) => {
      const value = sheetValue(name, ...args.map(plain));
      const block = Array.isArray(value) ? value : [[value]];
      return SimpleRangeValue.onlyValues(
        Array.from({ length: Number(rows) }, (_, i) =>
          Array.from({ length: Number(columns) }, (_unused, k) => engineCell(block[i]?.[k])),
        ),
      );
    });
  }

  /** @param {Ast} ast */
  spilledSize(ast) {
    return new ArraySize(Number(ast.args[1]?.value ?? 1), Number(ast.args[0]?.value ?? 1));
  }
}

for (const { name } of functions) {
  Object.defineProperty(Catalogue.prototype, methodOf(name), {
    /** @this {Runner} @param {Ast} ast @param {unknown} state */
    value(ast, state) {
      const metadata = this.metadata(`${PREFIX}${name.toUpperCase()}`);
      return this.runFunction(ast.args, state, metadata, (...args) => errorIn(args) ?? single(name, args));
    },
  });
}

/** Names of all registered functions. @type {readonly string[]} */
export const registered = Object.keys(Catalogue.implementedFunctions);

const translations = { enGB: Object.fromEntries(registered.map((name) => [name, name])) };
HyperFormula.registerFunctionPlugin(Catalogue, translations);

/**
 * A sheet of formulas, calculated by the engine with no rounding of its own.
 * @param {readonly (readonly (string | number | boolean | null)[])[]} rows
 */
export function sheetOf(rows) {
  return HyperFormula.buildFromArray(
    rows.map((row) => [...row]),
    { licenseKey: "gpl-v3", smartRounding: false },
  );
}
