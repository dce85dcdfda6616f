/** The example prints what was worked out elsewhere for the same coil, with its sources and cautions. */
import { expect, it, vi } from "vitest";

it("replace-a-coil goes from ohms to a coil and its temperature", async () => {
  const printed: string[] = [];
  const log = vi.spyOn(console, "log").mockImplementation((text: string) => void printed.push(text));
  try {
    await import("../../examples/replace-a-coil.mjs");
  } finally {
    log.mockRestore();
  }
  const text = printed.join("\n");
  // Invented repair case, worked in Python: 0.330239 Ω/m, 22.408 m, 6.92937 W/cm², 44.7055 W/in².
  expect(text).toMatch(/0\.3302 Ω\/m/);
  expect(text).toMatch(/22\.41 m \(tails/);
  expect(text).toMatch(/6\.93 W\/cm² \(44\.7 W\/in²\)/);
  // The unequal star of the same collection: 7.89138 Ω, 29.7297 kW, 35.923 / 35.4342 / 35.923 A.
  expect(text).toMatch(/7\.891 Ω instead of 7\.68 Ω/);
  expect(text).toMatch(/29\.73 kW/);
  expect(text).toMatch(/L1 35\.9 A, L2 35\.4 A, L3 35\.9 A/);
  // Mean diameter 12.05 mm, pitch 6.15 mm: turn √((π·12.05)² + 6.15²) = 38.352 mm, 22408/38.352 turns.
  expect(text).toMatch(/Turns\s+584\n/);
  expect(text).toMatch(/Limits not kept\s+none/);
  // The same coil by bisection in Python: 502.4 °C, band 456.7 to 590.3; without fan 803 °C, band 781 to 852.
  expect(text).toMatch(/as it is\s+502 °C, 457 to 590 \(churchill-bernstein; /);
  expect(text).toMatch(/hilpert gives 501, zukauskas gives 539\n/);
  expect(text).toMatch(/fan stopped\s+803 °C, 781 to 852 \(morgan; /);
  expect(text).toMatch(/churchill-chu gives 834\n/);
  // Ct at 500 °C: 1.026 (GB), 1.05 (maker A) and 116 / 108 (maker I), which ends there: 1.07407 / 1.026 = 1.0468.
  expect(text).toMatch(/maker-i\s+silent: its table runs from 20 to 500 °C; .*differ by 4\.7 %/);
  for (const part of [
    "Cautions",
    "licensed electrician",
    "Sources",
    "S. W. Churchill, M. Bernstein",
    "Table A.4",
  ]) {
    expect(text).toContain(part);
  }
  expect(text).not.toMatch(/NaN|undefined|Infinity|null/);
});
