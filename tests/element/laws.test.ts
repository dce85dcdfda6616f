/** What must hold for every element, whatever its figures: balances, round trips, scaling and order. */
import {
  ageingFromDiameter,
  ageingFromResistance,
  closeWoundLength,
  coilGeometry,
  coldResistance,
  coldTarget,
  currentFromPowerAndResistance,
  currentFromPowerAndVoltage,
  currentFromVoltageAndResistance,
  groupResistance,
  hotResistance,
  insideDiameterFromMean,
  meanDiameterFromInside,
  meanDiameterFromOutside,
  operatingPoint,
  outsideDiameterFromMean,
  parallelGroup,
  powerFromCurrentAndResistance,
  powerFromVoltageAndCurrent,
  powerFromVoltageAndResistance,
  radiantStrip,
  radiantSurfaceLoad,
  radiantTemperature,
  radiantWire,
  resistanceFromPowerAndCurrent,
  resistanceFromVoltageAndCurrent,
  resistanceFromVoltageAndPower,
  seriesString,
  shortedTurns,
  stretchedLength,
  stripForSurfaceLoad,
  stripSection,
  stripSurfaceLoad,
  stripWidthForThickness,
  surfaceLoad,
  toleranceBand,
  voltageFromCurrentAndResistance,
  voltageFromPowerAndCurrent,
  voltageFromPowerAndResistance,
  wireForSurfaceLoad,
} from "electroheat/element";
import {
  celsius,
  type Meters,
  meters,
  millimeters,
  ohmMeters,
  ohms,
  volts,
  watts,
  wattsPerSquareMeter,
} from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";

const runs = { numRuns: 1000 };
const range = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const volt = range(1, 1000).map(volts);
const ohm = range(0.01, 1000).map(ohms);
const watt = range(1, 100_000).map(watts);
const load = range(100, 500_000).map(wattsPerSquareMeter);
const rho = range(1e-8, 2e-6).map(ohmMeters);
const near = (got: number, wanted: number, relative = 1e-12): void => {
  expect(Math.abs(got - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted));
};

describe("voltage, current, resistance and power", () => {
  it("agree by all twelve routes and by the working point", () => {
    fc.assert(
      fc.property(volt, ohm, (voltage, resistance) => {
        const current = currentFromVoltageAndResistance({ voltage, resistance });
        const power = powerFromVoltageAndCurrent({ voltage, current });
        near(powerFromVoltageAndResistance({ voltage, resistance }), power);
        near(powerFromCurrentAndResistance({ current, resistance }), power);
        near(voltageFromPowerAndCurrent({ power, current }), voltage);
        near(voltageFromPowerAndResistance({ power, resistance }), voltage);
        near(voltageFromCurrentAndResistance({ current, resistance }), voltage);
        near(currentFromPowerAndVoltage({ power, voltage }), current);
        near(currentFromPowerAndResistance({ power, resistance }), current);
        near(resistanceFromVoltageAndCurrent({ voltage, current }), resistance);
        near(resistanceFromVoltageAndPower({ voltage, power }), resistance);
        near(resistanceFromPowerAndCurrent({ power, current }), resistance);
        for (const pair of [
          { voltage, current },
          { voltage, resistance },
          { voltage, power },
          { current, resistance },
          { current, power },
          { resistance, power },
        ]) {
          const point = operatingPoint(pair);
          near(point.voltage, voltage);
          near(point.current, current);
          near(point.resistance as number, resistance);
          near(point.power, power);
          expectFinite(point, JSON.stringify(pair));
        }
      }),
      runs,
    );
  });

  it("knows an element without current as open, and a dead one as what it is", () => {
    expect(operatingPoint({ voltage: volts(480), power: watts(0) }).resistance).toBe("open");
    expect(operatingPoint({ voltage: volts(480), resistance: "open" })).toMatchObject({
      current: 0,
      power: 0,
    });
    expect(operatingPoint({ voltage: volts(0), resistance: ohms(8) })).toMatchObject({
      current: 0,
      resistance: 8,
    });
    expect(operatingPoint({ resistance: ohms(8), power: watts(0) })).toMatchObject({
      voltage: 0,
      current: 0,
    });
  });
});

describe("series and parallel", () => {
  const some = fc.array(ohm, { minLength: 1, maxLength: 12 });

  it("give as much heat as the group draws, and the group is as many equal elements", () => {
    fc.assert(
      fc.property(volt, some, (voltage, resistances) => {
        for (const group of [
          seriesString({ voltage, resistances }),
          parallelGroup({ voltage, resistances }),
        ]) {
          near(
            group.elements.reduce((sum, { power }) => sum + power, 0),
            group.power,
            1e-10,
          );
          near(group.power, voltage * group.current, 1e-10);
          near(group.resistance as number, voltage / group.current, 1e-10);
          expectFinite(group, "group");
        }
      }),
      runs,
    );
  });

  it("the hottest of a string is the highest resistance, of a group the lowest", () => {
    fc.assert(
      fc.property(volt, some, (voltage, resistances) => {
        const hottest = (group: typeof seriesString): number => {
          const powers = group({ voltage, resistances }).elements.map(({ power }) => power);
          return resistances[powers.indexOf(Math.max(...powers) as never)] as number;
        };
        near(hottest(seriesString), Math.max(...resistances));
        near(hottest(parallelGroup), Math.min(...resistances));
      }),
      runs,
    );
  });

  it("equal elements are what the short form says", () => {
    fc.assert(
      fc.property(
        volt,
        ohm,
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
        (voltage, one, s, p) => {
          const string = seriesString({ voltage, resistances: new Array(s).fill(one) })
            .resistance as typeof one;
          const group = parallelGroup({ voltage, resistances: new Array(p).fill(string) })
            .resistance as number;
          near(groupResistance({ resistance: one, inSeries: s, inParallel: p }) as number, group, 1e-10);
        },
      ),
      runs,
    );
  });

  it("an open element stops a string and only leaves a group", () => {
    const resistances = [ohms(8), "open", ohms(8)] as const;
    const string = seriesString({ voltage: volts(480), resistances });
    expect(string).toMatchObject({ resistance: "open", current: 0, power: 0 });
    expect(string.elements.map(({ voltage }) => voltage)).toEqual([0, 480, 0]);
    expect(parallelGroup({ voltage: volts(480), resistances })).toMatchObject({
      resistance: 4,
      current: 120,
    });
  });
});

describe("hot, cold and changed elements", () => {
  it("go back where they came from", () => {
    fc.assert(
      fc.property(ohm, range(0.8, 6), range(0.001, 0.9), (cold, temperatureFactor, loss) => {
        const hot = hotResistance({ coldResistance: cold, temperatureFactor });
        near(coldResistance({ hotResistance: hot, temperatureFactor }), cold);
        const newDiameter = meters(0.002);
        const diameter = meters(0.002 * (1 - loss));
        const aged = ageingFromDiameter({ newDiameter, diameter });
        const resistance = ohms(cold * aged.resistanceRatio);
        near(ageingFromResistance({ newResistance: cold, resistance }).diameterLoss, loss, 1e-9 / loss);
        near(aged.resistanceRatio * aged.powerRatio, 1);
        near(1 - aged.sectionLoss, aged.powerRatio);
      }),
      runs,
    );
  });

  it("shorted turns: the live part keeps the ohms per meter, so load and power follow", () => {
    fc.assert(
      fc.property(ohm, range(0.01, 1), volt, (sound, left, voltage) => {
        const resistance = ohms(sound * left);
        const found = shortedTurns({ soundResistance: sound, resistance, voltage });
        near(found.power, powerFromVoltageAndResistance({ voltage, resistance }));
        // Same diameter, so load is power over live length.
        near(found.surfaceLoadRatio, found.powerRatio / (1 - found.shortedFraction), 1e-9);
      }),
      runs,
    );
  });

  it("bands hold their nominal, and the cold band widens with every dataset", () => {
    fc.assert(
      fc.property(
        watt,
        volt,
        range(0.9, 1.2),
        range(0.9, 1.2),
        range(0, 0.3),
        range(0, 0.3),
        (power, voltage, a, b, up, down) => {
          const tolerances = { upperTolerance: up, lowerTolerance: down };
          const one = coldTarget({ power, voltage, temperatureFactors: [a], ...tolerances });
          const two = coldTarget({ power, voltage, temperatureFactors: [a, b], ...tolerances });
          expect(one.low <= one.coldResistance && one.coldResistance <= one.high).toBe(true);
          expect(two.low <= one.low && two.high >= one.high).toBe(true);
          const band = toleranceBand({ resistance: one.hotResistance, voltage, ...tolerances });
          near(band.power.nominal, power, 1e-9);
          near(band.power.low * band.resistance.high, voltage * voltage, 1e-9);
          near(band.power.high * band.resistance.low, voltage * voltage, 1e-9);
          near(band.power.high, band.power.nominal * (1 + band.powerAbove), 1e-9);
          near(band.power.low, band.power.nominal * (1 - band.powerBelow), 1e-9);
        },
      ),
      runs,
    );
  });
});

describe("wire and strip for a surface load", () => {
  const stock = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 1000, 10_000].map(millimeters);

  it("the chosen wire has the resistance, keeps the limit, and changes as cube and square", () => {
    fc.assert(
      fc.property(
        watt,
        volt,
        rho,
        range(0.9, 1.2),
        load,
        (power, voltage, resistivity, temperatureFactor, limit) => {
          const duty = { power, voltage, resistivity, temperatureFactor, maximumSurfaceLoad: limit };
          const wire = wireForSurfaceLoad({ ...duty, stockDiameters: stock });
          const section = (Math.PI / 4) * wire.diameter ** 2;
          near((resistivity * wire.length) / section, wire.coldResistance, 1e-9);
          near(wire.coldResistance * temperatureFactor * power, voltage * voltage, 1e-9);
          expect(wire.surfaceLoad).toBeLessThanOrEqual(limit * (1 + 1e-8));
          near(wire.surfaceLoad / limit, wire.surfaceLoadRatio, 1e-9);
          near(surfaceLoad({ power, diameter: wire.diameter, length: wire.length }), wire.surfaceLoad);
          const smallest = wireForSurfaceLoad({ ...duty, stockDiameters: [wire.minimumDiameter] });
          near(smallest.surfaceLoad, limit, 1e-9);
          near(wire.length / smallest.length, wire.lengthRatio, 1e-9);
          const thinner = stock.filter((one) => one < wire.diameter).at(-1);
          if (thinner !== undefined) expect(thinner).toBeLessThan(wire.minimumDiameter);
        },
      ),
      runs,
    );
  });

  it("a strip has the resistance and the load it was asked for, by both routes", () => {
    fc.assert(
      fc.property(
        fc.record({
          power: watt,
          voltage: volt,
          resistivity: rho,
          temperatureFactor: range(0.9, 1.2),
          surfaceLoad: load,
          faces: fc.constantFrom("two" as const, "four" as const),
          edge: fc.constantFrom("sheared" as const, "rolled" as const),
        }),
        range(1, 100),
        (duty, widthToThickness) => {
          const strip = stripForSurfaceLoad({ ...duty, widthToThickness });
          near(strip.width / strip.thickness, widthToThickness, 1e-9);
          near(stripSurfaceLoad({ ...strip, power: duty.power, faces: duty.faces }), duty.surfaceLoad, 1e-9);
          const hot =
            (duty.resistivity * duty.temperatureFactor * strip.length) /
            stripSection({ ...strip, edge: duty.edge });
          near(hot * duty.power, duty.voltage ** 2, 1e-9);
          const again = stripWidthForThickness({ ...duty, thickness: strip.thickness });
          near(again.width, strip.width, 1e-9);
          near(again.length, strip.length, 1e-9);
        },
      ),
      runs,
    );
  });

  it("the textbook wire and strip radiate what they must", () => {
    fc.assert(
      fc.property(
        watt,
        volt,
        rho,
        range(600, 1200),
        range(0, 500),
        range(0.3, 1),
        (power, voltage, resistivity, hot, cold, efficiency) => {
          const surface = { emissivity: 0.9, radiatingEfficiency: efficiency };
          const duty = { power, voltage, resistivity, chargeTemperature: celsius(cold), ...surface };
          const wire = radiantWire({ ...duty, wireTemperature: celsius(hot) });
          near(wire.surfaceLoad * Math.PI * wire.diameter * wire.length, power, 1e-9);
          near(
            (resistivity * wire.length) / ((Math.PI / 4) * wire.diameter ** 2),
            voltage ** 2 / power,
            1e-9,
          );
          const back = radiantTemperature({
            ...surface,
            surfaceLoad: wire.surfaceLoad,
            surroundingsTemperature: celsius(cold),
          });
          expect(back).toBeCloseTo(hot, 8);
          const strip = radiantStrip({
            ...duty,
            thickness: millimeters(0.3),
            stripTemperature: celsius(hot),
          });
          near(strip.surfaceLoad * 2 * strip.width * strip.length, power, 1e-9);
          near((resistivity * strip.length) / (strip.width * strip.thickness), voltage ** 2 / power, 1e-9);
          near(
            radiantSurfaceLoad({
              ...surface,
              temperature: celsius(hot),
              surroundingsTemperature: celsius(cold),
            }),
            strip.surfaceLoad,
          );
        },
      ),
      runs,
    );
  });
});

describe("coils", () => {
  const coil = fc.record({
    wireDiameter: range(0.1, 5).map(millimeters),
    ratio: range(1.5, 20),
    wireLength: range(1, 100).map(meters),
    stretchRatio: range(1, 20),
  });

  it("inside, mean and outside diameter go round", () => {
    fc.assert(
      fc.property(coil, ({ wireDiameter, ratio }) => {
        const insideDiameter = meters(ratio * wireDiameter);
        const meanDiameter = meanDiameterFromInside({ insideDiameter, wireDiameter });
        const outsideDiameter = outsideDiameterFromMean({ meanDiameter, wireDiameter });
        near(meanDiameterFromOutside({ outsideDiameter, wireDiameter }), meanDiameter);
        near(insideDiameterFromMean({ meanDiameter, wireDiameter }), insideDiameter, 1e-11);
      }),
      runs,
    );
  });

  it("turns times the length of a turn is the wire; stretch is found again; an exact close-wound coil is stretched by 1", () => {
    fc.assert(
      fc.property(coil, ({ wireDiameter, ratio, wireLength, stretchRatio }) => {
        const meanDiameter = meters((ratio + 1) * wireDiameter);
        const shape = { wireLength, wireDiameter, meanDiameter };
        const coilLength = stretchedLength({ ...shape, stretchRatio });
        const found = coilGeometry({ ...shape, coilLength });
        near(found.turns * Math.hypot(Math.PI * meanDiameter, found.pitch), wireLength, 1e-9);
        near(found.turns * found.pitch, coilLength, 1e-9);
        near(found.stretchRatio, stretchRatio, 1e-9);
        const closed = closeWoundLength({ ...shape, turn: "helix" });
        near(stretchedLength({ ...shape, stretchRatio: 1 }), closed);
        const byCircle = closeWoundLength({ ...shape, turn: "circle" });
        const share = (wireDiameter / (Math.PI * meanDiameter)) ** 2;
        near(byCircle / closed, Math.sqrt(1 + share), 1e-9);
        expectFinite(found, "coil");
      }),
      runs,
    );
  });

  it("warns by name of each limit that is not kept", () => {
    const rules = (insideOverWire: number, stretchRatio: number): string[] => {
      const wireDiameter = millimeters(1);
      const meanDiameter = meanDiameterFromInside({
        insideDiameter: (insideOverWire * wireDiameter) as Meters,
        wireDiameter,
      });
      const shape = { wireLength: meters(20), wireDiameter, meanDiameter };
      const found = coilGeometry({ ...shape, coilLength: stretchedLength({ ...shape, stretchRatio }) });
      return found.warnings.map(({ path, limit }) => `${path} ${limit}`);
    };
    expect(rules(4, 3)).toEqual([]);
    expect(rules(3, 2)).toEqual([]);
    expect(rules(6, 4)).toEqual([]);
    expect(rules(2.99, 3)).toEqual(["insideToWire 3", "outsideToWire 5", "outsideToWire 5"]);
    expect(rules(6.01, 3)).toEqual(["insideToWire 6"]);
    expect(rules(10, 3)).toEqual(["insideToWire 6"]);
    expect(rules(10.01, 3)).toEqual(["insideToWire 6", "outsideToWire 12", "outsideToWire 12"]);
    expect(rules(4, 1.99)).toEqual(["stretchRatio 2", "stretchRatio 2", "stretchRatio 2"]);
    expect(rules(4, 4.01)).toEqual(["stretchRatio 4", "stretchRatio 4"]);
  });
});
