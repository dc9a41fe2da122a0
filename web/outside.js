// Everything of the page that stands beside the canvas and talks with the program: text view, device, about, the lost picture.

import { About } from './about.js';
import { Device } from './device.js';
import { show } from './notice.js';
import { TextView } from './textview.js';
import { say } from './words.js';

const VERDICT_DELAY_MS = 250;
const TEXT_DELAY_MS = 400; // after the last frame: while a finger moves, the verdict alone is kept true
const LONGEST_STALE_MS = 1000; // for somebody who reads it now
const USUAL_LETTER_PX = 18;
const PICTURE_GONE_MS = 1500;

/** `call(name, result, types, values)` calls the program. */
export class Outside {
  #canvas;
  #call;
  #text;
  #device;
  #about;
  #verdictTimer = 0;
  #textTimer = 0;
  #isBlind = false;
  #hasDrawn = false;
  #verdictEnd;
  #staleSince; // the first frame that the text does not know of

  constructor(canvas, call) {
    this.#canvas = canvas;
    this.#call = call;
    this.#device = new Device((name, types, values) => call(name, null, types, values));
    this.#text = new TextView({
      press: (id) => this.#press(id),
      enter: (path, shown) => this.#call('guywright_enter', 'string', ['string', 'string'], [path, shown]),
      refresh: () => this.#showText(),
      askDevice: () => this.#device.askInGesture(),
      onClose: () => this.#canvas.focus({ preventScroll: true }),
    });
    this.#about = new About(() => this.#canvas.focus({ preventScroll: true }));
  }

  /** What the program asks of the page. */
  get host() {
    return {
      sense: (on) => this.#device.sense(on),
      keepAwake: (on) => this.#device.keepAwake(on),
      vibrate: (verdict) => this.#device.vibrate(verdict),
      showAbout: () => this.#about.open(this.#textJson().notes),
      showText: () => this.#openText(),
    };
  }

  /** While a second person measures, no other element of the page holds what the first has measured. */
  blind(on) {
    this.#text.blind(on);
    this.#isBlind = on;
    if (on) document.getElementById('verdict').textContent = '';
    else this.#showVerdict();
  }

  start() {
    this.#device.start();
    this.#watchTextSize();
    this.#watchTouches();
    this.#watchKeys();
    this.#watchPicture();
    const goOut = () => document.hidden && this.#call('guywright_go_out_of_sight');
    document.addEventListener('visibilitychange', goOut);
    addEventListener('pagehide', () => this.#call('guywright_go_out_of_sight'));
  }

  /** `verdictEnd`: how far down the page the verdict reaches, px. */
  frameDrawn(verdictEnd) {
    this.#hasDrawn = true;
    this.#placeMessage(verdictEnd);
    this.#verdictTimer ||= setTimeout(() => this.#showVerdict(), VERDICT_DELAY_MS);
    const now = performance.now();
    this.#staleSince ??= now;
    const longest = this.#text.isOpen ? Math.max(0, this.#staleSince + LONGEST_STALE_MS - now) : TEXT_DELAY_MS;
    clearTimeout(this.#textTimer);
    this.#textTimer = setTimeout(() => this.#showText(), Math.min(TEXT_DELAY_MS, longest));
  }

  /** The message in passing lies below the verdict. The same written again would cost a frame its time. */
  #placeMessage(verdictEnd) {
    if (verdictEnd === this.#verdictEnd) return;
    this.#verdictEnd = verdictEnd;
    document.getElementById('offline').style.setProperty('--verdict-end', `${verdictEnd}px`);
  }

  /** True where all that is drawn stands in words, too. */
  get isTold() {
    return this.#verdictTimer === 0 && this.#textTimer === 0;
  }

  #showText() {
    clearTimeout(this.#textTimer);
    this.#textTimer = 0;
    this.#staleSince = undefined;
    this.#text.show(this.#textJson());
  }

  #textJson() {
    return JSON.parse(this.#call('guywright_text', 'string'));
  }

  #press(id) {
    this.#call('guywright_press', null, ['string'], [id]);
  }

  #openText() {
    if (!this.#hasDrawn) return; // there are no words yet
    this.#showText();
    this.#text.open();
  }

  #showVerdict() {
    this.#verdictTimer = 0;
    if (this.#isBlind) return;
    const { verdict_shown: verdict, reason, colours } = JSON.parse(this.#call('guywright_verdict', 'string'));
    const words = [verdict, reason].filter(Boolean).join('. ');
    const line = document.getElementById('verdict');
    if (line.textContent !== words) line.textContent = words;
    for (const [name, colour] of Object.entries(colours)) document.documentElement.style.setProperty(`--${name}`, colour);
  }

  #watchTextSize() {
    const letter = document.getElementById('letter');
    const tell = () => {
      const times = letter.getBoundingClientRect().width / USUAL_LETTER_PX;
      if (times > 0) this.#call('guywright_set_text_size', null, ['number'], [times]);
    };
    tell(); // the observer's first word comes after the first picture
    new ResizeObserver(tell).observe(letter);
  }

  #watchTouches() {
    // Before SDL hears of it: to SDL a touch that the device takes away is a finger that lifts, and would press the key under it.
    this.#canvas.addEventListener('touchcancel', () => this.#call('guywright_cancel_touch'), { capture: true });
    this.#canvas.addEventListener('touchend', (event) => {
      const [touch] = event.changedTouches;
      if (touch && this.#isTakeKey(touch.clientX, touch.clientY)) this.#device.askInGesture();
    }, { capture: true });
    this.#canvas.addEventListener('click', (event) => this.#isTakeKey(event.clientX, event.clientY) && this.#device.askInGesture());
  }

  #state() {
    return JSON.parse(this.#call('guywright_state', 'string'));
  }

  #isTakeKey(x, y) {
    return this.#state().widgets.some(({ id, rect: r }) => id.startsWith('take ') && x >= r.x && x <= r.x + r.width && y >= r.y && y <= r.y + r.height);
  }

  #watchKeys() {
    document.getElementById('to-text').addEventListener('click', () => this.#openText());
    this.#canvas.addEventListener('keydown', (event) => {
      if (['Enter', ' '].includes(event.key) && this.#state().focus.startsWith('take ')) this.#device.askInGesture();
      if (event.key !== 'F6') return;
      event.stopImmediatePropagation();
      event.preventDefault();
      this.#openText();
    }, { capture: true });
  }

  #watchPicture() {
    let timer = 0, takeAway;
    this.#canvas.addEventListener('webglcontextlost', () => {
      timer = setTimeout(() => { takeAway = show(say('pictureGone'), { [say('readAsText')]: () => this.#openText(), [say('wait')]: () => {} }); }, PICTURE_GONE_MS);
    });
    this.#canvas.addEventListener('webglcontextrestored', () => {
      clearTimeout(timer);
      takeAway?.(); // another message stays until it was read
    });
  }
}
