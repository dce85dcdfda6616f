/** Entries of the room `process`: the oven as one body, as two, and from its parts. */
import {
  coolDownTime,
  cyclicTemperature,
  heatUpOptions,
  heatUpTime,
  heatUpTimeFromMeanLoss,
  holdingPower,
  ovenAfter,
  ovenFromTwoReadings,
  ovenHeatUp,
  ovenTemperature,
  twoNodeHeatUp,
  twoNodeTemperatures,
} from "../../../process/index.ts";
import { HOT_EQUIPMENT } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

/** Nothing is colder. */
const min = -273.15;
const heatCapacity = { symbol: "C", above: 0 } as const;
const lossConductance = { symbol: "G", min: 0 } as const;
const ambient = { symbol: "\\vartheta_\\mathrm{amb}", min } as const;
const power = { symbol: "P", min: 0 } as const;
const target = { symbol: "\\vartheta_\\mathrm{set}", min } as const;
const start = { symbol: "\\vartheta_0", min } as const;

const twoNode = {
  airHeatCapacity: { symbol: "C_\\mathrm{air}", above: 0 },
  loadHeatCapacity: { symbol: "C_\\mathrm{load}", above: 0 },
  lossConductance: { symbol: "G", above: 0 },
  coupling: { symbol: "K", above: 0 },
  ambient,
  power,
} as const;
const twoNodeTex =
  "C_\\mathrm{air} \\frac{d\\vartheta_\\mathrm{air}}{dt} = P - G (\\vartheta_\\mathrm{air} - \\vartheta_\\mathrm{amb}) - K (\\vartheta_\\mathrm{air} - \\vartheta_\\mathrm{load}), \\quad C_\\mathrm{load} \\frac{d\\vartheta_\\mathrm{load}}{dt} = K (\\vartheta_\\mathrm{air} - \\vartheta_\\mathrm{load})";
const twoNodeText =
  "airHeatCapacity × dTair/dt = power − lossConductance × (Tair − ambient) − coupling × (Tair − Tload), loadHeatCapacity × dTload/dt = coupling × (Tair − Tload)";

const partsTex =
  "C(\\vartheta) \\frac{d\\vartheta}{dt} = P - G (\\vartheta - \\vartheta_\\mathrm{amb}), \\quad C(\\vartheta) = C_s + w\\,C_w + m_\\mathrm{air} c_p(\\vartheta) + \\sum_i m_i c_i(\\vartheta)";
const partsText = "capacity(T) × dT/dt = power − lossConductance × (T − ambient)";

const heatUp = {
  time: { symbol: "t" },
  ultimate: { symbol: "\\vartheta_\\infty" },
  holdingPower: { symbol: "P_h" },
} as const;
const meanLossShare = { symbol: "s", is: "ratio" } as const;
const energy = {
  fields: {
    input: { symbol: "E" },
    loads: { symbol: "Q_\\mathrm{load}" },
    structure: { symbol: "Q_s" },
    walls: { symbol: "Q_w" },
    air: { symbol: "Q_\\mathrm{air}" },
    lost: { symbol: "Q_\\mathrm{lost}" },
  },
} as const;

export const ovenEntries = (): readonly Entry[] =>
  describeRoom(
    "process",
    {
      heatUpTime,
      heatUpTimeFromMeanLoss,
      holdingPower,
      ovenTemperature,
      coolDownTime,
      ovenFromTwoReadings,
      cyclicTemperature,
      ovenHeatUp,
      ovenAfter,
      heatUpOptions,
      twoNodeTemperatures,
      twoNodeHeatUp,
    },
    {
      heatUpTime: {
        kind: "physics",
        tex: "t = -\\frac{C}{G} \\ln\\left(1 - \\frac{G (\\vartheta_\\mathrm{set} - \\vartheta_0)}{P - G (\\vartheta_0 - \\vartheta_\\mathrm{amb})}\\right)",
        inputs: { heatCapacity, lossConductance, ambient, power, target, start },
        output: { fields: { ...heatUp, timeConstant: { symbol: "\\tau" }, energy: { symbol: "E" } } },
      },
      coolDownTime: {
        kind: "physics",
        tex: "t = \\frac{C}{G} \\ln\\frac{\\vartheta_0 - \\vartheta_\\mathrm{amb}}{\\vartheta_\\mathrm{set} - \\vartheta_\\mathrm{amb}}",
        text: "time = heatCapacity/lossConductance × ln[(start − ambient)/(target − ambient)]",
        inputs: { heatCapacity, lossConductance: { symbol: "G", above: 0 }, ambient, start, target },
        output: { symbol: "t" },
        cautions: [HOT_EQUIPMENT],
      },
      heatUpTimeFromMeanLoss: {
        kind: "physics",
        tex: "t = \\frac{Q}{P - \\bar P_\\mathrm{loss}}",
        text: "time = storedHeat / (power − meanLoss)",
        inputs: {
          storedHeat: { symbol: "Q", above: 0 },
          meanLoss: { symbol: "\\bar P_\\mathrm{loss}", min: 0 },
          power,
        },
        output: { symbol: "t" },
      },
      holdingPower: {
        kind: "physics",
        tex: "P_h = G (\\vartheta_\\mathrm{set} - \\vartheta_\\mathrm{amb})",
        text: "holdingPower = lossConductance × (target − ambient)",
        inputs: { lossConductance, ambient, target },
        output: { symbol: "P_h" },
      },
      ovenTemperature: {
        kind: "physics",
        tex: "\\vartheta = \\vartheta_0 + \\frac{P - G (\\vartheta_0 - \\vartheta_\\mathrm{amb})}{G} \\left(1 - e^{-G t / C}\\right)",
        inputs: {
          heatCapacity,
          lossConductance,
          ambient,
          power,
          time: { symbol: "t", min: 0 },
          start,
        },
        output: { symbol: "\\vartheta" },
      },
      ovenFromTwoReadings: {
        kind: "physics",
        tex: "r_k = \\vartheta_k - \\vartheta_\\mathrm{amb}, \\quad \\tau = \\frac{t}{\\ln\\frac{r_1}{r_2 - r_1}}, \\quad r_\\infty = \\frac{r_1^2}{2 r_1 - r_2}, \\quad G = \\frac{P}{r_\\infty}, \\quad C = G \\tau",
        inputs: {
          ambient,
          time: { symbol: "t", above: 0 },
          first: { symbol: "\\vartheta_1", min },
          second: { symbol: "\\vartheta_2", min },
          power: { symbol: "P", above: 0 },
        },
        output: {
          fields: {
            timeConstant: { symbol: "\\tau" },
            ultimate: { symbol: "\\vartheta_\\infty" },
            finalRise: { symbol: "r_\\infty" },
            lossConductance: { symbol: "G" },
            heatCapacity: { symbol: "C" },
            riseSensitivity: { symbol: "\\partial r_\\infty / \\partial r_2", is: "number", unit: "K/K" },
          },
        },
      },
      cyclicTemperature: {
        kind: "physics",
        tex: "\\vartheta_{\\max} = \\vartheta_c + (\\vartheta_h - \\vartheta_c) \\frac{1 - e^{-t_1/\\tau}}{1 - e^{-(t_1 + t_2)/\\tau}}, \\quad \\vartheta_{\\min} = \\vartheta_c + (\\vartheta_{\\max} - \\vartheta_c)\\,e^{-t_2/\\tau}, \\quad \\bar\\vartheta = \\vartheta_c + (\\vartheta_h - \\vartheta_c) \\frac{t_1}{t_1 + t_2}",
        text: "highest = cold + (hot − cold) × (1 − e^(−on/τ))/(1 − e^(−(on + off)/τ)), lowest = cold + (highest − cold) × e^(−off/τ), mean = cold + (hot − cold) × on/(on + off)",
        inputs: {
          coldTemperature: { symbol: "\\vartheta_c", min },
          hotTemperature: { symbol: "\\vartheta_h", min },
          timeConstant: { symbol: "\\tau", above: 0 },
          onTime: { symbol: "t_1", above: 0 },
          offTime: { symbol: "t_2", min: 0 },
        },
        output: {
          fields: {
            lowest: { symbol: "\\vartheta_{\\min}" },
            highest: { symbol: "\\vartheta_{\\max}" },
            mean: { symbol: "\\bar\\vartheta" },
          },
        },
      },
      ovenHeatUp: {
        kind: "physics",
        tex: partsTex,
        inputs: { oven: {}, power, target, start },
        output: { fields: { ...heatUp, meanLossShare: meanLossShare, energy } },
      },
      ovenAfter: {
        kind: "physics",
        tex: partsTex,
        text: partsText,
        inputs: { oven: {}, power, time: { symbol: "t", above: 0 }, start },
        output: { fields: { temperature: { symbol: "\\vartheta" }, energy } },
      },
      heatUpOptions: {
        kind: "physics",
        tex: partsTex,
        text: partsText,
        inputs: {
          oven: {},
          powers: { least: 1, each: { fields: { power: { symbol: "P_k", min: 0 } } } },
          target,
          start,
        },
        output: {
          each: {
            fields: {
              ...heatUp,
              meanLossShare: meanLossShare,
              energy,
              power: { symbol: "P_k" },
              powerRatio: { symbol: "P_k/P_1", is: "ratio" },
              timeRatio: { symbol: "t_k/t_1", is: "ratio" },
            },
          },
        },
      },
      twoNodeTemperatures: {
        kind: "physics",
        tex: twoNodeTex,
        text: twoNodeText,
        inputs: { ...twoNode, time: { symbol: "t", min: 0 }, start },
        output: {
          fields: {
            air: { symbol: "\\vartheta_\\mathrm{air}" },
            load: { symbol: "\\vartheta_\\mathrm{load}" },
          },
        },
      },
      twoNodeHeatUp: {
        kind: "physics",
        tex: twoNodeTex,
        text: twoNodeText,
        inputs: { ...twoNode, target, start },
        output: {
          fields: {
            airTime: { symbol: "t_\\mathrm{air}" },
            loadTime: { symbol: "t_\\mathrm{load}" },
            loadWhenAirReaches: { symbol: "\\vartheta_\\mathrm{load}(t_\\mathrm{air})" },
            ultimate: { symbol: "\\vartheta_\\infty" },
            timeConstants: { each: { symbol: "\\tau" } },
          },
        },
      },
    },
  );
