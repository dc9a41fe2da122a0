// Should the app itself not come up - a version that does not run in this browser, a copy that was torn - there is a way out all
// the same. Needs nothing of the other files; while the app runs it does nothing.
'use strict';

(() => {
  const LONG_MS = 20_000; // a slow device on a slow line takes less
  const skeleton = document.getElementById('skeleton');

  const started = () => skeleton.hidden || !document.getElementById('stopped').hidden;

  const made = (name, properties, ...inside) => {
    const node = Object.assign(document.createElement(name), properties);
    node.append(...inside);
    return node;
  };
  /** In both languages: which one is wanted is not known yet. */
  const both = (english, french) => made('span', {}, `${english} / `, made('span', { lang: 'fr', textContent: french }));
  const link = (href, english, french) => made('a', { href }, both(english, french));

  const offerWaysOut = () => {
    if (started() || skeleton.querySelector('.choices')) return;
    const words = made('p', {}, both('The app does not start. Your plans are kept and not touched.', 'L\'appli ne démarre pas. Vos plans sont gardés et intacts.'));
    words.setAttribute('role', 'alert');
    const choices = made('div', { className: 'choices' }, link('./', 'Start again', 'Redémarrer'), link('./?previous', 'Use the version before this one', 'Utiliser la version précédente'),
      link('./?repair', 'Mend this copy (needs the network)', 'Réparer cette copie (réseau nécessaire)'));
    skeleton.querySelector('.verdict').after(words, choices);
  };

  addEventListener('error', offerWaysOut, true); // of loading, too
  setTimeout(offerWaysOut, LONG_MS);
})();
