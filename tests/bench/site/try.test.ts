import { it } from "vitest";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { assessHardware } from "../../../src/bench/site/hardware.ts";

const r = <T>(value: T) => ({ value: value as never, resolution: null });
it("shows", () => {
  console.log(
    JSON.stringify(
      assessFeed(
        {
          feed: {
            edition: "NEC 2023",
            installation: "raceway",
            insulation: "75 °C",
            terminals: r(75),
            conductor: "8 AWG",
            device: r(60),
          },
          ambient: r(30),
        },
        43.3013 as never,
      ),
      null,
      1,
    ),
  );
  console.log(
    JSON.stringify(
      assessFeed(
        { feed: { edition: "NEC 2023", installation: "raceway", insulation: "90 °C", conductor: "3 AWG" } },
        90 as never,
      ),
      null,
      1,
    ),
  );
  console.log(
    JSON.stringify(
      assessFeed(
        {
          feed: {
            edition: "IEC 60364-5-52:2009",
            installation: "B2",
            insulation: "PVC",
            conductor: "16 mm²",
            device: r(50),
          },
          ambient: r(30),
        },
        43.3013 as never,
      ),
      null,
      1,
    ),
  );
  console.log(
    JSON.stringify(
      assessHardware({
        hardware: [
          {
            id: "line studs",
            thread: "M6",
            strength: { standard: "ISO 898-1", grade: "8.8" },
            applied: { value: 6.5 as never, resolution: 0.1 },
          },
          { id: "b", thread: "#10-32" },
          { id: "c", thread: "1/4-20", strength: { standard: "ASTM F593", grade: "F593C" } },
        ],
      }),
      null,
      1,
    ),
  );
  for (const feed of [
    { edition: "NEC 2025", installation: "raceway", insulation: "75 °C" },
    { edition: "NEC 2023", installation: "air", insulation: "75 °C", material: "gold" },
    { edition: "NEC 2023", installation: "raceway", insulation: "blue" },
    { edition: "IEC 60364-5-52:2009", installation: "Z", insulation: "PVC", conductor: "17 mm²" },
  ]) {
    try {
      assessFeed({ feed }, 40 as never);
      console.log("no");
    } catch (e) {
      console.log(
        (e as Error).message,
        (e as any).issues.map((i: any) => i.path),
      );
    }
  }
});
