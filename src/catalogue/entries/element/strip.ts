/** Entries of the room `element`: strip, sheathed tubular elements, and furnace elements that radiate. */
import * as element from "../../../element/index.ts";
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../../quantity/index.ts";
import { HOT_EQUIPMENT } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const power = { symbol: "P", above: 0 } as const;
const voltage = { symbol: "V", above: 0 } as const;
const resistivity = { symbol: "\\rho", above: 0 } as const;
const width = { symbol: "w", above: 0 } as const;
const thickness = { symbol: "t", above: 0 } as const;
const length = { symbol: "l", above: 0 } as const;
const load = { symbol: "p", above: 0 } as const;
const temperatureFactor = { symbol: "C_t", is: "number", above: 0 } as const;
const part = (symbol: string) => ({ symbol, is: "ratio", min: 0, below: 1 }) as const;

/** What radiation depends on besides the two temperatures. */
const grey = {
  emissivity: { symbol: "\\varepsilon", is: "ratio", above: 0, max: 1 },
  radiatingEfficiency: { symbol: "K", is: "ratio", above: 0, max: 1 },
  stefanBoltzmann: {
    symbol: "\\sigma",
    is: "number",
    unit: "W/(m²·K⁴)",
    above: 0,
    default: STEFAN_BOLTZMANN,
  },
  zeroCelsius: { symbol: "T_0", is: "number", unit: "K", above: 0, default: ZERO_CELSIUS },
} as const;
const warm = "\\vartheta_2";
const RADIATED = "p = \\sigma K \\varepsilon \\left[(\\vartheta_1 + T_0)^4 - (\\vartheta_2 + T_0)^4\\right]";

const strip = {
  fields: { width: { symbol: "w" }, thickness: { symbol: "t" }, length: { symbol: "l" } },
} as const;
const DUTY =
  "\\quad f = \\begin{cases} 1 & \\text{sheared} \\\\ 0.92 & \\text{rolled} \\end{cases}, \\quad j = \\begin{cases} 1 & \\text{four} \\\\ 0 & \\text{two} \\end{cases}";

export const stripEntries = (): readonly Entry[] =>
  describeRoom(
    "element",
    {
      stripSection: element.stripSection,
      stripSurfaceLoad: element.stripSurfaceLoad,
      stripForSurfaceLoad: element.stripForSurfaceLoad,
      stripWidthForThickness: element.stripWidthForThickness,
      swagedCoil: element.swagedCoil,
      tubularLoads: element.tubularLoads,
      radiantSurfaceLoad: element.radiantSurfaceLoad,
      radiantTemperature: element.radiantTemperature,
      radiantTemperatureAtVoltage: element.radiantTemperatureAtVoltage,
      radiantWire: element.radiantWire,
      radiantStrip: element.radiantStrip,
    },
    {
      stripSection: {
        kind: "physics",
        tex: "A = \\begin{cases} w t & \\text{sheared} \\\\ 0.92\\,w t & \\text{rolled} \\end{cases}",
        text: "section = width·thickness (sheared), 0.92·width·thickness (rolled)",
        inputs: { width, thickness, edge: {} },
        output: { symbol: "A" },
      },
      stripSurfaceLoad: {
        kind: "physics",
        tex: "p = \\begin{cases} \\frac{P}{2 (w + t)\\,l} & \\text{four} \\\\ \\frac{P}{2 w l} & \\text{two} \\end{cases}",
        inputs: { power, width, thickness, length, faces: {} },
        output: { symbol: "p" },
      },
      stripForSurfaceLoad: {
        kind: "physics",
        tex: `t = \\sqrt[3]{\\frac{P^2 \\rho\\,C_t}{2 p V^2 f\\,n (n + j)}}, \\quad w = n t, \\quad l = \\frac{P}{2 p (w + j t)}, ${DUTY}`,
        inputs: {
          power,
          voltage,
          resistivity,
          temperatureFactor,
          surfaceLoad: load,
          widthToThickness: { symbol: "n", is: "ratio", min: 1 },
          faces: {},
          edge: {},
        },
        output: strip,
      },
      stripWidthForThickness: {
        kind: "physics",
        tex: `w^2 + j t w = \\frac{P^2 \\rho\\,C_t}{2 p V^2 f t}, \\quad l = \\frac{P}{2 p (w + j t)}, ${DUTY}`,
        inputs: {
          power,
          voltage,
          resistivity,
          temperatureFactor,
          surfaceLoad: load,
          thickness,
          faces: {},
          edge: {},
        },
        output: strip,
      },
      swagedCoil: {
        kind: "physics",
        tex: "R_w = \\frac{R}{1 - x}",
        inputs: { resistance: { symbol: "R", above: 0 }, resistanceFall: part("x") },
        output: { fields: { woundResistance: { symbol: "R_w" }, resistance: { symbol: "R" } } },
      },
      tubularLoads: {
        kind: "physics",
        tex: "p_t = \\frac{P}{\\pi D l_h}, \\quad p_w = \\frac{P}{\\pi d L (1 - x)}, \\quad r = \\frac{p_w}{p_t}",
        text: "tubeSurfaceLoad = power/(π·tubeDiameter·heatedLength), wireSurfaceLoad = power/(π·wireDiameter·wireLength·(1 − surfaceFall)), ratio = wireSurfaceLoad/tubeSurfaceLoad",
        inputs: {
          power,
          tubeDiameter: { symbol: "D", above: 0 },
          heatedLength: { symbol: "l_h", above: 0 },
          wireDiameter: { symbol: "d", above: 0 },
          wireLength: { symbol: "L", above: 0 },
          surfaceFall: part("x"),
        },
        output: {
          fields: {
            tubeSurfaceLoad: { symbol: "p_t" },
            wireSurfaceLoad: { symbol: "p_w" },
            ratio: { symbol: "r", is: "ratio" },
          },
        },
      },
      radiantSurfaceLoad: {
        kind: "physics",
        tex: RADIATED,
        inputs: {
          temperature: { symbol: "\\vartheta_1", min: -ZERO_CELSIUS },
          surroundingsTemperature: { symbol: warm, min: -ZERO_CELSIUS },
          ...grey,
        },
        output: { symbol: "p" },
      },
      radiantTemperature: {
        kind: "physics",
        tex: "\\vartheta_1 = \\sqrt[4]{\\frac{p}{\\sigma K \\varepsilon} + (\\vartheta_2 + T_0)^4} - T_0",
        inputs: {
          surfaceLoad: { symbol: "p", min: 0 },
          surroundingsTemperature: { symbol: warm, min: -ZERO_CELSIUS },
          ...grey,
        },
        output: { symbol: "\\vartheta_1" },
        cautions: [HOT_EQUIPMENT],
      },
      radiantTemperatureAtVoltage: {
        kind: "physics",
        tex: "\\vartheta_2 = (\\vartheta_1 + T_0) \\sqrt{r} - T_0, \\quad r = \\frac{V_2}{V_1}",
        inputs: {
          temperature: { symbol: "\\vartheta_1", min: -ZERO_CELSIUS },
          voltageRatio: { symbol: "r", is: "ratio", above: 0 },
          zeroCelsius: grey.zeroCelsius,
        },
        output: { symbol: "\\vartheta_2" },
        cautions: [HOT_EQUIPMENT],
      },
      radiantWire: {
        kind: "physics",
        tex: `${RADIATED}, \\quad d = \\sqrt[3]{\\frac{4 \\rho P^2}{\\pi^2 p V^2}}, \\quad l = \\frac{P}{\\pi d p}`,
        inputs: {
          power,
          voltage,
          resistivity,
          wireTemperature: { symbol: "\\vartheta_1" },
          chargeTemperature: { symbol: warm },
          ...grey,
        },
        output: {
          fields: { surfaceLoad: { symbol: "p" }, diameter: { symbol: "d" }, length: { symbol: "l" } },
        },
      },
      radiantStrip: {
        kind: "physics",
        tex: `${RADIATED}, \\quad w = \\sqrt{\\frac{P^2 \\rho}{2 p V^2 t}}, \\quad l = \\frac{P}{2 w p}`,
        inputs: {
          power,
          voltage,
          resistivity,
          thickness,
          stripTemperature: { symbol: "\\vartheta_1" },
          chargeTemperature: { symbol: warm },
          ...grey,
        },
        output: { fields: { surfaceLoad: { symbol: "p" }, ...strip.fields } },
      },
    },
  );
