/**
 * The public symbols of the rooms as the TypeScript compiler sees them: what the documentation tests and the
 * catalogue's generator both start from.
 */
import { join } from "node:path";
import ts from "typescript";
import { parseDocComment } from "./docComment.mjs";

/**
 * @param {string} root the project's folder, with a slash at its end
 * @param {readonly string[]} rooms names of rooms
 */
export function publicProgram(root, rooms) {
  const configFile = join(root, "tsconfig.tests.json");
  const { options } = ts.parseJsonConfigFileContent(
    { ...ts.readConfigFile(configFile, ts.sys.readFile).config, files: [], include: [] },
    ts.sys,
    root,
    // The names of a room are imported in one list here, types and values together.
    { verbatimModuleSyntax: false, isolatedModules: false },
    configFile,
  );
  /** @param {string} room */
  const doorOf = (room) => join(root, "src", room, "index.ts");
  const program = ts.createProgram(rooms.map(doorOf), options);
  const checker = program.getTypeChecker();

  /** @param {string} room @returns {readonly ts.Symbol[]} what its door exports, in the order of the door */
  const exportsOf = (room) => {
    const file = program.getSourceFile(doorOf(room));
    const door = file && checker.getSymbolAtLocation(file);
    return door === undefined ? [] : checker.getExportsOfModule(door);
  };
  /** @param {ts.Symbol} exported @returns {ts.Symbol} the symbol behind a re-export */
  const behind = (exported) =>
    exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  return { options, program, checker, exportsOf, behind };
}

/** @param {ts.Node} declaration @returns {import("./docComment.mjs").DocComment | undefined} its comment */
export function docOf(declaration) {
  const holder = ts.isVariableDeclaration(declaration) ? declaration.parent.parent : declaration;
  const text = holder.getSourceFile().text;
  const last = (ts.getLeadingCommentRanges(text, holder.getFullStart()) ?? [])
    .map(({ pos, end }) => text.slice(pos, end))
    .filter((comment) => comment.startsWith("/**"))
    .at(-1);
  return last === undefined ? undefined : parseDocComment(last);
}
