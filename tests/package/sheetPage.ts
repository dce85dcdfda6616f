/** The bench sheet in a real browser: built from the packed project, opened from the disk, with everything it asks for and says on record. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium, type Download, type Page } from "playwright-core";
import { packed } from "./consume.ts";

const NAMES = ["chromium", "chromium-browser", "google-chrome"];
/** The browser installed here; none is ever downloaded. */
const program = NAMES.map((name) => spawnSync("which", [name], { encoding: "utf8" }).stdout?.trim()).find(
  (path) => path !== undefined && path !== "",
);
export const hasBrowser = program !== undefined;

const ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

let browser: Browser | undefined;
let folder = "";
let address = "";

/** Builds the page into a folder of its own and starts the browser. */
export async function startBrowser(): Promise<void> {
  folder = mkdtempSync(join(tmpdir(), "electroheat-sheet-"));
  const build = [join("examples", "bench-sheet", "build.mjs"), folder];
  execFileSync(process.execPath, build, { cwd: packed.project, encoding: "utf8" });
  address = pathToFileURL(join(folder, "bench-sheet.html")).href;
  browser = await chromium.launch({ executablePath: program as string, args: ARGUMENTS, headless: true });
}

export async function stopBrowser(): Promise<void> {
  await browser?.close();
  if (folder !== "") rmSync(folder, { recursive: true, force: true });
}

/** An open page and what it did besides showing itself. */
export interface Sheet {
  readonly page: Page;
  /** Addresses asked for, the page's own left out. */
  readonly requests: string[];
  /** What stands on the console, and errors that nobody caught. */
  readonly said: string[];
}

/** Opens the page with the sample in it. */
export async function openSheet(
  look: { readonly width?: number; readonly height?: number; readonly scheme?: "light" | "dark" } = {},
): Promise<Sheet> {
  const { width = 1280, height = 900, scheme = "light" } = look;
  const page = await (browser as Browser).newPage({ viewport: { width, height }, colorScheme: scheme });
  page.setDefaultTimeout(60_000);
  const requests: string[] = [];
  const said: string[] = [];
  page.on("request", (request) => {
    const url = request.url();
    if (url !== address && !url.startsWith("data:") && !url.startsWith("blob:")) requests.push(url);
  });
  page.on("console", (message) => said.push(`${message.type()}: ${message.text()}`));
  page.on("pageerror", (error) => said.push(`error: ${error.message}`));
  page.on("dialog", (dialog) => dialog.accept());
  await page.goto(address);
  await page.locator("#report .answer").waitFor();
  return { page, requests, said };
}

let files = 0;
/** Loads a record through the page's own file field. */
export async function loadText(page: Page, text: string, name = "record.json"): Promise<void> {
  files += 1;
  const path = join(folder, `${files}-${name}`);
  writeFileSync(path, text);
  await page.setInputFiles("#file", path);
  // The page says which file it took, or could not take.
  await page.locator("#status", { hasText: `${files}-${name}` }).waitFor();
}

/** What the page saves, as an object. */
export async function saved(page: Page): Promise<unknown> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("#save")]);
  const chunks: Buffer[] = [];
  for await (const chunk of await (download as Download).createReadStream()) chunks.push(chunk as Buffer);
  return JSON.parse(Buffer.concat(chunks).toString("utf8"));
}

/** Text as it is read: runs of white space are one space. */
export const plain = (text: string | null): string => (text ?? "").replace(/\s+/g, " ").trim();
