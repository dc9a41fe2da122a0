// QR codes made and read by the library in lib/qr, loaded with the first that is needed.

const SVG = 'http://www.w3.org/2000/svg';
const QUIET_MODULES = 4; // white around a code, as its standard wants
const LARGEST_SIDE_PX = [1600, 1000, 2600]; // a picture is tried in these sizes: neither blurred nor noisy ones fit all

/** This copy of the app lacks the library, or it does not run here. */
export class NotWhole extends Error {}

async function library(part) {
  try {
    return (await import(`./lib/qr/${part}.js`)).default;
  } catch (error) {
    throw new NotWhole(error.message);
  }
}

function svg(name, attributes, ...children) {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...children);
  return made;
}

/** A drawing of the code of `text`, black on white with the white around it. `label` says what it is. Rejects with NotWhole. */
export async function draw(text, label) {
  const encodeQR = await library('index');
  const modules = encodeQR(text, 'raw', { ecc: 'medium', encoding: 'alphanumeric', border: QUIET_MODULES });
  const side = modules.length;
  let path = '';
  modules.forEach((row, y) => row.forEach((dark, x) => {
    if (dark) path += `M${x} ${y}h1v1h-1z`;
  }));
  const drawing = svg('svg', { class: 'qr', viewBox: `0 0 ${side} ${side}`, role: 'img', 'aria-label': label, 'shape-rendering': 'crispEdges' },
    svg('rect', { width: side, height: side, fill: '#fff' }), svg('path', { d: path, fill: '#000' }));
  drawing.dataset.version = (side - 2 * QUIET_MODULES - 17) / 4;
  return drawing;
}

/** Drawings of all `texts`, labelled by `labelOf(index)`; undefined where this copy of the app can draw none. */
export async function drawAll(texts, labelOf) {
  try {
    return await Promise.all(texts.map((text, i) => draw(text, labelOf(i))));
  } catch (error) {
    if (!(error instanceof NotWhole)) throw error;
    return undefined;
  }
}

function pixels(source, width, height, largest) {
  const scale = Math.min(1, largest / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context.drawImage(source, 0, 0, canvas.width, canvas.height);
  return context.getImageData(0, 0, canvas.width, canvas.height);
}

/** Text of the code in the picture; undefined where none is found. */
async function readPixels(image) {
  const decodeQR = await library('decode');
  try {
    return decodeQR(image);
  } catch {
    return undefined; // the library says "none found" by throwing
  }
}

/** Reads one frame of a video; the browser's own reader where it has one for QR codes. */
export async function frameReader() {
  const formats = (await globalThis.BarcodeDetector?.getSupportedFormats?.().catch(() => [])) ?? [];
  let own = formats.includes('qr_code') ? new globalThis.BarcodeDetector({ formats: ['qr_code'] }) : undefined;
  return async (video) => {
    if (own) {
      try {
        return (await own.detect(video))[0]?.rawValue;
      } catch {
        own = undefined; // some browsers name the reader and have none
      }
    }
    return readPixels(pixels(video, video.videoWidth, video.videoHeight, LARGEST_SIDE_PX[1]));
  };
}

/** Width times height of a picture file, from its beginning: nothing is unpacked yet. Rejects where it is no picture. */
export async function pixelsOf(file) {
  const image = new Image();
  image.src = URL.createObjectURL(file);
  try {
    await new Promise((resolve, reject) => {
      image.onload = resolve;
      image.onerror = () => reject(new Error('no picture'));
    });
    return image.naturalWidth * image.naturalHeight;
  } finally {
    URL.revokeObjectURL(image.src);
  }
}

/** Text of the code in a picture file; undefined where none is found. Rejects where it is no picture. */
export async function readPicture(file) {
  const picture = await createImageBitmap(file);
  try {
    for (const largest of LARGEST_SIDE_PX) {
      const text = await readPixels(pixels(picture, picture.width, picture.height, largest));
      if (text !== undefined) return text;
      if (Math.max(picture.width, picture.height) <= Math.min(...LARGEST_SIDE_PX)) return undefined;
    }
    return undefined;
  } finally {
    picture.close();
  }
}
