/**
 * The hosts that can run the packed library here, each with one way of running a module of a folder and reading what it prints.
 * A host that is not installed is listed too, so that what is skipped can be counted.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

/**
 * @typedef {object} Runtime
 * @property {string} name
 * @property {string | null} version null where it is not installed
 * @property {(folder: string, file: string) => Promise<string>} run what the module prints, or hands to `globalThis.print`
 */

/** @param {string} program @param {readonly string[]} args @returns {string | null} */
function versionOf(program, args = ["--version"]) {
  const { status, stdout } = spawnSync(program, args, { encoding: "utf8" });
  return status === 0 ? (/\d+(?:\.\d+)+/.exec(stdout)?.[0] ?? stdout.trim()) : null;
}

/** @param {string} name @param {string} program @param {readonly string[]} before @returns {Runtime} */
function ofProcess(name, program, before) {
  return {
    name,
    version: versionOf(program),
    async run(folder, file) {
      // A home of its own: nothing is read from or left in the user's.
      const home = mkdtempSync(join(tmpdir(), "electroheat-host-"));
      const env = { ...process.env, NO_COLOR: "1", DENO_DIR: home, DENO_NO_UPDATE_CHECK: "1" };
      try {
        return execFileSync(program, [...before, file], {
          cwd: folder,
          encoding: "utf8",
          env,
          maxBuffer: 1 << 28,
        }).trim();
      } finally {
        rmSync(home, { recursive: true, force: true });
      }
    },
  };
}

const bin = (/** @type {string} */ name) => join(root, "node_modules", ".bin", name);

/** @returns {Runtime[]} newer versions of Node.js from `npm ci --prefix tests/nodes`, where that was done */
function otherNodes() {
  const folder = join(root, "tests", "nodes", "node_modules");
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => /^node\d+$/.test(name))
    .map((name) => ofProcess(name.replace("node", "Node "), join(folder, name, "bin", "node"), []));
}

/** @returns {Runtime[]} every host, installed or not; the Node.js that runs this first */
export function runtimes() {
  return [
    ofProcess("Node", process.execPath, []),
    ...otherNodes(),
    ofProcess("Deno", bin("deno"), ["run", "--no-prompt", "--allow-read=."]),
    ofProcess("Bun", bin("bun"), []),
    { name: "Chromium", version: chromiumVersion(), run: inChromium },
  ];
}

const CHROMIUM = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const chromiumPath = () => CHROMIUM.find((path) => existsSync(path));
/** @returns {string | null} */
function chromiumVersion() {
  const path = chromiumPath();
  return path === undefined ? null : versionOf(path);
}

/** @type {Record<string, string>} */
const TYPES = { ".html": "text/html", ".json": "application/json", ".svg": "image/svg+xml" };

/** A web server of one folder, for as long as the work takes. @template T @param {string} folder @param {(url: string) => Promise<T>} work */
export async function served(folder, work) {
  const server = createServer((request, response) => {
    const path = resolve(folder, `.${decodeURIComponent(new URL(request.url ?? "/", "http://x").pathname)}`);
    if (!path.startsWith(folder + sep) || !existsSync(path)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { "content-type": TYPES[extname(path)] ?? "text/javascript" });
    response.end(readFileSync(path));
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", () => done(undefined)));
  const address = /** @type {import("node:net").AddressInfo} */ (server.address());
  try {
    return await work(`http://127.0.0.1:${address.port}`);
  } finally {
    server.closeAllConnections();
    server.close();
  }
}

/**
 * Opens a page of a folder in the installed Chromium.
 * @template T
 * @param {string} folder @param {string} page file name
 * @param {(page: import("playwright-core").Page, trouble: string[]) => Promise<T>} work `trouble` gathers console errors and exceptions
 * @returns {Promise<T>}
 */
export async function withPage(folder, page, work) {
  const { chromium } = await import("playwright-core");
  const browser = await chromium.launch({
    executablePath: chromiumPath() ?? "",
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
    ],
  });
  try {
    return await served(folder, async (url) => {
      const opened = await browser.newPage();
      /** @type {string[]} */
      const trouble = [];
      opened.on("pageerror", (error) => trouble.push(String(error)));
      opened.on("console", (message) => message.type() === "error" && trouble.push(message.text()));
      await opened.goto(`${url}/${page}`);
      return await work(opened, trouble);
    });
  } finally {
    await browser.close();
  }
}

/** The import map of a page whose folder has the package installed. @param {readonly string[]} rooms */
export function importMap(rooms) {
  const at = "/node_modules/electroheat/dist";
  const imports = {
    electroheat: `${at}/index.js`,
    ...Object.fromEntries(rooms.map((room) => [`electroheat/${room}`, `${at}/${room}.js`])),
    "decimal.js": "/node_modules/decimal.js/decimal.mjs",
  };
  return JSON.stringify({ imports });
}

/** @param {string} folder @param {string} file */
async function inChromium(folder, file) {
  const { rooms } = await import("./rooms.mjs");
  const { writeFileSync } = await import("node:fs");
  writeFileSync(
    join(folder, "page.html"),
    `<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">
<script type="importmap">${importMap(rooms(join(root, "src")))}</script>
<script>globalThis.printed = []; globalThis.print = (text) => printed.push(text);</script>
<script type="module">import "./${file}"; document.title = "done";</script>`,
  );
  return await withPage(folder, "page.html", async (page, trouble) => {
    await page
      .waitForFunction("document.title === 'done'", undefined, { timeout: 120_000 })
      .catch((error) => {
        throw new Error(`${trouble.join("\n")}\n${error}`);
      });
    if (trouble.length > 0) throw new Error(trouble.join("\n"));
    return await page.evaluate(() => /** @type {any} */ (globalThis).printed.join("\n"));
  });
}
