// The sizing library's formulas that a technician needs on the spot. Twins of the Java ones; a test holds both to the same numbers.
const G = 9.80665;
export const L_MIN = 1e-3 / 60;
export const BAR = 1e5;

/** kg/m3, t in degC (Kell 1975). */
export function density(t) {
  const top = 999.83952
    + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return top / (1 + 16.879850e-3 * t);
}

/** Absolute air pressure, Pa (ISO 2533). */
export const air = (altitude) => 101325 * (1 - 0.0065 * altitude / 288.15) ** 5.25588;

/** Pa under a head of water. */
export const pressureOf = (head, t = 10) => density(t) * G * head;

export const dAubuisson = (drive, delivered, fall, lift) => (drive === 0 ? 0 : delivered * lift / (drive * fall));
export const rankine = (drive, delivered, fall, lift) => (drive === 0 ? 0 : delivered * (lift - fall) / ((drive - delivered) * fall));

/** Pre-charge for a bladder vessel, Pa, by the usual rule: half a bar less for 20 to 80 m, else 0.85 of static. */
export function preCharge(lift, t, rating) {
  if (!(lift >= 5 && lift <= 200)) {
    return { charge: null, why: `The lift of ${lift} m is outside the 5 to 200 m this rule covers: ask the engineer.` };
  }
  const still = pressureOf(lift, t);
  const usual = lift >= 20 && lift <= 80;
  const charge = usual ? still - 0.5 * BAR : still * 0.85;
  if (Math.max(still, charge) > rating) {
    return { charge: null, why: `The vessel would see ${(Math.max(still, charge) / BAR).toFixed(2)} bar and is rated ${(rating / BAR).toFixed(2)} bar: ask the engineer.` };
  }
  return { charge, why: usual ? 'static delivery pressure less 0.50 bar' : '0.85 of the static delivery pressure' };
}

/** What a charge reads at another gas temperature, Pa gauge. */
export const atTemperature = (gauge, readAt, wanted, airPa) => (gauge + airPa) * ((wanted + 273.15) / (readAt + 273.15)) - airPa;

/** What to set where the air is another, Pa gauge. */
export const toSetElsewhere = (wanted, siteAir, otherAir) => wanted + siteAir - otherAir;

/** Percent off, its standard uncertainty, and whether that is more than the uncertainties explain. */
export function deviation(reading, u, expected, uExpected) {
  const ratio = reading / expected;
  const percent = 100 * (ratio - 1);
  const own = 100 * Math.hypot(u / expected, ratio * uExpected / expected);
  return { percent, u: own, clear: Math.abs(percent) > 2 * own };
}

/** Mean flow of several runs with a bucket, and the mean's standard uncertainty, in the runs' unit. */
export function runs(litres, seconds) {
  const flows = seconds.map((s) => litres / s * 60);
  const mean = flows.reduce((a, b) => a + b, 0) / flows.length;
  const spread = flows.length < 2 ? null : Math.sqrt(flows.reduce((a, f) => a + (f - mean) ** 2, 0) / (flows.length - 1));
  return { mean, spread, u: spread === null ? mean * 0.05 : Math.max(spread / Math.sqrt(flows.length), mean * 0.01) };
}

/** Delivered flow and its uncertainty from the table the server made, straight between the rows; nothing outside them. */
export function expectedAt(table, drive) {
  for (let i = 1; table && i < table.length; i++) {
    const [a, b] = [table[i - 1], table[i]];
    if (drive >= a[0] && drive <= b[0]) {
      const w = (drive - a[0]) / (b[0] - a[0]);
      return { delivered: a[1] + w * (b[1] - a[1]), u: a[2] + w * (b[2] - a[2]), running: a[3] + w * (b[3] - a[3]) };
    }
  }
  return null;
}

/** Metres and degrees from north, on a sphere of 6371 km. */
export function way(from, to) {
  const rad = Math.PI / 180;
  const [a, b, l] = [from.lat * rad, to.lat * rad, (to.lon - from.lon) * rad];
  const c = Math.sin((b - a) / 2) ** 2 + Math.cos(a) * Math.cos(b) * Math.sin(l / 2) ** 2;
  const bearing = Math.atan2(Math.sin(l) * Math.cos(b), Math.cos(a) * Math.sin(b) - Math.sin(a) * Math.cos(b) * Math.cos(l)) / rad;
  return { metres: 2 * 6371000 * Math.asin(Math.sqrt(c)), bearing: (bearing + 360) % 360 };
}
export const compass = (bearing) => ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'][Math.round(bearing / 45) % 8];
