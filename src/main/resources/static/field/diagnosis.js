// What the readings say of an install, in words, and where to look, in the order in which a good technician does.
import { BAR, L_MIN, dAubuisson, deviation, expectedAt, preCharge, pressureOf } from './calc.js';
import { day, number } from './dom.js';

/** Standard uncertainty of a reading as a share of it, where runs with the bucket do not tell; common practice, no source. */
const SHARE = { DRIVE_FLOW: 0.05, WASTE_FLOW: 0.05, DELIVERED_FLOW: 0.05, BEAT_RATE: 0.03, DELIVERY_PRESSURE: 0.04, PRE_CHARGE: 0.04, FALL: 0.03 };
const DAY = 86400000;
const YEAR = 365.25 * DAY;

const below = (d) => !!d?.clear && d.percent < 0;
const above = (d) => !!d?.clear && d.percent > 0;
const off = (d) => `${Math.abs(d.percent).toFixed(0)} % ${d.percent < 0 ? 'below' : 'above'}`;
const litres = (si) => `${number(si / L_MIN)} l/min`;

/** Against a baseline, which was read in the same way and is as uncertain. */
const against = (reading, base, share) => (reading && base ? deviation(reading.si, reading.u, base, base * share) : null);

/** What part of the drive water arrives, as if the fall were as ever: what the pump makes of what it gets. */
function part(r, fall) {
  const lower = r.fall && fall ? fall / r.fall.si : 1;
  const si = lower * r.delivered.si / r.drive.si;
  return { si, u: si * Math.hypot(r.delivered.u / r.delivered.si, r.drive.u / r.drive.si, r.fall ? r.fall.u / r.fall.si : 0) };
}

/** All that can be told by comparing; null where a reading or its counterpart is missing. */
function compare(install, table, r) {
  const base = install.baseline || {};
  const fall = r.fall && install.fall ? deviation(r.fall.si, r.fall.u, install.fall, install.fall * 0.02) : null;
  // with another fall the table is of another duty
  const expected = r.drive && !fall?.clear ? expectedAt(table, r.drive.si) : null;
  const right = install.lift ? preCharge(install.lift, 10, Infinity).charge : null;
  const full = install.lift ? Math.max(pressureOf(install.lift), expected?.running || 0) : null;
  return { fall, drive: against(r.drive, base.drive, SHARE.DRIVE_FLOW), beat: against(r.beat, base.beat, SHARE.BEAT_RATE), flow: against(r.delivered, base.delivered, SHARE.DELIVERED_FLOW),
    part: r.drive?.si > 0 && r.delivered?.si > 0 && base.drive && base.delivered ? against(part(r, install.fall), base.delivered / base.drive, Math.hypot(SHARE.DRIVE_FLOW, SHARE.DELIVERED_FLOW)) : null,
    table: r.delivered && expected ? withTable(r, expected) : null, expected,
    charge: r.charge && right ? { ...deviation(r.charge.si, r.charge.u, right, 0), right } : null,
    pressure: r.pressure && full ? deviation(r.pressure.si, r.pressure.u, full, full * 0.04) : null,
    gap: r.drive && r.waste && r.delivered ? { si: r.drive.si - r.waste.si - r.delivered.si, u: Math.hypot(r.drive.u, r.waste.u, r.delivered.u) } : null };
}

/** Above it the reading's own share does not grow the table's: much more than expected is said as such. */
function withTable(r, expected) {
  const u = Math.hypot(expected.u, expected.delivered * (r.drive.u / r.drive.si));
  const d = deviation(r.delivered.si, r.delivered.u, expected.delivered, u);
  return { ...d, clear: d.clear || d.percent > 200 * Math.hypot(r.delivered.u, u) / expected.delivered };
}

/** Against both, always both: the baseline tells what changed, the library whether it was ever right. */
function flows(c, r) {
  const words = [c.flow && (c.flow.clear ? `${off(c.flow)} the baseline` : 'as the baseline'),
    c.table && (c.table.clear ? `${off(c.table)} the ${litres(c.expected.delivered)} that the sizing library expects with this drive flow` : `${Math.abs(c.table.percent) < 20 ? 'as' : off(c.table)} the ${litres(c.expected.delivered)} that the sizing library expects with this drive flow${Math.abs(c.table.percent) < 20 ? '' : ', which it is not sure of to that'}`)].filter(Boolean);
  return [words.length && `Delivered flow is ${words.join(', and ')}.`,
    c.drive?.clear && `Drive flow is ${off(c.drive)} the baseline.`, c.beat?.clear && `The beat is ${off(c.beat)} the baseline.`,
    r.delivered && !c.table && r.drive && c.fall?.clear && 'With another fall than in the register there is nothing to expect it by.'].filter(Boolean);
}

const setting = (install) => (install.setting ? `it was left at ${install.setting}` : 'how it was left is not in the register');

/** How old a part is; young ones in days or months, for a tenth of a year says nothing of them. */
function aged(fitted, today) {
  const days = Math.round((new Date(today) - new Date(fitted)) / DAY);
  const some = (n, one) => `${n} ${one}${n === 1 ? '' : 's'}`;
  const age = days < 61 ? some(days, 'day') : days < 183 ? some(Math.floor(days * DAY * 12 / YEAR), 'month') : `${(days * DAY / YEAR).toFixed(1)} years`;
  return days === 0 ? 'new today' : `${days < 0 ? 'newer than this visit' : age} (changed ${day(fitted)})`;
}

function rubbers(install, today) {
  const ages = (install.rubbers || []).map((x) => `${x.position === 'WASTE_VALVE' ? 'waste' : 'delivery'} valve ${x.fitted ? aged(x.fitted, today) : 'age not known'}`);
  return `The rubbers${ages.length ? `: ${ages.join('; ')}` : ': age not known'}.`;
}

/**
 * The places to look, in order: what to say there, whether the readings point to it, and whether they rule it out.
 * A pump that is only starved is not to blame: then what lies behind the valve setting is left out.
 */
function places(install, c, r, today, starved) {
  const full = c.drive && !below(c.drive);
  const bladder = !install.pumps?.length || install.pumps.some((p) => p.vessel === 'BLADDER');
  return [
    { say: `The source level${below(c.fall) ? `: the fall reads ${number(r.fall.si)} m, ${number(install.fall)} m in the register` : ''}.`, points: below(c.fall) || below(c.drive), out: full },
    { say: 'The strainer.', points: below(c.drive), out: full },
    { say: `The valve setting, has it moved: ${setting(install)}${c.beat?.clear ? `; the beat is ${off(c.beat)} the baseline` : ''}${above(c.drive) ? '; the pump takes more drive water than it did' : ''}.`, points: c.beat?.clear || above(c.drive) || below(c.drive) },
    { say: `Leaks on drive and delivery pipe${c.gap && c.gap.si > 2 * c.gap.u ? `: ${litres(c.gap.si)} of the drive flow are neither waste nor delivered` : ''}.`, points: c.gap && c.gap.si > 2 * c.gap.u, out: starved },
    { say: 'Air drawn in at the intake or a joint.', out: starved },
    { say: c.charge?.clear ? `The pre-charge: it is ${off(c.charge)} the ${(c.charge.right / BAR).toFixed(2)} bar for this lift.` : bladder ? 'The pre-charge: it is not measured yet.' : 'The air in the vessel: is the snifter clear?', points: c.charge?.clear, out: starved || (c.charge && !c.charge.clear) },
    { say: above(c.pressure) ? `A float or branch at the tank end, partly shut? The delivery pressure is ${off(c.pressure)} what this lift gives.` : 'A float or branch at the tank end: is it fully open?', points: above(c.pressure), out: starved || (c.pressure && !above(c.pressure)) },
    { say: rubbers(install, today), points: above(c.drive), out: starved },
  ];
}

/**
 * What the readings say, in words, and where to look. Readings: SI by quantity, {si, u}.
 * Nothing is said that the readings' own uncertainty may explain.
 */
export function judge(install, site, table, readings, today) {
  const of = (q) => readings[q] && { si: readings[q].si, u: readings[q].u ?? Math.abs(readings[q].si) * SHARE[q] };
  const r = { drive: of('DRIVE_FLOW'), waste: of('WASTE_FLOW'), delivered: of('DELIVERED_FLOW'), beat: of('BEAT_RATE'), pressure: of('DELIVERY_PRESSURE'), charge: of('PRE_CHARGE'), fall: of('FALL') };
  if (r.delivered?.si === 0 && r.beat?.si > 0) {
    return { zero: true, look: [], said: ['Nothing arrives, but the pump beats. Is the float or a branch shut at the tank end? A pump beating against a shut line can reach its dead head: do not open a joint.'] };
  }
  const c = compare(install, table, r);
  const less = below(c.flow) || below(c.table);
  // the pump makes of its drive water what it always made
  const well = c.part ? !below(c.part) : !!c.table && !below(c.table);
  const lacks = [below(c.drive) && 'drive water', below(c.fall) && 'fall'].filter(Boolean);
  const starved = less && lacks.length > 0 && well && !below(c.table);
  const said = flows(c, r);
  if (starved) {
    said.push(`The pump is doing as well as ever: less arrives because it gets less ${lacks.join(' and less ')}.`);
  }
  if (less && !r.drive) {
    said.push('Measure the drive flow: it tells a pump that is starved from one that is worn.');
  }
  const look = places(install, c, r, today, starved).filter((x) => x.points || (less && !x.out)).map((x) => x.say);
  if (!look.length && (c.flow || c.table) && !said.some((s) => /below|above/.test(s))) {
    said.push('As usual, within what such readings can tell.');
  }
  const fall = r.fall?.si || install.fall;
  const efficiency = r.drive?.si > 0 && r.delivered && fall && install.lift ? dAubuisson(r.drive.si, r.delivered.si, fall, install.lift) : null;
  if (efficiency !== null) {
    said.push(efficiency > 1 ? 'More is delivered than falling water can lift: read both flows again.' : `Efficiency (D'Aubuisson) ${(100 * efficiency).toFixed(0)} %${install.baseline?.drive && install.baseline?.delivered ? `, at the baseline ${(100 * dAubuisson(install.baseline.drive, install.baseline.delivered, install.fall, install.lift)).toFixed(0)} %` : ''}.`);
  }
  return { zero: false, said, look, off: [(c.flow?.clear || c.table?.clear) && 'delivered flow', c.drive?.clear && 'drive flow', c.beat?.clear && 'beats', c.fall?.clear && 'fall', c.charge?.clear && 'pre-charge', c.pressure?.clear && 'delivery pressure'].filter(Boolean) };
}
