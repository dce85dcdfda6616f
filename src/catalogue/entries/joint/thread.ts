/** Entries of the room `joint`: threads, nut factors, preload, strength of studs. */
import * as joint from "../../../joint/index.ts";
import { TIGHTENING } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const diameter = { symbol: "d", above: 0 } as const;
const torque = { symbol: "T", min: 0 } as const;
const stressArea = { symbol: "A_s", above: 0 } as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;
const nutFactor = (symbol: string) => ({ symbol, is: "ratio", min: 0.03, max: 1 }) as const;
const friction = (symbol: string) => ({ symbol, is: "ratio", min: 0, max: 1 }) as const;

const size = {
  fields: {
    diameter: { symbol: "d" },
    pitch: { symbol: "p" },
    stressArea: { symbol: "A_s" },
    minorArea: { symbol: "A_3" },
  },
} as const;

export const threadEntries = (): readonly Entry[] =>
  describeRoom(
    "joint",
    {
      threadGeometry: joint.threadGeometry,
      metricThread: joint.metricThread,
      unifiedThread: joint.unifiedThread,
      threadSize: joint.threadSize,
      fastenerStrength: joint.fastenerStrength,
      proofLoad: joint.proofLoad,
      nutFactorRange: joint.nutFactorRange,
      textbookNutFactor: joint.textbookNutFactor,
      nutFactorFromFriction: joint.nutFactorFromFriction,
      nutFactorFromPreload: joint.nutFactorFromPreload,
      screwTorque: joint.screwTorque,
      preloadFromTorque: joint.preloadFromTorque,
      torqueFromPreload: joint.torqueFromPreload,
      preloadBand: joint.preloadBand,
      impliedBoltStress: joint.impliedBoltStress,
      tightening: joint.tightening,
      tighteningTorque: joint.tighteningTorque,
      wrenchSetting: joint.wrenchSetting,
    },
    {
      threadGeometry: {
        kind: "physics",
        tex: "A_s = \\frac{\\pi}{4} (d - c_s p)^2, \\quad d_3 = d - c_3 p, \\quad A_3 = \\frac{\\pi}{4} d_3^2, \\quad d_2 = d - 0.649519\\,p, \\quad (c_s, c_3) = \\begin{cases} (0.938194,\\ 1.226869) & \\text{metric} \\\\ (0.9743,\\ 1.299038) & \\text{unified} \\end{cases}",
        inputs: { form: {}, diameter, pitch: { symbol: "p", above: 0 } },
        output: {
          fields: {
            stressArea: { symbol: "A_s" },
            minorArea: { symbol: "A_3" },
            pitchDiameter: { symbol: "d_2" },
            minorDiameter: { symbol: "d_3" },
          },
        },
      },
      metricThread: { kind: "lookup", inputs: { thread: {} }, output: size },
      unifiedThread: { kind: "lookup", inputs: { thread: {} }, output: size },
      threadSize: { kind: "lookup", inputs: { text: {} }, output: size },
      fastenerStrength: {
        kind: "lookup",
        inputs: { standard: {}, grade: {}, diameter },
        output: {
          fields: {
            proof: { symbol: "\\sigma_p" },
            yield: { symbol: "\\sigma_y" },
            tensile: { symbol: "\\sigma_u" },
            limit: { symbol: "\\sigma_\\mathrm{lim}" },
          },
        },
      },
      proofLoad: {
        kind: "lookup",
        inputs: { size: {}, grade: {} },
        output: { fields: { load: { symbol: "F_p" } } },
      },
      nutFactorRange: {
        kind: "lookup",
        inputs: { condition: {} },
        output: { fields: { low: ratio("K_1"), high: ratio("K_2") } },
      },
      textbookNutFactor: {
        kind: "lookup",
        inputs: { condition: {} },
        output: { fields: { nutFactor: ratio("K") } },
      },
      nutFactorFromFriction: {
        kind: "physics",
        tex: "K d = \\frac{p}{2\\pi} + \\frac{\\mu_t d_2}{2 \\cos 30°} + \\frac{\\mu_b D_b}{2}",
        inputs: {
          diameter,
          pitch: { symbol: "p", above: 0 },
          pitchDiameter: { symbol: "d_2", above: 0 },
          threadFriction: friction("\\mu_t"),
          bearingFriction: friction("\\mu_b"),
          bearingDiameter: { symbol: "D_b", above: 0 },
        },
        output: ratio("K"),
      },
      nutFactorFromPreload: {
        kind: "physics",
        tex: "K = \\frac{T}{F d}",
        inputs: { torque: { symbol: "T", above: 0 }, preload: { symbol: "F", above: 0 }, diameter },
        output: ratio("K"),
      },
      screwTorque: {
        kind: "physics",
        tex: "T_R = \\frac{F d_m}{2} \\frac{l + \\pi \\mu d_m \\sec\\alpha}{\\pi d_m - \\mu l \\sec\\alpha} + \\frac{F \\mu_c d_c}{2}, \\quad T_L = \\frac{F d_m}{2} \\frac{\\pi \\mu d_m \\sec\\alpha - l}{\\pi d_m + \\mu l \\sec\\alpha} + \\frac{F \\mu_c d_c}{2}, \\quad e = \\frac{F l}{2\\pi T_R}",
        inputs: {
          force: { symbol: "F", above: 0 },
          lead: { symbol: "l", above: 0 },
          meanDiameter: { symbol: "d_m", above: 0 },
          threadFriction: friction("\\mu"),
          halfAngle: { symbol: "\\alpha", is: "number", unit: "rad", min: 0, max: 1 },
          collarFriction: friction("\\mu_c"),
          collarDiameter: { symbol: "d_c", min: 0 },
        },
        output: { fields: { raise: { symbol: "T_R" }, lower: { symbol: "T_L" }, efficiency: ratio("e") } },
      },
      preloadFromTorque: {
        kind: "physics",
        tex: "F = \\frac{T}{K d}",
        inputs: { torque, diameter, nutFactor: nutFactor("K") },
        output: { symbol: "F" },
      },
      torqueFromPreload: {
        kind: "physics",
        tex: "T = K F d",
        inputs: { preload: { symbol: "F", min: 0 }, diameter, nutFactor: nutFactor("K") },
        output: { symbol: "T" },
        cautions: [TIGHTENING],
      },
      preloadBand: {
        kind: "physics",
        tex: "F_\\mathrm{low} = \\frac{T}{K_2 d}, \\quad F_\\mathrm{high} = \\frac{T}{K_1 d}",
        inputs: { torque, diameter, nutFactorLow: nutFactor("K_1"), nutFactorHigh: nutFactor("K_2") },
        output: { fields: { low: { symbol: "F_\\mathrm{low}" }, high: { symbol: "F_\\mathrm{high}" } } },
      },
      impliedBoltStress: {
        kind: "physics",
        tex: "\\sigma = \\frac{T}{K d A_s}",
        inputs: { torque, diameter, stressArea, nutFactor: nutFactor("K") },
        output: { symbol: "\\sigma" },
      },
      tightening: {
        kind: "judgement",
        tex: "F = \\frac{T}{K d}, \\quad \\frac{F}{\\sigma_\\mathrm{lim} A_s} \\le s, \\quad \\frac{\\sqrt{\\sigma^2 + 3\\tau^2}}{\\sigma_\\mathrm{lim}} \\le 1, \\quad \\sigma = \\frac{F}{A_s}, \\quad \\tau = \\frac{16 \\cdot 0.5\\,T}{\\pi d_s^3}, \\quad d_s = \\sqrt{\\frac{4 A_s}{\\pi}}",
        inputs: {
          torque: { symbol: "T", above: 0 },
          diameter,
          stressArea,
          nutFactorLow: nutFactor("K_1"),
          nutFactorHigh: nutFactor("K_2"),
          strength: { symbol: "\\sigma_\\mathrm{lim}", above: 0 },
          allowedShare: { symbol: "s", is: "ratio", min: 0.1, max: 1, default: 0.75 },
          face: {
            fields: {
              outerDiameter: { symbol: "D", above: 0 },
              holeDiameter: { symbol: "d_h", min: 0 },
              barThickness: { symbol: "b", min: 0 },
            },
          },
        },
      },
      tighteningTorque: {
        kind: "lookup",
        inputs: {
          table: {},
          size: {},
          column: {},
          maker: { fields: { torque: { symbol: "T", above: 0 } } },
        },
        output: { fields: { torque: { symbol: "T" } } },
      },
      wrenchSetting: {
        kind: "physics",
        tex: "T_w = \\frac{T L}{L + E}",
        text: "setting = torque × wrenchLength/(wrenchLength + extension)",
        inputs: {
          torque,
          wrenchLength: { symbol: "L", above: 0 },
          extension: { symbol: "E" },
        },
        output: { symbol: "T_w" },
        cautions: [TIGHTENING],
      },
    },
  );
