// Makes pipe-flow-cases.csv with the public-domain US EPA network engine (version 2.2) as carried by npm.
//
//   mkdir scratch && cd scratch && npm init -y && npm i epanet-js@0.9.0
//   cp <this file> . && node pipe-flow-cases.mjs > pipe-flow-cases.csv
//
// Every row is one pipe of a solved network: its flow and head loss as the engine found them. The engine's friction law is
// 64/Re below Re 2000, Swamee and Jain's explicit formula from 4000, Dunlop's cubic between; its gravity is 32.2 ft/s2.
import { Project, Workspace, LinkProperty, NodeProperty } from "epanet-js";

const ws = new Workspace();
if (ws.loadModule) await ws.loadModule();

// Kell 1975 density and IAPWS SR6-08 viscosity, written out here so that the table does not lean on the tested code
const density = (t) =>
  (999.83952 + 16.945176 * t - 7.9870401e-3 * t ** 2 - 46.170461e-6 * t ** 3 + 105.56302e-9 * t ** 4 - 280.54253e-12 * t ** 5) /
  (1 + 16.87985e-3 * t);
const viscosity = (t) => {
  const r = (t + 273.15) / 300;
  return 1e-6 * (280.68 * r ** -1.9 + 511.45 * r ** -7.7 + 61.131 * r ** -19.6 + 0.45903 * r ** -40);
};
const nu = (t) => viscosity(t) / density(t);

const PE = { name: "PE100", rough: 0.01, bores: [26.0, 32.6, 40.8, 51.4] };
const STEEL = { name: "steel", rough: 0.15, bores: [27.3, 36.0, 41.9, 53.1] };
const rows = [];

function solve(kind, t, reservoirs, junctions, pipes) {
  const inp = [
    "[RESERVOIRS]", ...reservoirs.map(([id, head]) => `${id} ${head}`),
    "[JUNCTIONS]", ...junctions.map(([id, level, demand]) => `${id} ${level} ${demand}`),
    "[PIPES]", ...pipes.map((p) => `${p.id} ${p.from} ${p.to} ${p.length} ${p.bore} ${p.rough} ${p.k ?? 0} Open`),
    "[OPTIONS]", "UNITS LPS", "HEADLOSS D-W", `VISCOSITY ${nu(t)}`, "TRIALS 500", "ACCURACY 1e-8",
    "[TIMES]", "DURATION 0", "[END]", "",
  ].join("\n");
  ws.writeFile("net.inp", inp);
  const model = new Project(ws);
  model.open("net.inp", "report.rpt", "out.bin");
  model.solveH();
  for (const p of pipes) {
    const link = model.getLinkIndex(p.id);
    const flow = model.getLinkValue(link, LinkProperty.Flow);
    const from = model.getNodeValue(model.getNodeIndex(p.from), NodeProperty.Head);
    const to = model.getNodeValue(model.getNodeIndex(p.to), NodeProperty.Head);
    rows.push([
      `${kind}-${rows.length + 1}`, kind, p.id, p.material, p.bore, p.rough, p.length, p.k ?? 0, t,
      nu(t).toExponential(9), flow.toPrecision(9), (from - to).toPrecision(9),
    ]);
  }
  model.close();
}

const pipe = (id, from, to, material, bore, length, k) => ({ id, from, to, material: material.name, rough: material.rough, bore, length, k });

// single pipes from a reservoir to a demand
for (const material of [PE, STEEL])
  for (const bore of material.bores)
    for (const t of [5, 15, 30])
      for (const q of [0.2, 0.35, 0.6, 1.0, 1.6, 2.5, 3.5, 5.0]) {
        if (q / 1000 / ((Math.PI / 4) * (bore / 1000) ** 2) > 5) continue;
        solve("single", t, [["R", 1000]], [["J", 0, q]], [pipe("P", "R", "J", material, bore, 200, q === 1.0 ? 5 : 0)]);
      }
// slow flow: laminar and the transition
for (const q of [0.01, 0.02, 0.03, 0.05, 0.08, 0.1, 0.12, 0.15])
  for (const t of [5, 15, 30]) solve("slow", t, [["R", 1000]], [["J", 0, q]], [pipe("P", "R", "J", PE, 40.8, 2000, 0)]);
// a battery: a feed pipe to a drive tank's manifold, a drive pipe for each of three rams
for (const q of [0.4, 0.9, 1.5])
  for (const t of [5, 15, 30])
    solve("battery-drive", t, [["R", 100]], [["M", 90, 0], ["A", 88, q], ["B", 88, q * 0.8], ["C", 88, q * 1.2]], [
      pipe("feed", "R", "M", PE, 102.2, 60, 2),
      pipe("a", "M", "A", STEEL, 53.1, 12, 1.5),
      pipe("b", "M", "B", STEEL, 41.9, 14, 1.5),
      pipe("c", "M", "C", STEEL, 53.1, 16, 1.5),
    ]);
// the same battery's delivery: three branches join a common line that leaves some water at a trough on its way
for (const q of [0.08, 0.15, 0.3])
  for (const t of [5, 15, 30])
    solve("battery-delivery", t, [["T", 60]], [["A", 0, -q], ["B", 0, -q * 0.8], ["C", 0, -q * 1.2], ["M", 0, 0], ["S", 30, q]], [
      pipe("a", "A", "M", STEEL, 27.3, 8, 3),
      pipe("b", "B", "M", STEEL, 27.3, 6, 3),
      pipe("c", "C", "M", STEEL, 27.3, 9, 3),
      pipe("main1", "M", "S", PE, 40.8, 400, 0),
      pipe("main2", "S", "T", PE, 32.6, 500, 0),
    ]);
// heads fixed at all ends, so that the engine has to find the flows: a feed that splits to three levels
for (const t of [5, 15, 30])
  solve("battery-split", t, [["R", 100], ["A", 92], ["B", 93], ["C", 90]], [["M", 85, 0]], [
    pipe("feed", "R", "M", PE, 73.6, 60, 2),
    pipe("a", "M", "A", STEEL, 36.0, 40, 1),
    pipe("b", "M", "B", STEEL, 36.0, 30, 1),
    pipe("c", "M", "C", STEEL, 27.3, 60, 1),
  ]);

console.log("case,kind,pipe,material,bore_mm,roughness_mm,length_m,fittings_k,water_c,nu_m2_s,flow_l_s,headloss_m");
for (const row of rows) console.log(row.join(","));
