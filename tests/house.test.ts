/** Holds the tree to its plan: who may import whom, how long a file may grow, what must never be committed. */
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { exportsMap, folders } from "../scripts/rooms.mjs";
import {
  floors,
  floorsInside,
  importsOf,
  parseSource,
  readText,
  resolveImport,
  roomOf,
  rooms,
  root,
  sourceFiles,
  trackedFiles,
} from "./support/house.ts";

const LONGEST_FILE = 300;

/** The only packages src may import, and the rooms that may do so. */
const packagesAllowed: Readonly<Record<string, readonly string[]>> = {
  zod: ["bench", "catalogue"],
  "zod/mini": ["bench", "catalogue"],
  "decimal.js": ["decision"],
};

/** Names that would make a function depend on the host, the clock or chance. */
const hostNames = new Set([
  "process",
  "console",
  "Date",
  "globalThis",
  "window",
  "performance",
  "fetch",
  "require",
  "setTimeout",
  "setInterval",
  "queueMicrotask",
  "Buffer",
  "localStorage",
  "crypto",
  "eval",
  "Function",
]);

const imports = sourceFiles.flatMap((from) =>
  importsOf(parseSource(from)).map((specifier) => ({ from, specifier, to: resolveImport(from, specifier) })),
);

describe("rooms", () => {
  it("finds the sources it is meant to watch", () => {
    expect(rooms).toContain("quantity");
    expect(imports.some(({ from, to }) => from === "src/index.ts" && to === "src/quantity/index.ts")).toBe(
      true,
    );
  });

  it("has every folder on a floor, with a door", () => {
    expect(folders(join(root, "src")).filter((name) => !(name in floors))).toEqual([]);
    expect(folders(join(root, "src")).filter((name) => !rooms.includes(name))).toEqual([]);
  });

  it("has one package entry per room and no entry without a room", () => {
    const manifest = JSON.parse(readText("package.json"));
    expect(manifest.exports, "run `npm run exports` after adding a room").toEqual(exportsMap([...rooms]));
  });

  it("imports downward only; every room stands on quantity, which stands on nothing", () => {
    const upward = imports.filter(({ from, to }) => {
      const here = roomOf(from);
      const there = to.startsWith("src/") ? roomOf(to) : undefined;
      if (here === undefined || there === undefined || here === there) return false;
      if (there === "quantity") return false;
      return !(here !== "quantity" && (floors[there] ?? 99) < (floors[here] ?? -1));
    });
    expect(upward.map(({ from, to }) => `${from} -> ${to}`)).toEqual([]);
    const ofQuantity = imports.filter(
      ({ from, to }) => roomOf(from) === "quantity" && roomOf(to) !== "quantity",
    );
    expect(ofQuantity.map(({ from, to }) => `${from} -> ${to}`)).toEqual([]);
  });

  it.each(Object.entries(floorsInside))("imports downward only inside %s", (folder, names) => {
    const floorOf = (path: string): number => {
      const [name, ...rest] = path.slice(folder.length + 1).split("/");
      return rest.length === 0 ? names.length : names.indexOf(name as string);
    };
    const inside = imports.filter(({ from, to }) =>
      [from, to].every((path) => path.startsWith(`${folder}/`)),
    );
    expect(inside.length).toBeGreaterThan(100);
    expect([...new Set(inside.map(({ from }) => floorOf(from)))].sort((a, b) => a - b)).toEqual(
      [...names, ""].map((_, floor) => floor),
    );
    const upward = inside.filter(({ from, to }) => floorOf(to) > floorOf(from));
    expect(upward.map(({ from, to }) => `${from} -> ${to}`)).toEqual([]);
    const developers = readText("DEVELOPERS.md");
    const told = names.map((name) => developers.indexOf(`\`${name}\` (`));
    expect(told.every((at, k) => at > (told[k - 1] ?? 0))).toBe(true);
  });

  it("stands as DEVELOPERS.md draws it", () => {
    const drawn = readText("DEVELOPERS.md").matchAll(/^floor (\d) {2}│(.+)│/gm);
    const names = [...drawn].flatMap(([, floor, row = ""]) =>
      row.split("│").map((name) => [name.trim(), Number(floor)]),
    );
    expect(Object.fromEntries(names)).toEqual(floors);
  });

  it("enters another room by its index.ts only", () => {
    const sideways = imports.filter(
      ({ from, to }) =>
        to.startsWith("src/") && roomOf(from) !== roomOf(to) && !/^src\/[^/]+\/index\.ts$/.test(to),
    );
    expect(sideways.map(({ from, to }) => `${from} -> ${to}`)).toEqual([]);
  });

  it("reaches outside src for shared data only", () => {
    const outside = imports.filter(
      ({ specifier, to }) =>
        specifier.startsWith(".") && !to.startsWith("src/") && !/^shared\/.+\.json$/.test(to),
    );
    expect(outside.map(({ from, to }) => `${from} -> ${to}`)).toEqual([]);
  });

  it("imports a package only in the rooms that may", () => {
    const strangers = imports.filter(
      ({ from, specifier }) =>
        !specifier.startsWith(".") && !packagesAllowed[specifier]?.includes(roomOf(from) ?? "the root entry"),
    );
    expect(strangers.map(({ from, specifier }) => `${from} -> ${specifier}`)).toEqual([]);
  });
});

describe("files under src", () => {
  it(`have at most ${LONGEST_FILE} lines`, () => {
    const lines = sourceFiles.map((path) => [path, readText(path).trimEnd().split("\n").length] as const);
    expect(lines.filter(([, count]) => count > LONGEST_FILE)).toEqual([]);
  });

  it("touch neither the host, the clock nor chance", () => {
    const found: string[] = [];
    for (const path of sourceFiles) {
      const file = parseSource(path);
      const visit = (node: ts.Node): void => {
        const parent = node.parent as ts.Node | undefined;
        // A member or field name such as `input.process` is not the host object of that name.
        const isName =
          parent !== undefined &&
          ((ts.isPropertyAccessExpression(parent) && parent.name === node) ||
            (ts.isPropertyAssignment(parent) && parent.name === node) ||
            (ts.isPropertySignature(parent) && parent.name === node) ||
            ts.isModuleDeclaration(parent));
        const where = () => `${path}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
        if (ts.isIdentifier(node) && hostNames.has(node.text) && !isName)
          found.push(`${where()} ${node.text}`);
        if (ts.isPropertyAccessExpression(node) && node.getText() === "Math.random")
          found.push(`${where()} Math.random`);
        ts.forEachChild(node, visit);
      };
      visit(file);
    }
    expect(found).toEqual([]);
  });
});

describe("exports under src", () => {
  it("are all used: by a door or by another file", () => {
    const used = new Set<string>();
    const exported: string[] = [];
    for (const path of sourceFiles) {
      for (const statement of parseSource(path).statements) {
        if (ts.isImportDeclaration(statement) || ts.isExportDeclaration(statement)) {
          if (statement.moduleSpecifier === undefined) continue;
          const target = resolveImport(path, (statement.moduleSpecifier as ts.StringLiteral).text);
          const names = ts.isImportDeclaration(statement)
            ? statement.importClause?.namedBindings
            : statement.exportClause;
          if (names !== undefined && (ts.isNamedImports(names) || ts.isNamedExports(names))) {
            for (const { name, propertyName } of names.elements)
              used.add(`${target} ${(propertyName ?? name).text}`);
          } else {
            used.add(`${target} *`);
          }
        } else if (ts.canHaveModifiers(statement)) {
          const isExported = ts
            .getModifiers(statement)
            ?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
          // A type may be exported to name what a function of its file takes or gives.
          if (isExported !== true || ts.isInterfaceDeclaration(statement)) continue;
          if (ts.isTypeAliasDeclaration(statement)) continue;
          const declared = ts.isVariableStatement(statement)
            ? [...statement.declarationList.declarations]
            : [statement as ts.DeclarationStatement];
          for (const { name } of declared) exported.push(`${path} ${name?.getText()}`);
        }
      }
    }
    expect(exported.length).toBeGreaterThan(50);
    const dead = exported.filter((one) => !used.has(one) && !used.has(`${one.split(" ")[0]} *`));
    expect(dead).toEqual([]);
  });

  it("come from files that a door leads to", () => {
    const reached = new Set<string>();
    const visit = (path: string): void => {
      if (reached.has(path)) return;
      reached.add(path);
      for (const { to } of imports.filter(({ from }) => from === path)) if (to.startsWith("src/")) visit(to);
    };
    for (const path of ["src/index.ts", ...rooms.map((room) => `src/${room}/index.ts`)]) visit(path);
    expect(sourceFiles.filter((path) => !reached.has(path))).toEqual([]);
  });
});

describe("tracked files", () => {
  // Written in pieces so that this file does not trip over itself.
  const folder = (...names: string[]) => new RegExp(`(^|[^a-z0-9_.$}/-])/(${names.join("|")})/`);
  const forbidden = [
    ["registry host", /registry[.](npmjs|yarnpkg)/i],
    ["package mirror", /deb[.]debian/i],
    [
      "path of a machine",
      folder("wo" + "rk", "fa" + "rm", "ro" + "ot", "ho" + "me", "Us" + "ers", "t" + "mp"),
    ],
  ] as const;
  const offences = (line: string) =>
    forbidden.filter(([, pattern]) => pattern.test(line)).map(([what]) => what);

  it("would be caught", () => {
    expect(offences(`see https://${["registry", "npmjs", "org"].join(".")}/x`)).toEqual(["registry host"]);
    expect(offences(`cd ${["", "ho" + "me", "someone"].join("/")}/electroheat`)).toEqual([
      "path of a machine",
    ]);
    expect(offences("import { ohms } from '../../src/quantity/index.ts'; // a/b")).toEqual([]);
  });

  it("name no registry host and no path of a machine", () => {
    const present = trackedFiles();
    expect(present).toContain("package.json");
    const found = present.flatMap((path) =>
      readText(path)
        .split("\n")
        .flatMap((line, index) =>
          offences(line).map((what) => `${path}:${index + 1} ${what}: ${line.trim().slice(0, 100)}`),
        ),
    );
    expect(found).toEqual([]);
  });
});
