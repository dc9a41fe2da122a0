import { together } from './words.js';

/** An element of the page with properties, `dataset` among them, and children. */
export function element(name, properties = {}, ...children) {
  const { dataset, ...plain } = properties;
  if (typeof plain.textContent === 'string') plain.textContent = together(plain.textContent);
  const made = Object.assign(document.createElement(name), plain);
  Object.assign(made.dataset, dataset);
  made.append(...children);
  return made;
}
