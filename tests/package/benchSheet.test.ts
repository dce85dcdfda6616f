/** examples/bench-sheet in a real Chromium: opened from the disk, driven by keys, held to the library's own report and to closed forms. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { packed } from "./consume.ts";
import { everyField } from "./everyField.ts";
import { contrasts, focusRing, intruders, reportText } from "./pageProbes.ts";
import {
  hasBrowser,
  loadText,
  openSheet,
  plain,
  type Sheet,
  saved,
  startBrowser,
  stopBrowser,
} from "./sheetPage.ts";

/** The page works a change out after a pause; a busy machine takes its time. */
const eventually = <T>(look: () => T) => expect.poll(look, { timeout: 60_000 });
const sample = JSON.parse(readFileSync(join(packed.project, "examples/bench-sheet/sample.json"), "utf8"));
const status = (page: Page) => page.locator("#status");
const ohmReading = (page: Page, n: number) =>
  page.getByRole("group", { name: `Ohm reading ${n}`, exact: true }).first();
const picture = (page: Page) => page.locator("#picture svg:visible");
const focused = (page: Page) => page.locator(":focus");

/** Nothing may be asked for and nothing said on the console, whatever was done with the page. */
async function quiet({ page, requests, said }: Sheet): Promise<void> {
  expect({ requests, said }).toEqual({ requests: [], said: [] });
  await page.close();
}

if (!hasBrowser) console.warn("no chromium here: the tests of the bench sheet are skipped");

describe.skipIf(!hasBrowser)("the bench sheet", () => {
  beforeAll(startBrowser);
  afterAll(stopBrowser);

  it("opens from the disk with the sample worked out, asks for nothing and complains of nothing", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    await eventually(() => status(page).textContent()).toContain(sample.title);
    expect(await page.locator("#report h1").textContent()).toBe(sample.title);
    // P = V²/R of a star, over Ct: 480²/30000/1.04 (closed form; the sample's plate and factor).
    expect(plain(await page.locator("#branches").textContent())).toContain(
      (480 ** 2 / 30_000 / 1.04).toPrecision(4),
    );
    expect(await picture(page).textContent()).toContain("open");
    await quiet(sheet);
  });

  it("follows what is typed: picture, answer and the spoken line; a number alone takes the unit of its field", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    const reads = ohmReading(page, 6).getByLabel("reads");
    const answer = await page.locator("#report .answer").textContent();
    await reads.fill("7.60");
    // What the meter showed less its shorted leads: 7.60 − 0.21.
    await eventually(() => picture(page).textContent()).toContain("7.39");
    expect(await picture(page).textContent()).not.toContain("open");
    expect(await page.locator("#report .answer").textContent()).not.toBe(answer);
    await eventually(() => status(page).textContent()).toContain("B-L3 sound, was open");
    expect(await reads.inputValue()).toBe("7.60");
    await reads.blur();
    expect(await reads.inputValue()).toBe("7.60 Ω");
    await quiet(sheet);
  });

  it("shows an error beside its field and in the list on top, keeps the last good assessment and says that it is old", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    const reads = ohmReading(page, 1).getByLabel("reads");
    const before = await page.locator("#report").textContent();
    await reads.fill("7.62 V");
    await page.locator("#problems").waitFor();
    expect(await reads.getAttribute("aria-invalid")).toBe("true");
    const described = (await reads.getAttribute("aria-describedby"))?.split(" ").at(-1);
    const beside = page.locator(`#${described}`);
    expect(await beside.textContent()).toContain("a unit of Ω");
    const [field, message] = [await reads.boundingBox(), await beside.boundingBox()];
    expect((message?.y ?? 0) - (field?.y ?? 0) - (field?.height ?? 0)).toBeLessThan(12);
    expect(await page.locator("#stale").textContent()).toContain("as of before");
    expect(await page.locator("#report").textContent()).toBe(before);
    await eventually(() => status(page).textContent()).toContain("One entry cannot be taken");
    await page.getByLabel("Title", { exact: true }).focus();
    await page.locator("#problems a").click();
    expect(await reads.evaluate("document.activeElement.value")).toBe("7.62 V");
    await reads.fill("7.62");
    await page.locator("#stale").waitFor({ state: "hidden" });
    expect(await reads.getAttribute("aria-invalid")).toBeNull();
    expect(await beside.isVisible()).toBe(false);
    expect(await page.locator("#problems").isVisible()).toBe(false);
    await quiet(sheet);
  });

  it("lists everything that is wrong at once, folded sections opened on the way to a field", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    await page.getByLabel("Power (kW)").fill("-60");
    await page.getByLabel("Low (%)").fill("5");
    await page.getByLabel("Edition of the code").fill("");
    await page.getByLabel("Edition of the code").blur();
    await page.locator("summary", { hasText: "Feed" }).click();
    expect(await page.getByLabel("Edition of the code").isVisible()).toBe(false);
    const links = page.locator("#problems a");
    await eventually(() => links.count()).toBe(3);
    await links.filter({ hasText: "Edition" }).click();
    await eventually(() => page.getByLabel("Edition of the code").isVisible()).toBe(true);
    expect(await focused(page).getAttribute("list")).toBe("list-editions");
    await quiet(sheet);
  });

  it("goes by keyboard alone: every control in the order of the page, each with a ring; rows come and go", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    expect(await page.evaluate(focusRing)).toEqual([]);
    await page.locator(".skip a").focus();
    const order: number[] = [];
    for (let n = 0; n < 25; n += 1) {
      await page.keyboard.press("Tab");
      order.push(
        Number(await page.evaluate("[...document.querySelectorAll('*')].indexOf(document.activeElement)")),
      );
    }
    expect(order).toEqual([...new Set(order)].sort((a, b) => a - b));

    const rows = page.getByRole("group", { name: /^Ohm reading/ });
    const add = page.getByRole("button", { name: "Add an ohm reading" }).first();
    await add.focus();
    await page.keyboard.press("Enter");
    expect(await rows.count()).toBe(7);
    await page.keyboard.type("L1");
    await page.keyboard.press("Tab");
    await page.keyboard.type("L2");
    await eventually(() => status(page).textContent()).toContain("One unfinished row does not count yet");
    expect(await page.locator("#problems").isVisible()).toBe(false);
    await page.keyboard.press("Tab");
    await page.keyboard.type("15.06");
    await page.keyboard.press("Tab");
    await page.keyboard.type("A");
    await eventually(() => page.locator("#fit").textContent()).toContain("15.06");
    await page.keyboard.press("Enter");
    expect(await rows.count()).toBe(8);
    // Two steps on lies the button that takes the new row away again; focus stays in the table.
    for (const _ of ["from", "to", "reads", "alone", "own studs"]) await page.keyboard.press("Tab");
    expect(await focused(page).getAttribute("aria-label")).toBe("Remove ohm reading 8");
    await page.keyboard.press("Enter");
    expect(await rows.count()).toBe(7);
    expect(await focused(page).inputValue()).toBe("L1");
    await quiet(sheet);
  });

  it("says of a row left unfinished what it lacks", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    await page.getByRole("button", { name: "Add a clamp reading" }).first().click();
    await page.keyboard.type("L1");
    await page.getByLabel("Title", { exact: true }).focus();
    await expect
      .poll(() => page.locator("#problems").textContent())
      .toContain("clamp reading 4, reads: Missing");
    await quiet(sheet);
  });

  it("takes text for text: markup in a record, a file's name or an unknown field makes no element and runs nothing", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    const nasty = `<img src=x onerror="window.hit=1"></script><script>window.hit=1</script><svg onload="window.hit=1">&amp;`;
    const record = {
      ...sample,
      title: nasty,
      identity: { equipment: nasty, technician: nasty },
      wiring: {
        ...sample.wiring,
        banks: [
          { id: nasty, connection: "star" },
          { id: "B", connection: "star" },
        ],
      },
      asFound: {
        joints: [
          { id: nasty, drop: "3 mV", current: "10 A" },
          { id: "J", drop: "9 mV", current: "10 A" },
        ],
      },
      asLeft: undefined,
      [nasty]: nasty,
    };
    await loadText(page, JSON.stringify(record), "<b onclick=window.hit=1>.json".replace(/[/\\]/g, ""));
    expect(await page.locator("#report h1").textContent()).toBe(nasty);
    expect(await page.locator("#notice").textContent()).toContain(nasty);
    expect(await page.evaluate(intruders)).toEqual([]);
    // As an error too: beside the field, in the list and in the spoken line.
    await page.getByLabel("Line voltage (V)").fill(nasty);
    await page.locator("#problems").waitFor();
    await eventually(() => status(page).textContent()).toContain("cannot be taken");
    await page.emulateMedia({ media: "print" });
    expect(await page.evaluate(intruders)).toEqual([]);
    expect(await page.evaluate("window.hit")).toBeUndefined();
    await quiet(sheet);
  });

  it("saves what it was given: every field that a record can have, numbers as numbers", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    await loadText(page, JSON.stringify(everyField));
    expect(await page.locator("#notice").isVisible()).toBe(false);
    expect(await saved(page)).toEqual(everyField);
    await quiet(sheet);
  });

  it("reads what is entered as it is meant: per cent, names, marks, leads, and units of the choice at that moment", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    await page.getByRole("button", { name: "Empty", exact: true }).click();
    await page.getByLabel("Low (%)").fill("−7");
    await page.getByLabel("High (%)").fill("12.5 %");
    for (const name of ["Instruments", "Hardware"]) await page.locator("summary", { hasText: name }).click();
    const ohmmeter = page.getByRole("group", { name: "Ohmmeter" });
    await ohmmeter.getByLabel("% of reading").fill("0.29");
    await ohmmeter.getByLabel("Leads", { exact: true }).selectOption("shorted");
    await ohmmeter.getByLabel("Shorted leads read").fill("0.2");
    await page.getByRole("button", { name: "Add a kind of fastening" }).click();
    const studs = page.getByRole("group", { name: "Kind of fastening 1" });
    await studs.getByLabel("Maker's torque").fill("12");
    await studs.getByLabel("To be renewed").check();
    await page.getByLabel("US units").check();
    await studs.getByLabel("Torque applied").fill("110");
    expect(await studs.getByLabel("Torque applied").isVisible()).toBe(true);
    await page.getByRole("button", { name: "Add a drawn joint" }).click();
    await page.getByLabel("behind it").fill("A , B-L1");
    expect(await saved(page)).toEqual({
      tolerance: { low: -0.07, high: 0.125 },
      wiring: { banks: [], joints: [{ behind: ["A", "B-L1"] }] },
      instruments: { ohmmeter: { ofReading: 0.0029, leads: { shorted: "0.2 Ω" } } },
      hardware: [{ makerTorque: "12 N·m", applied: "110 lbf·in", renew: true }],
    });
    await quiet(sheet);
  });

  it.each([
    ["a list", "[]"],
    ["a number", "5"],
    ["text", '"x"'],
    ["nothing", "null"],
    [
      "parts of the wrong kind",
      '{"title":7,"wiring":{"banks":"two"},"asFound":[],"nameplate":"60 kW","hardware":{"id":1}}',
    ],
    ["fields of another record", '{"meter":{"digits":2},"__proto__":{"x":1},"readings":[{"from":"L1"}]}'],
  ])("says what it cannot take of a file with %s", async (_, text) => {
    const sheet = await openSheet();
    await loadText(sheet.page, text);
    expect(await sheet.page.locator("#problems li").count()).toBeGreaterThan(0);
    expect(await sheet.page.locator("#stale").textContent()).toContain("No assessment yet");
    expect(await sheet.page.locator("#report").textContent()).toBe("");
    await quiet(sheet);
  });

  it("refuses a file that is no JSON and keeps what was there", async () => {
    const sheet = await openSheet();
    await loadText(sheet.page, "{");
    expect(await sheet.page.locator("#notice").textContent()).toContain("is no JSON");
    expect(await saved(sheet.page)).toEqual(sample);
    await quiet(sheet);
  });

  it("prints the library's report of this record, word for word, and nothing else of the page", async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    const [bench, drawing] = await Promise.all(
      ["bench", "drawing"].map((room) => import(pathToFileURL(join(packed.project, `dist/${room}.js`)).href)),
    );
    for (const units of ["SI", "US"]) {
      await page.getByLabel(`${units} units`).check();
      await page.emulateMedia({ media: "print" });
      const html = drawing.benchReport({ assessment: bench.assessModule(sample), format: "html", units });
      const expected = (await page.evaluate(reportText(html))) as string;
      expect(expected.length).toBeGreaterThan(2000);
      const shown = plain((await page.evaluate("document.body.innerText")) as string);
      expect(shown).toBe(plain(expected));
      await page.emulateMedia({ media: "screen" });
    }
    const paper = await page.pdf({ format: "A4" });
    expect(paper.subarray(0, 5).toString()).toBe("%PDF-");
    await page.getByLabel("Line voltage (V)").fill("none");
    await page.locator("#stale").waitFor();
    await page.emulateMedia({ media: "print" });
    expect(await page.evaluate("document.body.innerText")).toMatch(/^Not current/);
    await quiet(sheet);
  });

  it.each([
    [1280, "light"],
    [1280, "dark"],
    [390, "light"],
    [390, "dark"],
  ] as const)(
    "is legible at %i pixels, %s: no sideways scrolling, and contrast of 4.5:1 (WCAG 2.2, 1.4.3)",
    async (width, scheme) => {
      const sheet = await openSheet({ width, height: 844, scheme });
      const { page } = sheet;
      await ohmReading(page, 1).getByLabel("reads").fill("none");
      await page.locator("#stale").waitFor();
      expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(width);
      const { checked, poor } = (await page.evaluate(contrasts)) as { checked: number; poor: unknown[] };
      expect(checked).toBeGreaterThan(200);
      expect(poor).toEqual([]);
      const [form, result] = [
        await page.locator("#form").boundingBox(),
        await page.locator("#result").boundingBox(),
      ];
      if (form === null || result === null) throw new Error("form and result are shown");
      if (width === 1280) expect(result.x).toBeGreaterThanOrEqual(form.x + form.width);
      else expect(result.y).toBeGreaterThanOrEqual(form.y + form.height);
      await quiet(sheet);
    },
  );

  it("could not reach the network if it tried, nor run a script that came in later", async () => {
    const { page } = await openSheet();
    const ended: string[] = [];
    page.on("requestfinished", (request) => ended.push(`reached ${request.url()}`));
    page.on("requestfailed", (request) => ended.push(request.failure()?.errorText ?? ""));
    const refused = await page.evaluate(`(async () => {
      const found = [];
      document.addEventListener("securitypolicyviolation", ({ effectiveDirective }) => found.push(effectiveDirective));
      await fetch("https://example.invalid/").catch(() => {});
      const script = document.createElement("script");
      script.textContent = "window.hit = 1";
      document.body.append(script);
      const image = document.createElement("img");
      image.src = "https://example.invalid/x.png";
      document.body.append(image);
      await new Promise((done) => setTimeout(done, 300));
      return [...found.sort(), window.hit];
    })()`);
    expect(refused).toEqual(["connect-src", "img-src", "script-src-elem", undefined]);
    expect(ended.filter((how) => how !== "csp")).toEqual([]);
    await page.close();
  });
});
