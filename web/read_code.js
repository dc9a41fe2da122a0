// Reads a plan from a code before the camera, from a picture of one, or from a file. Nothing is opened before the person says so.

import { LARGEST_PLAN_BYTES } from './files.js';
import { element } from './element.js';
import { key, largeCheckCode } from './page.js';
import { fill } from './words.js';
import { NotWhole, frameReader, pixelsOf, readPicture } from './qr.js';

const LARGEST_PICTURE_BYTES = 40 * 1024 * 1024; // the largest cameras of telephones make 25 MB
const MOST_MEGAPIXELS = 220; // cameras of telephones make 200; unpacked, each takes 4 bytes
const MOST_CODES = 99; // pieces of one plan
const BETWEEN_FRAMES_MS = 120;
const REFUSED = ['NotAllowedError', 'SecurityError'];
const size = (words, bytes) => (bytes < 1024 * 1024 ? fill(words.kilobytes, { n: Math.ceil(bytes / 1024) }) : fill(words.megabytes, { n: Math.ceil(bytes / 1024 / 1024) }));

/** `program`: { readCodes(texts), lookAt(bytes), open(text), second() }, the first two as in wasm/app/page_data.hpp; second() begins the second check. */
export class Reader {
  #page;
  #program;
  #words;
  #language;
  #texts = []; // codes that were read and are good so far
  #stream;
  #watching = 0; // counts on with each start and stop of the camera: an older loop sees that it is over
  #turn = 0; // counts the times that the page was left: what is still being read then sees that nobody waits for it
  #message = element('p', { className: 'message' });
  #video = element('video', { muted: true, playsInline: true, hidden: true });
  #input = element('input', { type: 'file', id: 'code-file', accept: 'image/*,.json,.txt,application/json', hidden: true });

  constructor(page, program) {
    this.#page = page;
    this.#program = program;
    this.#message.setAttribute('role', 'status');
    this.#input.addEventListener('change', () => this.#input.files[0] && this.#readFile(this.#input.files[0]));
  }

  show(language) {
    this.#language = language;
    this.#words = this.#page.open({ kind: 'read', language, title: 'readTitle', leave: () => this.#left() });
    this.#texts = [];
    this.#video.hidden = true;
    this.#page.body.append(element('p', { textContent: this.#words.readHow }), this.#video, this.#message, this.#input);
    this.#say('');
    this.#setKeys();
  }

  #left() {
    ++this.#turn;
    this.#stopCamera();
  }

  #setKeys() {
    const camera = this.#stream ? key('stop camera', this.#words.stopCamera, () => this.#stopCamera()) : key('camera', this.#words.camera, () => this.#startCamera(), 'action');
    const file = key('choose file', this.#words.file, () => {
      this.#input.value = ''; // the same file again counts, too
      this.#input.click();
    }, 'action');
    this.#page.setKeys(this.#language, [camera, file]);
  }

  #say(text) {
    this.#message.textContent = text;
  }

  // --- the camera ---

  async #startCamera() {
    this.#say(this.#words.cameraStarts);
    const watch = ++this.#watching;
    let stream;
    try {
      if (!navigator.mediaDevices?.getUserMedia) throw new Error('getUserMedia');
      stream = await navigator.mediaDevices.getUserMedia({ audio: false, video: { facingMode: { ideal: 'environment' }, width: { ideal: 1920 }, height: { ideal: 1080 } } });
    } catch (error) {
      return this.#say(REFUSED.includes(error.name) ? this.#words.cameraDenied : fill(this.#words.cameraNone, { why: error.message || error.name }));
    }
    if (watch !== this.#watching) return stream.getTracks().forEach((track) => track.stop()); // the page was closed meanwhile
    this.#stream = stream;
    stream.getVideoTracks()[0].addEventListener('ended', () => {
      this.#stopCamera();
      this.#say(this.#words.cameraGone);
    });
    this.#video.srcObject = stream;
    this.#video.hidden = false;
    this.#say(this.#words.looking);
    this.#setKeys();
    await this.#video.play().catch(() => {});
    await this.#watch(watch).catch((error) => {
      if (!(error instanceof NotWhole)) throw error;
      this.#stopCamera();
      this.#say(this.#words.noCodes);
    });
  }

  #stopCamera() {
    ++this.#watching;
    this.#stream?.getTracks().forEach((track) => track.stop());
    this.#stream = undefined;
    this.#video.srcObject = null;
    this.#video.hidden = true;
    if (this.#page.isOpen) this.#setKeys();
  }

  async #watch(watch) {
    const read = await frameReader();
    let last;
    while (watch === this.#watching) {
      const text = this.#video.videoWidth > 0 && !document.hidden ? await read(this.#video) : undefined;
      if (watch !== this.#watching) return;
      if (text !== undefined && text !== last) this.#take(text);
      last = text ?? last;
      await new Promise((resume) => { setTimeout(resume, BETWEEN_FRAMES_MS); });
    }
  }

  // --- files ---

  async #readFile(file) {
    const { name } = file, turn = this.#turn;
    const picture = file.type.startsWith('image/');
    const most = picture ? LARGEST_PICTURE_BYTES : LARGEST_PLAN_BYTES;
    if (file.size > most) return this.#say(fill(picture ? this.#words.pictureTooLarge : this.#words.readTooLarge, { name, size: size(this.#words, file.size), most: size(this.#words, most) }));
    try {
      if (picture) return await this.#takePicture(file, turn);
      const bytes = new Uint8Array(await file.arrayBuffer());
      if (turn === this.#turn) this.#takeBytes(bytes);
    } catch (error) {
      this.#say(fill(this.#words.readFault, { name, why: error.message }));
    }
    return undefined;
  }

  async #takePicture(file, turn) {
    const { name } = file;
    let text;
    try {
      const n = Math.ceil((await pixelsOf(file)) / 1e6);
      if (n > MOST_MEGAPIXELS) return this.#say(fill(this.#words.pictureTooMany, { name, n, most: MOST_MEGAPIXELS }));
      text = await readPicture(file);
    } catch (error) {
      return this.#say(error instanceof NotWhole ? this.#words.noCodes : fill(this.#words.notAPicture, { name }));
    }
    if (turn !== this.#turn) return undefined;
    return text === undefined ? this.#say(fill(this.#words.noCodeInPicture, { name })) : this.#take(text);
  }

  /** A plan file, or the texts of codes. */
  #takeBytes(bytes) {
    const lines = new TextDecoder().decode(bytes).split(/\s+/).filter(Boolean);
    const isCodes = lines.length > 0 && lines.length <= MOST_CODES && this.#program.readCodes(lines).state !== 'foreign';
    if (isCodes) lines.forEach((line) => this.#take(line));
    else this.#show(this.#program.lookAt(bytes));
  }

  // --- what was read ---

  #take(text) {
    const texts = [...this.#texts.filter((each) => each !== text), text.replace(/\n/g, ' ')];
    const read = this.#program.readCodes(texts);
    if (read.state === 'waiting' || read.state === 'whole') this.#texts = texts;
    this.#show(read);
  }

  #show(read) {
    if (read.state !== 'whole') return this.#say(read.message);
    this.#stopCamera();
    this.#texts = [];
    this.#page.body.replaceChildren(element('h2', { textContent: this.#words.whole }), element('p', { className: 'plan', textContent: read.title || this.#words.noTitle }),
      largeCheckCode(this.#words.checkCodeLabel, read.check_code), element('p', { textContent: this.#words.compare }));
    this.#page.setKeys(this.#language, [
      key('open read', this.#words.open, () => {
        this.#page.close();
        this.#program.open(read.plan);
      }, 'action'),
      key('second read', this.#words.secondThis, () => {
        this.#program.open(read.plan);
        this.#program.second(); // and the first numbers are never shown
      }, 'action'),
      key('read again', this.#words.again, () => this.show(this.#language)),
    ]);
    return this.#page.body.querySelector('h2').scrollIntoView({ block: 'nearest' });
  }
}
