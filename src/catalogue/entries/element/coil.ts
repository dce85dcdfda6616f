/** Entries of the room `element`: coils, round wire, and the wire that a surface load asks for. */
import * as element from "../../../element/index.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const power = { symbol: "P", above: 0 } as const;
const voltage = { symbol: "V", above: 0 } as const;
const resistivity = { symbol: "\\rho", above: 0 } as const;
const diameter = { symbol: "d", above: 0 } as const;
const length = { symbol: "l", above: 0 } as const;
const wireDiameter = { symbol: "d", above: 0 } as const;
const wireLength = { symbol: "L", above: 0 } as const;
const meanDiameter = { symbol: "D_m", above: 0 } as const;
const load = { symbol: "p", above: 0 } as const;
const ratio = (symbol: string) => ({ symbol, is: "ratio" }) as const;
const temperatureFactor = { symbol: "C_t", is: "number", above: 0 } as const;

export const coilEntries = (): readonly Entry[] =>
  describeRoom(
    "element",
    {
      meanDiameterFromInside: element.meanDiameterFromInside,
      meanDiameterFromOutside: element.meanDiameterFromOutside,
      insideDiameterFromMean: element.insideDiameterFromMean,
      outsideDiameterFromMean: element.outsideDiameterFromMean,
      closeWoundLength: element.closeWoundLength,
      stretchedLength: element.stretchedLength,
      coilGeometry: element.coilGeometry,
      coilGuidance: element.coilGuidance,
      surfaceLoad: element.surfaceLoad,
      wireMass: element.wireMass,
      smallestWireDiameter: element.smallestWireDiameter,
      wireForSurfaceLoad: element.wireForSurfaceLoad,
      currentFromSurfaceLoad: element.currentFromSurfaceLoad,
      surfaceLoadApplications: element.surfaceLoadApplications,
      surfaceLoadGuidance: element.surfaceLoadGuidance,
    },
    {
      meanDiameterFromInside: {
        kind: "transform",
        tex: "D_m = D_i + d",
        text: "meanDiameter = insideDiameter + wireDiameter",
        inputs: { insideDiameter: { symbol: "D_i", above: 0 }, wireDiameter },
        output: { symbol: "D_m" },
      },
      meanDiameterFromOutside: {
        kind: "transform",
        tex: "D_m = D_o - d",
        text: "meanDiameter = outsideDiameter − wireDiameter",
        inputs: { outsideDiameter: { symbol: "D_o", above: 0 }, wireDiameter },
        output: { symbol: "D_m" },
      },
      insideDiameterFromMean: {
        kind: "transform",
        tex: "D_i = D_m - d",
        text: "insideDiameter = meanDiameter − wireDiameter",
        inputs: { meanDiameter, wireDiameter },
        output: { symbol: "D_i" },
      },
      outsideDiameterFromMean: {
        kind: "transform",
        tex: "D_o = D_m + d",
        text: "outsideDiameter = meanDiameter + wireDiameter",
        inputs: { meanDiameter, wireDiameter },
        output: { symbol: "D_o" },
      },
      closeWoundLength: {
        kind: "physics",
        tex: "l_0 = \\begin{cases} \\frac{L d}{\\pi D_m} & \\text{circle} \\\\ \\frac{L d}{\\sqrt{(\\pi D_m)^2 + d^2}} & \\text{helix} \\end{cases}",
        text: "length = wireLength·wireDiameter/(π·meanDiameter) (circle), wireLength·wireDiameter/√((π·meanDiameter)² + wireDiameter²) (helix)",
        inputs: { wireLength, wireDiameter, meanDiameter, turn: {} },
        output: { symbol: "l_0" },
      },
      stretchedLength: {
        kind: "physics",
        tex: "l = \\frac{L s}{\\sqrt{(\\pi D_m)^2 + s^2}}, \\quad s = k d",
        inputs: {
          wireLength,
          wireDiameter,
          meanDiameter,
          stretchRatio: { symbol: "k", is: "ratio", min: 1 },
        },
        output: { symbol: "l" },
      },
      coilGeometry: {
        kind: "physics",
        tex: "s = \\frac{\\pi D_m}{\\sqrt{(L/l)^2 - 1}}, \\quad n = \\frac{l}{s}, \\quad l_0 = \\frac{L d}{\\sqrt{(\\pi D_m)^2 + d^2}}, \\quad k = \\frac{s}{d}, \\quad D_i = D_m - d, \\quad D_o = D_m + d",
        inputs: { wireLength, wireDiameter, meanDiameter, coilLength: length },
        output: {
          fields: {
            meanDiameter: { symbol: "D_m" },
            insideDiameter: { symbol: "D_i" },
            outsideDiameter: { symbol: "D_o" },
            turns: { symbol: "n", is: "number" },
            pitch: { symbol: "s" },
            closeWoundLength: { symbol: "l_0" },
            stretchRatio: ratio("k"),
            outsideToWire: ratio("D_o/d"),
            insideToWire: ratio("D_i/d"),
          },
        },
      },
      coilGuidance: {
        kind: "lookup",
        inputs: { wireDiameter },
        output: {
          fields: {
            limits: { each: { fields: { low: ratio("r_1"), high: ratio("r_2") } } },
            smallestOutsideDiameter: { symbol: "D_{o,1}" },
            largestOutsideDiameter: { symbol: "D_{o,2}" },
            smallestStretchRatio: ratio("k_1"),
            largestStretchRatio: ratio("k_2"),
          },
        },
      },
      surfaceLoad: {
        kind: "physics",
        tex: "p = \\frac{P}{\\pi d l}",
        inputs: { power, diameter, length },
        output: { symbol: "p" },
      },
      wireMass: {
        kind: "physics",
        tex: "m = \\frac{\\pi}{4} d^2 l\\,\\varrho",
        text: "mass = π/4·diameter²·length·density",
        inputs: { diameter, length, density: { symbol: "\\varrho", above: 0 } },
        output: { symbol: "m" },
      },
      smallestWireDiameter: {
        kind: "physics",
        tex: "d = \\sqrt[3]{\\frac{4 \\rho P}{\\pi^2 p R}}",
        inputs: { power, resistance: { symbol: "R", above: 0 }, resistivity, surfaceLoad: load },
        output: { symbol: "d" },
      },
      wireForSurfaceLoad: {
        kind: "physics",
        tex: "R_{20} = \\frac{V^2}{P C_t}, \\quad d_0 = \\sqrt[3]{\\frac{4 \\rho P}{\\pi^2 p_0 R_{20}}}, \\quad d = \\min\\{d_i \\ge d_0\\}, \\quad l = \\frac{\\pi d^2 R_{20}}{4 \\rho}, \\quad p = \\frac{P}{\\pi d l}",
        text: "coldResistance = voltage²/(power·temperatureFactor), minimumDiameter = (4·resistivity·power/(π²·maximumSurfaceLoad·coldResistance))^(1/3), diameter = the next in stock, length = coldResistance·π·diameter²/(4·resistivity)",
        inputs: {
          power,
          voltage,
          resistivity,
          temperatureFactor,
          maximumSurfaceLoad: { symbol: "p_0", above: 0 },
          stockDiameters: { least: 1, each: { symbol: "d_i", above: 0 } },
        },
        output: {
          fields: {
            minimumDiameter: { symbol: "d_0" },
            diameter: { symbol: "d" },
            stockIndex: { symbol: "i", is: "count" },
            coldResistance: { symbol: "R_{20}" },
            length: { symbol: "l" },
            surfaceLoad: { symbol: "p" },
            surfaceLoadRatio: ratio("p/p_0"),
            lengthRatio: ratio("l/l_0"),
          },
        },
      },
      currentFromSurfaceLoad: {
        kind: "physics",
        tex: "I = \\sqrt{\\frac{\\pi^2 d^3 p}{4 \\rho}}",
        inputs: { surfaceLoad: load, diameter, resistivity },
        output: { symbol: "I" },
      },
      surfaceLoadApplications: { kind: "lookup", inputs: {} },
      surfaceLoadGuidance: {
        kind: "lookup",
        inputs: { application: {} },
        output: {
          fields: {
            low: { symbol: "p_1" },
            high: { symbol: "p_2" },
            sheathTemperature: { symbol: "\\vartheta_s" },
            airSpeed: { symbol: "v" },
          },
        },
      },
    },
  );
