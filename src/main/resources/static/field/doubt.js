// Readings that are hardly possible are asked about, never refused: who says "as read" is believed. The desk asks the same.
// The bounds are common practice without a source, but for one: what falling water can pay, q h <= Q H, is conservation of energy.
import { number } from './dom.js';
import { BAR, L_MIN } from './calc.js';

const WATER = 9806.65;
const far = (si, base) => base && (si > 3 * base || si < base / 5) && `${number(si / L_MIN)} l/min is far from the baseline of ${number(base / L_MIN)} l/min. Check value and unit.`;
const odd = (si, least, most) => (si < least * L_MIN || si > most * L_MIN) && 'This flow is unusual for a ram. Check value and unit.';

/** What to ask about a reading, if anything; readings are SI by quantity, {si}. */
export function doubt(q, readings, install) {
  const si = readings[q]?.si;
  const of = (name) => readings[name]?.si;
  const { fall, lift } = install;
  const base = install.baseline || {};
  if (si === undefined) {
    return '';
  }
  const asks = {
    DRIVE_FLOW: () => far(si, base.drive) || odd(si, 1, 3000),
    DELIVERED_FLOW: () => {
      const drive = of('DRIVE_FLOW');
      const efficiency = drive > 0 && fall && lift ? si * lift / (drive * fall) : 0;
      return si > 0 && (drive !== undefined && si >= drive ? 'More water arrives than enters the pump. Check both values and their units.'
        : efficiency > 0.85 ? `This would be an efficiency of ${(100 * efficiency).toFixed(0)} %; rams reach 50 to 70. Check both flows.` : far(si, base.delivered) || odd(si, 0.02, 1000));
    },
    WASTE_FLOW: () => odd(si, 0, 20000),
    SOURCE_FLOW: () => odd(si, 0, 20000),
    BEAT_RATE: () => (si * 60 < 20 || si * 60 > 150) && 'A ram beats some 40 to 90 times a minute. Check the value.',
    DELIVERY_PRESSURE: () => {
      const still = lift * WATER;
      return lift ? (si < 0.7 * still || si > 2 * still) && `A lift of ${number(lift)} m makes about ${(still / BAR).toFixed(1)} bar at rest. Check the gauge.`
        : (si < 0.2 * BAR || si > 25 * BAR) && '10 m of lift make about 1 bar. Check the value.';
    },
    PRE_CHARGE: () => {
      const still = of('DELIVERY_PRESSURE') ?? (lift ? lift * WATER : undefined);
      return still !== undefined && si >= still && `The delivery stands at about ${(still / BAR).toFixed(1)} bar: a pre-charge at or above it keeps water out of the vessel. Was the vessel empty of water and not under pressure?`;
    },
    FALL: () => fall && (si > 1.5 * fall || si < fall / 1.5) && `The register says ${number(fall)} m. Was something moved?`,
    WATER_TEMPERATURE: () => (si < 0 || si > 30) && 'Water in hill country is seldom so. Check the value.',
  };
  return asks[q]() || '';
}
