/**
 * Registers the whole catalogue with a spreadsheet engine, from `sheetFunctions()` alone: the way an add-in's author would. Functions
 * are called EH.NAME; EH.STATUS and EH.SPILL take the name of a function first.
 */
import { type Cell, sheetFunctions, sheetStatus, sheetValue } from "electroheat/catalogue";
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

/** A cell of the engine as a plain one: its empty value is a symbol. */
const plainCell = (value: unknown): unknown => (typeof value === "symbol" ? null : value);

function plain(argument: unknown): unknown {
  if (!(argument instanceof SimpleRangeValue)) return plainCell(argument);
  return argument.data.map((row) => row.map(plainCell));
}

/** An error of the sheet anywhere in the arguments goes on as it is. */
function errorIn(args: readonly unknown[]): CellError | undefined {
  const cells = args.flatMap((one) => (one instanceof SimpleRangeValue ? one.data.flat() : [one]));
  return cells.find((one) => one instanceof CellError) as CellError | undefined;
}

const engineCell = (cell: Cell): number | string | boolean => cell ?? "";

/** One value, or an error of the engine that says why there is none. */
function single(name: string, args: readonly unknown[]): number | string | boolean | CellError {
  const found = functions.find((one) => one.name === name);
  const { value, status, code } = found?.answer(...args.map(plain)) ?? {
    value: null,
    status: "",
    code: "unexpected",
  };
  if (code !== null) return new CellError(ErrorType.VALUE, String(status));
  if (Array.isArray(value)) return new CellError(ErrorType.VALUE, "name a field, or use EH.SPILL");
  return engineCell(value as Cell);
}

type Ast = { readonly args: readonly { readonly value?: unknown }[] };
type State = never;
type Runner = {
  runFunction(args: unknown, state: State, metadata: unknown, run: (...args: unknown[]) => unknown): unknown;
  metadata(name: string): unknown;
};

const methodOf = (name: string): string => `call_${name}`;

class Catalogue extends FunctionPlugin {
  static override implementedFunctions = {
    ...Object.fromEntries(
      functions.map(({ name, parameters, fields }) => [
        `${PREFIX}${name.toUpperCase()}`,
        {
          method: methodOf(name),
          parameters: Array.from({ length: parameters.length + (fields ? 1 : 0) }, () => ({
            argumentType: ANY,
            optionalArg: true,
            defaultValue: null as never,
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

  status(ast: Ast, state: State): unknown {
    const self = this as unknown as Runner;
    return self.runFunction(ast.args, state, self.metadata(`${PREFIX}STATUS`), (name, ...args) => {
      const status = sheetStatus(name, ...args.map(plain));
      return typeof status === "string" ? status : (status.flat().find((one) => one !== "ok") ?? "ok");
    });
  }

  spilled(ast: Ast, state: State): unknown {
    const self = this as unknown as Runner;
    const run = (rows: unknown, columns: unknown, name: unknown, ...args: unknown[]): unknown => {
      const value = sheetValue(name, ...args.map(plain));
      const block: readonly (readonly Cell[])[] = Array.isArray(value) ? value : [[value as Cell]];
      return SimpleRangeValue.onlyValues(
        Array.from({ length: Number(rows) }, (_, i) =>
          Array.from({ length: Number(columns) }, (_unused, k) => engineCell(block[i]?.[k] ?? null)),
        ),
      );
    };
    return self.runFunction(ast.args, state, self.metadata(`${PREFIX}SPILL`), run as never);
  }

  spilledSize(ast: Ast): ArraySize {
    return new ArraySize(Number(ast.args[1]?.value ?? 1), Number(ast.args[0]?.value ?? 1));
  }
}

for (const { name } of functions) {
  Object.defineProperty(Catalogue.prototype, methodOf(name), {
    value(this: Runner, ast: Ast, state: State): unknown {
      const metadata = this.metadata(`${PREFIX}${name.toUpperCase()}`);
      return this.runFunction(ast.args, state, metadata, (...args) => errorIn(args) ?? single(name, args));
    },
  });
}

/** Names of all registered functions. */
export const registered: readonly string[] = Object.keys(Catalogue.implementedFunctions);

const translations = { enGB: Object.fromEntries(registered.map((name) => [name, name])) };
HyperFormula.registerFunctionPlugin(Catalogue, translations);

/** A sheet of formulas, calculated by the engine with no rounding of its own. */
export function sheetOf(rows: readonly (readonly unknown[])[]): HyperFormula {
  return HyperFormula.buildFromArray(rows.map((row) => [...row]) as never, {
    licenseKey: "gpl-v3",
    smartRounding: false,
  });
}
