// The app as text: every input, every check and every key as elements of the page, for screen readers, for those who read
// text larger than a drawing can be, and while the device has no picture. The same commands as on the drawn screen.

import { element } from './element.js';
import { say, together } from './words.js';

const LONGEST_NUMBER = 40;

const named = (what, is) => say('named', { what, is });
const textOf = ({ label, value }) => (label && value ? named(label, value) : label || value || '');

/** What makes up a group; while it is the same, values change in place and the focus stays where it is. */
const shapeOf = (group) => JSON.stringify([group.title, group.entries.map((e) => (e.kind === 'number' ? [e.id, e.label, e.how, e.unit, e.measured, e.device] : [e.kind, e.id]))]);

export class TextView {
  #root = document.getElementById('text');
  #body = this.#root.querySelector('.body');
  #alarm = document.getElementById('alarm');
  #groups = new Map(); // place of a group -> { shape, node }
  #act;
  #blind = false;

  /** `act`: { press(id), enter(path, shown) -> why not, refresh(), askDevice(), onClose() } */
  constructor(act) {
    this.#act = act;
    this.#root.querySelector('.back').addEventListener('click', () => this.close());
    this.#root.addEventListener('keydown', (event) => event.key === 'Escape' && this.close());
    // Whoever comes here with the Tab key must see where the focus is.
    this.#root.addEventListener('focusin', () => this.#root.classList.add('open'));
    this.#root.addEventListener('click', (event) => this.#clicked(event));
    this.#root.addEventListener('change', (event) => this.#changed(event));
  }

  get isOpen() {
    return this.#root.classList.contains('open');
  }

  open() {
    this.#root.classList.add('open');
    this.#root.querySelector('h1').focus();
  }

  close() {
    this.#root.classList.remove('open');
    this.#act.onClose();
  }

  #clicked(event) {
    const button = event.target.closest('button[data-id]');
    if (!button || button.getAttribute('aria-disabled') === 'true') return;
    if (button.dataset.id.startsWith('take ')) this.#act.askDevice();
    this.#act.press(button.dataset.id);
  }

  #changed(event) {
    const { path } = event.target.dataset;
    if (!path) return;
    const fault = this.#act.enter(path, event.target.value.trim());
    this.#act.refresh();
    event.target.setAttribute('aria-invalid', String(fault !== ''));
    event.target.value = event.target.dataset.shown; // refused: the old value stays, and the reason is said
    this.#alarm.textContent = fault;
  }

  /** While `on` there is nothing in it: somebody must not see the numbers of the plan. */
  blind(on) {
    this.#blind = on;
    if (on) {
      for (const line of this.#root.querySelectorAll('.verdict, .reason, .title')) line.textContent = '';
      this.#body.replaceChildren();
    } else {
      this.#act.refresh();
    }
  }

  /** `text` as in wasm/app/text_view.hpp. */
  show(text) {
    if (this.#blind) return;
    this.#root.querySelector('.verdict').textContent = text.verdict_shown;
    this.#root.dataset.verdict = text.verdict;
    this.#root.querySelector('.reason').textContent = [text.reason, text.checking && say('stillChecking'), text.check_code && say('checkCode', { code: text.check_code })].filter(Boolean).map((words) => words.replace(/\.?$/, '.')).join(' ');
    this.#root.querySelector('.title').textContent = text.title;
    const sections = [...text.sections, { id: 'Keys', title: say('keys'), groups: [{ title: '', entries: text.keys }] }];
    if (text.message) sections.unshift({ id: 'Message', title: say('message'), groups: [{ title: '', entries: [{ kind: 'text', label: text.message.text }, text.message.key] }] });
    const nodes = sections.map((section) => this.#section(section, text.locked));
    const same = nodes.length === this.#body.children.length && nodes.every((node, i) => node === this.#body.children[i]);
    if (!same) this.#replace(nodes);
  }

  /** Puts in what has changed without taking the focus out of what has not. */
  #replace(nodes) {
    const focused = document.activeElement?.dataset?.id ?? document.activeElement?.dataset?.path;
    const had = this.#body.contains(document.activeElement);
    this.#body.replaceChildren(...nodes);
    if (!had) return;
    const again = [...this.#body.querySelectorAll('[data-id],[data-path]')].find((node) => (node.dataset.id ?? node.dataset.path) === focused);
    (again ?? this.#root.querySelector('h1')).focus();
  }

  #section(section, locked) {
    const kept = this.#groups.get(section.id) ?? { shape: '', node: null };
    const shape = JSON.stringify([section.title, section.groups.map(shapeOf)]);
    if (kept.shape !== shape) {
      kept.shape = shape;
      kept.node = element('section', {}, element('h2', { textContent: section.title }), ...section.groups.map((group) => this.#group(group, section.title)));
      this.#groups.set(section.id, kept);
    }
    const shown = kept.node.querySelectorAll('[data-entry]');
    section.groups.flatMap((group) => group.entries).forEach((entry, i) => this.#update(shown[i], entry, locked && section.id !== 'Locked'));
    return kept.node;
  }

  #group(group, section) {
    const nodes = [];
    let list;
    for (const entry of group.entries) {
      const text = entry.kind === 'text';
      if (text && !list) nodes.push((list = element('ul')));
      if (!text) list = undefined;
      const node = text ? element('li') : entry.kind === 'number' ? this.#number(entry) : this.#key(entry);
      node.dataset.entry = '';
      if (text) list.append(node);
      else nodes.push(node);
    }
    const heading = group.title && group.title !== section ? [element('h3', { textContent: group.title })] : [];
    return element('div', { className: 'group' }, ...heading, ...nodes);
  }

  #key(entry) {
    const button = element('button', { type: 'button' });
    button.dataset.id = entry.id;
    return button;
  }

  #number(entry) {
    const id = `number-${entry.id}`;
    const input = element('input', { id, type: 'text', inputMode: 'decimal', autocomplete: 'off', maxLength: LONGEST_NUMBER });
    Object.assign(input.dataset, { path: entry.id });
    input.setAttribute('aria-describedby', `${id}-how`);
    const label = element('label', { htmlFor: id, textContent: entry.unit ? `${entry.label}, ${entry.unit}` : entry.label });
    const how = element('p', { id: `${id}-how`, className: 'how' });
    const node = element('div', { className: 'number' }, label, input, how);
    if (!entry.measured) node.append(this.#beside(`confirm ${entry.id}`, say('rightAsItStands'), entry.label));
    if (entry.device) node.append(this.#beside(`take ${entry.id}`, say('fromDevice'), entry.label));
    return node;
  }

  #beside(id, words, label) {
    const button = element('button', { type: 'button', textContent: words });
    button.dataset.id = id;
    button.setAttribute('aria-label', named(words, label));
    return button;
  }

  #update(node, entry, off) {
    if (entry.kind === 'text') return this.#setText(node, textOf(entry));
    if (entry.kind === 'key') return this.#updateKey(node, entry, off);
    const input = node.querySelector('input');
    const beingTyped = document.activeElement === input && input.value !== input.dataset.shown;
    input.dataset.shown = entry.value;
    if (!beingTyped) input.value = entry.value;
    input.readOnly = off;
    this.#setText(node.querySelector('.how'), [entry.how, entry.range, !entry.measured && say('notEntered')].filter(Boolean).join(' '));
    for (const button of node.querySelectorAll('button')) button.setAttribute('aria-disabled', String(off));
  }

  #updateKey(node, entry, off) {
    this.#setText(node, entry.label);
    node.setAttribute('aria-disabled', String(off || entry.enabled === false));
    if (typeof entry.on === 'boolean') node.setAttribute('aria-pressed', String(entry.on));
  }

  #setText(node, words) {
    const text = together(words);
    if (node.textContent !== text) node.textContent = text;
  }
}
