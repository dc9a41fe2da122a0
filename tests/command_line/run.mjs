// Runs the native program as a person or a script would: node run.mjs PROGRAM
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const program = process.argv[2];
if (!program) {
  console.error('usage: node run.mjs PROGRAM');
  process.exit(2);
}
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const example = join(root, 'assets/examples/spillway-bench.json');
const threeGuys = join(root, 'tests/plans/three_guys.json');
const folder = mkdtempSync(join(tmpdir(), 'guywright-'));
let passed = 0, failed = 0;

function test(name, body) {
  const wrong = [];
  const expect = (kept, what) => { if (!kept) wrong.push(what); };
  try { body(expect); } catch (error) { wrong.push(String(error)); }
  if (wrong.length === 0) { passed += 1; return; }
  failed += 1;
  console.log(`FAILED ${name}\n  ${wrong.join('\n  ')}`);
}

function run(args, input) {
  const { status, signal, stdout, stderr } = spawnSync(program, args, { input: input ?? '', encoding: 'utf8', maxBuffer: 1 << 26 });
  return { status, signal, stdout, stderr };
}

const plan = () => JSON.parse(readFileSync(example, 'utf8'));
const check = (value, ...more) => run(['check', '-', ...more], typeof value === 'string' || Buffer.isBuffer(value) ? value : JSON.stringify(value));

/// Refused: exit 2, a reason on standard error, nothing that could be taken for a verdict on standard output.
function refused(expect, result, ...parts) {
  expect(result.status === 2, `exit ${result.status} ${result.signal ?? ''}, wanted 2`);
  expect(result.stdout === '', `standard output: ${result.stdout.slice(0, 80)}`);
  for (const part of parts) expect(result.stderr.includes(part), `no "${part}" in: ${result.stderr.slice(0, 400)}`);
}

test('GO: exit 0, the verdict is the first word', expect => {
  const r = run(['check', example]);
  expect(r.status === 0, `exit ${r.status}`);
  expect(/^GO {3}check code [2-9A-HJ-NP-Z]{6}\n/.test(r.stdout), r.stdout.slice(0, 60));
  expect(r.stderr === '', r.stderr);
});

test('--imperial: the same verdict and code, in ft and lbf; the report stays in metres and kN', expect => {
  const metric = run(['check', example]), imperial = run(['check', example, '--imperial']);
  expect(imperial.status === 0, `exit ${imperial.status}`);
  expect(imperial.stdout.split('\n')[0] === metric.stdout.split('\n')[0], imperial.stdout.split('\n')[0]);
  expect(/ lbf/.test(imperial.stdout) && !/ kN/.test(imperial.stdout), 'kN on an imperial card');
  const kN = metric.stdout.match(/carries ([\d.]+) kN/), lbf = imperial.stdout.match(/carries ([\d.]+) lbf/);
  expect(Math.abs(lbf[1] * 0.0044482216152605 - kN[1]) < 0.006, `${kN[1]} kN and ${lbf[1]} lbf`);
  expect(run(['check', example, '--imperial', '--json']).stdout === run(['check', example, '--json']).stdout, 'another report');
});

test('the report says what the head saves at the edge', expect => {
  const saving = JSON.parse(run(['check', example, '--json']).stdout).edge_saving[0];
  expect(saving.rope === 'main', saving.rope);
  const { rope_friction, face_deg } = plan().edge;
  expect(Math.abs(saving.raising_factor_on_ground - Math.exp(rope_friction * Math.min(face_deg, 90) * Math.PI / 180)) < 1e-9, saving.raising_factor_on_ground);
  expect(saving.raising_factor < saving.raising_factor_on_ground && saving.raising_factor >= 1, saving.raising_factor);
});

test('--french: the same verdict and figures in French, with decimal commas', expect => {
  const english = run(['check', example]), french = run(['check', example, '--french']);
  expect(french.status === english.status, `exit ${french.status}`);
  expect(french.stdout.startsWith('GO   code de contr\u00F4le '), french.stdout.slice(0, 40));
  const figures = text => text.match(/\d+[.,]\d+/g).map(n => n.replace(',', '.')).join(' ');
  expect(figures(french.stdout) === figures(english.stdout), 'other figures');
  expect(!/\d\.\d/.test(french.stdout), 'a decimal point');
});

test('catalogue: published strengths, each with its source', expect => {
  const r = run(['catalogue']);
  expect(r.status === 0, `exit ${r.status}`);
  const rows = r.stdout.trim().split('\n');
  expect(rows.length > 10, `${rows.length} rows`);
  for (const row of rows) expect(/ kN .*(READ|MEMORY)/.test(row), row);
  expect(run(['catalogue', '--imperial']).stdout.includes(' lbf '), 'no lbf');
  refused(expect, run(['catalogue', example]), 'guywright-catalogue');
  const own = join(folder, 'own.json');
  writeFileSync(own, JSON.stringify({ format: 'guywright-catalogue', version: 1, cords: [{ name: 'tape 25 mm', strength_kN: 15, EA_kN: 60, source: 'its label' }] }));
  expect(/tape 25 mm +15\.00 kN +its label/.test(run(['catalogue', own]).stdout), 'no own cord');
  writeFileSync(own, JSON.stringify({ format: 'guywright-catalogue', version: 1, cords: [{ name: 'tape', strength_kN: -1, EA_kN: 60 }] }));
  refused(expect, run(['catalogue', own]), 'cords[0].strength_kN', '-1', '0.1 to 1000');
});

test('NO-GO: exit 1, the reason in words', expect => {
  const r = run(['check', threeGuys]);
  expect(r.status === 1, `exit ${r.status}`);
  expect(r.stdout.startsWith('NO-GO '), r.stdout.slice(0, 60));
  expect(r.stdout.includes('What governs\n'), 'no governing check');
});

/// The plan with every edit of an advice made, as a program would that knows the plan file and nothing else.
function edited(p, edits) {
  const out = structuredClone(p);
  for (const { path, to, add } of edits) {
    const keys = path.split(/[.[\]]+/).filter(key => key !== '');
    const last = add === undefined ? keys.pop() : undefined;
    const at = keys.reduce((node, key) => node[key], out);
    if (add === undefined) at[last] = to;
    else at.push(add);
  }
  return out;
}

test('NO-GO: every advice of the report, its edits made to the file, is GO; the card tells the first', expect => {
  const p = plan();
  p.frame.lean_deg = 4;
  const r = check(p, '--json');
  expect(r.status === 1, `exit ${r.status}`);
  const { advice } = JSON.parse(r.stdout);
  expect(advice.length > 2, `${advice.length} advices`);
  for (const a of advice) {
    const mended = check(edited(p, a.edits), '--json');
    expect(mended.status === 0, `${a.what}: exit ${mended.status}`);
    if (a.edits.length === 1 && a.edits[0].add === undefined) expect(a.input === a.edits[0].path && a.to === a.edits[0].to, a.input);
  }
  expect(advice.every((a, i) => i === 0 || advice[i - 1].effort <= a.effort), 'not in order of effort');
  const words = check(p).stdout.replace(/\s+/g, ' ');
  expect(words.includes('What would change it') && words.includes(advice[0].what), 'the card does not tell it');
});

test('a guy too near the leg is NO-GO and says so', expect => {
  const p = plan();
  p.guys[0].inclination_deg = 75;
  const r = check(p, '--json');
  expect(r.status === 1, `exit ${r.status}`);
  const row = JSON.parse(r.stdout).checks.find(c => c.id === 'guy_angle' && c.subject === p.guys[0].name);
  expect(row?.status === 'fail' && row.value < 30, JSON.stringify(row));
});

test('the card fits 100 columns', expect => {
  for (const file of [example, threeGuys]) {
    const lines = run(['check', file]).stdout.split('\n');
    expect(lines.length > 40, `${lines.length} lines`);
    for (const line of lines) expect([...line].length <= 100, line);
  }
});

test('standard input gives what the file gives', expect => {
  const text = readFileSync(example, 'utf8');
  const { stdout } = check(text);
  expect(stdout.startsWith('GO ') && stdout === run(['check', example]).stdout, 'they differ');
});

test('the same plan gives the same bytes every time', expect => {
  for (const more of [[], ['--json']])
    expect(new Set(Array.from({ length: 5 }, () => run(['check', threeGuys, ...more]).stdout)).size === 1, `they differ ${more}`);
  expect(run(['check', threeGuys]).stdout.length > 1000, 'no card');
});

test('--json: a report that parses, before or after the file', expect => {
  for (const args of [['check', example, '--json'], ['check', '--json', example], ['--json', 'check', example]]) {
    const r = run(args);
    expect(r.status === 0, `exit ${r.status}`);
    const report = JSON.parse(r.stdout);
    expect(report.verdict === 'GO', report.verdict);
    expect(report.cases.length >= 8, `${report.cases.length} cases`);
    for (const c of report.cases) expect(c.stable === true && c.guys.length === 4, c.name);
    for (const s of ['rigged', 'loaded']) expect(report.states[s].head_m.length === 3, s);
    expect(!JSON.stringify(report).includes('null'), 'a number is missing');
  }
});

test('--json: NO-GO is exit 1 with a failed check', expect => {
  const r = run(['check', threeGuys, '--json']);
  const report = JSON.parse(r.stdout);
  expect(r.status === 1 && report.verdict === 'NO-GO', `${r.status} ${report.verdict}`);
  expect(report.checks.some(c => c.status === 'fail'), 'no failed check');
});

test('the check code is the same on the card and in the report, and changes with the plan', expect => {
  const card = run(['check', example]).stdout.match(/check code (\w+)/)[1];
  expect(JSON.parse(run(['check', example, '--json']).stdout).check_code === card, 'they differ');
  const p = plan();
  p.guys[1].bearing_deg += 0.001;
  expect(!check(p).stdout.includes(card), 'unchanged');
});

test('what nobody has measured: exit 3, NOT CHECKED, never GO', expect => {
  const p = plan();
  p.not_measured = ['guys[1].inclination_deg', 'ropes[0].load_kg'];
  const r = check(p);
  expect(r.status === 3, `exit ${r.status}`);
  expect(r.stdout.startsWith('NOT CHECKED '), r.stdout.slice(0, 60));
  for (const path of p.not_measured) expect(r.stdout.includes(path), path);
  const j = check(p, '--json');
  expect(j.status === 3 && JSON.parse(j.stdout).verdict === 'NOT CHECKED', j.stdout.slice(0, 80));
});

test('each wrong input: exit 2, one line with path, value and range', expect => {
  const rows = [
    [p => { p.guys[1].inclination_deg = 95; }, 'guys[1].inclination_deg is 95; allowed: 2 to 88 deg\n'],
    [p => { p.edge.face_deg = 'steep'; }, 'edge.face_deg is "steep" (text); allowed: a number, 5 to 120 deg\n'],
    [p => { delete p.frame.lean_deg; }, 'frame.lean_deg is missing; allowed: a number, -60 to 60 deg\n'],
    [p => { p.frame.leen_deg = 5; }, 'frame.leen_deg is not a key of this format; allowed: only known keys; did you mean lean_deg?\n'],
    [p => { p.guys = Array(1000).fill({}); }, 'guys is a list of 1000 entries; allowed: a list of 0 to 8 entries\n'],
    [p => { p.version = 2; }, 'version is 2; allowed: 1; this program is older than the plan'],
  ];
  for (const [spoil, line] of rows) {
    const p = plan();
    spoil(p);
    const r = check(p);
    refused(expect, r, line);
    expect(r.stderr.split('\n').length === 2, `more than one line: ${r.stderr}`);
  }
});

test('all wrong inputs at once', expect => {
  const p = plan();
  p.edge.face_deg = 500;
  p.actions.dynamic_factor = 0;
  delete p.guys[2].name;
  const r = check(p);
  refused(expect, r, 'edge.face_deg', 'actions.dynamic_factor', 'guys[2].name');
  expect(r.stderr.trim().split('\n').length === 3, r.stderr);
});

test('--json with wrong input: exit 2, the reasons also as a report', expect => {
  const p = plan();
  p.edge.face_deg = 500;
  const r = check(p, '--json');
  expect(r.status === 2, `exit ${r.status}`);
  expect(r.stderr.startsWith('edge.face_deg is 500'), r.stderr);
  const report = JSON.parse(r.stdout);
  expect(report.verdict === 'NOT CHECKED' && report.faults[0].path === 'edge.face_deg', r.stdout);
});

test('an A-frame whose legs do not meet is refused with a reason', expect => {
  const p = plan();
  const two = list => [list[0], list[0]];
  p.frame.kind = 'A-frame';
  for (const key of ['leg_length_m', 'leg_EA_kN', 'leg_rating_kN', 'leg_mass_kg', 'foot_held_down', 'pole_diameter_mm', 'pole_wall_mm', 'pole_E_GPa']) p.frame[key] = two(p.frame[key]);
  p.frame.foot_m = [[-2, 3, 0], [-2, -3, 0]];
  p.feet = two(p.feet);
  refused(expect, check(p), 'frame.leg_length_m', 'legs that meet');
});

test('NaN, Infinity and 1e999: exit 2 with line and column', expect => {
  for (const literal of ['NaN', 'Infinity', '-Infinity', '1e999']) {
    const text = readFileSync(example, 'utf8').replace('"face_deg": 85', `"face_deg": ${literal}`);
    expect(text.includes(literal), 'not replaced');
    refused(expect, check(text), 'edge.face_deg is not JSON', literal, 'line 7, column 17');
  }
});

test('hostile input: exit 2, no crash, no flood', expect => {
  const text = readFileSync(example, 'utf8');
  const hostile = {
    empty: '',
    blank: ' \n',
    cut: text.slice(0, 900),
    'binary junk': Buffer.from(Array.from({ length: 4096 }, (_, i) => (i * 37 + (i >> 3)) & 255)),
    'zero bytes': Buffer.alloc(5000),
    'not UTF-8': Buffer.concat([Buffer.from('{"title":"'), Buffer.from([0xff, 0xfe]), Buffer.from('"}')]),
    'zero after the plan': Buffer.concat([Buffer.from(text), Buffer.alloc(1)]),
    nested: '['.repeat(200000),
    'too long': text + ' '.repeat(300000),
    'very many guys': text.replace('"guys": [', `"guys": [${'{},'.repeat(60000)}`),
    'very many keys': text.replace('"title"', `${Array.from({ length: 15000 }, (_, i) => `"k${i}":0,`).join('')}"title"`),
    'escape codes': text.replace('"title"', '"\\u001b[2Jkey":"\\u001b[31m","title"'),
  };
  for (const [name, bytes] of Object.entries(hostile)) {
    const r = check(bytes);
    const wrong = [];
    refused((kept, what) => { if (!kept) wrong.push(what); }, r);
    expect(wrong.length === 0, `${name}: ${wrong}`);
    expect(r.stderr.length > 10 && r.stderr.length < 20000, `${name}: ${r.stderr.length} characters of reasons`);
    expect(!/[\x00-\x09\x0b-\x1f\x7f]/.test(r.stderr), `${name}: control characters in the reasons`);
  }
  expect(check(hostile['very many keys']).stderr.endsWith('and 14900 more\n'), 'the rest is not counted');
});

test('no file, a folder, no permission to be a plan: exit 2 with the name', expect => {
  refused(expect, run(['check', join(folder, 'nothing.json')]), 'nothing.json', 'No such file');
  refused(expect, run(['check', folder]), folder);
  writeFileSync(join(folder, 'empty.json'), '');
  refused(expect, run(['check', join(folder, 'empty.json')]), 'plan is empty');
});

test('an endless file is not read to its end', expect => refused(expect, run(['check', '/dev/zero']), 'plan'));

test('wrong words on the command line: exit 2 and how it is used', expect => {
  for (const args of [[], ['check'], ['look', example], ['check', example, example], ['check', example, '--yaml'], ['--json'], [example]])
    refused(expect, run(args), 'guywright check PLAN.json');
});

test('--help: exit 0, on standard output', expect => {
  for (const word of ['--help', '-h']) {
    const r = run([word]);
    expect(r.status === 0 && r.stdout.includes('guywright check PLAN.json') && r.stderr === '', JSON.stringify(r));
  }
});

test('share and unshare: the plan comes back byte for byte, and what is damaged is refused', expect => {
  const shared = run(['share', example]);
  expect(shared.status === 0 && /^GUYW[0-9A-Z$*.:-]+\n$/.test(shared.stdout), JSON.stringify(shared).slice(0, 200));
  const back = run(['unshare', '-'], shared.stdout);
  expect(back.status === 0, `exit ${back.status}: ${back.stderr}`);
  expect(run(['share', '-'], back.stdout).stdout === shared.stdout, 'another code');
  expect(JSON.stringify(JSON.parse(back.stdout).guys) === JSON.stringify(plan().guys), 'other guys');
  refused(expect, run(['unshare', '-'], shared.stdout.trim().slice(0, -1)), 'damaged');
  refused(expect, run(['unshare', '-', '--french'], 'WIFI:'), 'Rien n');
  refused(expect, run(['share', '-'], '{}'), 'missing');
});

test('unshare: several codes in any order; with one missing it says which', expect => {
  let state = 1;
  const letter = () => String.fromCharCode(33 + ((state = (state * 1103515245 + 12345) % 2147483648) >> 8) % 90);   // nothing to be shortened
  const large = { ...plan(), note: Array.from({ length: 1900 }, letter).join('') };
  const codes = run(['share', '-'], JSON.stringify(large)).stdout.trim().split('\n');
  expect(codes.length > 1, `${codes.length} codes`);
  const back = run(['unshare', '-'], codes.reverse().join('\n'));
  expect(back.status === 0 && JSON.parse(back.stdout).note === large.note, `exit ${back.status}: ${back.stderr}`);
  refused(expect, run(['unshare', '-'], codes.slice(0, -1).join('\n')), 'Missing: 1.');
});

test('a verdict that cannot be written is not GO', expect => {
  const { status } = spawnSync('sh', ['-c', '"$0" check "$1" > /dev/full', program, example]);
  expect(status === 3, `exit ${status}`);
});

rmSync(folder, { recursive: true });
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
