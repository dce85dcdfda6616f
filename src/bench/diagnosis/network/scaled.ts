/** A state with all its elements so many times as large: without joints in it nothing has to be solved again. */
import { filled } from "../numbers/room.ts";
import { type DeadState, type Frame, isVoltage, type LiveState, type State } from "./state.ts";

const times = (values: Float64Array, factor: number): Float64Array =>
  filled(values.length, (i) => (values[i] as number) * factor);

/** Rows of so many figures each: those of currents divided, those of voltages as they are. */
function byRow({ liveKind }: Frame, values: Float64Array, width: number, factor: number): Float64Array {
  return filled(values.length, (i) => {
    const value = values[i] as number;
    return isVoltage(liveKind[Math.floor(i / width)]) ? value : value / factor;
  });
}

const scaledDead = ({ admittance, share, resistance }: DeadState, factor: number): DeadState => ({
  admittance: times(admittance, 1 / factor),
  share,
  resistance: times(resistance, factor),
});

const scaledLive = (frame: Frame, live: LiveState, factor: number): LiveState => ({
  admittance: times(live.admittance, 1 / factor),
  current: times(live.current, 1 / factor),
  value: byRow(frame, live.value, 3, factor),
  answer: byRow(frame, live.answer, frame.edges, factor),
  adrift: live.adrift,
  impedance: times(live.impedance, factor),
});

/** The state with every element's resistance multiplied; the wiring has no joint. */
export function scaled(frame: Frame, { dead, live, resistance, variance }: State, factor: number): State {
  const { edges } = frame.wiring;
  return {
    dead: dead.map((one) => scaledDead(one, factor)),
    live: live === null ? null : scaledLive(frame, live, factor),
    resistance: filled(edges.length, (e) => {
      const open = edges[e]?.resistance === Number.POSITIVE_INFINITY;
      return (resistance[e] as number) * (open ? 1 : factor);
    }),
    variance,
  };
}
