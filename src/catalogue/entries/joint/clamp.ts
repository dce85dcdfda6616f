/** Entries of the room `joint`: stiffness, springs, pressure, and preload hot and cold. */
import * as joint from "../../../joint/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const diameter = { symbol: "d", above: 0 } as const;
const modulus = { symbol: "E", above: 0 } as const;
const grip = { symbol: "l", above: 0 } as const;
const force = { symbol: "F", min: 0 } as const;
const studStiffness = { symbol: "k_s", above: 0 } as const;
const partsStiffness = { symbol: "k_p", above: 0 } as const;
const outerDiameter = { symbol: "D", above: 0 } as const;
const holeDiameter = { symbol: "d_h", min: 0 } as const;
const stack = (symbol: string) => ({ symbol, is: "count", min: 1, max: 20, default: 1 }) as const;

export const clampEntries = (): readonly Entry[] =>
  describeRoom(
    "joint",
    {
      boltLengths: joint.boltLengths,
      boltStiffness: joint.boltStiffness,
      frustumStiffness: joint.frustumStiffness,
      memberStiffness: joint.memberStiffness,
      memberStiffnessFitted: joint.memberStiffnessFitted,
      seriesStiffness: joint.seriesStiffness,
      discSpringState: joint.discSpringState,
      conicalWasher: joint.conicalWasher,
      annulusPressure: joint.annulusPressure,
      bearingPressure: joint.bearingPressure,
      preloadChange: joint.preloadChange,
      embeddingLoss: joint.embeddingLoss,
      preloadAfterOverload: joint.preloadAfterOverload,
      jointMetal: joint.jointMetal,
      hardwareNotes: joint.hardwareNotes,
      retighteningNote: joint.retighteningNote,
    },
    {
      boltLengths: {
        kind: "physics",
        tex: "l_t = 2 d + 6\\,\\mathrm{mm}, \\quad l_s = L - l_t, \\quad l_{tg} = l - l_s",
        inputs: {
          diameter: { symbol: "d", above: 0, max: 0.048 },
          boltLength: { symbol: "L", above: 0, max: 0.125 },
          grip,
        },
        output: {
          fields: {
            threadLength: { symbol: "l_t" },
            shankInGrip: { symbol: "l_s" },
            threadInGrip: { symbol: "l_{tg}" },
          },
        },
      },
      boltStiffness: {
        kind: "physics",
        tex: "\\frac{1}{k} = \\frac{l_s}{A_d E} + \\frac{l_t}{A_s E}",
        inputs: {
          stressArea: { symbol: "A_s", above: 0 },
          threadLength: { symbol: "l_t", above: 0 },
          modulus,
          shankLength: { symbol: "l_s", min: 0, default: 0 },
          shankArea: { symbol: "A_d", above: 0 },
        },
        output: { symbol: "k" },
      },
      frustumStiffness: {
        kind: "physics",
        tex: "k = \\frac{0.5774\\,\\pi E d}{\\ln\\frac{(1.155\\,t + D - d)(D + d)}{(1.155\\,t + D + d)(D - d)}}",
        inputs: {
          diameter,
          thickness: { symbol: "t", above: 0 },
          faceDiameter: { symbol: "D", above: 0 },
          modulus,
        },
        output: { symbol: "k" },
      },
      memberStiffness: {
        kind: "physics",
        tex: "k = \\frac{0.5774\\,\\pi E d}{2 \\ln\\left(5 \\frac{0.5774\\,l + 0.5\\,d}{0.5774\\,l + 2.5\\,d}\\right)}",
        inputs: { diameter, grip, modulus },
        output: { symbol: "k" },
      },
      memberStiffnessFitted: {
        kind: "physics",
        tex: "k = E d A \\exp\\left(\\frac{B d}{l}\\right)",
        inputs: {
          diameter,
          grip,
          modulus,
          a: { symbol: "A", is: "number", above: 0, default: 0.78952 },
          b: { symbol: "B", is: "number", above: 0, default: 0.62914 },
        },
        output: { symbol: "k" },
      },
      seriesStiffness: {
        kind: "physics",
        tex: "\\frac{1}{k} = \\sum_i \\frac{1}{k_i}",
        inputs: { parts: { least: 1, each: { symbol: "k_i", above: 0 } } },
        output: { symbol: "k" },
      },
      discSpringState: {
        kind: "physics",
        tex: "F = n \\frac{4 E}{1 - \\mu^2} \\frac{t^4}{K_1 D_e^2} \\frac{s}{t} \\left[\\left(\\frac{h}{t} - \\frac{s}{t}\\right)\\left(\\frac{h}{t} - \\frac{s}{2t}\\right) + 1\\right], \\quad K_1 = \\frac{1}{\\pi} \\frac{\\left(\\frac{\\delta - 1}{\\delta}\\right)^2}{\\frac{\\delta + 1}{\\delta - 1} - \\frac{2}{\\ln\\delta}}, \\quad \\delta = \\frac{D_e}{D_i}, \\quad s = \\frac{S}{i}, \\quad k = \\frac{dF}{dS}",
        inputs: {
          spring: {},
          deflection: { symbol: "S", min: 0 },
          inParallel: stack("n"),
          inSeries: stack("i"),
        },
        output: {
          fields: {
            force: { symbol: "F" },
            stiffness: { symbol: "k" },
            flattened: { symbol: "s/h", is: "ratio" },
          },
        },
      },
      conicalWasher: {
        kind: "lookup",
        inputs: { size: {} },
        output: { fields: { load: { symbol: "F" } } },
      },
      annulusPressure: {
        kind: "physics",
        tex: "p = \\frac{F}{\\frac{\\pi}{4} \\left(D^2 - d_h^2\\right)}",
        inputs: { force, outerDiameter, holeDiameter },
        output: { symbol: "p" },
      },
      bearingPressure: {
        kind: "physics",
        tex: "D_i = D + 2 b \\tan\\varphi, \\quad A = \\frac{\\pi}{4} \\left(D^2 - d_h^2\\right), \\quad p = \\frac{F}{A}, \\quad p_i = \\frac{F}{\\frac{\\pi}{4} \\left(D_i^2 - d_h^2\\right)}",
        inputs: {
          force,
          outerDiameter,
          holeDiameter,
          barThickness: { symbol: "b", min: 0 },
          halfAngle: { symbol: "\\varphi", is: "number", unit: "rad", min: 0, max: 1, default: Math.PI / 6 },
        },
        output: {
          fields: {
            faceArea: { symbol: "A" },
            facePressure: { symbol: "p" },
            interfaceDiameter: { symbol: "D_i" },
            interfacePressure: { symbol: "p_i" },
          },
        },
      },
      preloadChange: {
        kind: "physics",
        tex: "\\Delta F = \\left(\\sum_i \\alpha_i l_i \\Delta T_i - \\alpha_s l_s \\Delta T_s\\right) \\frac{k_s k_p}{k_s + k_p}, \\quad l_s = \\sum_i l_i",
        inputs: { stud: {}, parts: { least: 1 }, studStiffness, partsStiffness },
        output: { symbol: "\\Delta F" },
      },
      embeddingLoss: {
        kind: "physics",
        tex: "F_Z = \\frac{f_Z}{\\frac{1}{k_s} + \\frac{1}{k_p} + \\frac{1}{k_w}}",
        inputs: {
          embedding: { symbol: "f_Z", min: 0 },
          studStiffness,
          partsStiffness,
          washerStiffness: { symbol: "k_w", above: 0 },
        },
        output: { symbol: "F_Z" },
      },
      preloadAfterOverload: {
        kind: "physics",
        tex: "F_\\mathrm{hot} = \\max(0, \\min(F_0 + \\Delta F, F_c)), \\quad F_\\mathrm{cold} = \\begin{cases} F_0 & F_0 + \\Delta F \\le F_c \\\\ \\max(0, F_c - \\Delta F) & F_0 + \\Delta F > F_c \\end{cases}",
        text: "hot = preload + change, from 0 to ceiling; coldAfter = preload, or ceiling − change (0 at the least) where it yielded",
        inputs: {
          preload: { symbol: "F_0", min: 0 },
          change: { symbol: "\\Delta F" },
          ceiling: { symbol: "F_c", above: 0 },
        },
        output: {
          fields: {
            hot: { symbol: "F_\\mathrm{hot}" },
            coldAfter: { symbol: "F_\\mathrm{cold}" },
            lost: { symbol: "F_0 - F_\\mathrm{cold}" },
          },
        },
      },
      jointMetal: {
        kind: "lookup",
        inputs: { metal: {} },
        output: { fields: { expansion: { symbol: "\\alpha" }, modulus: { symbol: "E" } } },
      },
      hardwareNotes: { kind: "lookup", inputs: { hardware: {} } },
      retighteningNote: { kind: "lookup", inputs: { rule: {} } },
    },
  );
