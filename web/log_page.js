// The log of signed verdicts: the list, one entry, all of it as a file and back.

import { LARGEST_LOG_BYTES, PARTS, clockOf } from './log_format.js';
import { element } from './element.js';
import { key, largeCheckCode } from './page.js';
import { fill } from './words.js';
import { comparison, signature } from './second.js';

const MOST_FAULTS_TOLD = 6;
const megabytes = (words, bytes) => fill(words.megabytes, { n: Math.ceil(bytes / 1024 / 1024) });

export class LogPage {
  #page;
  #log;
  #act;
  #words;
  #language;
  #message = element('p', { className: 'message' });
  #input = element('input', { type: 'file', id: 'log-file', accept: '.json,application/json', hidden: true });
  #turn = 0;

  /** `act`: { open(text) opens a plan, saveLog(), saveText(name, text) }. */
  constructor(page, log, act) {
    this.#page = page;
    this.#log = log;
    this.#act = act;
    this.#message.setAttribute('role', 'status');
    this.#input.addEventListener('change', () => this.#input.files[0] && this.#read(this.#input.files[0]));
  }

  async show(language, told = '') {
    this.#language = language;
    this.#words = this.#page.open({ kind: 'log', language, title: 'logTitle', leave: () => { ++this.#turn; } });
    const turn = this.#turn;
    this.#page.setKeys(language, []);
    await this.#log.settled();
    const all = await this.#log.all();
    if (turn !== this.#turn) return; // closed meanwhile
    this.#message.textContent = told;
    const count = all.length === 0 ? this.#words.logEmpty : fill(this.#words.logCount, { n: all.length });
    const unkept = all.some(({ kept }) => kept === false) ? [element('p', { className: 'message', textContent: this.#words.logNotKept })] : [];
    this.#page.body.replaceChildren(element('p', { textContent: count }), ...unkept, this.#message, this.#input, element('div', { className: 'entries' }, ...all.map((each) => this.#row(each))));
    this.#page.setKeys(language, [
      all.length > 0 && key('export log', this.#words.exportLog, () => this.#act.saveLog(), 'action'),
      key('import log', this.#words.importLog, () => {
        this.#input.value = ''; // the same file again counts, too
        this.#input.click();
      }),
    ]);
  }

  #stateOf({ entry, origin, damaged, kept }) {
    const words = this.#words;
    if (damaged) return words.stateDamaged;
    const fell = entry.fell_away && fill(words.stateFell, { time: clockOf(entry.fell_away.time) });
    return [origin === 'file' ? words.stateFile : fell || words.stateStands, kept ? '' : words.stateNotKept].filter(Boolean).join(', ');
  }

  #row(each) {
    const { id, entry, damaged } = each;
    const row = key(`entry ${id}`, '', () => (damaged ? this.#showDamaged(each) : this.#showEntry(each)));
    const texts = damaged ? [] : [[clockOf(entry.signatures[1].time), entry.check_code], [entry.title || this.#words.noTitle], [entry.signatures.map(({ name }) => name).join(', ')]];
    row.replaceChildren(...texts.map((parts) => element('span', { className: 'line' }, ...parts.map((textContent) => element('span', { textContent })))), element('span', { className: 'state', textContent: this.#stateOf(each) }));
    return row;
  }

  #back() {
    return key('back to log', this.#words.backToLog, () => this.show(this.#language), 'action');
  }

  #showEntry(each) {
    const { entry } = each;
    const words = this.#words;
    const verdicts = `${entry.second.verdict} (${fill(words.logSecondVerdict, { first: entry.second.of_first, second: entry.second.of_second })})`;
    const rows = entry.second.readings.map(asRow);
    const ticked = ({ item, ...times }) => element('li', { textContent: `${item} \u00B7 ${PARTS.map((part) => clockOf(times[part]).slice(11)).join(', ')}` });
    this.#page.step(entry.title || words.noTitle, element('p', { className: 'plan', textContent: verdicts }), largeCheckCode(words.checkCodeLabel, entry.check_code),
      element('p', { textContent: this.#stateOf(each) }), element('ul', { className: 'signed' }, ...entry.signatures.map((one) => element('li', {}, '\u2713 ', signature(words, one)))),
      element('h2', { textContent: words.logReadings }), comparison(words, rows), element('h2', { textContent: words.logList }), element('ul', {}, ...entry.preload.map(ticked)),
      element('p', { textContent: fill(words.logApp, entry.app) }));
    this.#page.setKeys(this.#language, [this.#back(), key('open its plan', words.openItsPlan, () => {
      this.#page.close();
      this.#act.open(entry.plan);
    })]);
  }

  #faultLines(faults) {
    return faults.slice(0, MOST_FAULTS_TOLD).map(({ path, value, allowed }) => fill(this.#words.logFault, { path, value, allowed: this.#words[`kind_${allowed}`] }));
  }

  #showDamaged({ id, found, faults }) {
    this.#page.step(this.#words.damagedTitle, element('p', { textContent: this.#words.damagedHow }), element('ul', {}, ...this.#faultLines(faults).map((textContent) => element('li', { textContent }))));
    this.#page.setKeys(this.#language, [this.#back(), key('save found', this.#words.saveFound, () => this.#act.saveText(`damaged-${id}.json`, `${JSON.stringify(found, null, 1)}\n`))]);
  }

  async #read(file) {
    const { name } = file, turn = this.#turn;
    if (file.size > LARGEST_LOG_BYTES) return this.#say(fill(this.#words.logTooLarge, { name, size: megabytes(this.#words, file.size), most: megabytes(this.#words, LARGEST_LOG_BYTES) }));
    let content;
    try {
      content = await file.text();
    } catch (error) {
      return this.#say(fill(this.#words.logUnread, { name, why: error.message }));
    }
    const taken = await this.#log.take(content).catch((error) => ({ refused: 'logUnread', why: error.message })); // such as one nested too deep
    if (turn !== this.#turn) return undefined; // another page is shown by now
    if (taken.refused) return this.#say(fill(this.#words[taken.refused], { ...taken, name }));
    const told = [fill(this.#words.logTaken, { ...taken, name }), ...this.#faultLines(taken.faults), ...(taken.kept ? [] : [this.#words.logTakenNotKept])];
    return this.show(this.#language, told.join('\n'));
  }

  #say(text) {
    this.#message.textContent = text;
  }
}

const UNIT = /_(deg|m|mm|kg|kN)(\[\d\])*$/; // of the plan's keys: readings are kept in the units of plan files

function asRow({ label, path, first, second, allowed, agrees }) {
  const unit = UNIT.exec(path)?.[1];
  const told = (v) => `${Math.round(v * 1000) / 1000}${{ deg: '\u00B0' }[unit] ?? (unit ? ` ${unit}` : '')}`;
  const way = Math.abs(first - second), apart = path.endsWith('bearing_deg') ? Math.min(way, 360 - way) : way;
  return { label, agrees, first: told(first), second: told(second), difference: told(apart), tolerance: `\u00B1 ${told(allowed)}` };
}
