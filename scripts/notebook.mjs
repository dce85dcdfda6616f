/**
 * Runs a notebook in a real kernel (Deno's, a development dependency) by the client library of Debian's notebook packages, and gives
 * it back with its outputs. `npm run notebook`, after `npm run build`, writes the outputs of examples/notebook into its files.
 */
import { spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
/** By its full path: another Python earlier on the path would not find Debian's packages. */
const PYTHON = "/usr/bin/python3";

/**
 * One cell as nbformat 4 keeps it.
 * @typedef {{ cell_type: "markdown" | "code" | "raw", id: string, source: string | string[], metadata: object, outputs?: Output[],
 *   execution_count?: number | null }} Cell
 * @typedef {{ output_type: string, data?: Record<string, string | string[]>, text?: string | string[], metadata?: object,
 *   execution_count?: number | null, name?: string }} Output
 * @typedef {{ cells: Cell[], metadata: object, nbformat: number, nbformat_minor: number }} Notebook
 */

/** The runtime's own program: the kernel is ended by a signal, which a wrapper script around it would not pass on. */
function runtime() {
  const scope = join(root, "node_modules/@deno");
  for (const name of existsSync(scope) ? readdirSync(scope) : []) {
    const program = join(scope, name, "deno");
    if (existsSync(program)) return program;
  }
  return undefined;
}

/** @returns {string | null} what is missing for running a notebook; null where nothing is */
export function missingForNotebooks() {
  if (runtime() === undefined) return "the runtime deno";
  if (spawnSync(PYTHON, ["-c", "import nbformat, jupyter_client"]).status !== 0)
    return "Debian's python3-nbclient";
  return null;
}

/**
 * Runs a notebook in a folder, from where its imports are resolved.
 * @param {{ text: string, folder: string }} input the notebook file's text, and the folder
 * @returns {Notebook} the notebook with its outputs
 */
export function runNotebook({ text, folder }) {
  const work = mkdtempSync(join(tmpdir(), "electroheat-kernel-"));
  try {
    const spec = join(work, "kernels/deno");
    mkdirSync(spec, { recursive: true });
    const argv = [runtime(), "jupyter", "--kernel", "--conn", "{connection_file}"];
    const kernel = { argv, display_name: "Deno", language: "typescript" };
    writeFileSync(join(spec, "kernel.json"), JSON.stringify(kernel));
    const ran = spawnSync(PYTHON, [join(root, "scripts/run-notebook.py"), "deno"], {
      cwd: folder,
      input: text,
      encoding: "utf8",
      timeout: 100_000,
      maxBuffer: 2 ** 26,
      env: {
        ...process.env,
        JUPYTER_PATH: work,
        JUPYTER_RUNTIME_DIR: join(work, "runtime"),
        DENO_DIR: join(work, "deno"),
        DENO_NO_UPDATE_CHECK: "1",
        NO_COLOR: "1",
      },
    });
    if (ran.status !== 0) throw new Error(`the notebook did not run to its end\n${ran.stderr}`);
    return JSON.parse(ran.stdout);
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

/**
 * The notebook as it is kept: no times of execution, text as one line an entry, so that a change shows line by line.
 * @param {Notebook} notebook as it was run
 * @returns {Notebook} as it is kept
 */
export function kept(notebook) {
  /** @param {string | string[]} text */
  const lines = (text) =>
    [text]
      .flat()
      .join("")
      .match(/[^\n]*\n|[^\n]+$/g) ?? [];
  /** @param {Output} output */
  const output = ({ data, text, execution_count: _, ...rest }) => ({
    ...rest,
    ...(rest.output_type === "execute_result" ? { execution_count: null } : {}),
    ...(text === undefined ? {} : { text: lines(text) }),
    ...(data === undefined
      ? {}
      : { data: Object.fromEntries(Object.entries(data).map(([type, of]) => [type, lines(of)])) }),
  });
  const cells = notebook.cells.map((cell) => ({
    cell_type: cell.cell_type,
    id: cell.id,
    metadata: {},
    source: lines(cell.source),
    ...(cell.cell_type === "code"
      ? { execution_count: null, outputs: (cell.outputs ?? []).map(output) }
      : {}),
  }));
  const kernelspec = { display_name: "Deno", language: "typescript", name: "deno" };
  const language = { file_extension: ".ts", mimetype: "text/x.typescript", name: "typescript" };
  const metadata = { kernelspec, language_info: language };
  return { cells, metadata, nbformat: 4, nbformat_minor: 5 };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const missing = missingForNotebooks();
  if (missing !== null) throw new Error(`${missing} is not there`);
  const folder = mkdtempSync(join(tmpdir(), "electroheat-notebook-"));
  try {
    mkdirSync(join(folder, "node_modules"));
    symlinkSync(root, join(folder, "node_modules/electroheat"));
    writeFileSync(join(folder, "package.json"), JSON.stringify({ name: "bench", private: true }));
    const own = join(root, "examples/notebook");
    for (const name of readdirSync(own).filter((file) => file.endsWith(".ipynb"))) {
      const path = join(own, name);
      const notebook = kept(runNotebook({ text: readFileSync(path, "utf8"), folder }));
      writeFileSync(path, `${JSON.stringify(notebook, null, 1)}\n`);
      console.log(`${name}: ${notebook.cells.length} cells`);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
