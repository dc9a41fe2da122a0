// Runs the built benchmarks and prints figures beside each other:  node tests/bench/table.mjs NATIVE_FOLDER WASM_FOLDER
import { execFileSync } from 'node:child_process'
import { join } from 'node:path'

const [native, wasm] = process.argv.slice(2)
const json = (command, args = []) => JSON.parse(execFileSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 20 })).filter(Boolean)
const ms = (us) => (us >= 100 ? `${(us / 1000).toFixed(2)} ms` : `${us.toFixed(2)} us`)
const times = (a, b) => `${(a / b).toPrecision(3)}x`
const print = (rows) => {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)))
  for (const row of rows) console.log('  ' + row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join('  '))
  console.log()
}

const peers = json(join(native, 'bench_peers'))
console.log('One equilibrium, three guys, one rope, mean of all 14 cases, each from the head as rigged')
print([['by', 'time', 'over ours', 'head apart'], ...peers.map((p) => [p.peer, ms(p.us), times(p.us, peers[0].us), `${p.apart_mm.toFixed(6)} mm`])])

const both = (name) => [json(join(native, name)), json(process.execPath, ['--no-experimental-fetch', join(wasm, `${name}_wasm.js`)])]
const [ours, inNode] = both('bench_verdict')
const label = { equilibrium: () => 'one equilibrium', guys: (n) => `full verdict, ${n} guys, 1 rope`, ropes: (n) => `full verdict, 4 guys, ${n} rope${n > 1 ? 's' : ''}`, points: (n) => `first ${n} points of the errors, 3 guys` }
console.log('Native and wasm (Node)')
print([
  ['what', 'cases', 'points', 'native', 'wasm', 'wasm/native', 'native per case and point'],
  ...ours.map((r, i) => [label[r.what](r.n), `${r.cases}`, `${r.points}`, ms(r.us), ms(inNode[i].us), times(inNode[i].us, r.us), ms(r.us / r.cases / r.points)]),
])

const [advice, adviceInNode] = both('bench_advice')
console.log(`Advice for ${advice[0].plans} plans that are NO-GO, each with as many anchors found as it may have`)
print([
  ['what', 'native median', 'worst', 'wasm median', 'worst', 'wasm/native'],
  ...advice.map((r, i) => [r.what, ms(r.median_us), ms(r.worst_us), ms(adviceInNode[i].median_us), ms(adviceInNode[i].worst_us), times(adviceInNode[i].median_us, r.median_us)]),
])
