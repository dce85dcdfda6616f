/** The installed package, used from ESM, CommonJS and TypeScript, alone and beside a second copy of itself. */
import { describe, expect, it } from "vitest";
import { rooms } from "../support/house.ts";
import { resolutions, runConsumer, typeErrors, writeConsumer } from "./consume.ts";

const entries = ["electroheat", ...rooms.map((room) => `electroheat/${room}`)];

describe("an ESM program", () => {
  it("loads every entry", () => {
    const printed = runConsumer(
      "entries.mjs",
      `${entries.map((name, index) => `import * as e${index} from "${name}";`).join("\n")}
console.log(JSON.stringify([${entries.map((_, index) => `Object.keys(e${index}).length`).join(", ")}]));`,
    );
    expect(JSON.parse(printed).every((count: number) => count > 0)).toBe(true);
  });

  it("reads the shared data", () => {
    const printed = runConsumer(
      "shared.mjs",
      `import { createRequire } from "node:module";
const load = createRequire(import.meta.url);
console.log(typeof load("electroheat/shared/sources.json"), load("electroheat/package.json").name);`,
    );
    expect(printed).toBe("object electroheat");
  });

  it.each(["dist/quantity.js", "dist/index.cjs", "quantity/errors", "src/index.ts", "tests"])(
    "is refused a deep import of %s",
    (path) => {
      const printed = runConsumer(
        "deep.mjs",
        `import("electroheat/${path}").then(() => console.log("loaded"), (error) => console.log(error.code));`,
      );
      expect(printed).toBe("ERR_PACKAGE_PATH_NOT_EXPORTED");
    },
  );
});

describe("a CommonJS program", () => {
  it("loads every entry, with the names ESM sees", () => {
    const printed = runConsumer(
      "entries.cjs",
      `(async () => {
  for (const name of ${JSON.stringify(entries)}) {
    const required = Object.keys(require(name)).sort().join();
    const imported = Object.keys(await import(name)).filter((key) => key !== "default").sort().join();
    console.log(required !== "" && required === imported ? "same" : name + " differs");
  }
})();`,
    );
    expect(printed.split("\n")).toEqual(entries.map(() => "same"));
  });

  it("is refused a deep require", () => {
    const printed = runConsumer(
      "deep.cjs",
      `try { require("electroheat/dist/quantity.cjs"); console.log("loaded"); } catch (error) { console.log(error.code); }`,
    );
    expect(printed).toBe("ERR_PACKAGE_PATH_NOT_EXPORTED");
  });
});

describe("two copies of the package, in both module systems", () => {
  it("are four sets of functions that know each other's errors and take each other's values", () => {
    const printed = runConsumer(
      "copies.cjs",
      `(async () => {
  const copies = [
    require("electroheat"), await import("electroheat"), require("electroheat-two"), await import("electroheat-two"),
  ];
  console.log(new Set(copies.map((copy) => copy.checkPositive)).size);
  for (const thrower of copies) {
    let caught;
    try { thrower.checkPositive("power", -36, "W"); } catch (error) { caught = error; }
    console.log(copies.map((judge) => judge.isElectroheatError(caught)).join(), caught.code, caught.argument);
  }
  for (const maker of copies) {
    console.log(copies.map((reader) => reader.toKilowatts(maker.kilowatts(60))).join());
  }
})();`,
    );
    const lines = printed.split("\n");
    expect(lines[0]).toBe("4");
    expect(lines.slice(1, 5)).toEqual(Array(4).fill("true,true,true,true out-of-range power"));
    expect(lines.slice(5)).toEqual(Array(4).fill("60,60,60,60"));
  });
});

describe.each(Object.entries(resolutions))("TypeScript, %s resolution", (name, options) => {
  const imports = entries.map((entry, index) => `import * as e${index} from "${entry}";`).join("\n");

  it("checks every entry, declaration files included", () => {
    writeConsumer(
      `types-${name}.mts`,
      `${imports}\nexport const all = [${entries.map((_, index) => `e${index}`)}];\n`,
    );
    expect(typeErrors([`types-${name}.mts`], options)).toEqual([]);
  });

  it("keeps units apart and lets values of another copy through", () => {
    writeConsumer(
      `copies-${name}.mts`,
      `import { type Celsius, celsius, type Ohms, ohms, toMilliohms, volts, type Volts } from "electroheat/quantity";
import * as two from "electroheat-two/quantity";
import { isElectroheatError } from "electroheat";

export const there: two.Ohms = ohms(7.65);
export const back: Ohms = two.ohms(7.65);
export const across: number = toMilliohms(two.ohms(7.65)) + two.toMilliohms(ohms(7.65));
export const warm: Celsius = two.celsius(20);

// @ts-expect-error a volt of the other copy is no more an ohm than a volt of this one
export const wrong: Ohms = two.volts(480);
// @ts-expect-error nor the other way round
export const wrongToo: two.Volts = ohms(7.65);
// @ts-expect-error a bare number has no unit
export const bare: Ohms = 7.65;
export const line: Volts = volts(480);
export const freezing: two.Celsius = celsius(0);

try {
  two.checkPositive("power", -36, "W");
} catch (error) {
  if (isElectroheatError(error)) {
    const code: two.ErrorCode = error.code;
    const same: two.ElectroheatError = error;
    console.log(code, same.issues);
  }
}
`,
    );
    expect(typeErrors([`copies-${name}.mts`], options)).toEqual([]);
  });
});

// A bundler resolution knows one module system only; the ESM and CJS declarations meet in the other two.
describe.each(Object.entries(resolutions).filter(([name]) => name !== "bundler"))(
  "TypeScript, %s",
  (name, options) => {
    it("lets ESM and CommonJS declarations meet", () => {
      writeConsumer(
        `required-${name}.cts`,
        `import q = require("electroheat/quantity");
export const cold: q.Ohms = q.ohms(7.65);
export function inMilliohms(resistance: q.Ohms): number {
  return q.toMilliohms(resistance);
}
export function rethrow(error: q.ElectroheatError): string {
  return error.code;
}
`,
      );
      writeConsumer(
        `imported-${name}.mts`,
        `import { ElectroheatError, issue, type Ohms, ohms, volts } from "electroheat/quantity";
import { cold, inMilliohms, rethrow } from "./required-${name}.cjs";
export const there: Ohms = cold;
export const across: number = inMilliohms(ohms(7.65));
export const code: string = rethrow(
  new ElectroheatError([issue({ code: "missing", path: "power", expected: "a power", received: undefined })]),
);
// @ts-expect-error the module system does not loosen the unit
export const wrong: number = inMilliohms(volts(480));
`,
      );
      expect(typeErrors([`imported-${name}.mts`, `required-${name}.cts`], options)).toEqual([]);
    });
  },
);
