// The second check: measure again without seeing the first numbers, compare, go through the list, sign. web/second_state.js is what is in hand.

import { PARTS, clockOf, timeOf } from './log_format.js';
import { element } from './element.js';
import { key, largeCheckCode } from './page.js';
import { fill } from './words.js';
import * as state from './second_state.js';

const LOOK_AGAIN_MS = 200;
const LET_DRAW_MS = 30;
const LONGEST_NUMBER = 40;
const KIND = 'second';

const message = (text = '') => {
  const made = element('p', { className: 'message', textContent: text, hidden: text === '' });
  made.setAttribute('role', 'alert');
  return made;
};

const say = (line, text) => {
  line.textContent = text;
  line.hidden = text === '';
};

/** A signature as it is read, here and on the rig sheet: the date and time are not torn apart. */
export function signature(words, { name, role, time }, kind = 'span') {
  const [before, after] = fill(words.signedBy, { name, role }).split('{time}');
  return element(kind, {}, before, element('span', { className: 'time', textContent: clockOf(time) }), after);
}

export class SecondCheck {
  #page;
  #program;
  #log;
  #act;
  #words;
  #asked;
  #draft;
  #compared; // while nothing was entered since
  #turn = 0; // counts the pages shown: an older one that waits sees that it is over

  /**
   * `program`: { second(), entries(compare, typed), report() }, see wasm/app/second_data.hpp. `act`: { blind(on), planId(), app(), saveLog(), openSheet(), openLog() }:
   * blind() keeps the first numbers out of the page's other elements, app() resolves with the version.
   */
  constructor(page, program, log, act) {
    this.#page = page;
    this.#program = program;
    this.#log = log;
    this.#act = act;
  }

  async show() {
    const turn = ++this.#turn;
    this.#act.blind(true); // before the first element of the page is made
    this.#asked = this.#program.second();
    this.#words = this.#page.open({ kind: KIND, language: this.#asked.language, title: 'secondTitle', leave: () => this.#left(turn) });
    this.#keys([]);
    const status = element('p', { textContent: this.#words.secondWait });
    status.setAttribute('role', 'status');
    this.#page.body.append(status);
    for (; this.#asked.checking && turn === this.#turn; this.#asked = this.#program.second()) await new Promise((again) => { setTimeout(again, LOOK_AGAIN_MS); });
    if (turn !== this.#turn) return;
    const { text, check_code: code } = this.#asked;
    const standing = await this.#log.standingFor(text);
    const found = await this.#log.draft(code, text);
    const fallen = await this.#log.fallenFor(this.#act.planId());
    if (turn !== this.#turn) return;
    this.#draft = state.resumed(found, text, Date.now());
    this.#compared = undefined;
    if (standing) this.#showSigned(standing.entry, '');
    else if (this.#asked.measurements.length === 0) status.textContent = this.#words.nothingToMeasure;
    else this.#showBlind(fallen?.entry);
  }

  #left(turn) {
    if (turn !== this.#turn) return; // shown anew
    ++this.#turn;
    this.#act.blind(false);
  }

  #keys(keys) {
    this.#page.setKeys(this.#asked.language, keys);
  }

  #keepDraft(draft) {
    this.#draft = draft;
    this.#log.keepDraft(this.#asked.check_code, draft);
  }

  // --- step 1: blind ---

  #showBlind(fallen) {
    this.#act.blind(true);
    const { title, measurements, check_code: code } = this.#asked;
    const fell = fallen ? message(fill(this.#words.fallen, { names: fallen.signatures.map(({ name }) => name).join(', '), time: clockOf(fallen.signatures[1].time) })) : '';
    const below = message();
    this.#page.step(fill(this.#words.blindOf, { title: title || this.#words.noTitle }), largeCheckCode(this.#words.checkCodeLabel, code), fell, element('p', { textContent: this.#words.blindHow }),
      ...measurements.map((asked, i) => this.#field(asked, i)), below);
    this.#keys([key('compare', this.#words.compareKey, () => this.#compare(below), 'action')]);
  }

  /** One number. The device's own keypad has no minus on some: there a key of its own. */
  #field(asked, i) {
    const { path, label, how, unit, allowed } = asked;
    const id = `second-${i}`;
    const input = element('input', { id, type: 'text', inputMode: 'decimal', autocomplete: 'off', enterKeyHint: 'next', maxLength: LONGEST_NUMBER, value: this.#draft.typed[path] ?? '', dataset: { path } });
    input.setAttribute('aria-describedby', `${id}-how ${id}-refusal`);
    const refusal = element('p', { className: 'refusal', id: `${id}-refusal`, hidden: true });
    refusal.setAttribute('role', 'alert');
    const entered = () => {
      this.#compared = undefined;
      this.#keepDraft(state.withEntry(this.#draft, path, input.value));
      if (!refusal.hidden) this.#judge(path, input, refusal);
    };
    input.addEventListener('input', entered);
    input.addEventListener('change', () => input.value.trim() !== '' && this.#judge(path, input, refusal));
    input.addEventListener('keydown', (event) => event.key === 'Enter' && this.#next(i));
    const sign = key(`sign ${path}`, '\u00B1', () => {
      input.value = /^[-\u2212]/.test(input.value) ? input.value.slice(1) : `-${input.value}`;
      entered();
      input.focus();
    });
    sign.setAttribute('aria-label', fill(this.#words.named, { what: this.#words.changeSign, is: label }));
    const line = element('div', { className: 'line' }, ...(asked.signed ? [sign] : []), input, element('span', { className: 'unit', textContent: unit }));
    return element('div', { className: 'measure' }, element('label', { htmlFor: id, textContent: label }), element('p', { id: `${id}-how`, textContent: [how, `${allowed}.`].filter(Boolean).join(' ') }), line, refusal);
  }

  #next(i) {
    const next = document.getElementById(`second-${i + 1}`) ?? document.querySelector('#page button[data-id="compare"]');
    next.focus();
    next.scrollIntoView({ block: 'center' });
  }

  /** Says what is wrong with one entry, as soon as it is left. */
  #judge(path, input, refusal) {
    const { faults: [fault] } = this.#program.entries(false, { [path]: input.value });
    say(refusal, fault?.message ?? '');
    input.setAttribute('aria-invalid', String(fault !== undefined));
  }

  #compareNow() {
    const typed = Object.fromEntries(this.#asked.measurements.map(({ path }) => [path, this.#draft.typed[path] ?? '']));
    return this.#program.entries(true, typed);
  }

  async #compare(below) {
    const turn = this.#turn;
    say(below, this.#words.comparing);
    await new Promise((drawn) => { setTimeout(drawn, LET_DRAW_MS); });
    if (turn !== this.#turn) return undefined;
    if (this.#planChanged()) return say(below, this.#words.planChanged);
    const { faults, compared } = this.#compareNow();
    if (!compared) return this.#showFaults(faults, below);
    this.#compared = compared;
    return this.#showCompared();
  }

  #showFaults(faults, below) {
    const inputs = [...this.#page.body.querySelectorAll('input[data-path]')];
    for (const input of inputs) {
      const fault = faults.find(({ path }) => path === input.dataset.path);
      say(document.getElementById(`${input.id}-refusal`), fault?.message ?? '');
      input.setAttribute('aria-invalid', String(fault !== undefined));
    }
    say(below, fill(this.#words.notAll, { n: faults.length }));
    const first = inputs.find((input) => input.getAttribute('aria-invalid') === 'true');
    first?.focus();
    first?.scrollIntoView({ block: 'center' });
  }

  /** True where another window, or the way back, has put another plan in place of the one that was asked about. */
  #planChanged() {
    return this.#program.second().text !== this.#asked.text;
  }

  // --- step 2: compare ---

  #showCompared() {
    this.#act.blind(false);
    const { rows, agrees, may_be_signed: signable, verdict, of_first: first, of_second: second, why } = this.#compared;
    const apart = rows.filter((row) => !row.agrees).length;
    const words = this.#words;
    const what = [agrees ? words.allAgree : fill(words.someDisagree, { n: apart, total: rows.length }), !signable && verdict.key !== 'GO' && fill(words.notGo, { verdict: verdict.text })].filter(Boolean);
    this.#page.step(words.compareStep,
      element('p', { className: 'verdict-line' }, element('span', { textContent: words.worseVerdict }), element('strong', { className: 'verdict', textContent: verdict.text, dataset: { verdict: verdict.key } }),
        element('span', { textContent: fill(words.logSecondVerdict, { first: first.text, second: second.text }) })),
      ...(why ? [element('p', { textContent: why })] : []), ...what.map((text) => element('p', { className: 'what-to-do', textContent: text })), comparison(words, rows));
    this.#keys([signable && key('go on', words.goOn, () => this.#showSigning(), 'action'), key('measure again', words.measureAgain, () => this.#showBlind(), signable ? 'quiet' : 'action')]);
  }

  // --- step 3: list and signatures ---

  /** Returns the line for a refusal. */
  #showSigning() {
    const { preload } = this.#asked;
    const refusal = message();
    const names = element('datalist', { id: 'known-names' });
    this.#log.all().then((all) => names.append(...[...new Set(all.flatMap(({ entry }) => entry?.signatures.map(({ name }) => name) ?? []))].map((value) => element('option', { value }))));
    const people = element('div', { className: 'people' });
    const drawPeople = () => people.replaceChildren(...PARTS.map((part, i) => this.#person(part, preload.people[i], refusal, drawPeople)));
    const list = element('ol', { className: 'ticks' }, ...preload.items.map((item, i) => this.#item(item, i, drawPeople)));
    drawPeople();
    this.#page.step(this.#words.signStep, largeCheckCode(this.#words.checkCodeLabel, this.#asked.check_code), element('h2', { textContent: preload.title }), element('p', { textContent: this.#words.whoTicks }), list,
      element('h2', { textContent: this.#words.signTitle }), element('p', { textContent: this.#words.signHow }), names, people, refusal);
    this.#keys([key('measure again', this.#words.measureAgain, () => this.#showBlind())]);
    return refusal;
  }

  #item(item, i, drawPeople) {
    const id = `item-${i}`;
    const ticks = PARTS.map((part, p) => {
      const tick = key(`tick ${part} ${i}`, this.#asked.preload.people[p], () => {
        const on = !(i in this.#draft.ticks[part]);
        this.#keepDraft(state.withTick(this.#draft, part, i, on, Date.now()));
        tick.setAttribute('aria-checked', String(on));
        drawPeople();
      });
      tick.setAttribute('role', 'checkbox');
      tick.setAttribute('aria-checked', String(i in this.#draft.ticks[part]));
      tick.setAttribute('aria-describedby', id);
      return tick;
    });
    return element('li', {}, element('p', { id, textContent: item }), element('div', { className: 'pair' }, ...ticks));
  }

  #person(part, title, refusal, drawPeople) {
    const given = this.#draft.signatures.find((each) => each.part === part);
    if (given) return this.#signedPerson(part, title, given, drawPeople);
    const words = this.#words;
    const field = (what, label, value, more) => {
      const id = `${part}-${what}`;
      const input = element('input', { id, type: 'text', autocomplete: 'off', autocapitalize: 'words', spellcheck: false, maxLength: 60, value, ...more });
      if (what === 'name') input.setAttribute('list', 'known-names');
      input.addEventListener('input', () => this.#keepDraft(state.withPerson(this.#draft, part, what, input.value)));
      return [element('label', { htmlFor: id, textContent: fill(label, { part: title }) }), input];
    };
    const name = field('name', words.nameOf, this.#draft.people[part].name ?? '', { enterKeyHint: 'done' });
    const role = field('role', words.roleOf, this.#draft.people[part].role ?? title, {});
    const sign = key(`sign as ${part}`, fill(words.signAs, { part: title }), () => this.#sign(part, refusal, drawPeople), 'action');
    name[1].addEventListener('keydown', (event) => event.key === 'Enter' && sign.focus());
    return element('section', { className: 'person' }, ...name, ...role, sign);
  }

  #signedPerson(part, title, given, drawPeople) {
    const back = key(`take back ${part}`, this.#words.takeBack, () => {
      this.#keepDraft({ ...this.#draft, signatures: this.#draft.signatures.filter((each) => each.part !== part) });
      drawPeople();
    });
    return element('section', { className: 'person' }, element('h3', { textContent: title }), element('p', { className: 'signed' }, '\u2713 ', signature(this.#words, given)), back);
  }

  async #sign(part, refusal, drawPeople) {
    if (this.#planChanged()) return say(refusal, this.#words.planChanged);
    const before = this.#draft;
    this.#draft = state.resumed(before, this.#asked.text, Date.now());
    this.#compared ??= this.#compareNow().compared ?? undefined;
    const { people, items } = this.#asked.preload;
    const why = state.whyNoSignature({ draft: this.#draft, compared: this.#compared, items: items.length, part });
    const tooOld = state.unticked(this.#draft, items.length) > state.unticked(before, items.length); // what is shown as ticked is no longer
    if (why) return this.#refuse(tooOld ? this.#showSigning() : refusal, why);
    say(refusal, '');
    this.#keepDraft(state.withSignature(this.#draft, part, { rigger: people[0], second: people[1] }, timeOf(new Date())));
    if (state.isSigned(this.#draft)) return this.#finish();
    drawPeople();
    return this.#page.body.querySelector('.person input')?.focus(); // the other hand's turn
  }

  #refuse(refusal, { key: why, ...values }) {
    say(refusal, fill(this.#words[why], values));
    refusal.scrollIntoView({ block: 'center' });
  }

  async #finish() {
    const turn = this.#turn;
    const compared = this.#compared, draft = this.#draft;
    this.#keys([]); // one signature, one entry
    const entry = state.entryOf({ draft, asked: this.#asked, compared, report: this.#program.report(), app: await this.#act.app(), timeOf: (at) => timeOf(new Date(at)) });
    const signed = await this.#log.sign(entry);
    this.#keepDraft(state.freshDraft(draft.text)); // whoever checks again measures again
    if (turn === this.#turn) this.#showSigned(signed.entry, signed.kept ? '' : this.#log.fault);
  }

  // --- signed ---

  #showSigned(entry, fault) {
    this.#act.blind(false);
    const words = this.#words;
    const unkept = { full: words.notKeptFull, denied: words.notKeptDenied }[fault] ?? '';
    this.#page.step(words.signedTitle, element('p', { className: 'plan', textContent: `${entry.title || words.noTitle} \u00B7 ${entry.second.verdict}` }), largeCheckCode(words.checkCodeLabel, entry.check_code),
      message(unkept), element('ul', { className: 'signed' }, ...entry.signatures.map((each) => element('li', {}, '\u2713 ', signature(words, each)))), element('p', { textContent: words.signedHow }));
    this.#keys([key('save log', words.saveLog, () => this.#act.saveLog(), unkept ? 'action' : 'quiet'), key('sheet of signed', words.sheetTitle, () => this.#act.openSheet()),
      key('open log', words.openLog, () => this.#act.openLog()), key('check again', words.checkAgain, () => this.#showBlind())]);
  }
}

/** The table of both values, what disagrees first. On a narrow screen every measurement is a block of its own. */
export function comparison(words, rows) {
  const heads = [words.columnWhat, words.columnState, words.columnFirst, words.columnSecond, words.columnApart, words.columnTolerance];
  const head = element('tr', {}, ...heads.map((textContent) => element('th', { textContent, scope: 'col' })));
  const row = ({ label, agrees, first, second, difference, tolerance }) => {
    const badge = element('span', { className: `badge ${agrees ? 'same' : 'apart'}`, textContent: agrees ? words.agrees : words.disagrees });
    const cells = [first, second, difference, tolerance].map((textContent, i) => element('td', { textContent, dataset: { head: heads[i + 2] } }));
    return element('tr', {}, element('th', { textContent: label, scope: 'row' }), element('td', {}, badge), ...cells);
  };
  return element('table', { className: 'compared' }, element('thead', {}, head), element('tbody', {}, ...[...rows].sort((a, b) => a.agrees - b.agrees).map(row)));
}
